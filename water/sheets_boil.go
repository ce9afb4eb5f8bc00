package water

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

func boilWater() sheet.Sheet {
	return sheet.Sheet{
		Name: "boil-water", Title: "How long to boil water at an altitude, and what it takes",
		Inputs: []sheet.Input{
			limited("altitude", "m", "0 m", -430, 6000, "of the stove"),
			limited("litres", "L", "2 L", 0.1, 1000, "to be boiled"),
			limited("cold", "degC", "15 degC", 0, 60, "water as it comes"),
			limited("efficiency", "%", "45 %", 1, 100, "of the hob and pot, heat in the water over energy used: some 45 % for gas, 80 % for an electric kettle (common practice, no source)"),
		},
		Sources: []string{"eid-boil-2025: table, what agencies tell", "fao56: eq. 7, pressure by altitude", "antoine: boiling point by pressure, constants from memory"},
		Cautions: []string{testCaution, healthCaution,
			"Boiling kills germs. It takes out no metal, salt, fuel, pesticide or toxin of algae, and makes them stronger as steam leaves: water that may hold those must come from elsewhere.",
			"Let cloudy water settle and pour it through a cloth first. The time counts from a rolling boil that stirring does not stop. Cool it under a lid, keep it in clean closed vessels, and pour, do not dip.",
			"Boiling water and steam scald; a gas flame in a closed room uses up the air: open a window."},
		Do: workBoilWater,
	}
}

func workBoilWater(c *sheet.Calc) {
	altitude, litres, cold, efficiency := quantity.Metres(c.Number("altitude")), quantity.Litres(c.Number("litres")), quantity.Celsius(c.Number("cold")), c.Number("efficiency")
	at := BoilsAt(altitude)
	c.Step("boils at", "b/(a - log10 p) - c, p by altitude", fmt.Sprintf("%g/(%g - log10 p) - %g at %g m", antoineB, antoineA, antoineC, float64(altitude)), float64(at), "degC")
	c.Result("boils_at", float64(at), "degC")
	longest, by := 0.0, map[string]float64{}
	for _, a := range BoilAdvices() {
		by[a.By] = a.For(altitude)
		longest = max(longest, by[a.By])
	}
	c.ResultByMethod("minutes_by_authority", by, "min")
	c.Result("minutes", longest, "min")
	heat := float64(litres.Heat(at.Above(cold)))
	c.Step("heat", "4.186/3.6 x litres x (boils at - cold)", fmt.Sprintf("%.4g·%g·(%.4g - %g)", quantity.WaterHeat, float64(litres), float64(at), float64(cold)), heat, "Wh")
	used := c.Step("energy", "heat/efficiency", fmt.Sprintf("%.4g/%g %%", heat, efficiency), heat/(efficiency/100), "Wh")
	c.Result("energy", used, "Wh")
	c.Caution("The authorities differ: the longest of their times is shown as the result. Where your own authority says more, do that.")
}
