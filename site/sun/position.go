package sun

import (
	"math"
	"time"

	"suffice/quantity"
	"suffice/site"
)

// Sight is the air through which one looks at the sun; it bends the light.
type Sight struct {
	Pressure    float64 // kPa
	Temperature quantity.Celsius
}

// Position is where the sun's centre stands, seen from a place at an instant.
type Position struct {
	Zenith         quantity.Degrees // as it is seen: refraction and parallax included
	Azimuth        quantity.Degrees // from north, east positive, 0 to 360
	Altitude       quantity.Degrees // 90 minus Zenith
	True           quantity.Degrees // altitude without refraction
	Declination    quantity.Degrees
	RightAscension quantity.Degrees // 0 to 360
	HourAngle      quantity.Degrees // west positive, -180 to 180
	EquationOfTime float64          // min, apparent minus mean solar time
	Distance       float64          // AU
}

// Look gives where the sun stands (meeus ch. 25, 13, 16 and 40), within 0.01 deg.
func Look(p site.Place, at time.Time, through Sight) Position {
	jd := julianDay(at)
	s := sunAt(jd)
	w := s.hourAngle(jd, float64(p.Longitude.Radians()))
	to := sight(directionOf(float64(p.Latitude.Radians())), directionOf(s.declination), directionOf(w))
	geocentric := math.Asin(max(-1, min(1, to.up)))
	// The sun's parallax is 8.794" at one AU; it lowers the sun by its cosine (ch. 40).
	altitude := (geocentric - degree*8.794/3600/s.distance*math.Cos(geocentric)) / degree
	seen := altitude + Refraction(altitude, through)
	return Position{
		Zenith: quantity.Degrees(90 - seen), Altitude: quantity.Degrees(seen), True: quantity.Degrees(altitude),
		Azimuth:        quantity.Radians(to.azimuth()).Degrees(),
		Declination:    quantity.Radians(s.declination).Degrees(),
		RightAscension: quantity.Radians(turn(s.rightAscension, 0)).Degrees(),
		HourAngle:      quantity.Radians(w).Degrees(),
		EquationOfTime: 4 * s.equation / degree,
		Distance:       s.distance,
	}
}

// Refraction gives how much higher the sun is seen than it is, deg, for its true altitude
// in deg (meeus 16.4 with the factor below it). Below -1.5 deg it gives 0: the sun is not seen.
func Refraction(altitude float64, through Sight) float64 {
	if altitude < -1.5 {
		return 0
	}
	R := 1.02 / 60 / math.Tan(degree*(altitude+10.3/(altitude+5.11)))
	return R * through.Pressure / 101 * 283 / through.Temperature.Kelvin()
}

// Daylight is the sun's day on one date of a place's clock.
type Daylight struct {
	Rise, Set time.Time     // upper limb on the level horizon; zero if Always or Never
	Noon      time.Time     // sun on the meridian
	Length    time.Duration // from rise to set
	Always    bool          // the sun does not set
	Never     bool          // the sun does not rise
}

// horizonDip is the altitude of the sun's centre at rise and set: 34' of refraction and 16'
// of radius below the level (meeus ch. 15).
const horizonDip = -0.8333 * degree

// DaylightOf gives rise, noon and set of a date, for a level horizon.
func DaylightOf(p site.Place, d Date) Daylight {
	longitude := float64(p.Longitude.Radians())
	zone := time.FixedZone("", int(math.Round(p.Clock*3600)))
	when := func(jd float64) time.Time { return jdTime(jd).In(zone) }
	noon := dateJulian(d) + (12-float64(p.Longitude)/15)/24
	if shift := math.Round((noon - (dateJulian(d) + (12-p.Clock)/24))); shift != 0 {
		noon -= shift // the meridian passage that lies in this date of the clock
	}
	for range 3 {
		noon -= sunAt(noon).hourAngle(noon, longitude) / (2 * math.Pi)
	}
	out := Daylight{Noon: when(noon)}
	half, always := halfDay(p, sunAt(noon).declination)
	if out.Always, out.Never = always, half == 0; always || half == 0 {
		if always {
			out.Length = 24 * time.Hour
		}
		return out
	}
	rise, set := noon-half/(2*math.Pi), noon+half/(2*math.Pi)
	for range 6 {
		rise = crossing(p, rise, -1)
		set = crossing(p, set, 1)
	}
	out.Rise, out.Set = when(rise), when(set)
	out.Length = out.Set.Sub(out.Rise)
	return out
}

// halfDay gives the hour angle at which the sun's limb meets the horizon, and whether it never does
// because the sun stays up.
func halfDay(p site.Place, declination float64) (w float64, always bool) {
	sinLat, cosLat := math.Sincos(float64(p.Latitude.Radians()))
	c := (math.Sin(horizonDip) - sinLat*math.Sin(declination)) / (cosLat * math.Cos(declination)) // (15.1)
	return math.Acos(max(-1, min(1, c))), c <= -1
}

// crossing moves an instant nearer to the one at which the sun meets the horizon on the
// morning (-1) or evening (+1) side.
func crossing(p site.Place, jd, side float64) float64 {
	s := sunAt(jd)
	w := s.hourAngle(jd, float64(p.Longitude.Radians()))
	half, _ := halfDay(p, s.declination)
	return jd + turn(side*half-w, -math.Pi)/(2*math.Pi)
}

// jdTime gives the instant of a Julian day, to the millisecond.
func jdTime(jd float64) time.Time {
	return time.UnixMilli(int64(math.Round((jd - 2440587.5) * 86400e3))).UTC()
}
