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

// lush is a bed with a crop, prepared.
func lush(t check.Tester, name string, day int) *Plot {
	c, err := crop.Named(name)
	if err != nil {
		t.Errorf("%v", err)
		return nil
	}
	p, err := (&Bed{Name: "south", Area: 4, Depth: 0.3, Soil: soil.LoamWater(), Arrives: 0.9, Plantings: []Planting{{Crop: c, Day: day}}}).Prepare()
	if err != nil {
		t.Errorf("%v", err)
	}
	return &p
}

// weatherFor is a season without surprises, bent by what a law turns.
type weatherFor struct {
	air                       crop.Swing
	light, salt, given, reach float64 // mol/m2d, dS/m, L an hour at dawn, mm/h of reference by day
	mineral                   float64 // g to begin with: enough, since water in plenty washes it out
	pollinated                bool
}

func fine() weatherFor {
	return weatherFor{air: crop.Swing{Warmest: 26, Coolest: 16}, light: 30, salt: 1, given: 25, reach: 0.4, mineral: 2000, pollinated: true}
}

// season lives 200 days and gives the harvest in kg.
func season(p *Plot, w weatherFor) float64 {
	s := p.Start(20, w.mineral)
	picked := 0.0
	for day := 100; day < 300; day++ {
		var out BedOut
		for h := range 24 {
			in := BedIn{}
			if h >= 7 && h < 19 {
				in.Reference = quantity.Millimetres(w.reach)
			}
			if h == 6 {
				in.Given = quantity.Litres(w.given)
			}
			p.Step(&s, &in, &out)
		}
		var grown BedDayOut
		p.Day(&s, &BedDayIn{Day: day, Air: w.air, Soil: 20, Light: w.light, Salt: w.salt, Pollinated: w.pollinated}, &grown)
		picked += grown.Picked
	}
	return picked
}

// Litres and nitrogen of random hours and days close, and so do kilograms.
func TestBedCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(crop.Names()).Draw(t, "crop")
		p := lush(t, name, 2)
		s := p.Start(rapid.Float64Range(0, 100).Draw(t, "organic"), rapid.Float64Range(0, 100).Draw(t, "mineral"))
		air := crop.Swing{Coolest: rapid.Float64Range(-8, 20).Draw(t, "low")}
		air.Warmest = air.Coolest + rapid.Float64Range(0, 20).Draw(t, "swing")
		water := float64(s.Held)
		nitrogen := s.Organic + s.Mineral + s.Plant
		var grams, grown, kilos float64
		for day := 1; day <= 120; day++ {
			for range 3 {
				in := BedIn{Reference: quantity.Millimetres(rapid.Float64Range(-0.1, 4).Draw(t, "reference")), Rain: quantity.Millimetres(rapid.Float64Range(0, 20).Draw(t, "rain")),
					Given: quantity.Litres(rapid.Float64Range(0, 40).Draw(t, "given")), Nitrogen: 0.5}
				var out BedOut
				before := s
				p.Step(&s, &in, &out)
				check.Balance(t, float64(before.Held+in.Rain.On(4)+in.Given), float64(s.Held+out.Evaporated+out.Drained+out.Sprayed), "an hour's litres")
				check.Balance(t, before.Mineral+in.Nitrogen, s.Mineral+out.Leached, "an hour's nitrogen")
				if s.Held < 0 || s.Held > p.Full || s.Mineral < 0 {
					t.Fatalf("held %g of %g L, mineral %g g", float64(s.Held), float64(p.Full), s.Mineral)
				}
				water += float64(in.Rain.On(4) + in.Given - out.Evaporated - out.Drained - out.Sprayed)
				nitrogen += in.Nitrogen - out.Leached
			}
			in := BedDayIn{Day: day, Air: air, Soil: 18, Light: 20, Salt: 2, Compost: 1, Pollinated: day%3 > 0}
			var out BedDayOut
			p.Day(&s, &in, &out)
			nitrogen += in.Compost - out.PickedN - out.ResidueN
			check.Balance(t, out.Potential, out.Grown+out.LostToFlowers+out.LostToLight+out.LostToWater+out.LostToSalt+out.LostToNitrogen, "a day's growth by causes")
			grown += out.Grown
			kilos += out.Picked + out.Died
			grams = s.Organic + s.Mineral + s.Plant
			check.Balance(t, grown, kilos+s.Standing, "kilograms grown, picked, died and standing")
		}
		check.Balance(t, water, float64(s.Held), "litres of all hours")
		check.Balance(t, nitrogen, grams, "nitrogen of all days")
	})
}

// More salt, less water, less light, less nitrogen never bear more.
func TestWorseNeverBearsMore(t *testing.T) {
	for _, name := range crop.Names() {
		p := lush(t, name, 101)
		good := season(p, fine())
		if !(good > 0) {
			t.Errorf("%s bears %g kg in a fine season", name, good)
		}
		rapid.Check(t, func(t *rapid.T) {
			a, b := rapid.Float64Range(0, 1).Draw(t, "a"), rapid.Float64Range(0, 1).Draw(t, "b")
			low, high := min(a, b), max(a, b)
			with := func(bend func(*weatherFor, float64), x float64) float64 {
				w := fine()
				bend(&w, x)
				return season(p, w)
			}
			for what, bend := range map[string]func(*weatherFor, float64){
				"less light":    func(w *weatherFor, x float64) { w.light *= x },
				"less water":    func(w *weatherFor, x float64) { w.given *= x },
				"more salt":     func(w *weatherFor, x float64) { w.salt = 12 * (1 - x) },
				"less nitrogen": func(w *weatherFor, x float64) { w.mineral = 60 * x },
			} {
				if worse, better := with(bend, low), with(bend, high); worse > better+1e-9 {
					t.Errorf("%s: %s bears %g kg, more than %g", name, what, worse, better)
				}
			}
		})
	}
}

