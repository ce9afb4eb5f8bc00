package ground

import (
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/sheet"
	"suffice/soil"
)

func work(t *testing.T, name string, args map[string]string) (map[string]float64, error) {
	t.Helper()
	for _, s := range Sheets() {
		if s.Name != name {
			continue
		}
		values, err := s.Read(args)
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.Work(values)
		got := make(map[string]float64)
		for _, r := range w.Results {
			if r.Value.Kind == sheet.Number {
				got[r.Name] = r.Value.Number
			}
		}
		if err == nil && (len(w.Steps) < 3 || len(w.Cautions) == 0) {
			t.Errorf("%s: %d steps, %d cautions", name, len(w.Steps), len(w.Cautions))
		}
		return got, err
	}
	t.Fatalf("no sheet %q", name)
	return nil, nil
}

// The sheets answer bare and otherwise with what the package computes.
func TestGroundSheets(t *testing.T) {
	sandy := Floor{Area: 100, Perimeter: 40, Wall: 0.3, Ground: soil.Ground{Conductivity: 2}, Inside: InsideDown, Outside: Outside}
	got, err := work(t, "ground-floor", nil)
	if err != nil {
		t.Fatal(err)
	}
	check.Balance(t, got["u"], sandy.On(), "u")
	check.Balance(t, got["characteristic_dimension"], 5, "characteristic dimension")
	check.Balance(t, got["equivalent_thickness"], 0.72, "equivalent thickness")
	got, err = work(t, "ground-floor", map[string]string{"edge_depth": "0.6m", "insulation": "0.5m2K/W", "edge": "lying"})
	if err != nil {
		t.Fatal(err)
	}
	sandy.Resists = 0.5
	check.Balance(t, got["u"], sandy.OnEdged(Edge{Reach: 0.6, Thickness: 0.05, Resistance: 1.43}), "u with edge")
	got, err = work(t, "ground-temperature", map[string]string{"depth": "3m", "day_of_year": "217.5"})
	if err != nil {
		t.Fatal(err)
	}
	check.Balance(t, got["temperature"], float64(kusuda().At(quantity.Metres(3), 217.5)), "temperature")
	check.Balance(t, got["damping_depth"], float64(kusuda().Damping()), "damping depth")
	check.Balance(t, got["lag"], kusuda().Lag(3), "lag")
}

func TestGroundSheetsRefuse(t *testing.T) {
	for part, args := range map[string]map[string]string{
		"no resistance at all": {"wall": "0m", "inside": "0m2K/W", "outside": "0m2K/W"},
		"which cannot be":      {"edge_depth": "10m", "edge_resistance": "50m2K/W", "area": "10m2", "perimeter": "13m"},
	} {
		if _, err := work(t, "ground-floor", args); err == nil || !strings.Contains(err.Error(), part) {
			t.Errorf("%v: %v", args, err)
		}
	}
}
