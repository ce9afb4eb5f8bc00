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

// tmy3Columns are the columns of a TMY3 file that are read (Wilcox and Marion 2008,
// NREL/TP-581-43156, table 3). Rain is not among them on purpose: see tmy3Rain.
var tmy3Columns = []struct {
	name   string
	column weather.Column
	unit   string
	factor float64
}{
	{"GHI (W/m^2)", weather.Global, "Wh/m2", 1},
	{"DNI (W/m^2)", weather.Beam, "Wh/m2", 1},
	{"DHI (W/m^2)", weather.Diffuse, "Wh/m2", 1},
	{"Dry-bulb (C)", weather.Temperature, "degC", 1},
	{"Dew-point (C)", weather.DewPoint, "degC", 1},
	{"RHum (%)", weather.Humidity, "%", 1},
	{"Wspd (m/s)", weather.Wind, "m/s", 1},
	{"Wdir (degrees)", weather.WindDirection, "deg", 1},
	{"Pressure (mbar)", weather.Pressure, "mbar", 0.1},
	{"TotCld (tenths)", weather.Cloud, "tenths", 10},
}

const (
	tmy3Missing = -9900
	tmy3Rain    = "the rain of a typical year (Lprecip) is left unread: it is patchy and wrong; take rain from a gauge"
	tmy3Light   = "light is mostly modelled from cloud cover, not measured"
)

func looksTMY3(lines []string) bool {
	return len(lines) > 1 && strings.HasPrefix(lines[1], "Date (MM/DD/YYYY),Time (HH:MM)")
}

// readTMY3 reads a typical meteorological year of NREL's third set. Its months come from
// different years and are put on the nominal year; its hours are named by their end in
// the file and by their beginning in the record.
func readTMY3(s *source, _ Options) (*weather.Record, error) {
	r := &weather.Record{File: s.name, Format: "TMY3", Step: weather.Hourly, Time: weather.StandardTime,
		Typical: true, Placed: true, Start: weather.DayNumber(weather.NominalYear, 1, 1)}
	station, _ := s.next()
	var err error
	if r.Place, err = tmy3Place(station); err != nil {
		return nil, s.at("%w", err)
	}
	names, _ := s.next()
	head := splitNames(names)
	t := &table{src: s, step: weather.Hourly}
	fields, err := tmy3Fields(s, t, head)
	if err != nil {
		return nil, err
	}
	tmy3Rows(t, r, fields, len(head))
	if err := t.finish(r); err != nil {
		return nil, err
	}
	if rows := t.start + len(t.lines) - r.Start*24; t.start != weather.DayNumber(weather.NominalYear, 1, 1)*24 || len(t.lines) != 24*weather.DaysIn(weather.NominalYear) {
		return nil, fmt.Errorf("%s: line %d: a typical year has %d hours from 1 January 01:00 to 31 December 24:00, here are %d: the file is cut short, fetch it again",
			s.name, s.line, 24*weather.DaysIn(weather.NominalYear), rows)
	}
	r.Notes = append(r.Notes, tmy3Years(r.MonthFrom), tmy3Light)
	if slices.Contains(head, "Lprecip depth (mm)") {
		r.Notes = append(r.Notes, tmy3Rain)
	}
	return r, nil
}

// tmy3Place reads the first line: number, name, state, zone, latitude, longitude, metres.
func tmy3Place(line string) (p site.Place, err error) {
	f := splitNames(strings.TrimRight(line, ", "))
	if len(f) != 7 {
		return p, fmt.Errorf("the first line has %d fields, not 7: station, name, state, hours ahead of UTC, latitude, longitude, metres", len(f))
	}
	var v [4]float64
	var faults []error
	for i := range v {
		v[i], err = number(f[3+i])
		faults = append(faults, err)
	}
	if err := errors.Join(faults...); err != nil {
		return p, err
	}
	p = site.Place{Name: f[1] + ", " + f[2], Clock: v[0], Latitude: quantity.Degrees(v[1]),
		Longitude: quantity.Degrees(v[2]), Altitude: quantity.Metres(v[3])}
	return p, p.Faults()
}

func tmy3Fields(s *source, t *table, head []string) ([]powerField, error) {
	var fields []powerField
	for _, c := range tmy3Columns {
		if at := slices.Index(head, c.name); at >= 0 {
			t.add(c.column, c.name, c.unit)
			fields = append(fields, powerField{at, scale{c.factor, 0}})
		}
	}
	if len(fields) == 0 {
		return nil, s.at("no column of a typical year is among the names")
	}
	return fields, nil
}

// tmy3Rows reads the hours. The year of a row counts only for which year its month is from.
func tmy3Rows(t *table, r *weather.Record, fields []powerField, columns int) {
	t.each(columns, func(row []string) {
		year, month, hour, err := tmy3Time(row[0], row[1])
		if err != nil {
			t.fault("%w", err)
			return
		}
		if from := &r.MonthFrom[month-1]; *from == 0 {
			*from = int32(year)
		} else if *from != int32(year) {
			t.fault("month %d is from %d and from %d: a month of a typical year comes from one year", month, *from, year)
			return
		}
		if !t.row(hour) {
			return
		}
		for i, f := range fields {
			v, err := number(row[f.at])
			switch {
			case err != nil:
				t.fault("column %s: %w", t.series[i].Source, err)
			case v != tmy3Missing && v != -9999:
				t.set(i, v*f.scale.factor)
			}
		}
	})
}

// tmy3Time reads 12/31/1995 and 24:00, and gives the hour's beginning on the nominal year.
func tmy3Time(date, clock string) (year, month, stamp int, err error) {
	d := strings.Split(date, "/")
	if len(d) != 3 {
		return 0, 0, 0, fmt.Errorf("date %q is not month/day/year", clip(date))
	}
	month, err1 := whole(d[0], 1, 12)
	day, err2 := whole(d[1], 1, 31)
	year, err3 := whole(d[2], 1900, 2100)
	hour, minute, _ := strings.Cut(clock, ":")
	end, err4 := whole(hour, 1, 24)
	if err := errors.Join(err1, err2, err3, err4); err != nil {
		return 0, 0, 0, err
	}
	if strings.TrimSpace(minute) != "00" {
		return 0, 0, 0, fmt.Errorf("time %q is not the end of a whole hour", clip(clock))
	}
	if !weather.ValidDate(weather.NominalYear, month, day) {
		return 0, 0, 0, fmt.Errorf("a typical year has no %s", clip(date))
	}
	return year, month, weather.DayNumber(weather.NominalYear, month, day)*24 + end - 1, nil
}

// tmy3Years says where the months come from.
func tmy3Years(from [12]int32) string {
	months := make([]string, 12)
	for m, y := range from {
		months[m] = fmt.Sprint(y)
	}
	return fmt.Sprintf("a typical year: its months are of %s; they are put on one nominal year of 365 days, %d, and say nothing of the worst year",
		strings.Join(months, " "), weather.NominalYear)
}
