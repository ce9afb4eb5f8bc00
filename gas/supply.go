package gas

import "suffice/quantity"

// MostBottles is how many bottles a house may keep on site.
const MostBottles = 8

// A Supply is the bottles of a house, all of one size and fuel, used one after the other.
type Supply struct {
	Fuel     Fuel
	Bottle   quantity.Kilograms // gas in a full bottle
	Bottles  int                // on site, 1 to MostBottles
	Lead     float64            // days from ordering to the full bottle standing there
	Together bool               // all bottles with gas feed at once (a manifold), so that they give vapour together

	p prepared
}

type prepared struct{ kgPerWh float64 }

// SupplyState is what the bottles remember.
type SupplyState struct {
	Held    quantity.Kilograms // in all bottles on site
	Waiting int8               // bottles on order
	Due     [MostBottles]int32 // hours until each ordered bottle arrives, soonest first
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
	Cold    bool               // short because the bottle was too cold to give vapour, not because it was empty
	Emptied int8               // bottles that ran empty; each is ordered at once
	Arrived int8               // full bottles that came
}

// Prepare works out what depends on the supply alone. The error lists all its faults.
func (y *Supply) Prepare() error { return nil }

// Full gives the state with all bottles full and none on order.
func (y *Supply) Full() SupplyState { return SupplyState{} }

// Available gives the fuel energy that the coming hour can have at most: what the
// bottles hold, or what they can give as vapour at that air temperature.
func (y *Supply) Available(s *SupplyState, air quantity.Celsius) quantity.WattHours { return 0 }

// Step moves s on by one hour. Held + Arrived bottles = new Held + Burned, and
// Want = Energy + Short, to rounding.
func (y *Supply) Step(s *SupplyState, in SupplyIn) (out SupplyOut) { return out }
