package formula

import "testing"

func BenchmarkEval(b *testing.B) {
	r := relation(b, trade, bowlPower)
	v := facts(b, trade, "capacity = 500 gpm, total-head = 194 ft, specific-gravity = 1, bowl-efficiency = 81 %")
	b.ReportAllocs()
	for b.Loop() {
		if y := r.Right.Eval(v); y < 30 || y > 31 {
			b.Fatal(y)
		}
	}
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ParseRelation(bowlPower, trade); err != nil {
			b.Fatal(err)
		}
	}
}
