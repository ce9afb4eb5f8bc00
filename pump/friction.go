package pump

import (
	"math"

	"suffice/quantity"
)

// Between these Reynolds numbers a flow is neither surely laminar nor surely turbulent;
// the factor goes in a straight line between the two laws (common practice, no source).
const (
	laminarTo     = 2000
	turbulentFrom = 4000
)

// FrictionFactor gives Darcy's factor for a Reynolds number and a relative roughness
// e/D of 0 to 0.05: laminar 64/Re, turbulent by Colebrook.
func FrictionFactor(reynolds, roughness float64) float64 {
	switch {
	case reynolds <= laminarTo:
		return 64 / reynolds
	case reynolds >= turbulentFrom:
		return colebrook(reynolds, roughness)
	}
	low, high := 64.0/laminarTo, colebrook(turbulentFrom, roughness)
	return low + (high-low)*(reynolds-laminarTo)/(turbulentFrom-laminarTo)
}

// colebrook solves 1/sqrt(f) = -2 log10((e/D)/3.7 + 2.51/(Re sqrt(f))) [colebrook,
// eq. 10] by Newton's method in x = 1/sqrt(f). Haaland's formula is the start, within
// 2 % of the root, where five steps reach rounding: the function is convex and smooth.
func colebrook(reynolds, roughness float64) float64 {
	x := 1 / math.Sqrt(haaland(reynolds, roughness))
	for range 5 {
		inside := roughness/3.7 + 2.51*x/reynolds
		g := x + 2*math.Log10(inside)
		slope := 1 + 2/math.Ln10*(2.51/reynolds)/inside
		x -= g / slope
	}
	return 1 / (x * x)
}

// haaland is explicit: 1/sqrt(f) = -1.8 log10((e/D/3.7)^1.11 + 6.9/Re) [haaland].
func haaland(reynolds, roughness float64) float64 {
	x := -1.8 * math.Log10(math.Pow(roughness/3.7, 1.11)+6.9/reynolds)
	return 1 / (x * x)
}

// flowing is water as it moves.
type flowing struct{ density, viscosity float64 } // kg/m3, Pa s

// water gives the two properties between 0 and 100 degC at one atmosphere.
func water(t float64) flowing {
	return flowing{density: densityOfWater(t), viscosity: viscosityOfWater(t)}
}

// densityOfWater is [kell-density, eq. 16], kg/m3, good to 0.01.
func densityOfWater(t float64) float64 {
	return (999.83952 + t*(16.945176+t*(-7.9870401e-3+t*(-46.170461e-6+t*(105.56302e-9-280.54253e-12*t))))) / (1 + 16.879850e-3*t)
}

// viscosityOfWater is Vogel's form A 10^(B/(T-C)), T in K [vogel-viscosity], Pa s. It
// meets the tables within 2.5 % from 0 to 100 degC; friction moves a quarter as much.
func viscosityOfWater(t float64) float64 {
	return 2.414e-5 * math.Pow(10, 247.8/(t+273.15-140))
}

// loss gives the head in m lost at q m3/s [Darcy-Weisbach]: (f L/D + K) v2/2g.
func (p Pipe) loss(q float64, w flowing) float64 {
	d := float64(p.Bore) / 1000
	v := q / (math.Pi / 4 * d * d)
	fittings := p.Fittings * v * v / (2 * gravity)
	reynolds := w.density * v * d / w.viscosity
	if reynolds <= laminarTo { // f = 64/Re put in, so that a standing pipe divides nothing by nothing
		return 32*w.viscosity*float64(p.Length)*v/(w.density*gravity*d*d) + fittings
	}
	f := FrictionFactor(reynolds, float64(p.Roughness/p.Bore))
	return f*float64(p.Length)/d*v*v/(2*gravity) + fittings
}

// Loss gives the head lost to friction and fittings at a flow in m3/h, 0 or more.
func (p Pipe) Loss(flow float64, t quantity.Celsius) quantity.Metres {
	return quantity.Metres(p.loss(flow/secondsPerHour, water(float64(t))))
}

// GravityFlow gives the flow in m3/h that a fall of water drives through the pipe.
// The speed at which it leaves counts as one loss factor, so a pipe without fittings
// does not flow for ever faster; no fall, or one upward, drives nothing.
func (p Pipe) GravityFlow(fall quantity.Metres, t quantity.Celsius) float64 {
	if fall <= 0 {
		return 0
	}
	w := water(float64(t))
	p.Fittings++ // the velocity head at the outlet
	d := float64(p.Bore) / 1000
	low, high := 0.0, math.Pi/4*d*d*math.Sqrt(2*gravity*float64(fall)) // without any friction
	for range 60 {
		if mid := (low + high) / 2; p.loss(mid, w) < float64(fall) {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2 * secondsPerHour
}
