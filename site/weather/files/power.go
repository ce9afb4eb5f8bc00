package files

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"suffice/quantity"
	"suffice/site"
	"suffice/site/weather"
)

// A powerHeader is what stands above the table of a NASA POWER file.
type powerHeader struct {
	hourly  bool
	place   site.Place
	placed  bool
	time    *weather.Timekeeping
	last    int    // number of the last day it promises, 0 if none
	missing string // its code for a missing value
	units   map[string]string
}

func looksPower(lines []string) bool {
	return strings.HasPrefix(strings.ToUpper(lines[0]), "-BEGIN HEADER-")
}

// readPower reads the CSV that the NASA POWER service gives, hourly or daily.
func readPower(s *source, o Options) (*weather.Record, error) {
	h, err := readPowerHeader(s)
	if err != nil {
		return nil, err
	}
	names, ok := s.next()
	if !ok {
		return nil, errors.Join(s.failed, fmt.Errorf("%s: the file ends after its header: it is cut short, fetch it again", s.name))
	}
	return readPowerTable(s, o, h, names)
}

// readPowerHeader reads up to the line that ends the header. Spelling and length vary
// between versions of the service.
func readPowerHeader(s *source) (*powerHeader, error) {
	h := &powerHeader{units: make(map[string]string), missing: "-999"}
	for {
		line, ok := s.next()
		if !ok || s.line > mostHeader {
			return nil, errors.Join(s.failed, fmt.Errorf("%s: line %d: the header has no line -END HEADER-: the file is cut short, fetch it again", s.name, s.line))
		}
		plain := strings.ToLower(line)
		var err error
		switch {
		case strings.HasPrefix(plain, "-end header-"):
			return h, nil
		case strings.HasPrefix(plain, "nasa/power"):
			h.hourly = strings.Contains(plain, "hourly")
		case strings.HasPrefix(plain, "dates "):
			err = h.readDates(plain)
		case strings.HasPrefix(plain, "location:"):
			err = h.readLocation(plain)
		case strings.HasPrefix(plain, "elevation"):
			err = h.readElevation(plain)
		case strings.HasPrefix(plain, "the value for missing"):
			h.missing = strings.TrimSpace(line[strings.LastIndex(line, ":")+1:])
		default:
			h.readParameter(line)
		}
		if err != nil {
			return nil, s.at("%w", err)
		}
	}
}

// readDates reads "dates (month/day/year): 01/01/2013 through 12/31/2023 in lst".
func (h *powerHeader) readDates(line string) error {
	if strings.HasSuffix(strings.TrimSpace(line), " in utc") {
		h.time = new(weather.UTC)
	}
	if strings.HasSuffix(strings.TrimSpace(line), " in lst") {
		h.time = new(weather.SolarHours)
	}
	_, rest, found := strings.Cut(line, " through ")
	if !found {
		return nil
	}
	var month, date, year int
	if n, err := fmt.Sscanf(rest, "%d/%d/%d", &month, &date, &year); n != 3 || err != nil || !weather.ValidDate(year, month, date) {
		return fmt.Errorf("the last date %q is not month/day/year", clip(strings.TrimSpace(rest)))
	}
	h.last = weather.DayNumber(year, month, date)
	return nil
}

// readLocation reads "location: latitude  35.0309   longitude 24.8335".
func (h *powerHeader) readLocation(line string) error {
	latitude, err1 := numberAfter(line, "latitude")
	longitude, err2 := numberAfter(line, "longitude")
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	h.place.Latitude, h.place.Longitude = quantity.Degrees(latitude), quantity.Degrees(longitude)
	h.placed = true
	return h.place.Faults()
}

// readElevation reads "elevation from merra-2: average for ... region = 253.32 meters".
func (h *powerHeader) readElevation(line string) error {
	metres, err := numberAfter(line, "=")
	h.place.Altitude = quantity.Metres(metres)
	return err
}

// readParameter reads "T2M   MERRA-2 Temperature at 2 Meters (C)": the name first, the
// unit in the last brackets.
func (h *powerHeader) readParameter(line string) {
	fields := strings.Fields(line)
	open, end := strings.LastIndex(line, "("), strings.LastIndex(line, ")")
	if len(fields) > 1 && open >= 0 && end > open {
		h.units[fields[0]] = line[open+1 : end]
	}
}

// numberAfter reads the number that follows a word.
func numberAfter(line, word string) (float64, error) {
	_, rest, found := strings.Cut(line, word)
	fields := strings.Fields(rest)
	if !found || len(fields) == 0 {
		return 0, fmt.Errorf("no number follows %q", word)
	}
	return number(fields[0])
}

