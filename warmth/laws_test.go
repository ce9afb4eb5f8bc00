package warmth

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/material"
	"suffice/quantity"
	"suffice/site"
	"suffice/site/sun"
	"suffice/site/weather"
	"suffice/warmth/fabric"
	"suffice/warmth/light"
	"suffice/warmth/vent"
)

// made is weather of so many days by a rule: temperature, light on the level (all diffuse).
func made(t testing.TB, days int, hour func(h int) (temperature, light float64)) *light.Outdoors {
	t.Helper()
	h := &weather.Hours{Place: site.Place{Latitude: 40, Longitude: 15, Clock: 1}}
	dates := make([]sun.Date, days)
	for d := range days {
		day := weather.DayOf(weather.DayNumber(2001, 1, 1) + d)
		h.Days = append(h.Days, day)
		dates[d] = sun.Date{Year: day.Year, Month: day.Month, Date: day.Date}
	}
	for i := range 24 * days {
		temperature, bright := hour(i)
		h.Temperature = append(h.Temperature, temperature)
		h.Diffuse = append(h.Diffuse, bright)
		h.Global = append(h.Global, bright)
		h.Beam = append(h.Beam, 0)
		h.Humidity = append(h.Humidity, 60)
		h.Wind = append(h.Wind, 2)
		h.Rain = append(h.Rain, 0)
	}
	out, err := light.NewOutdoors(h, sun.NewTrack(h.Place, dates), light.Options{Albedo: .2})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func prepared(t testing.TB, d *Design, sky *light.Outdoors) *Rooms {
	t.Helper()
	r, err := Prepare(d, sky)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func daily(h int) (temperature, light float64) {
	x := 2 * math.Pi * float64(h%24-9) / 24
	return 12 + 8*math.Sin(x) + 5*math.Sin(float64(h)/97), max(0, 500*math.Sin(x+math.Pi/6))
}

// drawn is a house of one to three rooms.
func drawn(t *rapid.T) *Design {
	number := func(low, high float64, what string) float64 { return rapid.Float64Range(low, high).Draw(t, what) }
	rooms := rapid.IntRange(1, 3).Draw(t, "rooms")
	d := &Design{Films: UsualFilms()}
	layers := func() (out []fabric.Layer) {
		for range rapid.IntRange(1, 3).Draw(t, "layers") {
			out = append(out, layer("l", quantity.Metres(number(.01, .3, "thick")), material.Conductivity(number(.1, 2, "lambda")),
				material.Density(number(10, 2000, "rho")), 1000))
		}
		return out
	}
	ten := quantity.Celsius(10)
	for i := range rooms {
		r := Room{Name: "r", Area: quantity.SquareMetres(number(8, 60, "area")), Height: 2.5, Contents: number(0, 2e4, "contents"), Infiltration: number(0, 2, "leaks"),
			Gains: []Gain{{Power: quantity.Watts(number(0, 400, "gain")), Radiant: number(0, 1, "radiant"), Hours: Always()}}}
		for k := range 3 {
			w := Wall{Name: "w", Area: quantity.SquareMetres(number(5, 40, "wall")), Role: Role(k), Faces: Air, Plane: upright(quantity.Degrees(90 * k)), Layers: layers(),
				OutsideAbsorptance: .6, OutsideEmissivity: .9, InsideAbsorptance: .5, InsideEmissivity: .9}
			switch {
			case k == 2:
				w.Faces, w.Ground = Earth, Ground{Fixed: &ten}
			case k == 1 && i > 0:
				w.Faces, w.Other = Neighbour, i-1
			case k == 1:
				w.Faces = Nothing
			}
			r.Walls = append(r.Walls, w)
		}
		win := suiteCase{windows: "south"}.glass()[0]
		win.Shutter = Shutter{Adds: material.Resistance(number(0, 1, "shutter")), Hours: Always(), Dark: true, Below: 14}
		r.Windows = []Window{win}
		if rapid.Bool().Draw(t, "machine") {
			r.Heating, r.Cooling = []Hold{{19, Always()}}, []Hold{{24, Always()}}
		}
		if rapid.Bool().Draw(t, "vents") {
			r.Vents = Vents{Inlet: vent.Opening{Area: .4, Height: .5, Tall: .5, Discharge: .6}, Outlet: vent.Opening{Area: .4, Height: 2.3, Tall: .3, Discharge: .6}, Rule: vent.Rule{Begin: 18, Full: 20, Frost: -20, Storm: 20, Wet: 50}, Terrain: vent.Country}
		}
		if i > 0 && rapid.Bool().Draw(t, "door") {
			r.Openings = []Opening{{To: i - 1, Area: 1.8, Tall: 2, Hours: Always()}}
		}
		r.Fans = []Fan{{Flow: number(0, 100, "fan"), Hours: Always()}}
		d.Rooms = append(d.Rooms, r)
	}
	return d
}

// Nothing is lost: what the stores gain is what entered less what left, each read by itself.
func TestHeatBalance(t *testing.T) {
	sky := made(t, 20, daily)
	rapid.Check(t, func(rt *rapid.T) {
		d := drawn(rt)
		r, err := Prepare(d, sky)
		if err != nil && strings.Contains(err.Error(), "ways of cooling that matter") {
			return // many thick walls of thin layers: refused with a sentence
		}
		if err != nil {
			rt.Fatal(err)
		}
		var s State
		var in In
		in.Rooms[0] = RoomIn{Air: 150, Radiant: 50}
		var sums Sums
		var out Out
		begin := r.Stored(&s)
		var came, went, moved float64
		comes := func(v quantity.Watts) { came, moved = came+float64(v), moved+math.Abs(float64(v)) }
		goes := func(v quantity.Watts) { went, moved = went+float64(v), moved+math.Abs(float64(v)) }
		for h := range 24 * 20 {
			in.Hour = h
			r.Step(&s, &in, &out)
			sums.Add(r, &out)
			comes(200)
			for i := range d.Rooms {
				o := &out.Rooms[i]
				comes(d.Rooms[i].Gains[0].Power + o.Heating)
				comes(o.Between)
				goes(o.Cooling)
				goes(o.Vented)
			}
		}
		for _, x := range r.Heats(&sums) {
			went += float64(x.Out)
			moved += math.Abs(float64(x.Out))
		}
		// Each heat is summed and rounded by its own size, so that what they leave is judged by all that moved, not by what is left of it.
		stored := float64(r.Stored(&s))
		moved += math.Abs(stored)
		check.Balance(rt, (stored+went)/moved, (float64(begin)+came)/moved, "heat stored and gone against heat at first and come, as shares of all heat that moved")
	})
}

// A machine without limit holds its temperature at every hour's end, and never works both ways.
func TestMachineHolds(t *testing.T) {
	sky := made(t, 20, daily)
	rapid.Check(t, func(rt *rapid.T) {
		d := drawn(rt)
		for i := range d.Rooms {
			d.Rooms[i].Heating, d.Rooms[i].Cooling = []Hold{{19, Always()}}, []Hold{{24, Always()}}
		}
		r, err := Prepare(d, sky)
		if err != nil {
			rt.Fatal(err)
		}
		var s State
		var out Out
		for h := range 24 * 20 {
			r.Step(&s, &In{Hour: h}, &out)
			for i := range d.Rooms {
				o := out.Rooms[i]
				if o.Air < 19-1e-9 || o.Air > 24+1e-9 {
					rt.Fatalf("hour %d, room %d ends at %v degC, held between 19 and 24", h, i, o.Air)
				}
				if o.Heating > 1e-6 && math.Abs(float64(o.Air)-19) > 1e-9 || o.Cooling > 1e-6 && math.Abs(float64(o.Air)-24) > 1e-9 {
					rt.Fatalf("hour %d, room %d: %v W of heating, %v W of cooling at %v degC", h, i, o.Heating, o.Cooling, o.Air)
				}
			}
		}
	})
}

// Two rooms alike are alike, joined or not, when all their modes are lived.
func TestTwins(t *testing.T) {
	c := usualCase()
	one := c.design()
	one.Rooms[0].Heating, one.Rooms[0].Cooling = nil, nil
	two := &Design{Rooms: []Room{one.Rooms[0], one.Rooms[0]}, Films: one.Films}
	two.Rooms[0].Openings = []Opening{{To: 1, Area: 2, Tall: 2, Hours: Always()}}
	sky := made(t, 10, daily)
	all := func(d *Design) *Rooms {
		r, err := prepare(d, sky, detail{})
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	a, b := all(one), all(two)
	sa, sb := a.Start(In{}), b.Start(In{})
	var oa, ob Out
	for h := range 240 {
		a.Step(&sa, &In{Hour: h}, &oa)
		b.Step(&sb, &In{Hour: h}, &ob)
		for i := range 2 {
			if d := math.Abs(float64(oa.Rooms[0].Mean - ob.Rooms[i].Mean)); d > 1e-6 {
				t.Fatalf("hour %d: alone %v degC, twin %d %v degC", h, oa.Rooms[0].Mean, i, ob.Rooms[i].Mean)
			}
		}
	}
}

// However strong the draught, the room comes near the air outside and never past it.
func TestDraughtNeverSwings(t *testing.T) {
	c := with(func(c *suiteCase) { c.floats, c.gain = true, 0 })
	sky := made(t, 3, func(int) (float64, float64) { return 5, 0 })
	for _, flow := range []float64{0, 1e2, 1e4, 1e6, 1e8} {
		d := c.design()
		d.Rooms[0].Fans = []Fan{{Flow: flow, Hours: Always()}}
		r := prepared(t, d, sky)
		s := r.warm(25)
		last := quantity.Celsius(25)
		var out Out
		for h := range 72 {
			r.Step(&s, &In{Hour: h}, &out)
			air := out.Rooms[0].Air
			if last > 6 && air > last+1e-6 { // below it a clear sky and the ground at 10 degC have their say
				t.Fatalf("%g m3/h, hour %d: the air rises from %v to %v degC while all outside is colder", flow, h, last, air)
			}
			if flow >= 1e6 && math.Abs(float64(air)-5) > .2 {
				t.Fatalf("%g m3/h, hour %d: %v degC inside, 5 outside", flow, h, air)
			}
			last = air
		}
	}
}

// warm gives a state in which every node has one temperature.
func (r *Rooms) warm(t float64) (s State) {
	for k, held := range r.model.Held {
		s.Modes[k] = held * t // as C-orthonormal modes see one temperature
	}
	for i := range r.rooms {
		s.Air[i] = quantity.Celsius(t)
	}
	return s
}

// Open vents bring a room nearer to the air outside, hour by hour.
func TestVentsHelp(t *testing.T) {
	c := with(func(c *suiteCase) { c.heavy, c.floats = true, true })
	sky := made(t, 30, daily)
	shut, open := c.design(), c.design()
	open.Rooms[0].Vents = Vents{Inlet: vent.Opening{Area: .4, Height: .5, Tall: .5, Discharge: .6}, Outlet: vent.Opening{Area: .4, Height: 2.3, Tall: .3, Discharge: .6}, Rule: vent.UsualRule(), Terrain: vent.Country}
	a, b := prepared(t, shut, sky), prepared(t, open, sky)
	sa, sb := a.Start(In{}), b.Start(In{})
	var oa, ob Out
	opened := 0
	for h := range 720 {
		a.Step(&sa, &In{Hour: h}, &oa)
		b.Step(&sb, &In{Hour: h}, &ob)
		if ob.Rooms[0].Open > 0 {
			opened++
		}
		if ob.Rooms[0].Mean > oa.Rooms[0].Mean+1e-6 {
			t.Fatalf("hour %d: %v degC with vents that only cool, %v without", h, ob.Rooms[0].Mean, oa.Rooms[0].Mean)
		}
	}
	if opened == 0 {
		t.Fatal("the vents never opened: the test tells nothing")
	}
}

// The start is where another year would end.
func TestStartIsPeriodic(t *testing.T) {
	sky := made(t, 365, daily)
	for _, c := range []suiteCase{with(func(c *suiteCase) { c.heavy, c.floats = true, true }), with(func(c *suiteCase) { c.heavy = true })} {
		r := prepared(t, c.design(), sky)
		s := r.Start(In{})
		end := s
		var out Out
		for h := range 8760 {
			r.Step(&end, &In{Hour: h}, &out)
		}
		for i := range r.modes {
			for y := range r.count {
				if d := math.Abs((end.Modes[i] - s.Modes[i]) * r.model.Out[y][i]); d > settled {
					t.Errorf("mode %d is %g K away after a year", i, d)
				}
			}
		}
	}
}

// Nothing is left on the heap by an hour.
func TestStepAllocatesNothing(t *testing.T) {
	r := prepared(t, usualCase().design(), made(t, 2, daily))
	var s State
	var out Out
	in := In{}
	if n := testing.AllocsPerRun(100, func() { r.Step(&s, &in, &out) }); n != 0 {
		t.Fatalf("%v allocations an hour", n)
	}
}

// The modes that are lived are few, a fifth of all at most, and tell what all of them would: rooms within 0.05 K rms over a year, heat by each way within a thousandth of itself.
func TestFewModes(t *testing.T) {
	sky := outdoors(t, light.Options{Albedo: .2})
	for _, d := range []*Design{
		with(func(c *suiteCase) { c.floats = true }).design(), with(func(c *suiteCase) { c.heavy, c.floats = true, true }).design(),
		usualCase().design(), with(func(c *suiteCase) { c.heavy = true }).design(), twoRooms(),
	} {
		all, err := prepare(d, sky, detail{})
		if err != nil {
			t.Fatal(err)
		}
		few := prepared(t, d, sky)
		a, f := yearOf(all), yearOf(few)
		var rms, heat float64
		for i := range d.Rooms {
			squares := 0.0
			for h, v := range a.means[i] {
				squares += (v - f.means[i][h]) * (v - f.means[i][h]) / 8760
			}
			rms = max(rms, math.Sqrt(squares))
		}
		var where string
		for i := range a.heats {
			if off := math.Abs(float64(f.heats[i].Out/a.heats[i].Out - 1)); off > heat && a.heats[i].Out != 0 {
				heat, where = off, a.heats[i].Name
			}
		}
		t.Logf("%d modes of %d: rms %.4f K, heats off by at most %.5f %% (%s), heating %.4f of %.4f MWh", few.modes, all.modes, rms, 100*heat, where, f.heating/1e6, a.heating/1e6)
		if 5*few.modes > all.modes {
			t.Errorf("%d modes of %d are hardly few", few.modes, all.modes)
		}
		if rms > .05 {
			t.Errorf("%d modes of %d are %.3f K rms away", few.modes, all.modes, rms)
		}
		if heat > .001 {
			t.Errorf("%d modes of %d: the heat by %q is off by %.3f %%", few.modes, all.modes, where, 100*heat)
		}
	}
}

// A lifeOf is a year of rooms: their air, their heats, what was heated.
type lifeOf struct {
	means   [MostRooms][]float64
	heats   []Heat
	heating float64
}

func yearOf(r *Rooms) (l lifeOf) {
	s := r.Start(In{})
	var out Out
	var sums Sums
	for h := range 8760 {
		r.Step(&s, &In{Hour: h}, &out)
		sums.Add(r, &out)
		for i := range r.rooms {
			l.means[i] = append(l.means[i], float64(out.Rooms[i].Mean))
			l.heating += float64(out.Rooms[i].Heating)
		}
	}
	l.heats = r.Heats(&sums)
	return l
}

// What an hour tells is what its modes say, at its end and in its mean.
func TestHourTellsItsModes(t *testing.T) {
	sky := made(t, 5, daily)
	rapid.Check(t, func(rt *rapid.T) {
		d := drawn(rt)
		r, err := Prepare(d, sky)
		if err != nil {
			rt.Fatal(err)
		}
		s := r.warm(rapid.Float64Range(5, 30).Draw(rt, "warm"))
		in := In{}
		in.Rooms[len(d.Rooms)-1] = RoomIn{Air: 150, Radiant: 50}
		var out Out
		seen := make([]float64, len(r.plan.sights))
		for h := range 24 * 5 {
			in.Hour = h
			r.Step(&s, &in, &out)
			var sums Sums
			sums.Add(r, &out)
			u := r.means(&sums).inputs
			r.model.See(seen, sums.mean[:r.modes], u)
			for i := range d.Rooms {
				o := &out.Rooms[i]
				check.Balance(rt, float64(o.Mean), seen[i], "mean of the air, degC")
				check.Balance(rt, float64(o.Radiant), seen[r.starOutput(i)], "mean of the faces, degC")
				check.Balance(rt, float64(o.Face), seen[r.coldOutput(i)], "mean of the coldest face, degC")
			}
			r.model.See(seen, s.Modes[:r.modes], u)
			for i := range d.Rooms {
				check.Balance(rt, float64(out.Rooms[i].Air), seen[i], "the air at the hour's end, degC")
			}
		}
	})
}

// Water is not lost either: what the air of all rooms gains is what came less what went and settled.
func TestWaterBalance(t *testing.T) {
	sky := made(t, 20, daily)
	rapid.Check(t, func(rt *rapid.T) {
		d := drawn(rt)
		r, err := Prepare(d, sky)
		if err != nil {
			rt.Fatal(err)
		}
		var s State
		in := In{}
		in.Rooms[0] = RoomIn{Vapour: rapid.Float64Range(0, 2).Draw(rt, "vapour")}
		var out Out
		var came, went, ends float64
		for h := range 24 * 20 {
			in.Hour = h
			r.Step(&s, &in, &out)
			came += in.Rooms[0].Vapour
			for i := range d.Rooms {
				o := &out.Rooms[i]
				came += o.Fresh * r.damp.outside[h]
				went += o.Fresh*o.Vapour + float64(o.Condensed)
			}
		}
		for i := range d.Rooms {
			ends += r.volume[i] * s.Vapour[i]
		}
		check.Balance(rt, came, went+ends, "water come against water gone and kept, kg")
	})
}

// Carbon dioxide settles where the breath of package vent says.
func TestBreathSettles(t *testing.T) {
	d := usualCase().design()
	sky := made(t, 10, daily)
	r := prepared(t, d, sky)
	s := r.Start(In{})
	in := In{}
	in.Rooms[0].Carbon = 2 * vent.Sitting
	var out Out
	for h := range 240 {
		in.Hour = h
		r.Step(&s, &in, &out)
	}
	want := vent.Breath{Volume: r.volume[0], Gives: 2 * vent.Sitting, Fresh: .5 * r.volume[0], Outside: vent.OutsideCarbon}.Settles()
	if got := out.Rooms[0].Carbon; math.Abs(got-want) > 1e-6*want {
		t.Fatalf("%v ppm, package vent says %v", got, want)
	}
}
