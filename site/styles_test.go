package site

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var (
	cssComment  = regexp.MustCompile(`(?s)/\*.*?\*/`)
	cssBody     = regexp.MustCompile(`(?s)\{[^{}]*\}`)
	cssClass    = regexp.MustCompile(`\.([a-zA-Z][\w-]*)`)
	sourceWord  = regexp.MustCompile(`[a-zA-Z][\w-]*`)
	madeClasses = regexp.MustCompile(`^(follow-|without-|like-h|cable-[io]$|wire-[io]$|n\d$)`) // joined from two pieces in the code
)

// A class that no shell, script or drawing writes is a rule that nobody sees.
func TestEveryClassOfTheStylesIsWritten(t *testing.T) {
	written := map[string]bool{}
	for _, dir := range []string{"shells", "scripts", "../calcwasm", "../build", "."} {
		err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
			if err != nil {
				return err
			}
			if d.IsDir() && (d.Name() == "node_modules" || d.Name() == "tests" || d.Name() == "testdata" || d.Name() == "styles") {
				return filepath.SkipDir
			}
			if d.IsDir() || strings.HasSuffix(path, "_test.go") || !strings.Contains(".go .ts .html", filepath.Ext(path)) {
				return nil
			}
			text, err := os.ReadFile(path)
			for _, w := range sourceWord.FindAllString(string(text), -1) {
				written[w] = true
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	sheets, err := filepath.Glob("styles/*.css")
	if err != nil || len(sheets) < 20 {
		t.Fatalf("%d style sheets, %v", len(sheets), err)
	}
	for _, sheet := range sheets {
		text, err := os.ReadFile(sheet)
		if err != nil {
			t.Fatal(err)
		}
		rules := cssBody.ReplaceAllString(cssComment.ReplaceAllString(string(text), ""), "{}")
		told := map[string]bool{}
		for _, m := range cssClass.FindAllStringSubmatch(rules, -1) {
			if name := m[1]; !written[name] && !madeClasses.MatchString(name) && !told[name] {
				told[name] = true
				t.Errorf("%s has rules for .%s, which nothing writes: delete them", sheet, name)
			}
		}
	}
}
