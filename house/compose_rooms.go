package house

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"suffice/material"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/soil"
	"suffice/stove"
	"suffice/warmth"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
	"suffice/warmth/vent"
)

// RoomParts is the rooms, and who lives in them.
type RoomParts struct {
	Design  warmth.Design  // the undisturbed ground behind its walls belongs to the weather and is not in it yet
	LivedIn []bool         // by room
	Stoves  []*stove.Stove // by room, nil where there is none
	Covers  []ground.Cover // by room, of the ground over its section
	Earth   soil.Ground
}

// rooms builds them, or gives nil where their layers are not told.
func (r *reader) rooms(f *File) *RoomParts {
	known := r.materials(f.Materials)
	if !layered(f.Rooms) {
		return nil
	}
	earth, err := soil.Named(*f.Site.Earth)
	r.refuse("site.earth", err)
	parts := &RoomParts{Design: warmth.Design{Films: warmth.UsualFilms()}, Earth: earth}
	var names []string
	for i := range f.Rooms {
		names = append(names, f.Rooms[i].Name)
	}
	for i := range f.Rooms {
		room := roomReader{reader: r, where: fmt.Sprintf("rooms[%d]", i), room: &f.Rooms[i], names: names, known: known, earth: earth}
		parts.Design.Rooms = append(parts.Design.Rooms, room.build())
		parts.LivedIn = append(parts.LivedIn, f.Rooms[i].LivedIn)
		parts.Covers = append(parts.Covers, coverOf(&f.Rooms[i]))
		parts.Stoves = append(parts.Stoves, r.stove(&f.Rooms[i], room.where+".stove"))
	}
	return parts
}

func (r *reader) materials(own []MaterialOf) material.Library {
	list := make([]material.Material, len(own))
	for i, m := range own {
		source := m.Source
		if source == "" {
			source = "the house file"
		}
		list[i] = material.Material{Name: m.Name, Conductivity: material.Conductivity(m.Conductivity), Density: material.Density(m.Density),
			Capacity: material.Capacity(m.Heat), Kind: "own", Source: source, Standing: material.Assumed}
	}
	known, err := material.NewLibrary(list...)
	r.refuse("materials", err)
	return known
}

// roomReader builds one room.
type roomReader struct {
	*reader
	where string
	room  *Room
	names []string
	known material.Library
	earth soil.Ground
}

// usualHeight is that of a room which does not tell its own; common practice, no source.
const usualHeight = 2.5

func (r *roomReader) height() quantity.Metres { return or(r.room.Height, usualHeight) }

func (r *roomReader) build() warmth.Room {
	m := r.room
	built := warmth.Room{Name: m.Name, Area: m.Area, Height: r.height(), Contents: m.Contents * 1000, Infiltration: m.Infiltration, Vents: r.vents()}
	for i := range m.Walls {
		built.Walls = append(built.Walls, r.wall(i))
	}
	for i := range m.Windows {
		built.Windows = append(built.Windows, r.window(i))
	}
	for _, o := range m.Openings {
		built.Openings = append(built.Openings, warmth.Opening{To: slices.Index(r.names, o.To), Area: o.Area, Tall: o.Tall, Hours: o.Hours})
	}
	for _, f := range m.Fans {
		built.Fans = append(built.Fans, warmth.Fan{Flow: f.Flow, Hours: f.Hours})
	}
	for _, h := range m.Heating {
		built.Heating = append(built.Heating, warmth.Hold{At: h.At, Hours: h.Hours})
	}
	for _, h := range m.Cooling {
		built.Cooling = append(built.Cooling, warmth.Hold{At: h.At, Hours: h.Hours})
	}
	for _, g := range m.Gains {
		built.Gains = append(built.Gains, warmth.Gain{Name: g.Name, Power: g.Power, Radiant: g.Radiant, Hours: g.Hours})
	}
	built.Dug = r.section(&built)
	return built
}

// Where openings lie whose places the file does not tell; common practice, no source. Coefficients of
// wind pressure differ by a factor of two between books (see package vent).
const (
	inletHeight = 0.5 // m over the floor
	underRoof   = 0.2 // m under the ceiling
	windward    = 0.6
	leeward     = -0.3
	ventTall    = 0.3 // m
)

// vents gives the inlet low on the windward side and the outlet under the roof.
func (r *roomReader) vents() warmth.Vents {
	m := r.room
	if m.Vents == nil || *m.Vents == 0 {
		return warmth.Vents{}
	}
	in := or(m.Inlets, *m.Vents)
	return warmth.Vents{
		Inlet:  vent.Opening{Area: in, Height: inletHeight, Tall: ventTall, Discharge: vent.Sharp, Pressure: windward},
		Outlet: vent.Opening{Area: *m.Vents, Height: r.height() - underRoof, Tall: ventTall, Discharge: vent.Sharp, Pressure: leeward},
		Rule:   vent.UsualRule(), Terrain: vent.Country,
	}
}

