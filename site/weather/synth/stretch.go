package synth

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"suffice/site/weather"
)

// seasonWindow is how many days from a date a sky day may come: near enough that the sun
// is alike (its height at noon moves by at most 0.4 degrees a day), far enough for choice
// (rajagopalan-lall take 14 days).
const seasonWindow = 14

// near is how many of the most alike days one is drawn from, the k-th with a chance as 1/k
// (rajagopalan-lall).
const near = 5

// A Stretched says how a sky was stretched.
type Stretched struct {
	Days    int  // of the made sky
	Own     int  // days whose own sky is in the record
	Wet     bool // whether wet and dry days were told apart
	Warm    bool // whether temperature was compared
	Widened int  // days for which fewer than five alike days stood within the season's window
	Unlike  int  // days whose sky is of a dry day for a wet one or the reverse, since the sky has no other
}

// Stretch makes a sky for every day of a gauge from a shorter sky record: a day that the
// sky has keeps its own; any other gets a sky day of the season that is alike: wet as wet
// and dry as dry, wet or dry the day before, and near in temperature and its range where
// the gauge has them. Light is carried as its share of what falls outside the air.
// Temperatures become the gauge's. Where the sky has no rain (as typical years), its days are
// wet when the gauge was on their true date. The result has the sky's columns but rain;
// weather.Combine joins it with the gauge.
func Stretch(sky, gauge *weather.Record, seed uint64) (*weather.Record, Stretched, error) {
	s, err := newStretcher(sky, gauge)
	if err != nil {
		return nil, Stretched{}, err
	}
	var draw *rand.Rand
	for i, d := range s.gauge.days {
		if d.DayOfYear == 1 || i == 0 {
			draw = stream(seed, streamStretch, int(d.Year))
		}
		from, own := s.pick(i, draw)
		s.copyDay(i, from, own)
	}
	out := s.out
	out.Notes = append([]string{s.text(gauge)}, sky.Notes...)
	return out, s.told, nil
}

// alike is what days are compared by.
type alike struct {
	day       weather.Day
	known     bool // whether the sky of the day is whole
	wet       int8 // 1 wet, 0 dry, -1 unknown
	before    int8 // the same of the day before
	mean, ran float64
}

type stretcher struct {
	sky       *weather.Record
	gauge     *diary
	days      []alike      // of the sky
	targets   []alike      // of the gauge
	bySeason  [367][]int   // sky days by day of the year
	own       map[int]int  // sky days by number
	light     [367]float64 // outside the air
	meanScale float64      // K, deviation of the gauge's mean temperature
	ranScale  float64      // K, of its range
	lead      int          // rows of the sky before its first whole day
	out       *weather.Record
	told      Stretched
	list      []candidate
}

func newStretcher(sky, gauge *weather.Record) (*stretcher, error) {
	if gauge.Of(weather.Rain) == nil {
		return nil, fmt.Errorf("%s has no rain: a sky is stretched over a gauge", gauge.File)
	}
	if sky.Of(weather.Global) == nil {
		return nil, fmt.Errorf("%s has no light to stretch", sky.File)
	}
	if !sky.Placed {
		return nil, fmt.Errorf("%s does not say where it was recorded: give its latitude and longitude", sky.File)
	}
	below, err := diaryOf(gauge)
	if err != nil {
		return nil, err
	}
	above, err := diaryOf(sky)
	if err != nil {
		return nil, err
	}
	s := &stretcher{sky: sky, gauge: below, light: outsideOf(sky.Place), own: make(map[int]int)}
	s.lead = len(sky.Series[0].Values) - len(above.days)*perDay(sky)
	if sky.Step == weather.Hourly {
		s.lead = leadOf(sky)
	}
	s.readSky(above)
	s.readTargets()
	if len(s.own) == 0 {
		return nil, fmt.Errorf("%s has no whole day of sky", sky.File)
	}
	s.begin()
	return s, nil
}

// leadOf gives the rows before an hourly record's first whole day.
func leadOf(r *weather.Record) int {
	begin := r.StartHour
	if r.Time == weather.UTC {
		begin += int(weather.SolarClock(r.Place.Longitude))
	}
	return ((-begin)%24 + 24) % 24
}

