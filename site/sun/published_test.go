package sun

import (
	"math"
	"testing"
	"time"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site"
)

// goldenCase is the worked example of the Solar Position Algorithm report.
var goldenCase = site.Place{Latitude: 39.742476, Longitude: -105.1786, Altitude: 1830.14, Clock: -7}

func TestSolarPositionAlgorithm(t *testing.T) {
	at := time.Date(2003, 10, 17, 12, 30, 30, 0, time.FixedZone("", -7*3600))
	p := Look(goldenCase, at, Sight{Pressure: 82, Temperature: 11})
	check.That(t, julianDay(at), check.Published{Source: "spa", At: "table A5.1, Julian day", Value: "2452930.312847", Unit: "d"})
	check.That(t, float64(p.Zenith), check.Published{Source: "spa", At: "table A5.1, zenith with refraction", Value: "50.111622", Unit: "deg",
		Within: 0.01, Why: "the short series is good to 0.01 deg (meeus ch. 25)"})
	check.That(t, float64(p.Azimuth), check.Published{Source: "spa", At: "table A5.1, azimuth from north", Value: "194.340241", Unit: "deg",
		Within: 0.01, Why: "the short series is good to 0.01 deg (meeus ch. 25)"})
	check.That(t, float64(p.HourAngle), check.Published{Source: "spa", At: "table A5.1, local hour angle", Value: "11.105902", Unit: "deg",
		Within: 0.01, Why: "the short series is good to 0.01 deg (meeus ch. 25)"})
	check.That(t, p.Distance, check.Published{Source: "spa", At: "table A5.1, heliocentric R", Value: "0.996542", Unit: "AU",
		Within: 0.00001, Why: "the short series leaves out the planets (meeus ch. 25 gives 0.99766 for 0.99760 in its own example)"})
	check.That(t, float64(p.RightAscension), check.Published{Source: "spa", At: "geocentric right ascension", Value: "202.22741", Unit: "deg",
		Within: 0.01, Why: "the short series is good to 0.01 deg (meeus ch. 25)", Standing: "remembered"})
	check.That(t, float64(p.Declination), check.Published{Source: "spa", At: "geocentric declination", Value: "-9.31434", Unit: "deg",
		Within: 0.01, Why: "the short series is good to 0.01 deg (meeus ch. 25)", Standing: "remembered"})
	check.That(t, p.EquationOfTime, check.Published{Source: "spa", At: "equation of time", Value: "14.6415", Unit: "min",
		Within: 0.04, Why: "0.01 deg of hour angle is 0.04 min", Standing: "remembered"})

	// The report turns its surface from south, west positive: -10 deg is azimuth 170.
	seen := Moment{CosZenith: math.Cos(float64(p.Zenith.Radians())), Azimuth: p.Azimuth.Radians(), Normal: 1367, Share: 1}
	got := NewFace(Plane{Slope: 30, Azimuth: 170}, 0, Isotropic, site.Horizon{}).Light(seen, Light{})
	check.That(t, math.Acos(got.Incidence)/degree, check.Published{Source: "spa", At: "table A5.1, incidence on slope 30, 10 deg east of south",
		Value: "25.187000", Unit: "deg", Within: 0.01, Why: "as zenith and azimuth"})
}

func TestSolarPositionAlgorithmRiseAndSet(t *testing.T) {
	today := DaylightOf(goldenCase, Date{2003, 10, 17})
	check.That(t, secondsOf(today.Rise), check.Published{Source: "spa", At: "table A5.1, sunrise 06:12:43", Value: "22363", Unit: "s",
		Within: 30, Why: "refraction at the horizon is not known to better than this"})
	check.That(t, secondsOf(today.Noon), check.Published{Source: "spa", At: "sun transit 11:46:05", Value: "42365", Unit: "s",
		Within: 3, Why: "0.01 deg of hour angle is 2.4 s", Standing: "remembered"})
	// The report works by days of universal time: 17:20:19 at UTC-7 is 00:20:19 UT, and of the
	// date 17 October UT. That sunset belongs to the evening of 16 October on the place's clock;
	// the evening after is 87 s earlier.
	yesterday := DaylightOf(goldenCase, Date{2003, 10, 16})
	check.That(t, secondsOf(yesterday.Set), check.Published{Source: "spa", At: "table A5.1, sunset 17:20:19 (of the date in UT: 16 October here)",
		Value: "62419", Unit: "s", Within: 30, Why: "refraction at the horizon is not known to better than this"})
}

// secondsOf gives the seconds since midnight of the clock.
func secondsOf(t time.Time) float64 {
	h, m, s := t.Clock()
	return float64(3600*h+60*m+s) + float64(t.Nanosecond())/1e9
}

