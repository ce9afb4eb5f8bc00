package glass

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// A Shade is a vertical window with what stands out of the wall around it. Left and right are
// as seen from inside, looking out.
type Shade struct {
	Width, Height quantity.Metres // of the window
	Overhang      Overhang
	Left, Right   Fin
}

// An Overhang is a level board over the window. The zero Overhang is none.
type Overhang struct {
	Depth       quantity.Metres // out of the wall
	Gap         quantity.Metres // from the window's head up to it
	Left, Right quantity.Metres // how far it goes on past the window's sides; negative where it is shorter
}

// A Fin is an upright board beside the window. The zero Fin is none.
type Fin struct {
	Depth        quantity.Metres // out of the wall
	Gap          quantity.Metres // from the window's side to it
	Above, Below quantity.Metres // how far it goes on past head and sill; negative where it is shorter
}

// Sunlit gives the share of the window that a ray reaches, 0 to 1: exact, as the area of
// polygons. It is 0 where the ray comes from behind the wall.
func (s *Shade) Sunlit(r Ray) float64 {
	if !(r.Out > grazing) {
		return 0
	}
	w, h := float64(s.Width), float64(s.Height)
	shadows, count := s.shadows(r.Right/r.Out, r.Up/r.Out)
	if count == 0 {
		return 1
	}
	window := polygon{n: 4, at: [mostCorners]point{{0, 0}, {w, 0}, {w, h}, {0, h}}}
	return lit(&window, shadows[:count]) / (w * h)
}

// shadows casts each board on the wall along a ray that moves right and up by u and v for
// each metre out, and keeps those that reach the window.
func (s *Shade) shadows(u, v float64) (shadows [3]shadow, count int) {
	w, h := float64(s.Width), float64(s.Height)
	add := func(x0, y0, x1, y1, depth float64) {
		b := shadow{{x0, y0}, {x1, y1}, {x1 - depth*u, y1 - depth*v}, {x0 - depth*u, y0 - depth*v}}
		if depth == 0 || b.empty() || b.misses(w, h) {
			return
		}
		b.turn()
		shadows[count] = b
		count++
	}
	over := h + float64(s.Overhang.Gap)
	add(-float64(s.Overhang.Left), over, w+float64(s.Overhang.Right), over, float64(s.Overhang.Depth))
	left, right := -float64(s.Left.Gap), w+float64(s.Right.Gap)
	add(left, -float64(s.Left.Below), left, h+float64(s.Left.Above), float64(s.Left.Depth))
	add(right, -float64(s.Right.Below), right, h+float64(s.Right.Above), float64(s.Right.Depth))
	return shadows, count
}

// Limits of a window and its boards, m.
const mostLength = 100

// Faults lists what is wrong, all at once.
func (s Shade) Faults() error {
	var faults []error
	within := func(what string, v quantity.Metres, low float64) {
		if !(float64(v) >= low && v <= mostLength) {
			faults = append(faults, fmt.Errorf("window: %s of %g m is out of range: %g to %d m", what, float64(v), low, mostLength))
		}
	}
	for _, side := range []struct {
		what string
		v    quantity.Metres
	}{{"a width", s.Width}, {"a height", s.Height}} {
		if !(side.v > 0 && side.v <= mostLength) {
			faults = append(faults, fmt.Errorf("window: %s of %g m is out of range: more than 0, at most %d m", side.what, float64(side.v), mostLength))
		}
	}
	within("an overhang's depth", s.Overhang.Depth, 0)
	within("an overhang's gap", s.Overhang.Gap, 0)
	within("an overhang's reach to the left", s.Overhang.Left, -mostLength)
	within("an overhang's reach to the right", s.Overhang.Right, -mostLength)
	for _, f := range []Fin{s.Left, s.Right} {
		within("a fin's depth", f.Depth, 0)
		within("a fin's gap", f.Gap, 0)
		within("a fin's reach above", f.Above, -mostLength)
		within("a fin's reach below", f.Below, -mostLength)
	}
	if s.Overhang.Depth > 0 && !(s.Width+s.Overhang.Left+s.Overhang.Right > 0) {
		faults = append(faults, errors.New("window: the overhang ends before it begins: its reaches take away more than the window's width"))
	}
	for _, f := range []Fin{s.Left, s.Right} {
		if f.Depth > 0 && !(s.Height+f.Above+f.Below > 0) {
			faults = append(faults, errors.New("window: a fin ends before it begins: its reaches take away more than the window's height"))
		}
	}
	return errors.Join(faults...)
}
