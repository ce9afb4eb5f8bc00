package warmth

import (
	"math"

	"suffice/quantity"
	"suffice/warmth/comfort"
	"suffice/warmth/vent"
)

// State is what the rooms remember from one hour to the next.
type State struct {
	Modes  [MostModes]float64
	Air    [MostRooms]quantity.Celsius // at the end of the last hour
	Vapour [MostRooms]float64          // kg/m3; NaN for good where the record tells no humidity
	Carbon [MostRooms]float64          // ppm of carbon dioxide
}

// In is what enters the rooms in an hour beside the weather and what the design tells by the clock.
type In struct {
	Hour  int // row of the record
	Rooms [MostRooms]RoomIn
}

// RoomIn is what the house puts into a room, mean of the hour.
type RoomIn struct {
	Air     quantity.Watts // heat to the air: people and things that blow
	Radiant quantity.Watts // heat to the faces
	Vapour  float64        // kg/h of water given off; its latent heat is Air's to lose
	Carbon  float64        // L/h of carbon dioxide breathed out or burnt
}

// Out is what the hour did.
type Out struct {
	Rooms [MostRooms]RoomOut

	hour    int
	begin   [MostModes]float64 // the modes at the hour's beginning
	end     [MostModes]float64 // and at its end
	read    [mostReads]float64 // ports at the end without heat there, means
	watts   [mostHouse]float64 // of the house's inputs
	meeting meeting
}

// RoomOut is one room's hour. Heats are means of the hour; Mean and Radiant are temperatures, means of the hour.
type RoomOut struct {
	Air       quantity.Celsius // at its end
	Mean      quantity.Celsius // of the air
	Radiant   quantity.Celsius // of the faces, as a person in the middle feels them
	Operative quantity.Celsius // en16798-1: mean of both
	Heating   quantity.Watts   // what held it up, 0 or more
	Cooling   quantity.Watts   // what held it down, 0 or more
	Open      float64          // share of the vents' area
	Flow      float64          // m3/s of air from outside through vents and fans, leaks not counted
	Vented    quantity.Watts   // heat that this flow takes out, below 0 where it brings heat
	Fresh     float64          // m3/h of air from outside, leaks too
	Face      quantity.Celsius // of the coldest face, mean
	Vapour    float64          // kg/m3 at the hour's end
	Condensed quantity.Kilograms
	Carbon    float64        // ppm at the hour's end
	Between   quantity.Watts // heat that air brings through openings from other rooms
}

// A meeting is the hour's small system: ports with what is joined to them.
type meeting struct {
	free  [mostPorts]float64 // degC at the end of the hour without any heat at the ports
	g     [mostPorts]float64 // W/K to what is outside the port
	gt    [mostPorts]float64 // W: the same times its temperature
	pairs [mostPairs]pair    // doors
	doors int
	held  [mostPorts]float64            // degC, NaN where nothing holds
	heat  [mostPorts]float64            // W that each port takes in, machines and all
	made  [mostPorts]float64            // W of machines
	at    [mostPorts]float64            // degC at the end of the hour
	busy  bool                          // anything but shut
	loss  [mostPorts][mostPorts]float64 // W/K: heat = gt - loss at + made
	a     [mostPorts][mostPorts + 1]float64
}

const mostPairs = MostRooms * MostOpenings

// A pair is an open door, W/K each way.
type pair struct {
	a, b int
	g    float64
}

// Step lives one hour. For all rooms and any hours: the rise of what they hold (Stored) is what entered from In, the clock's gains
// and machines, less what vents and fans took out and what went every other way (Heats), to rounding.
func (r *Rooms) Step(s *State, in *In, out *Out) {
	l := &r.lived
	row := l.rows[in.Hour*l.stride : (in.Hour+1)*l.stride]
	out.hour = in.Hour
	clock := in.Hour % 24
	for i := range r.rooms {
		out.watts[i], out.watts[r.rooms+i] = float64(in.Rooms[i].Air), float64(in.Rooms[i].Radiant)
	}
	for k := range r.shutters {
		out.watts[2*r.rooms+k] = 0
	}
	r.join(&out.meeting, s, in.Hour, clock, out)
	r.free(s, row[r.modes:], out)
	if out.meeting.busy {
		r.hold(&out.meeting, clock)
		for p, heat := range out.meeting.heat[:r.ports] {
			out.watts[r.portInput(p)] += heat
		}
	}
	r.finish(s, row, out)
	r.breathe(s, in, out)
	r.account(&out.meeting, in.Hour, out)
}

// free reads the modes, and tells what the ports come to by the end of the hour without any heat there.
func (r *Rooms) free(s *State, feed []float64, out *Out) {
	l := &r.lived
	n := l.width
	z := s.Modes[:n]
	for y, fed := range feed {
		out.read[y] = fed + dot(l.read[y*n:(y+1)*n], z)
	}
	for p := range r.ports {
		sum := out.read[p]
		for v, x := range l.given[p*l.inputs : p*l.inputs+2*r.rooms] {
			sum += x * out.watts[v]
		}
		out.meeting.free[p], out.meeting.at[p] = sum, sum
	}
}

// finish moves the modes on and tells temperatures.
func (r *Rooms) finish(s *State, row []float64, out *Out) {
	l := &r.lived
	n := l.width
	z, end, begin := s.Modes[:n], out.end[:n], out.begin[:n]
	copy(begin, z)
	copy(end, row)
	for v := range l.inputs {
		if w := out.watts[v]; w != 0 {
			for i, x := range l.push[v*n : (v+1)*n][:len(end)] {
				end[i] += x * w
			}
		}
	}
	decay := l.decay[:n]
	for i, at := range end {
		end[i] = decay[i]*z[i] + at
		z[i] = end[i]
	}
	for i := range r.rooms {
		o := &out.Rooms[i]
		o.Air = quantity.Celsius(out.meeting.at[i])
		o.Mean = quantity.Celsius(r.during(i, out))
		o.Radiant = quantity.Celsius(r.during(r.starOutput(i), out))
		o.Operative = comfort.Operative(o.Mean, o.Radiant)
		o.Face = quantity.Celsius(r.during(r.coldOutput(i), out))
		s.Air[i] = o.Air
	}
}

