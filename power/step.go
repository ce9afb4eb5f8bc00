package power

import "suffice/quantity"

// Step moves the supply on by one hour; its conservation sentence stands at SystemOut. Who gets
// power, in this order: the services; what must run, with tasks on their last day; what
// should run; what could run and the electric element, these two from the battery only
// above their charge; then, from sun alone, tasks that had waited; the battery; and what
// should or could run and was not let in before. The rest is curtailed.
func (y *System) Step(s *SystemState, in *SystemIn) (out SystemOut) {
	return out
}

var _ quantity.Watts
