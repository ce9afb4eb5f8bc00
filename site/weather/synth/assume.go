package synth

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/site"
	"suffice/site/air"
	"suffice/site/sun"
	"suffice/site/weather"
)

// What is taken where normals do not say. The figures are means over the stations whose
// records stand beside the tests, which recompute them: nine gauges of GHCN-Daily and,
// for the sky, thirteen stations of USCRN in 2020. The spread of single stations is given
// beside each: it is how wrong an assumption may be.
const (
	usualWetAmount = 9.5  // mm on a day of 1 mm or more; stations 5.4 to 15.5
	usualVary      = 0.29 // deviation of yearly rain as a share of its mean at 500 mm a year; a station is off by a factor of up to 1.5
	usualVaryPower = 0.26 // by which it falls with the mean
	usualChance    = 0.29 // of the index, see Between; stations 0.08 to 0.58
	usualAmount    = 0.17 // stations 0.07 to 0.32
	usualMemory    = 34   // days; stations 15 to 90, the least and the most that are looked for
	usualWarmth    = 3.4  // K, deviation of a day's temperature within the month; 1.3 by the sea to 5.2 inland
	usualWetCooler = 0.6  // K by which wet days are colder; stations -1.5 to 3.6
	usualDulled    = 0.64 // clearness of wet days as a share of that of dry ones; stations 0.51 to 0.79
	usualNarrowed  = 0.72 // range of temperature of wet days as a share of that of dry ones; 0.52 to 0.83
	usualSpanVary  = 0.29 // deviation of the range as a share of its mean; 0.20 to 0.36
	usualSpan      = 10.0 // K, range of temperature where neither it nor light is known; common practice, no source
)

// usualToday and usualBefore are the correlations of warmth, range and clearness on a day
// and with the day before, as normal scores, means over the thirteen stations.
var (
	usualToday  = [3][3]float64{{1, 0.08, -0.07}, {0.08, 1, 0.47}, {-0.07, 0.47, 1}}
	usualBefore = [3][3]float64{{0.62, 0.17, -0.04}, {-0.07, 0.29, 0.29}, {-0.09, 0.10, 0.23}}
)

// Coefficients of FAO-56: eq. 35 (sunshine) and eq. 50 (range of temperature).
const (
	overcastShare, sunnyShare = 0.25, 0.50
	interior, coast           = 0.16, 0.19
)

// Generator makes a generator of normals: it reports what contradicts itself, all at
// once, and its notes say what each thing was made from and what was assumed.
func (n *Normals) Generator() (*Generator, error) {
	if err := n.Faults(); err != nil {
		return nil, err
	}
	g := &Generator{Place: n.Place}
	g.say("made from monthly normals")
	if n.Rain != nil {
		if err := g.assumeRain(n); err != nil {
			return nil, err
		}
	} else {
		g.say("the normals tell nothing of rain: none is made")
	}
	g.assumeSky(n)
	if g.Rain == nil && g.Sky == nil {
		return nil, errors.New("the normals hold neither rain nor light nor temperature: give at least one of them")
	}
	return g, nil
}

// assumeRain makes the chain by the rules of geng-1986.
func (g *Generator) assumeRain(n *Normals) error {
	r := &Rain{WetDay: n.wetDay()}
	held := 0
	for m := range r.Months {
		days := n.Rain[m] / usualWetAmount
		if n.WetDays != nil {
			days = n.WetDays[m]
		}
		p := &r.Months[m]
		p.Amount, p.Shape = r.WetDay, 1
		if days <= 0 {
			continue
		}
		share := min(days/meanDays[m], 0.97)
		p.AfterDry = 0.75 * share // geng-1986 eq. 5, remembered
		p.AfterWet = 0.25 + p.AfterDry
		p.Amount = max(r.WetDay*1.01, n.Rain[m]/(share*meanDays[m]))
		if scale := 1.83*p.Amount - 2.16; scale > p.Amount { // geng-1986 eq. 7, remembered
			p.Shape = p.Amount / scale
		} else {
			held++
		}
	}
	g.Rain = r
	g.say("rain: chain of wet (%.3g mm or more) and dry days with gamma amounts, from monthly rain and wet days by the rules of Geng et al. (1986)", r.WetDay)
	if n.WetDays == nil {
		g.say("assumed: %.1f mm of rain on a wet day, since the number of wet days is not given (gauges that were looked at: 5.4 to 15.5)", usualWetAmount)
	}
	if held > 0 {
		g.say("in %d months the wet days are so light that the rule for their spread does not hold: an exponential one is taken", held)
	}
	return g.assumeYears(n)
}

