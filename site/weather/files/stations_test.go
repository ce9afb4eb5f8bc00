package files

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/site/weather"
)

// The measured days lie beside the sun, and the measured ground beside the heat of the ground,
// which are held against them as well.
const (
	surfradFolder = "../../../sun/testdata/surfrad/"
	desertRock    = surfradFolder + "dra24048.dat.gz"
	pennState     = surfradFolder + "psu17001.dat.gz"
	alamosa       = surfradFolder + "slv15365.dat.gz"
	southPole     = surfradFolder + "spo21001_south-pole.dat.gz"
	reference     = "../../../../warmth/ground/testdata/uscrn/uscrn_daily01_2020_13stations_converted.csv.gz"
	london        = "locationforecast2_london_51.5N_0.1W_complete_2020-07-20.json.gz"
	newYorkAhead  = "locationforecast2_new-york_40.7N_74.0W_compact_2020-07-20.json.gz"
	oslo          = "locationforecast2_oslo_59.9N_10.7E_compact_2023-11-17.json.gz"
)

func saidOf(station string) [2]string { return [2]string{"station", station} }

const night = "the printed sum holds the nights' readings below nothing, up to 2.6 W/m2 over 15 h, which count as 0 here"

// Days measured by the minute, as means of hours.
func TestMeasuredDays(t *testing.T) {
	_, psu := look(t, pennState)
	check.That(t, psu.Columns["global"].Mean*0.024, check.Published{Source: "surfrad", At: "Penn State, 1 January 2017: light of the day", Value: "2.53", Unit: "kWh/m2", Within: 0.039, Why: night, Standing: "twin"})
	r, slv := look(t, alamosa)
	check.That(t, slv.Columns["global"].Mean*0.024, check.Published{Source: "surfrad", At: "Alamosa, 31 December 2015: light of the day", Value: "2.98", Unit: "kWh/m2", Within: 0.039, Why: night, Standing: "twin"})
	if slv.Hours != 24 || slv.First != "2015-12-31T00:00:00Z" || r.Place.Name != "Alamosa" || slv.Columns["temperature"].Min > -21 {
		t.Errorf("Alamosa: %d hours from %s, %+v", slv.Hours, slv.First, slv.Columns["temperature"])
	}
}

// The hour from 14 to 15 has the rows of 14:01 to 15:00, since rows name their end.
func TestMinutesNameTheirEnd(t *testing.T) {
	sum, n := 0.0, 0
	for line := range strings.Lines(text(t, pennState)) {
		f := strings.Fields(line)
		if len(f) != surfradWidth {
			continue
		}
		hour, _ := whole(f[surfradHour], 0, 23)
		minute, _ := whole(f[surfradMinute], 0, 59)
		if at := hour*60 + minute; at > 14*60 && at <= 15*60 && f[39] == "0" {
			v, _ := number(f[38])
			sum, n = sum+v, n+1
		}
	}
	got := open(t, pennState).Of(weather.Temperature).Values[14]
	if n != 60 {
		t.Fatalf("%d rows", n)
	}
	check.Balance(t, got, sum/60, "the air at 14 to 15")
}

// The file of Alamosa leaves out the sign of its longitude; the sun tells it. The others, the
// South Pole among them, are taken as they are.
func TestLongitudeWithoutSign(t *testing.T) {
	if !strings.Contains(text(t, alamosa)[:60], " 105.92 ") {
		t.Fatal("the file no longer lacks the sign")
	}
	r := open(t, alamosa)
	if r.Place.Longitude != -105.92 || !hasNote(r.Warnings, "taken as -105.92") {
		t.Errorf("%+v %q", r.Place, r.Warnings)
	}
	for name, want := range map[string]float64{desertRock: -116.02, pennState: -77.93, southPole: -24.80} {
		if r := open(t, name); float64(r.Place.Longitude) != want || len(r.Warnings) != 0 {
			t.Errorf("%s: %+v %q", name, r.Place, r.Warnings)
		}
	}
	wrong := strings.Replace(text(t, pennState), "40.72  -77.93", "10.72  -77.93", 1)
	if r, err := Read("wrong", strings.NewReader(wrong), Options{}); err != nil || !hasNote(r.Warnings, "are they right") {
		t.Errorf("a latitude that is wrong: %v", err)
	}
}

