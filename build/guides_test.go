package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"columnbowl/build/book"
	"columnbowl/build/markdown"
)

var aFlag = regexp.MustCompile(`--[a-z-]+`)

// What the guides tell people to type is what the command takes: sheets are made
// and marked as they say, and each flag of the other commands is in their usage.
func TestCommandsOfTheGuides(t *testing.T) {
	content, err := filepath.Abs("../content")
	if err != nil {
		t.Fatal(err)
	}
	b, _ := book.Load(os.DirFS(content))
	t.Chdir(t.TempDir())
	tried := 0
	for _, g := range b.Guides {
		for _, k := range g.Doc.Blocks {
			switch {
			case k.Kind != markdown.Show:
			case k.Head == "csv":
				if err := os.WriteFile("class.csv", []byte(k.Body), 0o644); err != nil {
					t.Fatal(err)
				}
			case k.Head == "shell":
				for line := range strings.Lines(k.Body) {
					line, _, _ = strings.Cut(line, "#")
					if args := strings.Fields(line); len(args) > 0 {
						tried++
						tryCommand(t, g.File, args, content)
					}
				}
			}
		}
	}
	if tried < 8 {
		t.Errorf("only %d commands stand in the guides", tried)
	}
}

func tryCommand(t *testing.T, file string, args []string, content string) {
	t.Helper()
	if args[0] != "columnbowl" || len(args) < 2 || find(args[1]) == nil {
		t.Errorf("%s: %q is no command of columnbowl", file, strings.Join(args, " "))
		return
	}
	c := find(args[1])
	for _, flag := range aFlag.FindAllString(" "+strings.Join(args[2:], " "), -1) {
		if !strings.Contains(c.usage, flag) {
			t.Errorf("%s: columnbowl %s has no %s", file, c.name, flag)
		}
	}
	if c.name != "handout" && c.name != "mark" {
		return
	}
	var out, errOut bytes.Buffer
	if status := c.run(append(args[2:], "--content", content), &out, &errOut); status != 0 {
		t.Errorf("%s: %s ends with %d: %s", file, strings.Join(args, " "), status, &errOut)
	}
}
