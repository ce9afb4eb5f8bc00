package waste

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// These sheets call the steps that the hour calls, with all that an hour of a lived house begins with.

// Tell gives the inputs with which the sheet septic-hour works an hour again, to the last bit.
func (k *SepticTank) Tell(before *TankState, in *TankIn) map[string]sheet.Value {
	values := numbers(map[string]float64{"holds": float64(k.Holds), "settles": k.Settles, "binds": k.Binds,
		"liquid": float64(before.Liquid), "sludge": float64(before.Sludge), "scum": float64(before.Scum), "inflow": float64(in.Inflow)})
	carry(values, "inflow", in.Load)
	carry(values, "dissolved", before.Dissolved)
	carry(values, "settled", before.Settled)
	return values
}

// Tell gives the inputs with which the sheet trench-hour works an hour again, to the last bit. Before is the state in a day that
// has begun with Day.
func (t *Trench) Tell(before *TrenchState, in *TrenchIn) map[string]sheet.Value {
	values := numbers(map[string]float64{
		"length": float64(t.Length), "width": float64(t.Width), "gravel_depth": float64(t.Gravel), "pores": t.Pores, "catch": float64(t.Catch),
		"runs_off": t.RunsOff, "cover_holds": float64(t.Cover), "long": t.Soil.Long, "fresh": t.Soil.Fresh, "grass": t.Grass,
		"mat": before.Mat, "trees": before.Today.Trees, "reach": t.Grove.Reach, "inflow": float64(in.Inflow), "rain": float64(in.Rain), "reference": float64(in.Reference),
		"gravel": float64(before.Gravel), "cover": float64(before.Cover)})
	carry(values, "inflow", in.Load)
	carry(values, "gravel", before.Load)
	return values
}

// Tell gives the inputs with which the sheet trees-hour works what the trees want again, to the last bit.
func (g *Grove) Tell(in *TrenchDayIn, reference quantity.Millimetres) map[string]sheet.Value {
	l := &g.Leaves
	values := numbers(map[string]float64{"trees": float64(g.Trees), "crown": float64(g.Crown), "grown_at": g.Grown, "kc": g.Kc, "age": in.Age, "day_of_year": float64(in.Day),
		"out": float64(l.Out), "full": float64(l.Full), "turn": float64(l.Turn), "bare": float64(l.Bare), "reference": float64(reference)})
	values["south"] = sheet.Value{Kind: sheet.Text, Text: yes(in.South)}
	values["evergreen"] = sheet.Value{Kind: sheet.Text, Text: yes(l.Evergreen)}
	return values
}

func numbers(m map[string]float64) map[string]sheet.Value {
	values := make(map[string]sheet.Value, len(m))
	for name, v := range m {
		values[name] = sheet.Value{Kind: sheet.Number, Number: v}
	}
	return values
}

