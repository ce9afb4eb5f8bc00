package files

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"suffice/quantity"
	"suffice/site"
	"suffice/site/sun"
	"suffice/site/weather"
)

// Columns of a SURFRAD row from 0 (surfrad, the agency's description of the format): year, day of the
// year, month, date, hour, minute, decimal hour, zenith angle, then twenty times a value
// and its flag.
const (
	surfradYear, surfradMonth, surfradDate, surfradHour, surfradMinute, surfradZenith = 0, 2, 3, 4, 5, 7

	surfradWidth = 8 + 2*20
)

// surfradColumns are the values read, by their place in the row.
var surfradColumns = []struct {
	at     int
	name   string
	column weather.Column
	unit   string
	factor float64
}{
	{8, "dw_solar", weather.Global, "W/m2", 1},
	{12, "direct_n", weather.Beam, "W/m2", 1},
	{14, "diffuse", weather.Diffuse, "W/m2", 1},
	{38, "temp", weather.Temperature, "degC", 1},
	{40, "rh", weather.Humidity, "%", 1},
	{42, "windspd", weather.Wind, "m/s", 1},
	{44, "winddir", weather.WindDirection, "deg", 1},
	{46, "pressure", weather.Pressure, "mbar", 0.1},
}

// surfradUnread are left: the case and dome temperatures among them are kelvin in most files
// and degC in some.
var surfradUnread = []string{"uw_solar", "dw_ir", "dw_casetemp", "dw_dometemp", "uw_ir", "uw_casetemp", "uw_dometemp", "uvb", "par", "netsolar", "netir", "totalnet"}

const (
	surfradMissing = -9999.9
	// surfradCooling is how far, W/m2, a good reading may lie below nothing: thermopiles cool to
	// the night sky, and only readings below it are flagged (surfrad). Such readings count
	// as nothing, as the agency's own sums do.
	surfradCooling = -30
	// leastMinutes is how many good minutes make an hour's mean: three quarters. Common
	// practice, no source.
	leastMinutes = 45
)

func looksSurfrad(lines []string) bool {
	if len(lines) < 2 {
		return false
	}
	f := strings.Fields(lines[1])
	return len(f) == 6 && f[3] == "m" && f[4] == "version"
}

// A minuteHour gathers the good minutes of an hour.
type minuteHour struct {
	line    int32
	sum     [8]float64
	east    float64 // of the wind's direction
	good    [8]int
	flagged [8]int
}

// surfradDay gathers a file.
type surfradDay struct {
	hours   map[int]*minuteHour // by hours from the calendar's beginning
	last    int                 // minute of the row before
	covers  int                 // minutes that a row covers
	night   int                 // readings below nothing
	zeniths []surfradSun
}

// A surfradSun is the zenith angle a row states, and the time it holds for.
type surfradSun struct {
	minute int
	zenith float64
}

// readSurfrad reads a day of a surface radiation station at one or three minutes and gives
// means of hours. Rows name the end of their minutes; values that the agency flagged are left
// out; an hour with fewer than 45 good minutes is missing.
func readSurfrad(s *source, _ Options) (*weather.Record, error) {
	r := &weather.Record{File: s.name, Format: "SURFRAD", Step: weather.Hourly, Time: weather.UTC, Placed: true, Unread: surfradUnread}
	name, _ := s.next()
	where, _ := s.next()
	var err error
	if r.Place, err = surfradPlace(where); err != nil {
		return nil, s.at("%w", err)
	}
	r.Place.Name = strings.TrimSpace(name)
	day := &surfradDay{hours: make(map[int]*minuteHour), last: -1}
	if err := day.rows(s); err != nil {
		return nil, err
	}
	if err := day.record(s, r); err != nil {
		return nil, err
	}
	day.checkLongitude(r)
	return r, nil
}

// surfradPlace reads "36.62 -116.02 1007 m version 1".
func surfradPlace(line string) (p site.Place, err error) {
	f := strings.Fields(line)
	latitude, err1 := number(f[0])
	longitude, err2 := number(f[1])
	altitude, err3 := number(f[2])
	if err := errors.Join(err1, err2, err3); err != nil {
		return p, err
	}
	p = site.Place{Latitude: quantity.Degrees(latitude), Longitude: quantity.Degrees(longitude), Altitude: quantity.Metres(altitude)}
	return p, p.Faults()
}

