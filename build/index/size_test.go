package index_test

import (
	"testing"

	"columnbowl/build/index"
)

// The data file for searching and asking stays below what a page should load.
func TestWordsAreSmall(t *testing.T) {
	b := handbook(t)
	words, all := zipped(t, index.Vocabulary(b)), zipped(t, index.Words(b))
	t.Logf("the vocabulary has %d bytes compressed, with the index %d", words, all)
	if all > 80_000 {
		t.Errorf("the words have %d bytes compressed, more than 80,000", all)
	}
}
