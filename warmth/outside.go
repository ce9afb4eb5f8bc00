package warmth

import (
	"errors"
	"fmt"
	"math"

	"suffice/glass"
	"suffice/quantity"
	"suffice/warmth/light"
)

// An outside is what the sky does to every wall and window, as rooms and their walls are numbered.
type outside struct {
	design  *Design
	sky     *light.Outdoors
	walls   [][]light.FaceHours
	windows [][]light.WindowHours
	closed  [][][]bool // of each window the hours with its shutter closed, nil without one
	earth   [][][]float64
	notes   []string
}

func newOutside(d *Design, sky *light.Outdoors) (*outside, error) {
	o := &outside{design: d, sky: sky}
	var faults []error
	for i := range d.Rooms {
		room := &d.Rooms[i]
		o.walls = append(o.walls, make([]light.FaceHours, len(room.Walls)))
		o.earth = append(o.earth, make([][]float64, len(room.Walls)))
		o.windows = append(o.windows, make([]light.WindowHours, len(room.Windows)))
		o.closed = append(o.closed, make([][]bool, len(room.Windows)))
		for k := range room.Walls {
			faults = append(faults, o.wall(i, k))
		}
		for k := range room.Windows {
			faults = append(faults, o.window(i, k))
		}
	}
	return o, errors.Join(faults...)
}

// typical gives the difference between a room at a temperature and outside that moves most heat in a record, K: the mean of all
// hours' differences, each weighed by itself.
func typical(temperatures []float64, inside quantity.Celsius) float64 {
	var sum, squares float64
	for _, t := range temperatures {
		d := math.Abs(t - float64(inside))
		sum += d
		squares += d * d
	}
	if sum == 0 {
		return 0
	}
	return squares / sum
}

// outer gives how a face trades heat outside.
func (f Films) outer(emissivity float64, smooth bool) light.Outer {
	convection := f.Outside
	if smooth {
		convection = f.Smooth
	}
	return light.Outer{Convection: float64(convection), ByWind: f.ByWind, Emissivity: emissivity}
}

func (o *outside) wall(room, index int) (err error) {
	w := &o.design.Rooms[room].Walls[index]
	switch w.Faces {
	case Air:
		o.walls[room][index], err = o.sky.Face(light.Face{Plane: w.Plane, Absorptance: w.OutsideAbsorptance, Outer: o.design.Films.outer(w.OutsideEmissivity, w.Smooth)})
	case Earth:
		if r := &o.design.Rooms[room]; !r.buried(index) {
			o.earth[room][index] = w.Ground.hours(o.sky.Hours)
		} else if got, want := len(r.Dug.Face), len(o.sky.Hours.Temperature); got != want {
			return fmt.Errorf("warmth: room %q: the ground's face over its section is told for %d hours of %d", r.Name, got, want)
		}
	case Neighbour, Nothing:
	}
	if err != nil {
		err = fmt.Errorf("warmth: room %q, wall %q: %w", o.design.Rooms[room].Name, w.Name, err)
	}
	return err
}

// pane gives a window as the light sees it.
func (o *outside) pane(w *Window) light.Window {
	return light.Window{
		Plane: w.Plane, Shade: w.Shade, Outer: o.design.Films.outer(w.Outer, true),
		Pane: glass.Window{Glazing: w.Glazing, Gaps: w.Gaps, Inside: glass.FilmInside, Outside: glass.FilmOutside, Frame: w.Frame},
	}
}

func (o *outside) window(room, index int) (err error) {
	r := &o.design.Rooms[room]
	w := &r.Windows[index]
	o.windows[room][index], err = o.sky.Window(o.pane(w))
	if err != nil {
		return fmt.Errorf("warmth: room %q, window %q: %w", r.Name, w.Name, err)
	}
	if w.Shutter.Adds > 0 {
		o.closed[room][index] = o.shut(w.Shutter)
		h := &o.windows[room][index]
		for i, closed := range o.closed[room][index] {
			if closed {
				h.Beam[i], h.Diffuse[i], h.Taken[i] = 0, 0, 0
			}
		}
	}
	return nil
}

// shut gives the hours in which a shutter is closed.
func (o *outside) shut(s Shutter) []bool {
	closed := make([]bool, len(o.sky.Hours.Temperature))
	for i, t := range o.sky.Hours.Temperature {
		closed[i] = s.Hours[i%24] && quantity.Celsius(t) < s.Below && !(s.Dark && o.sky.Track.Share[i] > 0)
	}
	return closed
}

// columns gives every input of a plan by hours.
func (o *outside) columns(p *plan) ([]column, error) {
	c := make([]column, p.inputs)
	c[p.outdoor].values = o.sky.Hours.Temperature
	for _, w := range p.walls {
		switch wall := &o.design.Rooms[w.room].Walls[w.index]; wall.Faces {
		case Air:
			c[w.outer].values = o.walls[w.room][w.index].Equivalent
		case Earth:
			if w.buried != nil {
				continue
			}
			c[w.outer].values = o.earth[w.room][w.index]
			if fixed := wall.Ground.Fixed; fixed != nil {
				c[w.outer].always = float64(*fixed)
			}
		case Neighbour, Nothing:
		}
	}
	for _, b := range p.banks {
		c[b.face].values = o.design.Rooms[b.room].Dug.Face
	}
	for _, w := range p.windows {
		h := &o.windows[w.room][w.index]
		c[w.outer].values = h.Outside
		c[w.pane].values = scaled(h.Taken, w.area)
	}
	return c, o.shine(p, c)
}

func scaled(values []float64, by float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = v * by
	}
	return out
}
