package people

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func usual() Rules {
	return Rules{
		Dull: Line{Below: 0.35}, WhenDull: Do{Swap: true, Wait: true},
		Charge: Line{Below: 0.60, Until: 0.70}, WhenCharge: Do{Swap: true},
		Tank: Line{Below: 0.25, Until: 0.35}, WhenTank: Do{Save: true},
		Duty: Line{Below: 0.10, Until: 0.20}, WhenDuty: Do{ChangeTank: true},
		Saves: 0.3,
	}
}

func TestPeopleDoNotWaver(t *testing.T) {
	r, m := usual(), Mind{}
	fine := Signs{Clearness: 0.6, Charge: 0.9, Tank: 0.8, Duty: 0.8}
	at := func(charge float64) *Signs { s := fine; s.Charge = charge; return &s }
	for i, step := range []struct {
		charge float64
		swap   bool
	}{{0.61, false}, {0.59, true}, {0.61, true}, {0.69, true}, {0.70, false}, {0.65, false}, {0.5, true}} {
		if c := r.Decide(&m, at(step.charge)); c.Swap != step.swap || c.Save != 0 || c.ChangeTank {
			t.Errorf("step %d, charge %v: %+v, want swap %v alone", i, step.charge, c, step.swap)
		}
	}
}

func TestWhatCannotBeToldIsNotBad(t *testing.T) {
	r, m := usual(), Mind{}
	nan := math.NaN()
	if c := r.Decide(&m, &Signs{nan, nan, nan, nan, false}); c != (Choice{}) || m != (Mind{}) {
		t.Errorf("nothing can be told: %+v, mind %+v", c, m)
	}
}

func TestNobodyThereNobodyActs(t *testing.T) {
	r, m := usual(), Mind{Tank: true}
	if c := r.Decide(&m, &Signs{Away: true}); c != (Choice{}) || m != (Mind{Tank: true}) {
		t.Errorf("away: %+v, mind %+v, want nothing done and the mind kept", c, m)
	}
}

func TestTankIsChangedOnceAndWhenEmpty(t *testing.T) {
	r, m := usual(), Mind{}
	var changes []float64
	for _, duty := range []float64{0.3, 0.09, 0.08, 0.05, 0, 0.5, 0.09} {
		if r.Decide(&m, &Signs{Clearness: 1, Charge: 1, Tank: 1, Duty: duty}).ChangeTank {
			changes = append(changes, duty)
		}
	}
	if len(changes) != 3 || changes[0] != 0.09 || changes[1] != 0 || changes[2] != 0.09 {
		t.Errorf("tanks were changed at %v, want at 0.09, when empty, and at 0.09 again", changes)
	}
}

// A lower line never makes people act in more hours, as long as they stop where they begin.
func TestLowerLineActsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.Float64Range(0, 1).Draw(t, "a")
		b := rapid.Float64Range(0, a).Draw(t, "b")
		s := rapid.Float64Range(0, 1).Draw(t, "sign")
		high, low := Line{Below: a}, Line{Below: b}
		if low.bad(false, s) && !high.bad(false, s) {
			t.Fatalf("sign %v is bad below %v but not below %v", s, b, a)
		}
	})
}

// What people expect from what they saw depends on nothing that is still to come.
func TestExpectationDoesNotKnowTheFuture(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const days = 3
		var top [24 * days]float64
		var global, other [24 * days]float64
		for i := range top {
			if h := i % 24; h > 5 && h < 19 {
				top[i] = 1000
				global[i] = rapid.Float64Range(0, 800).Draw(t, "global")
			}
		}
		now := rapid.IntRange(0, 24*days-1).Draw(t, "now")
		other = global
		for i := now; i < len(other); i++ {
			other[i] = top[i] * 0.5
		}
		for _, f := range []Foresight{Seen, Yesterday} {
			a, b := Expect(global[:], top[:], f)[now], Expect(other[:], top[:], f)[now]
			if a != b && !(math.IsNaN(a) && math.IsNaN(b)) {
				t.Fatalf("foresight %d at hour %d: %v, with another future %v", f, now, a, b)
			}
		}
	})
}

func TestExpectation(t *testing.T) {
	var global, top [48]float64
	for i := range top {
		if h := i % 24; h >= 6 && h < 18 {
			top[i] = 1000
			global[i] = 600
			if i >= 24 {
				global[i] = 300
			}
		}
	}
	seen, forecast, before := Expect(global[:], top[:], Seen), Expect(global[:], top[:], Forecast), Expect(global[:], top[:], Yesterday)
	for _, c := range []struct {
		what string
		got  float64
		want float64
	}{
		{"at dawn of the second day: as yesterday", seen[24+6], 0.6},
		{"at its noon: half yesterday, half what was seen", seen[24+12], 0.45},
		{"at its dusk: what was seen", seen[24+18], 0.3},
		{"forecast at dawn", forecast[24+6], 0.3},
		{"yesterday alone, at noon", before[24+12], 0.6},
		{"first day at noon, from what was seen alone", seen[12], 0.6},
	} {
		if math.Abs(c.got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	if !math.IsNaN(seen[0]) || !math.IsNaN(before[12]) {
		t.Errorf("before anything was seen: %v and %v, want not a number", seen[0], before[12])
	}
}

func TestFaultsOfRules(t *testing.T) {
	r := usual()
	if err := r.Check(); err != nil {
		t.Errorf("good rules refused: %v", err)
	}
	r.Saves, r.Tank.Below = 1.5, -1
	if err := r.Check(); err == nil {
		t.Error("saving 150 % below a tank share of -1 was taken")
	}
}
