package drawing

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(a, b float64) bool { return math.Abs(a-b) < .01 }

// Balloons keep their order and their distance whatever is lit and however
// many entries open, and leaders never cross.
func TestRailBalloonsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 11).Draw(t, "lit")
		subs := rapid.IntRange(0, 30).Draw(t, "subs")
		places := samplePlaces(n, subs, rapid.IntRange(0, subs).Draw(t, "now"))
		if rapid.Bool().Draw(t, "other depths") {
			for i := range places {
				places[i].Depth = rapid.Float64().Draw(t, "depth")
			}
		}
		r := Rail{Prefix: "rail", Places: places, Height: rapid.SampledFrom([]float64{0, 300, 600, 864, 2000, math.NaN()}).Draw(t, "height")}
		s, balloons := r.Layout()
		const least = 32.0
		for i := 1; i < len(balloons); i++ {
			if d := balloons[i].Y - balloons[i-1].Y; d < least-1e-9 {
				t.Fatalf("balloons %d and %d are %.2f apart, want %.0f", i, i+1, d, least)
			}
		}
		if err := inside(s, 12); err != nil {
			t.Fatal(err)
		}
		if err := wellFormed(s); err != nil {
			t.Fatal(err)
		}
		l := r.place()
		g := &Group{}
		l.leaders(g)
		var paths []*Path
		for _, it := range g.Items {
			if p, ok := it.(*Path); ok {
				paths = append(paths, p)
			}
		}
		if err := anyCrossing(paths); err != nil {
			t.Fatal(err)
		}
	})
}

// Without open entries, balloons stand at the depth they are about.
func TestRailKeepsDepths(t *testing.T) {
	_, balloons := Rail{Prefix: "r", Places: samplePlaces(0, 0, 0), Height: 864}.Layout()
	for i, b := range balloons {
		if d, _ := DepthOf(b.ID); math.Abs(b.Y-d*864) > 1 {
			t.Errorf("balloon %d at %.1f, its depth is %.1f", i+1, b.Y, d*864)
		}
	}
	if _, ok := DepthOf("attic"); ok {
		t.Error("an unknown place has a depth")
	}
}

// A list that opens moves nothing above it while there is room below.
func TestRailOpensDownwards(t *testing.T) {
	_, shut := Rail{Prefix: "r", Places: samplePlaces(4, 0, 0)}.Layout()
	_, open := Rail{Prefix: "r", Places: samplePlaces(4, 6, 2)}.Layout()
	for i := range 4 {
		if shut[i].Y != open[i].Y {
			t.Errorf("balloon %d moved from %.1f to %.1f", i+1, shut[i].Y, open[i].Y)
		}
	}
}

func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SliceOfN(rapid.Float64Range(-1e4, 1e4), 1, 20).Draw(t, "want")
		gap := rapid.SliceOfN(rapid.Float64Range(0, 100), len(want)-1, len(want)-1).Draw(t, "gap")
		got := spread(want, gap, -500, 500)
		sum := 0.0
		for i, g := range gap {
			sum += g
			if got[i+1]-got[i] < g-1e-6 {
				t.Fatalf("%v: %d and %d too close", got, i, i+1)
			}
		}
		if got[0] < -500-1e-6 || sum <= 1000 && got[len(got)-1] > 500+1e-6 {
			t.Fatalf("%v leaves its bounds", got)
		}
	})
	// pooled pairs share the move: 10 and 12 with 6 between become 8 and 14
	if got := spread([]float64{10, 12}, []float64{6}, 0, 100); !near(got[0], 8) || !near(got[1], 14) {
		t.Errorf("got %v, want 8 and 14", got)
	}
}

// rungs finds the washes and hatches of the ladder's bar by x and breadth.
func rungRects(s *Scene, p ladderPlan) []Rect {
	var out []Rect
	for _, it := range s.Items {
		if r, ok := it.(Rect); ok && r.X == p.x && r.W == p.bar && (r.Class == "w-water" || r.Class == "pap") {
			out = append(out, r)
		}
	}
	return out
}

