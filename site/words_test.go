package site

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// sources reads all shells and scripts.
func sources(t *testing.T, ext string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := fs.WalkDir(Files, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ext {
			return err
		}
		data, err := Files.ReadFile(path)
		out[path] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

var (
	shellWord = regexp.MustCompile(`\bword "([^"]+)"`)
	literal   = regexp.MustCompile(`"([a-z-]+(?:\.[a-z-]+)+)"`)
)

// TestNoWordKeyIsMissing: what the shells ask for by name, and every text in the
// scripts that looks like the key of a word.
func TestNoWordKeyIsMissing(t *testing.T) {
	words, err := Words()
	if err != nil {
		t.Fatal(err)
	}
	rooms := map[string]bool{}
	for key := range words {
		room, _, _ := strings.Cut(key, ".")
		rooms[room] = true
	}
	for path, text := range sources(t, ".html") {
		for _, m := range shellWord.FindAllStringSubmatch(text, -1) {
			if words[m[1]] == "" {
				t.Errorf("%s asks for the word %q, which words.json lacks", path, m[1])
			}
		}
	}
	for path, text := range sources(t, ".ts") {
		for _, m := range literal.FindAllStringSubmatch(text, -1) {
			room, _, _ := strings.Cut(m[1], ".")
			if rooms[room] && words[m[1]] == "" {
				t.Errorf("%s asks for the word %q, which words.json lacks", path, m[1])
			}
		}
	}
	for _, s := range States {
		for _, n := range []string{".one", ".many"} {
			if words["count."+string(s)+n] == "" {
				t.Errorf("words.json lacks count.%s%s", s, n)
			}
		}
	}
}

// TestNoWordIsIdle: a word that nothing shows is a word that nobody proofreads.
func TestNoWordIsIdle(t *testing.T) {
	words, err := Words()
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, ext := range []string{".html", ".ts"} {
		for _, text := range sources(t, ext) {
			all.WriteString(text)
		}
	}
	var binders []string
	for _, room := range []string{"bindery", "epub", "onefile", "serve"} {
		files, err := filepath.Glob("../build/" + room + "/*.go")
		if err != nil {
			t.Fatal(err)
		}
		binders = append(binders, files...)
	}
	for _, path := range binders {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(data)
	}
	text := all.String()
	for key := range words {
		if !shown(text, key) {
			t.Errorf("nothing shows the word %q", key)
		}
	}
}

// shown tells whether a text asks for a key as it is, for one or for many, or
// puts the key together from its beginning: "state." and a state.
func shown(text, key string) bool {
	stem := strings.TrimSuffix(strings.TrimSuffix(key, ".one"), ".many")
	if strings.Contains(text, `"`+key+`"`) || strings.Contains(text, `"`+stem+`"`) {
		return true
	}
	for at, c := range key {
		if c == '.' && strings.Contains(text, `"`+key[:at+1]+`"`) {
			return true
		}
	}
	return false
}
