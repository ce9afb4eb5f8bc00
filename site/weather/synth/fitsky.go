package synth

import (
	"math"
	"slices"
)

// leastDays is how many days a distribution is taken from. A month with fewer of its
// kind (rain in a dry season) borrows from the months beside it, then from the whole year.
// Common practice, no source.
const leastDays = 40

// fitSky reads the sky off a record. It is nil where there is none.
func (g *Generator) fitSky(d *diary) *Sky {
	s := new(Sky)
	s.Has[warmth] = d.low != nil && d.high != nil
	s.Has[span] = s.Has[warmth]
	s.Has[clear] = d.light != nil
	s.Has[damp] = d.dew != nil && s.Has[warmth]
	s.Has[windy] = d.wind != nil
	if !s.Has[warmth] && !s.Has[clear] {
		return nil
	}
	values := s.valuesOf(d)
	s.fitSpreads(d, values)
	s.fitMemory(s.scores(d, values))
	g.saySky(s)
	return s
}

func (g *Generator) saySky(s *Sky) {
	g.say("the sky's days are drawn from the record's own distributions by month, for wet and for dry days, and follow each other with the record's correlations")
	if !s.Has[clear] {
		g.say("the record has no light")
	}
	if s.Has[warmth] && !s.Has[damp] {
		g.say("the record has no moisture")
	}
}

// valuesOf gives the five things of each day, NaN where unknown.
func (s *Sky) valuesOf(d *diary) [][things]float64 {
	outside := outsideOf(d.place)
	out := make([][things]float64, len(d.days))
	for i, day := range d.days {
		v := &out[i]
		for k := range v {
			v[k] = math.NaN()
		}
		if s.Has[warmth] {
			v[warmth], v[span] = (d.low[i]+d.high[i])/2, d.high[i]-d.low[i]
		}
		if H := outside[day.DayOfYear]; s.Has[clear] && H > 0.1 {
			v[clear] = d.light[i] / H
		}
		if s.Has[damp] {
			v[damp] = d.low[i] - d.dew[i]
		}
		if s.Has[windy] {
			v[windy] = d.wind[i]
		}
	}
	s.Season = seasonMeans(d, out)
	season := seasonOf(s.Season)
	for i, day := range d.days {
		out[i][warmth] -= season[day.DayOfYear]
	}
	return out
}

func seasonMeans(d *diary, values [][things]float64) (mean [12]float64) {
	var n [12]float64
	for i, day := range d.days {
		if v := values[i][warmth]; !math.IsNaN(v) {
			mean[day.Month-1] += v
			n[day.Month-1]++
		}
	}
	for m := range mean {
		if n[m] > 0 {
			mean[m] /= n[m]
		}
	}
	return mean
}

// wetOf gives 1 on wet days, 0 on dry ones and where nobody knows.
func (d *diary) wetOf(i int) int {
	if d.rain != nil && d.rain[i] >= GaugeWetDay {
		return 1
	}
	return 0
}

// fitSpreads takes the distributions.
func (s *Sky) fitSpreads(d *diary, values [][things]float64) {
	for k := range s.Spread {
		if !s.Has[k] {
			continue
		}
		var cell [12][2][]float64
		for i, day := range d.days {
			if v := values[i][k]; !math.IsNaN(v) {
				c := &cell[day.Month-1][d.wetOf(i)]
				*c = append(*c, v)
			}
		}
		for m := range cell {
			for w := range 2 {
				s.Spread[k][m][w] = spreadOf(gather(&cell, m, w))
			}
		}
	}
}

// gather gives the values of one kind of day in a month, with those of its neighbours
// where it has too few of its own, and of either kind where there are none at all.
func gather(cell *[12][2][]float64, m, w int) []float64 {
	all := slices.Clone(cell[m][w])
	for reach := 1; len(all) < leastDays && reach <= 6; reach++ {
		all = append(all, cell[(m+reach)%12][w]...)
		if reach < 6 {
			all = append(all, cell[(m+12-reach)%12][w]...)
		}
	}
	if len(all) == 0 {
		return cell[m][1-w]
	}
	return all
}

// spreadOf lays values out as quantiles, so that the mean of the quantiles is the mean of the values.
func spreadOf(values []float64) (s Spread) {
	if len(values) == 0 {
		return s
	}
	sorted := slices.Sorted(slices.Values(values))
	n := float64(len(sorted))
	for i := range s {
		x := max(0, min(n-1, float64(i)/(quantiles-1)*n-0.5))
		k := min(int(x), len(sorted)-2)
		if k < 0 {
			s[i] = sorted[0]
			continue
		}
		s[i] = sorted[k] + (x-float64(k))*(sorted[k+1]-sorted[k])
	}
	return s
}

// scores turns values into Gaussian ones: each by its place in its distribution.
func (s *Sky) scores(d *diary, values [][things]float64) [][things]float64 {
	for i, day := range d.days {
		for k := range values[i] {
			if v := values[i][k]; s.Has[k] && !math.IsNaN(v) {
				values[i][k] = gaussian(s.Spread[k][day.Month-1][d.wetOf(i)].place(v))
			}
		}
	}
	return values
}

// place gives the probability of a value, kept half a step from the ends.
func (s *Spread) place(v float64) float64 {
	i, _ := slices.BinarySearch(s[:], v)
	p := float64(i)
	if i > 0 && i < quantiles && s[i] > s[i-1] {
		p = float64(i-1) + (v-s[i-1])/(s[i]-s[i-1])
	}
	return max(0.5, min(quantiles-1.5, p)) / (quantiles - 1)
}

// gaussian gives the z below which lies a probability.
func gaussian(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

// fitMemory finds Keep and Shock from the correlations of days that follow each other.
func (s *Sky) fitMemory(z [][things]float64) {
	today, before := momentsOf(z)
	s.setMemory(correlations(today, before, s.Has))
}

// momentsOf gives the mean products of scores on a day, and with those of the day before.
func momentsOf(z [][things]float64) (today, before matrix) {
	var n, nBefore matrix
	add := func(sum, n *matrix, a, b int, x float64) {
		if !math.IsNaN(x) {
			sum[a][b], n[a][b] = sum[a][b]+x, n[a][b]+1
		}
	}
	for i := range z {
		for a := range things {
			for b := range things {
				add(&today, &n, a, b, z[i][a]*z[i][b])
				if i > 0 {
					add(&before, &nBefore, a, b, z[i][a]*z[i-1][b])
				}
			}
		}
	}
	for a := range things {
		for b := range things {
			today[a][b] /= max(1, n[a][b])
			before[a][b] /= max(1, nBefore[a][b])
		}
	}
	return today, before
}

// setMemory takes the correlations of a day with itself and with the day before
// (richardson-1981, eq. 12 to 14): Keep = M1 M0^-1, Shock Shock' = M0 - Keep M1'.
func (s *Sky) setMemory(m0, m1 matrix) {
	keep := m1.times(m0.inverse())
	s.Keep = keep
	s.Shock = m0.less(keep.times(m1.turned())).lower()
}

// correlations scales covariances to unit variance; things the record does not have are
// left alone.
func correlations(m0, m1 matrix, has [things]bool) (c0, c1 matrix) {
	for a := range things {
		for b := range things {
			if scale := math.Sqrt(m0[a][a] * m0[b][b]); has[a] && has[b] && scale > 0 {
				c0[a][b], c1[a][b] = m0[a][b]/scale, m1[a][b]/scale
			}
		}
		c0[a][a] = 1
	}
	return c0, c1
}
