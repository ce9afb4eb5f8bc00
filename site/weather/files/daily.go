package files

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"suffice/site/weather"
)

// Columns of a line of GHCN-Daily, from 0 (readme, section III): the station, year,
// month and element, then 31 times a value of five characters and three flags.
const (
	dailyYear, dailyMonth, dailyElement, dailyValues = 11, 15, 17, 21
	dailyWidth                                       = 8
	dailyFull                                        = dailyValues + 31*dailyWidth
	// dailyLeast is a full line whose last, blank flags an editor has taken off.
	dailyLeast   = dailyFull - 3
	dailyMissing = -9999
)

// dailyColumns are the elements read, with the factor to a record's unit. RHAV and
// ADPT came after the readme at hand; their units are from memory.
var dailyColumns = []struct {
	element string
	column  weather.Column
	unit    string
	per     float64 // how many of the file's unit make the record's
}{
	{"PRCP", weather.Rain, "0.1 mm", 10},
	{"TMAX", weather.TemperatureMax, "0.1 degC", 10},
	{"TMIN", weather.TemperatureMin, "0.1 degC", 10},
	{"TAVG", weather.Temperature, "0.1 degC", 10},
	{"AWND", weather.Wind, "0.1 m/s", 10},
	{"RHAV", weather.Humidity, "%", 1},
	{"ADPT", weather.DewPoint, "0.1 degC", 10},
}

// A month is one line: an element's values of a month.
type month struct {
	line        int32
	year, month int
	values      string // the 31 values with their flags
}

func looksDaily(lines []string) bool {
	l := lines[0]
	if len(l) < dailyLeast || len(l) > dailyFull || strings.Contains(l, ",") {
		return false
	}
	_, err := strconv.Atoi(l[dailyYear:dailyElement])
	return err == nil
}

// readDaily reads a station file of NOAA's GHCN-Daily. A value that fails the agency's own
// checks is missing, and so is one "missing, presumed zero"; a trace counts as nothing;
// a total over several days is spread evenly over them.
func readDaily(s *source, o Options) (*weather.Record, error) {
	months, station, unread, err := readMonths(s)
	if err != nil {
		return nil, err
	}
	r := &weather.Record{File: s.name, Format: "GHCN-Daily", Step: weather.Daily, Time: weather.ObservationDay}
	r.Place, r.Placed = o.place()
	if r.Place.Name == "" {
		r.Place.Name = station
	}
	if r.Placed {
		r.Place.Clock = clockOf(r.Time, r.Place, o)
	}
	if r.Placed && o.Altitude == nil {
		r.Notes = append(r.Notes, "the altitude is not given: taken as 0 m")
	}
	r.Start, r.Steps = span(months)
	if r.Steps == 0 {
		return nil, fmt.Errorf("%s: no rain, temperature or wind has a value in it", s.name)
	}
	if r.Steps > mostYears*366 {
		return nil, fmt.Errorf("%s: the dates span more than %d years: look at the years", s.name, mostYears)
	}
	for _, c := range dailyColumns {
		if lines := months[c.element]; len(lines) > 0 {
			r.Series = append(r.Series, layOut(lines, r, c.column, c.element, c.unit, c.per))
		}
	}
	spread(r, months)
	r.Notes = append(r.Notes, "the day is the station's day of observation, often from morning to morning")
	r.Unread = unread
	return r, nil
}

// readMonths reads every line, and keeps those of elements that are wanted.
func readMonths(s *source) (months map[string][]month, station string, unread []string, err error) {
	months = make(map[string][]month)
	other := make(map[string]bool)
	seen := make(map[string]int32)
	var faults []error
	for len(faults) < mostFaults {
		line, ok := s.nextRow()
		if !ok {
			break
		}
		m, element, id, err := readMonth(line, int32(s.line))
		if err != nil {
			faults = append(faults, s.at("%w", err))
			continue
		}
		if station == "" {
			station = id
		}
		if id != station {
			faults = append(faults, s.at("station %s follows %s: keep one station in a file", id, station))
			continue
		}
		if !wantedElement(element) {
			other[element] = true
			continue
		}
		key := line[dailyYear:dailyValues]
		if before, twice := seen[key]; twice {
			faults = append(faults, s.at("%s of %04d-%02d stands twice, first on line %d: take one of the lines out", element, m.year, m.month, before))
			continue
		}
		seen[key] = m.line
		months[element] = append(months[element], m)
	}
	return months, station, slices.Sorted(maps.Keys(other)), errors.Join(append(faults, s.failed)...)
}

func wantedElement(name string) bool {
	for _, c := range dailyColumns {
		if c.element == name {
			return true
		}
	}
	return name == "MDPR" || name == "DAPR"
}

