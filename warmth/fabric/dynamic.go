package fabric

import (
	"math"
	"math/cmplx"

	"suffice/material"
)

// A Swing is how an element answers to temperatures that swing with one period
// (iso13786).
type Swing struct {
	Hours         float64                // the period
	Steady        material.Transmittance // U
	Transmittance material.Transmittance // periodic: heat swing inside for one kelvin of swing outside
	Decrement     float64                // periodic over steady transmittance, 0 to 1
	Lag           float64                // h, how much later the heat comes through than the swing outside: the whole way, may exceed the period
	Wrapped       float64                // h, the same where one day cannot be told from the next: over minus half to plus half a period, later counts negative (iso13786 prints this one)

	Inner, Outer         material.Transmittance // admittances: heat swing at a side for one kelvin of swing there
	InnerLead, OuterLead float64                // h, by which that heat comes before the temperature
	InnerStore           float64                // kJ/m2K, areal heat capacity kappa 1
	OuterStore           float64                // kJ/m2K, areal heat capacity kappa 2
}

// Swing gives the answer to a period in hours, usually 24.
// The element may be at most MostDepths thick.
func (e Element) Swing(hours float64) Swing {
	var store float64
	for _, l := range e.Layers {
		store += l.Areal()
	}
	return swing(e.Even().at, hours, store)
}

// swing works out the answer of anything that has a transfer matrix; held is all that it
// stores, J/m2K.
func swing(at func(w float64) Transfer, hours, held float64) Swing {
	w := angular(hours)
	z, steady := at(w), -1/real(at(0).Z12)
	seconds := hours * secondsPerHour
	store := func(own complex128) float64 { return seconds / (2 * math.Pi) * cmplx.Abs((own-1)/z.Z12) / 1000 } // iso13786 eq. 24
	lead := func(own complex128) float64 { return hours / (2 * math.Pi) * cmplx.Phase(-own/z.Z12) }
	y := cmplx.Abs(1 / z.Z12)
	lag := lag(at, w, w*held/steady)
	return Swing{
		Hours: hours, Steady: material.Transmittance(steady),
		Transmittance: material.Transmittance(y), Decrement: y / steady,
		Lag: lag * hours / (2 * math.Pi), Wrapped: hours * (math.Round(lag/(2*math.Pi)) - lag/(2*math.Pi)),
		Inner: material.Transmittance(cmplx.Abs(z.Z11 / z.Z12)), Outer: material.Transmittance(cmplx.Abs(z.Z22 / z.Z12)),
		InnerLead: lead(z.Z11), OuterLead: lead(z.Z22),
		InnerStore: store(z.Z11), OuterStore: store(z.Z22),
	}
}

// lag follows the phase of the heat coming through from slow swings, where it is none, to
// the wanted one, so that whole turns are counted. Phase goes with the square root of the
// rate: the first step is a swing of 256 times the time constant RC, and no step adds more
// than a sixteenth of a depth of penetration. product is w RC.
func lag(at func(w float64) Transfer, w, product float64) float64 {
	steps := 16 * (1 + math.Ceil(math.Sqrt(product)))
	var sum float64
	last := -at(0).Z12
	for i := 1.0; i <= steps; i++ {
		next := -at(w * (i / steps) * (i / steps)).Z12
		sum += cmplx.Phase(next / last)
		last = next
	}
	return sum
}