// The sun's apparent place in the source's own example, and the Julian days of two dates.
func TestMeeusExample(t *testing.T) {
	s := sunAt(2448908.5 - deltaT/86400.0) // 1992 October 13, 0 h of dynamical time
	check.That(t, s.rightAscension/degree+360, check.Published{Source: "meeus", At: "example 25.a, right ascension", Value: "198.38083", Unit: "deg", Standing: "remembered"})
	check.That(t, s.declination/degree, check.Published{Source: "meeus", At: "example 25.a, declination", Value: "-7.78507", Unit: "deg", Standing: "remembered"})
	check.That(t, s.distance, check.Published{Source: "meeus", At: "example 25.a, distance", Value: "0.99766", Unit: "AU", Standing: "remembered"})
	check.That(t, dateJulian(Date{1957, 10, 4}), check.Published{Source: "meeus", At: "example 7.a, 1957 October 4.81, without the fraction", Value: "2436115.5", Unit: "d", Standing: "remembered"})
	check.That(t, dateJulian(Date{2000, 1, 1}), check.Published{Source: "meeus", At: "p. 62, 2000 January 1.5 is 2451545.0", Value: "2451544.5", Unit: "d", Standing: "remembered"})
}

// extreme gives the least and the greatest equation of time of a year, min.
func extreme(year int) (least, greatest float64) {
	for d := range 365 {
		at := time.Date(year, 1, 1+d, 12, 0, 0, 0, time.UTC)
		E := Look(site.Place{}, at, Sight{Pressure: 101.3, Temperature: 10}).EquationOfTime
		least, greatest = min(least, E), max(greatest, E)
	}
	return least, greatest
}

func TestEquationOfTime(t *testing.T) {
	least, greatest := extreme(2025)
	check.That(t, least, check.Published{Source: "almanac", At: "equation of time, February: -14 min 14 s", Value: "-14.23", Unit: "min",
		Within: 0.15, Why: "almanac pages print 14 min 12 s to 14 min 20 s, by year and author"})
	check.That(t, greatest, check.Published{Source: "almanac", At: "equation of time, November: +16 min 26 s", Value: "16.44", Unit: "min",
		Within: 0.15, Why: "almanac pages print 16 min 24 s to 16 min 29 s, by year and author"})
	_, E := Season(34)
	check.That(t, E, check.Published{Source: "duffie-beckman", At: "ex. 1.5.1, 3 February", Value: "-13.5", Unit: "min", Standing: "remembered"})
	_, E = Season(45)
	check.That(t, E, check.Published{Source: "spencer", At: "series, day 45", Value: "-14.27", Unit: "min", Standing: "own"})
	_, E = Season(306)
	check.That(t, E, check.Published{Source: "spencer", At: "series, day 306", Value: "16.39", Unit: "min", Standing: "own"})
	solar := SolarTime(10.5, -6, -89.4, -13.5)
	check.That(t, 60*solar, check.Published{Source: "duffie-beckman", At: "ex. 1.5.1, 89.4 W, 10:30 of the 90 W meridian: 10:19 solar", Value: "619", Unit: "min", Standing: "remembered"})
}

func TestGeometryExamples(t *testing.T) {
	m := SolarMoment(40, 23.35, 14, 166)
	check.That(t, math.Asin(m.CosZenith)/degree, check.Published{Source: "kalogirou", At: "ch. 2 example, 40 N, 15 June, hour angle 30, altitude", Value: "59.75", Unit: "deg",
		Within: 0.01, Why: "the source rounds its sines to four digits"})
	ws := float64(sunsetAngle(directionOf(40*degree), directionOf(23.35*degree))) / degree
	check.That(t, ws*2/15, check.Published{Source: "kalogirou", At: "ch. 2 example, day length", Value: "14.83", Unit: "h"})
	check.That(t, 60*(12-ws/15), check.Published{Source: "kalogirou", At: "ch. 2 example, sunrise 4:36 solar", Value: "276", Unit: "min",
		Within: 1, Why: "the source gives whole minutes of a rounded day length"})
	ws = float64(sunsetAngle(directionOf(53*degree), directionOf(-23.45*degree))) / degree
	check.That(t, ws, check.Published{Source: "astronomy-course", At: "53 N, declination -23.45, hour angle of sunset", Value: "55", Unit: "deg"})
	check.That(t, 60*ws*2/15, check.Published{Source: "astronomy-course", At: "the same, day of 7 h 20 min", Value: "440", Unit: "min",
		Within: 2, Why: "made from the hour angle rounded to a degree, which is 8 min"})

	m = SolarMoment(43, -14, 10.5, 44)
	got := NewFace(Plane{Slope: 45, Azimuth: 195}, 0, Isotropic, site.Horizon{}).Light(m, Light{})
	check.That(t, math.Acos(got.Incidence)/degree, check.Published{Source: "duffie-beckman", At: "ex. 1.6.1, 43 N, 13 February 10:30, slope 45, 15 deg west of south",
		Value: "35", Unit: "deg", Standing: "remembered"})
	for _, c := range []struct {
		declination quantity.Degrees
		want        check.Published
	}{
		{23.44, check.Published{Source: "almanac", At: "noon altitude 40 N, midsummer: 90 - |latitude - declination|", Value: "73.44", Unit: "deg", Standing: "own"}},
		{0, check.Published{Source: "almanac", At: "noon altitude 40 N, equinox", Value: "50.00", Unit: "deg", Standing: "own"}},
		{-23.44, check.Published{Source: "almanac", At: "noon altitude 40 N, midwinter", Value: "26.56", Unit: "deg", Standing: "own"}},
	} {
		check.That(t, math.Asin(SolarMoment(40, c.declination, 12, 1).CosZenith)/degree, c.want)
	}
}

