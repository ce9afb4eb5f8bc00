package power

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// A Battery is the bank that holds up the bus. It is read-only after Prepare.
//
// Its charge reads 1 when full and 0 when the rated capacity has been drawn from full, as
// people count it; the wells hold a little more, which only a discharge slower than the rated one could reach.
type Battery struct {
	Chemistry
	Capacity quantity.WattHours // rated, in Chemistry.RatedHours
	Voltage  float64            // V, nominal
	Floor    float64            // reading of charge below which nothing is drawn, 0 to 1
	Start    float64            // reading of charge on the first hour, 0 to 1

	wells   Wells
	hour    pace
	full    float64 // Wh in both wells when full
	zero    float64 // Wh in both wells at a reading of 0
	perWh   float64 // reading per Wh
	usable  float64 // Wh between full and floor when warm
	floored float64 // Wh in both wells at the floor
	locks   float64 // Wh of it that a kelvin of cold locks
	fades   float64 // share of the charge above zero lost in an hour
	mostIn  float64 // Wh an hour into the wells, by rate
	mostOut float64 // Wh an hour out of the terminals, by rate
	putIn   float64 // 1/Efficiency
	perTake float64 // 1/hour.takes
}

// BatteryState is what the bank holds.
type BatteryState struct {
	Available, Bound quantity.WattHours
}

// BatteryIn is what an hour offers the bank and wants of it. At most one of Offered and
// Wanted is above zero.
type BatteryIn struct {
	Offered     quantity.WattHours // at the terminals
	Wanted      quantity.WattHours // at the terminals
	Temperature quantity.Celsius   // of the cells
}

// BatteryOut is what the hour did.
type BatteryOut struct {
	Charged       quantity.WattHours // taken in at the terminals
	Discharged    quantity.WattHours // given at the terminals
	Loss          quantity.WattHours // of Charged, turned to heat and gas
	SelfDischarge quantity.WattHours
	Refused       quantity.WattHours // offered and not taken in
	Short         quantity.WattHours // wanted and not given
	Charge        float64            // reading at the end of the hour, 0 to 1
}

// selfDischargeHours are the hours that Chemistry.SelfDischarge counts.
const selfDischargeHours = 30 * 24

// Faults gives every fault of the bank at once.
func (b *Battery) Faults() error {
	var faults []error
	fault := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("battery: "+format, args...))
	}
	if !(b.Capacity > 0) {
		fault("capacity is %s: a battery needs some", quantity.Text(float64(b.Capacity), "Wh"))
	}
	if !(b.Voltage > 0) {
		fault("voltage is %s: give the bank's nominal voltage, for example 24 V", quantity.Text(b.Voltage, "V"))
	}
	if !(b.Floor >= 0 && b.Floor < 1) {
		fault("floor is %g: a share from 0 up to 1 is left in the battery", b.Floor)
	}
	if !(b.Start >= b.Floor && b.Start <= 1) {
		fault("start is %g: it lies between the floor, %g, and 1", b.Start, b.Floor)
	}
	if !(b.WellShare > 0 && b.WellShare < 1 && b.WellRate > 0 && b.RatedHours > 0) {
		fault("wells of share %g, rate %g /h, rated in %g h: share is between 0 and 1, the others above 0", b.WellShare, b.WellRate, b.RatedHours)
	}
	if !(b.Efficiency > 0 && b.Efficiency <= 1) {
		fault("efficiency is %g: it is above 0 and at most 1", b.Efficiency)
	}
	if !(b.SelfDischarge >= 0 && b.SelfDischarge < 1) {
		fault("self-discharge is %g in 30 days: it is from 0 up to 1", b.SelfDischarge)
	}
	if !(b.Cold >= 0) {
		fault("cold is %g /K: capacity does not grow in the cold", b.Cold)
	}
	if !(b.ChargeRate > 0 && b.DischargeRate > 0) {
		fault("charge rate %g /h and discharge rate %g /h: both are above 0", b.ChargeRate, b.DischargeRate)
	}
	return errors.Join(faults...)
}

// Prepare works out what depends on the design alone. It must come before anything else.
func (b *Battery) Prepare() error {
	if err := b.Faults(); err != nil {
		return err
	}
	rated := float64(b.Capacity)
	shape := Wells{Full: 1, Share: b.WellShare, Rate: b.WellRate}
	b.full = rated / shape.Capacity(b.RatedHours)
	b.zero = b.full - rated
	b.wells = Wells{Full: b.full, Share: b.WellShare, Rate: b.WellRate}
	b.hour = b.wells.over(1)
	b.perTake = 1 / b.hour.takes
	b.perWh = 1 / rated
	b.usable = (1 - b.Floor) * rated
	b.floored = b.full - b.usable
	b.locks = b.Cold * b.usable
	b.fades = b.SelfDischarge / selfDischargeHours
	b.mostIn = b.ChargeRate * rated * b.Efficiency
	b.mostOut = b.DischargeRate * rated
	b.putIn = 1 / b.Efficiency
	return nil
}

