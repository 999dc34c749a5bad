package class

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// File is a file to write.
type File struct {
	Name string
	Text []byte
}

// Write writes files into a folder, which it makes if need be. What is there
// already stays as it is, and nothing is written, unless replace is set.
func Write(dir string, files []File, replace bool) error {
	var there []string
	for _, f := range files {
		if _, err := os.Lstat(filepath.Join(dir, f.Name)); err == nil {
			there = append(there, f.Name)
		} else if !os.IsNotExist(err) {
			return err
		}
	}
	if len(there) > 0 && !replace {
		return fmt.Errorf("%s holds %s already: nothing was written; name another folder with --out, or say --replace", dir, strings.Join(there, ", "))
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	for _, f := range files {
		if err := writeBeside(filepath.Join(dir, f.Name), f.Text); err != nil {
			return err
		}
	}
	return nil
}

// writeBeside writes a file beside its place and renames it, so that a failure
// leaves the earlier one whole.
func writeBeside(name string, text []byte) error {
	beside, err := os.CreateTemp(filepath.Dir(name), ".new-*")
	if err != nil {
		return err
	}
	_, err = beside.Write(text)
	if closed := beside.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Chmod(beside.Name(), 0o666&^umask)
	}
	if err == nil {
		err = os.Rename(beside.Name(), name)
	}
	if err != nil {
		os.Remove(beside.Name())
	}
	return err
}

// umask keeps written files readable for all and writable for their owner.
const umask = 0o022
