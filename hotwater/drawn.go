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
	want := quantity.WaterHeat * float64(in.Litres) * (tap - cold)
	floor := tap
	if p.after && fuel > 0 && floor < p.set {
		floor = p.set
	}
	var share, sun, slope float64
	if in.lit {
		share = p.served(in)
		sun, slope = p.sunlit(lower0, share, in)
	}

	hot, least := upper0 >= floor, floor-cold
	flow := want / least
	if hot {
		over := upper0 - cold
		if lower0 == upper0 {
			over += p.gains(sun - slope*upper0)
		}
		flow = guess(want, over, over*over-want*(upper0-lower0)*p.perUpper/2, least) // as firstFlow has it
	}
	d := carried{hot, want, flow, cold}
	brought := flow*cold + sun
	below := relax((flow+slope+p.lossLower)*p.perLower).node(lower0, brought+p.lossLower*room, p.perLower)
	upper, missing, sink := d.by(relax((flow+p.lossUpper)*p.perUpper).node(upper0, flow*below.mean+p.lossUpper*room, p.perUpper))
	if below.end > upper.end {
		if lower0 < upper0 {
			return false
		}
		loss := p.lossLower + p.lossUpper
		t0 := (p.lower*lower0 + p.upper*upper0) * p.perWhole
		upper, missing, sink = d.by(relax((flow+slope+loss)*p.perWhole).node(t0, brought+loss*room, p.perWhole))
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
	out.Solar, out.Delivered, out.Hot = quantity.WattHours(solar), quantity.WattHours(delivered), quantity.Litres(flow/quantity.WaterHeat)
	out.PumpUsed = quantity.WattHours(p.pump * share)
	if in.lit {
		out.Unpumped = 1 - share
	} else if float64(in.Air) < p.freezes {
		out.Frost = 1
	}
	s.Upper, s.Lower = quantity.Celsius(upper.end), quantity.Celsius(below.end)
	return true
}

// carried is a draw that nothing heats on its way: what settle knows of it.
type carried struct {
	hot              bool
	want, flow, cold float64
}

// by gives the volume that carries it, what the flow alone would leave missing, and what is taken to make up for that.
func (d *carried) by(n node) (_ node, missing, sink float64) {
	missing = d.want - d.flow*(n.mean-d.cold)
	if d.hot || missing < 0 {
		sink = missing / (1 - d.flow*n.meanPerW)
		n = n.heated(-sink)
	}
	return n, missing, sink
}
