package formula

import (
	"fmt"
	"strings"
	"testing"
)

var kindNames = map[tokenKind]string{tokName: "name", tokNumber: "number", tokString: "string", tokUnit: "unit", tokOp: "op"}

// spell writes tokens as “kind:text”, a number's unit in brackets behind it.
func spell(tokens []token) string {
	var parts []string
	for _, t := range tokens {
		if t.kind == tokEnd {
			break
		}
		part := kindNames[t.kind] + ":" + t.text
		if t.kind == tokNumber && t.unit != nil {
			part += "[" + t.unit.Symbol + "]"
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, " ")
}

func TestScanReadsTokens(t *testing.T) {
	for _, c := range []struct{ src, want string }{
		{"field-head", "name:field-head"},
		{"a - b", "name:a op:- name:b"},
		{"a-b", "name:a-b"},
		{"a -b", "name:a op:- name:b"},
		{"head-2 / h2", "name:head-2 op:/ name:h2"},
		{"187 ft", "number:187[ft]"},
		{"187ft", "number:187[ft]"},
		{".5", "number:.5"},
		{"1.5e-3 m3/s", "number:1.5e-3[m3/s]"},
		{"2e3", "number:2e3"},
		{"2.66 ft/100ft", "number:2.66[ft/100ft]"},
		{"72.5 %", "number:72.5[%]"},
		{"0.5 1/in", "number:0.5[1/in]"},
		{"5 in", "number:5[in]"},
		{"30 lbf.ft", "number:30[lbf.ft]"},
		{"0.11 money/kWh", "number:0.11[money/kWh]"},
		{"3 * capacity[gpm]", "number:3 op:* name:capacity unit:gpm"},
		{"capacity [L/s]", "name:capacity unit:L/s"},
		{"2 / 3", "number:2 op:/ number:3"},
		{"3 ft, 4 ft", "number:3[ft] op:, number:4[ft]"},
		{"0 ft: 1, 10 ft: 5)", "number:0[ft] op:: number:1 op:, number:10[ft] op:: number:5 op:)"},
		{"3\nft", "number:3 name:ft"},
		{"3 and 4", "number:3 name:and number:4"},
		{"3 to 4 ft", "number:3 name:to number:4[ft]"},
		{"1714 for 3960", "number:1714 name:for number:3960"},
		{"3 say", "number:3 name:say"},
		{"a <= b >= c != d < e > f = g", "name:a op:<= name:b op:>= name:c op:!= name:d op:< name:e op:> name:f op:= name:g"},
		{"a\t*\r\n(b)", "name:a op:* op:( name:b op:)"},
		{"say \"one\n   two  three\"", "name:say string:one two three"},
		{"\"\"", "string:"},
		{"\"ø 8 in × 2\"", "string:ø 8 in × 2"},
		{"", ""},
		{" \n\t", ""},
	} {
		var errs Errors
		if got := spell(scan(c.src, &errs)); got != c.want || len(errs) > 0 {
			t.Errorf("%q scans as\n\t%s %v\nshould be\n\t%s", c.src, got, errs, c.want)
		}
	}
}

func TestScanConvertsNumbersToSI(t *testing.T) {
	for _, c := range []struct {
		src  string
		want float64
	}{
		{"187 ft", 187 * 0.3048},                   // exact: 1 ft = 0.3048 m (NIST SP 811, B.8)
		{"60 gpm", 231 * 0.0254 * 0.0254 * 0.0254}, // 1 gal = 231 in3
		{"81 %", 0.81},
		{"32 degF", 273.15},
		{"20 degC", 293.15},
		{"60 rpm", 6.283185307179586}, // 1 turn a second = 2 pi rad/s
		{"2.66 ft/100ft", 0.0266},
		{"1e3 m", 1000},
	} {
		var errs Errors
		if got := scan(c.src, &errs)[0].value; !close(got, c.want, 1e-14) || len(errs) > 0 {
			t.Errorf("%q is %v in SI, should be %v (%v)", c.src, got, c.want, errs)
		}
	}
}

func TestTokensKnowTheirPlace(t *testing.T) {
	const src = "given total-head = 187 ft,\n capacity[gpm] \"x  y\""
	want := []string{"given", "total-head", "=", "187 ft", ",", "capacity", "[gpm]", "\"x  y\"", ""}
	firsts := "true false false false false true false false false"
	var errs Errors
	var first []string
	for i, tok := range scan(src, &errs) {
		if got := src[tok.off : tok.off+tok.len]; got != want[i] {
			t.Errorf("token %d covers %q, should cover %q", i, got, want[i])
		}
		first = append(first, fmt.Sprint(tok.first))
	}
	if got := strings.Join(first, " "); got != firsts {
		t.Errorf("first on its line: %s, should be %s", got, firsts)
	}
}

func TestReservedWords(t *testing.T) {
	for _, w := range []string{"and", "round-up", "leave", "danger", "because"} {
		if !Reserved(w) {
			t.Errorf("%q should be reserved", w)
		}
	}
	for _, w := range []string{"total-head", "head", ""} {
		if Reserved(w) {
			t.Errorf("%q should be free for a term", w)
		}
	}
	for _, f := range ownFuncs {
		if !Reserved(f.Name) {
			t.Errorf("the function %s can be hidden by a term: it should be reserved", f.Name)
		}
	}
}

func TestNearest(t *testing.T) {
	names := []string{"bowl-power", "capacity", "field-head", "total-head", "static-level"}
	for _, c := range []struct{ typed, want string }{
		{"capacty", "capacity"}, {"cpaacity", "capacity"}, {"total-haed", "total-head"}, {"totalhead", "total-head"},
		{"power", "bowl-power"}, {"static", "static-level"}, {"xyz", ""}, {"", ""}, {"motor-voltage", ""},
	} {
		if got := Nearest(c.typed, names); got != c.want {
			t.Errorf("for %q the nearest is %q, should be %q", c.typed, got, c.want)
		}
	}
}
