// Package carried is what a released program has inside, so that it needs no
// project and no Go: the content of the handbook, the published values that it
// is compared with, and the engine of the page.
//
// It is one archive, which build/release makes and puts into the program with
// the build tag “release”. A program that is built without the tag, as in a clone
// of the project, carries nothing.
package carried

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io/fs"
	"sync"
)

// Names in the archive.
const (
	contentFolder = "content"
	checksFolder  = "checks"
	enginePacked  = "engine.packed"
)

// Has says whether this program carries a book.
func Has() bool { return len(archive) > 0 }

// Content is the content folder of the handbook.
func Content() (fs.FS, error) { return folder(contentFolder) }

// Checks are the published values that the handbook is compared with.
func Checks() (fs.FS, error) { return folder(checksFolder) }

// Engine is the engine of the page, as bundle.PackEngine packs it.
func Engine() ([]byte, error) {
	all, err := opened()
	if err != nil {
		return nil, err
	}
	return fs.ReadFile(all, enginePacked)
}

func folder(name string) (fs.FS, error) {
	all, err := opened()
	if err != nil {
		return nil, err
	}
	return fs.Sub(all, name)
}

var opened = sync.OnceValues(func() (*zip.Reader, error) {
	all, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil {
		return nil, fmt.Errorf("what this program carries cannot be read (is the file whole? its sum stands in checksums.txt): %w", err)
	}
	return all, nil
})

// Pack makes the archive. The same files give the same bytes: no times, the
// names in their order.
func Pack(content, checks fs.FS, engine []byte) ([]byte, error) {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, part := range []struct {
		name  string
		files fs.FS
	}{{checksFolder, checks}, {contentFolder, content}} {
		if err := addAll(w, part.name, part.files); err != nil {
			return nil, err
		}
	}
	// The engine is packed already.
	if err := add(w, &zip.FileHeader{Name: enginePacked, Method: zip.Store}, engine); err != nil {
		return nil, err
	}
	err := w.Close()
	return b.Bytes(), err
}

// addAll adds the files of a folder; fs.WalkDir goes through it in the order of
// the names.
func addAll(w *zip.Writer, folder string, files fs.FS) error {
	return fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return err
		}
		return add(w, &zip.FileHeader{Name: folder + "/" + name, Method: zip.Deflate}, text)
	})
}

func add(w *zip.Writer, header *zip.FileHeader, data []byte) error {
	out, err := w.CreateHeader(header)
	if err != nil {
		return err
	}
	_, err = out.Write(data)
	return err
}
