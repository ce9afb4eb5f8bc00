package ground

import (
	"testing"

	"suffice/quantity"
)

// What is kept is what is computed anew, and only what is alike to the last bit is kept for it: every thing that decides a section is part of the key.
func TestKeptIsComputed(t *testing.T) {
	var k Kept
	coarse := Grid{Finest: .4, Grows: 2.5, Coarsest: 6}
	first, _, err := k.Reduced(invented(), coarse, UsualSurfaces(), 10, UsualModes())
	if err != nil {
		t.Fatal(err)
	}
	if again, _, _ := k.Reduced(invented(), coarse, UsualSurfaces(), 10, UsualModes()); again != first {
		t.Error("the same section was reduced twice")
	}
	wetter, resists := invented(), UsualSurfaces()
	wetter.Earth.Conductivity *= 1.0000001
	resists.Wall *= 1.0000001
	thicker := invented()
	thicker.Back = append([]Layer(nil), thicker.Back...)
	thicker.Back[0].Thick += 1e-9
	for name, ask := range map[string]struct {
		d Dug
		g Grid
		r Surfaces
		l quantity.Metres
	}{
		"earth": {wetter, coarse, UsualSurfaces(), 10}, "grid": {invented(), Grid{.41, 2.5, 6}, UsualSurfaces(), 10}, "films": {invented(), coarse, resists, 10},
		"length": {invented(), coarse, UsualSurfaces(), 10.5}, "back wall": {thicker, coarse, UsualSurfaces(), 10},
	} {
		if other, _, err := k.Reduced(ask.d, ask.g, ask.r, ask.l, UsualModes()); err != nil || other == first {
			t.Errorf("with another %s the section kept was given (%v)", name, err)
		}
	}
}
