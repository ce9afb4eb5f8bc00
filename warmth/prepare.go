package warmth

import (
	"fmt"
	"math"

	"suffice/internal/reduce"
	"suffice/site/air"
	"suffice/site/weather"
	"suffice/warmth/ground"
	"suffice/warmth/light"
	"suffice/warmth/vent"
)

// hourSeconds is a step.
const hourSeconds = 3600

// MostShutters is how many windows of a house may have one.
const MostShutters = 16

// mostPorts is every place at which the hour itself decides what heat enters.
const mostPorts = MostRooms + MostShutters

// mostHouse is how many inputs the hour decides.
const mostHouse = 2*MostRooms + MostShutters

// mostReads is how much is read of an hour: ports at its end; means of them, of the stars and of the coldest faces.
const mostReads = 2*mostPorts + 2*MostRooms

// MostModes is how many ways of decay a house's rooms may have.
const MostModes = 256

// Rooms is a design made ready for a record of weather. It is read-only and may be shared.
type Rooms struct {
	Notes []string // what was assumed of the design, for the person

	design   *Design
	hours    *weather.Hours
	plan     *plan
	pressure float64 // kPa
	volume   [MostRooms]float64
	carries  float64 // J/m3K of air

	rooms, ports, modes int
	count               int // outputs of each hour
	shutters            []shutter
	tables              [MostRooms]table
	damp                damp

	model   *reduce.Model
	lived   lived
	house   []int                         // inputs that the hour decides: air and star of each room, then shutters
	columns []column                      // of each input
	answers [mostPorts][mostPorts]float64 // of each port to a watt at each, K by the end of the hour
}

// A table is what a room does by the clock.
type table struct {
	fans       [24]float64 // m3/s
	heat, cool [24]float64 // degC, NaN where none holds
	gain, rays [24]float64 // W to the air, to the faces
	heats      bool        // any of heat and cool
	vents      bool
	wind       float64 // at the vents for 1 m/s of the record
}

// A shutter is a window's, as a port: closed it takes away so many W/K between the glass and outside.
type shutter struct {
	window int // of the plan
	closed []bool
	less   float64
}

// A column is an input's value by hours; without values it is the same for all.
type column struct {
	values []float64
	always float64
}

func (c column) at(hour int) float64 {
	if c.values == nil {
		return c.always
	}
	return c.values[hour]
}

// Outputs are numbered: air of each room, then the ports of shutters, then radiant star, then coldest face.
func (r *Rooms) starOutput(room int) int { return r.ports + room }
func (r *Rooms) coldOutput(room int) int { return r.ports + r.rooms + room }

// Within is how far what is read of the rooms (air, radiant temperature, coldest face) may be off by what is left out, K rms, as package
// reduce tells it. Held in the tests to 0.05 K rms of the rooms and to 0.1 % of each yearly heat.
const within = 0.03

// houseSwing is what a house's own heat swings by, W, for finding what matters.
const houseSwing = 300

// Prepare makes a design ready for the weather and light of its place. The design must not change afterwards.
func Prepare(d *Design, sky *light.Outdoors) (*Rooms, error) { return prepare(d, sky, usual()) }

// A detail is how finely a design is computed.
type detail struct {
	within float64 // K: ways of cooling are left out as long as nothing is off by more, none with 0
	grid   ground.Grid
	modes  reduce.Options // of sections
}

func usual() detail { return detail{within: within, grid: ground.Fine(), modes: ground.UsualModes()} }

func prepare(d *Design, sky *light.Outdoors, in detail) (*Rooms, error) {
	if err := d.Faults(); err != nil {
		return nil, err
	}
	h := sky.Hours
	if h.Temperature == nil {
		return nil, fmt.Errorf("warmth: the record has no temperature: choose one that has")
	}
	r := &Rooms{design: d, hours: h, rooms: len(d.Rooms), pressure: air.Pressure(h.Place.Altitude)}
	r.carries = float64(vent.Carries(1, r.pressure))
	o, err := newOutside(d, sky)
	if err != nil {
		return nil, err
	}
	r.plan = planOf(d, r.pressure, o)
	r.tell()
	if err := r.addShutters(o); err != nil {
		return nil, err
	}
	r.see()
	if err := r.plan.dig(d, in); err != nil {
		return nil, err
	}
	if r.columns, err = o.columns(r.plan); err != nil {
		return nil, err
	}
	r.clocked()
	if r.model, err = r.plan.net.Reduce(reduce.Options{Within: in.within, Inputs: r.swings(), Watch: r.watch()}); err != nil {
		return nil, fmt.Errorf("warmth: %w", err)
	}
	if r.modes = r.model.Modes(); r.modes > MostModes {
		return nil, fmt.Errorf("warmth: the rooms have %d ways of cooling that matter: the most is %d, so tell alike rooms as one", r.modes, MostModes)
	}
	r.Notes = o.notes
	r.dampen()
	r.live()
	return r, nil
}

// swings gives how much each input goes up and down: the root mean square about its mean.
func (r *Rooms) swings() []float64 {
	swings := make([]float64, r.plan.inputs)
	for k, c := range r.columns {
		if n := float64(len(c.values)); n > 0 {
			var sum, squares float64
			for _, v := range c.values {
				sum += v
				squares += v * v
			}
			swings[k] = math.Sqrt(max(0, squares/n-sum/n*sum/n))
		}
	}
	for _, k := range r.house {
		swings[k] = houseSwing
	}
	return swings
}

