package water

import (
	"fmt"
	"strings"

	"suffice/sheet"
)

var (
	testCaution    = "Credits are from publications and speak of the barrier, not of the water in the glass: have the water tested by a laboratory, after building, after every change and yearly. E. coli must not be found in any 100 mL."
	powerCaution   = "A lamp without power lets everything through: shut the tap, or boil, until it burns again."
	healthCaution  = "Infants, the sick and the old are at more risk: local health rules and a licensed person decide over drinking water."
	chlorineDanger = "Hypochlorite burns skin and eyes and gives poisonous gas with acids and other cleaners. Keep it from children, use only what is sold for drinking water, and mind that it weakens with months."
)

// barrierSheets are the sheets of making drinking water.
func barrierSheets() []sheet.Sheet {
	return []sheet.Sheet{logReduction(), chlorineContact(), uvDose(), chlorineDose(), cartridgeLife(), storedWater(), boilWater(), waterTest()}
}

func limited(name, unit, standard string, low, high float64, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Default: standard, Low: sheet.At(low), High: sheet.At(high), Meaning: meaning}
}

func logReduction() sheet.Sheet {
	var names []string
	for _, b := range Barriers() {
		names = append(names, b.Name)
	}
	return sheet.Sheet{
		Name: "log-reduction", Title: "What the barriers of a treatment are credited with",
		Inputs:   []sheet.Input{{Name: "stages", Kind: sheet.Text, Default: "slow-sand,uv-40", Meaning: "in the order of the water, separated by commas, of: " + strings.Join(names, ", ")}},
		Sources:  []string{gdwqLarge, gdwqHouse, hijnen, microrisk, "nrmmc-2006: subsurface wetland", "who-household-2011: targets, from memory"},
		Cautions: []string{testCaution, healthCaution},
		Do:       workLogReduction,
	}
}

func workLogReduction(c *sheet.Calc) {
	var stages []Barrier
	seen := map[string]bool{}
	for name := range strings.SplitSeq(c.Text("stages"), ",") {
		b, err := BarrierNamed(name)
		if err != nil {
			c.Fail("%w", err)
			return
		}
		if seen[b.Name] {
			c.Caution(fmt.Sprintf("%s stands twice: what escapes it once may escape it again, so that a second one is seldom credited in full.", b.Name))
		}
		seen[b.Name] = true
		stages = append(stages, b)
	}
	t := InRow(stages)
	for p := range Pathogens {
		var lows, spans []string
		for _, b := range stages {
			lows = append(lows, fmt.Sprintf("%g", b.Low[p]))
			spans = append(spans, fmt.Sprintf("%s %g to %g", b.Name, b.Low[p], b.High[p]))
		}
		c.Step(p.String()+", least", "sum of the least of every stage ("+strings.Join(spans, ", ")+")", strings.Join(lows, " + "), t.Low[p], "log10")
	}
	high, powerless := map[string]float64{}, map[string]float64{}
	for p := range Pathogens {
		c.Result(p.String(), t.Low[p], "log10")
		high[p.String()], powerless[p.String()] = t.High[p], t.Powerless[p]
	}
	c.ResultText("governing", t.Governing.String())
	c.ResultByMethod("at_best", high, "log10")
	c.ResultByMethod("without_power", powerless, "log10")
	c.ResultText("reaches", t.Low.Reaches())
	if t.Powerless != t.Low {
		c.Caution(powerCaution)
	}
	if seen["chlorine"] {
		c.Caution("Chlorine is credited with nothing against Cryptosporidium: another barrier must hold back protozoa.")
	}
}

func chlorineContact() sheet.Sheet {
	return sheet.Sheet{
		Name: "chlorine-contact", Title: "Time that chlorine needs",
		Inputs: []sheet.Input{
			limited("temperature", "degC", "15 degC", coldestTable, 60, "of the water, the coldest it will be"),
			limited("ph", "", "7.5", 4, 10, "of the water, the highest it will be"),
			limited("chlorine", "mg/L", "1 mg/L", 0.05, strongestTable, "of free chlorine, at the end of the time"),
			{Name: "target", Kind: sheet.Text, Default: "giardia-3log", Choices: []string{"giardia-3log", "virus-4log"}, Meaning: "which table"},
			{Name: "log", Unit: "log10", Maybe: true, Low: sheet.At(0.1), High: sheet.At(4), Meaning: "powers of ten wanted, where fewer than the table's are enough; in proportion"},
		},
		Sources:  []string{"epa-disinfection-2020: tables B-1 and B-2, as transcribed", "smith-1995: regression, from memory", "ct-lesson: closed form"},
		Cautions: []string{testCaution, chlorineDanger, healthCaution, "Chlorine is credited with nothing against Cryptosporidium, and with little in cloudy water: filter first.", "The time counts for the water that comes through first: in a plain tank without baffles a tenth of the mean stay."},
		Do:       workChlorineContact,
	}
}

