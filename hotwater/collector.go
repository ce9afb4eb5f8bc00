package hotwater

import (
	"math"

	"suffice/quantity"
	"suffice/site/sun"
)

// Efficiency gives the share of the light G (W/m2, over 0) that becomes heat with the
// fluid's mean x kelvin over the air: eta0 - a1 x/G - a2 x2/G [iso9806]. Negative when
// the collector loses more than it takes in.
func (c *Collector) Efficiency(light quantity.Irradiance, x quantity.Kelvins) float64 {
	return (c.Eta0*float64(light) - c.lost(float64(x))) / float64(light)
}

// lost gives the W/m2 lost with the fluid's mean x kelvin over the air. The square
// counts only over the air's temperature; under it the standard says nothing.
func (c *Collector) lost(x float64) float64 { return lost(c.A1, c.A2, x) }

func lost(a1, a2, x float64) float64 {
	if x > 0 { // by comparison: the builtin max took as long as all the rest
		return x * (a1 + a2*x)
	}
	return x * a1
}

// Stagnation gives how far over the air the collector comes to rest without flow, at
// light absorbed (W/m2, eta0*K*G): the root of a1 x + a2 x2 = light.
func (c *Collector) Stagnation(absorbed float64) quantity.Kelvins {
	return quantity.Kelvins(2 * absorbed / (c.A1 + math.Sqrt(c.A1*c.A1+4*c.A2*absorbed)))
}

// modifier gives K(theta) = 1 - b0 (1/cos theta - 1) [souka-safwat], with b0 from the
// value at 50 deg; nothing from where it would fall under 0, near grazing incidence.
func (c *Collector) modifier(cosine float64) float64 {
	if cosine <= 0 {
		return 0
	}
	b0 := (1 - c.K50) / (1/cos50 - 1)
	return max(0, 1-b0*(1/cosine-1))
}

// cos50 is the cosine of 50 deg.
const cos50 = 0.6427876096865393

// skyModifier and groundModifier are those of beam at the angle that stands for all of
// the sky or ground that a plane sees [duffie-beckman, eq. 5.4.1 and 5.4.2], slope in deg.
func (c *Collector) skyModifier() float64 {
	b := float64(c.Slope)
	return c.modifier(math.Cos((59.7 - 0.1388*b + 0.001497*b*b) * math.Pi / 180))
}

func (c *Collector) groundModifier() float64 {
	b := float64(c.Slope)
	return c.modifier(math.Cos((90 - 0.5788*b + 0.002693*b*b) * math.Pi / 180))
}

// Absorbed gives eta0*K*G in W/m2: what the collector would give with its fluid at air
// temperature.
func (c *Collector) Absorbed(l sun.PlaneLight) float64 {
	return c.absorbed(l, c.skyModifier(), c.groundModifier())
}

func (c *Collector) absorbed(l sun.PlaneLight, sky, ground float64) float64 {
	return c.Eta0 * (c.modifier(l.Incidence)*float64(l.Beam) + sky*float64(l.Sky) + ground*float64(l.Ground))
}

// Fill gives Absorbed for every hour. It depends on weather and collector only; dst is
// reused if it is long enough.
func (c *Collector) Fill(dst []float64, light []sun.PlaneLight) []float64 {
	if cap(dst) < len(light) {
		dst = make([]float64, len(light))
	}
	dst = dst[:len(light)]
	sky, ground := c.skyModifier(), c.groundModifier()
	for i, l := range light {
		dst[i] = c.absorbed(l, sky, ground)
	}
	return dst
}
