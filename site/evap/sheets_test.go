package evap

import (
	"math"
	"strings"
	"testing"

	"suffice/sheet"
)

func work(t *testing.T, name string, args map[string]string) (map[string]sheet.Result, sheet.Worked, error) {
	t.Helper()
	for _, s := range Sheets() {
		if s.Name != name {
			continue
		}
		given, err := s.Read(args)
		if err != nil {
			return nil, sheet.Worked{}, err
		}
		w, err := s.Work(given)
		results := map[string]sheet.Result{}
		for _, r := range w.Results {
			results[r.Name] = r
		}
		return results, w, err
	}
	t.Fatalf("no sheet %q", name)
	return nil, sheet.Worked{}, nil
}

func near(t *testing.T, results map[string]sheet.Result, name string, want, within float64) {
	t.Helper()
	if r, ok := results[name]; !ok || math.Abs(r.Value.Number-want) > within {
		t.Errorf("%s is %v, want %g within %g", name, r.Value.Number, want, within)
	}
}

// Every sheet answers bare, and says that it does not hold under glass.
func TestSheetsAnswerBare(t *testing.T) {
	for _, s := range Sheets() {
		results, w, err := work(t, s.Name, nil)
		if err != nil || len(w.Steps) == 0 || !strings.Contains(strings.Join(w.Cautions, " "), "under glass") {
			t.Errorf("%s bare: %v, %d steps, cautions %q", s.Name, err, len(w.Steps), w.Cautions)
		}
		if eto := results["eto"].Value.Number; !(eto > 0.1 && eto < 10) {
			t.Errorf("%s bare: eto is %g", s.Name, eto)
		}
	}
}

// The sheets give the examples that the functions give.
func TestSheetsGiveTheExamples(t *testing.T) {
	r, _, err := work(t, "evaporation-day", map[string]string{"latitude": "50.8deg", "day_of_year": "187", "altitude": "100m", "tmax": "21.5degC", "tmin": "12.3degC",
		"rh_max": "84%", "rh_min": "63%", "wind": "10km/h", "wind_height": "10m", "sunshine": "9.25h"})
	if err != nil {
		t.Fatal(err)
	}
	near(t, r, "eto", 3.88, 0.005)
	near(t, r, "rn", 13.28, 0.005)
	near(t, r, "ea", 1.409, 0.0005)
	r, _, err = work(t, "evaporation-hour", map[string]string{"latitude": "16.2167deg", "longitude": "-16.25deg", "zone_meridian": "-15deg", "day_of_year": "274", "hour": "14.5h",
		"altitude": "8m", "temperature": "38degC", "rh": "52%", "wind": "3.3m/s", "radiation": "2.45MJ/m2h"})
	if err != nil {
		t.Fatal(err)
	}
	near(t, r, "eto", 0.63, 0.005)
	near(t, r, "g", 0.175, 0.0005)
	r, _, err = work(t, "evaporation-day", map[string]string{"latitude": "45.7167deg", "day_of_year": "196", "tmax": "26.6degC", "tmin": "14.8degC", "method": "hargreaves"})
	if err != nil {
		t.Fatal(err)
	}
	near(t, r, "eto", 5.0, 0.05)
	if len(r["eto_by_method"].ByMethod) != 2 {
		t.Errorf("methods: %v", r["eto_by_method"].ByMethod)
	}
}

func TestSheetRefusals(t *testing.T) {
	for says, args := range map[string]map[string]string{
		"exchanged":              {"tmax": "10degC", "tmin": "20degC"},
		"do not fit a day":       {"sunshine": "20h"},
		"says nothing alone":     {"rh_min": "40%"},
		"whole number":           {"day_of_year": "1.5"},
		"highest humidity 40 % ": {"rh_max": "40%", "rh_min": "60%"},
	} {
		if _, _, err := work(t, "evaporation-day", args); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v: got %v, want an error saying %q", args, err, says)
		}
	}
	if _, _, err := work(t, "evaporation-hour", map[string]string{"longitude": "-16deg", "zone_meridian": "75deg"}); err == nil || !strings.Contains(err.Error(), "east positive") {
		t.Errorf("a sign left out: %v", err)
	}
	_, w, err := work(t, "evaporation-hour", map[string]string{"longitude": "-16deg", "zone_meridian": "15deg"})
	if err != nil || !strings.Contains(strings.Join(w.Cautions, " "), "look at the signs") {
		t.Errorf("a sign that may be left out: %v, %q", err, w.Cautions)
	}
}
