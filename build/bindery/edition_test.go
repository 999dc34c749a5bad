package bindery

import (
	"html"
	"net/url"
	"path"
	"regexp"
	"strings"
	"testing"

	"columnbowl/site"
)

// look is what the checks below need to know of all pages.
type look struct {
	edition *Edition
	ids     map[string]map[string]bool // of each page
	drawn   map[string]map[string]bool // ids of each drawing that is a file
	links   map[string][]string        // href, src and the like of each page
	clicks  map[string][]string        // where a reader can go from each page
}

// lookAt reads every page of an edition, and refuses what the policy of the
// pages forbids.
func lookAt(t *testing.T, e *Edition) *look {
	t.Helper()
	l := &look{edition: e, ids: map[string]map[string]bool{}, drawn: map[string]map[string]bool{}, links: map[string][]string{}, clicks: map[string][]string{}}
	for _, f := range e.Files {
		if strings.HasSuffix(f.Path, ".svg") {
			l.drawn[f.Path] = map[string]bool{}
			for _, m := range svgID.FindAllSubmatch(f.Data, -1) {
				l.drawn[f.Path][string(m[1])] = true
			}
		}
		if !strings.HasSuffix(f.Path, ".html") {
			continue
		}
		l.ids[f.Path] = map[string]bool{}
		if err := parse(string(f.Data), func(tag tag) { l.tag(t, f.Path, tag) }); err != nil {
			t.Errorf("%s is not well formed: %v", f.Path, err)
		}
	}
	return l
}

// svgID finds the ids of a drawing. Its style sheet keeps it from being read as
// strictly as a page.
var svgID = regexp.MustCompile(` id="([^"]+)"`)

func (l *look) tag(t *testing.T, page string, tag tag) {
	t.Helper()
	if tag.name == "style" {
		t.Errorf("%s: an inline <style>", page)
	}
	if tag.name == "script" && tag.attrs["src"] == "" {
		t.Errorf("%s: an inline <script>", page)
	}
	if way := tag.attrs["href"]; tag.name == "a" && way != "" {
		l.clicks[page] = append(l.clicks[page], way)
	}
	for name, value := range tag.attrs {
		switch {
		case name == "style" || strings.HasPrefix(name, "on"):
			t.Errorf("%s: <%s %s=%q>", page, tag.name, name, value)
		case name == "id":
			if l.ids[page][value] {
				t.Errorf("%s: the id %q stands twice", page, value)
			}
			l.ids[page][value] = true
		case name == "href" || name == "src" || name == "srcset" || name == "data-carry":
			l.links[page] = append(l.links[page], value)
		case name == "aria-labelledby" || name == "aria-describedby" || name == "for":
			for id := range strings.FieldsSeq(value) {
				l.links[page] = append(l.links[page], "#"+id)
			}
		case (name == "fill" || name == "clip-path" || name == "marker-end" || name == "mask") && strings.HasPrefix(value, "url("):
			l.links[page] = append(l.links[page], strings.TrimSuffix(strings.TrimPrefix(value, "url("), ")"))
		}
	}
}

// resolve checks that every link leads to a file of the edition, and every
// fragment to an id in it.
func (l *look) resolve(t *testing.T) {
	t.Helper()
	for page, links := range l.links {
		for _, link := range links {
			u, err := url.Parse(link)
			if err != nil || u.Scheme != "" || u.Host != "" || strings.HasPrefix(u.Path, "/") {
				t.Errorf("%s: the link %q leaves the edition (%v)", page, link, err)
				continue
			}
			goal := page
			if u.Path != "" {
				goal = path.Join(path.Dir(page), u.Path)
			}
			if _, ok := l.edition.File(goal); !ok {
				t.Errorf("%s: the link %q leads to no file", page, link)
				continue
			}
			if u.Fragment != "" && !onSheet(u.Fragment) && !l.ids[goal][u.Fragment] && !l.drawn[goal][u.Fragment] {
				t.Errorf("%s: the link %q leads to no id in %s", page, link, goal)
			}
		}
	}
}

// onSheet reports whether a fragment is no id: it says what the page is opened
// with, facts on a sheet or the seed of an exercise.
func onSheet(fragment string) bool {
	return strings.HasPrefix(fragment, "facts=") || strings.HasPrefix(fragment, "seed=")
}

