package book

import (
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
)

// Memory is a content folder that stands in memory: the text of each file by
// its name.
type Memory map[string][]byte

var (
	_ fs.ReadFileFS = Memory{}
	_ fs.ReadDirFS  = Memory{}
	_ fs.StatFS     = Memory{}
)

// Open is not needed by the loading, which reads whole files and folders.
func (m Memory) Open(name string) (fs.File, error) {
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrInvalid}
}

func (m Memory) ReadFile(name string) ([]byte, error) {
	if text, ok := m[name]; ok {
		return text, nil
	}
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}

func (m Memory) Stat(name string) (fs.FileInfo, error) {
	if text, ok := m[name]; ok {
		return entry{path.Base(name), len(text), false}, nil
	}
	for file := range m {
		if strings.HasPrefix(file, name+"/") {
			return entry{path.Base(name), 0, true}, nil
		}
	}
	return nil, &fs.PathError{Op: "stat", Path: name, Err: fs.ErrNotExist}
}

func (m Memory) ReadDir(name string) ([]fs.DirEntry, error) {
	var list []fs.DirEntry
	seen := map[string]bool{}
	for file, text := range m {
		rest, inside := strings.CutPrefix(file, name+"/")
		if !inside {
			continue
		}
		first, _, deeper := strings.Cut(rest, "/")
		if !seen[first] {
			seen[first] = true
			list = append(list, fs.FileInfoToDirEntry(entry{first, len(text), deeper}))
		}
	}
	if len(list) == 0 {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	slices.SortFunc(list, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return list, nil
}

// entry is a file or a folder of memory.
type entry struct {
	name   string
	size   int
	folder bool
}

func (e entry) Name() string       { return e.name }
func (e entry) Size() int64        { return int64(e.size) }
func (e entry) ModTime() time.Time { return time.Time{} }
func (e entry) IsDir() bool        { return e.folder }
func (e entry) Sys() any           { return nil }
func (e entry) Mode() fs.FileMode {
	if e.folder {
		return fs.ModeDir | 0o555
	}
	return 0o444
}
