package ground

import (
	"math"

	"suffice/quantity"
)

// days of a year, as the source counts them.
const yearDays = 365.0

// Undisturbed is ground far from any house, whose surface swings through the year as a cosine
// (kusuda-achenbach: the equation of report and paper; here with the coldest day for the phase).
type Undisturbed struct {
	Mean        quantity.Celsius // of the surface, through the year
	Swing       quantity.Kelvins // half of warmest less coldest, at the surface
	Coldest     float64          // day of the year on which the surface is coldest: about 35 north of the equator, 215 south of it
	Diffusivity float64          // m2/d
}

// Damping gives the depth at which the yearly swing has fallen to 1/e.
func (u Undisturbed) Damping() quantity.Metres {
	return quantity.Metres(math.Sqrt(yearDays * u.Diffusivity / math.Pi))
}

// Lag gives how many days later than the surface a depth is coldest. It is z/2·√(365/(πa)), which stands
// inside the cosine together with the day: taking it from the temperature of an earlier day misses the damping.
func (u Undisturbed) Lag(depth quantity.Metres) float64 {
	return float64(depth) / 2 * math.Sqrt(yearDays/(math.Pi*u.Diffusivity))
}

// Left gives the share of the surface's swing that is left at a depth.
func (u Undisturbed) Left(depth quantity.Metres) float64 {
	return math.Exp(-float64(depth / u.Damping()))
}

// At gives the temperature at a depth on a day of the year, parts of days allowed.
func (u Undisturbed) At(depth quantity.Metres, day float64) quantity.Celsius {
	x := 2 * math.Pi / yearDays * (day - u.Coldest - u.Lag(depth))
	return u.Mean - quantity.Celsius(float64(u.Swing)*u.Left(depth)*math.Cos(x))
}

// FitSurface gives the mean, swing and coldest day of the cosine that fits a year of daily temperatures,
// the first of them day 1, best by least squares (the year's own first harmonic).
func FitSurface(daily []float64, diffusivity float64) Undisturbed {
	var mean, c, s float64
	n := float64(len(daily))
	for i, t := range daily {
		x := 2 * math.Pi * float64(i) / n
		mean += t / n
		c += 2 * t * math.Cos(x) / n
		s += 2 * t * math.Sin(x) / n
	}
	// t = mean + c cos + s sin = mean − A cos(x − x0): A cos x0 = −c, A sin x0 = −s
	x0 := math.Atan2(-s, -c)
	if x0 < 0 {
		x0 += 2 * math.Pi
	}
	return Undisturbed{
		Mean: quantity.Celsius(mean), Swing: quantity.Kelvins(math.Hypot(c, s)),
		Coldest: 1 + x0/(2*math.Pi)*yearDays, Diffusivity: diffusivity,
	}
}
