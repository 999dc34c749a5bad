package ask_test

import (
	"strings"
	"testing"

	"columnbowl/calcwasm/ask"
	"columnbowl/calcwasm/reckon"
)

// well is a small book: three lengths, a flow, two pressures, an efficiency, a
// count, a size and a choice.
func well(t testing.TB) *reckon.Book {
	t.Helper()
	term := func(id, name, us, si, from, to string) reckon.TermSource {
		return reckon.TermSource{ID: id, Name: name, US: us, SI: si, From: from, To: to, Ask: "What is the " + strings.ToLower(name) + "?"}
	}
	src := &reckon.Source{ID: "small", Title: "Small", Terms: []reckon.TermSource{
		term("static-level", "Static level", "ft", "m", "0 ft", "3000 ft"),
		term("pumping-level", "Pumping level", "ft", "m", "0 ft", "3000 ft"),
		term("drawdown", "Drawdown", "ft", "m", "0 ft", "500 ft"),
		term("capacity", "Capacity", "gpm", "m3/h", "1 gpm", "9000 gpm"),
		term("head-pressure", "Head pressure", "psi", "kPa", "0 psi", "500 psi"),
		term("tank-pressure", "Tank pressure", "psi", "kPa", "0 psi", "500 psi"),
		term("efficiency", "Efficiency", "%", "%", "0 %", "100 %"),
		term("pipe-size", "Pipe size", "in", "mm", "1 in", "60 in"),
		term("pipe-length", "Pipe length", "ft", "m", "0 ft", "90000 ft"),
		term("price", "Price", "money/kWh", "money/kWh", "0 money/kWh", "10 money/kWh"),
		term("volts", "Volts", "V", "V", "100 V", "5000 V"),
		term("hertz", "Frequency", "Hz", "Hz", "10 Hz", "75 Hz"),
		term("amps", "Amps", "A", "A", "1 A", "900 A"),
		term("speed", "Speed", "rpm", "rpm", "100 rpm", "4000 rpm"),
		term("new-speed", "Changed speed", "rpm", "rpm", "100 rpm", "4000 rpm"),
		{ID: "reading", Name: "Reading", US: "ft", SI: "m", From: "0 ft", To: "3000 ft"},
		{ID: "rise", Name: "Rise to the tank", US: "ft", SI: "m", From: "-3000 ft", To: "3000 ft"},
		term("factor", "Factor", "1", "1", "0", "1"),
		term("turns", "Turns", "1", "1", "1", "100"),
		{ID: "stages", Name: "Stages", Kind: "count", US: "1", SI: "1", From: "1", To: "80", Ask: "How many?"},
		{ID: "build", Name: "Build", Kind: "choice", Values: []string{"open", "open shaft", "closed", "shaft in a tube", "down", "motor down the well"}},
	}}
	b, problems := reckon.Load(src)
	if len(problems) > 0 {
		t.Fatalf("the test's book: %+v", problems)
	}
	return b
}

