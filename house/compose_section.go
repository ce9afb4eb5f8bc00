package house

import (
	"fmt"

	"suffice/quantity"
	"suffice/soil"
	"suffice/warmth"
	"suffice/warmth/ground"
)

// section builds the earth behind and under a room, nil where the file leaves it to what the walls tell.
func (r *roomReader) section(built *warmth.Room) *warmth.Dug {
	s, where := r.room.Section, r.where+".section"
	if s == nil {
		return nil
	}
	d := &warmth.Dug{Kept: &ground.Kept{}, Back: r.only(built, warmth.Upright), Floor: r.only(built, warmth.Floor), Long: s.Long}
	if d.Back < 0 || d.Floor < 0 {
		r.fault(where, "wants just one upright wall and just one floor of the room that face earth: put several into one, or leave section out")
		return nil
	}
	for _, k := range []int{d.Back, d.Floor} {
		if w := &r.room.Walls[k]; w.Behind != nil && r.sound(fmt.Sprintf("%s.walls[%d].behind", r.where, k)) {
			r.fault(fmt.Sprintf("%s.walls[%d].behind", r.where, k), "holds the earth at %s, but the room's section computes it: take one of the two out", quantity.Text(float64(*w.Behind), "degC"))
		}
	}
	earth := r.earth
	if s.Earth != nil {
		var err error
		earth, err = soil.Named(*s.Earth)
		r.refuse(where+".earth", err)
	}
	d.Foot = r.layers(s.Foot, where+".foot")
	berm := or(s.Berm, s.Floor+quantity.Metres(float64(built.Walls[d.Back].Area)/float64(s.Long)))
	d.Cut = ground.Dug{
		Earth:  ground.Material{Name: earth.Name, Conductivity: earth.Conductivity, Capacity: earth.Capacity},
		Garden: s.Garden, Deep: s.Deep, Beyond: s.Beyond, Room: quantity.Metres(float64(built.Area) / float64(s.Long)), Floor: s.Floor,
		Foundation: s.Foundation, Berm: berm, Crest: s.Crest, Slope: s.Slope, Behind: or(s.Behind, berm),
	}
	r.umbrella(s, d, where)
	built.Dug = d
	r.refuse(where, built.DugFaults())
	return d
}

// umbrella lays the berm's insulation.
func (r *roomReader) umbrella(s *Section, d *warmth.Dug, where string) {
	if len(s.Umbrella) == 0 {
		return
	}
	layers := r.layers(s.Umbrella, where+".umbrella")
	if len(layers) != 1 || layers[0].Gap > 0 {
		r.fault(where+".umbrella", "is laid of one solid layer, for example 10 cm foam glass gravel")
		return
	}
	l := layers[0]
	d.Cut.Umbrella = ground.Layer{Thick: l.Thickness, Material: ground.Material{Name: l.Name, Conductivity: float64(l.Thickness) / float64(l.Resistance()), Capacity: l.Areal() / float64(l.Thickness)}}
	d.Cut.UmbrellaDepth, d.Cut.UmbrellaLength = s.Under, s.Out
}

// only gives the one wall of a role that faces earth, -1 where there is none or more.
func (r *roomReader) only(built *warmth.Room, role warmth.Role) int {
	found := -1
	for k := range built.Walls {
		if w := &built.Walls[k]; w.Faces == warmth.Earth && w.Role == role {
			if found >= 0 {
				return -1
			}
			found = k
		}
	}
	return found
}

// coverOf gives what lies on the ground over a room's section.
func coverOf(m *Room) ground.Cover {
	if m.Section != nil && m.Section.Cover == "bare" {
		return ground.Bare()
	}
	return ground.Grass()
}
