package serve

import (
	"bytes"
	"fmt"
	"html"
	"net"
	"net/http"
	"path"
	"regexp"
	"strings"
	"time"

	"columnbowl/site"
)

// Addresses of our own. No file of an edition begins with a tilde.
const (
	changesPath = "/~changes"
	scriptPath  = "/~read.js"
	stylePath   = "/~read.css"
)

// types of the files of an edition, by their endings.
var types = map[string]string{
	".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8", ".svg": "image/svg+xml",
	".woff2": "font/woff2", ".txt": "text/plain; charset=utf-8", ".webmanifest": "application/manifest+json", ".packed": "application/octet-stream",
}

// hubPage remembers for the other pages and has a stricter policy: nothing is
// put into it.
const hubPage = "hub.html"

// ServeHTTP answers one request.
func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	guard(w.Header())
	switch {
	case !ours(r.Host):
		http.Error(w, "This server answers for this machine alone, and not under the name of another host.", http.StatusMisdirectedRequest)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		w.Header().Set("Allow", "GET, HEAD")
		http.Error(w, "Pages can only be read here.", http.StatusMethodNotAllowed)
	case r.URL.Path == changesPath:
		s.changes(w, r)
	case r.URL.Path == scriptPath:
		send(w, r, scriptPath, s.script)
	case r.URL.Path == stylePath:
		send(w, r, stylePath, s.style)
	default:
		s.page(w, r)
	}
}

// guard sets what holds for every answer: no other site may use it, frame it or
// guess at its kind.
func guard(h http.Header) {
	h.Set("Content-Security-Policy", site.Policy+"; frame-ancestors 'self'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cache-Control", "no-cache")
}

// ours says whether a request was meant for this machine. A page from elsewhere
// can have a name of its own lead here, but then it is that name that stands in
// the request.
func ours(host string) bool {
	name, _, err := net.SplitHostPort(host)
	if err != nil {
		name = strings.Trim(host, "[]")
	}
	return name == "localhost" || name == "127.0.0.1" || name == "::1"
}

// fileOf is the path of the edition that an address names.
func fileOf(address string) string {
	file := strings.TrimPrefix(address, "/")
	if file == "" || strings.HasSuffix(file, "/") {
		file += "index.html"
	}
	return file
}

// page sends a file of the edition; a page listens for changes from then on.
func (s *Server) page(w http.ResponseWriter, r *http.Request) {
	v := s.view()
	file := fileOf(r.URL.Path)
	if v.shown == nil {
		s.note(w, http.StatusServiceUnavailable, &v, file, s.words["read.none"])
		return
	}
	data, found, err := v.draft.File(file)
	switch {
	case err != nil:
		s.note(w, http.StatusInternalServerError, &v, file, err.Error())
		return
	case !found:
		s.note(w, http.StatusNotFound, &v, file, fmt.Sprintf(s.words["read.missing"], file))
		return
	}
	if file == hubPage {
		w.Header().Set("Content-Security-Policy", site.HubPolicy+"; frame-ancestors 'self'")
	} else if path.Ext(file) == ".html" {
		data = listening(data, v.tag(file))
	}
	send(w, r, file, data)
}

// lasting is a name that carries the sum of the file's bytes.
var lasting = regexp.MustCompile(`\.[0-9a-f]{12}\.[a-z0-9]+$`)

// send sends bytes that browsers keep: they ask whether there are others.
func send(w http.ResponseWriter, r *http.Request, name string, data []byte) {
	h := w.Header()
	if kind, ok := types[path.Ext(name)]; ok {
		h.Set("Content-Type", kind)
	} else {
		h.Set("Content-Type", "application/octet-stream")
	}
	if lasting.MatchString(name) {
		h.Set("Cache-Control", "max-age=31536000, immutable")
	}
	h.Set("ETag", `"`+sumOf(data)+`"`)
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(data))
}

// listening puts the script into a page that waits for changes, and the tag by
// which it knows that it is no longer the newest.
func listening(data []byte, tag string) []byte {
	data = bytes.Replace(data, []byte("<html "), fmt.Appendf(nil, "<html data-read=%q ", tag), 1)
	return bytes.Replace(data, []byte("</head>"), []byte(listener+"</head>"), 1)
}

const listener = `<link rel="stylesheet" href="` + stylePath + `">` + "\n" + `<script src="` + scriptPath + `"></script>` + "\n"

// note is a page that only says why there is none. It waits for changes too.
func (s *Server) note(w http.ResponseWriter, status int, v *view, file, text string) {
	w.Header().Set("Content-Type", types[".html"])
	w.WriteHeader(status)
	fmt.Fprintf(w, `<!doctype html>
<html lang="en" data-read="%s">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>%s</title>
%s</head>
<body class="readbare">
<main><h1>%s</h1>
<p>%s</p>
<p><a href="/">%s</a></p>
</main>
</body>
</html>
`, v.tag(file), html.EscapeString(s.words["read.title"]), listener, html.EscapeString(s.words["read.title"]), html.EscapeString(text), html.EscapeString(s.words["read.home"]))
}
