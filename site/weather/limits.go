package weather

import (
	"math"
	"slices"

	"suffice/site/sun"
)

// limits gives the most that light and rain can be in each row of a record.
type limits struct {
	r     *Record
	track *sun.Track       // for hourly records of a known place
	days  [367]sun.Outside // by day of the year, for daily records of a known place
}

func newLimits(r *Record) *limits {
	l := &limits{r: r}
	switch {
	case !r.Placed || !slices.ContainsFunc(r.Series, func(s Series) bool { return s.Column.light() }):
	case r.Step == Hourly:
		l.track = r.track()
	default:
		for day := 1; day < len(l.days); day++ {
			l.days[day] = sun.OutsideDay(r.Place.Latitude, day)
		}
	}
	return l
}

func (l *limits) highest(c Column, i int) float64 {
	switch {
	case c == Rain && l.r.Step == Daily:
		return 1825 // mm in 24 h, Foc-Foc 1966 (wmo-extremes)
	case c == Rain:
		return traits[Rain].high
	case l.r.Step == Daily:
		return l.highestDay(c, i)
	case l.track == nil:
		return traits[c].high
	}
	k := l.r.StartHour + i
	mu := 0.0
	if l.track.Share[k] > 0 {
		mu = max(0, l.track.CosZenith[k])
	}
	Sa := l.track.Normal[k]
	switch c { // long-shi, "physically possible" limits, W/m2
	case Beam:
		return Sa
	case Diffuse:
		return Sa*0.95*math.Pow(mu, 1.2) + 50
	default:
		return Sa*1.5*math.Pow(mu, 1.2) + 100
	}
}

// highestDay gives the most light of a day in kWh/m2: what falls outside the air.
func (l *limits) highestDay(c Column, i int) float64 {
	if !l.r.Placed {
		if c == Beam {
			return 24 * 1.42
		}
		return 13.5 // the pole at midsummer: fao56 eq. 21 gives 13.2
	}
	out := &l.days[DayOf(l.r.Start+i).DayOfYear]
	if c == Beam {
		return out.DayLength * sun.SolarConstant * out.Distance / 1000
	}
	return out.Ra / 3.6
}

const (
	// dullest and clearest bound the share of the light outside the air that reaches the
	// ground over a whole record. Long means run from 0.3 (cloudy coasts) to 0.75 (deserts),
	// common knowledge of radiation maps, no source: outside these wider bounds the unit is
	// likely to be another.
	dullest, clearest = 0.2, 0.85
	// leastDays is how many days of light are asked for before their mean is judged.
	leastDays = 60
)

// checkClearness warns of light that is all too low or too high for the place, as a wrong
// unit makes it.
func (r *Record) checkClearness(l *limits) {
	s := r.Of(Global)
	if s == nil || !r.Placed {
		return
	}
	var light, outside float64
	rows := 0
	for i, v := range s.Values {
		if math.IsNaN(v) {
			continue
		}
		rows++
		light += v
		if r.Step == Daily {
			outside += l.days[DayOf(r.Start+i).DayOfYear].Ra / 3.6
		} else if k := r.StartHour + i; l.track.Share[k] > 0 {
			outside += l.track.Normal[k] * max(0, l.track.CosZenith[k]) * l.track.Share[k]
		}
	}
	if share := light / outside; rows >= leastDays*r.Step.perDay() && (share < dullest || share > clearest) {
		r.warn("global (%s) sums to %.2g of the light outside the air, seldom under %g or over %g: look at its unit (read as %q)",
			s.Source, share, dullest, clearest, s.Unit)
	}
}
