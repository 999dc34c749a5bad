package formula

import (
	"math"
	"testing"

	"columnbowl/calcwasm/unit"
)

// atHead reads the points at a flow and adds a length, as a function of the
// physics may.
var atHead = &Func{Name: "at-head", Gives: unit.Length, Params: []Param{{Name: "flow", Dim: unit.Flow}}, Result: unit.Length, OneWay: true,
	OnPoints: func(line Line, a []float64) (float64, string) {
		if a[0] < 0 {
			return 0, "the flow runs backwards"
		}
		y, invalid := line.At(0)
		return y + a[0], invalid
	}}

// holed is the trade world with families of bowls, chosen by “build”.
func holed() *Scope {
	s := NewScope(trade.terms, []*Func{pipeLoss, atHead})
	at, _ := s.Find("build")
	s.WithHoles(Holes{Term: at, Fields: []Field{
		{Name: "speed", Dim: unit.Speed}, {Name: "head", Dim: unit.Length, Points: true}, {Name: "efficiency", Points: true},
		{Name: "origin", Words: []string{"unknown", "invented"}}}})
	return s
}

// family fills the holes of a family at 1770 rpm.
func family(name string) *Expr {
	switch name {
	case "speed":
		return NewNumber("1770", mustLookup("rpm"), mustLookup("rpm").ToSI(1770))
	case "head":
		return NewPoints([]Point{{X: 0, Y: 20}, {X: 1, Y: 10}, {X: 2, Y: 4}}, mustLookup("m3/s"))
	case "origin":
		return NewWord("invented", 1)
	}
	return nil
}

func TestFill(t *testing.T) {
	s := holed()
	env := NewEnv(s)
	capacity, _ := s.Find("capacity")
	for _, c := range []struct {
		text, words string
		want        float64
	}{
		{"curve(capacity, bowl:head)", "curve(capacity, head of the bowl)", 10},
		{"table(capacity * 1.5, bowl:head) / 1 m", "table(capacity × 1.5, head of the bowl) / 1 m", 7},
		{"bowl:speed / 177 rpm", "speed of the bowl / 177 rpm", 10},
		{"at-head(bowl:head, capacity) / 3 m", "at-head(head of the bowl, capacity) / 3 m", 7},
		{"max(bowl:speed, 1 rpm) / bowl:speed", "max(speed of the bowl, 1 rpm) / speed of the bowl", 1},
	} {
		e, err := ParseExpr(c.text, s)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if got := e.Words(s); got != c.words {
			t.Errorf("%s reads “%s”", c.text, got)
		}
		back, err := Unpack(e.Pack(), s)
		if err != nil || back.Pack() != e.Pack() {
			t.Errorf("%s is packed as %s: %v", c.text, e.Pack(), err)
			continue
		}
		for _, form := range []*Expr{e, back} {
			env.Clear()
			env.Values[capacity] = 1
			if v := form.Eval(env); v == v {
				t.Errorf("%s is %v before it is filled", c.text, v)
			}
			full, ok := form.Fill(family)
			if !ok || full.Holed() || !form.Holed() {
				t.Errorf("%s was not filled", c.text)
				continue
			}
			if v := full.Eval(env); math.Abs(v-c.want) > 1e-12 {
				t.Errorf("%s filled is %v, want %v %s", c.text, v, c.want, env.Invalid)
			}
		}
	}
	e, err := ParseExpr("curve(capacity, bowl:efficiency)", s)
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := e.Fill(family); ok {
		t.Error("a property that the family lacks was filled in")
	}
}

// A word of the family decides a condition once one is chosen.
func TestHoleInCondition(t *testing.T) {
	s := holed()
	env := NewEnv(s)
	build, _ := s.Find("build")
	for text, want := range map[string][3]Truth{
		"bowl:origin = invented":  {Unknown, False, True},
		"bowl:origin != invented": {Unknown, True, False},
		"bowl:speed > 1000 rpm":   {Unknown, Unknown, True},
	} {
		c, err := ParseCondition(text, s)
		if err != nil {
			t.Fatal(err)
		}
		env.Clear()
		if got := c.Test(env); got != want[0] || len(c.Lacking(env)) != 1 || c.Lacking(env)[0] != build {
			t.Errorf("%s with none chosen: %v, lacks %v", text, got, c.Lacking(env))
		}
		env.Values[build] = 0
		if got := c.Test(env); got != want[1] || got == Unknown && len(c.Lacking(env)) != 1 {
			t.Errorf("%s of a family without figures: %v, lacks %v", text, got, c.Lacking(env))
		}
		full, ok := c.Fill(family)
		if got := full.Test(env); !ok || got != want[2] {
			t.Errorf("%s filled: %v", text, got)
		}
	}
}

func TestHoleMessages(t *testing.T) {
	s := holed()
	for text, want := range map[string]string{
		"bowl:speeds":                         "A family of bowls has no “speeds”. It has speed, head, efficiency and origin. Did you mean bowl:speed?",
		"bowl:head * 2":                       "“bowl:head” is a list of points: it stands in curve(…) or table(…), or as the first value of a function that takes points.",
		"bowl:origin":                         "“bowl:origin” is a word, not a number: it can only stand in a condition, such as bowl:origin = unknown.",
		"curve(bowl:head, capacity)":          "curve(x, bowl:head) takes one value and one list of points.",
		"curve(setting, bowl:head)":           "“setting” is a length; the points of a family stand over a flow.",
		"max(bowl:head, setting)":             "max(…) takes no list of points.",
		"at-head(capacity, bowl:head)":        "The list of points comes first: at-head(points, flow).",
		"at-head(bowl:efficiency, capacity)":  "at-head(…) takes points that give a length; those of “bowl:efficiency” give a bare number.",
		"at-head(capacity)":                   "at-head(points, flow) reads the points of a family of bowls: its first value is a list such as bowl:head.",
		"at-head(bowl:head)":                  "at-head(points, flow) takes 1 values; 0 stand here.",
		"at-head(bowl:head, setting)":         "The flow of at-head(…) is a flow; “setting” is a length.",
		"bowl:speed + capacity":               "“bowl:speed” is a rotational speed and “capacity” a flow: they cannot be added.",
		"curve(capacity, bowl:head, 1: 2)":    "curve(x, bowl:head) takes one value and one list of points.",
		"curve(capacity, bowl:head + 1 ft)":   "“bowl:head” is a list of points: it stands in curve(…) or table(…), or as the first value of a function that takes points.",
		"affinity-ratio(bowl:speed, 100 rpm)": "There is no function “affinity-ratio”.",
	} {
		_, err := ParseExpr(text, s)
		if err == nil || err.Error() != want {
			t.Errorf("%s: told\n%v, want\n%s", text, err, want)
		}
	}
	for _, text := range []string{"?speed 1", "?head", "curve(1?speed @8", "max(2?head @8 @8", "?", "curve(1?nothing @8"} {
		if e, err := Unpack(text, s); err == nil {
			t.Errorf("%s is taken as %s", text, e.Words(s))
		}
	}
}
