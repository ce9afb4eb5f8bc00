package water

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// Sheets gives the sheets of this package.
func Sheets() []sheet.Sheet {
	return append(barrierSheets(), roofYield(), firstFlush(), tankSteps(), tankDrySeason(), massCurve(), roofHour(), tankHour(), usesHour())
}

var (
	drinkCaution = "Rain off a roof is not drinking water until it is treated and tested: birds, dust, lead flashings and coatings spoil it. Local health rules decide."
	sizeCaution  = "A tank sized on means runs dry in the worst years: try it on a long record."
	tankCaution  = "A full tank is heavy and deep: its footing needs an engineer, its lid a lock, and nobody enters it alone."
)

func roofYield() sheet.Sheet {
	return sheet.Sheet{
		Name: "roof-yield", Title: "Water a roof sheds",
		Inputs: []sheet.Input{
			{Name: "roof", Unit: "m2", Default: "200m2", Low: sheet.At(0), High: sheet.At(1e6), Meaning: "area as seen from above"},
			{Name: "rain", Unit: "mm", Default: "750mm", Low: sheet.At(0), High: sheet.At(20000), Meaning: "in the time looked at"},
			{Name: "coefficient", Unit: "fraction", Default: "0.8", Low: sheet.At(0), High: sheet.At(1), Meaning: "share of the rain beyond wetting that is caught"},
			{Name: "wetting_loss", Unit: "mm", Default: "0mm", Low: sheet.At(0), High: sheet.At(20000), Meaning: "held by the surface in that time; 24 mm a year is a usual figure"},
		},
		Sources:  []string{"enhealth-rainwater: appendix B", "en16941-1: yield coefficients"},
		Cautions: []string{drinkCaution},
		Do: func(c *sheet.Calc) {
			roof, rain, e, b := c.Number("roof"), c.Number("rain"), c.Number("coefficient"), c.Number("wetting_loss")
			y := Yield(quantity.SquareMetres(roof), quantity.Millimetres(rain), quantity.Millimetres(b), e)
			c.Step("yield", "A (R - B) area, none where R is below B", fmt.Sprintf("%g x (%g - %g) x %g", e, rain, b, roof), float64(y), "L")
			c.Result("yield", float64(y), "L")
		},
	}
}

func firstFlush() sheet.Sheet {
	return sheet.Sheet{
		Name: "first-flush", Title: "First water to divert from a roof",
		Inputs: []sheet.Input{
			{Name: "roof", Unit: "m2", Default: "100m2", Low: sheet.At(0), High: sheet.At(1e6), Meaning: "area as seen from above"},
			{Name: "depth", Unit: "mm", Default: "1mm", Low: sheet.At(0), High: sheet.At(100), Meaning: "diverted, on the roof; 0.5 mm where little falls on it, 2 mm where much does"},
		},
		Sources:  []string{"martinson-first-flush: abstract, each millimetre halves the contamination", "texas-rainwater: 1 to 2 US gallons on 100 square feet (0.41 to 0.81 mm; remembered)"},
		Cautions: []string{drinkCaution, "A diverter that is not emptied and cleaned diverts nothing."},
		Do: func(c *sheet.Calc) {
			roof, depth := c.Number("roof"), c.Number("depth")
			v := FirstFlush{Depth: quantity.Millimetres(depth)}.Takes(quantity.SquareMetres(roof))
			left := RemainingContamination(quantity.Millimetres(depth))
			c.Step("diverted", "depth area", fmt.Sprintf("%g mm x %g m2", depth, roof), float64(v), "L")
			c.Step("contamination left", "0.5^depth", fmt.Sprintf("0.5^%g", depth), left, "fraction")
			c.Result("volume", float64(v), "L")
			c.Result("remaining_contamination", left, "fraction")
		},
	}
}

func tankSteps() sheet.Sheet {
	return sheet.Sheet{
		Name: "tank-steps", Title: "A tank step by step by a published rule",
		Inputs: []sheet.Input{
			{Name: "capacity", Unit: "kL", Default: "6kL", Low: sheet.At(0), High: sheet.At(1e6), Meaning: "what the tank holds"},
			{Name: "start", Unit: "kL", Default: "1kL", Low: sheet.At(0), High: sheet.At(1e6), Meaning: "in it before the first step"},
			{Name: "inflow", Kind: sheet.List, Unit: "kL", Default: "0kL,3kL,8kL,0kL,0kL,5kL,0kL,0kL,0kL,2kL", Low: sheet.At(0), Meaning: "in each step"},
			{Name: "demand", Unit: "kL", Default: "2kL", Low: sheet.At(0), High: sheet.At(1e6), Meaning: "in every step"},
			{Name: "rule", Kind: sheet.Text, Default: "after-spillage", Choices: []string{"after-spillage", "before-spillage", "of-the-hour"}, Meaning: "order of spilling and drawing; of-the-hour is the one this program lives by"},
		},
		Sources:  []string{"fewkes-butler: after and before spillage"},
		Cautions: []string{sizeCaution, tankCaution},
		Do:       doTankSteps,
	}
}

