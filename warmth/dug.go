package warmth

import (
	"errors"
	"fmt"
	"math"

	"suffice/internal/reduce"
	"suffice/quantity"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
)

// Dug is a room's back wall and floor with all earth about them as one section (see ground.Dug), in place of what each of the two tells of
// its ground. Both walls keep their layers, which are drawn in the section behind the room's own films.
type Dug struct {
	Back, Floor int             // walls of the room: an upright one and a floor, both facing earth
	Long        quantity.Metres // of the room, across the section
	Cut         ground.Dug      // without slab and back, which are the walls' layers
	Foot        []fabric.Layer  // of the front wall below the garden, from inside: the section's front
	Face        []float64       // degC of the ground's face by hours: the weather's, not the house's
	Kept        *ground.Kept    // for the section not to be reduced again; may be nil
}

// drawn gives the section with the layers of its walls.
func (r *Room) drawn() ground.Dug {
	cut := r.Dug.Cut
	cut.Slab, cut.Back, cut.Front = inEarth(r.Walls[r.Dug.Floor].Layers), inEarth(r.Walls[r.Dug.Back].Layers), inEarth(r.Dug.Foot)
	return cut
}

// inEarth gives layers as a section is filled with them, bridges spread evenly.
func inEarth(layers []fabric.Layer) (list []ground.Layer) {
	for _, l := range layers {
		thick := float64(l.Thickness)
		list = append(list, ground.Layer{Material: ground.Material{Name: l.Name, Conductivity: thick / float64(l.Resistance()), Capacity: l.Areal() / thick}, Thick: quantity.Metres(thick)})
	}
	return list
}

// dugAreas is how far the walls' areas may be from those of the section, as a share: walls are measured by hand.
const dugAreas = 0.05

// DugFaults gives everything about a room's section that cannot be, or nil.
func (r *Room) DugFaults() error {
	d := r.Dug
	if d == nil {
		return nil
	}
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf(format, args...))
		}
	}
	earthy := func(wall int, role Role) bool {
		return wall >= 0 && wall < len(r.Walls) && r.Walls[wall].Faces == Earth && r.Walls[wall].Role == role
	}
	if !earthy(d.Back, Upright) || !earthy(d.Floor, Floor) {
		return fmt.Errorf("it needs an upright wall and a floor of the room that both face earth")
	}
	for _, list := range [][]fabric.Layer{r.Walls[d.Back].Layers, r.Walls[d.Floor].Layers, d.Foot} {
		for _, l := range list {
			fault(l.Gap > 0, "layer %s is an air gap, which earth and walls drawn as a section cannot have: take it out, or tell the room without a section", l.Name)
		}
	}
	if len(faults) > 0 {
		return errors.Join(faults...)
	}
	fault(!(d.Long > 0), "the room is %g m long: give it more than 0", float64(d.Long))
	cut := r.drawn()
	if err := cut.Faults(); err != nil {
		return errors.Join(append(faults, err)...)
	}
	alike := func(wall int, drawn float64, words string) {
		told := float64(r.Walls[wall].Area)
		fault(math.Abs(told/drawn-1) > dugAreas, "wall %q has %.4g m2, and %s make %.4g m2: one of them is wrong", r.Walls[wall].Name, told, words, drawn)
	}
	alike(d.Back, float64(d.Long*(cut.Berm-cut.Floor)), fmt.Sprintf("%g m of length by %.4g m of earth over the floor", float64(d.Long), float64(cut.Berm-cut.Floor)))
	alike(d.Floor, float64(d.Long*cut.Room), fmt.Sprintf("%g m of length by %.4g m of depth", float64(d.Long), float64(cut.Room)))
	return errors.Join(faults...)
}

// buried reports whether a wall is drawn in the room's section.
func (r *Room) buried(wall int) bool {
	return r.Dug != nil && (wall == r.Dug.Back || wall == r.Dug.Floor)
}

// A bankPlan is where the section of a room stands in the circuit.
type bankPlan struct {
	room int
	face int    // input, the ground's face
	held int    // group, what it holds
	up   [2]int // outputs, heat that garden and slope give it, W
}

