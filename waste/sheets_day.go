package waste

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/sheet"
)

// These sheets call the steps that the hour and the day call.

func litres(name, otherwise, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: "L", Default: otherwise, Low: sheet.At(0), High: sheet.At(1e7), Meaning: meaning}
}

func grams(name, otherwise, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: "g", Default: otherwise, Low: sheet.At(0), High: sheet.At(1e7), Meaning: meaning}
}

func share(name, otherwise, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: "fraction", Default: otherwise, Low: sheet.At(0), High: sheet.At(1), Meaning: meaning}
}

func metres(name, otherwise, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: "m", Default: otherwise, Low: sheet.At(0.01), High: sheet.At(1000), Meaning: meaning}
}

func depth(name, otherwise, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: "mm", Default: otherwise, Low: sheet.At(0), High: sheet.At(2000), Meaning: meaning}
}

// built lists what describes a trench.
func built() []sheet.Input {
	return []sheet.Input{
		metres("length", "30m", "of the trench"), metres("width", "0.6m", "of the trench"), metres("gravel_depth", "0.3m", "of the gravel"),
		{Name: "pores", Unit: "fraction", Default: "0.35", Low: sheet.At(0.05), High: sheet.At(1), Meaning: "of the gravel"},
		{Name: "catch", Unit: "m2", Default: "18m2", Low: sheet.At(0), High: sheet.At(1e5), Meaning: "ground whose rain comes down on the trench"},
		share("runs_off", "0.3", "of the rain, on the surface"), litres("cover_holds", "720L", "what the soil above holds for plants"),
		{Name: "long", Unit: "mm/d", Default: "8.1mm/d", Low: sheet.At(0), High: sheet.At(1e5), Meaning: "what the ground takes in the long run"},
		{Name: "grass", Default: "1", Low: sheet.At(0), High: sheet.At(2), Meaning: "crop coefficient of the grass; 1 is the reference itself"},
	}
}

func trenchDay() sheet.Sheet {
	return sheet.Sheet{
		Name: "trench-day", Title: "A drain trench in one step of an hour or a day",
		Inputs: append(built(), []sheet.Input{
			{Name: "step", Unit: "h", Default: "24h", Low: sheet.At(0.1), High: sheet.At(24), Meaning: "an hour or a day"},
			{Name: "fresh", Unit: "mm/d", Default: "40mm/d", Low: sheet.At(0), High: sheet.At(1e5), Meaning: "what the clean ground takes"},
			share("mat", "1", "how far the ground has clogged: 0 fresh, 1 for good"),
			{Name: "trees", Default: "3", Low: sheet.At(0), High: sheet.At(100), Meaning: "on the trench"},
			{Name: "age", Unit: "years", Default: "12years", Low: sheet.At(0), High: sheet.At(300), Meaning: "of the trees since planting"},
			{Name: "day_of_year", Default: "196", Low: sheet.At(1), High: sheet.At(366), Meaning: "for the leaves"},
			{Name: "south", Kind: sheet.Text, Default: "no", Choices: []string{"no", "yes"}, Meaning: "of the equator"},
			litres("inflow", "300L", "of effluent"), grams("bod", "45g", "that it carries"), grams("nitrogen", "20g", "that it carries"), grams("salt", "60g", "that it carries"),
			depth("rain", "0mm", "in the step"), depth("reference", "5mm", "FAO-56 reference evapotranspiration of the step"),
			litres("gravel", "600L", "in the gravel before"), litres("cover", "200L", "in the soil above before"),
		}...),
		Sources: []string{"fao56: table 12, walnut in mid season, in place of the pecan it lacks", "epa2002: table 4-3, long-term rates; remembered"}, Cautions: cautions(), Do: doTrenchDay,
	}
}

// whole reports whether an input that counts is a whole number, and fails the sheet if not.
func whole(c *sheet.Calc, name string) bool {
	n := c.Number(name)
	if n != math.Trunc(n) {
		c.Fail("%s %g is no whole number: count again", name, n)
		return false
	}
	return true
}

func trenchOf(c *sheet.Calc) Trench {
	m := func(name string) quantity.Metres { return quantity.Metres(c.Number(name)) }
	return Trench{Length: m("length"), Width: m("width"), Gravel: m("gravel_depth"), Pores: c.Number("pores"),
		Catch: quantity.SquareMetres(c.Number("catch")), RunsOff: c.Number("runs_off"), Cover: quantity.Litres(c.Number("cover_holds")),
		Soil:  Soil{Fresh: c.Number("long"), Long: c.Number("long"), Clogs: UsualClogs},
		Grass: c.Number("grass")}
}

