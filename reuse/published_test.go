package reuse

import (
	"math"
	"testing"

	"suffice/internal/check"
)

// Tomato without rain: ten days, Ks from the depletion at the beginning of each.
func TestSoilDriesAsInExample37(t *testing.T) {
	z := RootZone{FieldCapacity: 0.32, WiltingPoint: 0.12, Depth: 0.8, Depletion: 0.40}
	check.That(t, z.Total(), check.Published{Source: "fao56", At: "example 37, TAW", Value: "160", Unit: "mm", Standing: "remembered"})
	check.That(t, z.Ready(), check.Published{Source: "fao56", At: "example 37, RAW", Value: "64", Unit: "mm", Standing: "remembered"})
	const rounding = "the printed series goes on from rounded depletions, which are within 0.05 mm of the full ones at every step"
	days := []struct{ depleted, ks check.Published }{
		{check.Published{Source: "fao56", At: "example 37, depletion, day 1", Value: "61", Unit: "mm", Standing: "remembered"},
			check.Published{Source: "fao56", At: "example 37, Ks, day 1", Value: "1.00", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 2", Value: "67", Unit: "mm", Standing: "remembered"},
			check.Published{Source: "fao56", At: "example 37, Ks, day 2", Value: "1.00", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 3", Value: "72.8", Unit: "mm", Standing: "remembered", Within: 0.1, Why: rounding},
			check.Published{Source: "fao56", At: "example 37, Ks, day 3", Value: "0.97", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 4", Value: "78.3", Unit: "mm", Standing: "remembered", Within: 0.1, Why: rounding},
			check.Published{Source: "fao56", At: "example 37, Ks, day 4", Value: "0.91", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 5", Value: "83.4", Unit: "mm", Standing: "remembered", Within: 0.1, Why: rounding},
			check.Published{Source: "fao56", At: "example 37, Ks, day 5", Value: "0.85", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 6", Value: "88.2", Unit: "mm", Standing: "remembered", Within: 0.1, Why: rounding},
			check.Published{Source: "fao56", At: "example 37, Ks, day 6", Value: "0.80", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 7", Value: "92.6", Unit: "mm", Standing: "remembered", Within: 0.1, Why: rounding},
			check.Published{Source: "fao56", At: "example 37, Ks, day 7", Value: "0.75", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 8", Value: "96.9", Unit: "mm", Standing: "remembered", Within: 0.1, Why: rounding},
			check.Published{Source: "fao56", At: "example 37, Ks, day 8", Value: "0.70", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 9", Value: "100.8", Unit: "mm", Standing: "remembered", Within: 0.1, Why: rounding},
			check.Published{Source: "fao56", At: "example 37, Ks, day 9", Value: "0.66", Unit: "", Standing: "remembered"}},
		{check.Published{Source: "fao56", At: "example 37, depletion, day 10", Value: "104.5", Unit: "mm", Standing: "remembered", Within: 0.1, Why: rounding},
			check.Published{Source: "fao56", At: "example 37, Ks, day 10", Value: "0.62", Unit: "", Standing: "remembered"}},
	}
	depleted := 55.0
	for _, d := range days {
		ks := z.Stress(depleted)
		depleted += ks * 1.2 * 5
		check.That(t, ks, d.ks)
		check.That(t, depleted, d.depleted)
	}
}

// The bed itself, kept from the gravel and stepped by hours with the evaporation of a day in the first, dries
// as the example does.
func TestBedDriesAsInExample37(t *testing.T) {
	p := UsualPlanter(4, 1)
	p.Soil = Soil{Depth: 0.8, FieldCapacity: 0.32, WiltingPoint: 0.12, Saturation: 0.45}
	b, err := Prepare(p)
	if err != nil {
		t.Fatal(err)
	}
	s := b.Start()
	s.Soil.Litres -= 55 * 4
	for range 10 {
		for hour := range 24 {
			in := PlanterIn{Crop: Crop{Coefficient: 1.2, Roots: 0.8, Depletion: 0.4}}
			if hour == 0 {
				in.Evaporation = 5
			}
			var out PlanterOut
			b.Step(&s, &in, &out)
		}
	}
	check.That(t, b.depleted(&s)*160, check.Published{Source: "fao56", At: "example 37, depletion after 10 days, by the bed", Value: "104.5", Unit: "mm", Standing: "remembered",
		Within: 0.1, Why: "the printed series goes on from rounded depletions"})
}

func TestDepletionAdjusted(t *testing.T) {
	check.That(t, Adjusted(0.40, 7), check.Published{Source: "fao56", At: "table 22, note: tomato at 7 mm/d", Value: "0.32", Unit: "", Standing: "own"})
}

func TestSaltHindersBean(t *testing.T) {
	bean := Tolerance{Threshold: 1.0, Slope: 19, Response: 1.15}
	check.That(t, bean.Stress(1.5), check.Published{Source: "fao56", At: "salinity example, bean at 1.5 dS/m", Value: "0.92", Unit: "", Standing: "remembered"})
}

func TestYieldsUnderSalt(t *testing.T) {
	tomato, pepper, spinach, bean := tolerant(t, "tomato"), tolerant(t, "pepper"), tolerant(t, "spinach"), tolerant(t, "bean")
	for _, c := range []struct {
		crop     Tolerance
		salinity float64
		want     check.Published
	}{
		{tomato, 2, check.Published{Source: "maas-1990", At: "tomato 2.5, 9.9 at 2 dS/m", Value: "100", Unit: "%", Standing: "own"}},
		{tomato, 3, check.Published{Source: "maas-1990", At: "tomato 2.5, 9.9 at 3 dS/m", Value: "95.05", Unit: "%", Standing: "own"}},
		{tomato, 4, check.Published{Source: "maas-1990", At: "tomato 2.5, 9.9 at 4 dS/m", Value: "85.15", Unit: "%", Standing: "own"}},
		{pepper, 2, check.Published{Source: "maas-1990", At: "pepper 1.5, 14 at 2 dS/m", Value: "93", Unit: "%", Standing: "own"}},
		{pepper, 4, check.Published{Source: "maas-1990", At: "pepper 1.5, 14 at 4 dS/m", Value: "65", Unit: "%", Standing: "own"}},
		{spinach, 3, check.Published{Source: "maas-1990", At: "spinach 2.0, 7.6 at 3 dS/m", Value: "92.4", Unit: "%", Standing: "own"}},
		{bean, 4, check.Published{Source: "maas-1990", At: "bean 1.0, 19 at 4 dS/m", Value: "43", Unit: "%", Standing: "own"}},
		{tolerant(t, "zucchini"), 5.8, check.Published{Source: "maas-1990", At: "zucchini: 90 % at 5.8 dS/m, as a public table has it", Value: "90", Unit: "%"}},
		{tolerant(t, "zucchini"), 10, check.Published{Source: "maas-1990", At: "zucchini: 50 % at 10 dS/m, as a public table has it", Value: "50", Unit: "%"}},
	} {
		check.That(t, c.crop.Yield(c.salinity), c.want)
	}
}

func tolerant(t *testing.T, crop string) Tolerance {
	t.Helper()
	k, ok := ToleranceOf(crop)
	if !ok {
		t.Fatalf("no tolerance of %s", crop)
	}
	return k
}

func TestSodium(t *testing.T) {
	check.That(t, Ions{7.73, 2.32, 1.44}.SAR(), check.Published{Source: "fao29", At: "example of SAR: Na 7.73, Ca 2.32, Mg 1.44 meq/L", Value: "5.64", Unit: "", Standing: "remembered"})
	check.That(t, Ions{7.73, 1.43, 1.44}.SAR(), check.Published{Source: "fao29", At: "the same with the adjusted calcium 1.43", Value: "6.45", Unit: "", Standing: "remembered"})
	check.That(t, Ions{2.74, 5.4, 2.72}.SAR(), check.Published{Source: "supply-textbook-6-8", At: "example 6.8, supply B", Value: "1.36", Unit: ""})
	share, can := Leaching(1.0, 2.5)
	if !can {
		t.Error("1 dS/m cannot hold a soil at 2.5")
	}
	check.That(t, share, check.Published{Source: "fao29", At: "eq. 9, 1.0 dS/m of water on soil at 2.5", Value: "0.087", Unit: "", Standing: "own"})
}

// A public page halves after the root; ours must be the right ratio and not its 20.6.
func TestSlipsAreNotRepeated(t *testing.T) {
	turf := Ions{44, 10, 8.2}.SAR()
	check.That(t, turf, check.Published{Source: "turf-sar-slip", At: "Na 44, Ca 10, Mg 8.2 meq/L, the formula worked right", Value: "14.59", Unit: "", Standing: "own"})
	if math.Abs(turf-20.6) < 1 {
		t.Errorf("got %g: halved after the root", turf)
	}
}

// A textbook lists 144 mg/L of sodium and goes on with 255, which are the dissolved solids: 27.75 where its own figures give 15.65.
func TestTextbooksSodiumIsTheListedOne(t *testing.T) {
	listed := Ions{144.0 / 23, 0.23, 0.09}.SAR() // 23 mg/meq; calcium and magnesium in meq/L as its table has them
	check.That(t, listed, check.Published{Source: "supply-textbook-6-8", At: "example 6.8, supply A with the listed 144 mg/L of sodium; the page prints 27.75", Value: "15.65", Unit: "", Standing: "own"})
	if math.Abs(listed-27.75) < 1 {
		t.Errorf("got %g: worked with the dissolved solids as sodium", listed)
	}
	solids := Ions{11.1, 0.23, 0.09}.SAR()
	check.That(t, solids, check.Published{Source: "supply-textbook-6-8", At: "example 6.8, supply A with the meq/L of its table, 11.1, 0.23 and 0.09", Value: "27.75", Unit: ""})
}

func TestWorkedReedBed(t *testing.T) {
	f := Flow{PerDay: 32, In: 350, Out: 30}
	area := f.FirstOrder(0.15)
	check.That(t, float64(area), check.Published{Source: "un-habitat-wetlands", At: "worked case, 32 m3/d, 350 to 30 mg/L, K 0.15 m/d", Value: "524.10", Unit: "m2", Standing: "remembered", Within: 0.05, Why: "the manual works with rounded logarithms"})
	check.That(t, float64(area)/400, check.Published{Source: "un-habitat-wetlands", At: "the same, a person", Value: "1.31", Unit: "m2", Standing: "remembered"})
	check.That(t, float64(f.FirstOrder(0.20)), check.Published{Source: "un-habitat-wetlands", At: "vertical bed, K 0.20 m/d", Value: "393.1", Unit: "m2", Standing: "own"})
	check.That(t, float64(f.FirstOrder(0.20))/400, check.Published{Source: "un-habitat-wetlands", At: "vertical bed, a person", Value: "0.98", Unit: "m2", Standing: "own"})
	section := Section(32.0/86400, 2e-3, 0.01)
	check.That(t, section, check.Published{Source: "un-habitat-wetlands", At: "worked case, Kf 2e-3 m/s, slope 1 %: cross-section", Value: "18.5", Unit: "m2", Standing: "remembered"})
	check.That(t, section/0.4, check.Published{Source: "un-habitat-wetlands", At: "worked case, width at depth 0.4 m", Value: "46.3", Unit: "m", Standing: "remembered"})
	check.That(t, float64(area)/(section/0.4), check.Published{Source: "un-habitat-wetlands", At: "worked case, length", Value: "11.32", Unit: "m", Standing: "remembered"})
}

func TestBackgroundAndRates(t *testing.T) {
	f := Flow{PerDay: 0.5, In: 150, Out: 20}
	check.That(t, f.Background(), check.Published{Source: "kadlec-knight", At: "C* at 150 mg/L", Value: "11.45", Unit: "mg/L", Standing: "own"})
	area, can := f.KCStar(180)
	if !can {
		t.Error("20 mg/L cannot be had above a background of 11.45")
	}
	check.That(t, float64(area), check.Published{Source: "kadlec-knight", At: "0.5 m3/d, 150 to 20 mg/L, k 180 m/year", Value: "2.82", Unit: "m2", Standing: "own"})
	check.That(t, RateAt(ReedRate, 10), check.Published{Source: "reed-1995", At: "k at 10 degC", Value: "0.616", Unit: "/d", Standing: "own"})
	check.That(t, RateAt(ReedRate, 25), check.Published{Source: "reed-1995", At: "k at 25 degC", Value: "1.477", Unit: "/d", Standing: "own"})
}
