package stove

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// A Stove is one as it stands, with the people's rule. It is only read.
type Stove struct {
	Burns      quantity.Kilograms // an hour, at full fire
	Least      quantity.Kilograms // an hour, the smallest fire that burns clean
	Wood       Wood
	Efficiency float64 // share of the net heating value that stays in the room, 0.05 to 1
	Radiant    float64 // share of that which goes to the faces and not to the air, 0 to 1
	RoomAir    bool    // the fire's air comes out of the room, and in its place air from outside; else by a pipe of its own
	Rule       Rule
}

// Rule is when people keep a fire.
type Rule struct {
	Below quantity.Celsius // air of the room under which they light it
	Until quantity.Celsius // and to which they bring the room; then they let it go out
	Hours [24]bool         // in which they lay wood on
}

// State is what must be remembered of a stove.
type State struct{ Lit bool }

// In is what an hour brings.
type In struct {
	Room    quantity.Celsius // its air as the hour begins
	Outside quantity.Celsius
	Home    bool           // somebody is there to lay wood on; nobody leaves a fire alone
	Hour    int            // 0 to 23
	Kelvin  quantity.Watts // that warm the room's air by a kelvin until the end of the hour, as far as somebody knows who lives with it
	Carries float64        // J/m3K of the room's air
}

// Out is what the hour did. Heats are means of the hour.
type Out struct {
	Wood    quantity.Kilograms
	Fuel    quantity.Watts // net heating value of that wood
	Air     quantity.Watts // to the room's air
	Faces   quantity.Watts // to its faces
	Flue    quantity.Watts
	Drawn   float64        // m3 of air
	Draught quantity.Watts // heat that the drawn air takes from the room beside, since as much comes in from outside; below 0 it brings some
}

// Keeps reports whether people keep a fire in an hour: they light it when it is cold, keep it until the room is as warm as they want it, and let it go out when
// nobody is there or awake.
func (r *Rule) Keeps(lit bool, in *In) bool {
	if !in.Home || !r.Hours[in.Hour] {
		return false
	}
	return in.Room < r.Below || lit && in.Room < r.Until
}

// Lays gives the wood of an hour's fire: what brings the room to the wanted warmth by its end, at least the smallest clean
// fire and at most a full one.
func (v *Stove) Lays(in *In) quantity.Kilograms {
	wanted := float64(v.Rule.Until-in.Room) * float64(in.Kelvin)
	return min(v.Burns, max(v.Least, quantity.Kilograms(wanted/(v.Efficiency*float64(v.Wood.Holds())))))
}

// Step lives one hour. What the wood holds went to air, faces and flue: Fuel = Air + Faces + Flue.
func (v *Stove) Step(s *State, in *In, out *Out) {
	*out = Out{}
	if s.Lit = v.Rule.Keeps(s.Lit, in); !s.Lit {
		return
	}
	out.Wood = v.Lays(in)
	kg := float64(out.Wood)
	out.Fuel = quantity.Watts(kg * float64(v.Wood.Holds()))
	stays := quantity.Watts(v.Efficiency) * out.Fuel
	out.Faces = quantity.Watts(v.Radiant) * stays
	out.Air = stays - out.Faces
	out.Flue = out.Fuel - stays
	out.Drawn = kg * v.Wood.Draws()
	if v.RoomAir {
		out.Draught = quantity.Watts(out.Drawn / 3600 * in.Carries * float64(in.Room-in.Outside))
	}
}

// Faults gives everything about the stove that cannot be, or nil.
func (v *Stove) Faults() error {
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("stove: "+format, args...))
		}
	}
	fault(!(v.Burns > 0), "a full fire burns %g kg an hour: give it more than 0", float64(v.Burns))
	fault(!(v.Least >= 0 && v.Least <= v.Burns), "the smallest fire burns %g kg an hour: give 0 or more, at most the %g of a full one", float64(v.Least), float64(v.Burns))
	fault(!(v.Wood.Moisture >= 0 && v.Wood.Moisture <= MostMoisture), "wood with %g of its weight as water: 0 to %g", v.Wood.Moisture, MostMoisture)
	fault(!(v.Wood.Dry >= 4 && v.Wood.Dry <= 7), "dry wood holds %g kWh/kg: 4 to 7", v.Wood.Dry)
	fault(!(v.Efficiency >= 0.05 && v.Efficiency <= 1), "efficiency of %g: 0.05 to 1", v.Efficiency)
	fault(!(v.Radiant >= 0 && v.Radiant <= 1), "a radiant share of %g: 0 to 1", v.Radiant)
	fault(!(v.Rule.Until >= v.Rule.Below), "it is lit below %g degC and let go out at %g degC: light it at the lower of the two", float64(v.Rule.Below), float64(v.Rule.Until))
	return errors.Join(faults...)
}

// Cautions are those of every wood stove.
func Cautions() []string {
	return []string{
		"Carbon monoxide has no smell and kills: keep an alarm in the room and where people sleep, never shut the damper on embers, never burn with the flue or the air pipe blocked.",
		"A fire needs its own air from outside, more so in a tight house, and none of it may be drawn away by a fan: have stove, flue and fans tested running together.",
		"Have the flue built to the local code, checked before the first fire and swept each year: soot burns, and a flue too close to timber or straw sets the house alight.",
		"Ash glows for days: keep it in a closed metal bucket outside. Children, cloths and wood stay a good way off the stove.",
		"Wet, painted or treated wood smokes, poisons and tars the flue: burn what has dried under a roof for a year or two.",
	}
}
