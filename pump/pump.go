// Package pump lifts water: head through a pipe, power, energy per kilolitre, and
// what gravity alone moves.
package pump

import "suffice/quantity"

// A Pipe is a straight run of one bore with its fittings.
type Pipe struct {
	Length    quantity.Metres
	Bore      quantity.Millimetres // inside diameter
	Roughness quantity.Millimetres // equivalent sand roughness
	Fittings  float64              // sum of the loss factors of bends, valves, inlet and outlet
}

// A Lift is a pump and what it works against.
type Lift struct {
	Static     quantity.Metres // height from water to outlet, with the pressure wanted there as metres
	Pipe       Pipe
	Flow       float64          // m3/h while it runs
	Efficiency float64          // water power over electric power, 0 to 1
	Water      quantity.Celsius // temperature of the water
}

// Head gives the whole head while the pump runs: static, friction and fittings.
func (l Lift) Head() quantity.Metres { return 0 }

// Power gives the electric power while the pump runs.
func (l Lift) Power() quantity.Watts { return 0 }

// EnergyPerKilolitre gives the electric energy for 1000 L.
func (l Lift) EnergyPerKilolitre() quantity.WattHours { return 0 }

// Loss gives the head lost to friction and fittings at a flow in m3/h.
func (p Pipe) Loss(flow float64, water quantity.Celsius) quantity.Metres { return 0 }

// GravityFlow gives the flow in m3/h that a fall of water drives through the pipe.
func (p Pipe) GravityFlow(fall quantity.Metres, water quantity.Celsius) float64 { return 0 }

// Faults lists what is wrong with a lift, all at once.
func (l Lift) Faults() error { return nil }
