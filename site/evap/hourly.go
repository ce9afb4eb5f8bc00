package evap

import "suffice/quantity"

// An Hour is the weather of an hour.
type Hour struct {
	Latitude, Longitude quantity.Degrees // north and east positive
	Zone                float64          // hours ahead of UTC of the clock that At is read on
	DayOfYear           int
	At                  float64 // h, the middle of the hour on the clock: 14.5 for 14 to 15 h
	Altitude            quantity.Metres
	Temperature         quantity.Celsius
	Humidity            float64         // percent
	Wind                float64         // m/s
	WindHeight          quantity.Metres // 0 means 2 m
	Radiation           float64         // MJ/m2 on the horizontal in the hour
	// Cloudiness is Rs/Rso for the night: the last value before sunset (fao56 p. 75: from
	// 2 to 3 h before). 0 means it was not handed on, and takes 0.8, the source's value for
	// dry and 0.4 to 0.6 for damp climates' nights.
	Cloudiness float64
}

// HourOut is the evaporation of an hour with all that led to it. Light and heat are MJ/m2
// in the hour, pressures kPa, unless said.
type HourOut struct {
	Wind, Pressure, Gamma, Slope, Es, Ea float64

	Distance     float64
	Declination  quantity.Radians
	SeasonShift  float64 // h, the source's equation of time
	HourAngle    quantity.Radians
	Sunset       quantity.Radians
	Ra, Rso      float64
	Relative     float64 // Rs/Rso used
	Rns, Rnl, Rn float64
	SoilHeat     float64

	ByLight, ByAir float64 // mm
	ETo            quantity.Millimetres
	Assumed        []string
}
