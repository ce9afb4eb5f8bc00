package garden

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/crop"
	"suffice/internal/check"
	"suffice/quantity"
	"suffice/soil"
)

// What the heap takes leaves ripe, as gas, or stays.
func TestHeapCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var h Heap
		var out HeapOut
		var mass, nitrogen float64
		for range 200 {
			in := HeapIn{Mass: rapid.Float64Range(0, 10).Draw(t, "mass"), Nitrogen: rapid.Float64Range(0, 60).Draw(t, "nitrogen")}
			h.Day(&in, &out)
			mass += in.Mass - out.Ripe - out.Gone
			nitrogen += in.Nitrogen - out.RipeN - out.ToAir
		}
		check.Balance(t, mass, h.Raw, "kilograms of the heap")
		check.Balance(t, nitrogen, h.Nitrogen, "nitrogen of the heap")
	})
}

// Nitrogen of the feed is in eggs, milk or dung; heat makes animals drink, never less than half as much when mild.
func TestStockCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Stock{Hens: rapid.IntRange(0, 30).Draw(t, "hens"), Goats: rapid.IntRange(0, 5).Draw(t, "goats"), Hives: rapid.IntRange(0, 4).Draw(t, "hives")}
		cool, warm := s.Day(10), s.Day(40)
		check.Balance(t, cool.FeedN, cool.ProductN+cool.ManureN, "nitrogen of the animals")
		check.Balance(t, 2*float64(cool.Water), float64(warm.Water), "water on a hot day beside twice a cool one's")
		if cool.ManureN < 0 {
			t.Errorf("%+v: dung with %g g of nitrogen", s, cool.ManureN)
		}
	})
	for _, s := range []Stock{{Hens: 1}, {Goats: 1}} {
		if d := s.Day(15); !(d.ProductN > 0.2*d.FeedN && d.ProductN < 0.6*d.FeedN) {
			t.Errorf("%+v: %g of %g g of nitrogen in eggs or milk", s, d.ProductN, d.FeedN)
		}
	}
	if err := (Stock{Hens: -1}).Faults(); err == nil || !strings.Contains(err.Error(), "-1 hens") {
		t.Errorf("a hen too few: %v", err)
	}
}

// A glut feeds its month only; calories stay near nothing.
func TestShareIsHonest(t *testing.T) {
	tomato, err := crop.Named("tomato")
	if err != nil {
		t.Fatal(err)
	}
	k := UsualKitchen(2)
	var glut, spread Harvest
	kg := k.People * k.Wants / tomato.Edible.Value
	glut.Add(8, tomato, kg)
	for m := 1; m <= 12; m++ {
		spread.Add(m, tomato, kg/12)
	}
	a, b := k.Share(&glut), k.Share(&spread)
	check.Balance(t, a.Vegetables, 1, "all vegetables in one month, kept")
	check.Balance(t, a.Fresh, 1.0/12, "the same fresh")
	check.Balance(t, b.Fresh, 1, "all months fresh")
	check.Balance(t, glut.Total(), kg, "kilograms booked")
	if a.Energy > 0.03 {
		t.Errorf("a year's vegetables of tomato give %.3f of the household's energy, want next to nothing", a.Energy)
	}
}

// Seed is bought for what does not come up, and none for frozen soil.
func TestSeedBill(t *testing.T) {
	tomato, err := crop.Named("tomato")
	if err != nil {
		t.Fatal(err)
	}
	warm, ok := Seed(tomato, 10, 20)
	cool, _ := Seed(tomato, 10, 10)
	if !ok || cool.Seeds <= warm.Seeds || warm.Seeds <= warm.Plants {
		t.Errorf("10 m2 of tomato: %g seeds at 20 degC, %g at 10, for %g plants", warm.Seeds, cool.Seeds, warm.Plants)
	}
	if _, ok := Seed(tomato, 10, 2); ok {
		t.Error("tomato seed is counted for soil of 2 degC")
	}
}

// Whatever grows, nicotine is named as poison beside a safer way; squash indoors is painted by hand; hybrids are told.
func TestChoresWarn(t *testing.T) {
	for _, c := range crop.All() {
		for _, indoors := range []bool{true, false} {
			all := ""
			for _, chore := range Chores(&c, indoors) {
				all += chore.What + " " + chore.Caution + "\n"
			}
			for _, want := range []string{"nicotine", "soft soap"} {
				if !strings.Contains(all, want) {
					t.Errorf("%s, indoors %t: no word of %q", c.Name, indoors, want)
				}
			}
			if got := strings.Contains(all, "male flower and paint"); got != (indoors && c.Seed.Insects) {
				t.Errorf("%s, indoors %t: told to paint flowers: %t", c.Name, indoors, got)
			}
			if got := strings.Contains(all, "hybrids"); got != c.Seed.Hybrids {
				t.Errorf("%s: hybrids told: %t, they are %t", c.Name, got, c.Seed.Hybrids)
			}
		}
	}
}

// What is lost of the watering on the way is asked for again: what a dry lawn wants fills it to the brim.
func TestWateringCountsTheWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bed := Bed{Name: "lawn", Area: quantity.SquareMetres(rapid.Float64Range(1, 900).Draw(t, "area")), Depth: 0.3, Soil: soil.LoamWater(),
			Arrives: rapid.Float64Range(0.3, 1).Draw(t, "arrives"), Grass: Grass{Kc: 0.9, Depletion: 0.4}}
		p, err := bed.Prepare()
		if err != nil {
			t.Fatal(err)
		}
		s, out := p.Start(0, 0), BedOut{}
		for range 100 {
			p.Step(&s, &BedIn{Reference: quantity.Millimetres(rapid.Float64Range(0.1, 2).Draw(t, "reference"))}, &out)
			given := p.Want(&s)
			if given == 0 {
				continue
			}
			p.Step(&s, &BedIn{Given: given}, &out)
			check.Balance(t, float64(s.Held), float64(p.Full), "what a watered bed holds beside what it can")
			check.Balance(t, float64(out.Sprayed), float64(given)*(1-bed.Arrives), "what was blown away")
			return
		}
		t.Error("a hundred warm hours did not dry the bed")
	})
}
