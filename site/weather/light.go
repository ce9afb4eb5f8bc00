package weather

import (
	"math"

	"suffice/quantity"
	"suffice/site/sun"
)

// Coefficients of FAO-56 eq. 50, for places where land masses rule the air, and for
// coasts, 1/sqrt(K).
const (
	interior = 0.16
	coast    = 0.19
)

// warmthLight estimates a day's global light, kWh/m2, from its range of temperature
// (fao56 eq. 50), not above a clear sky's (eq. 37). cut is what that limit took off.
func warmthLight(out sun.Outside, altitude quantity.Metres, rangeOf, kRs float64) (light, cut float64) {
	Rs := kRs * math.Sqrt(max(0, rangeOf)) * out.Ra // eq. 50, MJ/m2
	Rso := (0.75 + 2e-5*float64(altitude)) * out.Ra // eq. 37
	return min(Rs, Rso) / 3.6, max(0, Rs-Rso) / 3.6
}

// rangeOfLight turns eq. 50 round: the range of temperature, K, that goes with a day's
// light, kWh/m2.
func rangeOfLight(out sun.Outside, light, kRs float64) float64 {
	if out.Ra <= 0 {
		return 0
	}
	root := light * 3.6 / (kRs * out.Ra)
	return root * root
}

// diffuseDay makes a day's hours of diffuse light, W/m2, keep the recorded total,
// kWh/m2. The fractions that a splitting model gave are raised to one power f^p, which
// leaves dark hours all diffuse and no hour above its global light. over is what the record
// has more than global, which no hour can hold.
func diffuseDay(global, modelled []float64, diffuse float64) (hours [24]float64, over float64) {
	var all float64
	var logs [24]float64 // of the fractions
	for h, g := range global {
		all += g
		if g > 0 {
			logs[h] = math.Log(max(1e-6, min(1, modelled[h]/g)))
		}
	}
	want := 1000 * diffuse
	if want >= all {
		copy(hours[:], global)
		return hours, (want - all) / 1000
	}
	sum := func(p float64) (total float64) {
		for h, g := range global {
			hours[h] = g * math.Exp(p*logs[h])
			total += hours[h]
		}
		return total
	}
	low, high := 0.0, 1.0 // powers that give too much and too little
	for sum(high) > want && high < 1e6 {
		low, high = high, 2*high
	}
	for range 60 {
		if p := (low + high) / 2; sum(p) > want {
			low = p
		} else {
			high = p
		}
		if high-low < 1e-12*high {
			break
		}
	}
	if total := sum(high); total > 0 { // what the halving left, a part in 1e12
		for h := range hours {
			hours[h] *= want / total
		}
	}
	return hours, 0
}

// beamFrom gives the beam, W/m2 facing the sun, that is left of global light beside its
// diffuse part, and what of it is more than ever reaches the ground: that goes to the
// diffuse part (long-shi, "extremely rare" limit: 0.95 Sa mu0^0.2 + 10 W/m2).
func beamFrom(global, diffuse float64, at sun.Moment) (beam, moved float64) {
	horizontal := max(0, global-diffuse)
	if at.Share <= 0 || at.CosZenith <= 0 {
		return 0, horizontal
	}
	limit := at.Share * (0.95*float64(at.Normal)*math.Pow(at.CosZenith, 0.2) + 10)
	if horizontal <= limit*at.CosZenith {
		return horizontal / at.CosZenith, 0
	}
	return limit, horizontal - limit*at.CosZenith
}
