package ground

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
)

// anySection draws a section of a few rectangles of anything, with a room and the outside somewhere.
func anySection(t *rapid.T) *Section {
	lines := func(name string) []float64 {
		x := []float64{0}
		for range rapid.IntRange(3, 9).Draw(t, name) {
			x = append(x, x[len(x)-1]+rapid.Float64Range(0.01, 1).Draw(t, name))
		}
		return x
	}
	s, err := NewSection(lines("x"), lines("y"))
	if err != nil {
		t.Fatal(err)
	}
	part := func() Rect {
		i, j := rapid.IntRange(0, len(s.X)-2).Draw(t, "left"), rapid.IntRange(0, len(s.Y)-2).Draw(t, "bottom")
		return Rect{s.X[i], s.X[rapid.IntRange(i+1, len(s.X)-1).Draw(t, "right")], s.Y[j], s.Y[rapid.IntRange(j+1, len(s.Y)-1).Draw(t, "top")]}
	}
	s.Fill(Rect{-1, 100, -1, 100}, Material{"earth", 1.5, 2e6})
	for range 3 {
		s.Fill(part(), Material{"part", rapid.Float64Range(0.03, 200).Draw(t, "conductivity"), rapid.Float64Range(1e4, 4e6).Draw(t, "capacity")})
	}
	last := len(s.Y) - 1
	s.Open(part(), Air{"room", rapid.Float64Range(0, 0.3).Draw(t, "resistance")})
	s.Open(Rect{s.X[0], s.X[1], s.Y[last-1], s.Y[last]}, Air{"outside", 0.04})
	s.Fill(Rect{s.X[0], s.X[1], s.Y[last-2], s.Y[last-1]}, Material{"lid", 1, 1e6})
	return s
}

// What comes in goes out again, no place is warmer or colder than the airs, and what one air gives another it would
// get from it.
func TestSectionSteady(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySection(t)
		n, err := s.Network()
		if err != nil {
			t.Fatal(err)
		}
		f, err := n.Steady([]float64{20, -5})
		if err != nil && strings.Contains(err.Error(), "no known temperature") {
			return // a piece of material that no air touches
		}
		if err != nil {
			t.Fatal(err)
		}
		scale := max(1, math.Abs(f.Flows[0]))
		check.Balance(t, (f.Flows[0]+f.Flows[1])/scale, 0, "heat in and out")
		for i, warm := range f.Nodes {
			if warm < -5-1e-6 || warm > 20+1e-6 {
				t.Errorf("node %d at %g is outside -5 to 20", i, warm)
			}
		}
		g, err := n.Coupling()
		if err != nil {
			t.Fatal(err)
		}
		check.Balance(t, g[0][1]/scale, g[1][0]/scale, "coupling both ways")
		check.Balance(t, f.Flows[0]/scale, 25*g[0][1]/scale, "heat by the coupling")
	})
}

// The heat that the airs gave is what the section stores more, in every step, for both rules; in
// the end it stands as the steady solution does.
func TestSectionInTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySection(t)
		n, err := s.Network()
		if err != nil {
			t.Fatal(err)
		}
		ahead := rapid.SampledFrom([]float64{0.5, 0.75, 1}).Draw(t, "ahead")
		step, err := n.Steps(3600, ahead)
		if err != nil {
			t.Fatal(err)
		}
		nodes, flows, before := make([]float64, n.Nodes()), make([]float64, 2), []float64{0, 0}
		for range 30 {
			after := []float64{rapid.Float64Range(-20, 40).Draw(t, "room"), rapid.Float64Range(-20, 40).Draw(t, "outside")}
			held := n.Storing(nodes)
			step.Step(nodes, before, after, flows)
			scale := max(1, 3600*(math.Abs(flows[0])+math.Abs(flows[1])), math.Abs(held)) // two large flows may meet
			check.Balance(t, (held+3600*(flows[0]+flows[1]))/scale, n.Storing(nodes)/scale, "heat stored, J/m")
			before = after
		}
	})
}

func TestSectionSettles(t *testing.T) {
	s := section(t, even(0, 1, 5), append(even(0, 1, 5), 1.2))
	s.Fill(Rect{0, 1, 0, 1}, Material{"earth", 1.5, 2e6})
	s.Open(Rect{0, 0.4, 1, 2}, Air{"room", 0.13})
	s.Open(Rect{0.4, 1, 1, 2}, Air{"outside", 0.04})
	n := network(t, s)
	want := steady(t, n, 20, 0)
	step, err := n.Steps(86400, 1)
	if err != nil {
		t.Fatal(err)
	}
	nodes, flows := make([]float64, n.Nodes()), make([]float64, 2)
	for range 400 {
		step.Step(nodes, want.Airs, want.Airs, flows)
	}
	for i := range nodes {
		if math.Abs(nodes[i]-want.Nodes[i]) > 1e-6 {
			t.Errorf("node %d: %.7f after 400 days, steady %.7f", i, nodes[i], want.Nodes[i])
		}
	}
	if n := testing.AllocsPerRun(20, func() { step.Step(nodes, want.Airs, want.Airs, flows) }); n != 0 {
		t.Errorf("a step makes %v allocations, want none", n)
	}
}