// assumeYears sets how much years differ.
func (g *Generator) assumeYears(n *Normals) error {
	r := g.Rain
	mean := r.PerYear()
	if mean == 0 {
		g.say("no rain falls in any month")
		return nil
	}
	deviation := n.Deviation
	if deviation == 0 {
		deviation = mean * usualVary * math.Pow(mean/500, -usualVaryPower)
		g.say("assumed: yearly rain deviates by %.0f mm (%.0f %% of its mean), since nothing is stated; gauges of that rain are off by up to half of it: droughts are as uncertain", deviation, 100*deviation/mean)
	}
	plain := math.Sqrt(r.Moments().YearVary)
	if r.reach(deviation) {
		g.say("yearly rain deviates by %.0f mm; the daily chain alone would give %.0f: wet and dry times that fade within %d days make up the rest (assumed as at nine gauges)", deviation, plain, usualMemory)
		return nil
	}
	made := math.Sqrt(r.Moments().YearVary)
	if n.Deviation == 0 {
		g.say("that is less than the chain alone gives: yearly rain deviates by %.0f mm", made)
		return nil
	}
	return fmt.Errorf("yearly rain cannot deviate by %.0f mm: with these wet days the least is %.0f mm and the most %.0f: look at wet days and deviation", deviation, plain, r.most())
}

// most gives the largest deviation of yearly rain that the index can make, mm.
func (r *Rain) most() float64 {
	wild := *r
	wild.Between = usualIndex(strongest)
	return math.Sqrt(wild.Moments().YearVary)
}

// assumeSky makes the sky.
func (g *Generator) assumeSky(n *Normals) {
	s := new(Sky)
	clearness, has := n.clearness(g)
	s.Has[clear] = has
	s.Has[warmth] = n.High != nil || n.Mean != nil
	s.Has[span] = s.Has[warmth]
	s.Has[damp] = s.Has[warmth] && (n.Dew != nil || n.Humidity != nil)
	s.Has[windy] = n.Wind != nil
	if !s.Has[warmth] && !s.Has[clear] {
		g.say("the normals tell nothing of light and temperature: no sky is made")
		return
	}
	g.Sky = s
	wet := g.wetShares()
	for m := range 12 {
		if has {
			dry := parted(clearness[m], wet[m], usualDulled)
			s.Spread[clear][m] = [2]Spread{hollandsHuget(dry), hollandsHuget(dry * usualDulled)}
		}
		if s.Has[warmth] {
			n.warmthOf(s, m, wet[m], clearness[m])
		}
		if n.Wind != nil {
			s.Spread[windy][m] = [2]Spread{even(n.Wind[m]), even(n.Wind[m])}
		}
	}
	s.setMemory(usualMatrices(s.Has))
	g.sayAssumed(n, s)
}

// wetShares gives the long-run share of wet days of each month.
func (g *Generator) wetShares() (wet [12]float64) {
	if g.Rain == nil {
		return wet
	}
	for m := range wet {
		wet[m] = g.Rain.Months[m].WetShare()
	}
	return wet
}

// parted gives the mean of dry days, where wet ones have a share of it and both together a mean.
func parted(mean, wet, share float64) float64 { return mean / (1 - wet + wet*share) }

// warmthOf sets temperature, range and dew point of a month.
func (n *Normals) warmthOf(s *Sky, m int, wet, clearness float64) {
	width := usualSpan
	switch {
	case n.High != nil:
		s.Season[m], width = (n.High[m]+n.Low[m])/2, n.High[m]-n.Low[m]
	default:
		s.Season[m] = n.Mean[m]
		if s.Has[clear] { // fao56 eq. 50, turned
			width = math.Pow(clearness/n.kRs(), 2)
		}
	}
	s.Spread[warmth][m] = [2]Spread{bell(usualWetCooler*wet, usualWarmth), bell(usualWetCooler*(wet-1), usualWarmth)}
	dry := parted(width, wet, usualNarrowed)
	s.Spread[span][m] = [2]Spread{bell(dry, usualSpanVary*dry), bell(dry*usualNarrowed, usualSpanVary*dry*usualNarrowed)}
	if !s.Has[damp] {
		return
	}
	low, high := s.Season[m]-width/2, s.Season[m]+width/2
	var dew float64
	if n.Dew != nil {
		dew = n.Dew[m]
	} else {
		es := (air.Saturation(quantity.Celsius(low)) + air.Saturation(quantity.Celsius(high))) / 2 // fao56 eq. 12
		dew = float64(air.DewPoint(es * n.Humidity[m] / 100))                                      // fao56 eq. 19
	}
	s.Spread[damp][m] = [2]Spread{even(low - dew), even(low - dew)}
}

