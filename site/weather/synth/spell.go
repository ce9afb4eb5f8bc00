package synth

import (
	"math"
	"math/rand/v2"
)

// classes is how many kinds of wet day the chain tells apart by their rain: light, middling and heavy.
const classes = 3

// classShare is how often each is met in the long run. The heavy fifth brings more than half of the rain. Three
// classes and these shares are our own plain choice: as many as 27 years can count what follows on what.
var classShare = [classes]float64{0.5, 0.3, 0.2}

// Spell says how the days of a spell hang together beyond whether yesterday was wet: a chain of
// second order whose wet days are of several classes (several states by the day's rain: haan-1976), so that heavy rain
// is followed by rain, and by heavy rain, as often as it is. One Spell holds all year, beside each month's own chances. The
// zero value is the plain chain.
type Spell struct {
	Dry   [2]float64                    // log-odds of rain after a first dry day and after a later one, beside AfterDry
	Wet   [2]float64                    // after a first wet day and after a later one, beside AfterWet
	Class [classes]float64              // after a day of each class, beside AfterWet
	Next  [1 + classes][classes]float64 // share of the classes after a dry day, then after each class
}

// plain tells whether nothing is known of classes.
func (s *Spell) plain() bool { return s.Next[0][0] == 0 }

// A mix is a month's amounts above the wet day, over their mean, by class: the mixture of
// exponential distributions (wilks-1999), cut at the quantiles of the classes.
type mix struct {
	parts    [parts]Part
	edge     [classes + 1]float64 // between the classes, the last without bound
	one, two [classes]float64     // mean and mean square in each class
}

// mixOf lays out a month's amounts. A gamma distribution has no classes.
func (m *RainMonth) mixOf() (x mix) {
	if m.Parts[0].Share == 0 {
		for k := range classes {
			x.one[k], x.two[k] = 1, 1+1/m.Shape
		}
		return x
	}
	x.parts = m.Parts
	above := 1.0
	for k := range classes {
		above -= classShare[k]
		x.edge[k+1] = x.exceededBy(above)
	}
	x.edge[classes] = math.Inf(1)
	for k := range classes {
		var mass, one, two float64
		for _, e := range x.parts {
			a, b := pieces(x.edge[k]/e.Mean), pieces(x.edge[k+1]/e.Mean)
			mass += e.Share * (a[0] - b[0])
			one += e.Share * e.Mean * (a[1] - b[1])
			two += e.Share * e.Mean * e.Mean * (a[2] - b[2])
		}
		x.one[k], x.two[k] = one/mass, two/mass
	}
	return x
}

// pieces gives the integrals of exp(-t), t exp(-t) and t^2 exp(-t) from x on.
func pieces(x float64) [3]float64 {
	if math.IsInf(x, 1) {
		return [3]float64{}
	}
	e := math.Exp(-x)
	return [3]float64{e, e * (1 + x), e * (2 + 2*x + x*x)}
}

// beyond gives the share of wet days with more.
func (x *mix) beyond(amount float64) (share float64) {
	for _, e := range x.parts {
		share += e.Share * math.Exp(-amount/e.Mean)
	}
	return share
}

