package house

import (
	"fmt"

	"suffice/quantity"
	"suffice/stove"
)

// stove builds the one of a room, nil where it has none.
func (r *reader) stove(m *Room, where string) *stove.Stove {
	s := m.Stove
	if s == nil {
		return nil
	}
	v := &stove.Stove{
		Burns: quantity.Kilograms(s.Burns), Least: quantity.Kilograms(s.Least), Wood: stove.Wood{Dry: s.Dry, Moisture: s.Moisture},
		Efficiency: s.Efficiency, Radiant: s.Radiant, RoomAir: s.Air == "room", Rule: stove.Rule{Below: s.Below, Until: s.Until, Hours: s.Hours},
	}
	r.refuse(where, v.Faults())
	return v
}

// checkStove holds the numbers of a stove against each other.
func (r *reader) checkStove(s *Stove, where string) {
	if s == nil {
		return
	}
	if s.Least > s.Burns && r.sound(where+".least", where+".burns") {
		r.fault(where+".least", "%s is more than the full fire of %s: a smallest fire is smaller", quantity.Text(s.Least, "kg/h"), quantity.Text(s.Burns, "kg/h"))
	}
	if s.Until < s.Below && r.sound(where+".until", where+".light_below") {
		r.fault(where+".until", "%s is colder than %s, under which the stove is lit: write the warmer of the two here", quantity.Text(float64(s.Until), "degC"), quantity.Text(float64(s.Below), "degC"))
	}
}

// wetWood is the share of water from which wood smokes and tars; common practice, no source.
const wetWood = 0.25

// stoves doubts fires that nobody should light as the file tells them.
func (w *warner) stoves(f *File, h *House) {
	for i := range f.Rooms {
		m, where := &f.Rooms[i], fmt.Sprintf("rooms[%d].stove", i)
		s := m.Stove
		if s == nil {
			continue
		}
		if s.Moisture > wetWood {
			w.warn(where+".moisture", "%s of water in the wood makes smoke, and tar that burns in the flue: let it dry to 20 %%, which takes a year or two under a roof", share(s.Moisture))
		}
		for _, hold := range m.Heating {
			if hold.At >= s.Below {
				w.warn(where+".light_below", "the room is held at %s by heating, so that a stove lit below %s never burns in those hours: take one of the two out",
					quantity.Text(float64(hold.At), "degC"), quantity.Text(float64(s.Below), "degC"))
				break
			}
		}
		w.draught(h, m, i, where)
	}
}

// draught doubts a fire that wants more air than the room's gaps let in.
func (w *warner) draught(h *House, m *Room, room int, where string) {
	if h.Rooms == nil {
		return
	}
	v := h.Rooms.Stoves[room]
	built := &h.Rooms.Design.Rooms[room]
	draws, leaks := float64(v.Burns)*v.Wood.Draws(), built.Infiltration*float64(built.Area)*float64(built.Height)
	if v.RoomAir && draws > leaks {
		w.warn(where+".air", "at full fire it draws %.0f m3 an hour out of the room, whose gaps let in %.0f: it smokes and can kill; give it air from outside by a pipe of its own", draws, leaks)
	}
	if len(m.Fans) > 0 {
		w.warn(where, "a fan that draws air out of the room can pull smoke and carbon monoxide back down the flue: have a licensed person test both running together")
	}
}
