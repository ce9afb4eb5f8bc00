package crop

import (
	"testing"

	"suffice/internal/check"
)

func named(t testing.TB, name string) *Crop {
	t.Helper()
	c, err := Named(name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// The season's mean coefficient and water at 5 mm/d.
func TestSeasonWater(t *testing.T) {
	z, tomato := named(t, "zucchini"), named(t, "tomato")
	check.That(t, z.Kc.Sum(z.Stages)/z.Stages.Season(), check.Published{Source: "fao56", At: "eq. 66, zucchini 25/35/25/15 d, mean Kc", Value: "0.744", Standing: "own"})
	check.That(t, z.Kc.Sum(z.Stages)*5, check.Published{Source: "fao56", At: "eq. 66, zucchini at 5 mm/d, season", Value: "371.9", Unit: "mm", Standing: "own"})
	check.That(t, tomato.Kc.Sum(tomato.Stages)/tomato.Stages.Season(), check.Published{Source: "fao56", At: "eq. 66, tomato 30/40/45/30 d, mean Kc", Value: "0.924", Standing: "own"})
	check.That(t, tomato.Kc.Sum(tomato.Stages)*5, check.Published{Source: "fao56", At: "eq. 66, tomato at 5 mm/d, season", Value: "670", Unit: "mm", Standing: "own"})
}

// The curve by days, summed at mid-day, is the season's sum.
func TestCurve(t *testing.T) {
	bean := Stages{Initial: 25, Development: 25, Middle: 30, Late: 20}
	k := Kc{Initial: 0.15, Middle: 1.19, End: 0.35}
	check.That(t, k.At(bean, 20), check.Published{Source: "fao56", At: "ex. 28, dry bean, day 20", Value: "0.15", Standing: "remembered"})
	check.That(t, k.At(bean, 40), check.Published{Source: "fao56", At: "ex. 28, dry bean, day 40", Value: "0.77", Standing: "remembered"})
	check.That(t, k.At(bean, 70), check.Published{Source: "fao56", At: "ex. 28, dry bean, day 70", Value: "1.19", Standing: "remembered"})
	check.That(t, k.At(bean, 95), check.Published{Source: "fao56", At: "ex. 28, dry bean, day 95", Value: "0.56", Standing: "remembered"})
}

// Maize of 2 m in still, damp and in windy, dry air.
func TestCoefficientInAir(t *testing.T) {
	maize := Kc{Initial: 0.3, Middle: 1.20, End: 0.35}
	damp, dry := maize.In(Air{Wind: 1.3, LeastRH: 75, Height: 2}), maize.In(Air{Wind: 4.6, LeastRH: 44, Height: 2})
	check.That(t, damp.Middle, check.Published{Source: "fao56", At: "ex. 27, maize in damp, still air (75 %, 1.3 m/s), Kc mid", Value: "1.07", Standing: "remembered"})
	check.That(t, dry.Middle, check.Published{Source: "fao56", At: "ex. 27, maize in dry, windy air (44 %, 4.6 m/s), Kc mid", Value: "1.30", Standing: "remembered"})
	if damp.End != maize.End || damp.Initial != maize.Initial {
		t.Errorf("an end of %g and a start of %g moved to %g and %g: an end below 0.45 and the start stay", maize.End, maize.Initial, damp.End, damp.Initial)
	}
}

// Depletion share, roots and stress.
func TestWaterInReach(t *testing.T) {
	check.That(t, named(t, "tomato").DepletionAt(7), check.Published{Source: "fao56", At: "table 22 note, tomato at 7 mm/d", Value: "0.32", Standing: "remembered"})
	check.That(t, Stress(160, 78.3, 0.40), check.Published{Source: "fao56", At: "ex. 37, Ks at a depletion of 78.3 of 160 mm", Value: "0.85", Standing: "remembered"})
	check.That(t, Stress(160, 100.8, 0.40), check.Published{Source: "fao56", At: "ex. 37, Ks at a depletion of 100.8 of 160 mm", Value: "0.62", Standing: "remembered"})
	check.That(t, named(t, "green bean").SaltStress(1.5), check.Published{Source: "fao56", At: "ch. 8, bean at 1.5 dS/m, Ks", Value: "0.92", Standing: "remembered"})
	check.That(t, named(t, "tomato").WaterYield(0.8), check.Published{Source: "fao33", At: "tomato, Ky 1.05, four fifths of its water", Value: "0.79", Standing: "own"})
	check.That(t, LeachingShare(1.0, 2.5), check.Published{Source: "fao29", At: "eq. 9, water 1.0, soil 2.5 dS/m", Value: "0.087", Standing: "own"})
}

// The yield that salt leaves at 2, 3 and 4 dS/m.
func TestSalt(t *testing.T) {
	check.That(t, 100*named(t, "tomato").RelativeYield(2), check.Published{Source: "maas-1990", At: "tomato at 2 dS/m", Value: "100", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "tomato").RelativeYield(3), check.Published{Source: "maas-1990", At: "tomato at 3 dS/m", Value: "95.05", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "tomato").RelativeYield(4), check.Published{Source: "maas-1990", At: "tomato at 4 dS/m", Value: "85.15", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "sweet pepper").RelativeYield(2), check.Published{Source: "maas-1990", At: "pepper at 2 dS/m", Value: "93", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "sweet pepper").RelativeYield(4), check.Published{Source: "maas-1990", At: "pepper at 4 dS/m", Value: "65", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "spinach").RelativeYield(3), check.Published{Source: "maas-1990", At: "spinach at 3 dS/m", Value: "92.4", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "spinach").RelativeYield(4), check.Published{Source: "maas-1990", At: "spinach at 4 dS/m", Value: "84.8", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "green bean").RelativeYield(2), check.Published{Source: "maas-1990", At: "bean at 2 dS/m", Value: "81", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "green bean").RelativeYield(4), check.Published{Source: "maas-1990", At: "bean at 4 dS/m", Value: "43", Unit: "%", Standing: "own"})
	check.That(t, 100*named(t, "zucchini").RelativeYield(5.8), check.Published{Source: "fao29", At: "table 4, zucchini, nine tenths at 5.8 dS/m", Value: "90", Unit: "%",
		Within: 0.5, Why: "the table prints the salinity to 0.1 dS/m, which is 0.94 % of yield; half of it either way"})
	check.That(t, 100*named(t, "zucchini").RelativeYield(10), check.Published{Source: "fao29", At: "table 4, zucchini, half at 10 dS/m", Value: "50", Unit: "%"})
}

// Rows as the tables print them.
func TestRows(t *testing.T) {
	check.That(t, named(t, "cucumber").Kc.Middle, check.Published{Source: "fao56", At: "table 12 (1998), cucumber, Kc mid", Value: "1.00"})
	check.That(t, named(t, "zucchini").Kc.Middle, check.Published{Source: "fao56", At: "table 12 (1998), zucchini, Kc mid", Value: "0.95"})
	check.That(t, named(t, "zucchini").Revised.Middle, check.Published{Source: "fao56-2025", At: "table 6.1, zucchini, Kc mid", Value: "1.00"})
	check.That(t, named(t, "winter squash").Revised.Middle, check.Published{Source: "fao56-2025", At: "table 6.1, pumpkin, Kc mid", Value: "0.95"})
	check.That(t, named(t, "green bean").Revised.End, check.Published{Source: "fao56-2025", At: "table 6.1, green bean, Kc end", Value: "0.95"})
	check.That(t, named(t, "winter squash").Depletion.Value, check.Published{Source: "fao56", At: "table 22, pumpkin, p", Value: "0.35"})
	check.That(t, named(t, "lettuce").Roots.High, check.Published{Source: "fao56", At: "table 22, lettuce, deepest roots", Value: "0.5", Unit: "m"})
	check.That(t, named(t, "tomato").Air.Least*1.8+32, check.Published{Source: "knott-1997", At: "growing temperatures, tomato, least in °F", Value: "65", Unit: "°F"})
	check.That(t, named(t, "spinach").Air.Most*1.8+32, check.Published{Source: "knott-1997", At: "growing temperatures, spinach, most in °F", Value: "75", Unit: "°F"})
	check.That(t, named(t, "onion").Seed.Keeps.Value, check.Published{Source: "knott-1997", At: "seed life, onion", Value: "1", Unit: "years"})
	check.That(t, named(t, "lettuce").Seed.Keeps.Value, check.Published{Source: "knott-1997", At: "seed life, lettuce", Value: "6", Unit: "years"})
}

// The two methods of degree-days, and the season's sum beside the two that are printed.
func TestDegreeDays(t *testing.T) {
	check.That(t, DegreeDays(Average, Swing{28, 14}, 10, 100), check.Published{Source: "mcmaster-1997", At: "method 1, 28 and 14 degC, base 10", Value: "11", Unit: "K d", Standing: "own"})
	check.That(t, DegreeDays(Average, Swing{30, 8}, 10, 100), check.Published{Source: "mcmaster-1997", At: "method 1, 30 and 8 degC, base 10", Value: "9", Unit: "K d", Standing: "own"})
	check.That(t, DegreeDays(Cut, Swing{30, 8}, 10, 100), check.Published{Source: "mcmaster-1997", At: "method 2, 30 and 8 degC, base 10", Value: "10", Unit: "K d", Standing: "own"})
	check.That(t, named(t, "zucchini").Season(), check.Published{Source: "fao56-2025", At: "stages of zucchini, longest, 160 + 370 + 360 + 260 K d", Value: "1150", Unit: "K d",
		Within: 278, Why: "ours is worked from days and Knott's best temperatures, printed as 65 to 75 °F: half that span, 2.8 K, for 100 days"})
	check.That(t, named(t, "winter squash").Season(), check.Published{Source: "fao56-2025", At: "stages of pumpkin, 230 + 440 + 430 + 200 K d", Value: "1300", Unit: "K d",
		Within: 278, Why: "ours is worked from days and Knott's best temperatures, printed as 65 to 75 °F: half that span, 2.8 K, for 100 days"})
}

func TestLight(t *testing.T) {
	check.That(t, LampLight(200, 16), check.Published{Source: "light-needs", At: "200 µmol/m2s for 16 h", Value: "11.52", Unit: "mol/m2d"})
	check.That(t, DailyLight(15, 1), check.Published{Source: "mccree-1972", At: "15 MJ/m2d, 0.45 of it, 4.57 µmol/J", Value: "30.8", Unit: "mol/m2d", Standing: "own"})
	check.That(t, DailyLight(20, 0.70), check.Published{Source: "mccree-1972", At: "20 MJ/m2d through glass of 0.70", Value: "28.8", Unit: "mol/m2d", Standing: "own"})
	check.That(t, 1000*Visible*PhotonsPerJoule, check.Published{Source: "mccree-1972", At: "1000 W/m2, 0.45 of it", Value: "2057", Unit: "µmol/m2s", Within: 0.5, Why: "2056.5, printed rounded up"})
	check.That(t, named(t, "lettuce").Light.Low, check.Published{Source: "light-needs", At: "leafy greens, least", Value: "12", Unit: "mol/m2d"})
}

// Germination at printed temperatures, and the three signs that Harrington's table is known by.
func TestGermination(t *testing.T) {
	at := func(name string, soil float64) float64 { return named(t, name).Sprouts.ShareAt(soil) }
	check.That(t, at("tomato", 10), check.Published{Source: "harrington-1954", At: "tomato at 50 °F", Value: "82", Unit: "%"})
	check.That(t, at("sweet pepper", 15), check.Published{Source: "harrington-1954", At: "pepper at 59 °F", Value: "70", Unit: "%"})
	check.That(t, at("spinach", 5), check.Published{Source: "harrington-1954", At: "spinach at 41 °F", Value: "96", Unit: "%"})
	check.That(t, at("carrot", 5), check.Published{Source: "harrington-1954", At: "carrot at 41 °F", Value: "48", Unit: "%"})
	check.That(t, at("cucumber", 40), check.Published{Source: "harrington-1954", At: "cucumber at 104 °F", Value: "49", Unit: "%"})
	days, ok := named(t, "onion").Sprouts.DaysAt(0)
	if !ok {
		t.Error("onion at 0 degC: no days, the source prints some")
	}
	check.That(t, days, check.Published{Source: "harrington-1954", At: "onion at 32 °F, days", Value: "136", Unit: "d"})
	if days, ok := named(t, "sweet pepper").Sprouts.DaysAt(10); ok {
		t.Errorf("pepper at 10 degC: %g days, where the source prints none", days)
	}
	if a, b := at("spinach", 15), at("spinach", 20); b >= a {
		t.Errorf("spinach comes up to %g %% at 15 and %g %% at 20 degC, and should fall", a, b)
	}
	if a, b := at("lettuce", 25), at("lettuce", 30); b > a/4 {
		t.Errorf("lettuce comes up to %g %% at 25 and %g %% at 30 degC, and should collapse", a, b)
	}
	if a := at("cucumber", 10); a != 0 {
		t.Errorf("cucumber comes up to %g %% at 10 degC, and should not", a)
	}
}
