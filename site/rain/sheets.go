package rain

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// Sheets gives the sheets of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{gutter(), downpipe()} }

var cautions = []string{
	"Storms beyond the design happen: let a full gutter overflow outwards, away from walls and doors. The local code fixes the storm to build for.",
	"Leaves block gutters and outlets long before their capacity counts. Work on roofs and ladders is dangerous: secure yourself or have it done.",
}

func gutter() sheet.Sheet {
	return sheet.Sheet{
		Name: "gutter", Title: "What a level eaves gutter carries",
		Inputs: []sheet.Input{
			{Name: "width", Unit: "mm", Default: "100mm", Low: sheet.At(50), High: sheet.At(500), Meaning: "across the top"},
			{Name: "shape", Kind: sheet.Text, Default: "half-round", Choices: []string{"half-round", "rectangular"}, Meaning: "cross-section"},
			{Name: "depth", Unit: "mm", Maybe: true, Low: sheet.At(25), High: sheet.At(1000), Meaning: "of a rectangular gutter; left out: as deep as wide"},
			{Name: "roof", Unit: "m2", Default: "30m2", Low: sheet.At(0), Meaning: "plan area that drains to it"},
			{Name: "slope", Unit: "deg", Default: "0deg", Low: sheet.At(0), High: sheet.At(75), Meaning: "of the roof; 0 deg where the area already counts driven rain"},
			{Name: "intensity", Unit: "mm/h", Default: "75mm/h", Low: sheet.At(1), High: sheet.At(1000), Meaning: "of the storm of minutes to build for"},
			{Name: "run", Unit: "m", Default: "0m", Low: sheet.At(0), High: sheet.At(100), Meaning: "length to the outlet; 0 m: short"},
		},
		Sources:  []string{"en12056-3: clause 5, eaves gutters", "approved-document-h3: tables 1 and 2"},
		Cautions: cautions,
		Do:       doGutter,
	}
}

func doGutter(c *sheet.Calc) {
	g := Gutter{Width: quantity.Millimetres(c.Number("width")), Run: quantity.Metres(c.Number("run"))}
	if c.Text("shape") == "rectangular" {
		g.Shape, g.Depth = Rectangular, g.Width
		if c.Given("depth") {
			g.Depth = quantity.Millimetres(c.Number("depth"))
		}
		c.Caution("For rectangular gutters the standard reads a depth factor off a figure; here it follows from the flow over a free end, which is the standard's formula for a square one.")
	}
	capacity, err := g.Capacity()
	if err != nil {
		c.Fail("%w", err)
		return
	}
	plan, slope := quantity.SquareMetres(c.Number("roof")), quantity.Degrees(c.Number("slope"))
	c.Step("tested capacity", g.formula(), g.numbers(), g.Nominal(), "L/s")
	factor, _ := RunFactor(float64(g.Run) * 1000 / float64(g.deep()))
	c.Step("by design", "0.9 QN FL", fmt.Sprintf("0.9 x %.4g x %.4g", g.Nominal(), factor), capacity, "L/s")
	catch := float64(EffectiveArea(plan, slope))
	c.Step("area with driven rain", "A (1 + tan(slope)/2)", fmt.Sprintf("%g x (1 + tan(%g deg)/2)", float64(plan), float64(slope)), catch, "m2")
	rate := Rate(c.Number("intensity"))
	needed := c.Step("flow of the storm", "r A", fmt.Sprintf("%.4g L/s/m2 x %.4g m2", rate, catch), rate*catch, "L/s")
	c.Result("capacity", capacity, "L/s")
	c.Result("needed", needed, "L/s")
	c.Result("largest_roof", capacity/(rate*float64(EffectiveArea(1, slope))), "m2")
	c.Result("largest_effective_area", capacity/rate, "m2")
	if needed > capacity {
		c.Caution(fmt.Sprintf("This gutter overtops in the storm: it carries %.2f L/s of %.2f L/s. Give it another outlet or take a wider one.", capacity, needed))
	}
}

func (g Gutter) formula() string {
	if g.Shape == HalfRound {
		return "QN = 2.78e-5 AE^1.25, AE = pi W2/8"
	}
	return "QN = 3.48e-5 (W T)^1.25 (T/W)^0.25"
}

func (g Gutter) numbers() string {
	if g.Shape == HalfRound {
		return fmt.Sprintf("2.78e-5 x (pi x %g2/8)^1.25", float64(g.Width))
	}
	return fmt.Sprintf("3.48e-5 x (%g x %g)^1.25 x (%g/%g)^0.25", float64(g.Width), float64(g.Depth), float64(g.Depth), float64(g.Width))
}

func downpipe() sheet.Sheet {
	return sheet.Sheet{
		Name: "downpipe", Title: "What a downpipe carries",
		Inputs: []sheet.Input{
			{Name: "diameter", Unit: "mm", Default: "100mm", Low: sheet.At(30), High: sheet.At(400), Meaning: "inside"},
			{Name: "filling", Unit: "fraction", Default: "0.33", Low: sheet.At(0.20), High: sheet.At(0.33), Meaning: "share of the cross-section that water takes"},
		},
		Sources:  []string{"en12056-3: clause 6, Wyly and Eaton's formula"},
		Cautions: cautions,
		Do: func(c *sheet.Calc) {
			d, f := c.Number("diameter"), c.Number("filling")
			q := c.Step("capacity", "2.5e-4 kb^-0.167 di^2.667 f^1.667",
				fmt.Sprintf("2.5e-4 x %g^-0.167 x %g^2.667 x %g^1.667", pipeRoughness, d, f), Downpipe(quantity.Millimetres(d), f), "L/s")
			c.Result("capacity", q, "L/s")
			c.Result("roof_at_75_mm_per_hour", q/Rate(DesignIntensity), "m2")
		},
	}
}
