package gas

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// A Supply is the bottles of a house, all of one size and fuel, emptied one after the
// other by a changeover valve. Prepare it once; then it is read only.
type Supply struct {
	Fuel    Fuel
	Bottle  quantity.Kilograms // gas in a full bottle
	Bottles int                // on site
	Lead    float64            // days from a bottle running empty until the delivery stands there

	p prepared
}

type prepared struct {
	bottle, whole  float64 // kg in one, kg in all
	perBottle      float64 // 1/bottle
	oneEmpty       float64 // kg at which the first bottle is empty
	whPerKg, kgPer float64 // Wh/kg and its inverse
	ratePerKelvin  float64 // kg/h K
	boils          boiling
	lead           int32 // h
}

// SupplyState is what the bottles remember.
type SupplyState struct {
	Held quantity.Kilograms // in all bottles on site
	Due  int32              // hours until the delivery comes; 0 for none ordered
}

// SupplyIn is what an hour brings.
type SupplyIn struct {
	Want quantity.WattHours // energy of the fuel wanted, net heating value: heat over efficiency
	Air  quantity.Celsius   // where the bottles stand
}

// SupplyOut is what the hour did.
type SupplyOut struct {
	Burned  quantity.Kilograms
	Energy  quantity.WattHours // of what burned, net heating value
	Short   quantity.WattHours // wanted and not had
	Cold    bool               // short because the bottle was too cold to give vapour, not because all were empty
	Emptied int                // bottles that ran empty
	Ordered bool               // a delivery was ordered
	Arrived int                // full bottles that came in exchange for empty ones
	Still   bool               // nothing happened: all else is 0
}

// Limits of a supply, for the faults.
const (
	mostBottle  = 1000 // kg, a small tank
	mostBottles = 100
	mostLead    = 365 // days
)

// Faults lists what is wrong with a supply, all at once.
func (y *Supply) Faults() error {
	var faults []error
	if !(y.Fuel.Net > 0) {
		faults = append(faults, errors.New("gas: fuel is missing: write propane, butane or mixed"))
	}
	if !(y.Bottle > 0 && y.Bottle <= mostBottle) {
		faults = append(faults, fmt.Errorf("gas: a bottle of %g kg is out of range: it holds more than 0 and at most %d kg", float64(y.Bottle), mostBottle))
	}
	if y.Bottles < 1 || y.Bottles > mostBottles {
		faults = append(faults, fmt.Errorf("gas: %d bottles are out of range: from 1 to %d can stand on site", y.Bottles, mostBottles))
	}
	if !(y.Lead >= 0 && y.Lead <= mostLead) {
		faults = append(faults, fmt.Errorf("gas: a lead of %g days is out of range: it is from 0 to %d days", y.Lead, mostLead))
	}
	return errors.Join(faults...)
}

// Prepare works out what depends on the supply alone. The error lists all its faults.
func (y *Supply) Prepare() error {
	if err := y.Faults(); err != nil {
		return err
	}
	perKg := float64(y.Fuel.Energy(1))
	y.p = prepared{
		bottle: float64(y.Bottle), whole: float64(y.Bottle) * float64(y.Bottles),
		perBottle: 1 / float64(y.Bottle), oneEmpty: float64(y.Bottle) * float64(y.Bottles-1),
		whPerKg: perKg, kgPer: 1 / perKg,
		ratePerKelvin: likeTheTable(y.Bottle), boils: boilingByFill(y.Fuel),
		lead: int32(math.Ceil(y.Lead * 24)),
	}
	return nil
}

// Full gives the state with all bottles full and nothing ordered.
func (y *Supply) Full() SupplyState { return SupplyState{Held: quantity.Kilograms(y.p.whole)} }

// withGas counts the bottles that are not empty.
func (p *prepared) withGas(held float64) int { return int(math.Ceil(held * p.perBottle)) }

// fill gives how full the bottle in use is, 0 to 1: all others are full or empty.
func (p *prepared) fill(held float64) float64 {
	if held <= 0 {
		return 0
	}
	n := held * p.perBottle
	return n + 1 - math.Ceil(n)
}

// most gives the kg that an hour can have at most.
func (p *prepared) most(held, air float64) float64 {
	return min(held, p.vapourRate(p.fill(held), air))
}

// Available gives the fuel energy that the coming hour can have at most: what the
// bottles hold, or what the one in use can give as vapour at that air temperature.
func (y *Supply) Available(s *SupplyState, air quantity.Celsius) quantity.WattHours {
	return quantity.WattHours(y.p.most(float64(s.Held), float64(air)) * y.p.whPerKg)
}

// Step moves s on by one hour. Held + Arrived*Bottle = new Held + Burned, and
// Want = Energy + Short, to rounding. A delivery due comes first; it exchanges every
// bottle empty by then. As soon as a bottle is empty and nothing is ordered, one is.
//
// Out is the caller's memory and is overwritten: a struct of this size returned as a
// value costs more than the hour itself (20 ns against 6).
func (y *Supply) Step(s *SupplyState, in SupplyIn, out *SupplyOut) {
	if *out = (SupplyOut{}); in.Want <= 0 && y.rests(s) {
		out.Still = true
		return
	}
	p := &y.p
	if s.Due > 0 {
		if s.Due--; s.Due == 0 {
			out.Arrived = y.deliver(s)
		}
	}
	if in.Want > 0 {
		y.burn(s, in, out)
	}
	if s.Due == 0 && float64(s.Held) <= p.oneEmpty {
		out.Ordered = true
		if s.Due = p.lead; s.Due == 0 {
			out.Arrived += y.deliver(s)
		}
	}
}

// Rests reports whether an hour in which nothing is wanted would change nothing, neither s nor what out says already.
func (y *Supply) Rests(s *SupplyState, out *SupplyOut) bool { return out.Still && y.rests(s) }

// rests reports whether no delivery is due and none is to be ordered.
func (y *Supply) rests(s *SupplyState) bool { return s.Due == 0 && float64(s.Held) > y.p.oneEmpty }

func (y *Supply) deliver(s *SupplyState) (arrived int) {
	arrived = y.Bottles - y.p.withGas(float64(s.Held))
	s.Held += quantity.Kilograms(float64(arrived) * y.p.bottle)
	return arrived
}

func (y *Supply) burn(s *SupplyState, in SupplyIn, out *SupplyOut) {
	p := &y.p
	held := float64(s.Held)
	want := float64(in.Want) * p.kgPer
	most := p.most(held, float64(in.Air))
	burned := min(want, most)
	left := held - burned
	out.Burned = quantity.Kilograms(burned)
	out.Energy = in.Want
	if burned < want {
		out.Energy = quantity.WattHours(burned * p.whPerKg)
		out.Short = in.Want - out.Energy
		out.Cold = most < held
	}
	out.Emptied = p.withGas(held) - p.withGas(left)
	s.Held = quantity.Kilograms(left)
}
