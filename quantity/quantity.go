// Package quantity holds the few types for quantities that people confuse, and
// reads and prints quantities with their units.
//
// A value of one of these types is always in the unit of its name: Litres are
// litres, never cubic metres. Formulas take plain float64s inside; types stand
// at the doors of a package.
//
// Checked against: the exact definitions of the SI (BIPM SI Brochure, 9th ed.)
// for every conversion factor, see published_test.go.
//
// Left out: general arithmetic between quantities. A product of two types drops
// to float64 and is given its new type by whoever knows the formula.
package quantity

import "math"

type (
	Litres       float64 // volume of water
	Millimetres  float64 // depth of rain or evaporation: 1 mm on 1 m2 is 1 L
	Metres       float64
	SquareMetres float64
	Watts        float64 // power
	WattHours    float64 // energy
	Celsius      float64 // a point on the temperature scale
	Kelvins      float64 // a difference of temperatures
	Degrees      float64 // an angle, for people
	Radians      float64 // an angle, for formulas
	Irradiance   float64 // W/m2 on a stated plane
	Kilograms    float64
)

// On gives the litres that a depth of water makes on a horizontal area.
func (d Millimetres) On(a SquareMetres) Litres { return Litres(float64(d) * float64(a)) }

// WaterHeat is what a litre of water takes for each kelvin, Wh: 4.186 kJ/kgK [water-heat] times 1 kg/L. Between 10 and 90 degC the true product
// falls from 4.19 to 4.06, so that hot water holds up to 3 % less.
const WaterHeat = 4.186 / 3.6

// Heat gives the heat that warms water by so much.
func (l Litres) Heat(by Kelvins) WattHours { return WattHours(WaterHeat * float64(l) * float64(by)) }

// For gives the energy of a power held for so many hours.
func (p Watts) For(hours float64) WattHours { return WattHours(float64(p) * hours) }

// Over gives the mean power that delivers an energy in so many hours.
func (e WattHours) Over(hours float64) Watts { return Watts(float64(e) / hours) }

// Above gives the difference t minus base.
func (t Celsius) Above(base Celsius) Kelvins { return Kelvins(t - base) }

// Kelvin gives the absolute temperature in kelvin.
func (t Celsius) Kelvin() float64 { return float64(t) + 273.15 }

// Radians gives the same angle in radians.
func (d Degrees) Radians() Radians { return Radians(float64(d) * (math.Pi / 180)) }

// Degrees gives the same angle in degrees.
func (r Radians) Degrees() Degrees { return Degrees(float64(r) * (180 / math.Pi)) }
