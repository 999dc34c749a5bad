package highlight

import (
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var tags = regexp.MustCompile(`<[^>]*>`)

// The words of a page, each with its class.
func TestPage(t *testing.T) {
	text := "---\nname: Total head\nunit: {us: ft, si: m}\n---\nSee [drawdown](term:drawdown).\n\n## Slips\n\n" +
		"```worked Quillbeck\ngiven  static-level = 140 ft, column-loss-rate = 2.66 ft/100ft\nexpect capacity[gpm] = 800\n```\n\n" +
		"```mistake short\nleave out least-capacity\nsay \"Not <this>.\"\n```\n"
	got := HTML("page", text)
	for _, want := range []string{
		`<span class="hk">name</span>`, `<span class="hn">term:drawdown</span>`, `<span class="hh">## Slips`,
		`<span class="hk">worked</span>`, `<span class="hk">given`, `<span class="hn">static-level`, `<span class="hm">140 ft</span>`, `<span class="hm">2.66 ft/100ft`,
		`<span class="hm">[gpm]`, `<span class="hk">leave out`, `<span class="hn">least-capacity`, `<span class="hs">&#34;Not &lt;this&gt;.&#34;`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%s is not in:\n%s", want, got)
		}
	}
}

func TestOthers(t *testing.T) {
	for _, c := range []struct{ language, text, want string }{
		{"yaml", "points:\n  - {capacity: 0 gpm, head: 63.0 ft} # at shutoff\n", `<span class="hm">63.0 ft</span>`},
		{"yaml", "part: head-shaft\n", `<span class="hn">head-shaft`},
		{"csv", "learner,seed\nLearner 01,4711\n", `<span class="hm">4711`},
		{"shell", "columnbowl handout --count 24 # one each\n", `<span class="hk">columnbowl handout`},
		{"shell", "columnbowl handout --count 24 # one each\n", `<span class="hc"># one each`},
		{"notation", "when pumping-level > setting and not build = submersible\n", `<span class="hk">and not </span>`},
	} {
		if got := HTML(c.language, c.text); !strings.Contains(got, c.want) {
			t.Errorf("%s: %s is not in %s", c.language, c.want, got)
		}
	}
	if got := HTML("verse", "a < b"); got != "a &lt; b" {
		t.Errorf("an unknown language gives %q", got)
	}
}

// Without its tags every file of the book is what it was: nothing is lost or
// added, and no text makes a tag.
func TestNothingIsLost(t *testing.T) {
	n := 0
	for _, pattern := range []string{"terms/*.md", "exercises/*.md", "bowls/*.yaml", "builds/*.yaml", "handbook.yaml"} {
		names, _ := filepath.Glob("../../content/" + pattern)
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			n++
			for _, language := range []string{Of(name), "notation"} {
				if got := html.UnescapeString(tags.ReplaceAllString(HTML(language, string(text)), "")); got != string(text) {
					t.Errorf("%s as %s is not the same without its tags", name, language)
				}
			}
		}
	}
	if n < 200 {
		t.Errorf("only %d files were looked at", n)
	}
}

func FuzzHTML(f *testing.F) {
	f.Add("---\nname: x\n---\n```formula\na = b\n```\n")
	f.Fuzz(func(t *testing.T, text string) {
		for _, language := range Languages {
			if got := tags.ReplaceAllString(HTML(language, text), ""); strings.ContainsAny(got, "<>") {
				t.Errorf("%s: a tag from %q", language, text)
			}
		}
	})
}
