package reduce

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// A modal network is dz/dt = -a z + in u; y = out z + through u; answers at u - inᵀ z. Out and through are nil where nothing is seen.
type modal struct {
	a            *mat.SymDense
	in, at       *mat.Dense
	out, through *mat.Dense
	held         []float64
	parts        *mat.Dense // what each group holds, by mode; nil without groups
}

func (p *modal) size() int { return p.a.SymmetricDim() }

// turn sees the network along the columns of q, which are square to each other and of length 1.
func (p *modal) turn(q *mat.Dense) *modal {
	var a, in, out mat.Dense
	a.Product(q.T(), p.a, q)
	in.Mul(q.T(), p.in)
	t := &modal{a: symmetric(&a), in: &in, at: p.at, through: p.through, held: make([]float64, p.size())}
	mat.NewVecDense(len(t.held), t.held).MulVec(q.T(), mat.NewVecDense(len(p.held), p.held))
	if p.out != nil {
		out.Mul(p.out, q)
		t.out = &out
	}
	if p.parts != nil {
		t.parts = new(mat.Dense)
		t.parts.Mul(p.parts, q)
	}
	return t
}

// alone turns the network so that each mode decays by itself.
func (p *modal) alone() (*modal, error) {
	var e mat.EigenSym
	if !e.Factorize(p.a, true) {
		return nil, errors.New("reduce: the ways of decay could not be found: look for capacities or conductances far apart")
	}
	var q mat.Dense
	e.VectorsTo(&q)
	t := p.turn(&q)
	t.a = mat.NewSymDense(p.size(), nil)
	for i, rate := range e.Values(nil) {
		if !(rate > 0) {
			return nil, errors.New("reduce: a way of decay is lost in rounding: capacities or conductances are too far apart")
		}
		t.a.SetSym(i, i, rate)
	}
	return t, nil
}

// drives gives what the modes are ranked by: a column for the heat that would be the twin of each output that counts. Since heat passes there and
// back alike, modes that tell what such a heat does tell what any input does to that output; inputs beside them only take up room. (The house of two
// rooms in package warmth needs 12 modes in place of 23.)
//
// Where nothing counts, a column for each input at its usual swing, so that its answers are right.
// A boundary moves much heat in and out of the skin it touches, of which little gets farther: it counts by the root of the share of
// its conductance that is left at rest (own rule).
func (p *modal) drives(n *Network, swings, watch []float64) *mat.Dense {
	var twins []int
	counts := n.counts(watch)
	for y, count := range counts {
		if count > 0 {
			twins = append(twins, y)
		}
	}
	if len(twins) > 0 {
		d := mat.NewDense(p.size(), len(twins), nil)
		for c, y := range twins {
			for i := range p.size() {
				d.Set(i, c, p.out.At(y, i)*counts[y]*usualHeat)
			}
		}
		return d
	}
	d := mat.NewDense(p.size(), len(swings), nil)
	for k, swing := range swings {
		if !n.inputs[k].Heat {
			swing *= math.Sqrt(p.past(k))
		}
		for i := range p.size() {
			d.Set(i, k, p.in.At(i, k)*swing)
		}
	}
	return d
}

// past gives the share of a boundary's conductance that is left at rest.
func (p *modal) past(k int) float64 {
	whole := p.at.At(k, k)
	if whole == 0 {
		return 1
	}
	rest := whole
	for i := range p.size() {
		rest -= p.in.At(i, k) * p.in.At(i, k) / p.a.At(i, i)
	}
	return max(0, rest) / whole
}

