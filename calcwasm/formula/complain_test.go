package formula

import (
	"strings"
	"testing"
)

// complaint is a text with what must be said of it. The text bears «marks»
// round what each message points at, in order; a mark at the very end, “«»”,
// stands for the place behind the text. A message may have a suggestion behind
// “ → ”. A message that begins with “…” need only contain what follows.
type complaint struct {
	text     string
	messages []string
}

func says(text string, messages ...string) complaint { return complaint{text, messages} }

type mark struct{ off, length int }

// unmark takes the marks out of a text.
func unmark(text string) (string, []mark) {
	var marks []mark
	for {
		from := strings.Index(text, "«")
		if from < 0 {
			return text, marks
		}
		text = text[:from] + text[from+len("«"):]
		to := strings.Index(text, "»")
		text = text[:to] + text[to+len("»"):]
		length := to - from
		if length == 0 && from == len(text) {
			length = 1
		}
		marks = append(marks, mark{from, length})
	}
}

func (c complaint) check(t *testing.T, parser string) {
	t.Helper()
	src, marks := unmark(c.text)
	err := parsers[parser](src, trade)
	if err == nil {
		t.Errorf("%s %q is taken without a word; it should say\n\t%s", parser, src, strings.Join(c.messages, "\n\t"))
		return
	}
	list, ok := err.(Errors)
	if !ok {
		t.Fatalf("%s %q: the error is a %T", parser, src, err)
	}
	if len(list) != len(c.messages) {
		t.Errorf("%s %q: %d messages where %d are due:\n\t%s", parser, src, len(list), len(c.messages), strings.ReplaceAll(err.Error(), "\n", "\n\t"))
	}
	for i := 0; i < min(len(list), len(c.messages)); i++ {
		e := list[i]
		message, suggest, _ := strings.Cut(c.messages[i], " → ")
		part, loose := strings.CutPrefix(message, "…")
		if loose && !strings.Contains(e.Message, part) || !loose && e.Message != message {
			t.Errorf("%s %q\n\tsays   %s\n\tshould %s", parser, src, e.Message, message)
		}
		if e.Suggest != suggest {
			t.Errorf("%s %q suggests %q, should suggest %q", parser, src, e.Suggest, suggest)
		}
		if i < len(marks) && (e.Off != marks[i].off || e.Len != marks[i].length) {
			t.Errorf("%s %q points at %d+%d, should point at %d+%d", parser, src, e.Off, e.Len, marks[i].off, marks[i].length)
		}
	}
}

func complain(t *testing.T, parser string, list []complaint) {
	t.Helper()
	for _, c := range list {
		t.Run(c.text, func(t *testing.T) {
			t.Helper()
			c.check(t, parser)
		})
	}
}
