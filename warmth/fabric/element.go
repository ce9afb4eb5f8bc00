package fabric

import (
	"cmp"
	"errors"
	"fmt"

	"suffice/material"
	"suffice/quantity"
)

// A Layer is one sheet of an element.
type Layer struct {
	Name         string
	Thickness    quantity.Metres
	Conductivity material.Conductivity
	Density      material.Density
	Capacity     material.Capacity
	Gap          material.Resistance // of an air gap, instead of the four above; it stores nothing
	Bridge       Bridge              // what crosses the layer; the zero Bridge is none
}

// A Bridge is what stands in a layer over a share of its area: studs, rafters, joists.
type Bridge struct {
	Share        float64 // of the area, 0 to 1
	Conductivity material.Conductivity
	Density      material.Density
	Capacity     material.Capacity
}

// Of gives a layer of a material.
func Of(m material.Material, thickness quantity.Metres) Layer {
	return Layer{Name: m.Name, Thickness: thickness, Conductivity: m.Conductivity, Density: m.Density, Capacity: m.Capacity}
}

// Resistance gives the layer's resistance with any bridge mixed in by area (iso6946, lower
// limit: lambda” = sum of f lambda).
func (l Layer) Resistance() material.Resistance {
	if l.Gap > 0 {
		return l.Gap
	}
	return material.Resistance(float64(l.Thickness) / l.mixed())
}

// mixed gives the mean conductivity by area.
func (l Layer) mixed() float64 {
	f := l.Bridge.Share
	return (1-f)*float64(l.Conductivity) + f*float64(l.Bridge.Conductivity)
}

// Areal gives the heat that a square metre of the layer stores for one kelvin, J/m2K.
func (l Layer) Areal() float64 {
	if l.Gap > 0 {
		return 0
	}
	f := l.Bridge.Share
	return float64(l.Thickness) * ((1-f)*float64(l.Density)*float64(l.Capacity) + f*float64(l.Bridge.Density)*float64(l.Bridge.Capacity))
}

// An Element is a wall, roof or floor: its layers from inside to outside between two
// surfaces. A surface resistance of 0 leaves the surface bare, as the rooms' balance wants it.
type Element struct {
	Layers          []Layer
	Inside, Outside material.Resistance
}

// Surface resistances, m2K/W [iso6946 table 7, remembered]. Inside by where the heat flows;
// outside for any direction. They hold for matt surfaces (emissivity 0.9) and 4 m/s of wind.
const (
	InsideUp    material.Resistance = 0.10 // through a ceiling or roof
	InsideLevel material.Resistance = 0.13 // through a wall, also within 30 deg of it
	InsideDown  material.Resistance = 0.17 // through a floor
	Outside     material.Resistance = 0.04
)

// Limits of one layer. Earth-backed walls and insulating fills stay well within.
const (
	mostThickness  = 20 // m
	mostResistance = 1000
	mostBridged    = 8 // layers with bridges: 2^8 paths in the upper limit
)

// Faults lists what is wrong with an element, all at once.
func (e Element) Faults() error {
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf(format, args...))
		}
	}
	fault(len(e.Layers) == 0, "an element has no layers: give one at least")
	bridged := 0
	for i, l := range e.Layers {
		faults = append(faults, l.faults(i+1))
		if l.Bridge.Share > 0 {
			bridged++
		}
	}
	fault(bridged > mostBridged, "%d layers have bridges: %d at most", bridged, mostBridged)
	for _, s := range []struct {
		side string
		r    material.Resistance
	}{{"inside", e.Inside}, {"outside", e.Outside}} {
		fault(!(s.r >= 0 && s.r <= 10), "a surface resistance %s of %g m2K/W is out of range: 0 to 10 m2K/W", s.side, float64(s.r))
	}
	return errors.Join(faults...)
}

func (l Layer) faults(place int) error {
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("layer %d (%s): "+format, append([]any{place, l.Name}, args...)...))
		}
	}
	if l.Gap != 0 {
		fault(!(l.Gap > 0 && l.Gap <= mostResistance), "a resistance of %g m2K/W is out of range: more than 0, at most %d m2K/W", float64(l.Gap), mostResistance)
		fault(l.Bridge.Share != 0, "an air gap given by its resistance takes no bridge: give thickness and conductivity")
		return errors.Join(faults...)
	}
	fault(!(l.Thickness > 0 && l.Thickness <= mostThickness), "a thickness of %g m is out of range: more than 0, at most %d m", float64(l.Thickness), mostThickness)
	m := material.Material{Name: cmp.Or(l.Name, "unnamed"), Conductivity: l.Conductivity, Density: l.Density, Capacity: l.Capacity}
	if err := m.Faults(); err != nil {
		fault(true, "%w", err)
	}
	if b := l.Bridge; b.Share != 0 {
		fault(!(b.Share > 0 && b.Share < 1), "a bridge over %g of the area is out of range: between 0 and 1", b.Share)
		m := material.Material{Name: l.Name + ", its bridge", Conductivity: b.Conductivity, Density: b.Density, Capacity: b.Capacity}
		if err := m.Faults(); err != nil {
			fault(true, "%w", err)
		}
	}
	return errors.Join(faults...)
}

// Reversed gives the element seen from its other side.
func (e Element) Reversed() Element {
	r := Element{Inside: e.Outside, Outside: e.Inside}
	for i := len(e.Layers) - 1; i >= 0; i-- {
		r.Layers = append(r.Layers, e.Layers[i])
	}
	return r
}
