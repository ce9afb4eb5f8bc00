package power

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// UsualCouldAbove is the charge above which what could run may draw on the battery; this program's choice.
const UsualCouldAbove = 0.9

// Service names what the house's own machines want; they come before everything else.
type Service int8

const (
	WaterPump Service = iota
	Treatment         // lamps and pumps of the water treatment
	HotPump           // pump of the solar hot water
	FlushPump         // from the flush well to the cisterns
	Services          // how many there are
)

// A System is the whole supply. It is read-only after Prepare.
type System struct {
	Controller  Controller
	Battery     Battery
	Inverter    Inverter
	Generator   Generator // no power: none
	Loads       *Schedule // nil: none
	ShouldAbove float64   // reading of charge at and above which what should run may draw on the battery; 0: always
	CouldAbove  float64   // the same for what could run; below it, it gets only what the battery cannot take

	most      float64 // W from the panels that the controller can use
	letShould float64 // Wh in the wells at ShouldAbove; below any for 0
	letCould  float64 // Wh in the wells at CouldAbove; below any for 0
	perPass   float64 // 1/Controller.Efficiency
	charger   float64 // W onto the bus that the generator can give
	offered   float64 // 1/Generator.Charger
}

// SystemState is what an hour leaves to the next. It is a plain value.
type SystemState struct {
	Battery   BatteryState
	Generator GeneratorState
	Tasks     TaskState
}

// SystemIn is what an hour brings.
type SystemIn struct {
	Panels      quantity.Watts               // direct current of all arrays at the controller, mean of the hour
	Services    [Services]quantity.WattHours // wanted by the house's own machines
	HotWater    quantity.WattHours           // an electric element could use
	Wants       *Wants                       // of the loads, from Schedule.At; never nil
	NewDay      bool                         // the first hour of a day: what waits is a day older
	Temperature quantity.Celsius             // of the battery's cells
}

// SystemOut is what the hour did, Wh unless said.
//
// Income + Generator + Discharged = Delivered + ControllerLoss + ChargerLoss + InverterLoss
// + Curtailed + Charged, and Charged - Discharged - BatteryLoss - SelfDischarge is the change
// of what the battery holds. By need, Met + Short is what was wanted now, GivenUp and, for
// Must, Due. What waited before, and what is put off, is MadeUp, Due, GivenUp and what waits after.
type SystemOut struct {
	Income         quantity.WattHours // what the panels could give
	Curtailed      quantity.WattHours // of Income, what nothing could take
	ControllerLoss quantity.WattHours
	Generator      quantity.WattHours
	ChargerLoss    quantity.WattHours
	Fuel           quantity.Litres    // of the generator's fuel
	Charged        quantity.WattHours // at the battery's terminals
	Discharged     quantity.WattHours // at the battery's terminals
	BatteryLoss    quantity.WattHours // of Charged
	SelfDischarge  quantity.WattHours
	Drawn          quantity.WattHours // by the inverter from the bus
	InverterLoss   quantity.WattHours // of Drawn
	Delivered      quantity.WattHours // alternating current to everything

	ServiceShare float64                   // of what the services wanted that they got, 0 to 1; 1 where nothing was wanted
	ServiceShort quantity.WattHours        // wanted by them and not had
	Met          [Needs]quantity.WattHours // by need; with Must, tasks on their last day
	Short        [Needs]quantity.WattHours // wanted and not had; with tasks given up
	HotWater     quantity.WattHours        // to the electric element
	MadeUp       quantity.WattHours        // to tasks that had waited, from sun
	Due          quantity.WattHours        // of tasks on their last day: a part of what must run
	GivenUp      [Needs]quantity.WattHours // of Short, tasks that had waited too long
	OverLimit    quantity.WattHours        // of what was let in, beyond the inverter's continuous power: part of what is short

	Charge float64 // reading of the battery at the end of the hour, 0 to 1
	Plain  bool    // everybody got what he wanted, no task waited and no generator ran: what tells of these is 0
}

// Faults gives every fault of the system at once.
func (y *System) Faults() error {
	faults := []error{y.Battery.Faults(), y.Inverter.Faults(), y.Generator.Faults()}
	if c := y.Controller; !(c.Efficiency > 0 && c.Efficiency <= 1) {
		faults = append(faults, fmt.Errorf("controller: efficiency is %g: it is above 0 and at most 1", c.Efficiency))
	}
	if y.Controller.Current < 0 {
		faults = append(faults, fmt.Errorf("controller: current is %g A: it is above 0, or 0 for no limit", y.Controller.Current))
	}
	if !(y.ShouldAbove >= 0 && y.ShouldAbove <= 1 && y.CouldAbove >= 0 && y.CouldAbove <= 1) {
		faults = append(faults, fmt.Errorf("charge above which loads may draw on the battery: should %g, could %g: both are from 0 to 1", y.ShouldAbove, y.CouldAbove))
	}
	return errors.Join(faults...)
}

// CheckLoads holds the inverter against the loads: what may run at once, and the largest start on top.
func (v *Inverter) CheckLoads(loads []Load) error {
	running, starting := StartingPower(loads)
	var faults []error
	if running > v.Continuous {
		faults = append(faults, fmt.Errorf("inverter: all loads at once take %s, more than its continuous %s: in such an hour the least needed are cut; choose a larger one or other hours",
			quantity.Text(float64(running), "W"), quantity.Text(float64(v.Continuous), "W")))
	}
	if v.Starting > 0 && starting > v.Starting {
		faults = append(faults, fmt.Errorf("inverter: all loads with the largest start take %s, more than its starting %s: choose a larger one or a motor that starts softly",
			quantity.Text(float64(starting), "W"), quantity.Text(float64(v.Starting), "W")))
	}
	return errors.Join(faults...)
}

// Prepare works out what depends on the design alone. It must come before Start and Step.
func (y *System) Prepare() error {
	if err := y.Faults(); err != nil {
		return err
	}
	if err := errors.Join(y.Battery.Prepare(), y.Inverter.Prepare()); err != nil {
		return err
	}
	if y.Loads == nil {
		y.Loads = new(Schedule)
	}
	y.letShould, y.letCould = y.Battery.above(y.ShouldAbove), y.Battery.above(y.CouldAbove)
	y.perPass = 1 / y.Controller.Efficiency
	y.most = float64(y.Controller.Most(&y.Battery)) * y.perPass
	y.charger, y.offered = 0, 0
	if y.Generator.Power > 0 {
		y.charger = float64(y.Generator.Power) * y.Generator.Charger
		y.offered = 1 / y.Generator.Charger
	}
	return nil
}

// Start gives the state of the first hour.
func (y *System) Start() SystemState {
	return SystemState{Battery: y.Battery.At(y.Battery.Start)}
}
