package formula

import (
	"errors"
	"testing"
	"unicode/utf8"
)

// checkErrors looks at what a parser says of any text: places inside the text
// (one byte behind its end where the text stops too early), and whole words.
func checkErrors(t *testing.T, src string, err error) {
	t.Helper()
	if err == nil {
		return
	}
	var list Errors
	if !errors.As(err, &list) || len(list) == 0 {
		t.Fatalf("%q: the error is %T %v", src, err, err)
	}
	last := 0
	for _, e := range list {
		if e.Off < last || e.Off > len(src) || e.Len < 0 || e.Off+e.Len > max(len(src), e.Off+1) {
			t.Fatalf("%q (%d bytes): %d+%d %s", src, len(src), e.Off, e.Len, e.Message)
		}
		if last = e.Off; e.Message == "" || utf8.ValidString(src) && !utf8.ValidString(e.Message) {
			t.Fatalf("%q: message %q", src, e.Message)
		}
	}
}

// useExpr does all that a page does with a checked expression.
func useExpr(t *testing.T, e *Expr) {
	t.Helper()
	v := NewEnv(trade)
	box := make([]Interval, trade.Len())
	for i := range box {
		v.Values[i] = float64(i%5) - 1
		box[i] = Interval{v.Values[i] - 0.5, v.Values[i] + 0.5}
	}
	e.Words(trade)
	e.Substituted(trade, v, SI)
	e.Eval(v)
	e.Bounds(box)
	e.Rounded(trade, v, US, mustLookup("ft"))
	switch e.Op {
	case And, Or, Not, Equal, Unequal, Less, AtMost, More, AtLeast:
		e.Test(v)
		e.Lacking(v)
	}
	if back, err := Unpack(e.Pack(), trade); err == nil && back.Pack() != e.Pack() {
		t.Fatalf("%s comes back as %s", e.Pack(), back.Pack())
	} else if err != nil {
		t.Fatalf("%s does not come back", e.Pack())
	}
}

func useRelation(t *testing.T, r *Relation) {
	t.Helper()
	useExpr(t, r.Left)
	useExpr(t, r.Right)
	r.OneWay()
	for _, style := range []Style{InWords, InLetters} {
		if text := r.MathML(trade, style); wellFormed(text) != nil || childrenRight(text) != "" {
			t.Fatalf("%q: %s", r.Source, text)
		}
	}
	v := NewEnv(trade)
	for i, term := range r.Terms() {
		if e, ok := r.Isolate(term); ok {
			useExpr(t, e)
		}
		if i < 2 {
			r.Solve(term, v, 0, 10)
		}
	}
}

func FuzzRelation(f *testing.F) {
	for _, src := range []string{bowlPower, "total-head = field-head + column-loss - -3.5 ft", "stages = round-up(total-head / 27.5 ft)",
		"bowl-efficiency = curve(capacity, 0 gpm: 0 %, 500 gpm: 81 %, 900 gpm: 60 %)", "column-loss = pipe-loss(capacity, setting)",
		"bowl-area = field-head ^ 2 + sqrt(bowl-area) * 3 ft", "total-head = 2 × (field-head − 5 ft", "stages = ((((1 ^ -2 ^ 3))))", "Total-head == 12,000 ft", "a = \"x"} {
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src string) {
		r, err := ParseRelation(src, trade)
		checkErrors(t, src, err)
		if err == nil {
			useRelation(t, r)
		}
	})
}

func FuzzCondition(f *testing.F) {
	for _, src := range []string{"pumping-level > setting", "build = oil-lubricated and not (stages > 3 or capacity[gpm] <= 5)", "submersible != build",
		"(total-head + 3 ft) >= setting", "water-temperature < -5 degF", "stages ≥ 3 && 1 < 2 < 3", "((stages = 1) or (stages = 2))", "not not not stages = 1"} {
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src string) {
		c, err := ParseCondition(src, trade)
		checkErrors(t, src, err)
		if err == nil {
			useExpr(t, c)
		}
	})
}

func FuzzWorked(f *testing.F) {
	for _, src := range []string{"given  field-head = 187 ft, column-loss = 6.4 ft\nexpect total-head = 194 ft", "given build = oil-lubricated\n stages = 3\nexpect total-head = 1.0 m",
		"given setting = 180 to 200 ft, water-temperature = -5 to 10 degC\nexpect total-head = 1 ft", "given", "given total-head = 12,000", "expect total-head ="} {
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src string) {
		w, err := ParseWorked(src, trade)
		checkErrors(t, src, err)
		if err != nil {
			return
		}
		for _, a := range append(append([]Assign(nil), w.Given...), w.Expect...) {
			if a.Term < 0 || a.Off < 0 || a.Off+a.Len > len(src) || a.ValueOff < a.Off || a.ValueOff+a.ValueLen > a.Off+a.Len || !(a.Low <= a.High) {
				t.Fatalf("%q: %+v", src, a)
			}
		}
	})
}

func FuzzMistake(f *testing.F) {
	for _, src := range []string{"put static-level for pumping-level\nsay \"x\"", "leave out column-loss, head-loss\nsay \"x\"\nin \"y\"", "minus for plus field-head\nplus for minus head-loss\nsay \"x\"",
		"times for over bowl-efficiency\nover for times capacity\nsay \"x\"", "bare discharge-pressure[psi] for pressure-head[ft]\nsay \"x\"", "sqrt for max\nround-down for round-up\nsay \"x\"",
		"whole total-head = field-head\nsay \"x\"", "put 1714 for 3960 say \"x\"", "leave out"} {
		f.Add(src)
	}
	var right []*Relation
	for _, src := range []string{bowlPower, "total-head = field-head + max(column-loss, head-loss, 3 ft) - pumping-level + pressure-head ^ 2 / setting",
		"stages = round-up(total-head / field-head) + curve(capacity, 0 gpm: 1, 5 gpm: 2, 9 gpm: 0)"} {
		r, err := ParseRelation(src, trade)
		if err != nil {
			f.Fatal(err)
		}
		right = append(right, r)
	}
	f.Fuzz(func(t *testing.T, src string) {
		m, err := ParseMistake(src, trade)
		checkErrors(t, src, err)
		if err != nil {
			return
		}
		for _, r := range right {
			wrong, bad := r.Apply(trade, m.Edits)
			if bad != nil {
				checkErrors(t, src, Errors{bad})
				continue
			}
			useRelation(t, wrong)
		}
	})
}

func FuzzCaution(f *testing.F) {
	for _, src := range []string{"when pumping-level > setting\nsay \"The bowls show.\"", "danger\nwhen stages > 30\nsay \"x\"", "when build = submersible say \"x\" danger", "when", "when stages > 3\nsay “x”"} {
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src string) {
		c, err := ParseCaution(src, trade)
		checkErrors(t, src, err)
		if err == nil {
			useExpr(t, c.When)
		}
	})
}

func FuzzUnpack(f *testing.F) {
	for _, src := range []string{"/ * @8'gpm @0'ft * #3960 @10", "curve(1:2'gpm @8 0 1 0.1 2", "& = @19 :1'oil-lubricated ! > @18 #3", "~hp _ #=0.5", "max(2 @0 #5'ft", "sqrt(1 #2"} {
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src string) {
		e, err := Unpack(src, trade)
		if err == nil {
			useExpr(t, e)
		}
	})
}
