package waste

import (
	"math"
	"testing"

	"suffice/internal/check"
)

const perInch = 60 / 25.4 // s/mm of one minute per inch

func field(t *testing.T, rule string, h House, rate float64) float64 {
	t.Helper()
	a, err := tryField(t, rule, h, rate)
	if err != nil {
		t.Fatalf("%s of %+v at %g s/mm: %v", rule, h, rate, err)
	}
	return a
}

func tryField(t *testing.T, rule string, h House, rate float64) (float64, error) {
	t.Helper()
	for _, r := range FieldRules() {
		if r.Name == rule {
			return r.Area(h, rate, false)
		}
	}
	t.Fatalf("no rule %s", rule)
	return 0, nil
}

func TestFieldOfBritain(t *testing.T) {
	a := field(t, "uk-bs6297", House{People: 5}, 18)
	check.That(t, a, check.Published{Source: "bs6297", At: "P 5, Vp 18", Value: "22.5", Unit: "m2"})
	check.That(t, TrenchLength(a, 0.6), check.Published{Source: "bs6297", At: "P 5, Vp 18, 0.6 m wide", Value: "37.5", Unit: "m"})
	treated, err := FieldRules()[0].Area(House{People: 5}, 18, true)
	if err != nil {
		t.Fatal(err)
	}
	check.That(t, treated, check.Published{Source: "bs6297", At: "2007, treated, P 5, Vp 18", Value: "18.0", Unit: "m2", Standing: "remembered"})
	for _, rate := range []float64{11, 101} {
		if a, err := tryField(t, "uk-bs6297", House{People: 5}, rate); err == nil {
			t.Errorf("%g s/mm was given %g m2", rate, a)
		}
	}
}

// The lengths were seen, three cells of them lost in the scan: those are worked out.
func TestFieldOfNewYork(t *testing.T) {
	at := [6]float64{3, 6.5, 9, 13, 18, 25} // min/inch, one in each row
	for beds, lengths := range map[int][6]float64{3: {162, 195, 217, 244, 279, 325}, 4: {217, 260, 290, 325, 372, 433}, 5: {271, 325, 360, 406, 464, 542}, 6: {325, 390, 433, 488, 557, 650}} {
		for i, want := range lengths {
			got := field(t, "usa-new-york", House{Bedrooms: beds}, at[i]*perInch) / squareFoot / 2
			if math.Abs(got-want) > 1.2 {
				t.Errorf("%d bedrooms at %g min/inch: %.1f feet, printed %g", beds, at[i], got, want)
			}
		}
	}
	length := func(t *testing.T, beds int, minutes float64) float64 {
		return field(t, "usa-new-york", House{Bedrooms: beds}, minutes*perInch) / squareFoot / 2
	}
	check.That(t, length(t, 3, 9), check.Published{Source: "newyork75a", At: "3 bedrooms, 8-10 min/inch, 2 feet wide", Value: "217", Unit: "feet"})
	check.That(t, length(t, 6, 25), check.Published{Source: "newyork75a", At: "6 bedrooms, 21-30 min/inch, 2 feet wide", Value: "650", Unit: "feet"})
	check.That(t, length(t, 5, 9), check.Published{Source: "newyork75a", At: "5 bedrooms, 8-10 min/inch, 2 feet wide", Value: "360", Unit: "feet", Within: 1.2, Why: "the printed lengths are rounded by up to a foot, some up, some down"})
	if _, err := tryField(t, "usa-new-york", House{Bedrooms: 3}, 31*perInch); err == nil {
		t.Error("ground of 31 min/inch was given a trench")
	}
}