// spoken is how people speak about it.
func spoken() *ask.Source {
	return &ask.Source{
		Names: []ask.Said{{Term: "static-level", Say: []string{"static level"}}, {Term: "pumping-level", Say: []string{"pumping level"}},
			{Term: "drawdown", Say: []string{"drawdown"}}, {Term: "capacity", Say: []string{"capacity"}}, {Term: "efficiency", Say: []string{"efficiency"}},
			{Term: "stages", Say: []string{"stages"}}, {Term: "build", Say: []string{"build"}}},
		Cues: []ask.Said{{Term: "static-level", Say: []string{"static"}}, {Term: "pumping-level", Say: []string{"=pumping", "pumps .. down to"}},
			{Term: "drawdown", Say: []string{"draws .. down", "dd"}}, {Term: "head-pressure", Say: []string{"at the head"}}, {Term: "tank-pressure", Say: []string{"at the tank"}},
			{Term: "pipe-size", Say: []string{"pipe", "DN"}}, {Term: "pipe-length", Say: []string{"pipe"}}, {Term: "rise", Say: []string{"above the well"}}, {Term: "factor", Say: []string{"pf"}}, {Term: "turns", Say: []string{"on the disk"}}},
		Leans:  []ask.Said{{Term: "pumping-level", Say: []string{"when running"}}},
		Hints:  []ask.Said{{Term: "static-level", Say: []string{"water"}}, {Term: "pumping-level", Say: []string{"water"}}},
		Values: []ask.Said{{Term: "build", Value: "closed", Say: []string{"oil tube", "line shaft"}}, {Term: "build", Value: "open", Say: []string{"line shaft"}}, {Term: "build", Value: "down", Say: []string{"submersible"}}},
		Signs:  []ask.Said{{Term: "build", Value: "closed", Say: []string{"oil drips"}}},
		Minus:  []ask.Said{{Term: "rise", Say: []string{"below the well"}}},
		Scenes: []ask.Scene{{Say: []string{"top of casing", "tape"}, Read: [][2]string{{"static-level", "reading"}}, Wide: true}, {Say: []string{"plate"}, Read: [][2]string{{"speed", "speed"}}, Sure: true}},
		Rising: [][]string{{"static-level", "pumping-level"}, {"drawdown", "static-level"}},
		Units:  []ask.Alias{{Say: []string{"lbs", "#"}, Unit: "psi"}, {Say: []string{"cents"}, Unit: "money/kWh", Times: 0.01}, {Say: []string{"gallons"}, Unit: "gpm", Loose: true}},
		Plain: []ask.Plain{{Units: []string{"gpm", "L/s"}, Terms: []string{"capacity"}}, {Units: []string{"rpm"}, Terms: []string{"speed", "new-speed"}, Sure: true, Unless: []string{"1800"}}, {Units: []string{"A"}, Terms: []string{"amps"}, Ask: true}, {Units: []string{"money/kWh"}, Terms: []string{"price"}}, {Units: []string{"V"}, Terms: []string{"volts"}}, {Units: []string{"Hz"}, Terms: []string{"hertz"}},
			{Units: []string{"psi"}, Terms: []string{"head-pressure", "tank-pressure"}}},
		Nothing: []string{"phase", "hours a day"},
		Pairs:   []ask.Pair{{First: "static-level", Second: "pumping-level", Say: []string{"drops from"}}},
	}
}

func reader(t testing.TB) (*ask.Reader, *reckon.Book) {
	t.Helper()
	b := well(t)
	r, err := ask.Open(string(spoken().Pack()), b)
	if err != nil {
		t.Fatal(err)
	}
	return r, b
}

// told writes readings short: “180 ft: static-level=180 ft”, with ? for a
// question and - for what is not understood.
func told(b *reckon.Book, sentence string, list []ask.Reading) string {
	var out []string
	for _, r := range list {
		text := sentence[r.From:r.To] + ": "
		switch r.State {
		case ask.Unknown:
			text += "-"
		case ask.Asked:
			text += "?"
			for _, c := range r.Candidates {
				text += " " + b.Terms[c.Term].ID + "=" + c.Value
			}
		default:
			text += b.Terms[r.Candidates[0].Term].ID + "=" + r.Candidates[0].Value
		}
		out = append(out, text)
	}
	return strings.Join(out, "; ")
}

