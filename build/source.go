package main

import (
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"

	"columnbowl/build/carried"
	"columnbowl/build/serve"
)

// defaultContent is the content folder of the project, and defaultChecks where
// the project keeps the published values.
const (
	defaultContent = "content"
	defaultChecks  = "testdata/published/checks"
)

// source is where the content comes from.
type source struct {
	files fs.FS
	name  string // how messages name the folder
	disk  bool   // it stands on the disk, and can be edited
}

// openSource opens the content folder that was named. Without a name it is
// ./content, and where that is not, the book inside this program.
func openSource(named string) (*source, error) {
	dir := named
	if dir == "" {
		dir = defaultContent
	}
	if info, err := os.Stat(dir); err == nil && info.IsDir() {
		return &source{os.DirFS(dir), dir, true}, nil
	}
	if named != "" || !carried.Has() {
		return nil, fmt.Errorf("there is no content folder %s; name one with --content DIR", dir)
	}
	files, err := carried.Content()
	return &source{files, defaultContent, false}, err
}

// checks are the published values to compare the book with, and how messages
// name their folder; nil for none. One that was not named may be missing:
// another book need not have one.
func (s *source) checks(named string) (fs.FS, string, error) {
	switch {
	case named != "":
		if !isFolder(named) {
			return nil, "", fmt.Errorf("there is no folder %s with published values", named)
		}
		return os.DirFS(named), named, nil
	case !s.disk:
		files, err := carried.Checks()
		return files, serve.ChecksFolder, err
	}
	if own := path.Join(filepath.ToSlash(s.name), serve.ChecksFolder); isFolder(own) {
		return os.DirFS(own), own, nil
	}
	if s.name == defaultContent && isFolder(defaultChecks) {
		return os.DirFS(defaultChecks), defaultChecks, nil
	}
	return nil, "", nil
}

func isFolder(dir string) bool {
	info, err := os.Stat(filepath.FromSlash(dir))
	return err == nil && info.IsDir()
}
