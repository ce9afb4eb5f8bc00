package weather

import (
	"fmt"
	"math"
	"slices"

	"suffice/site"
	"suffice/site/sun"
)

// Complete makes whole hours without gaps from one record: its complete years, or all
// its whole days where no year is complete. Every value that the record does not hold
// itself is counted in the report and said in the notes. A column that cannot be told is
// left nil.
func Complete(r *Record, o Options) (*Hours, Report, error) {
	m, err := newMaker(r, o, true, true)
	if err != nil {
		return nil, Report{}, err
	}
	m.make()
	if m.hours.Rain == nil && m.hours.Global == nil && m.hours.Temperature == nil {
		return nil, Report{}, fmt.Errorf("%s holds neither rain nor light nor temperature that could be completed: use another record", r.File)
	}
	return m.hours, m.report(), nil
}

// A maker turns one record into hours.
type maker struct {
	r          *Record
	o          Options
	sky, gauge bool // which part of the record is wanted
	place      site.Place
	g          *grid
	days       []int // kept days of the grid
	kept       []int32
	dropped    []int32
	hours      *Hours
	origin     [Columns][]Origin // of every hour, for the columns made
	moved      float64           // kWh/m2 of beam called diffuse since it passed the limit
}

func newMaker(r *Record, o Options, sky, gauge bool) (*maker, error) {
	m := &maker{r: r, o: o, sky: sky, gauge: gauge, hours: new(Hours)}
	if r.Steps == 0 || len(r.Series) == 0 {
		return nil, fmt.Errorf("%s holds no weather", r.File)
	}
	shift, err := m.settle()
	if err != nil {
		return nil, err
	}
	m.g = newGrid(r, shift)
	from, to := o.From, o.To
	if r.Typical { // it belongs to no year
		from, to = 0, 0
	}
	m.days, m.kept, m.dropped = m.g.keep(m.g.needed(sky, gauge), from, to)
	if len(m.days) == 0 {
		return nil, fmt.Errorf("%s holds no whole day of the years that are wanted: it runs from %s to %s", r.File, r.when(0), r.when(r.Steps-1))
	}
	m.sayYears()
	m.hours.Place = m.place
	m.hours.Days = make([]Day, len(m.days))
	for i, d := range m.days {
		m.hours.Days[i] = m.g.days[d]
	}
	return m, nil
}

// settle decides the place and clock of the hours, and by how many hours the record's
// rows move.
func (m *maker) settle() (shift int, err error) {
	r := m.r
	m.place = r.Place
	switch {
	case !r.Placed && m.o.Place == nil && m.sky:
		return 0, fmt.Errorf("%s does not say where it was recorded: give its latitude and longitude", r.File)
	case !r.Placed && m.o.Place != nil:
		name := r.Place.Name
		m.place = *m.o.Place
		m.place.Name = name
		if m.sky {
			m.say("the record does not say where it was made: the sun is that of the house")
		}
	case m.o.Place == nil && r.Time == UTC:
		m.place.Clock = SolarClock(r.Place.Longitude)
	case m.o.Place != nil:
		m.place.Clock = m.o.Place.Clock
		m.sayFar()
	}
	if r.Step == Daily {
		if off := m.place.Clock - r.Place.Clock; r.Placed && r.Time != ObservationDay && math.Abs(off) >= 1 {
			m.say("the record's days begin %g h %s those of the clock UTC%+g h: they are taken as they are", math.Abs(off), beforeAfter(off), m.place.Clock)
		}
		return 0, nil
	}
	move := m.place.Clock - r.Place.Clock
	shift = int(math.Round(move))
	if float64(shift) != move {
		m.place.Clock = r.Place.Clock + float64(shift)
		m.say("the record has whole hours of another zone: the clock of these hours is UTC%+g h, %.2g h beside that of the place", m.place.Clock, math.Abs(move-float64(shift)))
	}
	if shift != 0 {
		m.say("the hours are moved by %+d h, from %s to the clock UTC%+g h", shift, r.Time, m.place.Clock)
	}
	return shift, nil
}

// beforeAfter tells on which side of the clock's midnight a day begins whose clock is so
// many hours behind.
func beforeAfter(behind float64) string {
	if behind > 0 {
		return "after"
	}
	return "before"
}

// farAway and highAbove are how far, km, and how much higher, m, a record's place may be
// from the house before it is said. Common practice, no source: temperature falls by
// about 0.65 K in 100 m, rain in hills changes within a few kilometres.
const farAway, highAbove = 10, 100

// sayFar tells how far from the house the record was made.
func (m *maker) sayFar() {
	away, up := distance(m.r.Place, *m.o.Place), float64(m.r.Place.Altitude-m.o.Place.Altitude)
	if away > farAway || math.Abs(up) > highAbove {
		m.say("the record was made %.0f km from the house and %+.0f m above it: nothing is corrected for that", away, up)
	}
}

// distance gives the kilometres between two places on a sphere of 6371 km (haversine).
func distance(a, b site.Place) float64 {
	p, q := float64(a.Latitude.Radians()), float64(b.Latitude.Radians())
	u, v := math.Sin((q-p)/2), math.Sin(float64((b.Longitude-a.Longitude).Radians())/2)
	return 2 * 6371 * math.Asin(min(1, math.Sqrt(u*u+math.Cos(p)*math.Cos(q)*v*v)))
}

// say adds a note for the reader of a verdict.
func (m *maker) say(format string, args ...any) {
	m.hours.Notes = append(m.hours.Notes, fmt.Sprintf(format, args...))
}

