package waste

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"suffice/quantity"
)

// A Setback is the least distance between a part of the works and something else.
type Setback struct {
	From  string  // "tank" or "field"
	To    string  // "well", "stream", "building", "trees"...
	Least float64 // m; for "water table", measured downwards
}

// A SetbackTable is one place's list. The user replaces it with the local one.
type SetbackTable struct {
	Name, Source string
	Rows         []Setback
}

const foot = 0.3048 // m, exact by definition

// SetbackTables lists three places' distances.
func SetbackTables() []SetbackTable {
	return []SetbackTable{
		{"usa-county", "us-county-septic: table I, least distances; seen", []Setback{
			{"tank", "well", 50 * foot}, {"field", "well", 100 * foot}, {"tank", "public well", 300 * foot}, {"field", "public well", 300 * foot},
			{"tank", "stream", 50 * foot}, {"field", "stream", 50 * foot}, {"tank", "boundary", 10 * foot}, {"field", "boundary", 10 * foot},
			{"tank", "building", 5 * foot}, {"field", "building", 15 * foot}, {"tank", "basement", 15 * foot}, {"field", "basement", 25 * foot},
			{"tank", "ditch", 25 * foot}, {"field", "ditch", 25 * foot}, {"tank", "suction pipe", 50 * foot}, {"field", "suction pipe", 100 * foot},
			{"tank", "water pipe", 10 * foot}, {"field", "water pipe", 10 * foot}}},
		{"england", "ad-h2: with bs6297, seen as quoted", []Setback{
			{"field", "stream", 10}, {"field", "well", 50}, {"field", "building", 15}, {"field", "water table", 1.2}}},
		{"india", "is2470: summary; seen", []Setback{
			{"field", "well", 18}, {"field", "building", 5}, {"field", "trees", 3}, {"field", "water table", 1.5}}},
	}
}

// ReadSetbacks reads a table as a person writes it, "field to well 30 m, tank to building 1.5 m". All faults come at once.
func ReadSetbacks(text string) ([]Setback, error) {
	var rows []Setback
	var faults []error
	for part := range strings.SplitSeq(text, ",") {
		row, err := readSetback(part)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		rows = append(rows, row)
	}
	return rows, errors.Join(faults...)
}

func readSetback(part string) (Setback, error) {
	part = strings.TrimSpace(part)
	from, rest, found := strings.Cut(part, " to ")
	if from = strings.TrimSpace(from); !found || from != "tank" && from != "field" {
		return Setback{}, fmt.Errorf("setback %q does not begin with \"tank to\" or \"field to\": write for example field to well 30 m", part)
	}
	at := strings.IndexAny(rest, "0123456789-+.")
	if at <= 0 || strings.TrimSpace(rest[:at]) == "" {
		return Setback{}, fmt.Errorf("setback %q names no thing and distance: write for example field to well 30 m", part)
	}
	m, err := quantity.ReadIn(rest[at:], "m")
	if err != nil {
		return Setback{}, fmt.Errorf("setback %q: %w", part, err)
	}
	if m < 0 || m > 10000 {
		return Setback{}, fmt.Errorf("setback %q: %g m is outside 0 to 10000 m", part, m)
	}
	return Setback{From: from, To: strings.TrimSpace(rest[:at]), Least: m}, nil
}

// A Breach is a distance of the plan that a table forbids.
type Breach struct {
	Setback
	Planned float64 // m
}

// Breaches holds a plan's distances (Least is what is planned) against a table. A row of the plan that the table does not
// know is not judged: so the flush well at the planter's end, a lined basin, is never taken for a groundwater well.
func Breaches(table, plan []Setback) []Breach {
	var out []Breach
	for _, p := range plan {
		i := slices.IndexFunc(table, func(s Setback) bool { return s.From == p.From && s.To == p.To })
		if i >= 0 && p.Least < table[i].Least {
			out = append(out, Breach{table[i], p.Least})
		}
	}
	return out
}

// TreeConflict says in words, for every table, what it makes of trees that stand a distance in metres
// from the field, 0 being on it. Empty where no table objects.
func TreeConflict(metres float64) []string {
	var out []string
	for _, t := range SetbackTables() {
		for _, b := range Breaches(t.Rows, []Setback{{"field", "trees", metres}}) {
			out = append(out, fmt.Sprintf("trees at %g m from the drain trench: %s asks for at least %g m, since roots grow into pipes and gravel", metres, t.Name, b.Least))
		}
	}
	return out
}
