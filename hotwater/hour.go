package hotwater

import "suffice/quantity"

// Want says what the hour would use of pump and element if both were served and
// In.Litres flowed. It reads Light, Air, Room, Cold, Litres and Tap.
func (y *System) Want(s *State, in *In) (w Want) {
	p := &y.p
	p.look(s, in)
	if in.lit || in.frosty {
		w.Pump = quantity.Watts(p.pump)
	}
	if p.element {
		w.Electric = p.electric(s, in)
	}
	return w
}

// electric says what the element would use.
func (p *prepared) electric(s *State, in *In) quantity.Watts {
	if p.course(s, in) != busied {
		return 0
	}
	served := *in
	served.Pump = 1
	var k work
	p.begin(&k, s, &served)
	k.most = p.most
	p.solve(&k)
	return quantity.Watts(k.heat / p.efficiency)
}

// Step moves s on by one hour of which nobody was asked what it wants.
func (y *System) Step(s *State, in *In, out *Out) {
	y.p.look(s, in)
	y.Live(s, in, out)
}

// Live moves s on by one hour, after Want. Solar + Gas + Electric = Delivered + Loss + FrostHeat +
// what the store gained, to rounding.
//
// Out is the caller's memory and is overwritten: a struct of this size returned as a
// value costs more than the hour itself.
func (y *System) Live(s *State, in *In, out *Out) {
	*out = Out{}
	p := &y.p
	switch p.course(s, in) {
	case resting:
		p.cool(s, in, out)
	case sunned:
		if !p.sunny(s, in, out) {
			y.busy(s, in, out)
		}
	default:
		if !p.drawn(s, in, out) {
			y.busy(s, in, out)
		}
	}
	if s.Upper < 60 {
		out.Under60 = 1
		if s.Upper < 50 {
			out.Under50 = 1
		}
	}
}

// busy solves an hour in which anything may happen.
func (y *System) busy(s *State, in *In, out *Out) {
	var w work
	y.limits(&w, s, in)
	y.p.solve(&w)
	y.finish(&w, s, in, out)
}

// limits begins the hour's work, with the backup's power as far as it was served.
func (y *System) limits(w *work, s *State, in *In) {
	p := &y.p
	p.begin(w, s, in)
	switch y.Backup.By {
	case ElectricUpper:
		w.most = min(p.most, float64(in.Electric)*p.efficiency)
	case GasUpper:
		w.most = min(p.most, w.fuel)
	case NoBackup, GasAfter: // nothing heats the upper layer
	}
}

// course says which of the three ways an hour goes.
type course int8

const (
	busied  course = iota // anything may happen
	resting               // nothing but the standing loss
	sunned                // sun and standing loss
)

// course picks the way. A store whose lower layer is hotter (a start state only) is busy mixing.
func (p *prepared) course(s *State, in *In) course {
	switch {
	case in.Litres > 0 && in.Tap > in.Cold, s.Lower > s.Upper, in.frosty, !p.warmEnough(s, in):
		return busied
	case in.lit:
		return sunned
	}
	return resting
}

// warmEnough reports whether the backup stays off through an hour of rest.
func (p *prepared) warmEnough(s *State, in *In) bool {
	room := float64(in.Room)
	return !p.intoUpper || room+(float64(s.Upper)-room)*p.rest.end >= p.set
}

// cool lets the layers go towards the room for an hour, exactly.
func (p *prepared) cool(s *State, in *In, out *Out) {
	room := float64(in.Room)
	upper, lower := float64(s.Upper)-room, float64(s.Lower)-room
	out.Loss = quantity.WattHours((p.lossUpper*upper + p.lossLower*lower) * p.rest.mean)
	s.Upper = quantity.Celsius(room + upper*p.rest.end)
	s.Lower = quantity.Celsius(room + lower*p.rest.end)
	if float64(in.Air) < p.freezes {
		out.Frost = 1
	}
}

// sunny solves the hour in which sun and standing loss act alone: on the lower layer, or
// on the whole store if it began mixed. It reports false, having done nothing, if the
// layers would come to mix within the hour or the sun would not gain after all.
func (p *prepared) sunny(s *State, in *In, out *Out) bool {
	lower, upper, room := float64(s.Lower), float64(s.Upper), float64(in.Room)
	share := p.served(in)
	sun, slope := p.sunlit(lower, share, in)
	var n node
	var loss float64
	if lower == upper {
		k := p.lossLower + p.lossUpper
		n = relax((slope+k)*p.perWhole).node(lower, sun+k*room, p.perWhole)
		upper, loss = n.end, k*(n.mean-room)
	} else {
		n = relax((slope+p.lossLower)*p.perLower).node(lower, sun+p.lossLower*room, p.perLower)
		loss = p.lossLower*(n.mean-room) + p.lossUpper*(upper-room)*p.rest.mean
		upper = room + (upper-room)*p.rest.end
	}
	solar := sun - slope*n.mean
	if n.end > upper || solar < 0 {
		return false
	}
	if n.end == upper && upper > p.limit {
		solar, upper = p.refuse(solar, upper, share, out)
		n.end = upper
	}
	out.Solar, out.Loss = quantity.WattHours(solar), quantity.WattHours(loss)
	out.PumpUsed, out.Unpumped = quantity.WattHours(p.pump*share), 1-share
	s.Upper, s.Lower = quantity.Celsius(upper), quantity.Celsius(n.end)
	return true
}

