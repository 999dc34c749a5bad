package main

import (
	"strings"
	"testing"

	"columnbowl/calcwasm/answer"
)

// wholeChain is the request of the page “well to wire” as it opens: every line
// of the chain is shown, and overall efficiency is wanted.
func wholeChain(t testing.TB) (request string, pack []byte, native *answer.Desk) {
	t.Helper()
	b := bookOf(t)
	var s strings.Builder
	for _, g := range b.Handbook.Chain {
		for _, id := range g.Terms {
			s.WriteString("show\t" + id + "\n")
		}
	}
	for _, f := range b.Handbook.ChainFacts {
		s.WriteString("fact\t" + f.Term + "\t" + f.Text + "\n")
	}
	s.WriteString("want\toverall-efficiency\n")
	return s.String(), b.Engine.Pack(), answer.New(b.Engine)
}

// BenchmarkKeystroke is what a reader waits for after each keystroke, less the
// browser's drawing: the whole chain read, solved and told, natively and in
// the page's engine.
func BenchmarkKeystroke(b *testing.B) {
	request, pack, native := wholeChain(b)
	text := []byte(request)
	b.Run("native", func(b *testing.B) {
		for b.Loop() {
			native.Answer(text)
		}
	})
	page := openPage(b, pack)
	b.Run("page", func(b *testing.B) {
		for b.Loop() {
			page.ask(b, request)
		}
	})
}

// BenchmarkUnpack is the part of it that depends on the book, natively.
func BenchmarkUnpack(b *testing.B) {
	_, pack, _ := wholeChain(b)
	b.ReportMetric(float64(len(pack)), "bytes")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := answer.Open(pack); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBoot is how long the engine takes to begin and to take the book, its
// machine code being there: a browser compiles while it loads.
func BenchmarkBoot(b *testing.B) {
	_, pack, _ := wholeChain(b)
	for b.Loop() {
		openPage(b, pack)
	}
}
