package hotwater

import (
	"errors"
	"math"

	"suffice/quantity"
)

// An Inlet is the buried pipe or the tank that the cold water comes from. Its
// temperature follows the air late and less: a running mean with a time constant,
// of whose swing about the mean of the years a share arrives.
//
// That form is common practice, no source. A time constant of 30 days lags a yearly
// wave by 27 days, which is the lag of the reference cold water of EN 12976-2, whose
// swings are 0.3 (ground water) to 0.8 (mains) of the air's. A tank in the open follows
// within days: 40 kL of steel or plastic with 70 m2 of wall at 10 W/m2K has 46 kWh/K over 0.7
// kW/K, 3 days; a buried pipe at 1 m, weeks.
type Inlet struct {
	Days  float64          // time constant of the running mean, over 0
	Swing float64          // share of the running mean's swing about Mean that arrives, 0 to 1
	Mean  quantity.Celsius // of the air over the years

	keep float64 // share of the running mean that is left after an hour
}

// InletState is what ground or tank remember.
type InletState struct{ Running quantity.Celsius }

// InletOut is the cold water of an hour.
type InletOut struct {
	Cold   quantity.Celsius
	Frozen bool // the reckoning went to 0 degC or under: the pipe would be ice, and Cold is given as 0
}

// Prepare works out what depends on the inlet alone. The error lists all its faults.
func (n *Inlet) Prepare() error {
	var f faulty
	f.unless(n.Days > 0 && n.Days <= 1000, "a time constant of %g days is out of range: over 0, at most 1000", n.Days)
	f.unless(n.Swing >= 0 && n.Swing <= 1, "a swing of %g is out of range: 0 to 1", n.Swing)
	f.unless(finite(float64(n.Mean)), "the mean temperature %g is not a number", float64(n.Mean))
	n.keep = math.Exp(-1 / (24 * n.Days))
	return errors.Join(f...)
}

// Start gives the state after a long time at the mean of the air.
func (n *Inlet) Start() InletState { return InletState{Running: n.Mean} }

// Step moves s on by one hour of air temperature.
func (n *Inlet) Step(s *InletState, air quantity.Celsius) (out InletOut) {
	s.Running = air + (s.Running-air)*quantity.Celsius(n.keep)
	out.Cold = n.Mean + (s.Running-n.Mean)*quantity.Celsius(n.Swing)
	if out.Cold <= 0 {
		out.Cold, out.Frozen = 0, true
	}
	return out
}
