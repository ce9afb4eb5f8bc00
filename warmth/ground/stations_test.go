package ground

import (
	"compress/gzip"
	"encoding/csv"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"
	"time"

	"suffice/quantity"
	"suffice/site"
	"suffice/site/air"
	"suffice/site/sun"
)

// A station is a place of the network with its measured year.
type station struct {
	wban                string
	latitude, longitude float64
	days                []stationDay
	filled              int     // values of weather that were missing
	wind                float64 // m/s at 2 m
}

// A stationDay holds what was measured; NaN is missing.
type stationDay struct {
	day                                       int // of the year
	warmest, coolest, mean, rain, light, damp float64
	soil                                      [2]float64 // at 50 and 100 cm
}

// altitudes of the stations, m, from memory of the network's list: the file does not say.
var altitudes = map[string]quantity.Metres{
	"03060": 2561, "03074": 1316, "03758": 171, "04236": 95, "53132": 1466, "53136": 1001, "53152": 6,
	"53960": 11, "93245": 19, "94074": 1643, "94084": 562, "94644": 39, "94995": 362,
}

func readStations(t *testing.T) []station {
	t.Helper()
	f, err := os.Open("testdata/uscrn/uscrn_daily01_2020_13stations_converted.csv.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(z).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var stations []station
	for _, row := range rows[1:] {
		cell := func(name string) string { return row[slices.Index(rows[0], name)] }
		wban := cell("wban")
		if n := len(stations); n == 0 || stations[n-1].wban != wban {
			stations = append(stations, station{wban: wban, latitude: number(cell("latitude")), longitude: number(cell("longitude")), wind: worldWind})
		}
		date, err := time.Parse(time.DateOnly, cell("lst_date"))
		if err != nil {
			t.Fatal(err)
		}
		s := &stations[len(stations)-1]
		s.days = append(s.days, stationDay{
			day: date.YearDay(), warmest: number(cell("t_daily_max")), coolest: number(cell("t_daily_min")), mean: number(cell("t_daily_avg")),
			rain: number(cell("p_daily_calc")), light: number(cell("solarad_daily")), damp: number(cell("rh_daily_avg")),
			soil: [2]float64{number(cell("soil_temp_50_daily")), number(cell("soil_temp_100_daily"))},
		})
	}
	for i := range stations {
		stations[i].fill()
	}
	return stations
}

// number gives the value of a cell, NaN where it is empty.
func number(cell string) float64 {
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// fill takes the weather of the day before where a value is missing, no rain where that is, and counts it.
func (s *station) fill() {
	for i := range s.days {
		d, before := &s.days[i], s.days[max(i-1, 0)]
		for _, v := range []struct {
			now  *float64
			then float64
		}{{&d.warmest, before.warmest}, {&d.coolest, before.coolest}, {&d.mean, before.mean}, {&d.rain, 0}, {&d.light, before.light}, {&d.damp, before.damp}} {
			if math.IsNaN(*v.now) {
				*v.now = v.then
				s.filled++
			}
		}
	}
}

func (s *station) place() site.Place {
	return site.Place{Latitude: quantity.Degrees(s.latitude), Longitude: quantity.Degrees(s.longitude), Altitude: altitudes[s.wban]}
}

// hour makes an hour of a day: light as it falls outside the air, air as a cosine that is warmest
// at 15 h, vapour and wind even, rain spread over the day.
func (s *station) hour(d stationDay, h int) ColumnIn {
	middle := float64(h) + 0.5
	outside := sun.OutsideDay(quantity.Degrees(s.latitude), d.day)
	share := sun.OutsideHour(quantity.Degrees(s.latitude), 0, 0, d.day, middle).Ra / outside.Ra
	t := quantity.Celsius(d.mean + (d.warmest-d.coolest)/2*math.Cos(2*math.Pi*(middle-15)/24))
	vapour := d.damp / 100 * (air.Saturation(quantity.Celsius(d.warmest)) + air.Saturation(quantity.Celsius(d.coolest))) / 2
	return ColumnIn{
		Air: t, Light: quantity.Irradiance(share * d.light * 1e6 / 3600), Rain: quantity.Millimetres(d.rain / 24),
		Sky: SkyLight(t, vapour, d.light/(sun.ClearShare(altitudes[s.wban])*outside.Ra)), Vapour: vapour, Wind: s.wind,
	}
}

// A trace is a year of daily means in the column.
type trace struct {
	soil  [2][]float64 // at 50 and 100 cm
	top   float64      // mean of the year
	snowy int          // days with snow
}

// year lives the station's year once.
func (s *station) year(c *Column, state *ColumnState) (y trace) {
	for _, d := range s.days {
		var sums [2]float64
		for h := range 24 {
			out := c.Step(state, s.hour(d, h))
			y.top += float64(out.Top) / float64(24*len(s.days))
			for k, depth := range depths {
				sums[k] += float64(c.At(state, depth)) / 24
			}
		}
		for k := range depths {
			y.soil[k] = append(y.soil[k], sums[k])
		}
		if state.Snow >= 1 {
			y.snowy++
		}
	}
	return y
}

var depths = [2]quantity.Metres{0.5, 1}

// live gives the year that repeats itself: from the mean of the air, a year tells the mean of the
// ground's face; from there, two more years.
func (s *station) live(c *Column) trace {
	mean := 0.0
	for _, d := range s.days {
		mean += d.mean / float64(len(s.days))
	}
	state := c.Start(quantity.Celsius(mean))
	first := s.year(c, &state)
	snow := state
	state = c.Start(quantity.Celsius(first.top))
	state.Snow, state.Density, state.Albedo, state.Store = snow.Snow, snow.Density, snow.Albedo, snow.Store
	s.year(c, &state)
	return s.year(c, &state)
}

// damped gives the year of ground whose surface is as warm as the air, by its first harmonic.
func (s *station) damped(diffusivity float64) (y trace) {
	var airs []float64
	for _, d := range s.days {
		airs = append(airs, d.mean)
	}
	u := FitSurface(airs, diffusivity)
	for i := range s.days {
		for k, depth := range depths {
			y.soil[k] = append(y.soil[k], float64(u.At(depth, 1+float64(i)*yearDays/float64(len(s.days)))))
		}
	}
	return y
}

// apart gives root mean square and mean of computed less measured.
func (s *station) apart(y trace, k int) (rms, bias float64) {
	n := 0.0
	for i, d := range s.days {
		if e := y.soil[k][i] - d.soil[k]; !math.IsNaN(e) {
			n++
			bias += e
			rms += e * e
		}
	}
	return math.Sqrt(rms / n), bias / n
}