// Lengths in the ladder are in proportion to the heads.
func TestLadderToScale(t *testing.T) {
	for f, p := range ladderPlans {
		l := sampleLadder(LadderForm(f))
		rects := rungRects(l.Layout(), p)
		heads := []float64{pwl, gaugeAt, pressureHead, velocityHead, columnLoss, headLoss}
		if len(rects) != len(heads) {
			t.Fatalf("form %d: %d rungs, want %d", f, len(rects), len(heads))
		}
		per := rects[0].H / pwl
		for i, h := range heads {
			if !near(rects[i].H, h*per) {
				t.Errorf("form %d rung %d is %.2f px, want %.2f", f, i, rects[i].H, h*per)
			}
		}
	}
}

// The pictures of the chain page share datum and scale: the standpipe's water
// stands as high as the top of pressure head, the ladder's foot at the pumping
// level of the well, the bowls where the power turns.
func TestChainSharesScale(t *testing.T) {
	w, l, p := sampleWell(), sampleLadder(LadderChain), samplePower()
	sc := ChainScale(w, l, 680)
	w.Scale, l.Scale, p.Scale = sc, sc, sc
	well, ladder, power := w.Layout(), l.Layout(), p.Layout()
	if well.Box.H != ladder.Box.H || well.Box.H != power.Box.H {
		t.Fatalf("heights %.1f %.1f %.1f", well.Box.H, ladder.Box.H, power.Box.H)
	}
	for name, s := range map[string]*Scene{"well": well, "ladder": ladder, "power": power} {
		found := false
		for _, it := range s.Items {
			if d, ok := it.(Line); ok && d.Class == "chainl" {
				found = true
				if d.Y1 != sc.Datum {
					t.Errorf("%s: datum at %.2f, want %.2f", name, d.Y1, sc.Datum)
				}
			}
		}
		if !found {
			t.Errorf("%s has no datum line", name)
		}
	}
	stand := math.Inf(1)
	for _, it := range well.Items {
		if r, ok := it.(Rect); ok && r.Class == "w-water" && r.W == wellWide.standW {
			stand = r.Y
		}
	}
	if rects := rungRects(ladder, ladderPlans[LadderChain]); !near(rects[2].Y, stand) {
		t.Errorf("standpipe at %.2f, top of pressure head at %.2f", stand, rects[2].Y)
	}
}

// Widths in the power flow are in proportion, and the losses add up.
func TestPowerFlow(t *testing.T) {
	f := samplePower().flow()
	for _, c := range []struct {
		name      string
		got, want float64
	}{{"brake", f.brake, 89.6}, {"bowl", f.bowl, 85.5}, {"up", f.up, 69.3}, {"out", f.out, 67.9}} {
		if math.Abs(c.got-c.want) > .11 {
			t.Errorf("%s is %.2f, want %.2f", c.name, c.got, c.want)
		}
	}
	back := PowerFlow{Out: hp(67.9, ""), Column: hp(1.4, ""), Bowls: hp(16.2, ""), Shaft: hp(3.4, ""), Thrust: hp(.6, ""), Motor: hp(5.6, "")}.flow()
	if !near(back.wire, 95.1) {
		t.Errorf("from the gauge back to the wire: %.2f, want 95.1", back.wire)
	}
	s := samplePower().Layout()
	// the rise is the one wash whose sixth step is upright: its outlet runs
	// from step 4 to step 6
	outlets := 0
	for _, it := range s.Items {
		if p, ok := it.(*Path); ok && p.Class == "w-water" && len(p.steps) == 8 && p.steps[5].op == 'V' {
			outlets++
			if h, want := p.steps[3].p[0]-p.steps[5].p[0], 67.9*bandWide/95.2; !near(h, want) {
				t.Errorf("outlet is %.2f high, want %.2f", h, want)
			}
		}
	}
	if outlets != 1 {
		t.Errorf("%d outlets, want 1", outlets)
	}
}