func TestRead(t *testing.T) {
	r, b := reader(t)
	for _, c := range []struct{ sentence, want string }{
		// a phrase before its number, behind it, and each in its piece
		{"static 180 ft, 220 ft pumping", "180 ft: static-level=180 ft; 220 ft: pumping-level=220 ft"},
		{"180 static 220 pumping", "180: static-level=180 ft; 220: pumping-level=220 ft"},
		{"static 180 pumping 220", "180: static-level=180 ft; 220: pumping-level=220 ft"},
		{"static/pumping 55/67 m", "55: static-level=55 m; 67 m: pumping-level=67 m"},
		// what a unit says alone: one thing, or a question
		{"400 gpm", "400 gpm: capacity=400 gpm"},
		{"60 psi", "60 psi: ? head-pressure=60 psi tank-pressure=60 psi"},
		{"60 psi at the tank", "60 psi: tank-pressure=60 psi"},
		{"60# at the head", "60#: head-pressure=60 psi"},
		{"12 cents", "12 cents: price=0.12 money/kWh"},
		{"400 gallons", "400 gallons: ? capacity=400 gpm"},
		{"water at 150 ft", "150 ft: ? static-level=150 ft pumping-level=150 ft drawdown=150 ft pipe-length=150 ft"},
		// one word for two terms of one noun
		{"1500 ft of 8 inch pipe", "1500 ft: pipe-length=1500 ft; 8 inch: pipe-size=8 inch"},
		{"600 m of DN200 pipe", "600 m: pipe-length=600 m; 200: pipe-size=200 mm"},
		// numbers as people write them
		{"drawdown 1,250.5 mm", "1,250.5 mm: drawdown=1,250.5 mm"},
		{"drawdown 12'6\"", "12'6\": drawdown=12 ft 6 in"},
		{"drawdown 12½ ft", "12½ ft: drawdown=12½ ft"},
		{"6 5/8 inch pipe", "6 5/8 inch: pipe-size=6 5/8 inch"},
		{"two hundred feet static", "two hundred feet: static-level=200 feet"},
		{"five stages", "five: stages=5"},
		{"8-inch pipe", "8-inch: pipe-size=8 in"},
		// ranges, and numbers that are none
		{"static 180 to 200 ft", "180 to 200 ft: static-level=180 to 200 ft"},
		{"between 180 and 200 ft static", "180 and 200 ft: static-level=180 to 200 ft"},
		{"400 gpm +/- 20", "400 gpm +/- 20: capacity=400 +- 20 gpm"},
		{"about 400 gpm", "400 gpm: capacity=about 400 gpm"},
		{"drops from 180 to 220", "180: ? static-level=180 ft; 220: ? pumping-level=220 ft"},
		{"static 40 ft to 220 ft", "40 ft: static-level=40 ft; 220 ft: ? static-level=220 ft pumping-level=220 ft drawdown=220 ft pipe-length=220 ft"},
		{"480/3/60", "480: volts=480 V; 3: -; 60: hertz=60 Hz"},
		// a phrase with words inside
		{"draws the water 40 ft down", "40 ft: drawdown=40 ft"},
		{"pumps it down to 220", "220: pumping-level=220 ft"},
		{"drawdown 40 when running", "40: ? drawdown=40 ft pumping-level=40 ft"},
		{"220 when running", "220: ? pumping-level=220 ft"},
		// what turns a meaning, what is not understood, what speaks for another term
		{"static 180 ft, another 20 ft drawdown", "180 ft: static-level=180 ft; 20 ft: ? drawdown=20 ft static-level=20 ft pumping-level=20 ft pipe-length=20 ft"},
		{"old static 180 ft", "180 ft: ? static-level=180 ft pumping-level=180 ft drawdown=180 ft pipe-length=180 ft"},
		{"static 180 furlongish", "180: ? static-level=180 ft"},
		{"static pumping 180", "180: ? pumping-level=180 ft static-level=180 ft"},
		{"40 at the tank", "40: ? tank-pressure=40 psi"},
		{"had a submersible", "submersible: ? build=down"},
		{"old pump had 7 stages, 400 gpm; static 180", "7: ? stages=7; 400 gpm: ? capacity=400 gpm; 180: static-level=180 ft"},
		{"sample no. 11, static 180", "11: -; 180: static-level=180 ft"},
		{"static 180, Nov 3", "180: static-level=180 ft; 3: -"},
		// spelling
		{"drawdwon 40 feet", "40 feet: drawdown=40 feet"},
		{"statik level 180", "180: static-level=180 ft"},
		{"drawdown 12 meteres", "12 meteres: drawdown=12 m"},
		// metric sentences have metric numbers, mixed ones are asked
		{"static 55 m, drawdown 12", "55 m: static-level=55 m; 12: drawdown=12 m"},
		{"static 180 ft, 25 L/s, drawdown 12", "180 ft: static-level=180 ft; 25 L/s: capacity=25 L/s; 12: ? drawdown=12 ft"},
		// what is not said to be so
		{"no drawdown known", ""},
		{"static unknown, pumping 220", "220: pumping-level=220 ft"},
		{"static isn't 180", "180: -"},
		{"static more than 180", "180: ? static-level=180 ft"},
		{"static 180 or 190", "180: ? static-level=180 ft; 190: ? static-level=190 ft"},
		{"20 ft below pumping level", "20 ft: -"},
		{"3 phase", "3: -"},
		{"12 hours a day", "12 hours: -"},
		{"480", "480: -"},
		{"efficiency 0.8", "0.8: ? efficiency=80 % efficiency=0.8 %"},
		// a term has one value
		{"static 180, static 190", "180: ? static-level=180 ft; 190: ? static-level=190 ft"},
		{"static 180 ft, static level 180", "180 ft: static-level=180 ft; 180: static-level=180 ft"},
		// choices
		{"submersible with 400 gpm", "submersible: build=down; 400 gpm: capacity=400 gpm"},
		{"line shaft", "line shaft: ? build=closed build=open"},
		{"oil tube line shaft", "oil tube: build=closed"},
		{"not submersible", ""},
		{"submersible or oil tube", "submersible: ? build=down; oil tube: ? build=closed"},
		// what a sentence is about, what follows from a word, what goes downhill
		{"static 180 ft from top of casing", "180 ft: reading=180 ft"},
		{"plate says 1800 rpm", "1800 rpm: ? speed=1800 rpm new-speed=1800 rpm"},
		{"1770 rpm", "1770 rpm: speed=1770 rpm"},
		{"1800 rpm", "1800 rpm: ? speed=1800 rpm new-speed=1800 rpm"},
		{"1770 rpm, not 1800 rpm", "1770 rpm: ? speed=1770 rpm new-speed=1770 rpm; 1800 rpm: -"},
		{"90 amps", "90 amps: ? amps=90 amps"},
		{"oil drips", "oil drips: ? build=closed"},
		{"can i use a submersible", "submersible: ? build=down"},
		{"30 ft above the well", "30 ft: rise=30 ft"},
		{"30 ft below the well", "30 ft: rise=-30 ft"},
		{"10 turns on the disk", "10 turns: turns=10"},
		{"pf 86", "86: factor=0.86"},
		// what cannot be, what is taken back, what is set against it, where it came from
		{"static 220 ft, pumping 180 ft", "220 ft: ? static-level=220 ft pumping-level=220 ft drawdown=220 ft pipe-length=220 ft; 180 ft: ? pumping-level=180 ft static-level=180 ft drawdown=180 ft pipe-length=180 ft"},
		{"static 40 ft, drawdown 60 ft", "40 ft: ? static-level=40 ft drawdown=40 ft pumping-level=40 ft pipe-length=40 ft; 60 ft: ? drawdown=60 ft static-level=60 ft pumping-level=60 ft pipe-length=60 ft"},
		{"static is 180 ft?", "180 ft: ? static-level=180 ft pumping-level=180 ft drawdown=180 ft pipe-length=180 ft"},
		{"neighbour has 5 stages, static 180 ft", "5: ? stages=5 static-level=5 ft; 180 ft: ? static-level=180 ft pumping-level=180 ft drawdown=180 ft pipe-length=180 ft"},
		// numbers in words, thousands, units before their numbers
		{"static one hundred thirty two feet", "one hundred thirty two feet: static-level=132 feet"},
		{"static two hundred and fifty feet", "two hundred and fifty feet: static-level=250 feet"},
		{"static one eighty one feet", "one eighty one feet: static-level=181 feet"},
		{"drawdown eight point four feet", "eight point four feet: drawdown=8.4 feet"},
		{"drawdown two and a half feet", "two and a half feet: drawdown=2.5 feet"},
		{"inch and a half pipe", "inch and a half: pipe-size=1.5 in"},
		{"capacity 1.4k gpm", "1.4k gpm: capacity=1400 gpm"},
		{"volts 460 hz 60", "460: volts=460 V; 60: hertz=60 Hz"},
		{"", ""},
	} {
		if got := told(b, c.sentence, r.Read(c.sentence)); got != c.want {
			t.Errorf("%q\n got %s\nwant %s", c.sentence, got, c.want)
		}
	}
}

