package glass

import (
	"math"

	"suffice/quantity"
)

// A Ray points from a vertical window to the sun or to a piece of the sky: Right along the
// wall as seen from inside, looking out; Up; and Out of the wall. Its length is 1.
type Ray struct{ Right, Up, Out float64 }

// RayTo gives the ray to a sun of that altitude and azimuth from a wall that faces an
// azimuth; both azimuths count from north by east.
func RayTo(altitude, azimuth, facing quantity.Degrees) Ray {
	level, up := math.Cos(float64(altitude.Radians())), math.Sin(float64(altitude.Radians()))
	beside := float64((azimuth - facing).Radians())
	return Ray{Right: level * math.Sin(beside), Up: up, Out: level * math.Cos(beside)}
}

// Profile gives the angle of the ray over the horizon as seen along the wall: the angle
// at which a long overhang casts its shadow, tan p = tan(altitude)/cos(azimuth from the wall's).
// Behind the wall it is over 90 deg.
func (r Ray) Profile() quantity.Degrees {
	return quantity.Radians(math.Atan2(r.Up, r.Out)).Degrees()
}

// SunAt gives altitude and azimuth of the sun's centre from latitude, declination and solar
// time in hours (duffie-beckman eq. 1.6.5, and its azimuth from north by east).
func SunAt(latitude, declination quantity.Degrees, solarTime float64) (altitude, azimuth quantity.Degrees) {
	phi, delta := float64(latitude.Radians()), float64(declination.Radians())
	w := (solarTime - 12) * 15 * math.Pi / 180
	up := math.Sin(phi)*math.Sin(delta) + math.Cos(phi)*math.Cos(delta)*math.Cos(w)
	north := math.Cos(phi)*math.Sin(delta) - math.Sin(phi)*math.Cos(delta)*math.Cos(w)
	east := -math.Cos(delta) * math.Sin(w)
	return quantity.Radians(math.Atan2(up, math.Hypot(north, east))).Degrees(),
		quantity.Radians(math.Mod(math.Atan2(east, north)+2*math.Pi, 2*math.Pi)).Degrees()
}