func (m *maker) sayYears() {
	switch {
	case m.r.Typical:
		m.say("one typical year, put on the nominal year %d: it says nothing of the worst year", NominalYear)
	case len(m.kept) == 0:
		m.say("no year of the record is complete (at most %d missing days): its %d whole days are used, and say nothing of the worst year", MissingDaysAllowed, len(m.days))
	default:
		m.say("%d complete years: %s", len(m.kept), yearsText(m.kept))
	}
	if len(m.dropped) > 0 {
		m.say("left out, with more than %d missing days: %s; the hours run on from each year to the next that is kept", MissingDaysAllowed, yearsText(m.dropped))
	}
	if m.g.parted > 0 {
		m.say("%d days at the ends lie only partly in the record and are left out, or filled where they belong to a complete year", m.g.parted)
	}
}

// make makes every column that is wanted.
func (m *maker) make() {
	if m.gauge {
		m.makeRain()
	}
	if m.sky {
		m.makeSky()
	}
	m.sayMarks()
	m.sayOrigins()
	m.hours.Notes = append(m.hours.Notes, m.r.Notes...)
}

// column makes room for a column of the hours.
func (m *maker) column(c Column) []float64 {
	m.origin[c] = make([]Origin, 24*len(m.days))
	return make([]float64, 24*len(m.days))
}

// filled fills a column on the kept days, and tells whether it is whole.
func (m *maker) filled(c Column) (filled, bool) {
	if m.g.values[c] == nil {
		return filled{}, false
	}
	var outside []float64
	if m.g.step == Hourly && c.light() && m.gapped(c) {
		outside = m.outside(c)
	}
	f := m.g.fill(c, m.days, outside)
	return f, f.left == 0
}

func (m *maker) gapped(c Column) bool {
	return slices.ContainsFunc(m.days, func(d int) bool {
		return slices.ContainsFunc(m.g.values[c][24*d:24*d+24], math.IsNaN)
	})
}

// outside gives the light outside the air for every row of the grid, on the horizontal
// or, for beam, facing the sun.
func (m *maker) outside(c Column) []float64 {
	t := sun.NewTrack(m.place, sunDates(m.g.days))
	out := make([]float64, t.Hours())
	for i := range out {
		switch {
		case t.Share[i] <= 0:
		case c == Beam:
			out[i] = t.Normal[i] * t.Share[i]
		default:
			out[i] = t.Normal[i] * max(0, t.CosZenith[i]) * t.Share[i]
		}
	}
	return out
}

func sunDates(days []Day) []sun.Date {
	dates := make([]sun.Date, len(days))
	for i, d := range days {
		dates[i] = sun.Date{Year: d.Year, Month: d.Month, Date: d.Date}
	}
	return dates
}

// spreadHours copies a filled column of hours, or a daily one that is even over the day,
// into the hours kept.
func (m *maker) spreadHours(c Column, f filled, factor float64) []float64 {
	out := m.column(c)
	per := m.g.step.perDay()
	for i, d := range m.days {
		for h := range 24 {
			k := d*per + h*per/24
			out[24*i+h], m.origin[c][24*i+h] = f.values[k]*factor, f.origin[k]
		}
	}
	return out
}

func (m *maker) makeRain() {
	f, whole := m.filled(Rain)
	if !whole {
		m.sayLeft(Rain, f)
		return
	}
	if m.g.step == Hourly {
		m.hours.Rain = m.spreadHours(Rain, f, 1)
		return
	}
	m.hours.Rain = m.column(Rain)
	for i, d := range m.days {
		storm(m.hours.Rain[24*i:24*i+24], f.values[d], m.g.days[d].Number())
		for h := range 24 {
			m.origin[Rain][24*i+h] = f.origin[d]
		}
	}
	m.say("the hours of rain are made from days: one storm a day at about %g mm/h, its hour drawn from the date: the totals are recorded, the intensity is invented", stormRate)
}

// sayLeft tells that a column is left out since its gaps cannot be filled.
func (m *maker) sayLeft(c Column, f filled) {
	if f.left > 0 {
		m.say("%s is left out: %d %s rows are missing and no other year of the record has their dates", c, f.left, m.g.step)
	}
}

// sayMarks tells what of the record's own values was no plain reading.
func (m *maker) sayMarks() {
	for i := range m.r.Series {
		s := &m.r.Series[i]
		if s.Marks == nil || s.Column == Rain && !m.gauge || s.Column != Rain && !m.sky {
			continue
		}
		var n [Marks]int
		for _, mark := range s.Marks {
			n[mark]++
		}
		for _, mark := range []Mark{Accumulated, Flagged, Presumed, Impossible} {
			if n[mark] > 0 {
				m.say("%s: %d values of the record %s", s.Column, n[mark], markWords[mark])
			}
		}
	}
}

var markWords = [Marks]string{
	Accumulated: "are even shares of a total over several days",
	Flagged:     "count as missing since the agency doubted them",
	Presumed:    "count as missing since their zero was only presumed",
	Impossible:  "count as missing since they cannot be",
}

// sayOrigins tells which hours are not the record's own.
func (m *maker) sayOrigins() {
	for _, t := range m.tallies() {
		for o := Interpolated; o < Origins; o++ {
			if n := t.Hours[o]; n > 0 && (o != Computed || t.Column == Global) {
				m.say("%s: %d of %d hours %s", t.Column, n, len(m.origin[t.Column]), o.words())
			}
		}
	}
}

func (m *maker) tallies() []Tally {
	var all []Tally
	for c := range Columns {
		if m.origin[c] == nil {
			continue
		}
		t := Tally{Column: c}
		for _, o := range m.origin[c] {
			t.Hours[o]++
		}
		all = append(all, t)
	}
	return all
}

func (m *maker) report() Report {
	return Report{Years: m.kept, Dropped: m.dropped, Tallies: m.tallies(), Notes: m.hours.Notes, Warnings: m.r.Warnings}
}
