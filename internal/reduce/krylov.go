package reduce

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// many is the count of storing nodes from which on a network is first put into the space of its answers.
const many = 400

// repeats is the share of a column that is left by those before it, in heat, below which it tells nothing new.
const repeats = 1e-8

// deep is how often each shift's answers are answered again: their change with the shift, and the change of that. With three, a section of earth sees a
// year of hours as its 2,486 nodes do to within a thousandth of its net heats; with one, they are some hundredths off.
const deep = 3

// answers spans the space of what inputs do, and of what outputs see, at rest and at changes of given quickness: rational
// Krylov blocks (grimme) at 0 and at 1/time for each of the times, s; nil for UsualTimes. In that space steady gains are exact, and so is the whole network one degree
// warmer.
func (m *matrices) answers(times []float64) (*mat.Dense, error) {
	if times == nil {
		times = UsualTimes()
	}
	shifts := []float64{0}
	for _, t := range times {
		shifts = append(shifts, 1/t)
	}
	ones := make([]float64, m.states)
	for i, c := range m.capacity {
		if c > 0 {
			ones[i] = m.ones[i]
		}
	}
	s := &space{m: m}
	s.add(ones)
	all := make([]int, m.states)
	for i := range all {
		all[i] = i
	}
	for _, shift := range shifts {
		f, err := m.banded(shift, all, m.states).Factor()
		if err != nil {
			return nil, err
		}
		for c := range m.ins + m.outs {
			x := make([]float64, m.states)
			if c < m.ins {
				mat.Col(x, c, m.b)
			} else {
				mat.Col(x, c-m.ins, m.s)
			}
			for range deep {
				f.Solve(x)
				next := make([]float64, m.states)
				for i, t := range x {
					next[i] = m.capacity[i] * t
				}
				s.add(x)
				x = next
			}
		}
	}
	v := mat.NewDense(len(s.rows), m.states, nil)
	for i, x := range s.rows {
		v.SetRow(i, x)
	}
	return v, nil
}

// A space is rows that are square to each other in heat.
type space struct {
	m    *matrices
	rows [][]float64
}

// add takes up what is new of a column: Gram and Schmidt's way, twice, which is enough for rounding.
func (s *space) add(x []float64) {
	before := s.length(x)
	for range 2 {
		for _, r := range s.rows {
			share := s.product(x, r)
			for i, v := range r {
				x[i] -= share * v
			}
		}
	}
	after := s.length(x)
	if !(after > repeats*before) {
		return
	}
	for i := range x {
		x[i] /= after
	}
	s.m.lift(x)
	s.rows = append(s.rows, x)
}

func (s *space) product(a, b []float64) (sum float64) {
	for i, c := range s.m.capacity {
		sum += c * a[i] * b[i]
	}
	return sum
}

func (s *space) length(x []float64) float64 { return math.Sqrt(s.product(x, x)) }
