package hotwater

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/sheet"
)

// drawSystem makes any system that Prepare accepts.
func drawSystem(t *rapid.T) *System {
	y := Usual()
	c := &y.Collector
	c.Area = quantity.SquareMetres(rapid.SampledFrom([]float64{0, 1, 2, 4, 8, 20}).Draw(t, "area"))
	c.Eta0 = rapid.Float64Range(0.5, 0.9).Draw(t, "eta0")
	c.A1 = rapid.Float64Range(0.5, 8).Draw(t, "a1")
	c.A2 = rapid.Float64Range(0, 0.03).Draw(t, "a2")
	c.Flow = rapid.Float64Range(10, 80).Draw(t, "flow")
	c.Exchanger = rapid.SampledFrom([]float64{0, 100, 400}).Draw(t, "exchanger")
	c.Difference = quantity.Kelvins(rapid.Float64Range(0, 10).Draw(t, "difference"))
	c.Frost = rapid.SampledFrom([]Frost{NoFrost, DrainBack, Antifreeze, Recirculate}).Draw(t, "frost")
	c.Pump = quantity.Watts(rapid.SampledFrom([]float64{0, 25}).Draw(t, "pump"))
	y.Store.Holds = quantity.Litres(rapid.SampledFrom([]float64{60, 150, 300, 1000}).Draw(t, "holds"))
	y.Store.UpperShare = rapid.Float64Range(0.2, 0.8).Draw(t, "upper share")
	y.Store.Loss = rapid.Float64Range(0, 5).Draw(t, "loss")
	y.Store.Limit = quantity.Celsius(rapid.Float64Range(65, 95).Draw(t, "limit"))
	y.Backup.By = rapid.SampledFrom([]Source{NoBackup, GasAfter, GasUpper, ElectricUpper}).Draw(t, "backup")
	y.Backup.Set = quantity.Celsius(rapid.Float64Range(35, 62).Draw(t, "set"))
	y.Backup.Efficiency = rapid.Float64Range(0.6, 1).Draw(t, "efficiency")
	y.Backup.Power = quantity.Watts(rapid.Float64Range(300, 9000).Draw(t, "power"))
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	return &y
}

func drawState(t *rapid.T, y *System) State {
	upper := rapid.Float64Range(5, float64(y.Store.Limit)).Draw(t, "upper")
	return State{Upper: quantity.Celsius(upper), Lower: quantity.Celsius(rapid.Float64Range(5, upper).Draw(t, "lower"))}
}

// drawIn makes an hour, quiet or busy.
func drawIn(t *rapid.T) In {
	in := In{
		Air:      quantity.Celsius(rapid.Float64Range(-25, 40).Draw(t, "air")),
		Room:     quantity.Celsius(rapid.Float64Range(5, 30).Draw(t, "room")),
		Cold:     quantity.Celsius(rapid.Float64Range(2, 25).Draw(t, "cold")),
		Tap:      quantity.Celsius(rapid.Float64Range(20, 60).Draw(t, "tap")),
		Pump:     rapid.SampledFrom([]float64{0, 0.4, 1}).Draw(t, "pump share"),
		Electric: quantity.WattHours(rapid.SampledFrom([]float64{0, 500, 9000}).Draw(t, "electric")),
		Fuel:     quantity.WattHours(rapid.SampledFrom([]float64{0, 500, 1e6}).Draw(t, "fuel")),
	}
	if rapid.Bool().Draw(t, "sunny") {
		in.Light = rapid.Float64Range(0, 900).Draw(t, "light")
	}
	if rapid.Bool().Draw(t, "drawing") {
		in.Litres = quantity.Litres(rapid.Float64Range(0, 300).Draw(t, "litres"))
	}
	return in
}

// balance holds one hour to its conservation sentence.
func balance(t check.Tester, y *System, before, after State, out *Out) {
	t.Helper()
	gained := y.Held(&after, 0) - y.Held(&before, 0)
	check.Balance(t, float64(out.Solar+out.Gas+out.Electric), float64(out.Delivered+out.Loss+out.FrostHeat+gained),
		"Wh from sun, gas and element = delivered, lost, spent on frost and kept")
}

func TestHeatIsConserved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		s := drawState(t, y)
		for range 50 {
			before, in := s, drawIn(t)
			var out Out
			y.Step(&s, &in, &out)
			balance(t, y, before, s, &out)
			want := 4.186 / 3.6 * float64(in.Litres) * max(0, float64(in.Tap-in.Cold))
			if out.Short > 0 {
				check.Balance(t, want, float64(out.Delivered+out.Short), "Wh wanted = delivered + short")
			} else {
				check.Balance(t, want, float64(out.Delivered), "Wh wanted = delivered")
			}
		}
	})
}

