package ask_test

import (
	"strings"
	"testing"
)

// BenchmarkReadWorst reads the longest sentences that are read, full of numbers
// and of phrases.
func BenchmarkReadWorst(b *testing.B) {
	r, _ := reader(b)
	for _, piece := range []string{"1 static ", "pipe ", "draws 1 ", "1 ", "two hundred ", "aaaaa "} {
		text := strings.Repeat(piece, 1+1000/len(piece))
		b.Run(strings.ReplaceAll(strings.TrimSpace(piece), " ", "-"), func(b *testing.B) {
			for b.Loop() {
				r.Read(text)
			}
		})
	}
}
