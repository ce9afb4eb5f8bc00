package water

import "suffice/quantity"

// Works are the water works as built: a Design with everything worked out that depends on it
// alone. Read-only after Prepare.
type Works struct {
	design Design
}

// State is what the water works remember from hour to hour. A copy is a snapshot.
type State struct {
	Roofs  [MostRoofs]RoofState
	Tanks  [MostTanks]TankState
	Duty   int // index of the tank the house draws from
	Coming int // hours until a load ordered arrives; 0: none is ordered
}

// RoofState is what a roof remembers.
type RoofState struct {
	Snow    quantity.Millimetres // lying on it, as water
	Film    quantity.Millimetres // of the wetting loss, taken already in this wet spell
	Flushed quantity.Litres      // in the first-flush diverter
	Dry     float64              // hours since water last came down on it
}

// TankState is what a tank remembers.
type TankState struct {
	Held quantity.Litres
}

// SkyIn is the weather of the hour.
type SkyIn struct {
	Rain        quantity.Millimetres // in the hour, snow as water
	Temperature quantity.Celsius     // of the air
}

// IncomeOut is what the sky and the road did in the hour.
type IncomeOut struct {
	Fell      quantity.Litres // rain and snow on all roofs
	Wetted    quantity.Litres // dried off the roofs
	Missed    quantity.Litres // splashed, blown or leaked past the gutters: what the coefficient takes
	Diverted  quantity.Litres // by first flush
	Caught    quantity.Litres // from the roofs into the tanks
	Delivered quantity.Litres // by road
	Loads     int             // delivered
	Paid      float64         // for Loads
	Ordered   bool            // a load was ordered
	Spilled   quantity.Litres // overflow that left
	Leaked    quantity.Litres
}

// WantIn is what people and other parts ask for in the hour.
type WantIn struct {
	Litres [Kinds]quantity.Litres // at the tap
	Change bool                   // people change to the fullest tank before drawing
}

// Plan is what the taps would give if the power asked for is served.
type Plan struct {
	Wanted    [Kinds]quantity.Litres
	Planned   [Kinds]quantity.Litres // of Wanted, after what tank, flow and treatment limits allow
	Drawn     quantity.Litres        // from the tank for Planned, backwash included
	Pump      quantity.WattHours     // asked for the pump
	Treatment quantity.WattHours     // asked for the treatment, standing power included
	Cause     [Causes]quantity.Litres
}

// A Cause is why a litre wanted at the tap was not served.
type Cause int

const (
	TankLow        Cause = iota // nothing usable left in the tank in use
	SupplyFlow                  // the pump or pipe gives no more in an hour
	TreatmentFlow               // a stage of treatment gives no more in an hour
	PumpPower                   // no power for the pump
	TreatmentPower              // no power for the treatment
	Causes                      // how many causes there are
)

// Power is the share of the power asked for that was served, 0 to 1.
type Power struct{ Pump, Treatment float64 }

// ShareOut is what came out of the taps in the hour.
type ShareOut struct {
	Served    [Kinds]quantity.Litres
	Short     [Kinds]quantity.Litres
	Cause     [Causes]quantity.Litres // of the sum of Short
	Drawn     quantity.Litres         // from the tanks
	Backwash  quantity.Litres         // lost in treatment: Drawn less the sum of Served
	Pump      quantity.WattHours      // used
	Treatment quantity.WattHours      // used
	Unused    quantity.WattHours      // granted, and not used because the other one failed
}

// Prepare checks a design and builds it; the error joins every fault.
func Prepare(d Design) (*Works, error) { return &Works{design: d}, nil }

// Start gives the state in which a run begins.
func (w *Works) Start() State { return State{} }

// StartAt gives the state with every tank filled to a share, 0 to 1, of what it holds.
func (w *Works) StartAt(share float64) State { return State{} }

// Income is the first phase of the hour: what the sky and the road bring.
//
// Fell + Delivered + snow and water held before = Wetted + Missed + Diverted + Spilled + Leaked
// + snow and water held after.
func (w *Works) Income(s *State, in SkyIn, out *IncomeOut) {}

// Want is the second phase: what can be drawn, and the power it takes.
func (w *Works) Want(s *State, in *WantIn, out *Plan) {}

// Share is the third phase: what comes out of the taps with the power that was served.
//
// Held before = held after + the sum of Served + Backwash.
func (w *Works) Share(s *State, p *Plan, got Power, out *ShareOut) {}

// Held gives all water in the tanks.
func (w *Works) Held(s *State) quantity.Litres { return 0 }

// Snow gives the snow on all roofs, as water.
func (w *Works) Snow(s *State) quantity.Litres { return 0 }

// Usable gives the water in all tanks that the house may draw.
func (w *Works) Usable(s *State) quantity.Litres { return 0 }

// UsableShare gives Usable over what it is with full tanks, 0 to 1.
func (w *Works) UsableShare(s *State) float64 { return 0 }

// DutyShare gives the same for the tank in use.
func (w *Works) DutyShare(s *State) float64 { return 0 }

// Tanks gives how many tanks there are.
func (w *Works) Tanks() int { return len(w.design.Tanks) }
