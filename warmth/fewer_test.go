package warmth

import (
	"math"
	"testing"
)

// A house of mass and glass lived through a year in full and with fewer ways of decay: the air stays within 0.05 K by root of
// mean square, every yearly heat within 0.1 % of the largest, and the heat balance closes as it does in full.
func TestFewerWaysLiveTheSameYear(t *testing.T) {
	sky := made(t, 365, func(h int) (temperature, light float64) {
		season := 2 * math.Pi * float64(h-20*24) / (365 * 24)
		temperature, light = daily(h)
		return temperature - 9*math.Cos(season), light * (1 - 0.5*math.Cos(season))
	})
	usual := usualCase()
	usual.heavy, usual.floats = true, true
	d := usual.design()
	full, err := prepare(d, sky, fewer{})
	if err != nil {
		t.Fatal(err)
	}
	few := prepared(t, d, sky)
	if few.modes >= full.modes || few.modes > 40 {
		t.Errorf("%d ways of decay are left of %d, want 40 at most", few.modes, full.modes)
	}
	var squares float64
	var sums [2]Sums
	var states, starts [2]State
	for k, r := range []*Rooms{full, few} {
		states[k] = r.Start(In{})
		starts[k] = states[k]
	}
	var outs [2]Out
	for h := range 365 * 24 {
		for k, r := range []*Rooms{full, few} {
			r.Step(&states[k], &In{Hour: h}, &outs[k])
			sums[k].Add(r, &outs[k])
		}
		off := float64(outs[0].Rooms[0].Mean - outs[1].Rooms[0].Mean)
		squares += off * off
	}
	if rms := math.Sqrt(squares / (365 * 24)); rms > 0.05 {
		t.Errorf("the air is off by %.3f K, want at most 0.05", rms)
	} else {
		t.Logf("%d of %d ways, air off by %.4f K", few.modes, full.modes, rms)
	}
	largest := 0.0
	want := full.Heats(&sums[0])
	for _, w := range want {
		largest = max(largest, math.Abs(float64(w.Out)))
	}
	for k, got := range few.Heats(&sums[1]) {
		if off := math.Abs(float64(got.Out - want[k].Out)); off > 0.001*largest {
			t.Errorf("through %s %s pass %.1f kWh, in full %.1f", got.Name, want[k].Name, float64(got.Out)/1000, float64(want[k].Out)/1000)
		}
	}
}
