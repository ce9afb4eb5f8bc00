package gas

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

func drawSupply(t *rapid.T) *Supply {
	fuels := []Fuel{Propane(), Butane(), Mixed()}
	s := &Supply{
		Fuel:    rapid.SampledFrom(fuels).Draw(t, "fuel"),
		Bottle:  quantity.Kilograms(rapid.Float64Range(1, 50).Draw(t, "bottle")),
		Bottles: rapid.IntRange(1, 6).Draw(t, "bottles"),
		Lead:    rapid.Float64Range(0, 10).Draw(t, "lead"),
	}
	if err := s.Prepare(); err != nil {
		t.Fatal(err)
	}
	return s
}

func TestNoGasIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSupply(t)
		s := y.Full()
		for range 200 {
			before := s
			in := SupplyIn{
				Want: quantity.WattHours(rapid.Float64Range(0, 60000).Draw(t, "want")),
				Air:  quantity.Celsius(rapid.Float64Range(-30, 35).Draw(t, "air")),
			}
			var out SupplyOut
			y.Step(&s, in, &out)
			check.Balance(t, float64(before.Held)+float64(out.Arrived)*float64(y.Bottle), float64(s.Held+out.Burned), "kg held and come = kg held and burned")
			check.Balance(t, float64(in.Want), float64(out.Energy+out.Short), "Wh wanted = had + short")
			check.Balance(t, float64(out.Energy), float64(y.Fuel.Energy(out.Burned)), "Wh of the kg burned")
			if s.Held < 0 || float64(s.Held) > y.p.whole*(1+1e-12) || s.Due < 0 || out.Short < 0 {
				t.Fatalf("after %+v: state %+v, out %+v", in, s, out)
			}
			if out.Cold && out.Short == 0 {
				t.Fatalf("cold without being short: %+v", out)
			}
		}
	})
}

// What Available promises is what Step gives, to the last bit of a balance.
func TestAvailableIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSupply(t)
		s := y.Full()
		s.Held *= quantity.Kilograms(rapid.Float64Range(0, 1).Draw(t, "held"))
		air := quantity.Celsius(rapid.Float64Range(-50, 35).Draw(t, "air"))
		promised := y.Available(&s, air)
		var out SupplyOut
		y.Step(&s, SupplyIn{Want: promised + 1000, Air: air}, &out)
		check.Balance(t, float64(promised), float64(out.Energy), "promised and given")
	})
}

// An hour of which Rests says that it may be left out would have changed nothing.
func TestRestMayBeLeftOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSupply(t)
		s := y.Full()
		var out SupplyOut
		for range 100 {
			wanted := rapid.SampledFrom([]float64{0, 0, 30000}).Draw(t, "want")
			in := SupplyIn{Want: quantity.WattHours(wanted), Air: quantity.Celsius(rapid.Float64Range(-10, 35).Draw(t, "air"))}
			rests, before, said := y.Rests(&s, &out), s, out
			y.Step(&s, in, &out)
			if rests && in.Want == 0 && (s != before || out != said) {
				t.Fatalf("%+v %+v became %+v %+v", before, said, s, out)
			}
		}
	})
}

func TestBottlesEmptyAndComeBack(t *testing.T) {
	y := Supply{Fuel: Propane(), Bottle: 45, Bottles: 2, Lead: 2}
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	s := y.Full()
	var emptied, arrived, ordered, ordering int
	var burned float64
	for hour := range 24 * 60 {
		var out SupplyOut
		y.Step(&s, SupplyIn{Want: 2000, Air: 15}, &out)
		emptied, arrived, burned = emptied+out.Emptied, arrived+out.Arrived, burned+float64(out.Burned)
		if out.Short != 0 {
			t.Fatalf("hour %d: short %g Wh with a bottle standing by", hour, float64(out.Short))
		}
		if out.Ordered {
			ordered, ordering = ordered+1, hour
		}
		if out.Arrived > 0 && hour-ordering != 48 {
			t.Errorf("delivery %d h after the order, want 48", hour-ordering)
		}
	}
	if want := int(burned / 45); emptied != want || ordered != want {
		t.Errorf("%.1f kg burned: %d bottles emptied, %d ordered, want %d", burned, emptied, ordered, want)
	}
	if arrived != emptied && arrived != emptied-1 {
		t.Errorf("%d emptied and %d came", emptied, arrived)
	}
}

