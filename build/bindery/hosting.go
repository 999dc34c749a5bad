package bindery

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// Files that only a copy on a server uses, from the edition's folder. The worker
// stands at the top, because it answers for the folder that it stands in.
const (
	workerPath   = "worker.js"
	manifestPath = "app.webmanifest"
	iconPath     = "assets/icon.svg"
)

// hosting makes what a copy on a server needs to be installed and to work
// without a network: a manifest, a sign, and a worker that knows every file.
func (w *work) hosting(e *Edition, script []byte) ([]File, error) {
	if len(script) == 0 {
		return nil, errors.New(workerPath + " would be empty")
	}
	manifest, err := w.manifest()
	if err != nil {
		return nil, err
	}
	list := []File{{iconPath, []byte(icon)}, {manifestPath, manifest}}
	kind := "columnbowl/" + e.BookID + "/"
	told := struct {
		Store string   `json:"store"`
		Kind  string   `json:"kind"`
		Files []string `json:"files"`
	}{Kind: kind}
	sum := sha256.New()
	for _, f := range append(append([]File{}, e.Files...), list...) {
		// A server hands out the engine itself; the script that carries it is for folders.
		if strings.HasPrefix(f.Path, assetsFolder+strings.TrimSuffix(engineScript, "js")) && strings.HasSuffix(f.Path, ".js") {
			continue
		}
		told.Files = append(told.Files, f.Path)
		io.WriteString(sum, f.Path)
		sum.Write(f.Data)
	}
	sum.Write(script)
	told.Store = kind + hex.EncodeToString(sum.Sum(nil))[:16]
	data, err := json.Marshal(told)
	if err != nil {
		return nil, err
	}
	worker := fmt.Appendf(nil, "const edition=%s;\n%s", data, script)
	return append(list, File{workerPath, worker}), nil
}

// manifest says how the handbook is installed.
func (w *work) manifest() ([]byte, error) {
	short, long := w.title()
	type sign struct {
		Src     string `json:"src"`
		Sizes   string `json:"sizes"`
		Type    string `json:"type"`
		Purpose string `json:"purpose"`
	}
	return json.MarshalIndent(struct {
		Name        string `json:"name"`
		ShortName   string `json:"short_name"`
		Description string `json:"description,omitempty"`
		Lang        string `json:"lang"`
		StartURL    string `json:"start_url"`
		Scope       string `json:"scope"`
		Display     string `json:"display"`
		Background  string `json:"background_color"`
		Theme       string `json:"theme_color"`
		Icons       []sign `json:"icons"`
	}{short + ": " + capital(long), short, w.book.Handbook.About, "en", "index.html", "./", "standalone", "#f4f6f1", "#f4f6f1",
		[]sign{{iconPath, "any", "image/svg+xml", "any"}}}, "", "  ")
}

// icon is the sign of the installed handbook: a bowl on its column, cut open.
const icon = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512" width="512" height="512">
<rect width="512" height="512" fill="#f4f6f1"/>
<path d="M208 40h96v150h-96z" fill="#cfe3ea"/>
<path d="M208 40v150M304 40v150" stroke="#18212a" stroke-width="18"/>
<path d="M208 190c-70 50-90 90-90 130s30 90 60 130h156c30-40 60-90 60-130s-20-80-90-130z" fill="#cfe3ea" stroke="#18212a" stroke-width="18" stroke-linejoin="round"/>
<path d="M256 40v432" stroke="#94421f" stroke-width="30"/>
<path d="M256 300c-40 0-70 20-84 60 40 24 128 24 168 0-14-40-44-60-84-60z" fill="#f1d4c4" stroke="#94421f" stroke-width="14" stroke-linejoin="round"/>
</svg>
`
