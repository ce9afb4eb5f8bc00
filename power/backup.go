package power

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// NoLoadFuel is the share of full-load fuel that a small engine burns with no load: the
// ratio 0.08415 / (0.08415 + 0.246) of the straight line for diesel sets [skarstein-uhlen-1989, remembered].
const NoLoadFuel = 0.08415 / (0.08415 + 0.246)

// UsualCharger is the efficiency of the charger between generator and bus; common practice, no source.
const UsualCharger = 0.9

// A Generator is a small engine that feeds the bus through a charger. One with no power does not exist.
type Generator struct {
	Power      quantity.Watts // at its terminals at most
	Fuel       float64        // L/kWh at full load
	NoLoad     float64        // share of full-load fuel that it burns with no load, 0 to 1
	Charger    float64        // efficiency of the charger, 0 to 1
	StartBelow float64        // reading of charge below which it is started, 0 to 1
	StopAbove  float64        // reading of charge at which it is stopped
	LeastRun   float64        // h that it runs at least
}

// GeneratorState is whether it runs. The zero value stands still.
type GeneratorState struct {
	Running bool
	Hours   float64 // since it was started
}

// Faults gives every fault of the generator at once.
func (g *Generator) Faults() error {
	if g.Power == 0 {
		return nil
	}
	var faults []error
	fault := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("generator: "+format, args...))
	}
	if !(g.Power > 0) {
		fault("power is %s: it is above 0 W", quantity.Text(float64(g.Power), "W"))
	}
	if !(g.Fuel > 0) {
		fault("fuel is %g L/kWh: it is above 0", g.Fuel)
	}
	if !(g.NoLoad >= 0 && g.NoLoad < 1) {
		fault("with no load it burns a share of %g: it is from 0 up to 1", g.NoLoad)
	}
	if !(g.Charger > 0 && g.Charger <= 1) {
		fault("charger efficiency is %g: it is above 0 and at most 1", g.Charger)
	}
	if !(g.StartBelow < g.StopAbove) {
		fault("it starts below a charge of %g and stops above %g: the second must be larger", g.StartBelow, g.StopAbove)
	}
	return errors.Join(faults...)
}

// Burned gives the fuel, L, for an hour at a mean power in W while running: a straight line from no load to full load.
func (g *Generator) Burned(power quantity.Watts) float64 {
	return g.Fuel * (g.NoLoad*float64(g.Power) + (1-g.NoLoad)*float64(power)) / 1000
}

// runs decides on an hour: it starts on low charge or when what must run would fall short,
// and stops on enough charge after its least run.
func (g *Generator) runs(s *GeneratorState, charge float64, short bool) bool {
	if s.Running && charge >= g.StopAbove && s.Hours >= g.LeastRun {
		*s = GeneratorState{}
	}
	if !s.Running && (charge < g.StartBelow || short) {
		*s = GeneratorState{Running: true}
	}
	return s.Running
}

// low reports whether the generator has to run for the battery's sake.
func (y *System) low(h held) bool {
	return (h.sum-y.Battery.zero)*y.Battery.perWh < y.Generator.StartBelow
}

// generating is what the decision on the generator looks at, W, with the wells at the hour's beginning.
type generating struct {
	asked, must, sun float64
	held
}

// generate decides whether the generator runs and gives what is on the bus with it, W: where it can, exactly what the
// loads draw and the battery takes in, since a bit less would leave an inverter without load off.
func (y *System) generate(s *SystemState, in *SystemIn, at generating, out *SystemOut) float64 {
	g, b := &y.Generator, &y.Battery
	most := at.sun + b.deliverable(at.held, in.Temperature)
	must := at.must
	if limit := float64(y.Inverter.Continuous); must > limit {
		must = limit
	}
	short := must > 0 && y.Inverter.Draw(must) > most
	if !g.runs(&s.Generator, (at.sum-b.zero)*b.perWh, short) {
		return at.sun
	}
	s.Generator.Hours++
	drawn := y.Inverter.carry(at.asked, most+y.charger).drawn
	bus := drawn + b.acceptable(at.held, in.Temperature)
	given := bus - at.sun
	if given <= 0 {
		bus, given = at.sun, 0
	} else if given > y.charger {
		bus, given = at.sun+y.charger, y.charger
	}
	out.Generator = quantity.WattHours(given * y.offered)
	out.ChargerLoss = out.Generator - quantity.WattHours(given)
	out.Fuel = quantity.Litres(g.Burned(out.Generator.Over(1)))
	return bus
}