// readMonth reads one line up to its values.
func readMonth(line string, at int32) (m month, element, station string, err error) {
	if len(line) < dailyLeast {
		return m, "", "", fmt.Errorf("the line has %d characters, not %d: it is cut short, fetch the file again", len(line), dailyFull)
	}
	year, err1 := whole(line[dailyYear:dailyMonth], 1600, 2400)
	mo, err2 := whole(line[dailyMonth:dailyElement], 1, 12)
	if err := errors.Join(err1, err2); err != nil {
		return m, "", "", fmt.Errorf("year and month: %w", err)
	}
	if len(line) > dailyFull {
		return m, "", "", fmt.Errorf("the line has %d characters, not %d: the file is damaged, fetch it again", len(line), dailyFull)
	}
	for len(line) < dailyFull {
		line += " "
	}
	m = month{line: at, year: year, month: mo, values: line[dailyValues:]}
	for d := range 31 {
		if _, err := m.value(d); err != nil {
			return m, "", "", fmt.Errorf("day %d: %w", d+1, err)
		}
	}
	return m, line[dailyElement:dailyValues], line[:dailyYear], nil
}

// value reads the number of a day, from 0.
func (m *month) value(day int) (int, error) {
	field := m.values[day*dailyWidth : day*dailyWidth+5]
	n, err := strconv.Atoi(strings.TrimSpace(field))
	if err != nil {
		return 0, fmt.Errorf("%q is not a whole number", field)
	}
	return n, nil
}

// each gives the days of the month that have a value, with their flags.
func (m *month) each(give func(number, value int, measured, quality byte)) {
	first := weather.DayNumber(m.year, m.month, 1)
	for d := range weather.MonthDays(m.year, m.month) {
		if v, err := m.value(d); err == nil && v != dailyMissing {
			give(first+d, v, m.values[d*dailyWidth+5], m.values[d*dailyWidth+6])
		}
	}
}

// span gives the first day that has a value, and how many days there are to the last.
func span(months map[string][]month) (first, days int) {
	first, last := math.MaxInt, -1
	for _, lines := range months {
		for _, m := range lines {
			m.each(func(number, _ int, _, _ byte) { first, last = min(first, number), max(last, number) })
		}
	}
	return first, max(0, last+1-first)
}

// layOut puts an element's months on the record's axis.
func layOut(lines []month, r *weather.Record, c weather.Column, element, unit string, per float64) weather.Series {
	out := weather.Series{Column: c, Source: element, Unit: unit,
		Values: make([]float64, r.Steps), Marks: make([]weather.Mark, r.Steps), Lines: make([]int32, r.Steps)}
	for i := range out.Values {
		out.Values[i], out.Marks[i] = math.NaN(), weather.Absent
	}
	for _, m := range lines {
		m.each(func(number, value int, measured, quality byte) {
			i := number - r.Start
			out.Lines[i] = m.line
			switch {
			case quality != ' ':
				out.Marks[i] = weather.Flagged
			case measured == 'P':
				out.Marks[i] = weather.Presumed
			case measured == 'T' && c == weather.Rain:
				out.Values[i], out.Marks[i] = 0, weather.Trace
			default:
				out.Values[i], out.Marks[i] = float64(value)/per, weather.Recorded
			}
		})
	}
	return out
}

// spread shares out totals over several days (MDPR, over so many days as DAPR says,
// ending with the day of the total) where no day of them has a value of its own.
func spread(r *weather.Record, months map[string][]month) {
	rain := r.Of(weather.Rain)
	if rain == nil {
		return
	}
	days := make(map[int]int)
	for _, m := range months["DAPR"] {
		m.each(func(number, value int, _, quality byte) {
			if quality == ' ' {
				days[number] = value
			}
		})
	}
	totals, unusable := 0, 0
	for _, m := range months["MDPR"] {
		m.each(func(number, value int, _, quality byte) {
			if quality == ' ' && accumulate(rain, number-r.Start, days[number], float64(value)/10) {
				totals++
			} else {
				unusable++
			}
		})
	}
	if totals > 0 {
		r.Notes = append(r.Notes, fmt.Sprintf("%d totals over several days are spread evenly over their days", totals))
	}
	if unusable > 0 {
		r.Warnings = append(r.Warnings, fmt.Sprintf("%d totals over several days are left out: they are flagged, do not say over how many days, or overlap days with values", unusable))
	}
}

// accumulate spreads a total over the days that end with row last, and reports whether
// it could: all of them have to be absent.
func accumulate(rain *weather.Series, last, days int, total float64) bool {
	first := last - days + 1
	if days < 1 || first < 0 {
		return false
	}
	for i := first; i <= last; i++ {
		if rain.Marks[i] != weather.Absent {
			return false
		}
	}
	for i := first; i <= last; i++ {
		rain.Values[i], rain.Marks[i] = total/float64(days), weather.Accumulated
	}
	return true
}
