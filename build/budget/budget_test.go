package budget

import "testing"

func TestLine(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Line("folder edition", 28.04, "MB", "", 30), "budget  folder edition                                                28.0 MB   floor -                at most    30.0 MB   holds"},
		{Line("bind", 3.456, "times", "1.9 s", 2), "budget  bind                                                       3.46 times   floor 1.9 s            at most 2.00 times   MISSED"},
	} {
		if c.got != c.want {
			t.Errorf("got\n%s\nwant\n%s", c.got, c.want)
		}
	}
}