// mostMinutes is how many rows a file may hold: a year of minutes.
const mostMinutes = 366 * 1440

// rows reads every row.
func (d *surfradDay) rows(s *source) error {
	var faults []error
	n := 0
	for len(faults) < mostFaults && n < mostMinutes {
		line, ok := s.nextRow()
		if !ok {
			break
		}
		n++
		if err := d.row(line, int32(s.line)); err != nil {
			faults = append(faults, s.at("%w", err))
		}
	}
	if n == mostMinutes {
		faults = append(faults, s.at("more than a year of minutes in one file: name the days one by one"))
	}
	if n == 0 {
		faults = append(faults, fmt.Errorf("%s: no row of weather follows line %d: the file is cut short, fetch it again", s.name, s.line))
	}
	return errors.Join(append(faults, s.failed)...)
}

// row takes one row in. The minute that it names is the end of what it covers, so 14:00
// belongs to the hour from 13 to 14.
func (d *surfradDay) row(line string, at int32) error {
	f := strings.Fields(line)
	if len(f) != surfradWidth {
		return fmt.Errorf("there are %d values, not %d: the row is cut short or the file damaged, fetch it again", len(f), surfradWidth)
	}
	minute, err := surfradTime(f)
	if err != nil {
		return err
	}
	if d.last >= 0 {
		step := minute - d.last
		if step <= 0 {
			return fmt.Errorf("the rows are not in the order of time: put them so, or take the one that stands twice out")
		}
		if step > mostJump*366*1440 {
			return fmt.Errorf("more than %d years lie between this row and the one before it", mostJump)
		}
		if d.covers == 0 || step < d.covers {
			d.covers = step
		}
	}
	d.last = minute
	zenith, err := number(f[surfradZenith])
	if err != nil {
		return fmt.Errorf("zenith angle: %w", err)
	}
	if minute%60 == 30 {
		d.zeniths = append(d.zeniths, surfradSun{minute, zenith})
	}
	h := d.hours[(minute-1)/60]
	if h == nil {
		h = &minuteHour{line: at}
		d.hours[(minute-1)/60] = h
	}
	return d.take(h, f)
}

func surfradTime(f []string) (int, error) {
	year, err1 := whole(f[surfradYear], 1900, 2400)
	month, err2 := whole(f[surfradMonth], 1, 12)
	date, err3 := whole(f[surfradDate], 1, 31)
	hour, err4 := whole(f[surfradHour], 0, 23)
	minute, err5 := whole(f[surfradMinute], 0, 59)
	if err := errors.Join(err1, err2, err3, err4, err5); err != nil {
		return 0, err
	}
	if !weather.ValidDate(year, month, date) {
		return 0, fmt.Errorf("there is no %04d-%02d-%02d", year, month, date)
	}
	return (weather.DayNumber(year, month, date)*24+hour)*60 + minute, nil
}

// take adds a row's good values to its hour.
func (d *surfradDay) take(h *minuteHour, f []string) error {
	for i, c := range surfradColumns {
		v, err := number(f[c.at])
		if err != nil {
			return fmt.Errorf("%s: %w", c.name, err)
		}
		flag, err := whole(f[c.at+1], 0, 9)
		if err != nil {
			return fmt.Errorf("%s: its flag: %w", c.name, err)
		}
		if flag != 0 || v == surfradMissing {
			h.flagged[i]++
			continue
		}
		if i < 3 && v < 0 && v >= surfradCooling {
			v = 0
			d.night++
		}
		h.good[i]++
		if c.column == weather.WindDirection {
			sin, cos := math.Sincos(v * math.Pi / 180)
			h.east, h.sum[i] = h.east+sin, h.sum[i]+cos
			continue
		}
		h.sum[i] += v
	}
	return nil
}

