// Command tally reads what go test -json prints, shows what a person wants to see of
// it, and ends with one line that counts the tests: "812 passed, 0 failed".
//
//	go test -json ./... | go run ./internal/tally [-o FILE]
//
// It shows the line of every package and all that a failed test said. Tests inside
// tests count one each. It ends with exit code 1 if anything failed or nothing ran.
package main

import (
	"bufio"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
)

func main() {
	file := flag.String("o", "", "also write the closing line to this file")
	flag.Parse()
	t, err := read(os.Stdin, os.Stdout)
	if err == nil && *file != "" {
		err = os.WriteFile(*file, []byte(t.String()+"\n"), 0o600)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Println(t)
	if t.failed > 0 || t.passed == 0 {
		os.Exit(1)
	}
}

// An event is one line of go test -json.
type event struct {
	Action, Package, ImportPath, Test, Output string
}

// A test is known by its package and name; the package itself has no name.
type test struct{ pkg, name string }

// A tally counts how tests ended.
type tally struct{ passed, failed, skipped int }

func (t tally) String() string {
	if t.skipped > 0 {
		return fmt.Sprintf("%d passed, %d failed, %d skipped", t.passed, t.failed, t.skipped)
	}
	return fmt.Sprintf("%d passed, %d failed", t.passed, t.failed)
}

// read counts the events of a run and shows the lines worth seeing.
func read(from io.Reader, to io.Writer) (tally, error) {
	var t tally
	said := make(map[test][]string)
	failedIn := make(map[string]int) // failed tests by package
	lines := bufio.NewScanner(from)
	lines.Buffer(nil, 1<<26)
	for lines.Scan() {
		var e event
		if err := json.Unmarshal(lines.Bytes(), &e); err != nil {
			fmt.Fprintln(to, lines.Text()) // the go tool itself speaks
			continue
		}
		if e.Action == "build-output" {
			fmt.Fprint(to, e.Output)
			continue
		}
		key := test{e.Package, e.Test}
		switch {
		case e.Action == "output" && (e.Test != "" || !closing(e.Output)):
			said[key] = append(said[key], e.Output)
		case e.Action == "output":
			fmt.Fprint(to, e.Output)
		case e.Action == "fail" && e.Test == "" && failedIn[e.Package] == 0: // it did not build, or died
			t.failed++
			fmt.Fprint(to, strings.Join(said[key], ""))
		case e.Action == "fail" && e.Test != "":
			t.failed++
			failedIn[e.Package]++
			fmt.Fprint(to, strings.Join(said[key], ""))
		case e.Action == "pass" && e.Test != "":
			t.passed++
		case e.Action == "skip" && e.Test != "":
			t.skipped++
		}
		if e.Action == "pass" || e.Action == "fail" || e.Action == "skip" {
			delete(said, key)
		}
	}
	return t, lines.Err()
}

// closing reports whether a package's line is the one that ends it.
func closing(line string) bool {
	for _, start := range []string{"ok  \t", "FAIL\t", "?   \t", "---"} {
		if strings.HasPrefix(line, start) {
			return true
		}
	}
	return false
}
