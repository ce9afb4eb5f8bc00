package reuse

import (
	"maps"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/sheet"
)

// worked works a sheet from what a person wrote.
func worked(t rapid.TB, name string, args map[string]string) sheet.Worked {
	t.Helper()
	for _, s := range Sheets() {
		if s.Name != name {
			continue
		}
		values, err := s.Read(args)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		w, err := s.Work(values)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		return w
	}
	t.Fatalf("no sheet %s", name)
	return sheet.Worked{}
}

func result(t rapid.TB, w *sheet.Worked, name string) sheet.Result {
	t.Helper()
	for _, r := range w.Results {
		if r.Name == name {
			return r
		}
	}
	t.Fatalf("%s: no result %s", w.Sheet.Name, name)
	return sheet.Result{}
}

func value(t rapid.TB, name, of string, args map[string]string) float64 {
	t.Helper()
	w := worked(t, name, args)
	return result(t, &w, of).Value.Number
}

func TestSheetsWorkBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil || len(w.Results) == 0 || len(w.Steps) == 0 || len(w.Cautions) == 0 || len(s.Sources) == 0 {
			t.Errorf("%s: %d results, %d steps, %d cautions, %v", s.Name, len(w.Results), len(w.Steps), len(w.Cautions), err)
		}
	}
}

func TestSheetsOnPublishedExamples(t *testing.T) {
	check.That(t, value(t, "soil-water", "ks", map[string]string{"depletion": "72.8mm"}), check.Published{Source: "fao56", At: "example 37, day 4, by the sheet", Value: "0.91", Unit: "", Standing: "remembered"})
	check.That(t, value(t, "soil-water", "depletion_fraction", map[string]string{"evaporation": "7mm/d"}), check.Published{Source: "fao56", At: "table 22, note, by the sheet", Value: "0.32", Unit: "", Standing: "own"})
	check.That(t, value(t, "salt-yield", "relative_yield", map[string]string{"crop": "pepper", "salinity": "3dS/m"}), check.Published{Source: "maas-1990", At: "pepper at 3 dS/m, by the sheet", Value: "79", Unit: "%", Standing: "own"})
	check.That(t, value(t, "salt-yield", "leaching", map[string]string{"salinity": "2.5dS/m", "water": "1dS/m"}), check.Published{Source: "fao29", At: "eq. 9, by the sheet", Value: "0.087", Unit: "", Standing: "own"})
	check.That(t, value(t, "sodium", "sar", nil), check.Published{Source: "fao29", At: "example of SAR, by the sheet", Value: "5.64", Unit: "", Standing: "remembered"})
	manual := map[string]string{"flow": "32m3/d", "inflow_bod": "350mg/L", "outflow_bod": "30mg/L", "people": "400"}
	check.That(t, value(t, "bed-area", "area", manual), check.Published{Source: "un-habitat-wetlands", At: "worked case, by the sheet", Value: "524.10", Unit: "m2", Standing: "remembered", Within: 0.05, Why: "the manual works with rounded logarithms"})
	w := worked(t, "bed-area", manual)
	if by := result(t, &w, "by_method").ByMethod; by["per-person"] != 2000 || by["per-person-most"] != 4000 || by["k-c-star"] == 0 || by["first-order"]*3 > by["per-person"] {
		t.Errorf("side by side: %v", by)
	}
	w = worked(t, "bed-cleaning", map[string]string{"temperature": "10degC", "flow": "570L/d"}) // a stay of a day
	check.That(t, w.Steps[1].Value, check.Published{Source: "reed-1995", At: "k at 10 degC, by the sheet", Value: "0.616", Unit: "/d", Standing: "own"})
	check.Balance(t, result(t, &w, "taken").ByMethod["mixed"], w.Steps[1].Value/(1+w.Steps[1].Value), "share taken in a day, mixed")
	small := map[string]string{"flow": "0.5m3/d", "method": "k-c-star"}
	check.That(t, value(t, "bed-area", "area", small), check.Published{Source: "kadlec-knight", At: "0.5 m3/d, 150 to 20 mg/L, by the sheet", Value: "2.82", Unit: "m2", Standing: "own"})
}

func TestFaultyInputsAreRefused(t *testing.T) {
	for name, args := range map[string]map[string]string{
		"soil-water": {"wilting_point": "0.4"}, "sodium": {"calcium": "0meq/L", "magnesium": "0meq/L"},
		"bed-area": {"method": "k-c-star", "outflow_bod": "10mg/L"}, "planter-hour": {"held": "5000L"}, "well-hour": {"least": "2m"},
	} {
		for _, s := range Sheets() {
			if s.Name != name {
				continue
			}
			values, err := s.Read(args)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := s.Work(values); err == nil {
				t.Errorf("%s took %v", name, args)
			}
		}
	}
}

