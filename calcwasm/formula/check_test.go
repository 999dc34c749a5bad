package formula

import (
	"testing"

	"columnbowl/calcwasm/unit"
)

func TestDimensionsFollowTheAlgebra(t *testing.T) {
	for _, c := range []struct {
		src  string
		want unit.Dim
	}{
		{"total-head + 5 m - field-head", unit.Length},
		{"-total-head", unit.Length},
		{"total-head * field-head", unit.Area},
		{"bowl-area * total-head", unit.Volume},
		{"capacity / bowl-area", unit.Velocity},
		{"bowl-area * water-velocity", unit.Flow},
		{"discharge-pressure * capacity", unit.Power},
		{"total-head ^ 2", unit.Area},
		{"total-head ^ 3 / 1 min", unit.Flow},
		{"bowl-area ^ 0.5", unit.Length},
		{"bowl-area ^ (1/2)", unit.Length},
		{"(total-head ^ 3) ^ (1/3)", unit.Length},
		{"(total-head ^ 3) ^ (2/3)", unit.Area},
		{"total-head ^ -1", unit.PerLength},
		{"pump-speed * capacity ^ 0.5 / total-head ^ 0.75", unit.SpecificSpeed},
		{"2 ^ stages", unit.None},
		{"stages ^ 1.852", unit.None},
		{"(total-head / field-head) ^ specific-gravity", unit.None},
		{"capacity[gpm]", unit.None},
		{"capacity[gpm] + stages", unit.None},
		{"sqrt(bowl-area)", unit.Length},
		{"abs(-capacity)", unit.Flow},
		{"min(total-head, 5 ft, setting)", unit.Length},
		{"round-up(total-head / 10 ft)", unit.None},
		{"table(capacity, 0 gpm: 63 ft, 400 gpm: 59.3 ft)", unit.Length},
		{"curve(capacity, 0 gpm: 60 %, 400 gpm: 81 %)", unit.None},
		{"pipe-loss(capacity, setting)", unit.Length},
		{"72.5 %", unit.None},
	} {
		if got := expression(t, trade, c.src).dimension(); got != c.want {
			t.Errorf("%q is a %s, should be a %s", c.src, got, c.want)
		}
	}
}

func TestRelationsThatAgree(t *testing.T) {
	for _, src := range []string{
		bowlPower,
		"total-head = field-head + column-loss + head-loss",
		"capacity = bowl-area * water-velocity",
		"bowl-power * bowl-efficiency = discharge-pressure * capacity",
		"pressure-head[ft] = 2.31 * discharge-pressure[psi] / specific-gravity",
		"stages = round-up(total-head / field-head)",
		"pump-speed = 1760 rpm",
		"water-temperature = 68 degF",
		"column-loss = pipe-loss(capacity, setting)",
	} {
		relation(t, trade, src)
	}
}

// A product far beyond any dimension of the trade must not come round to a
// dimension that it is not.
func TestFarPowersDoNotPassForOthers(t *testing.T) {
	for _, src := range []string{
		"total-head = total-head ^ 10 * total-head ^ 10 / total-head ^ 10 / total-head ^ 9",
		"stages = total-head ^ 10 * total-head ^ 10 / total-head ^ 10",
		"total-head = total-head ^ 11",
		"total-head = total-head ^ 1e300",
		"total-head = total-head ^ (1/0)",
		"total-head = total-head ^ (0/0)",
		"total-head = total-head ^ 0.55",
	} {
		if _, err := ParseRelation(src, trade); err == nil {
			t.Errorf("%q is taken", src)
		}
	}
}
