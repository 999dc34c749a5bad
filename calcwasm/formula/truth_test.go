package formula

import (
	"fmt"
	"strings"
	"testing"
)

var truthNames = map[Truth]string{Unknown: "unknown", True: "true", False: "false"}

// S. C. Kleene, Introduction to Metamathematics (1952), section 64: the strong
// tables of three-valued logic.
func TestKleeneTables(t *testing.T) {
	values := map[Truth]string{True: "a = 2", False: "a = 0", Unknown: ""}
	others := map[Truth]string{True: "b = 2", False: "b = 0", Unknown: ""}
	and := map[[2]Truth]Truth{{True, True}: True, {True, Unknown}: Unknown, {Unknown, True}: Unknown, {Unknown, Unknown}: Unknown}
	or := map[[2]Truth]Truth{{False, False}: False, {False, Unknown}: Unknown, {Unknown, False}: Unknown, {Unknown, Unknown}: Unknown}
	for x, givenA := range values {
		for y, givenB := range others {
			v := facts(t, letters, strings.Trim(givenA+", "+givenB, ", "))
			wantAnd, listed := and[[2]Truth{x, y}]
			if !listed {
				wantAnd = False
			}
			wantOr, listed := or[[2]Truth{x, y}]
			if !listed {
				wantOr = True
			}
			name := fmt.Sprintf("%s, %s", truthNames[x], truthNames[y])
			if got := condition(t, letters, "a > 1 and b > 1").Test(v); got != wantAnd {
				t.Errorf("%s with and: %s, should be %s", name, truthNames[got], truthNames[wantAnd])
			}
			if got := condition(t, letters, "a > 1 or b > 1").Test(v); got != wantOr {
				t.Errorf("%s with or: %s, should be %s", name, truthNames[got], truthNames[wantOr])
			}
		}
		v := facts(t, letters, givenA)
		want := map[Truth]Truth{True: False, False: True, Unknown: Unknown}[x]
		if got := condition(t, letters, "not a > 1").Test(v); got != want {
			t.Errorf("not %s: %s", truthNames[x], truthNames[got])
		}
	}
}

func TestComparisons(t *testing.T) {
	v := facts(t, letters, "a = 2, b = 3, c = 0.3")
	for _, c := range []struct {
		src  string
		want Truth
	}{
		{"a < b", True}, {"b < a", False}, {"a < a", False}, {"a <= a", True}, {"b <= a", False},
		{"b > a", True}, {"a > a", False}, {"a >= a", True}, {"a >= b", False}, {"a = a", True}, {"a = b", False}, {"a != b", True}, {"a != a", False},
		// The last bits of a computation decide nothing.
		{"0.1 + 0.2 = c", True}, {"0.1 + 0.2 > c", False}, {"0.1 + 0.2 >= c", True}, {"0.1 + 0.2 != c", False}, {"c < 0.1 + 0.2", False},
		{"a > 1.999", True}, {"-a < 0", True}, {"a - a = 0", True},
		{"h > a", Unknown}, {"a = h", Unknown}, {"h != h", Unknown}, {"a / 0 > 1", Unknown}, {"table(b, 0: 1, 1: 2) > 0", Unknown},
	} {
		if got := condition(t, letters, c.src).Test(v); got != c.want {
			t.Errorf("%s: %s, should be %s", c.src, truthNames[got], truthNames[c.want])
		}
	}
}

func TestChoicesInConditions(t *testing.T) {
	for _, c := range []struct {
		given, src string
		want       Truth
	}{
		{"build = oil-lubricated", "build = oil-lubricated", True},
		{"build = water-lubricated", "build = oil-lubricated", False},
		{"build = water-lubricated", "build != oil-lubricated", True},
		{"build = submersible", "submersible != build", False},
		{"build = water-lubricated", "build = water-lubricated", True},
		{"", "build = water-lubricated", Unknown},
		{"", "build != water-lubricated", Unknown},
		{"build = submersible", "build = submersible and capacity > 5 gpm", Unknown},
		{"build = submersible", "build = oil-lubricated and capacity > 5 gpm", False},
	} {
		if got := condition(t, trade, c.src).Test(facts(t, trade, c.given)); got != c.want {
			t.Errorf("given %q, %s: %s, should be %s", c.given, c.src, truthNames[got], truthNames[c.want])
		}
	}
}

// What is asked for must be able to decide the condition: a part that is
// settled already lacks nothing.
func TestLacking(t *testing.T) {
	for _, c := range []struct{ given, src, want string }{
		{"", "a > 1 and b > a", "a b"},
		{"a = 1", "a > 1 or b > a", "b"},
		{"a = 1, b = 2", "a > 1 or b > a", ""},
		{"a = 0", "a > 1 and b > 2 or c > 3", "c"},
		{"a = 2", "(a > 1 or b > 2) and c > 3", "c"},
		{"a = 2", "not (a > 1 or b > 2)", ""},
	} {
		var names []string
		for _, i := range condition(t, letters, c.src).Lacking(facts(t, letters, c.given)) {
			names = append(names, letters.Term(i).ID)
		}
		if got := strings.Join(names, " "); got != c.want {
			t.Errorf("given %q, %s lacks %q, should lack %q", c.given, c.src, got, c.want)
		}
	}
}

// A choice's word may be the id of a term as well.
func TestAWordMayAlsoBeATerm(t *testing.T) {
	s := NewScope([]Term{
		quantity("oil", "", "gal", "L"),
		{ID: "lubricant", Name: "lubricant", Kind: Choice, Values: []string{"water", "oil"}},
	}, nil)
	for _, src := range []string{"lubricant = oil", "oil = lubricant", "lubricant != water"} {
		c, err := ParseCondition(src, s)
		if err != nil {
			t.Errorf("%q: %v", src, err)
			continue
		}
		v := NewEnv(s)
		v.Values[1] = 1
		if got := c.Test(v); got != True {
			t.Errorf("%q: %s", src, truthNames[got])
		}
	}
}
