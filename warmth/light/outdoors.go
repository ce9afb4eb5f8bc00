package light

import (
	"errors"
	"fmt"

	"suffice/site"
	"suffice/site/sun"
	"suffice/site/weather"
)

// Outdoors is the record, the sun's way and the sky over one house, made ready. It is built
// once; its faces and windows are then asked of it. Not for use from several goroutines.
type Outdoors struct {
	Hours *weather.Hours
	Track *sun.Track
	Sky   *Sky

	options Options
	dome    *sun.Spread // the light as it is spread over the sky, shared by all planes
	planes  map[sun.Plane][]sun.PlaneLight
	keys    []int16 // of each day: the row of the year's table
	samples []int32 // of each key: the day in the record that stands for it, -1 where none
}

// Options says what lies round the house and how the sky is reckoned. Albedo is of
// the ground, 0 to 1; the zero Options is a flat skyline, black ground, sun.Perez and BerdahlMartin.
type Options struct {
	Albedo  float64
	Horizon site.Horizon
	Spread  sun.Model
	Sky     SkyModel
}

// NewOutdoors makes a record ready. The track has to be of the same days.
func NewOutdoors(h *weather.Hours, t *sun.Track, o Options) (*Outdoors, error) {
	var faults []error
	if h.Global == nil || h.Beam == nil || h.Diffuse == nil {
		faults = append(faults, errors.New("light: the record has no light: choose one with global light"))
	}
	if t.Hours() != 24*len(h.Days) {
		faults = append(faults, fmt.Errorf("light: the sun's way has %d hours, the record %d: make both of the same days", t.Hours(), 24*len(h.Days)))
	}
	if !(o.Albedo >= 0 && o.Albedo <= 1) {
		faults = append(faults, fmt.Errorf("light: an albedo of %g is out of range: 0 to 1", o.Albedo))
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	sky, err := NewSky(h, t, o.Sky)
	if err != nil {
		return nil, err
	}
	out := &Outdoors{Hours: h, Track: t, Sky: sky, options: o, dome: t.Spread(o.Spread, h.Diffuse, h.Beam), planes: make(map[sun.Plane][]sun.PlaneLight)}
	out.sample()
	return out, nil
}

// Light gives the light on a plane for every hour. The slice is shared: read only.
func (o *Outdoors) Light(p sun.Plane) []sun.PlaneLight {
	light, known := o.planes[p]
	if !known {
		light = sun.NewFace(p, o.options.Albedo, o.options.Spread, o.options.Horizon).Under(nil, o.dome)
		o.planes[p] = light
	}
	return light
}

// Forget lets go of the light on planes, once all faces and windows are made.
func (o *Outdoors) Forget() { clear(o.planes) }

// Days and hours of a year's table: 29 February has its own row.
const (
	yearDays = 366
	dayHours = 24
)

// sample finds for each day of the year the first such day of the record, whose sun stands
// for that of all years: from year to year the same clock hour differs by at most a quarter
// of a day's change of declination, 0.1 deg.
func (o *Outdoors) sample() {
	o.keys = make([]int16, len(o.Hours.Days))
	o.samples = make([]int32, yearDays)
	for i := range o.samples {
		o.samples[i] = -1
	}
	for i, d := range o.Hours.Days {
		key := weather.Day{Year: 2000, Month: d.Month, Date: d.Date}.Number() - weather.DayNumber(2000, 1, 1)
		o.keys[i] = int16(key)
		if o.samples[key] < 0 {
			o.samples[key] = int32(i)
		}
	}
}

// row gives the row of a year's table for an hour of the record.
func (o *Outdoors) row(hour int) int { return int(o.keys[hour/dayHours])*dayHours + hour%dayHours }

// sum adds up a column of hours in W/m2, kWh/m2.
func sum(hourly []float64) (total float64) {
	for _, v := range hourly {
		total += v / 1000
	}
	return total
}