func doTrenchDay(c *sheet.Calc) {
	if !whole(c, "trees") || !whole(c, "day_of_year") {
		return
	}
	t := trenchOf(c)
	t.Soil.Fresh, t.Grove = c.Number("fresh"), UsualGrove(int(c.Number("trees")))
	if t.Soil.Long > t.Soil.Fresh {
		c.Fail("long %g mm/d is above fresh %g mm/d: clogged ground takes no more than clean ground", t.Soil.Long, t.Soil.Fresh)
		return
	}
	s := TrenchState{Gravel: quantity.Litres(c.Number("gravel")), Cover: quantity.Litres(c.Number("cover")), Mat: c.Number("mat")}
	day := TrenchDayIn{Day: int(c.Number("day_of_year")), South: c.Text("south") == "yes", Age: c.Number("age")}
	t.Day(&s, &day)
	in := TrenchIn{Hours: c.Number("step"), Inflow: quantity.Litres(c.Number("inflow")), Load: Load{c.Number("salt"), c.Number("bod"), c.Number("nitrogen")},
		Rain: quantity.Millimetres(c.Number("rain")), Reference: quantity.Millimetres(c.Number("reference"))}
	var out TrenchOut
	t.Step(&s, &in, &out)
	tellTrench(c, &t, &s, &out, c.Number("step"))
}

func tellTrench(c *sheet.Calc, t *Trench, s *TrenchState, out *TrenchOut, hours float64) {
	tell := func(name, formula, numbers string, v quantity.Litres) {
		c.Result(name, c.Step(name, formula, numbers, float64(v), "L"), "L")
	}
	ref := c.Number("reference")
	tell("run_off", "rain catch runs_off", fmt.Sprintf("%g x %g x %g", c.Number("rain"), c.Number("catch"), t.RunsOff), out.RunOff)
	tell("grass", "kc ETo area, of what the cover has", fmt.Sprintf("%.4g x %g", s.Today.Grass, ref), out.Grass)
	tell("trees", "kc leaf ETo crowns, from the cover, then half of the rest from the gravel", fmt.Sprintf("%.4g x %g", s.Today.Trees, ref), out.Trees)
	tell("infiltrated", "r (bottom + sides wet at the end)", fmt.Sprintf("%.4g mm/d on %g m2 of bottom, %g h", t.Soil.Takes(s.Mat), float64(t.Bottom()), hours), out.Infiltrated)
	tell("surfaced", "what stands above the gravel", fmt.Sprintf("gravel holds %.5g L", float64(t.Room())), out.Surfaced)
	tell("unmet", "thirst - grass - trees", fmt.Sprintf("(%.4g + %.4g) x %g - %.4g - %.4g", s.Today.Grass, s.Today.Trees, ref, float64(out.Grass), float64(out.Trees)), out.Unmet)
	c.Result("gravel_after", float64(s.Gravel), "L")
	c.Result("cover_after", float64(s.Cover), "L")
	c.Result("stands", float64(t.Stands(s))*1000, "mm")
	c.Result("bod_to_soil", out.ToSoil.BOD, "g")
	c.Result("salt_to_soil", out.ToSoil.Salt, "g")
	c.Result("nitrogen_to_soil", out.ToSoil.Nitrogen, "g")
	c.Result("nitrogen_to_trees", out.Taken.Nitrogen, "g")
	if out.Surfaced > 0 {
		c.Caution(fmt.Sprintf("%.3g L of sewage surface: fence it off, use less water, have the trench mended.", float64(out.Surfaced)))
	}
}

func tankDay() sheet.Sheet {
	return sheet.Sheet{
		Name: "tank-day", Title: "A septic tank in one day",
		Inputs: []sheet.Input{
			litres("holds", "3000L", "below the outlet"), people("4"),
			litres("inflow", "300L", "in the day"), grams("bod", "160g", "that it carries"), grams("nitrogen", "48g", "that it carries"), grams("salt", "120g", "that it carries"),
			litres("sludge", "400L", "before"), litres("scum", "100L", "before"),
			{Name: "desludge", Kind: sheet.Text, Default: "no", Choices: []string{"no", "yes"}, Meaning: "emptied at the end of the day"},
		},
		Sources: []string{"unhabitat-wetlands: 40 g of BOD a person, 30 % of it settles; remembered", "australia-sludge: 80 L a person and year; remembered"}, Cautions: cautions(), Do: doTankDay,
	}
}

