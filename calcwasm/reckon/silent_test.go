package reckon

import "testing"

const silentBook = `
term build : choice water-lubricated submersible
term setting ft m 3 2500 ask
term shaft-loss-rate hp/100ft kW/100m 0 15 ask builds water-lubricated otherwise 0 hp/100ft
term shaft-loss hp kW 0 200 ask builds water-lubricated otherwise 0 hp
term sections 1 1 0 500
shaft-loss = shaft-loss-rate * setting
estimate full sections = setting / 20 ft say "lengths of 20 ft"
`

// 0 hp = 0 hp/100ft × setting holds for every setting: it neither gives one nor
// stands in the way of asking for it.
func TestSilentRelationBarsNothing(t *testing.T) {
	b := makeBook(t, silentBook)
	r := ask(t, b, "sections", "build=submersible")
	setting := termOf(t, b, "setting")
	if v := r.Values[setting]; v.State == Outside || v.Reason != "" {
		t.Errorf("the setting is %v: %s", v.State, v.Reason)
	}
	if len(r.Missing) != 1 || len(r.Missing[0]) != 1 || r.Missing[0][0] != setting {
		t.Errorf("wanting are %v, should be the setting", r.Missing)
	}
}

// A loss without a rate cannot be: that is told.
func TestRelationThatCannotHoldIsTold(t *testing.T) {
	b := makeBook(t, silentBook)
	r := ask(t, b, "setting", "build=water-lubricated", "shaft-loss-rate=0", "shaft-loss=3 hp")
	if v := r.Values[termOf(t, b, "setting")]; v.State != Outside || v.Reason != "it would divide by zero" {
		t.Errorf("the setting is %v: %s", v.State, v.Reason)
	}
}