func TestQuestionsAndReasons(t *testing.T) {
	r, _ := reader(t)
	for _, c := range []struct{ sentence, want string }{
		{"60 psi", "Is 60 psi the head pressure or the tank pressure?"},
		{"water at 150 ft", "Is 150 ft the static level or the pumping level?"},
		{"line shaft", "Is line shaft build “shaft in a tube” or build “open shaft”?"},
		{"3 phase", "“3” is nothing that this book reckons with."},
		{"480", "I read “480”, but not what it is: write what it is, or its unit, beside it."},
		{"400 kg", "I read “400 kg”, but find nothing in this book that it may be."},
		{"drawdown 700 ft", "“700 ft” is outside what makes sense for drawdown: from 0 ft to 500 ft."},
		{"efficiency 0.8", "0.8 %, or 80 %? Write the sign."},
	} {
		list := r.Read(c.sentence)
		if len(list) != 1 || strings.ReplaceAll(list[0].Message, "\u00a0", " ") != c.want {
			t.Errorf("%q: %+v, want %q", c.sentence, list, c.want)
		}
	}
	c := r.Read("static 180")[0].Candidates[0]
	if c.Reason != "“static”" {
		t.Errorf("the reason is %s", c.Reason)
	}
}

// What a reading offers is taken by the field of its term.
func TestCandidatesAreTaken(t *testing.T) {
	r, b := reader(t)
	for _, s := range []string{"static 180 to 200 ft and 12'6 drawdown, 60# at the tank, 12 cents, 6 5/8\" pipe, about 25 l/s", "400 gpm give or take 5 %, 5 stages, efficiency 80, oil tube"} {
		for _, x := range r.Read(s) {
			for _, c := range x.Candidates {
				if _, err := b.Read(c.Term, c.Value); err != nil {
					t.Errorf("%q: %s=%q is not taken: %v", s, b.Terms[c.Term].ID, c.Value, err)
				}
			}
		}
	}
}

