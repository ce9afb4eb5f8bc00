package hourly

import (
	"math"
	"strings"
	"testing"

	"suffice/quantity"
	"suffice/stove"
)

// coldHouse is a room with a stove in changing frost.
func coldHouse(t *testing.T, fire string, colder float64) *lived {
	t.Helper()
	var sky []dayOf
	for d := range 25 {
		sky = append(sky, dayOf{0.5, 4 - 9*math.Sin(float64(d)/3) - colder, 0})
	}
	return liveIn(t, strongHouse()+oneRoom+"    stove: "+fire+"\n", sky)
}

// A fire's heat is in the room's books, a colder sky burns more, and no hour's fire goes beyond what the people want.
func TestStoveInTheHour(t *testing.T) {
	l := coldHouse(t, "{}", 0)
	b := &l.acc.Rooms[0].Stove
	if off := math.Abs(l.acc.Residuals.RoomsKilowatt) * 1000; !(b.Heat > 1000) || off > 1e-9*float64(b.Heat+b.Flue) {
		t.Errorf("%g Wh of fire, and %g Wh of the room are not explained", float64(b.Heat), off)
	}
	var wood quantity.Kilograms
	hours, warmest := 0.0, quantity.Celsius(-99)
	state := l.run.Start()
	span := Span{Last: l.run.Hours(), See: func(i int, row *Row) {
		o := &row.Stoves[0]
		if wood += o.Wood; o.Wood > 0 {
			hours++
			warmest = max(warmest, row.Rooms.Rooms[0].Air)
		}
	}}
	if err := l.run.Live(&state, &span); err != nil {
		t.Fatal(err)
	}
	if wood != b.Wood || hours != b.Hours || b.Most != b.Wood {
		t.Errorf("%g kg in %g hours were lived, %g kg in %g counted, %g of them in one winter", float64(wood), hours, float64(b.Wood), b.Hours, float64(b.Most))
	}
	// 20 degC are wanted; the smallest fire, 0.5 kg, may pass them by what it makes in an hour, and what people do besides by a little.
	if least := 0.5 * 3978 * 0.7 / float64(l.run.in.hearths[0].kelvin); float64(warmest) > 20+least+1 {
		t.Errorf("a fire left the room at %.1f degC", float64(warmest))
	}
	if colder := coldHouse(t, "{}", 3); colder.acc.Rooms[0].Stove.Wood <= b.Wood {
		t.Errorf("%g kg are burned, %g under a sky 3 K colder", float64(b.Wood), float64(colder.acc.Rooms[0].Stove.Wood))
	}
	sealed := coldHouse(t, "{air: outside}", 0)
	if s := &sealed.acc.Rooms[0].Stove; s.Wood >= b.Wood {
		t.Errorf("%g kg are burned with air from the room, %g with air from outside", float64(b.Wood), float64(s.Wood))
	}
}

// What the fire's heat makes of the room's air in an hour is what people reckon with.
func TestStoveIsReckonedAsItWarms(t *testing.T) {
	l := coldHouse(t, "{burns: 3 kg/h, radiant: 40 %}", 0)
	in, h := l.run.in, &l.run.in.hearths[0]
	s := l.run.Start().Rooms
	var row Row
	with, without := s, s
	row.RoomsIn.Hour = 30
	in.rooms.Step(&without, &row.RoomsIn, &row.Rooms)
	row.RoomsIn.Rooms[0].Air, row.RoomsIn.Rooms[0].Radiant = quantity.Watts(0.6*1000), quantity.Watts(0.4*1000)
	in.rooms.Step(&with, &row.RoomsIn, &row.Rooms)
	if rise := float64(with.Air[0] - without.Air[0]); math.Abs(rise*float64(h.kelvin)/1000-1) > 1e-9 {
		t.Errorf("a kilowatt warms the room by %g K, reckoned with %g", rise, 1000/float64(h.kelvin))
	}
}

// The sheet of the stove is the hour, to the last bit.
func TestStoveIsExplained(t *testing.T) {
	l := coldHouse(t, "{}", 6)
	lit := 0
	for hour := 100; hour < 200; hour += 3 {
		w := l.run.witness(len(l.run.Weather.Days))
		if err := w.liveTo(hour); err != nil {
			t.Fatal(err)
		}
		worked, err := w.explain()
		if err != nil {
			t.Fatal(err)
		}
		shown := false
		for _, sheet := range worked {
			if sheet.Sheet.Name != "stove-hour" {
				continue
			}
			shown = strings.HasSuffix(sheet.Sheet.Title, ": room")
			o := &w.row.Stoves[0]
			truth := map[string]float64{"wood": float64(o.Wood), "fuel": float64(o.Fuel), "to_air": float64(o.Air), "to_faces": float64(o.Faces), "flue": float64(o.Flue), "air_drawn": o.Drawn, "draught": float64(o.Draught)}
			for _, r := range sheet.Results {
				if want, ok := truth[r.Name]; ok && math.Float64bits(want) != math.Float64bits(r.Value.Number) {
					t.Errorf("hour %d: %s is %g, the hour had %g", hour, r.Name, r.Value.Number, want)
				}
			}
			if o.Wood > 0 {
				lit++
			}
		}
		if !shown {
			t.Fatalf("hour %d shows no stove", hour)
		}
	}
	if lit < 5 {
		t.Errorf("%d of the hours had a fire, want some", lit)
	}
}

// A winter north of the equator crosses the new year, one south of it does not.
func TestWinters(t *testing.T) {
	var b Burning
	b.add(&stove.Out{Wood: 3}, 1999)
	b.add(&stove.Out{Wood: 4}, 1999)
	b.add(&stove.Out{Wood: 5}, 2000)
	if b.Most != 7 || b.Winter != 1999 || b.Wood != 12 {
		t.Errorf("%+v", b)
	}
	l := coldHouse(t, "{}", 0)
	if got := l.run.winter(3); got != l.run.Weather.Days[3].Year && l.run.Weather.Days[3].Month >= 7 {
		t.Errorf("a day of month %d belongs to the winter of %d", l.run.Weather.Days[3].Month, got)
	}
}
