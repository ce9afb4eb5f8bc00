package reduce

import (
	"math"
	"testing"

	"suffice/internal/check"
)

// The exact cooling of one store; what it gave to outside is its heat, and the mean of the day lies between.
func TestOneStore(t *testing.T) {
	n := NewNetwork(1)
	n.Store(0, 1e7)
	n.Meet(0, n.Boundary("outside"), 100)
	n.Spread(0, n.Heat("stove"), 1)
	n.See(0, n.Output("store"), 1)
	m, err := n.Reduce(Options{})
	if err != nil {
		t.Fatal(err)
	}
	z, mean, y, u := m.Steady([]float64{20, 0}), make([]float64, 1), make([]float64, 1), []float64{0, 500}
	s := m.Steps(3600)
	day := 0.0
	for range 24 {
		s.Go(z, mean, u)
		m.See(y, mean, u)
		day += y[0] / 24
	}
	m.See(y, z, u)
	check.That(t, y[0], check.Published{Source: "one-store", At: "5 + 15 exp(-0.864)", Value: "11.32", Unit: "degC", Standing: "own"})
	check.Balance(t, y[0], 5+15*math.Exp(-.864), "store after a day, degC")
	check.Balance(t, day, 5+15*(1-math.Exp(-.864))/.864, "its mean, degC")
	check.Balance(t, 1/m.Rate[0]/3600, 1e7/100/3600, "its time, h")
}
