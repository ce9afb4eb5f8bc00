// Package mutants breaks the program on purpose, one line at a time, and demands
// that the tests notice: a law that cannot fail is worth nothing.
//
// list.txt names each mutant: the file, the text before and after, why it matters,
// and the package whose tests must fail. The files on disk are never touched: the go
// tool lays the broken text over the real one (go test -overlay).
package mutants

import (
	_ "embed"
	"fmt"
	"strings"
)

//go:embed list.txt
var list string

// A Mutant is one deliberate fault.
type Mutant struct {
	Why    string // what the fault would do to a resident
	File   string // slashes, from the module's root
	Before string // stands exactly once in File
	After  string
	Test   string // package whose tests must fail, "./water"
	Run    string // which of its tests must fail, as for go test -run; "" for any
}

// All gives the committed mutants.
func All() ([]Mutant, error) { return Read(list) }

// Read reads a list written as list.txt is: blocks apart by blank lines, a line
// "name: text" for every field, and "#" before remarks. A field given again goes on
// with a further line, so that Before and After may have several.
func Read(text string) ([]Mutant, error) {
	var all []Mutant
	for block := range strings.SplitSeq(text, "\n\n") {
		m, err := readBlock(block)
		if err != nil {
			return nil, fmt.Errorf("mutant %d: %w", len(all)+1, err)
		}
		if m != (Mutant{}) {
			all = append(all, m)
		}
	}
	return all, nil
}

func readBlock(block string) (Mutant, error) {
	var m Mutant
	fields := map[string]*string{"why": &m.Why, "file": &m.File, "before": &m.Before, "after": &m.After, "test": &m.Test, "run": &m.Run}
	seen := make(map[string]bool)
	for line := range strings.SplitSeq(block, "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, text, found := strings.Cut(line, ":")
		field := fields[name]
		if !found || field == nil {
			return m, fmt.Errorf("line %q does not begin with why, file, before, after, test or run", line)
		}
		if seen[name] {
			*field += "\n"
		}
		*field += strings.TrimPrefix(text, " ")
		seen[name] = true
	}
	for _, name := range []string{"why", "file", "before", "after", "test"} {
		if len(seen) > 0 && !seen[name] {
			return m, fmt.Errorf("%s has no line %q", m.File, name+":")
		}
	}
	return m, nil
}

// Apply gives the source with the fault in it.
func (m Mutant) Apply(source string) (string, error) {
	switch n := strings.Count(source, m.Before); {
	case n != 1:
		return "", fmt.Errorf("%s holds %q %d times, want once", m.File, m.Before, n)
	case m.Before == m.After:
		return "", fmt.Errorf("%s: the text after is the text before", m.File)
	}
	return strings.Replace(source, m.Before, m.After, 1), nil
}
