package sun

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

func TestSheetsAnswerBare(t *testing.T) {
	for _, s := range Sheets() {
		results, w, err := work(t, s.Name, nil)
		if err != nil || len(w.Steps) == 0 || len(s.Sources) == 0 || len(w.Cautions) == 0 {
			t.Errorf("%s bare: %v, %d steps, %d cautions", s.Name, err, len(w.Steps), len(w.Cautions))
		}
		for name, r := range results {
			if r.Value.Kind == sheet.Number && r.ByMethod == nil && (math.IsNaN(r.Value.Number) || math.IsInf(r.Value.Number, 0)) {
				t.Errorf("%s bare: %s is %v", s.Name, name, r.Value.Number)
			}
		}
	}
}

// near compares a result of a sheet with a number.
func near(t *testing.T, results map[string]sheet.Result, name string, want, within float64) {
	t.Helper()
	if r, ok := results[name]; !ok || math.Abs(r.Value.Number-want) > within {
		t.Errorf("%s is %v, want %g within %g", name, r.Value.Number, want, within)
	}
}

// The sheet gives what the functions give, which the published tests hold.
func TestPositionSheet(t *testing.T) {
	r, _, err := work(t, "sun-position", map[string]string{"latitude": "39.742476deg", "longitude": "-105.1786deg", "time": "2003-10-17T12:30:30-07:00",
		"altitude": "1830.14m", "pressure": "820mbar", "temperature": "11degC", "slope": "30deg", "azimuth": "170deg"})
	if err != nil {
		t.Fatal(err)
	}
	near(t, r, "zenith", 50.111622, 0.01)
	near(t, r, "azimuth", 194.340241, 0.01)
	near(t, r, "incidence", 25.187, 0.01)
	if got := r["sunrise"].Value.Text; !strings.HasPrefix(got, "2003-10-17T06:12:") || !strings.HasSuffix(got, "-07:00") {
		t.Errorf("sunrise is %q", got)
	}
	r, _, err = work(t, "sun-position", map[string]string{"latitude": "40deg", "day_of_year": "166", "solar_time": "14:00", "declination": "23.35deg"})
	if err != nil {
		t.Fatal(err)
	}
	near(t, r, "altitude", 59.75, 0.01)
	near(t, r, "day_length", 14.83, 0.005)
	r, _, err = work(t, "sun-position", map[string]string{"latitude": "80deg", "longitude": "0deg", "time": "2024-06-20T12:00:00Z"})
	if err != nil || !strings.Contains(r["sunrise"].Value.Text, "does not set") {
		t.Errorf("polar day: %q, %v", r["sunrise"].Value.Text, err)
	}
}

func TestPlaneLightSheet(t *testing.T) {
	second := map[string]string{"latitude": "40deg", "declination": "-11.6deg", "day_of_year": "51", "solar_time": "9.5", "slope": "60deg", "azimuth": "180deg",
		"global": "288.9W/m2", "diffuse": "221.1W/m2", "albedo": "0.6", "model": "isotropic"}
	r, w, err := work(t, "plane-light", second)
	if err != nil {
		t.Fatal(err)
	}
	near(t, r, "total", 1.17e6/3600, 0.01e6/3600)
	near(t, r, "clearness", 0.445, 0.005)
	if len(r["total_by_method"].ByMethod) != len(modelNames) || len(w.Steps) < 7 {
		t.Errorf("%d methods, %d steps", len(r["total_by_method"].ByMethod), len(w.Steps))
	}
	r, _, err = work(t, "plane-light", map[string]string{"zenith": "40deg", "sun_azimuth": "180deg", "diffuse": "100W/m2", "beam_normal": "850W/m2", "slope": "0deg"})
	if err != nil {
		t.Fatal(err)
	}
	near(t, r, "total", 100+850*math.Cos(40*degree), 1e-6)
}

func TestSheetRefusals(t *testing.T) {
	for says, args := range map[string]map[string]string{
		"go together":    {"zenith": "40deg"},
		"sun is down":    {"solar_time": "23:00"},
		"not a time":     {"solar_time": "25:00"},
		"two of global":  {"global": "500W/m2", "diffuse": "100W/m2", "beam_normal": "400W/m2"},
		"do not fit":     {"global": "100W/m2", "diffuse": "200W/m2"},
		"whole number":   {"day_of_year": "80.5"},
		"is one of":      {"model": "best"},
		"the most is 90": {"latitude": "91deg"},
	} {
		if _, _, err := work(t, "plane-light", args); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v: got %v, want an error saying %q", args, err, says)
		}
	}
	for says, args := range map[string]map[string]string{
		"not a date":      {"time": "yesterday"},
		"takes solar_tim": {"solar_time": "10:00"},
		"both slope and":  {"slope": "30deg"},
	} {
		if _, _, err := work(t, "sun-position", args); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v: got %v, want an error saying %q", args, err, says)
		}
	}
}

func FuzzClockHours(f *testing.F) {
	for _, s := range []string{"10:30", "10.5h", "10.5", "24", "-1", "1:99", "NaN", "9.5:30", ":", "1e2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if v, err := ClockHours(text); err == nil && !(v >= 0 && v <= 24) {
			t.Errorf("%q was read as %v", text, v)
		}
	})
}
