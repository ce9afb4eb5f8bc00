package ground

import (
	"math"
	"testing"

	"suffice/soil"
)

// The stand-in loses what the standard's floor loses, steadily and by the swing of a year outside.
func TestStandInLosesWhatTheFloorLoses(t *testing.T) {
	for _, kind := range soil.Kinds()[:3] {
		for _, resists := range []float64{0, 0.5, 2.5} {
			f := Floor{Area: 60, Perimeter: 32, Wall: 0.3, Ground: kind, Resists: resists, Inside: InsideDown, Outside: Outside}
			behind, depth := f.StandIn()
			u := 1 / (f.Inside + f.Resists + behind)
			if want := f.On(); math.Abs(u-want) > 1e-12 {
				t.Errorf("%s with %g m2K/W: U %.4f, the floor's is %.4f", kind.Name, resists, u, want)
			}
			far := Undisturbed{Mean: 10, Swing: 8, Coldest: 30, Diffusivity: kind.DiffusivityPerDay()}
			low, high := math.Inf(1), math.Inf(-1)
			for day := range 365 {
				v := float64(far.At(depth, float64(day)))
				low, high = min(low, v), max(high, v)
			}
			y := f.YearlyOn()
			if got, want := u*60*(high-low)/2, y.Outside*8; math.Abs(got-want) > 0.002*want {
				t.Errorf("%s with %g m2K/W: a swing of %.1f W arrives, the standard lets %.1f W through", kind.Name, resists, got, want)
			}
		}
	}
}