// tell reads the clocks of the rooms.
func (r *Rooms) tell() {
	for i := range r.design.Rooms {
		room := &r.design.Rooms[i]
		t := &r.tables[i]
		r.volume[i] = float64(room.Area) * float64(room.Height)
		for h := range 24 {
			t.heat[h], t.cool[h] = math.NaN(), math.NaN()
			for _, x := range room.Heating {
				if x.Hours[h] && !(float64(x.At) <= t.heat[h]) {
					t.heat[h], t.heats = float64(x.At), true
				}
			}
			for _, x := range room.Cooling {
				if x.Hours[h] && !(float64(x.At) >= t.cool[h]) {
					t.cool[h], t.heats = float64(x.At), true
				}
			}
			for _, f := range room.Fans {
				if f.Hours[h] {
					t.fans[h] += f.Flow / 3600
				}
			}
			for _, g := range room.Gains {
				if g.Hours[h] {
					t.gain[h] += float64(g.Power) * (1 - g.Radiant)
					t.rays[h] += float64(g.Power) * g.Radiant
				}
			}
		}
		t.vents = room.Vents.Inlet.Area > 0 || room.Vents.Outlet.Area > 0
		if t.vents {
			t.wind = room.Vents.windy()
		}
	}
}

// clocked makes the gains by the clock columns, beside which the hour's own are put.
func (r *Rooms) clocked() {
	hours := 24 * len(r.hours.Days)
	for i := range r.rooms {
		air, rays := make([]float64, hours), make([]float64, hours)
		for h := range hours {
			air[h], rays[h] = r.tables[i].gain[h%24], r.tables[i].rays[h%24]
		}
		r.columns[r.plan.airHeat[i]].values, r.columns[r.plan.starIn[i]].values = air, rays
	}
}

// addShutters gives every window with a shutter a port.
func (r *Rooms) addShutters(o *outside) error {
	for k := range r.plan.windows {
		w := &r.plan.windows[k]
		s := r.design.Rooms[w.room].Windows[w.index].Shutter
		if s.Adds <= 0 {
			continue
		}
		r.shutters = append(r.shutters, shutter{window: k, closed: o.closed[w.room][w.index], less: w.bare - w.shut})
	}
	if len(r.shutters) > MostShutters {
		return fmt.Errorf("warmth: %d windows have shutters: the most is %d, so put alike windows of a room together", len(r.shutters), MostShutters)
	}
	r.ports = r.rooms + len(r.shutters)
	r.house = append(append(r.house, r.plan.airHeat...), r.plan.starIn...)
	for _, s := range r.shutters {
		w := r.plan.windows[s.window]
		r.house = append(r.house, r.plan.heat(r.design.Rooms[w.room].Windows[w.index].Name+", shutter", w.inside))
	}
	return nil
}

// see says what is read: in each hour the air of each room, the ports of shutters, radiant stars and coldest faces; beside them, for
// sums only, the inside of every wall and both ends of every way of heat.
func (r *Rooms) see() {
	p := r.plan
	for i, node := range p.air {
		p.see(r.design.Rooms[i].Name+", air", node)
	}
	for _, s := range r.shutters {
		p.see(r.design.Rooms[p.windows[s.window].room].Name+", glass", p.windows[s.window].inside)
	}
	for i, node := range p.star {
		p.see(r.design.Rooms[i].Name+", faces", node)
	}
	for i := range p.air {
		r.count = 1 + p.see(r.design.Rooms[i].Name+", coldest face", r.coldest(i))
	}
	for _, t := range p.ties {
		p.ensure(t.node)
	}
	for _, w := range p.walls {
		if w.buried != nil {
			continue
		}
		p.ensure(w.inside)
		if w.joint >= 0 {
			p.ensure(p.joints[w.joint].from)
			p.ensure(p.joints[w.joint].to)
		}
	}
}

// watch says how much an error of what is read counts in the hour. What damp settles on and what a shutter covers matter less than what people feel;
// what only sums are made of has its yearly heat exact in any case.
func (r *Rooms) watch() []float64 {
	counts := make([]float64, r.plan.net.Outputs())
	for y := range r.count {
		counts[y] = 1
		if y >= r.rooms && y < r.ports || y >= r.coldOutput(0) {
			counts[y] = lesser
		}
	}
	return counts
}

// lesser is what a kelvin counts of a face that is not felt; own choice.
const lesser = 0.3

// coldest gives the face of a room that a cold outside cools most, for damp to settle on. Faces drawn in a section are left out: they follow the earth.
func (r *Rooms) coldest(room int) int {
	node, most := r.plan.star[room], -1.0
	loses := func(at int, g, area float64) {
		if area > 0 && g/area > most {
			node, most = at, g/area
		}
	}
	for _, w := range r.plan.windows {
		if w.room == room {
			loses(w.inside, w.bare, w.area)
		}
	}
	for _, w := range r.plan.walls {
		if wall := &r.design.Rooms[w.room].Walls[w.index]; w.room == room && w.outer >= 0 {
			loses(w.inside, wall.through(), 1)
		}
	}
	return node
}