// TestPagesHold checks every page of both books: well formed, nothing that the
// policy forbids, every link alive, everything within reach of the home page.
func TestPagesHold(t *testing.T) {
	for _, dir := range []string{tinyContent, realContent} {
		t.Run(dir, func(t *testing.T) {
			e := bind(t, dir, Options{})
			l := lookAt(t, e)
			l.resolve(t)
			l.reach(t)
			unshown(t, e)
		})
	}
}

// unshown sees that what stands behind the figures of a chapter or a question is
// for the proof alone, and on no page.
func unshown(t *testing.T, e *Edition) {
	t.Helper()
	line := regexp.MustCompile(`because (?:"|&#34;|&quot;)|language-behind`)
	for _, f := range e.Files {
		if strings.HasPrefix(f.Path, "chapters/") || strings.HasPrefix(f.Path, "questions/") {
			if m := line.Find(f.Data); m != nil {
				t.Errorf("%s shows a block “behind”: %s", f.Path, m)
			}
		}
	}
}

// mostClicks is how far from the home page a page may be.
const mostClicks = 3

// reach follows the links that a reader can click, from the home page: no page is
// left alone, and none is further away than a few clicks.
func (l *look) reach(t *testing.T) {
	t.Helper()
	clicks, queue := map[string]int{homePath: 0}, []string{homePath}
	for len(queue) > 0 {
		page := queue[0]
		queue = queue[1:]
		for _, link := range l.clicks[page] {
			u, err := url.Parse(link)
			if err != nil || u.Path == "" {
				continue
			}
			goal := path.Join(path.Dir(page), u.Path)
			if _, seen := clicks[goal]; !seen {
				clicks[goal] = clicks[page] + 1
				queue = append(queue, goal)
			}
		}
	}
	for page := range l.ids {
		n, seen := clicks[page]
		switch {
		case page == hubPath: // a hidden frame, no page for readers
		case !seen:
			t.Errorf("no link leads to %s", page)
		case n > mostClicks:
			t.Errorf("%s is %d clicks from the home page, more than %d", page, n, mostClicks)
		}
	}
}

// TestParseRefuses shows the reader of pages every fault that it looks for.
func TestParseRefuses(t *testing.T) {
	for _, bad := range []string{"<p>", "<p></div>", `<p class=a></p>`, `<p a="1" a="2"></p>`, "<p", "1 > 0<br>", "</p>"} {
		if err := parse(bad, func(tag) {}); err == nil {
			t.Errorf("%q passed for well formed", bad)
		}
	}
	if err := parse(`<!doctype html><p a="1" b>1 &gt; 0<br><svg><path d="M0"/></svg></p>`, func(tag) {}); err != nil {
		t.Error(err)
	}
}

// TestReadableWithoutScript looks for what a reader must find as plain text.
func TestReadableWithoutScript(t *testing.T) {
	e := bind(t, tinyContent, Options{})
	for page, wants := range map[string][]string{
		"terms/pumping-level.html": {
			"<mtext>pumping level</mtext><mo>=</mo><mtext>static level</mtext>", // the relation in words
			"<mi>PWL</mi>", "140 ft + 55 ft", "42.67 + 16.76", ">195<", "59.44", // letters, working, both systems
			"pumping level = 140 ft + 55 ft = 195 ft", // steps
			"You stopped at the static level", "−55", "data-state=\"fires\"", "Deeper than this test likes",
			"pumping level is more than 190 ft and drawdown is more than 0 ft",
		},
		"terms/drawdown.html":      {"rule of thumb", "an invented yardstick for this test", "an invented value for this test", "How it is used", "two-levels.html#the-fall"},
		"terms/static-level.html":  {"Danger", "195 ft − 55 ft", "& is < the pumping level"},
		"chapters/two-levels.html": {"<table>", "The pumping level, which holds the drawdown", "fact-sheet id=\"sheet-1\""},
		"parts/column-pipe.html":   {"rust at the threads", "stands still"},
		"well-to-wire.html":        {"Quillbeck Orchard", ">195<", `facts="static-level:140ft,drawdown:55ft"`},
		"index.html":               {"well-to-wire.html#facts=static-level:140ft,drawdown:55ft&want=pumping-level", "A book for the bindery"},
	} {
		data, ok := e.File(page)
		if !ok {
			t.Errorf("no page %s", page)
			continue
		}
		// Signs and spaces as a reader sees them.
		text := strings.ReplaceAll(html.UnescapeString(string(data)), "\u00a0", " ")
		for _, want := range append(wants, site.Policy) {
			if !strings.Contains(text, want) {
				t.Errorf("%s lacks %q", page, want)
			}
		}
	}
}
