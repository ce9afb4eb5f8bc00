package water

import (
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/sheet"
)

func named(t rapid.TB, name string) sheet.Sheet {
	t.Helper()
	for _, s := range Sheets() {
		if s.Name == name {
			return s
		}
	}
	t.Fatalf("no sheet %s", name)
	return sheet.Sheet{}
}

// work works a sheet and gives its numbers by name.
func work(t rapid.TB, name string, inputs map[string]sheet.Value) map[string]float64 {
	t.Helper()
	s := named(t, name)
	w, err := s.Work(inputs)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	got := map[string]float64{}
	for _, r := range w.Results {
		got[r.Name] = r.Value.Number
	}
	return got
}

// write works a sheet from what a person wrote.
func write(t rapid.TB, name string, args map[string]string) map[string]float64 {
	t.Helper()
	s := named(t, name)
	values, err := s.Read(args)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return work(t, name, values)
}

func TestSheetsWorkBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil || len(w.Results) == 0 || len(w.Steps) == 0 || len(w.Cautions) == 0 {
			t.Errorf("%s: %d results, %d steps, %d cautions, %v", s.Name, len(w.Results), len(w.Steps), len(w.Cautions), err)
		}
	}
}

func TestSheetsOnPublishedExamples(t *testing.T) {
	check.That(t, write(t, "roof-yield", map[string]string{"roof": "200m2", "rain": "750mm", "coefficient": "0.8", "wetting_loss": "24mm"})["yield"],
		check.Published{Source: "enhealth-rainwater", At: "appendix B, by the sheet", Value: "116160", Unit: "L"})
	check.That(t, write(t, "tank-dry-season", nil)["capacity"], check.Published{Source: "rwh-lesson-demand", At: "by the sheet, bare", Value: "3000", Unit: "L"})
	check.That(t, write(t, "mass-curve", nil)["capacity"], check.Published{Source: "sequent-peak", At: "by the sheet, bare", Value: "6", Unit: "kL"})
	check.That(t, write(t, "first-flush", map[string]string{"depth": "5mm"})["remaining_contamination"], check.Published{Source: "martinson-first-flush", At: "5 mm, by the sheet", Value: "0.031", Unit: ""})
	check.That(t, write(t, "tank-steps", nil)["total_yield"], check.Published{Source: "fewkes-butler", At: "after spillage, by the sheet, bare", Value: "12", Unit: "kL", Standing: "own"})
	check.That(t, write(t, "tank-steps", map[string]string{"rule": "before-spillage"})["total_spill"], check.Published{Source: "fewkes-butler", At: "before spillage, spill by the sheet", Value: "1", Unit: "kL", Standing: "own"})
}

// The simplified approaches stand beside the dry season where the yield is given.
func TestSimplifiedBesideDrySeason(t *testing.T) {
	s := named(t, "tank-dry-season")
	values, err := s.Read(map[string]string{"people": "4", "demand_per_person": "50L/person/d", "yearly_yield": "57600L"})
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.Work(values)
	if err != nil {
		t.Fatal(err)
	}
	by := w.Results[len(w.Results)-1].ByMethod
	check.That(t, by["simplified"], check.Published{Source: "en16941-1", At: "5 % of the lesser, by the sheet", Value: "2880", Unit: "L", Standing: "own"})
	check.That(t, by["simplified-german"], check.Published{Source: "din1989-1", At: "6 % of the lesser, by the sheet", Value: "3456", Unit: "L", Standing: "own"})
}

func TestFaultyInputsAreRefused(t *testing.T) {
	for name, args := range map[string]map[string]string{
		"tank-steps": {"start": "9kL"}, "mass-curve": {"passes": "1.5"}, "uses-hour": {"drawn_per_litre": "1,1"},
	} {
		s := named(t, name)
		values, err := s.Read(args)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.Work(values); err == nil {
			t.Errorf("%s took %v", name, args)
		}
	}
}

// Any hour of any works, worked again by its sheets, gives the same to the last bit.
func TestSheetsTellTheHour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := build(t, drawDesign(t))
		s := w.Start()
		for range rapid.IntRange(1, 6).Draw(t, "hours") {
			h := drawHour(t, s)
			income, asked, out := live(w, &s, h)
			retell(t, w, h, s, income, asked, out)
		}
	})
}

// retell works the sheets of an hour and holds them against what the hour did.
func retell(t *rapid.T, w *Works, h Hour, after State, income IncomeOut, asked, out TapsOut) {
	var told struct{ wetted, missed, diverted, caught, drawn quantity.Litres }
	roof, tank := 0, 0
	for _, part := range w.Tell(h) {
		got := work(t, part.Sheet, part.Inputs)
		switch part.Sheet {
		case "roof-hour":
			told.wetted += quantity.Litres(got["wetted"])
			told.missed += quantity.Litres(got["missed"])
			told.diverted += quantity.Litres(got["diverted"])
			told.caught += quantity.Litres(got["passed"])
			same(t, "snow", got["snow_after"], float64(after.Snow))
			same(t, "film", got["film_after"], float64(after.Roofs[roof].Film))
			same(t, "flushed", got["flushed_after"], float64(after.Roofs[roof].Flushed))
			roof++
		case "tank-hour":
			i := w.order[tank]
			same(t, "held", got["held_after"], float64(after.Tanks[i].Held))
			same(t, "short of what it was asked", got["short"], 0)
			told.drawn += quantity.Litres(got["drawn"])
			tank++
		case "uses-hour":
			retellTaps(t, got, asked, out)
		}
	}
	same(t, "wetted", float64(told.wetted), float64(income.Wetted))
	same(t, "missed", float64(told.missed), float64(income.Missed))
	same(t, "diverted", float64(told.diverted), float64(income.Diverted))
	same(t, "caught", float64(told.caught), float64(income.Caught))
	check.Balance(t, float64(told.drawn), float64(out.Drawn), "drawn from all tanks")
}

func retellTaps(t *rapid.T, got map[string]float64, asked, out TapsOut) {
	same(t, "pump asked", got["pump_asked"], float64(asked.Pump))
	same(t, "treatment asked", got["treatment_asked"], float64(asked.Treatment))
	for k := range Kinds {
		same(t, k.String()+" served", got[k.String()+"_served"], float64(out.Served[k]))
		same(t, k.String()+" short", got[k.String()+"_short"], float64(out.Short[k]))
	}
	for why := range Causes {
		same(t, why.String(), got["short_"+why.key()], float64(out.Cause[why]))
	}
	same(t, "drawn", got["drawn"], float64(out.Drawn))
	same(t, "backwash", got["backwash"], float64(out.Backwash))
	same(t, "pump", got["pump"], float64(out.Pump))
	same(t, "treatment", got["treatment"], float64(out.Treatment))
	same(t, "unused", got["unused"], float64(out.Unused))
}

func same(t *rapid.T, what string, got, want float64) {
	if got != want {
		t.Fatalf("%s: the sheet gives %v, the hour %v", what, got, want)
	}
}
