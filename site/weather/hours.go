// Package weather keeps the record: what an instrument or a reanalysis wrote down
// about the sky, its gaps, and the complete hours made from it. It is the only
// place that counts hours, days and years.
//
// Checked against: examples 14 and 15 of FAO-56, the coefficients of Parton & Logan (1981),
// the calendar of the standard library; and, in files, the yearly sums, gaps and ranges of
// 22 real records, light made from temperature beside recorded light at six places, and
// drawn temperatures beside recorded ones at three; spells, runs and frost by other counts of
// drawn days, and the jump of the Nile's flow.
//
// Left out: correction of a record for the distance and height between it and the house;
// the mending of jumps that a moved gauge or a changed product leaves in the yearly sums (they
// are looked for and told); jumps within a trend, which both show as one; the link of rain and cloud where rain and sky are of different
// years; summer time (a record that keeps it is warned of, not mended); sunshine hours,
// which some gauges record and which would make a better sky than temperature does.
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
	Humidity    []float64 // percent, at most 100; made from the dew point or the lowest temperature where it is not recorded
	Wind        []float64 // m/s at 10 m
	Rain        []float64 // mm in the hour, snow as water
	Notes       []string  // what was made, filled or assumed, for the reader of a verdict
}
