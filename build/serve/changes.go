package serve

import (
	"encoding/json"
	"fmt"
	"net/http"
	"time"
)

// told is what a page hears at every change.
type told struct {
	Page  string `json:"page"`            // the tag of the page as it is now
	State string `json:"state"`           // proving, sound or wrong
	Title string `json:"title,omitempty"` // what is the matter, in a line
	Text  string `json:"text,omitempty"`  // what the proof has found, as it prints it
	Note  string `json:"note,omitempty"`  // what is shown meanwhile
}

var stateNames = [...]string{Proving: "proving", Sound: "sound", Wrong: "wrong"}

// breath is how often a silent line is sent, so that a page that has gone is
// noticed.
const breath = 20 * time.Second

// changes tells a page what stands, at once and at every change, as events of
// the server (the HTML standard, “Server-sent events”).
func (s *Server) changes(w http.ResponseWriter, r *http.Request) {
	out := http.NewResponseController(w)
	w.Header().Set("Content-Type", "text/event-stream")
	w.Header().Set("Cache-Control", "no-store")
	s.listeners.Add(1)
	defer s.listeners.Add(-1)
	file := fileOf(r.URL.Query().Get("page"))
	for {
		v := s.view()
		text, err := json.Marshal(s.tell(&v, file)) // no line break stands in JSON
		if err != nil {
			return
		}
		if _, err := fmt.Fprintf(w, "data: %s\n\n", text); err != nil || out.Flush() != nil {
			return
		}
		if !wait(w, r, out, v.changed) {
			return
		}
	}
}

// wait ends with true at a change, and with false when the page has gone.
func wait(w http.ResponseWriter, r *http.Request, out *http.ResponseController, changed <-chan struct{}) bool {
	for {
		select {
		case <-changed:
			return true
		case <-r.Context().Done():
			return false
		case <-time.After(breath):
			if _, err := fmt.Fprint(w, ":\n\n"); err != nil || out.Flush() != nil {
				return false
			}
		}
	}
}

func (s *Server) tell(v *view, file string) told {
	t := told{Page: v.tag(file), State: stateNames[v.state]}
	if v.state == Wrong {
		t.Title, t.Text, t.Note = s.words["read.wrong"], v.told, s.words["read.kept"]
		if v.shown == nil {
			t.Note = s.words["read.none"]
		}
	}
	return t
}
