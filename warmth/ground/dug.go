package ground

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// Layer is one layer of a wall or floor.
type Layer struct {
	Material
	Thick quantity.Metres
}

// Dug is a room with earth behind it, by plain dimensions, as a cut from the garden in front (left)
// to the slope behind (right). Heights count from the garden's face.
type Dug struct {
	Earth  Material
	Garden quantity.Metres // open ground in front, as far as the section goes
	Deep   quantity.Metres // earth below the garden, as far as the section goes

	Room  quantity.Metres // from the front wall's inside to the back wall's
	Floor quantity.Metres // height of its face, below 0 where it is sunk
	Slab  []Layer         // of the floor, from above

	Front      []Layer         // the front wall's foot below the garden, from inside
	Foundation quantity.Metres // depth of that foot below the garden
	Back       []Layer         // the back wall, from inside

	Berm   quantity.Metres // height of the earth against the back wall
	Crest  quantity.Metres // level earth on top of the berm, behind the wall
	Slope  quantity.Degrees
	Behind quantity.Metres // height of the ground far behind: below Berm the slope falls, above it rises
	Beyond quantity.Metres // level ground after the slope, as far as the section goes

	// Umbrella is insulation laid in the berm, level, from the back wall outward; no length, none.
	Umbrella       Layer
	UmbrellaDepth  quantity.Metres // below the berm's crest
	UmbrellaLength quantity.Metres
}

// DugAirs are the numbers of the airs of a dug room's section.
type DugAirs struct{ Garden, Slope, Floor, Wall int }

// Faults gives everything about the room that cannot be, or nil.
func (d Dug) Faults() error {
	var faults []error
	refuse := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("dug room: "+format, args...))
		}
	}
	for _, v := range []struct {
		what string
		v    quantity.Metres
	}{{"garden in front", d.Garden}, {"depth of earth", d.Deep}, {"room", d.Room}, {"ground beyond the slope", d.Beyond}} {
		refuse(!(v.v > 0), "%s is %g m: it is above 0", v.what, float64(v.v))
	}
	refuse(!(d.Crest >= 0), "crest is %g m: it is not below 0", float64(d.Crest))
	refuse(!(d.Foundation >= 0), "foundation is %g m deep: it is not below 0", float64(d.Foundation))
	refuse(len(d.Slab) == 0 || len(d.Front) == 0 || len(d.Back) == 0, "floor, front wall and back wall need a layer each")
	for _, l := range append(append(append([]Layer(nil), d.Slab...), d.Front...), d.Back...) {
		refuse(!(l.Thick > 0), "layer %s is %g m thick: it is above 0", l.Name, float64(l.Thick))
	}
	refuse(!(d.Berm > d.Floor), "berm ends at %g m, at or below the floor at %g m", float64(d.Berm), float64(d.Floor))
	refuse(float64(d.Floor)-thickness(d.Slab) <= -float64(d.Deep), "floor at %g m reaches below the section's %g m of earth", float64(d.Floor), float64(d.Deep))
	refuse(d.Foundation >= d.Deep, "foundation of %g m reaches below the section's %g m of earth", float64(d.Foundation), float64(d.Deep))
	refuse(d.Behind != d.Berm && !(d.Slope > 0 && d.Slope < 90), "slope is %g deg: between berm and ground behind it lies above 0 and below 90", float64(d.Slope))
	refuse(d.Behind <= -d.Deep, "ground behind at %g m lies below the section's %g m of earth", float64(d.Behind), float64(d.Deep))
	if d.UmbrellaLength > 0 {
		refuse(!(d.Umbrella.Thick > 0) || !(d.UmbrellaDepth >= 0), "umbrella of %g m at %g m depth: both need a measure", float64(d.Umbrella.Thick), float64(d.UmbrellaDepth))
	}
	return errors.Join(faults...)
}

func thickness(layers []Layer) (sum float64) {
	for _, l := range layers {
		sum += float64(l.Thick)
	}
	return sum
}

// run gives how far the slope goes on the level, m.
func (d Dug) run() float64 {
	if d.Behind == d.Berm {
		return 0
	}
	return math.Abs(float64(d.Behind-d.Berm)) / math.Tan(float64(d.Slope.Radians()))
}

// height gives the ground's face at a place behind the wall, m.
func (d Dug) height(x float64) float64 {
	x -= float64(d.Room) + thickness(d.Back) + float64(d.Crest)
	switch run := d.run(); {
	case x <= 0:
		return float64(d.Berm)
	case x >= run:
		return float64(d.Behind)
	default:
		return float64(d.Berm) + (float64(d.Behind-d.Berm))*x/run
	}
}

// skirt is the air drawn above all earth, m: nothing is computed in it.
const skirt = 0.5

// Grid says how fine a section is drawn.
type Grid struct{ Finest, Grows, Coarsest float64 }

// Fine is enough: with half its steps the floor and wall of a dug house lose less than 1 % more.
func Fine() Grid { return Grid{Finest: 0.05, Grows: 1.5, Coarsest: 2.5} }

// Surfaces are the resistances of a section's faces, m2K/W.
type Surfaces struct{ Outside, Floor, Wall float64 }

