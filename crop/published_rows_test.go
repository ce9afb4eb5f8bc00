package crop

import (
	"testing"

	"suffice/internal/check"
)

// Seed life as Knott's handbook is quoted.
func TestEverySeedLife(t *testing.T) {
	keeps := func(name string) float64 { return named(t, name).Seed.Keeps.Value }
	check.That(t, keeps("tomato"), check.Published{Source: "knott-1997", At: "seed life, tomato", Value: "4", Unit: "years"})
	check.That(t, keeps("sweet pepper"), check.Published{Source: "knott-1997", At: "seed life, pepper", Value: "2", Unit: "years"})
	check.That(t, keeps("spinach"), check.Published{Source: "knott-1997", At: "seed life, spinach", Value: "3", Unit: "years"})
	check.That(t, keeps("zucchini"), check.Published{Source: "knott-1997", At: "seed life, squash", Value: "4", Unit: "years"})
	check.That(t, keeps("winter squash"), check.Published{Source: "knott-1997", At: "seed life, pumpkin", Value: "4", Unit: "years"})
	check.That(t, keeps("cucumber"), check.Published{Source: "knott-1997", At: "seed life, cucumber", Value: "5", Unit: "years"})
	check.That(t, keeps("green bean"), check.Published{Source: "knott-1997", At: "seed life, bean", Value: "3", Unit: "years"})
	check.That(t, keeps("carrot"), check.Published{Source: "knott-1997", At: "seed life, carrot", Value: "3", Unit: "years"})
	check.That(t, keeps("radish"), check.Published{Source: "knott-1997", At: "seed life, radish", Value: "5", Unit: "years"})
}

// Least and realistic warmth of the soil, in °F as printed.
func TestWarmthOfTheSeedBed(t *testing.T) {
	soil := func(name string) Sowing { return named(t, name).Soil }
	printed := func(f *Figure) float64 { return f.Value*1.8 + 32 }
	check.That(t, printed(soil("cucumber").Least), check.Published{Source: "texas-soil", At: "cucumber, least", Value: "60", Unit: "°F"})
	check.That(t, printed(soil("cucumber").Good), check.Published{Source: "texas-soil", At: "cucumber, realistic", Value: "64", Unit: "°F"})
	check.That(t, printed(soil("zucchini").Least), check.Published{Source: "texas-soil", At: "squash, least", Value: "60", Unit: "°F"})
	check.That(t, printed(soil("zucchini").Good), check.Published{Source: "texas-soil", At: "squash, realistic", Value: "70", Unit: "°F"})
	check.That(t, printed(soil("winter squash").Least), check.Published{Source: "texas-soil", At: "pumpkin, least", Value: "60", Unit: "°F"})
	check.That(t, printed(soil("winter squash").Good), check.Published{Source: "texas-soil", At: "pumpkin, realistic", Value: "75", Unit: "°F"})
	check.That(t, printed(soil("tomato").Least), check.Published{Source: "texas-soil", At: "tomato, least", Value: "50", Unit: "°F"})
	check.That(t, printed(soil("tomato").Good), check.Published{Source: "texas-soil", At: "tomato, realistic", Value: "55", Unit: "°F"})
	check.That(t, printed(soil("green bean").Good), check.Published{Source: "texas-soil", At: "bean, realistic", Value: "72", Unit: "°F"})
	check.That(t, printed(soil("spinach").Least), check.Published{Source: "texas-soil", At: "spinach, least", Value: "35", Unit: "°F"})
	check.That(t, printed(soil("spinach").Good), check.Published{Source: "texas-soil", At: "spinach, realistic", Value: "45", Unit: "°F"})
	check.That(t, printed(soil("lettuce").Least), check.Published{Source: "texas-soil", At: "lettuce, least", Value: "35", Unit: "°F"})
	check.That(t, printed(soil("lettuce").Good), check.Published{Source: "texas-soil", At: "lettuce, realistic", Value: "45", Unit: "°F"})
	check.That(t, printed(soil("carrot").Least), check.Published{Source: "texas-soil", At: "carrot, least", Value: "35", Unit: "°F"})
	check.That(t, printed(soil("carrot").Good), check.Published{Source: "texas-soil", At: "carrot, realistic", Value: "45", Unit: "°F"})
	check.That(t, printed(soil("radish").Least), check.Published{Source: "texas-soil", At: "radish, least", Value: "40", Unit: "°F"})
}

