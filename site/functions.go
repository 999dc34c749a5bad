package site

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"html/template"
	"strconv"
	"strings"
)

// functions are the helpers of the shells. They turn values into words and
// markup; none of them decides anything about pumps.
func functions(words map[string]string, sprite template.HTML) template.FuncMap {
	return template.FuncMap{
		"word":      func(key string, args ...any) (string, error) { return word(words, key, args...) },
		"count":     func(n map[State]int) (string, error) { return countLine(words, n) },
		"sign":      func(s State) template.HTML { return signUse(string(s)) },
		"signs":     func() template.HTML { return sprite },
		"facts":     factsLink,
		"fragment":  fragment,
		"json":      jsonText,
		"policy":    func() template.HTMLAttr { return content(Policy) },
		"hubPolicy": func() template.HTMLAttr { return content(HubPolicy) },
		"or1":       firstOf,
		"twin":      func(b Both) bool { return b.SI.N != "" && b.SI != b.US },
		"plain":     func(b Both) string { return strings.TrimSpace(b.US.N + " " + b.US.U) },
		"list":      func(names []string) string { return strings.Join(names, ", ") },
		"sum":       func(a, b int) int { return a + b },
		"plural":    plural,
		"numbered":  numbered,
		"cells":     cells,
		"texts":     func(texts ...string) []string { return texts },
	}
}

// word returns the words under key with {0}, {1} … replaced by args. A missing
// key is an error, so that no page goes out with a hole in it.
func word(words map[string]string, key string, args ...any) (string, error) {
	text, ok := words[key]
	if !ok {
		return "", fmt.Errorf("site/words.json has no word %q", key)
	}
	for i, a := range args {
		text = strings.ReplaceAll(text, "{"+strconv.Itoa(i)+"}", fmt.Sprint(a))
	}
	return text, nil
}

