// Package hotwater is the solar collector, the store of two layers and the backup
// that carries on when the sun does not.
package hotwater

import "suffice/quantity"

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
	K50        float64               // incidence modifier of beam at 50 deg, 0 to 1
	Slope      quantity.Degrees
	Azimuth    quantity.Degrees
	Flow       float64          // L/h per m2 while the pump runs
	Exchanger  float64          // W/K between collector fluid and store; 0 for none
	Difference quantity.Kelvins // collector over lower layer at which the pump starts
	Pump       quantity.Watts
	Frost      Frost
	FreezesAt  quantity.Celsius // of the antifreeze
}

// A Store is an upright tank in two layers, each fully mixed. A draw pushes cold
// water into the lower and the lower into the upper.
type Store struct {
	Holds      quantity.Litres
	Loss       float64          // W/K to the room it stands in, over both layers by volume
	UpperShare float64          // of the volume, above the backup's lower end
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
	Efficiency float64        // heat in water over energy of the fuel (net heating value); 1 for electricity
	Power      quantity.Watts // of heat into the upper layer; not used by GasAfter
}

// A System is a collector, a store and a backup as built. Prepare it once; then it is read only.
type System struct {
	Collector Collector
	Store     Store
	Backup    Backup

	p prepared
}

type prepared struct{ lower, upper float64 }

// State is what the store remembers.
type State struct{ Upper, Lower quantity.Celsius }

// In is what an hour brings. Want reads it with what people ask for, Step with what
// they got: Litres that really flowed, Pump, Electric and Fuel that were there.
type In struct {
	Light    float64            // W/m2 absorbed without loss: eta0*K*G, from Collector.Absorbed
	Air      quantity.Celsius   // outside
	Room     quantity.Celsius   // where the store stands
	Cold     quantity.Celsius   // water coming in
	Litres   quantity.Litres    // at the tap, mixed
	Tap      quantity.Celsius   // wanted there, the mean by litres
	Pump     float64            // share of the wanted pump power that was served, 0 to 1
	Electric quantity.WattHours // served to the element
	Fuel     quantity.WattHours // of gas that can be had, net heating value
}

// Want is what the hour asks of the power supply.
type Want struct {
	Pump     quantity.Watts
	Electric quantity.Watts
}

// Out is what the hour did.
type Out struct {
	Solar     quantity.WattHours // into the store
	Gas       quantity.WattHours // heat into water
	Fuel      quantity.WattHours // energy of the gas burned, net heating value
	Electric  quantity.WattHours // into the upper layer; never more than In.Electric
	Pump      quantity.WattHours // electricity of the solar loop
	Delivered quantity.WattHours // heat at the taps above the cold inlet
	Short     quantity.WattHours // heat wanted at the taps and not had
	Loss      quantity.WattHours // from the store to the room
	FrostHeat quantity.WattHours // of the store, spent to keep the collector from freezing
	Refused   quantity.WattHours // solar heat the store was too hot to take
	Hot       quantity.Litres    // drawn through the store
	Stagnant  float64            // h the collector stood in the sun because the store was full
	Unpumped  float64            // h the collector stood in the sun because the pump had no power
	Frost     bool               // the collector was exposed to frost damage
	Under50   bool               // upper layer under 50 degC at the end
	Under60   bool               // upper layer under 60 degC at the end
}

// Prepare works out what depends on the design alone. The error lists all its faults.
func (y *System) Prepare() error { return nil }

// Want says what the hour would use of pump and element if both were served.
func (y *System) Want(s *State, in In) (w Want) { return w }

// Step moves s on by one hour. Solar + Gas + Electric = Delivered + Loss + FrostHeat +
// what the store gained, to rounding.
func (y *System) Step(s *State, in In) (out Out) { return out }

// Held gives the heat in the store above a temperature.
func (y *System) Held(s *State, above quantity.Celsius) quantity.WattHours { return 0 }

// Usual gives a system with the values common in the trade, to be written over by
// what a person states. It has no backup.
func Usual() System { return System{} }

// Light is what falls on the plane of the collector in an hour.
type Light struct {
	Beam, Sky, Ground float64          // W/m2 on the plane
	Incidence         quantity.Radians // of the beam
}

// Absorbed gives eta0*K*G in W/m2: what the collector would give per m2 at air temperature.
func (c *Collector) Absorbed(l Light) float64 { return 0 }

// An Inlet is the pipe or tank the cold water comes from. Its temperature is a damped
// running mean of the air.
type Inlet struct {
	Days  float64          // time constant of the running mean
	Swing float64          // share of the running mean's swing about Mean that reaches the tap, 0 to 1
	Mean  quantity.Celsius // of the air over the years
}

// InletState is what the ground or tank remembers.
type InletState struct{ Running quantity.Celsius }

// InletOut is the cold water of an hour.
type InletOut struct {
	Cold   quantity.Celsius
	Frozen bool // the model went under 0 degC: the pipe would be ice, and Cold is given as 0
}

// Start gives the state at the beginning of a record.
func (n *Inlet) Start(air quantity.Celsius) InletState { return InletState{air} }

// Step moves s on by one hour of air temperature.
func (n *Inlet) Step(s *InletState, air quantity.Celsius) (out InletOut) { return out }

// Episodes counts runs of days on which the backup burned more than Trifle,
// separated by at least one day without.
type Episodes struct{ Trifle quantity.WattHours }

// EpisodesState is the count so far.
type EpisodesState struct {
	Count   int32 // runs begun
	Days    int32 // days in all runs
	Current int32 // days of the run now going; 0 for none
	Longest int32 // days
}

// EndDay takes in one day's heat of the backup.
func (e Episodes) EndDay(s *EpisodesState, burned quantity.WattHours) {}
