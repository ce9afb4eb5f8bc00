package warmth

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// fewer says how far the ways of decay are put together; the zero fewer leaves all of them.
type fewer struct {
	fastest float64 // 1/s: what settles faster follows at once
	leave   float64 // share of the response, by root of energy, that may follow at once as well
}

// usualFewer lets follow at once what settles in five minutes or less, and of the rest what carries a twentieth of the
// response by root of energy. fewer_test.go holds what that moves: some hundredths of a kelvin.
func usualFewer() fewer { return fewer{fastest: 1. / 300, leave: 0.05} }

// scales says how much of each input comes, so that watts and kelvins can be weighed against each other.
type scales struct {
	inputs []float64 // of each, its usual swing
	nodes  []int     // whose temperatures are asked for
}

// fewer gives a circuit with fewer ways of decay. What is left out follows its causes at once (singular perturbation), so that
// steady temperatures and heats are exactly those of the whole. Which ways are kept is told by the energy with which inputs
// reach them and they reach the nodes asked for: the Gramian of the symmetric system, in closed form where its ways decay alone,
// P_ij = (K Kᵀ)_ij/(λ_i + λ_j), and its leading directions. They are orthogonal in √C T, so that the reduced circuit is
// symmetric again and its heat balance closes as that of the whole does: Holds is what its kept ways hold.
func (s *storing) fewer(m *modes, f fewer, by scales) (*storing, *modes, error) {
	slow := slices.IndexFunc(m.rate, func(rate float64) bool { return rate > f.fastest })
	if slow < 0 {
		slow = len(m.rate)
	}
	if slow == 0 {
		return nil, nil, fmt.Errorf("everything in the rooms follows the weather at once: give the air its volume, or the walls their mass")
	}
	gram, err := s.gramian(m, slow, by)
	if err != nil {
		return nil, nil, err
	}
	basis, keep, err := leading(gram, f.leave)
	if err != nil {
		return nil, nil, err
	}
	return s.along(m, slow, basis, keep)
}

// gramian gives P of the slow ways, with what drives them and what they drive in equal parts.
func (s *storing) gramian(m *modes, slow int, by scales) (*mat.SymDense, error) {
	_, inputs := m.in.Dims()
	driven := mat.NewDense(slow, inputs, nil)
	for i := range slow {
		for k := range inputs {
			driven.Set(i, k, m.in.At(i, k)*by.inputs[k])
		}
	}
	var seen mat.Dense
	seen.Mul(pick(s.of, by.nodes, count(len(s.capacity))), m.out)
	p := mat.NewSymDense(slow, nil)
	add := func(k *mat.Dense) error {
		var kk mat.Dense
		kk.Mul(k, k.T())
		trace := 0.0
		for i := range slow {
			trace += kk.At(i, i) / (2 * (m.rate[i] + slowest))
		}
		if trace == 0 {
			return fmt.Errorf("nothing reaches the rooms")
		}
		for i := range slow {
			for j := i; j < slow; j++ {
				p.SetSym(i, j, p.At(i, j)+kk.At(i, j)/(m.rate[i]+m.rate[j]+slowest)/trace)
			}
		}
		return nil
	}
	if err := add(driven); err != nil {
		return nil, err
	}
	return p, add(pick(seen.T(), count(slow), count(len(by.nodes))))
}

// slowest keeps a room that nothing leaves finite, 1/s: it decays in three thousand years.
const slowest = 1e-11

// leading gives the directions of a Gramian, the strongest first, and how many of them matter.
func leading(p *mat.SymDense, leave float64) (basis *mat.Dense, keep int, err error) {
	n := p.SymmetricDim()
	var e mat.EigenSym
	if !e.Factorize(p, true) {
		return nil, 0, fmt.Errorf("the rooms' ways of cooling could not be weighed: look for a layer whose mass or thickness is far from usual")
	}
	var rising mat.Dense
	e.VectorsTo(&rising)
	values := e.Values(nil)
	basis = mat.NewDense(n, n, nil)
	total := 0.0
	for k := range n {
		basis.SetCol(k, mat.Col(nil, n-1-k, &rising))
		total += max(0, values[k])
	}
	left := 0.0
	for keep = n; keep > 1; keep-- {
		if left += max(0, values[n-keep]); left > leave*leave*total {
			break
		}
	}
	return basis, keep, nil
}