// countLine writes "4 given, 5 follow, 1 missing"; states that do not occur are
// left out.
func countLine(words map[string]string, n map[State]int) (string, error) {
	var parts []string
	for _, s := range States {
		if n[s] == 0 {
			continue
		}
		key := "count." + string(s) + ".many"
		if n[s] == 1 {
			key = "count." + string(s) + ".one"
		}
		text, err := word(words, key, n[s])
		if err != nil {
			return "", err
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", "), nil
}

// factsLink writes facts as they stand in a link: static-level:140ft,build:oil-lubricated.
// The space between number and unit is dropped, everything outside
// [A-Za-z0-9._~-] is percent-encoded.
func factsLink(facts []Fact) string {
	var b strings.Builder
	for i, f := range facts {
		if i > 0 {
			b.WriteByte(',')
		}
		escape(&b, f.Term)
		b.WriteByte(':')
		escape(&b, joinUnit(f.Text))
	}
	return b.String()
}

// joinUnit drops the last space of "140 ft" but keeps the one of "6 5/8 in"
// between whole number and fraction.
func joinUnit(text string) string {
	at := strings.LastIndexAny(text, " \u00a0")
	if at < 0 {
		return text
	}
	after := strings.TrimLeft(text[at:], " \u00a0")
	if after == "" || after[0] >= '0' && after[0] <= '9' {
		return text
	}
	return strings.TrimRight(text[:at], " \u00a0") + after
}

// escape percent-encodes what a link may not hold.
func escape(b *strings.Builder, text string) {
	const hex = "0123456789ABCDEF"
	for i := 0; i < len(text); i++ {
		c := text[i]
		plain := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || strings.IndexByte("._~-", c) >= 0
		if plain {
			b.WriteByte(c)
			continue
		}
		b.WriteByte('%')
		b.WriteByte(hex[c>>4])
		b.WriteByte(hex[c&15])
	}
}

// fragment is the part of a link that carries facts: "#facts=…&want=…".
func fragment(facts []Fact, want string) template.URL {
	out := "#facts=" + factsLink(facts)
	if want != "" {
		var b strings.Builder
		escape(&b, want)
		out += "&want=" + b.String()
	}
	return template.URL(out)
}

// jsonText writes a value for a data attribute that the scripts read.
func jsonText(v any) (string, error) {
	data, err := json.Marshal(v)
	return string(data), err
}

// firstOf returns the first text that is not empty.
func firstOf(texts ...string) string {
	for _, t := range texts {
		if t != "" {
			return t
		}
	}
	return ""
}

// signUse draws a sign that stands once in the page, see signSprite.
func signUse(name string) template.HTML {
	return template.HTML(`<svg class="sign" aria-hidden="true"><use href="#sign-` + template.HTMLEscapeString(name) + `"></use></svg>`)
}

// signSprite puts all signs into one hidden drawing, as symbols that rows use:
// a row that changes its state then changes one reference.
func signSprite() (template.HTML, error) {
	entries, err := Files.ReadDir("signs")
	if err != nil {
		return "", err
	}
	found := map[string]bool{}
	var b strings.Builder
	b.WriteString(spriteHead)
	for _, e := range entries {
		name, isSVG := strings.CutSuffix(e.Name(), ".svg")
		if !isSVG {
			continue
		}
		data, err := Files.ReadFile("signs/" + e.Name())
		if err != nil {
			return "", err
		}
		symbol, err := symbolOf(name, string(data))
		if err != nil {
			return "", fmt.Errorf("site/signs/%s: %w", e.Name(), err)
		}
		found[name] = true
		b.WriteString(symbol)
	}
	b.WriteString(`</svg>`)
	for _, s := range States {
		if !found[string(s)] {
			return "", fmt.Errorf("site/signs has no sign for the state %q: draw %s.svg", s, s)
		}
	}
	return template.HTML(b.String()), nil
}

// FewSigns leaves among the signs of a page only those that it shows. The
// scripts bring the others (scripts/signs.ts): without scripts no row changes.
func FewSigns(page []byte) []byte {
	at := bytes.Index(page, []byte(spriteHead))
	if at < 0 {
		return page
	}
	at += len(spriteHead)
	size := bytes.Index(page[at:], []byte("</svg>"))
	if size < 0 {
		return page
	}
	body := page[at+size:]
	few := append([]byte(nil), page[:at]...)
	for _, symbol := range bytes.SplitAfter(page[at:at+size], []byte("</symbol>")) {
		_, name, _ := bytes.Cut(symbol, []byte(` id="`))
		name, _, _ = bytes.Cut(name, []byte(`"`))
		if len(name) > 0 && bytes.Contains(body, []byte(`href="#`+string(name)+`"`)) {
			few = append(few, symbol...)
		}
	}
	return append(few, body...)
}

const spriteHead = `<svg class="sprite" width="0" height="0" aria-hidden="true">`

// symbolOf turns the text of a sign's file into a symbol. Size and namespace
// of the root go, its drawing attributes stay.
func symbolOf(name, svg string) (string, error) {
	start := strings.Index(svg, "<svg")
	end := strings.LastIndex(svg, "</svg>")
	if start < 0 || end < 0 {
		return "", errors.New("not a drawing: it needs one <svg> element")
	}
	svg = svg[start+len("<svg") : end]
	head, body, ok := strings.Cut(svg, ">")
	if !ok || !strings.Contains(head, "viewBox=") {
		return "", errors.New("its <svg> needs a viewBox")
	}
	out := `<symbol id="sign-` + name + `"`
	for _, attr := range []string{"viewBox", "fill", "stroke", "stroke-width", "stroke-linecap", "stroke-linejoin"} {
		if _, rest, has := strings.Cut(head, " "+attr+`="`); has {
			value, _, _ := strings.Cut(rest, `"`)
			out += ` ` + attr + `="` + value + `"`
		}
	}
	return out + ">" + strings.TrimSpace(body) + "</symbol>", nil
}

// content is an attribute of a text of our own without double quotes: its
// single quotes stay as they are, on every page.
func content(text string) template.HTMLAttr { return template.HTMLAttr(`content="` + text + `"`) }
