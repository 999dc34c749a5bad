package unit

import (
	"go/parser"
	"go/token"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The package is compiled into the page. fmt alone would make that a quarter
// larger, so only these are imported.
func TestImports(t *testing.T) {
	allowed := []string{"cmp", "errors", "math", "slices", "strconv", "strings", "sync"}
	files, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		if !strings.HasSuffix(file.Name(), ".go") || strings.HasSuffix(file.Name(), "_test.go") {
			continue
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file.Name(), nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, spec := range parsed.Imports {
			if path, _ := strconv.Unquote(spec.Path.Value); !slices.Contains(allowed, path) {
				t.Errorf("%s imports %s", file.Name(), path)
			}
		}
	}
}
