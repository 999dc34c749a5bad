package search_test

import (
	"testing"
	"unicode/utf8"

	"columnbowl/calcwasm/search"
)

// The pack goes to the page as JSON: a letter that is cut in two would come out
// as another.
func TestPackIsUTF8(t *testing.T) {
	b := search.NewBuilder(search.Kind{Name: "term", Before: "terms/", After: ".html"})
	b.Add(search.Page{Kind: "term", ID: "slip", Name: "η σ τ ω δ π"}, "", "ηα ηβ σα τα ωω é è ê")
	pack := b.Pack()
	if !utf8.Valid(pack) {
		t.Errorf("the pack is not UTF-8: %q", pack)
	}
	if _, err := search.Unpack(string(pack)); err != nil {
		t.Error(err)
	}
}
