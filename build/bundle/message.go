package bundle

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/evanw/esbuild/pkg/api"
)

// failure writes esbuild's messages as one error: file:line:column, the line
// with a mark under the place, what to write instead, and the notes.
func failure(list []api.Message) error {
	var b strings.Builder
	for i, m := range list {
		if i > 0 {
			b.WriteByte('\n')
		}
		place(&b, m.Location, m.Text)
		for _, n := range m.Notes {
			b.WriteString("\n  note: ")
			place(&b, n.Location, n.Text)
		}
	}
	return errors.New(b.String())
}

func place(b *strings.Builder, at *api.Location, text string) {
	if at == nil {
		b.WriteString("site: " + text)
		return
	}
	// esbuild counts columns in bytes from 0; people count characters from 1.
	before := at.LineText[:min(at.Column, len(at.LineText))]
	b.WriteString("site/" + strings.TrimPrefix(at.File, namespace+":") + ":" + strconv.Itoa(at.Line) + ":" +
		strconv.Itoa(utf8.RuneCountInString(before)+1) + ": " + text)
	if at.LineText == "" {
		return
	}
	marked := at.LineText[len(before):min(len(before)+max(at.Length, 1), len(at.LineText))]
	b.WriteString("\n  " + strings.ReplaceAll(at.LineText, "\t", "  ") + "\n  " + blank(before) +
		strings.Repeat("^", max(1, utf8.RuneCountInString(marked))))
	if at.Suggestion != "" {
		b.WriteString("\n  write: " + at.Suggestion)
	}
}

// blank is as many spaces as a text is wide when printed above.
func blank(text string) string {
	return strings.Repeat(" ", utf8.RuneCountInString(strings.ReplaceAll(text, "\t", "  ")))
}
