package synth_test

import (
	"compress/gzip"
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"suffice/quantity"
	"suffice/site"
	"suffice/site/weather"
)

// uscrn reads the stations of testdata (testdata/README.md): measured light, rain,
// temperature and humidity of 2020.
func uscrn(t testing.TB) (all []*weather.Record) {
	t.Helper()
	file, err := os.Open("testdata/uscrn_daily01_2020_13stations_converted.csv.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	z, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(z).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	at := make(map[string]int)
	for i, name := range rows[0] {
		at[name] = i
	}
	value := func(row []string, name string) float64 {
		v, err := strconv.ParseFloat(row[at[name]], 64)
		if err != nil {
			return math.NaN()
		}
		return v
	}
	columns := []struct {
		column weather.Column
		name   string
		factor float64
	}{
		{weather.Global, "solarad_daily", 1 / 3.6}, {weather.TemperatureMin, "t_daily_min", 1}, {weather.TemperatureMax, "t_daily_max", 1},
		{weather.Humidity, "rh_daily_avg", 1}, {weather.Rain, "p_daily_calc", 1},
	}
	start := weather.DayNumber(2020, 1, 1)
	for _, row := range rows[1:] {
		if len(all) == 0 || all[len(all)-1].File != row[at["wban"]] {
			lon := value(row, "longitude")
			p := site.Place{Latitude: quantity.Degrees(value(row, "latitude")), Longitude: quantity.Degrees(lon), Clock: math.Round(lon / 15)}
			r := &weather.Record{File: row[at["wban"]], Format: "USCRN", Place: p, Placed: true, Step: weather.Daily, Time: weather.StandardTime, Start: start, Steps: 366}
			for _, c := range columns {
				s := weather.Series{Column: c.column, Source: c.name, Unit: c.column.Unit(weather.Daily), Values: make([]float64, 366)}
				for i := range s.Values {
					s.Values[i] = math.NaN()
				}
				r.Series = append(r.Series, s)
			}
			all = append(all, r)
		}
		r := all[len(all)-1]
		date := row[at["lst_date"]]
		y, _ := strconv.Atoi(date[:4])
		m, _ := strconv.Atoi(date[5:7])
		d, _ := strconv.Atoi(date[8:10])
		i := weather.DayNumber(y, m, d) - start
		for k, c := range columns {
			r.Series[k].Values[i] = value(row, c.name) * c.factor
		}
	}
	return all
}