// No flow runs backwards, no door gives more than came to it, no hour has more than an hour.
func TestNothingIsMadeUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		s := drawState(t, y)
		for range 50 {
			before, in := s, drawIn(t)
			var out Out
			y.Step(&s, &in, &out)
			for what, v := range map[string]float64{
				"solar": float64(out.Solar), "gas": float64(out.Gas), "electric": float64(out.Electric), "frost heat": float64(out.FrostHeat),
				"short": float64(out.Short), "refused": float64(out.Refused), "fuel": float64(out.Fuel), "electricity": float64(out.ElectricUsed),
				"pump": float64(out.PumpUsed), "hot": float64(out.Hot), "stagnant": out.Stagnant, "unpumped": out.Unpumped, "frost": out.Frost,
			} {
				if v < 0 || math.IsNaN(v) {
					t.Fatalf("%s is %g in %+v from %+v", what, v, in, before)
				}
			}
			if out.Fuel > in.Fuel || out.ElectricUsed > in.Electric || out.Hot > in.Litres*(1+1e-12) && out.Delivered >= 0 {
				t.Fatalf("used more than there was: %+v in %+v from %+v", out, in, before)
			}
			if sunny := float64(y.Collector.Area) * in.Light; float64(out.Solar+out.Refused) > sunny+float64(y.Collector.Area)*50*40 {
				t.Fatalf("solar %g Wh of %g absorbed", float64(out.Solar), sunny)
			}
			if out.Stagnant+out.Unpumped > 1+1e-12 || out.Frost > 1 {
				t.Fatalf("hours over one: %+v", out)
			}
			if b := y.Backup; out.Gas > 0 {
				check.Balance(t, float64(out.Gas), float64(out.Fuel)*b.Efficiency, "gas heat and its fuel")
			}
			if y.Backup.By == NoBackup && (out.Gas != 0 || out.Electric != 0) {
				t.Fatalf("heat from a backup that is not there: %+v", out)
			}
		}
	})
}

// Temperatures stay between the coldest and the hottest thing that touches the store.
func TestTemperaturesStayBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		s := drawState(t, y)
		for range 50 {
			before, in := s, drawIn(t)
			var out Out
			y.Step(&s, &in, &out)
			low := min(float64(before.Lower), float64(before.Upper), float64(in.Cold), float64(in.Room))
			if out.FrostHeat > 0 {
				low = min(low, frostKeep)
			}
			// A flow may miss by a hundredth of its heat, which moves a layer by that share of its fall.
			slack := 1e-9
			if in.Litres > 0 {
				slack += closeEnough * math.Abs(float64(out.Delivered)) / y.p.upper
			}
			high := max(float64(y.Store.Limit), float64(in.Room), float64(in.Cold))
			if float64(s.Lower) < low-slack || float64(s.Upper) < low-slack || float64(s.Upper) > high+slack || float64(s.Lower) > float64(s.Upper)+1e-9 {
				t.Fatalf("upper %.4f lower %.4f outside %.4f to %.4f (slack %g)\nfrom %+v\nin %+v\nout %+v", float64(s.Upper), float64(s.Lower), low, high, slack, before, in, out)
			}
		}
	})
}

// Without sun, draw and backup both layers go to the room as exp(-t UA/C), exactly.
func TestCoolingIsExponential(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		y.Backup.By = NoBackup
		y.Collector.Frost = DrainBack
		if err := y.Prepare(); err != nil {
			t.Fatal(err)
		}
		s := drawState(t, y)
		start := s
		in := In{Air: quantity.Celsius(rapid.Float64Range(-20, 5).Draw(t, "air")), Room: 18}
		hours := rapid.IntRange(1, 300).Draw(t, "hours")
		var lost quantity.WattHours
		for range hours {
			var out Out
			y.Step(&s, &in, &out)
			lost += out.Loss
		}
		left := math.Exp(-float64(hours) * y.Store.Loss / (4.186 / 3.6 * float64(y.Store.Holds)))
		check.Balance(t, float64(s.Upper), 18+float64(start.Upper-18)*left, "upper degC")
		check.Balance(t, float64(s.Lower), 18+float64(start.Lower-18)*left, "lower degC")
		check.Balance(t, float64(lost+y.Held(&s, 0)), float64(y.Held(&start, 0)), "Wh lost and left")
	})
}

