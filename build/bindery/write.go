package bindery

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
)

// Write puts an edition into a folder. The new edition is written beside the
// old one and takes its place only when it is whole, so that a bind that fails
// or is interrupted leaves the old edition as it was.
//
// An existing folder is replaced only if it is empty or an earlier edition of
// the same book and form and holds no file that the tool did not write.
func Write(e *Edition, dir string) error {
	return write(e, dir, realDisk{})
}

// disk is what Write does to the file system; tests put one in that fails.
type disk interface {
	MkdirAll(dir string) error
	WriteFile(path string, data []byte) error
	Rename(from, to string) error
	RemoveAll(path string) error
}

type realDisk struct{}

func (realDisk) MkdirAll(dir string) error                { return os.MkdirAll(dir, 0o755) }
func (realDisk) WriteFile(path string, data []byte) error { return os.WriteFile(path, data, 0o644) }
func (realDisk) Rename(from, to string) error             { return os.Rename(from, to) }
func (realDisk) RemoveAll(path string) error              { return os.RemoveAll(path) }

func write(e *Edition, dir string, d disk) error {
	target, err := settle(dir)
	if err != nil {
		return err
	}
	fresh, old := target+".new", target+".old"
	if err := putBack(e, target, old, d); err != nil {
		return err
	}
	for _, folder := range []string{target, fresh, old} {
		if err := replaceable(e, folder); err != nil {
			return err
		}
	}
	if err := clearAway(fresh, d); err != nil {
		return explain(err, "remove what an interrupted bind left in", fresh)
	}
	if err := fill(e, fresh, d); err != nil {
		// What was half written helps nobody. If it cannot be removed either,
		// the next bind does it.
		return errors.Join(err, clearAway(fresh, d))
	}
	return swap(target, fresh, old, d)
}

// settle makes the path absolute and follows a symbolic link, so that the
// renaming happens where the folder really is.
func settle(dir string) (string, error) {
	target, err := filepath.Abs(dir)
	if err != nil {
		return "", fmt.Errorf("the folder %s cannot be found: %w", dir, err)
	}
	if real, err := filepath.EvalSymlinks(target); err == nil {
		return real, nil
	}
	return target, nil
}

// putBack puts an old edition back that was moved aside by a bind which was
// killed between its two renames.
func putBack(e *Edition, target, old string, d disk) error {
	if _, err := os.Lstat(target); !errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	text, err := os.ReadFile(filepath.Join(old, Marker))
	if err != nil {
		return nil
	}
	if m, ok := readMarker(text); !ok || m.BookID != e.BookID {
		return nil
	}
	if err := d.Rename(old, target); err != nil {
		return explain(err, "put back", target)
	}
	return nil
}

// fill writes all files into a folder, the marker first: a folder left over
// from an interrupted bind is then known as our own.
func fill(e *Edition, dir string, d disk) error {
	if err := d.MkdirAll(dir); err != nil {
		return explain(err, "make", dir)
	}
	if err := d.WriteFile(filepath.Join(dir, Marker), e.marker()); err != nil {
		return explain(err, "write into", dir)
	}
	made := map[string]bool{dir: true}
	for _, f := range e.Files {
		path := filepath.Join(dir, filepath.FromSlash(f.Path))
		if folder := filepath.Dir(path); !made[folder] {
			if err := d.MkdirAll(folder); err != nil {
				return explain(err, "make", folder)
			}
			made[folder] = true
		}
		if err := d.WriteFile(path, f.Data); err != nil {
			return explain(err, "write", path)
		}
	}
	return nil
}

// swap puts the new folder in the place of the old one.
func swap(target, fresh, old string, d disk) error {
	if err := clearAway(old, d); err != nil {
		return explain(err, "remove", old)
	}
	_, err := os.Lstat(target)
	had := err == nil
	if had {
		if err := d.Rename(target, old); err != nil {
			return explain(err, "move aside", target)
		}
	}
	if err := d.Rename(fresh, target); err != nil {
		err = explain(err, "put the new edition in place of", target)
		if had {
			err = errors.Join(err, d.Rename(old, target))
		}
		return err
	}
	if err := clearAway(old, d); err != nil {
		return explain(err, "remove the earlier edition in", old)
	}
	return nil
}

// clearAway removes a folder, its marker last: what is left of it when the bind is
// killed meanwhile is still known as our own.
func clearAway(dir string, d disk) error {
	entries, _ := os.ReadDir(dir) // what cannot be read cannot be removed either, and is told there
	for _, entry := range entries {
		if entry.Name() == Marker {
			continue
		}
		if err := d.RemoveAll(filepath.Join(dir, entry.Name())); err != nil {
			return err
		}
	}
	return d.RemoveAll(dir)
}

// windowsFull is ERROR_DISK_FULL, which Windows reports in the place of ENOSPC
// (the list of system error codes of the Windows documentation).
const windowsFull = syscall.Errno(112)

// explain turns an error of the system into one for people.
func explain(err error, verb, path string) error {
	const kept = " The earlier edition, if there was one, is as it was."
	switch {
	case errors.Is(err, syscall.ENOSPC) || runtime.GOOS == "windows" && errors.Is(err, windowsFull):
		return fmt.Errorf("the disk is full: could not %s %s. Make room, or bind onto another disk with --out.%s", verb, path, kept)
	case errors.Is(err, syscall.EROFS):
		return fmt.Errorf("could not %s %s: this disk can only be read. Bind into another folder with --out.%s", verb, path, kept)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("could not %s %s: you may not write there. Change the rights of the folder above it, or bind into another folder with --out.%s", verb, path, kept)
	}
	return fmt.Errorf("could not %s %s: %w.%s", verb, path, err, kept)
}

// WriteFile writes an edition that is one file. It is written beside the old
// one and takes its place when it is whole.
func WriteFile(path string, data []byte) error {
	return writeFile(path, data, realDisk{})
}

func writeFile(path string, data []byte, d disk) error {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return fmt.Errorf("%s is a folder: name the file to write, such as %s", path, filepath.Join(path, "handbook"))
	}
	folder := filepath.Dir(path)
	if err := d.MkdirAll(folder); err != nil {
		return explain(err, "make", folder)
	}
	fresh := path + ".new"
	if err := d.WriteFile(fresh, data); err != nil {
		return errors.Join(explain(err, "write", fresh), d.RemoveAll(fresh))
	}
	if err := d.Rename(fresh, path); err != nil {
		return errors.Join(explain(err, "put the new edition in place of", path), d.RemoveAll(fresh))
	}
	return nil
}
