package ask

import "strings"

// Words that join two numbers to a range, that stand before a rough one, and
// between a number and how far it may be off. Fields take the same.
const (
	spanWords  = " to - – — through till until .. ... … to about "
	widthWords = "|+-|+/-|±|plus or minus|give or take|"
	aboutWords = " about abt bout appx approximately approx around roughly circa ca ~ ≈ "
)

// widest is how much larger the upper end of a range may be: “40 to 220” is
// two numbers.
const widest = 3

// ranges joins amounts that are one: “180 to 200 ft”, “400 gpm ± 20”.
func (s *session) ranges() {
	s.memo = map[int]fit{}
	s.systems()
	for i := range s.amounts {
		s.amounts[i].place = i
		s.rough(&s.amounts[i])
	}
	kept := s.amounts[:0]
	for i := 0; i < len(s.amounts); i++ {
		a := s.amounts[i]
		if i+1 < len(s.amounts) && s.spans(&a, &s.amounts[i+1]) {
			b := &s.amounts[i+1]
			join(&a, b)
			for k := a.token + 1; k <= b.last; k++ {
				s.tokens[k].phrase = -1
			}
			i++
		}
		for k := a.token; k <= a.last; k++ {
			s.tokens[k].amount = len(kept)
		}
		kept = append(kept, a)
	}
	s.amounts = kept
	s.supply()
	for i := range s.amounts {
		s.amounts[i].place = i
	}
	clear(s.memo) // the amounts are others now
}

// rough takes what stands directly before an amount: about, not.
func (s *session) rough(a *amount) {
	a.relative = s.fromElsewhere(a)
	if a.token == 0 {
		return
	}
	a.none = a.none || s.isYear(a) || s.isLabel(a)
	before := s.tokens[a.token-1].text
	if isIn(aboutWords, before) {
		a.head = "about "
	}
	a.negated = isIn(" not isnt arent wasnt never ", before)
	two := before
	if a.token > 1 {
		two = s.tokens[a.token-2].text + " " + before
	}
	free := s.tokens[a.token-1].phrase < 0
	a.bound = free && (inBars(boundWords, before) || inBars(boundWords, two))
}

// boundWords stand before a number that is one end only.
const boundWords = "|more than|less than|over|under|below|above|beyond|exceeding|greater than|deeper than|fewer than|>|<|≥|≤|"

// fromElsewhere tells whether an amount is counted from what another phrase
// names: “20 ft below the pumping level”.
func (s *session) fromElsewhere(a *amount) bool {
	at := a.last + 1
	for at < len(s.tokens) && s.tokens[at].unit {
		at++
	}
	if at >= len(s.tokens) || s.tokens[at].phrase >= 0 || !isIn(" below under beneath above over ", s.tokens[at].text) {
		return false
	}
	for at++; at < len(s.tokens) && s.tokens[at].phrase < 0 && s.tokens[at].class == word && isFiller(s.tokens[at].text); at++ {
	}
	if at >= len(s.tokens) || s.tokens[at].phrase < 0 {
		return false
	}
	for _, sense := range s.said[s.tokens[at].phrase].phrase.senses {
		if sense.value < 0 && sense.weight >= byCue && s.fit(a, sense.term).text != "" {
			return true
		}
	}
	return false
}

// spans tells whether two amounts are a range, and sets how it is written.
func (s *session) spans(a, b *amount) bool {
	between := strings.ToLower(strings.Join(strings.Fields(s.text[a.to:b.from]), " "))
	if between == "" || a.word || b.word {
		return false
	}
	if inBars(widthWords, between) {
		a.joint = " +- "
		return b.value > 0
	}
	span := isIn(spanWords, between) || between == "and" && a.token > 0 && s.tokens[a.token-1].text == "between"
	if !span || s.paired(a) || b.value <= a.value || b.value > widest*a.value {
		return false
	}
	if a.unit != nil && !(b.unit == nil && len(b.aliases) == 0 || b.unit != nil && a.unit.Dim == b.unit.Dim) {
		return false
	}
	a.joint = " to "
	return true
}

// paired tells whether a phrase before the amount says that two facts follow.
func (s *session) paired(a *amount) bool { return s.pairBefore(a) >= 0 }

