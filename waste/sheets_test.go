package waste

import (
	"math"
	"slices"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/sheet"
)

func write(t *testing.T, name string, args map[string]string) (sheet.Worked, error) {
	t.Helper()
	for _, s := range Sheets() {
		if s.Name == name {
			values, err := s.Read(args)
			if err != nil {
				return sheet.Worked{}, err
			}
			return s.Work(values)
		}
	}
	t.Fatalf("no sheet %s", name)
	return sheet.Worked{}, nil
}

func result(t *testing.T, name, what string, args map[string]string) sheet.Result {
	t.Helper()
	w, err := write(t, name, args)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	for _, r := range w.Results {
		if r.Name == what {
			return r
		}
	}
	t.Fatalf("%s has no result %s", name, what)
	return sheet.Result{}
}

func TestSheetsWorkBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil || len(w.Results) == 0 || len(w.Steps) == 0 || len(w.Cautions) < 4 {
			t.Errorf("%s: %d results, %d steps, %d cautions, %v", s.Name, len(w.Results), len(w.Steps), len(w.Cautions), err)
		}
		for _, r := range w.Results {
			if math.IsInf(r.Value.Number, 0) || math.IsNaN(r.Value.Number) {
				t.Errorf("%s: %s is %g", s.Name, r.Name, r.Value.Number)
			}
		}
	}
}

func TestSheetsOnPublishedExamples(t *testing.T) {
	check.That(t, result(t, "septic-tank", "volume", map[string]string{"people": "8"}).Value.Number, check.Published{Source: "nhbc2020", At: "8 people, by the sheet", Value: "3440", Unit: "L"})
	check.That(t, result(t, "percolation", "rate", nil).Value.Number, check.Published{Source: "bs6297", At: "by the sheet, bare", Value: "18", Unit: "s/mm"})
	check.That(t, result(t, "drain-area", "area", nil).Value.Number, check.Published{Source: "bs6297", At: "by the sheet, bare", Value: "22.5", Unit: "m2"})
	check.That(t, result(t, "drain-area", "length", nil).Value.Number, check.Published{Source: "bs6297", At: "length by the sheet, bare", Value: "37.5", Unit: "m"})
	by := result(t, "drain-area", "by_method", map[string]string{"soil": "loam-strong", "daily_flow": "750L/d"}).ByMethod
	check.That(t, by["as-nzs-1547-2012"], check.Published{Source: "asnzs1547", At: "750 L a day at 15 mm/d, by the sheet", Value: "50", Unit: "m2", Standing: "own"})
	check.That(t, result(t, "trench-trees", "water", nil).Value.Number, check.Published{Source: "fao56", At: "Kc 1.10, ETo 5 mm, crown 20 m2, by the sheet", Value: "110", Unit: "L", Standing: "own"})
}

func TestPlaceDecides(t *testing.T) {
	args := map[string]string{"place": "south-africa", "method": "usa-upc"}
	if got := result(t, "septic-tank", "volume", args).Value.Number; got != 7000 {
		t.Errorf("South Africa's by-law gives %g L, want 7000", got)
	}
	if got := result(t, "septic-tank", "method_used", args).Value.Text; got != "south-africa-bylaw" {
		t.Errorf("ruled by %s", got)
	}
	for _, p := range Places() {
		if _, ok := Ruling(p); !ok {
			t.Errorf("no rule for %s", p)
		}
	}
	if r, ok := Ruling("elsewhere"); ok {
		t.Errorf("elsewhere is ruled by %s", r.Name)
	}
}

// A rule stretched beyond the flows it is printed for is told.
func TestStretchedRuleIsTold(t *testing.T) {
	for flow, want := range map[string]bool{"1476L/d": true, "3000L/d": false} {
		w, err := write(t, "drain-area", map[string]string{"daily_flow": flow})
		if err != nil {
			t.Fatal(err)
		}
		told := slices.ContainsFunc(w.Cautions, func(c string) bool { return strings.Contains(c, "stretched") })
		if told != want {
			t.Errorf("%s: told %v, want %v: %q", flow, told, want, w.Cautions)
		}
	}
}

