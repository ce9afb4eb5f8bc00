package warmth

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"suffice/site/air"
	"suffice/site/weather"
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

	count, rooms, ports, modes int // count of outputs
	shutters                   []shutter
	tables                     [MostRooms]table
	damp                       damp

	decay, rest, lasts []float64   // of each mode: e^−λt, share of its start in its mean, and of its push
	house              []int       // inputs that the hour decides: air and star of each room, then shutters
	pushes             [][]float64 // of each of them, W to each mode's rise
	read               [][]float64 // of each output, its share of each mode
	given              [][]float64 // of each output, K for a watt of each house input, at once
	answers            [mostPorts][mostPorts]float64

	rows    []float64 // of each hour: push of the weather to each mode, then what it gives each output at once
	stride  int
	columns []column // of each input
	storing *storing
	full    *modes
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

// Prepare makes a design ready for the weather and light of its place. The design must not change afterwards.
func Prepare(d *Design, sky *light.Outdoors) (*Rooms, error) { return prepare(d, sky, faint) }

// prepare follows at once the modes that matter less than so many K.
func prepare(d *Design, sky *light.Outdoors, faint float64) (*Rooms, error) {
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
	if r.storing, err = r.plan.storing(); err != nil {
		return nil, fmt.Errorf("warmth: %w", err)
	}
	if r.full, err = r.storing.modes(); err != nil {
		return nil, fmt.Errorf("warmth: %w", err)
	}
	if r.columns, err = o.columns(r.plan); err != nil {
		return nil, err
	}
	r.clocked()
	r.thin(faint)
	if r.modes = len(r.full.rate); r.modes > MostModes {
		return nil, fmt.Errorf("warmth: the rooms have %d ways of cooling that matter: the most is %d, so tell alike rooms as one", r.modes, MostModes)
	}
	r.Notes = o.notes
	r.dampen()
	r.project()
	return r, nil
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
		in := r.plan.input()
		r.plan.heat(r.plan.windows[s.window].inside, in, 1)
		r.house = append(r.house, in)
	}
	return nil
}

// outputs gives the node of each.
func (r *Rooms) outputs() (nodes []int) {
	nodes = append(nodes, r.plan.air...)
	for _, s := range r.shutters {
		nodes = append(nodes, r.plan.windows[s.window].inside)
	}
	nodes = append(nodes, r.plan.star...)
	for i := range r.rooms {
		nodes = append(nodes, r.coldest(i))
	}
	return nodes
}

// coldest gives the face of a room that a cold outside cools most, for damp to settle on.
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
		if wall := &r.design.Rooms[w.room].Walls[w.index]; w.room == room && w.tie >= 0 {
			loses(w.inside, wall.through(), 1)
		}
	}
	return node
}

// project puts all that the weather drives on the modes, hour by hour.
func (r *Rooms) project() {
	m, n := r.full, r.modes
	nodes := r.outputs()
	r.count = len(nodes)
	for _, rate := range m.rate {
		x := rate * hourSeconds
		rise, mean, rest := 1.0, 0.5, 1.0 // in hours, at no decay
		if x > 0 {
			rise = -math.Expm1(-x) / x
			rest = rise
			mean = (1 - rise) / x
		}
		r.decay = append(r.decay, math.Exp(-x))
		r.rest = append(r.rest, rest)
		r.lasts = append(r.lasts, mean/rise)
	}
	push := mat.NewDense(n, r.plan.inputs, nil) // rise of a mode by the end of the hour
	for i := range n {
		for k := range r.plan.inputs {
			push.Set(i, k, m.in.At(i, k)*r.rest[i]*hourSeconds)
		}
	}
	var reads mat.Dense
	reads.Mul(pick(r.storing.of, nodes, count(len(r.storing.capacity))), m.out)
	straight := pick(r.storing.straight, nodes, count(r.plan.inputs))
	for y := range nodes {
		r.read = append(r.read, append([]float64(nil), reads.RawRowView(y)...))
		row := make([]float64, len(r.house))
		for v, k := range r.house {
			row[v] = straight.At(y, k)
		}
		r.given = append(r.given, row)
	}
	for _, k := range r.house {
		r.pushes = append(r.pushes, mat.Col(nil, k, push))
	}
	r.answer()
	r.rowsOf(push, straight)
}

// answer gives what a watt at each port does to the temperature of each by the end of the hour.
func (r *Rooms) answer() {
	for p := range r.ports {
		for q := range r.ports {
			v := r.portInput(q)
			sum := r.given[p][v]
			for i, share := range r.read[p] {
				sum += share * r.pushes[v][i]
			}
			r.answers[p][q] = sum
		}
	}
}

// portInput gives the house input that is a port's heat.
func (r *Rooms) portInput(port int) int {
	if port < r.rooms {
		return port
	}
	return r.rooms + port
}

// rowsOf sums the weather's inputs hour by hour.
func (r *Rooms) rowsOf(push, straight *mat.Dense) {
	r.stride = r.modes + r.count
	hours := 24 * len(r.hours.Days)
	r.rows = make([]float64, hours*r.stride)
	for k := range r.plan.inputs {
		shares := append(mat.Col(nil, k, push), mat.Col(nil, k, straight)...)
		for h := range hours {
			v := r.columns[k].at(h)
			if v == 0 {
				continue
			}
			row := r.rows[h*r.stride : (h+1)*r.stride]
			for i, share := range shares {
				row[i] += share * v
			}
		}
	}
}
