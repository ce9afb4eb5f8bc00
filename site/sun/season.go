package sun

import (
	"math"

	"suffice/quantity"
)

// Season gives the declination and the equation of time (min, apparent minus mean solar
// time) for a day of the year when the year is not known, by the series of spencer,
// which handbooks work their examples with. Beside the sun at noon of the years about now
// it is within 0.6 deg and 1 min; where the year is known, Look and Track do better.
func Season(dayOfYear int) (declination quantity.Degrees, equation float64) {
	G := 2 * math.Pi * float64(dayOfYear-1) / 365
	d := 0.006918 - 0.399912*math.Cos(G) + 0.070257*math.Sin(G) - 0.006758*math.Cos(2*G) +
		0.000907*math.Sin(2*G) - 0.002697*math.Cos(3*G) + 0.00148*math.Sin(3*G) // duffie-beckman 1.6.1b
	E := 229.18 * (0.000075 + 0.001868*math.Cos(G) - 0.032077*math.Sin(G) -
		0.014615*math.Cos(2*G) - 0.04089*math.Sin(2*G)) // duffie-beckman 1.5.3
	return quantity.Radians(d).Degrees(), E
}

// SolarMoment gives the sun at an apparent solar time, h, for a declination; the light
// outside the air is that of the day of the year.
func SolarMoment(latitude, declination quantity.Degrees, solarTime float64, dayOfYear int) Moment {
	to := sight(directionOf(float64(latitude.Radians())), directionOf(float64(declination.Radians())),
		directionOf((solarTime-12)*hourTurn))
	m := Moment{CosZenith: to.up, Azimuth: quantity.Radians(to.azimuth()), Normal: NormalOutside(dayOfYear)}
	if to.up > 0 {
		m.Share = 1
	}
	return m
}

// NormalOutside gives the light outside the air, facing the sun, on a day of the year
// (duffie-beckman 1.4.1a).
func NormalOutside(dayOfYear int) quantity.Irradiance {
	return quantity.Irradiance(SolarConstant * (1 + 0.033*math.Cos(2*math.Pi*float64(dayOfYear)/365)))
}

// SolarTime gives the apparent solar time, h, for hours of a clock that is zone hours ahead
// of UTC, with the equation of time in min.
func SolarTime(clock, zone float64, longitude quantity.Degrees, equation float64) float64 {
	return clock - zone + float64(longitude)/15 + equation/60
}
