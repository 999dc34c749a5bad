package answer

import (
	"encoding/json"
	"strings"
	"testing"

	asking "columnbowl/calcwasm/ask"
	"columnbowl/calcwasm/search"
)

// worded is the desk of the small book with its words.
func worded(t testing.TB) *Desk {
	t.Helper()
	d := desk(t)
	b := search.NewBuilder(search.Kind{Name: "term", Before: "terms/", After: ".html"})
	b.Add(search.Page{Kind: "term", ID: "drawdown", Name: "Drawdown", Also: []string{"fall of the level"}, First: "How far the water falls."}, "", "")
	src := &asking.Source{Names: []asking.Said{{Term: "drawdown", Say: []string{"drawdown"}}},
		Hints: []asking.Said{{Term: "static-level", Say: []string{"water"}}, {Term: "pumping-level", Say: []string{"water"}}}}
	pack := append(src.Pack(), b.Pack()...)
	if !IsWords(pack) || IsWords(d.book.Pack()) {
		t.Error("a book and its words are not told apart")
	}
	if err := d.Words(pack); err != nil {
		t.Fatal(err)
	}
	return d
}

func TestFindRequest(t *testing.T) {
	d := worded(t)
	want := `{"found":[{"kind":"term","id":"drawdown","name":"Drawdown","href":"terms/drawdown.html","why":"also","match":"fall of the level","first":"How far the water falls."}]}`
	if got := string(d.Answer([]byte("find\tfall of the lev"))); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	if got := string(d.Answer([]byte("find\tzebra"))); got != "{}" {
		t.Errorf("nothing found: %s", got)
	}
}

func TestAskRequest(t *testing.T) {
	d := worded(t)
	// ½ and ’ are one unit of UTF-16 and more bytes: places are counted as a page counts.
	var r struct {
		Readings []struct {
			From, To             int
			Text, State, Message string
			Candidates           []struct{ Term, Name, Value, Reason string }
		}
	}
	reply := d.Answer([]byte("ask\tdrawdown 12½’, water at 𝟏 9 ft"))
	if err := json.Unmarshal(reply, &r); err != nil {
		t.Fatalf("%v: %s", err, reply)
	}
	if len(r.Readings) != 2 {
		t.Fatalf("%s", reply)
	}
	a, b := r.Readings[0], r.Readings[1]
	if a.From != 9 || a.To != 13 || a.State != "sure" || a.Candidates[0].Term != "drawdown" || a.Candidates[0].Name != "Drawdown" {
		t.Errorf("%+v", a)
	}
	if b.From != 27 || b.Text != "9 ft" || b.State != "ask" || b.Message != "Is 9 ft the static level or the pumping level?" || len(b.Candidates) < 2 || b.Candidates[0].Term != "static-level" {
		t.Errorf("%+v", b)
	}
}

// Without the words a request for them is answered with the reason.
func TestWordsNotLoaded(t *testing.T) {
	d := desk(t)
	for _, request := range []string{"find\tx", "ask\tx"} {
		if got := string(d.Answer([]byte(request))); got != `{"error":"the words of the book are not loaded"}` {
			t.Errorf("%s", got)
		}
	}
	for _, pack := range []string{"", search.Form + "\n", search.Form + "\nstems\n" + asking.Form + "\ncue\tno-such\tx\n", "strange\n" + asking.Form + "\n"} {
		if err := d.Words([]byte(pack)); err == nil || !strings.Contains(err.Error(), "cannot be read") {
			t.Errorf("%q: error %v", pack, err)
		}
	}
}

func FuzzTalk(f *testing.F) {
	f.Add("find\tdraw")
	f.Add("ask\tdrawdown 40 \xff \"\\")
	d := worded(f)
	f.Fuzz(func(t *testing.T, request string) {
		if reply := d.Answer([]byte(request)); !json.Valid(reply) {
			t.Errorf("no JSON: %q", reply)
		}
	})
}