func doTankDay(c *sheet.Calc) {
	k := UsualTank(quantity.Litres(c.Number("holds")))
	s := TankState{Sludge: quantity.Litres(c.Number("sludge")), Scum: quantity.Litres(c.Number("scum"))}
	if s.Liquid = k.Holds - s.Held(); s.Liquid < 0 {
		c.Fail("sludge and scum of %g L are more than the tank's %g L: measure again", float64(s.Held()), float64(k.Holds))
		return
	}
	in := TankIn{Inflow: quantity.Litres(c.Number("inflow")), Load: Load{c.Number("salt"), c.Number("bod"), c.Number("nitrogen")}}
	var out TankOut
	detention := k.Detention(&s, in.Inflow)
	k.Step(&s, &in, &out)
	var day TankDayOut
	k.Day(&s, &TankDayIn{People: c.Number("people"), Desludge: c.Text("desludge") == "yes"}, &day)
	c.Result("outflow", c.Step("outflow", "what stands above the outlet", fmt.Sprintf("inflow %g L", float64(in.Inflow)), float64(out.Outflow), "L"), "L")
	c.Result("bod_out", c.Step("BOD in the outflow", "(1 - settles) BOD, mixed with what stood in the tank", fmt.Sprintf("(1 - %g) x %g g", k.Settles, in.Load.BOD), out.Load.BOD, "g"), "g")
	c.Result("nitrogen_out", out.Load.Nitrogen, "g")
	c.Result("salt_out", out.Load.Salt, "g")
	c.Result("grown", c.Step("sludge and scum grown", "people rate/365.25", fmt.Sprintf("%g x %g/365.25", c.Number("people"), k.Sludge), float64(day.Grown), "L"), "L")
	c.Result("carried", float64(day.Carried), "L")
	c.Result("removed", float64(day.Removed), "L")
	if in.Inflow > 0 {
		c.Result("detention", detention, "d")
	}
	c.Result("full", k.Full(&s), "fraction")
	c.Result("days_to_desludge", k.DesludgeDay(&s, c.Number("people"), UsualShare), "d")
	if k.Full(&s) > UsualShare {
		c.Caution("Sludge and scum fill more than a third of the tank: have it emptied, or solids will block the trench.")
	}
}

func trenchTrees() sheet.Sheet {
	return sheet.Sheet{
		Name: "trench-trees", Title: "Trees on a drain trench: water and first nuts by age",
		Inputs: []sheet.Input{
			{Name: "age", Unit: "years", Default: "12years", Low: sheet.At(0), High: sheet.At(300), Meaning: "since planting"},
			depth("reference", "5mm", "FAO-56 reference evapotranspiration of a day"),
			{Name: "day_of_year", Default: "196", Low: sheet.At(1), High: sheet.At(366), Meaning: "for the leaves"},
			{Name: "south", Kind: sheet.Text, Default: "no", Choices: []string{"no", "yes"}, Meaning: "of the equator"},
			{Name: "distance", Unit: "m", Default: "0m", Low: sheet.At(0), High: sheet.At(1000), Meaning: "from the trench; 0 is on it"},
		},
		Sources:  []string{"fao56: table 12, walnut in mid season", "wullschleger: whole trees, 10 to 1,180 kg a day; seen in the abstract", "is2470: 3 m from trees; seen"},
		Cautions: append(cautions(), "Leafless trees drink nothing: a trench that holds only with their help surfaces in winter."),
		Do: func(c *sheet.Calc) {
			if !whole(c, "day_of_year") {
				return
			}
			g := UsualGrove(1)
			age, ref := c.Number("age"), quantity.Millimetres(c.Number("reference"))
			leaf := g.Leaves.Leaf(int(c.Number("day_of_year")), c.Text("south") == "yes")
			full := c.Step("in full leaf", "kc ETo crown", fmt.Sprintf("%g x %g mm x %.4g m2", g.Kc, float64(ref), float64(g.CrownAt(age))), float64(g.WaterAt(age, ref)), "L")
			c.Result("water", c.Step("on that day", "leaf share of it", fmt.Sprintf("%.3g x %.4g", leaf, full), leaf*full, "L"), "L")
			c.Result("leaf", leaf, "fraction")
			c.ResultText("bears", PecansBear().Bears(age))
			c.ResultText("conflict", orNone(TreeConflict(c.Number("distance"))))
		},
	}
}
