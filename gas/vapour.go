package gas

import (
	"math"

	"suffice/quantity"
)

// A bottle gives vapour as fast as its wet wall takes heat from the air, which grows
// with the air's temperature above the boiling point and with the wall that is wetted.
// Fitted by least squares of the relative error to the 50 figures of [lpg-vapour] for a
// 100 lb propane bottle: rms 1.7 %, worst 7 %. The table says "approximate", and other
// trade figures for bottles of this size are half as large, so that the doubt is a factor of two.
const (
	tableBottle = 45.36  // kg
	fullRate    = 0.0964 // kg/h per K above the boiling point, full
	emptyShare  = 0.143  // of the full rate, for the last drop
)

// steps of filling at which the boiling point of a mixture is worked out.
const steps = 16

// boiling is the temperature at which the liquid left in a bottle boils, by filling.
type boiling [steps + 1]float64

// at gives it between the steps; fill is 0 to 1.
func (b *boiling) at(fill float64) float64 {
	f := fill * steps
	i := min(int(f), steps-1)
	return b[i] + (b[i+1]-b[i])*(f-float64(i))
}

// boilingByFill follows a bottle of liquid as vapour is drawn off. A mixture loses its
// propane first (Rayleigh: d ln n = dx/(y-x)), so that what is left boils ever higher.
// The vapour's composition is taken at 0 degC. Pure gases keep their boiling point.
func boilingByFill(f Fuel) (b boiling) {
	if f.propane == 0 || f.propane == 1 {
		for i := range b {
			b[i] = float64(f.Boiling)
		}
		return b
	}
	alpha := propanePressure(0) / butanePressure(0) // relative volatility
	mass := func(n, x float64) float64 { return n * (x*propaneMass + (1-x)*butaneMass) }
	n, x, whole := 1.0, f.propane, mass(1, f.propane)
	b[steps] = float64(f.Boiling)
	const dn = 1e-4 // moles drawn at a time, of those in a full bottle
	for i := steps - 1; i > 0; i-- {
		for n > 2*dn && mass(n, x) > whole*float64(i)/steps {
			y := alpha * x / (1 + (alpha-1)*x)
			x += (x - y) * dn / n
			n -= dn
		}
		b[i] = float64(bubblePoint(x))
	}
	b[0] = float64(bubblePoint(0)) // the last drop is butane
	return b
}

// vapourRate gives the kg/h that a bottle can go on giving: fill 0 to 1, air in degC.
// At or below the boiling point it is nothing.
func (p *prepared) vapourRate(fill, air float64) float64 {
	above := air - p.boils.at(fill)
	if above <= 0 {
		return 0
	}
	return p.ratePerKelvin * (emptyShare + (1-emptyShare)*fill) * above
}

// likeTheTable scales the rate to another bottle: walls of similar shapes grow with
// the two-thirds power of what they hold.
func likeTheTable(bottle quantity.Kilograms) float64 {
	return fullRate * math.Cbrt(float64(bottle)/tableBottle) * math.Cbrt(float64(bottle)/tableBottle)
}
