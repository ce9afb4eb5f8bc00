package synth

import (
	"suffice/site"
	"suffice/site/sun"
	"suffice/site/weather"
)

// The things of a day that the sky's memory carries, in this order.
const (
	warmth = iota // K, mean of lowest and highest temperature beside the season's
	span          // K, highest less lowest
	clear         // share of the light outside the air that reaches the ground, 0 to 1
	damp          // K, lowest temperature less dew point
	windy         // m/s at 10 m
	things
)

// Sky makes temperature, light, dew point and wind of days that are known to be wet or
// dry. Each thing has, for every month, its own distribution on dry and on wet days; what joins
// them is a Gaussian vector that keeps part of yesterday's value (richardson-1981, eq. 12
// to 14, on the normal scores, as graham-hollands do for clearness). The range is drawn
// and not the two extremes, so that the lowest is never above the highest.
type Sky struct {
	Has     [things]bool
	Season  [12]float64             // degC, mean of the month, of lowest and highest
	Spread  [things][12][2]Spread   // by month; dry 0, wet 1
	Keep    [things][things]float64 // what today keeps of yesterday
	Shock   [things][things]float64 // what is new, lower triangle
	ByRange bool                    // light is left to be made from the range of temperature
}

// make draws the columns of days that follow each other.
func (s *Sky) make(p site.Place, days []weather.Day, wet []bool, seed uint64) []weather.Series {
	columns := s.columns(len(days))
	season := seasonOf(s.Season)
	outside := outsideOf(p)
	var z [things]float64
	draw := stream(seed, streamSky, int(days[0].Year)-1)
	for range warmUp {
		s.step(&z, draw.NormFloat64)
	}
	for i, d := range days {
		if d.DayOfYear == 1 {
			draw = stream(seed, streamSky, int(d.Year))
		}
		s.step(&z, draw.NormFloat64)
		w := 0
		if wet[i] {
			w = 1
		}
		var v [things]float64
		for k := range v {
			if s.Has[k] {
				v[k] = s.Spread[k][d.Month-1][w].At(below(z[k]))
			}
		}
		columns.set(i, season[d.DayOfYear], v, outside[d.DayOfYear])
	}
	return columns.list()
}

// warmUp is how many days are drawn before the first, so that it does not begin at the
// mean: at a keep of 0.9 two in a thousand of the beginning are left.
const warmUp = 60

func (s *Sky) step(z *[things]float64, draw func() float64) {
	var e, next [things]float64
	for k := range e {
		e[k] = draw()
	}
	for k := range next {
		for j := range next {
			next[k] += s.Keep[k][j]*z[j] + s.Shock[k][j]*e[j]
		}
	}
	*z = next
}

// skyColumns are the columns as they are made; nil where the sky has none.
type skyColumns struct{ low, high, light, dew, wind []float64 }

func (s *Sky) columns(n int) *skyColumns {
	c := new(skyColumns)
	some := func(has bool) []float64 {
		if !has {
			return nil
		}
		return make([]float64, n)
	}
	warm := s.Has[warmth] && s.Has[span]
	c.low, c.high = some(warm), some(warm)
	c.light, c.dew, c.wind = some(s.Has[clear]), some(warm && s.Has[damp]), some(s.Has[windy])
	return c
}

func (c *skyColumns) set(i int, season float64, v [things]float64, outside float64) {
	if c.low != nil {
		c.low[i], c.high[i] = season+v[warmth]-v[span]/2, season+v[warmth]+v[span]/2
	}
	if c.light != nil {
		c.light[i] = v[clear] * outside
	}
	if c.dew != nil {
		c.dew[i] = c.low[i] - v[damp]
	}
	if c.wind != nil {
		c.wind[i] = v[windy]
	}
}

func (c *skyColumns) list() (all []weather.Series) {
	add := func(col weather.Column, values []float64) {
		if values != nil {
			all = append(all, series(col, values))
		}
	}
	add(weather.Global, c.light)
	add(weather.TemperatureMin, c.low)
	add(weather.TemperatureMax, c.high)
	add(weather.DewPoint, c.dew)
	add(weather.Wind, c.wind)
	return all
}

// outsideOf gives the light outside the air on the horizontal, kWh/m2, by day of the year.
func outsideOf(p site.Place) (out [367]float64) {
	for day := 1; day < len(out); day++ {
		out[day] = sun.OutsideDay(p.Latitude, day).Ra / 3.6
	}
	return out
}

// seasonOf draws a course of days through twelve monthly means and keeps them: straight
// from the middle of a month to its end, where it meets the next.
func seasonOf(means [12]float64) (days [367]float64) {
	knots := means
	for range 60 { // (before + 6 middle + after)/8 is the mean of the two straight parts
		for m := range knots {
			knots[m] = (8*means[m] - knots[(m+11)%12] - knots[(m+1)%12]) / 6
		}
	}
	for n := range 366 {
		d := weather.DayOf(weather.DayNumber(2000, 1, 1) + n)
		m := int(d.Month) - 1
		x := (float64(d.Date) - 0.5) / float64(weather.MonthDays(2000, m+1)) // 0 to 1 over the month
		edge := (knots[m] + knots[(m+11)%12]) / 2
		share := 1 - 2*x
		if x > 0.5 {
			edge, share = (knots[m]+knots[(m+1)%12])/2, 2*x-1
		}
		days[n+1] = knots[m] + share*(edge-knots[m])
	}
	return days
}
