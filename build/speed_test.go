package main

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"columnbowl/build/budget"
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
	page := openPage(b, pack)
	run := func(name string, ask func(i int)) time.Duration {
		var each time.Duration
		b.Run(name, func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				ask(i)
			}
			each = b.Elapsed() / time.Duration(b.N)
		})
		return each
	}
	run("told-native", func(i int) { native.Answer(fresh(text, i)) })
	run("told-page", func(i int) { page.ask(b, string(fresh(text, i))) })
	bare := unshown(text)
	alone := run("solved-native", func(i int) { native.Answer(fresh(bare, i)) })
	inPage := run("solved-page", func(i int) { page.ask(b, string(fresh(bare, i))) })
	fmt.Println(budget.Line("the whole chain solved, natively", alone.Seconds()*1e6, "us", "", 200))
	fmt.Println(budget.Line("the whole chain solved, in WebAssembly (wazero)", inPage.Seconds()*1e3, "ms", "", 1))
	fmt.Println(budget.Line("WebAssembly against native", float64(inPage)/float64(alone), "times", "", 3))
}

// unshown is a request without the lines that it wants to be told.
func unshown(text []byte) []byte {
	var kept []byte
	for line := range bytes.Lines(text) {
		if !bytes.HasPrefix(line, []byte("show\t")) {
			kept = append(kept, line...)
		}
	}
	return kept
}

// fresh is the request with another level each time: the same question asked
// again is not worked again.
func fresh(text []byte, i int) []byte {
	return fmt.Appendf(bytes.Clone(text), "fact\tstatic-level\t%d ft\n", 140+i%2)
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
