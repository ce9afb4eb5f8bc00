package report

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"suffice/site/weather"
)

// Record prints what a weather record truly holds, for people.
func Record(out io.Writer, s *weather.Summary) error {
	w := &lines{to: out}
	w.line("%s, %s to %s", s.Format, s.First, s.Last)
	if s.Latitude != nil && s.Longitude != nil {
		w.line("at latitude %.3f, longitude %.3f degrees", *s.Latitude, *s.Longitude)
	} else {
		w.line("the file names no place")
	}
	rows := fmt.Sprintf("%d days", s.Days)
	if s.Hours > 0 {
		rows = fmt.Sprintf("%d hours", s.Hours)
	}
	w.line("%s\n", rows)
	w.line("%-18s %10s %10s %10s  %-10s %8s", "column", "least", "mean", "most", "unit", "missing")
	for _, name := range slices.Sorted(maps.Keys(s.Columns)) {
		c := s.Columns[name]
		w.line("%-18s %10.2f %10.2f %10.2f  %-10s %8d", name, c.Min, c.Mean, c.Max, c.Unit, c.Missing)
	}
	w.line("")
	if r := s.Rain; r != nil {
		w.line("rain: %.0f mm a year in %d complete years; the least %.0f (%d), the most %.0f (%d)",
			r.Mean, r.CompleteYears, r.Min, r.MinYear, r.Max, r.MaxYear)
	} else {
		w.line("rain: no complete year")
	}
	if s.Global != nil {
		w.line("light on the level: %.0f kWh/m2 a year", *s.Global)
	}
	if s.LongestDry != nil {
		w.line("longest dry spell: %d days under %d mm", *s.LongestDry, weather.DryDay)
	}
	w.frost(s.Frost)
	w.monthly(s.Months)
	w.spells(fmt.Sprintf("Longest dry spells (days under %d mm in a row, in complete years)", weather.DryDay), s.DrySpells)
	if s.DullDays != nil {
		w.spells(fmt.Sprintf("Longest dull spells (days under %g of the light outside the air; %.0f such a year)", weather.DullDay, *s.DullDays), s.DullSpells)
	}
	w.driest(s.DriestRuns)
	w.line("")
	w.gaps(s.Gaps)
	w.list("Notes", s.Notes)
	w.list("Look at this", s.Warnings)
	return w.err
}

const mostGaps = 12

func (w *lines) gaps(gaps []weather.Gap) {
	if len(gaps) == 0 {
		w.line("gaps: none")
		return
	}
	w.line("gaps: %d", len(gaps))
	for i, g := range gaps {
		if i == mostGaps {
			w.line("  and %d more (--json lists all)", len(gaps)-mostGaps)
			break
		}
		w.line("  %s: %s to %s, %d rows", g.Column, g.First, g.Last, g.Rows)
	}
}

// lines writes lines and keeps the first error.
type lines struct {
	to  io.Writer
	err error
}

func (w *lines) line(format string, args ...any) {
	if w.err == nil {
		_, w.err = fmt.Fprintln(w.to, strings.TrimRight(fmt.Sprintf(format, args...), " "))
	}
}

func (w *lines) list(title string, items []string) {
	if len(items) == 0 {
		return
	}
	w.line("\n%s", title)
	for _, item := range items {
		for i, l := range wrap(item, 76) {
			w.line("%s%s", [2]string{"  - ", "    "}[min(i, 1)], l)
		}
	}
}

// wrap breaks a text into lines of at most so many columns, at spaces.
func wrap(text string, width int) []string {
	var out []string
	line := ""
	for word := range strings.FieldsSeq(text) {
		if line != "" && len([]rune(line))+1+len([]rune(word)) > width {
			out = append(out, line)
			line = ""
		}
		line = strings.TrimSpace(line + " " + word)
	}
	if line != "" {
		out = append(out, line)
	}
	return out
}
