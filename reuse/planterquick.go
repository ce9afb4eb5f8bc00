package reuse

import "suffice/quantity"

// fromBelow is longWay in an hour in which nothing comes from above, the soil holds no more than it can and nothing
// overflows: nearly every hour of a bed under glass. All that leaves the gravel has its one strength, so that one
// division serves. It leaves everything as it was, and says false, where the hour is none of these.
func (b *Bed) fromBelow(s *PlanterState, in *PlanterIn, out *PlanterOut) bool {
	soil, free := float64(s.Soil.Litres), float64(s.Gravel.Litres+in.Grey.Litres)
	if soil > b.capacity || soil+free > b.brim {
		return false
	}
	var want, took, deep float64
	if in.Evaporation > 0 {
		want = float64(in.Evaporation) * in.Crop.Coefficient * b.area
		took, deep = b.drinks(s, &in.Crop, want, free)
	}
	soil -= took
	stood := free - deep
	if stood < molecule && stood > 0 {
		return false
	}
	rose := b.rises(soil, stood)
	runs := b.runsOff(stood - rose)
	kept := stood - rose - runs
	s.Soil.Litres, s.Gravel.Litres = quantity.Litres(soil+rose), quantity.Litres(kept)
	got := took + deep
	s.Wanted += want
	s.Evaporated += got
	out.Wanted, out.Evaporated, out.Short = quantity.Litres(want), quantity.Litres(got), quantity.Litres(want-got)
	out.Rose, out.Sank, out.Drained.Litres = quantity.Litres(rose), 0, quantity.Litres(runs)
	out.Overflowed = Water{}
	if stood > 0 {
		each := 1 / stood
		s.carry(in, out, rose*each, runs*each, kept*each)
	} else {
		s.carry(in, out, 0, 0, 1)
	}
	return true
}

// drinks gives what the crop takes out of soil and gravel.
func (b *Bed) drinks(s *PlanterState, crop *Crop, want, free float64) (took, deep float64) {
	took = want * s.Salted
	if depleted := b.depleted(s); depleted > crop.Depletion {
		took *= stress(depleted, crop.Depletion)
	}
	if ready := float64(s.Soil.Litres) - b.wilting; took > ready {
		took = max(0, ready)
	}
	if crop.Roots > float64(b.Planter.Soil.Depth) {
		if deep = want*s.Salted - took; deep > free {
			deep = free
		}
	}
	return took, deep
}

// rises gives what dry soil sucks out of the gravel, in the measure of its depletion.
func (b *Bed) rises(soil, free float64) float64 {
	room := b.capacity - soil
	rose := b.rise * room * b.perTotal
	if rose > room {
		rose = room
	}
	if rose > free {
		rose = free
	}
	return rose
}

// runsOff gives what runs to the well of free water that the soil has left.
func (b *Bed) runsOff(free float64) float64 {
	over := free - b.standing
	if over > b.runs {
		return b.runs
	}
	if over < 0 {
		return 0
	}
	return over
}

// carry moves what the shares of the gravel's water carried that rose and ran off, and lets dirt decay.
func (s *PlanterState) carry(in *PlanterIn, out *PlanterOut, up, off, stays float64) {
	salt, dirt, nitrogen := s.Gravel.Salt+in.Grey.Salt, s.Gravel.BOD+in.Grey.BOD, s.Gravel.Nitrogen+in.Grey.Nitrogen
	out.Drained.Salt, out.Drained.BOD, out.Drained.Nitrogen = salt*off, dirt*off, nitrogen*off
	s.Soil.Salt += salt * up
	s.Soil.Nitrogen += nitrogen * up
	s.Gravel.Salt, s.Gravel.Nitrogen = salt*stays, nitrogen*stays
	soil, gravel := s.Soil.BOD+dirt*up, dirt*stays
	s.Soil.BOD, s.Gravel.BOD = soil*s.Left, gravel*s.Left
	out.Decayed = (soil + gravel) * (1 - s.Left)
}
