package reduce

import (
	"fmt"
	"strings"
	"testing"

	"suffice/internal/check"
)

// What is written is the whole network: put together again it rests at the same temperatures.
func TestTextIsTheNetwork(t *testing.T) {
	h := built()
	var text strings.Builder
	if err := h.WriteText(&text); err != nil {
		t.Fatal(err)
	}
	again := &Network{inputs: h.inputs, outputs: h.outputs}
	for line := range strings.Lines(text.String()) {
		var a, b int
		var v float64
		switch word, rest, _ := strings.Cut(line, " "); word {
		case "size":
			if _, err := fmt.Sscan(rest, &a, &b); err != nil || b != len(h.inputs) {
				t.Fatalf("%d inputs in %q, want %d (%v)", b, line, len(h.inputs), err)
			}
			for range a {
				again.state(0, 1, false)
			}
		case "holds":
			if _, err := fmt.Sscan(rest, &a, &v); err != nil {
				t.Fatalf("%q: %v", line, err)
			}
			again.Store(a, v)
		case "element":
			if _, err := fmt.Sscan(rest, &a, &b, &v); err != nil {
				t.Fatalf("%q: %v", line, err)
			}
			again.add(a, b, v)
		default:
			t.Fatalf("a line %q", line)
		}
	}
	u := make([]float64, len(h.inputs))
	for k := range u {
		u[k] = 10 + float64(k*k%7)
	}
	rest := func(n *Network) ([]float64, float64) {
		m, err := n.Reduce(Options{})
		if err != nil {
			t.Fatal(err)
		}
		z, y := m.Steady(u), make([]float64, len(m.Outputs))
		m.See(y, z, u)
		return y, m.Stored(z)
	}
	want, held := rest(h.Network)
	got, holds := rest(again)
	for y := range want {
		check.Balance(t, got[y], want[y], "output at rest, degC")
	}
	check.Balance(t, holds, held, "heat held at rest, J")
}
