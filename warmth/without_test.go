package warmth

import (
	"math"
	"reflect"
	"testing"

	"suffice/glass"
	"suffice/quantity"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
	"suffice/warmth/vent"
)

// measured is a room with every measure: stone inside cork, earth behind, south glass under a roof, shutters, vents.
func measured() *Design {
	d := with(func(c *suiteCase) { c.heavy, c.floats, c.gain = true, true, 0 }).design()
	r := &d.Rooms[0]
	stone, cork := layer("stone", .3, 1.7, 2000, 1000), layer("cork", .1, .04, 110, 1560)
	for k := range r.Walls {
		w := &r.Walls[k]
		w.Layers = []fabric.Layer{stone, cork}
	}
	deep := quantity.Celsius(12)
	north := &r.Walls[0]
	for k := range r.Walls {
		if w := &r.Walls[k]; w.Role == Upright && w.Plane.Azimuth == 0 {
			north = w
		}
	}
	north.Faces, north.Ground, north.Plane = Earth, Ground{Fixed: &deep, Behind: .5}, upright(0)
	for k := range r.Windows {
		w := &r.Windows[k]
		w.Shade.Overhang = glass.Overhang{Depth: 1, Gap: .1, Left: 1, Right: 1}
		w.Shutter = Shutter{Adds: .5, Hours: Always(), Dark: true, Below: 15}
	}
	r.Vents = Vents{Inlet: vent.Opening{Area: .4, Height: .5, Tall: .5, Discharge: .6}, Outlet: vent.Opening{Area: .4, Height: 2.3, Tall: .3, Discharge: .6}, Rule: vent.UsualRule(), Terrain: vent.Country}
	return d
}

// course lives a design and gives mean and mean daily range of its air over the last ten of thirty days.
func course(t *testing.T, d *Design, hour func(h int) (temperature, light float64)) (mean, swing float64) {
	t.Helper()
	const days = 30
	r := prepared(t, d, made(t, days, hour))
	s := r.Start(In{})
	var out Out
	low, high := math.Inf(1), math.Inf(-1)
	for h := range 24 * days {
		r.Step(&s, &In{Hour: h}, &out)
		if h < 24*(days-10) {
			continue
		}
		at := float64(out.Rooms[0].Mean)
		mean += at / 240
		low, high = min(low, at), max(high, at)
		if h%24 == 23 {
			swing += (high - low) / 10
			low, high = math.Inf(1), math.Inf(-1)
		}
	}
	return mean, swing
}

// tells is four times what the modes left out may move a room, K rms (TestFewModes).
const tells = 4 * .05

// Each measure does what it is built for: in weather in which its sign is known, the room without it is worse by what tells.
func TestMeasuresDoWhatTheyAreBuiltFor(t *testing.T) {
	noon := func(h int) float64 { return max(0, math.Sin(2*math.Pi*float64(h%24-6)/24)) }
	cold := func(h int) (float64, float64) { return -2, 0 }
	bright := func(h int) (float64, float64) { return 2 + 4*noon(h), 350 * noon(h) }
	summer := func(h int) (float64, float64) { return 20 + 8*noon(h), 450 * noon(h) }
	for m, c := range map[Measure]struct {
		says    string
		weather func(h int) (float64, float64)
		worse   func(mean, swing, meanWithout, swingWithout float64) float64 // K, above 0 where the room without it is worse
	}{
		Mass:        {"swings more", bright, func(_, s, _, w float64) float64 { return w - s }},
		Insulation:  {"is colder in the sun of winter", bright, func(m, _, w, _ float64) float64 { return m - w }},
		EarthBehind: {"is colder in frost", cold, func(m, _, w, _ float64) float64 { return m - w }},
		Panes:       {"is colder in the sun of winter", bright, func(m, _, w, _ float64) float64 { return m - w }},
		Overhang:    {"is hotter in summer", summer, func(m, _, w, _ float64) float64 { return w - m }},
		Shutters:    {"is colder in frost", cold, func(m, _, w, _ float64) float64 { return m - w }},
		OpenVents:   {"is hotter in summer", summer, func(m, _, w, _ float64) float64 { return w - m }},
	} {
		d := measured()
		if m != OpenVents {
			d.Rooms[0].Vents = Vents{} // which hide what the others do
		}
		without, taken := d.Without(m)
		if taken == 0 {
			t.Errorf("%s: nothing was left out", m)
			continue
		}
		mean, swing := course(t, d, c.weather)
		meanWithout, swingWithout := course(t, &without, c.weather)
		t.Logf("%-10s with: mean %.2f degC, swing %.2f K; without: %.2f degC, %.2f K", m, mean, swing, meanWithout, swingWithout)
		if by := c.worse(mean, swing, meanWithout, swingWithout); by < tells {
			t.Errorf("%s: the room without it %s by %.3f K, want %g K at least", m, c.says, by, tells)
		}
	}
}

