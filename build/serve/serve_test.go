package serve

import (
	"bufio"
	"context"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"columnbowl/build/bindery"
	"columnbowl/build/book"
	"columnbowl/site"
)

// parts stand in for what the bundler makes.
func parts(t testing.TB) bindery.Parts {
	t.Helper()
	shells, err := site.Shells()
	if err != nil {
		t.Fatal(err)
	}
	some := []byte("(()=>{})();\n")
	return bindery.Parts{PageScript: some, HubScript: some, WorkerScript: some, Style: []byte("main{}"), Font: []byte("wOF2"), FontLicence: []byte("licence"),
		Wasm: []byte("\x00asm\x01\x00\x00\x00"), Shells: shells}
}

// reading serves a copy of the small book, which a test may edit.
type reading struct {
	*testing.T
	dir    string
	server *httptest.Server
	events *bufio.Scanner
}

// read starts a server, and listens to it as the page at a path does.
func read(t *testing.T, page string) *reading {
	t.Helper()
	r := &reading{T: t, dir: t.TempDir()}
	if err := os.CopyFS(r.dir, os.DirFS("../../testdata/bindery/content")); err != nil {
		t.Fatal(err)
	}
	s, err := New(Options{Content: NewFolder(r.dir).Content, Folder: "mine", Watched: true, Parts: parts(t)})
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- s.Run(ctx) }()
	r.server = httptest.NewServer(s)
	line, err := http.Get(r.server.URL + changesPath + "?page=/" + page)
	if err != nil {
		t.Fatal(err)
	}
	r.events = bufio.NewScanner(line.Body)
	t.Cleanup(func() {
		cancel()
		line.Body.Close()
		r.server.CloseClientConnections()
		r.server.Close()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	})
	r.until(Sound)
	return r
}

// until waits for an event of a state.
func (r *reading) until(state State) told {
	r.Helper()
	for r.events.Scan() {
		text, ok := strings.CutPrefix(r.events.Text(), "data: ")
		if !ok {
			continue
		}
		var e told
		if err := json.Unmarshal([]byte(text), &e); err != nil {
			r.Fatal(err)
		}
		if e.State == stateNames[state] {
			return e
		}
	}
	r.Fatalf("no state %s came: %v", stateNames[state], r.events.Err())
	return told{}
}

func (r *reading) edit(file, old, new string) {
	r.Helper()
	path := filepath.Join(r.dir, filepath.FromSlash(file))
	text, err := os.ReadFile(path)
	if err != nil || !strings.Contains(string(text), old) {
		r.Fatalf("%s has no %q (%v)", file, old, err)
	}
	if err := os.WriteFile(path, []byte(strings.Replace(string(text), old, new, 1)), 0o644); err != nil {
		r.Fatal(err)
	}
}

// get asks for a page, and returns its status, kind and text.
func (r *reading) get(page string) (*http.Response, string) {
	r.Helper()
	answer, err := http.Get(r.server.URL + page)
	if err != nil {
		r.Fatal(err)
	}
	defer answer.Body.Close()
	var b strings.Builder
	if _, err := bufio.NewReader(answer.Body).WriteTo(&b); err != nil {
		r.Fatal(err)
	}
	return answer, b.String()
}

const level = "terms/pumping-level.html"

func TestEditIsSeen(t *testing.T) {
	r := read(t, level)
	_, before := r.get("/" + level)
	r.edit("terms/pumping-level.md", "The pumping level is", "Herons stand still. The pumping level is")
	seen := r.until(Sound)
	_, after := r.get("/" + level)
	if !strings.Contains(after, "Herons stand still.") || strings.Contains(before, "Herons") {
		t.Errorf("the new sentence is not in the page:\n%s", after)
	}
	if !strings.Contains(after, `data-read="`+seen.Page+`"`) || strings.Contains(before, seen.Page) {
		t.Error("the page that is shown is not the one that the event names")
	}
}

func TestMistakeIsToldAndThePagesStay(t *testing.T) {
	r := read(t, level)
	_, before := r.get("/" + level)
	steps := []struct{ file, old, new, want string }{
		{"terms/pumping-level.md", "static-level + drawdown", "static-level + drwdown", "mine/terms/pumping-level.md:"},
		{"terms/pumping-level.md", "static-level + drwdown", "static-level + drawdown", ""},
		{"handbook.yaml", "places:", "placs:", "mine/handbook.yaml:"},
		{"handbook.yaml", "placs:", "places:", ""},
	}
	for _, s := range steps {
		r.edit(s.file, s.old, s.new)
		if s.want == "" {
			r.until(Sound)
		} else if e := r.until(Wrong); !strings.Contains(e.Text, s.want) || e.Note != r.word("read.kept") {
			t.Errorf("after %q the page is told %+v", s.new, e)
		}
		if _, now := r.get("/" + level); now != before {
			t.Errorf("after %q the page has changed", s.new)
		}
	}
}

func (r *reading) word(key string) string {
	words, err := site.Words()
	if err != nil {
		r.Fatal(err)
	}
	return words[key]
}

// A mistake that only the proof of the whole book finds takes the pages back.
func TestWholeProofTakesBack(t *testing.T) {
	r := read(t, level)
	_, before := r.get("/" + level)
	// The pages that have not been edited lead to it.
	if err := os.Remove(filepath.Join(r.dir, "parts", "column-pipe.md")); err != nil {
		t.Fatal(err)
	}
	if e := r.until(Wrong); !strings.Contains(e.Text, "“column-pipe”") {
		t.Errorf("told: %+v", e)
	}
	if answer, _ := r.get("/parts/column-pipe.html"); answer.StatusCode != http.StatusOK {
		t.Error("the page of the part is gone before the book is sound without it")
	}
	if _, now := r.get("/" + level); now != before {
		t.Error("the page does not show the book as it was")
	}
}

func TestBookWithoutASoundBeginning(t *testing.T) {
	s, err := New(Options{Content: func() (book.Memory, error) { return book.Memory{}, nil }, Folder: "mine", Parts: parts(t)})
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 100*time.Millisecond)
	defer cancel()
	if err := s.Run(ctx); err != nil {
		t.Fatal(err)
	}
	w := httptest.NewRecorder()
	s.ServeHTTP(w, httptest.NewRequest("GET", "http://localhost:8817/", nil))
	if w.Code != http.StatusServiceUnavailable || !strings.Contains(w.Body.String(), scriptPath) {
		t.Errorf("%d: %s", w.Code, w.Body)
	}
	v := s.view()
	if e := s.tell(&v, "index.html"); !strings.Contains(e.Text, "handbook.yaml") {
		t.Errorf("told: %+v", e)
	}
}
