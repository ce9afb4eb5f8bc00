package reduce_test

import (
	"fmt"

	"suffice/internal/reduce"
)

// A room's air with a wall of three nodes to outside, and a stove: how warm it is after a day.
func Example() {
	n := reduce.NewNetwork(4)
	n.Store(0, 2e5)
	outside, stove := n.Boundary("outside"), n.Heat("stove")
	for i := 1; i < 4; i++ {
		n.Store(i, 1e6)
		n.Link(i-1, i, 40)
	}
	n.Meet(3, outside, 60)
	n.Spread(0, stove, 1)
	n.See(0, n.Output("air"), 1)
	m, err := n.Reduce(reduce.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	z, mean, answers, seen := m.Steady([]float64{5, 0}), make([]float64, m.Modes()), make([]float64, 2), make([]float64, 1)
	hour, inputs := m.Steps(3600), []float64{5, 300}
	for range 24 {
		hour.Go(z, mean, inputs)
	}
	m.See(seen, z, inputs)
	m.Answer(answers, mean, inputs)
	fmt.Printf("%d modes, air %.2f degC, outside takes %.0f W of 300 W\n", m.Modes(), seen[0], -answers[0])
	// Output: 4 modes, air 22.74 degC, outside takes 116 W of 300 W
}
