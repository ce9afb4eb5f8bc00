package house

import (
	"fmt"
	"math"

	"suffice/glass"
	"suffice/material"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/warmth"
)

// The gap between panes as declared values have it [en673, remembered].
const (
	gapMean       = 10 // degC
	gapDifference = 15 // K
)

// frameDark is the absorptance of a frame's outside; common practice, no source.
const frameDark = 0.6

func (r *roomReader) window(i int) warmth.Window {
	w, where := &r.room.Windows[i], fmt.Sprintf("%s.windows[%d]", r.where, i)
	built := warmth.Window{
		Name: w.Name, Area: w.Area, Plane: sun.Plane{Slope: w.Slope, Azimuth: w.Azimuth}, Glazing: glazing(w), Gaps: gaps(w),
		Emissivity: glass.BareEmissivity, Outer: glass.BareEmissivity, Shade: r.shade(w, where), Along: w.Left, Sill: w.Sill,
	}
	if w.Frame > 0 {
		built.Frame = glass.Frame{Share: w.Frame, U: material.Transmittance(w.FrameU), Absorptance: frameDark}
	}
	if w.Shutters {
		built.Shutter = warmth.Shutter{Adds: material.Resistance(w.Adds), Hours: warmth.Always(), Dark: true, Below: w.CloseBelow}
	}
	r.refuse(where, built.Glazing.Faults())
	return built
}

// plainGlass is what a window has whose file does not say: clear panes of 4 mm [duffie-beckman, remembered; iso10456].
func plainGlass() *Glass {
	return &Glass{Thickness: 4, Index: glass.GlassIndex, Extinction: 20, Conductivity: glass.GlassConductivity, Emissivity: glass.BareEmissivity, Coated: 1}
}

func panes(w *Window) *Glass {
	if w.Glass != nil {
		return w.Glass
	}
	return plainGlass()
}

func glazing(w *Window) glass.Glazing {
	g := panes(w)
	pane := glass.Pane{Thickness: g.Thickness, Index: g.Index, Extinction: g.Extinction, Conductivity: g.Conductivity}
	all := glass.Alike(w.Panes, pane)
	if g.Transmitted != nil && g.Reflected != nil {
		all.Panes[min(g.Coated, w.Panes)-1].Coating = glass.Coating{Transmitted: *g.Transmitted, Front: *g.Reflected, Back: or(g.ReflectedIn, *g.Reflected)}
	}
	return all
}

// gaps gives what passes each gap. A coating lies in the gap behind the outermost pane, or before the pane that is coated.
func gaps(w *Window) (all [glass.MostPanes - 1]material.Transmittance) {
	g := panes(w)
	coated := max(0, min(g.Coated, w.Panes)-2)
	for i := range w.Panes - 1 {
		gap := glass.Gap{Width: w.Gap, Mean: gapMean, Difference: gapDifference, Emissivities: [2]float64{glass.BareEmissivity, glass.BareEmissivity}}
		if i == coated {
			gap.Emissivities[0] = min(g.Emissivity, glass.BareEmissivity)
		}
		all[i] = gap.Conductance()
	}
	return all
}

// shade gives the size of a window, and what stands out around it.
func (r *roomReader) shade(w *Window, where string) glass.Shade {
	width := or(w.Width, quantity.Metres(math.Sqrt(2*float64(w.Area))))
	s := glass.Shade{Width: width, Height: quantity.Metres(float64(w.Area) / float64(width))}
	if w.Slope != 90 && (w.Overhang != nil || w.FinLeft != nil || w.FinRight != nil) {
		r.fault(where+".overhang", "shadows of roofs and fins are known for upright glass only: write  slope: 90 deg, or take overhang and fins out")
		return s
	}
	if w.Overhang != nil {
		s.Overhang = glass.Overhang{Depth: *w.Overhang, Gap: w.Above, Left: w.BeyondLeft, Right: w.BeyondRight}
	}
	if w.FinLeft != nil {
		s.Left = glass.Fin{Depth: *w.FinLeft, Above: w.Above}
	}
	if w.FinRight != nil {
		s.Right = glass.Fin{Depth: *w.FinRight, Above: w.Above}
	}
	r.refuse(where, s.Faults())
	return s
}