// along puts the circuit along the first directions of a basis of its slow ways; the others and the fast ways follow at once.
func (s *storing) along(m *modes, slow int, basis *mat.Dense, keep int) (*storing, *modes, error) {
	n := len(m.rate)
	_, inputs := m.in.Dims()
	// The slow ways in the new basis: dy/dt = −A y + B u.
	var a, scaled, b mat.Dense
	scaled.CloneFrom(basis)
	for i := range slow {
		for j := range slow {
			scaled.Set(i, j, scaled.At(i, j)*m.rate[i])
		}
	}
	a.Mul(basis.T(), &scaled)
	b.Mul(basis.T(), m.in.Slice(0, slow, 0, inputs))
	out := mat.NewDense(len(s.capacity), slow, nil)
	out.Mul(m.out.Slice(0, len(s.capacity), 0, slow), basis)

	rest := slow - keep
	reduced := mat.DenseCopyOf(a.Slice(0, keep, 0, keep))
	in := mat.DenseCopyOf(b.Slice(0, keep, 0, inputs))
	see := mat.DenseCopyOf(out.Slice(0, len(s.capacity), 0, keep))
	feed := mat.NewDense(len(s.capacity), inputs, nil)
	if rest > 0 {
		var factor mat.Cholesky
		if !factor.Factorize(symmetric(mat.DenseCopyOf(a.Slice(keep, slow, keep, slow)))) {
			return nil, nil, fmt.Errorf("the rooms' ways of cooling could not be put together: look for a wall without area")
		}
		var follows, led, work mat.Dense // y2 = −follows y1 + led u
		if err := factor.SolveTo(&follows, a.Slice(keep, slow, 0, keep)); err != nil {
			return nil, nil, fmt.Errorf("the rooms' ways of cooling: %w", err)
		}
		if err := factor.SolveTo(&led, b.Slice(keep, slow, 0, inputs)); err != nil {
			return nil, nil, fmt.Errorf("the rooms' ways of cooling: %w", err)
		}
		across := a.Slice(0, keep, keep, slow)
		work.Mul(across, &follows)
		reduced.Sub(reduced, &work)
		var lost, seen mat.Dense
		lost.Mul(across, &led)
		in.Sub(in, &lost)
		rests := out.Slice(0, len(s.capacity), keep, slow)
		seen.Mul(rests, &follows)
		see.Sub(see, &seen)
		feed.Mul(rests, &led)
	}
	for i := slow; i < n; i++ { // fast ways, each alone: z = In u/λ
		for r := range len(s.capacity) {
			for k := range inputs {
				feed.Set(r, k, feed.At(r, k)+m.out.At(r, i)*m.in.At(i, k)/m.rate[i])
			}
		}
	}
	return s.turned(m, basis, reduced, in, see, feed, slow, keep)
}

// turned finds the ways of decay of the reduced circuit.
func (s *storing) turned(m *modes, basis, reduced, in, see, feed *mat.Dense, slow, keep int) (*storing, *modes, error) {
	var e mat.EigenSym
	if !e.Factorize(symmetric(reduced), true) {
		return nil, nil, fmt.Errorf("the rooms' ways of cooling could not be parted")
	}
	var q mat.Dense
	e.VectorsTo(&q)
	few := &modes{rate: e.Values(nil), in: new(mat.Dense), out: new(mat.Dense), holds: make([]float64, keep)}
	for i, r := range few.rate {
		few.rate[i] = max(0, r)
	}
	few.in.Mul(q.T(), in)
	few.out.Mul(see, &q)
	for k := range keep { // what a kept way holds: the whole's, along the basis
		for j := range keep {
			along := 0.0
			for i := range slow {
				along += m.holds[i] * basis.At(i, j)
			}
			few.holds[k] += along * q.At(j, k)
		}
	}
	less := *s
	less.straight = new(mat.Dense)
	less.straight.Mul(s.of, feed)
	less.straight.Add(less.straight, s.straight)
	return &less, few, nil
}

// holdings gives what each way holds, J for each of its units.
func (s *storing) holdings(m *modes) []float64 {
	holds := make([]float64, len(m.rate))
	for k := range holds {
		for i, c := range s.capacity {
			holds[k] += c * m.out.At(i, k)
		}
	}
	return holds
}

// heatSwing is the usual swing of what people, machines and sun put into a room, W; only weights against temperatures depend on it.
const heatSwing = 300

// swings gives how much each input comes: of the weather's, the root of its mean square about its mean in the first year.
func (r *Rooms) swings() []float64 {
	list := make([]float64, r.plan.inputs)
	for k := range list {
		list[k] = heatSwing
		if values := r.columns[k].values; values != nil {
			list[k] = spread(values[:min(len(values), 365*24)])
		} else if r.columns[k].always != 0 {
			list[k] = 1
		}
	}
	return list
}

// spread gives the root of the mean square about the mean.
func spread(values []float64) float64 {
	sum, squares := 0.0, 0.0
	for _, v := range values {
		sum += v
		squares += v * v
	}
	n := float64(len(values))
	return math.Sqrt(max(0, squares/n-sum/n*sum/n))
}
