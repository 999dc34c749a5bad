package bindery

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"sync"

	"columnbowl/build/book"
)

// Keep holds what one binding may take over from the one before: the parts of a
// book that are dear to make and that an edit seldom changes. Each is kept with
// a sum of all that it is made from, so that a page never shows anything but
// what a fresh binding would show. A Keep is safe for several goroutines; nil
// keeps nothing.
type Keep struct {
	mu   sync.Mutex
	kept map[string]kept
}

type kept struct {
	sum   string
	value any
}

// Recall returns what is kept under a name if it was made from what has the same
// sum, and makes it anew otherwise.
func Recall[T any](k *Keep, name, sum string, make func() (T, error)) (T, error) {
	if k == nil {
		return make()
	}
	k.mu.Lock()
	have, ok := k.kept[name]
	k.mu.Unlock()
	if ok && have.sum == sum {
		return have.value.(T), nil
	}
	value, err := make()
	if err != nil {
		return value, err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.kept == nil {
		k.kept = map[string]kept{}
	}
	k.kept[name] = kept{sum, value}
	return value, nil
}

// numeric are the files and folders of the content, beside the pages with
// blocks, from which numbers follow. Of the other pages the network is given
// their title blocks and their blocks alone, which stand in the Source.
var numeric = []string{book.HandbookFile, "bowls/", "builds/", "choices/", "faults/", "exercises/", "parts/"}

// Ground is a sum of all that the numbers of a book and its exercises follow
// from. The running text of a term's page is not in it, nor where in the page
// its blocks stand.
func Ground(b *book.Book) string {
	h := sha256.New()
	fmt.Fprintf(h, "%q\n%q\n", b.Source.Terms, b.Source.Blocks)
	var names []string
	for name := range b.Files {
		if slices.ContainsFunc(numeric, func(n string) bool { return strings.HasPrefix(name, n) }) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		fmt.Fprintf(h, "%q %d\n", name, len(b.Files[name]))
		h.Write(b.Files[name])
	}
	return string(h.Sum(nil))
}