// refuse takes off a mixed store what the sun put in over the limit.
func (p *prepared) refuse(solar, t, share float64, out *Out) (taken, limited float64) {
	over := (t - p.limit) * p.whole
	if over <= 0 || solar <= 0 {
		return solar, t
	}
	over = min(over, solar)
	out.Refused = quantity.WattHours(over)
	out.Stagnant = share * over / solar
	return solar - over, t - over*p.perWhole
}

// begin reads the hour: what is wanted, what the sun and the frost do. In the hour in which
// the gas runs out the flow stays the heater's, and what the gas lacks is short.
func (p *prepared) begin(w *work, s *State, in *In) {
	w.lower0, w.upper0 = float64(s.Lower), float64(s.Upper)
	w.cold, w.room = float64(in.Cold), float64(in.Room)
	w.fuel = float64(in.Fuel) * p.efficiency
	tap := float64(in.Tap)
	if in.Litres > 0 && tap > w.cold {
		w.want = quantity.WaterHeat * float64(in.Litres) * (tap - w.cold)
		w.floor = tap
		if p.after && w.fuel > 0 {
			if w.floor < p.set {
				w.floor = p.set
			}
		}
	}
	if w.runs = in.lit; w.runs {
		w.share = p.served(in)
		w.sun, w.slope = p.sunlit(w.lower0, w.share, in)
	} else if in.frosty {
		w.share = p.served(in)
		w.keep = w.share * p.keepHeat(float64(in.Air))
	}
}

// solve works the hour out. Where a warm room or inlet heats the lower layer beyond
// what the collector reaches, the controller stops the pump and the hour is without sun.
func (p *prepared) solve(w *work) {
	p.draw(w)
	if w.slope > 0 && w.sun < w.slope*w.lower.mean {
		w.sun, w.slope = 0, 0
		p.draw(w)
	}
}

// finish mixes the store, holds it to its limit and writes the hour down.
func (y *System) finish(w *work, s *State, in *In, out *Out) {
	p := &y.p
	solar := w.sun - w.slope*w.lower.mean
	upper, lower := w.upper.end, w.lower.end
	if lower > upper {
		upper = (p.lower*lower + p.upper*upper) * p.perWhole
		lower = upper
	}
	if lower == upper {
		solar, upper = p.refuse(solar, upper, w.share, out)
		lower = upper
	}
	out.Solar = quantity.WattHours(solar)
	out.Loss = quantity.WattHours(p.lossLower*(w.lower.mean-w.room) + p.lossUpper*(w.upper.mean-w.room))
	out.FrostHeat = quantity.WattHours(w.frost)
	out.Hot = quantity.Litres(w.flow / quantity.WaterHeat)
	s.Upper, s.Lower = quantity.Celsius(upper), quantity.Celsius(lower)
	y.bookPump(w, in, out)
	y.bookHeat(w, in, out)
}

// bookPump writes down the pump, and the hours in which the collector had no flow.
func (y *System) bookPump(w *work, in *In, out *Out) {
	p := &y.p
	out.PumpUsed = quantity.WattHours(p.pump * w.share)
	if w.runs {
		out.Unpumped = 1 - w.share
		return
	}
	if air := float64(in.Air); air < p.freezes {
		out.Frost = 1
		if w.frost > 0 {
			out.Frost = 1 - w.frost/p.keepHeat(air)
		}
	}
}

// bookHeat writes down backup and delivery.
func (y *System) bookHeat(w *work, in *In, out *Out) {
	p := &y.p
	var gas float64
	store := w.flow*(w.upper.mean-w.cold) + w.sink
	delivered := store
	if p.after && w.upper.mean < p.set && w.sink == 0 {
		gas = min(w.flow*(p.set-w.upper.mean), w.fuel)
		delivered = store + gas
	}
	switch y.Backup.By {
	case GasUpper:
		gas = w.heat
	case ElectricUpper:
		out.Electric = quantity.WattHours(w.heat)
		out.ElectricUsed = min(quantity.WattHours(w.heat/p.efficiency), in.Electric)
	case NoBackup, GasAfter: // no heat in the upper layer to write down
	}
	if gas > 0 {
		out.Gas = quantity.WattHours(gas)
		out.Fuel = min(quantity.WattHours(gas/p.efficiency), in.Fuel)
	}
	out.Delivered = quantity.WattHours(delivered)
	// What rounding leaves of a heat that was met is no shortage.
	if short := w.want - delivered; short > rounding*w.want {
		out.Short = quantity.WattHours(short)
	}
}

// rounding is some hundred units in the last place.
const rounding = 1e-13
