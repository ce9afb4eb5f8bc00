package files

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"suffice/quantity"
	"suffice/site/weather"
)

// A powerAnswer is the JSON that the NASA POWER service gives for a point.
type powerAnswer struct {
	Geometry struct {
		Coordinates []float64 `json:"coordinates"` // longitude, latitude, altitude
	} `json:"geometry"`
	Properties struct {
		Parameter map[string]map[string]*float64 `json:"parameter"` // by name and time; null is missing
		forecast
	} `json:"properties"`
	Header struct {
		Fill float64 `json:"fill_value"`
		Time string  `json:"time_standard"`
		End  string  `json:"end"` // the last day, YYYYMMDD; some versions leave it out
	} `json:"header"`
	Parameters map[string]struct {
		Units string `json:"units"`
	} `json:"parameters"`
}

func looksJSON(lines []string) bool { return strings.HasPrefix(strings.TrimSpace(lines[0]), "{") }

// mostJSON is the most that is read as JSON, which has to be held in memory: ten years of
// hours in ten columns are 20 MB.
const mostJSON = 20 << 20

// readJSON reads the JSON that the NASA POWER service gives, hourly (times as YYYYMMDDHH) or
// daily (YYYYMMDD), or a forecast of MET Norway.
func readJSON(s *source, o Options) (*weather.Record, error) {
	var a powerAnswer
	if s.size > mostJSON {
		return nil, tooMuchJSON(s)
	}
	limited := &io.LimitedReader{R: s.reader, N: mostJSON}
	if err := json.NewDecoder(limited).Decode(&a); err != nil {
		if limited.N <= 0 {
			return nil, tooMuchJSON(s)
		}
		return nil, fmt.Errorf("%s: the JSON is cut short or damaged: fetch it again (%w)", s.name, err)
	}
	s.line = 1
	if len(a.Properties.Timeseries) > 0 {
		return a.Properties.forecast.record(s, o, a.Geometry.Coordinates)
	}
	if len(a.Properties.Parameter) == 0 {
		return nil, fmt.Errorf("%s is JSON, but neither that of NASA POWER nor of MET Norway: it has no properties.parameter and no properties.timeseries", s.name)
	}
	return a.record(s, o)
}

func tooMuchJSON(s *source) error {
	return fmt.Errorf("%s has more than %d MB of JSON: ask the service for CSV", s.name, mostJSON>>20)
}

func (a *powerAnswer) record(s *source, o Options) (*weather.Record, error) {
	r := &weather.Record{Format: "NASA POWER daily JSON", Step: weather.Daily}
	names := slices.Sorted(maps.Keys(a.Properties.Parameter))
	times := a.times()
	if len(times) > 0 && len(times[0]) == len("YYYYMMDDHH") {
		r.Format, r.Step = "NASA POWER hourly JSON", weather.Hourly
	}
	h, err := a.heading(s)
	if err != nil {
		return nil, err
	}
	r.Place, r.Placed = h.place, h.placed
	t := &table{src: s, step: r.Step}
	fields, err := powerFields(s, o, h, r, t, names)
	if err != nil {
		return nil, err
	}
	if err := powerPlace(s, o, h, r); err != nil {
		return nil, err
	}
	a.rows(t, names, times, fields)
	if err := t.finish(r); err != nil {
		return nil, err
	}
	if err := t.promised(h.last); err != nil {
		return nil, err
	}
	r.Notes = append(r.Notes, powerThanks)
	if r.Of(weather.Rain) != nil {
		r.Notes = append(r.Notes, powerRain)
	}
	return r, nil
}

// heading gives what stands above the table in a CSV.
func (a *powerAnswer) heading(s *source) (*powerHeader, error) {
	h := &powerHeader{units: make(map[string]string)}
	for name, p := range a.Parameters {
		h.units[name] = p.Units
	}
	if c := a.Geometry.Coordinates; len(c) >= 2 {
		h.placed = true
		h.place.Longitude, h.place.Latitude = quantity.Degrees(c[0]), quantity.Degrees(c[1])
		if len(c) > 2 {
			h.place.Altitude = quantity.Metres(c[2])
		}
		if err := h.place.Faults(); err != nil {
			return nil, s.at("%w", err)
		}
	}
	switch strings.ToUpper(a.Header.Time) {
	case "UTC":
		h.time = new(weather.UTC)
	case "LST":
		h.time = new(weather.SolarHours)
	}
	if a.Header.End != "" {
		var err error
		if h.last, err = compactTime(a.Header.End, weather.Daily); err != nil {
			return nil, s.at("the last day: %w", err)
		}
	}
	return h, nil
}

// times gives the times that any parameter has, in order.
func (a *powerAnswer) times() []string {
	all := make(map[string]bool)
	for _, p := range a.Properties.Parameter {
		for at := range p {
			all[at] = true
		}
	}
	return slices.Sorted(maps.Keys(all))
}

// rows takes the values in, in the order of time. All is on one line.
func (a *powerAnswer) rows(t *table, names, times []string, fields []powerField) {
	for _, at := range times {
		if t.tired() {
			return
		}
		stamp, err := compactTime(at, t.step)
		if err != nil {
			t.fault("%w", err)
			continue
		}
		if !t.row(stamp) {
			continue
		}
		for i, f := range fields {
			if v := a.Properties.Parameter[names[f.at]][at]; v != nil && *v != a.Header.Fill {
				t.set(i, *v*f.scale.factor+f.scale.offset)
			}
		}
	}
}

// compactTime reads 20260731 or 2026073123.
func compactTime(text string, step weather.Step) (int, error) {
	want := len("YYYYMMDD")
	if step == weather.Hourly {
		want += 2
	}
	if len(text) != want {
		return 0, fmt.Errorf("time %q is not written with %d digits", clip(text), want)
	}
	year, err1 := whole(text[:4], 1, 9999)
	month, err2 := whole(text[4:6], 1, 12)
	date, err3 := whole(text[6:8], 1, 31)
	if err := errors.Join(err1, err2, err3); err != nil {
		return 0, fmt.Errorf("time %q: %w", clip(text), err)
	}
	if !weather.ValidDate(year, month, date) {
		return 0, fmt.Errorf("there is no %04d-%02d-%02d", year, month, date)
	}
	day := weather.DayNumber(year, month, date)
	if step == weather.Daily {
		return day, nil
	}
	hour, err := whole(text[8:], 0, 23)
	return day*24 + hour, err
}