func workChlorineContact(c *sheet.Calc) {
	w := Chlorination{c.Number("temperature"), c.Number("ph"), c.Number("chlorine")}
	look, full := w.Giardia, 3.0
	if c.Text("target") == "virus-4log" {
		look, full = w.Virus, 4
	}
	tabled, err := look()
	if err != nil {
		c.Fail("%w", err)
		return
	}
	logs := full
	if c.Given("log") {
		logs = c.Number("log")
	}
	if logs > full {
		c.Fail("log %g is more than the %g of the table: no more is credited", logs, full)
		return
	}
	c.Step("from the table", "next lower temperature, next higher pH, next higher chlorine", fmt.Sprintf("%g degC, pH %g, %g mg/L", w.Temperature, w.PH, w.Chlorine), tabled, "mg.min/L")
	ct := c.Step("for the logs wanted", "CT logs/table's logs", fmt.Sprintf("%g·%g/%g", tabled, logs, full), tabled*logs/full, "mg.min/L")
	minutes := c.Step("time", "CT/C", fmt.Sprintf("%g/%g", ct, w.Chlorine), ct/w.Chlorine, "min")
	c.Result("ct", ct, "mg.min/L")
	c.Result("minutes", minutes, "min")
	if full == 3 {
		c.ResultByMethod("by_method", map[string]float64{"table": ct, "regression": w.Regression(logs), "closed-form": w.ClosedForm(logs)}, "mg.min/L")
		if w.ClosedForm(logs) < ct {
			c.Caution("The closed form asks for less than the table: go by the table.")
		}
	}
}

func uvDose() sheet.Sheet {
	return sheet.Sheet{
		Name: "uv-dose", Title: "Dose of a lamp and what it is credited with",
		Inputs: []sheet.Input{
			limited("irradiance", "mW/cm2", "10 mW/cm2", 0, 1e4, "in the water where it is weakest, of an old lamp in a fouled sleeve"),
			limited("seconds", "s", "4 s", 0, 1e5, "of the fastest water in the light"),
		},
		Sources:  []string{"cfr-141-720: (d), as reprinted", "hijnen-2006: review, as transcribed"},
		Cautions: []string{testCaution, powerCaution, healthCaution, "Dirt, iron and colour shade germs: filter before the lamp, clean the sleeve, change the lamp yearly. Its light blinds and burns: open it only unplugged."},
		Do: func(c *sheet.Calc) {
			i, s := c.Number("irradiance"), c.Number("seconds")
			l := Shine(i, s)
			c.Step("dose", "irradiance x time", fmt.Sprintf("%g·%g", i, s), float64(l), "mJ/cm2")
			c.Result("dose", float64(l), "mJ/cm2")
			c.ResultByMethod("log_by_group", map[string]float64{"cryptosporidium": l.Cryptosporidium(), "giardia": l.Giardia(),
				"protozoa": min(l.Cryptosporidium(), l.Giardia()), "viruses": l.Viruses()}, "log10")
			m, ok := l.Measured()
			if !ok {
				return
			}
			c.ResultByMethod("measured_by_group", map[string]float64{"bacteria": m.Low[Bacteria], "viruses": m.Low[Viruses], "protozoa": m.Low[Protozoa]}, "log10")
			if m.Low[Viruses] > l.Viruses() {
				c.Caution(fmt.Sprintf("The sources differ on viruses: %g by regulation, after an adenovirus that light hardly hurts, %g at least as measured on others. Count on the lower.", l.Viruses(), m.Low[Viruses]))
			}
		},
	}
}

