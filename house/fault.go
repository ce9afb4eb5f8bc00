package house

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// mostFaults is how many faults are told at once; more are of the same few kinds.
const mostFaults = 100

// A Fault is one thing wrong with a house file.
type Fault struct {
	File   string
	Line   int    // from 1
	Column int    // from 1, in characters
	Where  string // such as water.tanks[0].holds, counted from 0; "" for the file as a whole
	Says   string // what, the value, the limit, the remedy
}

// Error gives the fault on one line.
func (f Fault) Error() string {
	if f.Where == "" {
		return fmt.Sprintf("%s:%d:%d: %s", f.File, f.Line, f.Column, f.Says)
	}
	return fmt.Sprintf("%s:%d:%d: %s: %s", f.File, f.Line, f.Column, f.Where, f.Says)
}

// Faults is everything wrong with a house file, in the order of its lines.
type Faults []Fault

// Error gives one line a fault.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, one := range f {
		lines[i] = one.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives each Fault as an error of its own.
func (f Faults) Unwrap() []error {
	each := make([]error, len(f))
	for i, one := range f {
		each[i] = one
	}
	return each
}

// told sorts the faults and gives nil for none. What stands behind the first hundred
// is counted in a last line.
func (f Faults) told() error {
	if len(f) == 0 {
		return nil
	}
	sorted := slices.Clone(f)
	slices.SortStableFunc(sorted, func(a, b Fault) int {
		return cmp.Or(a.Line-b.Line, a.Column-b.Column, strings.Compare(a.Where, b.Where))
	})
	if len(sorted) > mostFaults {
		rest := sorted[mostFaults]
		rest.Where, rest.Says = "", fmt.Sprintf("%d more faults from here on: mend those above first", len(sorted)-mostFaults)
		sorted = append(sorted[:mostFaults], rest)
	}
	return sorted
}
