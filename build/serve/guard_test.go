package serve

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"columnbowl/site"
)

// TestOnlyOurHosts: a page from elsewhere that has its own name lead to this
// machine gets nothing.
func TestOnlyOurHosts(t *testing.T) {
	for host, want := range map[string]bool{
		"127.0.0.1:8817": true, "localhost:8817": true, "[::1]:8817": true, "localhost": true, "[::1]": true,
		"": false, "larkenfold.example": false, "larkenfold.example:8817": false, "localhost.larkenfold.example:8817": false,
		"127.0.0.1.larkenfold.example": false, "0.0.0.0:8817": false, "127.0.0.2:8817": false, "localhost:8817:1": false,
	} {
		if ours(host) != want {
			t.Errorf("%q: want %v", host, want)
		}
	}
	r := read(t, level)
	for _, page := range []string{"/", "/" + level, changesPath, scriptPath} {
		ask := httptest.NewRequest("GET", page, nil)
		ask.Host = "larkenfold.example:8817"
		w := httptest.NewRecorder()
		r.server.Config.Handler.ServeHTTP(w, ask)
		if w.Code != http.StatusMisdirectedRequest || strings.Contains(w.Body.String(), "<") {
			t.Errorf("%s for another host: %d %.80s", page, w.Code, w.Body)
		}
	}
}

// TestNothingOutside: what a request names is a file of the edition or nothing.
func TestNothingOutside(t *testing.T) {
	r := read(t, level)
	paths := []string{"/handbook.yaml", "/terms/pumping-level.md", "/../handbook.yaml", "/terms/../../handbook.yaml", "/%2e%2e/handbook.yaml", "/..%2fhandbook.yaml",
		"/terms/..%5c..%5chandbook.yaml", "//etc/passwd", "/etc/passwd", "/terms", "/assets/", "/worker.js", "/edition.txt", "/~", "/~read.js/", "/index.html/", "/%00"}
	for _, path := range paths {
		ask, err := http.NewRequest("GET", r.server.URL+path, nil)
		if err != nil {
			continue
		}
		ask.URL.Opaque = strings.TrimPrefix(r.server.URL, "http:") + path // as it is written, not cleaned
		answer, err := http.DefaultTransport.RoundTrip(ask)
		if err != nil {
			t.Errorf("%s: %v", path, err)
			continue
		}
		answer.Body.Close()
		if answer.StatusCode != http.StatusNotFound {
			t.Errorf("%s: %s", path, answer.Status)
		}
	}
	for _, method := range []string{"POST", "PUT", "DELETE", "OPTIONS"} {
		w := httptest.NewRecorder()
		r.server.Config.Handler.ServeHTTP(w, httptest.NewRequest(method, "http://localhost/"+level, strings.NewReader("x")))
		if w.Code != http.StatusMethodNotAllowed {
			t.Errorf("%s: %d", method, w.Code)
		}
	}
}

// TestHeaders: every file has its kind and the policy of its page, and what
// carries a sum in its name may be kept.
func TestHeaders(t *testing.T) {
	r := read(t, level)
	_, page := r.get("/" + level)
	style := page[strings.Index(page, "../assets/page."):]
	style = "/" + strings.TrimPrefix(style[:strings.Index(style, `"`)], "../")
	for _, c := range []struct{ path, kind, policy, keep string }{
		{"/", "text/html; charset=utf-8", site.Policy, "no-cache"},
		{"/terms/", "text/html; charset=utf-8", site.Policy, "no-cache"},
		{"/hub.html", "text/html; charset=utf-8", site.HubPolicy, "no-cache"},
		{"/nothing.html", "text/html; charset=utf-8", site.Policy, "no-cache"},
		{style, "text/css; charset=utf-8", site.Policy, "max-age=31536000, immutable"},
		{"/assets/names.js", "text/javascript; charset=utf-8", site.Policy, "no-cache"},
		{"/assets/icon.svg", "image/svg+xml", site.Policy, "no-cache"},
		{"/app.webmanifest", "application/manifest+json", site.Policy, "no-cache"},
		{scriptPath, "text/javascript; charset=utf-8", site.Policy, "no-cache"},
		{stylePath, "text/css; charset=utf-8", site.Policy, "no-cache"},
	} {
		answer, text := r.get(c.path)
		h := answer.Header
		if h.Get("Content-Type") != c.kind || h.Get("Content-Security-Policy") != c.policy+"; frame-ancestors 'self'" || h.Get("Cache-Control") != c.keep ||
			h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Cross-Origin-Resource-Policy") != "same-origin" {
			t.Errorf("%s: %v", c.path, h)
		}
		if c.path == "/hub.html" && strings.Contains(text, scriptPath) {
			t.Error("hub.html has a script that its policy forbids")
		}
	}
	ask, err := http.NewRequest("GET", r.server.URL+"/"+level, nil)
	if err != nil {
		t.Fatal(err)
	}
	first, _ := r.get("/" + level)
	ask.Header.Set("If-None-Match", first.Header.Get("ETag"))
	again, err := http.DefaultClient.Do(ask)
	if err != nil {
		t.Fatal(err)
	}
	again.Body.Close()
	if again.StatusCode != http.StatusNotModified {
		t.Errorf("asked with its tag, a page comes again: %s", again.Status)
	}
}
