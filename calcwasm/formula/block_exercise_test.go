package formula

import (
	"math"
	"testing"
)

func TestDrawBlock(t *testing.T) {
	d, err := ParseDraw(`
static-level = 80 ft to 180 ft step 0.5 ft
setting = static-level + 20 ft to static-level + 70 ft step 5 ft
water-temperature = 50 degF to 90 degF step 2 degF
stages = one of 6, 7, 8
build = one of oil-lubricated, submersible
specific-gravity = 1.01 to 1.04 step 0.01
pressure-head = table(capacity, 0 gpm: 30 ft, 800 gpm: 20 ft)
keep when setting - static-level > 30 ft
keep when build = submersible or stages < 8
`, trade)
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Facts) != 7 || len(d.Keep) != 2 {
		t.Fatalf("%d facts, %d conditions", len(d.Facts), len(d.Keep))
	}
	for i, want := range []float64{0.5 * 0.3048, 5 * 0.3048, 2 / 1.8, 0, 0, 0.01, 0} {
		if got := d.Facts[i].Step; math.Abs(got-want) > 1e-12 {
			t.Errorf("the step of %s is %v, not %v", trade.Term(d.Facts[i].Term).ID, got, want)
		}
	}
	if len(d.Facts[3].OneOf) != 3 || d.Facts[4].OneOf[1].Value != 2 || d.Facts[6].To != nil {
		t.Errorf("the values to choose from: %v", d.Facts)
	}
	env := NewEnv(trade)
	env.Values[d.Facts[0].Term] = 100 * 0.3048
	if got := d.Facts[1].From.Eval(env) / 0.3048; math.Abs(got-120) > 1e-9 {
		t.Errorf("the lower bound is %v ft, not 120", got)
	}
}

func TestAskBlock(t *testing.T) {
	list, err := ParseAsk("total-head\npumping-level to 0.1 ft\npressure-head within 2 %", trade)
	if err != nil || len(list) != 3 {
		t.Fatal(list, err)
	}
	if math.Abs(list[1].Step-0.03048) > 1e-12 || math.Abs(list[2].Within-0.02) > 1e-12 || list[0].Step != 0 || list[0].Within != 0 {
		t.Errorf("%+v", list)
	}
}

func TestQuestionBlocks(t *testing.T) {
	c, err := ParseChoose("ask \"Which?\"\nright \"this\" say \"why\"\nwrong \"that\" say \"no\"\nwrong \"none\" say \"nor that\"")
	if err != nil || c.Right.Text != "this" || c.Right.Say != "why" || len(c.Wrong) != 2 || c.Wrong[1].Say != "nor that" {
		t.Errorf("%+v %v", c, err)
	}
	o, err := ParseOrder("ask \"Order.\"\ntake 3\nitems \"a\", \"b\",\n \"c\", \"d\"")
	if err != nil || o.Take != 3 || len(o.Items) != 4 || o.Items[3] != "d" {
		t.Errorf("%+v %v", o, err)
	}
}

func TestMessagesOfExercises(t *testing.T) {
	complain(t, "draw", []complaint{
		says("total-head «5 ft»", "Expected “=” and the value to draw, but “5 ft” stands here."),
		says("«total-haed» = 5 ft", "There is no term “total-haed”. → total-head"),
		says("total-head = «5 gpm»", "“total-head” is a length, and this is a flow."),
		says("total-head = 5 ft to 9 ft«»", "Expected “step”, but the text ends here."),
		says("total-head = 5 ft to 9 ft step «1 gpm»", "“total-head” is a length: write a step of it, such as 1 ft."),
		says("total-head = 5 ft to 9 ft step «0 ft»", "A step is larger than 0."),
		says("total-head = 5 ft\n«total-head = 6 ft»", "“total-head” is drawn twice."),
		says("build = one of oil-lubricated, «steam»", "“build” is one of: water-lubricated, oil-lubricated or submersible."),
		says("total-head = one «5 ft»", "Expected “of”, but “5 ft” stands here."),
		says("keep «total-head» > 5 ft", "Expected “when”, but “total-head” stands here."),
	})
	complain(t, "ask", []complaint{
		says("«»", "Nothing is asked: write a term on each line."),
		says("total-head\n«total-head»", "“total-head” is asked twice."),
		says("total-head to «0.1 gpm»", "“total-head” is a length: write a step of it, such as 1 ft."),
		says("total-head within «30 %»", "How far a reading may be out is a percentage up to 20 %, such as within 2 %."),
		says("total-head within «2»", "How far a reading may be out is a percentage up to 20 %, such as within 2 %."),
	})
	complain(t, "choose", []complaint{
		says("«right» \"a\"", "Expected ask \"…\", but “right” stands here."),
		says("ask \"a\" right \"b\" wrong \"c\" say \"d\"«»", "A choice offers three answers or more: add lines wrong \"…\" say \"…\"."),
		says("ask «\"\"» right \"b\" wrong \"c\" say \"d\" wrong \"e\" say \"f\"", "There is nothing between the quotation marks."),
		says("ask \"a\" right \"b\" wrong \"c\" «wrong» \"e\"", "Expected a line say \"…\", but “wrong” stands here."),
	})
	complain(t, "order", []complaint{
		says("ask \"a\" items \"b\", \"c\"«»", "There is little to put in order: write three items or more."),
		says("ask \"a\" take «2» items \"b\", \"c\", \"d\"", "A sheet takes three items or more, and no more than there are."),
		says("ask \"a\" items \"b\", «c»", "Expected text in quotation marks, but “c” stands here."),
	})
}
