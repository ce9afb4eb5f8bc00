package ground

import (
	"fmt"

	"suffice/internal/solve"
)

// Stepper carries a network through time in steps of one length; what can be worked out before, is.
type Stepper struct {
	network *Network
	step    float64 // s
	ahead   float64
	ready   *solve.Factored
	mixed   []float64 // temperatures of nodes, between before and after
	between []float64 // of airs
}

// Steps prepares steps of so many seconds. Ahead is the share of the step's end in its flows: 0.5
// is Crank and Nicolson's, exact to second order, 1 is backward Euler's, which never overshoots.
func (n *Network) Steps(step, ahead float64) (*Stepper, error) {
	if !(step > 0) || !(ahead >= 0.5 && ahead <= 1) {
		return nil, fmt.Errorf("section: steps of %g s, ahead by %g: the first is above 0, the second from 0.5 to 1", step, ahead)
	}
	factored, err := n.matrix(ahead, step).Factor()
	if err != nil {
		return nil, err
	}
	return &Stepper{n, step, ahead, factored, make([]float64, n.Nodes()), make([]float64, len(n.Section.Airs))}, nil
}

// Step moves the nodes' temperatures on by a step, in place, with the airs going from before to after,
// and writes what each air gave, mean of the step, W/m. That heat is the rise of what the
// section stores. A stepper is for one goroutine at a time.
func (s *Stepper) Step(nodes, before, after, flows []float64) {
	n := s.network
	for i := range s.between {
		s.between[i] = s.ahead*after[i] + (1-s.ahead)*before[i]
	}
	// With T' = T + D, (C/h + θK) D = g·airs − K T.
	rise := s.mixed
	clear(rise)
	for _, j := range n.joints {
		q := j.g * (nodes[j.b] - nodes[j.a])
		rise[j.a] += q
		rise[j.b] -= q
	}
	for _, f := range n.faces {
		rise[f.node] += f.g * (s.between[f.air] - nodes[f.node])
	}
	s.ready.Solve(rise)
	for i := range nodes {
		nodes[i] += rise[i]
		rise[i] = nodes[i] - (1-s.ahead)*rise[i] // the temperature that the flows saw
	}
	n.flows(flows, rise, s.between)
}
