package bindery

import (
	"html/template"
	"strings"

	"columnbowl/build/markdown"
)

// onePaths are the pages that a book has once, by their names in links
// (markdown.Pages).
var onePaths = map[string]string{"home": homePath, "well-to-wire": chainPath, "desk": deskPath, "take-off": takeoffPath, "builds": buildsPath, "terms": termsPath,
	"parts": partsPath, "questions": askedPath, "practice": practicePath, "cards": cardsPath, "progress": progressPath, "glossary": glossaryPath, "pairs": pairsPath,
	"bowls": choicePath}

// links says where the links of a text lead, from a page with this root.
func (w *work) links(root string) func(*markdown.Link) markdown.Anchor {
	return func(l *markdown.Link) markdown.Anchor {
		a := markdown.Anchor{Title: l.Title}
		switch l.Scheme {
		case markdown.ToTerm:
			a.Href = root + termPath(l.ID)
		case markdown.ToPart:
			a.Href, a.Class = root+partPath(l.ID), "part"
			if p := w.book.PartByID[l.ID]; p != nil {
				a.Class = "part " + p.Motion
			}
		case markdown.ToChapter:
			a.Href = root + chapterPath(l.ID)
		case markdown.ToAsked:
			a.Href = root + questionPath(l.ID)
		case markdown.ToTrain:
			a.Href = root + exercisePath(l.ID)
		case markdown.ToPair:
			a.Href = root + pairPath(l.ID)
		case markdown.ToGuide:
			a.Href = root + guidePath(l.ID)
		case markdown.ToBuild:
			a.Href = root + buildPath(l.ID)
		case markdown.ToTable:
			for _, t := range w.book.Tables {
				if t.ID == l.ID {
					a.Href = root + tablePath(t)
				}
			}
		case markdown.ToPage:
			a.Href = root + onePaths[l.ID]
		}
		if l.Fragment != "" {
			a.Href += "#" + l.Fragment
		}
		return a
	}
}

// pieces renders a stretch of a page's text without its blocks, which the page
// shows elsewhere; tables of families stay in their place.
func (w *work) pieces(d *markdown.Doc, root string, from, to int) (template.HTML, error) {
	var b strings.Builder
	hooks := markdown.Hooks{Link: w.links(root), Block: w.bowlTable}
	for i := from; i < to; i++ {
		if d.Pieces[i].Kind == markdown.HeadingPart && hollow(d.Pieces[i:to]) {
			continue
		}
		if err := d.RenderPieces(&b, hooks, i, i+1); err != nil {
			return "", err
		}
	}
	return template.HTML(strings.TrimSpace(b.String())), nil
}

// hollow says whether a heading has no text of its own down to the next heading
// of its level: only blocks stand under it, and the page shows those elsewhere
// under headings of its own.
func hollow(rest []markdown.Piece) bool {
	for _, p := range rest[1:] {
		switch p.Kind {
		case markdown.BlockPart:
			if p.Block.Kind == markdown.Bowls {
				return false
			}
		case markdown.HeadingPart:
			if p.Head.Level <= rest[0].Head.Level {
				return true
			}
		default:
			return false
		}
	}
	return true
}