func (n *Normals) kRs() float64 {
	if n.Coast {
		return coast
	}
	return interior
}

// clearness gives the monthly mean clearness from what is known, best first.
func (n *Normals) clearness(g *Generator) (k [12]float64, has bool) {
	outside, length := monthsOutside(n.Place)
	switch {
	case n.Clearness != nil:
		g.say("light: from the stated clearness")
		return *n.Clearness, true
	case n.Light != nil:
		g.say("light: from the stated monthly light")
		for m := range k {
			if outside[m] > 0.01 {
				k[m] = n.Light[m] / outside[m]
			}
		}
	case n.Sunshine != nil:
		g.say("light: from sunshine hours by fao56 eq. 35 with its coefficients for places without their own; a month may be off by a tenth")
		for m := range k {
			k[m] = overcastShare + sunnyShare*min(1, n.Sunshine[m]/max(0.1, length[m]))
		}
	case n.High != nil:
		g.say("light: from the range of temperature by fao56 eq. 50 (kRs %.2f), since neither light, clearness nor sunshine is given: a year may be off by a quarter", n.kRs())
		for m := range k {
			k[m] = min(0.75, n.kRs()*math.Sqrt(n.High[m]-n.Low[m]))
		}
	default:
		g.say("light: none is made, since neither light, clearness, sunshine nor highest and lowest temperatures are given")
		return k, false
	}
	return k, true
}

// usualMatrices lays the usual correlations out for all things of the sky.
func usualMatrices(has [things]bool) (today, before matrix) {
	for a := range things {
		today[a][a] = 1
		for b := range things {
			if a < 3 && b < 3 && has[a] && has[b] {
				today[a][b], before[a][b] = usualToday[a][b], usualBefore[a][b]
			}
		}
	}
	return today, before
}

func (g *Generator) sayAssumed(n *Normals, s *Sky) {
	g.say("assumed, as means of thirteen stations: how warmth, range and clearness of days follow each other")
	if s.Has[clear] {
		g.say("assumed: wet days have %.0f %% of the clearness of dry ones; clearness is spread as by Hollands & Huget (1983)", 100*usualDulled)
	}
	if s.Has[warmth] {
		g.say("assumed: days deviate by %.1f K from the month's temperature, wet ones are %.1f K colder and have %.0f %% of the range of dry ones", usualWarmth, usualWetCooler, 100*usualNarrowed)
	}
	if n.High == nil && n.Mean != nil {
		switch {
		case s.Has[clear]:
			g.say("assumed: the range of temperature from the clearness (fao56 eq. 50, turned, kRs %.2f)", n.kRs())
		default:
			g.say("assumed: a range of temperature of %.0f K", usualSpan)
		}
	}
	if s.Has[damp] {
		g.say("moisture: the dew point keeps its distance from the lowest temperature within each month, that of the stated normals")
	} else if s.Has[warmth] {
		g.say("moisture: nothing is stated")
	}
	if s.Has[windy] {
		g.say("wind: the stated monthly mean at all times, since normals tell no more")
	}
}

// monthsOutside gives the monthly mean light outside the air, kWh/m2 a day, and length of
// the day, h.
func monthsOutside(p site.Place) (light, length [12]float64) {
	for n := range 365 {
		d := weather.DayOf(weather.DayNumber(weather.NominalYear, 1, 1) + n)
		out := sun.OutsideDay(p.Latitude, int(d.DayOfYear))
		share := 1 / float64(weather.MonthDays(weather.NominalYear, int(d.Month)))
		light[d.Month-1] += out.Ra / 3.6 * share
		length[d.Month-1] += out.DayLength * share
	}
	return light, length
}