// A powerField is one column of the table that is read.
type powerField struct {
	at    int // position in the row
	scale scale
}

// readPowerTable reads the names of the columns and every row after them.
func readPowerTable(s *source, o Options, h *powerHeader, names string) (*weather.Record, error) {
	r := &weather.Record{Format: "NASA POWER daily CSV", Step: weather.Daily, Place: h.place, Placed: h.placed}
	if h.hourly {
		r.Format, r.Step = "NASA POWER hourly CSV", weather.Hourly
	}
	head := splitNames(names)
	stamps, err := stampsOf(head)
	if err != nil {
		return nil, s.at("%w", err)
	}
	if stamps.step != r.Step {
		return nil, s.at("the header says %s, the columns are %s: fetch the file again", r.Step, stamps.step)
	}
	t := &table{src: s, step: r.Step}
	fields, err := powerFields(s, o, h, r, t, head)
	if err != nil {
		return nil, err
	}
	if err := powerPlace(s, o, h, r); err != nil {
		return nil, err
	}
	readRows(t, stamps, fields, h.missing, len(head))
	if err := t.finish(r); err != nil {
		return nil, err
	}
	if err := t.promised(h.last); err != nil {
		return nil, err
	}
	r.Notes = append(r.Notes, powerThanks)
	if r.Of(weather.Rain) != nil {
		r.Notes = append(r.Notes, powerRain)
	}
	return r, nil
}

// promised holds the last row to the last day that a header promises, 0 for none.
func (t *table) promised(last int) error {
	if end := t.start + len(t.lines) - 1; last > 0 && end/t.perDay() < last {
		return fmt.Errorf("%s: line %d: the rows end on %s, the header promises them until %s: the file is cut short, fetch it again",
			t.src.name, t.src.line, t.when(end), dateText(last))
	}
	return nil
}

// powerPlace settles place and clock from header and options.
func powerPlace(s *source, o Options, h *powerHeader, r *weather.Record) error {
	if !r.Placed {
		if r.Place, r.Placed = o.place(); !r.Placed {
			return s.at("the header does not say where it is: give latitude= and longitude=")
		}
	}
	if o.Name != "" {
		r.Place.Name = o.Name
	}
	switch {
	case h.time != nil:
		r.Time = *h.time
	case o.Time != nil:
		r.Time = *o.Time
	case r.Step == weather.Daily:
		r.Time = weather.SolarHours
		r.Notes = append(r.Notes, "the file does not say which midnight its days begin at: taken as local solar, the service's own for days")
	default:
		return s.at("the file does not say whether its hours are UTC or local solar: give time=utc or time=solar")
	}
	r.Place.Clock = clockOf(r.Time, r.Place, o)
	return nil
}

// clockOf gives how many hours a record's time is ahead of UTC.
func clockOf(k weather.Timekeeping, p site.Place, o Options) float64 {
	switch {
	case k == weather.UTC:
		return 0
	case k == weather.SolarHours || o.Clock == nil:
		return weather.SolarClock(p.Longitude)
	}
	return *o.Clock
}

// powerFields decides which columns are read, and in which unit.
func powerFields(s *source, o Options, h *powerHeader, r *weather.Record, t *table, head []string) ([]powerField, error) {
	var fields []powerField
	var faults []error
	if err := o.unused(s.name, head); err != nil {
		return nil, err
	}
	for at, name := range head {
		if isStamp(name) {
			continue
		}
		p, known := powerNamed(name, head)
		if !known || slices.ContainsFunc(t.series, func(c weather.Series) bool { return c.Column == p.column }) {
			r.Unread = append(r.Unread, name)
			continue
		}
		unit := h.units[name]
		if unit == "" {
			unit = o.Units[name]
		}
		sc, ok := scaleOf(p.column, r.Step, unit)
		if !ok {
			faults = append(faults, s.at("column %s: %w", name, badUnit(unit, p.column, r.Step, name)))
			continue
		}
		t.add(p.column, name, unit)
		fields = append(fields, powerField{at, sc})
	}
	if len(fields) == 0 && len(faults) == 0 {
		faults = append(faults, s.at("no column of the table is known: it has %s", clip(strings.Join(head, ","))))
	}
	return fields, errors.Join(faults...)
}

func badUnit(unit string, c weather.Column, step weather.Step, name string) error {
	if unit == "" {
		return fmt.Errorf("the file gives no unit: give unit.%s= (%s)", name, unitHint(c, step))
	}
	return fmt.Errorf("unit %q is not known for %s %s: %s would be", unit, step, c, unitHint(c, step))
}
