package waste

import (
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

// The wettest spell is the one that adding up every spell finds.
func TestWettestIsTheWettest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rain := make([]quantity.Millimetres, rapid.IntRange(0, 40).Draw(t, "days"))
		bare := make([]bool, len(rain))
		for i := range rain {
			rain[i], bare[i] = quantity.Millimetres(rapid.IntRange(0, 20).Draw(t, "rain")), rapid.IntRange(0, 4).Draw(t, "bare") > 0
		}
		span := rapid.IntRange(1, 8).Draw(t, "span")
		best, some := -1.0, false
		for i := 0; i+span <= len(rain); i++ {
			sum, all := 0.0, true
			for j := i; j < i+span; j++ {
				sum, all = sum+float64(rain[j]), all && bare[j]
			}
			if all {
				best, some = max(best, sum), true
			}
		}
		first, total, found := Wettest(rain, bare, span)
		if found != some || some && float64(total) != best {
			t.Fatalf("found %v with %g mm, want %v with %g mm", found, total, some, best)
		}
		for i := first; found && i < first+span; i++ {
			total -= rain[i]
		}
		if found && total != 0 {
			t.Fatalf("the spell from day %d does not hold its rain: %g mm over", first, total)
		}
	})
}

// A trench that holds only by what trees drink in summer fails in winter.
func TestTrenchSizedOnSummerFailsInWinter(t *testing.T) {
	g := Trench{Length: 20, Width: 0.6, Gravel: 0.3, Pores: 0.35, Catch: 12, RunsOff: 0.3, Cover: 480, Soil: Soil{Fresh: 40, Long: 8.1, Clogs: UsualClogs}, Grass: 1, Grove: UsualGrove(4)}
	const inflow = 300 // L a day; the clogged ground takes 97 to 198
	s := TrenchState{Mat: 1}
	var out TrenchOut
	for range 60 {
		g.Day(&s, &TrenchDayIn{Day: 196, Age: 15})
		g.Step(&s, &TrenchIn{Hours: 24, Inflow: inflow, Reference: 6}, &out)
		if out.Surfaced > 0 {
			t.Fatalf("%g L surface in summer", out.Surfaced)
		}
	}
	got := g.Winter(&WinterIn{Rain: make([]quantity.Millimetres, 60), Inflow: inflow, Reference: 0.5})
	if got.Days != 60 {
		t.Errorf("in a rainless winter sewage surfaces on %d of 60 days, want all", got.Days)
	}
	check.Balance(t, float64(got.Surfaced), 60*(inflow-8.1*(12+2*20.6*0.3)), "L on the ground in 60 days")
}

// In a spell without end the trench gives to the ground and the air what it gets: at a steady stand the bottom
// and the wet sides take the inflow, r (bottom + rim h) = Q.
func TestSteadyStand(t *testing.T) {
	g := Trench{Length: 20, Width: 0.6, Gravel: 0.3, Pores: 0.35, Soil: Soil{Fresh: 40, Long: 8, Clogs: UsualClogs}}
	got := g.Winter(&WinterIn{Rain: make([]quantity.Millimetres, 2000), Inflow: 150})
	check.Balance(t, float64(got.Highest), (150.0/8-12)/(2*20.6), "steady stand in m")
	if got.Days != 0 {
		t.Errorf("%d days surface", got.Days)
	}
}
