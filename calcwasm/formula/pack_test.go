package formula

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// packedAlike compares two expressions in all that a page uses of them.
func packedAlike(t testing.TB, s *Scope, e, back *Expr) {
	t.Helper()
	if got, want := back.Words(s), e.Words(s); got != want {
		t.Errorf("%s comes back as %s", want, got)
	}
	if got, want := back.Pack(), e.Pack(); got != want {
		t.Errorf("packed again it reads\n\t%s\nwas\n\t%s", got, want)
	}
}

func TestPackedExpressionsComeBack(t *testing.T) {
	v := facts(t, trade, tradeFacts)
	for _, src := range []string{
		"capacity[gpm] * total-head[ft] * specific-gravity / (3960 * bowl-efficiency)",
		"-(field-head - 5 ft) ^ 2 + sqrt(bowl-area) * 3 ft",
		"max(field-head, min(total-head, setting, 7 m), abs(column-loss))",
		"round-up(total-head / 27.5 ft)", "72.5 %", "1.5e-3 m3/s", ".5",
		"table(capacity, 0 gpm: 63 ft, 400 gpm: 59.3 ft, 900 gpm: -3 ft)",
		"curve(capacity, 0 gpm: 63 %, 400 gpm: 80.5 %, 900 gpm: 40 %)",
		"pipe-loss(capacity, setting)", "water-temperature[degF] - 32", "2.66 ft/100ft * setting",
	} {
		e := expression(t, trade, src)
		back, err := Unpack(e.Pack(), trade)
		if err != nil {
			t.Errorf("%s packs as %s: %v", src, e.Pack(), err)
			continue
		}
		packedAlike(t, trade, e, back)
		if got, want := back.Eval(v), e.Eval(v); !close(got, want, 1e-15) {
			t.Errorf("%s comes back as %v, was %v", src, got, want)
		}
	}
	for _, src := range []string{"build = oil-lubricated", "not (stages > 3 or stages <= 1) and build != submersible", "setting >= 5 ft and setting < 9 ft", "stages = 3"} {
		e := condition(t, trade, src)
		back, err := Unpack(e.Pack(), trade)
		if err != nil {
			t.Errorf("%s: %v", src, err)
			continue
		}
		packedAlike(t, trade, e, back)
	}
}

func TestPackedInversionsComeBack(t *testing.T) {
	r := relation(t, trade, bowlPower)
	v := facts(t, trade, "bowl-power = 30.24 hp, capacity = 500 gpm, total-head = 194 ft, specific-gravity = 1, bowl-efficiency = 81 %")
	for _, term := range r.Terms() {
		e, _ := r.Isolate(term)
		back, err := Unpack(e.Pack(), trade)
		if err != nil || !close(back.Eval(v), e.Eval(v), 1e-15) {
			t.Errorf("%s: %v", e.Pack(), err)
		}
	}
}

func TestPackedShapesComeBack(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		e := parseDrawn(r, drawShape(r, 3, ""))
		_, v := drawBox(r)
		back, err := Unpack(e.Pack(), letters)
		if err != nil {
			r.Fatalf("%s: %v", e.Pack(), err)
		}
		if got, want := back.Eval(v), e.Eval(v); !close(got, want, 1e-15) {
			r.Fatalf("%s is %v, was %v", e.Pack(), got, want)
		}
	})
}

// What parses must also travel: a long sum is no worse than a short one.
func TestLongSumsTravel(t *testing.T) {
	e, err := ParseExpr("stages"+strings.Repeat(" + stages", 300), trade)
	if err != nil {
		return // refused with a message: that is an answer as well
	}
	if _, err := Unpack(e.Pack(), trade); err != nil {
		t.Errorf("a sum of 301 parts parses, packs and does not come back: %v", err)
	}
}

func TestDamagedPacksAreRefused(t *testing.T) {
	for _, text := range []string{"", "+", "+ #1", "#1 #2", "@99", "@-1", "@x", "#", "#abc", "#1'furlong", "@1'furlong", "~furlong #1", "?", "sine(1 #1", "max(2 #1", "max(x #1 #2",
		"max(99 #1", "curve(1:2'gpm @8 0 1 2", ":x'oil", "ℓ", "@", "~", ":", "(", "max(", "table(0:2 0 1 2 3", "sqrt(0", "sqrt(2 #1 #2", "table(1 #1", "max(1:2 #1 0 1 2 3", strings.Repeat("_ ", 5000) + "#1"} {
		if e, err := Unpack(text, trade); err == nil {
			t.Errorf("%.40q is taken for %s", text, e.Words(trade))
		}
	}
}
