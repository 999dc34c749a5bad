package class

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"columnbowl/calcwasm/formula"
)

// What elements of QTI 3.0 a package of ours is made of, what may stand in each
// and in which order, and which attributes it may and must have.
//
// Source: 1EdTech, Question and Test Interoperability 3.0, Assessment, Section
// and Item, final release of 1 May 2022. Rules marked “read” were read in the
// schema of that release (the complex types AssessmentItem, OrderInteraction,
// ModalFeedback, SetValue and LogicPair, in the profile that only adds data
// attributes to the base); the others are from memory of the same schema. The
// whole schema was not at hand, so that the items have not been run through it.
type rule struct {
	kids  string // a pattern over the names of the children, each with a space behind it
	must  string // attributes
	may   string
	texts bool // text may stand in it
}

// expression is what a condition or a value may be made of here.
const expression = `(qti-and|qti-or|qti-gte|qti-lte|qti-match|qti-variable|qti-base-value|qti-ordered) `

var rules = map[string]rule{
	"qti-assessment-item": { // read
		kids: `(qti-response-declaration )*(qti-outcome-declaration )*(qti-item-body )?(qti-response-processing )?(qti-modal-feedback )*`,
		must: "identifier title time-dependent", may: "adaptive lang schemaLocation label tool-name tool-version",
	},
	"qti-modal-feedback":         {kids: `(qti-content-body )?`, must: "outcome-identifier show-hide identifier", may: "title"},                                  // read
	"qti-set-outcome-value":      {kids: expression, must: "identifier"},                                                                                         // read
	"qti-gte":                    {kids: expression + expression},                                                                                                // read
	"qti-lte":                    {kids: expression + expression},                                                                                                // read
	"qti-match":                  {kids: expression + expression},                                                                                                // read
	"qti-order-interaction":      {kids: `(qti-prompt )?(qti-simple-choice )+`, must: "response-identifier", may: "shuffle min-choices max-choices orientation"}, // read
	"qti-choice-interaction":     {kids: `(qti-prompt )?(qti-simple-choice )+`, must: "response-identifier", may: "shuffle min-choices max-choices orientation"},
	"qti-text-entry-interaction": {must: "response-identifier", may: "expected-length pattern-mask base placeholder-text format"},
	"qti-simple-choice":          {texts: true, must: "identifier", may: "fixed show-hide"},
	"qti-prompt":                 {texts: true},
	"qti-response-declaration":   {kids: `(qti-default-value )?(qti-correct-response )?`, must: "identifier cardinality", may: "base-type"},
	"qti-outcome-declaration":    {kids: `(qti-default-value )?`, must: "identifier cardinality", may: "base-type"},
	"qti-correct-response":       {kids: `(qti-value )+`},
	"qti-default-value":          {kids: `(qti-value )+`},
	"qti-value":                  {texts: true},
	"qti-item-body":              {kids: `((p|ul|ol|table|qti-choice-interaction|qti-order-interaction) )+`},
	"qti-content-body":           {kids: `(p )+`},
	"qti-response-processing":    {kids: `(qti-response-condition )*`},
	"qti-response-condition":     {kids: `qti-response-if (qti-response-else-if )*(qti-response-else )?`},
	"qti-response-if":            {kids: expression + `(qti-set-outcome-value )*`},
	"qti-response-else-if":       {kids: expression + `(qti-set-outcome-value )*`},
	"qti-and":                    {kids: `(` + expression + `)+`},
	"qti-or":                     {kids: `(` + expression + `)+`},
	"qti-ordered":                {kids: `(` + expression + `)*`},
	"qti-variable":               {must: "identifier"},
	"qti-base-value":             {texts: true, must: "base-type"},
	// HTML in it
	"p":      {texts: true, kids: `((strong|em|sub|sup|br|qti-text-entry-interaction) )*`},
	"ul":     {kids: `(li )+`},
	"ol":     {kids: `(li )+`},
	"li":     {texts: true, kids: `((strong|em|sub|sup|p) )*`},
	"strong": {texts: true},
	"em":     {texts: true},
	"sub":    {texts: true},
	"sup":    {texts: true},
	"table":  {kids: `(thead )?(tbody )+`},
	"thead":  {kids: `(tr )+`},
	"tbody":  {kids: `(tr )+`},
	"tr":     {kids: `((th|td) )+`},
	"th":     {texts: true, may: "scope"},
	"td":     {texts: true},
	// The manifest: 1EdTech Content Packaging 1.2 as QTI 3.0 uses it, from memory.
	"manifest":      {kids: `(metadata )?organizations resources `, must: "identifier", may: "schemaLocation"},
	"metadata":      {kids: `schema schemaversion `},
	"schema":        {texts: true},
	"schemaversion": {texts: true},
	"organizations": {},
	"resources":     {kids: `(resource )*`},
	"resource":      {kids: `(file )+`, must: "identifier type href"},
	"file":          {must: "href"},
}

func TestThePackageHasTheStructureOfTheStandard(t *testing.T) {
	seen := map[string]bool{}
	for _, system := range []formula.System{formula.US, formula.SI} {
		_, questions := bank(t, 7, system)
		data, err := Package("bank-7", questions)
		if err != nil {
			t.Fatal(err)
		}
		for name, root := range unpacked(t, data) {
			space := qtiSpace
			if name == "imsmanifest.xml" {
				space = packageSpace
			}
			structured(t, name, root, space, seen)
		}
	}
	for _, name := range []string{"qti-order-interaction", "qti-choice-interaction", "qti-text-entry-interaction", "qti-modal-feedback", "table"} {
		if !seen[name] {
			t.Errorf("no item has %s", name)
		}
	}
}

// structured holds an element and all in it against the rules.
func structured(t *testing.T, file string, n *node, space string, seen map[string]bool) {
	t.Helper()
	name := n.XMLName.Local
	seen[name] = true
	r, known := rules[name]
	if !known || n.XMLName.Space != space {
		t.Errorf("%s: %s of %q is not of the standard", file, name, n.XMLName.Space)
		return
	}
	kids := ""
	for i := range n.Kids {
		kids += n.Kids[i].XMLName.Local + " "
	}
	if whole, err := wholly(r.kids); err != nil || !whole.MatchString(kids) {
		t.Errorf("%s: in %s stand %q, which is not %q", file, name, kids, r.kids)
	}
	if !r.texts && strings.TrimSpace(n.Text) != "" {
		t.Errorf("%s: text stands in %s: %q", file, name, strings.TrimSpace(n.Text))
	}
	for _, must := range strings.Fields(r.must) {
		if n.attr(must) == "" {
			t.Errorf("%s: %s lacks %s", file, name, must)
		}
	}
	allowed := strings.Fields(r.must + " " + r.may)
	for _, a := range n.Attrs {
		if a.Name.Local != "xmlns" && a.Name.Space != "xmlns" && !slices.Contains(allowed, a.Name.Local) {
			t.Errorf("%s: %s has %s", file, name, a.Name.Local)
		}
	}
	for i := range n.Kids {
		structured(t, file, &n.Kids[i], space, seen)
	}
}

var patterns = map[string]*regexp.Regexp{}

func wholly(pattern string) (*regexp.Regexp, error) {
	if re := patterns[pattern]; re != nil {
		return re, nil
	}
	re, err := regexp.Compile("^(?:" + pattern + ")$")
	if err == nil {
		patterns[pattern] = re
	}
	return re, err
}
