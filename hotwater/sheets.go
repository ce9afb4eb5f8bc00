package hotwater

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// cautions of stored hot water and of collectors.
var cautions = []string{
	"Scalding: water over 50 degC burns skin within minutes and at 60 degC within seconds, children's and old people's first. A store with a collector reaches 90 degC: fit a thermostatic mixing valve at the store and have it tested.",
	"Legionella grow in water between 20 and 45 degC. HSG274 part 2 asks for stored water at 60 degC and 50 degC at the outlet within a minute; a solar store is often cooler. Ask the local health authority; take care with people of weak health.",
	"A heated store needs a safety valve and an expansion vessel, and a collector at rest makes steam: the circuit is for a licensed installer.",
}

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet {
	return []sheet.Sheet{collectorSheet(), storeSheet(), hourSheet(), collectorHour(), inletHour()}
}

func collectorSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "collector", Title: "Efficiency, heat and stagnation of a solar collector",
		Inputs: []sheet.Input{
			{Name: "eta0", Unit: "fraction", Default: "0.78", Meaning: "efficiency with the fluid at air temperature", Low: sheet.At(0.01), High: sheet.At(1)},
			{Name: "a1", Unit: "W/m2K", Default: "3.6 W/m2K", Meaning: "heat loss, linear part", Low: sheet.At(0.01), High: sheet.At(50)},
			{Name: "a2", Unit: "W/m2K2", Default: "0.015 W/m2K2", Meaning: "heat loss, part that grows with the square", Low: sheet.At(0), High: sheet.At(1)},
			{Name: "light", Unit: "W/m2", Default: "800 W/m2", Meaning: "on the collector's plane, straight on", Low: sheet.At(1), High: sheet.At(1500)},
			{Name: "mean_temperature", Unit: "degC", Default: "50 degC", Meaning: "of the fluid, mean of inlet and outlet", Low: sheet.At(-40), High: sheet.At(250)},
			{Name: "ambient", Unit: "degC", Default: "15 degC", Meaning: "air outside", Low: sheet.At(-60), High: sheet.At(60)},
			{Name: "area", Unit: "m2", Default: "4 m2", Meaning: "that the test's figures refer to", Low: sheet.At(0), High: sheet.At(1000)},
		},
		Sources:  []string{"iso9806: steady-state efficiency, eta0 - a1 x/G - a2 x2/G"},
		Cautions: cautions,
		Do:       workCollector,
	}
}

func workCollector(c *sheet.Calc) {
	k := Collector{Area: quantity.SquareMetres(c.Number("area")), Eta0: c.Number("eta0"), A1: c.Number("a1"), A2: c.Number("a2")}
	light, mean, air := c.Number("light"), c.Number("mean_temperature"), c.Number("ambient")
	x := c.Step("fluid over air", "x = Tm − Ta", fmt.Sprintf("%.5g − %.5g", mean, air), mean-air, "K")
	e := k.Efficiency(quantity.Irradiance(light), quantity.Kelvins(x))
	c.Step("efficiency", "η = η0 − a1·x/G − a2·x²/G (the square only over air temperature)",
		fmt.Sprintf("%.4g − %.4g·%.4g/%.4g − %.4g·%.4g²/%.4g", k.Eta0, k.A1, x, light, k.A2, x, light), e, "fraction")
	heat := c.Step("heat", "Q = A·η·G", fmt.Sprintf("%.4g·%.4g·%.4g", float64(k.Area), e, light), float64(k.Area)*e*light, "W")
	rest := float64(k.Stagnation(k.Eta0 * light))
	c.Step("rest without flow", "0 = η0·G − a1·x − a2·x²", fmt.Sprintf("x = %.4g K", rest), air+rest, "degC")
	c.Result("efficiency", e, "fraction")
	c.Result("heat", heat, "W")
	c.Result("stagnation", air+rest, "degC")
	if e < 0 {
		c.Caution("The collector loses more than it takes in: the controller would stop the pump.")
	}
	if air+rest > 120 {
		c.Caution(fmt.Sprintf("Without flow the collector reaches %.0f degC: water boils and antifreeze ages; drain-back or a steam vessel is needed.", air+rest))
	}
}

func storeSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "hot-water", Title: "Heat for hot water and what the store loses",
		Inputs: []sheet.Input{
			{Name: "volume", Unit: "L", Default: "160 L", Meaning: "hot water, in a day or in the store", Low: sheet.At(0), High: sheet.At(1e6)},
			{Name: "cold", Unit: "degC", Default: "10 degC", Meaning: "water coming in", Low: sheet.At(0), High: sheet.At(95)},
			{Name: "hot", Unit: "degC", Default: "60 degC", Meaning: "water wanted or stored", Low: sheet.At(0), High: sheet.At(99)},
			{Name: "people", Unit: "person", Default: "4 people", Meaning: "who share it", Low: sheet.At(1), High: sheet.At(1000)},
			{Name: "standing_loss", Unit: "W/K", Default: "2 W/K", Meaning: "of the store (common practice for 300 L, no source)", Low: sheet.At(0), High: sheet.At(100)},
			{Name: "room", Unit: "degC", Default: "18 degC", Meaning: "where the store stands", Low: sheet.At(-40), High: sheet.At(60)},
		},
		Sources:  []string{"water-heat: 4.186 kJ/kgK and 1 kg/L", "hsg274-2: temperatures of stored and delivered hot water"},
		Cautions: cautions,
		Do:       workStore,
	}
}

func workStore(c *sheet.Calc) {
	volume, cold, hot, people := c.Number("volume"), c.Number("cold"), c.Number("hot"), c.Number("people")
	if hot < cold {
		c.Fail("hot of %g degC is under cold of %g degC: nothing is to be heated", hot, cold)
		return
	}
	energy := c.Step("heat in the water", "Q = 4.186/3600·V·(hot − cold)", fmt.Sprintf("0.0011628 kWh/LK · %.5g L · %.4g K", volume, hot-cold),
		float64(quantity.Litres(volume).Heat(quantity.Kelvins(hot-cold)))/1000, "kWh")
	loss, room := c.Number("standing_loss"), c.Number("room")
	standing := c.Step("lost while standing for a day", "U·(hot − room)·24 h", fmt.Sprintf("%.4g W/K · %.4g K · 24 h", loss, hot-room),
		float64(StandingLoss(loss, quantity.Kelvins(hot-room), 24))/1000, "kWh")
	c.Result("energy", energy, "kWh")
	c.Result("energy_per_person", energy/people, "kWh")
	c.Result("litres_per_person", volume/people, "L")
	c.Result("standing_loss_per_day", standing, "kWh")
	c.ResultText("legionella_rule", legionellaRule(quantity.Celsius(hot)))
}

// legionellaRule says what HSG274 part 2 (2014) asks, held against a temperature.
func legionellaRule(hot quantity.Celsius) string {
	const ask = "stored hot water at 60 degC or more, 50 degC at the outlet within a minute (55 degC in health care), cold water under 20 degC"
	switch {
	case hot >= 60:
		return fmt.Sprintf("%.3g degC meets the storage temperature; asked are %s", float64(hot), ask)
	case hot >= 50:
		return fmt.Sprintf("%.3g degC is under the storage temperature, though not where legionella grow; asked are %s", float64(hot), ask)
	}
	return fmt.Sprintf("%.3g degC is in or near the range in which legionella grow (20 to 45 degC): heat all of the store to 60 degC regularly, or heat at the outlet; asked are %s", float64(hot), ask)
}
