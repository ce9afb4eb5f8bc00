package waste

import "suffice/quantity"

// A SepticTank is what was built. It does not change while the house lives.
type SepticTank struct {
	Holds   quantity.Litres // below the outlet
	Settles float64         // share of arriving BOD that goes to the sludge: 0.3 in unhabitat-wetlands
	Binds   float64         // share of arriving nitrogen that goes to the sludge: about 0.1, from memory
	Sludge  float64         // growth of sludge and scum, L per person and year, see SludgeRates
	Scum    float64         // share of that growth that floats, 0 to 1: about 0.25, from memory
	Most    float64         // share of Holds above which solids no longer stay in the tank, 0 to 1: 0.75, assumed
	Digests float64         // share of the sludge's BOD that a day turns to gas: 0.005, assumed
	Leaves  float64         // share of everything that a desludging leaves behind: 0.05, assumed
}

// UsualTank gives a tank of that size with the figures named beside the fields of SepticTank.
func UsualTank(holds quantity.Litres) SepticTank {
	return SepticTank{Holds: holds, Settles: 0.3, Binds: 0.1, Sludge: 80, Scum: 0.25, Most: 0.75, Digests: 0.005, Leaves: 0.05}
}

// A TankState is what must be remembered of a tank.
type TankState struct {
	Liquid, Sludge, Scum quantity.Litres
	Dissolved            Load // in the liquid
	Settled              Load // in sludge and scum
}

// Held gives all litres in the tank.
func (s *TankState) Held() quantity.Litres { return s.Liquid + s.Sludge + s.Scum }

// Start gives a tank newly filled with clean water.
func (k *SepticTank) Start() TankState { return TankState{Liquid: k.Holds} }

// A TankIn is what a step brings, as long or short as it is.
type TankIn struct {
	Inflow quantity.Litres
	Load   Load
}

// A TankOut is what flows on to the trench.
type TankOut struct {
	Outflow quantity.Litres
	Load    Load
}

// Step lets water in and what stands above the outlet out.
//
// Inflow + held before = held after + Outflow, and likewise each gram, dissolved and settled together.
func (k *SepticTank) Step(s *TankState, in *TankIn, out *TankOut) {
	liquid := float64(s.Liquid + in.Inflow)
	over := liquid + float64(s.Sludge+s.Scum) - float64(k.Holds)
	came := float64(in.Inflow) + in.Load.Salt + in.Load.BOD + in.Load.Nitrogen
	if came == 0 && over <= hair*float64(k.Holds) {
		out.Outflow, out.Load.Salt, out.Load.BOD, out.Load.Nitrogen = 0, 0, 0, 0
		return // a still hour moves nothing
	}
	bod, nitrogen := k.Settles*in.Load.BOD, k.Binds*in.Load.Nitrogen
	s.Settled.BOD += bod
	s.Settled.Nitrogen += nitrogen
	s.Liquid = quantity.Litres(liquid)
	s.Dissolved.Salt += in.Load.Salt
	s.Dissolved.BOD += in.Load.BOD - bod
	s.Dissolved.Nitrogen += in.Load.Nitrogen - nitrogen
	out.Outflow = 0
	if over > 0 {
		out.Outflow = quantity.Litres(over)
	}
	draw(&s.Liquid, &s.Dissolved, out.Outflow, &out.Load)
}

// hair is the share of a tank that rounding may lift above its outlet: it flows out with the next water that comes.
const hair = 1e-12

// A TankDayIn is what a day did to the solids.
type TankDayIn struct {
	People   float64 // who used the toilets, as a mean over the day
	Desludge bool    // the tank was emptied
}

// A TankDayOut is what a day changed. Every door that litres or grams leave by is named.
type TankDayOut struct {
	Grown       quantity.Litres // turned from liquid to sludge and scum; stays in the tank
	Carried     quantity.Litres // solids that found no room and went on to the trench
	CarriedLoad Load
	Ungrown     quantity.Litres // growth for which there was no liquid in the tank
	Gas         float64         // g of BOD digested
	Removed     quantity.Litres // by the desludging
	RemovedLoad Load
}

// Day lets sludge and scum grow, digest, and be taken away.
//
// Held before = held after + Carried + Removed; of BOD, Gas leaves besides; CarriedLoad and RemovedLoad
// hold the rest. Grown + Carried + Ungrown is the growth that the people cause.
func (k *SepticTank) Day(s *TankState, in *TankDayIn, out *TankDayOut) {
	*out = TankDayOut{}
	out.Gas = k.Digests * s.Settled.BOD
	s.Settled.BOD -= out.Gas
	k.grow(s, quantity.Litres(in.People*k.Sludge/daysPerYear), out)
	if in.Desludge {
		k.desludge(s, out)
	}
}

const daysPerYear = 365.25

func (k *SepticTank) grow(s *TankState, growth quantity.Litres, out *TankDayOut) {
	made := min(growth, s.Liquid)
	out.Ungrown = growth - made
	room := max(0, quantity.Litres(k.Most)*k.Holds-s.Sludge-s.Scum)
	out.Grown = min(made, room)
	out.Carried = made - out.Grown
	// Sludge is mostly water: it takes the liquid's load with it, and what is carried away has the strength of sludge.
	var bound Load
	draw(&s.Liquid, &s.Dissolved, made, &bound)
	s.Settled = s.Settled.Plus(bound)
	s.Sludge += out.Grown * quantity.Litres(1-k.Scum)
	s.Scum += out.Grown * quantity.Litres(k.Scum)
	if out.Carried > 0 {
		out.CarriedLoad = s.Settled.Times(float64(out.Carried / (s.Sludge + s.Scum + out.Carried)))
		s.Settled = s.Settled.Minus(out.CarriedLoad)
	}
}

func (k *SepticTank) desludge(s *TankState, out *TankDayOut) {
	f := quantity.Litres(1 - k.Leaves)
	out.Removed = f * s.Held()
	s.Liquid -= f * s.Liquid
	s.Sludge -= f * s.Sludge
	s.Scum -= f * s.Scum
	out.RemovedLoad = s.Dissolved.Plus(s.Settled).Times(float64(f))
	s.Dissolved = s.Dissolved.Times(1 - float64(f))
	s.Settled = s.Settled.Times(1 - float64(f))
}

// Full gives the share of the tank that sludge and scum take up.
func (k *SepticTank) Full(s *TankState) float64 { return float64((s.Sludge + s.Scum) / k.Holds) }

// Detention gives the days that a litre stays in the liquid at that daily flow; +Inf without flow.
func (k *SepticTank) Detention(s *TankState, daily quantity.Litres) float64 {
	return float64((k.Holds - s.Sludge - s.Scum) / daily)
}