// exceededBy finds the amount that is exceeded by a share of the wet days.
func (x *mix) exceededBy(share float64) float64 {
	if share < 1e-9 {
		return math.Inf(1)
	}
	low, high := 0.0, 1.0
	for x.beyond(high) > share {
		low, high = high, 2*high
	}
	for range 40 { // halves the step to 1e-12 of it
		if middle := (low + high) / 2; x.beyond(middle) > share {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// draw gives an amount of a class, over the mean, from two numbers between 0 and 1.
func (x *mix) draw(class int, which, where float64) float64 {
	var from, to, mass [parts]float64
	all := 0.0
	for i, e := range x.parts {
		from[i], to[i] = math.Exp(-x.edge[class]/e.Mean), math.Exp(-x.edge[class+1]/e.Mean)
		mass[i] = e.Share * (from[i] - to[i])
		all += mass[i]
	}
	which *= all
	i := 0
	for ; i < parts-1 && which >= mass[i]; i++ {
		which -= mass[i]
	}
	return -x.parts[i].Mean * math.Log(from[i]-where*(from[i]-to[i]))
}

// class picks the class of a wet day of a month by the shares; a plain chain with gamma amounts needs none.
func (r *Rain) class(m int, share *[classes]float64, draw *rand.Rand) int {
	if r.Spell.plain() && r.Months[m].Parts[0].Share == 0 {
		return 0
	}
	u := draw.Float64()
	for k := range classes - 1 {
		if u -= share[k]; u < 0 {
			return k
		}
	}
	return classes - 1
}

// A turn is the chain of one month at one value of the index: the chances of rain after each kind of day.
type turn struct {
	up   [2]float64          // after a first dry day, a later one
	stay [2][classes]float64 // after a first wet day, a later one, of each class
	next *[1 + classes][classes]float64
	back [classes][classes]float64 // inverse of 1 - M, M from class to class of later wet days

	dry [2]float64          // long-run shares of the kinds of days
	wet [2][classes]float64 // of the wet ones
}

// settle finds the long-run shares. As many spells begin as end, so that one spell is followed through.
func (t *turn) settle() {
	var m [classes][classes]float64
	for j := range m {
		for k := range m {
			m[j][k] = -t.stay[1][j] * t.next[1+j][k]
		}
		m[j][j]++
	}
	t.back = inverse(m)
	t.wet = [2][classes]float64{t.next[0], {}}
	var in [classes]float64
	for j := range in {
		for k := range in {
			in[k] += t.wet[0][j] * t.stay[0][j] * t.next[1+j][k]
		}
	}
	t.dry = [2]float64{1, (1 - t.up[0]) / t.up[1]}
	days := 1 + t.dry[1] + 1
	for k := range in {
		for j := range in {
			t.wet[1][k] += in[j] * t.back[j][k]
		}
		days += t.wet[1][k]
	}
	for a := range 2 {
		t.dry[a] /= days
		for k := range classes {
			t.wet[a][k] /= days
		}
	}
}

// A state holds a value for each kind of day.
type state struct {
	dry [2]float64
	wet [2][classes]float64
}

// mean gives the long-run mean.
func (t *turn) mean(v *state) (m float64) {
	for a := range 2 {
		m += t.dry[a] * v.dry[a]
		for k := range classes {
			m += t.wet[a][k] * v.wet[a][k]
		}
	}
	return m
}

// less takes a number off every kind of day.
func (v *state) less(m float64) {
	for a := range 2 {
		v.dry[a] -= m
		for k := range classes {
			v.wet[a][k] -= m
		}
	}
}

// ahead sums what is expected of today and all later days, of a value whose long-run mean is 0: the g of (1 - P) g = v, with mean 0.
func (t *turn) ahead(v *state) (g state) {
	var on [classes]float64
	for j := range on {
		for k := range on {
			g.wet[1][j] += t.back[j][k] * v.wet[1][k]
		}
	}
	for j := range on {
		for k := range on {
			on[j] += t.next[1+j][k] * g.wet[1][k]
		}
		g.wet[0][j] = v.wet[0][j] + t.stay[0][j]*on[j]
	}
	g.dry[1] = v.dry[1] / t.up[1]
	for k := range on {
		g.dry[1] += t.next[0][k] * g.wet[0][k]
	}
	g.less(t.mean(&g))
	return g
}

// vary gives the mean of v, the long-run variance a day of its sum over many days (for wet days of a plain chain that of
// gabriel-1959), and what a month's
// sum shares with the next month's: with c_k the covariance at k days, c_0 + 2 (c_1 + c_2 + ...) and c_1 + 2 c_2 + 3 c_3 + ...
func (t *turn) vary(v state) (mean, day, shared float64) {
	mean = t.mean(&v)
	v.less(mean)
	g := t.ahead(&v)
	h := t.ahead(&g)
	for a := range 2 {
		day += t.dry[a] * v.dry[a] * (2*g.dry[a] - v.dry[a])
		shared += t.dry[a] * v.dry[a] * (h.dry[a] - g.dry[a])
		for k := range classes {
			day += t.wet[a][k] * v.wet[a][k] * (2*g.wet[a][k] - v.wet[a][k])
			shared += t.wet[a][k] * v.wet[a][k] * (h.wet[a][k] - g.wet[a][k])
		}
	}
	return mean, day, shared
}

// inverse inverts by Gauss and Jordan; the diagonal leads.
func inverse(a [classes][classes]float64) (b [classes][classes]float64) {
	for i := range b {
		b[i][i] = 1
	}
	for i := range a {
		pivot := 1 / a[i][i]
		for j := range a {
			a[i][j] *= pivot
			b[i][j] *= pivot
		}
		for k := range a {
			if k == i {
				continue
			}
			f := a[k][i]
			for j := range a {
				a[k][j] -= f * a[i][j]
				b[k][j] -= f * b[i][j]
			}
		}
	}
	return b
}
