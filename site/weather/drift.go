package weather

import (
	"fmt"
	"math"
	"slices"
)

const (
	// leastYears is how many complete years are asked for before a trend or jump is looked for:
	// below ten the normal and exponential approximations do not hold (kendall-1975).
	leastYears = 10
	// byChance is the probability below which a trend or jump is told: in one of a hundred
	// records without any it will be told all the same. Common practice, no source.
	byChance = 0.01
)

// A Trend is a rise or fall of yearly values that chance seldom makes.
type Trend struct {
	Column      string  `json:"column"`
	PerDecade   float64 `json:"per_decade"` // median of the slopes between all pairs of years (sen-1968)
	Unit        string  `json:"unit"`
	Probability float64 `json:"probability"` // of so large a score by chance (kendall-1975)
}

// A Jump is a year from which yearly values lie elsewhere than before.
type Jump struct {
	Column      string  `json:"column"`
	From        int     `json:"from"` // the first year after it
	Before      float64 `json:"before"`
	After       float64 `json:"after"`
	Unit        string  `json:"unit"`
	Probability float64 `json:"probability"` // of so large a statistic by chance (pettitt-1979)
}

// yearly is a column's values by complete years.
type yearly struct {
	column, unit string
	years        []int
	values       []float64
}

// yearlies gives what trends and jumps are looked for in: rain, light, temperature.
func (d *daily) yearlies() []yearly {
	var all []yearly
	add := func(c Column, unit string, v []float64, of func(y yearOf) float64) {
		y := yearly{column: c.String(), unit: unit}
		for _, x := range d.complete(v) {
			y.years, y.values = append(y.years, x.year), append(y.values, of(x))
		}
		if len(y.years) >= leastYears {
			all = append(all, y)
		}
	}
	sum := func(y yearOf) float64 { return y.sum }
	add(Rain, "mm", d.rain, sum)
	add(Global, "kWh/m2", d.light, sum)
	add(Temperature, "degC", d.mean, func(y yearOf) float64 { return y.sum / float64(y.days) })
	return all
}

// trend gives the probability of the score by chance, and the slope a year.
func trend(years []int, x []float64) (probability, slope float64) {
	n := len(x)
	S := 0.0
	slopes := make([]float64, 0, n*(n-1)/2)
	for j := range x {
		for i := range j {
			S += float64(sign(x[j] - x[i]))
			slopes = append(slopes, (x[j]-x[i])/float64(years[j]-years[i]))
		}
	}
	N := float64(n)
	variance := N * (N - 1) * (2*N + 5) // kendall-1975, 18 times it
	for _, t := range ties(x) {
		variance -= t * (t - 1) * (2*t + 5)
	}
	slices.Sort(slopes)
	if variance <= 0 || S == 0 {
		return 1, quantile(slopes, 0.5)
	}
	Z := (math.Abs(S) - 1) / math.Sqrt(variance/18)
	return math.Erfc(Z / math.Sqrt2), quantile(slopes, 0.5)
}

func sign(v float64) int { return b2i(v > 0) - b2i(v < 0) }

// ties gives the sizes of groups of equal values.
func ties(x []float64) []float64 {
	sorted := slices.Sorted(slices.Values(x))
	var sizes []float64
	for i := 0; i < len(sorted); {
		j := i
		for j < len(sorted) && sorted[j] == sorted[i] {
			j++
		}
		sizes, i = append(sizes, float64(j-i)), j
	}
	return sizes
}

// jump gives the place from which values lie elsewhere, and the probability of so large a
// statistic by chance.
func jump(x []float64) (at int, probability float64) {
	n := len(x)
	U, K := 0, 0
	for t := 0; t < n-1; t++ {
		for _, v := range x { // U(t) = U(t-1) + sum of sgn(x_t - x_j) over all j, pettitt-1979 eq. 2.4
			U += sign(x[t] - v)
		}
		if u := max(U, -U); u > K {
			K, at = u, t+1
		}
	}
	N, k := float64(n), float64(K)
	return at, min(1, 2*math.Exp(-6*k*k/(N*N*N+N*N)))
}

// drift looks for trends and jumps in the yearly values, and warns of each.
func (s *Summary) drift(d *daily) {
	s.Trends, s.Jumps = []Trend{}, []Jump{}
	for _, y := range d.yearlies() {
		if p, slope := trend(y.years, y.values); p < byChance {
			t := Trend{y.column, round(10*slope, 3), y.unit, p}
			s.Trends = append(s.Trends, t)
			s.Warnings = append(s.Warnings, fmt.Sprintf("%s: the yearly values %s by %.3g %s in ten years, which chance makes in fewer than 1 of 100 such records: the past may be no guide",
				y.column, [2]string{"rise", "fall"}[b2i(slope < 0)], math.Abs(t.PerDecade), y.unit))
		}
		if at, p := jump(y.values); p < byChance {
			j := Jump{y.column, y.years[at], round(mean(y.values[:at]), 2), round(mean(y.values[at:]), 2), y.unit, p}
			s.Jumps = append(s.Jumps, j)
			s.Warnings = append(s.Warnings, fmt.Sprintf("%s: the %d years before %d have %.4g %s in the mean, the %d from it on %.4g, which chance makes in fewer than 1 of 100 such records: "+
				"a moved gauge, a changed product, or a trend", y.column, at, j.From, j.Before, y.unit, len(y.values)-at, j.After))
		}
	}
}

func mean(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	return sum / float64(len(v))
}
