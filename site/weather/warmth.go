package weather

import (
	"math"

	"suffice/site/sun"
)

// Coefficients of Parton & Logan (1981) for air at 1.5 m, fitted at Denver, as later
// authors list them: hours that the maximum lags behind noon, the decay of the night,
// and hours that the minimum lags behind sunrise.
const (
	lagOfMaximum = 1.86
	decayOfNight = 2.20
	lagOfMinimum = -0.17
)

// shortestDay bounds the day length, h, that the curve is drawn with: beyond the polar
// circles it would lose one of its two parts.
const shortestDay = 2.0

// A sunDay is the part of a day that the course of temperature follows, in clock hours.
type sunDay struct{ noon, length float64 }

// sunDayOf reads noon and the length of the day off a track.
func sunDayOf(t *sun.Track, day int) sunDay {
	d := sunDay{noon: 12, length: 24 / math.Pi * t.Sunset[day]}
	d.length = max(shortestDay, min(24-shortestDay, d.length))
	for h := range 24 {
		if i := 24*day + (h+12)%24; t.Share[i] == 0 || t.Share[i] == 1 { // the position is the middle hour's
			d.noon = math.Mod(float64((h+12)%24)+0.5-(t.SolarTime[i]-12)+48, 24)
			break
		}
	}
	return d
}

// extremes are a day's lowest and highest temperature, degC, and its mean, NaN if unknown.
type extremes struct{ low, high, mean float64 }

// warmth makes a day's 24 hourly temperatures from its extremes: a sine from the minimum
// near sunrise through the maximum after noon to sunset, then a decay towards the next
// minimum (parton-logan), here bent so that it reaches it. The hours in
// which the curve turns get the extremes themselves, and no hour passes them. A mean, where
// known, is kept by bending the curve between the extremes, which stay; kept tells
// whether it could be.
func warmth(before, today, after extremes, yesterday, now sunDay) (hours [24]float64, kept bool) {
	eve := sunsetWarmth(before, yesterday)
	dusk := sunsetWarmth(today, now)
	rise := now.noon - now.length/2 + lagOfMinimum
	set := now.noon + now.length/2
	peak := now.noon + lagOfMaximum + lagOfMinimum
	for h := range hours {
		t := float64(h) + 0.5
		var T float64
		switch {
		case t < rise:
			T = night(today.low, eve, t+24-(yesterday.noon+yesterday.length/2), 24-yesterday.length+lagOfMinimum)
		case t <= set:
			T = today.low + (today.high-today.low)*math.Sin(math.Pi*(t-rise)/(now.length+2*lagOfMaximum))
		default:
			T = night(after.low, dusk, t-set, 24-now.length+lagOfMinimum)
		}
		hours[h] = max(today.low, min(today.high, T))
	}
	hours[hourOf(rise)], hours[hourOf(peak)] = today.low, today.high
	return hours, bend(&hours, today)
}

func hourOf(t float64) int { return int(max(0, min(23, math.Floor(t)))) }

// sunsetWarmth gives the temperature of the day curve at sunset.
func sunsetWarmth(e extremes, d sunDay) float64 {
	return e.low + (e.high-e.low)*math.Sin(math.Pi*(d.length-lagOfMinimum)/(d.length+2*lagOfMaximum))
}

// night gives the temperature n hours after sunset in a night of Z hours. The published
// curve ends exp(-2.2), a ninth of the way, short of the minimum; this one reaches it.
func night(low, sunset, n, Z float64) float64 {
	end := math.Exp(-decayOfNight)
	x := (math.Exp(-decayOfNight*min(1, n/Z)) - end) / (1 - end)
	return low + (sunset-low)*x
}

// bend moves the hours between the extremes so that their mean is the stated one, and
// reports whether it is. With s from 0 to 1 between the extremes, s becomes s + a s(1-s),
// which keeps both ends and the order; where one bend does not reach, another follows.
func bend(hours *[24]float64, e extremes) bool {
	if math.IsNaN(e.mean) {
		return true
	}
	span := e.high - e.low
	if !(span > 0) {
		return math.Abs(e.mean-e.low) < 0.005
	}
	want := (e.mean - e.low) / span
	for range 24 {
		var mean, room float64
		for _, T := range hours {
			s := (T - e.low) / span
			mean, room = mean+s/24, room+s*(1-s)/24
		}
		if math.Abs(want-mean) < 1e-9 {
			return true
		}
		if room < 1e-9 {
			return false
		}
		a := max(-1, min(1, (want-mean)/room))
		for h, T := range hours {
			s := (T - e.low) / span
			if s > 0 && s < 1 {
				hours[h] = e.low + span*(s+a*s*(1-s))
			}
		}
	}
	return false
}
