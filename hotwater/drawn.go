package hotwater

import "suffice/quantity"

// drawn is busy where people draw warm water from a store in order, nothing heats its upper layer, no frost calls for the
// pump, and the first flow tried is near enough: nearly every hour with a draw. It keeps its numbers out of memory, where
// each would wait to be written. It leaves everything as it was, and says false, where the hour is none of these. A test
// holds it to busy to the last bit.
func (p *prepared) drawn(s *State, in *In, out *Out) bool {
	cold, tap := float64(in.Cold), float64(in.Tap)
	lower0, upper0, room := float64(s.Lower), float64(s.Upper), float64(in.Room)
	if p.intoUpper || in.frosty || !(in.Litres > 0 && tap > cold) || lower0 > upper0 {
		return false
	}
	fuel := float64(in.Fuel) * p.efficiency
	want := heatOfWater * float64(in.Litres) * (tap - cold)
	floor := tap
	if p.after && fuel > 0 && floor < p.set {
		floor = p.set
	}
	var share, sun, slope float64
	if in.lit {
		share = p.served(in)
		sun, slope = p.sunlit(lower0, share, in)
	}

	hot, flow := upper0 >= floor, want/(floor-cold)
	if hot {
		over, least := upper0-cold, floor-cold
		if lower0 == upper0 {
			over += p.gains(sun - slope*upper0)
		}
		if square := over*over - want*(upper0-lower0)*p.perUpper/2; square > least*over { // as firstFlow has it
			flow = want * over / square
		}
	}
	brought := flow*cold + sun
	below := relax((flow+slope+p.lossLower)*p.perLower).node(lower0, brought+p.lossLower*room, p.perLower)
	upper := relax((flow+p.lossUpper)*p.perUpper).node(upper0, flow*below.mean+p.lossUpper*room, p.perUpper)
	missing, sink := want-flow*(upper.mean-cold), 0.0
	if hot || missing < 0 {
		sink = missing / (1 - flow*upper.meanPerW)
		upper = upper.heated(-sink)
	}
	if below.end > upper.end {
		if lower0 < upper0 {
			return false
		}
		loss := p.lossLower + p.lossUpper
		t0 := (p.lower*lower0 + p.upper*upper0) * p.perWhole
		upper = relax((flow+slope+loss)*p.perWhole).node(t0, brought+loss*room, p.perWhole)
		missing, sink = want-flow*(upper.mean-cold), 0
		if hot || missing < 0 {
			sink = missing / (1 - flow*upper.meanPerW)
			upper = upper.heated(-sink)
		}
		below = upper
	}
	if hot && (missing > closeEnough*want || -missing > closeEnough*want) || !hot && upper.mean > floor || slope > 0 && sun < slope*below.mean {
		return false
	}

	solar := sun - slope*below.mean
	out.Loss = quantity.WattHours(p.lossLower*(below.mean-room) + p.lossUpper*(upper.mean-room))
	if below.end == upper.end {
		solar, upper.end = p.refuse(solar, upper.end, share, out)
		below.end = upper.end
	}
	store := flow*(upper.mean-cold) + sink
	delivered := store
	if p.after && upper.mean < p.set && sink == 0 {
		gas := min(flow*(p.set-upper.mean), fuel)
		delivered = store + gas
		if gas > 0 {
			out.Gas = quantity.WattHours(gas)
			out.Fuel = min(quantity.WattHours(gas/p.efficiency), in.Fuel)
		}
	}
	if short := want - delivered; short > rounding*want {
		out.Short = quantity.WattHours(short)
	}
	out.Solar, out.Delivered, out.Hot = quantity.WattHours(solar), quantity.WattHours(delivered), quantity.Litres(flow/heatOfWater)
	out.PumpUsed = quantity.WattHours(p.pump * share)
	if in.lit {
		out.Unpumped = 1 - share
	} else if float64(in.Air) < p.freezes {
		out.Frost = 1
	}
	s.Upper, s.Lower = quantity.Celsius(upper.end), quantity.Celsius(below.end)
	return true
}
