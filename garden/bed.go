package garden

import (
	"errors"
	"fmt"

	"suffice/crop"
	"suffice/quantity"
)

const (
	// bareCoefficient is for soil without leaves that is wetted every few days: 0.3, between the 0.15 of dry and the 1.1 of wet soil (common practice, no source).
	bareCoefficient = 0.3
	bareDepletion   = 0.5 // common practice, no source
)

// A Plot is a bed prepared for the hours: everything that hangs on the design alone.
type Plot struct {
	Bed *Bed
	// Full is what the soil holds for roots at field capacity (fao56 eq. 82).
	Full quantity.Litres

	area, full, dead float64 // m2, L, L below the wilting point
	bare             Grass   // what thirst the bed has where nothing is sown
	arrives          float64
	plans            [MostPlantings]plan
	count            int8
}

// A plan is a planting with what hangs on its crop alone.
type plan struct {
	crop    *crop.Crop
	day     int
	season  float64 // K d
	days    float64
	most    float64 // kg
	perKilo float64 // g of nitrogen in a kilogram of harvest and its leaves
	dies    float64 // degC
}

// Prepare readies a bed, or says everything that is wrong with it.
func (b *Bed) Prepare() (Plot, error) {
	if err := errors.Join(b.faults()...); err != nil {
		return Plot{}, err
	}
	full := b.Soil.Held(b.Depth).On(b.Area)
	p := Plot{Bed: b, Full: full, area: float64(b.Area), full: float64(full), arrives: b.Arrives, count: int8(len(b.Plantings)),
		dead: b.Soil.Wilting * float64(b.Depth) * float64(b.Area) * 1000}
	if p.bare = b.Grass; p.bare == (Grass{}) {
		p.bare = Grass{bareCoefficient, bareDepletion}
	}
	for i, at := range b.Plantings {
		p.plans[i] = planOf(at, float64(b.Area))
	}
	return p, nil
}

func planOf(at Planting, area float64) plan {
	c := at.Crop
	dies := hardyDies
	if c.Air.Tender {
		dies = tenderDies
	}
	return plan{crop: c, day: at.Day, season: c.Season(), days: c.Stages.Season(), most: c.Usual.Value * area,
		perKilo: c.Nitrogen.Value + c.Residue.Value*c.Straw.Value, dies: dies}
}

func (b *Bed) faults() []error {
	var faults []error
	say := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("bed %q: "+format, append([]any{b.Name}, args...)...))
		}
	}
	say(!(b.Area > 0), "area %g m2 is not above 0", float64(b.Area))
	say(!(b.Depth > 0), "depth %g m is not above 0", float64(b.Depth))
	say(!(b.Arrives > 0 && b.Arrives <= 1), "the share of watering that arrives, %g, is not above 0 and up to 1", b.Arrives)
	say(!(b.Soil.Wilting >= 0 && b.Soil.FieldCapacity > b.Soil.Wilting), "field capacity %g must be above the wilting point %g", b.Soil.FieldCapacity, b.Soil.Wilting)
	if g := b.Grass; g != (Grass{}) {
		say(!(g.Kc > 0 && g.Depletion > 0 && g.Depletion < 1), "grass of coefficient %g that takes %g of its water with ease: the first is above 0, the second between 0 and 1", g.Kc, g.Depletion)
		say(len(b.Plantings) > 0, "grass stands in it: nothing is sown there")
	}
	say(len(b.Plantings) > MostPlantings, "%d plantings a year are more than %d: make it two beds", len(b.Plantings), MostPlantings)
	for _, p := range b.Plantings {
		if p.Crop == nil {
			say(true, "a planting has no crop")
			continue
		}
		say(p.Day < 1 || p.Day > 365, "day %d of %s is not a day of the year: 1 to 365", p.Day, p.Crop.Name)
		say(p.Crop.Roots.High < float64(b.Depth), "roots of %s reach %g m at most: a depth of %g m counts water they cannot take", p.Crop.Name, p.Crop.Roots.High, float64(b.Depth))
	}
	return faults
}

// Start gives the bed bare, or with its grass, at field capacity, with its nitrogen in g: organic and mineral.
func (p *Plot) Start(organic, mineral float64) BedState {
	return BedState{Held: p.Full, Organic: organic, Mineral: mineral, coefficient: p.bare.Kc, depletion: p.bare.Depletion}
}

// Want gives the litres that would bring the bed back to field capacity once it has dried past the
// water that plants take with ease, counting what is lost on the way; 0 before.
func (p *Plot) Want(s *BedState) quantity.Litres {
	missing := p.full - float64(s.Held)
	if missing < s.depletion*p.full {
		return 0
	}
	return quantity.Litres(missing / p.arrives)
}

// Step lives an hour of the bed's water.
//
// Held before + Rain on Area + Given = held after + Evaporated + Drained + Sprayed; of nitrogen,
// Mineral before + Nitrogen = after + Leached.
func (p *Plot) Step(s *BedState, in *BedIn, out *BedOut) {
	*out = BedOut{}
	s.Mineral += in.Nitrogen
	if in.Reference == 0 && in.Rain == 0 && in.Given == 0 {
		return // a still, dry night moves nothing
	}
	held := float64(s.Held)
	want := s.coefficient * float64(in.Reference) * p.area
	gone := min(want*p.stress(held, s.depletion), held)
	arrived := float64(in.Given) * p.arrives
	held += float64(in.Rain)*p.area + arrived - gone
	s.wanted += want
	s.taken += gone
	if drained := held - p.full; drained > 0 {
		out.Leached = s.Mineral * drained / (held + p.dead) // the drain has the strength of the wet soil
		s.Mineral -= out.Leached
		out.Drained = quantity.Litres(drained)
		held = p.full
	}
	s.Held = quantity.Litres(held)
	out.Evaporated = quantity.Litres(gone)
	out.Sprayed = in.Given - quantity.Litres(arrived)
}

// stress gives Ks for the hour from what is held at its beginning: fao56 eq. 84 with TAW − Dr = held, as crop.Stress
// gives it, without its division while the plants suffer nothing.
func (p *Plot) stress(held, easy float64) float64 {
	suffers := (1 - easy) * p.full
	if held >= suffers {
		return 1
	}
	return held / suffers
}

// Drank books the day's water of a bed whose water another part keeps: what its plants would have given off until now, and
// what they did. Step is not called for such a bed.
func (s *BedState) Drank(wanted, taken quantity.Litres) {
	s.wanted += float64(wanted)
	s.taken += float64(taken)
}

// Thirst gives what stands in the bed as coefficient of the reference evaporation, and the share of the water in reach that
// it takes with ease.
func (s *BedState) Thirst() (coefficient, depletion float64) { return s.coefficient, s.depletion }

// Appetite gives the grams of nitrogen that would bring the bed to what two good days of full growth take.
func (p *Plot) Appetite(s *BedState) float64 {
	if s.Growing == 0 || !s.Up {
		return 0
	}
	at := &p.plans[s.Growing-1]
	return max(0, 2*at.most/at.days*at.perKilo-s.Mineral)
}
