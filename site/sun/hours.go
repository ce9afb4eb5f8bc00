package sun

import (
	"math"

	"suffice/quantity"
)

// profile is the shape of a day's light: (a + b cos w)(cos w - cos ws), after
// Collares-Pereira & Rabl, Solar Energy 22 (1979) 155-164.
type profile struct{ a, b float64 }

func profileOf(sunset float64) profile {
	s := math.Sin(sunset - math.Pi/3)
	return profile{0.409 + 0.5016*s, 0.6609 - 0.4767*s} // their eq. for a and b; 60 deg
}

// between gives the integral of the shape from hour angle w1 to w2.
func (p profile) between(w1, w2, cosSunset float64) float64 {
	at := func(w float64) float64 {
		return (p.a-p.b*cosSunset)*math.Sin(w) - p.a*cosSunset*w + p.b*(w/2+math.Sin(2*w)/4)
	}
	return at(w2) - at(w1)
}

// HourlyRatio gives the ratio of an hour's to a day's global light on the horizontal, with
// the hour angle in the middle of the hour (collares-pereira-rabl, as
// duffie-beckman 2.13.1). It is 0 outside the sun's hours. The ratios of the hours of a
// day sum to one only to a few parts in a hundred: DayShares keeps the total exactly.
func HourlyRatio(sunset, hour quantity.Radians) float64 {
	ws, w := float64(sunset), float64(hour)
	if math.Abs(w) >= ws {
		return 0
	}
	p := profileOf(ws)
	return math.Pi / 24 * (p.a + p.b*math.Cos(w)) * (math.Cos(w) - math.Cos(ws)) / (math.Sin(ws) - ws*math.Cos(ws))
}

// DayShares gives what share of a day's global light falls in each of its clock hours,
// after the same source, integrated over each hour's lit part. The shares sum to one, so a
// day's total is kept; all are zero in polar night, when a total belongs to no hour and the
// caller has to say so.
func (t *Track) DayShares(day int) (shares [24]float64) {
	latitude := directionOf(float64(t.Place.Latitude.Radians()))
	var sum float64
	for h := range shares {
		w, ws := t.hourStart(day, h), sunsetAngle(latitude, t.ends[day].declinationIn(h))
		end, cosWs, p := w+hourTurn, math.Cos(ws), profileOf(ws) // of the hour's own day length: at the poles it jumps within a day
		if from, to := max(w, -ws), min(end, ws); to > from {
			shares[h] = p.between(from, to, cosWs)
		}
		if from := max(w, 2*math.Pi-ws); end > from { // past midnight of the sun, into its next day
			shares[h] += p.between(from-2*math.Pi, end-2*math.Pi, cosWs)
		}
		sum += shares[h]
	}
	if sum > 0 {
		for h := range shares {
			shares[h] /= sum
		}
	}
	return shares
}