// balance turns modes that are alone by what they matter, most first, and gives their weights. In a network where each answer mirrors its input
// the two Gramians are one, and its own axes are balanced (moore-1981). Inputs that stand still for a step
// and means over it push and show a mode by b (1 - e^-x)/x, x = λ step: P = Σ of these products over 1 - e^(-xi-xj).
// Before all others stands the whole network one degree warmer, so that it stays whatever is left out.
func (p *modal) balance(drives *mat.Dense, step float64) (ranked *modal, weights []float64, err error) {
	n := p.size()
	for i := range n {
		x := p.a.At(i, i) * step
		row := drives.RawRowView(i)
		for k := range row {
			row[k] *= -math.Expm1(-x) / x
		}
	}
	var gram mat.Dense
	gram.Mul(drives, drives.T())
	gram.Apply(func(i, j int, v float64) float64 { return v / -math.Expm1(-(p.a.At(i, i)+p.a.At(j, j))*step) }, &gram)
	one := mat.NewVecDense(n, slices.Clone(p.held))
	one.ScaleVec(1/mat.Norm(one, 2), one)
	beside := mat.NewDense(n, n, nil) // takes that one axis out
	beside.Outer(-1, one, one)
	for i := range n {
		plus(beside, i, i, 1)
	}
	var square mat.Dense
	square.Product(beside, &gram, beside)
	beside.Outer(2*mat.Trace(&gram), one, one)
	square.Add(&square, beside)
	var e mat.EigenSym
	if !e.Factorize(symmetric(&square), true) {
		return nil, nil, errors.New("reduce: what matters of the ways of decay could not be found")
	}
	var q mat.Dense
	e.VectorsTo(&q)
	order, values := mat.NewDense(n, n, nil), e.Values(nil)
	for i := range n {
		order.SetCol(i, mat.Col(nil, n-1-i, &q))
		weights = append(weights, max(0, values[n-1-i]))
	}
	weights[0] = mat.Inner(one, &gram, one)
	return p.turn(order), weights, nil
}

// settle lets all but the first modes follow at once: their balance is worked out as that of nodes without capacity, which keeps steady gains
// exact (singular perturbation, liu-anderson).
func (p *modal) settle(keep int) (*modal, error) {
	n := p.size()
	if keep >= n {
		return p, nil
	}
	a := mat.DenseCopyOf(p.a)
	a11, a12, a22 := a.Slice(0, keep, 0, keep), a.Slice(0, keep, keep, n), a.Slice(keep, n, keep, n)
	var f mat.Cholesky
	if !f.Factorize(symmetric(a22)) {
		return nil, errors.New("reduce: what is left out could not be worked out: capacities or conductances are too far apart")
	}
	in1, in2 := p.in.Slice(0, keep, 0, cols(p.in)), p.in.Slice(keep, n, 0, cols(p.in))
	var follow, led, kept, in, at mat.Dense
	if err := errors.Join(f.SolveTo(&follow, a12.T()), f.SolveTo(&led, in2)); err != nil {
		return nil, err
	}
	kept.Mul(a12, &follow)
	kept.Sub(a11, &kept)
	in.Mul(a12, &led)
	in.Sub(in1, &in)
	at.Mul(in2.T(), &led)
	at.Sub(p.at, &at)
	s := &modal{a: symmetric(&kept), in: &in, at: &at, held: p.held[:keep]}
	if p.parts != nil {
		s.parts = mat.DenseCopyOf(p.parts.Slice(0, rows(p.parts), 0, keep)) // what follows at once holds nothing, as in held
	}
	if p.out != nil {
		out1, out2 := p.out.Slice(0, rows(p.out), 0, keep), p.out.Slice(0, rows(p.out), keep, n)
		var out, through mat.Dense
		out.Mul(out2, &follow)
		out.Sub(out1, &out)
		through.Mul(out2, &led)
		through.Add(p.through, &through)
		s.out, s.through = &out, &through
	}
	return s, nil
}

func cols(d *mat.Dense) int { _, c := d.Dims(); return c }
func rows(d *mat.Dense) int { r, _ := d.Dims(); return r }

// turned gives -dᵀ.
func turned(d *mat.Dense) *mat.Dense {
	t := mat.DenseCopyOf(d.T())
	t.Scale(-1, t)
	return t
}

// model writes modes that are alone.
func (p *modal) model(n *Network) *Model {
	m := &Model{Inputs: slices.Clone(n.inputs), Rate: make([]float64, p.size()), In: table(p.in), At: table(p.at), Held: slices.Clone(p.held)}
	for i := range m.Rate {
		m.Rate[i] = p.a.At(i, i)
	}
	for _, o := range n.outputs {
		m.Outputs = append(m.Outputs, o.name)
	}
	if p.out != nil {
		m.Out, m.Through = table(p.out), table(p.through)
	}
	if p.parts != nil {
		m.Parts = table(p.parts)
	}
	return m
}

func table(d *mat.Dense) (t [][]float64) {
	for i := range rows(d) {
		t = append(t, slices.Clone(d.RawRowView(i)))
	}
	return t
}

// few gives how many modes are needed for the others to weigh no more than a share.
func few(weights []float64, share float64) int {
	sum := 0.0
	for _, w := range weights {
		sum += w
	}
	tail := 0.0
	for i := len(weights) - 1; i > 0; i-- {
		if tail += weights[i]; tail > share*sum {
			return i + 1
		}
	}
	return 1
}
