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

// DeskTerm is a term that a sentence, a link or a file may bring.
type DeskTerm struct {
	ID     string   `json:"id"`
	Name   string   `json:"name"`
	Values []Choice `json:"values,omitempty"` // of a choice
}
