package bindery

import (
	"sync"

	"columnbowl/build/book"
	"columnbowl/site"
)

// Draft is an edition whose files are made when they are asked for: whoever
// edits one page and looks at it need not wait for all the others. Each file has
// the bytes that it has in the whole edition. A Draft is safe for several
// goroutines.
type Draft struct {
	work    *work
	parts   Parts
	workers int
	list    []page
	pages   map[string]func() (File, error) // each made once
}

// Prepare begins an edition of a book. The book must be sound: proof it first.
func Prepare(b *book.Book, parts Parts, opts Options) (*Draft, error) {
	w, err := begin(b, parts, opts)
	if err != nil {
		return nil, err
	}
	w.wells = &wells{inks: readPapers(string(parts.Style))}
	if err := w.shelve(parts); err != nil {
		return nil, err
	}
	d := &Draft{work: w, parts: parts, workers: opts.Workers, list: w.pages(), pages: map[string]func() (File, error){}}
	for i := range d.list {
		d.pages[d.list[i].path] = sync.OnceValues(func() (File, error) { return d.finished(&d.list[i], parts.Shells) })
	}
	return d, nil
}

// finished makes a page as it stands in the edition: the pictures in it go by
// the names that carry their sums.
func (d *Draft) finished(p *page, shells *site.Set) (File, error) {
	f, err := p.render(shells)
	if err != nil {
		return f, err
	}
	f.Data = site.FewSigns(f.Data)
	if d.work.cuts != nil {
		f.Data = d.work.cuts.named(f.Data)
	}
	return f, nil
}

// File makes the file that stands at a path of the edition. The worker of a copy
// on a server is not among them: it has to know every file.
func (d *Draft) File(path string) (data []byte, found bool, err error) {
	if make, ok := d.pages[path]; ok {
		f, err := make()
		return f.Data, err == nil, err
	}
	if data, found, err = d.work.assets.find(path); found || err != nil {
		return data, found, err
	}
	if d.work.cuts != nil {
		if data, found = d.work.cuts.fileAt(path); found {
			return data, true, nil
		}
	}
	if data, found = d.work.wells.find(path); found {
		return data, true, nil
	}
	switch path {
	case iconPath:
		return []byte(icon), true, nil
	case manifestPath:
		data, err = d.work.manifest()
		return data, err == nil, err
	}
	return nil, false, nil
}

// Edition makes all files.
func (d *Draft) Edition() (*Edition, error) {
	files, err := sideBySide(len(d.list), d.workers, func(i int) (File, error) { return d.pages[d.list[i].path]() })
	if err != nil {
		return nil, err
	}
	assets, err := d.work.assets.files()
	if err != nil {
		return nil, err
	}
	files = append(append(files, assets...), d.work.wells.list()...)
	if d.work.cuts != nil {
		files = append(files, d.work.cuts.files(d.workers)...)
	}
	e := &Edition{BookID: d.work.book.Handbook.ID, Form: form, Files: files}
	if err := e.arrange(); err != nil {
		return nil, err
	}
	hosting, err := d.work.hosting(e, d.parts.WorkerScript)
	if err != nil {
		return nil, err
	}
	e.Files = append(e.Files, hosting...)
	return e, e.arrange()
}

// Bind makes the folder edition of a book. The book must be sound: proof it
// first.
func Bind(b *book.Book, parts Parts, opts Options) (*Edition, error) {
	d, err := Prepare(b, parts, opts)
	if err != nil {
		return nil, err
	}
	return d.Edition()
}
