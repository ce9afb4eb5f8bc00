package reduce

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
)

// A slab is a block of earth under the floor of a room, whose floor lies in pieces: each piece has its area, a resistance down to the
// first node below it, and a way to the garden.
type slab struct {
	area, below, store, aside []float64
	garden                    float64
	convection, rays          float64 // W/m2K
}

func anySlab(t *rapid.T) (s slab) {
	draw := func(what string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, what) }
	for range rapid.IntRange(1, 5).Draw(t, "pieces") {
		s.area = append(s.area, draw("area", 0.5, 10))
		s.below = append(s.below, draw("resistance", 0.02, 2))
		s.store = append(s.store, draw("capacity", 1e5, 1e7))
		s.aside = append(s.aside, draw("to the next", 0.5, 20))
	}
	s.garden, s.convection, s.rays = draw("garden", 0.5, 20), draw("hc", 0.5, 5), draw("hr", 3, 6)
	return s
}

// earth lays the blocks into a network, between what is above the first and the garden.
func (s slab) earth(n *Network, garden int) (nodes []int) {
	for i, c := range s.store {
		nodes = append(nodes, n.Node(c))
		if i > 0 {
			n.Link(nodes[i-1], nodes[i], s.aside[i])
		}
	}
	n.Meet(nodes[len(nodes)-1], garden, s.garden)
	return nodes
}

// room makes a room over the slab: its air, what radiates, a wall and a vent hole; sun and a heat in the earth.
func (s slab) room() (n *Network, air, star, outside, sun, cable int) {
	n = NewNetwork(2)
	air, star = 0, 1
	n.Store(air, 5e4)
	outside = n.Boundary("outside")
	n.Meet(air, outside, 20)
	wall := n.Node(3e6)
	n.Link(air, wall, 30)
	n.Link(star, wall, 50)
	n.Meet(wall, outside, 15)
	sun, cable = n.Heat("sun on the floor"), n.Heat("heating cable")
	heat := n.Heat("stove")
	n.Spread(air, heat, 0.7)
	n.Spread(star, heat, 0.3)
	n.See(air, n.Output("air"), 1)
	return n, air, star, outside, sun, cable
}

// whole puts room and earth together in one piece, with the pieces of the floor as nodes without capacity.
func (s slab) whole() *Network {
	n, air, star, outside, sun, cable := s.room()
	nodes := s.earth(n, outside)
	takes, face := n.Output("floor, heat"), n.Output("floor, face")
	sum := 0.0
	for _, a := range s.area {
		sum += a
	}
	for i, a := range s.area {
		f := n.Node(0)
		n.Link(air, f, s.convection*a)
		n.Link(star, f, s.rays*a)
		n.Link(f, nodes[i], a/s.below[i])
		n.Spread(f, sun, a/sum)
		n.See(f, takes, a/s.below[i])
		n.See(nodes[i], takes, -a/s.below[i])
		n.See(f, face, a/sum)
	}
	n.Spread(nodes[0], cable, 0.9)
	n.See(nodes[0], n.Output("deep"), 1)
	return n
}

// joined attaches the earth as a component that was reduced before.
func (s slab) joined(t *rapid.T, o Options) (*Network, Attached) {
	c := NewNetwork(0)
	garden, floor, cable := c.Boundary("garden"), c.Boundary("floor"), c.Heat("cable")
	nodes := s.earth(c, garden)
	sum := 0.0
	for i, a := range s.area {
		c.Meet(nodes[i], floor, a/(s.below[i]+1/(s.convection+s.rays)))
		sum += a
	}
	c.Spread(nodes[0], cable, 0.9)
	c.See(nodes[0], c.Output("deep"), 1)
	earth := reduced(t, c, o)
	n, air, star, outside, sun, warm := s.room()
	a := n.Attach(earth, []Port{
		{Inputs: []Part{{outside, 1}}}, // alone: the boundary itself
		{Nodes: []Part{{air, s.convection * sum}, {star, s.rays * sum}}, Inputs: []Part{{sun, 1}}},
		{Inputs: []Part{{warm, 1}}},
	})
	return n, a
}

