package garden

import "suffice/crop"

const (
	tenderDies = 0.0  // degC in the screen's air: a tender plant is taken for dead (common practice, no source)
	hardyDies  = -7.0 // degC, a hardy one (common practice, no source)
	rotsAfter  = 60   // days in the soil without coming up (common practice, no source)
	patience   = 2    // seasons, after which a plant that does not finish is cleared (assumed)
	fewest     = 10.0 // %, fewer seeds than that coming up are none (assumed)

	// freedPerDay is the share of the nitrogen in compost that a day sets free: a quarter in a year, of 10 to 40 % that are told
	// (common practice, no source). Warmth, which quickens it, is left out.
	freedPerDay = 0.25 / 365
)

// Day lives a day of the bed's plants, after its hours.
//
// Potential is Grown and what was lost to the named causes; standing before + Grown = standing after + Picked + Died. Of nitrogen,
// Organic + Mineral + Plant before + Compost = the same after + PickedN + ResidueN.
func (p *Plot) Day(s *BedState, in *BedDayIn, out *BedDayOut) {
	*out = BedDayOut{}
	s.Organic += in.Compost
	out.Freed = freedPerDay * s.Organic
	s.Organic -= out.Freed
	s.Mineral += out.Freed
	p.put(s, in, out)
	if s.Growing > 0 {
		p.grow(s, in, out)
	}
	s.wanted, s.taken = 0, 0
}

// put sows what is due today.
func (p *Plot) put(s *BedState, in *BedDayIn, out *BedDayOut) {
	for i := range p.count {
		at := &p.plans[i]
		if at.day != in.Day {
			continue
		}
		if s.Growing > 0 {
			out.Missed = i + 1
			continue
		}
		s.Growing, s.Up = i+1, at.crop.Planted
		s.Age, s.Sprouted, s.Progress, s.Grown, s.Standing = 0, 0, 0, 0, 0
		out.Sown = true
	}
}

// grow lives the day of the crop in the bed.
func (p *Plot) grow(s *BedState, in *BedDayIn, out *BedDayOut) {
	at := &p.plans[s.Growing-1]
	s.Age++
	if !s.Up {
		sprout(s, at, in, out)
		return
	}
	before := s.Progress
	s.Progress = min(1, before+at.crop.DegreeDays(in.Air)/at.season)
	p.bear(s, at, in, out, s.Progress-before)
	pick(s, at, out, before)
	switch {
	case s.Progress >= 1:
		p.clear(s, at, out, Finished)
	case in.Air.Coolest < at.dies:
		p.clear(s, at, out, Frozen)
	case float64(s.Age) > patience*at.days:
		p.clear(s, at, out, GivenUp)
	default:
		p.thirst(s, at)
	}
}

// sprout brings the seed up by the soil's warmth (harrington-1954).
func sprout(s *BedState, at *plan, in *BedDayIn, out *BedDayOut) {
	if days, ok := at.crop.Sprouts.DaysAt(in.Soil); ok && at.crop.Sprouts.ShareAt(in.Soil) >= fewest {
		s.Sprouted += 1 / days
	}
	switch {
	case s.Sprouted >= 1:
		s.Up, out.CameUp = true, true
	case s.Age > rotsAfter:
		out.Event, out.EventCrop = Rotted, s.Growing
		s.Growing = 0
	}
}

// bear adds the day's part of the yield, with each cause's share of the loss.
func (p *Plot) bear(s *BedState, at *plan, in *BedDayIn, out *BedDayOut, part float64) {
	c := at.crop
	left := at.most * part
	out.Potential = left
	lose := func(keep float64) float64 { lost := left * (1 - keep); left -= lost; return lost }
	if c.Seed.Insects && !in.Pollinated {
		out.LostToFlowers = lose(0)
	}
	out.LostToLight = lose(c.LightYield(in.Light))
	out.LostToWater = lose(c.WaterYield(s.share()))
	out.LostToSalt = lose(c.RelativeYield(in.Salt))
	if need := left * at.perKilo; need > s.Mineral {
		out.LostToNitrogen = lose(s.Mineral / need)
	}
	took := min(left*at.perKilo, s.Mineral)
	s.Mineral -= took
	s.Plant += took
	out.Grown = left
	s.Grown += left
	s.Standing += left
}

// share gives what the plants gave off today of what they would have, 1 on a day that asked nothing.
func (s *BedState) share() float64 {
	if s.wanted <= 0 {
		return 1
	}
	return s.taken / s.wanted
}

// pick takes the fruit that hangs ripe: evenly over the rest of the season's warmth.
func pick(s *BedState, at *plan, out *BedDayOut, before float64) {
	ripe := at.crop.Picks.Value
	if s.Progress < ripe || s.Standing == 0 {
		return
	}
	take := s.Standing
	if s.Progress < 1 {
		from := max(before, ripe)
		take *= (s.Progress - from) / (1 - from)
	}
	out.Picked = take
	out.PickedN = min(take*at.crop.Nitrogen.Value, s.Plant)
	s.Standing -= take
	s.Plant -= out.PickedN
}

// clear takes what is left of a planting off the bed.
func (p *Plot) clear(s *BedState, at *plan, out *BedDayOut, why Event) {
	out.Event, out.EventCrop = why, s.Growing
	out.Died = s.Standing
	out.Residue = s.Grown * at.crop.Residue.Value
	out.ResidueN = s.Plant
	s.Growing, s.Up, s.Standing, s.Plant = 0, false, 0, 0
	s.coefficient, s.depletion = p.bare.Kc, p.bare.Depletion
}

// thirst sets tomorrow's coefficient and easily taken share by how far the season's warmth has come.
func (p *Plot) thirst(s *BedState, at *plan) {
	c := at.crop
	s.coefficient = c.Kc.At(c.Stages, s.Progress*at.days)
	s.depletion = c.DepletionAt(s.wanted / p.area)
}

// Growth names the crop in the bed, nil when it is bare.
func (p *Plot) Growth(s *BedState) *crop.Crop {
	if s.Growing == 0 {
		return nil
	}
	return p.plans[s.Growing-1].crop
}
