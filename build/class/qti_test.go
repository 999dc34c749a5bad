package class

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"columnbowl/calcwasm/exercise"
	"columnbowl/calcwasm/formula"
)

// node is an element as any reader of XML sees it.
type node struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Text    string     `xml:",chardata"`
	Kids    []node     `xml:",any"`
}

func (n *node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// all lists the elements of a name, at any depth.
func (n *node) all(name string) []*node {
	var list []*node
	for i := range n.Kids {
		k := &n.Kids[i]
		if k.XMLName.Local == name {
			list = append(list, k)
		}
		list = append(list, k.all(name)...)
	}
	return list
}

// unpacked reads a package with nothing but a reader of ZIP and one of XML.
func unpacked(t *testing.T, data []byte) map[string]*node {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]*node{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		n := &node{}
		if err != nil || xml.Unmarshal(text, n) != nil || files[f.Name] != nil {
			t.Fatalf("%s: not well formed, or there twice: %v", f.Name, xml.Unmarshal(text, n))
		}
		files[f.Name] = n
	}
	return files
}

// outcomes carries out the response processing of an item, as the standard
// describes it: an independent reader, which knows nothing of our marker. values
// is the response.
func outcomes(t *testing.T, item *node, values ...string) map[string]string {
	out := map[string]string{}
	for _, d := range item.all("qti-outcome-declaration") {
		for _, v := range d.all("qti-value") {
			out[d.attr("identifier")] = v.Text
		}
	}
	for _, condition := range item.all("qti-response-condition") {
		for i := range condition.Kids {
			c := &condition.Kids[i]
			if !holds(t, &c.Kids[0], values) {
				continue
			}
			for k := range c.Kids[1:] {
				set := &c.Kids[1+k]
				out[set.attr("identifier")] = set.Kids[0].Text
			}
			break
		}
	}
	return out
}

func holds(t *testing.T, n *node, response []string) bool {
	switch n.XMLName.Local {
	case "qti-and":
		return !slices.ContainsFunc(n.Kids, func(k node) bool { return !holds(t, &k, response) })
	case "qti-or":
		return slices.ContainsFunc(n.Kids, func(k node) bool { return holds(t, &k, response) })
	case "qti-gte", "qti-lte":
		a, b := operand(n.Kids[0], response), operand(n.Kids[1], response)
		if len(a) != 1 || len(b) != 1 {
			return false // a response of nothing is NULL
		}
		x, y := number(t, a[0]), number(t, b[0])
		return n.XMLName.Local == "qti-gte" && x >= y || n.XMLName.Local == "qti-lte" && x <= y
	case "qti-match":
		return slices.Equal(operand(n.Kids[0], response), operand(n.Kids[1], response))
	}
	t.Fatalf("%s is no condition of the standard that this reader knows", n.XMLName.Local)
	return false
}

func operand(n node, response []string) []string {
	switch n.XMLName.Local {
	case "qti-variable":
		return response
	case "qti-ordered":
		var list []string
		for _, k := range n.Kids {
			list = append(list, operand(k, response)...)
		}
		return list
	}
	return []string{n.Text}
}

