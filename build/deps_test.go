package main

import (
	"os/exec"
	"strings"
	"testing"
)

// libraries are the outside modules and the one package that may import each:
// a change of library touches one folder.
var libraries = map[string]string{
	"github.com/yuin/goldmark":     "columnbowl/build/markdown",
	"go.yaml.in/yaml/":             "columnbowl/build/book",
	"github.com/evanw/esbuild":     "columnbowl/build/bundle",
	"github.com/alecthomas/chroma": "columnbowl/build/highlight",
}

func TestEachLibraryHasOneDoor(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", `{{$p := .ImportPath}}{{range .Imports}}{{$p}} {{.}}{{"\n"}}{{end}}`, "columnbowl/...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		from, to, _ := strings.Cut(line, " ")
		if !strings.Contains(strings.SplitN(to, "/", 2)[0], ".") || strings.HasPrefix(from, "columnbowl/site/") {
			continue // the standard library, ourselves, or a package inside the site's test tools
		}
		known := false
		for prefix, door := range libraries {
			if !strings.HasPrefix(to, prefix) {
				continue
			}
			known = true
			if from != door {
				t.Errorf("%s imports %s: only %s does", from, to, door)
			}
		}
		if !known {
			t.Errorf("%s imports %s, which is not on the list of libraries", from, to)
		}
	}
}

// Imports point from build to site and calcwasm, never back.
func TestImportsPointOneWay(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", `{{$p := .ImportPath}}{{range .Imports}}{{$p}} {{.}}{{"\n"}}{{end}}`, "columnbowl/site", "columnbowl/calcwasm/...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		from, to, _ := strings.Cut(line, " ")
		if strings.HasPrefix(to, "columnbowl/build") || from == "columnbowl/site" && strings.HasPrefix(to, "columnbowl/") {
			t.Errorf("%s imports %s", from, to)
		}
	}
}