// readSky notes the sky's days, on their true dates where the year is a typical one.
func (s *stretcher) readSky(d *diary) {
	first, wet := s.gauge.days[0].Number(), s.gauge.rain
	s.days = make([]alike, len(d.days))
	for i, day := range d.days {
		number := day.Number()
		if s.sky.Typical {
			if year := int(s.sky.MonthFrom[day.Month-1]); year > 0 {
				number = weather.DayNumber(year, int(day.Month), int(day.Date))
			}
		}
		a := alike{day: day, wet: -1, before: -1, mean: math.NaN(), ran: math.NaN()}
		a.known = !math.IsNaN(d.light[i])
		if d.rain != nil {
			a.wet, a.before = wetAt(d.rain, i), wetAt(d.rain, i-1)
		} else {
			a.wet, a.before = wetAt(wet, number-first), wetAt(wet, number-first-1)
		}
		if d.low != nil && d.high != nil {
			a.mean, a.ran = (d.low[i]+d.high[i])/2, d.high[i]-d.low[i]
			a.known = a.known && !math.IsNaN(a.ran)
		}
		s.days[i] = a
		if a.known {
			s.bySeason[day.DayOfYear] = append(s.bySeason[day.DayOfYear], i)
			s.own[number] = i
		}
		s.told.Wet = s.told.Wet || a.wet >= 0
	}
}

// wetAt tells whether a day is wet: of DryDay or more, the day that people and the WMO count.
func wetAt(rain []float64, i int) int8 {
	switch {
	case i < 0 || i >= len(rain) || math.IsNaN(rain[i]):
		return -1
	case rain[i] >= weather.DryDay:
		return 1
	}
	return 0
}

func (s *stretcher) readTargets() {
	d := s.gauge
	s.targets = make([]alike, len(d.days))
	var mean, ran []float64
	for i, day := range d.days {
		a := alike{day: day, wet: wetAt(d.rain, i), before: wetAt(d.rain, i-1), mean: math.NaN(), ran: math.NaN()}
		if d.low != nil && d.high != nil && s.days[0].hasWarmth() {
			a.mean, a.ran = (d.low[i]+d.high[i])/2, d.high[i]-d.low[i]
			if !math.IsNaN(a.ran) {
				mean, ran = append(mean, a.mean), append(ran, a.ran)
			}
		}
		s.targets[i] = a
	}
	if s.told.Warm = len(mean) > 1; s.told.Warm {
		s.meanScale, s.ranScale = max(0.1, withinSeason(mean)), max(0.1, math.Sqrt(variance(ran)))
	}
}

func (a alike) hasWarmth() bool { return !math.IsNaN(a.mean) }

// withinSeason gives a deviation of temperatures that the year's course does not count
// to: of the differences of days that follow each other, over root two.
func withinSeason(v []float64) float64 {
	sum := 0.0
	for i := 1; i < len(v); i++ {
		sum += (v[i] - v[i-1]) * (v[i] - v[i-1])
	}
	return math.Sqrt(sum / float64(len(v)-1) / 2)
}

// begin makes room for the result: the gauge's days, the sky's columns but rain.
func (s *stretcher) begin() {
	r := *s.sky
	per := perDay(s.sky)
	r.File = s.sky.File + ", stretched"
	r.Typical, r.MonthFrom = false, [12]int32{}
	r.Start, r.StartHour = s.gauge.days[0].Number(), 0
	if s.sky.Time == weather.UTC && s.sky.Step == weather.Hourly {
		r.Time, r.Place.Clock = weather.SolarHours, weather.SolarClock(s.sky.Place.Longitude)
	}
	r.Steps = per * len(s.gauge.days)
	r.Warnings = slices.Clone(s.sky.Warnings)
	r.Series = nil
	for _, c := range s.sky.Series {
		if c.Column != weather.Rain {
			c.Values, c.Marks, c.Lines = make([]float64, r.Steps), nil, nil
			r.Series = append(r.Series, c)
		}
	}
	s.out = &r
	s.told.Days = len(s.gauge.days)
}

type candidate struct {
	day  int
	away float64
}

