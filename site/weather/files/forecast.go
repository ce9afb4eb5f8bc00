package files

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"suffice/quantity"
	"suffice/site/weather"
)

// A forecast is what MET Norway gives for a point (met-norway): moments, each with the state
// of the air, and the rain of the hours that follow.
type forecast struct {
	Meta struct {
		Updated string            `json:"updated_at"`
		Units   map[string]string `json:"units"`
	} `json:"meta"`
	Timeseries json.RawMessage `json:"timeseries"` // read once its length is known
	moments    []moment
}

// mostForecast is the most that a forecast's moments may hold; ten days have 80 kB.
const mostForecast = 4 << 20

// read reads the moments.
func (f *forecast) read(s *source) error {
	if len(f.Timeseries) > mostForecast {
		return s.at("the forecast has more than %d MB: this is no forecast of one point", mostForecast>>20)
	}
	if err := json.Unmarshal(f.Timeseries, &f.moments); err != nil {
		return s.at("the forecast's moments cannot be read: %w", err)
	}
	if len(f.moments) == 0 {
		return s.at("the forecast has no moment in it")
	}
	return nil
}

type moment struct {
	Time string `json:"time"`
	Data struct {
		Instant struct {
			Details map[string]float64 `json:"details"`
		} `json:"instant"`
		NextHour *ahead `json:"next_1_hours"`
		NextSix  *ahead `json:"next_6_hours"`
	} `json:"data"`
}

type ahead struct {
	Details struct {
		Rain *float64 `json:"precipitation_amount"`
	} `json:"details"`
}

// forecastColumns are the states that are read. The pressure is that at sea level and is left.
var forecastColumns = []struct {
	name   string
	column weather.Column
}{
	{"air_temperature", weather.Temperature},
	{"dew_point_temperature", weather.DewPoint},
	{"relative_humidity", weather.Humidity},
	{"wind_speed", weather.Wind},
	{"wind_from_direction", weather.WindDirection},
	{"cloud_area_fraction", weather.Cloud},
}

// mostAhead is how many days a forecast may reach; the service gives ten.
const mostAhead = 60

const forecastRain = "precipitation_amount"

// record lays a forecast on an axis of hours in UTC. An hour has the state of the moment at
// its beginning; where moments are six hours apart the five hours between them are missing,
// and their rain is spread evenly over the six.
func (f *forecast) record(s *source, o Options, at []float64) (*weather.Record, error) {
	r := &weather.Record{File: s.name, Format: "MET Norway forecast", Step: weather.Hourly, Time: weather.UTC}
	if len(at) < 2 {
		return nil, s.at("the forecast does not say where it is: geometry.coordinates is missing")
	}
	if err := f.read(s); err != nil {
		return nil, err
	}
	r.Placed = true
	r.Place.Name = o.Name
	r.Place.Longitude, r.Place.Latitude = quantity.Degrees(at[0]), quantity.Degrees(at[1])
	if len(at) > 2 {
		r.Place.Altitude = quantity.Metres(at[2])
	}
	hours, err := f.hours(s)
	if err := errors.Join(err, r.Place.Faults()); err != nil {
		return nil, err
	}
	first, last := hours[0], hours[len(hours)-1]
	r.Start, r.StartHour, r.Steps = first/24, first%24, last-first+1
	for _, c := range forecastColumns {
		if err := f.states(s, r, hours, c.name, c.column); err != nil {
			return nil, err
		}
	}
	end, err := f.rain(s, r, hours)
	if err != nil {
		return nil, err
	}
	if len(r.Series) == 0 {
		return nil, s.at("the forecast has no state of the air and no rain in it")
	}
	f.say(r, hours, end)
	return r, nil
}

