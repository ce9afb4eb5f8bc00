package air

import (
	"math"

	"suffice/quantity"
)

// StefanBoltzmann is what a black body of one kelvin gives off, W/m2K4 (BIPM SI Brochure, 9th ed.: exact).
const StefanBoltzmann = 5.670374419e-8

// ClarkAllen gives the emissivity of a clear sky from the dew point at the ground
// (clark-allen, fitted on nights in Texas). Three measured winter days by day lie 17 to
// 33 W/m2 below it: the ground-warmed air that the thermometer meets is not the sky's.
func ClarkAllen(dewPoint quantity.Celsius) float64 {
	return 0.787 + 0.764*math.Log(dewPoint.Kelvin()/273)
}

// BerdahlMartin gives the emissivity of a clear sky from the dew point at the ground and the
// solar time, h (berdahl-martin, fitted on six stations of the United States, day and
// night). The same three days lie within 10 W/m2 of it.
func BerdahlMartin(dewPoint quantity.Celsius, solarTime float64) float64 {
	d := float64(dewPoint) / 100
	return 0.711 + 0.56*d + 0.73*d*d + 0.013*math.Cos(math.Pi*solarTime/12)
}

// Clouded gives the emissivity under cloud, from 0 (clear) to 1 (overcast), of a sky that has
// a given emissivity when clear (walton), at most 1: overcast over warm, nearly saturated air
// the polynomial passes what a black body gives by a few parts in a thousand.
func Clouded(emissivity, cloud float64) float64 {
	n := 10 * cloud // the polynomial takes tenths
	return min(1, emissivity*(1+n*(0.0224+n*(-0.0035+n*0.00028))))
}

// SkyLight gives the long-wave light that a sky sends down, W/m2.
func SkyLight(t quantity.Celsius, emissivity float64) float64 {
	k := t.Kelvin()
	return emissivity * StefanBoltzmann * k * k * k * k
}

// SkyTemperature gives the temperature of a black sky that sends down as much long-wave
// light as the real one, with cloud from 0 (clear) to 1 (overcast), by ClarkAllen.
func SkyTemperature(t, dewPoint quantity.Celsius, cloud float64) quantity.Celsius {
	emissivity := Clouded(ClarkAllen(dewPoint), cloud)
	return quantity.Celsius(math.Sqrt(math.Sqrt(emissivity))*t.Kelvin() - 273.15)
}
