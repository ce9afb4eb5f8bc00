package warmth

import (
	"math"

	"suffice/internal/reduce"
	"suffice/quantity"
	"suffice/site/air"
	"suffice/warmth/fabric"
	"suffice/warmth/light"
	"suffice/warmth/vent"
)

// fine is how walls are cut: right for swings of four hours and longer.
func fine() fabric.Spacing { return fabric.Spacing{Hours: 4, Fineness: 3} }

// A plan is the rooms as a circuit, with what its nodes, inputs and ties are.
type plan struct {
	circuit
	films   Films
	apart   float64 // K between room and outside that moves most heat, of the record
	air     []int   // node of each room
	star    []int   // node in which the faces of each room exchange radiation
	airHeld []int   // group of each room
	airHeat []int   // input of each room, W
	starIn  []int
	outdoor int // input, temperature of the air outside
	walls   []wallPlan
	windows []windowPlan
	leaks   []int // tie of each room
	banks   []bankPlan
}

// A wallPlan is where a wall stands in the circuit. A wall of no outside has -1 for outer and tie.
type wallPlan struct {
	room, index int
	inside      int // node of its face
	sun         int // input, sunlight taken up by the inside face, W
	behind      int // node of the face in the neighbour
	behindSun   int // input
	outer       int // input, temperature behind it
	tie         int
	joint       int     // to the face in the neighbour, -1 where there is none
	held        int     // group, what it holds
	buried      *buried // nil where it is not drawn in a section
}

// A windowPlan is where a window stands in the circuit.
type windowPlan struct {
	room, index int
	inside      int // node of the glass's face
	pane        int // input, what its panes hand to that face of the sun, W
	outer       int // input, temperature outside, air and sky together
	tie         int
	area        float64 // m2
	bare        float64 // W/K of the tie
	shut        float64 // W/K of the tie with the shutter closed
}

// A face is what a room's radiation meets.
type face struct {
	node, room int
	area       float64
	emissivity float64
	buried     *buried // in place of the node
}

// planOf joins the rooms into a circuit.
func planOf(d *Design, pressure float64, o *outside) *plan {
	p := &plan{circuit: circuit{net: reduce.NewNetwork(0)}, films: d.Films}
	p.apart = typical(o.sky.Hours.Temperature, d.Films.Warm)
	p.outdoor = p.boundary("air outside")
	for i := range d.Rooms {
		r := &d.Rooms[i]
		volume := float64(r.Area) * float64(r.Height)
		held := vent.Carries(volume, pressure)
		p.air = append(p.air, p.node(float64(held)+r.Contents*float64(r.Area)))
		p.airHeld = append(p.airHeld, p.net.Group(r.Name+", air"))
		p.net.Part(p.airHeld[i], p.air[i])
		p.star = append(p.star, p.node(0))
		p.airHeat = append(p.airHeat, p.heat(r.Name+", air", p.air[i]))
		p.starIn = append(p.starIn, p.heat(r.Name+", faces", p.star[i]))
		p.leaks = append(p.leaks, p.tie(p.air[i], p.outdoor, float64(vent.Carries(r.Infiltration*volume/3600, pressure))))
	}
	var faces []face
	for i := range d.Rooms {
		for k := range d.Rooms[i].Walls {
			if r := &d.Rooms[i]; r.buried(k) {
				faces = append(faces, p.bury(r, i, k))
				continue
			}
			faces = append(faces, p.wall(d, i, k, o.walls[i][k])...)
		}
		for k := range d.Rooms[i].Windows {
			faces = append(faces, p.window(d, i, k, float64(o.windows[i][k].Conductance))...)
		}
	}
	p.radiate(faces)
	return p
}

// convection gives the film inside, W/m2K, of a face through which so many W/m2K pass outside: h = c |ΔT|^(1/3) with ΔT between
// the face and the air, which h decides in turn, at the difference to outside that moves most heat.
func (p *plan) convection(r Role, through, emissivity float64) float64 {
	f := &p.films
	c := f.Upright
	switch r {
	case Roof:
		c = f.Roof
	case Floor:
		c = f.Floor
	case Upright:
	}
	if f.Fixed {
		return c
	}
	rays := 4 * air.StefanBoltzmann * math.Pow(f.Warm.Kelvin(), 3) * emissivity
	h := c
	for range filmRounds {
		apart := p.apart * through / (through + h + rays)
		h = c * math.Cbrt(max(apart, float64(f.Least)))
	}
	return h
}

