package exercise

import (
	"math"

	"columnbowl/calcwasm/formula"
)

// A person also reads a digit wrongly, or a line of the sheet too high or too
// low. Nobody can list all such slips, but where one of them gives the very
// number of a mistake, the number does not single the mistake out.

// reach widens the tolerance for slips of the pen: they are rounded on the way
// as well, each as its writer likes.
const reach = 2

// rival says whether a slip of the pen leads to a number as well as a way does.
func (sg *segment) rival(a, tol float64, w way) bool {
	set := sg.sheet.set
	factor := sg.sheet.unit(sg.term).Factor
	tol *= reach
	_, last := fourDigits(sg.right, factor)
	for _, right := range [...]float64{sg.right, sg.right - last, sg.right + last} { // rounding on the way moves the last digit
		for _, v := range append(swapped(right, factor), carried(right, factor)...) {
			if math.Abs(v-a) <= tol {
				return true
			}
		}
	}
	facts := sg.sheet.Template.Facts
	for i := range facts {
		t := facts[i].Term
		if set.Book.Terms[t].Kind != formula.Quantity || !sg.uses(t) {
			continue
		}
		u := sg.sheet.unit(t)
		read := swapped(sg.base[t]-u.Offset, u.Factor)
		if facts[i].Step > 0 || facts[i].OneOf != nil { // what is the same on every sheet is known by heart
			read = append(read, misread(sg.base[t]-u.Offset, u.Factor)...)
		}
		for _, v := range read {
			if math.Abs(sg.with(t, v+u.Offset)-a) <= tol {
				return true
			}
		}
		for k := range facts {
			o := facts[k].Term
			if o != t && set.Book.Terms[o].Dim() == set.Book.Terms[t].Dim() && set.Book.Terms[o].Kind == formula.Quantity &&
				math.Abs(sg.with(t, sg.base[o])-a) <= tol && !sg.sameAsTaking(w, t, o) {
				return true
			}
		}
	}
	return false
}

// uses says whether a fact stands in a formula of the segment.
func (sg *segment) uses(term int) bool {
	for _, i := range sg.steps {
		for _, f := range sg.sheet.plan.steps[i].from {
			if f == term {
				return true
			}
		}
	}
	return false
}

// with is the asked term, reckoned rightly, with another value of one fact.
func (sg *segment) with(term int, v float64) float64 {
	before := sg.env.Values[term]
	sg.env.Values[term] = v
	out := sg.try(way{0, -1, -1, -1, term, -1, 0})
	sg.env.Values[term] = before
	return out
}

// sameAsTaking says whether a way is nothing but taking one fact for another:
// then both give the same number, whatever the facts are.
func (sg *segment) sameAsTaking(w way, term, other int) bool {
	sg.shake()
	a, b := sg.try(w), sg.with(term, sg.env.Values[other])
	sg.settle()
	return math.Abs(a-b) <= 1e-9*math.Abs(a)
}

// same says whether two ways are one way in other words.
func (sg *segment) same(a, b way) bool {
	sg.shake()
	x, y := sg.try(a), sg.try(b)
	sg.settle()
	return math.Abs(x-y) <= 1e-9*math.Abs(x)
}

// shake moves every value that the segment starts from a little, each
// differently; settle puts them back.
func (sg *segment) shake() {
	sg.still = append(sg.still[:0], sg.base...)
	for t, v := range sg.env.Values {
		if v == v && sg.sheet.set.Book.Terms[t].Kind == formula.Quantity {
			sg.env.Values[t] = v * (1 + float64(t*7919%101+1)*1.7e-4)
		}
	}
	for _, i := range sg.steps {
		st := &sg.sheet.plan.steps[i]
		sg.env.Values[st.term] = st.run(sg.env)
	}
	copy(sg.base, sg.env.Values)
}

func (sg *segment) settle() {
	copy(sg.base, sg.still)
	copy(sg.env.Values, sg.still)
}

// swapped lists a value with two neighbouring ones of its first four digits
// exchanged, the nought before the point among them.
func swapped(v, factor float64) []float64 {
	n, unit := fourDigits(v, factor)
	var list []float64
	for p := 1; n > 0 && p <= 100; p *= 10 {
		low, high := n/p%10, n/(10*p)%10
		if low != high {
			m := n + (low-high)*10*p + (high-low)*p
			list = append(list, float64(m)*unit)
		}
	}
	if x := math.Abs(v / factor); x >= 0.1 && x < 1 { // 0.57 written 5.07
		first := math.Floor(10*x + 1e-9)
		list = append(list, math.Copysign(float64((first+(10*x-first)/10)*factor), v))
	}
	return list
}

// misread lists a value with another digit for one of its first four.
func misread(v, factor float64) []float64 {
	n, unit := fourDigits(v, factor)
	var list []float64
	for p := 1; n > 0 && p <= 1000; p *= 10 {
		for digit := range 10 {
			if was := n / p % 10; digit != was {
				list = append(list, float64(n+(digit-was)*p)*unit)
			}
		}
	}
	return list
}

// carried lists a value that is off by one in one of its first three digits: a
// carry lost in adding up.
func carried(v, factor float64) []float64 {
	n, unit := fourDigits(v, factor)
	var list []float64
	for p := 10; n > 0 && p <= 1000; p *= 10 {
		list = append(list, float64(n+p)*unit, float64(n-p)*unit)
	}
	return list
}

// fourDigits is the first four digits of a value as a whole number, and what
// one of them counts, with the value's sign; 0 for a value that has none.
func fourDigits(v, factor float64) (n int, unit float64) {
	unit = 2 * half(v, factor)
	if unit == 0 {
		return 0, 0
	}
	return int(math.Floor(math.Abs(v)/unit + 0.5)), math.Copysign(unit, v)
}
