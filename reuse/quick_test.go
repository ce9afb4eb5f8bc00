package reuse

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

// alike fails where two waters differ by more than rounding: a part in 1e12 of what the hour moved.
func alike(t *rapid.T, what string, a, b *Water, scale *Water) {
	t.Helper()
	for _, x := range [][3]float64{{float64(a.Litres), float64(b.Litres), float64(scale.Litres)}, {a.Salt, b.Salt, scale.Salt},
		{a.BOD, b.BOD, scale.BOD}, {a.Nitrogen, b.Nitrogen, scale.Nitrogen}} {
		if math.Abs(x[0]-x[1]) > 1e-12*(1+x[2]) {
			t.Fatalf("%s: %+v by the quick way, %+v by the long one", what, a, b)
		}
	}
}

// The quick way of an hour of the bed is the long way, or leaves all as it was: the same water, load and
// flows, to the rounding of a dozen sums.
func TestQuickHourIsTheLongHour(t *testing.T) {
	taken := 0
	rapid.Check(t, func(t *rapid.T) {
		b := bed(t, anyPlanter(t))
		s := b.Start()
		s.Soil.Load, s.Gravel.Load = anyWater(t, "in soil", 300).Load, anyWater(t, "in gravel", 300).Load
		s.Salted = between(t, "salted", 0, 1)
		s.Soil.Litres = quantity.Litres(b.wilting + between(t, "moist", 0, 1.1)*(b.capacity-b.wilting))
		s.Gravel.Litres = quantity.Litres(max(0, between(t, "wet", -0.2, 1.6)) * b.holds)
		in := PlanterIn{Grey: anyWater(t, "grey", 80), Evaporation: quantity.Millimetres(max(0, between(t, "evaporation", -1, 3))),
			Crop: Crop{Coefficient: between(t, "coefficient", 0, 1.3), Roots: between(t, "roots", 0.1, 1.2), Depletion: between(t, "p", 0.1, 0.8)}}
		quick, long, before := s, s, s.Held()
		before.add(&in.Grey)
		var o, p PlanterOut
		o.Overflowed.Salt, o.Sank, o.Drained.BOD = 1, 1, 1 // what an hour before left
		b.longWay(&long, &in, &p)
		if !b.fromBelow(&quick, &in, &o) {
			if quick != s {
				t.Fatalf("left half way: %+v", quick)
			}
			return
		}
		taken++
		alike(t, "gravel", &quick.Gravel, &long.Gravel, &before)
		alike(t, "soil", &quick.Soil, &long.Soil, &before)
		alike(t, "drained", &o.Drained, &p.Drained, &before)
		alike(t, "overflowed", &o.Overflowed, &p.Overflowed, &before)
		alike(t, "evaporated, wanted, BOD decayed, short", &Water{o.Evaporated, Load{float64(o.Wanted), o.Decayed, float64(o.Short)}},
			&Water{p.Evaporated, Load{float64(p.Wanted), p.Decayed, float64(p.Short)}}, &Water{before.Litres, Load{float64(before.Litres), before.BOD, float64(before.Litres)}})
		alike(t, "rose, sank", &Water{o.Rose, Load{Salt: float64(o.Sank)}}, &Water{p.Rose, Load{Salt: float64(p.Sank)}}, &before)
		alike(t, "the day's books", &Water{Load: Load{quick.Wanted, quick.Evaporated, 0}}, &Water{Load: Load{long.Wanted, long.Evaporated, 0}},
			&Water{Load: Load{float64(before.Litres), float64(before.Litres), 0}})
	})
	if taken < 20 {
		t.Errorf("the quick way was taken %d times: too few to tell", taken)
	}
}
