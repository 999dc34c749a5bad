package reckon

import (
	"slices"
	"testing"
)

// A book with two cases of one hazard, one that adds nothing, and a caution that is a case of none.
func hazardBook(t *testing.T) *Book {
	t.Helper()
	block := func(head, body string) Block {
		return Block{Kind: CautionBlock, Term: "voltage", Head: head, Body: body}
	}
	b, problems := Load(&Source{ID: "small", Title: "Small", Hazards: []Hazard{{"current", "Current", "It kills."}},
		Terms: []TermSource{{ID: "voltage", Name: "Voltage", US: "V", SI: "V", From: "0 V", To: "1000 V"}},
		Blocks: []Block{
			block("by-hand", "when voltage > 1 V\ndanger current\nsay \"No hand on it.\""),
			block("odd", "when voltage > 500 V\nsay \"Is it so much?\""),
			block("live", "when voltage > 0 V\ndanger current"),
		}})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return b
}

// The words of a hazard are told once, where its first case stands, and its cases
// add what they have of their own; the page's engine tells the same.
func TestTellGroupsByHazard(t *testing.T) {
	made := hazardBook(t)
	read, err := Unpack(made.Pack())
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range []*Book{made, read} {
		told := b.Tell([]int{0, 1, 2})
		if len(told) != 2 {
			t.Fatalf("%d groups, want 2", len(told))
		}
		first, second := told[0], told[1]
		var own []string
		for _, c := range first.Own() {
			own = append(own, c.Say)
		}
		if first.Words() != "It kills." || !first.Danger() || first.ID() != "voltage/live" || !slices.Equal(own, []string{"No hand on it."}) {
			t.Errorf("the hazard tells %q (%s) and its cases %q", first.Words(), first.ID(), own)
		}
		if second.Hazard != nil || second.Words() != "Is it so much?" || second.Danger() || len(second.Own()) != 0 {
			t.Errorf("the other tells %q", second.Words())
		}
		for i, want := range []string{"It kills. No hand on it.", "Is it so much?", "It kills."} {
			if got := b.InFull(&b.Cautions[i]); got != want {
				t.Errorf("in full %q, want %q", got, want)
			}
		}
	}
}
