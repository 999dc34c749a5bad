package formula

import "testing"

// Slips that authors make every day, and what a message has to do for them: to
// name the slip itself, once, at its place.

func TestMisspeltTermWithUnitIsNamed(t *testing.T) {
	complain(t, "relation", []complaint{
		says("«bowl-powr»[hp] = 3", "There is no term “bowl-powr”. → bowl-power"),
		says("bowl-power[hp] = «capacty»[gpm] * 2", "There is no term “capacty”. → capacity"),
		says("bowl-power[hp] = 2 * («capacty»[gpm])", "There is no term “capacty”. → capacity"),
	})
}

func TestForeignSignsAreNamedOnce(t *testing.T) {
	complain(t, "relation", []complaint{
		says("total-head = 2 «×» field-head", "“×” is not a sign of the notation. → *"),
		says("total-head = field-head «×» 2", "“×” is not a sign of the notation. → *"),
		says("total-head = 2 «·» field-head", "“·” is not a sign of the notation. → *"),
		says("total-head = field-head «÷» 2", "“÷” is not a sign of the notation. → /"),
		says("total-head = field-head «−» 5 ft", "“−” is not a sign of the notation. → -"),
		says("total-head = field-head «–» 5 ft", "“–” is not a sign of the notation. → -"),
		says("«Total-head» = field-head", "Names are written in small letters joined by hyphens. → total-head"),
	})
	complain(t, "condition", []complaint{
		says("total-head «≥» 5 ft", "“≥” is not a sign of the notation. → >="),
		says("total-head «≤» 5 ft", "“≤” is not a sign of the notation. → <="),
		says("total-head «≠» 5 ft", "“≠” is not a sign of the notation. → !="),
		says("5 «≤» stages", "“≤” is not a sign of the notation. → <="),
	})
	complain(t, "caution", []complaint{
		says("when stages > 3\nsay «“»The bowls show.”", "““” is not a sign of the notation. → \""),
	})
}

// No-break spaces come along when numbers are pasted from a page.
func TestNoBreakSpaceIsASpace(t *testing.T) {
	for _, src := range []string{"total-head = 5\u00a0ft", "total-head = 5\u202fft"} {
		if _, err := ParseRelation(src, trade); err != nil {
			t.Errorf("%q: %v", src, err)
		}
	}
}

func TestGroupedThousandsAreNamed(t *testing.T) {
	complain(t, "worked", []complaint{
		says("given capacity = «12,000» gpm\nexpect total-head = 2 ft", "… → 12000"),
	})
}

func TestNumbersBeyondReachAreNamed(t *testing.T) {
	complain(t, "relation", []complaint{says("total-head = «1e999» ft", "…too large")})
}

// A suggestion replaces exactly what the message points at.
func TestSuggestedRangeKeepsBothEnds(t *testing.T) {
	complain(t, "worked", []complaint{
		says("expect total-head = «180 to 200»", "“total-head” is a length, and this is a bare number. → 180 to 200 ft"),
		says("expect total-head = «180 ft to 200»", "“total-head” is a length, and this is a bare number. → 180 ft to 200 ft"),
		says("expect total-head = «-5»", "“total-head” is a length, and this is a bare number. → -5 ft"),
	})
}

func TestBothEndsOfARangeAreChecked(t *testing.T) {
	complain(t, "worked", []complaint{
		says("expect total-head = «180 gpm to 200 ft»", "“total-head” is a length, and this is a flow."),
	})
}

func TestUnitBracketsAreNotEmpty(t *testing.T) {
	complain(t, "relation", []complaint{says("total-head = field-head«[]» * 1 ft", "…There is no unit")})
}

func TestSayAndGivenPointBehindTheText(t *testing.T) {
	complain(t, "worked", []complaint{
		says("given«»", "Expected the name of a term, but the text ends here."),
		says("expect total-head = 5 ft,«»", "Expected the name of a term, but the text ends here."),
		says("given total-head = 5 ft,\n«expect» setting = 2 ft", "Expected the name of a term, but “expect” stands here."),
	})
	complain(t, "caution", []complaint{says("when stages > 3\nsay«»", "Expected text in quotation marks, but the text ends here.")})
	complain(t, "mistake", []complaint{
		says("leave out«»", "Expected the name of a term, but the text ends here."),
		says("leave out «5»\nsay \"x\"", "Expected the name of a term, but “5” stands here."),
		says("minus for plus\n«say» \"x\"", "Expected the name of a term, but “say” stands here."),
	})
}

func TestArticlesFollowTheSound(t *testing.T) {
	complain(t, "relation", []complaint{
		says("total-head = «bowl-area»", "The left-hand side is a length, the right-hand side an area."),
		says("total-head = field-head + «30 kWh»", "“field-head” is a length and “30 kWh” an energy: they cannot be added."),
	})
}

func TestOtherLanguagesOperatorsAreExplained(t *testing.T) {
	complain(t, "relation", []complaint{says("total-head «==» field-head", "… → =")})
	complain(t, "condition", []complaint{
		says("stages > 3 «&&» stages < 9", "… → and"),
		says("stages > 3 «||» stages < 9", "… → or"),
		says("stages «=>» 3", "… → >="),
		says("3 < stages «<» 9", "…“and”"),
	})
}

func TestChoiceSlipsAreNamedOnce(t *testing.T) {
	complain(t, "condition", []complaint{
		says("«buid» = oil-lubricated", "There is no term “buid”. → build"),
	})
}

func TestNoSuggestionOfTheSameWord(t *testing.T) {
	complain(t, "relation", []complaint{says("total-head = «sqrt»", "…sqrt")})
}

func TestUnknownFunctionInMistakeIsSuggested(t *testing.T) {
	complain(t, "mistake", []complaint{
		says("«round-dwn» for round-up\nsay \"x\"", "…“round-dwn” → round-down"),
	})
}

func TestTrailingCommaIsNamed(t *testing.T) {
	complain(t, "relation", []complaint{says("total-head = min(field-head, 2 ft,«)»", "Expected a term, a number or “(”, but “)” stands here.")})
}

// A title block may still lack the values of a choice when formulas are checked.
func TestChoiceWithoutValuesDoesNotPanic(t *testing.T) {
	s := NewScope([]Term{{ID: "build", Name: "build", Kind: Choice}, quantity("setting", "", "ft", "m")}, nil)
	for _, src := range []string{"setting = build", "build = setting"} {
		func() {
			defer func() {
				if r := recover(); r != nil {
					t.Errorf("%q panics: %v", src, r)
				}
			}()
			if _, err := ParseRelation(src, s); err == nil {
				t.Errorf("%q is taken", src)
			}
		}()
	}
}