// hours reads the moments' times, as hours from the calendar's beginning.
func (f *forecast) hours(s *source) ([]int, error) {
	var hours []int
	for i, m := range f.moments {
		t, err := time.Parse(time.RFC3339, m.Time)
		if err != nil || t.Minute() != 0 || t.Second() != 0 || t.Nanosecond() != 0 {
			return nil, s.at("time %q of moment %d is no whole hour as 2020-07-20T11:00:00Z", clip(m.Time), i+1)
		}
		t = t.UTC()
		if t.Year() < 1900 || t.Year() > 2400 {
			return nil, s.at("time %q of moment %d: the years run from 1900 to 2400", clip(m.Time), i+1)
		}
		h := weather.DayNumber(t.Year(), int(t.Month()), t.Day())*24 + t.Hour()
		switch {
		case i > 0 && h <= hours[i-1]:
			return nil, s.at("the moments are not in the order of time: %s", clip(m.Time))
		case i > 0 && h-hours[0] > mostAhead*24:
			return nil, s.at("the forecast reaches more than %d days ahead: look at %s", mostAhead, clip(m.Time))
		}
		hours = append(hours, h)
	}
	return hours, nil
}

// blank gives a column without values.
func blank(c weather.Column, source, unit string, steps int) weather.Series {
	return weather.Series{Column: c, Source: source, Unit: unit,
		Values: slices.Repeat([]float64{math.NaN()}, steps), Marks: slices.Repeat([]weather.Mark{weather.Absent}, steps)}
}

// states reads one kind of state.
func (f *forecast) states(s *source, r *weather.Record, hours []int, name string, c weather.Column) error {
	has := func(m moment) bool { _, ok := m.Data.Instant.Details[name]; return ok }
	if !slices.ContainsFunc(f.moments, has) {
		return nil
	}
	unit := f.Meta.Units[name]
	sc, ok := scaleOf(c, weather.Hourly, unit)
	if !ok {
		return s.at("%s: %w", name, badUnit(unit, c, weather.Hourly, name))
	}
	out := blank(c, name, unit, r.Steps)
	for i, m := range f.moments {
		if v, ok := m.Data.Instant.Details[name]; ok {
			out.Values[hours[i]-hours[0]], out.Marks[hours[i]-hours[0]] = v*sc.factor+sc.offset, weather.Recorded
		}
	}
	r.Series = append(r.Series, out)
	return nil
}

// rain reads what falls: in the hour after a moment where that is told, else in the six, of
// which only those count that no other moment tells of. It gives the moment at which the
// hourly part ends, -1 if there is none.
func (f *forecast) rain(s *source, r *weather.Record, hours []int) (end int, err error) {
	unit := f.Meta.Units[forecastRain]
	out := blank(weather.Rain, forecastRain, unit, r.Steps)
	have := false
	end = -1
	for i, m := range f.moments {
		row := hours[i] - hours[0]
		switch one, six := m.Data.NextHour.rain(), m.Data.NextSix.rain(); {
		case one != nil:
			out.Values[row], out.Marks[row], have, end = *one, weather.Recorded, true, i
		case six != nil && (i+1 == len(hours) || hours[i+1]-hours[i] >= 6):
			for k := row; k < min(row+6, r.Steps); k++ {
				out.Values[k], out.Marks[k], have = *six/6, weather.Accumulated, true
			}
		}
	}
	if !have {
		return end, nil
	}
	if unit != "mm" {
		return end, s.at("%s: %w", forecastRain, badUnit(unit, weather.Rain, weather.Hourly, forecastRain))
	}
	r.Series = append(r.Series, out)
	return end, nil
}

func (a *ahead) rain() *float64 {
	if a == nil {
		return nil
	}
	return a.Details.Rain
}

func (f *forecast) say(r *weather.Record, hours []int, end int) {
	when := func(h int) string { return fmt.Sprintf("%sT%02d:00Z", dateText(h/24), h%24) }
	r.Notes = append(r.Notes, "Data from MET Norway (CC BY 4.0)", fmt.Sprintf("a forecast, issued %s, and no record of what was", clip(f.Meta.Updated)))
	if end >= 0 {
		r.Notes = append(r.Notes, fmt.Sprintf("hourly until %s", when(hours[end]+1)))
	}
	if last := len(hours) - 1; end < last {
		r.Notes = append(r.Notes, fmt.Sprintf("every 6 hours until %s: the air is known at those hours only, rain is spread evenly over the six", when(hours[last])))
	}
	r.Notes = append(r.Notes, "an hour has the state of the air at its beginning")
	for name := range f.Meta.Units {
		read := name == forecastRain || slices.ContainsFunc(r.Series, func(s weather.Series) bool { return s.Source == name })
		if !read {
			r.Unread = append(r.Unread, name)
		}
	}
	slices.Sort(r.Unread)
}
