package sun

import (
	"math"

	"suffice/quantity"
)

// Hour52010 gives the sun in the middle of an hour by the geometry of ISO 52010-1:2017
// itself, within 0.5 deg of Look: for comparing with figures made by the standard. hour is
// 1 for the first hour of the day; zone is hours ahead of UTC.
func Hour52010(latitude, longitude quantity.Degrees, zone float64, dayOfYear, hour int) Moment {
	R := 2 * math.Pi * float64(dayOfYear) / 365
	declination := degree * (0.33281 - 22.984*math.Cos(R) - 0.3499*math.Cos(2*R) - 0.1398*math.Cos(3*R) +
		3.7872*math.Sin(R) + 0.03205*math.Sin(2*R) + 0.07187*math.Sin(3*R)) // clause 6.4.2.1
	shift := zone - float64(longitude)/15 // h
	solar := float64(hour) - equation52010(dayOfYear)/60 - shift
	w := degree * 15 * (12.5 - solar) // east positive
	to := sight(directionOf(float64(latitude.Radians())), directionOf(declination), directionOf(-w))
	m := Moment{CosZenith: to.up, Azimuth: quantity.Radians(to.azimuth()),
		Normal: quantity.Irradiance(1370 * (1 + 0.033*math.Cos(R)))}
	if to.up > 0 {
		m.Share = 1
	}
	return m
}

// equation52010 gives the standard's equation of time, min, mean minus apparent solar time.
func equation52010(dayOfYear int) float64 {
	n := float64(dayOfYear)
	switch {
	case n < 21:
		return 2.6 + 0.44*n
	case n < 136:
		return 5.2 + 9*math.Cos((n-43)*0.0357)
	case n < 241:
		return 1.4 - 5*math.Cos((n-135)*0.0449)
	case n < 336:
		return -6.3 - 10*math.Cos((n-306)*0.036)
	}
	return 0.45 * (n - 359)
}
