package water

import (
	"strings"

	"suffice/quantity"
)

// Works are the water works as built: a Design with everything worked out that depends on it
// alone. Read-only after Prepare.
type Works struct {
	design  Design
	roofs   []Roof
	area    quantity.SquareMetres // of all roofs
	vessels []vessel
	order   []int // of the tanks, each before the one that takes its overflow
	taps    Taps
	full    float64 // usable water with full tanks
	perFull float64
	joined  bool // all tanks can be drawn from in one hour
}

// State is what the water works remember from hour to hour. A copy is a snapshot.
type State struct {
	Snow   quantity.Millimetres // lying on every roof, as water
	Dry    float64              // hours since water last came down on the roofs
	Roofs  [MostRoofs]RoofState
	Tanks  [MostTanks]TankState
	Duty   int // index of the tank the house draws from
	Coming int // hours until a load ordered arrives; 0: none is ordered
}

// RoofState is what a roof remembers.
type RoofState struct {
	Film    quantity.Millimetres // of the wetting loss, taken already in this wet spell
	Flushed quantity.Litres      // in the first-flush diverter
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
	Spilled   quantity.Litres // overflow that left
	Leaked    quantity.Litres
	Paid      float64 // for what was delivered, in the money of the house
	Loads     int     // delivered
	Ordered   bool    // a load was ordered
	Quiet     bool    // nothing but leaking: all else is 0
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

// String says why, as a person would.
func (c Cause) String() string {
	return [...]string{"tank low", "supply flow", "treatment flow", "pump power", "treatment power"}[c]
}

// key is String as one word.
func (c Cause) key() string { return strings.ReplaceAll(c.String(), " ", "_") }

// Power is the share of the power asked for that was served, 0 to 1.
type Power struct{ Pump, Treatment float64 }

// whole reports whether nothing is missing.
func (p Power) whole() bool { return p.Pump >= 1 && p.Treatment >= 1 }

// TapsOut is what the taps give in the hour: after Works.Want with all the power they ask for,
// after Works.Share with the power that was served.
type TapsOut struct {
	Served    [Kinds]quantity.Litres
	Short     [Kinds]quantity.Litres  // wanted and not served
	Cause     [Causes]quantity.Litres // of the sum of Short
	Drawn     quantity.Litres         // from the tanks
	Backwash  quantity.Litres         // lost in treatment: Drawn less the sum of Served
	Pump      quantity.WattHours      // asked for, then used
	Treatment quantity.WattHours      // asked for, then used; standing power included
	Unused    quantity.WattHours      // served, and not used because pump or treatment failed the other
	Whole     bool                    // nothing is short
	plenty    bool                    // the tank in use holds more than Drawn
}

// Income is the first phase of the hour: what the sky and the road bring, what spills and leaks.
// What stood in out before must be the zero IncomeOut or an earlier hour's.
//
// Fell + Delivered + water in tanks and snow before = Wetted + Missed + Diverted + Spilled + Leaked
// + water in tanks and snow after.
func (w *Works) Income(s *State, in SkyIn, out *IncomeOut) {
	if !out.Quiet {
		*out = IncomeOut{Quiet: true}
	}
	if in.Rain > 0 || s.Snow > 0 || w.roadMoves(s) {
		w.come(s, in, out)
	} else {
		s.Dry++ // all that come does in such an hour
	}
	leaked := w.vessels[0].drip(&s.Tanks[0])
	for i := 1; i < len(w.vessels); i++ {
		leaked += w.vessels[i].drip(&s.Tanks[i])
	}
	out.Leaked = quantity.Litres(leaked)
}

// come lets rain, melting snow and loads in.
func (w *Works) come(s *State, in SkyIn, out *IncomeOut) {
	if w.roadMoves(s) {
		w.road(s, out)
	}
	if in.Rain > 0 || s.Snow > 0 || out.Loads > 0 {
		var inflow [MostTanks]float64
		w.fill(s, in, &inflow, out)
	} else {
		s.Dry++ // all that fill does in such an hour
	}
}

// roadMoves reports whether a load is on its way, or is to be ordered now.
func (w *Works) roadMoves(s *State) bool {
	return w.design.Delivery.Load > 0 && (s.Coming > 0 || w.Usable(s) < w.design.Delivery.OrderBelow)
}

// road orders a load where none is on its way, and lets it come an hour nearer.
func (w *Works) road(s *State, out *IncomeOut) {
	d := &w.design.Delivery
	out.Quiet = false
	if s.Coming == 0 {
		out.Ordered = true
		s.Coming = d.Lead + 1
	}
	if s.Coming--; s.Coming == 0 {
		out.Loads, out.Delivered, out.Paid = 1, d.Load, d.Price
	}
}

// fill brings roof water and delivered water into the tanks and lets them spill, each into
// the tank that takes its overflow. What comes to each tank is put into inflow.
func (w *Works) fill(s *State, in SkyIn, inflow *[MostTanks]float64, out *IncomeOut) {
	out.Quiet = false
	out.Fell = in.Rain.On(w.area)
	if down := w.design.Snow.Step(&s.Snow, in); down > 0 {
		w.shed(s, RoofIn{down, s.Dry}, inflow, out)
		s.Dry = 0
	} else {
		s.Dry++
	}
	if out.Loads > 0 {
		inflow[w.design.Delivery.Into] += float64(out.Delivered)
	}
	for _, i := range w.order {
		v := &w.vessels[i]
		spilled := v.fill(&s.Tanks[i], inflow[i])
		if v.to == Away {
			out.Spilled += quantity.Litres(spilled)
		} else {
			inflow[v.to] += spilled
		}
	}
}

// shed runs water off every roof into its tank.
func (w *Works) shed(s *State, in RoofIn, inflow *[MostTanks]float64, out *IncomeOut) {
	for i := range w.roofs {
		o := w.roofs[i].Step(&s.Roofs[i], in)
		inflow[w.roofs[i].Into] += float64(o.Passed)
		out.Wetted += o.Wetted
		out.Missed += o.Missed
		out.Diverted += o.Diverted
		out.Caught += o.Passed
	}
}

// Want is the second phase: what can be drawn of the litres wanted at the taps, and the power it
// takes. It changes the state only where people change to the fullest tank first, and hands
// back the usable water that can be drawn in the hour.
func (w *Works) Want(s *State, wanted *[Kinds]quantity.Litres, change bool, out *TapsOut) (available quantity.Litres) {
	available = w.offers(s, change)
	w.taps.Plan(available, wanted, out)
	out.plenty = w.plenty(s, out.Drawn)
	return available
}

// offers gives the usable water that can be drawn in the hour, after a change of tank.
func (w *Works) offers(s *State, change bool) quantity.Litres {
	if change {
		s.Duty = w.fullest(s)
	}
	if w.joined {
		return w.Usable(s)
	}
	return w.onDuty(s)
}

// plenty reports whether the tank in use holds more than is drawn.
func (w *Works) plenty(s *State, drawn quantity.Litres) bool {
	return float64(drawn) < float64(s.Tanks[s.Duty].Held)-w.vessels[s.Duty].reserve
}

// onDuty gives the usable water in the tank in use.
func (w *Works) onDuty(s *State) quantity.Litres {
	return quantity.Litres(w.vessels[s.Duty].usable(&s.Tanks[s.Duty]))
}

// Share is the third phase: what comes out of the taps with the power that was served. It takes
// what Want said in the same hour and makes it what happened. A share of power asked for as
// 0 Wh counts as 1.
//
// Water in tanks before = water in tanks after + the sum of Served + Backwash.
func (w *Works) Share(s *State, got Power, out *TapsOut) {
	if !got.whole() {
		w.taps.Serve(got, out)
	}
	w.Pour(s, out)
}

// Pour is Share where all the power asked for was served.
func (w *Works) Pour(s *State, out *TapsOut) {
	if out.plenty {
		s.Tanks[s.Duty].Held -= out.Drawn // all that draw does then
	} else {
		w.draw(s, float64(out.Drawn), nil)
	}
}

func sum(l *[Kinds]quantity.Litres) quantity.Litres {
	return l[Drinking] + l[Washing] + (l[Flushing] + l[Outdoor])
}

// draw takes from the tank in use, and from the fullest others where the works change by
// themselves. There is as much as is wanted, because Want looked. What each tank gave is put
// into took where it is not nil.
func (w *Works) draw(s *State, wanted float64, took *[MostTanks]float64) {
	for range w.vessels {
		got := w.vessels[s.Duty].draw(&s.Tanks[s.Duty], wanted)
		if took != nil {
			took[s.Duty] += got
		}
		if wanted -= got; wanted <= 0 || !w.joined {
			return
		}
		s.Duty = w.fullest(s)
	}
}

// fullest gives the tank with the most usable water; the one in use where others hold no more.
func (w *Works) fullest(s *State) int {
	best := s.Duty
	for i := range w.vessels {
		if w.vessels[i].usable(&s.Tanks[i]) > w.vessels[best].usable(&s.Tanks[best]) {
			best = i
		}
	}
	return best
}

// Held gives all water in the tanks.
func (w *Works) Held(s *State) quantity.Litres {
	var held quantity.Litres
	for i := range w.vessels {
		held += s.Tanks[i].Held
	}
	return held
}

// Snow gives the snow on all roofs, as water.
func (w *Works) Snow(s *State) quantity.Litres { return s.Snow.On(w.area) }

// Usable gives the water in all tanks that the house may draw.
func (w *Works) Usable(s *State) quantity.Litres {
	usable := w.vessels[0].usable(&s.Tanks[0])
	for i := 1; i < len(w.vessels); i++ {
		usable += w.vessels[i].usable(&s.Tanks[i])
	}
	return quantity.Litres(usable)
}

// UsableShare gives Usable over what it is with full tanks, 0 to 1.
func (w *Works) UsableShare(s *State) float64 { return float64(w.Usable(s)) * w.perFull }

// DutyShare gives the same for the tank in use.
func (w *Works) DutyShare(s *State) float64 {
	v := &w.vessels[s.Duty]
	return v.usable(&s.Tanks[s.Duty]) / (v.holds - v.reserve)
}

// Tanks gives how many tanks there are.
func (w *Works) Tanks() int { return len(w.vessels) }