func TestAlmanacRiseAndSet(t *testing.T) {
	london := site.Place{Latitude: 51.507, Longitude: -0.128}
	newYork := site.Place{Latitude: 40.713, Longitude: -74.006, Clock: -5}
	sydney := site.Place{Latitude: -33.869, Longitude: 151.209, Clock: 10}
	for _, c := range []struct {
		place     site.Place
		date      Date
		rise, set check.Published
	}{
		{london, Date{2024, 6, 20}, check.Published{Source: "almanac", At: "51.507 N 0.128 W, 2024-06-20, rise 03:43", Value: "223", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"},
			check.Published{Source: "almanac", At: "51.507 N 0.128 W, 2024-06-20, set 20:21", Value: "1221", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"}},
		{london, Date{2024, 12, 21}, check.Published{Source: "almanac", At: "51.507 N 0.128 W, 2024-12-21, rise 08:04", Value: "484", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"},
			check.Published{Source: "almanac", At: "51.507 N 0.128 W, 2024-12-21, set 15:54", Value: "954", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"}},
		{london, Date{2024, 3, 20}, check.Published{Source: "almanac", At: "51.507 N 0.128 W, 2024-03-20, rise 06:02", Value: "362", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"},
			check.Published{Source: "almanac", At: "51.507 N 0.128 W, 2024-03-20, set 18:14", Value: "1094", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"}},
		{newYork, Date{2024, 6, 20}, check.Published{Source: "almanac", At: "40.713 N 74.006 W, 2024-06-20, rise 04:25", Value: "265", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"},
			check.Published{Source: "almanac", At: "40.713 N 74.006 W, 2024-06-20, set 19:31", Value: "1171", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"}},
		{newYork, Date{2024, 12, 21}, check.Published{Source: "almanac", At: "40.713 N 74.006 W, 2024-12-21, rise 07:17", Value: "437", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"},
			check.Published{Source: "almanac", At: "40.713 N 74.006 W, 2024-12-21, set 16:32", Value: "992", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"}},
		{sydney, Date{2024, 6, 21}, check.Published{Source: "almanac", At: "33.869 S 151.209 E, 2024-06-21, rise 07:00", Value: "420", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"},
			check.Published{Source: "almanac", At: "33.869 S 151.209 E, 2024-06-21, set 16:54", Value: "1014", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"}},
		{sydney, Date{2024, 12, 21}, check.Published{Source: "almanac", At: "33.869 S 151.209 E, 2024-12-21, rise 04:41", Value: "281", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"},
			check.Published{Source: "almanac", At: "33.869 S 151.209 E, 2024-12-21, set 19:06", Value: "1146", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"}},
		{site.Place{}, Date{2024, 3, 20}, check.Published{Source: "almanac", At: "0 N 0 E, 2024-03-20, rise 06:04", Value: "364", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"},
			check.Published{Source: "almanac", At: "0 N 0 E, 2024-03-20, set 18:11", Value: "1091", Unit: "min", Within: 1, Why: "almanacs print whole minutes", Standing: "remembered"}},
	} {
		d := DaylightOf(c.place, c.date)
		check.That(t, secondsOf(d.Rise)/60, c.rise)
		check.That(t, secondsOf(d.Set)/60, c.set)
	}
	day := DaylightOf(site.Place{}, Date{2024, 3, 20})
	check.That(t, day.Length.Minutes(), check.Published{Source: "almanac", At: "0 N, 2024-03-20, day of 12 h 06.5 min, never exactly 12 h", Value: "726.5", Unit: "min",
		Within: 0.5, Why: "half a minute for rise and set together", Standing: "remembered"})
}
