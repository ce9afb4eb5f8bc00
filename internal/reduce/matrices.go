package reduce

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"suffice/internal/solve"
)

// matrices are a network as C dT/dt = -G T + B u; y = S T + Y u; answers D u - Bᵀ T.
type matrices struct {
	*Network
	states, ins, outs int
	b, d, s, y        *mat.Dense // s has a column for each output

	massless []int // states
	place    []int // of each state among the massless, -1 for none
	factor   *solve.Factored
	led      *mat.Dense // F: of each state, by input, what the massless do at once
}

func (n *Network) matrices() (*matrices, error) {
	m := &matrices{Network: n, states: len(n.capacity), ins: len(n.inputs), outs: len(n.outputs)}
	m.b, m.d = dense(m.states, m.ins), dense(m.ins, m.ins)
	m.s, m.y = dense(m.states, m.outs), dense(m.outs, m.ins)
	for _, e := range n.form {
		switch {
		case e.a < 0 && e.b < 0:
			plus(m.d, -1-e.a, -1-e.b, e.v)
			if e.a != e.b {
				plus(m.d, -1-e.b, -1-e.a, e.v)
			}
		case e.a < 0:
			plus(m.b, e.b, -1-e.a, -e.v)
		case e.b < 0:
			plus(m.b, e.a, -1-e.b, -e.v)
		}
	}
	for y, o := range n.outputs {
		for _, p := range o.sum {
			if p.at < 0 {
				plus(m.y, y, -1-p.at, p.share)
			} else {
				plus(m.s, p.at, y, p.share)
			}
		}
	}
	return m, m.leadMassless()
}

// dense makes a matrix of zeros; without rows or columns, too, which gonum refuses: nil then.
func dense(rows, columns int) *mat.Dense {
	if rows == 0 || columns == 0 {
		return nil
	}
	return mat.NewDense(rows, columns, nil)
}

func plus(m *mat.Dense, i, j int, v float64) { m.Set(i, j, m.At(i, j)+v) }

// leadMassless works out the states without capacity: Tm = Gmm⁻¹ (Bm u - Gms Ts).
func (m *matrices) leadMassless() (err error) {
	m.place = make([]int, m.states)
	for i, c := range m.capacity {
		m.place[i] = -1
		if c == 0 {
			m.place[i] = len(m.massless)
			m.massless = append(m.massless, i)
		}
	}
	m.led = dense(m.states, m.ins)
	if len(m.massless) == 0 {
		return nil
	}
	g := m.banded(0, m.place, len(m.massless))
	if m.factor, err = g.Factor(); err != nil {
		return fmt.Errorf("reduce: nodes without capacity: %w", err)
	}
	right := make([]float64, len(m.massless))
	for k := range m.ins {
		for p, i := range m.massless {
			right[p] = m.b.At(i, k)
		}
		m.factor.Solve(right)
		for p, i := range m.massless {
			m.led.Set(i, k, right[p])
		}
	}
	return nil
}

// banded gives G + shift C of the states that have a place.
func (m *matrices) banded(shift float64, place []int, size int) *solve.Banded {
	half := 0
	inside := func(e element) bool { return e.a >= 0 && e.b >= 0 && place[e.a] >= 0 && place[e.b] >= 0 }
	for _, e := range m.form {
		if inside(e) {
			half = max(half, place[e.a]-place[e.b], place[e.b]-place[e.a])
		}
	}
	g := solve.NewBanded(size, half)
	for _, e := range m.form {
		if inside(e) {
			g.Add(place[e.a], place[e.b], e.v)
		}
	}
	for i, p := range place {
		if p >= 0 && shift > 0 {
			g.Add(p, p, shift*m.capacity[i])
		}
	}
	return g
}

// lift gives the massless states of x what the others lead them to, with inputs at 0.
func (m *matrices) lift(x []float64) {
	if len(m.massless) == 0 {
		return
	}
	right := make([]float64, len(m.massless))
	for _, e := range m.form {
		if e.a < 0 || e.b < 0 {
			continue
		}
		if p := m.place[e.a]; p >= 0 && m.place[e.b] < 0 {
			right[p] -= e.v * x[e.b]
		}
		if p := m.place[e.b]; p >= 0 && m.place[e.a] < 0 {
			right[p] -= e.v * x[e.a]
		}
	}
	m.factor.Solve(right)
	for p, i := range m.massless {
		x[i] = right[p]
	}
}

// conduct writes G x.
func (m *matrices) conduct(dst, x []float64) {
	clear(dst)
	for _, e := range m.form {
		if e.a < 0 || e.b < 0 {
			continue
		}
		dst[e.a] += e.v * x[e.b]
		if e.a != e.b {
			dst[e.b] += e.v * x[e.a]
		}
	}
}

// project gives the network in the space of the rows of v, for which vᵀCv = 1.
func (m *matrices) project(v *mat.Dense) *modal {
	k, _ := v.Dims()
	var gv, a, out, now, seen mat.Dense
	gv.CloneFrom(v)
	held := make([]float64, k)
	for i := range k {
		m.conduct(gv.RawRowView(i), v.RawRowView(i))
		for s, x := range v.RawRowView(i) {
			held[i] += m.capacity[s] * m.ones[s] * x
		}
	}
	a.Mul(&gv, v.T())
	p := &modal{a: symmetric(&a), in: new(mat.Dense), at: m.d, held: held}
	p.in.Mul(v, m.b)
	p.parts = m.parts(v)
	now.Mul(m.b.T(), m.led)
	p.at.Sub(p.at, &now)
	if m.outs > 0 {
		out.Mul(v, m.s)
		p.out = mat.DenseCopyOf(out.T())
		seen.Mul(m.s.T(), m.led)
		m.y.Add(m.y, &seen)
		p.through = m.y
	}
	return p
}

// parts gives what each group holds in the space of the rows of v.
func (m *matrices) parts(v *mat.Dense) *mat.Dense {
	d := dense(len(m.groups), rows(v))
	for g, group := range m.groups {
		for i := range rows(v) {
			for _, s := range group.states {
				plus(d, g, i, m.capacity[s]*m.ones[s]*v.At(i, s))
			}
		}
	}
	return d
}

// units are the states that store, one by one, with what they lead.
func (m *matrices) units() *mat.Dense {
	v := mat.NewDense(m.states-len(m.massless), m.states, nil)
	row := 0
	for i, c := range m.capacity {
		if c > 0 {
			x := v.RawRowView(row)
			x[i] = 1 / math.Sqrt(c)
			m.lift(x)
			row++
		}
	}
	return v
}

func symmetric(d mat.Matrix) *mat.SymDense {
	n, _ := d.Dims()
	s := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			s.SetSym(i, j, (d.At(i, j)+d.At(j, i))/2)
		}
	}
	return s
}
