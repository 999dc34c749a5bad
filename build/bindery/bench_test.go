package bindery

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"columnbowl/build/book"
	"columnbowl/build/budget"
	"columnbowl/build/bundle"
	"columnbowl/site"
)

// BenchmarkBind binds the whole handbook, the engine for the page being built
// and packed already, and compares with the floor: bare Markdown to HTML of the
// same files, the same bundling, and writing the same bytes. The budget for the
// ratio is 2.
func BenchmarkBind(b *testing.B) {
	content := os.DirFS(realContent)
	parts := testParts(b)
	dir := b.TempDir()
	var edition *Edition
	var whole, floor time.Duration
	for b.Loop() {
		start := time.Now()
		edition = bindOnce(b, content, parts, filepath.Join(dir, "whole"))
		whole += time.Since(start)
		b.StopTimer()
		start = time.Now()
		bareOnce(b, content, edition, filepath.Join(dir, "floor"))
		floor += time.Since(start)
		b.StartTimer()
	}
	n := float64(b.N)
	b.ReportMetric(whole.Seconds()*1e3/n, "bind-ms")
	b.ReportMetric(floor.Seconds()*1e3/n, "floor-ms")
	b.ReportMetric(whole.Seconds()/floor.Seconds(), "ratio")
	b.ReportMetric(float64(edition.Size())/1e6, "MB")
	fmt.Println(budget.Line("bind the whole book, against its floor", whole.Seconds()/floor.Seconds(), "times", fmt.Sprintf("%.0f ms", floor.Seconds()*1e3/n), 2))
}

func bindOnce(b *testing.B, content fs.FS, parts Parts, dir string) *Edition {
	bundled(b, &parts)
	loaded, found := book.Load(content)
	if found.Errors() > 0 {
		b.Fatal(found)
	}
	e, err := Bind(loaded, parts, Options{})
	if err != nil {
		b.Fatal(err)
	}
	if err := Write(e, dir); err != nil {
		b.Fatal(err)
	}
	return e
}

func bundled(b *testing.B, parts *Parts) {
	var err error
	if parts.PageScript, parts.HubScript, err = bundle.Scripts(site.Files); err != nil {
		b.Fatal(err)
	}
	if parts.Style, err = bundle.Styles(site.Files); err != nil {
		b.Fatal(err)
	}
	if parts.DrawnStyle, err = bundle.DrawnStyles(site.Files); err != nil {
		b.Fatal(err)
	}
}

// bareOnce is what no tool can do without: read the Markdown, make HTML of it,
// bundle, and write as many bytes into as many files.
func bareOnce(b *testing.B, content fs.FS, e *Edition, dir string) {
	var parts Parts
	bundled(b, &parts)
	md := goldmark.New(goldmark.WithExtensions(extension.Table))
	err := fs.WalkDir(content, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(content, name)
		if err != nil {
			return err
		}
		var out bytes.Buffer
		return md.Convert(text, &out)
	})
	if err != nil {
		b.Fatal(err)
	}
	if err := Write(e, dir); err != nil {
		b.Fatal(err)
	}
}
