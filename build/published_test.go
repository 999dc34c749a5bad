package main

import (
	"os"
	"strings"
	"testing"

	"columnbowl/build/published"
	"columnbowl/calcwasm/answer"
)

const checksDir = "../testdata/published/checks"

// TestPublished computes every published value natively and in the module that
// the page runs, and prints one line on all of them.
func TestPublished(t *testing.T) {
	b := bookOf(t)
	set, err := published.Load(os.DirFS(checksDir), b.Engine)
	if err != nil {
		t.Fatalf("the published values cannot be read:\n%v", err)
	}
	if len(set.Files) == 0 {
		t.Fatalf("there are no published values in %s", checksDir)
	}
	native := set.Run(answer.New(b.Engine).Answer)
	page := openPage(t, b.Engine.Pack())
	wasm := set.Run(func(request []byte) []byte { return page.ask(t, string(request)) })
	for i := range native {
		n, w := &native[i], &wasm[i]
		if !n.Holds() {
			t.Errorf("%s", n)
		}
		if n.Problem != w.Problem || n.Value != w.Value && n.Value == n.Value {
			t.Errorf("%s:%d: %s: native gives %v %s, WebAssembly %v %s", n.Case.File.Name, n.Case.Line, n.Case.Name, n.Value, n.Problem, w.Value, w.Problem)
		}
	}
	byTerm, all := set.Gather(wasm)
	t.Log(all.String())
	computed, facts := set.Unchecked(byTerm)
	t.Logf("without an outside check: %d computed terms (%s) and %d facts (%s)", len(computed), strings.Join(computed, ", "), len(facts), strings.Join(facts, ", "))
}

// The proof compares the book with the published values of a folder, tells what
// does not hold with its file and line, and notes what nothing checks.
func TestProofComparesPublished(t *testing.T) {
	const top = "# source: a test\n# read in: here\ncase,given,term,expect,tolerance,mark,note\n"
	for _, c := range []struct {
		name, row, want string
		status          int
	}{
		{"holds", "a,static-level = 70 ft; pumping-level = 90 ft,drawdown,20 ft,exact,read,\n", "published checks: 1 read in a source", 0},
		{"does not hold", "a,static-level = 70 ft; pumping-level = 90 ft,drawdown,21 ft,0.5 ft,read,\n",
			"01_test.csv:4:1: The published value of case “a” does not come out: 20 ft comes out, published is 21 ft within 0.5 ft", 1},
		{"cannot be read", "a,static-level = 70 ft,drawdown,21 psi,0.5 ft,read,\n", "01_test.csv:4:1: The expected value “21 psi” is a pressure", 1},
	} {
		dir := t.TempDir()
		if err := os.WriteFile(dir+"/01_test.csv", []byte(top+c.row), 0o644); err != nil {
			t.Fatal(err)
		}
		var out, errOut strings.Builder
		status := run([]string{"proof", "--content", "../content", "--checks", dir, "-v"}, &out, &errOut)
		if text := out.String() + errOut.String(); status != c.status || !strings.Contains(text, c.want) {
			t.Errorf("%s: status %d, want %d and %q:\n%s", c.name, status, c.status, c.want, text)
		}
		if c.name == "holds" && (!strings.Contains(out.String(), "No published value checks “trim-ratio”, which is computed.") ||
			strings.Contains(out.String(), "No published value checks “drawdown”")) {
			t.Errorf("the notes do not tell the terms without an outside check:\n%s", out.String())
		}
	}
	var out, errOut strings.Builder
	if status := run([]string{"proof", "--content", "../content", "--checks", "nowhere"}, &out, &errOut); status != 2 ||
		!strings.Contains(errOut.String(), "there is no folder nowhere with published values") {
		t.Errorf("status %d: %s", status, errOut.String())
	}
}
