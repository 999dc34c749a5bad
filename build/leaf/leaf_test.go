package leaf

import "testing"

func TestWrittenAgain(t *testing.T) {
	for _, c := range []struct{ in, html, xml string }{
		{`<p class="a">one &amp; two<br>three</p>`, `<p class="a">one &amp; two<br>three</p>`, `<p class="a">one &amp; two<br/>three</p>`},
		{`<svg viewBox="0 0 1 1"><path d="M0 0"/></svg>`, `<svg viewBox="0 0 1 1"><path d="M0 0"/></svg>`, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"><path d="M0 0"/></svg>`},
		{`<math><mi>H</mi></math>`, `<math><mi>H</mi></math>`, `<math xmlns="http://www.w3.org/1998/Math/MathML"><mi>H</mi></math>`},
		{`<details open><img alt="" src="a.svg"></details>`, `<details open><img alt="" src="a.svg"></details>`, `<details open=""><img alt="" src="a.svg"/></details>`},
		{`<i></i><b>&nbsp;</b>`, `<i></i><b>&nbsp;</b>`, "<i></i><b>\u00a0</b>"},
	} {
		n, err := Parse(c.in)
		if err != nil {
			t.Errorf("%s: %v", c.in, err)
			continue
		}
		if got := string(AppendHTML(nil, n)); got != c.html {
			t.Errorf("%s as HTML: %s", c.in, got)
		}
		if got := string(AppendXML(nil, n)); got != c.xml {
			t.Errorf("%s as XML: %s", c.in, got)
		}
	}
}

func TestRefused(t *testing.T) {
	for in, want := range map[string]string{
		`<p>one`:          `<p> is not closed`,
		`<p>one</b>`:      `</b> closes <p>, at “</b>”`,
		`one</p>`:         `</p> closes <>, at “</p>”`,
		`<p class=a></p>`: `the value of class does not stand in double quotes, at “<p class=a></p>”`,
		`a < b`:           `a “<” that begins no element, at “< b”`,
	} {
		if _, err := Parse(in); err == nil || err.Error() != want {
			t.Errorf("%s: %v", in, err)
		}
	}
}

func TestChange(t *testing.T) {
	n, err := Parse(`<main><nav>x</nav><a href="a">b <b>c</b></a></main>`)
	if err != nil {
		t.Fatal(err)
	}
	n.Change(func(k *Node) []*Node {
		switch k.Tag {
		case "nav":
			return nil
		case "b":
			return k.Kids
		case "a":
			k.Set("href", "d")
			k.Set("class", "e f")
		}
		return []*Node{k}
	})
	if got := string(AppendHTML(nil, n)); got != `<main><a href="d" class="e f">b c</a></main>` {
		t.Error(got)
	}
	a := n.Find(Tagged("a"))
	if !a.Is("f") || a.Is("e f") || a.Get("href") != "d" || a.Has("id") || n.Plain() != "b c" {
		t.Error("what is asked of a node is answered wrongly")
	}
	if a.Del("class", "id"); a.Has("class") {
		t.Error("the class is still there")
	}
}

// FuzzParse: whatever is read can be written and read again as the same.
func FuzzParse(f *testing.F) {
	for _, s := range []string{`<p class="a">one<br>two</p>`, `<svg><path d="M0 0"/></svg>`, `a<b>`, `<a b c="d">x</a>`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n, err := Parse(text)
		if err != nil {
			return
		}
		once := string(AppendHTML(nil, n))
		again, err := Parse(once)
		if err != nil {
			t.Fatalf("%q was written as %q: %v", text, once, err)
		}
		if twice := string(AppendHTML(nil, again)); twice != once {
			t.Fatalf("%q, then %q", once, twice)
		}
	})
}
