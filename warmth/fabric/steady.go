package fabric

import (
	"suffice/material"
)

// Bounds are the two ends between which the resistance of a bridged element lies
// (iso6946). They are equal where nothing bridges.
type Bounds struct {
	Upper material.Resistance // heat flows straight through, each path by itself
	Lower material.Resistance // every plane across the flow has one temperature
}

// Mean gives the resistance that iso6946 takes: R = (R' + R”)/2.
func (b Bounds) Mean() material.Resistance { return (b.Upper + b.Lower) / 2 }

// Error gives the largest relative error of the mean (iso6946: e = (R' - R”)/2R).
func (b Bounds) Error() float64 { return float64((b.Upper - b.Lower) / (2 * b.Mean())) }

// Usable reports whether the method holds: iso6946 refuses it where R'/R” is over 1.5.
func (b Bounds) Usable() bool { return b.Upper <= 1.5*b.Lower }

// Bounds gives the upper and lower limit of the whole resistance, surfaces included.
// Bridges of several layers are taken to cross each other, so that each path occurs with
// the product of its shares (studs in one layer, battens across them in the next).
func (e Element) Bounds() Bounds {
	lower := e.Inside + e.Outside
	for _, l := range e.Layers {
		lower += l.Resistance()
	}
	return Bounds{Upper: material.Resistance(1 / paths(e.Layers, 1, float64(e.Inside+e.Outside))), Lower: lower}
}

// paths sums share/resistance over every way through the layers: 1/R' = sum of f/R
// (iso6946 eq. of the upper limit).
func paths(layers []Layer, share, resistance float64) float64 {
	if len(layers) == 0 {
		return share / resistance
	}
	l, rest := layers[0], layers[1:]
	if l.Bridge.Share == 0 {
		return paths(rest, share, resistance+float64(l.Resistance()))
	}
	d, f := float64(l.Thickness), l.Bridge.Share
	return paths(rest, share*(1-f), resistance+d/float64(l.Conductivity)) +
		paths(rest, share*f, resistance+d/float64(l.Bridge.Conductivity))
}

// Resistance gives the whole resistance, surfaces included (iso6946).
func (e Element) Resistance() material.Resistance { return e.Bounds().Mean() }

// U gives the heat through a square metre for one kelvin between the airs.
func (e Element) U() material.Transmittance {
	return material.Transmittance(1 / float64(e.Resistance()))
}

// SurfaceToSurface gives the transmittance without the surface resistances.
func (e Element) SurfaceToSurface() material.Transmittance {
	return Element{Layers: e.Layers}.U()
}
