package synth

import (
	"math"
	"math/rand/v2"

	"suffice/site/weather"
)

// Rain is a chain of wet and dry days (richardson-1981; a Spell makes it one of second order with
// several kinds of wet day), amounts on the wet ones, and a slow wetness that makes spells, seasons and years wet or dry: the log-odds of rain and the
// logarithm of the amounts rise and fall with one Gaussian index that fades over weeks
// to a season. Conditioning a daily chain on such an index is the remedy
// for years that are too alike of katz-parlange and wilks-1989; that the index is one for
// wet days and amounts and moves daily is our own plain form of it.
type Rain struct {
	WetDay  float64       // mm: a day is wet from here on; less does not fall
	Months  [12]RainMonth // January first
	Spell   Spell
	Between Between
}

// A RainMonth is the rain of one month of the year, in its mean over the years.
type RainMonth struct {
	AfterDry float64 // chance that a day is wet after a dry one, 0 to 1
	AfterWet float64 // after a wet one
	Amount   float64 // mm, mean of the wet days, at least WetDay
	Shape    float64 // of the gamma distribution of what is above WetDay, where Parts are not known
	Parts    [parts]Part
}

// A Part is one of the exponential distributions of a month's amounts above WetDay.
type Part struct {
	Share float64 // of the wet days
	Mean  float64 // over the mean of all of them
}

// parts is how many exponential distributions make up a month's amounts: drizzle, rain and storms. Two, as
// wilks-1999 has them, spend one on drizzle and leave the storms too small.
const parts = 3

// Between says how seasons and years differ. Without Chance and Amount it is a plain
// daily chain.
type Between struct {
	Chance float64 // standard deviation of the log-odds of a wet day
	Amount float64 // of the logarithm of the mean amount
	Memory float64 // days in which the index fades to 1/e

	Season [12]float64 // how much more strongly it acts in a month, as a share: 0 as stated, -1 not at all
}

// in gives both strengths in a month.
func (b *Between) in(m int) (chance, amount float64) {
	return b.Chance * (1 + b.Season[m]), b.Amount * (1 + b.Season[m])
}

// keep gives the correlation of the index from day to day.
func (b Between) keep() float64 {
	if b.Memory <= 0 {
		return 0
	}
	return math.Exp(-1 / b.Memory)
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

// A day is what the chain keeps of yesterday.
type day struct {
	wet   bool
	later bool // not the first of its kind in a row
	class int
}

// odds gives the odds of rain after a day, and the shares of classes if it rains.
func (b *balance) odds(d day) (rain float64, share *[classes]float64) {
	later := 0
	if d.later {
		later = 1
	}
	if d.wet {
		return b.stay[later][d.class], &b.next[1+d.class]
	}
	return b.up[later], &b.next[0]
}

// fill makes the rain of days that follow each other, and says which are wet.
func (r *Rain) fill(rain []float64, wet []bool, days []weather.Day, seed uint64) {
	balanced := r.balance()
	keep := r.Between.keep()
	fresh := math.Sqrt(1 - keep*keep)
	var draw, slow *rand.Rand
	var index float64
	var was day
	for i, d := range days {
		if d.DayOfYear == 1 || i == 0 {
			draw, slow = stream(seed, streamRain, int(d.Year)), stream(seed, streamBetween, int(d.Year))
		}
		index = keep*index + fresh*slow.NormFloat64()
		b, p := &balanced[d.Month-1], &r.Months[d.Month-1]
		if i == 0 {
			index /= fresh // the first day begins anywhere the index may be
			was = day{wet: draw.Float64() < p.WetShare(), later: true}
			was.class = r.class(int(d.Month)-1, &classShare, draw)
		}
		moves, amount := r.Between.in(int(d.Month) - 1)
		odds, share := b.odds(was)
		is := day{wet: draw.Float64() < chance(odds, math.Exp(moves*index))}
		is.later = is.wet == was.wet
		if is.wet {
			is.class = r.class(int(d.Month)-1, share, draw)
			mean := (p.Amount - r.WetDay) * b.factor * math.Exp(amount*index)
			wet[i], rain[i] = true, r.WetDay+mean*p.over(&b.mix, is.class, draw)
		}
		was = is
	}
}

// over draws an amount of a class over its mean.
func (m *RainMonth) over(x *mix, class int, draw *rand.Rand) float64 {
	if m.Parts[0].Share == 0 {
		return gamma(draw, m.Shape) / m.Shape
	}
	return x.draw(class, draw.Float64(), draw.Float64())
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