func chlorineDose() sheet.Sheet {
	return sheet.Sheet{
		Name: "chlorine-dose", Title: "Hypochlorite for a tank",
		Inputs: []sheet.Input{
			limited("volume", "L", "1000 L", 1, 1e7, "in the tank"),
			limited("dose", "mg/L", "5 mg/L", 0.1, 50, "of free chlorine: 5 for a shock, 0.5 in a week"),
			limited("strength", "%", "12.5 %", 0.5, 20, "of the hypochlorite, weight by volume, as its label says"),
		},
		Sources:  []string{"enhealth-rainwater: shock and weekly dose, remembered"},
		Cautions: []string{testCaution, chlorineDanger, "Wait a day after a shock, and drink only when the taste and a test strip say that it is gone to less than 1 mg/L."},
		Do: func(c *sheet.Calc) {
			v, d, s := c.Number("volume"), c.Number("dose"), c.Number("strength")
			ml := c.Step("hypochlorite", "volume x dose/(10 x strength in %)", fmt.Sprintf("%g·%g/(10·%g)", v, d, s), Dose(v, d, s), "mL")
			c.Result("hypochlorite", ml, "mL")
		},
	}
}

func cartridgeLife() sheet.Sheet {
	return sheet.Sheet{
		Name: "cartridge-life", Title: "How long a filter cartridge lasts",
		Inputs: []sheet.Input{
			limited("rated", "L", "20 kL", 0, 1e7, "that its maker rates it for; 0: not rated"),
			limited("dirt_held", "g", "150 g", 0, 1e6, "that it holds before it clogs; 0: not rated"),
			limited("flow", "L/d", "60 L/d", 0.01, 1e6, "through it"),
			limited("dirt", "mg/L", "5 mg/L", 0, 1e5, "in the water before it"),
		},
		Sources:  []string{"filter-practice: litres and dirt; order of 20 to 50 um, 5 um, 0.5 to 1 um and then a lamp"},
		Cautions: []string{testCaution, "A cartridge past its life feeds germs: change it by the date, also when it still lets water through, and at the latest half-yearly where its maker says no other."},
		Do: func(c *sheet.Calc) {
			k := Cartridge{c.Number("rated"), c.Number("dirt_held")}
			flow, dirt := c.Number("flow"), c.Number("dirt")
			days, byDirt, rated := k.Lasts(flow, dirt)
			if !rated {
				c.Fail("rated 0 L and dirt_held %g g with dirt of %g mg/L: nothing says how long it lasts, give one of them", k.Dirt, dirt)
				return
			}
			if k.Litres > 0 {
				c.Step("by volume", "rated/flow", fmt.Sprintf("%g/%g", k.Litres, flow), k.Litres/flow, "d")
			}
			if k.Dirt > 0 && dirt > 0 {
				c.Step("by dirt", "1000 held/(flow x dirt)", fmt.Sprintf("1000·%g/(%g·%g)", k.Dirt, flow, dirt), 1000*k.Dirt/(flow*dirt), "d")
			}
			c.Result("life", days, "d")
			c.ResultText("governs", map[bool]string{true: "dirt", false: "volume"}[byDirt])
		},
	}
}

func storedWater() sheet.Sheet {
	return sheet.Sheet{
		Name: "stored-water", Title: "Age of treated water in store",
		Inputs: []sheet.Input{
			limited("held", "L", "200 L", 0.1, 1e6, "of treated water"),
			limited("use", "L/d", "60 L/d", 0.01, 1e6, "drawn and made good"),
			limited("limit", "d", "5 d", 0.1, 365, "that it should not be older than"),
		},
		Sources:  []string{"epa-water-age: turnover in 3 to 5 days, remembered"},
		Cautions: []string{testCaution, "Treated water without chlorine has nothing that guards it: keep the store dark, cool and shut, and draw by a tap, not by dipping."},
		Do: func(c *sheet.Calc) {
			v, use := c.Number("held"), c.Number("use")
			days := c.Step("turnover, which is the mean age", "held/use", fmt.Sprintf("%g/%g", v, use), Turnover(v, use), "d")
			c.Result("age", days, "d")
			c.Result("most_to_hold", use*c.Number("limit"), "L")
			if days > c.Number("limit") {
				c.Caution(fmt.Sprintf("At %.3g days the water is older than %g: hold at most %g L.", days, c.Number("limit"), use*c.Number("limit")))
			}
		},
	}
}
