package hourly

import (
	"testing"

	"pgregory.net/rapid"

	"suffice/house"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// anyChained gives a random house in random weather a chain, twice: the second as change leaves it.
func anyChained(t *rapid.T, both, second func(h *house.House)) (a, b *Run) {
	r := chained(t, anyRun(t), nil)
	made := [2]*Run{}
	for i := range made {
		h, d := *r.House, *r.House.Drains
		h.Drains = &d
		both(&h)
		if i == 1 {
			second(&h)
		}
		run, err := Prepare(&h, r.Weather)
		if err != nil {
			t.Fatal(err)
		}
		made[i] = run
	}
	return made[0], made[1]
}

// abreast lives two houses through the same hours and shows each of them with both rows.
func abreast(t *rapid.T, a, b *Run, see func(hour int, s, u *State, of, to *Row)) {
	s, u := a.Start(), b.Start()
	var of, to Row
	for hour := range a.Hours() {
		a.hour(hour, &s, &of)
		b.hour(hour, &u, &to)
		see(hour, &s, &u, &of, &to)
	}
}

// More people in the same house, at home and away on the same days, never have their tank emptied later: not the first time, nor any other. An emptying
// leaves nothing here: of what it usually leaves, a twentieth, few people who waited a day longer have a drop more, and now and then gain a day by it.
func TestMorePeopleNeverLengthenDesludging(t *testing.T) {
	emptied := 0
	rapid.Check(t, func(t *rapid.T) {
		tank := waste.UsualTank(quantity.Litres(rapid.Float64Range(200, 900).Draw(t, "holds")))
		tank.Leaves = 0
		empty, more := rapid.Float64Range(0.02, 0.1).Draw(t, "empty at"), rapid.IntRange(1, 8).Draw(t, "more")
		few, many := anyChained(t, func(h *house.House) { h.Drains.Septic, h.Drains.Empty = &tank, empty }, func(h *house.House) {
			people := *h.People
			people.Residents += float64(more)
			h.People = &people
		})
		var times [2]int
		abreast(t, few, many, func(hour int, _, _ *State, of, to *Row) {
			for k, row := range [2]*Row{of, to} {
				if row.Chain.Ended && row.Chain.Day.Desludged {
					times[k]++
					emptied++
				}
			}
			if times[1] < times[0] {
				t.Fatalf("hour %d: the tank of %g people was emptied %d times, that of %d more %d times", hour, few.House.People.Residents, times[0], more, times[1])
			}
		})
	})
	if emptied == 0 {
		t.Error("no tank was emptied")
	}
}

// A bigger bed never lets more grams of BOD through, at any hour's end, with the same greywater and under the same sky. It stands under
// glass, since in the open it catches more rain, and no tank runs dry, so that what comes to it is the same.
func TestBiggerBedLetsNoMoreThroughTheHouse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area, larger := rapid.Float64Range(0.5, 20).Draw(t, "area"), rapid.Float64Range(1.02, 4).Draw(t, "larger")
		bed := func(h *house.House, area float64) {
			built, err := reuse.Prepare(reuse.UsualPlanter(quantity.Metres(area), 1))
			if err != nil {
				t.Fatal(err)
			}
			h.Water, h.WaterDesign = nil, nil
			h.Drains.Planter = &house.PlanterParts{Name: "planter", Bed: built, Stands: house.Stand{Indoors: true, Room: -1, Light: 0.9, Damp: 40},
				Plants: reuse.Crop{Coefficient: 1, Roots: 0.4, Depletion: 0.5}, Every: 30}
		}
		small, big := anyChained(t, func(h *house.House) { bed(h, area) }, func(h *house.House) { bed(h, area*larger) })
		var through [2]float64
		abreast(t, small, big, func(hour int, _, _ *State, of, to *Row) {
			if of.Chain.Grey.Fed != to.Chain.Grey.Fed {
				t.Fatalf("hour %d: the beds are fed %+v and %+v", hour, of.Chain.Grey.Fed, to.Chain.Grey.Fed)
			}
			for k, row := range [2]*Row{of, to} {
				through[k] += row.Chain.Planter.Drained.BOD + row.Chain.Planter.Overflowed.BOD
			}
			if hair := 1e-9 * max(1, through[0]); through[1] > through[0]+hair { // sums of some thousand hours round
				t.Fatalf("hour %d: %g g of BOD through %g m2, %g g through %g m2", hour, through[0], area, through[1], area*larger)
			}
		})
	})
}

// With the same sewage and the same rain, a trench whose trees are bare never drains better than with its trees in leaf: it holds no less at
// any hour's end, and no less has surfaced.
func TestLeaflessTreesNeverDrainTheHouseBetter(t *testing.T) {
	deep := 0
	rapid.Check(t, func(t *rapid.T) {
		ground, _ := waste.SoilNamed(rapid.SampledFrom([]string{"sand", "loam-weak", "clay-strong"}).Draw(t, "ground"))
		length, age := rapid.Float64Range(1, 40).Draw(t, "length"), rapid.Float64Range(0, 30).Draw(t, "age")
		grow := func(h *house.House, leaves waste.Calendar) {
			trench := *h.Drains.Trench
			trench.Soil, trench.Length, trench.Grove.Leaves = ground, quantity.Metres(length), leaves
			h.Drains.Trench, h.Drains.Age = &trench, age
		}
		bare := waste.Calendar{Out: 366, Full: 367, Turn: 368, Bare: 369}
		leafless, leafy := anyChained(t, func(h *house.House) { grow(h, bare) }, func(h *house.House) { grow(h, waste.Calendar{Evergreen: true}) })
		var surfaced [2]float64
		abreast(t, leafless, leafy, func(hour int, s, u *State, of, to *Row) {
			winter, summer := &s.Chain.Trench, &u.Chain.Trench
			surfaced[0] += float64(of.Chain.Trench.Surfaced)
			surfaced[1] += float64(to.Chain.Trench.Surfaced)
			if to.Chain.Trench.Deep > 0 {
				deep++
			}
			if of.Chain.TrenchIn != to.Chain.TrenchIn || of.Chain.Trench.Trees != 0 {
				t.Fatalf("hour %d: %+v and %+v come, and bare trees drink %g L", hour, of.Chain.TrenchIn, to.Chain.TrenchIn, of.Chain.Trench.Trees)
			}
			const hair = 1e-9
			if float64(winter.Gravel) < float64(summer.Gravel)*(1-hair)-hair || surfaced[0] < surfaced[1]*(1-hair)-hair {
				t.Fatalf("hour %d: bare trees leave %g L in the gravel and %g L on the ground, trees in leaf %g and %g", hour, winter.Gravel, surfaced[0], summer.Gravel, surfaced[1])
			}
		})
	})
	if deep == 0 {
		t.Error("no tree drank from the gravel")
	}
}
