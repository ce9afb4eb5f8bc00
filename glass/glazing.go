package glass

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// MostPanes is how many panes a glazing may have.
const MostPanes = 3

// A Glazing is one to three panes from outside to inside.
type Glazing struct {
	Count int
	Panes [MostPanes]Pane
}

// Alike gives a glazing of several panes of one kind.
func Alike(count int, p Pane) Glazing {
	g := Glazing{Count: count}
	for i := range min(count, MostPanes) {
		g.Panes[i] = p
	}
	return g
}

// An Optics is what a glazing does to light from outside, in shares of what falls on it:
// Transmitted + Reflected + the sum of Absorbed is 1.
type Optics struct {
	Transmitted float64
	Reflected   float64
	Absorbed    [MostPanes]float64 // by pane, from outside
}

// Taken gives what all panes take up.
func (o Optics) Taken() float64 { return o.Absorbed[0] + o.Absorbed[1] + o.Absorbed[2] }

// plus adds share times p.
func (o Optics) plus(share float64, p Optics) Optics {
	o.Transmitted += share * p.Transmitted
	o.Reflected += share * p.Reflected
	for i := range o.Absorbed {
		o.Absorbed[i] += share * p.Absorbed[i]
	}
	return o
}

// At gives the optics for unpolarised light at an angle of incidence from 0 to 90 deg: the mean of
// both polarisations, each followed through all panes by itself.
func (g Glazing) At(incidence quantity.Degrees) Optics {
	return g.atCosine(math.Cos(float64(incidence.Radians())))
}

// atCosine takes the cosine; light along the glass, or from behind it, is all thrown back.
func (g Glazing) atCosine(cosine float64) Optics {
	if !(cosine > grazing) {
		return Optics{Reflected: 1}
	}
	across, along := g.Polarised(cosine)
	return Optics{}.plus(0.5, across).plus(0.5, along)
}

// grazing is a cosine under which light runs along the glass: rounding of cos 90 deg.
const grazing = 1e-12

// Polarised gives the optics for light across and along the plane of incidence at the cosine
// of an angle of incidence, more than 0.
func (g Glazing) Polarised(cosine float64) (across, along Optics) {
	var stacks [2][MostPanes]polarised
	for i := range g.Count {
		p := g.Panes[i].at(cosine)
		stacks[0][i], stacks[1][i] = p[0], p[1]
	}
	return stacked(stacks[0][:g.Count]), stacked(stacks[1][:g.Count])
}

// stacked follows light through panes in a row. From inside outward, s is what everything behind a gap
// throws back of the light that crosses it; then inward, what arrives is shared out, and each
// pane keeps what enters it less what leaves.
func stacked(panes []polarised) Optics {
	var s [MostPanes + 1]float64
	for i := len(panes) - 1; i >= 0; i-- {
		p := panes[i]
		s[i] = p.front + p.through*p.through*s[i+1]/(1-p.back*s[i+1])
	}
	o := Optics{Reflected: s[0]}
	arriving := 1.0
	for i, p := range panes {
		onward := arriving * p.through / (1 - p.back*s[i+1])
		o.Absorbed[i] = arriving*(1-s[i]) - onward*(1-s[i+1])
		arriving = onward
	}
	o.Transmitted = arriving
	return o
}

// Diffuse gives the optics for light that comes evenly from the whole half-space before the glass:
// tau_d = 2 integral of tau(theta) cos(theta) sin(theta), by twenty points of Gauss over sin² theta
// in two pieces that part at 80 deg, where the curve turns down.
func (g Glazing) Diffuse() Optics {
	knee := math.Sin(80 * math.Pi / 180)
	var sum Optics
	for _, piece := range [2][2]float64{{0, knee * knee}, {knee * knee, 1}} {
		for i, x := range gaussPoints {
			s := piece[0] + (piece[1]-piece[0])*x // sin² theta, evenly weighted by the cosine law
			sum = sum.plus((piece[1]-piece[0])*gaussWeights[i], g.atCosine(math.Sqrt(1-s)))
		}
	}
	return sum
}

// Reversed gives the glazing seen from inside.
func (g Glazing) Reversed() Glazing {
	r := Glazing{Count: g.Count}
	for i := range g.Count {
		p := g.Panes[g.Count-1-i]
		p.Coating.Front, p.Coating.Back = p.Coating.Back, p.Coating.Front
		r.Panes[i] = p
	}
	return r
}

// Faults lists what is wrong with a glazing, all at once.
func (g Glazing) Faults() error {
	if g.Count < 1 || g.Count > MostPanes {
		return fmt.Errorf("a glazing of %d panes is out of range: 1 to %d", g.Count, MostPanes)
	}
	var faults []error
	for i := range g.Count {
		if err := g.Panes[i].Faults(); err != nil {
			faults = append(faults, fmt.Errorf("pane %d from outside: %w", i+1, err))
		}
	}
	return errors.Join(faults...)
}
