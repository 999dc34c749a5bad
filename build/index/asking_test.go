package index_test

import (
	"os"
	"strings"
	"testing"

	"columnbowl/build/index"
	"columnbowl/calcwasm/ask"
)

// TestTry prints how the sentences of the environment variable are read.
func TestTry(t *testing.T) {
	b := handbook(t)
	r, err := ask.Open(string(index.Vocabulary(b)), b.Engine)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range strings.Split(os.Getenv("SENTENCE"), "|") {
		t.Log(s)
		for _, x := range r.Read(s) {
			line := "    " + s[x.From:x.To] + " -> " + x.State.String() + " " + x.Message
			for _, c := range x.Candidates {
				line += " [" + b.Engine.Terms[c.Term].ID + "=" + c.Value + " " + c.Reason + "]"
			}
			t.Log(line)
		}
	}
}
