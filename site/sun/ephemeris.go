package sun

import (
	"math"
	"time"
)

const degree = math.Pi / 180

// deltaT is terrestrial time minus universal time, s. It was 50 in 1980, 64 in 2000 and 69
// in 2020 (IERS); what the years before and after add moves the sun by less than 0.0003 deg.
const deltaT = 67.0

// epoch is J2000.0, 2000 January 1, 12 h, as a Julian day.
const epoch = 2451545

// julianDay gives the Julian day of an instant of universal time.
func julianDay(t time.Time) float64 {
	return 2440587.5 + float64(t.Unix())/86400 + float64(t.Nanosecond())/86400e9
}

// dateJulian gives the Julian day of midnight UT of a Gregorian date (meeus 7.1).
func dateJulian(d Date) float64 {
	y, m := int(d.Year), int(d.Month)
	if m <= 2 {
		y, m = y-1, m+12
	}
	a := floorDiv(y, 100)
	b := 2 - a + floorDiv(a, 4)
	return math.Floor(365.25*float64(y+4716)) + math.Floor(30.6001*float64(m+1)) + float64(int(d.Date)+b) - 1524.5
}

func floorDiv(a, b int) int { return int(math.Floor(float64(a) / float64(b))) }

// apparent is where the sun's centre stands among the stars, seen from the earth's centre.
type apparent struct {
	rightAscension float64 // rad
	declination    float64 // rad
	distance       float64 // AU
	equation       float64 // equation of time, rad: apparent minus mean solar time
	nutation       float64 // of the right ascension, rad: apparent minus mean sidereal time
}

// sunAt gives the apparent sun for a Julian day of universal time, by the low-accuracy
// series of Meeus, Astronomical Algorithms, 2nd ed., ch. 25, good to 0.01 deg.
func sunAt(jd float64) apparent {
	T := (jd + deltaT/86400 - epoch) / 36525
	L0 := 280.46646 + T*(36000.76983+T*0.0003032)           // (25.2) p. 163
	M := degree * (357.52911 + T*(35999.05029-T*0.0001537)) // (25.3)
	e := 0.016708634 - T*(0.000042037+T*0.0000001267)       // (25.4)
	sinM, cosM := math.Sincos(M)
	C := (1.914602-T*(0.004817+T*0.000014))*sinM +
		(0.019993-T*0.000101)*2*sinM*cosM +
		0.000289*sinM*(4*cosM*cosM-1) // p. 164, sin 2M and sin 3M by their multiple angles
	R := 1.000001018 * (1 - e*e) / (1 + e*math.Cos(M+degree*C)) // (25.5)
	sinO, cosO := math.Sincos(degree * (125.04 - 1934.136*T))
	lambda := degree * (L0 + C - 0.00569 - 0.00478*sinO)                                      // apparent longitude, p. 164
	epsilon := degree * (23.43929111 - T*(0.013004167+T*(1.64e-7-T*5.036e-7)) + 0.00256*cosO) // (22.2), (25.8)
	sinE, cosE := math.Sincos(epsilon)
	sinL, cosL := math.Sincos(lambda)
	alpha := math.Atan2(cosE*sinL, cosL)        // (25.6)
	nutation := degree * -0.00478 * sinO * cosE // of right ascension, ch. 12
	return apparent{
		rightAscension: alpha,
		declination:    math.Asin(sinE * sinL), // (25.7)
		distance:       R,
		equation:       turn(degree*(L0-0.0057183)-alpha+nutation, -math.Pi), // (28.1)
		nutation:       nutation,
	}
}

// hourAngle gives how far the sun has passed the meridian of a longitude (rad), -pi to pi.
func (s apparent) hourAngle(jd, longitude float64) float64 {
	T := (jd - epoch) / 36525
	mean := 280.46061837 + 360.98564736629*(jd-epoch) + T*T*0.000387933 // (12.4), sidereal time of Greenwich
	return turn(degree*math.Mod(mean, 360)+s.nutation+longitude-s.rightAscension, -math.Pi)
}

// turn brings an angle between low and low + 2 pi.
func turn(angle, low float64) float64 {
	return angle - 2*math.Pi*math.Floor((angle-low)/(2*math.Pi))
}
