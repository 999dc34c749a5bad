package epub

import (
	"regexp"
	"strings"
)

// flatten writes the inks of the light paper into a style sheet, in the place of
// the names that stand for them, and leaves the other papers out: many devices
// do not know such names. Without font it also leaves the fonts out, which a
// drawing shown as a picture cannot load.
func flatten(css string, bare bool) string {
	names := map[string]string{}
	var kept []string
	for _, r := range rules(css) {
		switch {
		case r.head == ":root":
			for line := range strings.SplitSeq(r.body, ";") {
				if name, value, ok := strings.Cut(line, ":"); ok && strings.HasPrefix(strings.TrimSpace(name), "--") {
					names[strings.TrimSpace(name)] = strings.TrimSpace(value)
				}
			}
		case strings.HasPrefix(r.head, ":root"), strings.HasPrefix(r.head, "@media"), bare && strings.HasPrefix(r.head, "@font-face"):
		default:
			kept = append(kept, r.head+"{"+r.body+"}")
		}
	}
	return resolve(strings.Join(kept, "\n"), names) + "\n"
}

var named = regexp.MustCompile(`var\((--[a-z0-9-]+)\)`)

// resolve puts the values of the names in their places; a value may hold names
// in its turn. A name that is given a value elsewhere than for the whole sheet
// stays.
func resolve(text string, names map[string]string) string {
	for range 8 {
		next := named.ReplaceAllStringFunc(text, func(use string) string {
			if value, ok := names[named.FindStringSubmatch(use)[1]]; ok {
				return value
			}
			return use
		})
		if next == text {
			break
		}
		text = next
	}
	return text
}

// rule is a rule of the outermost level of a style sheet.
type rule struct{ head, body string }

// rules cuts a bundled style sheet into its outermost rules.
func rules(css string) []rule {
	var list []rule
	depth, start, open := 0, 0, 0
	for i := 0; i < len(css); i++ {
		switch css[i] {
		case '{':
			if depth == 0 {
				open = i
			}
			depth++
		case '}':
			if depth--; depth == 0 {
				list = append(list, rule{strings.TrimSpace(css[start:open]), css[open+1 : i]})
				start = i + 1
			}
		}
	}
	return list
}
