package power

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// A Controller stands between panels and bus.
type Controller struct {
	Current    float64 // A into bus and battery at most; 0: no limit
	Efficiency float64 // power out over power in, 0 to 1
}

// Most gives the power, W, that the controller lets through to a bus of a battery.
func (c Controller) Most(b *Battery) quantity.Watts {
	if c.Current == 0 {
		return quantity.Watts(math.Inf(1))
	}
	return quantity.Watts(c.Current * b.Voltage * b.ChargeVoltage)
}

// An Inverter makes alternating current from the bus. Its loss is idle power, a part in
// proportion to the load and a part with its square [schmidt-sauer-1996, the form remembered].
type Inverter struct {
	Continuous         quantity.Watts // largest power without end
	Starting           quantity.Watts // largest power for some seconds; 0: not checked
	Idle               quantity.Watts // drawn while on with no load
	PeakEfficiency     float64        // at its best load, 0 to 1
	FullLoadEfficiency float64        // at Continuous, 0 to 1
	Sleeps             bool           // draws nothing in an hour in which nothing is wanted

	straight float64 // W of direct current per W of load, 1 and more
	square   float64 // W of direct current per W2 of load
}

// LossCurve gives the shares of continuous power that an inverter loses at full load: idle, in proportion to
// the load and with its square. They are the only three that give the idle power, the
// efficiency at full load and the highest efficiency asked for.
func (v *Inverter) LossCurve() (idle, straight, square float64) {
	idle = float64(v.Idle / v.Continuous)
	root := math.Sqrt(idle) + math.Sqrt(max(0, 1/v.FullLoadEfficiency-1/v.PeakEfficiency))
	square = root * root
	straight = 1/v.FullLoadEfficiency - 1 - idle - square
	return idle, straight, square
}

// Faults gives every fault of the inverter at once.
func (v *Inverter) Faults() error {
	var faults []error
	fault := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("inverter: "+format, args...))
	}
	if !(v.Continuous > 0) {
		fault("continuous power is %s: it is above 0 W", quantity.Text(float64(v.Continuous), "W"))
	}
	if !(v.Idle >= 0) {
		fault("idle power is %s: it is 0 W or more", quantity.Text(float64(v.Idle), "W"))
	}
	if v.Starting != 0 && v.Starting < v.Continuous {
		fault("starting power, %s, is less than continuous power, %s", quantity.Text(float64(v.Starting), "W"), quantity.Text(float64(v.Continuous), "W"))
	}
	if !(v.FullLoadEfficiency > 0 && v.FullLoadEfficiency <= v.PeakEfficiency && v.PeakEfficiency < 1) {
		fault("full-load efficiency is %g and peak efficiency %g: the first is above 0 and at most the second, which is below 1", v.FullLoadEfficiency, v.PeakEfficiency)
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	if _, straight, _ := v.LossCurve(); straight < 0 {
		fault("idle power of %s, %g at best and %g at full load do not belong to one machine: idle power alone would make the best load worse; give a smaller idle power or a smaller peak efficiency",
			quantity.Text(float64(v.Idle), "W"), v.PeakEfficiency, v.FullLoadEfficiency)
	}
	return errors.Join(faults...)
}

// Prepare works out the loss curve. It must come before Draw and Most.
func (v *Inverter) Prepare() error {
	if err := v.Faults(); err != nil {
		return err
	}
	_, straight, square := v.LossCurve()
	v.straight, v.square = 1+straight, square/float64(v.Continuous)
	return nil
}

// Draw gives the direct current power, W, that a running inverter takes for a load in W.
func (v *Inverter) Draw(load float64) float64 {
	return float64(v.Idle) + load*(v.straight+load*v.square)
}

// Most gives the largest load, W, that a supply of direct current, W, can carry, and at most
// Continuous: the inverse of Draw. Zero where the supply does not cover the idle power.
func (v *Inverter) Most(supply float64) float64 {
	over := supply - float64(v.Idle)
	if over <= 0 {
		return 0
	}
	return min(float64(v.Continuous), 2*over/(v.straight+math.Sqrt(v.straight*v.straight+4*v.square*over)))
}

// Efficiency gives load over draw, 0 at no load.
func (v *Inverter) Efficiency(load quantity.Watts) float64 {
	return float64(load) / v.Draw(float64(load))
}

// StartingPower gives the design check of the trade: all that may run at once, and on top of it
// the largest extra of one machine that starts.
func StartingPower(loads []Load) (running, starting quantity.Watts) {
	var extra quantity.Watts
	for i := range loads {
		running += loads[i].highest()
		extra = max(extra, loads[i].Starting-loads[i].highest())
	}
	return running, running + extra
}

// carried is a load, W, and the direct current that the inverter draws for it, W.
type carried struct{ load, drawn float64 }

// carry gives what a supply of direct current, W, carries of what is asked, W. A supply below
// the idle power leaves the inverter off.
func (v *Inverter) carry(asked, supply float64) carried {
	if asked == 0 && v.Sleeps {
		return carried{}
	}
	load := asked
	if limit := float64(v.Continuous); load > limit {
		load = limit
	}
	if drawn := v.Draw(load); drawn <= supply {
		return carried{load, drawn}
	}
	if supply <= float64(v.Idle) {
		return carried{}
	}
	return v.fits(v.Most(supply), supply)
}

// fits gives a load that a supply was found to carry, less the last bits by which rounding
// would have it draw more than the supply.
func (v *Inverter) fits(load, supply float64) carried {
	drawn := v.Draw(load)
	for drawn > supply {
		load = math.Nextafter(load, 0)
		drawn = v.Draw(load)
	}
	return carried{load, drawn}
}
