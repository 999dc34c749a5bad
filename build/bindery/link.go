package bindery

import (
	"net/url"
	"strings"

	"columnbowl/site"
)

// fragment writes facts as they travel in a link, the form that the pages read:
// "#facts=static-level:140ft,drawdown:55ft&want=total-head". The space between
// number and unit is dropped; the one inside "6 5/8" stays.
func fragment(facts []site.Fact, want string) string {
	items := make([]string, len(facts))
	for i, f := range facts {
		items[i] = encode(f.Term) + ":" + encode(joinUnit(f.Text))
	}
	return "#facts=" + strings.Join(items, ",") + "&want=" + encode(want)
}

// encode keeps letters, digits and . _ ~ - and percent-encodes the rest.
func encode(text string) string { return strings.ReplaceAll(url.QueryEscape(text), "+", "%20") }

func joinUnit(text string) string {
	at := strings.LastIndexByte(text, ' ')
	if at < 0 || at+1 == len(text) || text[at+1] >= '0' && text[at+1] <= '9' {
		return text
	}
	return strings.TrimRight(text[:at], " ") + text[at+1:]
}
