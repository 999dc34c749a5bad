package main

import (
	"os/exec"
	"strings"
	"testing"
)

// banned packages and what they would cost the reader: they were measured in
// an engine of this kind, compressed, against 589 kB without them.
var banned = map[string]string{
	"fmt":           "183 kB more to load: numbers and messages are written with strconv and package unit",
	"encoding/json": "336 kB more to load: the reply has one form, which package answer writes itself",
	"reflect":       "comes with fmt and encoding/json",
	"regexp":        "155 kB more to load: the notation has its own scanner",
	"text/template": "690 kB more to load: pages are made when the book is bound",
	"html/template": "1.1 MB more to load: pages are made when the book is bound",
	"math/big":      "over 100 kB more to load, and slow in a page",
	"os":            "the engine has no files: everything comes in and goes out as text",
	"time":          "the engine knows no time: the same facts give the same result always",
	"math/rand":     "the engine is deterministic",
	"math/rand/v2":  "exercises are drawn from a generator of their own that is the same everywhere",
	"bufio":         "the engine has no input or output",
	"net":           "the handbook works without a network",
}

// allowed are the packages of the standard library that the engine may import
// itself; what they bring with them is checked against banned.
var allowed = map[string]bool{"errors": true, "math": true, "strconv": true, "strings": true, "sync": true, "slices": true, "cmp": true,
	"unicode/utf8": true, "unsafe": true, "math/bits": true, "runtime": true}

func goList(t *testing.T, args ...string) []string {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list"}, args...)...)
	cmd.Env = append(cmd.Environ(), "GOOS=wasip1", "GOARCH=wasm")
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	return strings.Fields(string(out))
}

func TestEngineStaysSmall(t *testing.T) {
	for _, p := range goList(t, "-deps", ".") {
		if why, bad := banned[p]; bad {
			t.Errorf("the engine imports %s: %s", p, why)
		}
		if strings.Contains(p, ".") && !strings.HasPrefix(p, "columnbowl/") {
			t.Errorf("the engine imports %s: it stands on the standard library alone", p)
		}
		if strings.HasPrefix(p, "columnbowl/") && !strings.HasPrefix(p, "columnbowl/calcwasm") {
			t.Errorf("the engine imports %s: imports point from build to calcwasm, never back", p)
		}
	}
}

func TestEngineImportsLittle(t *testing.T) {
	for _, p := range goList(t, "-f", `{{$p := .ImportPath}}{{range .Imports}}{{$p}}:{{.}} {{end}}`, "./...") {
		from, to, _ := strings.Cut(p, ":")
		if !allowed[to] && !strings.HasPrefix(to, "columnbowl/calcwasm/") {
			t.Errorf("%s imports %s, which is not on the short list of the engine's packages", from, to)
		}
	}
}

// rooms that may know of each other, beside unit and arith which all may use.
// What is not listed imports none of the others.
var order = map[string]string{
	"cutaway":  "drawing",
	"reckon":   "formula",
	"answer":   "assembly reckon formula physics picture cutaway exercise search ask choosing",
	"ask":      "reckon formula search",
	"picture":  "reckon formula drawing",
	"assembly": "reckon formula",
	"exercise": "reckon formula",
	"physics":  "formula water pipe column shaft thrust suction motor curve",
	"column":   "pipe",
	"choosing": "reckon formula drawing curve pipe",
}

func TestImportsPointOneWay(t *testing.T) {
	for _, p := range goList(t, "-f", `{{$p := .ImportPath}}{{range .Imports}}{{$p}}:{{.}} {{end}}`, "./...") {
		from, to, _ := strings.Cut(p, ":")
		to, own := strings.CutPrefix(to, "columnbowl/calcwasm/")
		from, room := strings.CutPrefix(from, "columnbowl/calcwasm/")
		if !own || !room || to == "unit" || to == "arith" {
			continue
		}
		if !strings.Contains(" "+order[from]+" ", " "+to+" ") {
			t.Errorf("room %s imports %s: rooms point one way (unit, formula, reckon, answer)", from, to)
		}
	}
}
