// Package site holds what every page of the handbook is made of: the page
// shells, the style sheets, the scripts, the signs of the states and the words
// of the interface. It knows pages and nothing else: no Markdown, no engine,
// no files of a book. Whoever binds a book fills the structs of this file and
// hands them to [Shells].
//
// Every string field is plain text and is escaped by the shell. A field of type
// [template.HTML] is written as it is: it must be well formed and free of style
// attributes, inline handlers and scripts, because the pages forbid them.
// Every field may be left empty unless its comment says *required*; an empty
// field leaves no trace on the page (no empty heading, no empty list).
package site

import "html/template"

// State is what the engine knows about one term. The spelling is the one of
// the engine's replies; the word that readers see stands in words.json under
// "state."+State, the sign in signs/State.svg.
type State string

// The ten states of a term on a calculation sheet.
const (
	Given         State = "given"
	Follows       State = "follows"
	Estimated     State = "estimated"
	Assumed       State = "assumed"
	Missing       State = "missing"
	Waits         State = "waits"
	Clash         State = "clash"
	NotApplicable State = "not-applicable"
	Outside       State = "outside"
	Several       State = "several"
)

// States lists all states in the order in which a sheet counts them.
var States = []State{
	Given, Follows, Estimated, Assumed, Missing, Waits, Clash, NotApplicable, Outside, Several,
}

// Link is a way to another page of the book.
type Link struct {
	Name   string // required: what the reader sees
	URL    string // required: relative to the page it stands on
	Note   string // small words after it: a value, a first sentence
	Motion string // for parts only: "turns", "stands" or "both"; drawn as the line under the link
	Here   bool   // the page it stands on
}

// NavEntry is one entry of the masthead. Its name is the word "nav."+Key, so
// that the masthead of a second language needs no code. Enter only pages that
// were bound.
type NavEntry struct {
	Key  string // "chain", "terms" or "parts"
	URL  string
	Here bool
}

// Place is one of at most eleven places of the rail, from motor to well bottom.
type Place struct {
	ID     string
	Number int // 1 at the top
	Name   string
	URL    string
	Here   bool   // the place of this page
	Sub    []Link // entries under the place in force, the page itself with Here
}

// Frame is common to all pages with a masthead.
type Frame struct {
	Lang        string // language of the words; "" means "en"
	Book        string // required: title of the book
	BookID      string // required: id of the book, part of the keys of what the browser remembers
	Title       string // title of the page, plain text; "" on the home page
	Description string // one sentence for the page's description
	Script      string // required: where the script of the pages stands, from the page
	Style       string // required: where the style sheet stands, from the page
	Root        string // way from the page to the folder of index.html: "" or "../"
	Units       string // which number stands large before the reader chooses: "us" or "si"; "" means "us"

	Nav    []NavEntry
	Trail  []Link  // bread crumbs, home first, without the page itself
	Places []Place // top to bottom; the phone's list under the strip is made of it

	// Rail is the upright well with balloons, names and links drawn in it
	// (an <svg>), shown from 1089 px page width up; Strip is the well lying
	// down for narrower pages, 360 by 82. Without Rail there is no rail.
	// Ids inside the two must differ from each other.
	Rail, Strip template.HTML
	StripLabel  string // what the strip shows, for a screen reader: "4, Heads and losses: total head"

	Stop  string // the sentence before the dangers of the page; "" where there are none
	Stops []Stop // what can hurt somebody who does what the page is about

	Prev, Next *Link  // the pages before and after, at the foot
	Guides     []Link // for those who work with the book; shown on the first page and the lists
	Block      TitleBlock
}

// Stop is one danger of a page.
type Stop struct{ ID, Name, Say string }

