package soil

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func anyEarth(t *rapid.T) Earth {
	return Earth{
		Name:       "any",
		DryDensity: rapid.Float64Range(1000, 2000).Draw(t, "density"),
		Quartz:     rapid.Float64Range(0, 1).Draw(t, "quartz"),
		Coarse:     rapid.Bool().Draw(t, "coarse"),
	}
}

// More water never leads less warmth and always holds more of it.
func TestWetterLeadsAndHoldsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyEarth(t)
		w := rapid.Float64Range(0, e.Pores()).Draw(t, "water")
		more := rapid.Float64Range(w, e.Pores()).Draw(t, "more")
		for _, pair := range [][2]Ground{{e.At(w), e.At(more)}, {e.Frozen(w), e.Frozen(more)}} {
			if a, b := pair[0], pair[1]; b.Conductivity < a.Conductivity-1e-12 || b.Capacity < a.Capacity {
				t.Errorf("%.3f to %.3f water: λ %.4f to %.4f, ρc %.4g to %.4g", w, more, a.Conductivity, b.Conductivity, a.Capacity, b.Capacity)
			}
		}
	})
}

// Without water there is nothing to freeze; full pores lead better as ice.
func TestIceLeadsBetterThanWater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyEarth(t)
		if a, b := e.At(0), e.Frozen(0); a.Conductivity != b.Conductivity || a.Capacity != b.Capacity {
			t.Errorf("dry: %+v, frozen %+v", a, b)
		}
		if a, b := e.At(e.Pores()), e.Frozen(e.Pores()); b.Conductivity <= a.Conductivity || b.Capacity >= a.Capacity {
			t.Errorf("full: %+v, frozen %+v", a, b)
		}
	})
}

// A period four times as long reaches twice as deep.
func TestReachGrowsWithTheRootOfThePeriod(t *testing.T) {
	for _, g := range Kinds() {
		if a, b := g.Penetration(Year), g.Penetration(4*Year); b < 2*a*(1-1e-12) || b > 2*a*(1+1e-12) {
			t.Errorf("%s: %v and %v", g.Name, a, b)
		}
	}
}

func TestUnknownGroundNamesTheKnown(t *testing.T) {
	if _, err := Named("cheese"); err == nil || !strings.Contains(err.Error(), "sand or gravel") {
		t.Errorf("got %v", err)
	}
}

// The soil taken where nothing is known lies between the dry and the wet grounds of the standards.
func TestLoamLiesBetweenTheStandards(t *testing.T) {
	loam, water := Loam(), LoamWater()
	for _, w := range []float64{water.Wilting, water.FieldCapacity} {
		if g := loam.At(w); g.Conductivity < 0.5 || g.Conductivity > 1.8 || g.Capacity < 1.45e6 || g.Capacity > 3e6 {
			t.Errorf("%.2f water: %+v", w, g)
		}
	}
	if got := float64(water.Held(1)); got < 130-1e-9 || got > 130+1e-9 {
		t.Errorf("a metre of loam gives roots %g mm, want 130", got)
	}
}

// The loam taken where nothing is known is the table's, and finer soil never holds less against its weight.
func TestTexturesRunFromCoarseToFine(t *testing.T) {
	if got, err := WaterOf("loam"); err != nil || got != LoamWater() {
		t.Errorf("loam holds %+v, %v; want %+v", got, err, LoamWater())
	}
	before := Water{}
	for _, x := range Textures() {
		w := x.Middle()
		if w.Wilting >= w.FieldCapacity || w.FieldCapacity < before.FieldCapacity || w.Wilting < before.Wilting-0.015 {
			t.Errorf("%s holds %+v, the coarser one before it %+v", x.Name, w, before)
		}
		before = w
	}
	if _, err := WaterOf("cheese"); err == nil || !strings.Contains(err.Error(), "sandy loam") {
		t.Errorf("got %v", err)
	}
}
