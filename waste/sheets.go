package waste

import (
	"fmt"
	"slices"
	"strings"

	"suffice/sheet"
)

// Sheets gives the sheets of this package.
func Sheets() []sheet.Sheet {
	return []sheet.Sheet{septicTank(), sludge(), percolation(), drainArea(), setbacks(), trenchDay(), trenchHour(), tankDay(), septicHour(), trenchTrees(), treesHour(), wetWinter()}
}

var (
	sewageCaution = "Sewage carries disease: gloves, washed hands, no children, no spray. Sewage on the ground is kept away from people, animals, wells and food until it is mended."
	gasCaution    = "Never enter a septic tank or lean into it: its gases kill within breaths, and the helper who follows. No flame near it; a locked lid that a child cannot lift."
	wellCaution   = "A tank or trench too near a well or stream poisons whoever drinks there. The basin for flushing at a planter's end is no groundwater well: no distance here is asked of it."
	localCaution  = "The local code decides what may be built and by which rule, and a licensed person must design, check and sign it."
)

func cautions() []string { return []string{sewageCaution, gasCaution, wellCaution, localCaution} }

func people(otherwise string) sheet.Input {
	return sheet.Input{Name: "people", Default: otherwise, Low: sheet.At(0.1), High: sheet.At(200), Meaning: "who live there, guests in proportion"}
}

// names lists what each of them is called.
func names[T any](all []T, of func(T) string) []string {
	var out []string
	for _, t := range all {
		out = append(out, of(t))
	}
	return out
}

func septicTank() sheet.Sheet {
	rules := TankRules()
	return sheet.Sheet{
		Name: "septic-tank", Title: "Size of a septic tank by several national rules",
		Inputs: []sheet.Input{
			people("5"),
			{Name: "method", Kind: sheet.Text, Default: "uk-nhbc-2020", Choices: names(rules, func(r TankRule) string { return r.Name }), Meaning: "rule to answer by; a place goes before it"},
			{Name: "place", Kind: sheet.Text, Default: "elsewhere", Choices: append([]string{"elsewhere"}, Places()...), Meaning: "where the rule is law or code"},
			{Name: "daily_flow", Unit: "L/d", Default: "900L/d", Low: sheet.At(1), High: sheet.At(1e5), Meaning: "to the tank"},
			{Name: "bedrooms", Default: "3", Low: sheet.At(1), High: sheet.At(20), Meaning: "counted by American rules"},
		},
		Sources: append(names(rules, func(r TankRule) string { return r.Source }), "mara1996: retention; remembered"), Cautions: cautions(), Do: doSepticTank,
	}
}

func doSepticTank(c *sheet.Calc) {
	if !whole(c, "bedrooms") {
		return
	}
	h := House{People: c.Number("people"), Bedrooms: int(c.Number("bedrooms")), Daily: c.Number("daily_flow")}
	name := c.Text("method")
	if r, ok := Ruling(c.Text("place")); ok {
		if c.Chosen("method") && name != r.Name {
			c.Caution(fmt.Sprintf("The place decides: %s rules in %s, not the %s that was asked for.", r.Name, c.Text("place"), name))
		}
		name = r.Name
	}
	by := map[string]float64{}
	for _, r := range TankRules() {
		v, err := r.Capacity(h)
		if err != nil {
			if r.Name == name {
				c.Fail("the rule %s %v: take another method", r.Name, err)
			} else {
				c.Caution(fmt.Sprintf("%s gives no answer: it %v.", r.Name, err))
			}
			continue
		}
		by[r.Name] = c.Step(r.Name, r.Formula, fmt.Sprintf("P = %g, B = %d, Q = %g L/d", h.People, h.Bedrooms, h.Daily), v, "L")
	}
	c.Result("volume", by[name], "L")
	c.ResultByMethod("by_method", by, "L")
	c.ResultText("method_used", name)
	c.Result("detention", c.Step("detention, empty of sludge", "V/Q", fmt.Sprintf("%g/%g", by[name], h.Daily), by[name]/h.Daily, "d"), "d")
	c.Result("detention_least", c.Step("least detention", "max(0.2, 1.5 - 0.3 log10(Q))", fmt.Sprintf("Q = %g L/d", h.Daily), MaraRetention(h.Daily), "d"), "d")
}

func sludge() sheet.Sheet {
	return sheet.Sheet{
		Name: "sludge", Title: "Years until a septic tank is emptied",
		Inputs: []sheet.Input{
			people("4"),
			{Name: "rate", Unit: "L/person/year", Default: "80L/person/year", Low: sheet.At(1), High: sheet.At(500), Meaning: "sludge and scum, after digestion"},
			{Name: "volume", Unit: "L", Default: "3000L", Low: sheet.At(1), High: sheet.At(1e6), Meaning: "of the tank, below the outlet"},
			{Name: "share", Unit: "fraction", Default: "0.3333", Low: sheet.At(0.01), High: sheet.At(1), Meaning: "of the tank that sludge and scum may take; a third is common practice, no source"},
		},
		Sources: append(names(SludgeRates(), func(r SludgeRate) string { return r.Source }), "franceys: factors for years and warmth; remembered"), Cautions: cautions(), Do: doSludge,
	}
}

