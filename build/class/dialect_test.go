package class

import (
	"bytes"
	"encoding/binary"
	"strings"
	"testing"
	"unicode/utf16"

	"columnbowl/calcwasm/exercise"
)

// A class saved by an office program that writes the comma as decimal sign gets
// its files in the same form, and typed answers in that form are read.
func TestFilesComeInTheDialectOfTheClass(t *testing.T) {
	o, class, sheets := office(t)
	d := DialectOf([]byte("\ufefflearner;name\r\n01;Learner 01\r\n"))
	file := AnswerFile(sheets, d)
	if !bytes.HasPrefix(file, []byte("\ufefflearner;name;exercise;seed;check;answer 1;")) {
		t.Fatalf("the file of answers begins with %.60q", file)
	}
	lines := strings.Split(strings.TrimSpace(string(file)), "\n")
	for i := range sheets {
		fields := strings.Split(lines[i+1], ";")
		fields[0] = strings.TrimLeft(fields[0], "0") // as an office program takes it for a number
		for k := range sheets[i].Items {
			right, _, _ := strings.Cut(o.right(&sheets[i], k), ":")
			fields[len(answerColumns)+k] = strings.Replace(strings.ReplaceAll(right, "\u00a0", " "), ".", ",", 1)
		}
		lines[i+1] = strings.Join(fields, ";")
	}
	text := lines[0] + "\r\n" + strings.Repeat(";", 10) + "\r\n" + strings.Join(lines[1:], "\r\n") + "\r\n99;Guest;chain-of-six;7001;;1;2;3;4;5;6\r\n"
	marked, faults := MarkFile(o.Set, class, "a.csv", []byte(text), nil)
	if len(marked) != len(sheets) || len(faults) != 1 || faults[0].Message != "There is no learner “99” in the class." {
		t.Fatalf("%d sheets, %s", len(marked), faultText(faults))
	}
	for i := range marked {
		for k := range marked[i].Marks {
			if m := &marked[i].Marks[k]; m.Verdict != exercise.Right && m.Verdict != exercise.Rounded {
				t.Errorf("%s, item %d, %q: %v %s", marked[i].Name, k+1, marked[i].Answers[k], m.Verdict, m.Say)
			}
		}
	}
	if book := string(o.Gradebook(marked, d)); !strings.Contains(book, "\n01;Learner 01;chain-of-six;7001;12;12;100,0;right;") {
		t.Errorf("the gradebook is %.200q", book)
	}
}

// A number between 1 and 10 with a decimal comma has three digits behind it, as
// thousands have.
func TestThreeDigitsBehindAComma(t *testing.T) {
	_, set := content(t)
	seen := 0
	for _, tm := range numeric(set) {
		sheet, _ := set.Draw(tm, 3)
		for i := range sheet.Items {
			right := strings.ReplaceAll(sheet.Amount(i, sheet.Items[i].Right), "\u00a0", " ")
			number, unit, _ := strings.Cut(right, " ")
			if whole, digits, _ := strings.Cut(number, "."); len(whole) != 1 || len(digits) != 3 {
				continue
			}
			answers := make([]string, len(sheet.Items))
			answers[i] = strings.TrimSpace(strings.Replace(number, ".", ",", 1) + " " + unit)
			seen++
			if m := sheet.Mark(answers)[i]; m.Verdict != exercise.Right {
				t.Errorf("%s: %q is judged %v (%s)", tm.ID, answers[i], m.Verdict, m.Say)
			}
		}
	}
	if seen < 3 {
		t.Errorf("only %d such numbers are asked", seen)
	}
}

// What office programs save besides UTF-8 is read, and names keep their letters.
func TestEncodings(t *testing.T) {
	const text = "learner\tname\r\n01\tJérôme – Ω\r\n"
	var wide []byte
	for _, u := range append([]uint16{0xfeff}, utf16.Encode([]rune(text))...) {
		wide = binary.LittleEndian.AppendUint16(wide, u)
	}
	for name, c := range map[string]struct {
		text []byte
		want string
	}{
		"UTF-8":        {[]byte(text), "Jérôme – Ω"},
		"UTF-16":       {wide, "Jérôme – Ω"},
		"Windows-1252": {[]byte("learner;name\r\n01;J\xe9r\xf4me \x96 x\r\n"), "Jérôme – x"},
	} {
		list, faults := ReadClass("c.csv", c.text)
		if len(list) != 1 || len(faults) > 0 || list[0].Name != c.want {
			t.Errorf("%s: %v %s", name, list, faultText(faults))
		}
	}
}

func TestUnreadAnswersAreNamedWithTheirPlace(t *testing.T) {
	o, class, sheets := office(t)
	lines := strings.SplitAfter(string(AnswerFile(sheets, Dialect{})), "\n")
	text := lines[0] + "01,Learner 01,chain-of-six,7001,,about,220.6\n"
	marked, _ := MarkFile(o.Set, class, "a.csv", []byte(text), nil)
	list := Unread("a.csv", marked)
	if len(list) != 1 || !strings.HasPrefix(list[0].String(), "a.csv:2:34: The answer “about” of Learner 01 cannot be read. ") {
		t.Errorf("%s", faultText(list))
	}
}
