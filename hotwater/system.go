package hotwater

import (
	"math"

	"suffice/quantity"
)

// Frost says how the collector is kept from freezing.
type Frost int8

const (
	NoFrost     Frost = iota // nothing: hours of frost are counted as damage
	DrainBack                // the water runs back when the pump stops
	Antifreeze               // a mixture that freezes at FreezesAt, behind a heat exchanger
	Recirculate              // water of the store is pumped through in frost, at the cost of its heat
)

// A Collector is what stands in the sun.
type Collector struct {
	Area       quantity.SquareMetres // the area that Eta0, A1 and A2 refer to; 0 for none
	Eta0       float64               // efficiency with the fluid at air temperature, beam straight on [iso9806]
	A1         float64               // W/m2K
	A2         float64               // W/m2K2
	K50        float64               // incidence modifier of beam at 50 deg, over 0 to 1
	Slope      quantity.Degrees      // from horizontal
	Azimuth    quantity.Degrees      // where it faces, from north, east positive
	Flow       float64               // L/h per m2 while the pump runs
	Exchanger  float64               // W/K between collector fluid and store; 0 for none
	Difference quantity.Kelvins      // collector over lower layer at which the pump starts
	Pump       quantity.Watts        // electric; 0 where water circulates by its own warmth
	Frost      Frost
	FreezesAt  quantity.Celsius // of the antifreeze; not used by the other ways
}

// A Store is an upright tank in two layers, each fully mixed. A draw pushes cold
// water into the lower and the lower into the upper.
type Store struct {
	Holds      quantity.Litres
	Loss       float64          // W/K to the room it stands in, shared by the layers as their volume
	UpperShare float64          // of the volume: what the backup heats
	Limit      quantity.Celsius // hottest the controller lets it become
}

// Source says what makes up for missing sun.
type Source int8

const (
	NoBackup      Source = iota
	GasAfter             // an instantaneous heater in the pipe after the store
	GasUpper             // a burner that keeps the upper layer at Set
	ElectricUpper        // an element that keeps the upper layer at Set
)

// A Backup heats what the sun did not.
type Backup struct {
	By         Source
	Set        quantity.Celsius
	Efficiency float64        // heat in water over energy used: of the gas by its net heating value, or of electricity
	Power      quantity.Watts // of heat into the upper layer; not used by GasAfter
}

// A System is a collector, a store and a backup as built. Prepare it once; then it is
// read only and may be shared.
type System struct {
	Collector Collector
	Store     Store
	Backup    Backup

	p prepared
}

// State is what the store remembers.
type State struct{ Upper, Lower quantity.Celsius }

// In is what an hour brings. Want reads it with what people ask for, Live with what
// they got: Litres that really flowed, and Pump, Electric and Fuel that were there.
type In struct {
	Light    float64            // W/m2 absorbed without loss: eta0*K*G, from Collector.Fill
	Air      quantity.Celsius   // outside
	Room     quantity.Celsius   // where the store stands
	Cold     quantity.Celsius   // water coming in
	Litres   quantity.Litres    // at the tap, mixed
	Tap      quantity.Celsius   // wanted there, the mean by litres
	Pump     float64            // share of the wanted pump power that was served, 0 to 1
	Electric quantity.WattHours // served to the element
	Fuel     quantity.WattHours // of gas that can be had, net heating value

	lit, frosty bool // noted by Want: the pump is wanted for the sun, or against frost
}

// Want is what the hour asks of the power supply.
type Want struct {
	Pump     quantity.Watts
	Electric quantity.Watts
}

// Out is what the hour did. The heats balance:
// Solar + Gas + Electric = Delivered + Loss + FrostHeat + what the store gained.
type Out struct {
	Solar        quantity.WattHours // into the store
	Gas          quantity.WattHours // heat of the gas in the water
	Electric     quantity.WattHours // heat of the element in the water
	Delivered    quantity.WattHours // heat at the taps above the cold inlet; negative when the store is colder than that
	Loss         quantity.WattHours // from the store to its room; negative when the room is warmer
	FrostHeat    quantity.WattHours // of the store, spent to keep the collector from freezing
	Short        quantity.WattHours // heat wanted at the taps and not had
	Refused      quantity.WattHours // solar heat that the store was too hot to take
	Fuel         quantity.WattHours // energy of the gas burned, net heating value; never more than In.Fuel
	ElectricUsed quantity.WattHours // by the element; never more than In.Electric
	PumpUsed     quantity.WattHours // by the solar pump
	Hot          quantity.Litres    // drawn through the store
	Stagnant     float64            // h the collector stood in the sun because the store was full
	Unpumped     float64            // h the collector stood in the sun because the pump had no power
	Frost        float64            // h in which the collector could freeze
	Under50      float64            // h with the upper layer under 50 degC, as it ended
	Under60      float64            // h with the upper layer under 60 degC, as it ended
}

// Held gives the heat in the store above a temperature.
func (y *System) Held(s *State, above quantity.Celsius) quantity.WattHours {
	return quantity.WattHours(y.p.upper*float64(s.Upper-above) + y.p.lower*float64(s.Lower-above))
}

// StandingLoss gives what a store of a given loss (W/K) and excess temperature gives
// away in some hours, held at that temperature.
func StandingLoss(loss float64, excess quantity.Kelvins, hours float64) quantity.WattHours {
	return quantity.Watts(loss * float64(excess)).For(hours)
}

// Usual gives a system with the values common in the trade (no source), to be written
// over by what a person states: 4 m2 of flat collector, 300 L, no backup.
func Usual() System {
	return System{
		Collector: Collector{
			Area: 4, Eta0: 0.78, A1: 3.6, A2: 0.015, K50: 0.94,
			Slope: 45, Azimuth: 180, Flow: 40, Difference: 6, Pump: 25, Frost: DrainBack, FreezesAt: -25,
		},
		Store:  Store{Holds: 300, Loss: 2, UpperShare: 0.4, Limit: 90},
		Backup: Backup{By: NoBackup, Set: 45, Efficiency: 0.85, Power: 2000},
	}
}

// finite reports whether x is a number.
func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
