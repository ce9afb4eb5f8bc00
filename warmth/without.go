package warmth

import (
	"fmt"
	"math"

	"suffice/glass"
	"suffice/material"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
)

// A Measure is what people build into a house so that it keeps itself comfortable.
type Measure int

// The measures.
const (
	Mass Measure = iota
	Insulation
	EarthBehind
	Panes
	Overhang
	Shutters
	OpenVents
	Section
	Measures int = iota
)

func (m Measure) String() string {
	return [Measures]string{"mass", "insulation", "earth", "glass", "overhang", "shutters", "vents", "section"}[m]
}

// What counts as heavy and as insulation where a measure is left out; common practice, no source.
const (
	heavy      material.Density      = 200 // kg/m3: timber and all masonry lie over it, insulating boards under it
	insulating material.Conductivity = 0.1 // W/mK: timber lies over it
)

// lightBoard is the heat, J/m2K, that is left to a layer without its mass: a gypsum board of 12.5 mm, 900 kg/m3, 1000 J/kgK (iso10456).
const lightBoard = 0.0125 * 900 * 1000

// Says tells in plain words what a house without the measure is.
func (m Measure) Says() string {
	return [Measures]string{
		fmt.Sprintf("every layer heavier than %g kg/m3 holds no more heat than a plasterboard of 12.5 mm and lets through as much as before; furniture and the ground under a floor stay", float64(heavy)),
		fmt.Sprintf("every layer that conducts less than %g W/mK is taken out, with what crosses it; where nothing else would be left, a board of timber of 22 mm stands", float64(insulating)),
		"every wall and roof with earth behind it stands in the open air instead; floors stay on the ground",
		"every window is walled up like the largest outer wall of its room",
		"roofs and fins that stand out around the glass are taken away",
		"the shutters stay open at night",
		"the vents stay shut; fans and leaks go on",
		"the earth stays, and is reckoned by the depth of a wall and by ISO 13370 for a floor, in place of a section: a change of method, not of the house",
	}[m]
}

// Without gives the design with a measure left out, and from how many walls, windows or rooms it was taken: from none, the
// house never had it. The design itself stays as it is.
func (d *Design) Without(m Measure) (out Design, taken int) {
	out = d.own()
	for i := range out.Rooms {
		r := &out.Rooms[i]
		switch m {
		case Mass:
			taken += r.eachWall(lighten)
		case Insulation:
			taken += r.eachWall(strip)
		case EarthBehind:
			back := out.back(i)
			taken += r.eachWall(func(w *Wall) bool { return unearth(w, back) })
			r.Dug = nil
		case Panes:
			taken += r.wallUp()
		case Overhang:
			taken += r.eachWindow(unshade)
		case Shutters:
			taken += r.eachWindow(func(w *Window) bool { had := w.Shutter.Adds > 0; w.Shutter = Shutter{}; return had })
		case OpenVents:
			if r.Vents.Inlet.Area > 0 || r.Vents.Outlet.Area > 0 {
				taken++
			}
			r.Vents = Vents{}
		case Section:
			if r.Dug != nil {
				taken++
			}
			r.Dug = nil
		}
	}
	return out, taken
}

// own gives a design with rooms, walls, layers and windows of its own.
func (d *Design) own() Design {
	out := *d
	out.Rooms = append([]Room(nil), d.Rooms...)
	for i := range out.Rooms {
		r := &out.Rooms[i]
		r.Windows = append([]Window(nil), r.Windows...)
		r.Walls = append([]Wall(nil), r.Walls...)
		for k := range r.Walls {
			r.Walls[k].Layers = append([]fabric.Layer(nil), r.Walls[k].Layers...)
		}
	}
	return out
}

// eachWall changes the walls and counts those that did change.
func (r *Room) eachWall(change func(*Wall) bool) (changed int) {
	for k := range r.Walls {
		if change(&r.Walls[k]) {
			changed++
		}
	}
	return changed
}

func (r *Room) eachWindow(change func(*Window) bool) (changed int) {
	for k := range r.Windows {
		if change(&r.Windows[k]) {
			changed++
		}
	}
	return changed
}

// lighten leaves every heavy layer the heat of a light board.
func lighten(w *Wall) (changed bool) {
	for k := range w.Layers {
		l := &w.Layers[k]
		held := l.Areal()
		if l.Gap > 0 || l.Density <= heavy || held <= lightBoard {
			continue
		}
		l.Density *= material.Density(lightBoard / held)
		l.Bridge.Density *= material.Density(lightBoard / held)
		changed = true
	}
	return changed
}

// timber is what stands where all layers of a wall are taken out (iso10456: softwood, from memory).
var timber = fabric.Layer{Name: "timber", Thickness: 0.022, Conductivity: 0.13, Density: 500, Capacity: 1600}

// strip takes the insulation out of a wall.
func strip(w *Wall) bool {
	var kept []fabric.Layer
	for _, l := range w.Layers {
		if l.Gap > 0 || l.Conductivity >= insulating {
			kept = append(kept, l)
		}
	}
	if len(kept) == len(w.Layers) {
		return false
	}
	if len(kept) == 0 {
		kept = []fabric.Layer{timber}
	}
	w.Layers = kept
	if w.Faces == Earth && w.Ground.Slab != nil {
		w.Ground.Slab = onto(*w.Ground.Slab, kept)
	}
	return true
}

// onto gives a floor on the ground with other layers.
func onto(slab ground.Floor, layers []fabric.Layer) *ground.Floor {
	slab.Resists = 0
	for _, l := range layers {
		slab.Resists += float64(l.Resistance())
	}
	return &slab
}

// back gives where a wall behind a room looks whose file does not say: away from the room's first window, or from the house's.
func (d *Design) back(room int) quantity.Degrees {
	away := func(r *Room) quantity.Degrees {
		return quantity.Degrees(math.Mod(float64(r.Windows[0].Plane.Azimuth)+180, 360))
	}
	if r := &d.Rooms[room]; len(r.Windows) > 0 {
		return away(r)
	}
	for i := range d.Rooms {
		if r := &d.Rooms[i]; len(r.Windows) > 0 {
			return away(r)
		}
	}
	return 0
}

// unearth stands a wall in the open air.
func unearth(w *Wall, back quantity.Degrees) bool {
	if w.Faces != Earth || w.Role == Floor {
		return false
	}
	w.Faces, w.Ground = Air, Ground{}
	if w.Role == Upright && w.Plane == (sun.Plane{}) {
		w.Plane = sun.Plane{Slope: 90, Azimuth: back}
	}
	return true
}

// wallUp gives the windows' area to the room's largest wall in the open air, an upright one before a roof. A room without such a wall keeps
// its windows.
func (r *Room) wallUp() (taken int) {
	best := -1
	for k := range r.Walls {
		w := &r.Walls[k]
		if w.Faces != Air || w.Role == Floor {
			continue
		}
		if b := best; b < 0 || w.Role == Upright && r.Walls[b].Role != Upright || w.Role == r.Walls[b].Role && w.Area > r.Walls[b].Area {
			best = k
		}
	}
	if best < 0 {
		return 0
	}
	taken = len(r.Windows)
	for k := range r.Windows {
		r.Walls[best].Area += r.Windows[k].Area
	}
	r.Windows = nil
	return taken
}

func unshade(w *Window) bool {
	bare := glass.Shade{Width: w.Shade.Width, Height: w.Shade.Height}
	had := bare != w.Shade
	w.Shade = bare
	return had
}
