package synth

import "math"

// A balance is a month's chain at the middle of the index. It differs from the mean chain,
// since chances and amounts bend: the means over the index are the month's own.
type balance struct {
	afterDry, afterWet float64 // log-odds; -Inf never
	factor             float64 // of the amounts
}

// chance gives the chance of a wet day when the log-odds are moved.
func (b *balance) chance(wasWet bool, by float64) float64 {
	if wasWet {
		return logistic(b.afterWet + by)
	}
	return logistic(b.afterDry + by)
}

// The index is integrated by equal steps from -6 to 6 standard deviations, which for
// smooth functions under a Gaussian is exact to many digits (exp(-2 pi2/0.75^2), 1e-15).
const indexSteps = 17

// terms is how many Hermite terms carry the covariance between days.
const terms = 6

// indexAt are the steps, indexWeight their weights, hermite the polynomials He_k/sqrt(k!) there.
var indexAt, indexWeight, hermite = func() (z, w [indexSteps]float64, h [indexSteps][terms + 1]float64) {
	sum := 0.0
	for i := range z {
		z[i] = -6 + 0.75*float64(i)
		w[i] = math.Exp(-z[i] * z[i] / 2)
		sum += w[i]
		before, now := 0.0, 1.0
		for k := range h[i] {
			h[i][k] = now
			before, now = now, (z[i]*now-math.Sqrt(float64(k))*before)/math.Sqrt(float64(k+1))
		}
	}
	for i := range w {
		w[i] /= sum
	}
	return z, w, h
}()

// balance finds for every month the chain at the middle of the index whose means over
// the index are the month's chances and rain.
func (r *Rain) balance() (b [12]balance) {
	for m := range b {
		b[m] = r.balanceMonth(m)
	}
	return b
}

// balanceMonth moves both log-odds by what their means still lack; the steps shrink by
// about the strength squared, so that at most some tens are needed.
func (r *Rain) balanceMonth(m int) balance {
	p := &r.Months[m]
	chance, amount := r.Between.in(m)
	b := balance{afterDry: logit(p.AfterDry), afterWet: logit(p.AfterWet), factor: 1}
	if p.AfterDry <= 0 || chance == 0 && amount == 0 {
		return b
	}
	wantDry, wantWet := b.afterDry, b.afterWet
	bent, share := 1.0, 1.0
	for range 100 {
		var dry, dryWet, wetWet float64
		share, bent = 0, 0
		for i, z := range indexAt {
			by := chance * z
			up, stay := b.chance(false, by), b.chance(true, by)
			s := wetShare(up, stay)
			w := indexWeight[i]
			share, wetWet = share+w*s, wetWet+w*s*stay
			dry, dryWet = dry+w*(1-s), dryWet+w*(1-s)*up
			bent += w * s * math.Exp(amount*z)
		}
		a, c := wantDry-logit(dryWet/dry), wantWet-logit(wetWet/share)
		if p.AfterWet <= 0 {
			c = 0
		}
		b.afterDry, b.afterWet = b.afterDry+a, b.afterWet+c
		if math.Abs(a)+math.Abs(c) < 1e-9 {
			break
		}
	}
	b.factor = share / bent
	return b
}

// Moments are what the chain gives in the long run, by formula and not by drawing.
type Moments struct {
	WetDays     [12]float64 // mean of the month
	Rain        [12]float64 // mm
	WetDaysVary [12]float64 // variance between the years
	RainVary    [12]float64 // mm2
	YearVary    float64     // mm2, variance of the yearly sums
}

// Moments gives the long-run moments. The variance of a month whose index is known is that of
// a long chain (gabriel-1959): what a month inherits from the last day of the one before it is
// counted with its own days.
func (r *Rain) Moments() Moments {
	var out Moments
	var rain, wet [12][terms + 1]float64 // Hermite terms of a day's mean rain and wetness
	balanced := r.balance()
	for m, n := range meanDays {
		for i := range indexAt {
			w := indexWeight[i]
			at := r.dayAt(m, indexAt[i], &balanced[m])
			for k, h := range hermite[i] {
				rain[m][k] += w * at.rain * h
				wet[m][k] += w * at.wet * h
			}
			out.RainVary[m] += w * at.rainVary * n
			out.WetDaysVary[m] += w * at.wetVary * n
		}
		out.Rain[m], out.WetDays[m] = n*rain[m][0], n*wet[m][0]
		out.YearVary += out.RainVary[m]
	}
	keep := r.Between.keep()
	for m := range 12 {
		out.WetDaysVary[m] += covariance(&wet[m], &wet[m], keep, m, m)
		own := covariance(&rain[m], &rain[m], keep, m, m)
		out.RainVary[m] += own
		out.YearVary += own
		for later := m + 1; later < 12; later++ {
			out.YearVary += 2 * covariance(&rain[m], &rain[later], keep, m, later)
		}
	}
	return out
}