// record lays the hours out, from the first to the last that has a value.
func (d *surfradDay) record(s *source, r *weather.Record) error {
	if d.covers != 1 && d.covers != 3 {
		return fmt.Errorf("%s: its rows lie %d minutes apart: read are files of one or three", s.name, d.covers)
	}
	first, last := math.MaxInt, math.MinInt
	short := 0
	for at, h := range d.hours {
		if !slices.ContainsFunc(h.good[:], func(n int) bool { return n*d.covers >= leastMinutes }) {
			short++
			continue
		}
		first, last = min(first, at), max(last, at)
	}
	if first > last {
		return fmt.Errorf("%s: no hour has %d good minutes in it", s.name, leastMinutes)
	}
	if last-first > mostYears*366*24 {
		return fmt.Errorf("%s: the rows span more than %d years: look at the dates", s.name, mostYears)
	}
	r.Start, r.StartHour, r.Steps = first/24, first%24, last-first+1
	lines := make([]int32, r.Steps)
	for i := range lines {
		if h := d.hours[first+i]; h != nil {
			lines[i] = h.line
		}
	}
	for i, c := range surfradColumns {
		r.Series = append(r.Series, weather.Series{Column: c.column, Source: c.name, Unit: c.unit, Lines: lines})
		d.fill(&r.Series[i], i, first, r.Steps)
	}
	d.say(r, short)
	return nil
}

// fill gives a column's means.
func (d *surfradDay) fill(s *weather.Series, i, first, steps int) {
	for k := range steps {
		h := d.hours[first+k]
		v, mark := math.NaN(), weather.Absent
		switch {
		case h == nil:
		case h.good[i]*d.covers >= leastMinutes && s.Column == weather.WindDirection:
			v, mark = math.Mod(math.Atan2(h.east, h.sum[i])*180/math.Pi+360, 360), weather.Recorded
		case h.good[i]*d.covers >= leastMinutes:
			v, mark = surfradColumns[i].factor*h.sum[i]/float64(h.good[i]), weather.Recorded
		case h.flagged[i] > 0:
			mark = weather.Flagged
		}
		s.Values, s.Marks = append(s.Values, v), append(s.Marks, mark)
	}
}

func (d *surfradDay) say(r *weather.Record, short int) {
	r.Notes = append(r.Notes, fmt.Sprintf("hours are the means of their good values at %d minutes; an hour with fewer than %d good minutes is missing", d.covers, leastMinutes),
		"the agency holds beam and diffuse together for a better measure of global light than the instrument read here")
	if short > 0 {
		r.Notes = append(r.Notes, "the first row of a day's file closes the last hour of the day before, which so has 59 minutes or is left out")
	}
	if d.night > 0 {
		r.Notes = append(r.Notes, fmt.Sprintf("readings of light down to %d W/m2 (instruments cool to the night sky) count as 0", surfradCooling))
	}
}

// sunOff is how far, degrees, the sun's height may lie from the file's: the coordinates have
// two decimals and the file's own formula is good to less.
const sunOff = 0.5

// checkLongitude compares the zenith angles that the file states with the computed sun. Where
// only the other sign of the longitude fits, it is that which was meant.
func (d *surfradDay) checkLongitude(r *weather.Record) {
	turned := r.Place
	turned.Longitude = -turned.Longitude
	off, other := d.sunMiss(r.Place), d.sunMiss(turned)
	switch {
	case off <= sunOff || math.IsNaN(off):
	case other <= sunOff:
		r.Warnings = append(r.Warnings, fmt.Sprintf("the longitude is written as %g, and the sun of the file stands where %g has it: taken as %g",
			float64(r.Place.Longitude), float64(turned.Longitude), float64(turned.Longitude)))
		r.Place = turned
	default:
		r.Warnings = append(r.Warnings, fmt.Sprintf("the sun of the file lies %.1f degrees from that computed for its coordinates: are they right", off))
	}
}

// sunMiss gives the mean distance of the sun's height, degrees, NaN without rows to compare.
func (d *surfradDay) sunMiss(p site.Place) float64 {
	sum, n := 0.0, 0
	for _, z := range d.zeniths {
		day := weather.DayOf(z.minute / 1440)
		at := time.Date(int(day.Year), time.Month(day.Month), int(day.Date), 0, z.minute%1440, 0, 0, time.UTC).Add(-time.Duration(d.covers) * 30 * time.Second)
		sum += math.Abs(90 - float64(sun.Look(p, at, sun.Sight{}).True) - z.zenith)
		n++
	}
	return sum / float64(n)
}