// The stand-in for the exponential is positive, falls, and keeps the balance for any step.
func TestRelaxationBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := math.Exp(rapid.Float64Range(-20, 12).Draw(t, "ln x"))
		r := relax(x)
		check.Balance(t, r.end, 1-x*r.mean, "end")
		if x > 1e-6 { // below, 1-m cancels to the last digits
			check.Balance(t, r.mean, 1-x*r.ramp, "mean")
		}
		if !(r.end > 0 && r.end < 1 && r.mean > 0 && r.ramp > 0) {
			t.Fatalf("x %g: %+v", x, r)
		}
		if off := math.Abs(r.end - math.Exp(-x)); off > math.Pow(x, 5)/120+4e-16 { // two units in the last place of 1
			t.Fatalf("x %g: off by %g from exp, over x5/120", x, off)
		}
		if next := relax(x * 1.01); next.end >= r.end {
			t.Fatalf("x %g: does not fall", x)
		}
	})
}

// A busy day run twice over half the litres each is the same as once: the draw is linear in
// nothing, but a dry tap must leave no trace, and In.Pump = 0 no sun.
func TestNoPowerNoSunAndDryTapNoDraw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		y.Collector.Pump = 25
		if err := y.Prepare(); err != nil {
			t.Fatal(err)
		}
		s := drawState(t, y)
		in := drawIn(t)
		in.Light, in.Pump = 900, 0
		wants := y.Want(&s, &in).Pump > 0
		var out Out
		y.Step(&s, &in, &out)
		if out.Solar != 0 || out.Refused != 0 || out.PumpUsed != 0 {
			t.Fatalf("sun without pump: %+v", out)
		}
		if wants && out.Unpumped != 1 && out.Frost == 0 {
			t.Fatalf("the pump was wanted and had nothing, and nobody counted: %+v", out)
		}
		in.Litres = 0
		y.Step(&s, &in, &out)
		if out.Delivered != 0 || out.Hot != 0 || out.Short != 0 {
			t.Fatalf("a dry tap delivered: %+v", out)
		}
	})
}

// What Want asks of the element is what Step uses when it is served in full.
func TestWantIsUsed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		s, in := drawState(t, y), drawIn(t)
		in.Pump = 1
		w := y.Want(&s, &in)
		in.Electric = w.Electric.For(1)
		var out Out
		y.Step(&s, &in, &out)
		// The flow through the store may settle a hundredth apart when the served power is the limit.
		want := 4.186 / 3.6 * float64(in.Litres) * max(0, float64(in.Tap-in.Cold))
		if off := math.Abs(float64(w.Electric) - float64(out.ElectricUsed)); off > 2*closeEnough*want+1e-9*float64(w.Electric) {
			t.Fatalf("the element wanted %g W and used %g Wh\nfrom %+v\nin %+v", float64(w.Electric), float64(out.ElectricUsed), s, in)
		}
		check.Balance(t, float64(w.Pump), float64(out.PumpUsed), "W of the pump")
	})
}

// An element that is served less heats less, and never over its set temperature.
func TestBackupKeepsItsSetTemperature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		y.Backup.By = rapid.SampledFrom([]Source{GasUpper, ElectricUpper}).Draw(t, "upper backup")
		if err := y.Prepare(); err != nil {
			t.Fatal(err)
		}
		s, in := drawState(t, y), drawIn(t)
		before := s
		in.Electric, in.Fuel = 1e6, 1e6
		in.Light = 0
		var out Out
		y.Step(&s, &in, &out)
		heat := float64(out.Gas + out.Electric)
		if heat > 0 && float64(s.Upper) > float64(y.Backup.Set)+1e-9 {
			t.Fatalf("heated %g Wh to %.3f degC, set is %.3f\nfrom %+v\nin %+v", heat, float64(s.Upper), float64(y.Backup.Set), before, in)
		}
		if heat < float64(y.Backup.Power)*(1-1e-12) && float64(s.Upper) < float64(y.Backup.Set)-1e-9 {
			t.Fatalf("only %g Wh of %g W and the layer is at %.3f degC, set is %.3f", heat, float64(y.Backup.Power), float64(s.Upper), float64(y.Backup.Set))
		}
	})
}

