// Package layers holds the order of the module's packages as a list, and the test
// that keeps it. A package imports only from shelves above its own line, and
// packages on one line never import each other: what two of them share is either
// physics (it goes on a lower shelf) or a meeting in the hour (it goes to hourly).
//
// Do not move a line to make a build pass. Ask first whether the import is right.
package layers

import "strings"

// Shelves lists the packages, one shelf a line, lowest first. "planned" before a
// name says that the folder is still to come.
const Shelves = `
quantity, examples, internal/words
sheet, internal/check/table, internal/solve, draw/canvas
site, site/air, site/rain, material, internal/reduce
site/sun, gas, pump, glass, soil
site/evap, crop
site/weather
site/weather/files
site/weather/synth, site/weather/fetch
warmth/ground, warmth/fabric, warmth/vent, warmth/comfort, warmth/light
people, water, power, hotwater, reuse, waste, warmth, stove, garden, planned build, planned journal
planned money, planned journal/sqlite, planned meters
house
hourly
planned size, planned advise
sheets, report
draw, draw/section
web
cli
cmd/suffice
`

// Workshop lists the packages that only tests and generators use. They may import
// anything; of the house, only test files may import them.
const Workshop = `internal/check internal/check/gen internal/layers internal/mutants internal/tally internal/tidy internal/tree`

// A Shelf says where a package stands.
type Shelf struct {
	Line    int // 0 is the lowest
	Planned bool
}

// Read gives the shelf of every package in a list written as Shelves is.
func Read(list string) map[string]Shelf {
	shelves := make(map[string]Shelf)
	for line, names := range strings.Split(strings.TrimSpace(list), "\n") {
		for name := range strings.SplitSeq(names, ",") {
			name, planned := strings.CutPrefix(strings.TrimSpace(name), "planned ")
			shelves[name] = Shelf{Line: line, Planned: planned}
		}
	}
	return shelves
}
