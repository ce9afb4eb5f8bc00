package waste

import (
	"fmt"
	"slices"

	"suffice/sheet"
)

// soilTables are the methods of drain-area that go by the soil instead of a test.
var soilTables = [...]string{"epa-2002", "as-nzs-1547-2012"}

func drainArea() sheet.Sheet {
	methods := append(names(FieldRules(), func(r FieldRule) string { return r.Name }), soilTables[:]...)
	soils := append([]string{"unknown"}, names(SoilRates(), func(r SoilRate) string { return r.Soil })...)
	slices.Sort(soils)
	return sheet.Sheet{
		Name: "drain-area", Title: "Floor and length of a drain trench by several rules",
		Inputs: []sheet.Input{
			people("5"),
			{Name: "daily_flow", Unit: "L/d", Maybe: true, Low: sheet.At(1), High: sheet.At(1e5), Meaning: "to the trench; without it bedrooms times 130 US gallons"},
			{Name: "bedrooms", Default: "3", Low: sheet.At(1), High: sheet.At(20), Meaning: "counted by American rules"},
			{Name: "rate", Unit: "s/mm", Default: "18s/mm", Low: sheet.At(0.1), High: sheet.At(1000), Meaning: "of the percolation test"},
			{Name: "soil", Kind: sheet.Text, Default: "unknown", Choices: slices.Compact(soils), Meaning: "texture and structure, for the tables that go by soil"},
			{Name: "method", Kind: sheet.Text, Default: "uk-bs6297", Choices: methods, Meaning: "rule to answer by"},
			{Name: "trench_width", Unit: "m", Default: "0.6m", Low: sheet.At(0.1), High: sheet.At(5), Meaning: "of the floor"},
			{Name: "treated", Kind: sheet.Text, Default: "no", Choices: []string{"no", "yes"}, Meaning: "effluent of a treatment plant, not of a septic tank"},
		},
		Sources: append(names(FieldRules(), func(r FieldRule) string { return r.Source }),
			"epa2002: table 4-3, after Tyler 2001; remembered", "asnzs1547: 2012, table L1, the careful figure; remembered"),
		Cautions: cautions(), Do: doDrainArea,
	}
}

func doDrainArea(c *sheet.Calc) {
	if !whole(c, "bedrooms") {
		return
	}
	h := House{People: c.Number("people"), Bedrooms: int(c.Number("bedrooms"))}
	if c.Given("daily_flow") {
		h.Daily = c.Number("daily_flow")
	}
	by := map[string]float64{}
	rate := c.Number("rate")
	numbers := fmt.Sprintf("P = %g, B = %d, Vp = %g s/mm, t = %.4g min/inch, soil %s", h.People, h.Bedrooms, rate, MinutesPerInch(rate), c.Text("soil"))
	if q, err := h.flow(); err == nil {
		numbers += fmt.Sprintf(", Q = %.5g L/d", q*gallon)
	}
	answer := func(name, formula string, area float64, err error) {
		switch {
		case err == nil:
			by[name] = c.Step(name, formula, numbers, area, "m2")
		case name == c.Text("method"):
			c.Fail("the rule %s %v: take another method or other ground", name, err)
		default:
			c.Caution(fmt.Sprintf("%s gives no answer: it %v.", name, err))
		}
	}
	for _, r := range FieldRules() {
		area, err := r.Area(h, rate, c.Text("treated") == "yes")
		answer(r.Name, r.Formula, area, err)
		if !r.Printed(h) {
			c.Caution(fmt.Sprintf("%s is printed for %.4g to %.5g L a day: here it is stretched.", r.Name, r.Low, r.High))
		}
	}
	for _, table := range soilTables {
		area, err := bySoil(c, h, table)
		answer(table, "Q/(rate of the soil)", area, err)
	}
	if _, ok := by[c.Text("method")]; ok {
		tellArea(c, by)
	}
}

// bySoil gives the area by one table of soils.
func bySoil(c *sheet.Calc, h House, table string) (float64, error) {
	gallons, err := h.flow()
	if err != nil {
		return 0, err
	}
	for _, r := range SoilRates() {
		if r.Table == table && r.Soil == c.Text("soil") {
			return LoadingArea(gallons*gallon, r, c.Text("treated") == "yes")
		}
	}
	return 0, fmt.Errorf("goes by the soil, and has no row for %q: name it", c.Text("soil"))
}

func tellArea(c *sheet.Calc, by map[string]float64) {
	area := by[c.Text("method")]
	low, high := area, area
	for _, a := range by {
		low, high = min(low, a), max(high, a)
	}
	width := c.Number("trench_width")
	c.Result("area", area, "m2")
	c.Result("length", c.Step("length", "A/width", fmt.Sprintf("%.4g m2/%g m", area, width), TrenchLength(area, width), "m"), "m")
	c.ResultByMethod("by_method", by, "m2")
	c.Result("spread", c.Step("largest over smallest", "max/min", fmt.Sprintf("%.4g/%.4g", high, low), high/low, "fraction"), "fraction")
	if high > 1.3*low {
		c.Caution(fmt.Sprintf("Published rules differ by %.1f times on this ground (%.3g to %.3g m2): the place decides which one rules.", high/low, low, high))
	}
}
