package warmth

import (
	"errors"
	"fmt"

	"suffice/quantity"
	"suffice/warmth/fabric"
)

// through gives the heat through a wall's layers, W/m2K.
func (w *Wall) through() float64 { return fabric.Element{Layers: w.Layers}.Network(fine()).Steady() }

// Faults gives everything about a design that cannot be computed, or nil.
func (d *Design) Faults() error {
	var faults []error
	if n := len(d.Rooms); n == 0 || n > MostRooms {
		faults = append(faults, fmt.Errorf("warmth: the house has %d rooms: 1 to %d can be computed", n, MostRooms))
	}
	faults = append(faults, d.Films.faults())
	for i := range d.Rooms {
		faults = append(faults, d.room(i))
	}
	return errors.Join(faults...)
}

func (f Films) faults() error {
	var faults []error
	check := func(what string, v, low, high float64) {
		if !(v >= low && v <= high) {
			faults = append(faults, fmt.Errorf("warmth: convection %s of %s is outside %s to %s", what, quantity.Text(v, "W/m2K"), quantity.Text(low, "W/m2K"), quantity.Text(high, "W/m2K")))
		}
	}
	check("at walls", f.Upright, 0.1, 50)
	check("at ceilings", f.Roof, 0.1, 50)
	check("at floors", f.Floor, 0.1, 50)
	check("outside", float64(f.Outside), 0.1, 200)
	check("outside at glass", float64(f.Smooth), 0.1, 200)
	if !(f.Least > 0 && f.Least <= 20) {
		faults = append(faults, fmt.Errorf("warmth: faces %g K from the air at least is out of range: more than 0 to 20 K", float64(f.Least)))
	}
	if !(f.Warm >= -40 && f.Warm <= 80) {
		faults = append(faults, fmt.Errorf("warmth: radiation inside at %s is outside -40 degC to 80 degC", quantity.Text(float64(f.Warm), "degC")))
	}
	return errors.Join(faults...)
}

func (d *Design) room(i int) error {
	r := &d.Rooms[i]
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("warmth: room %q: "+format, append([]any{r.Name}, args...)...))
		}
	}
	fault(!(r.Area > 0), "its floor has %g m2: give it more than 0", float64(r.Area))
	fault(!(r.Height > 0), "it is %g m high: give it more than 0", float64(r.Height))
	fault(!(r.Wide >= 0), "it is %g m wide: give it more than 0, or leave it out", float64(r.Wide))
	fault(!(r.Contents >= 0), "its contents hold %g J/m2K: give 0 or more", r.Contents)
	fault(!(r.Infiltration >= 0), "its leaks change the air %g times an hour: give 0 or more", r.Infiltration)
	fault(len(r.Walls) > MostWalls, "it has %d walls: the most is %d", len(r.Walls), MostWalls)
	fault(len(r.Windows) > MostWindows, "it has %d windows: the most is %d", len(r.Windows), MostWindows)
	fault(len(r.Openings) > MostOpenings, "it has %d openings: the most is %d", len(r.Openings), MostOpenings)
	fault(d.facing(i) < 2, "it has fewer than two faces: tell at least two of its walls, roof and floor")
	for k := range r.Walls {
		err := d.wall(i, k)
		fault(err != nil, "%v", err)
	}
	for k := range r.Windows {
		w := &r.Windows[k]
		fault(!(w.Area > 0), "window %q has %g m2: give it more than 0", w.Name, float64(w.Area))
		fault(!(w.Emissivity > 0 && w.Emissivity <= 1), "window %q has an emissivity inside of %g: more than 0, at most 1", w.Name, w.Emissivity)
		fault(!(w.Shutter.Adds >= 0), "the shutter of window %q adds %g m2K/W: give 0 or more", w.Name, float64(w.Shutter.Adds))
	}
	for _, o := range r.Openings {
		fault(o.To < 0 || o.To >= len(d.Rooms) || o.To == i, "an opening leads to room number %d of %d, or to itself", o.To, len(d.Rooms))
		fault(!(o.Area >= 0 && o.Tall > 0), "an opening has %g m2 and is %g m tall: give it a size", float64(o.Area), float64(o.Tall))
	}
	err := r.DugFaults()
	fault(err != nil, "its section: %v", err)
	faults = append(faults, r.machines()...)
	return errors.Join(faults...)
}

// machines looks over what works by the clock.
func (r *Room) machines() (faults []error) {
	for h := range 24 {
		for _, hot := range r.Heating {
			for _, cold := range r.Cooling {
				if hot.Hours[h] && cold.Hours[h] && hot.At > cold.At {
					return append(faults, fmt.Errorf("warmth: room %q is heated to %g degC and cooled to %g degC in the same hour, %d:00: heat to less than it is cooled to", r.Name, float64(hot.At), float64(cold.At), h))
				}
			}
		}
	}
	for _, f := range r.Fans {
		if !(f.Flow >= 0) {
			faults = append(faults, fmt.Errorf("warmth: room %q has a fan of %g m3/h: give 0 or more", r.Name, f.Flow))
		}
	}
	for _, g := range r.Gains {
		if !(g.Radiant >= 0 && g.Radiant <= 1) {
			faults = append(faults, fmt.Errorf("warmth: room %q, %q: a radiant share of %g is outside 0 to 1", r.Name, g.Name, g.Radiant))
		}
	}
	return faults
}

// facing counts what a room has round it.
func (d *Design) facing(room int) (n int) {
	for i := range d.Rooms {
		for _, w := range d.Rooms[i].Walls {
			if i == room || w.Faces == Neighbour && w.Other == room {
				n++
			}
		}
	}
	if room < len(d.Rooms) {
		n += len(d.Rooms[room].Windows)
	}
	return n
}

// wall says what is wrong with a wall.
func (d *Design) wall(room, index int) error {
	w := &d.Rooms[room].Walls[index]
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("wall %q: "+format, append([]any{w.Name}, args...)...))
		}
	}
	fault(!(w.Area > 0), "it has %g m2: give it more than 0", float64(w.Area))
	fault(len(w.Layers) == 0, "it has no layers: tell them from inside to outside")
	if len(w.Layers) > 0 {
		if err := (fabric.Element{Layers: w.Layers}).Faults(); err != nil {
			fault(true, "%v", err)
		}
	}
	share := func(what string, v, low float64) {
		fault(!(v >= low && v <= 1), "%s of %g is outside %g to 1", what, v, low)
	}
	share("an inside emissivity", w.InsideEmissivity, 0.01)
	share("an inside absorptance", w.InsideAbsorptance, 0)
	if w.Faces == Air || w.Faces == Neighbour {
		share("an outside absorptance", w.OutsideAbsorptance, 0)
		share("an outside emissivity", w.OutsideEmissivity, 0.01)
	}
	fault(w.Faces == Neighbour && (w.Other < 0 || w.Other >= len(d.Rooms) || w.Other == room), "it faces room number %d of %d, or its own", w.Other, len(d.Rooms))
	if w.Faces == Earth {
		faults = append(faults, w.Ground.faults(w.Name))
	}
	return errors.Join(faults...)
}
