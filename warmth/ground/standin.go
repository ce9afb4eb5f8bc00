package ground

import (
	"math"

	"suffice/quantity"
)

// StandIn gives the earth under a floor on the ground as one resistance, m2K/W, between its layers and undisturbed ground at a
// depth, for a balance by the hour: the steady loss is that of On, and the yearly swing that arrives at the floor is the one
// that YearlyOn lets through. Left out: the standard's lags, in whose place stand those of undisturbed ground at that depth, and what
// the earth itself stores of the room's own swing.
func (f Floor) StandIn() (behind float64, depth quantity.Metres) {
	y := f.YearlyOn()
	behind = math.Max(0, 1/f.On()-f.Inside-f.Resists)
	if share := y.Outside / y.Steady; share < 1 {
		depth = quantity.Metres(-f.reach() * math.Log(share))
	}
	return behind, depth
}
