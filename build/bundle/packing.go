package bundle

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"encoding/json"
	"errors"
)

// wasmMagic begins every WebAssembly file.
var wasmMagic = []byte("\x00asm")

// EngineScript wraps the engine into a classic script, the only thing that a
// page opened by double click can load: columnbowlEngine("<base64 of gzip>").
func EngineScript(wasm []byte) ([]byte, error) {
	if !bytes.HasPrefix(wasm, wasmMagic) {
		return nil, errors.New("the engine is not a WebAssembly file: it does not begin with the four bytes 00 61 73 6d")
	}
	var packed bytes.Buffer
	// The header of gzip stays empty (no time, no name): same engine, same bytes.
	zip, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := zip.Write(wasm); err != nil {
		return nil, err
	}
	if err := zip.Close(); err != nil {
		return nil, err
	}
	script := []byte(`columnbowlEngine("`)
	script = base64.StdEncoding.AppendEncode(script, packed.Bytes())
	return append(script, "\")\n"...), nil
}

// BookScript wraps the packed book into a classic script:
// columnbowlBook("<the pack as a JSON string>").
func BookScript(pack []byte) ([]byte, error) { return dataScript("columnbowlBook", pack) }

// WordsScript wraps the data for searching and asking into a classic script:
// columnbowlWords("<the pack as a JSON string>").
func WordsScript(pack []byte) ([]byte, error) { return dataScript("columnbowlWords", pack) }

func dataScript(name string, pack []byte) ([]byte, error) {
	var b bytes.Buffer
	b.WriteString(name + "(")
	enc := json.NewEncoder(&b)
	// It is a file of its own, not a piece of HTML: < and > may stay.
	enc.SetEscapeHTML(false)
	if err := enc.Encode(string(pack)); err != nil {
		return nil, err
	}
	return append(bytes.TrimSuffix(b.Bytes(), []byte("\n")), ")\n"...), nil
}
