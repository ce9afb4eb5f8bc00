package synth

import (
	"math"
	"math/rand/v2"

	"suffice/site/weather"
)

// Rain is a chain of wet and dry days (richardson-1981), gamma amounts on the wet ones,
// and a slow wetness that makes whole months and years wet or dry: the log-odds of rain and the
// logarithm of the amounts rise and fall with one Gaussian index that keeps part of its
// value from month to month. Conditioning a daily chain on such an index is the remedy
// for years that are too alike of katz-parlange and wilks-1989; the index, one for wet
// days and amounts, with the same strength all year, is our own plain form of it.
type Rain struct {
	WetDay  float64       // mm: a day is wet from here on; less does not fall
	Months  [12]RainMonth // January first
	Between Between
}

// A RainMonth is the rain of one month of the year, in its mean over the years.
type RainMonth struct {
	AfterDry float64 // chance that a day is wet after a dry one, 0 to 1
	AfterWet float64 // after a wet one
	Amount   float64 // mm, mean of the wet days, at least WetDay
	Shape    float64 // of the gamma distribution of what is above WetDay
}

// Between says how months and years differ. The zero value is a plain daily chain.
type Between struct {
	Chance float64 // standard deviation of the log-odds of a wet day between months
	Amount float64 // of the logarithm of the mean amount
	Memory float64 // correlation of the index from one month to the next, 0 to 1
}

// WetShare gives the long-run share of wet days of the month, 0 to 1.
func (m RainMonth) WetShare() float64 { return wetShare(m.AfterDry, m.AfterWet) }

// wetShare is the stationary probability of the two-state chain (gabriel-neumann).
func wetShare(afterDry, afterWet float64) float64 {
	if afterDry <= 0 {
		return 0
	}
	return afterDry / (1 + afterDry - afterWet)
}

// PerYear gives the mean rain of a year of 365.2425 days, mm.
func (r *Rain) PerYear() float64 {
	sum := 0.0
	for m, month := range r.Months {
		sum += meanDays[m] * month.WetShare() * month.Amount
	}
	return sum
}

// meanDays are the days of the months in the mean of the calendar's 400 years.
var meanDays = [12]float64{31, 28.2425, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

func logit(p float64) float64    { return math.Log(p / (1 - p)) }
func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

// moved gives a chance whose log-odds are moved; certainty stays.
func moved(p, by float64) float64 {
	if p <= 0 || p >= 1 {
		return p
	}
	return logistic(logit(p) + by)
}

// fill makes the rain of days that follow each other, and says which are wet.
func (r *Rain) fill(rain []float64, wet []bool, days []weather.Day, seed uint64) {
	balance := r.balance()
	var index float64
	var month monthDraw
	var draw *rand.Rand
	was := false
	for i, d := range days {
		if d.DayOfYear == 1 || i == 0 {
			draw = stream(seed, streamRain, int(d.Year))
		}
		if d.Date == 1 || i == 0 {
			index = r.nextIndex(index, d, i == 0, seed)
			month = r.month(int(d.Month)-1, index, balance)
			if i == 0 {
				was = draw.Float64() < wetShare(month.afterDry, month.afterWet)
			}
		}
		chance := month.afterDry
		if was {
			chance = month.afterWet
		}
		if was = draw.Float64() < chance; was {
			wet[i] = true
			rain[i] = r.WetDay + month.scale*gamma(draw, month.shape)
		}
	}
}

// nextIndex steps the wetness of the months. Every month has one number of its year's
// stream.
func (r *Rain) nextIndex(index float64, d weather.Day, first bool, seed uint64) float64 {
	draw := stream(seed, streamBetween, int(d.Year))
	var z float64
	for range d.Month {
		z = draw.NormFloat64()
	}
	if first {
		return z
	}
	k := r.Between.Memory
	return k*index + math.Sqrt(1-k*k)*z
}

// A monthDraw is what the days of one month of one year are drawn by.
type monthDraw struct{ afterDry, afterWet, scale, shape float64 }

func (r *Rain) month(m int, index float64, b [12]balance) monthDraw {
	p := r.Months[m]
	by := b[m].shift + r.Between.Chance*index
	mean := (p.Amount - r.WetDay) * b[m].factor * math.Exp(r.Between.Amount*index)
	return monthDraw{moved(p.AfterDry, by), moved(p.AfterWet, by), mean / p.Shape, p.Shape}
}

// gamma draws from the gamma distribution of scale 1 (marsaglia-tsang).
func gamma(draw *rand.Rand, shape float64) float64 {
	if shape < 1 {
		u := 1 - draw.Float64() // above 0
		return gamma(draw, shape+1) * math.Pow(u, 1/shape)
	}
	d := shape - 1.0/3
	c := 1 / math.Sqrt(9*d)
	for {
		x := draw.NormFloat64()
		v := 1 + c*x
		if v <= 0 {
			continue
		}
		v = v * v * v
		u := 1 - draw.Float64()
		if math.Log(u) < 0.5*x*x+d-d*v+d*math.Log(v) {
			return d * v
		}
	}
}
