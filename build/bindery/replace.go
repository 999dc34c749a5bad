package bindery

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// droppings are files that systems leave in any folder that was looked at.
var droppings = map[string]bool{".DS_Store": true, "Thumbs.db": true, "desktop.ini": true}

// replaceable says whether a folder may be replaced by an edition: it is not
// there, it is empty, or it is an earlier edition of the same book and form and
// nothing else.
func replaceable(e *Edition, dir string) error {
	info, err := os.Lstat(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return explain(err, "look at", dir)
	}
	if !info.IsDir() {
		return fmt.Errorf("%s is a file, not a folder: choose another place with --out", dir)
	}
	text, err := os.ReadFile(filepath.Join(dir, Marker))
	if errors.Is(err, fs.ErrNotExist) {
		return emptyFolder(dir)
	}
	if err != nil {
		return explain(err, "read the marker in", dir)
	}
	m, ok := readMarker(text)
	if !ok && cutOff(dir, text) {
		return nil
	}
	if !ok {
		return fmt.Errorf("%s holds a file %s that is not the marker of an edition: it is left alone. Choose another folder with --out", dir, Marker)
	}
	if m.BookID != e.BookID || m.Form != e.Form {
		return fmt.Errorf("%s is the %s edition of the book %q; this is the %s edition of %q. Remove that folder yourself, or choose another with --out",
			dir, m.Form, m.BookID, e.Form, e.BookID)
	}
	return onlyOurs(dir, m)
}

// cutOff says whether a folder is what a bind leaves that was killed while it
// wrote the marker, its first file: that file alone, with the beginning of a
// marker or nothing in it.
func cutOff(dir string, text []byte) bool {
	n := min(len(text), len(markerHead))
	if string(text[:n]) != markerHead[:n] {
		return false
	}
	entries, err := os.ReadDir(dir)
	return err == nil && len(entries) == 1
}

func emptyFolder(dir string) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return explain(err, "look into", dir)
	}
	for _, entry := range entries {
		if !droppings[entry.Name()] {
			return fmt.Errorf("%s is not an edition of this tool (it has no %s) and is not empty: it is left alone. Choose another folder with --out", dir, Marker)
		}
	}
	return nil
}

// onlyOurs refuses a folder into which somebody has put files of their own.
func onlyOurs(dir string, m markerOf) error {
	return filepath.WalkDir(dir, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return explain(err, "look into", path)
		}
		if entry.IsDir() || droppings[entry.Name()] {
			return nil
		}
		name, err := filepath.Rel(dir, path)
		if err != nil {
			return err
		}
		if !m.Files[filepath.ToSlash(name)] {
			return fmt.Errorf("%s is not a file of the edition and would be lost: move it out of %s first", path, dir)
		}
		return nil
	})
}
