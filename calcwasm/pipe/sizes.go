package pipe

import (
	"math"
	"strings"

	"columnbowl/calcwasm/unit"
)

// Schedule is a series of pipes: one wall for each nominal size.
type Schedule uint8

// The schedules that are carried.
const (
	Steel20 Schedule = iota
	Steel30
	SteelStandard
	Steel40
	Steel80
	PVC40
	PVC80
	schedules
)

var scheduleNames = [schedules]string{"steel schedule 20", "steel schedule 30", "standard-weight steel", "steel schedule 40",
	"steel schedule 80", "PVC schedule 40", "PVC schedule 80"}

const inch = 0.0254 // m

// size is a nominal pipe size with its walls in inches, 0 where it is not
// carried. For PVC the wall is the least one allowed.
type size struct {
	nominal, outside float64
	metric           float64 // DN, the same size in mm
	walls            [schedules]float64
}

// sizes are pipes of ASME B36.10M (steel) and ASTM D1785 (PVC). Inch values
// from memory; outside diameters and schedule 40 walls of 3 in to 16 in were
// compared with a metric data file, the bores of 1-1/2, 2, 3 and 5 in
// schedule 40 with textbook examples. Order of walls: steel 20, 30, standard,
// 40, 80, PVC 40, 80.
var sizes = []size{
	{1, 1.315, 25, [schedules]float64{0, 0, .133, .133, .179, .133, .179}},
	{1.25, 1.660, 32, [schedules]float64{0, 0, .140, .140, .191, .140, .191}},
	{1.5, 1.900, 40, [schedules]float64{0, 0, .145, .145, .200, .145, .200}},
	{2, 2.375, 50, [schedules]float64{0, 0, .154, .154, .218, .154, .218}},
	{2.5, 2.875, 65, [schedules]float64{0, 0, .203, .203, .276, .203, .276}},
	{3, 3.500, 80, [schedules]float64{0, 0, .216, .216, .300, .216, .300}},
	{3.5, 4.000, 90, [schedules]float64{0, 0, .226, .226, .318, .226, .318}},
	{4, 4.500, 100, [schedules]float64{0, 0, .237, .237, .337, .237, .337}},
	{5, 5.563, 125, [schedules]float64{0, 0, .258, .258, .375, .258, .375}},
	{6, 6.625, 150, [schedules]float64{0, 0, .280, .280, .432, .280, .432}},
	{8, 8.625, 200, [schedules]float64{.250, .277, .322, .322, .500, .322, .500}},
	{10, 10.750, 250, [schedules]float64{.250, .307, .365, .365, .594, .365, .593}},
	{12, 12.750, 300, [schedules]float64{.250, .330, .375, .406, .688, .406, .687}},
	{14, 14.000, 350, [schedules]float64{.312, .375, .375, .438, .750, 0, 0}},
	{16, 16.000, 400, [schedules]float64{.312, .375, .375, .500, .844, 0, 0}},
}

// Bore is the inside diameter in m of a pipe of a schedule: outside diameter
// less two walls. The nominal size is in m and may be the inch size (8 in) or
// the DN (200 mm); a size that is not in the table has no value. For PVC it is
// reckoned with the least wall, and the mean bore is up to 0.03 in smaller.
// Sources: ASME B36.10M, ASTM D1785 (see sizes).
func Bore(s Schedule, nominal float64) (bore float64, invalid string) {
	if s < schedules {
		if p := find(nominal); p != nil && p.walls[s] > 0 {
			return (p.outside - 2*p.walls[s]) * inch, ""
		}
	}
	return math.NaN(), missing(s, nominal)
}

// OutsideDiameter is the outside diameter in m of steel or PVC pipe of a
// nominal size in m, which is the same for all walls.
func OutsideDiameter(nominal float64) (diameter float64, invalid string) {
	if p := find(nominal); p != nil {
		return p.outside * inch, ""
	}
	return math.NaN(), missing(SteelStandard, nominal)
}

// find looks a nominal size up, given as an inch size or as a DN.
func find(nominal float64) *size {
	for i := range sizes {
		p := &sizes[i]
		if alike(nominal, p.nominal*inch) || alike(nominal, p.metric/1000) {
			return p
		}
	}
	return nil
}

func alike(a, b float64) bool { return math.Abs(a-b) <= 1e-6*b }

// missing says which sizes there are.
func missing(s Schedule, nominal float64) string {
	if s >= schedules {
		return "there is no such kind of pipe"
	}
	var have []string
	for i := range sizes {
		if sizes[i].walls[s] > 0 {
			have = append(have, unit.FormatPlain(sizes[i].nominal*inch, inches))
		}
	}
	last := len(have) - 1
	asked := "this size"
	if nominal == nominal {
		asked = unit.FormatWith(nominal, inches)
	}
	return "the table of " + scheduleNames[s] + " pipe has " + strings.Join(have[:last], ", ") + " and " + have[last] + " in, and not " + asked
}

var inches = func() *unit.Unit { u, _ := unit.Lookup("in"); return u }()
