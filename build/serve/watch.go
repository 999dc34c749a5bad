package serve

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"columnbowl/build/book"
)

// How often the content is looked at: while a page waits for changes, and while
// nobody looks. Looking costs a call of the system for each file; it works on
// every system and over shared folders, where notices of changes do not.
const (
	lookOften  = 40 * time.Millisecond
	lookSeldom = 300 * time.Millisecond

	// settling is how long a changed content must stay as it is. Editors empty a
	// file before they write it, or write another one and rename it.
	settling = 12 * time.Millisecond
)

// taken is a content, or why it could not be taken.
type taken struct {
	files book.Memory
	err   error
}

// watch hands over the content at first and whenever it has changed.
func (s *Server) watch(ctx context.Context, fresh chan taken) {
	var last *taken
	for ctx.Err() == nil {
		now := s.take()
		if last == nil || !same(*last, now) {
			now = s.settled(ctx, now)
			last = &now
			s.pending.Store(true)
			select { // an older content that nobody has taken is of no use
			case <-fresh:
			default:
			}
			fresh <- now
		}
		if !s.opts.Watched {
			return
		}
		pause := lookSeldom
		if s.listeners.Load() > 0 {
			pause = lookOften
		}
		sleep(ctx, pause)
	}
}

func (s *Server) take() taken {
	files, err := s.opts.Content()
	return taken{files, err}
}

// settled looks until two looks agree.
func (s *Server) settled(ctx context.Context, now taken) taken {
	for s.opts.Watched && ctx.Err() == nil {
		sleep(ctx, settling)
		next := s.take()
		if same(now, next) {
			break
		}
		now = next
	}
	return now
}

func sleep(ctx context.Context, d time.Duration) {
	select {
	case <-ctx.Done():
	case <-time.After(d):
	}
}

func same(a, b taken) bool {
	if a.err != nil || b.err != nil {
		return a.err != nil && b.err != nil && a.err.Error() == b.err.Error()
	}
	return len(a.files) == len(b.files) && len(differing(a.files, b.files)) == 0
}

// differing are the files that are new, gone or changed. Without an earlier
// content there are none: all of it is new then, and nobody has edited it.
func differing(old, now book.Memory) map[string]bool {
	changed := map[string]bool{}
	if old == nil {
		return changed
	}
	for name, text := range now {
		if had, ok := old[name]; !ok || !alike(had, text) {
			changed[name] = true
		}
	}
	for name := range old {
		if _, ok := now[name]; !ok {
			changed[name] = true
		}
	}
	return changed
}

// alike compares two texts; most are the same slice.
func alike(a, b []byte) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0] || bytes.Equal(a, b))
}

func sortedNames(files book.Memory) []string {
	names := make([]string, 0, len(files))
	for name := range files {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// Folder is a content folder on the disk. It reads a file again only when its
// time or size has changed.
type Folder struct {
	dir  string
	kept map[string]kept
}

type kept struct {
	modified time.Time
	size     int64
	sure     bool // the file had been at rest when it was read
	text     []byte
}

// NewFolder is the content in a folder.
func NewFolder(dir string) *Folder { return &Folder{dir: dir, kept: map[string]kept{}} }

// clockStep is how coarse the times of files may be (FAT counts in two seconds):
// a file that was changed so shortly before it was read may have changed again
// without showing it.
const clockStep = 2 * time.Second

// Content takes the content as it stands now. It is not for several goroutines
// at once.
func (f *Folder) Content() (book.Memory, error) {
	files, kept := book.Memory{}, map[string]kept{}
	err := filepath.WalkDir(f.dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			if path != f.dir && errors.Is(err, fs.ErrNotExist) {
				return nil // gone since its folder was read
			}
			return err
		}
		if d.IsDir() {
			return nil
		}
		name, err := filepath.Rel(f.dir, path)
		if err != nil {
			return err
		}
		return f.take(path, filepath.ToSlash(name), files, kept)
	})
	if err != nil {
		return nil, fmt.Errorf("the content folder %s cannot be read: %w", f.dir, err)
	}
	f.kept = kept
	return files, nil
}

// take reads one file, if it has to.
func (f *Folder) take(path, name string, files book.Memory, keep map[string]kept) error {
	info, err := os.Stat(path) // what a link leads to
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case info.IsDir():
		return nil
	}
	k, ok := f.kept[name]
	if !ok || !k.sure || k.size != info.Size() || !k.modified.Equal(info.ModTime()) {
		text, err := os.ReadFile(path)
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		if err != nil {
			return err
		}
		if ok && bytes.Equal(text, k.text) {
			text = k.text
		}
		k = kept{info.ModTime(), info.Size(), time.Since(info.ModTime()) > clockStep, text}
	}
	keep[name], files[name] = k, k.text
	return nil
}
