package gas

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

// The sheet gas-hour, told any hour of any bottles, gives all of it again to the last bit.
func TestGasHourTellsTheHour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := Supply{Fuel: rapid.SampledFrom([]Fuel{Propane(), Butane(), Mixed()}).Draw(t, "fuel"), Bottle: quantity.Kilograms(rapid.Float64Range(0.1, 60).Draw(t, "bottle")),
			Bottles: rapid.IntRange(1, 5).Draw(t, "bottles"), Lead: rapid.Float64Range(0, 3).Draw(t, "lead")}
		if err := y.Prepare(); err != nil {
			t.Fatal(err)
		}
		s := y.Full()
		for range rapid.IntRange(1, 60).Draw(t, "hours") {
			in := SupplyIn{Want: quantity.WattHours(rapid.Float64Range(0, 20000).Draw(t, "want")), Air: quantity.Celsius(rapid.Float64Range(-60, 40).Draw(t, "air"))}
			before := s
			var out SupplyOut
			y.Step(&s, in, &out)
			hold(t, &y, before, in, out, s)
		}
	})
}

func hold(t *rapid.T, y *Supply, before SupplyState, in SupplyIn, out SupplyOut, after SupplyState) {
	h := gasHour()
	w, err := h.Work(y.Tell(before, in))
	if err != nil {
		t.Fatal(err)
	}
	numbers := map[string]float64{"available": float64(y.Available(&before, in.Air)), "burned": float64(out.Burned), "energy": float64(out.Energy), "short": float64(out.Short),
		"emptied": float64(out.Emptied), "arrived": float64(out.Arrived), "held_after": float64(after.Held), "due_after": float64(after.Due)}
	words := map[string]string{"ordered": yes(out.Ordered), "too_cold": yes(out.Cold)}
	for _, r := range w.Results {
		want, number := numbers[r.Name]
		if number && math.Float64bits(want) != math.Float64bits(r.Value.Number) || !number && words[r.Name] != r.Value.Text {
			t.Errorf("%s: the sheet gives %v %q, the hour %v %q", r.Name, r.Value.Number, r.Value.Text, want, words[r.Name])
		}
	}
	if len(w.Results) != len(numbers)+len(words) {
		t.Errorf("%d results, want %d", len(w.Results), len(numbers)+len(words))
	}
}

func TestGasHourRefuses(t *testing.T) {
	for _, args := range []map[string]string{{"bottles": "1.5"}, {"held": "60kg"}, {"due": "0.5h"}} {
		s := gasHour()
		given, err := s.Read(args)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.Work(given); err == nil {
			t.Errorf("%v was taken", args)
		}
	}
}
