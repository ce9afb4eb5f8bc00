package sun

import (
	"math"

	"suffice/site"
)

// SolarConstant is the irradiance at one astronomical unit, W/m2: 1367 of the World
// Meteorological Organization (1981), which the splitting and plane models here were
// fitted with. The newer 1361 (Kopp & Lean 2011) would lower clearness by 0.4 percent.
const SolarConstant = 1367

// ends is the sun at both midnights of a clock day; between them it moves evenly.
type ends struct {
	declination [2]float64
	equation    [2]float64
	distance    float64
}

// lit is the part of one hour in which the sun is up, in hour angles.
type lit struct {
	from, to float64 // of its longest piece
	share    float64
}

const hourTurn = math.Pi / 12 // what the sun turns in an hour

func newTrack(p site.Place, days []Date) *Track {
	n := 24 * len(days)
	all := make([]float64, 6*n+len(days))
	column := func() []float64 { c := all[:n:n]; all = all[n:]; return c }
	t := &Track{Place: p, CosZenith: column(), Altitude: column(), Azimuth: column(),
		Normal: column(), Share: column(), SolarTime: column(), Sunset: all, ends: make([]ends, len(days))}
	sinLat, cosLat := math.Sincos(float64(p.Latitude) * degree)
	tanLat := sinLat / cosLat
	var last float64
	var after apparent
	for d, date := range days {
		jd := dateJulian(date) - p.Clock/24
		before := after
		if jd != last+1 {
			before = sunAt(jd)
		}
		after, last = sunAt(jd+1), jd
		e := &t.ends[d]
		*e = ends{[2]float64{before.declination, after.declination},
			[2]float64{before.equation, before.equation + turn(after.equation-before.equation, -math.Pi)},
			(before.distance + after.distance) / 2}
		t.Sunset[d] = sunsetAngle(tanLat, (before.declination+after.declination)/2)
		normal := SolarConstant / (e.distance * e.distance)
		for h := range 24 {
			i := 24*d + h
			start, declination := t.hourStart(d, h)
			up := litPart(start, sunsetAngle(tanLat, declination))
			w := (up.from + up.to) / 2
			sinDec, cosDec := math.Sincos(declination)
			sinW, cosW := math.Sincos(w)
			cosZ := sinLat*sinDec + cosLat*cosDec*cosW
			t.CosZenith[i], t.Normal[i], t.Share[i] = cosZ, normal, up.share
			t.Altitude[i] = math.Asin(max(-1, min(1, cosZ)))
			t.Azimuth[i] = turn(math.Atan2(-cosDec*sinW, cosLat*sinDec-sinLat*cosDec*cosW), 0)
			t.SolarTime[i] = 12 + turn(w, -math.Pi)/hourTurn
		}
	}
	return t
}

// hourStart gives the hour angle at the beginning of a clock hour, -pi to pi, and the
// declination in its middle.
func (t *Track) hourStart(day, hour int) (w, declination float64) {
	e := &t.ends[day]
	f := (float64(hour) + 0.5) / 24
	equation := e.equation[0] + f*(e.equation[1]-e.equation[0])
	meanSolar := float64(hour) - t.Place.Clock + float64(t.Place.Longitude)/15
	return turn((meanSolar-12)*hourTurn+equation, -math.Pi), e.declination[0] + f*(e.declination[1]-e.declination[0])
}

// sunsetAngle gives the hour angle at which the sun's centre crosses the level: 0 in polar
// night, pi in polar day.
func sunsetAngle(tanLat, declination float64) float64 {
	return math.Acos(max(-1, min(1, -tanLat*math.Tan(declination))))
}

// litPart gives the part of the hour from hour angle w, -pi to pi, in which the sun is
// above the level. An hour that holds a short polar night has two pieces: their sum is
// the share, the longer one is where the sun is looked at.
func litPart(w, sunset float64) lit {
	end := w + hourTurn
	first := lit{from: max(w, -sunset), to: min(end, sunset)}
	second := lit{from: max(w, 2*math.Pi-sunset), to: end}
	one, two := max(0, first.to-first.from), max(0, second.to-second.from)
	share := (one + two) / hourTurn
	switch {
	case share <= 0 || share > 1-1e-12:
		return lit{from: w, to: end, share: math.Round(share)}
	case one >= two:
		first.share = share
		return first
	}
	second.share = share
	return second
}
