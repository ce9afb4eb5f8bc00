package hourly

import (
	"suffice/quantity"
	"suffice/stove"
	"suffice/warmth"
)

// A hearth is a stove in its room, made ready.
type hearth struct {
	room   int
	stove  *stove.Stove
	kelvin quantity.Watts // that warm the room's air by a kelvin in an hour
}

// Stoves is a stove's hour or memory for each room.
type (
	StoveStates [warmth.MostRooms]stove.State
	StoveOuts   [warmth.MostRooms]stove.Out
)

// hearths makes the stoves of the rooms ready.
func (r *Run) hearths(in *indoors) (list []hearth) {
	for k, v := range r.House.Rooms.Stoves {
		if v != nil {
			list = append(list, hearth{room: k, stove: v, kelvin: in.rooms.Warms(k, v.Radiant)})
		}
	}
	return list
}

// wood gives what an hour brings to a stove.
func (r *Run) wood(h *hearth, i int, s *State, row *Row) stove.In {
	return stove.In{
		Room: s.Rooms.Air[h.room], Outside: quantity.Celsius(r.Weather.Temperature[i]), Home: row.Wants.Persons > 0, Hour: i % 24,
		Kelvin: h.kelvin, Carries: r.in.rooms.Carries(),
	}
}

// fire lets people who are at home heat with wood, and puts its heat into the rooms.
func (r *Run) fire(i int, s *State, row *Row) {
	for k := range r.in.hearths {
		h := &r.in.hearths[k]
		in, out := r.wood(h, i, s, row), &row.Stoves[h.room]
		h.stove.Step(&s.Stoves[h.room], &in, out)
		row.RoomsIn.Rooms[h.room].Air += out.Air - out.Draught
		row.RoomsIn.Rooms[h.room].Radiant += out.Faces
	}
}

// A Burning is what a room's stove came to over all hours lived. The zero Burning is of a room without one.
type Burning struct {
	Wood    quantity.Kilograms
	Heat    quantity.WattHours // to the room, less what the fire's air took
	Flue    quantity.WattHours
	Hours   float64            // with a fire
	Most    quantity.Kilograms // in one winter
	Winter  int32              // the year in which that began
	current quantity.Kilograms
	began   int32
}

// add takes in one hour of a winter, which is told by the year in which its summer was.
func (b *Burning) add(o *stove.Out, winter int32) {
	if winter != b.began {
		b.began, b.current = winter, 0
	}
	b.Wood += o.Wood
	b.Heat += (o.Air + o.Faces - o.Draught).For(1)
	b.Flue += o.Flue.For(1)
	if o.Wood > 0 {
		b.Hours++
	}
	if b.current += o.Wood; b.current > b.Most {
		b.Most, b.Winter = b.current, winter
	}
}

// winter gives the year in which the winter of a day began: north of the equator it turns with July, south of it with January.
func (r *Run) winter(day int) int32 {
	d := &r.Weather.Days[day]
	if !r.south() && d.Month < 7 {
		return d.Year - 1
	}
	return d.Year
}
