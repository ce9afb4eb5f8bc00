package synth

import (
	"fmt"
	"math"
	"slices"

	"suffice/quantity"
	"suffice/site"
	"suffice/site/air"
	"suffice/site/weather"
)

// A diary is a record laid out by days, NaN where a day is missing. A column that the
// record does not have is nil.
type diary struct {
	place                             site.Place
	days                              []weather.Day
	rain, low, high, light, dew, wind []float64
}

// hoursMissingAllowed is how many hours of a day may be missing before the day is: those
// that weather.Complete joins by a line.
const hoursMissingAllowed = 3

// wholeDays gives the number of a record's first whole day, the rows before it, and how
// many there are, by its own clock; one in UTC is moved by the whole hours of its longitude,
// so that a day holds one daylight.
func wholeDays(r *weather.Record) (first, lead, n int) {
	if r.Step == weather.Daily {
		return r.Start, 0, r.Steps
	}
	begin := r.StartHour
	if r.Time == weather.UTC {
		begin += int(weather.SolarClock(r.Place.Longitude))
	}
	lead = ((-begin)%24 + 24) % 24
	return r.Start + (begin+lead)/24, lead, (r.Steps - lead) / 24
}

// diaryOf lays a record out by whole days.
func diaryOf(r *weather.Record) (*diary, error) {
	start, lead, n := wholeDays(r)
	if n <= 0 {
		return nil, fmt.Errorf("%s holds no whole day", r.File)
	}
	d := &diary{place: r.Place, days: make([]weather.Day, n)}
	for i := range d.days {
		d.days[i] = weather.DayOf(start + i)
	}
	take := func(c weather.Column, of func([]float64) float64) []float64 {
		return byDays(r, c, lead, n, of)
	}
	d.rain = take(weather.Rain, func(v []float64) float64 { return 24 * meanOf(v) })
	d.light = take(weather.Global, func(v []float64) float64 { return 24 * meanOf(v) / 1000 })
	d.dew, d.wind = take(weather.DewPoint, meanOf), take(weather.Wind, meanOf)
	if d.wind == nil {
		d.wind = scaled(take(weather.Wind2m, meanOf), windAt10)
	}
	if r.Step == weather.Hourly {
		d.low, d.high = take(weather.Temperature, lowest), take(weather.Temperature, highest)
	} else {
		d.low, d.high = take(weather.TemperatureMin, nil), take(weather.TemperatureMax, nil)
	}
	if d.dew == nil {
		d.dew = dewOf(take(weather.Humidity, meanOf), d.low, d.high)
	}
	return d, nil
}

// byDays gives a column by whole days, nil where the record does not have it: daily values
// as they are, hours by a function of each day's.
func byDays(r *weather.Record, c weather.Column, lead, n int, of func([]float64) float64) []float64 {
	s := r.Of(c)
	switch {
	case s == nil:
		return nil
	case r.Step == weather.Daily:
		return slices.Clone(s.Values)
	}
	out := make([]float64, n)
	for i := range out {
		out[i] = of(s.Values[lead+24*i : lead+24*i+24])
	}
	return out
}

// windAt10 turns a wind at 2 m into one at 10 m over grass (fao56 eq. 47, turned).
var windAt10 = math.Log(67.8*10-5.42) / 4.87

func scaled(v []float64, by float64) []float64 {
	for i := range v {
		v[i] *= by
	}
	return v
}

// dewOf estimates dew points from the day's mean humidity, percent, and the mean of
// lowest and highest temperature.
func dewOf(humidity, low, high []float64) []float64 {
	if humidity == nil || low == nil || high == nil {
		return nil
	}
	out := make([]float64, len(humidity))
	for i, h := range humidity {
		es := (air.Saturation(quantity.Celsius(low[i])) + air.Saturation(quantity.Celsius(high[i]))) / 2 // fao56 eq. 12
		out[i] = float64(air.DewPoint(es * min(h, 100) / 100))
	}
	return out
}

// meanOf gives the mean of a day's hours, NaN where more than three are missing.
func meanOf(v []float64) float64 {
	sum, n := 0.0, 0
	for _, x := range v {
		if !math.IsNaN(x) {
			sum, n = sum+x, n+1
		}
	}
	if n < len(v)-hoursMissingAllowed || n == 0 {
		return math.NaN()
	}
	return sum / float64(n)
}

func lowest(v []float64) float64 {
	if math.IsNaN(meanOf(v)) {
		return math.NaN()
	}
	low := math.Inf(1)
	for _, x := range v {
		if x < low {
			low = x
		}
	}
	return low
}

func highest(v []float64) float64 {
	if math.IsNaN(meanOf(v)) {
		return math.NaN()
	}
	high := math.Inf(-1)
	for _, x := range v {
		if x > high {
			high = x
		}
	}
	return high
}

// only drops the days of years that are not wanted.
func (d *diary) only(use func(year int) bool) {
	if use == nil {
		return
	}
	for i, day := range d.days {
		if use(int(day.Year)) {
			continue
		}
		for _, v := range [][]float64{d.rain, d.low, d.high, d.light, d.dew, d.wind} {
			if v != nil {
				v[i] = math.NaN()
			}
		}
	}
}