// TitleBlock stands at the foot of a page and of every print.
type TitleBlock struct {
	Title   string // "" means the title of the page
	Scope   string // what the page covers: "bowls, from inlet to head outlet"
	Facts   string // whose facts: "Quillbeck Orchard"
	Sheet   string // number or place of the sheet: "4 of 31"
	Version string // version of the book
	Checks  []Check
	Checked string // one sentence on all checks of the page's term; "" where none are due
	Demo    bool   // a result of the page rests on an invented bowl: not for order
}

// Check is one published source that a computation of the page was compared with.
type Check struct {
	Source  string
	URL     string // of its place on the page of sources
	Cases   string // "7 published"
	Largest string // largest difference, in units of the source's rounding: "0.3"
}

// Figure is a drawing with its words.
type Figure struct {
	SVG     template.HTML // required: an <svg class="fig"> with a title or role="img" and a label
	Narrow  template.HTML // another layout for phones; "" means SVG serves both
	Title   string        // a heading above it
	Caption template.HTML
}

// Number is a formatted number with its unit, as the engine writes it.
// Both empty when there is none; U empty for a pure number.
type Number struct {
	N string // "24,973"
	U string // "m³/h"
}

// Both is one value in both systems of units, ready to print.
type Both struct {
	US, SI Number
}

// Relation is one relation of a term's page.
type Relation struct {
	// Words is MathML with the names of the terms, required. A formula does not
	// wrap on a phone: write one <math> for each added item, so that the line
	// can break between them.
	Words     template.HTML
	Letters   template.HTML // MathML with symbols
	SI        template.HTML // MathML of the SI partner of a trade formula
	Condition string        // when it holds, in words: "build is oil-lubricated"
	Strength  string        // required: "formula", "estimate" or "assume"
	Name      string        // name of an estimate, as read: "tube yardstick"
	Say       template.HTML // where an estimate comes from, why an assumption is made
	Rounded   string        // how closely the SI partner agrees, when not 0.05 %
}

// Choice is one value of a term that is a choice.
type Choice struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

// Alternative is one estimate that the reader may choose.
type Alternative struct {
	Name   string `json:"name"` // id of the estimate
	Say    string `json:"say"`
	US     string `json:"us"` // "6.4 ft"
	SI     string `json:"si"`
	Chosen bool   `json:"chosen"`
}

// Row is one line of a calculation sheet, or, when Heading is set, the heading
// of a group of lines (then all other fields are ignored).
type Row struct {
	Heading string
	Anchor  string // id of a heading, for links; "" for none

	Term, Name, URL string   // required: id, name and page of the term
	State           State    // required
	Value           Both     // empty for missing, waits and not-applicable
	UnitUS, UnitSI  string   // units as printed, also while the value is missing; "" for pure numbers and choices
	WorkUS, WorkSI  string   // right-hand side with numbers put in
	Relation        string   // the relation used, in words: "pumping level = static level + drawdown"
	Note            string   // words beside it
	Ask             string   // the question for a missing fact
	Clash           string   // what clashes, in words
	Choices         []Choice // values, when the term is a choice
	Choice          string   // id of the value in force
	Alternatives    []Alternative
	Fact            string // text of the fact behind a given row, as in the link: "140 ft"
	Wanted          bool   // the term looked for: drawn between result rules
}

// Fact is one fact as it travels in links: a term and a text such as "140 ft"
// or the id of a choice.
type Fact struct {
	Term, Text string
}

// Sheet is a calculation sheet: the numbers stand there as text and come alive
// with the script. The set and order of the rows never changes on a page.
type Sheet struct {
	ID     string // required: id of the element, unique on the page
	Want   string // id of the term looked for; "" if none is
	Units  string // which number stands large in the printed lines, as in Frame
	Title  string // required: "Quillbeck Orchard"
	Facts  []Fact // the facts it opens with, and goes back to
	Choose []Fact // estimates chosen from the start: term and name of the estimate
	Count  map[State]int
	Rows   []Row
	Rules  string // id of the table on the page whose rows follow it; "" for none
	Pieces bool   // it asks for the parts of the pump as well, for a list on the page
	Carry  string // URL of the chain page, where these facts can be carried; "" on the chain page itself
	Demo   bool   // rests on an invented bowl
	Desk   bool   // the enquiry sheet of the desk, which looks after its facts
}

