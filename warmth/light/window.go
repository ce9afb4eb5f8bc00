package light

import (
	"errors"

	"suffice/glass"
	"suffice/material"
	"suffice/site/sun"
)

// A Window is a window in its wall. Boards round it need an upright plane.
type Window struct {
	Plane sun.Plane
	Shade glass.Shade  // its size, and the boards
	Pane  glass.Window // its own Outside film is not used: Outer is
	Outer Outer
}

// WindowHours is what the sky does to an open window, hour by hour, for each m2 of it,
// frame included.
//
// To a room it is a conductance between Outside and the inner face of the panes, with Taken as heat put on
// that face, and Beam and Diffuse let through. A closed shutter multiplies Beam, Diffuse and Taken.
type WindowHours struct {
	Conductance material.Transmittance // from Outside to the inner face
	Outside     []float64              // degC: air and sky together, without sun
	Beam        []float64              // W/m2 let through from the sun and round it
	Diffuse     []float64              // W/m2 let through from the rest of the sky and the ground
	Taken       []float64              // W/m2 at the inner face, for what panes and frame take up
	Inward      float64                // share of Taken that enters a room with the declared inside film
	Sunlit      []float64              // share of the window that the sun reaches, by row of the year's table: 24 h x day of the year + hour
	Incident    float64                // kWh on each m2, as if nothing stood round it, whole record
	Through     float64                // kWh: Beam and Diffuse
}

// Window gives the hours of a window.
func (o *Outdoors) Window(w Window) (WindowHours, error) {
	if err := w.faults(); err != nil {
		return WindowHours{}, err
	}
	return WindowHours{}, errors.New("light: not yet")
}

func (w Window) faults() error {
	return errors.Join(w.Shade.Faults(), w.Outer.faults())
}
