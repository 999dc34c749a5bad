package proof
import ("testing";"os";"fmt";"time";"columnbowl/build/book")
func TestZZ(t *testing.T) {
	b, found := book.Load(os.DirFS("../../content"))
	found.Print(os.Stdout)
	t0:=time.Now()
	set, found := b.Practice()
	fmt.Println("practice", time.Since(t0))
	found.Print(os.Stdout)
	for i := range set.Templates {
		tm := &set.Templates[i]
		t0=time.Now()
		n, tries := 0, 0
		reasons := map[string]int{}
		for seed := uint64(1); seed<=200; seed++ {
			sh, why := set.Draw(tm, seed)
			if sh==nil { reasons[why]++; tries+=200; continue }
			n++; tries+=sh.Tries
		}
		fmt.Println(tm.ID, n, float64(n)/float64(tries), time.Since(t0)/200, reasons)
		sh,_ := set.Draw(tm, 7)
		if sh==nil {continue}
		fmt.Println(sh.Situation())
		for i := range sh.Items { fmt.Println(sh.Title(i), sh.Items[i].Answer, sh.Items[i].Options, sh.Items[i].Names); for _,l := range sh.Steps(i) {fmt.Println("   ",l)}
		 for _,tr := range sh.Traces(i) { fmt.Println("      x ", set.Slip(tr.Slip).ID, sh.Amount(i,tr.Value)) } }
	}
}
