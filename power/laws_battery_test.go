package power

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

func anyWells(t *rapid.T) Wells {
	return Wells{
		Full:  rapid.Float64Range(10, 1000).Draw(t, "full"),
		Share: rapid.Float64Range(0.05, 0.95).Draw(t, "share"),
		Rate:  rapid.Float64Range(0.05, 5).Draw(t, "rate"),
	}
}

// TestWellsAgainstIntegration holds the closed form against the two differential equations
// themselves, integrated in small steps by Heun's rule.
func TestWellsAgainstIntegration(t *testing.T) {
	w := Wells{Full: 400, Share: 0.3, Rate: 0.5}
	const steps, current = 20000, 40.0
	flow := func(q Charge) float64 { // from bound to available
		return w.Rate * w.Share * (1 - w.Share) * (q.Bound/(1-w.Share) - q.Available/w.Share)
	}
	q, h := Charge{120, 280}, 1.0/steps
	for range steps {
		first := flow(q)
		ahead := Charge{q.Available + h*(first-current), q.Bound - h*first}
		mean := (first + flow(ahead)) / 2
		q = Charge{q.Available + h*(mean-current), q.Bound - h*mean}
	}
	got := w.After(Charge{120, 280}, current, 1)
	// Heun's rule errs by h squared: far below a millionth here.
	if math.Abs(got.Available-q.Available) > 1e-6 || math.Abs(got.Bound-q.Bound) > 1e-6 {
		t.Errorf("closed form %+v, integration %+v", got, q)
	}
}

// TestWellsLaws: time adds up, charge is kept, and the limits of current are where the wells end.
func TestWellsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWells(t)
		held := rapid.Float64Range(0.05, 1).Draw(t, "held") * w.Full
		q := Charge{w.Share * held, (1 - w.Share) * held}
		current := rapid.Float64Range(-50, 50).Draw(t, "current")
		one, two := rapid.Float64Range(0.1, 5).Draw(t, "first"), rapid.Float64Range(0.1, 5).Draw(t, "then")
		near := func(what string, a, b float64) {
			if math.Abs(a-b) > 1e-9*max(1, math.Abs(a), math.Abs(b)) {
				t.Fatalf("%s: %.12g against %.12g", what, a, b)
			}
		}
		at, later := w.After(q, current, one+two), w.After(w.After(q, current, one), current, two)
		near("available, in one step and in two", at.Available, later.Available)
		near("bound, in one step and in two", at.Bound, later.Bound)
		near("charge kept", at.Sum(), q.Sum()-current*(one+two))
		near("available at the largest current out", w.After(q, w.MostOut(q, one), one).Available, 0)
		near("available at the largest current in", w.After(q, -w.MostIn(q, one), one).Available, w.Share*w.Full)
		near("hours at the largest current out", w.Lasts(q, w.MostOut(q, one)), one)
	})
}

// TestCapacityFallsWithCurrent: slower discharges give more, from the available well alone
// to all there is.
func TestCapacityFallsWithCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWells(t)
		fast := rapid.Float64Range(0.01, 50).Draw(t, "fast")
		slow := fast * rapid.Float64Range(1.01, 20).Draw(t, "times")
		a, b := w.Capacity(fast), w.Capacity(slow)
		if !(w.Share*w.Full < a && a < b && b < w.Full) {
			t.Fatalf("%+v: %g in %g h, %g in %g h", w, a, fast, b, slow)
		}
	})
}

// TestWellsFitPeukert makes sure that the wells of each chemistry are the least-squares fit
// to Peukert's law that their comments claim: no neighbour on the grid of two decimals fits better.
func TestWellsFitPeukert(t *testing.T) {
	for _, c := range []struct {
		Chemistry
		exponent float64
		worst    float64
	}{{LeadAcid(), 1.2, 0.02}, {Lithium(), 1.05, 0.007}} {
		times := []float64{1, 2, 3, 5, 8, 10, 20}
		misfit := func(share, rate float64) (sum, worst float64) {
			w := Wells{Full: 1, Share: share, Rate: rate}
			var dot, square float64 // the best full charge for these wells, in closed form
			for _, h := range times {
				r := w.Capacity(h) / math.Pow(h/10, 1-1/c.exponent)
				dot, square = dot+r, square+r*r
			}
			for _, h := range times {
				d := dot/square*w.Capacity(h)/math.Pow(h/10, 1-1/c.exponent) - 1
				sum, worst = sum+d*d, max(worst, math.Abs(d))
			}
			return sum, worst
		}
		best, worst := misfit(c.WellShare, c.WellRate)
		for _, d := range [][2]float64{{0.01, 0}, {-0.01, 0}, {0, 0.01}, {0, -0.01}} {
			if m, _ := misfit(c.WellShare+d[0], c.WellRate+d[1]); m < best {
				t.Errorf("%s: wells of share %g, rate %g fit better than %g, %g (%.3g against %.3g)", c.Name, c.WellShare+d[0], c.WellRate+d[1], c.WellShare, c.WellRate, m, best)
			}
		}
		if worst > c.worst {
			t.Errorf("%s: a capacity misses Peukert's law by %.2f %%, more than %.2f %%", c.Name, worst*100, c.worst*100)
		}
	}
}

