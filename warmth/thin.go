package warmth

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// faint is the swing, K of any temperature that is read, below which a mode need not be lived: it follows its inputs
// at once. Held in the tests to 0.05 K rms of the rooms and to 0.1 % of the largest yearly heat.
const faint = 0.03

// houseSwing is what a house's own heat swings by, W, for finding what matters.
const houseSwing = 300

// thin leaves out the modes that hardly show: λ z = In u at once in place of dz/dt. Steady gains stay exact, and so does the
// balance of heat, in which such a mode stores nothing.
func (r *Rooms) thin(faint float64) {
	m, nodes := r.full, r.outputs()
	swing := r.swings()
	var reads mat.Dense
	reads.Mul(pick(r.storing.of, nodes, count(len(r.storing.capacity))), m.out)
	var keep, drop []int
	for i, rate := range m.rate {
		var driven, shown float64
		for k, s := range swing {
			driven = math.Hypot(driven, s*m.in.At(i, k))
		}
		for y := range nodes {
			shown = max(shown, math.Abs(reads.At(y, i)))
		}
		// The slowest always stays. A mode slower than the hour shows what it holds back; a faster one only what it lags in the hour.
		if i == 0 || driven*shown >= faint*rate*max(1, rate*hourSeconds) {
			keep = append(keep, i)
		} else {
			drop = append(drop, i)
		}
	}
	all := count(len(m.rate))
	if len(drop) > 0 {
		at := pick(m.in, drop, count(r.plan.inputs))
		for d, i := range drop {
			row := at.RawRowView(d)
			for k := range row {
				row[k] /= m.rate[i]
			}
		}
		var held, seen mat.Dense
		held.Mul(pick(m.out, all, drop), at)
		seen.Mul(r.storing.of, &held)
		r.storing.straight.Add(r.storing.straight, &seen)
	}
	rate := make([]float64, len(keep))
	for k, i := range keep {
		rate[k] = m.rate[i]
	}
	r.full = &modes{rate: rate, in: pick(m.in, keep, count(r.plan.inputs)), out: pick(m.out, all, keep)}
}

// swings gives how much each input goes up and down: the root mean square about its mean.
func (r *Rooms) swings() []float64 {
	swings := make([]float64, r.plan.inputs)
	for k, c := range r.columns {
		if n := float64(len(c.values)); n > 0 {
			var sum, squares float64
			for _, v := range c.values {
				sum += v
				squares += v * v
			}
			swings[k] = math.Sqrt(max(0, squares/n-sum/n*sum/n))
		}
	}
	for _, k := range r.house {
		swings[k] = houseSwing
	}
	return swings
}
