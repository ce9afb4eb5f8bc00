package synth

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"suffice/site/weather"
)

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
		s.yesterday = s.days[from].clear
		s.copyDay(i, from, own)
	}
	out := s.out
	out.Notes = append([]string{s.text(gauge)}, sky.Notes...)
	return out, s.told, nil
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
	yesterday float64      // clearness of the sky given to the day before
	clearness float64      // deviation of clearness
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
	_, s.lead, _ = wholeDays(sky)
	s.readSky(above)
	s.readTargets()
	if len(s.own) == 0 {
		return nil, fmt.Errorf("%s has no whole day of sky", sky.File)
	}
	s.begin()
	return s, nil
}

// readSky notes the sky's days, on their true dates where the year is a typical one.
func (s *stretcher) readSky(d *diary) {
	first, wet := s.gauge.days[0].Number(), s.gauge.rain
	s.days = make([]alike, len(d.days))
	var clearness []float64
	for i, day := range d.days {
		number := day.Number()
		if s.sky.Typical {
			if year := int(s.sky.MonthFrom[day.Month-1]); year > 0 {
				number = weather.DayNumber(year, int(day.Month), int(day.Date))
			}
		}
		a := alike{day: day, wet: -1, before: -1, mean: math.NaN(), ran: math.NaN(), clear: math.NaN()}
		if H := s.light[day.DayOfYear]; H > 0 && !math.IsNaN(d.light[i]) {
			a.known, a.clear = true, d.light[i]/H
			clearness = append(clearness, a.clear)
		}
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
	s.yesterday, s.clearness = math.NaN(), 1
	if len(clearness) > 1 {
		s.clearness = max(0.01, math.Sqrt(variance(clearness)))
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
	warm := slices.ContainsFunc(s.days, func(a alike) bool { return !math.IsNaN(a.mean) })
	var mean, ran []float64
	for i, day := range d.days {
		a := alike{day: day, wet: wetAt(d.rain, i), before: wetAt(d.rain, i-1), mean: math.NaN(), ran: math.NaN()}
		if d.low != nil && d.high != nil && warm {
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

// begin makes room for the result: the gauge's days, the sky's columns but rain.
func (s *stretcher) begin() {
	r := *s.sky
	per := perDay(s.sky)
	r.File, r.Format = s.sky.File+", stretched", s.sky.Format+", stretched"
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
		if c.Column <= weather.ClearSky && c.Column != weather.Beam { // facing the sun, it knows no season
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
