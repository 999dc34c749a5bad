package published_test

import (
	"errors"
	"testing"
	"testing/fstest"

	"columnbowl/build/published"
)

// FuzzLoad: a file of published values is either taken, or refused with lines
// and reasons.
func FuzzLoad(f *testing.F) {
	for _, rows := range []string{
		top + "a case,lift = 100 ft; drop = 40 ft,fall,60 ft,0.5 ft,arithmetic,\n",
		top + "a case,lift = 100 ft,warmth by near,300 K,1 K,memory,\n", top + "\"open\n", top, "", "# source:\n,,,,\n",
	} {
		f.Add(rows)
	}
	b := small(f)
	f.Fuzz(func(t *testing.T, rows string) {
		set, err := published.Load(fstest.MapFS{"01_test.csv": {Data: []byte(rows)}}, b)
		var problems published.Problems
		if err == nil && set == nil || err != nil && !errors.As(err, &problems) {
			t.Fatalf("%v, %v", set, err)
		}
		for _, p := range problems {
			if p.Message == "" || p.Line < 0 {
				t.Errorf("%+v", p)
			}
		}
	})
}