// TestColdGivesNoMore: a colder bank never gives more and never takes more, and what cold locks comes back.
func TestColdGivesNoMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBattery(t)
		if err := b.Prepare(); err != nil {
			t.Fatal(err)
		}
		s := b.At(rapid.Float64Range(0, 1).Draw(t, "charge"))
		warm := quantity.Celsius(rapid.Float64Range(-40, 50).Draw(t, "warm"))
		cold := warm - quantity.Celsius(rapid.Float64Range(0, 40).Draw(t, "colder by"))
		h, _ := b.fade(&s)
		if a, c := b.deliverable(h, warm), b.deliverable(h, cold); c > a {
			t.Fatalf("%g Wh at %g degC, but %g Wh at %g degC", a, warm, c, cold)
		}
		if a, c := b.acceptable(h, warm), b.acceptable(h, cold); c > a {
			t.Fatalf("takes %g Wh at %g degC, but %g Wh at %g degC", a, warm, c, cold)
		}
		if f := b.ColdFactor(cold); f > b.ColdFactor(warm) || f > 1 || f < 0 {
			t.Fatalf("cold factor %g at %g degC, %g at %g degC", f, cold, b.ColdFactor(warm), warm)
		}
	})
}

// TestRatedCapacity: from full, at the rated time and warm, the bank gives its rated capacity;
// and in the cold, very slowly, the cold factor of what lies above the floor.
func TestRatedCapacity(t *testing.T) {
	for _, c := range []Chemistry{LeadAcid(), Lithium()} {
		b := Battery{Chemistry: c, Capacity: 14400, Voltage: 24, Floor: 0.5, Start: 1}
		b.SelfDischarge = 0
		if err := b.Prepare(); err != nil {
			t.Fatal(err)
		}
		if got := b.wells.Capacity(10); math.Abs(got-14400) > 1e-6 {
			t.Errorf("%s gives %g Wh in ten hours, rated 14400", c.Name, got)
		}
		for _, cells := range []quantity.Celsius{25, 0, -10} {
			s, given := b.At(1), quantity.WattHours(0)
			for range 1000 {
				given += b.Step(&s, BatteryIn{Wanted: 100, Temperature: cells}).Discharged
			}
			if want := 7200 * b.ColdFactor(cells); math.Abs(float64(given)-want) > 1e-6 {
				t.Errorf("%s at %g degC gives %g Wh to its floor, want %g", c.Name, cells, given, want)
			}
		}
	}
}

// TestBankFills: a bank that is offered more than it takes ends the hour with its available well
// full, unless its rate limits it, and then it has taken in its rate.
func TestBankFills(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBattery(t)
		if err := b.Prepare(); err != nil {
			t.Fatal(err)
		}
		s := b.At(rapid.Float64Range(0, 1).Draw(t, "charge"))
		out := b.Step(&s, BatteryIn{Offered: 1e6, Temperature: 25})
		most, level := b.ChargeRate*float64(b.Capacity), b.WellShare*b.full
		stored := float64(out.Charged - out.Loss)
		if math.Abs(stored-float64(out.Charged)*b.Efficiency) > rounding*stored {
			t.Fatalf("took in %g Wh and kept %g Wh, at an efficiency of %g", out.Charged, stored, b.Efficiency)
		}
		fills, limited := math.Abs(float64(s.Available)-level) < 1e-9*level, math.Abs(float64(out.Charged)-most) < 1e-9*most
		if !fills && !limited || float64(out.Charged) > most*(1+1e-9) || float64(s.Available) > level*(1+1e-9) {
			t.Fatalf("took in %g Wh (rate %g), the available well holds %g of %g Wh", out.Charged, most, s.Available, level)
		}
	})
}

// TestWearCountsAsRainflow: the counting in bounded memory gives the cycles and the
// damage of the standard's counting of the whole history.
func TestWearCountsAsRainflow(t *testing.T) {
	a, err := LeadAcid().Ager()
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		steps := rapid.SliceOfN(rapid.IntRange(0, levels), 2, 400).Draw(t, "levels")
		var w Wear
		history := make([]float64, len(steps))
		for i, step := range steps {
			history[i] = float64(step)
			a.Add(&w, float64(step)/levels)
		}
		cycles := Rainflow(history)
		life := a.Life(&w, 8766)
		if want := FullCycles(cycles, levels); math.Abs(life.FullCycles-want) > 1e-9*max(1, want) {
			t.Fatalf("%g full cycles, the whole history has %g", life.FullCycles, want)
		}
		for i := range cycles {
			cycles[i].Range /= levels
		}
		if want := Miner(LeadAcid().CycleLife, cycles); math.Abs(life.Damage-want) > 1e-9*max(1, want) {
			t.Fatalf("damage %g, the whole history did %g", life.Damage, want)
		}
	})
}

