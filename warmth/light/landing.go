package light

import (
	"errors"
	"fmt"

	"suffice/glass"
	"suffice/quantity"
)

// A Spot is where a window sits, as seen from inside looking out through it.
type Spot struct {
	Side  Side            // Front, Right, Back or Left
	Along quantity.Metres // from the wall's left end to the window's left side
	Sill  quantity.Metres // over the floor
}

// A Landing says where the light of one window ends up.
type Landing struct {
	Diffuse Shares   // of diffuse light let through
	Beam    []Shares // of the beam, by row of the year's table; where the sun does not reach the window, Diffuse
	keys    []int16
}

// At gives the shares of the beam in an hour of the record.
func (l *Landing) At(hour int) *Shares {
	return &l.Beam[int(l.keys[hour/dayHours])*dayHours+hour%dayHours]
}

// Landing gives where the light of a window of the room ends up: the beam by the way of the sun and the
// shadows of the boards, diffuse light by what the window's wall sees of the other sides.
func (o *Outdoors) Landing(r *Room, w Window, at Spot) (*Landing, error) {
	if err := errors.Join(w.faults(), r.holds(w, at)); err != nil {
		return nil, err
	}
	l := &Landing{Beam: make([]Shares, yearDays*dayHours), keys: o.keys}
	for j, share := range r.view[at.Side] {
		l.Diffuse.add(share, &r.from[j])
	}
	for row := range l.Beam {
		l.Beam[row] = l.Diffuse
	}
	cells := cut(w)
	o.eachSunny(w.Plane, func(row int, ray glass.Ray) {
		if first, reached := r.lands(cells, at, ray); reached {
			l.Beam[row] = Shares{}
			for j, share := range first {
				l.Beam[row].add(share, &r.from[j])
			}
		}
	})
	return l, nil
}

// First gives on which sides the beam of an upright window falls before any of it is thrown on, in shares of what
// enters. It is all nothing where no sun reaches the window.
func (r *Room) First(w Window, at Spot, ray glass.Ray) [Sides]float64 {
	first, _ := r.lands(cut(w), at, ray)
	return first
}

// holds lists what is wrong with a window's place.
func (r *Room) holds(w Window, at Spot) error {
	if at.Side < Front || at.Side > Left {
		return errors.New("light: a window of a room sits in one of its four walls")
	}
	var faults []error
	if w.Plane.Slope != 90 {
		faults = append(faults, fmt.Errorf("light: a window of a box room stands upright: %g deg of slope is not 90", float64(w.Plane.Slope)))
	}
	width, _ := r.across(at.Side)
	if !(at.Along >= 0 && float64(at.Along+w.Shade.Width) <= width+hair) {
		faults = append(faults, fmt.Errorf("light: a window from %g m to %g m does not fit a wall %g m long", float64(at.Along), float64(at.Along+w.Shade.Width), width))
	}
	if !(at.Sill >= 0 && at.Sill+w.Shade.Height <= r.Box.Height+hair) {
		faults = append(faults, fmt.Errorf("light: a window from %g m to %g m up does not fit a wall %g m high", float64(at.Sill), float64(at.Sill+w.Shade.Height), float64(r.Box.Height)))
	}
	return errors.Join(faults...)
}

// hair is what a window may pass its wall by, m: rounding.
const hair = 1e-9

// across gives the length of a wall and the room's depth behind it, m.
func (r *Room) across(wall Side) (width, depth float64) {
	if wall == Front || wall == Back {
		return float64(r.Box.Width), float64(r.Box.Depth)
	}
	return float64(r.Box.Depth), float64(r.Box.Width)
}

// around gives the side that stands so many quarter turns clockwise of a wall.
func around(wall Side, quarters int) Side {
	return Front + Side((int(wall-Front)+quarters)%4)
}

// cell is a piece of a window whose sunlit part is taken to lie evenly in it.
type cell struct {
	x, y          float64 // its left lower corner in the window, m
	width, height float64
	shade         glass.Shade // of the piece alone
}

// pieces is into how many a window is cut along each edge that a board shades across.
const pieces = 8

// cut cuts a window for the shadows of its boards; without any it stays whole.
func cut(w Window) []cell {
	rows, columns := 1, 1
	if w.Shade.Overhang.Depth > 0 {
		rows = pieces
	}
	if w.Shade.Left.Depth > 0 || w.Shade.Right.Depth > 0 {
		columns = pieces
	}
	return cutInto(w, rows, columns)
}

// cutInto cuts a window into even rows and columns, each with the boards as they stand to it.
func cutInto(w Window, rows, columns int) (cells []cell) {
	width, height := w.Shade.Width/quantity.Metres(columns), w.Shade.Height/quantity.Metres(rows)
	for i := range rows {
		for k := range columns {
			x, y := width*quantity.Metres(k), height*quantity.Metres(i)
			above, right := w.Shade.Height-y-height, w.Shade.Width-x-width
			s := w.Shade
			s.Width, s.Height = width, height
			s.Overhang.Gap += above
			s.Overhang.Left += x
			s.Overhang.Right += right
			s.Left.Gap += x
			s.Right.Gap += right
			for _, fin := range []*glass.Fin{&s.Left, &s.Right} {
				fin.Above += above
				fin.Below += y
			}
			cells = append(cells, cell{float64(x), float64(y), float64(width), float64(height), s})
		}
	}
	return cells
}

// lands gives on which sides the beam falls first.
func (r *Room) lands(cells []cell, at Spot, ray glass.Ray) (first [Sides]float64, reached bool) {
	var whole float64
	width, depth := r.across(at.Side)
	beside := around(at.Side, 3) // the beam of a sun on the right falls to the left
	if ray.Right < 0 {
		beside = around(at.Side, 1)
	}
	for i := range cells {
		c := &cells[i]
		lit := c.shade.Sunlit(ray) * c.width * c.height
		if lit == 0 {
			continue
		}
		from := float64(at.Along) + c.x // distance from the wall that the beam leans to
		if ray.Right < 0 {
			from = width - from - c.width
		}
		b := beam{sideways: max(ray.Right, -ray.Right) / ray.Out, down: ray.Up / ray.Out, depth: depth}
		floor, side := b.parts(from, float64(at.Sill)+c.y, c)
		first[Floor] += lit * floor
		first[beside] += lit * side
		first[around(at.Side, 2)] += lit * (1 - floor - side)
		whole += lit
	}
	if whole == 0 {
		return first, false
	}
	for j := range first {
		first[j] = max(first[j]/whole, 0) // what is left over for the back wall may be a rounding below nothing
	}
	return first, true
}
