package section

import (
	"math"

	"suffice/house"
	"suffice/quantity"
)

// A length is a measure of the drawing, m, and whether the file tells it.
type length struct {
	m    float64
	told bool
}

// Lengths for what the file does not tell, m: common practice, no source. They are drawn dashed.
const (
	assumedHeight = 2.5
	assumedWall   = 0.3
	assumedRoof   = 0.2
	assumedFloor  = 0.1
	assumedPanel  = 1.7 // along the slope
	assumedFlat   = 2.0 // a collector, along the slope
	assumedBox    = 0.6 // a battery's cabinet
	assumedDepth  = 1.5 // a septic tank's
	assumedTrench = 0.6 // a drain's depth
)

// shell is the room that is cut, from the pole's side (back, left) to the equator's side (front, right).
type shell struct {
	room          *house.Room // nil where the file tells none: then a roof only
	depth, height length
	along         float64 // m, how long the front is
	back, front   length  // thickness
	roof, floor   length  // thickness
	backEarth     bool
	glass         *house.Window
	glassTall     float64 // m, along the pane: its area over the front's length
	overhang      length
}

// facing reports whether an azimuth looks within so many degrees of another.
func facing(azimuth *quantity.Degrees, toward, within float64) bool {
	if azimuth == nil {
		return false
	}
	return math.Abs(math.Remainder(float64(*azimuth)-toward, 360)) <= within
}

// glassTo gives the largest pane of a room that looks within 60 deg of a direction.
func glassTo(r *house.Room, toward float64) *house.Window {
	var best *house.Window
	for i := range r.Windows {
		w := &r.Windows[i]
		if facing(&w.Azimuth, toward, 60) && (best == nil || w.Area > best.Area) {
			best = w
		}
	}
	return best
}

// cut chooses the room to cut: the one with the largest pane to the equator's side, else the first.
func cut(f *house.File, equator float64) *house.Room {
	var best *house.Room
	area := quantity.SquareMetres(-1)
	for i := range f.Rooms {
		a := quantity.SquareMetres(0)
		if w := glassTo(&f.Rooms[i], equator); w != nil {
			a = w.Area
		}
		if a > area {
			best, area = &f.Rooms[i], a
		}
	}
	return best
}

// newShell measures the room.
func newShell(f *house.File, equator float64) shell {
	r := cut(f, equator)
	if r == nil {
		return roofOnly(f)
	}
	s := shell{room: r, height: length{assumedHeight, false}, back: length{assumedWall, false}, front: length{assumedWall, false},
		roof: length{assumedRoof, false}, floor: length{assumedFloor, false}}
	if r.Height != nil {
		s.height = length{float64(*r.Height), true}
	}
	for i := range r.Walls {
		s.wall(&r.Walls[i], equator)
	}
	s.depth = s.howDeep(equator)
	s.along = float64(r.Area) / s.depth.m
	if s.glass = glassTo(r, equator); s.glass != nil {
		s.glassTall = float64(s.glass.Area) / s.along
		if s.glass.Overhang != nil {
			s.overhang = length{float64(*s.glass.Overhang), true}
		}
	}
	return s
}

// roofOnly is a roof on posts, as deep as wide, where the file tells no room.
func roofOnly(f *house.File) shell {
	s := shell{height: length{assumedHeight, false}, depth: length{4, false}, roof: length{assumedRoof, false}}
	if f.Water != nil {
		s.depth = length{math.Sqrt(float64(f.Water.Roofs[0].Area)), false}
	}
	s.along = s.depth.m
	return s
}

// wall takes what one wall tells.
func (s *shell) wall(w *house.Wall, equator float64) {
	thick, told := thickness(w)
	put := func(to *length) {
		if told {
			*to = length{float64(thick), true}
		}
	}
	switch {
	case facing(w.Azimuth, equator, 60):
		put(&s.front)
	case facing(w.Azimuth, equator+180, 60):
		put(&s.back)
		s.backEarth = w.Faces == "earth"
	case w.Azimuth == nil && w.Name == "roof":
		put(&s.roof)
	case w.Azimuth == nil && w.Name == "floor":
		put(&s.floor)
	}
}

// howDeep tells the room's depth from a side wall, else from the back or front wall's length, else as
// deep as wide.
func (s *shell) howDeep(equator float64) length {
	for _, side := range [2]float64{90, -90} {
		if area := s.wallArea(equator+side, 30); area > 0 {
			return length{area / s.height.m, s.height.told}
		}
	}
	for _, face := range [2]float64{180, 0} {
		if area := s.wallArea(equator+face, 60); area > 0 {
			return length{float64(s.room.Area) / (area / s.height.m), s.height.told}
		}
	}
	return length{math.Sqrt(float64(s.room.Area)), false}
}

// wallArea adds the walls and their panes that look in a direction.
func (s *shell) wallArea(toward, within float64) float64 {
	walls, panes := 0.0, 0.0
	for _, w := range s.room.Walls {
		if facing(w.Azimuth, toward, within) {
			walls += float64(w.Area)
		}
	}
	for _, w := range s.room.Windows {
		if facing(&w.Azimuth, toward, within) {
			panes += float64(w.Area)
		}
	}
	if walls == 0 {
		return 0
	}
	return walls + panes
}
