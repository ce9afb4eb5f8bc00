package pump

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// gravity is the standard acceleration, m/s2, exact by definition (CGPM 1901). The
// earth's own differs by at most 0.3 %.
const gravity = 9.80665

// A Pipe is a run of one bore with its fittings.
type Pipe struct {
	Length    quantity.Metres
	Bore      quantity.Millimetres // inside diameter
	Roughness quantity.Millimetres // equivalent sand roughness; 0 for smooth
	Fittings  float64              // sum of the loss factors of bends, valves, inlet and outlet
}

// A Lift is a pump and what it works against.
type Lift struct {
	Static     quantity.Metres // height from water to outlet, with the pressure wanted there as metres of water
	Pipe       Pipe
	Flow       float64          // m3/h while it runs
	Efficiency float64          // water power over electric power, 0 to 1: pump and motor together
	Water      quantity.Celsius // temperature of the water
}

// PipeRoughness is for drawn plastic and copper pipe, mm. Handbooks give 0.0015 for drawn
// tubing [moody-chart]; pipes in use are rougher.
const PipeRoughness quantity.Millimetres = 0.0015

// secondsPerHour is exact.
const secondsPerHour = 3600

// Head gives the whole head while the pump runs: static, friction and fittings. The
// static part may be negative (pumping downhill); the whole may not fall below it.
func (l Lift) Head() quantity.Metres { return l.Static + l.Pipe.Loss(l.Flow, l.Water) }

// Power gives the electric power while the pump runs; 0 where water would flow by itself.
func (l Lift) Power() quantity.Watts {
	w := water(float64(l.Water))
	return quantity.Watts(max(0, waterPower(w.density, l.Flow/secondsPerHour, float64(l.Head()))/l.Efficiency))
}

// waterPower gives rho g Q H in W, Q in m3/s.
func waterPower(density, q, head float64) float64 { return density * gravity * q * head }

// EnergyPerKilolitre gives the electric energy for 1000 L. It grows with the flow,
// because friction does.
func (l Lift) EnergyPerKilolitre() quantity.WattHours {
	return quantity.WattHours(float64(l.Power()) / l.Flow) // W over m3/h
}

// Ranges for the faults.
const (
	mostFlow   = 1000 // m3/h
	mostHead   = 500  // m
	mostLength = 50000
	mostBore   = 1000 // mm
)

// Faults lists what is wrong with a lift, all at once.
func (l Lift) Faults() error {
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("pump: "+format, args...))
		}
	}
	fault(!(l.Flow > 0 && l.Flow <= mostFlow), "a flow of %g m3/h is out of range: more than 0, at most %d m3/h", l.Flow, mostFlow)
	fault(!(l.Static >= -mostHead && l.Static <= mostHead), "a static head of %g m is out of range: at most %d m either way", float64(l.Static), mostHead)
	fault(!(l.Efficiency > 0 && l.Efficiency <= 1), "an efficiency of %g is out of range: more than 0, at most 1", l.Efficiency)
	fault(!(l.Water >= 0 && l.Water <= 100), "water of %g degC is out of range: 0 to 100 degC", float64(l.Water))
	return errors.Join(errors.Join(faults...), l.Pipe.Faults())
}

// Faults lists what is wrong with a pipe, all at once.
func (p Pipe) Faults() error {
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("pump: "+format, args...))
		}
	}
	fault(!(p.Length >= 0 && p.Length <= mostLength), "a pipe of %g m is out of range: 0 to %d m", float64(p.Length), mostLength)
	fault(!(p.Bore > 0 && p.Bore <= mostBore), "a bore of %g mm is out of range: more than 0, at most %d mm", float64(p.Bore), mostBore)
	fault(!(p.Roughness >= 0 && p.Roughness <= p.Bore/20), "a roughness of %g mm is out of range: 0 to a twentieth of the bore", float64(p.Roughness))
	fault(!(p.Fittings >= 0 && p.Fittings <= 1000), "fittings of %g are out of range: 0 to 1000", p.Fittings)
	return errors.Join(faults...)
}
