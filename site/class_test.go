package site

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
)

// TestClassSheetsEmptyAndFull: the files of a class stand by themselves: no
// script, one style sheet beside them, and every word there.
func TestClassSheetsEmptyAndFull(t *testing.T) {
	set := shells(t)
	for _, p := range []any{&Handouts{}, &Keys{}, &ClassReport{}} {
		name := reflect.TypeOf(p).String()
		for turn := -1; turn < len(named["Verdict"]); turn++ {
			if turn >= 0 {
				fill(reflect.ValueOf(p).Elem(), "", turn)
			}
			if c, ok := p.(*ClassReport); ok && turn < 0 {
				c.Learners = []Report{{Items: []Judged{{Verdict: "empty"}}}}
			}
			var b bytes.Buffer
			if err := set.Write(&b, p); err != nil {
				t.Fatalf("%s, turn %d: %v", name, turn, err)
			}
			html := b.String()
			if turn >= 0 {
				checkMarkup(t, name, html)
			}
			if !strings.HasPrefix(html, "<!doctype html>") || strings.Count(html, "<main") != 1 || !strings.HasSuffix(strings.TrimSpace(html), "</html>") {
				t.Errorf("%s, turn %d: not a whole page", name, turn)
			}
			for _, bad := range []string{"<script", " style=", " onclick="} {
				if strings.Contains(html, bad) {
					t.Errorf("%s holds %s, which its policy forbids", name, bad)
				}
			}
			if !strings.Contains(html, `content="default-src 'none'; style-src 'self'"`) || !strings.Contains(html, `href="class.css"`) {
				t.Errorf("%s has no policy or no style sheet", name)
			}
		}
	}
}
