package bindery

import (
	"bytes"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"columnbowl/site"
)

// page is one page to make: what fills its shell is worked out when its turn
// comes.
type page struct {
	path string
	view func() (any, error)
}

// render makes all pages, several at once. Each writes into its own slot, so
// the order of the work leaves no trace. All errors are told, in the order of
// the pages.
func render(pages []page, shells *site.Set, workers int) ([]File, error) {
	files, failed := make([]File, len(pages)), make([]error, len(pages))
	share(len(pages), workers, func(i int) { files[i], failed[i] = pages[i].render(shells) })
	return files, errors.Join(failed...)
}

// share has work for the numbers from 0 to n-1 done by several workers at once;
// 0 means as many as there are processors to use.
func share(n, workers int, do func(i int)) {
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(workers, n) {
		wait.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				do(i)
			}
		})
	}
	wait.Wait()
}

func (p *page) render(shells *site.Set) (File, error) {
	view, err := p.view()
	if err != nil {
		return File{}, fmt.Errorf("%s: %w", p.path, err)
	}
	var b bytes.Buffer
	if err := shells.Write(&b, view); err != nil {
		return File{}, fmt.Errorf("%s: %w", p.path, err)
	}
	return File{Path: p.path, Data: b.Bytes()}, nil
}

// arrange sorts the files and refuses two of one path. Paths that differ in
// their case only would fall together on many disks.
func (e *Edition) arrange() error {
	slices.SortFunc(e.Files, func(a, b File) int { return strings.Compare(a.Path, b.Path) })
	seen := map[string]string{}
	for _, f := range e.Files {
		key := strings.ToLower(f.Path)
		if have, twice := seen[key]; twice {
			return fmt.Errorf("two pages want the file %s (the other is %s): rename one of them", f.Path, have)
		}
		seen[key] = f.Path
	}
	return nil
}
