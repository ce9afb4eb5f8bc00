package sun

import (
	"math"

	"suffice/quantity"
)

// clearDay is the sky of a clear day in the United States on the 21st of each month
// (ashrae-clear-day): day of the year, apparent light outside A, W/m2, extinction k, sky factor
// C. January stands a second time behind December.
var clearDay = [13]struct{ day, A, k, C float64 }{
	{21, 1230, .142, .058}, {52, 1215, .144, .060}, {80, 1186, .156, .071}, {111, 1136, .180, .097},
	{141, 1104, .196, .121}, {172, 1088, .205, .134}, {202, 1085, .207, .136}, {233, 1107, .201, .122},
	{264, 1151, .177, .092}, {294, 1192, .160, .073}, {325, 1221, .149, .063}, {355, 1233, .142, .057},
	{386, 1230, .142, .058},
}

// ClearASHRAE gives the light under a clear sky on a day of the year. The table was made
// for the United States: on the southern half of the earth its seasons stand half a year
// off, and the light outside swings the other way by 7 percent.
func ClearASHRAE(dayOfYear int, cosZenith float64) Light {
	if cosZenith <= 0 {
		return Light{}
	}
	day, i := float64(dayOfYear), 0
	if day < clearDay[0].day {
		day += 365
	}
	for clearDay[i+1].day < day {
		i++
	}
	before, after := clearDay[i], clearDay[i+1]
	f := (day - before.day) / (after.day - before.day)
	A, k, C := before.A+f*(after.A-before.A), before.k+f*(after.k-before.k), before.C+f*(after.C-before.C)
	beam := A * math.Exp(-k/cosZenith)
	return Light{Diffuse: quantity.Irradiance(C * beam), Beam: quantity.Irradiance(beam)}
}

// ClearHaurwitz gives global light under a clear sky from the sun's height alone
// (haurwitz, metric by reno-hansen-stein; others print 0.059 for 0.057).
func ClearHaurwitz(cosZenith float64) quantity.Irradiance {
	if cosZenith <= 0 {
		return 0
	}
	return quantity.Irradiance(1098 * cosZenith * math.Exp(-0.057/cosZenith))
}

// ClearShare gives the part of the light outside that reaches the ground on a clear day
// (fao56 eq. 37; linear to about 3000 m, the source allows it below 6000 m).
func ClearShare(altitude quantity.Metres) float64 { return 0.75 + 2e-5*float64(altitude) }