// Worked is a worked example with its steps as text.
type Worked struct {
	Title          string // required
	Given          []Line
	Expect         []Line
	Steps, StepsSI []string // from the given facts to the result, one line each
	SheetID        string   // id of the Sheet on this page that can take these facts; "" if none
	Facts          []Fact   // the given facts in link form
	Want           string   // the term looked for
}

// Line is one named value of a worked example.
type Line struct {
	Name  string
	URL   string
	Value Both
	Text  string // instead of Value when the term is a choice
}

// Slip is one way in which people get a term wrong.
type Slip struct {
	Number int           // its balloon on the number line, 1 and up
	Wrong  template.HTML // the wrong relation, MathML or text
	Gives  Both          // what it gives in the example
	Off    Both          // difference from the right number, with its sign
	Say    template.HTML // required: what to tell the person
	In     string        // title of the worked example, when it is not that of Slips
}

// Slips is the part of a term's page called "Where people slip".
type Slips struct {
	Example string // title of the worked example that the numbers belong to
	Right   Both   // the right number in it
	Picture Figure // the number line with the balloons; may be empty
	List    []Slip
}

// Caution is a condition that means danger or nonsense, with its text.
type Caution struct {
	ID     string        // "total-head/shut-valve": lets a sheet on the page say whether it fires
	Danger bool          // it can hurt someone
	When   string        // the condition in words
	Say    template.HTML // required
	State  string        // "fires", "clear" or "unchecked" with the sheet's first facts; "" if not asked
	Lacks  []string      // names of the terms that the check lacks
}

// ChainLink is one link of the chain of dimensions from well to wire.
type ChainLink struct {
	Name, URL string
	Value     Both // "" when State says why there is none
	State     State
	Here      bool
}

// Term is the page of a quantity (terms/ID.html).
type Term struct {
	Frame
	ID, Name   string        // required
	Symbol     template.HTML // MathML
	UnitUS     string        // "feet (ft)"; "" for pure numbers and choices
	UnitSI     string
	Also       []string // other words people say
	Definition template.HTML
	Values     []Choice // of a choice: what can be chosen
	Relations  []Relation
	Figures    []Figure // beside definition and relations
	Chain      []ChainLink
	Sheet      *Sheet
	Body       template.HTML // further text, after the sheet
	Worked     []Worked
	Slips      *Slips
	Cautions   []Caution
	Confused   []Link // easily confused with
	StandsOn   []Link // terms that it follows from
	UsedBy     []Link // terms that follow from it
	Parts      []Link // parts that it is about
	Pairs      []Link // pages that show it beside what it is taken for
	Sources    []template.HTML
}

// Part is the page of a component (parts/ID.html).
type Part struct {
	Frame
	ID, Name   string // required
	Also       []string
	Function   template.HTML // first paragraph: what it does
	Body       template.HTML // further text
	Lit        []Lit         // where it is, in each build that has it
	Builds     []string      // "water-lubricated", "oil-lubricated", "submersible"
	Motion     string        // "turns", "stands" or "both"
	Wetted     []string      // of "water", "oil", "leakage", "grease", "filling", "dry"
	Pressure   string        // "yes" or "no": holds discharge or bowl pressure
	PerPump    string        // how many: "1; often in two pieces"
	Counts     []PartCount   // how many there are in the pumps of the take-off
	CountedAt  string        // the setting of these pumps
	Material   string
	Size       string // how it is sized
	Wear       string // signs of wear and failure
	Neighbours []Neighbour
	Confused   []Link
	Terms      []Link // terms that are about it
	Pairs      []Link // pages that show it beside what it is taken for
	Cautions   []Caution
	Sources    []template.HTML
}

