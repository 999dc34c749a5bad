package drawing

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func sampleStretch() Stretch {
	in := func(v float64, name string) Mark { return At(v, name, fmt.Sprintf("%.3f in", v)) }
	return Stretch{Prefix: "str", Title: "Set and running", Desc: "Raised 0.188 in, stretch 0.128 in", Rest: "set, at rest", Run: "running",
		Raised: in(.188, "impeller adjustment"), Stretch: in(.128, "shaft stretch"), Clearance: in(.06, "running clearance"), Lateral: in(.8, "lateral")}
}

func sampleThrust() Thrust {
	lbf := func(v float64, name string) Mark { return At(v, name, fmt.Sprintf("%.0f lbf", v)) }
	return Thrust{Prefix: "thr", Title: "What hangs on the thrust bearing", Duty: "at the duty", Shutoff: "at shutoff",
		Hydraulic: lbf(2881, "hydraulic thrust"), Weight: lbf(1922, "shaft weight"), Total: lbf(4804, "total thrust"),
		Largest: lbf(6579, "largest thrust"), Rating: lbf(8500, "bearing rating")}
}

func sampleAnnulus(b Build) Annulus {
	in := func(v float64, name string) Mark { return At(v, name, fmt.Sprintf("%.3f in", v)) }
	return Annulus{Prefix: "ann", Title: "The column, cut across", Build: b, Column: in(7.981, "column inside diameter"),
		Tube: in(2.875, "tube outside diameter"), Shaft: in(1.6875, "shaft diameter"), Velocity: At(5.9, "column velocity", "5.9 ft/s")}
}

func details() map[string]*Scene {
	st, th := sampleStretch(), sampleThrust()
	st.Lateral, st.Clearance.Known = Unknown("lateral"), false
	th.Rating, th.Largest = Unknown("bearing rating"), Unknown("largest thrust")
	return map[string]*Scene{
		"stretch": sampleStretch().Layout(), "stretch-missing": st.Layout(), "thrust": sampleThrust().Layout(), "thrust-missing": th.Layout(),
		"annulus-oil": sampleAnnulus(OilLubricated).Layout(), "annulus-water": sampleAnnulus(WaterLubricated).Layout(),
		"annulus-sub": sampleAnnulus(Submersible).Layout(),
	}
}

func TestDetailsAreClean(t *testing.T) {
	for name, s := range details() {
		if err := s.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := inside(s, 2); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := apart(s, 1); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The heights of the stretch picture and the radii of the annulus are to scale.
func TestDetailsToScale(t *testing.T) {
	d := sampleStretch()
	s := d.Layout()
	per := d.per()
	if got := per * .8; got < stretchRoom-1e-9 || got > stretchRoom+1e-9 {
		t.Errorf("the lateral is %.2f px high, want %.0f", got, stretchRoom)
	}
	for want, what := range map[float64]string{stretchFloor - .188*per: "raised", stretchFloor - .06*per: "running"} {
		if text := fmt.Sprintf(`y1="%.2f"`, want); !strings.Contains(s.SVG(), strings.TrimRight(strings.TrimSuffix(text, `"`), "0")) {
			t.Errorf("no line at the height of the impeller %s: %s", what, text)
		}
	}
	var radii []float64
	for _, it := range sampleAnnulus(OilLubricated).Layout().Items {
		if c, ok := it.(Circle); ok && c.Class == "out" {
			radii = append(radii, c.R)
		}
	}
	if len(radii) != 5 || !near(radii[2]/radii[1], 2.875/7.981) || !near(radii[4]/radii[1], 1.6875/7.981) {
		t.Errorf("radii %v", radii)
	}
}

func TestAnyDetailsDraw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		st := Stretch{Prefix: "s", Rest: "rest", Run: "run"}
		th := Thrust{Prefix: "t", Duty: "duty", Shutoff: "shutoff"}
		an := Annulus{Prefix: "a", Build: Build(rapid.IntRange(0, 2).Draw(t, "build"))}
		for _, m := range []*Mark{&st.Raised, &st.Stretch, &st.Clearance, &st.Lateral, &th.Hydraulic, &th.Weight, &th.Total, &th.Largest, &th.Rating,
			&an.Column, &an.Tube, &an.Shaft, &an.Velocity} {
			*m = anyMark(t, "mark")
		}
		for _, s := range []*Scene{st.Layout(), th.Layout(), an.Layout()} {
			holds(t, s)
		}
	})
}