func TestFieldsByRoots(t *testing.T) {
	dakota := func(minutes float64) float64 {
		return field(t, "usa-south-dakota", House{Daily: 750 * gallon}, minutes*perInch) / squareFoot
	}
	check.That(t, dakota(16), check.Published{Source: "southdakota", At: "750 US gallons, 16 min/inch", Value: "600", Unit: "feet2", Standing: "own"})
	check.That(t, dakota(36), check.Published{Source: "southdakota", At: "750 US gallons, 36 min/inch", Value: "900", Unit: "feet2", Standing: "own"})
	check.That(t, SouthDakotaRate(25), check.Published{Source: "southdakota", At: "25 min/inch, metric", Value: "40.7", Unit: "L/m2/d", Within: 0.1, Why: "5 gallons on a square foot over sqrt(25) is 40.746, and 203.7/5 rounds to 40.7", Standing: "own"})
	check.That(t, IndiaRate(25), check.Published{Source: "is2470", At: "130/sqrt(25)", Value: "26.0", Unit: "L/m2/d"})
	check.That(t, field(t, "india-is2470", House{Daily: 260}, 25*perInch), check.Published{Source: "is2470", At: "260 L a day at 26 L/m2d", Value: "10", Unit: "m2", Standing: "own"})
	check.That(t, 1-IndiaRate(25)/SouthDakotaRate(25), check.Published{Source: "is2470", At: "below the South Dakota rate", Value: "0.36", Unit: "", Standing: "own"})
	if _, err := tryField(t, "india-is2470", House{Daily: 260}, 61*perInch); err == nil {
		t.Error("ground of 61 min/inch was given a trench")
	}
}

func TestFieldsByBedroom(t *testing.T) {
	each := func(rule string, minutes float64) float64 {
		return field(t, rule, House{Bedrooms: 1}, minutes*perInch) / squareFoot
	}
	for minutes, want := range map[float64]float64{2: 85, 3: 100, 4: 115, 5: 125, 10: 165, 15: 190, 30: 250, 45: 300} {
		if got := each("usa-usphs", minutes); math.Abs(got-want) > 0.5 {
			t.Errorf("%g min/inch: %g square feet, printed %g", minutes, got, want)
		}
	}
	check.That(t, each("usa-usphs", 60), check.Published{Source: "usphs-septic", At: "60 min/inch", Value: "330", Unit: "feet2/bedroom"})
	for minutes, want := range map[float64]float64{60: 200, 90: 210, 120: 235, 150: 265, 180: 290, 240: 320, 300: 350} {
		if got := each("usa-illinois", minutes/6); math.Abs(got-want) > 0.5 {
			t.Errorf("%g min for 6 inches: %g square feet, printed %g", minutes, got, want)
		}
	}
	check.That(t, each("usa-illinois", 360.0/6), check.Published{Source: "illinois905", At: "360 min for 6 inches", Value: "385", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 10), check.Published{Source: "us-county-septic", At: "1-10 min/inch", Value: "165", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 45), check.Published{Source: "us-county-septic", At: "31-45 min/inch", Value: "300", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 120), check.Published{Source: "us-county-septic", At: "61-120 min/inch", Value: "600", Unit: "feet2/bedroom"})
	if _, err := tryField(t, "usa-usphs", House{Bedrooms: 1}, 61*perInch); err == nil {
		t.Error("ground of 61 min/inch was given a trench")
	}
}

// On one ground the published rules differ by nearly two.
func TestRulesDiffer(t *testing.T) {
	newYork := field(t, "usa-new-york", House{Bedrooms: 3}, 18)
	check.That(t, newYork, check.Published{Source: "newyork75a", At: "3 bedrooms at 18 s/mm", Value: "40", Unit: "m2", Standing: "own"})
	if ratio := newYork / field(t, "uk-bs6297", House{People: 5}, 18); ratio < 1.7 || ratio > 2 {
		t.Errorf("ratio %.2f of the two rules, want nearly two", ratio)
	}
}

