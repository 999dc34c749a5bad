package ask_test

import (
	"fmt"

	"columnbowl/calcwasm/ask"
	"columnbowl/calcwasm/reckon"
)

// A book of three terms, the words for them, and a sentence.
func Example() {
	level := func(id, name string) reckon.TermSource {
		return reckon.TermSource{ID: id, Name: name, US: "ft", SI: "m", From: "0 ft", To: "3000 ft", Ask: "How many feet?"}
	}
	book, problems := reckon.Load(&reckon.Source{ID: "small", Title: "Small", Terms: []reckon.TermSource{
		level("drawdown", "Drawdown"), level("pumping-level", "Pumping level"), level("static-level", "Static level")}})
	if len(problems) > 0 {
		fmt.Println(problems)
		return
	}
	words := ask.Source{
		Names: []ask.Said{{Term: "drawdown", Say: []string{"drawdown"}}},
		Cues:  []ask.Said{{Term: "static-level", Say: []string{"static"}}, {Term: "drawdown", Say: []string{"draws .. down"}}},
		Hints: []ask.Said{{Term: "static-level", Say: []string{"water"}}, {Term: "pumping-level", Say: []string{"water"}}},
	}
	reader, err := ask.Open(string(words.Pack()), book)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, sentence := range []string{"well 180 ft static, draws down 40", "water at 55 m"} {
		for _, r := range reader.Read(sentence) {
			c := r.Candidates[0]
			fmt.Printf("%s: %s, %s = %s\n", sentence[r.From:r.To], r.State, book.Terms[c.Term].ID, c.Value)
			if r.State == ask.Asked {
				fmt.Println(r.Message)
			}
		}
	}
	// Output:
	// 180 ft: sure, static-level = 180 ft
	// 40: sure, drawdown = 40 ft
	// 55 m: ask, static-level = 55 m
	// Is 55 m the static level or the pumping level?
}
