package epub

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"columnbowl/build/bindery"
)

// coverPage shows the cover.
func (b *volume) coverPage() []byte {
	body := fmt.Sprintf(`<section class="cover" epub:type="cover"><img src="%s" alt="%s"/></section>`, coverPath, escape(b.loose.Title+": "+b.loose.Long))
	return document(coverPage, escape(b.loose.Title), []byte(body))
}

// titlePage says what the book is, as the title block of a sheet does, and what
// it does not replace.
func (b *volume) titlePage() []byte {
	words, about := b.loose.Words, ""
	if b.loose.About != "" {
		about = "<p>" + escape(b.loose.About) + "</p>\n"
	}
	body := fmt.Sprintf(`<section class="titlepage" epub:type="titlepage">
<h1>%s</h1>
<p class="long">%s</p>
%s<table class="block"><tbody>
<tr><th scope="row">%s</th><td>%s</td></tr>
<tr><th scope="row">%s</th><td>%s</td></tr>
</tbody></table>
<p>%s</p>
<p>%s</p>
</section>`, escape(b.loose.Title), escape(b.loose.Long), about,
		escape(words["block.title"]), escape(b.loose.Title), escape(words["block.version"]), escape(b.loose.Version),
		escape(words["block.caution"]), escape(words["bound.demo"]))
	return document(titlePage, escape(b.loose.Title), []byte(body))
}

// section of the contents: a title, which may lead to a page, and its pages.
type section struct {
	title, href string
	leaves      []*bindery.Leaf
	under       []section
}

// nav is the contents of the book, which devices show as their own list too.
func (b *volume) nav() []byte {
	var w bytes.Buffer
	words := b.loose.Words
	fmt.Fprintf(&w, `<nav epub:type="toc" id="toc"><h1>%s</h1>`+"\n", escape(words["bound.contents"]))
	b.list(&w, b.contents())
	w.WriteString("</nav>\n")
	fmt.Fprintf(&w, `<nav epub:type="landmarks" hidden="hidden"><h2>%s</h2><ol>
<li><a epub:type="cover" href="%s">%s</a></li>
<li><a epub:type="toc" href="#toc">%s</a></li>
<li><a epub:type="bodymatter" href="%s">%s</a></li>
</ol></nav>`, escape(words["bound.landmarks"]), coverPage, escape(words["bound.cover"]), escape(words["bound.contents"]), pagePath(b.leaves[0].Path), b.leaves[0].Title)
	return document(navPage, escape(words["bound.contents"]), w.Bytes())
}

func (b *volume) list(w *bytes.Buffer, sections []section) {
	w.WriteString("<ol>\n")
	for _, s := range sections {
		if s.href != "" {
			fmt.Fprintf(w, `<li><a href="%s">%s</a>`, pagePath(s.href), s.title)
		} else {
			fmt.Fprintf(w, `<li><span>%s</span>`, s.title)
		}
		if len(s.leaves)+len(s.under) > 0 {
			w.WriteString("\n")
			under := s.under
			for _, l := range s.leaves {
				under = append(under, section{title: l.Title, href: l.Path})
			}
			b.list(w, under)
		}
		w.WriteString("</li>\n")
	}
	w.WriteString("</ol>\n")
}

// contents groups the pages: chapters in their order, what is looked up by the
// place on the way down the well.
func (b *volume) contents() []section {
	words := b.loose.Words
	var out []section
	done := map[string]bool{}
	for _, l := range b.leaves {
		kind := l.Kind()
		if done[kind] && kind != "" {
			continue
		}
		done[kind] = true
		var s section
		switch kind {
		case "":
			s = section{title: l.Title, href: l.Path}
		case "chapters":
			s = section{title: escape(words["bound.chapters"]), leaves: b.of(kind)}
		case "places":
			s = section{title: escape(words["rail"]), leaves: b.of(kind)}
		case "choices", "faults", "guides":
			s = section{title: escape(words["bound."+kind]), leaves: b.of(kind)}
		case "terms", "parts", "questions":
			s = b.headed(kind)
			s.under, s.leaves = b.byPlace(s.leaves), nil
		default:
			s = b.headed(kind)
		}
		out = append(out, s)
	}
	return out
}

// of are the pages of a kind, without their list.
func (b *volume) of(kind string) []*bindery.Leaf {
	var list []*bindery.Leaf
	for _, l := range b.leaves {
		if l.Kind() == kind && !l.Index() {
			list = append(list, l)
		}
	}
	return list
}

// headed are the pages of a kind under the page that lists them.
func (b *volume) headed(kind string) section {
	s := section{leaves: b.of(kind)}
	for _, l := range b.leaves {
		if l.Kind() == kind && l.Index() {
			s.title, s.href = l.Title, l.Path
		}
	}
	return s
}

// byPlace sorts pages under the places of the rail.
func (b *volume) byPlace(leaves []*bindery.Leaf) []section {
	var out []section
	for _, place := range append(slices.Clone(b.loose.Places), "") {
		s := section{title: escape(b.loose.PlaceName(place))}
		for _, l := range leaves {
			if l.Place == place {
				s.leaves = append(s.leaves, l)
			}
		}
		switch {
		case len(s.leaves) == 0:
		case place == "":
			for _, l := range s.leaves {
				out = append(out, section{title: l.Title, href: l.Path})
			}
		default:
			out = append(out, s)
		}
	}
	return out
}

// drawings are the drawings that the pages show, and the cover.
func (b *volume) drawings(style string) ([]item, error) {
	cover, err := b.cover(style)
	if err != nil {
		return nil, err
	}
	list := []item{{path: coverPath, media: "image/svg+xml", properties: "cover-image", data: cover}}
	for _, f := range b.loose.Files {
		if !slices.Contains(b.drawn, f.Path) {
			continue
		}
		list = append(list, item{path: f.Path, media: "image/svg+xml", data: []byte(restyled(string(f.Data), style))})
	}
	return list, nil
}

// restyled is a drawing with another style sheet in it.
func restyled(svg, style string) string {
	from, to := strings.Index(svg, "<style>"), strings.Index(svg, "</style>")
	if from < 0 || to < from {
		return svg
	}
	// The weight of the lines goes with the size of the drawing.
	weight := "1.8px"
	if strings.Contains(svg[:from], " small") {
		weight = "1.15px"
	}
	style = strings.ReplaceAll(style, "var(--w)", weight)
	svg = svg[:from] + "<style>" + strings.NewReplacer("&", "&amp;", "<", "&lt;").Replace(style) + svg[to:]
	// EPUB knows a drawing as an image, not as a group.
	return strings.NewReplacer(` data-theme="auto"`, "", ` role="group"`, ` role="img"`).Replace(svg)
}
