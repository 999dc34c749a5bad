package book_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"columnbowl/build/book"
)

// spoken loads the small book with an asking.yaml.
func spoken(t testing.TB, text string) (*book.Book, []string) {
	t.Helper()
	files := small(t)
	files[book.AskingFile] = &fstest.MapFile{Data: []byte(text)}
	b, found := book.Load(files)
	var said []string
	for _, d := range found {
		said = append(said, d.Message+" "+d.Suggest)
		if d.File != book.AskingFile {
			t.Errorf("told at %s: %s", d.File, d.Message)
		}
	}
	return b, said
}

func TestAsking(t *testing.T) {
	b, said := spoken(t, `cues:
  drawdown: [draws down, "=pulls"]
leans:
  drawdown: [when running]
hints:
  pumping-level: [water]
units:
  - {say: [cents], read: money/kWh, times: 0.01}
  - {say: [gallons], read: gpm, loose: yes}
plain:
  - {units: [ft, m], terms: [drawdown, pumping-level], sure: yes, unless: ["12"]}
  - {units: [psi], terms: [drawdown], sure: no}
nothing: [phase]
pairs:
  - {say: [drops from], terms: [static-level, pumping-level]}
minus:
  drawdown: [rises by]
scenes:
  - {say: [tape], wide: yes, sure: yes, read: {drawdown: pumping-level}}
rising:
  - [drawdown, pumping-level]
`)
	if len(said) > 0 {
		t.Fatal(said)
	}
	a := &b.Asking
	if len(a.Cues) != 1 || a.Cues[0].Term != "drawdown" || a.Cues[0].Say[1] != "=pulls" || a.Units[0].Times != 0.01 || !a.Units[1].Loose ||
		a.Plain[0].Terms[1] != "pumping-level" || !a.Plain[0].Sure || a.Plain[0].Unless[0] != "12" || !a.Plain[1].Ask || a.Nothing[0] != "phase" || a.Pairs[0].Terms[0] != "static-level" || len(a.Leans) != 1 || len(a.Hints) != 1 ||
		a.Minus[0].Say[0] != "rises by" || !a.Scenes[0].Wide || !a.Scenes[0].Sure || a.Scenes[0].Read[0] != [2]string{"drawdown", "pumping-level"} || a.Rising[0][1] != "pumping-level" {
		t.Errorf("read as %+v", a)
	}
}

// What is wrong is told where it stands, with the word that was probably meant.
func TestAskingErrors(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"cues:\n  drawdwon: [draws down]\n", "There is no term “drawdwon”. drawdown"},
		{"cues: [a]\n", "“cues” is a list of terms, each with the words for it"},
		{"cues:\n  drawdown: draws down\n", "“drawdown” is a list: its items stand in brackets. [draws down]"},
		{"cues:\n  drawdown: [a]\n  drawdown: [b]\n", "“drawdown” stands here twice."},
		{"clues:\n  drawdown: [a]\n", "“clues” is no key of the file asking.yaml."},
		{"units:\n  - {say: [x], read: furlong}\n", "“furlong” is no unit that the book knows."},
		{"units:\n  - {say: [x], read: ft, times: many}\n", "“times” is a number above 0"},
		{"plain:\n  - {units: [ft], terms: [no-such]}\n", "There is no term “no-such”."},
		{"pairs:\n  - {say: [x], terms: [drawdown, drawdown, drawdown]}\n", "A pair names the term of the first number"},
		{"values:\n  no-such: {a: [b]}\n", "There is no term “no-such”."},
		{"signs:\n  no-such: {a: [b]}\n", "There is no term “no-such”."},
		{"minus:\n  no-such: [a]\n", "There is no term “no-such”."},
		{"scenes:\n  - {say: [x], read: {drawdown: no-such}}\n", "There is no term “no-such”."},
		{"scenes:\n  - {say: [x], read: [drawdown]}\n", "is a list of terms, each with the one that is meant"},
		{"rising:\n  - [drawdown, no-such]\n", "There is no term “no-such”."},
		{"plain:\n  - {units: [ft], terms: [drawdown], unless: [many]}\n", "“unless” has numbers and units"},
	} {
		_, said := spoken(t, c.text)
		if len(said) == 0 || !strings.Contains(strings.Join(said, "\n"), c.want) {
			t.Errorf("%q gives %q, want %q", c.text, said, c.want)
		}
	}
}