func doTankSteps(c *sheet.Calc) {
	v := Vessel{Holds: c.Number("capacity"), Start: c.Number("start"), Demand: c.Number("demand")}
	if v.Start > v.Holds {
		c.Fail("start %g kL is more than the capacity %g kL: start with at most that", v.Start, v.Holds)
		return
	}
	yields, spills := map[string]float64{}, map[string]float64{}
	for rule := range Rules {
		s := v.Steps(rule, c.Numbers("inflow"))
		yield, spill := s.Total()
		yields[rule.String()], spills[rule.String()] = yield, spill
		if rule.String() != c.Text("rule") {
			continue
		}
		tellSteps(c, v, s)
		c.ResultList("yields", s.Yields, "kL")
		c.ResultList("spills", s.Spills, "kL")
		c.ResultList("levels", s.Levels, "kL")
		c.Result("total_yield", yield, "kL")
		c.Result("total_spill", spill, "kL")
	}
	c.ResultByMethod("by_method", yields, "kL")
	c.ResultByMethod("spill_by_method", spills, "kL")
}

// tellSteps shows the working of every step.
func tellSteps(c *sheet.Calc, v Vessel, s Steps) {
	formula := map[string]string{
		"after-spillage":  "Y = min(D, V), V' = min(V + Q - Y, S - Y)",
		"before-spillage": "Y = min(D, V + Q), V' = min(V + Q - Y, S)",
		"of-the-hour":     "Y = min(D, min(V + Q, S)), V' = min(V + Q, S) - Y",
	}[c.Text("rule")]
	level := v.Start
	for i, q := range c.Numbers("inflow") {
		numbers := fmt.Sprintf("V = %g, Q = %g, D = %g, S = %g: Y = %g, spill %g, V' = %g", level, q, v.Demand, v.Holds, s.Yields[i], s.Spills[i], s.Levels[i])
		level = s.Levels[i]
		c.Step(fmt.Sprintf("step %d", i+1), formula, numbers, s.Yields[i], "kL")
	}
}

func tankDrySeason() sheet.Sheet {
	return sheet.Sheet{
		Name: "tank-dry-season", Title: "Tank to carry people through a dry season",
		Inputs: []sheet.Input{
			{Name: "people", Default: "6", Low: sheet.At(0), High: sheet.At(1000), Meaning: "who draw from it"},
			{Name: "demand_per_person", Unit: "L/person/d", Default: "20L/person/d", Low: sheet.At(0), High: sheet.At(1000), Meaning: "drawn"},
			{Name: "dry_days", Unit: "d", Default: "25d", Low: sheet.At(0), High: sheet.At(3660), Meaning: "longest dry spell to carry"},
			{Name: "yearly_yield", Unit: "L", Maybe: true, Low: sheet.At(0), Meaning: "of the roofs, for the simplified approaches beside it"},
		},
		Sources:  []string{"rwh-lesson-demand: sizing by demand", "en16941-1: simplified approach, 5 % of the lesser of yield and demand", "din1989-1: the same with 6 %"},
		Cautions: []string{"It takes the tank to be full when the dry season begins.", sizeCaution, tankCaution},
		Do: func(c *sheet.Calc) {
			n, d, days := c.Number("people"), c.Number("demand_per_person"), c.Number("dry_days")
			v := DrySeason(n, quantity.Litres(d), days)
			c.Step("capacity", "people demand days", fmt.Sprintf("%g x %g x %g", n, d, days), float64(v), "L")
			c.Result("capacity", float64(v), "L")
			if !c.Given("yearly_yield") {
				return
			}
			yield, demand := quantity.Litres(c.Number("yearly_yield")), DrySeason(n, quantity.Litres(d), 365)
			c.ResultByMethod("by_method", map[string]float64{"dry-season": float64(v),
				"simplified": float64(Simplified(yield, demand, SimplifiedShare)), "simplified-german": float64(Simplified(yield, demand, GermanShare))}, "L")
			c.Caution("The simplified approaches know no dry season: they suit climates where rain falls all year.")
		},
	}
}

func massCurve() sheet.Sheet {
	return sheet.Sheet{
		Name: "mass-curve", Title: "Capacity that never runs dry, by the mass curve",
		Inputs: []sheet.Input{
			{Name: "inflow", Kind: sheet.List, Unit: "kL", Default: "12kL,8kL,6kL,15kL,10kL", Low: sheet.At(0), Meaning: "in each step"},
			{Name: "release", Unit: "kL", Default: "10kL", Low: sheet.At(0), High: sheet.At(1e9), Meaning: "in every step"},
			{Name: "passes", Default: "1", Low: sheet.At(1), High: sheet.At(100), Meaning: "times the record is gone through; 2 for a year that follows itself"},
		},
		Sources:  []string{"sequent-peak: K = max(0, K + R - Q)"},
		Cautions: []string{sizeCaution, tankCaution},
		Do: func(c *sheet.Calc) {
			inflow, release, passes := c.Numbers("inflow"), c.Number("release"), int(c.Number("passes"))
			if float64(passes) != c.Number("passes") {
				c.Fail("passes %g is no whole number: write for example 2", c.Number("passes"))
				return
			}
			capacity, deficits := MassCurve(inflow, release, passes)
			before := 0.0
			for i, k := range deficits {
				q := inflow[i%len(inflow)]
				c.Step(fmt.Sprintf("deficit after step %d", i+1), "max(0, K + R - Q)", fmt.Sprintf("max(0, %g + %g - %g)", before, release, q), k, "kL")
				before = k
			}
			c.Result("capacity", capacity, "kL")
			c.ResultList("deficits", deficits, "kL")
			if more, _ := MassCurve(inflow, release, passes+1); more > capacity {
				c.Caution(fmt.Sprintf("One more pass needs %g kL: the deficit runs over the end of the record.", more))
			}
		},
	}
}
