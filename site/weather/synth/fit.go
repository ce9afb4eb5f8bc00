package synth

import (
	"fmt"
	"math"

	"suffice/site/weather"
)

// GaugeWetDay is the rain, mm, from which a recorded day counts as wet in Fit: gauges
// that read hundredths of an inch begin with 0.3 mm after rounding, those that read
// tenths of a millimetre have dew below it.
const GaugeWetDay = 0.3

// Fit reads a generator off a record: rain where it has a gauge, the sky where it has
// light or temperature. use picks the years that count; nil takes all.
func Fit(r *weather.Record, use func(year int) bool) (*Generator, error) {
	if r.Typical {
		return nil, fmt.Errorf("%s is one typical year: it cannot tell how years differ; take normals, or stretch it over a gauge", r.File)
	}
	d, err := diaryOf(r)
	if err != nil {
		return nil, err
	}
	d.only(use)
	g := &Generator{Place: r.Place, Lost: !r.Placed}
	g.say("fitted to %s (%s)", r.File, r.Format)
	if r.Time == weather.UTC {
		g.Place.Clock = weather.SolarClock(r.Place.Longitude)
	}
	if d.rain != nil {
		if g.Rain, err = g.fitRain(d); err != nil {
			return nil, fmt.Errorf("%s: %w", r.File, err)
		}
	}
	if !r.Placed && d.light != nil {
		d.light = nil
		g.say("the record does not say where it was made, so its light is left out")
	}
	g.Sky = g.fitSky(d)
	if g.Rain == nil && g.Sky == nil {
		return nil, fmt.Errorf("%s holds neither rain nor light nor temperature to fit", r.File)
	}
	return g, nil
}

func (g *Generator) say(format string, args ...any) {
	g.Notes = append(g.Notes, fmt.Sprintf(format, args...))
}

// leastYears is how many complete years of rain are asked for: the deviation of the
// yearly rain is then known to within a quarter (1/sqrt(2(n-1)), one standard error).
const leastYears = 9

// monthsOf are the months of complete years: wet days and rain, and their years.
type monthsOf struct {
	days, rain [][12]float64
}

// complete gathers the years with at most 5 missing days of rain. A month's sums are
// scaled up for its missing days.
func (d *diary) complete() (out monthsOf) {
	for from := 0; from < len(d.days); {
		n := weather.DaysIn(int(d.days[from].Year))
		to := min(from+n-int(d.days[from].DayOfYear)+1, len(d.days))
		if to-from == n {
			if days, rain, ok := yearOf(d.days[from:to], d.rain[from:to]); ok {
				out.days, out.rain = append(out.days, days), append(out.rain, rain)
			}
		}
		from = to
	}
	return out
}

func yearOf(days []weather.Day, rain []float64) (wet, sum [12]float64, ok bool) {
	var have, all [12]float64
	missing := 0
	for i, v := range rain {
		m := days[i].Month - 1
		all[m]++
		if math.IsNaN(v) {
			missing++
			continue
		}
		have[m]++
		sum[m] += v
		if v >= GaugeWetDay {
			wet[m]++
		}
	}
	for m := range sum {
		if have[m] > 0 {
			wet[m], sum[m] = wet[m]*all[m]/have[m], sum[m]*all[m]/have[m]
		}
	}
	return wet, sum, missing <= weather.MissingDaysAllowed
}

// fitRain fits chain and amounts by month, and the index by three variances: of the
// months' wet days, of the months' rain, of the years' rain.
func (g *Generator) fitRain(d *diary) (*Rain, error) {
	months := d.complete()
	years := len(months.rain)
	if years < leastYears {
		return nil, fmt.Errorf("%d complete years of rain (at most %d missing days) are too few to tell how years differ: give at least %d, or make years from normals", years, weather.MissingDaysAllowed, leastYears)
	}
	r := &Rain{WetDay: GaugeWetDay}
	tallies := tallyDays(d)
	for m := range r.Months {
		r.Months[m] = tallies[m].month(r.WetDay)
	}
	r.fitAmounts(months)
	r.fitParts(d, &tallies)
	r.fitSpell(d)
	g.say("rain: chain of dry and of light, middling and heavy wet days (%.1f mm or more) that knows of two days before, with amounts by month, from %d complete years", r.WetDay, years)
	g.say("%s", r.fitIndex(months))
	return r, nil
}

// A dayTally counts the days of one month over all years.
type dayTally struct {
	dry, dryWet, wet, wetWet float64 // days after a dry one, those of them wet; after a wet one
	n, sum, logs             float64 // wet days, their rain above the wet day, its logarithms
}

// leastAbove, mm, stands for amounts that round to the wet day itself, whose logarithm
// would be without bound: a quarter of the step of a gauge that reads hundredths of an inch.
const leastAbove = 0.0635

func tallyDays(d *diary) (t [12]dayTally) {
	before := math.NaN()
	for i, v := range d.rain {
		m := &t[d.days[i].Month-1]
		wet := v >= GaugeWetDay
		if !math.IsNaN(v) && !math.IsNaN(before) {
			if before >= GaugeWetDay {
				m.wet++
				m.wetWet += count(wet)
			} else {
				m.dry++
				m.dryWet += count(wet)
			}
		}
		if wet {
			m.n, m.sum, m.logs = m.n+1, m.sum+v-GaugeWetDay, m.logs+math.Log(max(leastAbove, v-GaugeWetDay))
		}
		before = v
	}
	return t
}