// Leaving out changes a copy alone, and what is left out is gone: once more there is nothing to take.
func TestWithoutIsWithout(t *testing.T) {
	for m := range Measure(Measures) {
		d, kept := measured(), measured()
		if m == Section {
			sky := made(t, 2, daily)
			d, kept = dugRoom(sky), dugRoom(sky)
		}
		without, taken := d.Without(m)
		if !reflect.DeepEqual(d, kept) {
			t.Errorf("%s: the design itself was changed", m)
		}
		if err := without.Faults(); err != nil {
			t.Errorf("%s: the house without it is refused: %v", m, err)
		}
		if _, again := without.Without(m); taken == 0 || again != 0 {
			t.Errorf("%s: taken from %d parts, then from %d; want some, then none", m, taken, again)
		}
		if m.String() == "" || m.Says() == "" {
			t.Errorf("measure %d has no words", m)
		}
	}
}

// Without its mass a wall lets through what it did; without glass the room's faces have the area they had; without insulation a
// floor on the ground is reckoned with the layers it still has.
func TestWithoutKeepsTheRest(t *testing.T) {
	d := measured()
	slab := &ground.Floor{Area: 48, Perimeter: 28, Wall: .3, Resists: 2.7, Inside: ground.InsideDown, Outside: ground.Outside}
	for k := range d.Rooms[0].Walls {
		if w := &d.Rooms[0].Walls[k]; w.Role == Floor {
			w.Faces, w.Ground = Earth, Ground{Slab: slab}
		}
	}
	light, _ := d.Without(Mass)
	area := func(r *Room) (sum float64) {
		for k := range r.Walls {
			sum += float64(r.Walls[k].Area)
		}
		for k := range r.Windows {
			sum += float64(r.Windows[k].Area)
		}
		return sum
	}
	for k := range light.Rooms[0].Walls {
		was, is := d.Rooms[0].Walls[k].Layers, light.Rooms[0].Walls[k].Layers
		for i := range was {
			if was[i].Resistance() != is[i].Resistance() {
				t.Errorf("%s resists %g m2K/W without its mass, %g with it", was[i].Name, float64(is[i].Resistance()), float64(was[i].Resistance()))
			}
			if was[i].Name == "stone" && math.Abs(is[i].Areal()-lightBoard) > 1e-9*lightBoard || was[i].Name == "cork" && is[i] != was[i] {
				t.Errorf("%s holds %g J/m2K without its mass", was[i].Name, is[i].Areal())
			}
		}
	}
	walled, _ := d.Without(Panes)
	if was, is := area(&d.Rooms[0]), area(&walled.Rooms[0]); math.Abs(was-is) > 1e-9*was || len(walled.Rooms[0].Windows) > 0 {
		t.Errorf("%g m2 of faces with the glass walled up, %g before", is, was)
	}
	bare, _ := d.Without(Insulation)
	for k := range bare.Rooms[0].Walls {
		w := &bare.Rooms[0].Walls[k]
		if len(w.Layers) != 1 || w.Layers[0].Name != "stone" {
			t.Errorf("%d layers are left, want the stone alone", len(w.Layers))
		}
		if w.Role == Floor && math.Abs(w.Ground.Slab.Resists-.3/1.7) > 1e-12 {
			t.Errorf("the floor resists %g m2K/W, want 0.3 m over 1.7 W/mK", w.Ground.Slab.Resists)
		}
	}
	if slab.Resists != 2.7 {
		t.Error("the floor of the house itself was changed")
	}
}
