package sun

import "math"

// brightness is how a model sees the sky of one moment.
type brightness struct {
	round float64 // part of the diffuse light that comes from round the sun
	low   float64 // cosine of zenith that the light round the sun is divided by
	taken float64 // how much of round is taken out of the dome
	bow   float64 // what the dome is brighter for a plane, times the cube of the sine of half its slope
	band  float64 // part added at the horizon, on a plane that stands
}

var cos85 = math.Cos(85 * degree)

// brightness gives what the model says of a sky with so much diffuse light on the
// horizontal and so much beam facing the sun, W/m2, means of the hour.
//
// Below 5 deg of altitude the models divide by cos 85 instead of the zenith's cosine. The
// dome then gives up only as much as the sun's surroundings gain on the level, so that a
// level plane receives the diffuse light it was given; as printed, a part of it would be
// lost (Perez52010 keeps the print).
func (m Model) brightness(at *look, diffuse, beam float64) brightness {
	b := brightness{low: max(cos85, at.up), taken: 1}
	if at.outside <= 0 || at.up <= 0 || diffuse <= 0 {
		return b
	}
	zenith := math.Pi/2 - at.altitude
	switch m {
	case Perez:
		bin := clearnessBin(1.041, zenith, (diffuse+beam)/diffuse)
		// No sky scatters more onto the level than the sun sends there. A mean of an hour with the sun up for some minutes of it
		// may hold dusk beside, which is even over the sky.
		day := min(1, at.outside*at.up/diffuse)
		b.round, b.band = perezFactors(bin, day*diffuse*airMass(at.up, at.altitude)/at.outside, zenith)
		b.round, b.band = day*b.round, day*b.band
	case Perez52010:
		bin := clearnessBin(1.014, at.altitude, (diffuse+beam)/diffuse)
		b.round, b.band = perezFactors(bin, diffuse*airMass52010(at.altitude)/at.outside, zenith)
		return b
	case HayDavies, HDKR:
		b.round = min(1, beam/at.outside) // anisotropy index, duffie-beckman 2.16.1
		if m == HDKR {
			b.bow = math.Sqrt(beam * at.up / (diffuse + beam*at.up)) // 2.16.5
		}
	}
	b.taken = min(1, at.up/b.low)
	return b
}

// clearnessBin gives the row of perezTable for a ratio (Dh + In)/Dh, with the cube of an
// angle in rad taken out of it: eps = (ratio + k angle^3)/(1 + k angle^3), perez eq. 1.
func clearnessBin(k, angle, ratio float64) int {
	cube := k * angle * angle * angle
	eps := (ratio + cube) / (1 + cube)
	for i, upper := range perezBins {
		if eps < upper {
			return i
		}
	}
	return len(perezBins)
}

// perezFactors gives F1, the part round the sun, and F2, the part at the horizon, from the
// sky's brightness delta and the zenith angle, rad (perez eq. 6 and 7). The source
// floors F1 at 0; that it may not pass 1, all the light there is, is our addition.
func perezFactors(bin int, delta, zenith float64) (F1, F2 float64) {
	c := &perezTable[bin]
	return max(0, min(1, c[0]+c[1]*delta+c[2]*zenith)), c[3] + c[4]*delta + c[5]*zenith
}

// perezBins are the upper limits of clearness of the first seven rows, the eighth has none.
var perezBins = [7]float64{1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2}

// perezTable is F11 F12 F13 F21 F22 F23 by clearness, perez table 6, "all sites
// composite", with the digits that circulate beside the printed three decimals.
var perezTable = [8][6]float64{
	{-0.0083117, 0.5877285, -0.0620636, -0.0596012, 0.0721249, -0.0220216},
	{0.1299457, 0.6825954, -0.1513752, -0.0189325, 0.0659650, -0.0288748},
	{0.3296958, 0.4868735, -0.2210958, 0.0554140, -0.0639588, -0.0260542},
	{0.5682053, 0.1874525, -0.2951290, 0.1088631, -0.1519229, -0.0139754},
	{0.8730280, -0.3920403, -0.3616149, 0.2255647, -0.4620442, 0.0012448},
	{1.1326077, -1.2367284, -0.4118494, 0.2877813, -0.8230357, 0.0558651},
	{1.0601591, -1.5999137, -0.3589221, 0.2642124, -1.1272340, 0.1310694},
	{0.6777470, -0.3272588, -0.2504286, 0.1561313, -1.3765031, 0.2506212},
}

// AirMass gives the relative optical air mass for the cosine of the zenith angle, 1 at the
// zenith, about 38 at the level, at sea-level pressure (kasten-young). Below the level
// it gives the value of the level.
func AirMass(cosZenith float64) float64 {
	cosZenith = max(0, min(1, cosZenith))
	return airMass(cosZenith, math.Asin(cosZenith))
}

func airMass(cosZenith, altitude float64) float64 {
	return 1 / (cosZenith + 0.50572*math.Pow(altitude/degree+6.07995, -1.6364)) // their eq. 3
}

// airMass52010 is the standard's own air mass for an altitude in rad above the level
// (iso52010-1:2017, after Kasten 1965).
func airMass52010(altitude float64) float64 {
	a := altitude / degree
	if a >= 10 {
		return 1 / math.Sin(altitude)
	}
	return 1 / (math.Sin(altitude) + 0.15*math.Pow(a+3.885, -1.253))
}
