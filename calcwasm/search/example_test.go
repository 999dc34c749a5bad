package search_test

import (
	"fmt"

	"columnbowl/calcwasm/search"
)

// An index is made once, when the book is bound, and searched with every key
// that is typed.
func Example() {
	b := search.NewBuilder(search.Kind{Name: "term", Before: "terms/", After: ".html"})
	b.Add(search.Page{Kind: "term", ID: "drawdown", Name: "Drawdown"}, "How far the water falls while pumping.", "")
	b.Add(search.Page{Kind: "term", ID: "pumping-level", Name: "Pumping level", Also: []string{"dynamic level"}}, "", "Static level plus drawdown.")
	pack := b.Pack()

	index, err := search.Unpack(string(pack))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, query := range []string{"draw", "drawdwon", "dinamic level"} {
		for _, f := range index.Find(query, 5) {
			fmt.Printf("%s: %s (%s, by its %s)\n", query, f.Name, index.Href(f.Page), f.Why)
		}
	}
	// Output:
	// draw: Drawdown (terms/drawdown.html, by its name)
	// draw: Pumping level (terms/pumping-level.html, by its text)
	// drawdwon: Drawdown (terms/drawdown.html, by its name)
	// drawdwon: Pumping level (terms/pumping-level.html, by its text)
	// dinamic level: Pumping level (terms/pumping-level.html, by its also)
}
