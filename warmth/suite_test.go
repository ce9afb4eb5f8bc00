package warmth

import (
	"testing"

	"suffice/glass"
	"suffice/material"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/warmth/fabric"
	"suffice/warmth/light"
)

const denver = "../site/weather/files/testdata/725650TYA_denver-intl-ap.csv.gz"

// outdoors reads a record and lights it.
func outdoors(t testing.TB, o light.Options) *light.Outdoors {
	t.Helper()
	r, err := files.Open(denver, files.Options{})
	if err != nil {
		t.Fatal(err)
	}
	h, _, err := weather.Complete(r, weather.Options{})
	if err != nil {
		t.Fatal(err)
	}
	days := make([]sun.Date, len(h.Days))
	for i, d := range h.Days {
		days[i] = sun.Date{Year: d.Year, Month: d.Month, Date: d.Date}
	}
	out, err := light.NewOutdoors(h, sun.NewTrack(h.Place, days), o)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// A suiteCase is a building of the fabric suite (std140-2020) by what sets it apart.
type suiteCase struct {
	heavy           bool
	outside, inside [2]float64 // absorptance, emissivity
	infiltration    float64
	gain            quantity.Watts
	windows         string // "south", "sides", "panel", ""
	shaded          bool
	heat, cool      quantity.Celsius
	setback, floats bool
}

func layer(name string, thick quantity.Metres, lambda material.Conductivity, rho material.Density, c material.Capacity) fabric.Layer {
	return fabric.Layer{Name: name, Thickness: thick, Conductivity: lambda, Density: rho, Capacity: c}
}

func usualCase() suiteCase {
	return suiteCase{outside: [2]float64{.6, .9}, inside: [2]float64{.6, .9}, infiltration: .5, gain: 200, windows: "south", heat: 20, cool: 27}
}

func (c suiteCase) layers() (wall, roof, floor []fabric.Layer) {
	siding := layer("wood siding", .009, .14, 530, 900)
	roof = []fabric.Layer{layer("plasterboard", .010, .16, 950, 840), layer("quilt", .1118, .04, 12, 840), layer("deck", .019, .14, 530, 900)}
	if c.heavy {
		return []fabric.Layer{layer("block", .1, .51, 1400, 1000), layer("foam", .0615, .04, 10, 1400), siding}, roof,
			[]fabric.Layer{layer("slab", .08, 1.13, 1400, 1000), layer("insulation", 1.007, .04, 0, 0)}
	}
	return []fabric.Layer{layer("plasterboard", .012, .16, 950, 840), layer("quilt", .066, .04, 12, 840), siding}, roof,
		[]fabric.Layer{layer("timber", .025, .14, 650, 1200), layer("insulation", 1.003, .04, 0, 0)}
}

func upright(azimuth quantity.Degrees) sun.Plane { return sun.Plane{Slope: 90, Azimuth: azimuth} }

// design builds the case.
func (c suiteCase) design() *Design {
	wall, roof, floor := c.layers()
	ten := quantity.Celsius(10)
	side := func(name string, area quantity.SquareMetres, azimuth quantity.Degrees) Wall {
		return Wall{Name: name, Area: area, Faces: Air, Plane: upright(azimuth), Layers: wall,
			OutsideAbsorptance: c.outside[0], OutsideEmissivity: c.outside[1], InsideAbsorptance: c.inside[0], InsideEmissivity: c.inside[1]}
	}
	room := Room{Name: "zone", Area: 48, Height: 2.7, Wide: 8, Infiltration: c.infiltration, Gains: []Gain{{Name: "inside", Power: c.gain, Radiant: .6, Hours: Always()}}}
	areas := [4]quantity.SquareMetres{21.6, 16.2, 21.6, 16.2}
	switch c.windows {
	case "south", "panel":
		areas[2] -= 12
	case "sides":
		areas[1] -= 6
		areas[3] -= 6
	}
	for i, name := range []string{"north", "east", "south", "west"} {
		room.Walls = append(room.Walls, side(name, areas[i], quantity.Degrees(90*i)))
	}
	top := side("roof", 48, 0)
	top.Plane, top.Layers, top.Role = sun.Plane{}, roof, Roof
	under := side("floor", 48, 0)
	under.Faces, under.Layers, under.Role, under.Ground = Earth, floor, Floor, Ground{Fixed: &ten}
	room.Walls = append(room.Walls, top, under)
	if c.windows == "panel" {
		panel := side("panel", 12, 180)
		panel.Layers = []fabric.Layer{{Name: "panel", Gap: 0.165}} // panes and gap of the real windows, nothing stored
		room.Walls = append(room.Walls, panel)
	}
	room.Windows = c.glass()
	if !c.floats {
		room.Heating, room.Cooling = []Hold{{At: c.heat, Hours: Always()}}, []Hold{{At: c.cool, Hours: Always()}}
		if c.setback {
			day := [24]bool{}
			for h := 7; h < 23; h++ {
				day[h] = true
			}
			room.Heating = []Hold{{At: 10, Hours: Always()}, {At: c.heat, Hours: day}}
		}
	}
	return &Design{Rooms: []Room{room}, Films: UsualFilms()}
}

// suiteGap is the air between panes of the suite's windows: 12 mm, unlike by 20 K at 10 degC.
func suiteGap() material.Transmittance {
	return glass.Gap{Width: 12, Mean: 10, Difference: 20, Emissivities: [2]float64{.84, .84}}.Conductance()
}

func (c suiteCase) glass() (windows []Window) {
	pane := glass.Pane{Thickness: 3.048, Index: glass.GlassIndex, Conductivity: 1, Coating: glass.Coating{Transmitted: .834, Front: .075, Back: .075}}
	window := func(name string, azimuth quantity.Degrees, along quantity.Metres) Window {
		w := Window{Name: name, Area: 6, Plane: upright(azimuth), Glazing: glass.Alike(2, pane), Along: along, Sill: .2,
			Shade: glass.Shade{Width: 3, Height: 2}, Emissivity: .84, Outer: .84}
		w.Gaps[0] = suiteGap()
		return w
	}
	switch c.windows {
	case "south":
		left, right := window("east one", 180, .5), window("west one", 180, 4.5)
		if c.shaded {
			left.Shade.Overhang = glass.Overhang{Depth: 1, Gap: .5, Left: .5, Right: 4.5}
			right.Shade.Overhang = glass.Overhang{Depth: 1, Gap: .5, Left: 4.5, Right: .5}
		}
		return []Window{left, right}
	case "sides":
		windows = []Window{window("east", 90, 1.5), window("west", 270, 1.5)}
		if c.shaded {
			for i := range windows {
				windows[i].Shade.Overhang = glass.Overhang{Depth: 1, Gap: .5}
				fin := glass.Fin{Depth: 1, Above: .5, Below: .2}
				windows[i].Shade.Left, windows[i].Shade.Right = fin, fin
			}
		}
	}
	return windows
}

// A result is a year of a case: MWh, kW, degC.
type result struct{ heating, cooling, peakHeating, peakCooling, max, min, mean float64 }

func live(t testing.TB, d *Design, sky *light.Outdoors) (r result) {
	t.Helper()
	rooms, err := Prepare(d, sky)
	if err != nil {
		t.Fatal(err)
	}
	var in In
	s := rooms.Start(in)
	var out Out
	r.max, r.min = -99, 99
	for h := range 8760 {
		in.Hour = h
		rooms.Step(&s, &in, &out)
		o := out.Rooms[0]
		r.heating += float64(o.Heating) / 1e6
		r.cooling += float64(o.Cooling) / 1e6
		r.peakHeating = max(r.peakHeating, float64(o.Heating)/1000)
		r.peakCooling = max(r.peakCooling, float64(o.Cooling)/1000)
		r.max, r.min = max(r.max, float64(o.Mean)), min(r.min, float64(o.Mean))
		r.mean += float64(o.Mean) / 8760
	}
	return r
}

func TestTry(t *testing.T) {
	sky := outdoors(t, light.Options{Albedo: .2})
	for _, x := range []struct {
		name string
		c    suiteCase
	}{
		{"600", usualCase()},
		{"900", with(func(c *suiteCase) { c.heavy = true })},
		{"600FF", with(func(c *suiteCase) { c.floats = true })},
		{"900FF", with(func(c *suiteCase) { c.heavy, c.floats = true, true })},
	} {
		t.Logf("%s %+.3f", x.name, live(t, x.c.design(), sky))
	}
}

func with(change func(*suiteCase)) suiteCase {
	c := usualCase()
	change(&c)
	return c
}
