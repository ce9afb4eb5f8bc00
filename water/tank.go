package water

import "suffice/quantity"

// A TankIn is what an hour brings to a tank and asks of it.
type TankIn struct {
	Inflow quantity.Litres // from roofs, other tanks and the road
	Wanted quantity.Litres // to be drawn
}

// A TankOut is what a tank did in the hour.
type TankOut struct {
	Spilled quantity.Litres // over the overflow
	Leaked  quantity.Litres
	Drawn   quantity.Litres
	Short   quantity.Litres // Wanted and not to be had
}

// Step fills, spills, leaks and draws, in this order.
//
// Inflow + held before = held after + Spilled + Leaked + Drawn; Wanted = Drawn + Short.
func (k *Tank) Step(s *TankState, in TankIn) TankOut {
	v := vesselOf(k)
	var out TankOut
	out.Spilled = quantity.Litres(v.fill(s, float64(in.Inflow)))
	out.Leaked = quantity.Litres(v.drip(s))
	out.Drawn = quantity.Litres(v.draw(s, float64(in.Wanted)))
	out.Short = in.Wanted - out.Drawn
	return out
}

// Reserve gives what the house never draws: the dead storage and above it the fire litres.
func (k *Tank) Reserve() quantity.Litres { return k.Dead + k.Fire }

// A vessel is a tank with what its hour needs worked out.
type vessel struct {
	holds   float64
	reserve float64
	leak    float64 // L/h
	to      int     // index of the tank that takes the overflow, or Away
}

func vesselOf(k *Tank) vessel {
	return vessel{holds: float64(k.Holds), reserve: float64(k.Reserve()), leak: float64(k.Leak) / 24, to: k.Overflow}
}

// fill gives what spills.
func (v *vessel) fill(s *TankState, inflow float64) float64 {
	held := float64(s.Held) + inflow
	if held <= v.holds {
		s.Held = quantity.Litres(held)
		return 0
	}
	s.Held = quantity.Litres(v.holds)
	return held - v.holds
}

// The three below part cases by comparison: the builtin min and max on floats made a dry
// hour a third slower.

// drip gives what leaks; it takes dead storage and fire litres too.
func (v *vessel) drip(s *TankState) float64 {
	held := float64(s.Held)
	if held < v.leak {
		s.Held = 0
		return held
	}
	s.Held = quantity.Litres(held - v.leak)
	return v.leak
}

// usable gives what the house may draw.
func (v *vessel) usable(s *TankState) float64 {
	if u := float64(s.Held) - v.reserve; u > 0 {
		return u
	}
	return 0
}

// draw gives what was drawn of what was wanted. A tank drawn empty stands at its reserve to
// the last bit, so that rounding leaves nothing to come back for.
func (v *vessel) draw(s *TankState, wanted float64) float64 {
	u := v.usable(s)
	if wanted < u {
		s.Held -= quantity.Litres(wanted)
		return wanted
	}
	if u > 0 {
		s.Held = quantity.Litres(v.reserve)
	}
	return u
}

// DryOut gives the days without rain until a tank has nothing usable left: usable water
// over what leaves it a day, all in litres. Nothing leaving, it lasts for ever (+Inf).
func DryOut(usable, draw, leak, topUp quantity.Litres) float64 {
	return float64(usable) / float64(draw+leak+topUp)
}
