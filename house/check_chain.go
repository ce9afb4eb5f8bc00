package house

import (
	"fmt"
	"slices"
)

// checkChain looks at planter, flush well, septic tank and beds beside the rest of the house.
func (r *reader) checkChain(f *File) {
	if p := f.Planter; p != nil {
		r.checkPlanter(f, p)
	}
	if w := f.FlushWell; w != nil {
		r.checkWell(f, w)
	}
	if f.Septic != nil {
		r.checkSeptic(f)
	}
	if f.Garden != nil {
		r.checkGarden(f)
	}
}

func (r *reader) checkPlanter(f *File, p *Planter) {
	r.checkStand(f, "planter", p.Under, p.Room)
	r.checkFed(f, p)
	r.checkPlantings("planter", p.Crops)
	for _, key := range []string{"plants", "kc", "roots", "depletion"} {
		if where := "planter." + key; len(p.Crops) > 0 && r.given(where) && r.sound("planter.crops", where) {
			r.fault(where, "tells of plants that stand all year, where crops follow each other: take out this key or crops, or make a bed of the garden for one of them")
		}
	}
	if p.Rinse == 0 && r.given("planter.rinse_every") && r.sound("planter.rinse", "planter.rinse_every") {
		r.fault("planter.rinse_every", "says how often, but nothing is poured: write for example  rinse: 30 mm, or take this key out")
	}
}

// checkFed refuses a drain that nothing runs into: where its use is told to run elsewhere, the bed would stay dry unnoticed.
func (r *reader) checkFed(f *File, p *Planter) {
	if f.People == nil || len(f.People.Uses) == 0 || !r.sound("people", "people.uses") {
		return
	}
	var used []string
	for i := range f.People.Uses {
		u := &f.People.Uses[i]
		if where := fmt.Sprintf("people.uses[%d]", i); !r.sound(where, where+".water", where+".drains") {
			return
		}
		used = append(used, drain(u).String())
	}
	for i, name := range p.FedBy {
		if where := fmt.Sprintf("planter.fed_by[%d]", i); r.sound(where) && !slices.Contains(used, name) {
			r.fault(where, "no use of water runs into the drain %q: write  drains: %s  at the use that does, or take it out of the list", name, name)
		}
	}
}

// checkDrains refuses what the way of used water cannot follow.
func (r *reader) checkDrains(p *People) {
	for i := range p.Uses {
		u, where := &p.Uses[i], fmt.Sprintf("people.uses[%d].drains", i)
		if u.Drains == nil || !r.sound(where, fmt.Sprintf("people.uses[%d].water", i)) {
			continue
		}
		switch flushes := u.Water == "flushing"; {
		case flushes && *u.Drains != "toilet":
			r.fault(where, "what flushes goes down the toilet and nowhere else: take this key out")
		case !flushes && *u.Drains == "toilet":
			r.fault(where, "only  water: flushing  goes down the toilet: write  drains: kitchen  for what must not come to a bed")
		}
	}
}

// checkPlantings refuses two crops on one day.
func (r *reader) checkPlantings(bed string, crops []Planting) {
	for i := range crops {
		where := fmt.Sprintf("%s.crops[%d].sown", bed, i)
		for j := range i {
			if crops[i].Sown == crops[j].Sown && r.sound(where, fmt.Sprintf("%s.crops[%d].sown", bed, j)) {
				r.fault(where, "is the day of %s.crops[%d] as well, and a bed holds one crop at a time: write another day, or make two beds", bed, j)
			}
		}
	}
}

func (r *reader) checkSeptic(f *File) {
	first := make(map[[2]string]int)
	for i, b := range f.Septic.Setbacks {
		where, pair := fmt.Sprintf("septic.setbacks[%d]", i), [2]string{b.From, b.To}
		if j, twice := first[pair]; twice && r.sound(where, where+".from", where+".to") {
			r.fault(where+".to", "the distance from %s to %s is told in septic.setbacks[%d] already: keep the shorter one", b.From, b.To, j)
			continue
		}
		first[pair] = i
	}
	if f.Septic.Trench != nil && f.Septic.Trench.Trees != nil {
		r.checkTrees(f, f.Septic.Trench.Trees)
	}
}

// checkTrees holds the leaves' days against each other, in the order of a northern year.
func (r *reader) checkTrees(f *File, t *Trees) {
	const where = "septic.trench.trees."
	for _, key := range []string{"leaves_from", "leaves_to"} {
		if t.Evergreen && r.given(where+key) && r.sound(where+"evergreen", where+key) {
			r.fault(where+key, "means nothing for trees that keep their leaves: take it out, or write  evergreen: no")
		}
	}
	if t.Evergreen || t.From == nil || t.To == nil || !r.sound("site.latitude", where+"leaves_from", where+"leaves_to") {
		return
	}
	switch c := leaves(t, f.Site.Latitude < 0); {
	case c.Bare <= c.Out:
		r.fault(where+"leaves_to", "lies before the first leaves: trees with leaves over the winter are told as  evergreen: yes")
	case c.Full > c.Turn:
		r.fault(where+"leaves_to", "%d days lie between the first leaves and the last, which take %d to open and as many to fall: write a later day, or  evergreen: yes", c.Bare-c.Out, opens)
	}
}

func (r *reader) checkGarden(f *File) {
	unique(r, "garden.beds", f.Garden.Beds, func(b *Bed) string { return b.Name })
	if l := f.Garden.Lawn; l != nil {
		r.checkLawn(f.Garden, l)
	}
	for i := range f.Garden.Beds {
		b, where := &f.Garden.Beds[i], fmt.Sprintf("garden.beds[%d]", i)
		r.checkStand(f, where, b.Under, b.Room)
		r.checkPlantings(where, b.Crops)
		if at := where + ".watered_at"; b.By == "nobody" && r.given(at) && r.sound(where+".watered_by", at) {
			r.fault(at, "says when, but nobody waters it: take this key out, or write  watered_by: drip")
		}
	}
}

func (r *reader) checkLawn(g *Garden, l *Lawn) {
	for i := range g.Beds {
		if at := fmt.Sprintf("garden.beds[%d].name", i); g.Beds[i].Name == lawnName && r.sound(at) {
			r.fault(at, "is what the lawn goes by in tables: give the bed another name")
		}
	}
	const where = "garden.lawn."
	for key, wrong := range map[string]bool{"flow": l.By != "sprinkler", "watered_at": l.By == "nobody"} {
		if wrong && r.given(where+key) && r.sound(where+"watered_by", where+key) {
			r.fault(where+key, "says nothing of a lawn that is watered by %s: take this key out, or write  watered_by: sprinkler", l.By)
		}
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

// checkStand holds where a bed is against the rooms there are.
func (r *reader) checkStand(f *File, where, under string, room *string) {
	if room != nil {
		var names []string
		for i := range f.Rooms {
			names = append(names, f.Rooms[i].Name)
		}
		if len(names) == 0 && r.sound("rooms", where+".room") {
			r.fault(where+".room", "there are no rooms in this file: describe rooms, or take this key out")
		} else if len(names) > 0 {
			r.oneOf(where+".room", *room, "room called", names)
		}
	}
	for _, key := range []string{"room", "light", "damp", "by_hand"} {
		if at := where + "." + key; under == "sky" && r.given(at) && r.sound(where+".under", at) {
			r.fault(at, "means nothing under the open sky: write  under: glass, or take this key out")
		}
	}
}
