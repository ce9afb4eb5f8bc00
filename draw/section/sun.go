package section

import (
	"math"

	"suffice/glass"
	"suffice/quantity"
	"suffice/site/sun"
)

// obliquity is the earth's tilt, 23.44 deg (meeus ch. 22, for the years about now): the sun's
// declination at the solstices.
const obliquity quantity.Degrees = 23.44

// A Season is a noon of the year.
type Season uint8

// The seasons drawn, by the sun's height and not by the month: midsummer is in December south of the equator.
const (
	Midsummer Season = iota
	Equinox
	Midwinter
	seasons
)

// Noon gives how high the sun stands at noon, counted from the horizon on the equator's side, 0 to 180 deg:
// over 90 it shines from the pole's side, as it does in midsummer between the tropics. Under 0 it does not rise.
// For all places it is 90 less latitude plus declination, both toward the pole.
func Noon(latitude quantity.Degrees, s Season) quantity.Degrees {
	declination := [seasons]quantity.Degrees{obliquity, 0, -obliquity}[s]
	dayOfYear := [seasons]int{172, 80, 355}[s]
	if latitude < 0 {
		declination = -declination
		dayOfYear = [seasons]int{355, 80, 172}[s]
	}
	m := sun.SolarMoment(latitude, declination, 12, dayOfYear)
	height := 90 - quantity.Radians(math.Acos(max(-1, min(1, m.CosZenith)))).Degrees()
	south := math.Cos(float64(m.Azimuth)) < 0
	if height > 0 && south != (latitude >= 0) && height < 90-1e-9 {
		return 180 - height
	}
	return height
}

// ShadowDrop gives how far below an overhang its shadow's edge lies on an upright pane: the depth of the
// overhang times the tangent of the profile angle (duffie-beckman 1.6.12, as package glass has it). The sun's height
// is over 0 and under 90 deg; difference is between the sun's and the pane's azimuth, under 90 deg either way. A
// sun that does not reach the pane has no shadow's edge: the result is no number.
func ShadowDrop(overhang quantity.Metres, height, difference quantity.Degrees) quantity.Metres {
	if math.Abs(float64(difference)) >= 90 || height <= 0 || height >= 90 {
		return quantity.Metres(math.NaN())
	}
	return overhang * quantity.Metres(math.Tan(float64(glass.RayTo(height, difference, 0).Profile().Radians())))
}