// UsualSurfaces are those of ISO 6946: outside, heat downward, heat on the level.
func UsualSurfaces() Surfaces {
	return Surfaces{Outside: Outside, Floor: InsideDown, Wall: InsideLevel}
}

// Section draws the room's cut. The slope is drawn in steps of the grid, which lengthens its face and shifts
// the earth under it by less than half a step. The front wall above ground, the roof and what stands above the berm
// are the house's own: there the section ends, and no heat passes.
func (d Dug) Section(grid Grid, resists Surfaces) (*Section, DugAirs, error) {
	if err := d.Faults(); err != nil {
		return nil, DugAirs{}, err
	}
	front, room, back := -thickness(d.Front), float64(d.Room), float64(d.Room)+thickness(d.Back)
	all := Rect{
		Left: front - float64(d.Garden), Right: back + float64(d.Crest) + d.run() + float64(d.Beyond),
		Bottom: -float64(d.Deep), Top: max(0, float64(d.Berm), float64(d.Behind)) + skirt,
	}
	x, y := d.lines(grid, all)
	s, err := NewSection(x, y)
	if err != nil {
		return nil, DugAirs{}, err
	}
	s.Fill(all, d.Earth)
	d.build(s)
	foot := float64(d.Floor)
	shelf := y[index(y, foot)+1] // of the cells that stand for the air over the floor
	s.Clear(Rect{front, 0, max(0, foot), all.Top})
	s.Clear(Rect{0, room, foot, all.Top})
	s.Clear(Rect{room, back, float64(d.Berm), all.Top})
	airs := DugAirs{
		Garden: s.Open(Rect{all.Left, front, 0, all.Top}, Air{"garden", resists.Outside}),
		Slope:  d.open(s, Air{"slope", resists.Outside}, all.Top),
		Floor:  s.Open(Rect{0, room, foot, shelf}, Air{"floor", resists.Floor}),
		Wall:   s.Open(Rect{x[index(x, room)-1], room, shelf, float64(d.Berm)}, Air{"wall", resists.Wall}),
	}
	s.Open(Rect{0, x[index(x, 0)+1], shelf, 0}, Air{"wall", resists.Wall}) // the front wall's inside, where the floor is sunk
	return s, airs, nil
}

// lines gives the grid, with lines at all faces.
func (d Dug) lines(grid Grid, all Rect) (x, y []float64) {
	xs := []float64{all.Left, 0, float64(d.Room), all.Right}
	ys := []float64{all.Bottom, -float64(d.Foundation), 0, float64(d.Floor), float64(d.Berm), float64(d.Behind), all.Top}
	at := 0.0
	for _, l := range d.Front {
		at -= float64(l.Thick)
		xs = append(xs, at)
	}
	at = float64(d.Room)
	for _, l := range d.Back {
		at += float64(l.Thick)
		xs = append(xs, at)
	}
	xs = append(xs, at+float64(d.Crest), at+float64(d.Crest)+d.run())
	level := float64(d.Floor)
	for _, l := range d.Slab {
		level -= float64(l.Thick)
		ys = append(ys, level)
	}
	if d.UmbrellaLength > 0 {
		xs = append(xs, at+float64(d.UmbrellaLength))
		lid := float64(d.Berm - d.UmbrellaDepth)
		ys = append(ys, lid, lid-float64(d.Umbrella.Thick))
	}
	return Lines(xs, grid.Finest, grid.Grows, grid.Coarsest), Lines(ys, grid.Finest, grid.Grows, grid.Coarsest)
}

// build lays walls, floor and umbrella into the earth.
func (d Dug) build(s *Section) {
	bottom := float64(d.Floor) - thickness(d.Slab)
	at := 0.0
	for _, l := range d.Front {
		s.Fill(Rect{at - float64(l.Thick), at, -float64(d.Foundation), max(0, float64(d.Floor))}, l.Material)
		at -= float64(l.Thick)
	}
	at = float64(d.Room)
	for _, l := range d.Back {
		s.Fill(Rect{at, at + float64(l.Thick), bottom, float64(d.Berm)}, l.Material)
		at += float64(l.Thick)
	}
	if d.UmbrellaLength > 0 {
		lid := float64(d.Berm - d.UmbrellaDepth)
		s.Fill(Rect{at, at + float64(d.UmbrellaLength), lid - float64(d.Umbrella.Thick), lid}, d.Umbrella.Material)
	}
	level := float64(d.Floor)
	for _, l := range d.Slab {
		s.Fill(Rect{0, float64(d.Room), level - float64(l.Thick), level}, l.Material)
		level -= float64(l.Thick)
	}
}

// open makes air of all that is above the ground behind the back wall.
func (d Dug) open(s *Section, a Air, top float64) (number int) {
	wall := float64(d.Room) + thickness(d.Back)
	for i := range len(s.X) - 1 {
		if middle := (s.X[i] + s.X[i+1]) / 2; middle > wall {
			number = s.Open(Rect{s.X[i], s.X[i+1], d.height(middle), top}, a)
		}
	}
	return number
}

// index gives the grid line at a place.
func index(lines []float64, at float64) int {
	for i, x := range lines {
		if math.Abs(x-at) < merged {
			return i
		}
	}
	return -1
}
