package sun

import (
	"testing"

	"suffice/internal/check"
	"suffice/site"
)

// A level plane receives what the horizontal does, under every model.
func TestLevelPlaneCloses(t *testing.T) {
	for _, m := range []Model{Perez, HayDavies, HDKR, Isotropic} {
		f := NewFace(Plane{}, 0.2, m, site.Horizon{})
		for _, cosZ := range []float64{0.01, 0.05, 0.2, 0.7, 1} {
			got := f.Light(Moment{cosZ, 3, 1380, 1}, Light{Diffuse: 120, Beam: 500})
			check.Balance(t, float64(got.Total()), 120+500*cosZ, m.String())
		}
	}
}
