package warmth

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/warmth/light"
)

// A dest is a face of a wall that sunlight inside falls on.
type dest struct {
	input  int // W that it takes up
	area   float64
	takes  float64 // absorptance
	side   light.Side
	unlaid bool // nobody says on which side it stands
}

// A sunny is a room ready for the sun: its faces, and what of a side's light each takes.
type sunny struct {
	faces  []dest
	box    light.Box
	front  quantity.Degrees
	shares [light.Sides][]float64 // of each face in what a side takes up
}

// shine lets the sun of every window into its room.
func (o *outside) shine(p *plan, c []column) error {
	hours := len(o.sky.Hours.Temperature)
	for room := range p.air {
		r := &o.design.Rooms[room]
		if len(r.Windows) == 0 {
			continue
		}
		s := o.sunny(p, room)
		for k := range s.faces {
			c[s.faces[k].input].values = make([]float64, hours)
		}
		made, err := light.NewRoom(s.box)
		if err != nil {
			return fmt.Errorf("warmth: room %q: %w", r.Name, err)
		}
		for k := range p.windows {
			if p.windows[k].room != room {
				continue
			}
			if err := o.enter(p, k, &s, made, c); err != nil {
				return err
			}
		}
	}
	return nil
}

// enter lets in the light of one window: the beam where it lands, the rest evenly, both thrown on until they are taken up.
func (o *outside) enter(p *plan, window int, s *sunny, made *light.Room, c []column) error {
	at := &p.windows[window]
	r := &o.design.Rooms[at.room]
	w := &r.Windows[at.index]
	first, even, err := o.lands(made, w, s.spot(r, w))
	if err != nil {
		return fmt.Errorf("warmth: room %q, window %q: %w", r.Name, w.Name, err)
	}
	h := &o.windows[at.room][at.index]
	// What panes take up on the way out warms the room as far as the innermost has it, an even part of all.
	inner := 1 / float64(w.Glazing.Count)
	panes := c[at.pane].values
	for i := range h.Beam {
		if h.Beam[i] == 0 && h.Diffuse[i] == 0 {
			continue
		}
		beam, rest := at.area*h.Beam[i], at.area*h.Diffuse[i]
		lit := first(i)
		panes[i] += inner * (beam*lit.Panes + rest*even.Panes)
		for side := range light.Sides {
			watts := beam*lit.Side[side] + rest*even.Side[side]
			for k, share := range s.shares[side] {
				c[s.faces[k].input].values[i] += watts * share
			}
		}
	}
	return nil
}

// lands gives where the beam of a window ends up by hours, and its diffuse light. Of a sloping one both go the
// floor's way: light from above. So do they of one that its wall is too short for, which is told.
func (o *outside) lands(made *light.Room, w *Window, at light.Spot) (beam func(hour int) *light.Shares, even *light.Shares, err error) {
	wide, fits := moved(&made.Box, w, &at)
	if w.Plane.Slope != 90 || !fits {
		if !fits {
			o.notes = append(o.notes, fmt.Sprintf("window %q is %.1f m wide and %.1f m high, its wall by the room's shape %.1f m and %.1f m: its sun is laid on the floor; tell how wide the room is",
				w.Name, float64(w.Shade.Width), float64(w.Shade.Height), wide, float64(made.Box.Height)))
		}
		floor := fromAbove(&made.Box)
		return func(int) *light.Shares { return &floor }, &floor, nil
	}
	l, err := o.sky.Landing(made, o.pane(w), at)
	if err != nil {
		return nil, nil, err
	}
	return l.At, &l.Diffuse, nil
}

// moved moves a window along and down its wall until it fits, and tells how long the wall is and whether it does.
func moved(b *light.Box, w *Window, at *light.Spot) (wide float64, fits bool) {
	wall := b.Width
	if at.Side == light.Left || at.Side == light.Right {
		wall = b.Depth
	}
	at.Along = max(0, min(at.Along, wall-w.Shade.Width))
	at.Sill = max(0, min(at.Sill, b.Height-w.Shade.Height))
	return float64(wall), w.Shade.Width <= wall && w.Shade.Height <= b.Height
}

// fromAbove gives where light ends up that falls on the floor first: what the floor does not take is thrown on evenly
// over the whole room, each square metre seeing as much of it as any other.
func fromAbove(b *light.Box) (s light.Shares) {
	w, d, h := float64(b.Width), float64(b.Depth), float64(b.Height)
	areas := [light.Sides]float64{w * d, w * d, w * h, d * h, w * h, d * h}
	var takes float64
	for k, a := range areas {
		g := b.Glass[k]
		takes += (a-float64(g.Area))*b.Absorptance[k] + float64(g.Area)*(g.Lost+g.Taken)
	}
	thrown := 1 - b.Absorptance[light.Floor]
	for k, a := range areas {
		g := b.Glass[k]
		s.Side[k] = thrown * (a - float64(g.Area)) * b.Absorptance[k] / takes
		s.Panes += thrown * float64(g.Area) * g.Taken / takes
		s.Lost += thrown * float64(g.Area) * g.Lost / takes
	}
	s.Side[light.Floor] += b.Absorptance[light.Floor]
	return s
}

