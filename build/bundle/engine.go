package bundle

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// enginePackage is the door of the engine to the page.
const enginePackage = "./calcwasm"

// machineSettings would change the bytes of the engine from one machine to the
// next, so they are not handed on to the go command.
var machineSettings = []string{"GOOS", "GOARCH", "GOAMD64", "GOARM64", "GOWASM", "GOEXPERIMENT", "GOFLAGS", "CGO_ENABLED", "GOWORK"}

// lean keeps functions from being inlined, which makes the packed engine an
// eighth smaller, except where a keystroke spends its time: in the runtime's
// memory and in solving. With these the chain is solved in 0.9 ms instead of
// 1.5, for 40 kB (of 1.3 MB); with all inlined in 0.8 ms, for 180 kB.
var lean = []string{"-gcflags=all=-l", "-gcflags=runtime=", "-gcflags=internal/runtime/...=",
	"-gcflags=columnbowl/calcwasm/formula=", "-gcflags=columnbowl/calcwasm/reckon="}

// Engine builds the engine for the page from the module in moduleDir: a wasip1
// reactor. It needs the go command. Same sources and same Go give same bytes:
// no paths, no build id, no version control stamp.
func Engine(moduleDir string) (wasm []byte, err error) {
	tool, err := exec.LookPath("go")
	if err != nil {
		return nil, errors.New("the engine of the page is built with the go command, and it is not installed (or not on the PATH). " +
			"Install Go (the version stands in go.mod), or hand over an engine that is built already: --engine FILE")
	}
	folder, err := os.MkdirTemp("", "columnbowl-engine-")
	if err != nil {
		return nil, fmt.Errorf("no room for building the engine: %w", err)
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	out := filepath.Join(folder, "engine.wasm")
	cmd := exec.Command(tool, append(append([]string{"build", "-trimpath", "-buildvcs=false", "-buildmode=c-shared", "-ldflags=-s -w -buildid="},
		lean...), "-o", out, enginePackage)...)
	cmd.Dir = moduleDir
	cmd.Env = append(without(os.Environ(), machineSettings), "GOOS=wasip1", "GOARCH=wasm")
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("the engine of the page cannot be built in %s: %w\n%s", moduleDir, err, strings.TrimRight(said.String(), "\n"))
	}
	return os.ReadFile(out)
}

// without drops variables from an environment.
func without(environment, names []string) []string {
	var kept []string
next:
	for _, line := range environment {
		for _, n := range names {
			if strings.HasPrefix(line, n+"=") {
				continue next
			}
		}
		kept = append(kept, line)
	}
	return kept
}
