package bindery

import (
	"html"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
)

// guides is the bound handbook, once for all tests here.
var guides struct {
	once  sync.Once
	book  *book.Book
	bound *Edition
	files map[string]string // what stands under each shown file
}

func guidesOf(t *testing.T) (*book.Book, *Edition, map[string]string) {
	t.Helper()
	guides.once.Do(func() { guides.book, guides.bound, guides.files = boundGuides(t) })
	return guides.book, guides.bound, guides.files
}

// boundGuides binds the handbook and cuts the shown files out of its guides.
func boundGuides(t *testing.T) (*book.Book, *Edition, map[string]string) {
	t.Helper()
	b := loaded(t, realContent)
	e, err := Bind(b, testParts(t), Options{})
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, g := range b.Guides {
		page, ok := e.File(guidePath(g.ID))
		if !ok {
			t.Fatalf("the guide %s has no page", g.ID)
		}
		for _, section := range strings.Split(string(page), `<section class="shownfile"`)[1:] {
			section, _, _ = strings.Cut(section, "</section>")
			_, name, _ := strings.Cut(section, "<b>")
			name, _, _ = strings.Cut(name, "</b>")
			files[name] = section
		}
	}
	return b, e, files
}

var (
	aTag   = regexp.MustCompile(`<[^>]*>`)
	anID   = regexp.MustCompile(`\sid="([^"]*)"`)
	aRef   = regexp.MustCompile(`\s(?:aria-labelledby|aria-describedby|for)="([^"]*)"`)
	aGoal  = regexp.MustCompile(`<a [^>]*href="([^"]*)"`)
	aCode  = regexp.MustCompile(`(?s)<pre class="written"><code>(.*?)</code></pre>`)
	aKind  = regexp.MustCompile("(?m)^```([a-z]+)")
	spaces = regexp.MustCompile(`\s+`)
)

// What is shown of a file is the file, nothing more or less, and each stretch
// of it stands beside what becomes of it.
func TestGuidesShowWholeFiles(t *testing.T) {
	b, e, files := guidesOf(t)
	examples := b.Examples()
	if len(examples) < 12 || len(files) != len(examples) {
		t.Fatalf("%d files are shown of %d examples", len(files), len(examples))
	}
	for _, x := range examples {
		section := files[x.File]
		var code strings.Builder
		rows := aCode.FindAllStringSubmatch(section, -1)
		for _, m := range rows {
			code.WriteString(html.UnescapeString(aTag.ReplaceAllString(m[1], "")) + "\n")
		}
		if spaces.ReplaceAllString(code.String(), " ") != spaces.ReplaceAllString(strings.TrimLeft(x.Block.Body, "\n"), " ") {
			t.Errorf("%s is not shown as it is written", x.File)
		}
		if n := strings.Count(section, `<div class="becomes">`); n != len(rows) {
			t.Errorf("%s: %d of %d stretches have a result", x.File, n, len(rows))
		}
		if strings.Contains(section, "data-") || regexp.MustCompile(`<[a-z]+-[a-z]+[ >]`).MatchString(section) {
			t.Errorf("%s: something of the result is alive", x.File)
		}
		for _, m := range aGoal.FindAllStringSubmatch(section, -1) {
			goal, _, _ := strings.Cut(m[1], "#")
			if _, ok := e.File(path.Join("guides", goal)); !ok {
				t.Errorf("%s: a link of the result leads to %s, which is no page", x.File, m[1])
			}
		}
	}
}

// An author finds each notation in the guide, and each kind of file.
func TestGuidesShowEachNotation(t *testing.T) {
	b, _, _ := guidesOf(t)
	var kinds, folders []string
	for _, x := range b.Examples() {
		folders = append(folders, path.Dir(x.File))
		for _, m := range aKind.FindAllStringSubmatch(x.Block.Body, -1) {
			kinds = append(kinds, m[1])
		}
	}
	for _, k := range markdown.Kinds {
		if k != markdown.Example && k != markdown.Show && !slices.Contains(kinds, string(k)) {
			t.Errorf("no example of the guides has a block “%s”", k)
		}
	}
	for _, f := range []string{"terms", "parts", "builds", "bowls", "questions", "pairs", "exercises", "chapters", "choices"} {
		if !slices.Contains(folders, f) {
			t.Errorf("no example of the guides is a file of %s", f)
		}
	}
}

// The numbers in a result are those that the engine gives for the example.
func TestGuidesAreReckoned(t *testing.T) {
	_, _, files := guidesOf(t)
	for file, want := range map[string]string{
		"terms/filling-volume.md":            "filling volume = 0.0408 × 7.981² × 140 = 363.8",
		"terms/start-time.md":                "time to first water = 363.8",
		"bowls/lapwing-10-slow.yaml":         "533.3",
		"builds/submersible.yaml":            "The pieces of the riser add up",
		"choices/wetting.yaml":               "1 of 3 rows hold",
		"exercises/until-the-water-comes.md": "The column has a bore of",
	} {
		if text := aTag.ReplaceAllString(files[file], ""); !strings.Contains(text, want) {
			t.Errorf("%s: its result lacks %q", file, want)
		}
	}
}

// Results of several examples stand on one page: their ids must differ, and
// lead to what they name.
func TestGuidesKeepIDsApart(t *testing.T) {
	b, e, _ := guidesOf(t)
	for _, g := range b.Guides {
		page, _ := e.File(guidePath(g.ID))
		seen := map[string]bool{}
		for _, m := range anID.FindAllStringSubmatch(string(page), -1) {
			if seen[m[1]] {
				t.Errorf("%s: the id %s stands twice", g.ID, m[1])
			}
			seen[m[1]] = true
		}
		for _, m := range aRef.FindAllStringSubmatch(string(page), -1) {
			for id := range strings.FieldsSeq(m[1]) {
				if !seen[id] {
					t.Errorf("%s: nothing has the id %s", g.ID, id)
				}
			}
		}
	}
}

// Editions without a frame are for readers: nothing leads to a guide.
func TestLooseEditionsHaveNoGuides(t *testing.T) {
	b, _ := book.Load(os.DirFS(realContent))
	for _, loose := range []bool{false, true} {
		w := &work{book: b, loose: loose}
		if n := len(w.guideLinks("")); (n > 0) == loose {
			t.Errorf("loose %v: %d ways to guides", loose, n)
		}
	}
}
