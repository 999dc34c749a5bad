package cutaway_test

import (
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"columnbowl/build/book"
	"columnbowl/calcwasm/cutaway"
)

var look = flag.String("look", "", "folder to write all sheets to as HTML, to look at them")

func shapes(t testing.TB) *cutaway.Shapes {
	t.Helper()
	raw, found := book.LoadShapes(os.DirFS("../../content"))
	for _, d := range found {
		t.Error(d.File, d.Line, d.Message)
	}
	s, err := cutaway.Load(raw.Pack())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// names gives every label of the profiles a name made of its id.
func names(t testing.TB) map[string]cutaway.Word {
	raw, _ := book.LoadShapes(os.DirFS("../../content"))
	of := map[string]cutaway.Word{}
	add := func(id, sub string) {
		words := strings.NewReplacer("-", " ").Replace(id[strings.LastIndexByte(id, '/')+1:])
		of[id] = cutaway.Word{Name: strings.ToUpper(words[:1]) + words[1:], Sub: sub, Desc: "Description of " + words + "."}
	}
	for _, f := range raw.Frames {
		for _, s := range f.Shapes {
			id, sub := s.Part, "still"
			if s.Label != "" {
				id = s.Label
			}
			if s.Motion == "turns" {
				sub = "turns"
			}
			if s.Material != "" {
				sub = s.Material + " · " + sub
			}
			if _, ok := of[id]; !ok || s.Cut == "hatch" {
				add(id, sub)
			}
		}
	}
	for _, id := range []string{"grade", "static-level", "pumping-level", "well-casing", "well-screen"} {
		add(id, "")
	}
	return of
}

func words(t testing.TB) cutaway.Words {
	return cutaway.Words{Title: "Cutaway", Desc: "A pump cut open.", Of: names(t), More: "{0} more stages", OneMore: "1 more stage",
		Turns: "part {0}, turns, between {1} and {2}", Stands: "part {0}, stands still, between {1} and {2}"}
}

var builds = []string{"water-lubricated", "oil-lubricated", "submersible"}

// With -look the sheets of all builds are written as pages: one for each
// build, sheet and width, with the styles of the site. Without it the test
// checks that each of them draws.
func TestLook(t *testing.T) {
	s, w := shapes(t), words(t)
	css := ""
	for _, f := range []string{"values", "themes", "contrast", "ground", "drawing", "cutaway", "print"} {
		b, err := os.ReadFile("../../site/styles/" + f + ".css")
		if err != nil {
			t.Fatal(err)
		}
		css += string(b)
	}
	theme := os.Getenv("LOOK_THEME")
	options := strings.Fields(os.Getenv("LOOK_OPTIONS"))
	follow := []string{"water", "oil"}
	if f := os.Getenv("LOOK_FOLLOW"); f != "" {
		follow = strings.Fields(f)
	}
	for _, build := range builds {
		for _, sheet := range cutaway.Sheets(build) {
			for _, width := range []int{360, 768, 1280} {
				d := s.Draw(cutaway.Pump{Build: build, Stages: 8, Options: options}, cutaway.View{Prefix: "c", Sheet: sheet, Width: width, Follow: follow, Words: w})
				svg := d.Scene.SVG()
				if err := d.Scene.Check(); err != nil || strings.Contains(svg, "data-left-out") {
					t.Errorf("%s %s %d: %v", build, sheet, width, err)
				}
				if *look == "" {
					continue
				}
				name := filepath.Join(*look, build[:1]+"-"+sheet+"-"+strconv.Itoa(width)+".html")
				page := "<!doctype html><html data-theme=\"" + theme + "\"><meta charset=utf-8><style>" + css + "body{margin:0}svg.fig{max-width:none}</style><body>" + svg
				if err := os.WriteFile(name, []byte(page), 0o644); err != nil {
					t.Fatal(err)
				}
				t.Log(name, len(svg), d.Scene.Box.H)
			}
		}
	}
}