// A buried is the face of a wall that is drawn in a section: its films, and where what it takes and how warm it is are read.
type buried struct {
	air, star   float64 // W/K
	takes, face int     // outputs, W and degC
}

func (b *buried) films() float64 { return b.air + b.star }

// bury puts the face of a wall that is drawn in a section into its room. Its film has the coefficient it would have on the ground that the
// wall itself tells: h follows the third root of a difference, of which little is the ground's.
func (p *plan) bury(r *Room, room, index int) face {
	w := &r.Walls[index]
	area := float64(w.Area)
	through := w.passes(1/float64(fabric.Element{Layers: w.earthed()}.Resistance()), 0)
	at := wallPlan{room: room, index: index, inside: -1, sun: p.falls(w.Name + ", sun inside"), behind: -1, behindSun: -1, outer: -1, tie: -1, joint: -1}
	at.buried = &buried{air: area * p.convection(w.Role, through, w.InsideEmissivity)}
	p.walls = append(p.walls, at)
	return face{room: room, area: area, emissivity: w.InsideEmissivity, buried: at.buried}
}

// dig joins every room's section, in few modes, to its room and to the ground's face.
func (p *plan) dig(d *Design, in detail) error {
	for i := range d.Rooms {
		if r := &d.Rooms[i]; r.Dug != nil {
			if err := p.digUnder(r, i, in); err != nil {
				return fmt.Errorf("warmth: room %q: %w", r.Name, err)
			}
		}
	}
	return nil
}

func (p *plan) digUnder(r *Room, room int, in detail) error {
	floor, back := p.wallAt(room, r.Dug.Floor), p.wallAt(room, r.Dug.Back)
	cut := r.drawn()
	long := float64(r.Dug.Long)
	// The films of the room's own faces, over the areas that are drawn.
	resists := ground.Surfaces{Outside: ground.Outside, Floor: long * float64(cut.Room) / floor.buried.films(), Wall: long * float64(cut.Berm-cut.Floor) / back.buried.films()}
	m, airs, err := r.Dug.Kept.Reduced(cut, in.grid, resists, r.Dug.Long, in.modes)
	if err != nil {
		return err
	}
	bank := bankPlan{room: room, face: p.boundary(r.Name + ", ground's face"), held: p.net.Group(r.Name + ", earth")}
	ports := make([]reduce.Port, len(m.Inputs))
	ports[airs.Garden].Inputs = []reduce.Part{{Of: bank.face, Much: 1}}
	ports[airs.Slope].Inputs = ports[airs.Garden].Inputs
	for air, w := range map[int]*wallPlan{airs.Floor: floor, airs.Wall: back} {
		ports[air] = reduce.Port{Nodes: []reduce.Part{{Of: p.air[room], Much: w.buried.air}, {Of: p.star[room], Much: w.buried.star}}, Inputs: []reduce.Part{{Of: w.sun, Much: 1}}}
	}
	joined := p.net.Attach(m, ports)
	for _, z := range joined.States {
		p.net.Part(bank.held, z)
	}
	bank.up = [2]int{joined.Heats[airs.Garden], joined.Heats[airs.Slope]}
	floor.buried.takes, floor.buried.face = joined.Heats[airs.Floor], joined.Faces[airs.Floor]
	back.buried.takes, back.buried.face = joined.Heats[airs.Wall], joined.Faces[airs.Wall]
	p.banks = append(p.banks, bank)
	return nil
}

// wallAt gives where a wall of a room stands.
func (p *plan) wallAt(room, index int) *wallPlan {
	for k := range p.walls {
		if w := &p.walls[k]; w.room == room && w.index == index {
			return w
		}
	}
	return nil
}

// through tells what a buried face takes as what passes its films: all that touches it, sun included, in the mean, and the face.
func (b *buried) through(seen []float64) (g, near, far float64) {
	g = b.films()
	return g, seen[b.face] + seen[b.takes]/g, seen[b.face]
}
