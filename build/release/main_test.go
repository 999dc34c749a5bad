package main

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// TestReleaseNeedsNoGo builds the program for this system, with all that it
// carries, and works with it in an empty folder with nothing on the PATH.
func TestReleaseNeedsNoGo(t *testing.T) {
	t.Chdir("../..")
	project, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	made, place := t.TempDir(), t.TempDir()
	// Not the final settings: with them the libraries would be compiled anew.
	if err := release(made, []string{runtime.GOOS + "/" + runtime.GOARCH}, settings{}); err != nil {
		t.Fatal(err)
	}
	programs, err := filepath.Glob(filepath.Join(made, "columnbowl-*"))
	if err != nil || len(programs) != 1 {
		t.Fatalf("%v, %v", programs, err)
	}
	sums, err := os.ReadFile(filepath.Join(made, "checksums.txt"))
	if err != nil || len(strings.Fields(string(sums))) != 2 || !strings.HasSuffix(string(sums), "  "+filepath.Base(programs[0])+"\n") {
		t.Errorf("checksums.txt: %q, %v", sums, err)
	}
	run := func(want int, args ...string) string {
		t.Helper()
		cmd := exec.Command(programs[0], args...)
		cmd.Dir, cmd.Env = place, []string{"PATH=" + t.TempDir(), "TMPDIR=" + t.TempDir(), "SystemRoot=" + os.Getenv("SystemRoot")}
		out, err := cmd.CombinedOutput()
		if have := cmd.ProcessState.ExitCode(); have != want {
			t.Fatalf("%s: exit status %d, want %d (%v)\n%s", strings.Join(args, " "), have, want, err, out)
		}
		return string(out)
	}
	says := func(out, want string) {
		t.Helper()
		if !strings.Contains(out, want) {
			t.Errorf("want %q in:\n%s", want, out)
		}
	}

	// The book inside answers where there is no content folder.
	says(run(0, "reckon", "pumping-level", "static-level=140ft", "drawdown=55ft"), "195 ft")
	says(run(0, "handout", "--list"), "chain-of-three")

	// A new book is the one inside, and what stands there is left alone.
	says(run(0, "begin", "mine"), "columnbowl read --content mine")
	sameTree(t, filepath.Join(project, "content"), filepath.Join(place, "mine"))
	sameTree(t, filepath.Join(project, "testdata", "published", "checks"), filepath.Join(place, "mine", "checks"))
	says(run(1, "begin", "mine"), "nothing was written")
	says(run(1, "begin", filepath.Join("mine", "handbook.yaml")), "cannot take a new book")

	// A small book, so that this stays quick, is bound with the engine inside.
	if err := os.CopyFS(filepath.Join(place, "small"), os.DirFS(filepath.Join(project, "testdata", "bindery", "content"))); err != nil {
		t.Fatal(err)
	}
	says(run(0, "proof", "--content", "small"), "Nothing is wrong.")
	says(run(0, "bind", "--content", "small", "--out", "stick"), "Open "+filepath.Join("stick", "index.html"))
	engines, err := filepath.Glob(filepath.Join(place, "stick", "assets", "engine.*.packed"))
	if err != nil || len(engines) != 1 {
		t.Errorf("the edition has the engines %v, %v", engines, err)
	}
	says(run(2, "bind", "--content", "nowhere"), "there is no content folder nowhere")
}

// sameTree checks that every file below one folder stands below another.
func sameTree(t *testing.T, from, to string) {
	t.Helper()
	err := fs.WalkDir(os.DirFS(from), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		want, err := os.ReadFile(filepath.Join(from, name))
		if err != nil {
			return err
		}
		if have, err := os.ReadFile(filepath.Join(to, name)); err != nil || !bytes.Equal(have, want) {
			t.Errorf("%s: %d bytes, want %d (%v)", name, len(have), len(want), err)
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
}
