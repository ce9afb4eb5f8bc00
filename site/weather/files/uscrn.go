package files

import (
	"fmt"
	"slices"
	"strings"

	"suffice/site/weather"
)

// uscrnColumns are the columns of the US Climate Reference Network's daily product that are
// read (uscrn), each with the factor to a record's unit. t_daily_mean, half the sum of the
// extremes, is left for the mean of all readings, t_daily_avg.
var uscrnColumns = []struct {
	name   string
	column weather.Column
	unit   string
	factor float64
}{
	{"t_daily_max", weather.TemperatureMax, "degC", 1},
	{"t_daily_min", weather.TemperatureMin, "degC", 1},
	{"t_daily_avg", weather.Temperature, "degC", 1},
	{"p_daily_calc", weather.Rain, "mm", 1},
	{"solarad_daily", weather.Global, "MJ/m2", 1 / 3.6},
	{"rh_daily_avg", weather.Humidity, "%", 1},
	{"soil_temp_5_daily", weather.Soil5, "degC", 1},
	{"soil_temp_10_daily", weather.Soil10, "degC", 1},
	{"soil_temp_20_daily", weather.Soil20, "degC", 1},
	{"soil_temp_50_daily", weather.Soil50, "degC", 1},
	{"soil_temp_100_daily", weather.Soil100, "degC", 1},
}

// uscrnMissing are the agency's codes, which the converted files leave empty.
var uscrnMissing = []string{"", "-9999", "-9999.0", "-99", "-99.0", "-99.000"}

func looksUSCRN(lines []string) bool { return strings.HasPrefix(lines[0], "wban,lst_date,") }

// A uscrnTable is where the columns stand.
type uscrnTable struct {
	wban, date, latitude, longitude int
	fields                          []powerField
	width                           int
}

// readUSCRN reads the daily product as a table with the agency's column names. A file may
// hold several stations; the options name the one that is wanted.
func readUSCRN(s *source, o Options) (*weather.Record, error) {
	r := &weather.Record{Format: "USCRN daily", Step: weather.Daily, Time: weather.StandardTime, Placed: true}
	names, _ := s.next()
	head := splitNames(names)
	t := &table{src: s, step: weather.Daily}
	u, err := newUSCRN(s, r, t, head)
	if err != nil {
		return nil, err
	}
	station, others := u.rows(t, r, o.Station)
	switch {
	case o.Station == "" && len(others) > 0:
		return nil, fmt.Errorf("%s holds %d stations: give station=, one of %s", s.name, len(others)+1, strings.Join(append([]string{station}, others...), ", "))
	case len(t.lines) == 0 && len(t.faults) == 0 && s.failed == nil && len(others) > 0:
		return nil, fmt.Errorf("%s has no station %q: there are %s", s.name, o.Station, strings.Join(others, ", "))
	}
	if err := t.finish(r); err != nil {
		return nil, err
	}
	r.Place.Name = o.Name
	if o.Name == "" {
		r.Place.Name = "USCRN " + station
	}
	if o.Altitude != nil {
		r.Place.Altitude = *o.Altitude
	} else {
		r.Notes = append(r.Notes, "the altitude is not given: taken as 0 m")
	}
	r.Place.Clock = clockOf(r.Time, r.Place, o)
	if o.Clock == nil {
		r.Notes = append(r.Notes, "the file does not say its zone: taken as longitude/15 in whole hours")
	}
	return r, nil
}

// newUSCRN finds the columns.
func newUSCRN(s *source, r *weather.Record, t *table, head []string) (*uscrnTable, error) {
	find := func(name string) int { return slices.Index(head, name) }
	u := &uscrnTable{wban: 0, date: 1, latitude: find("latitude"), longitude: find("longitude"), width: len(head)}
	if u.latitude < 0 || u.longitude < 0 {
		return nil, s.at("there is no column latitude or no longitude")
	}
	read := []int{u.wban, u.date, u.latitude, u.longitude}
	for _, c := range uscrnColumns {
		if at := find(c.name); at >= 0 {
			t.add(c.column, c.name, c.unit)
			u.fields, read = append(u.fields, powerField{at, scale{c.factor, 0}}), append(read, at)
		}
	}
	if len(u.fields) == 0 {
		return nil, s.at("no column of the table is known: it has %s", clip(strings.Join(head, ",")))
	}
	for at, name := range head {
		if !slices.Contains(read, at) {
			r.Unread = append(r.Unread, name)
		}
	}
	return u, nil
}

// mostStations is how many stations one file may hold; the network has some 240.
const mostStations = 1000

// rows reads the rows of the station that is wanted, or of the first, and gives its number and
// those of the others.
func (u *uscrnTable) rows(t *table, r *weather.Record, wanted string) (station string, others []string) {
	station = wanted
	seen := make(map[string]bool)
	t.each(u.width, func(row []string) {
		id := strings.TrimSpace(row[u.wban])
		if _, err := whole(id, 1, 99999); err != nil || len(id) != 5 {
			t.fault("station %q is no number of five digits: the file is damaged, fetch it again", clip(id))
			return
		}
		if station == "" {
			station = id
		}
		if id != station {
			if !seen[id] && len(others) < mostStations {
				seen[id], others = true, append(others, id)
			}
			return
		}
		if wanted == "" && len(others) > 0 { // several: the file is refused anyway
			return
		}
		u.row(t, r, row)
	})
	return station, others
}

func (u *uscrnTable) row(t *table, r *weather.Record, row []string) {
	year, month, date, err := isoDate(row[u.date])
	if err == nil && !weather.ValidDate(year, month, date) {
		err = fmt.Errorf("there is no %s", clip(row[u.date]))
	}
	if err != nil {
		t.fault("%w", err)
		return
	}
	if len(t.lines) == 0 {
		if err := u.place(r, row); err != nil {
			t.fault("%w", err)
			return
		}
	}
	if !t.row(weather.DayNumber(year, month, date)) {
		return
	}
	for i, f := range u.fields {
		if text := strings.TrimSpace(row[f.at]); !slices.Contains(uscrnMissing, text) {
			v, err := number(text)
			if err != nil {
				t.fault("column %s: %w", t.series[i].Source, err)
				continue
			}
			t.set(i, v*f.scale.factor)
		}
	}
}

func (u *uscrnTable) place(r *weather.Record, row []string) error {
	if err := readNumber(&r.Place.Latitude, row[u.latitude]); err != nil {
		return fmt.Errorf("latitude: %w", err)
	}
	if err := readNumber(&r.Place.Longitude, row[u.longitude]); err != nil {
		return fmt.Errorf("longitude: %w", err)
	}
	return r.Place.Faults()
}

func readNumber[T ~float64](to *T, text string) error {
	v, err := number(text)
	*to = T(v)
	return err
}
