package bundle

import (
	"bytes"
	"compress/gzip"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// wasmMagic begins every WebAssembly file.
var wasmMagic = []byte("\x00asm")

// PackEngine is the engine in gzip: a quarter of its size, unpacked by the page
// itself, so that it does not hang on whether a server packs what it sends.
func PackEngine(wasm []byte) ([]byte, error) {
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
	return packed.Bytes(), nil
}

// UnpackEngine takes the engine out of what PackEngine has made.
func UnpackEngine(packed []byte) ([]byte, error) {
	unzip, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, fmt.Errorf("the packed engine cannot be read: %w", err)
	}
	wasm, err := io.ReadAll(unzip)
	if err != nil {
		return nil, fmt.Errorf("the packed engine cannot be read to its end: %w", err)
	}
	return wasm, nil
}

// EngineScript wraps the packed engine into a classic script, the only thing
// that a page opened by double click can load: columnbowlEngine("<base64>").
func EngineScript(packed []byte) []byte {
	script := []byte(`columnbowlEngine("`)
	script = base64.StdEncoding.AppendEncode(script, packed)
	return append(script, "\")\n"...)
}

// BookScript wraps the packed book into a classic script:
// columnbowlBook("<the pack as a JSON string>").
func BookScript(pack []byte) ([]byte, error) { return handing("columnbowlBook", pack) }

// PackScript wraps a pack that some pages need beside the book:
// columnbowlPack("<the pack as a JSON string>").
func PackScript(pack []byte) ([]byte, error) { return handing("columnbowlPack", pack) }

// handing writes a script that hands one text to one function.
func handing(function string, pack []byte) ([]byte, error) {
	var b bytes.Buffer
	b.WriteString(function + "(")
	enc := json.NewEncoder(&b)
	// It is a file of its own, not a piece of HTML: < and > may stay.
	enc.SetEscapeHTML(false)
	if err := enc.Encode(string(pack)); err != nil {
		return nil, err
	}
	return append(bytes.TrimSuffix(b.Bytes(), []byte("\n")), ")\n"...), nil
}
