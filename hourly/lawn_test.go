package hourly

import (
	"math"
	"strings"
	"testing"

	"suffice/quantity"
)

// A lawn is watered by its sprinkler: no hour has more than the sprinkler gives, one watering brings the soil back to what it holds, and
// over weeks it gives off its coefficient times the reference evapotranspiration [fao56 eq. 58], as it is watered before it suffers.
func TestLawnIsSprinkled(t *testing.T) {
	const flow = 400
	l := liveIn(t, suppliedHouse+strings.Replace(mown, "lawn: {area: 60 m2}", "lawn: {area: 60 m2, flow: 400 L/h}", 1), days(60, dayOf{0.65, 12, 0}))
	r := l.run
	lawn := len(r.chain.garden.Beds) - 1
	plot := &r.chain.garden.Beds[lawn].Plot
	most, waterings, last := quantity.Litres(0), 0, quantity.Litres(0)
	reference := quantity.Millimetres(0)
	s := r.Start()
	span := Span{Last: r.Hours(), See: func(_ int, row *Row) {
		in := &row.Chain.BedIn[lawn]
		reference += in.Reference
		most = max(most, in.Given)
		if last > 0 && in.Given == 0 {
			waterings++
			if held := s.Chain.Beds[lawn].Held; math.Abs(float64(held-plot.Full)) > 0.05*float64(plot.Full) {
				t.Errorf("watered, the soil holds %v L of %v L", held, plot.Full)
			}
		}
		last = in.Given
	}}
	if err := r.Live(&s, &span); err != nil {
		t.Fatal(err)
	}
	if most != flow || waterings < 2 {
		t.Errorf("%d waterings with at most %v L in an hour, want 2 or more and %d L", waterings, most, flow)
	}
	c := &l.acc.Totals.Chain
	if want, got := float64((0.95 * reference).On(60)), float64(c.Beds.Evaporated); got < 0.98*want || got > 1.05*want {
		t.Errorf("lawn and a bare bed gave off %.0f L, want the lawn's %.0f L and at most a twentieth more from the bed", got, want)
	}
	if sum := float64(c.LawnGiven); c.LawnMost != flow || math.Abs(sum-float64(c.LawnHours)*flow) > float64(waterings)*flow {
		t.Errorf("%g L in %d hours, at most %v", sum, c.LawnHours, c.LawnMost)
	}
}

// The house drinks first: a lawn is not watered while the tanks hold less than the file says.
func TestLawnWaitsForTheTank(t *testing.T) {
	l := liveIn(t, suppliedHouse+strings.Replace(mown, "water_above: 0 %", "water_above: 90 %", 1), days(60, dayOf{0.65, 12, 0}))
	if given := l.acc.Totals.Chain.LawnGiven; given != 0 {
		t.Errorf("a half-empty tank gave the lawn %v L", given)
	}
}
