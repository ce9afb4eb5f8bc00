package warmth

import (
	"math"
	"strings"

	"suffice/sheet"
	"suffice/warmth/vent"
)

// An Hour is an hour that was lived: what it began with, what entered, what it left, and what it did.
type Hour struct {
	Before, After State
	In            *In
	Out           *Out
}

// A Told is a sheet that works one part of an hour again.
type Told struct {
	Sheet  string
	Part   string // name of the room; "" for all rooms together
	Inputs map[string]sheet.Value
}

// Tell explains an hour: vents of every room that has them, the air that all rooms come to together, the heat balance of every room, and moisture and
// fresh air of all. The sheets give what Step gave, to the last bit; temperatures within walls, and what a watt does to a room's air,
// are those of the network.
func (r *Rooms) Tell(h *Hour) (told []Told) {
	for i := range r.rooms {
		if r.tables[i].vents {
			told = append(told, r.tellVents(h, i))
		}
	}
	told = append(told, r.tellAir(h))
	var sums Sums
	sums.Add(r, h.Out)
	at := r.means(&sums)
	for i := range r.rooms {
		told = append(told, r.tellRoom(h, i, at))
	}
	return append(told, r.tellDamp(h))
}

func number(v float64) sheet.Value     { return sheet.Value{Number: v} }
func list(v ...float64) sheet.Value    { return sheet.Value{Kind: sheet.List, List: v} }
func names(list []string) sheet.Value  { return text(strings.Join(list, ", ")) }
func text(words string) sheet.Value    { return sheet.Value{Kind: sheet.Text, Text: words} }
func plain(name string) string         { return strings.ReplaceAll(name, ",", " ") }
func (r *Rooms) named(room int) string { return plain(r.design.Rooms[room].Name) }

func (r *Rooms) outdoor(h *Hour) float64 { return r.hours.Temperature[h.In.Hour] }

func (r *Rooms) tellVents(h *Hour, room int) Told {
	v := &r.design.Rooms[room].Vents
	in := map[string]sheet.Value{
		"indoor": number(float64(h.Before.Air[room])), "outdoor": number(r.outdoor(h)), "wind": number(0), "rain": number(0),
		"begin": number(float64(v.Rule.Begin)), "full": number(float64(v.Rule.Full)), "cooler": number(float64(v.Rule.Cooler)),
		"frost": number(float64(v.Rule.Frost)), "storm": number(v.Rule.Storm), "wet": number(float64(v.Rule.Wet)),
		"terrain": text(string(v.Terrain)), "fans": number(r.tables[room].fans[h.In.Hour%24]),
	}
	if r.hours.Wind != nil {
		in["wind"] = number(r.hours.Wind[h.In.Hour])
	}
	if r.hours.Rain != nil {
		in["rain"] = number(r.hours.Rain[h.In.Hour])
	}
	for name, o := range map[string]*vent.Opening{"inlet": &v.Inlet, "outlet": &v.Outlet} {
		for _, n := range openingNumbers() {
			in[name+"_"+n.name] = number(*n.at(o))
		}
	}
	return Told{"vents-hour", r.design.Rooms[room].Name, in}
}

// doorsOf puts the open doors of an hour into inputs.
func (r *Rooms) doorsOf(h *Hour, in map[string]sheet.Value) {
	m := &h.Out.meeting
	if m.doors == 0 {
		return
	}
	var from, to, g []float64
	for _, d := range m.pairs[:m.doors] {
		from, to, g = append(from, float64(d.a+1)), append(to, float64(d.b+1)), append(g, d.g)
	}
	in["door_from"], in["door_to"], in["door_conductance"] = list(from...), list(to...), list(g...)
}

func (r *Rooms) tellAir(h *Hour) Told {
	m, clock := &h.Out.meeting, h.In.Hour%24
	var places []string
	var answers, heat, cool []float64
	for p := range r.ports {
		answers = append(answers, r.answers[p][:r.ports]...)
		if p < r.rooms {
			places = append(places, r.named(p))
			heat, cool = append(heat, limit(r.tables[p].heat[clock], -never)), append(cool, limit(r.tables[p].cool[clock], never))
			continue
		}
		w := r.plan.windows[r.shutters[p-r.rooms].window]
		places = append(places, "shutter of "+plain(r.design.Rooms[w.room].Windows[w.index].Name))
	}
	in := map[string]sheet.Value{
		"places": names(places), "free": list(m.free[:r.ports]...), "answers": list(answers...), "conductance": list(m.g[:r.ports]...), "brings": list(m.gt[:r.ports]...),
		"heated_to": list(heat...), "cooled_to": list(cool...), "outdoor": number(r.outdoor(h)),
	}
	r.doorsOf(h, in)
	return Told{"air-hour", "", in}
}

// never is a temperature that no room comes to, degC: it stands where nothing heats or cools.
const never = 1000

func limit(v, without float64) float64 {
	if math.IsNaN(v) {
		return without
	}
	return v
}

// A way is one way of heat out of a room.
type way struct {
	name         string
	g, near, far float64 // W/K; degC at both ends
	keeps        float64 // W that a closed shutter keeps in
}

