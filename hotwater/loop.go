package hotwater

// look notes whether sun or frost call for the pump; Live goes by it.
func (p *prepared) look(s *State, in *In) {
	lower := float64(s.Lower)
	in.lit, in.frosty = p.runs(lower, in), p.keeps(lower, in)
}

// runs reports whether the solar pump is wanted: the collector, with its fluid
// Difference over the lower layer, would still gain.
func (p *prepared) runs(lower float64, in *In) bool {
	return p.area > 0 && in.Light > lost(p.a1, p.a2, lower-float64(in.Air)+p.difference)
}

// keeps reports whether recirculation is wanted against frost, and the store can give it.
func (p *prepared) keeps(lower float64, in *In) bool {
	return p.recirculates && float64(in.Air) < p.freezes && lower > frostKeep
}

// served gives the share of the hour in which the pump really turns.
func (p *prepared) served(in *In) float64 {
	if p.pump == 0 {
		return 1 // water circulates by its own warmth
	}
	return in.Pump
}

// sunlit gives the solar heat into the lower layer as sun - slope*T, in W and W/K. The
// fluid's mean lies rise*heat over the layer. The square of a2 is replaced by its tangent
// at the fluid's temperature as the hour begins, worked from the store's last
// temperature: a rise of 15 K from there costs a2*225 W/m2, 3 W/m2 of a few hundred.
func (p *prepared) sunlit(lower, share float64, in *In) (sun, slope float64) {
	x := lower - float64(in.Air)
	if x += p.riseNow * (in.Light - lost(p.a1, p.a2, x)); x < 0 {
		x = 0
	}
	u := p.a1 + 2*p.a2*x // tangent: a1 X + a2 X2 = u X - a2 x2
	g := p.area * share / (1 + p.area*u*p.rise)
	return g * (in.Light + p.a2*x*x + u*float64(in.Air)), g * u
}

// keepHeat gives the W that recirculation spends to keep the collector at frostKeep.
func (p *prepared) keepHeat(air float64) float64 {
	return p.area * lost(p.a1, p.a2, frostKeep-air)
}
