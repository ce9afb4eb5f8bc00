package glass

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// A Pane is one sheet of glass or clear plastic in air.
type Pane struct {
	Thickness    quantity.Millimetres
	Index        float64 // refractive index; 1.526 for glass
	Extinction   float64 // 1/m: 4 for low-iron glass, 20 for usual, 32 for greenish
	Conductivity float64 // W/mK, for the heat through it; 1 for glass
	Coating      Coating // the zero Coating is bare glass
}

// Index of glass for sunlight, and its conductivity, W/mK [duffie-beckman 5.1; iso10456, both remembered].
const (
	GlassIndex        = 1.526
	GlassConductivity = 1.0
)

// A Coating replaces what a pane does at normal incidence by measured coefficients. Where Transmitted is 0
// there is no coating: a sheet that lets nothing through is no window.
type Coating struct {
	Transmitted float64 // 0 to 1, the same both ways
	Front, Back float64 // reflected from outside and from inside, 0 to 1
}

// polarised is what a pane does to light of one polarisation.
type polarised struct{ through, front, back float64 }

// faces gives the reflectance of one face for light across and along the plane of incidence
// [fresnel-bouguer; duffie-beckman eq. 5.1.1 to 5.1.3] and the cosine inside the pane.
func faces(cosine, index float64) (across, along, inside float64) {
	inside = math.Sqrt(1 - (1-cosine*cosine)/(index*index)) // Snell
	rs := (cosine - index*inside) / (cosine + index*inside)
	rp := (index*cosine - inside) / (index*cosine + inside)
	return rs * rs, rp * rp, inside
}

// at gives what the pane does for both polarisations at an angle's cosine.
//
// A coated pane keeps the angles of bare, clear glass: what is not thrown back at normal
// incidence shrinks in the proportion in which clear glass lets less light through, alike for both
// polarisations, and its parts let through and taken up keep their proportion. So nothing is lost,
// each part stays between 0 and 1, and at normal incidence stand the coefficients given. True
// coatings differ by some parts in a hundred beyond 60 deg (common practice, no source).
func (p Pane) at(cosine float64) [2]polarised {
	across, along, inside := faces(cosine, p.Index)
	if p.Coating.Transmitted > 0 {
		normal, _, _ := faces(1, p.Index)
		coated := p.Coating.scaled((clear(across) + clear(along)) / (2 * clear(normal)))
		return [2]polarised{coated, coated}
	}
	a := math.Exp(-p.Extinction * float64(p.Thickness) / 1000 / inside) // Bouguer
	return [2]polarised{plate(across, a), plate(along, a)}
}

// plate sums the light between two like faces [duffie-beckman eq. 5.3.1, 5.3.2].
func plate(r, a float64) polarised {
	through := a * (1 - r) * (1 - r) / (1 - r*r*a*a)
	back := r * (1 + a*through)
	return polarised{through, back, back}
}

// clear gives what a plate that takes up nothing lets through, for one face's reflectance
// [duffie-beckman eq. 5.1.7].
func clear(r float64) float64 { return (1 - r) / (1 + r) }

// scaled gives the coating where a share of what enters at normal incidence enters.
func (c Coating) scaled(share float64) polarised {
	return polarised{c.Transmitted * share, 1 - (1-c.Front)*share, 1 - (1-c.Back)*share}
}

// Faults lists what is wrong with a pane, all at once.
func (p Pane) Faults() error {
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("pane: "+format, args...))
		}
	}
	fault(!(p.Thickness > 0 && p.Thickness <= 100), "a thickness of %g mm is out of range: more than 0, at most 100 mm", float64(p.Thickness))
	fault(!(p.Index >= 1 && p.Index <= 3), "a refractive index of %g is out of range: 1 to 3; glass has 1.526", p.Index)
	fault(!(p.Extinction >= 0 && p.Extinction <= 1000), "an extinction of %g per m is out of range: 0 to 1000 per m; usual glass has 20", p.Extinction)
	fault(!(p.Conductivity > 0 && p.Conductivity <= 10), "a conductivity of %g W/mK is out of range: more than 0, at most 10 W/mK", p.Conductivity)
	if c := p.Coating; c != (Coating{}) {
		share := func(v float64) bool { return v >= 0 && v <= 1 }
		fault(!(c.Transmitted > 0 && share(c.Front) && share(c.Back)), "the coating's coefficients %g, %g, %g are out of range: each from 0 to 1, and something let through", c.Transmitted, c.Front, c.Back)
		fault(c.Transmitted+max(c.Front, c.Back) > 1, "the coating lets through %g and throws back %g: together more than 1", c.Transmitted, max(c.Front, c.Back))
	}
	return errors.Join(faults...)
}
