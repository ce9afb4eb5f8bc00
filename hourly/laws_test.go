package hourly

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/power"
	"suffice/waste"
)

// No litre, watt-hour or joule appears or vanishes, in any hour of any house and weather.
func TestEveryHourBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRun(t)
		s := r.Start()
		before := s
		span := Span{Last: r.Hours()}
		span.See = func(i int, row *Row) {
			balanceWater(t, r, i, &before, &s, row)
			balancePower(t, i, &before, &s, row)
			balanceHeat(t, r, i, &before, &s, row)
			balanceChain(t, r, i, &before, &s, row)
			before = s
		}
		if err := r.Live(&s, &span); err != nil {
			t.Fatal(err)
		}
	})
}

func same(t *rapid.T, i int, what string, in, out float64) {
	if d := math.Abs(in - out); !(d <= 1e-8*max(1, math.Abs(in), math.Abs(out))) {
		t.Fatalf("hour %d: %s: %.12g came in, %.12g went out or stayed (off by %.3g)", i, what, in, out, in-out)
	}
}

func balanceWater(t *rapid.T, r *Run, i int, before, after *State, row *Row) {
	w := r.water
	in := float64(w.Held(&before.Water)+w.Snow(&before.Water)) + float64(row.Income.Fell+row.Income.Delivered)
	out := float64(w.Held(&after.Water)+w.Snow(&after.Water)) + float64(row.Income.Wetted+row.Income.Missed+row.Income.Diverted+
		row.Income.Spilled+row.Income.Leaked+row.Taps.Backwash)
	for k, had := range row.Taps.Served {
		out += float64(had)
		same(t, i, "wanted at the taps", float64(row.Draw[k]), float64(had+row.Taps.Short[k]))
	}
	same(t, i, "litres", in, out)
}

func balancePower(t *rapid.T, i int, before, after *State, row *Row) {
	p := &row.Power
	held := func(s *State) float64 { return float64(s.Power.Battery.Available + s.Power.Battery.Bound) }
	in := float64(p.Income+p.Generator) + held(before)
	out := float64(p.Delivered+p.ControllerLoss+p.ChargerLoss+p.InverterLoss+p.Curtailed+p.BatteryLoss+p.SelfDischarge) + held(after)
	same(t, i, "watt-hours", in, out)
	used := float64(p.Met[power.Must] + p.Met[power.Should] + p.Met[power.Could] + p.HotWater + p.MadeUp)
	for _, wanted := range row.Supply.Services {
		used += float64(wanted)
	}
	same(t, i, "alternating current", float64(p.Delivered), used-float64(p.ServiceShort))
}

func balanceHeat(t *rapid.T, r *Run, i int, before, after *State, row *Row) {
	h := &row.Heat
	in := float64(h.Solar+h.Gas+h.Electric) + float64(r.hot.Held(&before.Hot, 0))
	out := float64(h.Delivered+h.Loss+h.FrostHeat) + float64(r.hot.Held(&after.Hot, 0))
	same(t, i, "heat", in, out)
	same(t, i, "gas", float64(row.Gas.Energy+row.Gas.Short), float64(row.Cooked+h.Fuel))
	if row.Gas.Short > 1e-6 {
		t.Fatalf("hour %d: %v Wh of gas were promised to kettle and heater and not there", i, row.Gas.Short)
	}
}

// balanceChain holds litres, salt, BOD and nitrogen of used water and beds, of one hour, against all that is in them and moves.
func balanceChain(t *rapid.T, r *Run, i int, before, after *State, row *Row) {
	c := r.chain
	if c == nil {
		return
	}
	var hour ChainTotals
	hour.add(c, 1, row)
	left := c.residuals(&before.Chain, &after.Chain, &hour)
	held := func(of waste.Load, litres float64) [4]float64 {
		return [4]float64{litres, of.Salt, of.BOD, of.Nitrogen}
	}
	litres, load := c.held(&before.Chain)
	scale := held(load.Plus(hour.Sewage.Load).Plus(hour.Bowl), litres+float64(hour.Sewage.Inflow+hour.CatchRain+hour.Rain))
	for k, lost := range [4]float64{left.Litres, left.Salt, left.BOD, left.Nitrogen} {
		if !(math.Abs(lost) <= 1e-12*max(1, scale[k])) {
			t.Fatalf("hour %d: %g %s of %g are lost or made", i, lost, [4]string{"L", "g of salt", "g of BOD", "g of nitrogen"}[k], scale[k])
		}
	}
	beds := float64(hour.BedGiven + hour.BedRain)
	for b := range c.beds {
		beds += float64(before.Chain.Beds[b].Held)
	}
	if !(math.Abs(left.BedLitres) <= 1e-12*max(1, beds)) {
		t.Fatalf("hour %d: %g L of %g in beds are lost or made", i, left.BedLitres, beds)
	}
}

// A copy of the state is a snapshot: two lives from it are the same to the last bit, and the
// first does not disturb the second.
func TestCopyIsSnapshot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRun(t)
		s := r.Start()
		half := r.Hours() / 48 * 24
		if err := r.Live(&s, &Span{Last: half}); err != nil {
			t.Fatal(err)
		}
		first, second := s, s
		for _, one := range []*State{&first, &second} {
			if err := r.Live(one, &Span{First: half, Last: r.Hours()}); err != nil {
				t.Fatal(err)
			}
		}
		if first != second {
			t.Fatalf("the same hours from the same state ended differently:\n%+v\n%+v", first, second)
		}
	})
}

// A dark house with dead batteries has no water from a pump and none through a lamp, in the
// same hour.
func TestPowerCutsWaterInTheSameHour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRun(t)
		s := r.Start()
		span := Span{Last: r.Hours(), See: func(i int, row *Row) {
			if row.Power.ServiceShare == 0 && row.Supply.Services[power.WaterPump] > 0 {
				for k, had := range row.Taps.Served {
					if had > 0 {
						t.Fatalf("hour %d: no power for the pump, yet %v L of kind %d flowed", i, had, k)
					}
				}
			}
		}}
		if err := r.Live(&s, &span); err != nil {
			t.Fatal(err)
		}
	})
}

// Kettle and heater burn from one bottle: what one of them was promised the other cannot have,
// so the bottle is never asked for more than it gives, down to the last gram.
func TestGasForBoth(t *testing.T) {
	together := 0
	for grams := 500; grams < 1500; grams += 25 {
		text := strings.NewReplacer("peak: 600 W", "peak: 8 kW", "capacity: 200 Ah", "capacity: 3000 Ah", "bottle: 45 kg, bottles: 2", fmt.Sprintf("bottle: %d g, bottles: 1, lead: 100 days", grams),
			"rules: {}", "rules: {dull: {clearness_below: 0.35}, when_dull: [swap]}").Replace(plainHouse)
		l := liveIn(t, text, days(12, dayOf{0.12, 8, 0}))
		if short := l.acc.Totals.GasShort; short > 1e-9 {
			t.Errorf("%d g: %v Wh of gas were promised twice", grams, short)
		}
		s := l.run.Start()
		span := Span{Last: l.run.Hours(), See: func(i int, row *Row) {
			if row.Cooked > 0 && row.Heat.Short > 0 {
				together++
			}
		}}
		if err := l.run.Live(&s, &span); err != nil {
			t.Fatal(err)
		}
	}
	if together == 0 {
		t.Error("no bottle gave too little while both burned: the test wants one")
	}
}
