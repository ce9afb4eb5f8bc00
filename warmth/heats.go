package warmth

import "suffice/quantity"

// Sums adds up hours, for Heats to be asked of them. The zero Sums holds none.
type Sums struct {
	hours int
	mean  [MostModes]float64
	watts [mostHouse]float64
	tied  []float64 // of each input of the weather

	clocked [MostRooms]float64 // Wh of the gains by the clock
}

// Add counts an hour that has just been lived.
func (s *Sums) Add(r *Rooms, o *Out) {
	if s.tied == nil {
		s.tied = make([]float64, r.plan.inputs)
	}
	s.hours++
	rest, lasts, decay := r.lived.rest, r.lived.lasts, r.lived.decay
	for i := range r.modes {
		s.mean[i] += rest[i]*o.begin[i] + lasts[i]*(o.end[i]-decay[i]*o.begin[i])
	}
	for v := range r.house {
		s.watts[v] += o.watts[v]
	}
	for i, t := range r.tables[:r.rooms] {
		s.clocked[i] += t.gain[o.hour%24] + t.rays[o.hour%24]
		s.watts[i] += t.gain[o.hour%24]
		s.watts[r.rooms+i] += t.rays[o.hour%24]
	}
	for k, c := range r.columns {
		s.tied[k] += c.at(o.hour)
	}
}

// A Way is how heat leaves a room or enters it.
type Way int

// The ways of heat.
const (
	ThroughWall   Way = iota // to outside, ground or neighbour; of an outer wall with what sun and sky do to its outside
	ThroughWindow            // without the sun
	ThroughLeaks
	Sun // let in and taken up by panes, below 0: it enters
)

// A Heat is what left a room by one way, Wh; below 0 it entered.
type Heat struct {
	Room  int
	Way   Way
	Name  string // of wall or window
	Faces Side   // of a wall
	Out   quantity.WattHours
}

// Heats gives the heat that passed by every way of the design in the hours counted: each is read off the mean
// temperatures of both its ends, none is what the others leave over.
func (r *Rooms) Heats(s *Sums) (heats []Heat) {
	if s.hours == 0 {
		return nil
	}
	at := r.means(s)
	inputs, nodes := at.inputs, at.nodes
	out := func(t tie) quantity.WattHours {
		return quantity.WattHours(t.g * (nodes[t.node] - inputs[t.input]))
	}
	add := func(room int, way Way, name string, wh quantity.WattHours) {
		heats = append(heats, Heat{Room: room, Way: way, Name: name, Out: wh})
	}
	addWall := func(room int, wall *Wall, wh quantity.WattHours) {
		heats = append(heats, Heat{room, ThroughWall, wall.Name, wall.Faces, wh})
	}
	sun := make([]quantity.WattHours, r.rooms)
	for _, w := range r.plan.walls {
		wall := &r.design.Rooms[w.room].Walls[w.index]
		sun[w.room] -= quantity.WattHours(inputs[w.sun])
		switch {
		case w.tie >= 0:
			addWall(w.room, wall, out(r.plan.ties[w.tie]))
		case w.buried != nil:
			g, near, far := w.buried.through(at.seen)
			addWall(w.room, wall, quantity.WattHours(g*(near-far)))
		case w.joint >= 0:
			sun[wall.Other] -= quantity.WattHours(inputs[w.behindSun])
			j := r.plan.joints[w.joint]
			passed := quantity.WattHours(j.g * (nodes[j.from] - nodes[j.to]))
			addWall(w.room, wall, passed)
			addWall(wall.Other, wall, -passed)
		}
	}
	for k, w := range r.plan.windows {
		passed := out(r.plan.ties[w.tie])
		for p, shutter := range r.shutters {
			if shutter.window == k {
				passed -= quantity.WattHours(inputs[r.house[2*r.rooms+p]])
			}
		}
		sun[w.room] -= quantity.WattHours(inputs[w.pane])
		add(w.room, ThroughWindow, r.design.Rooms[w.room].Windows[w.index].Name, passed)
	}
	for i := range r.rooms {
		add(i, ThroughLeaks, "", out(r.plan.ties[r.plan.leaks[i]]))
		add(i, Sun, "", sun[i])
	}
	return heats
}

// Clocked gives the heat that the design's own gains brought a room in the hours counted.
func (r *Rooms) Clocked(s *Sums, room int) (wh quantity.WattHours) {
	return quantity.WattHours(s.clocked[room])
}

// means are sums of hours, or what an hour had in the mean: all inputs, temperatures of the nodes that are read, all outputs.
type means struct{ inputs, nodes, seen []float64 }

func (r *Rooms) means(s *Sums) (m means) {
	m.inputs = append(m.inputs, s.tied...)
	for v, k := range r.house {
		m.inputs[k] = s.watts[v]
	}
	m.seen = make([]float64, len(r.model.Outputs))
	r.model.See(m.seen, s.mean[:r.modes], m.inputs)
	m.nodes = make([]float64, len(r.plan.capacity))
	for _, at := range r.plan.sights {
		m.nodes[at.node] = m.seen[at.output]
	}
	return m
}

// Stored gives the heat that air and walls hold over 0 degC, Wh; what is drawn in a section belongs to the earth.
func (r *Rooms) Stored(s *State) quantity.WattHours {
	return quantity.WattHours(r.model.Stored(s.Modes[:r.modes])/hourSeconds) - r.Earth(s)
}

// Earth gives the heat that the sections hold over 0 degC, Wh, their walls and floors with them.
func (r *Rooms) Earth(s *State) (wh quantity.WattHours) {
	held := r.model.StoredBy(s.Modes[:r.modes])
	for _, b := range r.plan.banks {
		wh += quantity.WattHours(held[b.held] / hourSeconds)
	}
	return wh
}

// Surfaced gives the heat that left the sections by the ground's face in the hours counted, Wh; below 0 it entered.
func (r *Rooms) Surfaced(s *Sums) (wh quantity.WattHours) {
	seen := r.means(s).seen
	for _, b := range r.plan.banks {
		for _, k := range b.up {
			wh -= quantity.WattHours(seen[k])
		}
	}
	return wh
}
