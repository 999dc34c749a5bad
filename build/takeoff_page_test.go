package main

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"columnbowl/calcwasm/answer"
)

// A page counts the same pieces as the command, byte for byte, from the builds
// that come with the packed book.
func TestPageCountsTheSamePieces(t *testing.T) {
	b := bookOf(t)
	native, page := answer.New(b.Engine).WithBuilds(b.Assembly), openPage(t, answer.Pack(b.Engine, b.Assembly))
	for i := range b.Assembly.Builds {
		build := b.Assembly.Builds[i].ID
		for feet := 0; feet <= 1000; feet += 61 {
			request := "pieces\nfact\tbuild\t" + build + "\nfact\tspeed\t1770 rpm\nfact\tstages\t5\nfact\tcolumn-size\t8 in\n"
			if feet > 0 {
				request += fmt.Sprintf("fact\tasked-setting\t%d ft\n", feet)
			}
			got, want := page.ask(t, request), native.Answer([]byte(request))
			if !bytes.Equal(got, want) {
				t.Fatalf("%s, %d ft: the page tells\n%s\nthe tool\n%s", build, feet, got, want)
			}
			if feet > 20 && !strings.Contains(string(want), `"agrees":true`) || feet == 0 && !strings.Contains(string(want), `"id":"asked-setting"`) {
				t.Fatalf("%s, %d ft: %s", build, feet, want)
			}
		}
	}
}
