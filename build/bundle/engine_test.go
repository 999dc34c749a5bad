package bundle

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// smallModule writes a module with an engine of a few lines.
func smallModule(t testing.TB, body string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{
		"go.mod":           "module small\n\ngo 1.26\n",
		"calcwasm/main.go": "package main\n\nfunc main() {}\n\n" + body,
	} {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func TestEngineSameBytesFromAnyFolder(t *testing.T) {
	const body = "//go:wasmexport twice\nfunc twice(n int32) int32 { return 2 * n }\n"
	t.Setenv("GOAMD64", "v3")
	one, err := Engine(smallModule(t, body))
	if err != nil {
		t.Fatal(err)
	}
	two, err := Engine(smallModule(t, body))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(one, wasmMagic) || !bytes.Equal(one, two) {
		t.Errorf("the engine (%d and %d bytes) is not WebAssembly or differs between folders", len(one), len(two))
	}
}

func TestEngineErrors(t *testing.T) {
	_, err := Engine(smallModule(t, "func broken() int32 { return }\n"))
	if err == nil || !strings.Contains(err.Error(), "main.go:5:") {
		t.Errorf("want the place in main.go, got: %v", err)
	}
	t.Setenv("PATH", t.TempDir())
	_, err = Engine(t.TempDir())
	if err == nil || !strings.Contains(err.Error(), "Install Go") || !strings.Contains(err.Error(), "--engine FILE") {
		t.Errorf("without the go command the error must say what to install, got: %v", err)
	}
}

// call takes the text out of name("…").
func call(t *testing.T, script []byte, name string) string {
	t.Helper()
	text, ok := strings.CutPrefix(string(script), name+"(")
	text, ok2 := strings.CutSuffix(text, ")\n")
	if !ok || !ok2 {
		t.Fatalf("not a call of %s: %.60s…", name, script)
	}
	var out string
	if err := json.Unmarshal([]byte(text), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func TestEngineScriptUnpacks(t *testing.T) {
	wasm := append([]byte("\x00asm\x01\x00\x00\x00"), bytes.Repeat([]byte{7, 0, 255}, 5000)...)
	file, err := PackEngine(wasm)
	if err != nil {
		t.Fatal(err)
	}
	packed, err := base64.StdEncoding.DecodeString(call(t, EngineScript(file), "columnbowlEngine"))
	if err != nil || !bytes.Equal(packed, file) {
		t.Fatalf("the script hands over %d bytes, the file has %d, err %v", len(packed), len(file), err)
	}
	if !bytes.Equal(packed[4:8], make([]byte, 4)) {
		t.Errorf("the gzip header carries a time: % x", packed[:10])
	}
	zip, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	got, err := io.ReadAll(zip)
	if err != nil || !bytes.Equal(got, wasm) {
		t.Errorf("unpacked %d bytes, err %v", len(got), err)
	}
	if _, err := PackEngine([]byte("<html>")); err == nil {
		t.Error("a web page passed for an engine")
	}
}

func TestBookScriptKeepsEveryCharacter(t *testing.T) {
	pack := "column-and-bowl book 1\tx\nterm\t“a” </script> \u2028 \\t m³/h\n"
	script, err := BookScript([]byte(pack))
	if err != nil {
		t.Fatal(err)
	}
	if got := call(t, script, "columnbowlBook"); got != pack {
		t.Errorf("got %q, want %q", got, pack)
	}
}
