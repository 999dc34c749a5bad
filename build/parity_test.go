package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"

	"columnbowl/build/book"
	"columnbowl/build/bundle"
	"columnbowl/build/report"
	"columnbowl/calcwasm/answer"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// page is the engine as a page runs it: the real module, in a WebAssembly
// runtime, spoken to through memory.
type page struct {
	ctx                         context.Context
	memory                      api.Memory
	buffer, load, answer, reply api.Function
	exercises                   api.Function
}

// module builds the engine once for all tests that run it.
var module = sync.OnceValues(func() ([]byte, error) { return bundle.Engine("..") })

// bookOf loads the handbook's own content.
func bookOf(t testing.TB) *book.Book {
	t.Helper()
	b, problems := realBook()
	if len(problems) > 0 {
		var text bytes.Buffer
		problems.Print(&text)
		t.Fatalf("the content does not load:\n%s", text.String())
	}
	return b
}

// realBook is the handbook, loaded once: tests only read it.
var realBook = sync.OnceValues(func() (*book.Book, report.List) { return book.Load(os.DirFS("../content")) })

// compiled keeps the engine's machine code for all pages of a test run: to
// compile it takes seconds.
var compiled = wazero.NewCompilationCache()

func openPage(t testing.TB, pack []byte) *page {
	t.Helper()
	wasm, err := module()
	if err != nil {
		t.Fatal(err)
	}
	ctx := context.Background()
	runtime := wazero.NewRuntimeWithConfig(ctx, wazero.NewRuntimeConfig().WithCompilationCache(compiled))
	t.Cleanup(func() { runtime.Close(ctx) })
	wasi_snapshot_preview1.MustInstantiate(ctx, runtime)
	mod, err := runtime.InstantiateWithConfig(ctx, wasm, wazero.NewModuleConfig().WithStartFunctions("_initialize"))
	if err != nil {
		t.Fatal(err)
	}
	p := &page{ctx: ctx, memory: mod.Memory(), buffer: mod.ExportedFunction("buffer"), load: mod.ExportedFunction("load"),
		answer: mod.ExportedFunction("answer"), reply: mod.ExportedFunction("reply"), exercises: mod.ExportedFunction("add")}
	p.send(t, pack)
	if status := p.call(t, p.load, uint64(len(pack))); status != 0 {
		t.Fatalf("the engine does not take the book: %s", p.read(t, int(-status)))
	}
	return p
}

// practise gives the engine the packed exercises.
func (p *page) practise(t testing.TB, pack []byte) {
	t.Helper()
	pack = append([]byte(answer.ExercisePack+"\n"), pack...)
	p.send(t, pack)
	if status := p.call(t, p.exercises, uint64(len(pack))); status != 0 {
		t.Fatalf("the engine does not take the exercises: %s", p.read(t, int(-status)))
	}
}

func (p *page) call(t testing.TB, f api.Function, args ...uint64) int32 {
	t.Helper()
	r, err := f.Call(p.ctx, args...)
	if err != nil {
		t.Fatal(err)
	}
	return int32(uint32(r[0]))
}

func (p *page) send(t testing.TB, text []byte) {
	t.Helper()
	at := p.call(t, p.buffer, uint64(len(text)))
	if !p.memory.Write(uint32(at), text) {
		t.Fatal("the buffer is too small")
	}
}

func (p *page) read(t testing.TB, n int) []byte {
	t.Helper()
	text, ok := p.memory.Read(uint32(p.call(t, p.reply)), uint32(n))
	if !ok {
		t.Fatal("the reply is not in memory")
	}
	return bytes.Clone(text)
}

func (p *page) ask(t testing.TB, request string) []byte {
	t.Helper()
	p.send(t, []byte(request))
	n := p.call(t, p.answer, uint64(len(request)))
	if n < 0 {
		t.Fatalf("the engine failed: %s\nat the request\n%s", p.read(t, int(-n)), request)
	}
	return p.read(t, int(n))
}

// showAll asks to be told of every term, with its value in full.
func showAll(b *reckon.Book) string {
	var s strings.Builder
	s.WriteString("exact\n")
	for i := range b.Terms {
		fmt.Fprintf(&s, "show\t%s\n", b.Terms[i].ID)
	}
	return s.String()
}

// showSome asks to be told of every fourth term, by turns.
func showSome(b *reckon.Book, turn int) string {
	var s strings.Builder
	s.WriteString("exact\n")
	for i := turn % 4; i < len(b.Terms); i += 4 {
		fmt.Fprintf(&s, "show\t%s\n", b.Terms[i].ID)
	}
	return s.String()
}

// Every worked example of the book gives the same bytes natively and in WebAssembly.
func TestPageGivesTheSameExamples(t *testing.T) {
	b := bookOf(t)
	native, page := answer.New(b.Engine), openPage(t, b.Engine.Pack())
	for _, e := range b.Engine.Examples {
		request := showAll(b.Engine)
		for _, g := range e.Given {
			request += "fact\t" + b.Engine.Terms[g.Term].ID + "\t" + typed(b.Engine, &g) + "\n"
		}
		request += "want\t" + b.Engine.Terms[e.Expect[0].Term].ID + "\n"
		same(t, request, native.Answer([]byte(request)), page.ask(t, request))
	}
	t.Logf("%d worked examples", len(b.Engine.Examples))
}