// filmRounds is enough: each leaves at most a third of the error of the one before.
const filmRounds = 30

// wall joins a wall to its room and to what is behind it.
func (p *plan) wall(d *Design, room, index int, sky light.FaceHours) []face {
	w := &d.Rooms[room].Walls[index]
	area := float64(w.Area)
	n := fabric.Element{Layers: w.earthed()}.Network(fine())
	at := wallPlan{room: room, index: index, inside: p.node(0), behind: -1, behindSun: -1, outer: -1, tie: -1, joint: -1}
	at.sun, at.held = p.heat(w.Name+", sun inside", at.inside), p.net.Group(w.Name)
	p.join(p.air[room], at.inside, p.convection(w.Role, w.passes(n.Steady(), float64(sky.Conductance)), w.InsideEmissivity)*area)
	faces := []face{{node: at.inside, room: room, area: area, emissivity: w.InsideEmissivity}}
	last := at.inside
	for k, held := range n.Capacity {
		next := p.node(held * area)
		p.net.Part(at.held, next)
		p.join(last, next, n.Link[k]*area)
		last = next
	}
	link := n.Link[len(n.Capacity)]
	switch w.Faces {
	case Air:
		at.outer = p.boundary(w.Name + ", outside")
		at.tie = p.tie(last, at.outer, area/(1/link+1/float64(sky.Conductance)))
	case Earth:
		at.outer = p.boundary(w.Name + ", ground")
		at.tie = p.tie(last, at.outer, area/(1/link+w.Ground.behind()))
	case Neighbour:
		at.behind = p.node(0)
		at.behindSun = p.heat(w.Name+", sun behind", at.behind)
		at.joint = p.join(last, at.behind, link*area)
		p.join(p.air[w.Other], at.behind, p.convection(w.Role.turned(), 0, w.OutsideEmissivity)*area)
		faces = append(faces, face{node: at.behind, room: w.Other, area: area, emissivity: w.OutsideEmissivity})
	case Nothing: // no heat passes: a wall without mass only throws radiation back
	}
	p.walls = append(p.walls, at)
	return faces
}

// passes gives what a wall lets through from its inside face on, W/m2K: nothing to a neighbour, who is about as warm.
func (w *Wall) passes(layers, sky float64) float64 {
	switch w.Faces {
	case Air:
		return 1 / (1/layers + 1/sky)
	case Earth:
		return 1 / (1/layers + w.Ground.behind())
	default:
		return 0
	}
}

// turned gives the role of a wall as the room behind it sees it.
func (r Role) turned() Role {
	switch r {
	case Roof:
		return Floor
	case Floor:
		return Roof
	default:
		return Upright
	}
}

// window joins a window, frame included, from its inner face to the outside.
func (p *plan) window(d *Design, room, index int, conductance float64) []face {
	w := &d.Rooms[room].Windows[index]
	area := float64(w.Area)
	at := windowPlan{room: room, index: index, inside: p.node(0), area: area,
		bare: area * conductance, shut: area / (1/conductance + float64(w.Shutter.Adds))}
	at.pane, at.outer = p.heat(w.Name+", sun", at.inside), p.boundary(w.Name+", outside")
	p.join(p.air[room], at.inside, p.convection(Upright, conductance, w.Emissivity)*area)
	at.tie = p.tie(at.inside, at.outer, at.bare)
	p.windows = append(p.windows, at)
	return []face{{node: at.inside, room: room, area: area, emissivity: w.Emissivity}}
}

// radiate joins every face to its room's star. From a face to the star each square metre carries
// 4 σ T³ over (1 − ε)/ε + 1 − its share of all faces: exact for two plates face to face, and for a sphere's pieces but for
// what each then sees of itself.
func (p *plan) radiate(faces []face) {
	all := make([]float64, len(p.air))
	for _, f := range faces {
		all[f.room] += f.area
	}
	black := 4 * air.StefanBoltzmann * math.Pow(quantity.Celsius.Kelvin(p.films.Warm), 3)
	for _, f := range faces {
		g := f.area * black / ((1-f.emissivity)/f.emissivity + 1 - f.area/all[f.room])
		if f.buried != nil {
			f.buried.star = g
			continue
		}
		p.join(f.node, p.star[f.room], g)
	}
}