func count(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// month turns counts into chances and a gamma distribution (maximum likelihood by the
// approximation of thom-1958). A month without a wet day has none.
func (t *dayTally) month(wetDay float64) RainMonth {
	if t.dryWet == 0 {
		return RainMonth{Amount: wetDay, Shape: 1}
	}
	out := RainMonth{AfterDry: t.dryWet / t.dry, AfterWet: min(t.wetWet/max(1, t.wet), 0.98), Shape: 1}
	mean := t.sum / t.n
	out.Amount = wetDay + mean
	if a := math.Log(mean) - t.logs/t.n; t.n >= 10 && a > 0 {
		out.Shape = (1 + math.Sqrt(1+4*a/3)) / (4 * a)
	}
	return out
}

// fitAmounts sets the amounts so that the months' mean rain is that of the complete years.
func (r *Rain) fitAmounts(months monthsOf) {
	for m := range r.Months {
		p := &r.Months[m]
		mean := 0.0
		for _, y := range months.rain {
			mean += y[m] / float64(len(months.rain))
		}
		if days := meanDays[m] * p.WetShare(); days > 0 {
			p.Amount = max(r.WetDay*1.01, mean/days)
		}
	}
}

// A variances are the sample variances that the index is fitted to: sums over the months, as Moments has them.
type variances struct{ wetDays, rain, near, year float64 }

func (m monthsOf) variances() (out variances) {
	n := float64(len(m.rain))
	var days, rain [12]float64
	for y := range m.rain {
		for k := range 12 {
			days[k], rain[k] = days[k]+m.days[y][k]/n, rain[k]+m.rain[y][k]/n
		}
	}
	for y := range m.rain {
		for k := range 12 {
			d, a := m.days[y][k]-days[k], m.rain[y][k]-rain[k]
			out.wetDays += d * d / (n - 1)
			out.rain += a * a / (n - 1)
			for later := range 12 {
				both := a * (m.rain[y][later] - rain[later]) / (n - 1)
				out.year += both
				if max(later-k, k-later) <= nearMonths {
					out.near += both
				}
			}
		}
	}
	return out
}

// fitIndex finds Chance from the variance of the months' wet days, Amount from that of
// their rain and Memory from what months share with the two that follow, and says how it went.
// Whatever months share that are farther apart is not asked for: it is mostly chance (docs/made-weather-judged.md).
func (r *Rain) fitIndex(months monthsOf) string {
	v := months.variances()
	r.Between = Between{}
	plain := math.Sqrt(r.Moments().YearVary)
	r.fitMemory(v)
	r.fitSeason(months)
	r.fitMemory(v)
	return fmt.Sprintf("yearly rain deviates by %.0f mm as recorded, and by %.0f as the months and their neighbours tell; the daily chain alone gives %.0f, with the slow index %.0f", math.Sqrt(v.year), math.Sqrt(v.near), plain, math.Sqrt(r.Moments().YearVary))
}

// fitMemory finds the memory at which months share with those that follow what they should, the strengths following.
func (r *Rain) fitMemory(v variances) {
	root(math.Log(shortestMemory), math.Log(longestMemory), v.near, func(x float64) float64 {
		r.Between = Between{Memory: math.Exp(x), Season: r.Between.Season}
		return r.fitStrength(v.wetDays, v.rain)
	})
}

// seasonMonths is how many months in a row tell how strongly the index acts in their middle one:
// in 27 years their 135 sums know their variance to an eighth (sqrt(2/135)), which a single month's do not.
const seasonMonths = 5

// fitSeason lets the index act more strongly in the seasons whose months differ more than it
// says: each month by the root of what the variances around it have beyond the plain chain, as recorded
// over as made. It stays within half and one and a half of the year's mean, since an
// outlying month would else rule its season.
func (r *Rain) fitSeason(months monthsOf) {
	plain := *r
	plain.Between = Between{}
	made, chain := r.Moments().RainVary, plain.Moments().RainVary
	recorded := months.monthly()
	mean := 0.0
	for m := range 12 {
		var have, want float64
		for k := m - seasonMonths/2; k <= m+seasonMonths/2; k++ {
			i := (k + 12) % 12
			have, want = have+made[i]-chain[i], want+recorded[i]-chain[i]
		}
		if have > 0 {
			r.Between.Season[m] = max(0.5, min(1.5, math.Sqrt(max(0, want/have)))) - 1
		}
		mean += r.Between.Season[m] / 12
	}
	for m := range 12 {
		r.Between.Season[m] = (1+r.Between.Season[m])/(1+mean) - 1
	}
}

// monthly gives the sample variance of each month's rain.
func (m monthsOf) monthly() (out [12]float64) {
	for k := range out {
		mm := make([]float64, len(m.rain))
		for y := range m.rain {
			mm[y] = m.rain[y][k]
		}
		out[k] = variance(mm)
	}
	return out
}

// fitStrength finds both strengths for a memory, and gives the variance of months with their neighbours.
func (r *Rain) fitStrength(wetDays, rain float64) float64 {
	var c *chains
	mixes := r.mixes()
	root(0, strongest, wetDays, func(x float64) float64 {
		r.Between.Chance = x
		c = r.chains(mixes)
		return sum(r.momentsOf(c).WetDaysVary)
	})
	var made Moments
	root(0, strongest, rain, func(x float64) float64 {
		r.Between.Amount = x
		c.grow(r)
		made = r.momentsOf(c)
		return sum(made.RainVary)
	})
	return made.NearVary
}

func sum(v [12]float64) (s float64) {
	for _, x := range v {
		s += x
	}
	return s
}

func variance(v []float64) float64 {
	mean := 0.0
	for _, x := range v {
		mean += x / float64(len(v))
	}
	sum := 0.0
	for _, x := range v {
		sum += (x - mean) * (x - mean)
	}
	return sum / float64(len(v)-1)
}
