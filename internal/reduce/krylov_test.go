package reduce

import (
	"math"
	"strings"
	"testing"

	"suffice/internal/check"
)

// block is a slab of earth in cells, 40 wide and 12 deep, the upper side under a floor, a garden and a wall's foot; some cells store nothing.
func block() *Network {
	const wide, deep = 40, 12
	n := NewNetwork(wide * deep)
	floor, garden, cable := n.Boundary("floor"), n.Boundary("garden"), n.Heat("cable")
	for x := range wide {
		for y := range deep {
			i := x*deep + y
			if (x+y)%15 != 7 {
				n.Store(i, 3e5*float64(1+y))
			}
			if y > 0 {
				n.Link(i-1, i, 6)
			}
			if x > 0 {
				n.Link(i-deep, i, 2*float64(1+y))
			}
		}
		if x < 15 {
			n.Meet(x*deep, floor, 3)
		} else {
			n.Meet(x*deep, garden, 8)
		}
	}
	n.Spread(5*deep+1, cable, 0.5)
	n.Spread(7*deep+1, cable, 0.5)
	n.See(0, n.Output("edge"), 1)
	return n
}

// A large network goes by way of its answers: gains at rest stay exact, the balance closes, and it sees the year as all its modes do.
func TestLargeNetwork(t *testing.T) {
	n := block()
	m, err := n.Reduce(Options{})
	if err != nil {
		t.Fatal(err)
	}
	for k := range m.Inputs {
		u := make([]float64, len(m.Inputs))
		u[k] = 1
		nodes := steady(t, n, u)
		outputs, answers := read(n, nodes, u)
		y, a := make([]float64, 1), make([]float64, len(u))
		m.See(y, m.Steady(u), u)
		m.Answer(a, m.Steady(u), u)
		check.Balance(t, y[0], outputs[0], "edge")
		for i := range a {
			check.Balance(t, a[i], answers[i], "answer "+m.Inputs[i].Name)
		}
	}
	parts, err := n.matrices()
	if err != nil {
		t.Fatal(err)
	}
	whole, err := parts.project(parts.units()).alone()
	if err != nil {
		t.Fatal(err)
	}
	full := whole.model(n)
	rows := make([][]float64, 2*8760)
	for hour := range rows {
		year, day := 2*math.Pi*float64(hour)/8760, 2*math.Pi*float64(hour)/24
		rows[hour] = []float64{20 + 2*math.Sin(day), 9 - 11*math.Cos(year) - 6*math.Cos(day) + 4*math.Sin(1.3*day), 200 * max(0, math.Cos(year)-0.5)}
	}
	got, want := live(m, rows), live(full, rows)
	off, heat, where := apart(m, got, want)
	t.Logf("%d modes for %d: rms %.4f K, yearly heat %.5f %% (%s), balance %.2g and %.2g", m.Modes(), full.Modes(), off, 100*heat, where, got.lacks, want.lacks)
	if off > 0.05 || heat > 0.001 {
		t.Errorf("rms %.4f K, yearly heat %.4f %% (%s) off", off, 100*heat, where)
	}
	if got.lacks > 1e-9 || want.lacks > 1e-9 {
		t.Errorf("the balance lacks %.3g of the heat, with all modes %.3g", got.lacks, want.lacks)
	}
}

func TestReduceRefuses(t *testing.T) {
	ok := func() *Network {
		n := NewNetwork(2)
		n.Store(0, 1e6)
		n.Link(0, 1, 1)
		n.Meet(0, n.Boundary("outside"), 1)
		return n
	}
	for what, build := range map[string]func(n *Network){
		"nothing":             func(*Network) {},
		"capacity of -1":      func(n *Network) { n.Store(0, -1) },
		"conductance of NaN":  func(n *Network) { n.Link(0, 1, math.NaN()) },
		"node 2 is none of 2": func(n *Network) { n.Link(0, 2, 1) },
		"reaches no given":    func(n *Network) { n.Node(1) },
		"other kind":          func(n *Network) { n.Spread(0, 0, 1) },
		"output 3 is none":    func(n *Network) { n.See(0, 3, 1) },
		"share of +Inf":       func(n *Network) { n.Spread(0, n.Heat("stove"), math.Inf(1)) },
	} {
		n := ok()
		build(n)
		_, err := n.Reduce(Options{})
		if what == "nothing" && err != nil || what != "nothing" && (err == nil || !strings.Contains(err.Error(), what)) {
			t.Errorf("%s: got %v", what, err)
		}
	}
	n := ok()
	n.Boundary("met by nothing")
	n.Store(1, 1e6)
	if m, err := n.Reduce(Options{Within: 10}); err != nil || m.Modes() != 1 {
		t.Errorf("a boundary met by nothing: %v, %v", m, err)
	}
	n = NewNetwork(1)
	n.Meet(0, n.Boundary("outside"), 1)
	if _, err := n.Reduce(Options{}); err == nil || !strings.Contains(err.Error(), "stores heat") {
		t.Errorf("nothing that stores: got %v", err)
	}
	_, err := ok().Reduce(Options{Modes: -1, Within: -1, Step: -1, Inputs: []float64{1, 2}, Watch: []float64{1}, Times: []float64{0}})
	for _, part := range []string{"-1 modes", "within -1 K", "steps of -1", "2 swings of 1", "1 counts of 0", "change in 0 s"} {
		if err == nil || !strings.Contains(err.Error(), part) {
			t.Errorf("options: %q is missing in %v", part, err)
		}
	}
}
