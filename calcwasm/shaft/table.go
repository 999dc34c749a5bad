package shaft

import "columnbowl/calcwasm/unit"

// columns are the speeds that head the published table, in rpm, from the
// fastest down. Only 875 could be read; the others are inferred from the
// ratios of the columns.
var columns = [...]float64{3500, 2900, 1760, 1460, 1160, 875}

// row is one size of the table. A zero is an empty cell, or one that could not
// be read with certainty.
type row struct {
	inches   float64
	name     string
	weight   float64 // lbf/ft
	thrust   float64 // lbf
	friction [len(columns)]float64
	power    [len(columns)]float64 // hp that the shaft may carry
}

// rows are the line shafts of the Hydraulic Institute Standards, vertical
// pumps, table of line-shaft selection and mechanical friction, read in a
// scanned reprint. Friction is in hp for 100 ft. What the reading repaired is
// listed beside the same numbers in testdata/published/03_line_shaft_*.csv.
// Left out: the power of 1-1/2 in at 1460 and 1160 rpm, which does not go with
// the speed as all others do, and the friction and power of 2-11/16 in, which
// cannot be read.
var rows = []row{
	{1, "1 in", 2.67, 3800, [6]float64{1.08, .89, .55, .45, .36, 0}, [6]float64{114, 96, 58, 48, 38.4, 0}},
	{1.25, "1-1/4 in", 4.17, 6000, [6]float64{1.63, 1.39, .84, .70, .54, 0}, [6]float64{219, 181, 110, 91, 73, 0}},
	{1.5, "1-1/2 in", 6.01, 8800, [6]float64{2.32, 1.93, 1.19, .97, .77, 0}, [6]float64{370, 310, 186, 0, 0, 0}},
	{1.6875, "1-11/16 in", 7.61, 11500, [6]float64{0, 2.42, 1.42, 1.21, .95, 0}, [6]float64{567, 489, 280, 245, 197, 0}},
	{1.9375, "1-15/16 in", 10.03, 15500, [6]float64{0, 0, 1.88, 1.59, 1.22, .92}, [6]float64{0, 0, 440, 383, 309, 219}},
	{2.1875, "2-3/16 in", 12.78, 20000, [6]float64{0, 0, 2.30, 2.00, 1.53, 1.14}, [6]float64{0, 0, 650, 559, 463, 347}},
	{2.4375, "2-7/16 in", 15.87, 25000, [6]float64{0, 0, 2.90, 2.43, 1.92, 1.42}, [6]float64{0, 0, 792, 648, 529, 394}},
	{2.6875, "2-11/16 in", 19.29, 30000, [6]float64{}, [6]float64{}},
	{2.9375, "2-15/16 in", 23.04, 36500, [6]float64{0, 0, 0, 0, 2.67, 2.00}, [6]float64{0, 0, 0, 0, 916, 683}},
}

func (r *row) diameter() float64 { return r.inches * inch }

// find is the published size that a diameter is, nil if it is none.
func find(diameter float64) *row {
	for i := range rows {
		if d := diameter - rows[i].diameter(); d >= -slack && d <= slack {
			return &rows[i]
		}
	}
	return nil
}

// at reads one line of cells at a speed in rpm. Within 3 % of a heading the
// cell is scaled in step with the speed; between two headings a straight line
// joins the ends of their bands, so that nothing jumps. Outside the cells that
// the line has, it tells where they end.
func at(cells *[len(columns)]float64, n float64) (value, first, last float64, ok bool) {
	above := -1
	for i := len(columns) - 1; i >= 0; i-- { // from the slowest
		h, v := columns[i], cells[i]
		if v == 0 {
			continue
		}
		if first == 0 {
			first = h
		}
		last = h
		switch {
		case ok:
		case n >= h*(1-near) && n <= h*(1+near):
			value, ok = v*n/h, true
		case n < h && above >= 0:
			h0, v0 := columns[above]*(1+near), cells[above]*(1+near)
			h1, v1 := h*(1-near), v*(1-near)
			value, ok = v0+float64((v1-v0)*(n-h0)/(h1-h0)), true
		case n < h:
			return 0, first, last, false
		}
		above = i
	}
	return value, first, last, ok
}

var inches, _ = unit.Lookup("in")
var turns, _ = unit.Lookup("rpm")

func speedText(n float64) string { return unit.FormatWith(n*rpm, turns) }