// TestWearStaysInItsMemory feeds the history that keeps most swings open: swings that shrink by one level.
func TestWearStaysInItsMemory(t *testing.T) {
	a, err := Lithium().Ager()
	if err != nil {
		t.Fatal(err)
	}
	var w Wear
	var history []float64
	add := func(level int) {
		history = append(history, float64(level))
		a.Add(&w, float64(level)/levels)
	}
	for low, high := 0, levels; low < high; low, high = low+1, high-1 {
		add(low)
		add(high)
	}
	for range 3 {
		add(0)
		add(levels)
	}
	want := FullCycles(Rainflow(history), levels)
	if life := a.Life(&w, 8766); math.Abs(life.FullCycles-want) > 1e-9*want {
		t.Errorf("%g full cycles, the whole history has %g", life.FullCycles, want)
	}
}

// TestRainflowEdges: no swing, one swing, plateaus, and the same history shifted or stretched.
func TestRainflowEdges(t *testing.T) {
	for _, flat := range [][]float64{nil, {3}, {3, 3, 3}} {
		if got := Rainflow(flat); len(got) != 0 {
			t.Errorf("%v has cycles %v, want none", flat, got)
		}
		if got := RainflowRepeating(flat); len(got) != 0 {
			t.Errorf("%v repeated has cycles %v, want none", flat, got)
		}
	}
	if got := Rainflow([]float64{1, 2, 2, 5}); len(got) != 1 || got[0] != (Cycle{4, 0.5}) {
		t.Errorf("a rise gives %v, want half a cycle of 4", got)
	}
	if got := RainflowRepeating([]float64{1, 2, 2, 5}); len(got) != 1 || got[0] != (Cycle{4, 1}) {
		t.Errorf("a rise repeated gives %v, want a cycle of 4", got)
	}
	var moved []float64
	for _, v := range figure6 {
		moved = append(moved, v, v)
	}
	for i := range moved {
		moved[i] = 2*moved[i] + 16
	}
	want := Rainflow(figure6)
	for i, c := range Rainflow(moved) {
		if c.Range != 2*want[i].Range || c.Count != want[i].Count {
			t.Errorf("stretched history: cycle %d is %v, want twice %v", i, c, want[i])
		}
	}
}

// TestRepeatingClosesEverything: a history without end has whole cycles only, and the
// largest is its whole range.
func TestRepeatingClosesEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		history := rapid.SliceOfN(rapid.Float64Range(-10, 10), 2, 60).Draw(t, "history")
		cycles := RainflowRepeating(history)
		low, high := history[0], history[0]
		for _, v := range history {
			low, high = min(low, v), max(high, v)
		}
		if low == high {
			t.Skip("flat")
		}
		for _, c := range cycles {
			if c.Count != math.Round(c.Count) {
				t.Fatalf("cycle %v is not whole", c)
			}
		}
		if last := cycles[len(cycles)-1]; last.Range != high-low {
			t.Fatalf("largest cycle %v, whole range %g", last, high-low)
		}
	})
}

// TestCycleLife: the curve goes through the table, falls with depth, and a battery that has
// done its cycles is worn out.
func TestCycleLife(t *testing.T) {
	for _, c := range []Chemistry{LeadAcid(), Lithium()} {
		for _, p := range c.CycleLife {
			if got := CyclesAt(c.CycleLife, p.Depth); math.Abs(got-p.Cycles) > 1e-9*p.Cycles {
				t.Errorf("%s at %g: %g cycles, the table says %g", c.Name, p.Depth, got, p.Cycles)
			}
			if got := Miner(c.CycleLife, []Cycle{{p.Depth, p.Cycles}}); math.Abs(got-1) > 1e-9 {
				t.Errorf("%s: %g cycles of %g use %g of its life", c.Name, p.Cycles, p.Depth, got)
			}
		}
		for depth := 0.01; depth < 1; depth += 0.01 {
			if a, b := CyclesAt(c.CycleLife, depth), CyclesAt(c.CycleLife, depth+0.01); !(b < a) {
				t.Errorf("%s: %g cycles at %g, but %g at %g", c.Name, a, depth, b, depth+0.01)
			}
		}
	}
	a, err := LeadAcid().Ager()
	if err != nil {
		t.Fatal(err)
	}
	var w Wear
	for hour := range 24 * 365 { // half of the charge every day
		a.Add(&w, []float64{1, 0.5}[hour/12%2])
	}
	life := a.Life(&w, 24*365)
	// a level is 1/255, so from full to half is 127 levels; 2500 such cycles at one a day
	if want := CyclesAt(LeadAcid().CycleLife, 127.0/255) / 365; math.Abs(life.Years/want-1) > 0.01 || !life.ByCycles {
		t.Errorf("daily halves wear it out in %+v, want %.2f years", life, want)
	}
	var idle Wear
	for range 24 * 365 {
		a.Add(&idle, 1)
	}
	if life := a.Life(&idle, 24*365); life.Years != 10 || life.ByCycles || !math.IsInf(life.CycleYears, 1) {
		t.Errorf("an idle bank lasts %+v, want its calendar life of 10 years", life)
	}
}
