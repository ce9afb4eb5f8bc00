package synth

import "math"

// A balance is a month's chain at the middle of the index. It differs from the mean chain,
// since chances and amounts bend: the means over the index are the month's own.
type balance struct {
	up     [2]float64                    // odds of rain after a first dry day, a later one
	stay   [2][classes]float64           // after a first wet day and a later one, of each class
	next   [1 + classes][classes]float64 // shares of the classes
	factor float64                       // of the amounts
	mix    mix
}

// chance turns odds, moved by a factor, into a chance.
func chance(odds, by float64) float64 { return odds * by / (1 + odds*by) }

// at gives the chain where the odds are moved by a factor.
func (b *balance) at(f float64) (t turn) {
	for a := range 2 {
		t.up[a] = chance(b.up[a], f)
		for k := range classes {
			t.stay[a][k] = chance(b.stay[a][k], f)
		}
	}
	t.next = &b.next
	t.settle()
	return t
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
	return r.chains(r.mixes()).months
}

// Chains are the balanced months and each one's chain at the steps of the index. Only the factors know of
// Between.Amount, and nothing of its Memory.
type chains struct {
	months [12]balance
	turns  [12][indexSteps]turn
}

// mixes lays out every month's amounts.
func (r *Rain) mixes() (all [12]mix) {
	for m := range all {
		all[m] = r.Months[m].mixOf()
	}
	return all
}

func (r *Rain) chains(mixes [12]mix) *chains {
	c := new(chains)
	for m := range c.months {
		if c.months[m] = r.balanceMonth(m, mixes[m]); r.Months[m].AfterDry <= 0 {
			continue
		}
		moves, _ := r.Between.in(m)
		odds := alongIndex(moves)
		for i := range odds {
			c.turns[m][i] = c.months[m].at(odds[i])
		}
	}
	c.grow(r)
	return c
}

// grow sets the factors, so that the months' rain stays.
func (c *chains) grow(r *Rain) {
	for m := range c.months {
		b := &c.months[m]
		if b.factor = 1; r.Months[m].AfterDry <= 0 {
			continue
		}
		_, amount := r.Between.in(m)
		amounts := alongIndex(amount)
		share, bent := 0.0, 0.0
		for i, w := range indexWeight {
			t := &c.turns[m][i]
			for a := range 2 {
				for k := range classes {
					share, bent = share+w*t.wet[a][k], bent+w*t.wet[a][k]*amounts[i]*b.mix.one[k]
				}
			}
		}
		b.factor = share / bent
	}
}

// balanceMonth moves both log-odds and the shares of the classes by what their means still lack; the steps shrink by
// about the strength squared, so that at most some tens are needed.
func (r *Rain) balanceMonth(m int, x mix) balance {
	p := &r.Months[m]
	moves, _ := r.Between.in(m)
	b := balance{factor: 1, mix: x}
	wantDry, wantWet := logit(p.AfterDry), logit(p.AfterWet)
	dry, wet, kind := wantDry, wantWet, classShare
	b.lay(&r.Spell, dry, wet, &kind)
	if p.AfterDry <= 0 || moves == 0 && r.Spell.plain() {
		return b
	}
	odds := alongIndex(moves)
	for range 100 {
		got := b.over(&odds)
		a, c := wantDry-logit(got.dryWet/(1-got.share)), wantWet-logit(got.wetWet/got.share)
		if p.AfterWet <= 0 {
			c = 0
		}
		dry, wet = dry+a, wet+c
		off := math.Abs(a) + math.Abs(c)
		for k := range kind {
			lacks := classShare[k] * got.share / got.class[k]
			kind[k] *= lacks
			off += math.Abs(lacks - 1)
		}
		if off < balanced {
			break
		}
		b.lay(&r.Spell, dry, wet, &kind)
	}
	return b
}

// balanced is how near a month's means are to come, as the sum of what log-odds and shares still lack.
const balanced = 1e-7

// alongIndex gives exp(strength index) at the steps of the index.
func alongIndex(strength float64) (f [indexSteps]float64) {
	at, by := math.Exp(strength*indexAt[0]), math.Exp(strength*(indexAt[1]-indexAt[0]))
	for i := range f {
		f[i] = at
		at *= by
	}
	return f
}

// lay writes the odds of a month's chain.
func (b *balance) lay(s *Spell, dry, wet float64, kind *[classes]float64) {
	for a := range 2 {
		b.up[a] = math.Exp(dry + s.Dry[a])
		for k := range classes {
			b.stay[a][k] = math.Exp(wet + s.Wet[a] + s.Class[k])
		}
	}
	for j := range b.next {
		sum := 0.0
		for k := range classes {
			b.next[j][k] = classShare[k]
			if !s.plain() {
				b.next[j][k] = s.Next[j][k] * kind[k] / classShare[k]
			}
			sum += b.next[j][k]
		}
		for k := range classes {
			b.next[j][k] /= sum
		}
	}
}

