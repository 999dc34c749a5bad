package site

import (
	"bytes"
	"reflect"
	"testing"
)

// TestPracticeEmptyAndFull: the pages of practice, with nothing and with all.
func TestPracticeEmptyAndFull(t *testing.T) {
	set := shells(t)
	for _, p := range []any{&Practice{}, &Exercise{}, &Cards{}, &Progress{}} {
		name := reflect.TypeOf(p).String()
		for turn := -1; turn < 6; turn++ {
			if turn >= 0 {
				fill(reflect.ValueOf(p).Elem(), "", turn)
			}
			if practice, ok := p.(*Practice); ok && turn >= 0 {
				for i := range practice.Groups {
					for k := range practice.Groups[i].Entries {
						practice.Groups[i].Entries[k].Kinds = []string{"choice", "order"}
					}
				}
			}
			var b bytes.Buffer
			if err := set.Write(&b, p); err != nil {
				t.Fatalf("%s, turn %d: %v", name, turn, err)
			}
			checkPage(t, name, b.String())
		}
	}
}
