package sun

import (
	"math"

	"suffice/quantity"
)

// fluxFAO is the solar constant of fao56, MJ/m2 in a minute (1366.7 W/m2).
const fluxFAO = 0.0820

// Outside is what reaches the top of the air over a place on a day, by the short series
// of FAO-56 (chapter 3, eq. 21 to 25 and 34).
type Outside struct {
	Distance    float64          // inverse relative distance earth to sun
	Declination quantity.Radians // north positive
	Sunset      quantity.Radians // hour angle: 0 polar night, pi polar day
	Ra          float64          // MJ/m2 on the horizontal in the day
	DayLength   float64          // h
}

// OutsideDay gives the light outside the air on a day of the year, 1 to 366.
func OutsideDay(latitude quantity.Degrees, dayOfYear int) Outside {
	J := float64(dayOfYear)
	phi := float64(latitude.Radians())
	dr := 1 + 0.033*math.Cos(2*math.Pi*J/365)               // eq. 23
	delta := 0.409 * math.Sin(2*math.Pi*J/365-1.39)         // eq. 24
	ws := sunsetAngle(directionOf(phi), directionOf(delta)) // eq. 25
	Ra := 24 * 60 / math.Pi * fluxFAO * dr * (ws*math.Sin(phi)*math.Sin(delta) +
		math.Cos(phi)*math.Cos(delta)*math.Sin(ws)) // eq. 21
	return Outside{dr, quantity.Radians(delta), quantity.Radians(ws), Ra, 24 / math.Pi * ws}
}

// OutsideOfHour is what reaches the top of the air in an hour, by the same series.
type OutsideOfHour struct {
	Distance    float64
	Declination quantity.Radians
	Sunset      quantity.Radians
	SeasonShift float64          // h, apparent minus mean solar time (eq. 32)
	HourAngle   quantity.Radians // at the middle of the hour, -pi to pi
	Ra          float64          // MJ/m2 on the horizontal in the hour
}

// OutsideHour gives the light outside the air in the hour whose middle is at hours of a
// clock that is zone hours ahead of UTC (eq. 28 to 33). Where the sun rises or sets in
// the hour only the part with sun is counted.
func OutsideHour(latitude, longitude quantity.Degrees, zone float64, dayOfYear int, at float64) OutsideOfHour {
	day := OutsideDay(latitude, dayOfYear)
	shift := seasonShift(dayOfYear)
	start := turn(hourTurn*(at-0.5+float64(longitude)/15-zone+shift-12), -math.Pi) // eq. 29 and 31
	sinPart := math.Sin(float64(latitude.Radians())) * math.Sin(float64(day.Declination))
	cosPart := math.Cos(float64(latitude.Radians())) * math.Cos(float64(day.Declination))
	ws := float64(day.Sunset)
	light := func(from, to float64) float64 {
		if to <= from {
			return 0
		}
		return 12 * 60 / math.Pi * fluxFAO * day.Distance * ((to-from)*sinPart + cosPart*(math.Sin(to)-math.Sin(from))) // eq. 28
	}
	end := start + hourTurn
	Ra := light(max(start, -ws), min(end, ws)) + light(max(start, 2*math.Pi-ws), end)
	return OutsideOfHour{day.Distance, day.Declination, day.Sunset, shift, quantity.Radians(turn(start+hourTurn/2, -math.Pi)), Ra}
}

// seasonShift gives the source's equation of time, h, apparent minus mean solar time.
func seasonShift(dayOfYear int) float64 {
	b := 2 * math.Pi * (float64(dayOfYear) - 81) / 364                   // eq. 33
	return 0.1645*math.Sin(2*b) - 0.1255*math.Cos(b) - 0.025*math.Sin(b) // eq. 32
}
