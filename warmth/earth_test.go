package warmth

import (
	"math"
	"testing"

	"suffice/material"
	"suffice/quantity"
	"suffice/soil"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
)

// Through a year a floor on the ground gives what iso13370 says: its resistance in the mean, and month by month for a room that never changes.
func TestSlabGivesTheStandardsYear(t *testing.T) {
	sky := made(t, 365, func(h int) (float64, float64) {
		return 10 - 8*math.Cos(2*math.Pi*(float64(h)/24-15)/365), 0
	})
	d := with(func(c *suiteCase) { c.heavy, c.gain = true, 0 }).design()
	room := &d.Rooms[0]
	room.Heating, room.Cooling = []Hold{{20, Always()}}, []Hold{{20, Always()}}
	floor := &room.Walls[5]
	clay := soil.Kinds()[0]
	resists := float64((fabric.Element{Layers: floor.Layers[:1]}).Resistance())
	slab := ground.Floor{Area: 48, Perimeter: 28, Wall: .3, Ground: clay, Resists: resists, Inside: ground.InsideDown, Outside: ground.Outside}
	floor.Layers, floor.Ground = floor.Layers[:1], Ground{Slab: &slab}
	r := prepared(t, d, sky)
	s := r.Start(In{})
	var out Out
	var months [12]float64
	var faces float64 // K h of the floor's face over the air outside's mean, times hours
	year := Sums{}
	for m := range 12 {
		var month Sums
		for h := range 730 {
			r.Step(&s, &In{Hour: 730*m + h}, &out)
			month.Add(r, &out)
			year.Add(r, &out)
		}
		for _, x := range r.Heats(&month) {
			if x.Name == "floor" {
				months[m] = float64(x.Out) / 730
			}
		}
	}
	nodes := r.means(&year).nodes
	faces = nodes[r.plan.walls[5].inside]/8760 - 10
	var mean float64
	low, high := math.Inf(1), math.Inf(-1)
	for _, w := range months {
		mean += w / 12
		low, high = min(low, w), max(high, w)
	}
	// The face stands for the room less its film: U without the film.
	want := 48 * faces / (1/slab.On() - slab.Inside)
	if math.Abs(mean-want) > .01*want {
		t.Errorf("the floor loses %.1f W through the year, the standard's resistance gives %.1f", mean, want)
	}
	if high-low < .1*mean {
		t.Errorf("the floor's loss hardly swings: %.1f to %.1f W", low, high)
	}
	under, climate := virtual(&slab, r.hours), slabClimate(r.hours)
	climate.InsideMean = 20
	for m := range 12 {
		day := (float64(m) + .5) * 365 / 12
		got, want := 48*slab.On()*(20-under(day)), slab.YearlyOn().Flow(climate, month(day))
		if math.Abs(got-want) > 1e-9*math.Abs(want) {
			t.Errorf("month %d: %.3f W from a room at 20 degC, iso13370 gives %.3f", m+1, got, want)
		}
	}
}

// A shutter closed in the dark keeps a room warmer, and only where it adds something.
func TestShutterKeepsWarm(t *testing.T) {
	sky := made(t, 30, daily)
	coldest := func(adds float64) quantity.Celsius {
		d := with(func(c *suiteCase) { c.floats = true }).design()
		for k := range d.Rooms[0].Windows {
			d.Rooms[0].Windows[k].Shutter = Shutter{Hours: Always(), Dark: true, Below: 50}
			d.Rooms[0].Windows[k].Shutter.Adds += material.Resistance(adds)
		}
		r := prepared(t, d, sky)
		s := r.Start(In{})
		low := quantity.Celsius(99)
		var out Out
		for h := range 720 {
			r.Step(&s, &In{Hour: h}, &out)
			low = min(low, out.Rooms[0].Mean)
		}
		return low
	}
	none, thin, thick := coldest(0), coldest(.2), coldest(2)
	if !(none+.1 < thin && thin+.1 < thick) {
		t.Errorf("coldest without shutters %.2f degC, with thin ones %.2f, with thick ones %.2f: each should be warmer", none, thin, thick)
	}
}
