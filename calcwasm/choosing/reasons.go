package choosing

import (
	"math"
	"slices"
	"strings"

	"columnbowl/calcwasm/curve"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

var nan = math.NaN()

const (
	inch = 0.0254
	foot = 0.3048
)

// Kind of a reason.
type Kind uint8

const (
	Decides Kind = iota // against the family, whatever else is said
	Against
	For
	Unchecked // a fact is missing
)

// String is the word of a reply.
func (k Kind) String() string { return [...]string{"decides", "against", "for", "unchecked"}[k] }

// Reason is one sentence for or against a family, in both systems of units.
type Reason struct {
	Kind   Kind
	Term   string // whose page explains it
	US, SI string
}

// say adds a reason. Terms in braces become their values.
func (c *Candidate) say(kind Kind, term, text string) {
	c.Reasons = append(c.Reasons, Reason{Kind: kind, Term: term, US: c.fill(text, formula.US), SI: c.fill(text, formula.SI)})
}

// fill puts values in the place of {term}, and those of the family in that of
// {bowl:…}.
func (c *Candidate) fill(text string, s formula.System) string {
	out := ""
	for {
		before, rest, found := strings.Cut(text, "{")
		out += before
		if !found {
			return out
		}
		id, after, _ := strings.Cut(rest, "}")
		text = after
		if name, own := strings.CutPrefix(id, "bowl:"); own {
			out += c.figure(c.Bowl.Value(name).SI, name, s)
		} else {
			out += c.Text(id, s)
		}
	}
}

// like are the terms in whose units the figures of a family are told.
var like = map[string]string{"shaft-diameter": "shaft-diameter", "pressure-limit": "discharge-pressure", "smallest-trim": "trim-ratio", "speed": "speed"}

func (c *Candidate) figure(v float64, name string, s formula.System) string {
	return c.in(v, like[name], s)
}

// in writes an SI value in the unit of a term.
func (c *Candidate) in(v float64, term string, s formula.System) string {
	t, ok := c.Result.Book.Find(term)
	if !ok {
		return ""
	}
	return c.Result.Book.Format(t, v, s)
}

func (c *Candidate) count(k Kind) int {
	n := 0
	for i := range c.Reasons {
		if c.Reasons[i].Kind == k {
			n++
		}
	}
	return n
}

// judge looks at a family by itself. NaN compares as false with everything, so
// what is not known gives no reason; what a person should then ask is told.
func (c *Candidate) judge() {
	c.casing() // also where the curve does not reach: what does not go in is not worth another look
	if c.reaches() {
		c.flow()
		c.least()
		c.trim()
		c.few()
		c.sand()
		c.motor()
		c.suction()
		c.shaft()
		c.strength()
	}
	c.sort()
}

func (c *Candidate) sort() {
	slices.SortStableFunc(c.Reasons, func(a, b Reason) int { return int(a.Kind) - int(b.Kind) })
}

// reaches says whether the curve of the family goes as far as the duty.
func (c *Candidate) reaches() bool {
	flow, head := c.value("capacity"), c.value("total-head")
	if flow != flow || head != head {
		c.say(Unchecked, "total-head", "Capacity and total head have to be known before a bowl can be chosen.")
		return false
	}
	ratio, wrong := curve.SpeedRatio(c.value("speed"), c.Bowl.Value("speed").SI)
	if wrong != "" {
		c.say(Decides, "speed", "It does not run at this speed: "+wrong+".")
		return false
	}
	first, last := c.Bowl.Points[0].Capacity.SI*ratio, c.Bowl.Points[len(c.Bowl.Points)-1].Capacity.SI*ratio
	if flow > last || flow < first {
		end, where := last, "The curve ends at "
		if flow < first {
			end, where = first, "The curve begins at "
		}
		for _, s := range []formula.System{formula.US, formula.SI} {
			text := where + c.in(end, "capacity", s) + "; the duty is " + c.Text("capacity", s) + "."
			if s == formula.US {
				c.Reasons = append(c.Reasons, Reason{Kind: Decides, Term: "capacity", US: text})
			} else {
				c.Reasons[len(c.Reasons)-1].SI = text
			}
		}
		return false
	}
	if math.Abs(ratio-1) > 0.2 {
		// the laws of affinity are meant for small changes of speed (common practice)
		c.say(Against, "speed", "The curve is for {bowl:speed} and is carried to {speed}: more than a fifth is a long way for the affinity laws.")
	}
	return true
}

// casing: an inch on each side is common practice, and two in a crooked well this
// book's teaching rule (page of the casing clearance).
func (c *Candidate) casing() {
	crooked := c.crooked()
	switch outside, inside, gap := c.value("bowl-outside-diameter"), c.value("casing-inside-diameter"), c.value("casing-clearance"); {
	case inside != inside:
		c.say(Unchecked, "casing-inside-diameter", "Whether it goes into the well is not checked: ask for the inside diameter of the casing.")
	case outside >= inside:
		c.say(Decides, "bowl-outside-diameter", "The bowls measure {bowl-outside-diameter} and do not go into a casing of {casing-inside-diameter}.")
	case gap < inch*(1-1e-9):
		c.say(Against, "casing-clearance", "Only {casing-clearance} are left on each side in the casing; common practice wants an inch (25 mm).")
	case gap < 2*inch*(1-1e-9) && crooked:
		c.say(Against, "casing-clearance", "{casing-clearance} are left on each side: enough in a straight well, little in this crooked one.")
	case gap >= inch*(1-1e-9):
		c.say(For, "casing-clearance", "It has {casing-clearance} of room on each side in the casing.")
	}
}

// crooked says whether the well is known to be. Whether a pump passes the bend
// nobody can reckon from its diameter, whatever room there is.
func (c *Candidate) crooked() bool {
	t, ok := c.Result.Book.Find("well-shape")
	if !ok || c.Result.Word(t) != "crooked" {
		return false
	}
	c.say(Unchecked, "passable-bend", "The well is crooked, and whether it passes the bend is not checked: a dummy as long and as wide as the pump, cable included, goes down before the order.")
	return true
}

// flow: 0.7 to 1.2 of the best flow is the window of the pages on the operating
// capacity (common practice).
func (c *Candidate) flow() {
	switch share := c.value("capacity") / c.value("best-capacity"); {
	case share < 0.7:
		c.say(Against, "best-capacity", "{capacity} is less than 0.7 of its best flow, {best-capacity}: it runs rough and wears; take a smaller bowl.")
	case share > 1.2:
		c.say(Against, "best-capacity", "{capacity} is more than 1.2 of its best flow, {best-capacity}: a little less head sends it off its curve.")
	case share >= 0.7:
		c.say(For, "bowl-efficiency", "{capacity} lies well on its curve, whose best flow is {best-capacity}: {bowl-efficiency} at the duty.")
	}
}

// least: half of the best flow is where the page of the best capacity ends what
// is borne for short runs (common practice).
func (c *Candidate) least() {
	switch share := c.value("least-capacity") / c.value("best-capacity"); {
	case c.value("least-capacity") == 0: // a valve that is shut is a matter of its own
	case share <= 0.5:
		c.say(Against, "least-capacity", "The least flow, {least-capacity}, is half of its best flow, {best-capacity}, or less: it may not be left running there.")
	case share < 0.7:
		c.say(Against, "least-capacity", "The least flow, {least-capacity}, is below 0.7 of its best flow, {best-capacity}: borne now and then, not all day.")
	}
}

// few: the points of a family hold from four stages up (page of the bowl
// efficiency).
func (c *Candidate) few() {
	if c.value("stages") <= 3 {
		c.say(Against, "stages", "With so few stages, {stages}, the efficiency is some points lower than its sheet says, and nothing is taken off here: leave room in the motor.")
	}
}

// From here on sand and speed pull apart (page of the sand content): 5 mg/L in
// kg/m3, and 2200 rpm in rad/s, between motors of two poles and of four.
const (
	someSand = 0.005
	fast     = 2200 * 2 * math.Pi / 60
)

func (c *Candidate) sand() {
	if c.value("sand-content") > someSand*(1+1e-9) && c.value("speed") > fast {
		c.say(Against, "sand-content", "It runs at {speed} in water with {sand-content} of sand: a slower bowl with more stages lasts longer, if one goes in.")
	}
}

func (c *Candidate) trim() {
	trim, smallest := c.value("trim-ratio"), c.Bowl.Value("smallest-trim")
	switch {
	case smallest.Known() && trim < smallest.SI:
		c.say(Decides, "trim-ratio", "{stages} stages would have to be trimmed to {trim-ratio} of their diameter; the sheet allows {bowl:smallest-trim}.")
	case trim < 0.9:
		c.say(Against, "trim-ratio", "{stages} stages have to be trimmed to {trim-ratio} of their diameter: more than a tenth off is a deep cut.")
	case trim < 1 && c.known("stages"):
		c.say(For, "trim-ratio", "{stages} stages make the head with impellers of {trim-ratio} of the full diameter.")
	}
	if c.value("stages") > 25 {
		c.say(Against, "stages", "{stages} stages: the bowl shaft and the pressure in the lowest bowls have to be checked with the builder.")
	}
	if limit := c.Bowl.Value("pressure-limit"); limit.Known() && c.value("shutoff-head")*c.value("specific-gravity")*weight > limit.SI {
		c.say(Decides, "shutoff-head", "At shutoff it makes {shutoff-head}, more than the bowls hold: {bowl:pressure-limit}.")
	} else if limit.Known() && c.value("shutoff-head")/(trim*trim)*c.value("specific-gravity")*weight > limit.SI {
		c.say(Against, "shutoff-head", "Trimmed, the bowls hold its shutoff head, {shutoff-head}; with full impellers they would have to hold more than {bowl:pressure-limit}.")
	}
}

// weight of the trade's water, in Pa for each metre.
const weight = reckon.DensityOfTrade * 9.80665

// motor looks at the worst point of the whole curve, not at the duty alone.
func (c *Candidate) motor() {
	rating, _ := c.Result.Book.Find("motor-rating")
	switch largest, duty := c.value("largest-power"), c.value("brake-power"); {
	case largest != largest:
		c.say(Unchecked, "largest-power", "Whether a motor can be overloaded is not checked: efficiencies, or the losses of the shaft, are missing.")
	case c.known("motor-rating") && c.Result.Values[rating].State == reckon.Given && largest > c.value("motor-rating"):
		c.say(Decides, "largest-power", "At the worst point of its curve it takes {largest-power} and overloads the motor of {motor-rating}.")
	case largest > 1.1*duty:
		c.say(Against, "largest-power", "At the worst point of its curve it takes {largest-power}, at the duty {brake-power}: the motor, {motor-rating}, is chosen for the worst.")
	case largest <= 1.1*duty:
		c.say(For, "largest-power", "Nowhere on its curve does it take more than {largest-power}: a motor of {motor-rating} carries that.")
	}
}

// suction: 3 ft of margin is the least of the page of the NPSH margin.
func (c *Candidate) suction() {
	switch margin := c.value("npsh-margin"); {
	case margin < 0:
		c.say(Decides, "npsh-margin", "The first impeller asks for {npsh-required} and has {npsh-available}: it cavitates.")
	case margin < 3*foot:
		c.say(Against, "npsh-margin", "The first impeller asks for {npsh-required} and has {npsh-available}: a margin of {npsh-margin} is little.")
	case margin >= 3*foot:
		c.say(For, "npsh-margin", "The first impeller asks for {npsh-required} and has {npsh-available}.")
	case c.known("npsh-required"):
		c.say(Unchecked, "npsh-available", "It asks for {npsh-required} at the first impeller. What it has there is not known"+c.lacking()+".")
	default:
		c.say(Unchecked, "npsh-required", "Its sheet has no NPSH required.")
	}
}

// water are the facts that the NPSH available hangs on, each behind the term that
// has no value without it.
var water = [][2]string{{"setting", "setting"}, {"pumping-level", "pumping-level"}, {"vapour-pressure", "water-temperature"}, {"atmospheric-pressure", "altitude"}}

// lacking names those of them that are missing: ": ask for the altitude".
func (c *Candidate) lacking() string {
	var names []string
	for _, w := range water {
		if t, ok := c.Result.Book.Find(w[1]); ok && !c.known(w[0]) {
			names = append(names, c.Result.Book.Terms[t].Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return ": ask for " + strings.Join(names, ", ")
}

func (c *Candidate) shaft() {
	if c.Result.Word(c.at("build")) == "submersible" {
		return
	}
	switch needed, own := c.value("needed-shaft-diameter"), c.Bowl.Value("shaft-diameter"); {
	case needed > c.value("shaft-diameter"):
		c.say(Decides, "shaft-diameter", "Its line shaft of {shaft-diameter} is too weak: {needed-shaft-diameter} are needed.")
	case own.Known() && needed > own.SI:
		c.say(Against, "needed-shaft-diameter", "The line shaft has to be {needed-shaft-diameter}; the bowl shaft has {bowl:shaft-diameter}. Ask the builder.")
	case needed > 0:
		c.say(For, "needed-shaft-diameter", "A line shaft of {needed-shaft-diameter} is strong enough.")
	default:
		c.say(Unchecked, "shaft-stress", "The strength of the shaft is not checked: the steel is not known.")
	}
}

func (c *Candidate) at(id string) int {
	t, _ := c.Result.Book.Find(id)
	return t
}

func (c *Candidate) strength() {
	if c.value("largest-thrust") > c.value("bearing-rating") {
		c.say(Decides, "largest-thrust", "At shutoff it pulls with {largest-thrust}; the thrust bearing carries {bearing-rating}.")
	} else if c.value("largest-thrust") <= c.value("bearing-rating") {
		c.say(For, "largest-thrust", "The thrust bearing, {bearing-rating}, carries its largest thrust, {largest-thrust}.")
	}
}

// compare weighs the families that can do the duty against the best of them.
func compare(list []*Candidate) {
	var best *Candidate
	for _, c := range list {
		if c.Verdict() < Out && c.power() == c.power() && (best == nil || c.power() < best.power()) {
			best = c
		}
	}
	if best == nil {
		return
	}
	for _, c := range list {
		more := c.power() - best.power()
		switch {
		case c == best:
			c.say(For, "brake-power", "It takes the least power at the duty of all that can be used.")
		case c.Verdict() < Out && more > 0.03*best.power():
			tell := func(s formula.System) string {
				return "It takes " + c.in(more, "brake-power", s) + " more at the duty than " + best.Bowl.Name + "."
			}
			c.Reasons = append(c.Reasons, Reason{Kind: Against, Term: "brake-power", US: tell(formula.US), SI: tell(formula.SI)})
		}
		c.sort()
	}
}
