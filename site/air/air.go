// Package air is moist air: vapour, pressure, density, and the sky's own warmth.
//
// Checked against: the numbered examples of FAO-56 chapter 3 (2 to 5), and the long-wave
// light that three stations measured on clear winter days.
//
// Left out: ice. Saturation is over water at every temperature, as in the source; below 0
// degC vapour over ice is less, by about 1 % for each degree. Vapour pressures are not
// corrected for the presence of air (0.4 %).
package air

import (
	"math"

	"suffice/quantity"
)

// Pressure gives the usual air pressure at an altitude, kPa (fao56 eq. 7, from the standard
// lapse of 6.5 K/km at 20 degC; weather moves it by 3 kPa either way).
func Pressure(altitude quantity.Metres) float64 {
	return 101.3 * math.Pow((293-0.0065*float64(altitude))/293, 5.26)
}

// Saturation gives the vapour pressure of saturated air, kPa (fao56 eq. 11, after Tetens 1930).
func Saturation(t quantity.Celsius) float64 {
	T := float64(t)
	return 0.6108 * math.Exp(17.27*T/(T+237.3))
}

// SaturationSlope gives how steeply Saturation rises, kPa/K (fao56 eq. 13).
func SaturationSlope(t quantity.Celsius) float64 {
	T := float64(t) + 237.3
	return 4098 * Saturation(t) / (T * T)
}

// Psychrometric gives the psychrometric constant, kPa/K, of a pressure in kPa (fao56 eq. 8,
// latent heat 2.45 MJ/kg of 20 degC).
func Psychrometric(pressure float64) float64 { return 0.665e-3 * pressure }

// VapourOfHumidity gives the vapour pressure, kPa, of air at t with so much relative
// humidity, percent (fao56 eq. 10, turned).
func VapourOfHumidity(t quantity.Celsius, percent float64) float64 {
	return Saturation(t) * percent / 100
}

// VapourOfWetBulb gives the vapour pressure, kPa, from dry and wet thermometers and the
// pressure, kPa (fao56 eq. 15). coefficient is Ventilated, Natural or Indoor.
func VapourOfWetBulb(dry, wet quantity.Celsius, pressure, coefficient float64) float64 {
	return Saturation(wet) - coefficient*pressure*float64(dry-wet)
}

// Psychrometer coefficients, 1/K (fao56 below eq. 16).
const (
	Ventilated = 0.000662 // drawn past at about 5 m/s
	Natural    = 0.000800 // about 1 m/s
	Indoor     = 0.001200 // not ventilated
)

// Humidity gives the relative humidity, percent, of air at t with a vapour pressure, kPa.
// It passes 100 where the vapour is more than the air can hold.
func Humidity(t quantity.Celsius, vapour float64) float64 { return 100 * vapour / Saturation(t) }

// DewPoint gives the temperature at which a vapour pressure, kPa, saturates the air: the
// inverse of Saturation. The vapour pressure has to be above zero.
func DewPoint(vapour float64) quantity.Celsius {
	L := math.Log(vapour / 0.6108)
	return quantity.Celsius(237.3 * L / (17.27 - L))
}

// Density gives the density of moist air, kg/m3, at a pressure and a vapour pressure, kPa
// (fao56 eq. 3-5 and 3-6: the gas constant of dry air 0.287 kJ/kgK, and virtual temperature).
func Density(t quantity.Celsius, pressure, vapour float64) float64 {
	return pressure / (0.287 * t.Kelvin() / (1 - 0.378*vapour/pressure))
}
