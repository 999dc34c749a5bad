package bindery

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// writesFor names the folder in the environment of the process that is killed.
const writesFor = "COLUMNBOWL_TEST_WRITES"

// many is an edition of so many files that a kill falls into its writing.
func many(word string) *Edition {
	e := edition(word)
	for i := range 150 {
		e.Files = append(e.Files, File{fmt.Sprintf("terms/level-%03d.html", i), []byte(strings.Repeat("level "+word+" ", 300))})
	}
	return e
}

// TestMain runs the tests, or is the process that TestKilled kills.
func TestMain(m *testing.M) {
	if dir := os.Getenv(writesFor); dir != "" {
		writeUntilKilled(dir)
	}
	os.Exit(m.Run())
}

func writeUntilKilled(dir string) {
	fmt.Println("writing")
	for n := 0; ; n++ {
		if err := Write(many(fmt.Sprint(n)), dir); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
	}
}

// TestKilled kills processes that write one edition over the other, each a
// little later than the one before. Whenever it falls, one whole edition is
// there, and the next bind puts everything in order.
func TestKilled(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	if err := Write(many("first"), dir); err != nil {
		t.Fatal(err)
	}
	for n := range 12 {
		killAfter(t, dir, time.Duration(n)*1700*time.Microsecond)
		wholeSomewhere(t, dir)
	}
	if err := Write(many("last"), dir); err != nil {
		t.Fatal(err)
	}
	holds(t, dir, many("last"))
	alone(t, dir)
}

func killAfter(t *testing.T, dir string, delay time.Duration) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), writesFor+"="+dir)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	if !bufio.NewScanner(out).Scan() {
		t.Error("the process has written nothing")
	}
	time.Sleep(delay)
	if err := cmd.Process.Kill(); err != nil {
		t.Error(err)
	}
	cmd.Wait()
	if cmd.ProcessState.Exited() {
		t.Errorf("the process ended by itself before it was killed: %v", cmd.ProcessState)
	}
}

// wholeSomewhere checks that an edition is whole: in its place, or moved aside if
// the kill fell between the two renames.
func wholeSomewhere(t *testing.T, dir string) {
	t.Helper()
	if _, err := os.Stat(dir); err != nil {
		dir += ".old"
	}
	text, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil {
		t.Fatalf("no edition is left: %v", err)
	}
	holds(t, dir, many(strings.TrimPrefix(string(text), "home ")))
}
