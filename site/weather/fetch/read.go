package fetch

import (
	"fmt"
	"io"
	"math"

	"suffice/site/weather"
	"suffice/site/weather/files"
)

// apart is how far, in degrees, the coordinates of an answer may lie from those asked for:
// the question and the header of an answer have four decimals.
const apart = 0.001

// read reads an answer and makes sure that it is what was asked for: the place, the step,
// and the whole year.
func (p Plan) read(name string, from io.Reader, year int) (*weather.Record, error) {
	r, err := files.Read(name, from, files.Options{})
	if err != nil {
		return nil, err
	}
	if r.Step != p.Step || !r.Placed {
		return nil, fmt.Errorf("%s is %s and not the %s values of NASA POWER that were asked for", name, r.Format, p.Step)
	}
	if d := math.Max(math.Abs(float64(r.Place.Latitude-p.Latitude)), math.Abs(float64(r.Place.Longitude-p.Longitude))); d > apart {
		return nil, fmt.Errorf("%s is of latitude %g, longitude %g, asked for were %g, %g", name,
			float64(r.Place.Latitude), float64(r.Place.Longitude), float64(p.Latitude), float64(p.Longitude))
	}
	want := weather.UTC
	rows := weather.DaysIn(year)
	if p.Step == weather.Daily {
		want = weather.SolarHours
	} else {
		rows *= 24
	}
	if r.Time != want {
		return nil, fmt.Errorf("%s follows %s, asked for was %s", name, r.Time, want)
	}
	if r.Start != weather.DayNumber(year, 1, 1) || r.StartHour != 0 || r.Steps != rows {
		return nil, fmt.Errorf("%s begins on %s with %d rows, the year %d has %d", name, dayText(r.Start), r.Steps, year, rows)
	}
	return r, nil
}

func dayText(number int) string {
	d := weather.DayOf(number)
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Date)
}
