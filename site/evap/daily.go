// Package evap gives reference evaporation: the water that a wide, short, well-watered
// lawn gives to the air.
//
// Checked against: every numbered example of FAO-56 from 8 to 19, to the printed digits.
//
// Left out: crops, soil and shade (they multiply this figure elsewhere), and everything
// under a roof. Indoors and under glass the light, the wind (at most 0.5 m/s) and the
// humidity are the room's own, and the figures of a weather station do not apply.
package evap

import "suffice/quantity"

// A Day is what is known of a day's weather. A pointer that is nil was not measured.
type Day struct {
	Latitude  quantity.Degrees
	DayOfYear int // 1 to 366
	Altitude  quantity.Metres
	Warmest   quantity.Celsius // highest air temperature of the day
	Coolest   quantity.Celsius // lowest

	// Humidity: the first that is there is used, in this order; with none, the dew point is
	// taken as the lowest temperature (fao56 eq. 48).
	Vapour              *float64          // kPa, mean of the day
	DewPoint            *quantity.Celsius // mean of the day
	DampMost, DampLeast *float64          // relative humidity, percent; most alone serves, with less truth
	DampMean            *float64          // percent, mean of the day

	Wind       *float64        // m/s, mean of the day; nil takes 2 m/s, the world's mean (fao56 p. 63)
	WindHeight quantity.Metres // of the instrument; 0 means 2 m

	// Light: the first that is there is used; with none, it is estimated from the range of
	// temperature with KRs (fao56 eq. 50).
	Radiation *float64 // MJ/m2 on the horizontal in the day
	Sunshine  *float64 // h of bright sun
	KRs       float64  // 1/sqrt(K): 0.16 inland, 0.19 at the coast; 0 means 0.16

	SoilHeat float64 // MJ/m2 into the soil in the day; 0 for single days (fao56 eq. 42)
}

// DayOut is the evaporation of a day with all that led to it. Light and heat are MJ/m2 in
// the day, pressures kPa, unless said.
type DayOut struct {
	Mean     float64 // degC, half the sum of highest and lowest
	Wind     float64 // m/s at 2 m
	Pressure float64
	Gamma    float64 // kPa/K, psychrometric constant
	Slope    float64 // kPa/K, of saturation
	Es, Ea   float64 // saturation and actual vapour pressure

	Distance    float64          // inverse relative distance of the sun
	Declination quantity.Radians //
	Sunset      quantity.Radians // hour angle
	DayLength   float64          // h
	Ra          float64          // outside the air
	Rs          float64          // on the ground
	Rso         float64          // on the ground under a clear sky
	Relative    float64          // Rs/Rso as the long-wave loss takes it, at most 1
	Rns, Rnl    float64          // net short-wave in, net long-wave out
	Rn          float64          // net of both
	SoilHeat    float64

	ByLight float64              // mm, the part driven by light
	ByAir   float64              // mm, the part driven by dry wind
	ETo     quantity.Millimetres // in the day, their sum

	Assumed []string // what was not measured and how it was filled
}