// overIndex are means over the index: share of wet days and of each class, of wet days after a
// dry one and after a wet one.
type overIndex struct {
	share, dryWet, wetWet float64
	class                 [classes]float64
}

func (b *balance) over(odds *[indexSteps]float64) (got overIndex) {
	for i, w := range indexWeight {
		t := b.at(odds[i])
		for a := range 2 {
			got.dryWet += w * t.dry[a] * t.up[a]
			for k := range classes {
				days := w * t.wet[a][k]
				got.share, got.class[k] = got.share+days, got.class[k]+days
				got.wetWet += days * t.stay[a][k]
			}
		}
	}
	return got
}

// Moments are what the chain gives in the long run, by formula and not by drawing.
type Moments struct {
	WetDays     [12]float64 // mean of the month
	Rain        [12]float64 // mm
	WetDaysVary [12]float64 // variance between the years
	RainVary    [12]float64 // mm2
	NearVary    float64     // mm2, variances of the twelve months and twice their covariances with the two months that follow in the year
	YearVary    float64     // mm2, variance of the yearly sums
}

// nearMonths is how many months that follow a month count in NearVary.
const nearMonths = 2

// Moments gives the long-run moments. The variance of a month whose index is known is that of
// a long chain, less what it shares with its neighbours.
func (r *Rain) Moments() Moments { return r.momentsOf(r.chains(r.mixes())) }

func (r *Rain) momentsOf(c *chains) (out Moments) {
	var rain, wet [12][terms + 1]float64 // Hermite terms of a day's mean rain and wetness
	var shared [12]float64
	for m, n := range meanDays {
		if r.Months[m].AfterDry <= 0 {
			continue
		}
		_, amount := r.Between.in(m)
		amounts := alongIndex(amount)
		for i, w := range indexWeight {
			at := r.dayAt(m, amounts[i], &c.months[m], &c.turns[m][i])
			for k, h := range hermite[i] {
				rain[m][k] += w * at.rain * h
				wet[m][k] += w * at.wet * h
			}
			out.RainVary[m] += w * (at.rainVary*n - 2*at.rainShared)
			out.WetDaysVary[m] += w * (at.wetVary*n - 2*at.wetShared)
			shared[m] += w * at.rainShared
		}
		out.Rain[m], out.WetDays[m] = n*rain[m][0], n*wet[m][0]
	}
	keep := r.Between.keep()
	for m := range 12 {
		out.WetDaysVary[m] += covariance(&wet[m], &wet[m], keep, m, m)
		out.RainVary[m] += covariance(&rain[m], &rain[m], keep, m, m)
		out.YearVary += out.RainVary[m]
		out.NearVary += out.RainVary[m]
		for later := m + 1; later < 12; later++ {
			both := 2 * covariance(&rain[m], &rain[later], keep, m, later)
			if later == m+1 {
				both += shared[m] + shared[later]
			}
			out.YearVary += both
			if later <= m+nearMonths {
				out.NearVary += both
			}
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

// dayMoments are means and long-run variances a day of a month whose index is known, and
// what its sum shares with the next month's.
type dayMoments struct{ wet, wetVary, wetShared, rain, rainVary, rainShared float64 }

func (r *Rain) dayAt(m int, amounts float64, b *balance, t *turn) (out dayMoments) {
	above := (r.Months[m].Amount - r.WetDay) * b.factor * amounts
	var wet, rain state
	within := 0.0
	for a := range 2 {
		for k := range classes {
			wet.wet[a][k], rain.wet[a][k] = 1, r.WetDay+above*b.mix.one[k]
			within += t.wet[a][k] * above * above * (b.mix.two[k] - b.mix.one[k]*b.mix.one[k])
		}
	}
	out.wet, out.wetVary, out.wetShared = t.vary(wet)
	out.rain, out.rainVary, out.rainShared = t.vary(rain)
	out.rainVary += within
	return out
}

// strongest bounds the two strengths: at 2 a dry spell has an eighth of the odds of a
// middling time, more than any gauge met here shows.
const strongest = 2

// The memory, days, lies between half a month and a season. Below half a month the index
// would be as quick as the chain itself, which the moments do not allow for; what a month
// shares with the two after it tells of no more than those three, and years show next to nothing of
// the year before (docs/made-weather-judged.md).
const shortestMemory, longestMemory = 15, 90

// usualIndex is the index of the stations with its larger strength as given.
func usualIndex(strength float64) Between {
	largest := max(usualChance, usualAmount)
	return Between{Chance: strength * usualChance / largest, Amount: strength * usualAmount / largest, Memory: usualMemory}
}

// reach sets the strength of the usual index so that the yearly sums deviate as stated, mm. It is
// false where it cannot be.
func (r *Rain) reach(deviation float64) bool {
	root(0, strongest, deviation*deviation, func(strength float64) float64 {
		r.Between = usualIndex(strength)
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