func doSludge(c *sheet.Calc) {
	n, rate, volume, share := c.Number("people"), c.Number("rate"), c.Number("volume"), c.Number("share")
	tell := func(what string, r float64) float64 {
		return c.Step(what, "share V/(people rate)", fmt.Sprintf("%g x %g/(%g x %g)", share, volume, n, r), YearsToDesludge(volume, share, n, r), "years")
	}
	by := map[string]float64{}
	years := tell("years", rate)
	for _, r := range SludgeRates() {
		if !strings.HasPrefix(r.Name, "who-") {
			by[r.Name] = tell(r.Name, r.Rate)
		}
	}
	for name, w := range map[string]Warmth{"who-1992-hot": Hot, "who-1992-mild": Mild, "who-1992-cold": Cold} {
		by[name] = WHOYears(volume, share, n, 40, w)
	}
	for _, name := range []string{"who-1992-hot", "who-1992-mild", "who-1992-cold"} {
		c.Step(name, "N F(N) = share V/(people S)", fmt.Sprintf("%g x %g/(%g x 40)", share, volume, n), by[name], "years")
	}
	c.Result("years_to_desludge", years, "years")
	c.ResultByMethod("by_method", by, "years")
	c.Caution("Rates differ fourfold between sources: let the sludge be measured after the first years, and go by that.")
}

func percolation() sheet.Sheet {
	return sheet.Sheet{
		Name: "percolation", Title: "Rate of a percolation test",
		Inputs: []sheet.Input{
			{Name: "seconds", Unit: "s", Default: "2700s", Low: sheet.At(1), High: sheet.At(1e6), Meaning: "mean time of the fall, from three quarters full to a quarter"},
			{Name: "fall", Unit: "mm", Default: "150mm", Low: sheet.At(1), High: sheet.At(2000), Meaning: "of the water in the hole"},
		},
		Sources:  append([]string{"bs6297: test hole, 75 % to 25 % of 300 mm; seen"}, names(Windows(), func(w Window) string { return w.Source })...),
		Cautions: append(cautions(), "Test several holes, soaked overnight, in the wet season: a dry hole flatters the ground. Shore a hole that anybody stands in."),
		Do: func(c *sheet.Calc) {
			t, fall := c.Number("seconds"), c.Number("fall")
			rate := c.Step("rate", "Vp = t/fall", fmt.Sprintf("%g s/%g mm", t, fall), PercolationRate(t, fall), "s/mm")
			c.Result("rate", rate, "s/mm")
			c.Result("minutes_per_inch", c.Step("as American rules count", "25.4 Vp/60", fmt.Sprintf("25.4 x %.4g/60", rate), MinutesPerInch(rate), "min/inch"), "min/inch")
			c.ResultText("usable", Usable(rate))
		},
	}
}

func setbacks() sheet.Sheet {
	return sheet.Sheet{
		Name: "setbacks", Title: "Distances to keep from tank and trench",
		Inputs: []sheet.Input{
			{Name: "table", Kind: sheet.Text, Default: "usa-county", Meaning: "a place (" + strings.Join(names(SetbackTables(), func(t SetbackTable) string { return t.Name }), ", ") + ") or your own: field to well 30 m, tank to building 2 m"},
			{Name: "plan", Kind: sheet.Text, Default: "", Meaning: "your distances, written likewise, to be held against the table"},
			{Name: "trees", Unit: "m", Default: "0m", Low: sheet.At(0), High: sheet.At(10000), Meaning: "from the trench to the nearest tree; 0 is on it"},
		},
		Sources: names(SetbackTables(), func(t SetbackTable) string { return t.Source }), Cautions: cautions(), Do: doSetbacks,
	}
}

func doSetbacks(c *sheet.Calc) {
	rows, err := tableNamed(c.Text("table"))
	if err != nil {
		c.Fail("%v", err)
	}
	by := map[string]float64{}
	for _, r := range rows {
		by[r.From+" to "+r.To] = c.Step(r.From+" to "+r.To+", at least", "as the table has it", fmt.Sprintf("%.4g m", r.Least), r.Least, "m")
	}
	c.ResultByMethod("distances", by, "m")
	breaches := []string{}
	if c.Text("plan") != "" {
		plan, err := ReadSetbacks(c.Text("plan"))
		if err != nil {
			c.Fail("%v", err)
		}
		for _, b := range Breaches(rows, plan) {
			breaches = append(breaches, fmt.Sprintf("%s to %s: %g m planned, %g m asked for", b.From, b.To, b.Planned, b.Least))
		}
	}
	c.ResultText("breaches", orNone(breaches))
	conflict := TreeConflict(c.Number("trees"))
	c.ResultText("trees_conflict", orNone(conflict))
	for _, words := range conflict {
		c.Caution("Conflict: " + words + ". Trees drink from the trench and block it.")
	}
}

// tableNamed gives a table of the list, or the one written out.
func tableNamed(text string) ([]Setback, error) {
	tables := SetbackTables()
	if i := slices.IndexFunc(tables, func(t SetbackTable) bool { return t.Name == strings.TrimSpace(text) }); i >= 0 {
		return tables[i].Rows, nil
	}
	return ReadSetbacks(text)
}

func orNone(list []string) string {
	if len(list) == 0 {
		return "none"
	}
	return strings.Join(list, "; ")
}