// Each want bites: without it a fine season bears clearly less, and the share that salt leaves is the table's.
func TestEachWantBites(t *testing.T) {
	p := lush(t, "tomato", 101)
	good := season(p, fine())
	for what, bend := range map[string]func(*weatherFor){
		"a third of the water": func(w *weatherFor) { w.given /= 3 },
		"a third of the light": func(w *weatherFor) { w.light /= 3 },
		"salt of 6 dS/m":       func(w *weatherFor) { w.salt = 6 },
		"20 g of nitrogen":     func(w *weatherFor) { w.mineral = 20 },
	} {
		w := fine()
		bend(&w)
		if kg := season(p, w); !(kg < 0.8*good) {
			t.Errorf("with %s tomato bears %g kg of %g", what, kg, good)
		}
	}
	w := fine()
	w.salt = 6
	check.Balance(t, season(p, w)/good, p.plans[0].crop.RelativeYield(6), "the share that salt leaves")
}

// A hose left running washes nitrogen out: it bears less than enough water does.
func TestDrowningWashesNitrogenOut(t *testing.T) {
	enough, flood := fine(), fine()
	enough.mineral, flood.mineral, flood.given = 60, 60, 400
	if a, b := season(lush(t, "tomato", 101), enough), season(lush(t, "tomato", 101), flood); b >= a {
		t.Errorf("tomato bears %g kg with enough water and %g with a flood", a, b)
	}
}

// Squash without insects or a hand bears nothing; tomato pollinates itself.
func TestFlowersWantPollen(t *testing.T) {
	alone := fine()
	alone.pollinated = false
	if kg := season(lush(t, "zucchini", 101), alone); kg != 0 {
		t.Errorf("zucchini bears %g kg without pollen", kg)
	}
	if a, b := season(lush(t, "tomato", 101), alone), season(lush(t, "tomato", 101), fine()); a != b {
		t.Errorf("tomato bears %g kg alone and %g with insects", a, b)
	}
}

// A fine season gives what the table says, less nothing; the same season on three quarters of the light gives three quarters.
func TestFineSeasonIsTheTable(t *testing.T) {
	w := fine()
	p := lush(t, "tomato", 101)
	check.Balance(t, season(p, w), p.plans[0].most, "tomato in a fine season")
	w.light = 0.75 * p.plans[0].crop.Light.High
	check.Balance(t, season(p, w), 0.75*p.plans[0].most, "tomato in three quarters of the light")
}

func TestFrostKillsTheTender(t *testing.T) {
	for name, want := range map[string]Event{"tomato": Frozen, "lettuce": Nothing} {
		p := lush(t, name, 100)
		s := p.Start(50, 50)
		var out BedDayOut
		for day := 100; day < 130; day++ {
			p.Day(&s, &BedDayIn{Day: day, Air: crop.Swing{Warmest: 22, Coolest: 12}, Soil: 18, Light: 20}, &out)
		}
		p.Day(&s, &BedDayIn{Day: 130, Air: crop.Swing{Warmest: 15, Coolest: -2}, Soil: 15, Light: 20}, &out)
		if out.Event != want {
			t.Errorf("%s at -2 degC: %v, want %v", name, out.Event, want)
		}
	}
}

func TestTakenBedIsSaid(t *testing.T) {
	c, err := crop.Named("tomato")
	if err != nil {
		t.Fatal(err)
	}
	p, err := (&Bed{Area: 1, Depth: 0.3, Soil: soil.LoamWater(), Arrives: 1, Plantings: []Planting{{c, 100}, {c, 105}}}).Prepare()
	if err != nil {
		t.Fatal(err)
	}
	s := p.Start(0, 0)
	var out BedDayOut
	for day := 100; day <= 105; day++ {
		p.Day(&s, &BedDayIn{Day: day, Air: crop.Swing{Warmest: 22, Coolest: 12}, Soil: 18, Light: 20}, &out)
	}
	if out.Missed != 2 || out.Sown {
		t.Errorf("second planting: planting %d missed, sown %t, want planting 2 missed", out.Missed, out.Sown)
	}
}

// All faults of a bed come at once.
func TestBedFaults(t *testing.T) {
	c, err := crop.Named("lettuce")
	if err != nil {
		t.Fatal(err)
	}
	_, err = (&Bed{Name: "north", Area: 0, Depth: 2, Soil: soil.Water{}, Arrives: 1.5, Plantings: []Planting{{c, 400}, {nil, 1}}}).Prepare()
	for _, want := range []string{"area 0 m2", "arrives, 1.5", "field capacity 0", "day 400", "roots of lettuce reach 0.5 m", "no crop"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("faults %v: want %q among them", err, want)
		}
	}
}

func TestHourAllocatesNothing(t *testing.T) {
	p := lush(t, "tomato", 101)
	s := p.Start(20, 60)
	in, out := BedIn{Reference: 0.3, Given: 2}, BedOut{}
	day, grown := BedDayIn{Day: 101, Air: crop.Swing{Warmest: 25, Coolest: 15}, Soil: 20, Light: 20}, BedDayOut{}
	if n := testing.AllocsPerRun(50, func() { p.Step(&s, &in, &out); p.Day(&s, &day, &grown) }); n != 0 {
		t.Errorf("an hour and a day made %v allocations, want none", n)
	}
}

func BenchmarkBedStep(b *testing.B) {
	p := lush(b, "tomato", 101)
	s := p.Start(20, 60)
	in, out := BedIn{Reference: 0.3, Given: 2}, BedOut{}
	b.ReportAllocs()
	for b.Loop() {
		p.Step(&s, &in, &out)
	}
}