// Days to the first harvest.
func TestEveryMaturity(t *testing.T) {
	days := func(name string) Range { return named(t, name).Maturity }
	check.That(t, days("sweet pepper").Low, check.Published{Source: "transplant-table", At: "pepper, days, from", Value: "60", Unit: "d"})
	check.That(t, days("sweet pepper").High, check.Published{Source: "transplant-table", At: "pepper, days, to", Value: "90", Unit: "d"})
	check.That(t, days("tomato").Low, check.Published{Source: "transplant-table", At: "tomato, days, from", Value: "70", Unit: "d"})
	check.That(t, days("tomato").High, check.Published{Source: "transplant-table", At: "tomato, days, to", Value: "90", Unit: "d"})
	check.That(t, days("zucchini").Low, check.Published{Source: "transplant-table", At: "summer squash, days, from", Value: "50", Unit: "d"})
	check.That(t, days("zucchini").High, check.Published{Source: "transplant-table", At: "summer squash, days, to", Value: "60", Unit: "d"})
	check.That(t, days("winter squash").Low, check.Published{Source: "transplant-table", At: "winter squash, days, from", Value: "75", Unit: "d"})
	check.That(t, days("winter squash").High, check.Published{Source: "transplant-table", At: "winter squash, days, to", Value: "100", Unit: "d"})
	check.That(t, days("cucumber").Low, check.Published{Source: "transplant-table", At: "cucumber, days, from", Value: "50", Unit: "d"})
	check.That(t, days("cucumber").High, check.Published{Source: "transplant-table", At: "cucumber, days, to", Value: "70", Unit: "d"})
}

// Energy of the raw food.
func TestEveryEnergy(t *testing.T) {
	per100 := func(name string) float64 { return named(t, name).Energy.Value / 10 }
	check.That(t, per100("tomato"), check.Published{Source: "usda-sr", At: "tomato, FDC 170457, raw, 100 g", Value: "18", Unit: "kcal"})
	check.That(t, per100("sweet pepper"), check.Published{Source: "usda-sr", At: "sweet red pepper, FDC 170108, raw, 100 g", Value: "26", Unit: "kcal"})
	check.That(t, per100("spinach"), check.Published{Source: "usda-sr", At: "spinach, raw, 100 g", Value: "23", Unit: "kcal", Standing: "remembered"})
	check.That(t, per100("zucchini"), check.Published{Source: "usda-sr", At: "zucchini, raw, 100 g", Value: "17", Unit: "kcal", Standing: "remembered"})
	check.That(t, per100("lettuce"), check.Published{Source: "usda-sr", At: "lettuce, raw, 100 g", Value: "15", Unit: "kcal", Standing: "remembered"})
	check.That(t, per100("cucumber"), check.Published{Source: "usda-sr", At: "cucumber with peel, raw, 100 g", Value: "15", Unit: "kcal", Standing: "remembered"})
}

// Three conversions of sunlight, and what plants want of it.
func TestEveryConversionOfLight(t *testing.T) {
	by := Conversions()
	check.That(t, by[1].Photons(500), check.Published{Source: "flux-photons", At: "500 W/m2, half of it, 4.6 µmol/J", Value: "1150", Unit: "µmol/m2s"})
	check.That(t, by[2].Photons(1000), check.Published{Source: "flux-photons", At: "1000 W/m2, half of it, 220 kJ/mol", Value: "2273", Unit: "µmol/m2s", Standing: "own"})
	half := Conversion{Visible: 0.5, PerJoule: PhotonsPerJoule}
	check.That(t, half.Photons(1000), check.Published{Source: "mccree-1972", At: "1000 W/m2, half of it, 4.57 µmol/J", Value: "2285", Unit: "µmol/m2s", Standing: "own"})
	check.That(t, by[0].Day(15, 1), check.Published{Source: "mccree-1972", At: "15 MJ/m2d, 0.45 of it, 4.57 µmol/J, as one of three", Value: "30.8", Unit: "mol/m2d", Standing: "own"})
	check.That(t, named(t, "tomato").Light.Low, check.Published{Source: "light-needs", At: "tomato, least", Value: "20", Unit: "mol/m2d"})
	check.That(t, named(t, "tomato").Light.High, check.Published{Source: "light-needs", At: "tomato, most", Value: "30", Unit: "mol/m2d"})
	check.That(t, brightest, check.Published{Source: "light-needs", At: "in the open, most of 5 to 60", Value: "60", Unit: "mol/m2d"})
	check.That(t, named(t, "lettuce").Light.High, check.Published{Source: "light-needs", At: "lettuce grows fully", Value: "17", Unit: "mol/m2d", Standing: "remembered"})
}
