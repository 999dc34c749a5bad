package serve

import (
	"context"
	"strings"

	"columnbowl/build/bindery"
	"columnbowl/build/book"
	"columnbowl/build/proof"
	"columnbowl/build/report"
)

// Run takes the content, makes the pages, and does so again at every change,
// until ctx ends.
func (s *Server) Run(ctx context.Context) error {
	fresh := make(chan taken, 1)
	go s.watch(ctx, fresh)
	var last book.Memory
	for {
		select {
		case <-ctx.Done():
			return nil
		case t := <-fresh:
			s.pending.Store(false)
			if t.err != nil {
				s.wrong(t.err.Error() + "\n")
				continue
			}
			changed := differing(last, t.files)
			last = t.files
			s.bind(ctx, t.files, changed)
		}
	}
}

// bind makes the pages of a content. What the author has changed is checked
// before the pages are shown, the whole book behind that: an author does not
// wait for thousands of numbers that nobody has touched, and learns all the same
// when one of them is wrong now.
func (s *Server) bind(ctx context.Context, files book.Memory, changed map[string]bool) {
	b, found := s.reader.Load(files)
	if found.Errors() > 0 || b.Engine == nil || !b.Whole {
		s.wrongList(found)
		return
	}
	if found = proof.CheckFiles(b, changed); found.Errors() > 0 {
		s.wrongList(found)
		return
	}
	next, apart, err := s.prepare(b, files)
	if err != nil {
		s.wrong(err.Error() + "\n")
		return
	}
	if len(apart) > 0 {
		s.wrong(printed(apart))
		return
	}
	s.turn(func() { s.now, s.state, s.told = next, Proving, "" })
	stop := func() bool { return s.pending.Load() || ctx.Err() != nil }
	found, _, done := proof.CheckUnless(b, stop)
	switch {
	case !done:
	case found.Errors() > 0:
		s.turn(func() { s.now = s.proved })
		s.wrongList(found)
	default:
		s.turn(func() { s.proved, s.state = next, Sound })
		s.log("Nothing is wrong.")
	}
}

// prepare begins the edition of a sound book. The published values are compared
// when what the numbers follow from has changed.
func (s *Server) prepare(b *book.Book, files book.Memory) (*shown, report.List, error) {
	type compared struct {
		evidence *bindery.Evidence
		apart    report.List
	}
	sum := sumOf(b.Engine.Pack(), checksOf(files))
	c, err := bindery.Recall(&s.keep, "evidence", sum, func() (c compared, err error) {
		if s.opts.Evidence != nil {
			c.evidence, c.apart, err = s.opts.Evidence(b, files)
		}
		return c, err
	})
	if err != nil || len(c.apart) > 0 {
		return nil, c.apart, err
	}
	draft, err := bindery.Prepare(b, s.opts.Parts, bindery.Options{Evidence: c.evidence, Keep: &s.keep})
	if err != nil {
		return nil, nil, err
	}
	return &shown{draft, sum}, nil, nil
}

// checksOf are the published values that stand in the content itself.
func checksOf(files book.Memory) []byte {
	var all []byte
	for _, name := range sortedNames(files) {
		if strings.HasPrefix(name, ChecksFolder+"/") {
			all = append(append(all, name...), files[name]...)
		}
	}
	return all
}

// ChecksFolder is the folder of the content with published values to compare
// the book with. A content need not have one.
const ChecksFolder = "checks"

// wrongList tells mistakes of the content.
func (s *Server) wrongList(found report.List) {
	if found.Errors() == 0 {
		s.wrong("The book has errors and cannot be shown: run columnbowl proof.\n")
		return
	}
	s.wrong(printed(found.In(s.opts.Folder)))
}

func (s *Server) wrong(told string) {
	s.turn(func() { s.state, s.told = Wrong, told })
	s.log(strings.TrimRight(told, "\n"))
}

func (s *Server) log(line string) {
	if s.opts.Log != nil {
		s.opts.Log(line)
	}
}

func printed(found report.List) string {
	var b strings.Builder
	if err := found.Print(&b); err != nil { // a Builder takes all
		return err.Error()
	}
	return b.String()
}
