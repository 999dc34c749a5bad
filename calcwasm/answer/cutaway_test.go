package answer

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"columnbowl/build/book"
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
	pack.WriteString("turns\tpart {0}, turns, between {1} and {2}\nstands\tpart {0}, stands, between {1} and {2}\nunnumbered\tno number\n\n")
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

func TestDrawingWithoutProfiles(t *testing.T) {
	if got := drawn(t, yard(t), "cut\tbuild=submersible\n"); got.Error == "" || got.SVG != "" {
		t.Errorf("without profiles: %+v", got)
	}
}