func number(t *testing.T, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// bank makes the questions of all exercises, a few variants of each.
func bank(t *testing.T, seed uint64, system formula.System) (*Office, []Question) {
	t.Helper()
	o, _, _ := office(t)
	var all []*exercise.Template
	for i := range o.Set.Templates {
		all = append(all, &o.Set.Templates[i])
	}
	list, err := o.Bank(all, seed, 2, system, nil)
	if err != nil {
		t.Fatal(err)
	}
	return o, list
}

func TestThePackageHoldsTogether(t *testing.T) {
	_, questions := bank(t, 7, formula.US)
	data, err := Package("bank-7", questions)
	if err != nil {
		t.Fatal(err)
	}
	again, _ := Package("bank-7", questions)
	_, other := bank(t, 8, formula.US)
	if different, _ := Package("bank-7", other); !bytes.Equal(data, again) || bytes.Equal(data, different) {
		t.Error("the same questions do not give the same bytes, or other ones do")
	}
	files := unpacked(t, data)
	named := map[string]bool{"imsmanifest.xml": true}
	for _, f := range files["imsmanifest.xml"].all("file") {
		named[f.attr("href")] = true
	}
	for _, r := range files["imsmanifest.xml"].all("resource") {
		if item := files[r.attr("href")]; item == nil || item.attr("identifier") != r.attr("identifier") || r.attr("type") != "imsqti_item_xmlv3p0" {
			t.Errorf("the manifest names %q, which is not in the package under its name", r.attr("href"))
		}
	}
	if len(named) != len(files) || len(files) != len(questions)+1 {
		t.Errorf("%d files, %d named in the manifest, %d questions", len(files), len(named), len(questions))
	}
	for name, item := range files {
		if name != "imsmanifest.xml" {
			sound(t, name, item)
		}
		if !named[name] {
			t.Errorf("%s is not in the manifest", name)
		}
	}
}

var identifier = regexp.MustCompile(`^[A-Za-z_][A-Za-z0-9_.-]*$`)

// sound sees that an item names nothing that it does not declare, and that what
// it calls the right answer gets all points.
func sound(t *testing.T, name string, item *node) {
	t.Helper()
	declared := map[string]bool{}
	for _, kind := range []string{"qti-response-declaration", "qti-outcome-declaration"} {
		for _, d := range item.all(kind) {
			declared[d.attr("identifier")] = true
		}
	}
	for _, kind := range []string{"qti-variable", "qti-set-outcome-value"} {
		for _, v := range item.all(kind) {
			if !declared[v.attr("identifier")] {
				t.Errorf("%s: %s %q is not declared", name, kind, v.attr("identifier"))
			}
		}
	}
	says := map[string]bool{}
	for _, f := range item.all("qti-modal-feedback") {
		says[f.attr("identifier")] = true
	}
	used := map[string]bool{}
	for _, s := range item.all("qti-set-outcome-value") {
		if s.attr("identifier") == feedback {
			used[s.Kids[0].Text] = true
			if !says[s.Kids[0].Text] {
				t.Errorf("%s: the feedback %q is not there", name, s.Kids[0].Text)
			}
		}
	}
	if len(used) != len(says) || !identifier.MatchString(item.attr("identifier")) {
		t.Errorf("%s: %d of %d feedbacks are used; identifier %q", name, len(used), len(says), item.attr("identifier"))
	}
	var right []string
	for _, v := range item.all("qti-correct-response")[0].all("qti-value") {
		right = append(right, v.Text)
	}
	if got := outcomes(t, item, right...); got[score] != got["MAXSCORE"] {
		t.Errorf("%s: the right answer %v gets %s of %s", name, right, got[score], got["MAXSCORE"])
	}
	if got := outcomes(t, item); got[score] != "0" {
		t.Errorf("%s: no answer gets %s", name, got[score])
	}
}

// The response processing alone judges numbers as our marker does: right ones,
// rounded on the way, what every mistake gives, in other units, and numbers out
// of the blue.
func TestItemsJudgeNumbersAsTheMarkerDoes(t *testing.T) {
	for _, system := range []formula.System{formula.US, formula.SI} {
		o, questions := bank(t, 7, system)
		data, err := Package("bank", questions)
		if err != nil {
			t.Fatal(err)
		}
		files := unpacked(t, data)
		rng := rand.New(rand.NewPCG(11, 12))
		var all, same, full int
		for i := range questions {
			q := &questions[i]
			if q.Kind != exercise.Number {
				continue
			}
			j := judgeOf(t, o, q, system)
			for _, v := range j.tries(rng) {
				text := strconv.FormatFloat(v, 'g', 6, 64)
				points, err := strconv.Atoi(outcomes(t, files[q.file()], text)[score])
				if err != nil {
					t.Fatal(err)
				}
				m := j.mark(number(t, text))
				all++
				if points == m.Points {
					same++
				} else {
					t.Logf("%s: %s gets %d, the marker gives %d (%v %s)", q.ID, text, points, m.Points, m.Verdict, m.Say)
				}
				if (points == exercise.MostPoints) != (m.Points == exercise.MostPoints) {
					full++
				}
			}
		}
		t.Logf("%v: %d answers, %d judged as the marker does", system, all, same)
		if full > 0 || float64(same) < 0.999*float64(all) {
			t.Errorf("%v: of %d answers %d are judged otherwise than by the marker, %d of them as right or not", system, all, all-same, full)
		}
	}
}

// judgeOf draws the sheet of a question again from its name.
func judgeOf(t *testing.T, o *Office, q *Question, system formula.System) *judge {
	t.Helper()
	parts := strings.Split(q.ID, "-")
	item, err := strconv.Atoi(parts[len(parts)-1])
	seed, err2 := strconv.ParseUint(parts[len(parts)-2], 10, 64)
	if err != nil || err2 != nil {
		t.Fatalf("the name %s does not tell its sheet", q.ID)
	}
	sheet, why := o.Set.Draw(o.Set.Find(strings.Join(parts[:len(parts)-2], "-")), seed)
	if sheet == nil {
		t.Fatal(why)
	}
	sheet.System = system
	return newJudge(o.Set, &Sheet{Sheet: sheet}, item-1)
}

// tries are numbers to be judged, in the unit of the question.
func (j *judge) tries(rng *rand.Rand) []float64 {
	right := j.s.Items[j.item].Right
	_, off := j.s.Off(j.item)
	list := []float64{j.unit.FromSI(right), j.unit.FromSI(right + 0.9*off), j.unit.FromSI(right - 0.9*off), 10 * j.unit.FromSI(right)}
	for _, t := range j.s.Traces(j.item) {
		list = append(list, j.unit.FromSI(t.Value))
	}
	for range 20 {
		list = append(list, j.unit.FromSI(right)*math.Exp((2*rng.Float64()-1)*math.Log(4)))
	}
	return list
}

// Choices and orders: every letter, and orders with one and with two things out
// of place.
func TestItemsJudgeChoicesAndOrdersAsTheMarkerDoes(t *testing.T) {
	_, questions := bank(t, 7, formula.US)
	rng := rand.New(rand.NewPCG(13, 14))
	choices, orders := 0, 0
	for i := range questions {
		q := &questions[i]
		text, err := q.QTI()
		item := &node{}
		if err != nil || xml.Unmarshal(text, item) != nil {
			t.Fatalf("%s cannot be read", q.ID)
		}
		switch q.Kind {
		case exercise.Choice:
			for k := range q.Options {
				got := outcomes(t, item, letter(k))
				if (got[score] == "2") != (letter(k) == q.Answer) {
					t.Errorf("%s: %s gets %s", q.ID, letter(k), got[score])
				}
				choices++
			}
		case exercise.Ordering:
			for range 200 {
				given := moved(moved(q.Answer, rng), rng)
				want := map[int]string{0: "2", 1: "1"}[outOfPlace(q.Answer, given)]
				if got := outcomes(t, item, strings.Split(given, "")...); got[score] != max(want, "0") {
					t.Errorf("%s: %s for %s gets %s", q.ID, given, q.Answer, got[score])
				}
				orders++
			}
		}
	}
	if choices < 100 || orders < 1000 {
		t.Errorf("only %d choices and %d orders were judged", choices, orders)
	}
}

// moved takes one letter out and puts it in anywhere.
func moved(text string, rng *rand.Rand) string {
	i := rng.IntN(len(text))
	rest := text[:i] + text[i+1:]
	k := rng.IntN(len(text))
	return rest[:k] + text[i:i+1] + rest[k:]
}

// outOfPlace counts, by trying, how many things must be moved: 0, 1, or 2 for more.
func outOfPlace(right, given string) int {
	if given == right {
		return 0
	}
	for i := range given {
		if strings.ReplaceAll(given, given[i:i+1], "") == strings.ReplaceAll(right, given[i:i+1], "") {
			return 1
		}
	}
	return 2
}