// PartCount is how many of a part a pump has.
type PartCount struct{ Build, Count string }

// Neighbour is a part that touches this one.
type Neighbour struct {
	Where string // "above", "below", "inside" or "outside"
	Link  Link
}

// Chapter is a page of running text (chapters/ID.html). Its Body may hold
// pieces made by [Set.Piece]: sheets, worked examples, cautions, questions.
type Chapter struct {
	Frame
	ID, Name string      // required
	Number   int         // in the order of the book, from 1
	Minutes  int         // how long it takes to read; 0 if that is not told
	Chain    []ChainLink // the chain in its groups, those that it is about with Here
	Aims     []string
	Body     template.HTML
	Contents []Link // headings of Body, as "#id"
	Takeaway []string
	Figures  []Figure
	Sources  []template.HTML
}

// Question is a piece of a chapter: the answer stays folded until opened.
type Question struct {
	Ask    template.HTML
	Answer template.HTML
}

// CounterQuestion is a question of the counter with its answer (questions/ID.html).
type CounterQuestion struct {
	Frame
	ID, Name string   // required; Name is the question
	Also     []string // other ways to ask it
	Answer   template.HTML
	Body     template.HTML // why
	Sources  []template.HTML
}

// AskedIndex lists the questions of the counter (questions/index.html).
type AskedIndex struct {
	Frame
	Count  int
	Groups []AskedGroup
}

// AskedGroup is the questions about one place of the pump; the note of each is
// its short answer.
type AskedGroup struct {
	Place     Link
	Questions []Link
}

// Build is the page of one of the three pumps (builds/ID.html).
type Build struct {
	Frame
	ID, Name string // required
	Says     template.HTML
	Cuts     []Cut // the whole pump first, then its details
	Made     []Made
}

// Made is a choice in how the pump of a page is made.
type Made struct {
	ID, Title string       // required; the id is that of the usual option
	Sheets    string       // that change with it, split by spaces
	Idle      string       // option of another choice that leaves nothing to choose here, or ""
	Options   []MadeOption // the usual one first
}

// MadeOption is one way of making it.
type MadeOption struct {
	ID, Name string // required
	Parts    []MadePart
}

// MadePart is a part that comes with an option.
type MadePart struct {
	ID   string
	Link Link
}

// Builds is the page that compares the pumps (builds/index.html).
type Builds struct {
	Frame
	Pumps  []Pump
	Groups []PartGroup // in the order of the pumps
}

// Pump is a build on the page that compares them.
type Pump struct {
	Cut   Cut
	Plain CutFile // the drawing without numbers
	URL   string
	Says  template.HTML
}

// PartGroup is the parts of one place of the pump.
type PartGroup struct {
	Place Link
	Parts []PartRow
}

// PartRow is a part and the builds that have it, in the order of the pumps.
type PartRow struct {
	ID   string
	Link Link
	In   []bool
}

// Cut is a cutaway drawing with the list of what it numbers. The same drawing
// comes in layouts for three widths of the page.
type Cut struct {
	ID, Build   string // required: name of the sheet, and the pump
	Title, Says string
	Alt         string  // what the drawing shows, for those who do not see it
	Layouts     Layouts // required
	Labels      []CutLabel
	Follow      string // what can be followed in it, split by spaces
	Apart       bool   // its assemblies can be pulled apart
	Stages      int    // how many it shows, if a reader can change that; otherwise 0
}

// CutInText is a cutaway drawing in a running text.
type CutInText struct {
	Cut     Cut
	URL     string // of the sheet on the page of its pump
	Caption template.HTML
}

// Layouts are the same drawing for three widths of the page.
type Layouts struct{ Wide, Middle, Narrow CutFile }

// CutFile is a layout of a drawing as a file, with its size in px.
type CutFile struct {
	URL  string
	W, H int
}

// CutLabel is one number of a drawing. A feature of a part has no page.
type CutLabel struct {
	Number   int
	ID, Part string // id of the label; of the part it is or belongs to, "" for none
	Turns    bool
	Link     Link
	Says     string
}