// Case and dome temperatures are kelvin in three files and degC in that of Alamosa: none is
// read, so none can be mistaken for the air's.
func TestCaseTemperaturesAreLeft(t *testing.T) {
	for name, kelvin := range map[string]bool{desertRock: true, pennState: true, southPole: true, alamosa: false} {
		row := strings.Fields(strings.SplitN(text(t, name), "\n", 4)[2])
		if v, err := number(row[18]); err != nil || (v > 100) != kelvin {
			t.Errorf("%s: its case is at %g: %v", name, v, err)
		}
		r, s := look(t, name)
		if air := s.Columns["temperature"]; air.Max > 60 || !slices.Contains(r.Unread, "dw_casetemp") {
			t.Errorf("%s: air up to %g, unread %v", name, air.Max, r.Unread)
		}
	}
}

// Readings below nothing at night are in the files, and count as nothing.
func TestNightReadsNothing(t *testing.T) {
	for _, name := range []string{pennState, alamosa} {
		if !strings.Contains(text(t, name), "   -1.3 0") {
			t.Fatalf("%s has no reading below nothing", name)
		}
		r, s := look(t, name)
		if s.Columns["global"].Min != 0 || s.Columns["diffuse"].Min != 0 || !hasNote(r.Notes, "count as 0") {
			t.Errorf("%s: %+v %q", name, s.Columns, r.Notes)
		}
	}
}

// Flagged minutes are left out: an hour that has too few others is missing and marked.
func TestFlaggedMinutes(t *testing.T) {
	s := open(t, desertRock).Of(weather.Global)
	for i, m := range s.Marks {
		if want := i == 15; (m == weather.Flagged) != want {
			t.Errorf("hour %d is %s", i, m)
		}
	}
	all := text(t, pennState)
	flagged := strings.ReplaceAll(all, " 0.000 112.90    -1.3 0", " 0.000 112.90 -9999.9 1")
	if flagged == all {
		t.Fatal("nothing was changed")
	}
	if _, err := Read("one row", strings.NewReader(flagged), Options{}); err != nil {
		t.Error(err)
	}
}

// Days of one station join in any order; of two stations, or a day twice, they do not.
func TestDaysJoin(t *testing.T) {
	next := strings.ReplaceAll(text(t, pennState), "\n 2017   1  1  1 ", "\n 2017   3  1  3 ")
	path := filepath.Join(t.TempDir(), "psu17003.dat")
	if err := os.WriteFile(path, []byte(next), 0o644); err != nil {
		t.Fatal(err)
	}
	r, err := OpenAll([]string{path, "testdata/" + pennState}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	one := open(t, pennState)
	if s := weather.Summarise(r); s.First != "2017-01-01T00:00:00Z" || s.Last != "2017-01-03T23:00:00Z" || r.Steps != 72 || s.Columns["temperature"].Missing != 24 || len(r.Notes) != len(one.Notes) {
		t.Errorf("from %s to %s, %+v", s.First, s.Last, s.Columns["temperature"])
	}
	for i, v := range one.Of(weather.Temperature).Values {
		if got := r.Of(weather.Temperature).Values; got[i] != v || got[48+i] != v || !math.IsNaN(got[24+i]) {
			t.Fatalf("hour %d: %g, %g, %g; recorded %g", i, got[i], got[24+i], got[48+i], v)
		}
	}
	for says, paths := range map[string][]string{
		"only files of one place can be joined": {"testdata/" + pennState, "testdata/" + desertRock},
		"begins before":                         {path, path},
		"only files of one kind can be joined":  {path, "testdata/" + crete},
		"no such file":                          {path, "testdata/none"},
		"no weather file is named":              {},
	} {
		if _, err := OpenAll(paths, Options{}); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v: %v, want %q", paths, err, says)
		}
	}
}

// A stationYear is what one station of the reference network measured in 2020.
type stationYear struct {
	station                             string
	light, rain, low, high, least, most check.Published // least and most are of the ground 1 m down
}

