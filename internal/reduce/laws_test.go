package reduce

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"suffice/internal/check"
)

// anyNetwork draws nodes in a chain with some links across, some without capacity, two boundaries, a heat spread over
// two nodes and one at one node, and two outputs.
func anyNetwork(t *rapid.T) *Network {
	count := rapid.IntRange(2, 14).Draw(t, "nodes")
	n := NewNetwork(count)
	draw := func(what string, low, high float64) float64 {
		return math.Exp(rapid.Float64Range(math.Log(low), math.Log(high)).Draw(t, what))
	}
	pick := func(what string) int { return rapid.IntRange(0, count-1).Draw(t, what) }
	n.Store(pick("storing"), draw("capacity", 1e4, 1e7))
	for i := range count {
		if rapid.Bool().Draw(t, "stores") {
			n.Store(i, draw("capacity", 1e4, 1e7))
		}
		if i > 0 {
			n.Link(i-1, i, draw("conductance", 0.5, 100))
		}
		n.Link(i, pick("across"), draw("conductance", 0.5, 100))
	}
	a, b := n.Boundary("a"), n.Boundary("b")
	n.Meet(pick("a"), a, draw("conductance", 0.5, 100))
	n.Meet(pick("a again"), a, draw("conductance", 0.5, 100))
	n.Meet(pick("b"), b, draw("conductance", 0.5, 100))
	spread, here := n.Heat("spread"), n.Heat("here")
	n.Spread(pick("spread"), spread, 0.3)
	n.Spread(pick("spread again"), spread, 0.5)
	at, seen := pick("here"), pick("seen")
	n.Spread(at, here, 1)
	n.See(seen, n.Output("seen"), 1)
	mean := n.Output("mean of two")
	n.See(pick("mean"), mean, 0.5)
	n.See(at, mean, 0.5)
	return n
}

func reduced(t interface{ Fatal(...any) }, n *Network, o Options) *Model {
	m, err := n.Reduce(o)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// steady solves the whole network at rest, all nodes, by gonum.
func steady(t interface{ Fatal(...any) }, n *Network, u []float64) (nodes []float64) {
	size := len(n.capacity)
	g, right := mat.NewSymDense(size, nil), mat.NewVecDense(size, nil)
	for _, e := range n.form {
		switch {
		case e.a >= 0 && e.b >= 0:
			g.SetSym(e.a, e.b, g.At(e.a, e.b)+e.v)
		case e.a >= 0:
			right.SetVec(e.a, right.AtVec(e.a)-e.v*u[-1-e.b])
		case e.b >= 0:
			right.SetVec(e.b, right.AtVec(e.b)-e.v*u[-1-e.a])
		}
	}
	var f mat.Cholesky
	if !f.Factorize(g) {
		t.Fatal("gonum refuses the network")
	}
	x := mat.NewVecDense(size, nil)
	if err := f.SolveVecTo(x, right); err != nil {
		t.Fatal(err)
	}
	return x.RawVector().Data
}

// answers reads outputs and answers off all nodes.
func read(n *Network, nodes, u []float64) (outputs, answers []float64) {
	at := func(p int) float64 {
		if p < 0 {
			return u[-1-p]
		}
		return nodes[p]
	}
	for _, o := range n.outputs {
		sum := 0.0
		for _, p := range o.sum {
			sum += p.share * at(p.at)
		}
		outputs = append(outputs, sum)
	}
	answers = make([]float64, len(n.inputs))
	for _, e := range n.form {
		if e.a < 0 {
			answers[-1-e.a] += e.v * at(e.b)
		}
		if e.b < 0 && e.a != e.b {
			answers[-1-e.b] += e.v * at(e.a)
		}
	}
	for k, in := range n.inputs {
		if in.Heat {
			answers[k] = -answers[k]
		}
	}
	return outputs, answers
}

func anyModes(t *rapid.T, n *Network) Options {
	storing := len(n.capacity) - n.massless()
	return Options{Modes: rapid.IntRange(0, storing).Draw(t, "modes")}
}

// At rest few modes and the whole network see the same, give the same and hold the same.
func TestSteadyGainsAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := anyNetwork(t)
		m := reduced(t, n, anyModes(t, n))
		for k := range m.Inputs {
			u := make([]float64, len(m.Inputs))
			u[k] = 1
			nodes := steady(t, n, u)
			outputs, answers := read(n, nodes, u)
			z := m.Steady(u)
			y, a := make([]float64, len(m.Outputs)), make([]float64, len(u))
			m.See(y, z, u)
			m.Answer(a, z, u)
			for i := range y {
				check.Balance(t, y[i], outputs[i], "output "+m.Outputs[i])
			}
			for i := range a {
				check.Balance(t, a[i], answers[i], "answer "+m.Inputs[i].Name)
			}
			held := 0.0
			for i, c := range n.capacity {
				held += c * nodes[i]
			}
			check.Balance(t, m.Stored(z)/1e6, held/1e6, "heat held, MJ")
		}
	})
}

// What enters in an hour is what is held more after it, in the whole network and in few modes; everything a degree warmer
// holds its capacity.
func TestHeatBalanceCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := anyNetwork(t)
		m := reduced(t, n, anyModes(t, n))
		s := m.Steps(rapid.SampledFrom([]float64{1, 600, 3600, 86400}).Draw(t, "step"))
		z, mean, answers := make([]float64, m.Modes()), make([]float64, m.Modes()), make([]float64, len(m.Inputs))
		for range 10 {
			u := anyInputs(t, m)
			before := m.Stored(z)
			s.Go(z, mean, u)
			m.Answer(answers, mean, u)
			scale := max(1, math.Abs(before)/s.Step)
			for _, a := range answers {
				scale = max(scale, math.Abs(a))
			}
			check.Balance(t, (m.Stored(z)-before)/s.Step/scale, m.Entering(answers, u)/scale, "heat that entered")
		}
		held := 0.0
		for _, c := range n.capacity {
			held += c
		}
		check.Balance(t, m.Stored(m.Steady([]float64{1, 1, 0, 0}))/held, 1, "heat held by everything a degree warmer")
	})
}

