package site

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"html/template"
	"io"
)

// Files holds what the bundler reads: styles/page.css and all it imports,
// scripts/page.ts and scripts/hub.ts, words.json (imported by the scripts) and
// the signs.
//
//go:embed shells styles scripts signs words.json fonts/columnbowl-math.woff2 fonts/OFL.txt
var Files embed.FS

// Policy is the Content-Security-Policy of every page. It works from file://
// as well as from a server: in both floor browsers 'self' covers the files of
// the folder. connect-src lets a served page stream engine.packed; from file://
// it opens nothing.
const Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
	"img-src 'self' data:; font-src 'self' data:; connect-src 'self'; frame-src 'self'; manifest-src 'self'; " +
	"base-uri 'none'; form-action 'none'"

// HubPolicy is the Content-Security-Policy of hub.html.
const HubPolicy = "default-src 'none'; script-src 'self'"

// Set is the parsed shells with their words. It is safe for use by several
// goroutines at once.
type Set struct {
	pages *template.Template
	words map[string]string
	loose *Set // see Loose; nil in a loose set itself
}

// Shells parses all shells and checks that the words and the signs of every
// state are there.
func Shells() (*Set, error) {
	words, err := Words()
	if err != nil {
		return nil, err
	}
	sprite, err := signSprite()
	if err != nil {
		return nil, err
	}
	for _, s := range States {
		if words["state."+string(s)] == "" {
			return nil, fmt.Errorf("site/words.json has no word for the state %q: add \"state.%s\"", s, s)
		}
	}
	pages, err := template.New("").Funcs(functions(words, sprite)).ParseFS(Files, "shells/*.html")
	if err != nil {
		return nil, err
	}
	// A set that was used can no longer be cloned, so this is done at once.
	loose, err := pages.Clone()
	if err != nil {
		return nil, err
	}
	if loose, err = loose.ParseFS(Files, "shells/loose/loose.html"); err != nil {
		return nil, err
	}
	return &Set{pages: pages, words: words, loose: &Set{pages: loose, words: words}}, nil
}

// Loose is the same set without the frame: a page is its main element alone,
// with what was checked at its foot, for editions that have a frame of their own.
func (s *Set) Loose() *Set { return s.loose }

// Words returns every word of the interface by its key.
func Words() (map[string]string, error) {
	data, err := Files.ReadFile("words.json")
	if err != nil {
		return nil, err
	}
	var words map[string]string
	if err := json.Unmarshal(data, &words); err != nil {
		return nil, fmt.Errorf("site/words.json: %w", err)
	}
	return words, nil
}

// Write writes one page; what kind is told by the type: Term, Part, Chapter,
// PlacePage, TermIndex, PartIndex, Chain, Desk, Sources, Home, Hub, Handouts, Keys or
// ClassReport, or a pointer to one. The page is made in memory first, so that an error leaves nothing half written.
func (s *Set) Write(w io.Writer, page any) error {
	name, ok := shellOf(page)
	if !ok {
		return fmt.Errorf("site: there is no shell for a %T", page)
	}
	return s.execute(w, name, page)
}

// Piece writes one piece that stands inside a page: Sheet, Worked, Relation,
// Caution, Slips, Figure, Question, Pieces, Shown or ShownFile, or a pointer to one.
func (s *Set) Piece(piece any) (template.HTML, error) {
	name, ok := pieceOf(piece)
	if !ok {
		return "", fmt.Errorf("site: there is no piece for a %T", piece)
	}
	var b bytes.Buffer
	if err := s.execute(&b, name, piece); err != nil {
		return "", err
	}
	return template.HTML(b.String()), nil
}

// execute runs one template into memory and then into w.
func (s *Set) execute(w io.Writer, name string, data any) error {
	var b bytes.Buffer
	if err := s.pages.ExecuteTemplate(&b, name, data); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

// shellOf names the shell of a page.
func shellOf(page any) (string, bool) {
	switch page.(type) {
	case Term, *Term:
		return "term.html", true
	case Part, *Part:
		return "part.html", true
	case Chapter, *Chapter:
		return "chapter.html", true
	case PlacePage, *PlacePage:
		return "place.html", true
	case TermIndex, *TermIndex:
		return "terms.html", true
	case PartIndex, *PartIndex:
		return "parts.html", true
	case Chain, *Chain:
		return "chain.html", true
	case Desk, *Desk:
		return "desk.html", true
	case Choosing, *Choosing:
		return "bowls.html", true
	case TakeOff, *TakeOff:
		return "takeoff.html", true
	case Build, *Build:
		return "build.html", true
	case Builds, *Builds:
		return "builds.html", true
	case CounterQuestion, *CounterQuestion:
		return "asked.html", true
	case AskedIndex, *AskedIndex:
		return "questions.html", true
	case Glossary, *Glossary:
		return "glossary.html", true
	case Pair, *Pair:
		return "pair.html", true
	case PairIndex, *PairIndex:
		return "pairs.html", true
	case Guide, *Guide:
		return "guide.html", true
	case Rules, *Rules:
		return "rules.html", true
	case Sources, *Sources:
		return "sources.html", true
	case Home, *Home:
		return "home.html", true
	case Hub, *Hub:
		return "hub.html", true
	case Practice, *Practice:
		return "practice.html", true
	case Exercise, *Exercise:
		return "exercise.html", true
	case Cards, *Cards:
		return "cards.html", true
	case Progress, *Progress:
		return "progress.html", true
	case Handouts, *Handouts:
		return "handout.html", true
	case Keys, *Keys:
		return "key.html", true
	case ClassReport, *ClassReport:
		return "class.html", true
	}
	return "", false
}

// pieceOf names the template of a piece.
func pieceOf(piece any) (string, bool) {
	switch piece.(type) {
	case Sheet, *Sheet:
		return "sheet", true
	case Worked, *Worked:
		return "worked", true
	case Relation, *Relation:
		return "relation", true
	case Caution, *Caution:
		return "caution", true
	case Slips, *Slips:
		return "slips", true
	case Figure, *Figure:
		return "figure", true
	case CutInText, *CutInText:
		return "cutintext", true
	case Question, *Question:
		return "question", true
	case Pieces, *Pieces:
		return "listing", true
	case Shown, *Shown:
		return "shown", true
	case ShownFile, *ShownFile:
		return "shownfile", true
	}
	return "", false
}
