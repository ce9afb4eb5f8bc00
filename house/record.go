package house

import (
	"errors"
	"fmt"
	"math"

	"suffice/site"
	"suffice/site/weather"
	"suffice/site/weather/files"
)

// Hours opens the record, puts the gauge's rain in where one is named, and makes whole
// hours without gaps on the clock of the place. The text names what was opened.
func (r *Record) Hours(at site.Place) (*weather.Hours, weather.Report, string, error) {
	sky, name, err := r.sky()
	if err != nil {
		return nil, weather.Report{}, "", err
	}
	if r.Sun && sky.Placed {
		if err := otherSun(name, sky.Place, at); err != nil {
			return nil, weather.Report{}, "", err
		}
	}
	o := weather.Options{Place: &at, OnlyMatched: r.Matched, Coast: r.Coast}
	if r.Rain == "" {
		hours, done, err := weather.Complete(sky, o)
		return hours, done, name, err
	}
	gauge, err := files.Open(r.Rain, r.RainReading)
	if err != nil {
		return nil, weather.Report{}, "", err
	}
	hours, done, err := weather.Combine(sky, gauge, o)
	return hours, done, fmt.Sprintf("%s, with the rain of %s", name, r.Rain), err
}

// A record whose sun stands elsewhere gives light at the wrong hours: one hour of longitude, or
// ten degrees of latitude (an hour of daylight at midsummer in the middle latitudes), is more
// than panels or a collector can be judged by. This program's choice.
const mostLongitude, mostLatitude = 15, 10

// otherSun refuses the light of a place under another sun.
func otherSun(name string, record, house site.Place) error {
	east := math.Abs(math.Remainder(float64(record.Longitude-house.Longitude), 360))
	north := math.Abs(float64(record.Latitude - house.Latitude))
	if east <= mostLongitude && north <= mostLatitude {
		return nil
	}
	return fmt.Errorf("%s is of latitude %.2f, longitude %.2f, and the house stands at %.2f, %.2f: its light falls at other hours and angles; name a record of the place (within %d degrees of longitude and %d of latitude), or change site",
		name, record.Latitude, record.Longitude, house.Latitude, house.Longitude, mostLongitude, mostLatitude)
}

func (r *Record) sky() (*weather.Record, string, error) {
	switch {
	case r.Path != "":
		sky, err := files.Open(r.Path, r.Reading)
		return sky, r.Path, err
	case r.BuiltIn == "crete":
		sky, err := files.Demo()
		return sky, "built in: Crete, 35.03 N 24.83 E, daily, NASA POWER (rain is reanalysis, not a gauge)", err
	case r.BuiltIn != "":
		return nil, "", fmt.Errorf("weather.built_in: there is no record %q: it is crete", r.BuiltIn)
	}
	return nil, "", errors.New("the house file names no weather: write weather: {record: FILE}, or give --weather FILE")
}