func TestSoilsByTable(t *testing.T) {
	rate := func(soil, table string) SoilRate {
		for _, r := range SoilRates() {
			if r.Soil == soil && r.Table == table {
				return r
			}
		}
		t.Fatalf("no %s in %s", soil, table)
		return SoilRate{}
	}
	check.That(t, rate("sand", "epa-2002").Septic/mmPerGallon, check.Published{Source: "epa2002", At: "table 4-3, sand, septic effluent", Value: "0.8", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, rate("clay-strong", "epa-2002").Treated/mmPerGallon, check.Published{Source: "epa2002", At: "table 4-3, clay, strong blocky, treated", Value: "0.3", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, 10/mmPerGallon, check.Published{Source: "clogged-clay", At: "1.0 cm/d in US gallons on a square foot", Value: "0.24", Unit: "US-gallon/feet2/d", Within: 0.0055, Why: "0.2454 is printed cut, not rounded"})
	area, err := LoadingArea(750, rate("loam-strong", "as-nzs-1547-2012"), false)
	if err != nil {
		t.Fatal(err)
	}
	check.That(t, TrenchLength(area, 0.6), check.Published{Source: "asnzs1547", At: "750 L a day, 15 mm/d, 0.6 m wide", Value: "83.3", Unit: "m", Standing: "remembered"})
	if a, err := LoadingArea(750, rate("clay-massive", "epa-2002"), false); err == nil {
		t.Errorf("massive clay was given %g m2", a)
	}
	check.That(t, PlumbingSoils()[4].Area(1000*gallon)/squareFoot, check.Published{Source: "upc-septic", At: "clay with little sand, 1,000 US gallons", Value: "1200", Unit: "feet2", Standing: "remembered"})
}

func TestDistances(t *testing.T) {
	at := func(table, from, to string) float64 {
		rows, err := tableNamed(table)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			if r.From == from && r.To == to {
				return r.Least
			}
		}
		t.Fatalf("no %s to %s in %s", from, to, table)
		return 0
	}
	check.That(t, at("usa-county", "field", "well")/foot, check.Published{Source: "us-county-septic", At: "field to private well", Value: "100", Unit: "feet"})
	check.That(t, at("usa-county", "tank", "building")/foot, check.Published{Source: "us-county-septic", At: "tank to building", Value: "5", Unit: "feet"})
	check.That(t, at("usa-county", "field", "basement")/foot, check.Published{Source: "us-county-septic", At: "field to basement", Value: "25", Unit: "feet"})
	check.That(t, at("england", "field", "well"), check.Published{Source: "ad-h2", At: "groundwater abstraction, as quoted", Value: "50", Unit: "m"})
	check.That(t, at("england", "field", "water table"), check.Published{Source: "ad-h2", At: "above the winter water table, as quoted", Value: "1.2", Unit: "m"})
	check.That(t, at("india", "field", "trees"), check.Published{Source: "is2470", At: "summary, trees", Value: "3", Unit: "m"})
}

func TestTreesDrink(t *testing.T) {
	g := UsualGrove(1)
	water := float64(g.WaterAt(30, 5))
	check.That(t, water, check.Published{Source: "fao56", At: "Kc 1.10, ETo 5 mm, crown 20 m2", Value: "110", Unit: "L/d", Standing: "own"})
	if water < 10 || water > 1180 {
		t.Errorf("%g L a day is outside the 10 to 1,180 that wullschleger found in whole trees", water)
	}
	for day := range 366 {
		if bare := day+1 <= 105 || day+1 >= 310; bare != (g.Leaves.Leaf(day+1, false) == 0) {
			t.Errorf("day %d: leaf share %g", day+1, g.Leaves.Leaf(day+1, false))
		}
	}
	if north, south := g.Leaves.Leaf(196, false), g.Leaves.Leaf(196, true); north != 1 || south != 0 {
		t.Errorf("mid July: leaf share %g in the north, %g in the south", north, south)
	}
	for age, want := range map[float64]string{4.9: "no", 5: "may", 9.9: "may", 10: "yes"} {
		if got := PecansBear().Bears(age); got != want {
			t.Errorf("a pecan of %g years: %s, want %s", age, got, want)
		}
	}
}
