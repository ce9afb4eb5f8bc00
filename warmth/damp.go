package warmth

import (
	"math"

	"suffice/quantity"
	"suffice/site/air"
	"suffice/warmth/vent"
)

// vapourGas is the gas constant of water vapour, J/kgK (8.314 J/mol K over 0.018015 kg/mol).
const vapourGas = 461.5

// concentration gives the vapour in air, kg/m3, of a vapour pressure in kPa.
func concentration(pressure float64, t quantity.Celsius) float64 {
	return pressure * 1000 / (vapourGas * t.Kelvin())
}

// Saturated is a table of the vapour that air can hold, kg/m3, for every half kelvin.
const (
	coldestSaturated = -60
	hottestSaturated = 100
	saturatedSteps   = 2 // a kelvin
)

// A damp is what moisture and breath need of a house.
type damp struct {
	outside   []float64 // kg/m3 by hours, nil where the record does not tell
	saturated []float64
	leaks     [MostRooms]float64 // m3/h
	settles   [MostRooms]float64 // m3/h of air that touches the coldest face
}

func (r *Rooms) dampen() {
	d := &r.damp
	d.tabulate()
	if r.hours.Humidity != nil {
		for i, t := range r.hours.Temperature {
			d.outside = append(d.outside, vapourOutside(quantity.Celsius(t), r.hours.Humidity[i]))
		}
	}
	for i := range r.rooms {
		d.leaks[i] = r.design.Rooms[i].Infiltration * r.volume[i]
		d.settles[i] = r.touches(r.coldest(i))
	}
}

// vapourOutside gives the vapour in the air outside, kg/m3, by its relative humidity, percent.
func vapourOutside(at quantity.Celsius, humidity float64) float64 {
	return concentration(air.VapourOfHumidity(at, humidity), at)
}

func (d *damp) tabulate() {
	for k := coldestSaturated * saturatedSteps; k <= hottestSaturated*saturatedSteps; k++ {
		t := quantity.Celsius(float64(k) / saturatedSteps)
		d.saturated = append(d.saturated, concentration(air.Saturation(t), t))
	}
}

// touches gives the air that a face changes with the room, m3/h: vapour crosses the film as heat does (Lewis: h/(ρ c)).
func (r *Rooms) touches(node int) (flow float64) {
	for _, j := range r.plan.joints {
		for room, at := range r.plan.air {
			if at == j.from && node == j.to && node != r.plan.star[room] {
				flow += j.g / r.carries * 3600
			}
		}
	}
	return flow
}

// holds gives what air at a temperature holds at most, kg/m3; beyond the table's ends that of the end.
func (d *damp) holds(t float64) float64 {
	x := min(max((t-coldestSaturated)*saturatedSteps, 0), float64(len(d.saturated)-2))
	k := int(x)
	return d.saturated[k] + (x-float64(k))*(d.saturated[k+1]-d.saturated[k])
}

// HumidityOf gives the relative humidity, percent, of air with so much vapour.
func HumidityOf(vapour float64, t quantity.Celsius) float64 {
	return 100 * vapour / concentration(air.Saturation(t), t)
}

// breathe lets an hour pass over the moisture and the carbon dioxide of all rooms, at the values of its end (backward): what a room gains
// is what is given off in it and comes in, less what goes out and settles on the coldest face.
func (r *Rooms) breathe(s *State, in *In, out *Out) {
	outside := math.NaN()
	if r.damp.outside != nil {
		outside = r.damp.outside[in.Hour]
	}
	r.exchange(s, in, out, outside)
}

// exchange is breathe with the faces known, and the vapour outside, kg/m3.
func (r *Rooms) exchange(s *State, in *In, out *Out, outside float64) {
	d := &r.damp
	m := &out.meeting
	var wet, stale, rooms [MostRooms]float64
	for i := range r.rooms {
		o, give := &out.Rooms[i], &in.Rooms[i]
		o.Fresh = d.leaks[i] + o.Flow*3600
		rooms[i] = r.volume[i] + o.Fresh
		stale[i] = r.volume[i]*s.Carbon[i] + o.Fresh*vent.OutsideCarbon + give.Carbon*1000
		wet[i] = r.volume[i]*s.Vapour[i] + o.Fresh*outside + give.Vapour
	}
	r.mix(m, &stale, rooms)
	dry := wet
	r.mix(m, &wet, rooms)
	r.settle(m, out, &wet, &dry, rooms)
	for i := range r.rooms {
		o := &out.Rooms[i]
		s.Vapour[i], s.Carbon[i] = wet[i], stale[i]
		o.Vapour, o.Carbon = wet[i], stale[i]
	}
}

// settle lets water settle on faces that are colder than the dew point of their room, and changes wet accordingly. Where what settles
// in one room dries another under its dew point, through open doors, the other is let off: a face gives no water that it has not got.
func (r *Rooms) settle(m *meeting, out *Out, wet, dry *[MostRooms]float64, rooms [MostRooms]float64) {
	var on [MostRooms]bool
	count := 0
	for i := range r.rooms {
		out.Rooms[i].Condensed = 0
		if on[i] = wet[i] > r.damp.holds(float64(out.Rooms[i].Face)); on[i] {
			count++
		}
	}
	for again := count > 0; again; {
		again = false
		take, into := rooms, *dry
		for i := range r.rooms {
			if on[i] {
				take[i] += r.damp.settles[i]
				into[i] += r.damp.settles[i] * r.damp.holds(float64(out.Rooms[i].Face))
			}
		}
		r.mix(m, &into, take)
		for i := range r.rooms {
			o := &out.Rooms[i]
			if full := r.damp.holds(float64(o.Face)); on[i] {
				o.Condensed = quantity.Kilograms(r.damp.settles[i] * (into[i] - full))
				if o.Condensed < 0 {
					o.Condensed, on[i], again = 0, false, true
				}
			}
		}
		*wet = into
	}
}

// mix solves what the rooms come to, with air passing through open doors: into gets the solution.
func (r *Rooms) mix(m *meeting, into *[MostRooms]float64, rooms [MostRooms]float64) {
	n := r.rooms
	if m.doors == 0 {
		for i := range n {
			into[i] /= rooms[i]
		}
		return
	}
	for p := range n {
		clear(m.a[p][:n])
		m.a[p][p], m.a[p][n] = rooms[p], into[p]
	}
	for _, d := range m.pairs[:m.doors] {
		flow := d.g / r.carries * 3600
		m.a[d.a][d.a] += flow
		m.a[d.b][d.b] += flow
		m.a[d.a][d.b] -= flow
		m.a[d.b][d.a] -= flow
	}
	solveSmall(&m.a, n)
	for i := range n {
		into[i] = m.a[i][n]
	}
}
