package report_test

import (
	"strings"
	"testing"

	"columnbowl/build/report"
)

// printed places and prints one list over one file.
func printed(t *testing.T, src string, l report.List) string {
	t.Helper()
	var b strings.Builder
	if err := l.Place(report.Files{"a.md": []byte(src)}).Print(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func expect(t *testing.T, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("printed\n%s--- expected\n%s", got, want)
	}
}

func TestFrame(t *testing.T) {
	const src = "first\nexpect lift = 194 ft\n"
	var l report.List
	l.Add("a.md", strings.Index(src, "194"), 6, "Wrong.", "195 ft", "A note.")
	expect(t, printed(t, src, l), "a.md:2:15: Wrong.\n    expect lift = 194 ft\n                  ^^^^^^\n  write: 195 ft\n  A note.\n")
}

// Columns count characters; the marker stands under characters, not bytes.
func TestCharacters(t *testing.T) {
	const src = "“é” x"
	var l report.List
	l.Add("a.md", strings.Index(src, "x"), 1, "Here.", "")
	expect(t, printed(t, src, l), "a.md:1:5: Here.\n    “é” x\n        ^\n")
}

func TestTabs(t *testing.T) {
	var l report.List
	l.Add("a.md", 3, 1, "Here.", "")
	expect(t, printed(t, "a\tb\tc", l), "a.md:1:4: Here.\n    a   b   c\n         ^^^\n")
}

// A marker ends with its line; a place behind the file's end moves to the end.
func TestEnds(t *testing.T) {
	var l report.List
	l.Add("a.md", 2, 100, "Runs on.", "")
	l.Add("a.md", 100, 5, "Behind.", "")
	expect(t, printed(t, "abcd\r\nefgh", l), "a.md:1:3: Runs on.\n    abcd\n      ^^\na.md:2:5: Behind.\n    efgh\n        ^\n")
}

func TestEmptyLineHasNoFrame(t *testing.T) {
	var l report.List
	l.Add("a.md", 2, 1, "Here.", "")
	expect(t, printed(t, "a\n\nb", l), "a.md:2:1: Here.\n")
}

func TestLongLine(t *testing.T) {
	src := strings.Repeat("a", 300) + "XYZ" + strings.Repeat("b", 300)
	var l report.List
	l.Add("a.md", 300, 3, "Here.", "")
	lines := strings.Split(printed(t, src, l), "\n")
	if n := len([]rune(lines[1])); n > 4+100+2 {
		t.Errorf("the frame is %d characters wide", n)
	}
	if i := strings.Index(lines[1], "XYZ"); []rune(lines[1])[4] != '…' || len([]rune(lines[1][:i])) != strings.Index(lines[2], "^^^") {
		t.Errorf("the marker is not under its place:\n%s\n%s", lines[1], lines[2])
	}
	l[0].Off, l[0].Len = 0, 603
	lines = strings.Split(printed(t, src, l), "\n")
	if n := len([]rune(lines[1])); n > 4+100+2 || strings.Count(lines[2], "^") > 100 {
		t.Errorf("a long stretch is not cut:\n%s\n%s", lines[1], lines[2])
	}
}

func TestSortedWithoutDoubles(t *testing.T) {
	var l report.List
	l.Add("b.md", 0, 1, "In another file.", "")
	l.Add("a.md", 4, 1, "Later.", "")
	l.Add("a.md", 0, 1, "First.", "")
	l.Add("a.md", 4, 1, "Later.", "")
	l.Add("", report.WholeFile, 0, "The whole book.", "")
	l.Add("a.md", report.WholeFile, 0, "The whole file.", "")
	l = append(l, report.Diagnostic{Severity: report.Info, File: "a.md", Off: 0, Message: "Info."})
	expect(t, printed(t, "abc\ndef", l), "The whole book.\na.md: The whole file.\na.md:1:1: First.\n    abc\n    ^\na.md:1:1: info: Info.\n    abc\n    ^\na.md:2:1: Later.\n    def\n    ^\nb.md: In another file.\n")
	if n := l.Errors(); n != 6 {
		t.Errorf("%d errors counted", n)
	}
}

// Offset undoes Position.
func TestPositionRoundTrip(t *testing.T) {
	src := []byte("a\n“é”\n\nlast")
	for off := range len(src) + 1 {
		if off < len(src) && src[off]&0xc0 == 0x80 {
			continue // inside a character
		}
		line, column := report.Position(src, off)
		if back := report.Offset(src, line, column); back != off {
			t.Errorf("offset %d is %d:%d, and that is offset %d", off, line, column, back)
		}
	}
}