// pick gives the sky day for a day of the gauge.
func (s *stretcher) pick(i int, draw *rand.Rand) (from int, own bool) {
	t := &s.targets[i]
	u := draw.Float64() // drawn for every day, so that one day's sky never moves the next one's numbers
	if k, ok := s.own[t.day.Number()]; ok {
		s.told.Own++
		return k, true
	}
	for window := seasonWindow; ; window *= 2 {
		s.gatherNear(t, min(window, halfYear), true)
		if len(s.list) >= near || window > halfYear {
			break
		}
		if window == seasonWindow {
			s.told.Widened++
		}
	}
	if len(s.list) == 0 { // the sky has no wet day at all, or no dry one
		s.gatherNear(t, halfYear, false)
		s.told.Unlike++
	}
	sum := 0.0
	for k := range s.list {
		sum += 1 / float64(k+1)
	}
	for k, c := range s.list {
		if u -= 1 / float64(k+1) / sum; u < 0 {
			return c.day, false
		}
	}
	return s.list[len(s.list)-1].day, false
}

// halfYear is a window that holds every day of the year once.
const halfYear = 182

// gatherNear lists the most alike days within a window of the season, best first.
func (s *stretcher) gatherNear(t *alike, window int, sameWet bool) {
	s.list = s.list[:0]
	for off := -window; off <= window; off++ {
		day := (int(t.day.DayOfYear)-1+off+2*366)%366 + 1
		for _, k := range s.bySeason[day] {
			c := &s.days[k]
			if sameWet && c.wet >= 0 && t.wet >= 0 && c.wet != t.wet {
				continue
			}
			s.insert(candidate{k, s.distance(t, c)})
		}
	}
}

// insert keeps the list at the nearest few, in order.
func (s *stretcher) insert(c candidate) {
	k := len(s.list)
	for k > 0 && s.list[k-1].away > c.away {
		k--
	}
	if k >= near {
		return
	}
	s.list = slices.Insert(s.list, k, c)
	s.list = s.list[:min(near, len(s.list))]
}

// distance of two days in deviations: of temperature, of its range, and one more where the
// day before was wet beside one and dry beside the other.
func (s *stretcher) distance(t, c *alike) float64 {
	away := 0.0
	if t.before >= 0 && c.before >= 0 && t.before != c.before {
		away++
	}
	if s.told.Warm && !math.IsNaN(t.ran) {
		a, b := (t.mean-c.mean)/s.meanScale, (t.ran-c.ran)/s.ranScale
		away += a*a + b*b
	}
	return away
}

// copyDay writes a sky day onto a day of the gauge.
func (s *stretcher) copyDay(i, from int, own bool) {
	per := perDay(s.sky)
	share := 1.0
	if H := s.light[s.days[from].day.DayOfYear]; H > 0 {
		share = s.light[s.targets[i].day.DayOfYear] / H
	}
	row := s.lead + from*per
	for k := range s.out.Series {
		c := &s.out.Series[k]
		source := s.sky.Of(c.Column).Values[row : row+per]
		to := c.Values[i*per : (i+1)*per]
		copy(to, source)
		if own {
			continue
		}
		if c.Column <= weather.ClearSky {
			for h := range to {
				to[h] *= share
			}
		}
		s.warm(c.Column, to, i, from)
	}
}

// warm puts the gauge's temperatures in the place of the sky day's. Dew point and wet
// bulb move with the lowest, so that the humidity stays near the sky day's.
func (s *stretcher) warm(c weather.Column, to []float64, i, from int) {
	if !s.told.Warm || math.IsNaN(s.targets[i].ran) {
		return
	}
	low, lowSky := s.gauge.low[i], s.days[from].mean-s.days[from].ran/2
	stretch := 1.0
	if s.days[from].ran > 0 {
		stretch = s.targets[i].ran / s.days[from].ran
	}
	for h, v := range to {
		switch c {
		case weather.Temperature, weather.TemperatureMin, weather.TemperatureMax:
			to[h] = low + (v-lowSky)*stretch
		case weather.DewPoint, weather.WetBulb:
			to[h] = v + low - lowSky
		}
	}
}

func (s *stretcher) text(gauge *weather.Record) string {
	by := "the season"
	if s.told.Wet {
		by += ", wet or dry"
	}
	if s.told.Warm {
		by += ", temperature and its range"
	}
	if s.told.Unlike > 0 {
		by += fmt.Sprintf(", but for %d days whose like the sky does not have", s.told.Unlike)
	}
	return fmt.Sprintf("the sky of %s is stretched over the days of %s: %d of %d days have their own; the others that of a day alike in %s (%d of them from outside %d days of the season)",
		s.sky.File, gauge.File, s.told.Own, s.told.Days, by, s.told.Widened, seasonWindow)
}
