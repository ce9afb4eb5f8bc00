package synth

import (
	"math"

	"suffice/site/weather"
)

// Usual are the figures that normals fall back on, as one record or a set of records
// gives them.
type Usual struct {
	WetAmount, Mean, Vary     float64 // of a gauge
	Between                   Between
	Warmth, WetCooler, Dulled float64 // of a sky
	Narrowed, SpanVary        float64
	Today, Before             [3][3]float64
}

// UsualNow are the constants in use.
func UsualNow() (u Usual, power float64) {
	return Usual{usualWetAmount, 500, usualVary, Between{Chance: usualChance, Amount: usualAmount, Memory: usualMemory}, usualWarmth, usualWetCooler, usualDulled, usualNarrowed, usualSpanVary,
		usualToday, usualBefore}, usualVaryPower
}

// UsualGauge reads the figures off a gauge.
func UsualGauge(r *weather.Record, use func(int) bool) (u Usual, err error) {
	g, err := Fit(r, use)
	if err != nil {
		return u, err
	}
	d, err := diaryOf(r)
	if err != nil {
		return u, err
	}
	d.only(use)
	n := 0.0
	for _, v := range d.rain {
		if v >= weather.DryDay {
			n, u.WetAmount = n+1, u.WetAmount+v
		}
	}
	u.WetAmount /= n
	year := d.complete().variances().year
	u.Mean, u.Between = g.Rain.PerYear(), g.Rain.Between
	u.Vary = math.Sqrt(year) / u.Mean
	return u, nil
}

// UsualSky reads the figures off a record with light, temperature and rain.
func UsualSky(r *weather.Record) (u Usual, err error) {
	d, err := diaryOf(r)
	if err != nil {
		return u, err
	}
	d.dew, d.wind = nil, nil
	s := (&Generator{}).fitSky(d)
	values := s.valuesOf(d)
	var n, sums [2][3]float64
	var squares [2]float64
	for i := range values {
		w := d.wetOf(i)
		for k := range 3 {
			if v := values[i][k]; !math.IsNaN(v) {
				n[w][k], sums[w][k] = n[w][k]+1, sums[w][k]+v
			}
		}
	}
	var mean [2][3]float64
	for w := range 2 {
		for k := range 3 {
			mean[w][k] = sums[w][k] / n[w][k]
		}
	}
	all := 0.0
	for i := range values {
		w := d.wetOf(i)
		if v := values[i]; !math.IsNaN(v[warmth]) {
			squares[0] += math.Pow(v[warmth]-s.Spread[warmth][d.days[i].Month-1][w].Mean(), 2)
			squares[1] += math.Pow(v[span]/s.Spread[span][d.days[i].Month-1][w].Mean()-1, 2)
			all++
		}
	}
	u.Warmth, u.SpanVary = math.Sqrt(squares[0]/all), math.Sqrt(squares[1]/all)
	u.WetCooler = mean[0][warmth] - mean[1][warmth]
	u.Dulled, u.Narrowed = mean[1][clear]/mean[0][clear], mean[1][span]/mean[0][span]
	today, before := momentsOf(s.scores(d, values))
	today, before = correlations(today, before, s.Has)
	for a := range 3 {
		for b := range 3 {
			u.Today[a][b], u.Before[a][b] = today[a][b], before[a][b]
		}
	}
	return u, nil
}

// OutsideOf is the light outside the air by day of the year.
var OutsideOf = outsideOf

// ClearnessShape and HollandsHuget are the distribution of clearness.
var (
	ClearnessShape = clearnessShape
	HollandsHuget  = hollandsHuget
)

// MeanDays are the days of a month in the mean over the years.
func MeanDays(m int) float64 { return meanDays[m] }
