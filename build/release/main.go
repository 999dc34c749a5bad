// Command release builds the programs that are handed to people without Go: one
// executable for each common system, with the content of the handbook, the
// published values and the engine of the page inside. It is run in the project's
// folder:
//
//	go run ./build/release [-out DIR] [-only SYSTEM/PROCESSOR]
//
// Beside the programs it writes checksums.txt, their SHA-256 sums in the form
// that sha256sum -c reads. Same sources and same Go give same bytes.
package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"columnbowl/build/bundle"
	"columnbowl/build/carried"
)

// systems are those that programs are built for.
var systems = []string{"darwin/amd64", "darwin/arm64", "linux/amd64", "linux/arm64", "windows/amd64", "windows/arm64"}

func main() {
	out := flag.String("out", "release", "the folder to write")
	only := flag.String("only", "", "one system alone, such as linux/amd64")
	flag.Parse()
	list := systems
	if *only != "" {
		list = []string{*only}
	}
	if err := release(*out, list, final); err != nil {
		fmt.Fprintf(os.Stderr, "release: %v\n", err)
		os.Exit(1)
	}
}

// settings are what the go command is told beside the system.
type settings struct{ flags, env []string }

// final are those of the programs that are handed out: static, small, and
// without paths of this machine.
var final = settings{[]string{"-trimpath", "-ldflags", "-s -w -buildid="}, []string{"CGO_ENABLED=0", "GOFLAGS="}}

func release(dir string, list []string, how settings) error {
	work, err := os.MkdirTemp("", "columnbowl-release-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	overlay, err := prepare(work)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	var sums strings.Builder
	for _, system := range list {
		name, err := build(dir, system, overlay, how)
		if err != nil {
			return err
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			return err
		}
		fmt.Printf("%-32s %6.2f MB\n", name, float64(len(data))/1e6)
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(data), name)
	}
	return os.WriteFile(filepath.Join(dir, "checksums.txt"), []byte(sums.String()), 0o644)
}

// prepare makes the archive of what the programs carry, and tells the go command
// to see it in the folder of the package that embeds it. The project itself is
// left as it is.
func prepare(work string) (overlay string, err error) {
	wasm, err := bundle.Engine(".")
	if err != nil {
		return "", err
	}
	engine, err := bundle.PackEngine(wasm)
	if err != nil {
		return "", err
	}
	archive, err := carried.Pack(os.DirFS("content"), os.DirFS(filepath.FromSlash("testdata/published/checks")), engine)
	if err != nil {
		return "", err
	}
	file := filepath.Join(work, "carried.zip")
	if err := os.WriteFile(file, archive, 0o644); err != nil {
		return "", err
	}
	seen, err := filepath.Abs(filepath.FromSlash("build/carried/carried.zip"))
	if err != nil {
		return "", err
	}
	text, err := json.Marshal(map[string]map[string]string{"Replace": {seen: file}})
	if err != nil {
		return "", err
	}
	overlay = filepath.Join(work, "overlay.json")
	return overlay, os.WriteFile(overlay, text, 0o644)
}

// build builds the program for one system.
func build(dir, system, overlay string, how settings) (name string, err error) {
	goos, goarch, ok := strings.Cut(system, "/")
	if !ok {
		return "", errors.New("a system is named with its processor, such as linux/amd64, not " + system)
	}
	name = "columnbowl-" + goos + "-" + goarch
	if goos == "windows" {
		name += ".exe"
	}
	args := append([]string{"build", "-tags", "release", "-overlay", overlay, "-buildvcs=false", "-o", filepath.Join(dir, name)}, how.flags...)
	cmd := exec.Command("go", append(args, "./build")...)
	cmd.Env = append(append(os.Environ(), "GOOS="+goos, "GOARCH="+goarch), how.env...)
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	if err := cmd.Run(); err != nil {
		return "", fmt.Errorf("%s cannot be built: %w\n%s", name, err, said.String())
	}
	return name, nil
}