// Groups hold together what the network holds, in few modes as in all; each of them, in all modes, what its nodes hold.
func TestGroupsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := anyNetwork(t)
		for _, name := range []string{"even", "odd"} {
			n.Group(name)
		}
		for i := range n.capacity {
			n.Part(i%2, i)
		}
		m := reduced(t, n, anyModes(t, n))
		z := make([]float64, m.Modes())
		for i := range z {
			z[i] = rapid.Float64Range(-1e4, 1e4).Draw(t, "mode")
		}
		size := 1.0
		for i, held := range m.Held {
			size = max(size, math.Abs(held*z[i]), math.Abs(m.Parts[0][i]*z[i]))
		}
		parts := m.StoredBy(z)
		check.Balance(t, (parts[0]+parts[1])/size, m.Stored(z)/size, "heat held")
		all := reduced(t, n, Options{})
		u := anyInputs(t, all)
		nodes := steady(t, n, u)
		held := [2]float64{}
		for i, c := range n.capacity {
			held[i%2] += c * nodes[i]
		}
		for g, v := range all.StoredBy(all.Steady(u)) {
			check.Balance(t, v/1e6, held[g]/1e6, n.groups[g].name+" nodes, MJ")
		}
	})
}

func anyInputs(t *rapid.T, m *Model) (u []float64) {
	for _, in := range m.Inputs {
		high := 40.0
		if in.Heat {
			high = 2000
		}
		u = append(u, rapid.Float64Range(-high/2, high).Draw(t, in.Name))
	}
	return u
}

// Every mode decays.
func TestModesDecay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := anyNetwork(t)
		m := reduced(t, n, anyModes(t, n))
		last := 0.0
		for _, r := range m.Rate {
			if !(r > 0) || r < last {
				t.Errorf("rates %v: each is above 0 and not below the one before", m.Rate)
			}
			last = r
		}
	})
}

// Warmth at b from a heat at a is warmth at a from the same heat at b, at any time; and so for heat that one boundary takes
// from another.
func TestReciprocity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := anyNetwork(t)
		a, b := rapid.IntRange(0, len(n.capacity)-1).Draw(t, "from"), rapid.IntRange(0, len(n.capacity)-1).Draw(t, "to")
		ha, hb := n.Heat("at a"), n.Heat("at b")
		n.Spread(a, ha, 1)
		n.Spread(b, hb, 1)
		ya, yb := n.Output("of a"), n.Output("of b")
		n.See(a, ya, 1)
		n.See(b, yb, 1)
		m := reduced(t, n, anyModes(t, n))
		s := m.Steps(3600)
		pulse := func(in, out int, answers bool) (seen []float64) {
			z, mean, y, u := make([]float64, m.Modes()), make([]float64, m.Modes()), make([]float64, len(m.Outputs)), make([]float64, len(m.Inputs))
			if answers {
				y = make([]float64, len(m.Inputs))
			}
			u[in] = 1
			for range 5 {
				s.Go(z, mean, u)
				if answers {
					m.Answer(y, mean, u)
				} else {
					m.See(y, mean, u)
				}
				seen = append(seen, y[out])
				u[in] = 0
			}
			return seen
		}
		for i, warm := range pulse(ha, yb, false) {
			check.Balance(t, warm, pulse(hb, ya, false)[i], "warmth there and back")
			check.Balance(t, warm, pulse(ha, hb, true)[i], "warmth where a heat enters, and seen")
		}
		for i, heat := range pulse(0, 1, true) {
			check.Balance(t, heat, pulse(1, 0, true)[i], "heat there and back")
		}
	})
}

// With every mode kept, a network goes as the exponential of its own matrix says.
func TestAllModesAreTheNetwork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := anyNetwork(t)
		for i := range n.capacity {
			n.Store(i, 1e5) // each has some: the matrix then is the network
		}
		m := reduced(t, n, Options{})
		u := anyInputs(t, m)
		size := len(n.capacity)
		a := mat.NewDense(size+1, size+1, nil)
		for _, e := range n.form {
			switch {
			case e.a >= 0 && e.b >= 0:
				plus(a, e.a, e.b, -e.v/n.capacity[e.a]*3600)
				if e.a != e.b {
					plus(a, e.b, e.a, -e.v/n.capacity[e.b]*3600)
				}
			case e.a >= 0:
				plus(a, e.a, size, -e.v/n.capacity[e.a]*3600*u[-1-e.b])
			}
		}
		var after mat.Dense
		after.Exp(a)
		nodes := mat.Col(nil, size, &after)[:size] // from 0 degrees
		outputs, answers := read(n, nodes, u)
		z, mean := make([]float64, m.Modes()), make([]float64, m.Modes())
		m.Steps(3600).Go(z, mean, u)
		y, q := make([]float64, len(outputs)), make([]float64, len(u))
		m.See(y, z, u)
		m.Answer(q, z, u)
		for i := range y {
			check.Balance(t, y[i], outputs[i], "output after an hour")
		}
		for i := range q {
			check.Balance(t, q[i], answers[i], "answer after an hour")
		}
	})
}
