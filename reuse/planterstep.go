package reuse

import "suffice/quantity"

// Step lets the bed live an hour: water comes, the crop drinks, soil drains or sucks, the gravel runs
// off, dirt decays. Ks is that of the hour's beginning, as FAO-56 does it by the day.
//
// Litres: Grey + Poured + Rain on the bed + held before = Evaporated + Drained + Overflowed + held after.
// Salt and nitrogen: Grey + Poured + held before = Drained + Overflowed + held after. BOD: the same with
// Decayed on the right.
func (b *Bed) Step(s *PlanterState, in *PlanterIn, out *PlanterOut) {
	above := float64(in.Rain) + float64(in.Poured.Litres) + in.Poured.Salt + in.Poured.BOD + in.Poured.Nitrogen
	if above != 0 || !b.fromBelow(s, in, out) {
		b.longWay(s, in, out)
	}
	if float64(s.Gravel.Litres) > b.airless {
		s.Airless++
	}
}

// longWay lets any hour pass.
func (b *Bed) longWay(s *PlanterState, in *PlanterIn, out *PlanterOut) {
	*out = PlanterOut{}
	ks := stress(b.depleted(s), in.Crop.Depletion) * s.Salted
	b.receive(s, in)
	if in.Evaporation > 0 {
		b.drink(s, in, ks, out)
	}
	b.even(s, out)
	if over := float64(s.Gravel.Litres+s.Soil.Litres) - b.brim; over > 0 {
		s.Gravel.pour(quantity.Litres(over), &out.Overflowed)
	}
	if over := float64(s.Gravel.Litres) - b.standing; over > 0 {
		s.Gravel.pour(quantity.Litres(min(over, b.runs)), &out.Drained)
	}
	before := s.Gravel.BOD + s.Soil.BOD
	s.Gravel.BOD *= s.Left
	s.Soil.BOD *= s.Left
	out.Decayed = before - (s.Gravel.BOD + s.Soil.BOD)
}

// depleted gives how much of the water that roots can take is gone, 0 to 1.
func (b *Bed) depleted(s *PlanterState) float64 {
	return (b.capacity - float64(s.Soil.Litres)) * b.perTotal
}

// receive takes in what comes.
func (b *Bed) receive(s *PlanterState, in *PlanterIn) {
	s.Soil.Litres += in.Rain.On(quantity.SquareMetres(b.area))
	if in.Poured != (Water{}) {
		s.Soil.add(&in.Poured)
	}
	if in.Grey != (Water{}) {
		s.Gravel.add(&in.Grey)
	}
}

// drink lets the crop evaporate what soil and salt allow; roots that reach the gravel take the rest there.
// What it carried stays.
func (b *Bed) drink(s *PlanterState, in *PlanterIn, ks float64, out *PlanterOut) {
	want := float64(in.Evaporation) * in.Crop.Coefficient * b.area
	soil := min(ks*want, max(0, float64(s.Soil.Litres)-b.wilting))
	s.Soil.Litres -= quantity.Litres(soil)
	got := soil
	if in.Crop.Roots > float64(b.Planter.Soil.Depth) {
		gravel := min(want*s.Salted-soil, float64(s.Gravel.Litres))
		s.Gravel.Litres -= quantity.Litres(gravel)
		got += gravel
	}
	out.Wanted, out.Evaporated, out.Short = quantity.Litres(want), quantity.Litres(got), quantity.Litres(want-got)
	s.Wanted += want
	s.Evaporated += got
}

// even moves water between soil and gravel: down what the soil does not hold, up what dry soil sucks, in
// the measure of its depletion.
func (b *Bed) even(s *PlanterState, out *PlanterOut) {
	soil, gravel := float64(s.Soil.Litres), float64(s.Gravel.Litres)
	switch {
	case soil > b.capacity:
		out.Sank = quantity.Litres(soil - b.capacity)
		s.Soil.pour(out.Sank, &s.Gravel)
	case soil < b.capacity && gravel > 0:
		out.Rose = quantity.Litres(min(b.rise*b.depleted(s), b.capacity-soil, gravel))
		s.Gravel.pour(out.Rose, &s.Soil)
	}
}

// PlanterDayIn is what closes a day.
type PlanterDayIn struct {
	Water     quantity.Celsius // of the bed, for the decay of the day to come
	Nitrogen  float64          // g that the crop would take
	Tolerance Tolerance        // of the crop
	Depletion float64          // the crop's p
}

// PlanterDayOut is how the day was.
type PlanterDayOut struct {
	Stress   float64 // evaporated of what was wanted, 0 to 1; 1 where nothing was wanted
	TooWet   bool    // roots lacked air all day long
	TooDry   bool    // the ready water of the soil is gone at the day's end
	Salinity float64 // dS/m of the soil's saturation extract
	Yield    float64 // % at that salinity
	Nitrogen float64 // g taken up
	Hungry   float64 // g wanted and not to be had
}

// Day closes a day: what the crop took up, how salty the soil is, and with what rate dirt decays from now on.
//
// Nitrogen held before = Nitrogen + held after; water, salt and BOD stay.
func (b *Bed) Day(s *PlanterState, in *PlanterDayIn) PlanterDayOut {
	out := PlanterDayOut{Stress: 1, TooWet: s.Airless >= 24, TooDry: b.depleted(s) > in.Depletion, Salinity: b.Salinity(s)}
	if s.Wanted > 0 {
		out.Stress = s.Evaporated / s.Wanted
	}
	out.Yield = in.Tolerance.Yield(out.Salinity)
	out.Nitrogen = min(in.Nitrogen, s.Soil.Nitrogen)
	s.Soil.Nitrogen -= out.Nitrogen
	out.Hungry = in.Nitrogen - out.Nitrogen
	s.Left, s.Salted = hourly(b.Rate, in.Water), in.Tolerance.Stress(out.Salinity)
	s.Airless, s.Wanted, s.Evaporated = 0, 0, 0
	return out
}

// Salinity gives the conductivity, dS/m, of the extract of the soil when saturated, as tolerances are measured.
func (b *Bed) Salinity(s *PlanterState) float64 {
	saturated := Water{quantity.Litres(b.full), s.Soil.Load}
	return saturated.Conductivity()
}

// Area gives the bed's plan area.
func (b *Bed) Area() quantity.SquareMetres { return quantity.SquareMetres(b.area) }

// Held gives all water in the bed with what it carries.
func (s *PlanterState) Held() Water {
	sum := s.Gravel
	sum.add(&s.Soil)
	return sum
}