func (s *session) pairBefore(a *amount) int {
	for i := a.token - 1; i >= 0; i-- {
		t := &s.tokens[i]
		if t.phrase >= 0 && s.said[t.phrase].phrase.kind == pair {
			return t.phrase
		}
		if t.class == word && !isFiller(t.text) || t.class == sign && !isIn(" : = ", t.text) || t.class == number {
			return -1
		}
	}
	return -1
}

// join makes one amount of two.
func join(a, b *amount) {
	a.high = b.low
	switch {
	case a.unit == nil && len(a.aliases) == 0:
		a.unit, a.unitText, a.aliases = b.unit, b.unitText, b.aliases
	case b.unit != nil && a.unit != nil && a.unit.Symbol != b.unit.Symbol && a.joint == " to ":
		a.low += " " + a.unitText
		a.unit, a.unitText, a.aliases = b.unit, b.unitText, nil
	case b.unit != nil && b.unit.Symbol == "%" && a.joint == " +- ":
		a.low += " " + a.unitText
		a.unitText = "%"
	}
	a.to, a.last = b.to, b.last
}

// supply reads the way in which an electric supply is written: 460/3/60 is
// volts, phases, hertz.
func (s *session) supply() {
	for i := 0; i+2 < len(s.amounts); i++ {
		v, p, f := &s.amounts[i], &s.amounts[i+1], &s.amounts[i+2]
		strokes := strings.TrimSpace(s.text[v.to:p.from]) == "/" && strings.TrimSpace(s.text[p.to:f.from]) == "/"
		if !strokes || p.value != 1 && p.value != 3 || f.value != 50 && f.value != 60 || v.value < 100 {
			continue
		}
		v.setUnit("V")
		f.setUnit("Hz")
		p.none = true
	}
}

// doubles reads two phrases and two numbers, each with a stroke between them:
// “static/pumping 180/220”. The first goes with the first.
func (s *session) doubles() {
	for i := 0; i+1 < len(s.amounts); i++ {
		a, b := &s.amounts[i], &s.amounts[i+1]
		if s.text[a.to:b.from] != "/" || a.none || s.double(a, b) {
			continue
		}
		if a.bare() && b.bare() { // a day of the year, 24/7
			a.none, b.none = true, true
		}
	}
}

// double gives two numbers to two phrases, if there are such, and tells so.
func (s *session) double(a, b *amount) bool {
	for c := 0; c+1 < len(s.said); c++ {
		p, q := &s.said[c], &s.said[c+1]
		if strings.TrimSpace(s.text[p.last:q.first]) != "/" || p.phrase.kind != cue || q.phrase.kind != cue {
			continue
		}
		if a.bare() {
			a.unit, a.unitText, a.aliases = b.unit, b.unitText, b.aliases
		}
		p.amount, q.amount = a.place+1, b.place+1
		return true
	}
	return false
}

// labels stand before a number that only names a thing or a day.
const labels = "|jan|january|feb|february|mar|march|apr|april|may|june|jun|july|jul|aug|august|sep|sept|september|oct|october|nov|november|dec|december|" +
	"no|nr|number|num|ext|extension|order|invoice|job|phone|tel|telephone|call|sample|ref|reference|serial|model|station|page|lot|block|section|township|highway|hwy|road|rd|route|zip|box|room|item|quote|po|ticket|account|"

// isLabel tells whether a bare number only names something: “sample no. 11”,
// “Nov 3”.
func (s *session) isLabel(a *amount) bool {
	at := a.token - 1
	if at > 0 && s.tokens[at].class == sign && isIn(" . # : ", s.tokens[at].text) {
		at--
	}
	return a.bare() && at >= 0 && s.tokens[at].class == word && s.tokens[at].phrase < 0 && inBars(labels, s.tokens[at].text)
}

// isYear tells whether a bare number is more likely a year: “set in 1987”.
func (s *session) isYear(a *amount) bool {
	if !a.bare() || a.token == 0 || a.value < 1900 || a.value > 2099 || len(a.low) != 4 {
		return false
	}
	return isIn(" in since year from of ", s.tokens[a.token-1].text)
}
