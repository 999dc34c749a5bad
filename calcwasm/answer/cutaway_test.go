package answer

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"columnbowl/build/book"
	"columnbowl/calcwasm/cutaway"
)

type toldDrawing struct {
	SVG    string
	Error  string
	Labels []struct {
		N              int
		ID, Part, Name string
		Turns          bool
	}
}

// drawn asks for a sheet of the book's own profiles.
func drawn(t *testing.T, d *Desk, request string) toldDrawing {
	t.Helper()
	var told toldDrawing
	if err := json.Unmarshal(d.Append(nil, []byte(request)), &told); err != nil {
		t.Fatal(err)
	}
	return told
}

// deskWithDrawings has the profiles of the book, with names made of their ids.
func deskWithDrawings(t *testing.T) *Desk {
	t.Helper()
	raw, found := book.LoadShapes(os.DirFS("../../content"))
	if len(found) > 0 {
		t.Fatal(found)
	}
	var pack strings.Builder
	pack.WriteString(CutawayPack + "\n")
	for _, id := range raw.Labels() {
		pack.WriteString("word\t" + id + "\tName of " + id + "\t\t\n")
	}
	pack.WriteString("turns\tpart {0}, turns, between {1} and {2}\nstands\tpart {0}, stands, between {1} and {2}\nfree-turns\tno number, turns, between {0} and {1}\nfree-stands\tno number, stands, between {0} and {1}\n\n")
	d := yard(t)
	if err := d.Add([]byte(pack.String() + raw.Pack())); err != nil {
		t.Fatal(err)
	}
	return d
}

// TestMaskedDrawing: neutral names in the geometry and with the numbers of the
// drawing that has names, so that nothing moves when they are put away.
func TestMaskedDrawing(t *testing.T) {
	d := deskWithDrawings(t)
	const ask = "cut\tbuild=oil-lubricated\tsheet=bowls\twidth=768\tprefix=p\tlabels="
	named, masked := drawn(t, d, ask+"numbered\n"), drawn(t, d, ask+"masked\n")
	if len(named.Labels) < 10 || len(named.Labels) != len(masked.Labels) {
		t.Fatalf("%d labels with names, %d without", len(named.Labels), len(masked.Labels))
	}
	for i, l := range named.Labels {
		m := masked.Labels[i]
		if l.Name != "Name of "+l.ID || m.ID != l.ID || m.N != i+1 || m.Turns != l.Turns {
			t.Errorf("label %d: %+v and %+v", i+1, l, m)
		}
		verb := "stands"
		if l.Turns {
			verb = "turns"
		}
		if !strings.HasPrefix(m.Name, "part ") || !strings.Contains(m.Name, verb) || strings.Contains(m.Name, "{") {
			t.Errorf("label %d is called %q", i+1, m.Name)
		}
	}
	if got := masked.Labels[6].Name; !strings.HasSuffix(got, "between 6 and 8") || !strings.HasPrefix(got, "part 7, ") {
		t.Errorf("the seventh label is called %q", got)
	}
	if !strings.Contains(named.SVG, "Name of impeller") || strings.Contains(masked.SVG, "Name of") {
		t.Error("the masked drawing holds a name, or the named one holds none")
	}
	if a, b := named.SVG[strings.Index(named.SVG, "<rect"):], masked.SVG[strings.Index(masked.SVG, "<rect"):]; paths(a) != paths(b) {
		t.Error("the masked drawing has another geometry")
	}
}

// paths are the outlines of a drawing, without what tells names.
func paths(svg string) string {
	var out strings.Builder
	for _, piece := range strings.Split(svg, ` d="`)[1:] {
		outline, _, _ := strings.Cut(piece, `"`)
		out.WriteString(outline)
	}
	return out.String()
}

// TestNamesOneByOne: names come back into the drawing where their room was kept,
// nothing else moves, and what is not told stays put away.
func TestNamesOneByOne(t *testing.T) {
	d := deskWithDrawings(t)
	const ask = "cut\tbuild=oil-lubricated\tsheet=bowls\twidth=768\tprefix=p\tlabels=single"
	none, some := drawn(t, d, ask+"\n"), drawn(t, d, ask+"\tknown=impeller bowl-shaft\n")
	if strings.Contains(none.SVG, "Name of") || strings.Contains(none.SVG, "<title>Name") {
		t.Error("a name is told before its time")
	}
	for _, id := range []string{"impeller", "bowl-shaft"} {
		if strings.Count(some.SVG, ">Name of "+id+"</text>") != 1 || !strings.Contains(some.SVG, `">Name of `+id+"</title>") {
			t.Errorf("%s is not told in the drawing", id)
		}
	}
	if strings.Contains(some.SVG, "Name of discharge-case") {
		t.Error("a name is told that nobody asked for")
	}
	if paths(none.SVG) != paths(some.SVG) {
		t.Error("the drawing moves when names are told")
	}
	phone := drawn(t, d, strings.Replace(ask, "768", "360", 1)+"\tknown=impeller bowl-shaft\n")
	if strings.Contains(phone.SVG, ">Name of impeller</text>") || !strings.Contains(phone.SVG, ">Name of bowl-shaft</text>") {
		t.Error("a narrow drawing does not tell the latest name alone")
	}
}

// TestPartsWithoutNumber: a part that carries no number has a neutral name all
// the same, which tells between which numbers it stands.
func TestPartsWithoutNumber(t *testing.T) {
	d := deskWithDrawings(t)
	for _, build := range []string{"water-lubricated", "oil-lubricated", "submersible"} {
		for _, sheet := range cutaway.Sheets(build) {
			got := drawn(t, d, "cut\tbuild="+build+"\tsheet="+sheet+"\twidth=360\tprefix=p\tlabels=masked\n")
			for _, group := range strings.Split(got.SVG, `<g class="part`)[1:] {
				head, _, _ := strings.Cut(group, ">")
				if !strings.Contains(head, `aria-label="`) || strings.Contains(head, `aria-label="no number`) == strings.Contains(head, "data-number") || strings.Contains(head, "{") {
					t.Errorf("%s %s: %s", build, sheet, head)
				}
			}
			if n := strings.Count(got.SVG, "<title"); n > 1 {
				t.Errorf("%s %s: %d titles while the names are put away", build, sheet, n-1)
			}
		}
	}
}

func TestDrawingWithoutProfiles(t *testing.T) {
	if got := drawn(t, yard(t), "cut\tbuild=submersible\n"); got.Error == "" || got.SVG != "" {
		t.Errorf("without profiles: %+v", got)
	}
}