// Room and earth joined go as the same in one piece: every answer, and what the floor takes and how warm it is, at rest with few modes of the earth
// and hour by hour with all of them.
func TestAttachedIsOnePiece(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySlab(t)
		whole := reduced(t, s.whole(), Options{})
		n, a := s.joined(t, Options{Modes: rapid.IntRange(0, len(s.store)).Draw(t, "modes of the earth")})
		rested := reduced(t, n, Options{})
		u := anyInputs(t, whole)
		s.same(t, a, whole, rested, whole.Steady(u), rested.Steady(u), u)
		check.Balance(t, rested.Stored(rested.Steady(u))/1e6, whole.Stored(whole.Steady(u))/1e6, "heat held, MJ")

		n, a = s.joined(t, Options{})
		all := reduced(t, n, Options{})
		zw, za := make([]float64, whole.Modes()), make([]float64, all.Modes())
		mw, ma := make([]float64, whole.Modes()), make([]float64, all.Modes())
		for range 5 {
			u = anyInputs(t, whole)
			whole.Steps(3600).Go(zw, mw, u)
			all.Steps(3600).Go(za, ma, u)
			s.same(t, a, whole, all, mw, ma, u)
		}
	})
}

// same holds outputs and answers of two models against each other.
func (s slab) same(t *rapid.T, a Attached, whole, joined *Model, zw, zj, u []float64) {
	yw, yj := make([]float64, len(whole.Outputs)), make([]float64, len(joined.Outputs))
	whole.See(yw, zw, u)
	joined.See(yj, zj, u)
	for i, j := range []int{0, a.Heats[1], a.Faces[1], a.Outputs[0]} {
		close(t, yj[j], yw[i], joined.Outputs[j])
	}
	aw, aj := make([]float64, len(u)), make([]float64, len(u))
	whole.Answer(aw, zw, u)
	joined.Answer(aj, zj, u)
	for k := range u {
		close(t, aj[k], aw[k], whole.Inputs[k].Name)
		check.Balance(t, joined.Inputs[k].Share, whole.Inputs[k].Share, "share of "+whole.Inputs[k].Name)
	}
	close(t, joined.Entering(aj, u), whole.Entering(aw, u), "all that enters")
}

// close allows rounding through three eliminations more.
func close(t *rapid.T, got, want float64, what string) {
	t.Helper()
	if d := math.Abs(got - want); !(d <= 1e-8*max(1, math.Abs(want))) {
		t.Errorf("%s: %.12g joined, %.12g in one piece", what, got, want)
	}
}

// Few modes of the earth attached to few modes of the room lose no heat.
func TestAttachedBalanceCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySlab(t)
		n, _ := s.joined(t, Options{Modes: rapid.IntRange(1, len(s.store)).Draw(t, "modes of the earth")})
		m := reduced(t, n, Options{Modes: rapid.IntRange(1, 4).Draw(t, "modes of all")})
		z, mean, answers := make([]float64, m.Modes()), make([]float64, m.Modes()), make([]float64, len(m.Inputs))
		step := m.Steps(3600)
		for range 10 {
			u := anyInputs(t, m)
			before := m.Stored(z)
			step.Go(z, mean, u)
			m.Answer(answers, mean, u)
			check.Balance(t, (m.Stored(z)-before)/3.6e6, m.Entering(answers, u)/1e3, "heat that entered, kWh")
		}
		held := 0.0
		for _, c := range append([]float64{5e4, 3e6}, s.store...) {
			held += c
		}
		check.Balance(t, m.Stored(m.Steady([]float64{1, 0, 0, 0}))/held, 1, "heat held by everything a degree warmer")
	})
}

// A port that does not fit is told, not taken.
func TestAttachRefuses(t *testing.T) {
	c := NewNetwork(1)
	c.Store(0, 1e6)
	c.Meet(0, c.Boundary("floor"), 5)
	c.Spread(0, c.Heat("cable"), 1)
	earth, err := c.Reduce(Options{})
	if err != nil {
		t.Fatal(err)
	}
	for want, ports := range map[string][]Port{
		"2 inputs has 1 ports":     {{}},
		`"floor" conducts nothing`: {{Inputs: []Part{{1, 1}}}, {}},
		"node 7 is none":           {{Nodes: []Part{{7, 1}}}, {}},
		"input 5 of 2 is none":     {{Inputs: []Part{{5, 1}}}, {}},
		`"cable" of a component`:   {{Nodes: []Part{{0, 1}}}, {Nodes: []Part{{0, 1}}}},
	} {
		n := NewNetwork(1)
		n.Store(0, 1e6)
		n.Meet(0, n.Boundary("outside"), 3)
		n.Spread(0, n.Heat("stove"), 1)
		n.Attach(earth, ports)
		if _, err := n.Reduce(Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want an error with %q", err, want)
		}
	}
}
