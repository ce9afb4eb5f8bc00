package sun

import (
	"suffice/quantity"
	"suffice/site"
)

// A Date is a day of the calendar.
type Date struct {
	Year  int32
	Month int8 // 1 to 12
	Date  int8 // 1 to 31
}

// A Track is the sun's way over a place, hour by hour, for a run of days that need not
// follow each other. Row i is clock hour i%24 of day i/24. The position is that of the
// middle of the hour, or of the middle of the part in which the sun's centre is above
// the level. Every slice has 24 rows a day.
type Track struct {
	Place     site.Place
	CosZenith []float64 // cosine of the zenith angle, negative while the sun is down
	Altitude  []float64 // rad above the level, without refraction; 0 while the sun is down
	Azimuth   []float64 // rad from north, east positive, 0 to 2 pi; 0 while the sun is down
	Normal    []float64 // W/m2 outside the air, facing the sun
	Share     []float64 // part of the hour in which the sun is up, 0 to 1
	SolarTime []float64 // h, apparent solar time of the position, 0 to 24
	Sunset    []float64 // rad, hour angle of sunset, one for each day: 0 polar night, pi polar day

	north, east []float64 // the sun's direction beside CosZenith, which is its upward part
	ends        []ends
}

// A Moment is where the sun stands for one hour or instant.
type Moment struct {
	CosZenith float64             // cosine of the zenith angle
	Azimuth   quantity.Radians    // from north, east positive
	Normal    quantity.Irradiance // outside the air, facing the sun
	Share     float64             // part of the hour with the sun up; 1 for an instant
}

// Hours gives the number of rows.
func (t *Track) Hours() int { return len(t.CosZenith) }

// At gives row i.
func (t *Track) At(i int) Moment {
	return Moment{t.CosZenith[i], quantity.Radians(t.Azimuth[i]), quantity.Irradiance(t.Normal[i]), t.Share[i]}
}
