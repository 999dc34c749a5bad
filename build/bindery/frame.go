package bindery

import (
	"cmp"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"columnbowl/calcwasm/drawing"
	"columnbowl/site"
)

// stand is where a page stands in the book.
type stand struct {
	hazards []string // of cautions.yaml, whose cautions stand at the opening
	path    string
	title   string // "" on the home page
	say     string // one sentence for the page's description
	place   string // id of its place on the rail; "" if it has none
	nav     string // the entry of the masthead that it is
	trail   []site.Link
	subs    []site.Link // entries under the place in force, from the edition's folder
	prev    *site.Link  // from the edition's folder
	next    *site.Link
	block   site.TitleBlock
}

// frame makes what all pages have in common.
func (w *work) frame(s stand) site.Frame {
	root := rootOf(s.path)
	short, _ := w.title()
	f := site.Frame{
		Script: root + w.assets.page, Style: root + w.assets.style,
		Book: short, BookID: w.book.Handbook.ID, Title: s.title, Description: s.say, Root: root, Units: w.units,
		Nav: []site.NavEntry{{Key: "terms", URL: root + termsPath}, {Key: "parts", URL: root + partsPath}}, Block: s.block, Prev: moved(s.prev, root), Next: moved(s.next, root),
	}
	if w.cuts != nil {
		f.Nav = slices.Insert(f.Nav, 0, site.NavEntry{Key: "builds", URL: root + buildsPath})
	}
	if w.practice != nil {
		f.Nav = append(f.Nav, site.NavEntry{Key: "practice", URL: root + practicePath})
	}
	if len(w.book.Asked) > 0 {
		f.Nav = append(f.Nav, site.NavEntry{Key: "questions", URL: root + askedPath})
	}
	if w.evidence != nil {
		f.Nav = append(f.Nav, site.NavEntry{Key: "sources", URL: root + sourcesPath})
	}
	if w.hasTakeOff() {
		f.Nav = slices.Insert(f.Nav, 0, site.NavEntry{Key: "takeoff", URL: root + takeoffPath})
	}
	if w.hasChain() {
		f.Nav = slices.Insert(f.Nav, 0, site.NavEntry{Key: "chain", URL: root + chainPath})
	}
	if w.hasDesk() {
		f.Nav = slices.Insert(f.Nav, 0, site.NavEntry{Key: "desk", URL: root + deskPath})
	}
	w.stops(&f, s.hazards)
	f.Guides = w.guideLinks(root)
	f.Block.Version = w.book.Handbook.Version
	for i := range f.Nav {
		f.Nav[i].Here = f.Nav[i].Key == s.nav
	}
	if s.path != homePath {
		f.Trail = append([]site.Link{{Name: short, URL: root + homePath}}, movedAll(s.trail, root)...)
	}
	if !w.loose {
		w.rail(&f, s, root)
	}
	return f
}

// title splits the book's title at its colon: the short one stands in the
// masthead, the rest at the top of the home page.
func (w *work) title() (short, long string) {
	short, long, _ = strings.Cut(w.book.Handbook.Title, ": ")
	return short, long
}

// moved makes a link that is written from the edition's folder one from a page.
func moved(l *site.Link, root string) *site.Link {
	if l == nil {
		return nil
	}
	out := *l
	out.URL = root + l.URL
	return &out
}

func movedAll(list []site.Link, root string) []site.Link {
	out := make([]site.Link, len(list))
	for i := range list {
		out[i] = *moved(&list[i], root)
	}
	return out
}

// rail draws the well with its places, upright and lying down.
func (w *work) rail(f *site.Frame, s stand, root string) {
	list := w.book.Handbook.Places
	if len(list) == 0 {
		return
	}
	places := make([]drawing.Place, len(list))
	here := -1
	for i, p := range list {
		lit := p.ID == s.place
		url := root + placePath(p.ID)
		places[i] = drawing.Place{ID: p.ID, Name: p.Name, Href: url, Depth: depthOf(p.ID, i, len(list)), Lit: lit, Here: s.path == placePath(p.ID)}
		entry := site.Place{ID: p.ID, Number: i + 1, Name: p.Name, URL: url, Here: lit}
		if lit {
			here = i
			entry.Sub = movedAll(s.subs, root)
			for _, l := range entry.Sub {
				places[i].Subs = append(places[i].Subs, drawing.Sub{Name: l.Name, Href: l.URL, Here: l.Here})
			}
		}
		f.Places = append(f.Places, entry)
	}
	rail, _ := drawing.Rail{Prefix: "rail-", Places: places}.Layout()
	f.Rail = w.railed(rail, root, isWell)
	// The strip is a button on phones and always needs a name.
	f.StripLabel = cmp.Or(s.title, f.Book)
	strip := drawing.Strip{Prefix: "strip-", Places: places}
	if here >= 0 {
		strip.Name = list[here].Name
		f.StripLabel = strconv.Itoa(here+1) + ", " + strip.Name
		if s.title != "" && !places[here].Here {
			strip.Detail = s.title
			f.StripLabel += ": " + s.title
		}
	}
	f.Strip = w.railed(strip.Layout(), root, isShape)
}

// mostSubs is how many entries the rail opens under a place. More make every page
// as long as the whole list; the page of the place has all of them.
const mostSubs = 60

// nearest are links to the pages of a list around the one that one is on; id is ""
// on a page that is none of them.
func nearest(ids []string, id string, link func(id string) site.Link) []site.Link {
	if len(ids) > mostSubs {
		from := min(max(0, slices.Index(ids, id)-mostSubs/2), len(ids)-mostSubs)
		ids = ids[from : from+mostSubs]
	}
	list := make([]site.Link, len(ids))
	for i, other := range ids {
		list[i] = link(other)
		list[i].Here = other == id
	}
	return list
}

// placed are the ids of the pages at each place, in the order of reading.
type placed map[string][]string

func (w *work) sortByPlace() {
	w.termsAt, w.partsAt, w.chaptersAt = placed{}, placed{}, placed{}
	for _, id := range w.terms {
		w.termsAt.put(w.book.TermByID[id].Place, id)
	}
	for _, id := range w.partList {
		w.partsAt.put(w.book.PartByID[id].Place, id)
	}
	for _, c := range w.book.Chapters {
		w.chaptersAt.put(c.Place, c.ID)
		w.chapters = append(w.chapters, c.ID)
	}
}

func (s placed) put(place, id string) { s[place] = append(s[place], id) }

// depthOf is where a place hangs; places that the drawing does not know stand
// one below the other.
func depthOf(id string, i, n int) float64 {
	if d, ok := drawing.DepthOf(id); ok {
		return d
	}
	return (float64(i) + 0.5) / float64(n)
}

func svg(s *drawing.Scene) template.HTML { return template.HTML(drawing.AppendSVG(nil, s)) }

// neighbours are the pages before and after one in a list of ids.
func neighbours(ids []string, id string, link func(id string) site.Link) (prev, next *site.Link) {
	for i, other := range ids {
		if other != id {
			continue
		}
		if i > 0 {
			l := link(ids[i-1])
			prev = &l
		}
		if i+1 < len(ids) {
			l := link(ids[i+1])
			next = &l
		}
	}
	return prev, next
}

// placeName is the name of a place, "" if it is not in the book.
func (w *work) placeName(id string) string {
	if p := w.book.PlaceByID[id]; p != nil {
		return p.Name
	}
	return ""
}

// placeTrail is the crumb of a place.
func (w *work) placeTrail(id string) []site.Link {
	if w.book.PlaceByID[id] == nil {
		return nil
	}
	return []site.Link{{Name: w.placeName(id), URL: placePath(id)}}
}
