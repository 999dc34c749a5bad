package bundle

import (
	"bytes"
	"compress/gzip"
	"encoding/binary"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"columnbowl/build/budget"
)

// room is what one package takes of the engine's machine code.
type room struct {
	name  string
	bytes int
}

// rooms reads a module that has its names: the code of each package.
func rooms(wasm []byte) ([]room, error) {
	if !bytes.HasPrefix(wasm, wasmMagic) {
		return nil, fmt.Errorf("no WebAssembly")
	}
	sections := map[byte][]byte{}
	for rest := wasm[8:]; len(rest) > 0; {
		id := rest[0]
		n, used := binary.Uvarint(rest[1:])
		body := rest[1+used : 1+used+int(n)]
		rest = rest[1+used+int(n):]
		if id != 0 {
			sections[id] = body
		} else if size, w := binary.Uvarint(body); string(body[w:w+int(size)]) == "name" {
			sections[id] = body[w+int(size):]
		}
	}
	names, first := functionNames(sections[0]), importedFunctions(sections[2])
	code := map[string]int{}
	n, used := binary.Uvarint(sections[10])
	rest := sections[10][used:]
	for i := range int(n) {
		size, w := binary.Uvarint(rest)
		code[packageOf(names[first+i])] += int(size)
		rest = rest[w+int(size):]
	}
	var list []room
	for name, size := range code {
		list = append(list, room{name, size})
	}
	slices.SortFunc(list, func(a, b room) int { return b.bytes - a.bytes })
	return list, nil
}

// functionNames reads the names of functions from a name section.
func functionNames(section []byte) map[int]string {
	names := map[int]string{}
	for len(section) > 0 {
		kind := section[0]
		n, used := binary.Uvarint(section[1:])
		body := section[1+used : 1+used+int(n)]
		section = section[1+used+int(n):]
		if kind != 1 {
			continue
		}
		count, at := binary.Uvarint(body)
		for range count {
			index, w := binary.Uvarint(body[at:])
			size, v := binary.Uvarint(body[at+w:])
			from := at + w + v
			names[int(index)] = string(body[from : from+int(size)])
			at = from + int(size)
		}
	}
	return names
}

// importedFunctions counts what stands before the module's own functions. All
// imports of the engine are functions.
func importedFunctions(section []byte) int {
	n, _ := binary.Uvarint(section)
	return int(n)
}

var function = regexp.MustCompile(`^((?:[^/.\[(]+/)*[^/.\[(]+)\.`)

// packageOf is the package of a function, our own without the way to it.
func packageOf(name string) string {
	if strings.HasPrefix(name, "type:") || strings.HasPrefix(name, "type_") {
		return "types"
	}
	m := function.FindStringSubmatch(name)
	if m == nil {
		return "other"
	}
	return strings.TrimPrefix(m[1], "columnbowl_calcwasm_")
}

func TestRoomsOfASmallEngine(t *testing.T) {
	dir := smallModule(t, "//go:wasmexport twice\nfunc twice(n int32) int32 { return 2 * n }\n")
	list, err := rooms(named(t, dir))
	if err != nil {
		t.Fatal(err)
	}
	if list[0].name != "runtime" || !slices.ContainsFunc(list, func(r room) bool { return r.name == "main" && r.bytes < 10_000 }) {
		t.Errorf("an engine of one line has the rooms %v", list[:min(5, len(list))])
	}
}

// named builds the engine as Engine does, with the names of its functions.
func named(t testing.TB, dir string) []byte {
	t.Helper()
	out := filepath.Join(t.TempDir(), "named.wasm")
	cmd := exec.Command("go", append(append([]string{"build", "-trimpath", "-buildvcs=false", "-buildmode=c-shared"}, lean...), "-o", out, enginePackage)...)
	cmd.Dir = dir
	cmd.Env = append(without(os.Environ(), machineSettings), "GOOS=wasip1", "GOARCH=wasm")
	if said, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// BenchmarkEngineSize tells what the engine weighs, packed, beside an engine
// that does nothing, and each room's share of its code.
func BenchmarkEngineSize(b *testing.B) {
	wasm, err := Engine("../..")
	if err != nil {
		b.Fatal(err)
	}
	bare, err := Engine(smallModule(b, "//go:wasmexport twice\nfunc twice(n int32) int32 { return 2 * n }\n"))
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := PackEngine(wasm); err != nil {
			b.Fatal(err)
		}
	}
	fmt.Println(budget.Line("the engine, packed", packed(b, wasm)/1e3, "kB", fmt.Sprintf("%.0f kB", packed(b, bare)/1e3), 800))
	list, err := rooms(named(b, "../.."))
	if err != nil {
		b.Fatal(err)
	}
	all := 0
	for _, r := range list {
		all += r.bytes
	}
	for _, r := range list[:min(28, len(list))] {
		fmt.Printf("  room %-24s %9.1f kB of code %5.1f %%\n", r.name, float64(r.bytes)/1e3, 100*float64(r.bytes)/float64(all))
	}
}

func packed(b *testing.B, data []byte) float64 {
	var out bytes.Buffer
	w, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		b.Fatal(err)
	}
	if _, err := w.Write(data); err != nil {
		b.Fatal(err)
	}
	if err := w.Close(); err != nil {
		b.Fatal(err)
	}
	return float64(out.Len())
}