// The spread of published rules is told, and so is who refuses.
func TestSpreadIsTold(t *testing.T) {
	if got := result(t, "drain-area", "spread", nil).Value.Number; got < 1.7 {
		t.Errorf("spread %g, want nearly twofold or more", got)
	}
	if got := len(result(t, "septic-tank", "by_method", nil).ByMethod); got != len(TankRules()) {
		t.Errorf("%d rules side by side, want %d", got, len(TankRules()))
	}
	if got := result(t, "drain-area", "by_method", nil).ByMethod; len(got) != len(FieldRules()) {
		t.Errorf("%d rules side by side, want %d", len(got), len(FieldRules()))
	}
}

func TestOwnSetbacks(t *testing.T) {
	args := map[string]string{"table": "field to well 30 m, tank to building 2m", "plan": "field to well 12m, tank to building 2m, field to flush well 1m"}
	if got := result(t, "setbacks", "breaches", args).Value.Text; got != "field to well: 12 m planned, 30 m asked for" {
		t.Errorf("breaches %q", got)
	}
	if got := result(t, "setbacks", "distances", args).ByMethod["field to well"]; got != 30 {
		t.Errorf("distance %g m, want 30", got)
	}
	if got := result(t, "setbacks", "trees_conflict", nil).Value.Text; got == "none" {
		t.Error("trees on the trench raise no conflict")
	}
}

func TestFaultyInputsAreRefused(t *testing.T) {
	for _, c := range []struct {
		name string
		args map[string]string
	}{
		{"septic-tank", map[string]string{"people": "0"}}, {"septic-tank", map[string]string{"bedrooms": "2.5"}}, {"septic-tank", map[string]string{"method": "usa-upc", "bedrooms": "9"}},
		{"drain-area", map[string]string{"rate": "130s/mm"}}, {"drain-area", map[string]string{"method": "epa-2002"}}, {"drain-area", map[string]string{"method": "epa-2002", "soil": "clay-massive"}},
		{"setbacks", map[string]string{"table": "well 30"}}, {"setbacks", map[string]string{"plan": "field to well"}}, {"trench-day", map[string]string{"long": "50mm/d"}},
		{"trench-day", map[string]string{"trees": "1.5"}}, {"tank-day", map[string]string{"sludge": "3001L"}},
	} {
		if w, err := write(t, c.name, c.args); err == nil {
			t.Errorf("%s took %v: %+v", c.name, c.args, w.Results)
		}
	}
}

// The sheet of a trench's day gives the step's numbers to the last bit.
func TestSheetIsTheStep(t *testing.T) {
	g := Trench{Length: 30, Width: 0.6, Gravel: 0.3, Pores: 0.35, Catch: 18, RunsOff: 0.3, Cover: 720, Soil: Soil{Fresh: 40, Long: 8.1, Clogs: UsualClogs}, Grass: 1, Grove: UsualGrove(3)}
	for _, rain := range []string{"0mm", "80mm"} {
		s := TrenchState{Gravel: 600, Cover: 200, Mat: 1}
		g.Day(&s, &TrenchDayIn{Day: 196, Age: 12})
		mm, err := quantity.ReadIn(rain, "mm")
		if err != nil {
			t.Fatal(err)
		}
		var out TrenchOut
		g.Step(&s, &TrenchIn{Hours: 24, Inflow: 1900, Load: Load{60, 45, 20}, Rain: quantity.Millimetres(mm), Reference: 5}, &out)
		args := map[string]string{"rain": rain, "inflow": "1900L"}
		for name, want := range map[string]float64{"infiltrated": float64(out.Infiltrated), "surfaced": float64(out.Surfaced), "trees": float64(out.Trees), "grass": float64(out.Grass), "gravel_after": float64(s.Gravel), "nitrogen_to_trees": out.Taken.Nitrogen} {
			if got := result(t, "trench-day", name, args).Value.Number; got != want {
				t.Errorf("%s with %s: the sheet gives %v, the step %v", name, rain, got, want)
			}
		}
	}
}
