package hourly

import (
	"math"
	"testing"

	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// By hand: 100 L from the shower all pass the planter, 40 L flush of which the tanks topped up 10, so 110 L are fresh. The trees take 20 L from
// a gravel into which as much rain as sewage came down: 10 L of them are the house's own. 110 + 100 + 30 + 10 = 250 uses of 110 L. All 100 L that
// came to the trench counted instead of those 10: 340.
func TestUsesByHand(t *testing.T) {
	r := chained(t, four(t, "crete"), nil)
	var all Totals
	c := &all.Chain
	c.Used[reuse.Shower], c.Topped.Litres, c.Fed.Litres, c.Flushed = 100, 10, 100, 40
	c.Effluent.Inflow, c.Carried.Inflow = 95, 5
	c.Trench = waste.TrenchOut{Through: 100, Trees: 900, Deep: 20}
	u := r.Uses(&all)
	mean, offered, fresh := u.Mean(), u.MeanOffered(), u.Fresh
	if fresh != 110 || math.Abs(mean-250.0/110) > 4e-16*4 || math.Abs(offered-340.0/110) > 4e-16*4 {
		t.Errorf("%g uses of a litre, %g offered, of %g L: by hand 250/110, 340/110 and 110 L", mean, offered, fresh)
	}
}

// No litre is used more than four times, nor less than once, and no more is used than is offered. The largest bed wants in the scarcest
// month just what the greywater leaves when the toilets have flushed.
func TestUsesStayBetweenOneAndFour(t *testing.T) {
	r := chained(t, four(t, "crete"), nil)
	a, err := r.Account(r.Start())
	if err != nil {
		t.Fatal(err)
	}
	u := r.Uses(&a.Totals)
	mean, offered, fresh := u.Mean(), u.MeanOffered(), u.Fresh
	if !(mean > 1 && mean <= offered && offered <= 4 && fresh > 0) {
		t.Errorf("%g uses of a litre, %g offered, of %g L: want 1 to 4, what is used at most what is offered", mean, offered, fresh)
	}
	month, ok := r.ScarcestMonth(&a.Totals)
	area, can := r.LargestBed(&a.Totals, month)
	if !ok || !can {
		t.Fatal("no largest bed")
	}
	for m := 1; m <= 12; m++ {
		if other, can := r.LargestBed(&a.Totals, m); can && other < area {
			t.Errorf("%g m2 are enough in month %d, the scarcest, and only %g in month %d", float64(area), month, float64(other), m)
		}
	}
	if hottest := r.HottestMonth(); hottest != 7 && hottest != 8 {
		t.Errorf("the hottest month of Crete is %d, want July or August", hottest)
	}
	c := &a.Totals.Chain
	built := r.chain.parts.Planter.Bed.Area()
	if thirst := c.ThirstIn[month] * quantity.Litres(area/built); math.Abs(float64(thirst-(c.FedIn[month]-c.FlushIn[month]))) > 1e-9*float64(thirst) {
		t.Errorf("a bed of %g m2 wants %g L in month %d, and the greywater leaves %g L", area, thirst, month, c.FedIn[month]-c.FlushIn[month])
	}
}
