package files

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"suffice/site/weather"
)

const (
	// mostFaults is how many faults of one file are told before reading stops.
	mostFaults = 5
	// mostYears is how long a record may be: the longest instrumental ones begin in the
	// 1650s. mostJump is how many years may be missing in one piece. Both keep a short file
	// with a wrong date from asking for gigabytes.
	mostYears = 400
	mostJump  = 20
)

// A table grows a record row by row on an even axis of time.
type table struct {
	src    *source
	step   weather.Step
	start  int // steps from the calendar's beginning to row 0
	lines  []int32
	series []weather.Series
	faults []error
}

// add takes a column in.
func (t *table) add(c weather.Column, source, unit string) {
	t.series = append(t.series, weather.Series{Column: c, Source: source, Unit: unit})
}

// each gives the rows of a table that has so many columns, to the end of the file or
// until there are faults enough.
func (t *table) each(columns int, take func(row []string)) {
	for !t.tired() {
		line, ok := t.src.nextRow()
		if !ok {
			return
		}
		row := strings.Split(line, ",")
		if len(row) != columns {
			t.fault("there are %d columns, not %d: the row is cut short or the file damaged, fetch it again", len(row), columns)
			continue
		}
		take(row)
	}
}

// row opens the row of a time and reports whether values may be set in it. Rows that the
// file leaves out stay missing; rows out of order or twice are faults.
func (t *table) row(stamp int) bool {
	if len(t.lines) == 0 {
		t.start = stamp
	}
	last := t.start + len(t.lines) - 1
	switch {
	case len(t.lines) > 0 && stamp == last:
		t.fault("%s stands twice, first on line %d: take one of the rows out", t.when(stamp), t.lines[len(t.lines)-1])
		return false
	case stamp < last:
		t.fault("%s comes after %s: put the rows in the order of time", t.when(stamp), t.when(last))
		return false
	case len(t.lines) > 0 && stamp-last > mostJump*366*t.perDay():
		t.fault("%s is more than %d years after the row before it, %s: look at the date, or cut the record in two", t.when(stamp), mostJump, t.when(last))
		return false
	case stamp-t.start > mostYears*366*t.perDay():
		t.fault("%s is more than %d years after the first row: look at the date", t.when(stamp), mostYears)
		return false
	}
	for t.start+len(t.lines) < stamp {
		t.extend(0)
	}
	t.extend(int32(t.src.line))
	return true
}

func (t *table) extend(line int32) {
	t.lines = append(t.lines, line)
	for i := range t.series {
		t.series[i].Values = append(t.series[i].Values, math.NaN())
	}
}

// set puts a value of series i into the row last opened.
func (t *table) set(i int, value float64) {
	v := t.series[i].Values
	v[len(v)-1] = value
}

func (t *table) perDay() int {
	if t.step == weather.Daily {
		return 1
	}
	return 24
}

// when writes a stamp for a person.
func (t *table) when(stamp int) string {
	d := weather.DayOf(stamp / t.perDay())
	date := fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Date)
	if t.step == weather.Hourly {
		return fmt.Sprintf("%s hour %d", date, stamp%24)
	}
	return date
}

func (t *table) fault(format string, args ...any) {
	t.faults = append(t.faults, t.src.at(format, args...))
}

// tired reports whether enough faults are known to stop reading.
func (t *table) tired() bool { return len(t.faults) >= mostFaults || t.src.failed != nil }

// finish puts the rows into a record, or tells all faults.
func (t *table) finish(r *weather.Record) error {
	if t.src.failed != nil {
		t.faults = append(t.faults, t.src.failed)
	}
	if len(t.faults) >= mostFaults {
		t.faults = append(t.faults, fmt.Errorf("%s: reading stopped after %d faults", t.src.name, len(t.faults)))
	}
	if len(t.faults) > 0 {
		return errors.Join(t.faults...)
	}
	if len(t.lines) == 0 {
		return fmt.Errorf("%s: no row of weather follows line %d: the file is cut short, fetch it again", t.src.name, t.src.line)
	}
	r.File, r.Step, r.Steps, r.Series = t.src.name, t.step, len(t.lines), t.series
	r.Start = t.start / t.perDay()
	r.StartHour = t.start % t.perDay()
	for i := range r.Series {
		r.Series[i].Lines = t.lines
	}
	return nil
}

// number reads a field that must hold a finite decimal number.
func number(field string) (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(field), 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return 0, fmt.Errorf("%q is not a number", clip(field))
	}
	return v, nil
}

// whole reads a field that must hold a whole number between bounds.
func whole(field string, low, high int) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(field))
	if err != nil || n < low || n > high {
		return 0, fmt.Errorf("%q is not a whole number from %d to %d", clip(field), low, high)
	}
	return n, nil
}

// clip keeps a quoted piece of a file short.
func clip(text string) string {
	if r := []rune(text); len(r) > 40 {
		return string(r[:40]) + "..."
	}
	return text
}