// What can hurt is told where it arises.
func TestCautionsArise(t *testing.T) {
	for _, c := range []struct {
		name string
		args map[string]string
		says string
	}{
		{"greywater", map[string]string{"kitchen_to": "bed"}, "fat"},
		{"greywater", map[string]string{"state": "ill"}, "Nothing goes to the bed"},
		{"greywater", nil, "eaten raw"},
		{"planter-hour", map[string]string{"grey": "3000L"}, "over the rim"},
		{"well-hour", map[string]string{"age": "400h"}, "days old"},
		{"well-hour", nil, "Children"},
		{"salt-yield", map[string]string{"salinity": "40dS/m"}, "dies"},
		{"bed-area", nil, "rule of thumb"},
		{"bed-cleaning", map[string]string{"flow": "2kL/d"}, "too small"},
	} {
		w := worked(t, c.name, c.args)
		if !strings.Contains(strings.Join(w.Cautions, " "), c.says) {
			t.Errorf("%s %v: no caution says %q", c.name, c.args, c.says)
		}
	}
}

// A toilet on a bed with food is refused, and raw food is warned of.
func TestWarnings(t *testing.T) {
	if _, refused := Warnings(Bedding{Toilet: true, Food: true}); !refused {
		t.Error("water from a toilet on food is not refused")
	}
	say, refused := Warnings(Bedding{RawFood: true, Sprayed: true, Children: true})
	if refused || !strings.Contains(strings.Join(say, " "), "eaten raw") || len(say) != 5 {
		t.Errorf("%d warnings, refused %v", len(say), refused)
	}
}

// Any hour of a bed and of a well, worked again by its sheet, gives the same to the last bit.
func TestSheetsTellTheHour(t *testing.T) {
	write := func(args map[string]string, name string, w Water) {
		maps.Copy(args, map[string]string{name: quantity.Text(float64(w.Litres), "L"), name + "_salt": quantity.Text(w.Salt, "g"),
			name + "_bod": quantity.Text(w.BOD, "g"), name + "_nitrogen": quantity.Text(w.Nitrogen, "g")})
	}
	same := func(t *rapid.T, w *sheet.Worked, name string, want float64) {
		if got := result(t, w, name).Value.Number; got != want {
			t.Fatalf("%s: the sheet gives %v, the hour %v", name, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		b := bed(t, UsualPlanter(4, 1.5))
		s := b.Start()
		s.Soil.Litres -= quantity.Litres(between(t, "dry", 0, 300))
		s.Gravel.Load, s.Soil.Load = anyWater(t, "gravel", 100).Load, anyWater(t, "soil", 100).Load
		in := PlanterIn{Grey: anyWater(t, "grey", 900), Poured: anyWater(t, "poured", 300), Evaporation: quantity.Millimetres(between(t, "evaporation", 0, 2)),
			Crop: Crop{between(t, "coefficient", 0, 1.3), between(t, "roots", 0.1, 1), 0.4}}
		args := map[string]string{"evaporation": quantity.Text(float64(in.Evaporation), "mm"), "coefficient": quantity.Text(in.Crop.Coefficient, ""), "roots": quantity.Text(in.Crop.Roots, "m")}
		write(args, "free", s.Gravel)
		write(args, "held", s.Soil)
		write(args, "grey", in.Grey)
		write(args, "poured", in.Poured)
		w := worked(t, "planter-hour", args)
		var out PlanterOut
		b.Step(&s, &in, &out)
		same(t, &w, "evaporated", float64(out.Evaporated))
		same(t, &w, "drained", float64(out.Drained.Litres))
		same(t, &w, "drained_salt", out.Drained.Salt)
		same(t, &w, "overflowed_bod", out.Overflowed.BOD)
		same(t, &w, "bod_decayed", out.Decayed)
		same(t, &w, "held_after_nitrogen", s.Soil.Nitrogen)

		k, well := UsualWell(), WellState{Held: anyWater(t, "well", 800), Age: between(t, "age", 0, 400)}
		win := WellIn{Drained: out.Drained, Wanted: 12, Power: between(t, "power", 0, 1)}
		args = map[string]string{"age": quantity.Text(well.Age, "h"), "power": quantity.Text(win.Power, "")}
		write(args, "held", well.Held)
		write(args, "drained", win.Drained)
		w = worked(t, "well-hour", args)
		var wout WellOut
		k.Step(&well, &win, &wout)
		same(t, &w, "flushed", float64(wout.Flushed.Litres))
		same(t, &w, "flushed_bod", wout.Flushed.BOD)
		same(t, &w, "overflowed", float64(wout.Overflowed.Litres))
		same(t, &w, "age_after", well.Age)
	})
}
