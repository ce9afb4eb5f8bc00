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
	mean, offered, fresh := r.Uses(&all)
	if fresh != 110 || mean != 250.0/110 || offered != 340.0/110 {
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
	mean, offered, fresh := r.Uses(&a.Totals)
	if !(mean > 1 && mean <= offered && offered <= 4 && fresh > 0) {
		t.Errorf("%g uses of a litre, %g offered, of %g L: want 1 to 4, what is used at most what is offered", mean, offered, float64(fresh))
	}
	area, month, ok := r.LargestBed(&a.Totals)
	if !ok {
		t.Fatal("no largest bed")
	}
	c := &a.Totals.Chain
	built := r.chain.parts.Planter.Bed.Area()
	if thirst := c.ThirstIn[month] * quantity.Litres(area/built); math.Abs(float64(thirst-(c.FedIn[month]-c.FlushIn[month]))) > 1e-9*float64(thirst) {
		t.Errorf("a bed of %g m2 wants %g L in month %d, and the greywater leaves %g L", area, thirst, month, c.FedIn[month]-c.FlushIn[month])
	}
}