// A section seen in a mirror loses the same.
func TestSectionMirrored(t *testing.T) {
	x, y := []float64{0, 0.3, 0.5, 1.4, 2}, []float64{0, 0.5, 0.7, 1}
	build := func(turn func(Rect) Rect, x []float64) Field {
		s := section(t, x, y)
		s.Fill(turn(Rect{0, 2, 0, 0.7}), Material{"earth", 1.5, 2e6})
		s.Fill(turn(Rect{0.3, 0.5, 0, 0.7}), Material{"insulation", 0.04, 5e4})
		s.Open(turn(Rect{0, 0.3, 0.7, 1}), Air{"room", 0.13})
		s.Open(turn(Rect{1.4, 2, 0.7, 1}), Air{"outside", 0.04})
		return steady(t, network(t, s), 20, 0)
	}
	mirrored := make([]float64, len(x))
	for i, v := range x {
		mirrored[len(x)-1-i] = 2 - v
	}
	a := build(func(r Rect) Rect { return r }, x)
	b := build(func(r Rect) Rect { return Rect{2 - r.Right, 2 - r.Left, r.Bottom, r.Top} }, mirrored)
	check.Balance(t, a.Flows[0], b.Flows[0], "heat of a section and its mirror, W/m")
	check.Balance(t, a.At(0.4, 0.2), b.At(1.6, 0.2), "a place and its mirror, degC")
}

// A layered wall as a section has the resistance of its layers.
func TestSectionOfAWall(t *testing.T) {
	s := section(t, []float64{-1, 0, 0.1, 0.3, 0.31, 1}, []float64{0, 0.5, 1})
	s.Fill(Rect{0, 0.1, 0, 1}, Material{"brick", 0.77, 1e6})
	s.Fill(Rect{0.1, 0.3, 0, 1}, Material{"wool", 0.035, 1e5})
	s.Fill(Rect{0.3, 0.31, 0, 1}, Material{"board", 0.25, 1e6})
	out := s.Open(Rect{-1, 0, 0, 1}, Air{"outside", 0.04})
	s.Open(Rect{0.31, 1, 0, 1}, Air{"room", 0.13})
	f := steady(t, network(t, s), 0, 1)
	check.Balance(t, -f.Flows[out], 1/(0.04+0.1/0.77+0.2/0.035+0.01/0.25+0.13), "heat through a wall, W/m2")
	check.Balance(t, f.At(0.1, 0.25), (0.04+0.1/0.77)*-f.Flows[out], "between two layers, degC")
}

// The grid has a line at each place asked for, rises, and is finest there.
func TestLines(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		places := rapid.SliceOfNDistinct(rapid.Float64Range(-50, 50), 2, 6, func(v float64) int { return int(v) }).Draw(t, "places")
		lines := Lines(places, 0.05, 1.3, 2)
		for _, p := range places {
			if !slices.ContainsFunc(lines, func(x float64) bool { return math.Abs(x-p) < 1e-9 }) {
				t.Errorf("no line at %g in %v", p, lines)
			}
		}
		for i := 1; i < len(lines); i++ {
			if d := lines[i] - lines[i-1]; d <= 0 || d > 2+1e-9 {
				t.Errorf("a step of %g", d)
			}
		}
	})
}

func TestSectionRefusesWhatCannotBe(t *testing.T) {
	if _, err := NewSection([]float64{0, 1, 1}, []float64{0, 1}); err == nil {
		t.Error("two lines at one place were taken")
	}
	s := section(t, []float64{0, 1, 2}, []float64{0, 1})
	s.Fill(Rect{0, 1, 0, 1}, Material{"", -1, 0})
	if _, err := s.Network(); err == nil || !strings.Contains(err.Error(), "W/mK") {
		t.Errorf("got %v", err)
	}
	s = section(t, []float64{0, 1, 2}, []float64{0, 1})
	s.Fill(Rect{0, 1, 0, 1}, Material{"earth", 1, 1})
	if _, err := s.Network(); err == nil || !strings.Contains(err.Error(), "nothing to compute") {
		t.Errorf("got %v", err)
	}
}