// during reads the mean of an output over the hour.
func (r *Rooms) during(output int, out *Out) float64 {
	l := &r.lived
	y := r.ports + output
	sum := out.read[y]
	for v, x := range l.given[y*l.inputs : (y+1)*l.inputs] {
		sum += x * out.watts[v]
	}
	return sum
}

// dot sums products in four strands, which do not wait for each other.
func dot(a, b []float64) float64 {
	var s0, s1, s2, s3 float64
	a = a[:len(b)]
	for len(b) >= 4 && len(a) >= 4 {
		s0 += a[0] * b[0]
		s1 += a[1] * b[1]
		s2 += a[2] * b[2]
		s3 += a[3] * b[3]
		a, b = a[4:], b[4:]
	}
	a = a[:len(b)]
	for i := range b {
		s0 += a[i] * b[i]
	}
	return s0 + s1 + (s2 + s3)
}

// join says what is joined to the ports in an hour, and whether anything is joined.
func (r *Rooms) join(m *meeting, s *State, hour, clock int, out *Out) {
	outdoor := r.hours.Temperature[hour]
	busy := false
	m.doors = 0
	for i := range r.rooms {
		t := &r.tables[i]
		o := &out.Rooms[i]
		*o = RoomOut{Flow: t.fans[clock]}
		m.g[i], m.gt[i], m.made[i] = 0, 0, 0
		if t.vents {
			r.open(i, s.Air[i], hour, o)
		}
		if o.Flow > 0 {
			m.g[i] = o.Flow * r.carries
			m.gt[i] = m.g[i] * outdoor
			busy = true
		}
		busy = busy || t.heats
	}
	for k := range r.shutters {
		m.g[r.rooms+k], m.gt[r.rooms+k], m.made[r.rooms+k] = 0, 0, 0
		if sh := &r.shutters[k]; sh.closed[hour] {
			m.g[r.rooms+k] = -sh.less
			m.gt[r.rooms+k] = -sh.less * r.columns[r.plan.windows[sh.window].outer].at(hour)
			busy = true
		}
	}
	m.busy = r.doors(m, s, clock) || busy
}

// open gives the air that the people let through the vents, by what they feel at the beginning of the hour.
func (r *Rooms) open(room int, indoor quantity.Celsius, hour int, o *RoomOut) {
	v := &r.design.Rooms[room].Vents
	weather := vent.Outdoors{Temperature: quantity.Celsius(r.hours.Temperature[hour])}
	if r.hours.Wind != nil {
		weather.Wind = r.hours.Wind[hour]
	}
	if r.hours.Rain != nil {
		weather.Rain = quantity.Millimetres(r.hours.Rain[hour])
	}
	var flow float64
	o.Open, flow = v.pass(indoor, weather, r.tables[room].wind)
	o.Flow += flow
}

// pass gives the share of the vents' area that the people open, and the air through it, m3/s; windy is the wind at the vents for
// 1 m/s of the record.
func (v *Vents) pass(indoor quantity.Celsius, weather vent.Outdoors, windy float64) (open, flow float64) {
	if open = vent.Open(indoor, weather, v.Rule); open == 0 {
		return 0, 0
	}
	w := vent.Weather{Inside: indoor, Outside: weather.Temperature, Wind: weather.Wind * windy}
	inlet, outlet := v.Inlet, v.Outlet
	inlet.Area *= quantity.SquareMetres(open)
	outlet.Area *= quantity.SquareMetres(open)
	switch {
	case inlet.Area > 0 && outlet.Area > 0:
		return open, math.Abs(vent.Through(inlet, outlet, w).Flow)
	case inlet.Area > 0:
		return open, vent.Alone(inlet, w)
	default:
		return open, vent.Alone(outlet, w)
	}
}

// windy gives the wind at the vents for 1 m/s of the record.
func (v *Vents) windy() float64 {
	return vent.Local(1, (v.Inlet.Height+v.Outlet.Height)/2, v.Terrain)
}

// doors lets air pass between rooms by the difference of their temperatures at the beginning of the hour.
func (r *Rooms) doors(m *meeting, s *State, clock int) bool {
	for i := range r.rooms {
		for k := range r.design.Rooms[i].Openings {
			d := &r.design.Rooms[i].Openings[k]
			if !d.Hours[clock] {
				continue
			}
			flow := vent.Alone(vent.Opening{Area: d.Area, Tall: d.Tall, Discharge: vent.Sharp}, vent.Weather{Inside: s.Air[i], Outside: s.Air[d.To]})
			m.pairs[m.doors] = pair{i, d.To, flow * r.carries}
			m.doors++
		}
	}
	return m.doors > 0
}

// account says what went where.
func (r *Rooms) account(m *meeting, hour int, out *Out) {
	outdoor := r.hours.Temperature[hour]
	for i := range r.rooms {
		o := &out.Rooms[i]
		o.Heating, o.Cooling = quantity.Watts(max(0, m.made[i])), quantity.Watts(max(0, -m.made[i]))
		o.Vented = quantity.Watts(m.g[i] * (m.at[i] - outdoor))
	}
	for _, p := range m.pairs[:m.doors] {
		flow := quantity.Watts(p.g * (m.at[p.a] - m.at[p.b]))
		out.Rooms[p.a].Between -= flow
		out.Rooms[p.b].Between += flow
	}
}
