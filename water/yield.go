package water

import "suffice/quantity"

// A Rule says in which order a step fills, spills and draws.
type Rule int

const (
	// AfterSpillage draws only what was held when the step began, and spills before it
	// draws: Y = min(D, V), V' = min(V + Q - Y, S - Y) [fewkes-butler].
	AfterSpillage Rule = iota
	// BeforeSpillage draws from what was held and what comes, and spills what is then too
	// much: Y = min(D, V + Q), V' = min(V + Q - Y, S) [fewkes-butler].
	BeforeSpillage
	// OfTheHour is the rule of Tank.Step: fill, spill, draw. It lies between the two, and the
	// shorter the step the less the three differ.
	OfTheHour
	Rules // how many rules there are
)

// String names the rule.
func (r Rule) String() string {
	return [...]string{"after-spillage", "before-spillage", "of-the-hour"}[r]
}

// A Vessel is a tank as the published rules know it: no dead storage, no leak, one constant
// demand. Its amounts are in any one unit of volume.
type Vessel struct {
	Holds  float64
	Start  float64
	Demand float64 // a step
}

// Steps is what a vessel did, step by step.
type Steps struct{ Yields, Spills, Levels []float64 }

// Steps runs the vessel through inflows by a rule.
//
// Start + the sum of inflow = the sum of Yields + the sum of Spills + the last of Levels.
func (v Vessel) Steps(rule Rule, inflow []float64) Steps {
	var s Steps
	level := v.Start
	for _, q := range inflow {
		var yield, spill float64
		yield, spill, level = v.step(rule, level, q)
		s.Yields = append(s.Yields, yield)
		s.Spills = append(s.Spills, spill)
		s.Levels = append(s.Levels, level)
	}
	return s
}

// step gives yield, spill and new level. Symbols as in fewkes-butler.
func (v Vessel) step(rule Rule, V, Q float64) (Y, spill, level float64) {
	S, D := v.Holds, v.Demand
	switch rule {
	case AfterSpillage:
		Y = min(D, V)
		return Y, max(0, V+Q-S), min(V+Q-Y, S-Y)
	case BeforeSpillage:
		Y = min(D, V+Q)
		return Y, max(0, V+Q-Y-S), min(V+Q-Y, S)
	}
	tank, held := Tank{Holds: quantity.Litres(S), Overflow: Away}, TankState{quantity.Litres(V)}
	out := tank.Step(&held, TankIn{Inflow: quantity.Litres(Q), Wanted: quantity.Litres(D)})
	return float64(out.Drawn), float64(out.Spilled), float64(held.Held)
}

// Total gives the sum of the yields and of the spills.
func (s Steps) Total() (yield, spill float64) {
	for i := range s.Yields {
		yield += s.Yields[i]
		spill += s.Spills[i]
	}
	return yield, spill
}

// Together adds up inflows over so many steps each, so that a rule can be tried on a coarser
// step; what is left over at the end makes a step of its own.
func Together(inflow []float64, steps int) []float64 {
	sums := make([]float64, 0, (len(inflow)+steps-1)/steps)
	for i, q := range inflow {
		if i%steps == 0 {
			sums = append(sums, 0)
		}
		sums[len(sums)-1] += q
	}
	return sums
}
