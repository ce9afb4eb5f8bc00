package ground

import (
	"suffice/quantity"
	"suffice/soil"
)

const (
	turn = 3600.0 // s

	evaporates = 2.45e6             // J/m2 for a millimetre of water (fao56 eq. 20: 2.45 MJ/kg)
	melts      = soil.Fusion / 1000 // J/m2 for a millimetre of ice
	iceLess    = 2.30e6             // J/m3K that water loses by freezing (de-vries: 4.18 less 1.88 MJ/m3K)
)

// Step lives one hour. What goes into the ground is the rise of what the layers hold, as
// warmth and as water in place of ice; rain is the rise of snow and soil water with what
// evaporated and drained. The heat is counted at the surface, never taken as that rise.
// Left out of it: water that comes or goes is as warm as the layer it meets; in the hour in which
// the last snow goes, what heat it leaves over stays with the air.
func (c *Column) Step(s *ColumnState, in ColumnIn) (out ColumnOut) {
	wet := c.soil(s)
	water := snowfall(s, in) // mm that reach the soil
	now := c.sky(s, in, wet)
	p := c.pull(s, wet)
	f := now.face(c, s.Face, &p)
	s.Face = f.meets(&p)
	if s.Snow > 0 && s.Face > 0 {
		s.Face = 0
		f = c.balance(now, 0)
		melted := min(max(f.gain-p.flow(f.through, 0), 0)*turn/melts, s.Snow)
		s.Snow -= melted
		out.Melted = quantity.Millimetres(melted)
	}
	flow := p.flow(f.through, s.Face)
	next := p.after(flow)
	out.Face, out.IntoGround = quantity.Celsius(s.Face), quantity.Irradiance(flow)
	out.Top = quantity.Celsius(next[0] + flow/c.first(s, wet))
	c.settle(s, &next, wet)
	c.drink(s, &out, water+float64(out.Melted), (f.vapour+f.vapourBy*s.Face)*turn/evaporates)
	return out
}

// drink books the hour's water: first what evaporated, at most what there was, then what came.
func (c *Column) drink(s *ColumnState, out *ColumnOut, came, evaporated float64) {
	out.Evaporated = quantity.Millimetres(min(evaporated, s.Store))
	s.Store += came - float64(out.Evaporated)
	out.Drained = quantity.Millimetres(max(s.Store-c.room(), 0))
	s.Store -= float64(out.Drained)
}

// first gives the conductance from the soil's face to the middle of its first layer, W/m2K.
func (c *Column) first(s *ColumnState, wet wetSoil) float64 {
	return wet.conducts(s.Ice[0]) / (c.thick[0] / 2)
}

// conducts gives the conductivity of a layer with so much ice, W/mK: between thawed and frozen by share.
func (w wetSoil) conducts(ice float64) float64 {
	return w.thawed + min(ice/w.water, 1)*(w.frozen-w.thawed)
}

// pull is what the layers do in a turn (backward Euler), worked from the foot up to the first layer,
// which is then (right + flow)/diagonal, whatever flows into it.
type pull struct{ diagonal, right, between [layers]float64 }

func (c *Column) pull(s *ColumnState, wet wetSoil) (p pull) {
	var half [layers]float64 // resistance from a layer's middle to its face
	for i := range layers {
		p.diagonal[i] = (wet.holds - iceLess*s.Ice[i]) * c.thick[i] / turn
		p.right[i] = p.diagonal[i] * s.Temperature[i]
		half[i] = c.thick[i] / 2 / wet.conducts(s.Ice[i])
	}
	for i := layers - 1; i > 0; i-- {
		g := 1 / (half[i-1] + half[i])
		p.between[i] = g
		p.diagonal[i] += g
		m := g / p.diagonal[i]
		p.diagonal[i-1] += g - m*g
		p.right[i-1] += m * p.right[i]
	}
	return p
}

// free gives the first layer's temperature when nothing flows into it.
func (p *pull) free() float64 { return p.right[0] / p.diagonal[0] }

// flow gives what goes into the first layer from a face at a temperature, through a conductance, W/m2.
func (p *pull) flow(through, face float64) float64 {
	return series(through, p.diagonal[0]) * (face - p.free())
}

// after gives the layers' temperatures a turn later.
func (p *pull) after(flow float64) (next [layers]float64) {
	next[0] = (p.right[0] + flow) / p.diagonal[0]
	for i := 1; i < layers; i++ {
		next[i] = (p.right[i] + p.between[i]*next[i-1]) / p.diagonal[i]
	}
	return next
}

// settle freezes and thaws: a layer past 0 degC gives or takes the heat of fusion first.
func (c *Column) settle(s *ColumnState, next *[layers]float64, wet wetSoil) {
	for i, t := range next {
		holds := wet.holds - iceLess*s.Ice[i]
		ice := s.Ice[i]
		if t > 0 {
			ice -= min(holds*t/soil.Fusion, ice)
		} else {
			ice += min(-holds*t/soil.Fusion, max(wet.water-ice, 0))
		}
		left := holds*t - soil.Fusion*(s.Ice[i]-ice) // J/m3 about 0 degC
		s.Ice[i] = ice
		s.Temperature[i] = left / (wet.holds - iceLess*ice)
	}
}

// Holds gives what the column holds, J/m2, counted from water at 0 degC.
func (c *Column) Holds(s *ColumnState) float64 {
	wet, sum := c.soil(s), 0.0
	for i, t := range s.Temperature {
		sum += c.thick[i] * ((wet.holds-iceLess*s.Ice[i])*t - soil.Fusion*s.Ice[i])
	}
	return sum
}

// series gives the conductance of two in a row.
func series(a, b float64) float64 { return a * b / (a + b) }