func carry(to map[string]sheet.Value, name string, l Load) {
	for what, v := range map[string]float64{"salt": l.Salt, "bod": l.BOD, "nitrogen": l.Nitrogen} {
		to[name+"_"+what] = sheet.Value{Kind: sheet.Number, Number: v}
	}
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// loaded declares a load, and load reads it.
func loaded(name, salt, bod, nitrogen string) []sheet.Input {
	return []sheet.Input{grams(name+"_salt", salt, "in it"), grams(name+"_bod", bod, "in it"), grams(name+"_nitrogen", nitrogen, "in it")}
}

func load(c *sheet.Calc, name string) Load {
	return Load{c.Number(name + "_salt"), c.Number(name + "_bod"), c.Number(name + "_nitrogen")}
}

func tellLoad(c *sheet.Calc, name string, l Load) {
	c.Result(name+"_salt", l.Salt, "g")
	c.Result(name+"_bod", l.BOD, "g")
	c.Result(name+"_nitrogen", l.Nitrogen, "g")
}

func septicHour() sheet.Sheet {
	s := sheet.Sheet{
		Name: "septic-hour", Title: "A septic tank in one hour",
		Inputs: []sheet.Input{
			litres("holds", "3000L", "below the outlet"), share("settles", "0.3", "of arriving BOD that goes to the sludge"), share("binds", "0.1", "of arriving nitrogen that goes to the sludge"),
			litres("liquid", "2500L", "before"), litres("sludge", "400L", "before"), litres("scum", "100L", "before"), litres("inflow", "20L", "in the hour"),
		},
		Sources: []string{"unhabitat-wetlands: 30 % of the BOD settles; remembered"}, Cautions: cautions(), Do: doSepticHour,
	}
	s.Inputs = append(s.Inputs, loaded("inflow", "8g", "9g", "3g")...)
	s.Inputs = append(s.Inputs, loaded("dissolved", "1000g", "900g", "400g")...)
	s.Inputs = append(s.Inputs, loaded("settled", "0g", "5000g", "600g")...)
	return s
}

func doSepticHour(c *sheet.Calc) {
	k := SepticTank{Holds: quantity.Litres(c.Number("holds")), Settles: c.Number("settles"), Binds: c.Number("binds")}
	s := TankState{Liquid: quantity.Litres(c.Number("liquid")), Sludge: quantity.Litres(c.Number("sludge")), Scum: quantity.Litres(c.Number("scum")),
		Dissolved: load(c, "dissolved"), Settled: load(c, "settled")}
	in := TankIn{Inflow: quantity.Litres(c.Number("inflow")), Load: load(c, "inflow")}
	var out TankOut
	before := s
	k.Step(&s, &in, &out)
	c.Step("outflow", "liquid + sludge + scum + inflow - holds, nothing below 0",
		fmt.Sprintf("%.6g + %.6g + %.6g + %.6g - %g", float64(before.Liquid), float64(before.Sludge), float64(before.Scum), float64(in.Inflow), float64(k.Holds)), float64(out.Outflow), "L")
	c.Step("BOD settled", "settles x BOD of the inflow", fmt.Sprintf("%g x %.5g", k.Settles, in.Load.BOD), s.Settled.BOD-before.Settled.BOD, "g")
	c.Result("outflow", float64(out.Outflow), "L")
	tellLoad(c, "outflow", out.Load)
	c.Result("liquid_after", float64(s.Liquid), "L")
	tellLoad(c, "dissolved_after", s.Dissolved)
	tellLoad(c, "settled_after", s.Settled)
	c.Result("full", k.Full(&s), "fraction")
}

func trenchHour() sheet.Sheet {
	s := sheet.Sheet{
		Name: "trench-hour", Title: "A drain trench in one hour",
		Inputs: append(built(), []sheet.Input{
			{Name: "fresh", Unit: "mm/d", Default: "40mm/d", Low: sheet.At(0), High: sheet.At(1e5), Meaning: "what the clean ground takes"},
			share("mat", "0.8", "how far the ground has clogged: 0 fresh, 1 for good"),
			{Name: "trees", Unit: "L/mm", Default: "44L/mm", Low: sheet.At(0), High: sheet.At(1e6), Meaning: "that all trees want for each millimetre of reference evapotranspiration, see trees-hour"},
			share("reach", "0.5", "of the thirst the cover does not still that roots may take from the gravel"),
			litres("inflow", "15L", "of effluent"), depth("rain", "0mm", "in the hour"), depth("reference", "0.5mm", "FAO-56 reference evapotranspiration of the hour"),
			litres("gravel", "600L", "in the gravel before"), litres("cover", "10L", "in the soil above before"),
		}...),
		Sources: []string{"fao56: table 12, walnut in mid season, for the trees", "epa2002: table 4-3, long-term rates; remembered"}, Cautions: cautions(), Do: doTrenchHour,
	}
	s.Inputs = append(s.Inputs, loaded("inflow", "6g", "2g", "1g")...)
	s.Inputs = append(s.Inputs, loaded("gravel", "240g", "80g", "40g")...)
	return s
}

func doTrenchHour(c *sheet.Calc) {
	t := trenchOf(c)
	t.Soil.Fresh, t.Grove.Reach = c.Number("fresh"), c.Number("reach")
	if t.Soil.Long > t.Soil.Fresh {
		c.Fail("long %g mm/d is above fresh %g mm/d: clogged ground takes no more than clean ground", t.Soil.Long, t.Soil.Fresh)
		return
	}
	s := TrenchState{Gravel: quantity.Litres(c.Number("gravel")), Cover: quantity.Litres(c.Number("cover")), Mat: c.Number("mat"), Load: load(c, "gravel")}
	t.Day(&s, &TrenchDayIn{})
	s.Today.Trees = c.Number("trees")
	in := TrenchIn{Hours: 1, Inflow: quantity.Litres(c.Number("inflow")), Load: load(c, "inflow"), Rain: quantity.Millimetres(c.Number("rain")), Reference: quantity.Millimetres(c.Number("reference"))}
	var out TrenchOut
	t.Step(&s, &in, &out)
	tellTrench(c, &t, &s, &out, 1)
	c.Result("through", float64(out.Through), "L")
	c.Result("trees_deep", float64(out.Deep), "L")
	tellLoad(c, "surfaced", out.SurfacedLoad)
	tellLoad(c, "gravel_after", s.Load)
}

func treesHour() sheet.Sheet {
	day := func(name, otherwise, meaning string) sheet.Input {
		return sheet.Input{Name: name, Default: otherwise, Low: sheet.At(0), High: sheet.At(366), Meaning: meaning}
	}
	word := func(name, meaning string) sheet.Input {
		return sheet.Input{Name: name, Kind: sheet.Text, Default: "no", Choices: []string{"no", "yes"}, Meaning: meaning}
	}
	return sheet.Sheet{
		Name: "trees-hour", Title: "What the trees on a trench want in one hour",
		Inputs: []sheet.Input{
			{Name: "trees", Default: "2", Low: sheet.At(0), High: sheet.At(200), Meaning: "on the trench"},
			{Name: "crown", Unit: "m2", Default: "20m2", Low: sheet.At(0.1), High: sheet.At(400), Meaning: "of one grown tree, from above"},
			{Name: "grown_at", Unit: "years", Default: "12years", Low: sheet.At(1), High: sheet.At(100), Meaning: "age at which the crown has that size"},
			{Name: "kc", Default: "1.1", Low: sheet.At(0), High: sheet.At(2), Meaning: "crop coefficient in full leaf"},
			{Name: "age", Unit: "years", Default: "6years", Low: sheet.At(0), High: sheet.At(300), Meaning: "since planting"},
			{Name: "day_of_year", Default: "196", Low: sheet.At(1), High: sheet.At(366), Meaning: "for the leaves"},
			word("south", "of the equator, where the calendar lies half a year later"), word("evergreen", "in leaf all year"),
			day("out", "105", "northern day of the first leaves"), day("full", "140", "of full leaf"), day("turn", "275", "on which leaves begin to fall"), day("bare", "310", "on which the last have fallen"),
			depth("reference", "0.5mm", "FAO-56 reference evapotranspiration of the hour"),
		},
		Sources:  []string{"fao56: table 12, walnut in mid season, in place of the pecan it lacks"},
		Cautions: append(cautions(), "Leafless trees drink nothing: a trench that holds only with their help surfaces in winter."),
		Do:       doTreesHour,
	}
}

func doTreesHour(c *sheet.Calc) {
	for _, name := range []string{"trees", "day_of_year", "out", "full", "turn", "bare"} {
		if !whole(c, name) {
			return
		}
	}
	day := func(name string) int { return int(c.Number(name)) }
	g := Grove{Trees: day("trees"), Crown: quantity.SquareMetres(c.Number("crown")), Grown: c.Number("grown_at"), Kc: c.Number("kc"),
		Leaves: Calendar{Evergreen: c.Text("evergreen") == "yes", Out: day("out"), Full: day("full"), Turn: day("turn"), Bare: day("bare")}}
	in := TrenchDayIn{Day: day("day_of_year"), South: c.Text("south") == "yes", Age: c.Number("age")}
	leaf := g.Leaves.Leaf(in.Day, in.South)
	crown := float64(g.CrownAt(in.Age))
	c.Step("crown of one tree", "crown age/grown_at, up to the crown", fmt.Sprintf("%g x %.5g/%g", float64(g.Crown), in.Age, g.Grown), crown, "m2")
	c.Step("leaves", "a straight line as they open and fall", fmt.Sprintf("day %d", in.Day), leaf, "fraction")
	thirst := c.Step("wanted for a millimetre", "trees kc crown leaf", fmt.Sprintf("%d x %g x %.5g x %.4g", g.Trees, g.Kc, crown, leaf), g.Thirst(&in), "L/mm")
	c.Result("thirst", thirst, "L/mm")
	c.Result("wanted", c.Step("wanted in the hour", "thirst ETo", fmt.Sprintf("%.5g x %.4g", thirst, c.Number("reference")), thirst*c.Number("reference"), "L"), "L")
	c.Result("leaf", leaf, "fraction")
	c.Result("crown", crown, "m2")
}