// Lit is a drawing with a part lit in it.
type Lit struct {
	Build, Sheet string
	With         string // how the pump is made, if otherwise than usual
	URL          string // of the sheet on the page of its pump
	Number       int    // of the part in the drawing; 0 if it has none
	Layouts      Layouts
	Alt          string
}

// PlacePage is the page of one place of the rail (places/ID.html).
type PlacePage struct {
	Frame
	ID, Name string // required
	Number   int
	About    template.HTML
	Figures  []Figure
	Chapters []Link
	Terms    []IndexEntry
	Parts    []IndexEntry
}

// IndexEntry is one line of a list of terms or parts.
type IndexEntry struct {
	Link
	Symbol     template.HTML // of a term, MathML
	UnitUS     string        // of a term, short: "ft"
	UnitSI     string
	Builds     []string // of a part
	Everywhere bool     // the part is in all builds
	First      string   // first sentence of the definition
	Place      Link     // where it hangs on the rail
	Also       []string // other words; each is listed with "see"
}

// IndexGroup is the entries under one letter.
type IndexGroup struct {
	Letter  string
	Entries []IndexEntry
}

// TermIndex is the list of all terms (terms/index.html).
type TermIndex struct {
	Frame
	Count       int
	GlossaryURL string
	Groups      []IndexGroup
}

// PartIndex is the list of all parts (parts/index.html).
type PartIndex struct {
	Frame
	Count       int
	GlossaryURL string
	Groups      []IndexGroup
}

// Chain is the page from well to wire: up to three pictures on one datum and
// one sheet with the whole chain in groups (well-to-wire.html).
type Chain struct {
	Frame
	Lead     template.HTML
	Pictures []Figure
	Details  []Figure // pictures with a scale of their own
	Sheet    *Sheet   // required
	Cautions []Caution
	Sources  []template.HTML
}

// Sources is the page of what stands outside the book (sources.html).
type Sources struct {
	Frame
	Summary string // one sentence on all of them
	Sources []Source
	Unknown []Link // terms without an outside check
}

// Source is one published work and the cases taken from it.
type Source struct {
	ID      string // of its place on the page
	Title   string // the work, its table and page
	ReadIn  string // where it was read
	Notes   []string
	Cases   string // "12 published, 3 arithmetic"
	Largest string
	Apart   []string // what the book and the source do not agree on, and why
	Table   []CaseRow
}

// CaseRow is one published value beside the one computed.
type CaseRow struct {
	Name, Given string
	Term        Link
	Published   string // with its tolerance
	Computed    string
	Mark        string
	Off         string // the difference in units of the source's rounding
	Note        string
}

// Home is index.html. A door without entries is not drawn.
type Home struct {
	Frame
	Lead       string        // the sentence at the top: what the book is
	About      template.HTML // a short paragraph below it
	Figure     *Figure       // a drawing beside the doors
	Chapters   []Link        // door "learn"
	TermCount  int           // door "look up"
	TermsURL   string
	Terms      []Link // a few to begin with
	PartCount  int
	PartsURL   string
	Parts      []Link
	ChainURL   string // door "work it out"
	ChainCount int    // lines on the sheet
	ChainTerms []Link // results to look for, as links with facts

	// Further pages; "" where the book has none.
	QuestionsURL, PumpsURL, TakeOffURL, PracticeURL string
	CardsURL, ProgressURL                           string
	Exercises                                       []Link // a few to begin with
	DeskURL, ChoiceURL                              string
	GlossaryURL, PairsURL                           string
	Tables                                          []Link // of choices and faults
	QuestionCount, PracticeCount                    int
}

// Hub is hub.html, the hidden page that remembers for all others. It shows nothing.
type Hub struct {
	Lang string
	Book string // required: title, for the title element

	Script string // required: where its script stands
}