// typed is a fact of an example as a reader would type it.
func typed(b *reckon.Book, a *formula.Assign) string {
	t := &b.Terms[a.Term]
	if t.Kind == formula.Choice {
		return t.Values[int(a.Low)]
	}
	number := func(si float64) string {
		u := t.US
		if a.Unit != nil {
			u = a.Unit
		}
		return strconv.FormatFloat(u.FromSI(si), 'g', 12, 64) + " " + u.Symbol
	}
	if a.Low < a.High {
		return number(a.Low) + " to " + number(a.High)
	}
	return number(a.Low)
}

// So do two thousand random sets of facts, with contradictions, ranges and
// nonsense among them, and the page's memory does not grow with them.
func TestPageGivesTheSameRandomChains(t *testing.T) {
	const workers, chains = 2, 1_000
	b := bookOf(t)
	pack := b.Engine.Pack()
	for w := range workers {
		t.Run(fmt.Sprint("worker ", w), func(t *testing.T) {
			t.Parallel()
			native, page := answer.New(b.Engine), openPage(t, pack)
			random := rand.New(rand.NewPCG(3960, uint64(w)))
			values := 0
			for i := range chains {
				request := showSome(b.Engine, i) + randomFacts(b.Engine, random)
				values += same(t, request, native.Answer([]byte(request)), page.ask(t, request))
				if t.Failed() {
					return
				}
			}
			t.Logf("%d chains, %d values", chains, values)
			if mb := page.memory.Size() >> 20; mb > mostMemory {
				t.Errorf("the page's memory grew to %d MB over %d requests: the garbage is not collected", mb, chains)
			}
		})
	}
}

// mostMemory is far above what a page needs (9 MB) and far below what it would
// grow to if nothing were ever collected (over 1 GB), in MB.
const mostMemory = 64

// randomBowl is a reader's own curve, now and then with a mistake in it.
func randomBowl(random *rand.Rand) string {
	text := "bowl\tother-bowl\tname Own\torigin measured\tspeed " + strconv.Itoa(1000+random.IntN(2500))
	q, h := 0.0, 20+100*random.Float64()
	for range 2 + random.IntN(10) {
		text += fmt.Sprintf("\tpoint %.0f gpm; %.1f ft", q, h)
		q, h = q+1000*random.Float64(), h-10*random.Float64()
	}
	return text + "\n"
}

func randomFacts(b *reckon.Book, random *rand.Rand) string {
	var s strings.Builder
	if random.IntN(4) == 0 {
		s.WriteString(randomBowl(random))
	}
	share := 0.1 + 0.6*random.Float64()
	for i := range b.Terms {
		t := &b.Terms[i]
		switch {
		case random.Float64() > share:
		case t.Kind == formula.Choice:
			fmt.Fprintf(&s, "fact\t%s\t%s\n", t.ID, t.Values[random.IntN(len(t.Values))])
		default:
			x := t.US.FromSI(t.Low + (t.High-t.Low)*math.Pow(random.Float64(), 3))
			text := strconv.FormatFloat(x, 'f', random.IntN(4), 64) + " " + t.US.Symbol
			if random.IntN(20) == 0 {
				text = "nonsense"
			} else if random.IntN(60) == 0 {
				text = strconv.FormatFloat(x*0.9, 'f', 2, 64) + " to " + text
			}
			fmt.Fprintf(&s, "fact\t%s\t%s\n", t.ID, text)
		}
	}
	fmt.Fprintf(&s, "want\t%s\n", b.Terms[random.IntN(len(b.Terms))].ID)
	return s.String()
}

// reply is what the comparison reads of the engine's JSON.
type reply struct {
	Terms []struct{ ID, State, Exact string }
}

// same compares two replies byte for byte and, should they differ, says by how
// much their values do. It returns the number of values compared.
func same(t *testing.T, request string, native, page []byte) int {
	t.Helper()
	var a, b reply
	if err := json.Unmarshal(native, &a); err != nil {
		t.Fatalf("the reply is no JSON: %v\n%s", err, native)
	}
	if bytes.Equal(native, page) {
		return len(a.Terms)
	}
	if err := json.Unmarshal(page, &b); err != nil {
		t.Fatalf("the page's reply is no JSON: %v\n%s", err, page)
	}
	for i := range a.Terms {
		if a.Terms[i] != b.Terms[i] {
			t.Errorf("%s: native %s %s, page %s %s (relative difference %g)\n%s", a.Terms[i].ID, a.Terms[i].State, a.Terms[i].Exact,
				b.Terms[i].State, b.Terms[i].Exact, relative(a.Terms[i].Exact, b.Terms[i].Exact), request)
		}
	}
	t.Errorf("the replies differ:\n%s\n%s", native, page)
	return len(a.Terms)
}

func relative(a, b string) float64 {
	x, _ := strconv.ParseFloat(a, 64)
	y, _ := strconv.ParseFloat(b, 64)
	return math.Abs(x-y) / math.Max(math.Abs(x), math.Abs(y))
}
