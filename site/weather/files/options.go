package files

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"suffice/quantity"
	"suffice/site"
	"suffice/site/weather"
)

// Options gives what a file does not say itself; it never overrules what a file says.
// Set fills them from text.
type Options struct {
	Latitude, Longitude *quantity.Degrees
	Altitude            *quantity.Metres
	Name                string                    // of the place
	Time                *weather.Timekeeping      // what the file's days and hours follow
	Clock               *float64                  // hours of standard time ahead of UTC
	Units               map[string]string         // unit of a column, by the file's own name for it
	Columns             map[string]weather.Column // what a column is, by the file's own name for it
	Station             string                    // the one to read of a file that holds several
}

// Set takes one option as text: latitude, longitude, altitude, name, time (utc, solar
// or standard), clock, station, unit.NAME or column.NAME, where NAME is the file's own name
// of a column. Latitude and longitude may be bare numbers of degrees, altitude of metres.
func (o *Options) Set(key, value string) error {
	kind, name, dotted := strings.Cut(key, ".")
	switch {
	case dotted && kind == "unit" && name != "":
		return o.setUnit(name, value)
	case dotted && kind == "column" && name != "":
		return o.setColumn(name, value)
	}
	switch key {
	case "latitude":
		return setNumber(&o.Latitude, key, value, "deg", -90, 90)
	case "longitude":
		return setNumber(&o.Longitude, key, value, "deg", -180, 180)
	case "altitude":
		return setNumber(&o.Altitude, key, value, "m", -430, 6000)
	case "clock":
		return setNumber(&o.Clock, key, value, "h", -12, 14)
	case "time":
		return o.setTime(value)
	case "name":
		o.Name = value
		return nil
	case "station":
		o.Station = value
		return nil
	}
	return fmt.Errorf("%q is no option of a weather file: there are latitude, longitude, altitude, clock, time, name, station, unit.COLUMN and column.COLUMN", key)
}

// setNumber reads a number, bare or with its unit.
func setNumber[T ~float64](to **T, key, value, unit string, low, high float64) error {
	v, err := number(value)
	if err != nil {
		if v, err = quantity.ReadIn(value, unit); err != nil {
			return fmt.Errorf("%s: %w", key, err)
		}
	}
	if !(v >= low && v <= high) {
		return fmt.Errorf("%s %g %s is not possible: it lies between %g and %g", key, v, unit, low, high)
	}
	t := T(v)
	*to = &t
	return nil
}

func (o *Options) setUnit(name, value string) error {
	if o.Units == nil {
		o.Units = make(map[string]string)
	}
	o.Units[name] = value
	return nil
}

func (o *Options) setColumn(name, value string) error {
	c, ok := weather.ColumnNamed(value)
	if !ok {
		return fmt.Errorf("column.%s: %q is no column: there are %s", name, value, columnNames())
	}
	if o.Columns == nil {
		o.Columns = make(map[string]weather.Column)
	}
	o.Columns[name] = c
	return nil
}

func (o *Options) setTime(value string) error {
	kinds := map[string]weather.Timekeeping{"utc": weather.UTC, "solar": weather.SolarHours, "standard": weather.StandardTime}
	k, ok := kinds[value]
	if !ok {
		return fmt.Errorf("time %q is not known: write utc, solar (UTC and longitude/15 in whole hours) or standard", value)
	}
	o.Time = &k
	return nil
}

func columnNames() string {
	var names []string
	for c := range weather.Columns {
		names = append(names, c.String())
	}
	return strings.Join(names, ", ")
}

// place gives the place of the options, and whether it is on the map.
func (o *Options) place() (p site.Place, placed bool) {
	p.Name = o.Name
	if o.Latitude == nil || o.Longitude == nil {
		return p, false
	}
	p.Latitude, p.Longitude = *o.Latitude, *o.Longitude
	if o.Altitude != nil {
		p.Altitude = *o.Altitude
	}
	return p, true
}

// unused tells which units and columns the options name that the file does not have.
func (o *Options) unused(file string, has []string) error {
	var faults []error
	tell := func(kind, name string) {
		if !slices.Contains(has, name) {
			faults = append(faults, fmt.Errorf("%s: %s.%s: the file has no column of that name: it has %s", file, kind, name, strings.Join(has, ", ")))
		}
	}
	for _, name := range slices.Sorted(maps.Keys(o.Units)) {
		tell("unit", name)
	}
	for _, name := range slices.Sorted(maps.Keys(o.Columns)) {
		tell("column", name)
	}
	return errors.Join(faults...)
}
