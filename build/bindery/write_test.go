package bindery

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

func edition(word string) *Edition {
	return &Edition{BookID: "larkenfold", Form: "folder", Files: []File{
		{"assets/page.css", []byte("main{}" + word)},
		{"index.html", []byte("home " + word)},
		{"terms/index.html", []byte("terms " + word)},
		{"terms/static-level.html", []byte("level " + word)},
	}}
}

// holds checks that a folder is exactly an edition.
func holds(t *testing.T, dir string, e *Edition) {
	t.Helper()
	for _, f := range e.Files {
		got, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(f.Path)))
		if err != nil || string(got) != string(f.Data) {
			t.Errorf("%s: %q, %v; want %q", f.Path, got, err, f.Data)
		}
	}
	n := 0
	filepath.WalkDir(dir, func(_ string, d os.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			n++
		}
		return err
	})
	if n != len(e.Files)+1 {
		t.Errorf("the folder holds %d files, want %d and the marker", n, len(e.Files))
	}
}

func alone(t *testing.T, dir string) {
	t.Helper()
	entries, err := os.ReadDir(filepath.Dir(dir))
	if err != nil || len(entries) != 1 {
		t.Errorf("beside the edition something was left: %v %v", entries, err)
	}
}

func TestWriteAndReplace(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	for _, word := range []string{"one", "two"} {
		if err := Write(edition(word), dir); err != nil {
			t.Fatal(err)
		}
		holds(t, dir, edition(word))
		alone(t, dir)
	}
	fewer := edition("three")
	fewer.Files = fewer.Files[:2]
	if err := Write(fewer, dir); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, fewer)
}

// failing is a disk that gives up after a number of steps, once or for good.
type failing struct {
	realDisk
	left  *int
	err   error
	dead  bool // killed: nothing works any more, not even cleaning up
	after *bool
}

func (f failing) step() error {
	if f.dead && *f.after {
		return f.err
	}
	if *f.left--; *f.left == -1 {
		*f.after = true
		return f.err
	}
	return nil
}

func (f failing) MkdirAll(dir string) error {
	if err := f.step(); err != nil {
		return err
	}
	return f.realDisk.MkdirAll(dir)
}

func (f failing) WriteFile(path string, data []byte) error {
	if err := f.step(); err != nil {
		// A full disk leaves half a file behind.
		return errors.Join(f.realDisk.WriteFile(path, data[:len(data)/2]), err)
	}
	return f.realDisk.WriteFile(path, data)
}

func (f failing) Rename(from, to string) error {
	if err := f.step(); err != nil {
		return err
	}
	return f.realDisk.Rename(from, to)
}

func (f failing) RemoveAll(path string) error {
	if err := f.step(); err != nil {
		return err
	}
	return f.realDisk.RemoveAll(path)
}

// TestInterrupted stops the writing at every step there is, by a full disk and
// by a kill. The old edition stays whole until the new one is in its place, and
// the next bind succeeds.
func TestInterrupted(t *testing.T) {
	for _, dead := range []bool{false, true} {
		for n := 0; ; n++ {
			dir := filepath.Join(t.TempDir(), "out")
			if err := Write(edition("old"), dir); err != nil {
				t.Fatal(err)
			}
			left, after := n, false
			err := write(edition("new"), dir, failing{left: &left, after: &after, dead: dead, err: syscall.ENOSPC})
			if !after {
				if err != nil {
					t.Fatal(err)
				}
				if n < 10 {
					t.Fatalf("only %d steps were tried", n)
				}
				break
			}
			if err == nil || !strings.Contains(err.Error(), "the disk is full") {
				t.Fatalf("step %d: want the words on the full disk, got %v", n, err)
			}
			survives(t, dir, n)
			if err := Write(edition("next"), dir); err != nil {
				t.Fatalf("step %d: the next bind fails: %v", n, err)
			}
			holds(t, dir, edition("next"))
			alone(t, dir)
		}
	}
}

// TestCutOffMarker is a bind that was killed in its first file: the next one
// takes what is left for its own, and nobody else's folder for it.
func TestCutOffMarker(t *testing.T) {
	whole := string(edition("new").marker())
	for _, left := range []string{"", whole[:1], whole[:len(markerHead)+9]} {
		dir := filepath.Join(t.TempDir(), "out")
		if err := os.Mkdir(dir+".new", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir+".new", Marker), []byte(left), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := Write(edition("next"), dir); err != nil {
			t.Errorf("after %q: %v", left, err)
			continue
		}
		holds(t, dir, edition("next"))
		alone(t, dir)
	}
	dir := t.TempDir()
	for _, name := range []string{Marker, "notes.txt"} {
		if err := os.WriteFile(filepath.Join(dir, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := Write(edition("next"), dir); err == nil {
		t.Error("a folder with notes in it was replaced")
	}
}

// survives checks that after an interruption one whole edition is there: in its
// place, or moved aside when the kill came between the two renames.
func survives(t *testing.T, dir string, step int) {
	t.Helper()
	if _, err := os.Stat(dir); err != nil {
		dir += ".old"
	}
	text, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil {
		t.Fatalf("step %d: no edition is left: %v", step, err)
	}
	holds(t, dir, edition(strings.TrimPrefix(string(text), "home ")))
}

func TestRefusesWhatIsNotOurs(t *testing.T) {
	put := func(t *testing.T, path, text string) {
		t.Helper()
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	other := edition("x")
	other.BookID = "other-book"
	cases := []struct {
		name, want string
		before     func(t *testing.T, dir string)
	}{
		{"folder of somebody", "is not an edition of this tool", func(t *testing.T, dir string) { put(t, filepath.Join(dir, "letter.txt"), "dear") }},
		{"file", "is a file, not a folder", func(t *testing.T, dir string) { put(t, dir, "dear") }},
		{"foreign marker", "is not the marker of an edition", func(t *testing.T, dir string) { put(t, filepath.Join(dir, Marker), "2nd edition") }},
		{"other book", `edition of the book "other-book"`, func(t *testing.T, dir string) {
			if err := Write(other, dir); err != nil {
				t.Fatal(err)
			}
		}},
		{"own file inside", "would be lost: move it out", func(t *testing.T, dir string) {
			if err := Write(edition("old"), dir); err != nil {
				t.Fatal(err)
			}
			put(t, filepath.Join(dir, "terms", "notes.txt"), "mine")
		}},
		{"somebody's out.new", "is not an edition of this tool", func(t *testing.T, dir string) { put(t, filepath.Join(dir+".new", "letter.txt"), "dear") }},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "out")
			c.before(t, dir)
			before := tree(t, filepath.Dir(dir))
			err := Write(edition("new"), dir)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("want %q, got %v", c.want, err)
			}
			if after := tree(t, filepath.Dir(dir)); after != before {
				t.Errorf("refused, and yet changed:\n%s\nbefore:\n%s", after, before)
			}
		})
	}
}

// tree lists all files below a folder with their text.
func tree(t *testing.T, dir string) string {
	t.Helper()
	var b strings.Builder
	err := filepath.WalkDir(dir, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		b.WriteString(path + ": " + string(text) + "\n")
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestExplainsReadOnly(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{{syscall.EROFS, "can only be read"}, {syscall.EACCES, "you may not write there"}, {syscall.EPERM, "you may not write there"}} {
		left, after := 1, false
		err := write(edition("new"), filepath.Join(t.TempDir(), "out"), failing{left: &left, after: &after, err: c.err})
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), "--out") {
			t.Errorf("%v: want %q, got %v", c.err, c.want, err)
		}
	}
}
