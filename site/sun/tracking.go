package sun

import (
	"math"

	"suffice/site"
)

// SolarConstant is the irradiance at one astronomical unit, W/m2: 1367 of the World
// Meteorological Organization (1981), which the splitting and plane models here were
// fitted with. The newer 1361 (Kopp & Lean 2011) would raise clearness by 0.4 percent.
const SolarConstant = 1367

const hourTurn = math.Pi / 12 // what the sun turns in an hour, rad

// ends is the sun at both midnights of a clock day; between them it moves evenly.
type ends struct {
	declination [2]float64 // rad
	noon        direction  // the declination between them
	equation    [2]float64 // rad, equation of time
	distance    float64    // AU, at noon
}

// direction is an angle by its sine and cosine.
type direction struct{ sin, cos float64 }

func directionOf(angle float64) direction {
	sin, cos := math.Sincos(angle)
	return direction{sin, cos}
}

// turned gives the direction after a further turn.
func (d direction) turned(by direction) direction {
	return direction{d.sin*by.cos + d.cos*by.sin, d.cos*by.cos - d.sin*by.sin}
}

func endsOf(before, after apparent) ends {
	return ends{
		declination: [2]float64{before.declination, after.declination},
		noon:        directionOf((before.declination + after.declination) / 2),
		equation:    [2]float64{before.equation, before.equation + turn(after.equation-before.equation, -math.Pi)},
		distance:    (before.distance + after.distance) / 2,
	}
}

// NewTrack computes the sun's way over a place for the days given.
func NewTrack(p site.Place, days []Date) *Track {
	n := 24 * len(days)
	all := make([]float64, 8*n+len(days))
	column := func() []float64 { c := all[:n:n]; all = all[n:]; return c }
	t := &Track{Place: p, CosZenith: column(), Altitude: column(), Azimuth: column(),
		Normal: column(), Share: column(), SolarTime: column(),
		north: column(), east: column(), Sunset: all, ends: make([]ends, len(days))}
	latitude := directionOf(float64(p.Latitude.Radians()))
	var last float64
	var after apparent
	for d, date := range days {
		jd := dateJulian(date) - p.Clock/24
		before := after
		if jd != last+1 {
			before = sunAt(jd)
		}
		after, last = sunAt(jd+1), jd
		t.ends[d] = endsOf(before, after)
		t.fillDay(d, latitude)
	}
	return t
}

// fillDay computes the rows of a day.
func (t *Track) fillDay(d int, latitude direction) {
	e := &t.ends[d]
	t.Sunset[d] = sunsetAngle(latitude, e.noon)
	normal := SolarConstant / (e.distance * e.distance)
	from := directionOf(t.hourStart(d, 0))
	half := directionOf((hourTurn + (e.equation[1]-e.equation[0])/24) / 2)
	for h := range 24 {
		i := 24*d + h
		declination := e.declinationIn(h)
		middle := from.turned(half)
		to := middle.turned(half)
		start := t.hourStart(d, h)
		part := lit{start, start + hourTurn, 0}
		switch level := sunsetCosine(latitude, declination); {
		case crosses(from, to, level):
			part = litPart(start, math.Acos(max(-1, min(1, level))))
			middle = directionOf((part.from + part.to) / 2)
		case from.cos > level:
			part.share = 1
		}
		t.Normal[i], t.Share[i] = normal, part.share
		t.SolarTime[i] = 12 + turn((part.from+part.to)/2, -math.Pi)/hourTurn
		t.look(i, latitude, declination, middle)
		from = to
	}
}

// look computes where the sun stands in row i, from latitude, declination and hour angle.
func (t *Track) look(i int, latitude, declination, hour direction) {
	to := sight(latitude, declination, hour)
	t.CosZenith[i], t.north[i], t.east[i] = to.up, to.north, to.east
	if t.Share[i] > 0 {
		t.Altitude[i] = math.Asin(max(-1, min(1, to.up)))
		t.Azimuth[i] = to.azimuth()
	}
}

// ray is the direction to the sun, of length one.
type ray struct{ up, north, east float64 }

// sight gives the direction to the sun (meeus 13.5 and 13.6, as a vector).
func sight(latitude, declination, hour direction) ray {
	return ray{
		up:    latitude.sin*declination.sin + latitude.cos*declination.cos*hour.cos,
		north: latitude.cos*declination.sin - latitude.sin*declination.cos*hour.cos,
		east:  -declination.cos * hour.sin,
	}
}

// azimuth gives the azimuth of the direction, rad from north, east positive, 0 to 2 pi.
func (r ray) azimuth() float64 {
	a := math.Atan2(r.east, r.north)
	if a < 0 {
		a += 2 * math.Pi
	}
	return a
}

// hourStart gives the hour angle at the beginning of a clock hour, -pi to pi.
func (t *Track) hourStart(day, hour int) float64 {
	e := &t.ends[day]
	equation := e.equation[0] + (float64(hour)+0.5)/24*(e.equation[1]-e.equation[0])
	meanSolar := float64(hour) - t.Place.Clock + float64(t.Place.Longitude)/15
	return turn((meanSolar-12)*hourTurn+equation, -math.Pi)
}

// declinationIn gives the declination in the middle of a clock hour. In half a day it moves
// by at most 0.0035 rad, so that two terms of its sine and cosine are good to 1e-9.
func (e *ends) declinationIn(hour int) direction {
	x := (float64(hour) + 0.5 - 12) / 24 * (e.declination[1] - e.declination[0])
	return e.noon.turned(direction{x - x*x*x/6, 1 - x*x/2})
}

// sunsetCosine gives the cosine of the hour angle at which the sun's centre crosses the
// level: over 1 in polar night, under -1 in polar day.
func sunsetCosine(latitude, declination direction) float64 {
	return -latitude.sin * declination.sin / (latitude.cos * declination.cos)
}

// sunsetAngle gives that hour angle: 0 in polar night, pi in polar day.
func sunsetAngle(latitude, declination direction) float64 {
	return math.Acos(max(-1, min(1, sunsetCosine(latitude, declination))))
}

// crosses reports whether the sun passes the level in an hour. It only climbs or only sinks
// within an hour, but for noon and midnight: so its edges tell, and those two are looked at.
func crosses(from, to direction, level float64) bool {
	up := from.cos > level
	noon := from.sin < 0 && to.sin >= 0
	midnight := from.sin >= 0 && to.sin < 0
	return up != (to.cos > level) || noon && !up && level < 1 || midnight && up && level > -1
}

// lit is the part of an hour in which the sun is up, in hour angles.
type lit struct {
	from, to float64 // of its longest piece
	share    float64 // of the hour, all pieces together
}

// litPart gives the lit part of the hour that begins at hour angle w, -pi to pi. An hour
// that holds a short night has two pieces: the sun is looked at in the longer one.
func litPart(w, sunset float64) lit {
	end := w + hourTurn
	one := lit{from: max(w, -sunset), to: min(end, sunset)}
	two := lit{from: max(w, 2*math.Pi-sunset), to: end}
	first, second := max(0, one.to-one.from), max(0, two.to-two.from)
	share := (first + second) / hourTurn
	switch {
	case first+second == 0:
		return lit{w, end, 0}
	case first >= second:
		return lit{one.from, one.to, share}
	}
	return lit{two.from, two.to, share}
}
