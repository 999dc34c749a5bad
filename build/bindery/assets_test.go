package bindery

import (
	"bytes"
	"encoding/json"
	"path"
	"regexp"
	"strings"
	"testing"
)

// assetOf finds an asset by its plain name.
func assetOf(e *Edition, name string) ([]byte, bool) {
	ending := path.Ext(name)
	for _, f := range e.Files {
		if stem, ok := strings.CutPrefix(f.Path, assetsFolder+strings.TrimSuffix(name, ending)+"."); ok && strings.HasSuffix(stem, ending) {
			return f.Data, true
		}
	}
	return nil, false
}

// The names of assets carry the sums of their bytes, the list of names knows
// those that a page loads by itself, and the style sheet the font.
func TestAssetNames(t *testing.T) {
	parts := testParts(t)
	parts.Style = []byte("@font-face{src:url(columnbowl-math.woff2)}")
	e, err := Bind(loaded(t, tinyContent), parts, Options{})
	if err != nil {
		t.Fatal(err)
	}
	named := regexp.MustCompile(`^assets/([a-z-]+)\.([0-9a-f]{12})(\.[a-z0-9]+)$`)
	summedNames := 0
	for _, f := range e.Files {
		if m := named.FindStringSubmatch(f.Path); m != nil {
			summedNames++
			if want := assetsFolder + summed(m[1]+m[3], f.Data); f.Path != want {
				t.Errorf("%s should be %s", f.Path, want)
			}
		}
	}
	list, _ := e.File(namesScript)
	var names map[string]string
	text := strings.TrimSuffix(strings.TrimPrefix(string(list), "columnbowlNames("), ")\n")
	if err := json.Unmarshal([]byte(text), &names); err != nil {
		t.Fatalf("%v in %q", err, list)
	}
	for _, name := range []string{"engine.js", "engine.packed", "book.js", "words.js"} {
		if _, ok := e.File(assetsFolder + names[name]); !ok {
			t.Errorf("%s leads to %q, which is not there", name, names[name])
		}
	}
	if want := len(names) + 4; summedNames != want { // page.js, page.css, hub.js, the font
		t.Errorf("%d names with sums, want %d", summedNames, want)
	}
	style, _ := assetOf(e, "page.css")
	font := regexp.MustCompile(`url\(([^)]+)\)`).FindSubmatch(style)
	if data, ok := e.File(assetsFolder + string(font[1])); !ok || !bytes.Equal(data, parts.Font) {
		t.Errorf("the style sheet asks for the font %s", font[1])
	}
}
