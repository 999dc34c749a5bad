package bindery

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"columnbowl/build/index"
	"columnbowl/calcwasm/answer"
)

// What the search finds is there: each page of the index stands in the edition,
// and so does the heading that it leads to.
func TestFoundPagesExist(t *testing.T) {
	b := loaded(t, realContent)
	e, err := Bind(b, testParts(t), Options{})
	if err != nil {
		t.Fatal(err)
	}
	d := answer.New(b.Engine)
	if err := d.Words(index.Words(b)); err != nil {
		t.Fatal(err)
	}
	queries := []string{}
	for _, p := range b.Pages() {
		queries = append(queries, p.Name)
		for _, h := range p.Doc.Headings {
			queries = append(queries, h.Text)
		}
		for _, q := range p.Doc.Blocks {
			queries = append(queries, q.Ask)
		}
	}
	seen := map[string]bool{}
	for _, q := range queries {
		var r struct{ Found []struct{ Href string } }
		if err := json.Unmarshal(d.Answer([]byte("find\t"+q)), &r); err != nil {
			t.Fatal(err)
		}
		for _, f := range r.Found {
			seen[f.Href] = true
		}
	}
	for href := range seen {
		path, anchor, _ := strings.Cut(href, "#")
		page, ok := e.File(path)
		if !ok {
			t.Errorf("%s is found, and not in the edition", path)
		} else if anchor != "" && !bytes.Contains(page, []byte(`id="`+anchor+`"`)) {
			t.Errorf("%s is found, and has no such heading", href)
		}
	}
	if len(seen) < len(b.Pages()) {
		t.Errorf("%d places are found for %d pages", len(seen), len(b.Pages()))
	}
	if words, ok := assetOf(e, "words.js"); !ok || !bytes.HasPrefix(words, []byte("columnbowlPack(")) {
		t.Error("the words are not in the edition")
	}
}
