package synth

import "math"

// A balance keeps a month's mean when its wetness varies: both the share of wet days and
// the amount on them bend, so that their means over the index would drift.
type balance struct{ shift, factor float64 }

// The index is integrated by equal steps from -6 to 6 standard deviations, which for
// smooth functions under a Gaussian is exact to many digits.
const indexSteps = 49

// terms is how many Hermite terms carry the covariance between months: more than six
// change the deviation of a year by less than a thousandth at the strengths met here.
const terms = 6

var indexAt, indexWeight = func() (z, w [indexSteps]float64) {
	sum := 0.0
	for i := range z {
		z[i] = -6 + 0.25*float64(i)
		w[i] = math.Exp(-z[i] * z[i] / 2)
		sum += w[i]
	}
	for i := range w {
		w[i] /= sum
	}
	return z, w
}()

// meanOver gives the mean of a function of the index.
func meanOver(f func(z float64) float64) float64 {
	sum := 0.0
	for i, z := range indexAt {
		sum += indexWeight[i] * f(z)
	}
	return sum
}

// balance finds for every month the shift of the log-odds and the factor of the amounts that
// keep the mean share of wet days and the mean rain.
func (r *Rain) balance() (b [12]balance) {
	for m, p := range r.Months {
		b[m].factor = 1
		share := p.WetShare()
		if share <= 0 || r.Between == (Between{Memory: r.Between.Memory}) {
			continue
		}
		shareAt := func(shift, z float64) float64 {
			by := shift + r.Between.Chance*z
			return wetShare(moved(p.AfterDry, by), moved(p.AfterWet, by))
		}
		b[m].shift = root(-8, 8, func(shift float64) float64 {
			return meanOver(func(z float64) float64 { return shareAt(shift, z) }) - share
		})
		above := p.Amount - r.WetDay
		bent := meanOver(func(z float64) float64 { return shareAt(b[m].shift, z) * math.Exp(r.Between.Amount*z) })
		if above > 0 {
			b[m].factor = share / bent
		}
	}
	return b
}

// root halves an interval over which f rises from below to above zero; an end that f
// does not pass is the answer.
func root(low, high float64, f func(float64) float64) float64 {
	for range 60 {
		middle := (low + high) / 2
		if f(middle) < 0 {
			low = middle
		} else {
			high = middle
		}
		if high-low < 1e-12 {
			break
		}
	}
	return (low + high) / 2
}

// Moments are what the chain gives in the long run, by formula and not by drawing.
type Moments struct {
	WetDays      [12]float64 // mean of the month
	Rain         [12]float64 // mm
	WetDaysVary  [12]float64 // variance between the years
	RainVary     [12]float64 // mm2
	YearVary     float64     // mm2, variance of the yearly sums
	YearWetDays  float64     // variance of the yearly count of wet days
	WithoutIndex float64     // mm2, the part of YearVary that the daily chain alone makes
}

// Moments gives the long-run moments. The variance of a month is that of a long chain
// (gabriel-1959); what a month inherits from the last day of the one before it is
// counted with its own days.
func (r *Rain) Moments() Moments {
	var out Moments
	b := r.balance()
	var rain, wet [12][terms + 1]float64
	for m, n := range meanDays {
		for i, z := range indexAt {
			w := indexWeight[i]
			at := r.monthAt(m, z, b, n)
			h := 1.0 // normalised Hermite polynomials He_k / sqrt(k!)
			before := 0.0
			for k := range rain[m] {
				rain[m][k] += w * at.rain * h
				wet[m][k] += w * at.days * h
				h, before = (z*h-math.Sqrt(float64(k))*before)/math.Sqrt(float64(k+1)), h
			}
			out.RainVary[m] += w * at.rainVary
			out.WetDaysVary[m] += w * at.daysVary
		}
		out.Rain[m], out.WetDays[m] = rain[m][0], wet[m][0]
		out.YearVary += out.RainVary[m]
		out.YearWetDays += out.WetDaysVary[m]
	}
	out.WithoutIndex = out.YearVary
	for m := range 12 {
		out.RainVary[m] += covariance(rain[m], rain[m], 1)
		out.WetDaysVary[m] += covariance(wet[m], wet[m], 1)
		for other := range 12 {
			memory := math.Pow(r.Between.Memory, math.Abs(float64(m-other)))
			out.YearVary += covariance(rain[m], rain[other], memory)
			out.YearWetDays += covariance(wet[m], wet[other], memory)
		}
	}
	return out
}

// covariance of two functions of indices that correlate so, by their Hermite terms
// (Mehler's formula).
func covariance(a, b [terms + 1]float64, correlation float64) (sum float64) {
	power := 1.0
	for k := 1; k <= terms; k++ {
		power *= correlation
		sum += a[k] * b[k] * power
	}
	return sum
}

// monthMoments are mean and variance of a month whose index is known.
type monthMoments struct{ days, daysVary, rain, rainVary float64 }

func (r *Rain) monthAt(m int, z float64, b [12]balance, n float64) monthMoments {
	at := r.month(m, z, b)
	share := wetShare(at.afterDry, at.afterWet)
	amount := r.WetDay + at.scale*at.shape
	d := at.afterWet - at.afterDry
	var out monthMoments
	out.days, out.rain = n*share, n*share*amount
	if share > 0 && share < 1 {
		out.daysVary = n * share * (1 - share) * (1 + d) / (1 - d) // gabriel-1959
	}
	out.rainVary = out.days*at.scale*at.scale*at.shape + amount*amount*out.daysVary
	return out
}

// strongest bounds the two strengths: at 3 a dry month has a twentieth of the odds of a
// middling one, more than any gauge met here shows.
const strongest = 3

// longestMemory bounds the month-to-month correlation of the index: 0.97 fades to a half
// in two years.
const longestMemory = 0.97

// reach sets the strength of the index so that the yearly sums deviate as stated, mm.
// Chance and Amount keep their ratio. reached is false where even a plain chain deviates
// more.
func (r *Rain) reach(deviation float64) (reached bool) {
	want := deviation * deviation
	ratio := r.Between
	if ratio.Chance == 0 && ratio.Amount == 0 {
		ratio.Chance, ratio.Amount = usualChance, usualAmount
	}
	largest := max(ratio.Chance, ratio.Amount)
	set := func(k float64) {
		r.Between.Chance, r.Between.Amount = k*ratio.Chance/largest, k*ratio.Amount/largest
	}
	set(0)
	if r.Moments().YearVary > want {
		return false
	}
	set(root(0, strongest, func(k float64) float64 { set(k); return r.Moments().YearVary - want }))
	return math.Abs(math.Sqrt(r.Moments().YearVary)-deviation) < 0.01*deviation
}
