package bindery

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"path"
	"strings"
	"sync"

	"columnbowl/build/bundle"
	"columnbowl/build/index"
	"columnbowl/calcwasm/answer"
)

const (
	assetsFolder = "assets/"
	fontName     = "columnbowl-math.woff2" // as the style sheet names it

	// namesScript tells the page how the files are called that it loads when it
	// needs them. Its own name stays, so that a page which has been open since
	// before a new edition finds the new files, all of one edition.
	namesScript = assetsFolder + "names.js"
)

// asset is a file of an edition that is no page and no drawing. It is made when
// it is asked for first. Its name carries a sum of its bytes, so that whoever
// has it need not ask for it again: other bytes, another name.
type asset struct {
	name  string // without the sum: "page.css"
	fixed bool   // others than our own pages look for it, so it has no sum
	late  bool   // the page learns its name from namesScript
	data  func() ([]byte, error)
}

// newAsset makes an asset whose bytes are made once.
func newAsset(name string, data func() ([]byte, error)) *asset {
	return &asset{name: name, data: sync.OnceValues(func() ([]byte, error) {
		made, err := data()
		if err == nil && len(made) == 0 {
			err = fmt.Errorf("%s%s would be empty", assetsFolder, name)
		}
		return made, err
	})}
}

func known(name string, data []byte) *asset {
	return newAsset(name, func() ([]byte, error) { return data, nil })
}

// path is where the asset stands in the edition.
func (a *asset) path() (string, error) {
	if a.fixed {
		return assetsFolder + a.name, nil
	}
	data, err := a.data()
	if err != nil {
		return "", err
	}
	return assetsFolder + summed(a.name, data), nil
}

// sumDigits is how many hexadecimal digits of the sum stand in a name. Two
// files of one name and different bytes meet once in 2^48.
const sumDigits = 12

// summed puts the sum of a file's bytes into its name, before the ending.
func summed(name string, data []byte) string {
	sum := sha256.Sum256(data)
	ending := path.Ext(name)
	return strings.TrimSuffix(name, ending) + "." + hex.EncodeToString(sum[:])[:sumDigits] + ending
}

// assets are the assets of an edition, those that every page needs first.
type assets struct {
	list              []*asset
	page, style, hubs string // paths of the scripts and the style sheet
}

// shelve lists the assets of a book. What every page names is made at once.
func (w *work) shelve(p Parts) error {
	font := known(fontName, p.Font)
	fontPath, err := font.path()
	if err != nil {
		return err
	}
	style := known("page.css", bytes.ReplaceAll(p.Style, []byte("url("+fontName+")"), []byte("url("+path.Base(fontPath)+")")))
	page, hub := known("page.js", p.PageScript), known("hub.js", p.HubScript)
	licence := known("columnbowl-math-OFL.txt", p.FontLicence)
	licence.fixed = true
	s := w.assets
	s.list = []*asset{page, hub, style, font, licence}
	for at, a := range map[*string]*asset{&s.page: page, &s.style: style, &s.hubs: hub} {
		if *at, err = a.path(); err != nil {
			return err
		}
	}
	s.list = append(s.list, w.lateAssets(p)...)
	names := newAsset(path.Base(namesScript), s.names)
	names.fixed = true
	s.list = append(s.list, names)
	return nil
}

// lateAssets are loaded by the page when it needs them: the engine, and what
// the engine needs of the book.
func (w *work) lateAssets(p Parts) []*asset {
	packed := newAsset(enginePacked, func() ([]byte, error) {
		if p.Packed != nil {
			return p.Packed, nil
		}
		return bundle.PackEngine(p.Wasm)
	})
	list := []*asset{packed,
		newAsset(engineScript, func() ([]byte, error) {
			data, err := packed.data()
			return bundle.EngineScript(data), err
		}),
		newAsset("book.js", func() ([]byte, error) { return bundle.BookScript(answer.Pack(w.engine, w.book.Assembly)) }),
		newAsset("words.js", func() ([]byte, error) { return bundle.PackScript(index.Words(w.book)) }),
	}
	if w.cuts != nil {
		list = append(list, newAsset("cutaway.js", func() ([]byte, error) { return bundle.PackScript(w.cuts.pack()) }))
	}
	if w.practice != nil {
		list = append(list, newAsset("exercises.js", func() ([]byte, error) { return bundle.PackScript(w.practice.pack()) }))
	}
	for _, a := range list {
		a.late = true
	}
	return list
}

// names is the script that hands the page the names of the late assets.
func (s *assets) names() ([]byte, error) {
	told := map[string]string{}
	for _, a := range s.list {
		if !a.late {
			continue
		}
		at, err := a.path()
		if err != nil {
			return nil, err
		}
		told[a.name] = path.Base(at)
	}
	text, err := json.Marshal(told) // sorted by name
	return fmt.Appendf(nil, "columnbowlNames(%s)\n", text), err
}

// files are all assets.
func (s *assets) files() ([]File, error) {
	var list []File
	for _, a := range s.list {
		at, err := a.path()
		if err != nil {
			return nil, err
		}
		data, err := a.data()
		if err != nil {
			return nil, err
		}
		list = append(list, File{at, data})
	}
	return list, nil
}

// find makes the asset that stands at a path, and no other one that is dear.
func (s *assets) find(file string) ([]byte, bool, error) {
	for _, a := range s.list {
		ending := path.Ext(a.name)
		if !strings.HasPrefix(file, assetsFolder+strings.TrimSuffix(a.name, ending)+".") || path.Ext(file) != ending {
			continue
		}
		if at, err := a.path(); err != nil || at != file {
			return nil, false, err
		}
		data, err := a.data()
		return data, err == nil, err
	}
	return nil, false, nil
}
