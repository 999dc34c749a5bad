package site

import "html/template"

// Practice lists the exercises under the places of the pump (practice/index.html).
type Practice struct {
	Frame
	Count                 int
	CardsURL, ProgressURL string // required
	Groups                []PracticeGroup
}

// PracticeGroup is the exercises about one place, by level.
type PracticeGroup struct {
	ID      string // of the place
	Place   Link
	Entries []PracticeEntry
}

// PracticeEntry is one exercise of a list.
type PracticeEntry struct {
	Link
	ID     string // required
	Level  int    // 1 to 3
	Trains []Link // the terms that are asked
	Kinds  []string
}

// Exercise is the page of an exercise with one drawn sheet (practice/ID.html).
// The living page draws others with the same engine.
type Exercise struct {
	Frame
	ID, Name string // required
	Level    int    // 1 to 3
	Seed     string // of the printed sheet, required
	Trains   []Link
	Text     template.HTML // the situation; each fact in a <span data-fact>
	Cautions []string
	Numeric  bool // numbers are asked
	Items    []ExerciseItem
}

// ExerciseItem is one thing asked, with its key.
type ExerciseItem struct {
	N       int
	Kind    string // "number", "choice" or "order"
	Ask     string
	URL     string     // of the page of a number's term
	Unit    string     // of a number
	Options []Lettered // of a choice; of an order the things as shown
	Right   string     // the right answer, in words
	Steps   []string   // the way to a number
	Say     string     // why a choice is right
}

// Cards are the cards of terms and parts, to be learnt by heart
// (practice/cards.html). Without a script the page is a list of them.
type Cards struct {
	Frame
	Places       []Learnt // whose cards can be taken alone
	Terms, Parts []Card
}

// Card is what there is to know of a term or a part.
type Card struct {
	Link
	ID      string        // required: "t/" and the id of a term, "p/" and that of a part
	Place   string        // id of its place
	Says    string        // definition of a term, function of a part
	Formula template.HTML // of a term, MathML
	Picture string        // of a part: a drawing in which it is lit
}

// Progress is the page that shows how far somebody has come
// (practice/progress.html). The numbers are in the browser; the page brings the
// names.
type Progress struct {
	Frame
	Exercises, Terms, Parts []Learnt
	Chapters                []Learnt
}

// Learnt is one thing that progress is counted for.
type Learnt struct {
	ID   string   `json:"id"`
	Name string   `json:"name"`
	URL  string   `json:"url"`
	Of   []string `json:"of,omitempty"` // of a chapter: "t/…" and "p/…", what it speaks of
}
