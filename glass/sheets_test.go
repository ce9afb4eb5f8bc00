package glass

import (
	"math"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/sheet"
)

func work(t *testing.T, name string, args map[string]string) (sheet.Worked, error) {
	t.Helper()
	for _, s := range Sheets() {
		if s.Name == name {
			given, err := s.Read(args)
			if err != nil {
				t.Fatal(err)
			}
			return s.Work(given)
		}
	}
	t.Fatalf("no sheet %q", name)
	return sheet.Worked{}, nil
}

func result(t *testing.T, w sheet.Worked, name string) float64 {
	t.Helper()
	for _, r := range w.Results {
		if r.Name == name {
			return r.Value.Number
		}
	}
	t.Fatalf("%s has no result %q", w.Sheet.Name, name)
	return 0
}

func TestSheetsAnswerBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := work(t, s.Name, nil)
		if err != nil || len(w.Steps) == 0 || len(w.Results) == 0 {
			t.Errorf("%s: %v, %d steps, %d results", s.Name, err, len(w.Steps), len(w.Results))
		}
		for _, r := range w.Results {
			if math.IsNaN(r.Value.Number) || math.IsInf(r.Value.Number, 0) {
				t.Errorf("%s: %s is %g", s.Name, r.Name, r.Value.Number)
			}
		}
	}
}

func TestSheetsGivePublishedNumbers(t *testing.T) {
	w, err := work(t, "glass-light", map[string]string{"panes": "1", "thickness": "2.3mm", "extinction": "32/m", "incidence": "60deg"})
	if err != nil {
		t.Fatal(err)
	}
	check.That(t, result(t, w, "transmitted"), check.Published{Source: "duffie-beckman", At: "example 5.3.1, transmitted, by the sheet", Value: "0.768", Unit: "fraction", Standing: "remembered"})
	check.That(t, result(t, w, "absorbed"), check.Published{Source: "duffie-beckman", At: "example 5.3.1, absorbed, by the sheet", Value: "0.085", Unit: "fraction", Standing: "remembered"})
	w, err = work(t, "overhang", map[string]string{"sun_altitude": "50deg", "sun_azimuth": "210deg", "facing": "180deg", "depth": "0.9m"})
	if err != nil {
		t.Fatal(err)
	}
	check.That(t, result(t, w, "profile_angle"), check.Published{Source: "duffie-beckman", At: "profile angle, altitude 50 deg, 30 deg beside, by the sheet", Value: "53.99", Unit: "deg", Standing: "own"})
	check.That(t, result(t, w, "shadow"), check.Published{Source: "duffie-beckman", At: "shadow of 0.9 m there, by the sheet", Value: "1.239", Unit: "m", Standing: "own"})
}

// An endless overhang shades what its shadow covers; one of the window's width less, with the sun beside.
func TestOverhangSheet(t *testing.T) {
	sun := map[string]string{"latitude": "-40deg", "declination": "-10deg", "solar_time": "14:30", "facing": "0deg", "depth": "0.6m", "gap": "0.2m", "height": "1.5m"}
	long, err := work(t, "overhang", sun)
	if err != nil {
		t.Fatal(err)
	}
	want := math.Max(0, math.Min(1, (result(t, long, "shadow")-0.2)/1.5))
	check.Balance(t, result(t, long, "shaded"), want, "shaded by an endless overhang")
	sun["width"] = "1.2m"
	short, err := work(t, "overhang", sun)
	if err != nil {
		t.Fatal(err)
	}
	if a, b := result(t, short, "shaded"), result(t, long, "shaded"); !(a < b && a > 0) {
		t.Errorf("shaded %g by a short overhang, %g by an endless one", a, b)
	}
	behind, err := work(t, "overhang", map[string]string{"facing": "0deg"})
	if err != nil || result(t, behind, "shaded") != 1 || !strings.Contains(strings.Join(behind.Cautions, " "), "no direct sun") {
		t.Errorf("a window facing away: %v, shaded %g, %q", err, result(t, behind, "shaded"), behind.Cautions)
	}
	for _, wrong := range []map[string]string{{"sun_altitude": "30deg"}, {"solar_time": "25:00"}, {"solar_time": "noon"}, {"left": "1m"}, {"width": "1m", "left": "-2m"}} {
		if w, err := work(t, "overhang", wrong); err == nil {
			t.Errorf("%v passed: %+v", wrong, w.Results)
		}
	}
}

func TestClockHours(t *testing.T) {
	for text, want := range map[string]float64{"10:30": 10.5, "10.5h": 10.5, "10.5": 10.5, " 0 ": 0, "24": 24} {
		if got, err := clockHours(text); err != nil || got != want {
			t.Errorf("%q: %g, %v, want %g", text, got, err, want)
		}
	}
	for _, text := range []string{"24.5", "-1", "10:60", "10.5:30", "h", "NaN"} {
		if got, err := clockHours(text); err == nil {
			t.Errorf("%q passed as %g", text, got)
		}
	}
}

func FuzzClockHours(f *testing.F) {
	for _, seed := range []string{"10:30", "10.5h", "24", "1e1:59.999"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if h, err := clockHours(text); err == nil && !(h >= 0 && h <= 24) {
			t.Errorf("%q passed as %g h", text, h)
		}
	})
}
