package glass

import (
	"errors"
	"fmt"
	"math"

	"suffice/material"
	"suffice/quantity"
)

// A Window is a glazing with its gaps, the films of air at its two sides, and its frame.
type Window struct {
	Glazing         Glazing
	Gaps            [MostPanes - 1]material.Transmittance // W/m2K, gas and radiation together, from outside
	Inside, Outside material.Transmittance                // of the films, convection and radiation together
	Frame           Frame
}

// A Frame is what of a window is not glass. The zero Frame is none.
type Frame struct {
	Share       float64 // of the window's area, 0 to less than 1
	U           material.Transmittance
	Absorptance float64 // of its outside for sunlight
	Edge        float64 // W/mK, extra along the glass's edge by its spacer
	EdgeLength  float64 // m of that edge for each m2 of window
}

// Films, W/m2K, of declared values [en673, remembered].
const (
	FilmInside  material.Transmittance = 7.7
	FilmOutside material.Transmittance = 25
)

// resistances gives the resistance from the outside air to the middle of each pane, and to
// the room, m2K/W.
func (w Window) resistances() (middle [MostPanes]float64, whole float64) {
	whole = 1 / float64(w.Outside)
	for i := range w.Glazing.Count {
		p := w.Glazing.Panes[i]
		half := float64(p.Thickness) / 1000 / p.Conductivity / 2
		middle[i] = whole + half
		whole += 2 * half
		if i < w.Glazing.Count-1 {
			whole += 1 / float64(w.Gaps[i])
		}
	}
	return middle, whole + 1/float64(w.Inside)
}

// CentreU gives the transmittance amid the glass: films, panes and gaps in a row.
func (w Window) CentreU() material.Transmittance {
	_, whole := w.resistances()
	return material.Transmittance(1 / whole)
}

// U gives the transmittance of the window with its frame (iso10077-1 eq. 1, by shares of area).
func (w Window) U() material.Transmittance {
	f := w.Frame
	return material.Transmittance((1-f.Share)*float64(w.CentreU()) + f.Share*float64(f.U) + f.Edge*f.EdgeLength)
}

// Shuttered gives the transmittance behind a shutter that adds a resistance with the air it
// shuts in (iso10077-1: 1/(1/U + delta R)).
func (w Window) Shuttered(adds material.Resistance) material.Transmittance {
	return material.Transmittance(1 / (1/float64(w.U()) + float64(adds)))
}

// Inward gives the share of the light taken up in each pane that becomes heat inside. The
// balance is steady: each pane is warmed in its middle, the airs at both sides stand still, and the
// heat parts as the resistances on the two ways out: N = resistance to outside over the whole.
func (w Window) Inward() [MostPanes]float64 {
	shares, whole := w.resistances()
	for i := range shares {
		shares[i] /= whole
	}
	return shares
}

// Gain gives the solar heat gain (g-value) amid the glass: light through, and the inward
// share of what the panes take up.
func (w Window) Gain(o Optics) float64 {
	inward, sum := w.Inward(), o.Transmitted
	for i, a := range o.Absorbed {
		sum += inward[i] * a
	}
	return sum
}

// WholeGain gives the same for the window with its frame, which passes on what it takes up by
// its U over the outer film.
func (w Window) WholeGain(o Optics) float64 {
	f := w.Frame
	return (1-f.Share)*w.Gain(o) + f.Share*f.Absorptance*float64(f.U/w.Outside)
}

// Faults lists what is wrong with a window, all at once.
func (w Window) Faults() error {
	faults := []error{w.Glazing.Faults()}
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("window: "+format, args...))
		}
	}
	for i := range min(w.Glazing.Count, MostPanes) - 1 {
		g := float64(w.Gaps[i])
		fault(!(g > 0 && g <= 1000), "a conductance of %g W/m2K of gap %d is out of range: more than 0, at most 1000 W/m2K", g, i+1)
	}
	fault(!(w.Inside > 0 && w.Inside <= 1000), "an inside film of %g W/m2K is out of range: more than 0, at most 1000 W/m2K", float64(w.Inside))
	fault(!(w.Outside > 0 && w.Outside <= 1000), "an outside film of %g W/m2K is out of range: more than 0, at most 1000 W/m2K", float64(w.Outside))
	f := w.Frame
	fault(!(f.Share >= 0 && f.Share < 1), "a frame of %g of the area is out of range: 0 to less than 1", f.Share)
	fault(!(f.U >= 0 && f.U <= 50), "a frame of %g W/m2K is out of range: 0 to 50 W/m2K", float64(f.U))
	fault(!(f.Absorptance >= 0 && f.Absorptance <= 1), "a frame that takes up %g of the light is out of range: 0 to 1", f.Absorptance)
	fault(!(f.Edge >= 0 && f.Edge <= 1 && f.EdgeLength >= 0 && f.EdgeLength <= 100), "an edge of %g W/mK over %g m is out of range: 0 to 1 W/mK, 0 to 100 m", f.Edge, f.EdgeLength)
	return errors.Join(faults...)
}

// A Gap is still air between two panes.
type Gap struct {
	Width        quantity.Millimetres
	Mean         quantity.Celsius // temperature of the gap
	Difference   quantity.Kelvins // between the two panes
	Emissivities [2]float64       // of the faces towards the gap: 0.837 for bare glass, 0.03 to 0.2 with a coating
}

// BareEmissivity is that of uncoated glass for warmth [en673, remembered].
const BareEmissivity = 0.837

// stefan is the constant of Stefan and Boltzmann, W/m2K4 (SI of 2019, to seven digits).
const stefan = 5.670374e-8

// dryAir is air between panes [en673 table 1 at 0 and 10 degC, remembered], straight between and beyond.
var dryAir = struct{ conductivity, density, viscosity, capacity [2]float64 }{
	conductivity: [2]float64{2.416e-2, 2.496e-2}, // W/mK
	density:      [2]float64{1.277, 1.232},       // kg/m3
	viscosity:    [2]float64{1.711e-5, 1.761e-5}, // kg/ms
	capacity:     [2]float64{1008, 1008},         // J/kgK
}

// Conductance gives gas and radiation together for a vertical gap (en673: Nu = 0.035 (Gr Pr)^0.38, at
// least 1; radiation by the mean temperature).
func (g Gap) Conductance() material.Transmittance {
	at := func(v [2]float64) float64 { return v[0] + (v[1]-v[0])*float64(g.Mean)/10 }
	k, rho, mu, c := at(dryAir.conductivity), at(dryAir.density), at(dryAir.viscosity), at(dryAir.capacity)
	s, T := float64(g.Width)/1000, g.Mean.Kelvin()
	grashof := 9.81 * s * s * s * math.Abs(float64(g.Difference)) * rho * rho / (T * mu * mu)
	nusselt := max(1, 0.035*math.Pow(grashof*mu*c/k, 0.38))
	radiant := 4 * stefan * T * T * T / (1/g.Emissivities[0] + 1/g.Emissivities[1] - 1)
	return material.Transmittance(nusselt*k/s + radiant)
}
