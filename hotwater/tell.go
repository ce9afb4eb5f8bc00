package hotwater

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site/sun"
)

// Tell gives the inputs with which the sheet collector-hour works the light that the
// collector takes up again, to the last bit.
func (c *Collector) Tell(l sun.PlaneLight) map[string]sheet.Value {
	return told(map[string]float64{
		"eta0": c.Eta0, "k50": c.K50, "slope": float64(c.Slope), "cosine": l.Incidence,
		"beam": float64(l.Beam), "sky": float64(l.Sky), "ground": float64(l.Ground),
	})
}

// Tell gives the inputs with which the sheet inlet-hour works the water coming in again.
func (n *Inlet) Tell(before InletState, air quantity.Celsius) map[string]sheet.Value {
	return told(map[string]float64{"days": n.Days, "swing": n.Swing, "mean": float64(n.Mean), "running": float64(before.Running), "air": float64(air)})
}

func told(numbers map[string]float64) map[string]sheet.Value {
	values := make(map[string]sheet.Value)
	for name, v := range numbers {
		values[name] = sheet.Value{Kind: sheet.Number, Number: v}
	}
	return values
}

func collectorHour() sheet.Sheet {
	light := func(name, usual, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "W/m2", Default: usual, Meaning: meaning, Low: sheet.At(0)}
	}
	return sheet.Sheet{
		Name: "collector-hour", Title: "Light that a collector takes up in one hour",
		Inputs: []sheet.Input{
			{Name: "eta0", Unit: "fraction", Default: "0.78", Meaning: "efficiency with the fluid at air temperature", Low: sheet.At(0.01), High: sheet.At(1)},
			{Name: "k50", Unit: "fraction", Default: "0.94", Meaning: "incidence modifier of beam at 50 deg", Low: sheet.At(0.01), High: sheet.At(1)},
			{Name: "slope", Unit: "deg", Default: "45 deg", Meaning: "of the collector, from level", Low: sheet.At(0), High: sheet.At(180)},
			{Name: "cosine", Default: "0.9", Meaning: "of the angle between sun and the collector's normal", Low: sheet.At(-1), High: sheet.At(1)},
			light("beam", "600 W/m2", "on the collector, straight from the sun"),
			light("sky", "120 W/m2", "on the collector, from the sky"),
			light("ground", "15 W/m2", "on the collector, from the ground"),
		},
		Sources:  []string{"souka-safwat: incidence modifier", "duffie-beckman: eq. 5.4.1 and 5.4.2, angles of sky and ground light"},
		Cautions: cautions,
		Do:       workCollectorHour,
	}
}

func workCollectorHour(c *sheet.Calc) {
	k := Collector{Eta0: c.Number("eta0"), K50: c.Number("k50"), Slope: quantity.Degrees(c.Number("slope"))}
	l := sun.PlaneLight{Incidence: c.Number("cosine"), Beam: quantity.Irradiance(c.Number("beam")), Sky: quantity.Irradiance(c.Number("sky")), Ground: quantity.Irradiance(c.Number("ground"))}
	beam := c.Step("modifier of the beam", "K = 1 − b0 (1/cos θ − 1), not below 0; b0 from K at 50 deg", fmt.Sprintf("cos θ = %.5g, K50 = %.4g", l.Incidence, k.K50), k.modifier(l.Incidence), "fraction")
	sky := c.Step("modifier of light from the sky", "K at 59.7 − 0.1388 β + 0.001497 β² deg", fmt.Sprintf("β = %.4g deg", float64(k.Slope)), k.skyModifier(), "fraction")
	ground := c.Step("modifier of light from the ground", "K at 90 − 0.5788 β + 0.002693 β² deg", fmt.Sprintf("β = %.4g deg", float64(k.Slope)), k.groundModifier(), "fraction")
	c.Step("light taken up", "η0 (K beam + K sky + K ground)", fmt.Sprintf("%.4g·(%.4g·%.5g + %.4g·%.5g + %.4g·%.5g)", k.Eta0, beam, float64(l.Beam), sky, float64(l.Sky), ground, float64(l.Ground)), k.Absorbed(l), "W/m2")
	c.Result("absorbed", k.Absorbed(l), "W/m2")
}

func inletHour() sheet.Sheet {
	air := func(name, usual, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "degC", Default: usual, Meaning: meaning, Low: sheet.At(-90), High: sheet.At(60)}
	}
	return sheet.Sheet{
		Name: "inlet-hour", Title: "Temperature of the water coming in",
		Inputs: []sheet.Input{
			{Name: "days", Unit: "d", Default: "30 d", Meaning: "time constant with which the ground follows the air", Low: sheet.At(0.01), High: sheet.At(1000)},
			{Name: "swing", Unit: "fraction", Default: "0.8", Meaning: "share of that slow mean's swing that arrives", Low: sheet.At(0), High: sheet.At(1)},
			air("mean", "12 degC", "of the air over the years"), air("running", "9 degC", "the slow mean before the hour"), air("air", "5 degC", "outside, in the hour"),
		},
		Sources:  []string{"en12976-2: lag and swing of the reference cold water; the form is common practice, no source"},
		Cautions: []string{"Cold water is to stay under 20 degC, where legionella hardly grow: ask the local health authority what it wants.", "A pipe that freezes bursts: lay it below frost or drain it."},
		Do:       workInletHour,
	}
}

func workInletHour(c *sheet.Calc) {
	n := Inlet{Days: c.Number("days"), Swing: c.Number("swing"), Mean: quantity.Celsius(c.Number("mean"))}
	if err := n.Prepare(); err != nil {
		c.Fail("%w", err)
		return
	}
	s := InletState{Running: quantity.Celsius(c.Number("running"))}
	out := n.Step(&s, quantity.Celsius(c.Number("air")))
	c.Step("slow mean of the air", "air + (before − air) exp(−1/(24 days))", fmt.Sprintf("%.5g + (%.5g − %.5g)·%.6f", c.Number("air"), c.Number("running"), c.Number("air"), math.Exp(-1/(24*n.Days))), float64(s.Running), "degC")
	c.Step("water coming in", "mean + (slow mean − mean) swing, not under 0 degC", fmt.Sprintf("%.5g + (%.5g − %.5g)·%.4g", float64(n.Mean), float64(s.Running), float64(n.Mean), n.Swing), float64(out.Cold), "degC")
	c.Result("running", float64(s.Running), "degC")
	c.Result("cold", float64(out.Cold), "degC")
	if out.Frozen {
		c.Caution("By this reckoning the pipe would be ice; the water is taken as 0 degC.")
	}
}
