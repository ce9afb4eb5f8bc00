package warmth

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// A circuit is nodes joined by conductances. Nodes with a capacity store heat, those without
// follow at once. Its inputs are temperatures to which nodes are tied, and heats that enter at nodes.
type circuit struct {
	capacity []float64 // J/K of each node, 0 where it stores nothing
	joints   []joint
	ties     []tie
	heats    []entry
	inputs   int
}

// A joint is a conductance between two nodes, W/K.
type joint struct {
	from, to int
	g        float64
}

// A tie is a conductance from a node to an input that is a temperature, W/K.
type tie struct {
	node, input int
	g           float64
}

// An entry is the share of an input that is a heat, W, which enters at a node.
type entry struct {
	node, input int
	share       float64
}

func (c *circuit) node(capacity float64) int {
	c.capacity = append(c.capacity, capacity)
	return len(c.capacity) - 1
}

func (c *circuit) input() int {
	c.inputs++
	return c.inputs - 1
}

func (c *circuit) join(from, to int, g float64) int {
	c.joints = append(c.joints, joint{from, to, g})
	return len(c.joints) - 1
}

func (c *circuit) tie(node, input int, g float64) int {
	c.ties = append(c.ties, tie{node, input, g})
	return len(c.ties) - 1
}

func (c *circuit) heat(node, input int, share float64) {
	c.heats = append(c.heats, entry{node, input, share})
}

// matrices gives G and B of C dT/dt = -G T + B u over all nodes.
func (c *circuit) matrices() (g *mat.SymDense, b *mat.Dense) {
	n := len(c.capacity)
	g, b = mat.NewSymDense(n, nil), mat.NewDense(n, max(1, c.inputs), nil)
	add := func(i, j int, v float64) { g.SetSym(i, j, g.At(i, j)+v) }
	for _, j := range c.joints {
		add(j.from, j.from, j.g)
		add(j.to, j.to, j.g)
		add(j.from, j.to, -j.g)
	}
	for _, t := range c.ties {
		add(t.node, t.node, t.g)
		b.Set(t.node, t.input, b.At(t.node, t.input)+t.g)
	}
	for _, h := range c.heats {
		b.Set(h.node, h.input, b.At(h.node, h.input)+h.share)
	}
	return g, b
}

// A storing is a circuit whose nodes without capacity are worked out: C dT/dt = -G T + B u for those that store, and
// the temperature of every node as Of T + Straight u.
type storing struct {
	capacity     []float64
	g            *mat.SymDense
	b            *mat.Dense
	of, straight *mat.Dense // a row for every node of the circuit
}

// storing works out the nodes without capacity: Tm = Gmm⁻¹ (Bm u − Gms Ts) put into the others' balance.
func (c *circuit) storing() (*storing, error) {
	g, b := c.matrices()
	var keep, drop []int
	for i, held := range c.capacity {
		if held > 0 {
			keep = append(keep, i)
		} else {
			drop = append(drop, i)
		}
	}
	if len(keep) == 0 {
		return nil, fmt.Errorf("nothing in the rooms stores heat: give the air its volume, or the walls their mass")
	}
	s := &storing{capacity: make([]float64, len(keep))}
	for k, i := range keep {
		s.capacity[k] = c.capacity[i]
	}
	gss, bs := pick(g, keep, keep), pick(b, keep, count(c.inputs))
	follows, led, err := follow(g, b, keep, drop, c.inputs)
	if err != nil {
		return nil, err
	}
	s.of, s.straight = mat.NewDense(len(c.capacity), len(keep), nil), mat.NewDense(len(c.capacity), max(1, c.inputs), nil)
	for k, i := range keep {
		s.of.Set(i, k, 1)
	}
	if len(drop) > 0 {
		gsm := pick(g, keep, drop)
		var work mat.Dense
		work.Mul(gsm, follows)
		gss.Add(gss, &work)
		var straight mat.Dense
		straight.Mul(gsm, led)
		bs.Sub(bs, &straight)
		for k, i := range drop {
			s.of.SetRow(i, follows.RawRowView(k))
			s.straight.SetRow(i, led.RawRowView(k))
		}
	}
	s.b, s.g = bs, symmetric(gss)
	return s, nil
}

// follow gives the nodes without capacity by those with it and by the inputs.
func follow(g *mat.SymDense, b *mat.Dense, keep, drop []int, inputs int) (follows, led *mat.Dense, err error) {
	if len(drop) == 0 {
		return nil, nil, nil
	}
	var factor mat.Cholesky
	if !factor.Factorize(symmetric(pick(g, drop, drop))) {
		return nil, nil, fmt.Errorf("a face in the rooms touches nothing: every wall and window needs an area")
	}
	follows, led = new(mat.Dense), new(mat.Dense)
	if err := factor.SolveTo(follows, pick(g, drop, keep)); err != nil {
		return nil, nil, fmt.Errorf("the faces of the rooms: %w", err)
	}
	follows.Scale(-1, follows)
	if err := factor.SolveTo(led, pick(b, drop, count(inputs))); err != nil {
		return nil, nil, fmt.Errorf("the faces of the rooms: %w", err)
	}
	return follows, led, nil
}

func count(n int) []int {
	to := make([]int, max(1, n))
	for i := range to {
		to[i] = i
	}
	return to
}

func pick(m mat.Matrix, rows, columns []int) *mat.Dense {
	if len(rows) == 0 || len(columns) == 0 {
		return nil
	}
	d := mat.NewDense(len(rows), len(columns), nil)
	for i, r := range rows {
		for j, c := range columns {
			d.Set(i, j, m.At(r, c))
		}
	}
	return d
}

func symmetric(d *mat.Dense) *mat.SymDense {
	n, _ := d.Dims()
	s := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			s.SetSym(i, j, (d.At(i, j)+d.At(j, i))/2)
		}
	}
	return s
}

// Modes are a storing circuit along its own ways of decay: dz/dt = −λ z + In u, T = Out z.
type modes struct {
	rate []float64  // 1/s, rising
	in   *mat.Dense // a row for each mode, a column for each input
	out  *mat.Dense // a row for each node that stores
}

// modes finds the decays: with w = √C T the matrix C^−½ G C^−½ is symmetric.
func (s *storing) modes() (*modes, error) {
	n := len(s.capacity)
	a := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			a.SetSym(i, j, s.g.At(i, j)/math.Sqrt(s.capacity[i]*s.capacity[j]))
		}
	}
	var e mat.EigenSym
	if !e.Factorize(a, true) {
		return nil, fmt.Errorf("the rooms' ways of cooling could not be found: look for a layer whose mass or thickness is far from usual")
	}
	var q mat.Dense
	e.VectorsTo(&q)
	m := &modes{rate: e.Values(nil), in: new(mat.Dense), out: mat.NewDense(n, n, nil)}
	scaled := mat.DenseCopyOf(s.b)
	for i := range n {
		for j := range n {
			m.out.Set(i, j, q.At(i, j)/math.Sqrt(s.capacity[i]))
		}
		for k := range scaled.RawMatrix().Cols {
			scaled.Set(i, k, scaled.At(i, k)/math.Sqrt(s.capacity[i]))
		}
	}
	m.in.Mul(q.T(), scaled)
	for i, r := range m.rate {
		m.rate[i] = max(0, r) // a room that nothing leaves has a rate of 0, which rounding may pass
	}
	return m, nil
}
