package main

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"path"
	"slices"
	"strings"
	"testing"

	"columnbowl/build/bindery"
	"columnbowl/build/budget"
	"columnbowl/build/bundle"
	"columnbowl/build/onefile"
	"columnbowl/calcwasm/answer"
	"columnbowl/site"
)

// BenchmarkWeight tells what the editions weigh, and a page of each kind.
func BenchmarkWeight(b *testing.B) {
	book := bookOf(b)
	parts, err := partsOf()
	if err != nil {
		b.Fatal(err)
	}
	if parts.Wasm, err = module(); err != nil {
		b.Fatal(err)
	}
	style, err := bundle.FileStyles(site.Files)
	if err != nil {
		b.Fatal(err)
	}
	var edition *bindery.Edition
	var file []byte
	for b.Loop() {
		if edition, err = bindery.Bind(book, parts, bindery.Options{}); err != nil {
			b.Fatal(err)
		}
		loose, err := bindery.Loosen(book, parts, bindery.Options{})
		if err != nil {
			b.Fatal(err)
		}
		if file, _, _, err = onefile.Make(loose, onefile.Parts{Script: parts.PageScript, Style: style, Font: parts.Font, FontLicence: parts.FontLicence, Wasm: parts.Wasm}); err != nil {
			b.Fatal(err)
		}
	}
	fmt.Println()
	fmt.Println(budget.Line("folder edition (without the page of sources)", float64(edition.Size())/1e6, "MB", "", 30))
	fmt.Println(budget.Line("single file", float64(len(file))/1e6, "MB", "", 6))
	fmt.Println(budget.Line("the book beside the engine, packed", packedSize(answer.Pack(book.Engine, book.Assembly))/1e3, "kB", "", 80))
	for _, k := range pageWeights(edition) {
		fmt.Printf("  pages of %-12s %4d, the middle one %7.1f kB, %6.1f kB packed, the largest %7.1f kB\n", k.kind, len(k.bytes), k.bytes[len(k.bytes)/2], k.packed, k.bytes[len(k.bytes)-1])
	}
}

// weight is what the pages of a kind weigh.
type weight struct {
	kind   string
	bytes  []float64 // kB, rising
	packed float64   // kB, of the middle one, as a host that compresses sends it
}

func pageWeights(e *bindery.Edition) []weight {
	files := map[string][]bindery.File{}
	var kinds []string
	for _, f := range e.Files {
		if !strings.HasSuffix(f.Path, ".html") {
			continue
		}
		kind := path.Dir(f.Path)
		if kind == "." {
			kind = "their own"
		}
		if files[kind] == nil {
			kinds = append(kinds, kind)
		}
		files[kind] = append(files[kind], f)
	}
	var list []weight
	for _, kind := range kinds {
		list = append(list, weighed(kind, files[kind]))
	}
	return list
}

func weighed(kind string, files []bindery.File) weight {
	w := weight{kind: kind}
	slices.SortFunc(files, func(a, b bindery.File) int { return len(a.Data) - len(b.Data) })
	for _, f := range files {
		w.bytes = append(w.bytes, float64(len(f.Data))/1e3)
	}
	w.packed = packedSize(files[len(files)/2].Data) / 1e3
	return w
}

// packedSize is how many bytes gzip -9 leaves.
func packedSize(data []byte) float64 {
	var out bytes.Buffer
	w, _ := gzip.NewWriterLevel(&out, gzip.BestCompression)
	_, _ = w.Write(data) // a buffer takes everything
	_ = w.Close()
	return float64(out.Len())
}
