// Package weather keeps the record: what an instrument or a reanalysis wrote down
// about the sky, its gaps, and the complete hours made from it. It is the only
// place that counts hours, days and years.
package weather

import "suffice/site"

// A Day is one day of the calendar that a run of hours is counted on.
type Day struct {
	Year      int32
	Month     int8  // 1 to 12
	Date      int8  // 1 to 31
	DayOfYear int16 // 1 to 366
	Weekday   int8  // 0 is Sunday
}

// Hours is a whole number of days of weather without gaps. Hour i covers the clock
// hour i%24 of Days[i/24], from its beginning to its end, in the standard time of
// Place.Clock. Every slice is 24*len(Days) long, or nil where the record could not tell.
type Hours struct {
	Place       site.Place
	Days        []Day
	Global      []float64 // W/m2 on the horizontal, mean of the hour
	Diffuse     []float64 // W/m2 on the horizontal
	Beam        []float64 // W/m2 on a plane facing the sun
	Temperature []float64 // degC
	Humidity    []float64 // percent; nil where the record has none
	Wind        []float64 // m/s at 10 m; nil where the record has none
	Rain        []float64 // mm in the hour, snow as water
	Notes       []string  // what was made, filled or assumed, for the reader of a verdict
}
