package reckon

import "strconv"

// shape holds the points against each other: capacities rise, heads do not, and
// the efficiency rises to one best point and falls from there.
func (r *bowlReader) shape() {
	points := r.bowl.Points
	for i := range points {
		p := &points[i]
		r.at = r.pointAt[i]
		if p.Capacity.SI == 0 && p.Efficiency.SI > 0 {
			r.fail(2, "Where no water flows the efficiency is 0, not ", p.Efficiency.String(), ".")
		}
		if i == 0 {
			continue
		}
		before := &points[i-1]
		if p.Capacity.SI <= before.Capacity.SI {
			r.fail(0, "The capacity ", p.Capacity.String(), " does not lie beyond ", before.Capacity.String(), ", the one of the point before: write the points in rising order.")
		} else if p.Head.SI > before.Head.SI {
			r.fail(1, "The head rises from ", before.Head.String(), " to ", p.Head.String(), " while the capacity grows. Where the curve sags towards no flow, leave the sagging points out and begin at the highest head.")
		}
	}
	r.column(2)
	r.column(3)
}

// column holds one column that may be absent: a curve needs its points, and an
// efficiency one summit.
func (r *bowlReader) column(column int) {
	n, falls := 0, false
	last := &Figure{}
	for i := range r.bowl.Points {
		f := r.bowl.Points[i].figure(column)
		if !f.Known() {
			continue
		}
		r.at = r.pointAt[i]
		if column == 2 && n > 0 && falls && f.SI > last.SI {
			r.fail(column, "The efficiency falls to ", last.String(), " and rises again to ", f.String(), ": a curve has one best point.")
		}
		falls = n > 0 && f.SI < last.SI || falls
		n, last = n+1, f
	}
	if n > 0 && n < leastPoints {
		r.fail(column, "This curve has too few points, ", strconv.Itoa(n), ": give three or more, or none.")
	}
}
