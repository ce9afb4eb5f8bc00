package hotwater

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site/sun"
)

// result works a sheet and gives one of its numbers.
func result(t *rapid.T, s sheet.Sheet, told map[string]sheet.Value, name string) float64 {
	w, err := s.Work(told)
	if err != nil {
		t.Fatalf("%s: %v", s.Name, err)
	}
	for _, r := range w.Results {
		if r.Name == name {
			return r.Value.Number
		}
	}
	t.Fatalf("%s has no result %s", s.Name, name)
	return 0
}

// Told any light, the sheet collector-hour gives the column of the collector to the last bit.
func TestCollectorHourTellsTheColumn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := func(name string) float64 { return rapid.Float64Range(0, 1).Draw(t, name) }
		c := Collector{Area: 4, Eta0: 0.01 + 0.99*share("eta0"), K50: 0.01 + 0.99*share("k50"), Slope: quantity.Degrees(180 * share("slope"))}
		l := sun.PlaneLight{Incidence: 2*share("cosine") - 1, Beam: quantity.Irradiance(1000 * share("beam")), Sky: quantity.Irradiance(500 * share("sky")), Ground: quantity.Irradiance(200 * share("ground"))}
		got, want := result(t, collectorHour(), c.Tell(l), "absorbed"), c.Fill(nil, []sun.PlaneLight{l})[0]
		if math.Float64bits(got) != math.Float64bits(want) {
			t.Errorf("the sheet gives %v, the column %v", got, want)
		}
	})
}

// Told any hour, the sheet inlet-hour gives the water coming in to the last bit.
func TestInletHourTellsTheHour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := Inlet{Days: rapid.Float64Range(0.1, 100).Draw(t, "days"), Swing: rapid.Float64Range(0, 1).Draw(t, "swing"), Mean: quantity.Celsius(rapid.Float64Range(-5, 25).Draw(t, "mean"))}
		if err := n.Prepare(); err != nil {
			t.Fatal(err)
		}
		s := InletState{Running: quantity.Celsius(rapid.Float64Range(-30, 40).Draw(t, "running"))}
		air := quantity.Celsius(rapid.Float64Range(-40, 45).Draw(t, "air"))
		told := n.Tell(s, air)
		out := n.Step(&s, air)
		if got := result(t, inletHour(), told, "cold"); math.Float64bits(got) != math.Float64bits(float64(out.Cold)) {
			t.Errorf("cold: the sheet gives %v, the hour %v", got, out.Cold)
		}
		if got := result(t, inletHour(), told, "running"); math.Float64bits(got) != math.Float64bits(float64(s.Running)) {
			t.Errorf("running: the sheet gives %v, the hour %v", got, s.Running)
		}
	})
}