// above gives the Wh in the wells at a reading of charge; for 0 less than the wells ever hold,
// so that rounding cannot fall below it.
func (b *Battery) above(charge float64) float64 {
	if charge == 0 {
		return -1
	}
	return b.zero + charge*float64(b.Capacity)
}

// At gives the state of a rested bank at a reading of charge, 0 to 1.
func (b *Battery) At(charge float64) BatteryState {
	sum := b.zero + charge*float64(b.Capacity)
	return BatteryState{quantity.WattHours(b.WellShare * sum), quantity.WattHours((1 - b.WellShare) * sum)}
}

// Charge gives the reading: 1 full, 0 when the rated capacity has been drawn.
func (b *Battery) Charge(s *BatteryState) float64 {
	return (float64(s.Available+s.Bound) - b.zero) * b.perWh
}

// ColdFactor gives the share of the rated capacity that can be drawn at a temperature of the
// cells: 1 when warm, never more, falling in a straight line to 0.
func (b *Battery) ColdFactor(cells quantity.Celsius) float64 {
	if cells >= b.Warm {
		return 1
	}
	return max(0, 1-b.Cold*float64(b.Warm-cells))
}

// stop gives the Wh in both wells at which drawing ends: the floor, raised in the cold so
// that a full bank gives the cold factor times what it gives when warm. What is locked comes
// back with warmth.
func (b *Battery) stop(cells quantity.Celsius) float64 {
	below := float64(b.Warm - cells)
	if below <= 0 {
		return b.floored
	}
	return min(b.full, b.floored+b.locks*below)
}

// held is what the hour's equations need of the wells at its beginning, Wh: all they hold, and what
// would be available at its end with no current.
type held struct{ sum, rest float64 }

// fade lets the bank discharge itself for an hour and gives the loss. It is taken from the bound
// well, from which the available one refills, and only from charge above a reading of 0.
func (b *Battery) fade(s *BatteryState) (h held, lost float64) {
	sum := float64(s.Available) + float64(s.Bound)
	lost = (sum - b.zero) * b.fades
	h.sum = sum - lost
	h.rest = b.hour.stays*float64(s.Available) + b.hour.spreads*h.sum
	return h, lost
}

// deliverable gives what the terminals can give in the hour, Wh: limited by the wells, by the
// floor and by rate.
func (b *Battery) deliverable(h held, cells quantity.Celsius) float64 {
	return b.downTo(b.stop(cells), h)
}

// downTo gives the same with drawing to end at so many Wh in both wells.
func (b *Battery) downTo(stop float64, h held) float64 {
	most := h.rest * b.perTake
	if above := h.sum - stop; above < most {
		most = above
	}
	if most > b.mostOut {
		most = b.mostOut
	}
	if most < 0 { // below a floor that the cold has raised
		most = 0
	}
	return most
}

// acceptable gives what the terminals can take in in the hour, Wh: limited by the available well, by rate and by cold.
func (b *Battery) acceptable(h held, cells quantity.Celsius) float64 {
	if cells < b.ChargeAbove {
		return 0
	}
	most := (b.hour.level - h.rest) * b.perTake
	if most > b.mostIn {
		most = b.mostIn
	}
	if most < 0 { // rounding at a full bank
		return 0
	}
	return most * b.putIn
}

// move writes the wells after an hour of drawing so much from them, Wh (negative: putting
// in), and gives the reading of charge.
func (b *Battery) move(s *BatteryState, h held, drawn float64) float64 {
	available, sum := h.rest-drawn*b.hour.takes, h.sum-drawn
	s.Available, s.Bound = quantity.WattHours(available), quantity.WattHours(sum-available)
	return (sum - b.zero) * b.perWh
}

// Step moves the bank on by one hour: it fades, then takes in or gives what it can.
// Charged less Loss less Discharged less SelfDischarge is the change of what the wells hold;
// Charged plus Refused is Offered, Discharged plus Short is Wanted.
func (b *Battery) Step(s *BatteryState, in BatteryIn) (out BatteryOut) {
	h, faded := b.fade(s)
	charged := min(float64(in.Offered), b.acceptable(h, in.Temperature))
	discharged := min(float64(in.Wanted), b.deliverable(h, in.Temperature))
	stored := charged * b.Efficiency
	out.Charge = b.move(s, h, discharged-stored)
	out.SelfDischarge, out.Loss = quantity.WattHours(faded), quantity.WattHours(charged-stored)
	out.Charged, out.Discharged = quantity.WattHours(charged), quantity.WattHours(discharged)
	out.Refused, out.Short = in.Offered-out.Charged, in.Wanted-out.Discharged
	return out
}