func (r *Rooms) tellRoom(h *Hour, room int, at means) Told {
	o, give, clock := &h.Out.Rooms[room], &h.In.Rooms[room], h.In.Hour%24
	var ways []string
	var g, near, far, keeps []float64
	for _, w := range r.ways(room, &at) {
		ways, g, near, far, keeps = append(ways, w.name), append(g, w.g), append(near, w.near), append(far, w.far), append(keeps, w.keeps)
	}
	stores, before := r.held(room, &h.Before)
	_, after := r.held(room, &h.After)
	in := map[string]sheet.Value{
		"ways": names(ways), "conductance": list(g...), "near": list(near...), "far": list(far...), "shutters_keep": list(keeps...),
		"sun": number(r.sunInto(room, at.inputs)), "gains_air": number(float64(give.Air) + r.tables[room].gain[clock]),
		"gains_faces": number(float64(give.Radiant) + r.tables[room].rays[clock]), "heating": number(float64(o.Heating)), "cooling": number(float64(o.Cooling)),
		"flow": number(o.Flow), "air_holds": number(r.carries), "air_after": number(float64(o.Air)), "outdoor": number(r.outdoor(h)),
		"stores": names(stores), "held_before": list(before...), "held_after": list(after...), "air": number(float64(o.Mean)), "faces": number(float64(o.Radiant)),
	}
	if beside, air := r.beside(h, room); len(beside) > 0 {
		in["doors"], in["doors_air"] = list(beside...), list(air...)
	}
	return Told{"room-hour", r.design.Rooms[room].Name, in}
}

// beside gives the conductance of each open door of a room, W/K, and the air behind it at the hour's end.
func (r *Rooms) beside(h *Hour, room int) (g, air []float64) {
	m := &h.Out.meeting
	for _, d := range m.pairs[:m.doors] {
		switch room {
		case d.a:
			g, air = append(g, d.g), append(air, m.at[d.b])
		case d.b:
			g, air = append(g, d.g), append(air, m.at[d.a])
		}
	}
	return g, air
}

// ways lists those of a room as Heats reckons them, in its order.
func (r *Rooms) ways(room int, at *means) (list []way) {
	inputs, nodes := at.inputs, at.nodes
	tied := func(name string, t tie) way {
		return way{name: plain(name), g: t.g, near: nodes[t.node], far: inputs[t.input]}
	}
	for _, w := range r.plan.walls {
		wall := &r.design.Rooms[w.room].Walls[w.index]
		switch {
		case w.tie >= 0 && w.room == room:
			list = append(list, tied(wall.Name, r.plan.ties[w.tie]))
		case w.buried != nil && w.room == room:
			g, near, far := w.buried.through(at.seen)
			list = append(list, way{name: plain(wall.Name), g: g, near: near, far: far})
		case w.joint >= 0 && w.room == room:
			j := r.plan.joints[w.joint]
			list = append(list, way{name: plain(wall.Name), g: j.g, near: nodes[j.from], far: nodes[j.to]})
		case w.joint >= 0 && wall.Other == room:
			j := r.plan.joints[w.joint]
			list = append(list, way{name: plain(wall.Name), g: j.g, near: nodes[j.to], far: nodes[j.from]})
		}
	}
	for k, w := range r.plan.windows {
		if w.room != room {
			continue
		}
		window := tied(r.design.Rooms[room].Windows[w.index].Name, r.plan.ties[w.tie])
		for p, shutter := range r.shutters {
			if shutter.window == k {
				window.keeps += inputs[r.house[2*r.rooms+p]]
			}
		}
		list = append(list, window)
	}
	return append(list, tied("leaks", r.plan.ties[r.plan.leaks[room]]))
}

// sunInto gives the sun that faces and panes of a room take up, W, as Heats adds it.
func (r *Rooms) sunInto(room int, inputs []float64) (watts float64) {
	for _, w := range r.plan.walls {
		if w.room == room {
			watts += inputs[w.sun]
		}
		if w.joint >= 0 && r.design.Rooms[w.room].Walls[w.index].Other == room {
			watts += inputs[w.behindSun]
		}
	}
	for _, w := range r.plan.windows {
		if w.room == room {
			watts += inputs[w.pane]
		}
	}
	return watts
}

// held gives what air and each wall of a room hold over 0 degC, Wh. A wall between two rooms belongs to the one that tells it.
func (r *Rooms) held(room int, s *State) (names []string, wh []float64) {
	held := r.model.StoredBy(s.Modes[:r.modes])
	names, wh = []string{"air and things"}, []float64{held[r.plan.airHeld[room]] / hourSeconds}
	for k := range r.plan.walls {
		w := &r.plan.walls[k]
		if w.room != room || w.buried != nil {
			continue
		}
		names, wh = append(names, plain(r.design.Rooms[room].Walls[w.index].Name)), append(wh, held[w.held]/hourSeconds)
	}
	return names, wh
}

func (r *Rooms) tellDamp(h *Hour) Told {
	var rooms []string
	var flow, give, carbon, face, vapour, stale, air []float64
	for i := range r.rooms {
		o, in := &h.Out.Rooms[i], &h.In.Rooms[i]
		rooms, flow, give, carbon = append(rooms, r.named(i)), append(flow, o.Flow), append(give, in.Vapour), append(carbon, in.Carbon)
		face, air, vapour, stale = append(face, float64(o.Face)), append(air, float64(o.Air)), append(vapour, h.Before.Vapour[i]), append(stale, h.Before.Carbon[i])
	}
	in := map[string]sheet.Value{
		"rooms": names(rooms), "volume": list(r.volume[:r.rooms]...), "leaks": list(r.damp.leaks[:r.rooms]...), "flow": list(flow...), "air_holds": number(r.carries),
		"carbon_before": list(stale...), "breathed_out": list(carbon...), "air": list(air...),
	}
	if r.damp.outside != nil {
		in["outdoor"], in["humidity"] = number(r.outdoor(h)), number(r.hours.Humidity[h.In.Hour])
		in["vapour_before"], in["given_off"], in["face"], in["settles"] = list(vapour...), list(give...), list(face...), list(r.damp.settles[:r.rooms]...)
	}
	r.doorsOf(h, in)
	return Told{"damp-hour", "", in}
}
