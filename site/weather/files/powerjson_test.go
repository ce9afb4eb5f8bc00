package files

import (
	"encoding/json"
	"strings"
	"testing"

	"suffice/site/weather"
)

// The days of a CSV, written as the service writes JSON, read the same; the unit of light and the
// code for missing follow the JSON's own header.
func TestDailyJSON(t *testing.T) {
	whole := strings.Split(text(t, uttarakhand), "\n")
	at := 0
	for !strings.HasPrefix(whole[at], "-END HEADER-") {
		at++
	}
	head := splitNames(whole[at+1])
	parameter := make(map[string]map[string]json.Number)
	for _, row := range whole[at+2:] {
		if strings.TrimSpace(row) == "" {
			continue
		}
		f := splitNames(row)
		d := compactDay(t, head, f)
		for i, name := range head {
			if !isStamp(name) {
				if parameter[name] == nil {
					parameter[name] = make(map[string]json.Number)
				}
				parameter[name][d] = json.Number(f[i])
			}
		}
	}
	parameter["T2M"]["20150704"] = "-888"
	answer := map[string]any{
		"type":       "Feature",
		"geometry":   map[string]any{"type": "Point", "coordinates": []float64{78.71, 29.917, 1266.18}},
		"properties": map[string]any{"parameter": parameter},
		"header":     map[string]any{"fill_value": -888, "time_standard": "LST", "start": "20130101", "end": "20231231"},
		"parameters": units("ALLSKY_SFC_SW_DWN", "W m-2", "ALLSKY_SFC_SW_DNI", "W m-2", "ALLSKY_SFC_SW_DIFF", "W m-2", "CLRSKY_SFC_SW_DWN", "W m-2",
			"T2M", "C", "RH2M", "%", "WS2M", "m/s", "PRECTOTCORR", "mm/day", "PS", "kPa"),
	}
	body, err := json.Marshal(answer)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Read("daily.json", strings.NewReader(string(body)), Options{})
	if err != nil {
		t.Fatal(err)
	}
	csv := open(t, uttarakhand)
	if r.Format != "NASA POWER daily JSON" || r.Start != csv.Start || r.Steps != csv.Steps || r.Time != weather.SolarHours || r.Place != csv.Place || len(r.Series) != len(csv.Series) {
		t.Errorf("%s, %d days from %d, %+v; the CSV has %d from %d, %+v", r.Format, r.Steps, r.Start, r.Place, csv.Steps, csv.Start, csv.Place)
	}
	gone := weather.DayNumber(2015, 7, 4) - r.Start
	for _, s := range csv.Series {
		got := r.Of(s.Column)
		for i, v := range s.Values {
			if missing := s.Column == weather.Temperature && i == gone; got.Values[i] != v && !missing || missing && got.MarkAt(i) != weather.Absent {
				t.Fatalf("%s, day %d: %g, the CSV has %g", s.Column, i, got.Values[i], v)
			}
		}
	}
	short := strings.Replace(string(body), `"end":"20231231"`, `"end":"20240131"`, 1)
	if _, err := Read("short.json", strings.NewReader(short), Options{}); err == nil || !strings.Contains(err.Error(), "promises them until 2024-01-31") {
		t.Errorf("a month is missing at the end: %v", err)
	}
}

// compactDay writes a row's date as 20130101.
func compactDay(t *testing.T, head, row []string) string {
	t.Helper()
	st, err := stampsOf(head)
	if err != nil {
		t.Fatal(err)
	}
	day, err := st.of(row)
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(dateText(day), "-", "")
}

func units(pairs ...string) map[string]any {
	all := make(map[string]any)
	for i := 0; i < len(pairs); i += 2 {
		all[pairs[i]] = map[string]string{"units": pairs[i+1]}
	}
	return all
}
