package vent

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{stackSheet()} }

func stackSheet() sheet.Sheet {
	area := func(name, standard, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "m2", Default: standard, Low: sheet.At(0.0001), High: sheet.At(100), Meaning: meaning}
	}
	degrees := func(name, standard, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "degC", Default: standard, Low: sheet.At(-60), High: sheet.At(80), Meaning: meaning}
	}
	return sheet.Sheet{
		Name: "stack-vent", Title: "Air through a low and a high opening, by warmth",
		Inputs: []sheet.Input{
			area("inlet", "0.5 m2", "free area of the low opening"),
			area("outlet", "0.5 m2", "free area of the high opening"),
			{Name: "height", Unit: "m", Default: "3 m", Low: sheet.At(0.01), High: sheet.At(100), Meaning: "between the middles of both"},
			degrees("inside_temperature", "25 degC", "mean of the room's air"),
			degrees("outside_temperature", "18 degC", "of the air outside"),
			{Name: "discharge", Default: "0.61", Low: sheet.At(0.05), High: sheet.At(1), Meaning: "coefficient of both openings: 0.61 for a plain hole, 0.65 in the ASHRAE handbook"},
			{Name: "wind", Unit: "m/s", Default: "0 m/s", Low: sheet.At(0), High: sheet.At(40), Meaning: "at the building"},
			{Name: "inlet_pressure", Default: "0", Low: sheet.At(-2), High: sheet.At(1), Meaning: "wind pressure coefficient of the low opening: about 0.6 facing the wind, -0.3 away from it"},
			{Name: "outlet_pressure", Default: "0", Low: sheet.At(-2), High: sheet.At(1), Meaning: "the same of the high opening"},
			{Name: "volume", Unit: "m3", Maybe: true, Low: sheet.At(0.1), High: sheet.At(1e6), Meaning: "of the room, for air changes"},
		},
		Sources:  []string{"cibse-am10: two openings in series", "bs5925: natural ventilation by stack and wind together", "ashrae-fundamentals: ch. 16, discharge 0.65"},
		Cautions: Cautions(Stands{OpenGas: true, Stove: true}),
		Do:       workStack,
	}
}

func workStack(c *sheet.Calc) {
	discharge := c.Number("discharge")
	low := Opening{Area: quantity.SquareMetres(c.Number("inlet")), Discharge: discharge, Pressure: c.Number("inlet_pressure")}
	high := Opening{Area: quantity.SquareMetres(c.Number("outlet")), Height: quantity.Metres(c.Number("height")), Discharge: discharge, Pressure: c.Number("outlet_pressure")}
	w := Weather{Inside: quantity.Celsius(c.Number("inside_temperature")), Outside: quantity.Celsius(c.Number("outside_temperature")), Wind: c.Number("wind")}
	p := Through(low, high, w)

	c.Step("warmth as a share", "(Ti − To)/T̄", fmt.Sprintf("(%g − %g)/%.2f", float64(w.Inside), float64(w.Outside), (w.Inside.Kelvin()+w.Outside.Kelvin())/2), w.warmer(), "")
	c.Step("drive", "Δp/ρ = g H (Ti − To)/T̄ + ½ U² (Cp1 − Cp2)", fmt.Sprintf("%g·%g·%.5f + ½·%g²·(%g − %g)", gravity, float64(high.Height), w.warmer(), w.Wind, low.Pressure, high.Pressure),
		gravity*float64(high.Height)*w.warmer()+w.Wind*w.Wind/2*(low.Pressure-high.Pressure), "m2/s2")
	flow := c.Step("flow", "Q = Cd (1/A1² + 1/A2²)^−½ √(2 Δp/ρ)", fmt.Sprintf("%g·(1/%g² + 1/%g²)^−½·√(2 Δp/ρ)", discharge, float64(low.Area), float64(high.Area)), p.Flow, "m3/s")
	direction := "in below and out above"
	switch {
	case flow < 0:
		flow, direction = -flow, "in above and out below"
	case flow == 0:
		direction = "none"
	}
	c.Result("flow", flow, "m3/s")
	c.ResultText("direction", direction)
	if p.Level {
		c.Result("neutral_level", float64(p.Neutral), "m")
	}
	c.Result("heat", float64(Carries(flow, 101.3)), "W/K")
	if c.Given("volume") {
		c.Result("air_changes", Changes(flow, c.Number("volume")), "/h")
	}
	if w.Wind > 0 && low.Pressure == high.Pressure {
		c.Caution("With the same pressure coefficient at both openings the wind does nothing in this formula.")
	}
}
