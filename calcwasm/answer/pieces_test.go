package answer

import (
	"encoding/json"
	"strings"
	"testing"

	"columnbowl/calcwasm/assembly"
)

// toldPieces is the part of a reply that tells the pieces, as a page reads it.
type toldPieces struct {
	Pieces *struct {
		Build, Name string
		Groups      []struct {
			ID, Name string
			Mass     struct{ US, SI string }
			Parts    []struct {
				Part, Name, Label, With   string
				Order                     int
				Count                     *int
				Unsure                    bool
				Length, TotalLength, Mass struct{ US, SI string }
				Lacks                     []string
			}
		}
		Runs []struct {
			Name   string
			Length struct{ US, SI string }
			Agrees bool
		}
		Refused, Notes []string
		Asks           []struct{ ID, Name, Ask string }
	}
}

// yard is a desk with a build of two parts, opened from its pack.
func yard(t testing.TB) *Desk {
	t.Helper()
	book := desk(t).book
	src := &assembly.Source{Builds: []assembly.BuildSource{{ID: "open", Name: "Open pump", Asked: "setting", Made: "setting",
		Notes: []assembly.NoteSource{{Say: "Careful."}}, Refuse: []string{"pumping-level/bowls-showing"},
		Groups: []assembly.GroupSource{{ID: "column", Name: "Column", Lines: []assembly.LineSource{
			{Part: "pipe", Name: "Pipe", Label: "full", Run: "column", Count: "round-down(setting / 20 ft)", Length: "20 ft", Mass: "1 lb"},
			{Part: "pipe", Name: "Pipe", Run: "column", Length: "remainder(setting, 20 ft)", When: "remainder(setting, 20 ft) > 0 ft"},
			{Part: "nut", Name: "Nut", With: "pipe"}}}}}}}
	m, problems := assembly.Load(src, book)
	if len(problems) > 0 {
		t.Fatalf("%+v", problems)
	}
	d, err := Open(Pack(book, m))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func piecesOf(t testing.TB, d *Desk, request string) toldPieces {
	t.Helper()
	var told toldPieces
	if err := json.Unmarshal(d.Answer([]byte(request)), &told); err != nil {
		t.Fatal(err)
	}
	return told
}

func TestPiecesInAReply(t *testing.T) {
	told := piecesOf(t, yard(t), "pieces\nfact\tbuild\topen\nfact\tsetting\t70 ft\nfact\tstatic-level\t60 ft\nfact\tdrawdown\t20 ft").Pieces
	if told == nil || told.Build != "open" || len(told.Groups) != 1 || len(told.Groups[0].Parts) != 3 {
		t.Fatalf("told is %+v", told)
	}
	full, rest, nut := told.Groups[0].Parts[0], told.Groups[0].Parts[1], told.Groups[0].Parts[2]
	if *full.Count != 3 || full.Length.US != "20\u00a0ft" || full.TotalLength.SI != "18.29\u00a0m" || full.Mass.US != "1\u00a0lb" || full.Label != "full" {
		t.Errorf("the full pipes are %+v", full)
	}
	if *rest.Count != 1 || rest.Length.US != "10\u00a0ft" || rest.Mass.US != "" || rest.Order != 1 || nut.With != "pipe" || nut.Order != 2 {
		t.Errorf("the rest is %+v, the nut %+v", rest, nut)
	}
	if len(told.Runs) != 1 || !told.Runs[0].Agrees || told.Runs[0].Length.US != "70\u00a0ft" || told.Groups[0].Mass.US != "3\u00a0lb" {
		t.Errorf("runs %+v, groups %+v", told.Runs, told.Groups)
	}
	if strings.Join(told.Refused, " ") != "pumping-level/bowls-showing" || strings.Join(told.Notes, " ") != "Careful." || len(told.Asks) != 0 {
		t.Errorf("refused %v, notes %v, asks %v", told.Refused, told.Notes, told.Asks)
	}
}

func TestPiecesThatAreMissing(t *testing.T) {
	d := yard(t)
	told := piecesOf(t, d, "pieces\nfact\tbuild\topen").Pieces
	if full := told.Groups[0].Parts[0]; full.Count != nil || strings.Join(full.Lacks, " ") != "setting" || !told.Groups[0].Parts[1].Unsure {
		t.Errorf("without a setting: %+v", told.Groups[0].Parts)
	}
	if len(told.Asks) != 1 || told.Asks[0].ID != "setting" || told.Asks[0].Ask != "How deep do the bowls hang?" {
		t.Errorf("it asks for %+v", told.Asks)
	}
	if told := piecesOf(t, d, "pieces").Pieces; told == nil || len(told.Asks) != 1 || told.Asks[0].ID != "build" {
		t.Errorf("without a build: %+v", told)
	}
	if told := piecesOf(t, d, "pieces\nfact\tbuild\tenclosed").Pieces; told == nil || told.Groups != nil {
		t.Errorf("a build without parts: %+v", told)
	}
	if told := piecesOf(t, d, "fact\tbuild\topen").Pieces; told != nil {
		t.Errorf("told without being asked: %+v", told)
	}
	if told := piecesOf(t, desk(t), "pieces\nfact\tbuild\topen").Pieces; told != nil {
		t.Errorf("a book without builds tells %+v", told)
	}
}

func TestPackWithoutBuilds(t *testing.T) {
	book := desk(t).book
	if d, err := Open(Pack(book, nil)); err != nil || d.builds != nil {
		t.Errorf("%v", err)
	}
	if _, err := Open([]byte(string(book.Pack()) + assembly.PackForm + "\nnonsense\n")); err == nil || !strings.Contains(err.Error(), "builds") {
		t.Errorf("a damaged pack gives %v", err)
	}
}
