package files

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"suffice/quantity"
	"suffice/site/weather"
)

// ownFirst is the first line of a record in our own form, docs/records.md.
const ownFirst = "# weather record 1"

// markLetters are written after a value, or in the place of a missing one.
var markLetters = [weather.Marks]string{
	weather.Trace: "T", weather.Accumulated: "A", weather.Flagged: "F", weather.Presumed: "P", weather.Impossible: "X",
}

func looksOwn(lines []string) bool { return strings.HasPrefix(lines[0], "# weather record") }

// readOwn reads a record in our own form. The options serve where its header names no
// place.
func readOwn(s *source, o Options) (*weather.Record, error) {
	r := &weather.Record{File: s.name}
	if first, _ := s.next(); strings.TrimSpace(first) != ownFirst {
		return nil, s.at("%q was written by a newer program: this one knows %q", clip(first), ownFirst)
	}
	sources, err := ownHeader(s, r)
	if err != nil {
		return nil, err
	}
	if p, placed := o.place(); placed && !r.Placed {
		p.Name = r.Place.Name
		p.Clock = clockOf(r.Time, p, o)
		r.Place, r.Placed = p, true
	}
	names, ok := s.next()
	if !ok {
		return nil, errors.Join(s.failed, fmt.Errorf("%s: the file ends after its header", s.name))
	}
	t := &table{src: s, step: r.Step}
	if err := ownColumns(s, r, t, splitNames(names), sources); err != nil {
		return nil, err
	}
	marks := ownRows(t)
	if err := t.finish(r); err != nil {
		return nil, err
	}
	for i := range r.Series {
		if slices.ContainsFunc(marks[i], func(m weather.Mark) bool { return m != weather.Recorded && m != weather.Absent }) {
			r.Series[i].Marks = marks[i]
		}
	}
	return r, nil
}

// ownHeader reads the lines "# key: value".
func ownHeader(s *source, r *weather.Record) (sources map[string][2]string, err error) {
	sources = make(map[string][2]string)
	var faults []error
	coordinates := 0
	for len(faults) < mostFaults {
		line, ok := s.next()
		if !ok {
			break
		}
		if !strings.HasPrefix(line, "#") {
			s.unread(line)
			break
		}
		if s.line > mostHeader {
			faults = append(faults, s.at("the header has more than %d lines: this is no weather record", mostHeader))
			break
		}
		key, value, _ := strings.Cut(strings.TrimPrefix(line, "# "), ": ")
		var fault error
		switch key {
		case "format":
			r.Format = value
		case "name":
			r.Place.Name = value
		case "latitude":
			coordinates++
			fault = readInto(&r.Place.Latitude, value, "deg")
		case "longitude":
			coordinates++
			fault = readInto(&r.Place.Longitude, value, "deg")
		case "altitude":
			fault = readInto(&r.Place.Altitude, value, "m")
		case "clock":
			fault = readInto(&r.Place.Clock, value, "h")
		case "time":
			fault = ownTime(r, value)
		case "step":
			fault = ownStep(r, value)
		case "typical":
			fault = ownTypical(r, value)
		case "column":
			name, rest, _ := strings.Cut(value, " = ")
			source, unit, _ := strings.Cut(rest, " | ")
			sources[name] = [2]string{source, unit}
		case "unread":
			r.Unread = strings.Split(value, ", ")
		case "note":
			r.Notes = append(r.Notes, value)
		case "warning":
			r.Warnings = append(r.Warnings, value)
		default:
			fault = fmt.Errorf("%q is not known in the header", clip(key))
		}
		if fault != nil {
			faults = append(faults, s.at("%w", fault))
		}
	}
	r.Placed = coordinates == 2
	if r.Placed {
		faults = append(faults, r.Place.Faults())
	}
	return sources, errors.Join(append(faults, s.failed)...)
}

func readInto[T ~float64](to *T, text, unit string) error {
	v, err := quantity.ReadIn(text, unit)
	*to = T(v)
	return err
}

func ownTime(r *weather.Record, value string) error {
	for k := weather.UTC; k <= weather.ObservationDay; k++ {
		if k.String() == value {
			r.Time = k
			return nil
		}
	}
	return fmt.Errorf("time %q is not known", clip(value))
}

