package warmth

import (
	"math"
	"testing"
	"time"

	"suffice/warmth/ground"
	"suffice/warmth/light"
	"suffice/warmth/vent"
)

// BenchmarkYear lives a year of the suite's heavy case; BenchmarkPrepare makes it ready.
func BenchmarkYear(b *testing.B) {
	r := prepared(b, with(func(c *suiteCase) { c.heavy = true }).design(), outdoors(b, light.Options{Albedo: .2}))
	liveYears(b, r)
}

// liveYears lives one year after another, and tells the fastest beside the mean: on a busy machine only that one can be compared.
func liveYears(b *testing.B, r *Rooms) {
	s := r.warm(beginWarm)
	var in In
	var out Out
	least := math.Inf(1)
	b.ReportAllocs()
	for b.Loop() {
		begin := time.Now()
		for h := range 8760 {
			in.Hour = h
			r.Step(&s, &in, &out)
		}
		least = min(least, float64(time.Since(begin)))
	}
	b.ReportMetric(float64(r.modes), "modes")
	b.ReportMetric(least, "ns-least")
}

// BenchmarkTwoRooms lives a year of two floating rooms with a door, vents and a wall between them.
func BenchmarkTwoRooms(b *testing.B) {
	r := prepared(b, twoRooms(), outdoors(b, light.Options{Albedo: .2}))
	liveYears(b, r)
}

// twoRooms is a heavy glazed room before a room behind.
func twoRooms() *Design {
	d := with(func(c *suiteCase) { c.heavy, c.floats = true, true }).design()
	back := with(func(c *suiteCase) { c.heavy, c.floats, c.windows = true, true, "" }).design().Rooms[0]
	d.Rooms[0].Vents = Vents{Inlet: vent.Opening{Area: .4, Height: .5, Tall: .5, Discharge: .6}, Outlet: vent.Opening{Area: .4, Height: 2.3, Tall: .3, Discharge: .6}, Rule: vent.UsualRule(), Terrain: vent.Country}
	between := &d.Rooms[0].Walls[0]
	between.Faces, between.Other = Neighbour, 1
	d.Rooms[0].Openings = []Opening{{To: 1, Area: 1.8, Tall: 2, Hours: Always()}}
	d.Rooms = append(d.Rooms, back)
	return d
}

// BenchmarkDugRooms lives a year of two rooms that both have a section of earth, and BenchmarkFourRooms of two such houses at once.
func BenchmarkDugRooms(b *testing.B) {
	sky := outdoors(b, light.Options{Albedo: .2})
	liveYears(b, prepared(b, dugRooms(sky), sky))
}

func BenchmarkFourRooms(b *testing.B) {
	sky := outdoors(b, light.Options{Albedo: .2})
	d := dugRooms(sky)
	more := dugRooms(sky).Rooms
	more[0].Openings[0].To = 3
	d.Rooms = append(d.Rooms, more...)
	liveYears(b, prepared(b, d, sky))
}

// dugRooms are two rooms with earth behind and a door between them.
func dugRooms(sky *light.Outdoors) *Design {
	d := dugRoom(sky)
	second := dugRoom(sky).Rooms[0]
	second.Dug.Long, second.Area = 12, 48
	second.Walls[0].Area, second.Walls[3].Area = 30, 48
	d.Rooms = append(d.Rooms, second)
	d.Rooms[0].Openings = []Opening{{To: 1, Area: 1.8, Tall: 2, Hours: Always()}}
	return d
}

// BenchmarkPrepareDug makes the two dug rooms ready: anew, and with their sections kept.
func BenchmarkPrepareDug(b *testing.B) {
	sky := outdoors(b, light.Options{Albedo: .2})
	for _, keep := range []*ground.Kept{nil, {}} {
		b.Run(map[bool]string{true: "anew", false: "kept"}[keep == nil], func(b *testing.B) {
			d := dugRooms(sky)
			d.Rooms[0].Dug.Kept, d.Rooms[1].Dug.Kept = keep, keep
			if _, err := Prepare(d, sky); err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				if _, err := Prepare(d, sky); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkPrepare(b *testing.B) {
	d, sky := with(func(c *suiteCase) { c.heavy = true }).design(), outdoors(b, light.Options{Albedo: .2})
	for b.Loop() {
		if _, err := Prepare(d, sky); err != nil {
			b.Fatal(err)
		}
	}
}
