package hourly

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/crop"
	"suffice/garden"
	"suffice/house"
	"suffice/people"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/soil"
	"suffice/waste"
)

// chained gives a run's house drains, planter, well, tank, trench and beds as they are usually built.
func chained(t rapid.TB, r *Run, change func(d *house.DrainParts, g *house.GardenParts)) *Run {
	t.Helper()
	must := func(err error) {
		if err != nil {
			t.Helper()
			t.Fatal(err)
		}
	}
	bed, err := reuse.Prepare(reuse.UsualPlanter(7, 1))
	must(err)
	indoors := house.Stand{Indoors: true, Room: -1, Light: 0.5, Damp: 60}
	well, septic := reuse.UsualWell(), waste.UsualTank(3000)
	loam, ok := waste.SoilNamed(waste.SoilRates()[2].Soil)
	if !ok {
		t.Fatal("no such soil")
	}
	trench := waste.Trench{Length: 18, Width: 0.6, Gravel: 0.3, Pores: 0.35, Catch: 30, RunsOff: 0.2, Cover: 1500, Soil: loam, Grass: 1, Grove: waste.UsualGrove(2)}
	toilet := waste.UsualPerPerson()
	d := &house.DrainParts{Grey: reuse.UsualGrey(), Well: &well, Toilet: waste.Load{Salt: toilet.Salt / 2, BOD: toilet.BOD / 2, Nitrogen: 0.9 * toilet.Nitrogen},
		Rain: 0.03, Septic: &septic, Empty: waste.UsualShare, Trench: &trench,
		Planter: &house.PlanterParts{Name: "planter", Bed: bed, Stands: indoors, Plot: plot(t, 7, 0.4, true, "tomato", 75), Plants: reuse.Crop{Roots: 0.4}, Rinse: 30, Every: 30}}
	g := &house.GardenParts{Scraps: true, Stock: garden.Stock{Hens: 5}, Kitchen: garden.UsualKitchen(4),
		Beds: []house.GardenBed{
			{Plot: *plot(t, 45, 0.5, false, "potato", 70), Stands: house.Stand{Room: -1}, Watered: true, Clock: 6, Organic: 4000, Mineral: 200},
			{Plot: *plot(t, 8, 0.4, true, "lettuce", 40), Stands: indoors, Watered: true, Clock: 7, Organic: 800, Mineral: 60, Hand: true},
		}}
	if change != nil {
		change(d, g)
	}
	h := *r.House
	h.Drains, h.Garden = d, g
	made, err := Prepare(&h, r.Weather)
	must(err)
	return made
}

func plot(t rapid.TB, area quantity.SquareMetres, depth quantity.Metres, indoors bool, name string, day int) *garden.Plot {
	t.Helper()
	c, err := crop.Named(name)
	if err != nil {
		t.Fatal(err)
	}
	bed := &garden.Bed{Name: name, Area: area, Depth: min(depth, quantity.Metres(c.Roots.High)), Soil: soil.LoamWater(), Arrives: 0.9, Indoors: indoors, Plantings: []garden.Planting{{Crop: c, Day: day}}}
	p, err := bed.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	return &p
}

// Litres, salt, BOD and nitrogen are neither made nor lost between the taps and the ground, in the years of a real record, whatever
// parts the chain has.
func TestChainBalances(t *testing.T) {
	for name, change := range map[string]func(d *house.DrainParts, g *house.GardenParts){
		"all of it":           nil,
		"no well":             func(d *house.DrainParts, _ *house.GardenParts) { d.Well = nil },
		"to a public sewer":   func(d *house.DrainParts, _ *house.GardenParts) { d.Septic, d.Trench = nil, nil },
		"a tank and no field": func(d *house.DrainParts, _ *house.GardenParts) { d.Trench = nil },
		"no planter": func(d *house.DrainParts, _ *house.GardenParts) {
			d.Planter, d.Well, d.Grey = nil, nil, reuse.Grey{Strength: d.Grey.Strength}
		},
		"a planter outdoors, perennial": func(d *house.DrainParts, _ *house.GardenParts) {
			d.Planter.Stands, d.Planter.Plot, d.Planter.Plants = house.Stand{Room: -1}, nil, reuse.Crop{Coefficient: 1, Roots: 0.4, Depletion: 0.5}
		},
		"a tank too full for its solids": func(d *house.DrainParts, _ *house.GardenParts) { d.Septic.Most, d.Empty = 0.03, 0.5 },
		"ill in January": func(d *house.DrainParts, _ *house.GardenParts) {
			d.Ill = []people.Dates{{From: people.Date{Month: 1, Day: 1}, To: people.Date{Month: 1, Day: 20}}}
		},
	} {
		t.Run(name, func(t *testing.T) {
			r := chained(t, four(t, "crete"), change)
			a, err := r.Account(r.Start())
			if err != nil {
				t.Fatal(err)
			}
			left, in := a.Residuals.Chain, a.Totals.Chain.Sewage
			for _, c := range []struct {
				what        string
				left, whole float64
			}{{"L", left.Litres, float64(in.Inflow + a.Totals.Chain.CatchRain)}, {"L in beds", left.BedLitres, float64(a.Totals.Chain.BedRain + a.Totals.Chain.BedGiven)},
				{"g salt", left.Salt, in.Load.Salt}, {"g BOD", left.BOD, in.Load.BOD}, {"g nitrogen", left.Nitrogen, in.Load.Nitrogen}} {
				if math.Abs(c.left) > 1e-9*c.whole {
					t.Errorf("%g %s of %g left over", c.left, c.what, c.whole)
				}
			}
		})
	}
}