// A long call is read to its end, whatever stands before: nothing that was said
// goes away without a word.
func TestALongTextIsReadToItsEnd(t *testing.T) {
	r, b := reader(t)
	const first, last = "The static level is 180 ft, ", " capacity 400 gpm"
	for _, between := range []string{"We spoke of it in spring and nothing has changed since then. ", "so it went on and on, ", "ä, ö, ü, "} {
		for _, n := range []int{900, 1000, 1900, 3500} {
			text := first + strings.Repeat(between, n/len(between)+1) + last
			if got := told(b, text, r.Read(text)); got != "180 ft: static-level=180 ft; 400 gpm: capacity=400 gpm" {
				t.Errorf("%d bytes of %q: %s", len(text), between, got)
			}
		}
	}
}

func TestDamagedVocabularyIsRefused(t *testing.T) {
	b := well(t)
	for _, pack := range []string{"", "strange", ask.Form + "\ncue\tno-such-term\tx", ask.Form + "\nunit\tfurlongs\t1\t\tx",
		ask.Form + "\nvalue\tbuild\tstrange\tx", ask.Form + "\nplain\tgpm\tnothing", ask.Form + "\nsing", ask.Form + "\npair\tdrawdown\tx\ty"} {
		if _, err := ask.Open(pack, b); err == nil || !strings.Contains(err.Error(), "line ") {
			t.Errorf("%q: error %v", pack, err)
		}
	}
}

// Whatever is typed: no crash, and every reading stands inside the text.
func FuzzRead(f *testing.F) {
	r, b := reader(f)
	for _, s := range []string{"well 180 ft static, draws down 40 at 400 gpm", "12'6\" ½ 1-11/16 460/3/60 $.12/kWh", "static/pumping 55/67 m", "drops from 180 to 220", "S.W.L. 5 ft.",
		"two hundred and fifty", "-.5 – 3/0 1e9 #", "static \xff 180\x00", "between 3 and 4 or 5 +/- 6 %", "DN200 sch40 C900"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, sentence string) {
		last := 0
		for _, x := range r.Read(sentence) {
			if x.From < last || x.To <= x.From || x.To > len(sentence) {
				t.Fatalf("a reading at %d to %d of %d", x.From, x.To, len(sentence))
			}
			last = x.From
			if x.State != ask.Unknown && len(x.Candidates) == 0 || x.State != ask.Sure && x.Message == "" {
				t.Errorf("%q: %+v", sentence, x)
			}
			for _, c := range x.Candidates {
				if _, err := b.Read(c.Term, c.Value); err != nil {
					t.Errorf("%q: %s=%q is not taken: %v", sentence, b.Terms[c.Term].ID, c.Value, err)
				}
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	r, _ := reader(b)
	for b.Loop() {
		r.Read("well 180 ft static, draws down 40 at 400 gpm, wants 60 psi at the head, 1500 ft of 8 inch pipe")
	}
}