// sunny lays a room out as a box.
func (o *outside) sunny(p *plan, room int) (s sunny) {
	r := &o.design.Rooms[room]
	s.front = r.Windows[0].Plane.Azimuth
	s.faces = o.faces(p, room, s.front)
	wide := float64(r.Wide)
	if wide == 0 {
		wide = max(math.Sqrt(float64(r.Area)), r.frontGlass())
	}
	s.box = light.Box{Width: quantity.Metres(wide), Depth: quantity.Metres(float64(r.Area) / wide), Height: r.Height}
	s.lay()
	for k := range r.Windows {
		w := &r.Windows[k]
		side := s.spot(r, w).Side
		opening := light.OpeningOf(w.Area*quantity.SquareMetres(1-w.Frame.Share), w.Glazing)
		g := &s.box.Glass[side]
		whole := float64(g.Area + opening.Area)
		g.Lost = (float64(g.Area)*g.Lost + float64(opening.Area)*opening.Lost) / whole
		g.Taken = (float64(g.Area)*g.Taken + float64(opening.Area)*opening.Taken) / whole
		g.Area += opening.Area
	}
	return s
}

// frontGlass gives the length of wall that the glass on a room's front needs at least, m.
func (r *Room) frontGlass() (length float64) {
	for k := range r.Windows {
		w := &r.Windows[k]
		if sideOf(w.Plane.Azimuth, r.Windows[0].Plane.Azimuth) == light.Front {
			length += max(float64(w.Shade.Width), float64(w.Area)/float64(r.Height))
		}
	}
	return length
}

// lay puts walls of which nobody says where they stand on the bare sides, from the back on, and gives a side that no
// wall is told for to all faces.
func (s *sunny) lay() {
	var area, takes [light.Sides]float64
	for _, f := range s.faces {
		if !f.unlaid {
			area[f.side] += f.area
		}
	}
	for k := range s.faces {
		f := &s.faces[k]
		if f.unlaid {
			f.side = light.Back
			for _, side := range []light.Side{light.Back, light.Left, light.Right, light.Front} {
				if area[side] == 0 {
					f.side = side
					break
				}
			}
			area[f.side] += f.area
		}
		takes[f.side] += f.area * f.takes
	}
	for side := range light.Sides {
		s.box.Absorptance[side] = darkest
		if area[side] > 0 {
			s.box.Absorptance[side] = max(darkest, takes[side]/area[side])
		}
		s.shares[side] = s.part(side, takes[side])
	}
}

// part gives the share of each face in what a side takes up: by what its own faces take, or by area where they take
// nothing; a side without faces gives to all.
func (s *sunny) part(side light.Side, takes float64) []float64 {
	shares := make([]float64, len(s.faces))
	var sum, all float64
	for k, f := range s.faces {
		all += f.area
		if f.side == side {
			shares[k] = f.area * f.takes
			if takes == 0 {
				shares[k] = f.area
			}
			sum += shares[k]
		}
	}
	for k, f := range s.faces {
		if sum == 0 {
			shares[k] = f.area / all
		} else {
			shares[k] /= sum
		}
	}
	return shares
}

// darkest is the least that light.Box lets a side take up.
const darkest = 0.05

// sideOf gives the side that looks to an azimuth.
func sideOf(azimuth, front quantity.Degrees) light.Side {
	quarters := int(math.Round(float64(azimuth-front)/90)) % 4
	return light.Front + light.Side((quarters+4)%4)
}

// spot gives the place of a window.
func (s *sunny) spot(r *Room, w *Window) light.Spot {
	return light.Spot{Side: sideOf(w.Plane.Azimuth, s.front), Along: w.Along, Sill: w.Sill}
}

// faces lists what light meets in a room.
func (o *outside) faces(p *plan, room int, front quantity.Degrees) (faces []dest) {
	for _, w := range p.walls {
		wall := &o.design.Rooms[w.room].Walls[w.index]
		if w.room == room {
			faces = append(faces, laid(dest{input: w.sun, area: float64(wall.Area), takes: wall.InsideAbsorptance}, wall.Role, wall, front))
		}
		if w.behind >= 0 && wall.Other == room {
			faces = append(faces, laid(dest{input: w.behindSun, area: float64(wall.Area), takes: wall.OutsideAbsorptance}, wall.Role.turned(), wall, front))
		}
	}
	return faces
}

// laid says on which side a face stands.
func laid(f dest, role Role, wall *Wall, front quantity.Degrees) dest {
	switch {
	case role == Floor:
		f.side = light.Floor
	case role == Roof:
		f.side = light.Ceiling
	case wall.Faces == Air:
		f.side = sideOf(wall.Plane.Azimuth, front)
	default:
		f.unlaid = true
	}
	return f
}