// covariance of the sums of two months of a year, the same or a later one: day with day
// by the Hermite terms of their means (Mehler's formula), whose k-th fades as keep^k.
func covariance(a, b *[terms + 1]float64, keep float64, m, later int) (sum float64) {
	gap := 0.0
	for between := m + 1; between < later; between++ {
		gap += meanDays[between]
	}
	p := 1.0
	for k := 1; k <= terms; k++ {
		p *= keep
		q, n := 1-p, meanDays[m]
		if m == later { // sum of p^|i-j| over the days i and j
			sum += a[k] * b[k] * (n + 2*(n*p/q-p*(1-math.Pow(p, n))/(q*q)))
			continue
		}
		sum += a[k] * b[k] * math.Pow(p, gap+1) * (1 - math.Pow(p, n)) * (1 - math.Pow(p, meanDays[later])) / (q * q)
	}
	return sum
}

// dayMoments are means and long-run variances a day of a month whose index is known.
type dayMoments struct{ wet, wetVary, rain, rainVary float64 }

func (r *Rain) dayAt(m int, z float64, b *balance) (out dayMoments) {
	p := &r.Months[m]
	chance, amount := r.Between.in(m)
	by := chance * z
	up, stay := b.chance(false, by), b.chance(true, by)
	above := (p.Amount - r.WetDay) * b.factor * math.Exp(amount*z)
	mean := r.WetDay + above
	share, d := wetShare(up, stay), stay-up
	out.wet, out.rain = share, share*mean
	if share > 0 && share < 1 {
		out.wetVary = share * (1 - share) * (1 + d) / (1 - d) // gabriel-1959
	}
	out.rainVary = share*above*above/p.Shape + mean*mean*out.wetVary
	return out
}

// strongest bounds the two strengths: at 2 a dry spell has an eighth of the odds of a
// middling time, more than any gauge met here shows.
const strongest = 2

// The memory, days, lies between half a month and some years. Below half a month the index
// would be as quick as the chain itself, which the moments do not allow for, and what a
// month's figures can tell.
const shortestMemory, longestMemory = 15, 1000

// reach sets the strength of the index so that the yearly sums deviate as stated, mm.
// Chance and Amount keep their ratio. It is false where it cannot be.
func (r *Rain) reach(deviation float64) bool {
	ratio := r.Between
	if ratio.Chance == 0 && ratio.Amount == 0 {
		ratio = Between{Chance: usualChance, Amount: usualAmount, Memory: usualMemory}
	}
	r.Between.Memory = ratio.Memory
	largest := max(ratio.Chance, ratio.Amount)
	root(0, strongest, deviation*deviation, func(k float64) float64 {
		r.Between.Chance, r.Between.Amount = k*ratio.Chance/largest, k*ratio.Amount/largest
		return r.Moments().YearVary
	})
	return math.Abs(math.Sqrt(r.Moments().YearVary)/deviation-1) < closeEnough
}

// closeEnough is how near, as a share, a stated figure is to be met: far below what any record tells.
const closeEnough = 0.002

// root finds where a rising function has a value, to a ten thousandth of it, by the rule
// of false position with the end that stays halved (the Illinois rule), and leaves f called
// there last. An end that the function does not pass is the answer.
func root(low, high, value float64, f func(float64) float64) float64 {
	a, b := f(low)-value, f(high)-value
	switch {
	case a >= 0:
		f(low)
		return low
	case b <= 0:
		return high
	}
	side := 0
	x := high
	for range 60 {
		x = (low*b - high*a) / (b - a)
		y := f(x) - value
		switch {
		case math.Abs(y) <= 1e-4*math.Abs(value):
			return x
		case y < 0:
			low, a = x, y
			if side < 0 {
				b /= 2
			}
			side = -1
		default:
			high, b = x, y
			if side > 0 {
				a /= 2
			}
			side = 1
		}
	}
	return x
}