// footWall is how thick the walls over a floor's edge are taken, m; common practice, no source. It moves a floor's loss by a
// twentieth for 0.1 m.
const footWall = 0.3

// slopeOf gives the slope of a wall's outside: as told, upright with an azimuth, else by its name.
func slopeOf(w *Wall) (quantity.Degrees, bool) {
	switch name := strings.ToLower(w.Name); {
	case w.Slope != nil:
		return *w.Slope, true
	case w.Azimuth != nil:
		return 90, true
	case strings.HasPrefix(name, "roof"), strings.HasPrefix(name, "ceiling"):
		return 0, true
	case strings.HasPrefix(name, "floor"):
		return 180, true
	}
	return 90, false
}

// roleOf says where a wall of a slope stands in its room; ISO 6946 counts 30 deg from upright as level heat flow.
func roleOf(slope quantity.Degrees) warmth.Role {
	switch {
	case slope < 60:
		return warmth.Roof
	case slope > 120:
		return warmth.Floor
	}
	return warmth.Upright
}

func (r *roomReader) wall(i int) warmth.Wall {
	w, where := &r.room.Walls[i], fmt.Sprintf("%s.walls[%d]", r.where, i)
	slope, told := slopeOf(w)
	built := warmth.Wall{Name: w.Name, Area: w.Area, Role: roleOf(slope), Layers: r.layers(w.Layers, where+".layers"), OutsideAbsorptance: w.Absorptance,
		OutsideEmissivity: w.Emissivity, Smooth: w.Smooth, InsideAbsorptance: w.InsideAbsorptance, InsideEmissivity: w.InsideEmissivity}
	switch w.Faces {
	case "air":
		built.Plane = sun.Plane{Slope: slope, Azimuth: or(w.Azimuth, 0)}
		if w.Azimuth == nil && slope != 0 && slope != 180 {
			says := "says nothing of where its outside looks: write for example  azimuth: 180 deg"
			if !told {
				says += ", or  slope: 0 deg  for a roof"
			}
			r.fault(where, "%s", says)
		}
	case "earth":
		built.Faces, built.Ground = warmth.Earth, r.ground(w, built)
		if w.Azimuth != nil {
			built.Plane = sun.Plane{Slope: slope, Azimuth: *w.Azimuth} // for the question what it would be without the earth
		}
	case "nothing":
		built.Faces = warmth.Nothing
	default:
		built.Faces, built.Other = warmth.Neighbour, slices.Index(r.names, w.Faces)
	}
	return built
}

// ground says how warm the earth behind a wall is. The way from the wall to ground that the house does not
// warm is the resistance of the earth over it: half its depth for a wall; for a floor it is that of ISO 13370.
func (r *roomReader) ground(w *Wall, built warmth.Wall) warmth.Ground {
	if w.Behind != nil {
		return warmth.Ground{Fixed: w.Behind}
	}
	resists := 0.0
	for _, l := range built.Layers {
		resists += float64(l.Resistance())
	}
	if built.Role == warmth.Floor {
		perimeter := or(w.Perimeter, quantity.Metres(4*math.Sqrt(float64(w.Area))))
		return warmth.Ground{Slab: &ground.Floor{Area: w.Area, Perimeter: perimeter, Wall: footWall, Ground: r.earth, Resists: resists,
			Inside: ground.InsideDown, Outside: ground.Outside}}
	}
	depth := or(w.Depth, r.height()/2)
	return warmth.Ground{Depth: &depth, Behind: material.Resistance(float64(depth) / r.earth.Conductivity)}
}

func (r *roomReader) layers(told Layers, where string) []fabric.Layer {
	list := make([]fabric.Layer, 0, len(told))
	for _, c := range told {
		switch {
		case c.Resistance > 0:
			list = append(list, fabric.Layer{Name: c.Of, Gap: material.Resistance(c.Resistance)})
		case c.Of == "air":
			l, err := fabric.AirLayer(quantity.Millimetres(float64(c.Thickness)*1000), fabric.Level)
			r.refuse(where, err)
			list = append(list, l)
		default:
			list = append(list, r.layer(c, where))
		}
	}
	return list
}

func (r *roomReader) layer(c Course, where string) fabric.Layer {
	m, err := r.known.Named(c.Of)
	r.refuse(where, err)
	l := fabric.Of(m, c.Thickness)
	if c.Bridge != "" {
		b, err := r.known.Named(c.Bridge)
		r.refuse(where, err)
		l.Bridge = fabric.Bridge{Share: c.Share, Conductivity: b.Conductivity, Density: b.Density, Capacity: b.Capacity}
	}
	return l
}