func ownStep(r *weather.Record, value string) error {
	for _, k := range []weather.Step{weather.Hourly, weather.Daily} {
		if k.String() == value {
			r.Step = k
			return nil
		}
	}
	return fmt.Errorf("step %q is neither hourly nor daily", clip(value))
}

// ownTypical reads the twelve years of a typical year's months.
func ownTypical(r *weather.Record, value string) error {
	years := strings.Fields(value)
	if len(years) != 12 {
		return fmt.Errorf("a typical year has 12 months, here are %d years", len(years))
	}
	r.Typical = true
	for m, y := range years {
		n, err := whole(y, 0, 9999)
		if err != nil {
			return err
		}
		r.MonthFrom[m] = int32(n)
	}
	return nil
}

// ownColumns reads the heads of the columns, "rain [mm/d]".
func ownColumns(s *source, r *weather.Record, t *table, head []string, sources map[string][2]string) error {
	if want := ownStamp(r.Step); head[0] != want {
		return s.at("the first column of a %s record is %q, here it is %q", r.Step, want, clip(head[0]))
	}
	var faults []error
	for _, h := range head[1:] {
		name, unit, _ := strings.Cut(strings.TrimSuffix(h, "]"), " [")
		c, ok := weather.ColumnNamed(name)
		switch {
		case !ok:
			faults = append(faults, s.at("%q is no column: there are %s", clip(name), columnNames()))
		case unit != c.Unit(r.Step):
			faults = append(faults, s.at("%s of a %s record is in %s, here it is %q", c, r.Step, c.Unit(r.Step), clip(unit)))
		case slices.ContainsFunc(t.series, func(have weather.Series) bool { return have.Column == c }):
			faults = append(faults, s.at("column %s stands twice", c))
		default:
			source := sources[name]
			if source == [2]string{} {
				source = [2]string{name, unit}
			}
			t.add(c, source[0], source[1])
		}
	}
	if len(head) < 2 {
		faults = append(faults, s.at("there is no column but the time"))
	}
	return errors.Join(faults...)
}

func ownStamp(step weather.Step) string {
	if step == weather.Hourly {
		return "hour"
	}
	return "date"
}

// ownRows reads the table, and gives the marks of every column.
func ownRows(t *table) [][]weather.Mark {
	marks := make([][]weather.Mark, len(t.series))
	t.each(len(t.series)+1, func(row []string) {
		stamp, err := ownStampOf(row[0], t.step)
		if err != nil {
			t.fault("%w", err)
			return
		}
		if !t.row(stamp) {
			return
		}
		for i := range marks {
			v, m, err := ownValue(row[i+1])
			if err != nil {
				t.fault("column %s: %w", t.series[i].Column, err)
				continue
			}
			t.set(i, v)
			for len(marks[i]) < len(t.lines)-1 { // rows that the file leaves out
				marks[i] = append(marks[i], weather.Absent)
			}
			marks[i] = append(marks[i], m)
		}
	})
	return marks
}

// ownStampOf reads 2014-01-31 or 2014-01-31T23.
func ownStampOf(text string, step weather.Step) (int, error) {
	date, clock, timed := strings.Cut(text, "T")
	year, month, day, err := isoDate(date)
	if err != nil {
		return 0, err
	}
	if !weather.ValidDate(year, month, day) {
		return 0, fmt.Errorf("there is no %s", clip(date))
	}
	number := weather.DayNumber(year, month, day)
	if step == weather.Daily {
		if timed {
			return 0, fmt.Errorf("%q has an hour in a daily record", clip(text))
		}
		return number, nil
	}
	hour, err := whole(clock, 0, 23)
	return number*24 + hour, err
}

// ownValue reads "0.21", "0T" or "P".
func ownValue(field string) (float64, weather.Mark, error) {
	if field == "" {
		return math.NaN(), weather.Absent, nil
	}
	for m, letter := range markLetters {
		digits, marked := strings.CutSuffix(field, letter)
		if letter == "" || !marked {
			continue
		}
		if digits == "" {
			return math.NaN(), weather.Mark(m), nil
		}
		v, err := number(digits)
		return v, weather.Mark(m), err
	}
	v, err := number(field)
	return v, weather.Recorded, err
}

// ownText writes a value so that ownValue gives it back.
func ownText(v float64, m weather.Mark) string {
	if math.IsNaN(v) {
		return markLetters[m]
	}
	return strconv.FormatFloat(v, 'g', -1, 64) + markLetters[m]
}