// Over a fixed series more collector never burns more gas, within what the pump's start can
// do: it is decided once an hour, so that a store a hair under the start temperature may
// gain an hour of sun that a warmer one misses.
func TestMoreCollectorBurnsNoMoreGas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		y.Backup.By = GasAfter
		y.Collector.Frost = DrainBack
		y.Collector.Area = quantity.SquareMetres(rapid.Float64Range(1, 10).Draw(t, "collector"))
		larger := *y
		larger.Collector.Area *= quantity.SquareMetres(rapid.Float64Range(1, 2).Draw(t, "times"))
		for _, s := range []*System{y, &larger} {
			if err := s.Prepare(); err != nil {
				t.Fatal(err)
			}
		}
		series := drawSeries(t, 24*10)
		s := State{Upper: 40, Lower: 20}
		small, big := gasOver(y, s, series), gasOver(&larger, s, series)
		// Twice a day at most, an hour's gain at the start of the pump: area*U*difference.
		c := &larger.Collector
		slack := 20 * float64(c.Area) * (c.A1 + 2*c.A2*60) * float64(c.Difference)
		if float64(big) > float64(small)*(1+closeEnough)+slack {
			t.Fatalf("%g m2 burn %g Wh, %g m2 burn %g Wh", float64(y.Collector.Area), float64(small), float64(larger.Collector.Area), float64(big))
		}
	})
}

// drawSeries makes hours of mixed days with a draw now and then.
func drawSeries(t *rapid.T, hours int) []In {
	clear := rapid.SliceOfN(rapid.Float64Range(0, 700), hours/24+1, hours/24+1).Draw(t, "light of the days")
	litres := rapid.SliceOfN(rapid.Float64Range(0, 60), 24, 24).Draw(t, "litres by the hour")
	series := make([]In, hours)
	for i := range series {
		series[i] = In{Light: clear[i/24] * max(0, math.Sin(float64(i%24-6)*math.Pi/12)), Air: 5, Room: 15, Cold: 10, Tap: 40, Pump: 1, Fuel: 1e6}
		if l := litres[i%24]; l > 30 {
			series[i].Litres = quantity.Litres(l - 30)
		}
	}
	return series
}

func gasOver(y *System, s State, series []In) (gas quantity.WattHours) {
	var out Out
	for i := range series {
		y.Step(&s, &series[i], &out)
		gas += out.Gas
	}
	return gas
}

// Under constant air the running mean goes there as exp(-t/Days) and never past it; a share
// Swing of it arrives; ice is said and not passed on as cold water.
func TestInletFollowsTheAir(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := Inlet{
			Days:  rapid.Float64Range(0.1, 60).Draw(t, "days"),
			Swing: rapid.Float64Range(0, 1).Draw(t, "swing"),
			Mean:  quantity.Celsius(rapid.Float64Range(-5, 25).Draw(t, "mean")),
		}
		if err := n.Prepare(); err != nil {
			t.Fatal(err)
		}
		s := n.Start()
		air := rapid.Float64Range(-30, 40).Draw(t, "air")
		hours := rapid.IntRange(1, 500).Draw(t, "hours")
		var out InletOut
		for range hours {
			out = n.Step(&s, quantity.Celsius(air))
			if low, high := min(air, float64(n.Mean)), max(air, float64(n.Mean)); float64(s.Running) < low-1e-9 || float64(s.Running) > high+1e-9 {
				t.Fatalf("the mean is at %g degC, outside %g to %g", float64(s.Running), low, high)
			}
		}
		want := air + (float64(n.Mean)-air)*math.Exp(-float64(hours)/(24*n.Days))
		check.Balance(t, float64(s.Running), want, "running mean")
		cold := float64(n.Mean) + n.Swing*(want-float64(n.Mean))
		if out.Frozen != (out.Cold == 0) || cold > 1e-6 && math.Abs(float64(out.Cold)-cold) > 1e-6 || cold < -1e-6 && !out.Frozen {
			t.Fatalf("cold water %+v, reckoned %g degC", out, cold)
		}
	})
}

func TestFaultsComeTogether(t *testing.T) {
	y := Usual()
	y.Collector.Eta0, y.Collector.Flow, y.Store.Holds, y.Store.Limit = 2, 0, -1, 200
	y.Backup.By, y.Backup.Efficiency = GasAfter, 0
	err := y.Prepare()
	if err == nil {
		t.Fatal("an impossible system was taken")
	}
	for _, what := range []string{"eta0 of 2", "flow of 0", "store of -1", "limit of 200", "efficiency of 0"} {
		if !strings.Contains(err.Error(), what) {
			t.Errorf("the faults do not name %q: %v", what, err)
		}
	}
}