// Colder air, or less in the bottle, never gives more; a butane bottle gives nothing in frost.
func TestColdBottlesGiveLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := drawSupply(t)
		air, warmer := rapid.Float64Range(-60, 40).Draw(t, "air"), rapid.Float64Range(0, 20).Draw(t, "warmer")
		fill, fuller := rapid.Float64Range(0, 1).Draw(t, "fill"), rapid.Float64Range(0, 1).Draw(t, "fuller")
		if fuller < fill {
			fill, fuller = fuller, fill
		}
		less, more := y.p.vapourRate(fill, air), y.p.vapourRate(fuller, air+warmer)
		if less > more || less < 0 {
			t.Fatalf("%s: %g kg/h at %g degC and %g full, %g at %g degC and %g full", y.Fuel.Name, less, air, fill, more, air+warmer, fuller)
		}
		if y.Fuel.Name == "butane" && air <= -0.5 && less != 0 {
			t.Fatalf("butane gives %g kg/h at %g degC", less, air)
		}
	})
}

// A mixture ends as butane, begins at its bubble point, and never boils lower as it empties.
func TestMixtureLosesPropaneFirst(t *testing.T) {
	b := boilingByFill(Mixed())
	for i := range steps {
		if b[i] < b[i+1] {
			t.Errorf("boils at %.2f degC with %d/16 left, at %.2f with %d/16", b[i], i, b[i+1], i+1)
		}
	}
	if b[0] != float64(bubblePoint(0)) || b[steps] != float64(Mixed().Boiling) {
		t.Errorf("ends at %.2f, begins at %.2f degC", b[0], b[steps])
	}
	if b[steps/4] < -20 {
		t.Errorf("a quarter left boils at %.1f degC: its propane should be nearly gone", b[steps/4])
	}
}

// Rayleigh's equation has a closed form for constant relative volatility; the stepping must meet it.
func TestRayleighTwin(t *testing.T) {
	f := Mixed()
	b := boilingByFill(f)
	alpha := propanePressure(0) / butanePressure(0)
	left := func(x float64) float64 { // mass left, by the share of propane in what is left
		ln := (math.Log(x/f.propane) + alpha*math.Log((1-f.propane)/(1-x))) / (alpha - 1)
		return math.Exp(ln) * (x*propaneMass + (1-x)*butaneMass) / (f.propane*propaneMass + (1-f.propane)*butaneMass)
	}
	for i := 1; i < steps; i++ {
		low, high := 1e-12, f.propane
		for range 100 {
			if mid := (low + high) / 2; left(mid) < float64(i)/steps {
				low = mid
			} else {
				high = mid
			}
		}
		want := float64(bubblePoint(low))
		if math.Abs(b[i]-want) > 0.05 { // dn of 1e-4 is at most 2e-3 of a sixteenth, and 16 K lie between full and empty
			t.Errorf("%d/16 left: boils at %.3f degC, closed form %.3f", i, b[i], want)
		}
	}
}

func TestFaultsComeTogether(t *testing.T) {
	y := Supply{Bottle: -1, Bottles: 0, Lead: -2}
	err := y.Prepare()
	if err == nil {
		t.Fatal("a supply of nothing was taken")
	}
	if n := len(err.(interface{ Unwrap() []error }).Unwrap()); n != 4 {
		t.Errorf("%d faults, want 4: %v", n, err)
	}
	if _, err := ByName("coal"); err == nil {
		t.Error("coal was taken for a bottled gas")
	}
}

func TestSheetsAnswerBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil {
			t.Errorf("%s: %v", s.Name, err)
		}
		names := map[string][]string{"gas": {"mass", "bottles", "heating_value"}, "gas-hour": {"burned", "short", "held_after"}}
		if names[s.Name] == nil {
			t.Errorf("%s: say here which results it must have", s.Name)
		}
		for _, name := range names[s.Name] {
			found := false
			for _, r := range w.Results {
				found = found || r.Name == name
			}
			if !found {
				t.Errorf("%s: no result %q", s.Name, name)
			}
		}
	}
}

func TestStepAllocatesNothing(t *testing.T) {
	y := Supply{Fuel: Mixed(), Bottle: 45, Bottles: 2, Lead: 2}
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	s := y.Full()
	var out SupplyOut
	if n := testing.AllocsPerRun(100, func() { y.Step(&s, SupplyIn{Want: 500, Air: 5}, &out) }); n != 0 {
		t.Errorf("an hour made %v allocations, want none", n)
	}
}

func BenchmarkStep(b *testing.B) {
	y := Supply{Fuel: Propane(), Bottle: 45, Bottles: 2, Lead: 2}
	if err := y.Prepare(); err != nil {
		b.Fatal(err)
	}
	s := y.Full()
	var out SupplyOut
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		want := quantity.WattHours(0)
		if i%8 == 0 {
			want = 800
		}
		y.Step(&s, SupplyIn{Want: want, Air: 5}, &out)
	}
}
