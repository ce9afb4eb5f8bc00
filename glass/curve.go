package glass

import "math"

// curveSteps is into how many equal steps of the cosine's root a Curve is cut. The laws hold
// it to within 0.0005 of the glazing itself at every angle.
const curveSteps = 128

// A Curve is a glazing made ready for the hour: its optics by the cosine of incidence, and
// for diffuse light. It is read-only and may be shared.
type Curve struct {
	Diffuse Optics
	by      [curveSteps + 1]Optics
}

// Curve works out the table. Steps are even in the square root of the cosine, finer where the
// light grazes.
func (g Glazing) Curve() *Curve {
	c := &Curve{Diffuse: g.Diffuse()}
	for i := range c.by {
		root := float64(i) / curveSteps
		c.by[i] = g.atCosine(root * root)
	}
	return c
}

// At gives the optics at a cosine of incidence, straight between the table's rows, so that the
// shares still sum to 1. At or under 0 all light is thrown back.
func (c *Curve) At(cosine float64) Optics {
	if !(cosine > 0) {
		return c.by[0]
	}
	place := math.Sqrt(min(cosine, 1)) * curveSteps
	i := min(int(place), curveSteps-1)
	share, a, b := place-float64(i), &c.by[i], &c.by[i+1]
	var o Optics
	o.Transmitted = a.Transmitted + share*(b.Transmitted-a.Transmitted)
	o.Reflected = a.Reflected + share*(b.Reflected-a.Reflected)
	for k := range o.Absorbed {
		o.Absorbed[k] = a.Absorbed[k] + share*(b.Absorbed[k]-a.Absorbed[k])
	}
	return o
}
