package house

import (
	"fmt"
	"slices"

	"suffice/reuse"
)

// checkChain looks at planter, flush well, septic tank and beds beside the rest of the house.
func (r *reader) checkChain(f *File) {
	if p := f.Planter; p != nil {
		r.checkPlanter(f, p)
	}
	if w := f.FlushWell; w != nil {
		r.checkWell(f, w)
	}
	if f.Garden != nil {
		for i := range f.Garden.Beds {
			r.checkStand(f, fmt.Sprintf("garden.beds[%d]", i), f.Garden.Beds[i].Under, f.Garden.Beds[i].Room)
		}
	}
}

func (r *reader) checkPlanter(f *File, p *Planter) {
	r.checkStand(f, "planter", p.Under, p.Room)
	var drains []string
	for s := range reuse.Sources {
		drains = append(drains, s.String())
	}
	for i, name := range p.FedBy {
		r.oneOf(fmt.Sprintf("planter.fed_by[%d]", i), name, "drain that may feed a bed called", drains)
	}
	if len(p.Crops) > 0 && len(p.Plants) > 0 && r.sound("planter.crops", "planter.plants") {
		r.fault("planter.plants", "stand all year where crops follow each other: take out plants or crops, or make two beds of one garden")
	}
}

func (r *reader) checkWell(f *File, w *FlushWell) {
	if f.Planter == nil && r.sound("planter") {
		r.fault("flush_well", "nothing runs into it: describe planter, or take this key out, so that the toilets flush from the taps")
	}
	if f.People != nil && !slices.ContainsFunc(f.People.Uses, func(u Use) bool { return u.Water == "flushing" }) && r.sound("people", "people.uses") {
		r.fault("flush_well", "nobody flushes: describe a use with  water: flushing, or take this key out")
	}
	for _, order := range []struct {
		lower, upper string
		low, high    float64
	}{{"least", "float", float64(w.Least), float64(w.Float)}, {"float", "refill", float64(w.Float), float64(w.Refill)}, {"refill", "depth", float64(w.Refill), float64(w.Depth)}} {
		if order.low > order.high && r.sound("flush_well."+order.lower, "flush_well."+order.upper) {
			r.fault("flush_well."+order.upper, "%g m lies below %s, %g m: the levels rise from least to float, refill and depth", order.high, order.lower, order.low)
		}
	}
}

// checkStand holds a bed's room against the rooms there are.
func (r *reader) checkStand(f *File, where, under string, room *string) {
	if room == nil {
		return
	}
	var names []string
	for i := range f.Rooms {
		names = append(names, f.Rooms[i].Name)
	}
	r.oneOf(where+".room", *room, "room called", names)
	if under == "sky" && r.sound(where+".under", where+".room") {
		r.fault(where+".room", "is a room, but the bed stands under the open sky: write  under: glass, or take this key out")
	}
}