func TestEpisodes(t *testing.T) {
	e := Episodes{Trifle: 500}
	var s EpisodesState
	for _, day := range []quantity.WattHours{0, 600, 700, 0, 500, 501, 0, 0, 2000, 2000, 2000} {
		e.EndDay(&s, day)
	}
	if want := (EpisodesState{Count: 3, Days: 6, Current: 3, Longest: 3}); s != want {
		t.Errorf("got %+v, want %+v", s, want)
	}
}

func TestStepAllocatesNothing(t *testing.T) {
	y, hours := benchYear(GasAfter)
	s := State{Upper: 50, Lower: 30}
	var out Out
	if n := testing.AllocsPerRun(5, func() {
		for i := range hours {
			y.Want(&s, &hours[i])
			y.Live(&s, &hours[i], &out)
		}
	}); n != 0 {
		t.Errorf("a year made %v allocations, want none", n)
	}
}

// benchYear is a system and 8736 invented hours: sun by a sine, every third day dull, and
// four people's draws in seven hours of the day.
func benchYear(by Source) (*System, []In) {
	y := Usual()
	y.Backup.By = by
	if err := y.Prepare(); err != nil {
		panic(err)
	}
	hours := make([]In, 24*364)
	for i := range hours {
		hour, day := float64(i%24), i/24
		season := math.Sin(2 * math.Pi * float64(day-80) / 365)
		light := max(0, math.Sin((hour-6)*math.Pi/12)) * (500 + 150*season)
		if day%3 == 0 {
			light *= 0.2
		}
		in := In{Light: light, Air: quantity.Celsius(10 + 9*season + 4*math.Sin((hour-9)*math.Pi/12)),
			Room: 18, Cold: quantity.Celsius(11 + 5*season), Tap: 40, Pump: 1, Electric: 2000, Fuel: 1e6}
		switch i % 24 {
		case 6, 7, 8, 12, 19, 20, 21:
			in.Litres = 24
		}
		hours[i] = in
	}
	return &y, hours
}

func BenchmarkYear(b *testing.B) {
	for name, by := range map[string]Source{"gas after": GasAfter, "element": ElectricUpper, "none": NoBackup} {
		b.Run(name, func(b *testing.B) {
			y, hours := benchYear(by)
			s := State{Upper: 50, Lower: 30}
			var out Out
			b.ReportAllocs()
			for b.Loop() {
				for i := range hours {
					y.Want(&s, &hours[i])
					y.Live(&s, &hours[i], &out)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(hours)), "ns/hour")
		})
	}
}

func TestSheetsAnswerBare(t *testing.T) {
	named := map[string][]string{
		"collector": {"efficiency", "heat", "stagnation"}, "hot-water": {"energy", "legionella_rule"}, "hot-water-hour": {"upper", "lower", "solar", "delivered"},
	}
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil {
			t.Errorf("%s: %v", s.Name, err)
		}
		for _, name := range named[s.Name] {
			if !slices.ContainsFunc(w.Results, func(r sheet.Result) bool { return r.Name == name }) {
				t.Errorf("%s: no result %q", s.Name, name)
			}
		}
		if len(w.Steps) == 0 {
			t.Errorf("%s shows no working", s.Name)
		}
	}
}

// The sheet of an hour gives the hour's own numbers, to the last bit.
func TestHotWaterHourTellsTheHour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSystem(t)
		s, in := drawState(t, y), drawIn(t)
		h := hourSheet()
		w, err := h.Work(y.Tell(s, in))
		if err != nil {
			t.Fatal(err)
		}
		var out Out
		y.Step(&s, &in, &out)
		got := make(map[string]float64)
		for _, r := range w.Results {
			got[r.Name] = r.Value.Number
		}
		want := map[string]float64{
			"upper": float64(s.Upper), "lower": float64(s.Lower), "solar": float64(out.Solar), "gas": float64(out.Gas), "electric": float64(out.Electric),
			"delivered": float64(out.Delivered), "loss": float64(out.Loss), "frost_heat": float64(out.FrostHeat), "short": float64(out.Short), "refused": float64(out.Refused),
			"fuel_burned": float64(out.Fuel), "electricity_used": float64(out.ElectricUsed), "pump_used": float64(out.PumpUsed), "hot": float64(out.Hot),
			"stagnant": out.Stagnant, "unpumped": out.Unpumped, "frost_hours": out.Frost, "under_50": out.Under50, "under_60": out.Under60,
		}
		for name, v := range want {
			if got[name] != v {
				t.Errorf("%s: the sheet says %v, the hour %v", name, got[name], v)
			}
		}
		if len(got) != len(want) {
			t.Errorf("the sheet has %d results, the hour %d", len(got), len(want))
		}
	})
}
