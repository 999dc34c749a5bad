package site

// Desk is the page on which an enquiry is taken (desk.html).
type Desk struct {
	Frame
	Lead        string
	ChainURL    string // "" if the book has no such page
	AskedURL    string
	BowlsURL    string // "" if the book has no such page
	Sheet       *Sheet // required; opens empty
	Ask         []DeskAsk
	What        []DeskWhat
	Checks      map[string]string // by a term the place where published values check it
	Terms       []DeskTerm
	Example     []Fact // an enquiry to try the page with
	ExampleName string
}

// DeskAsk is a fact that is asked for, with the question for the customer and
// the reason. The order of the list is the order of asking.
type DeskAsk struct {
	Term string `json:"term"`
	Ask  string `json:"ask"`
	Why  string `json:"why"`
}

// DeskWhat is a prepared question: what answers it, and what it changes.
type DeskWhat struct {
	Ask    string   `json:"ask"`
	Show   []string `json:"show"`
	Change []string `json:"change,omitempty"`
	By     string   `json:"by,omitempty"`
	Sizes  []string `json:"sizes,omitempty"`
	Href   string   `json:"href,omitempty"` // the question of the counter that says more
}

// DeskTerm is a term that a sentence, a link or a file may bring.
type DeskTerm struct {
	ID     string   `json:"id"`
	Name   string   `json:"name"`
	Values []Choice `json:"values,omitempty"` // of a choice
}