// The ground 1 m down, light, rain and air of reference stations in 2020.
func TestReferenceStations(t *testing.T) {
	for _, c := range []stationYear{
		{"53136",
			check.Published{Source: "uscrn", At: "53136 (beside Desert Rock), 2020: light", Value: "2031", Unit: "kWh/m2", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53136, 2020: rain", Value: "91", Unit: "mm", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53136, 2020: coldest air", Value: "-5.3", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53136, 2020: hottest air", Value: "43.6", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53136, 2020: ground at 1 m, coldest", Value: "6.9", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53136, 2020: ground at 1 m, warmest", Value: "35.1", Unit: "degC", Standing: "twin"}},
		{"94084",
			check.Published{Source: "uscrn", At: "94084 (North Dakota), 2020: light", Value: "1346", Unit: "kWh/m2", Standing: "twin"},
			check.Published{Source: "uscrn", At: "94084, 2020: rain", Value: "238", Unit: "mm", Standing: "twin"},
			check.Published{Source: "uscrn", At: "94084, 2020: coldest air", Value: "-32.4", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "94084, 2020: hottest air", Value: "37.4", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "94084, 2020: ground at 1 m, coldest", Value: "-1.1", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "94084, 2020: ground at 1 m, warmest", Value: "16.3", Unit: "degC", Standing: "twin"}},
		{"53960",
			check.Published{Source: "uscrn", At: "53960 (Louisiana), 2020: light", Value: "1599", Unit: "kWh/m2", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53960, 2020: rain", Value: "1742", Unit: "mm", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53960, 2020: coldest air", Value: "-1.6", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53960, 2020: hottest air", Value: "34.9", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53960, 2020: ground at 1 m, coldest", Value: "13.2", Unit: "degC", Standing: "twin"},
			check.Published{Source: "uscrn", At: "53960, 2020: ground at 1 m, warmest", Value: "29.0", Unit: "degC", Standing: "twin"}},
	} {
		_, s := look(t, reference, saidOf(c.station), [2]string{"altitude", "900"})
		ground := s.Columns["soil_temperature_100"]
		check.That(t, *s.Global, c.light)
		check.That(t, s.Columns["rain"].Mean*float64(s.Days-s.Columns["rain"].Missing), c.rain)
		check.That(t, s.Columns["temperature_min"].Min, c.low)
		check.That(t, s.Columns["temperature_max"].Max, c.high)
		check.That(t, ground.Min, c.least)
		check.That(t, ground.Max, c.most)
	}
}

// Deeper ground swings less and later: what is read as 5 cm and 1 m down is not mixed up.
func TestGroundSwingsLessBelow(t *testing.T) {
	for _, station := range []string{"03060", "53136", "94084", "94644", "94995"} {
		_, s := look(t, reference, saidOf(station))
		before := math.Inf(1)
		for _, column := range []string{"soil_temperature_5", "soil_temperature_20", "soil_temperature_100"} {
			c := s.Columns[column]
			if swing := c.Max - c.Min; swing > before {
				t.Errorf("%s: %s swings by %g, the one above by %g", station, column, swing, before)
			}
			before = c.Max - c.Min
		}
	}
}

// A file of several stations asks which; all 13 can be read.
func TestSeveralStations(t *testing.T) {
	_, err := Open("testdata/"+reference, Options{})
	if err == nil || !strings.Contains(err.Error(), "holds 13 stations: give station=, one of 03060, 03074") {
		t.Fatal(err)
	}
	_, list, _ := strings.Cut(err.Error(), "one of ")
	for _, station := range strings.Split(list, ", ") {
		if r := open(t, reference, saidOf(station)); r.Steps != 366 || len(r.Series) != 11 || r.Place.Name != "USCRN "+station {
			t.Errorf("%s: %d days, %d columns", station, r.Steps, len(r.Series))
		}
	}
	if _, err := Open("testdata/"+reference, Options{Station: "00001"}); err == nil || !strings.Contains(err.Error(), `no station "00001"`) {
		t.Error(err)
	}
}

// Snow is in the gauge files twice: as water in the rain, and as depth, which is left.
func TestSnowIsNotCountedTwice(t *testing.T) {
	for _, name := range []string{newYork, denverGauge} {
		all := text(t, name)
		r := open(t, name)
		if !strings.Contains(all, "SNOW ") || !slices.Contains(r.Unread, "SNOW") || !slices.Contains(r.Unread, "SNWD") {
			t.Errorf("%s: unread %v", name, r.Unread)
		}
		var without bytes.Buffer
		for line := range strings.Lines(all) {
			if element := line[dailyElement:dailyValues]; element != "SNOW" && element != "SNWD" {
				without.WriteString(line)
			}
		}
		bare, err := Read("without", &without, Options{})
		if err != nil {
			t.Fatal(err)
		}
		check.Balance(t, *yearly(r), *yearly(bare), "rain a year with and without the lines of snow")
	}
}

func yearly(r *weather.Record) *float64 { return &weather.Summarise(r).Rain.Mean }

// A forecast is hourly, then at every sixth hour; what lies between is missing, and rain keeps
// its sum.
func TestForecasts(t *testing.T) {
	for _, c := range []struct {
		file, first, last string
		moments           int
		latitude          float64
		hourly            string
	}{
		{london, "2020-07-20T11:00:00Z", "2020-07-29T06:00:00Z", 82, 51.5, "hourly until 2020-07-22T18:00Z"},
		{newYorkAhead, "2020-07-20T11:00:00Z", "2020-07-29T06:00:00Z", 82, 40.7, "hourly until 2020-07-22T18:00Z"},
		{oslo, "2023-11-17T19:00:00Z", "2023-11-27T18:00:00Z", 85, 59.9212, "hourly until"},
	} {
		r, s := look(t, c.file)
		air := s.Columns["temperature"]
		if s.First != c.first || s.Last != c.last || *s.Latitude != c.latitude || s.Hours-air.Missing != c.moments {
			t.Errorf("%s: from %s to %s, %d moments, latitude %g", c.file, s.First, s.Last, s.Hours-air.Missing, *s.Latitude)
		}
		if !hasNote(r.Notes, "Data from MET Norway") || !hasNote(r.Notes, c.hourly) || !hasNote(r.Notes, "spread evenly over the six") || len(r.Warnings) != 0 {
			t.Errorf("%s: %q %q", c.file, r.Notes, r.Warnings)
		}
		if r.Of(weather.Pressure) != nil {
			t.Errorf("%s: the pressure of the sea level was read as the place's", c.file)
		}
		const six = `"next_6_hours"`
		rest := text(t, c.file)[strings.LastIndex(text(t, c.file), `"next_1_hours"`):]
		sum := 0.0
		for {
			at := strings.Index(rest, six)
			if at < 0 {
				break
			}
			rest = rest[at+len(six):]
			_, value, _ := strings.Cut(rest, `"precipitation_amount": `)
			v, err := number(strings.TrimRight(strings.Fields(value)[0], ","))
			if err != nil {
				t.Fatal(err)
			}
			sum += v
		}
		spread := 0.0
		for i, m := range r.Of(weather.Rain).Marks {
			if m == weather.Accumulated {
				spread += r.Of(weather.Rain).Values[i]
			}
		}
		// The last moment with hours to come tells them too: its six overlap those of the next.
		if first := sixOfLastHour(t, c.file); math.Abs(spread+first-sum) > 1e-9 {
			t.Errorf("%s: %g mm are spread, the file has %g and %g beside its last hour", c.file, spread, sum, first)
		}
	}
}

// sixOfLastHour gives the rain of the six hours after the last moment that also tells of one.
func sixOfLastHour(t *testing.T, name string) float64 {
	all := text(t, name)
	_, rest, _ := strings.Cut(all[strings.LastIndex(all, `"next_1_hours"`):], `"next_6_hours"`)
	_, value, _ := strings.Cut(rest, `"precipitation_amount": `)
	v, err := number(strings.TrimRight(strings.Fields(value)[0], ","))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// The values of a named moment.
func TestForecastValues(t *testing.T) {
	r := open(t, london)
	for column, want := range map[weather.Column]float64{weather.Temperature: 19.6, weather.Humidity: 42.3, weather.DewPoint: 6.4, weather.Wind: 2.7, weather.WindDirection: 346.1, weather.Cloud: 8.6, weather.Rain: 0} {
		if got := r.Of(column).Values[1]; got != want {
			t.Errorf("%s at 12: %g, want %g", column, got, want)
		}
	}
}

// What is not a record of these kinds is refused with its place and a remedy.
func TestNewRefusals(t *testing.T) {
	day := strings.SplitAfter(text(t, pennState), "\n")
	head := strings.Join(day[:2], "")
	year := strings.SplitAfter(text(t, reference), "\n")
	ahead := text(t, london)
	for _, c := range []struct{ name, text, says string }{
		{"headless day", head, "no row of weather"},
		{"half a row", head + day[2][:80], "line 3: there are"},
		{"turned", head + day[3] + day[2], "line 4: the rows are not in the order"},
		{"short day", strings.Join(day[:32], ""), "no hour has 45 good minutes"},
		{"sparse", head + day[2] + day[9], "its rows lie 7 minutes apart"},
		{"thirteenth", head + strings.Replace(day[2], "1  1  1", "1 13  1", 1), "from 1 to 12"},
		{"words", head + strings.Replace(day[2], "85.2", "damp", 1), `rh: "damp" is not a number`},
		{"pole", strings.Replace(strings.Join(day, ""), "40.72", "95.72", 1), "latitude 95.72"},
		{"twice", year[0] + year[1] + year[1], "stands twice"},
		{"date", year[0] + strings.Replace(year[1], "2020-01-01", "2020-02-30", 1), "there is no 2020-02-30"},
		{"cut year", year[0] + year[1][:60], "columns, not 28"},
		{"no coordinates", "wban,lst_date,p_daily_calc\n03060,2020-01-01,1\n", "no column latitude"},
		{"damaged", year[0] + strings.Replace(year[1], "03060", "3O60", 1), "no number of five digits"},
		{"cut ahead", ahead[:len(ahead)/2], "cut short or damaged"},
		{"nowhere", strings.Replace(ahead, `"coordinates"`, `"corners"`, 1), "does not say where"},
		{"half hours", strings.Replace(ahead, "T12:00:00Z", "T12:30:00Z", 1), "no whole hour"},
		{"back", strings.Replace(ahead, "2020-07-20T12:00:00Z", "2020-07-20T10:00:00Z", 1), "not in the order of time"},
		{"far", strings.Replace(ahead, "2020-07-29T06:00:00Z", "2021-07-29T06:00:00Z", 1), "more than 60 days ahead"},
		{"unit", strings.Replace(ahead, `"air_temperature": "celsius"`, `"air_temperature": "Rankine"`, 1), `unit "Rankine" is not known`},
		{"other JSON", `{"type":"Feature"}`, "neither that of NASA POWER nor of MET Norway"},
	} {
		_, err := Read(c.name, strings.NewReader(c.text), Options{})
		if err == nil || !strings.Contains(err.Error(), c.says) || !strings.HasPrefix(err.Error(), c.name) {
			t.Errorf("%s: got %v, want it to begin with the name and say %q", c.name, err, c.says)
		}
	}
}

func FuzzSurfrad(f *testing.F) {
	day := strings.SplitAfter(text(f, alamosa), "\n")
	fuzz(f, strings.Join(day[:64], ""), "")
}

func FuzzUSCRN(f *testing.F) {
	year := strings.SplitAfter(text(f, reference), "\n")
	fuzz(f, strings.Join(year[:4], ""), "", saidOf("03060"))
}

func FuzzForecast(f *testing.F) {
	fuzz(f, `{"geometry":{"coordinates":[-0.1,51.5,25]},"properties":{"meta":{"updated_at":"2020-07-20T01:30:57Z","units":{"air_temperature":"celsius","precipitation_amount":"mm"}},"timeseries":[
{"time":"2020-07-20T11:00:00Z","data":{"instant":{"details":{"air_temperature":18.8}},"next_1_hours":{"details":{"precipitation_amount":0.5}}}},
{"time":"2020-07-20T12:00:00Z","data":{"instant":{"details":{"air_temperature":19.6}},"next_6_hours":{"details":{"precipitation_amount":6}}}},
{"time":"2020-07-20T18:00:00Z","data":{"instant":{"details":{"air_temperature":17}}}}]}}`, "")
}
