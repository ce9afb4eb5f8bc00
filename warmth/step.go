package warmth

import (
	"math"

	"suffice/quantity"
	"suffice/warmth/comfort"
	"suffice/warmth/vent"
)

// State is what the rooms remember from one hour to the next.
type State struct {
	Modes [MostModes]float64
	Air   [MostRooms]quantity.Celsius // at the end of the last hour
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
}

// Out is what the hour did.
type Out struct {
	Rooms [MostRooms]RoomOut

	hour  int
	mean  [MostModes]float64 // of the modes
	watts [mostHouse]float64 // of the house's inputs
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
	Between   quantity.Watts   // heat that air brings through openings from other rooms
}

// A meeting is the hour's small system: ports with what is joined to them.
type meeting struct {
	free  [mostPorts]float64 // degC at the end of the hour without any heat at the ports
	g     [mostPorts]float64 // W/K to what is outside the port
	gt    [mostPorts]float64 // W: the same times its temperature
	pairs [mostPairs]pair    // doors
	doors int
	held  [mostPorts]float64 // degC, NaN where nothing holds
	heat  [mostPorts]float64 // W that each port takes in, machines and all
	made  [mostPorts]float64 // W of machines
	at    [mostPorts]float64 // degC at the end of the hour
}

const mostPairs = MostRooms * MostOpenings

// A pair is an open door, W/K each way.
type pair struct {
	a, b int
	g    float64
}

// Step lives one hour. For every room and hour, with a full set of modes: the rise of the heat that air and walls
// hold is what entered from In, the clock's gains, the sun, machines, vents and doors, less what went out through leaks, walls and
// windows (Heats), to rounding.
func (r *Rooms) Step(s *State, in *In, out *Out) {
	row := r.rows[in.Hour*r.stride : (in.Hour+1)*r.stride]
	push, feed := row[:r.modes], row[r.modes:]
	out.hour, out.watts = in.Hour, [mostHouse]float64{}
	watts := &out.watts
	clock := in.Hour % 24
	for i := range r.rooms {
		watts[i] = float64(in.Rooms[i].Air) + r.tables[i].gain[clock]
		watts[r.rooms+i] = float64(in.Rooms[i].Radiant) + r.tables[i].rays[clock]
	}
	var m meeting
	busy := r.join(&m, s, in.Hour, clock, out)
	var rise [MostModes]float64
	for i := range r.modes {
		rise[i] = push[i]
	}
	for v := range 2 * r.rooms {
		if w := watts[v]; w != 0 {
			for i, p := range r.pushes[v][:r.modes] {
				rise[i] += p * w
			}
		}
	}
	if busy {
		for p := range r.ports {
			sum := feed[p]
			for v := range 2 * r.rooms {
				sum += r.given[p][v] * watts[v]
			}
			for i, share := range r.read[p][:r.modes] {
				sum += share * (r.decay[i]*s.Modes[i] + rise[i])
			}
			m.free[p] = sum
		}
		r.hold(&m, clock)
		for p := range r.ports {
			v := r.portInput(p)
			watts[v] += m.heat[p]
			for i, x := range r.pushes[v][:r.modes] {
				rise[i] += x * m.heat[p]
			}
		}
	}
	r.finish(s, &rise, feed, out)
	r.account(&m, in.Hour, out)
}

// finish moves the modes on and reads temperatures off them.
func (r *Rooms) finish(s *State, rise *[MostModes]float64, feed []float64, out *Out) {
	for i := range r.modes {
		out.mean[i] = r.rest[i]*s.Modes[i] + r.lasts[i]*rise[i]
		s.Modes[i] = r.decay[i]*s.Modes[i] + rise[i]
	}
	read := func(y int, modes *[MostModes]float64) float64 {
		sum := feed[y]
		for v, x := range r.given[y] {
			sum += x * out.watts[v]
		}
		for i, share := range r.read[y][:r.modes] {
			sum += share * modes[i]
		}
		return sum
	}
	for i := range r.rooms {
		o := &out.Rooms[i]
		o.Air = quantity.Celsius(read(i, &s.Modes))
		o.Mean = quantity.Celsius(read(i, &out.mean))
		o.Radiant = quantity.Celsius(read(r.starOutput(i), &out.mean))
		o.Operative = comfort.Operative(o.Mean, o.Radiant)
		s.Air[i] = o.Air
	}
}

// join says what is joined to the ports in an hour, and whether anything is.
func (r *Rooms) join(m *meeting, s *State, hour, clock int, out *Out) (busy bool) {
	outdoor := r.hours.Temperature[hour]
	for i := range r.rooms {
		t := &r.tables[i]
		o := &out.Rooms[i]
		*o = RoomOut{Flow: t.fans[clock]}
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
		if sh := &r.shutters[k]; sh.closed[hour] {
			m.g[r.rooms+k] = -sh.less
			m.gt[r.rooms+k] = -sh.less * r.columns[r.plan.windows[sh.window].outer].at(hour)
			busy = true
		}
	}
	return r.doors(m, s, clock) || busy
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
	if o.Open = vent.Open(indoor, weather, v.Rule); o.Open == 0 {
		return
	}
	w := vent.Weather{Inside: indoor, Outside: weather.Temperature, Wind: weather.Wind * r.tables[room].wind}
	inlet, outlet := v.Inlet, v.Outlet
	inlet.Area *= quantity.SquareMetres(o.Open)
	outlet.Area *= quantity.SquareMetres(o.Open)
	switch {
	case inlet.Area > 0 && outlet.Area > 0:
		o.Flow += math.Abs(vent.Through(inlet, outlet, w).Flow)
	case inlet.Area > 0:
		o.Flow += vent.Alone(inlet, w)
	default:
		o.Flow += vent.Alone(outlet, w)
	}
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
