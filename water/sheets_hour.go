package water

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// The sheets of one hour call the functions that the hour calls. Works.Tell gives the
// inputs with which they work an hour of a run again.

// litres declares an input in litres.
func litres(name, otherwise, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: "L", Default: otherwise, Low: sheet.At(0), Meaning: meaning}
}

// share declares an input of 0 to 1.
func share(name, otherwise, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: "fraction", Default: otherwise, Low: sheet.At(0), High: sheet.At(1), Meaning: meaning}
}

func roofHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "roof-hour", Title: "A roof in one hour",
		Inputs: []sheet.Input{
			{Name: "roof", Unit: "m2", Default: "130m2", Low: sheet.At(0), Meaning: "area as seen from above"},
			share("coefficient", "0.9", "share of the rain beyond wetting that is caught"),
			{Name: "wetting", Unit: "mm", Default: "0.4mm", Low: sheet.At(0), Meaning: "held by the surface in each wet spell"},
			{Name: "flush_depth", Unit: "mm", Default: "0.5mm", Low: sheet.At(0), Meaning: "first flush, on the roof"},
			litres("flush_litres", "0L", "first flush besides"),
			{Name: "after_dry", Unit: "h", Default: "72h", Low: sheet.At(0), Meaning: "until the first flush is empty again"},
			{Name: "snow_below", Unit: "degC", Default: "1degC", Meaning: "rain counts as snow below this"},
			{Name: "melts_above", Unit: "degC", Default: "0degC", Meaning: "snow melts above this"},
			{Name: "melt_factor", Unit: "mm/K/d", Default: "3.51mm/K/d", Low: sheet.At(0), Meaning: "water melted"},
			{Name: "rain", Unit: "mm", Default: "2mm", Low: sheet.At(0), Meaning: "in the hour, snow as water"},
			{Name: "temperature", Unit: "degC", Default: "12degC", Meaning: "of the air"},
			{Name: "snow", Unit: "mm", Default: "0mm", Low: sheet.At(0), Meaning: "lying before the hour, as water"},
			{Name: "dry", Unit: "h", Default: "100h", Low: sheet.At(0), Meaning: "since water last came down"},
			{Name: "film", Unit: "mm", Default: "0mm", Low: sheet.At(0), Meaning: "wetted already in this spell"},
			litres("flushed", "0L", "in the first-flush diverter"),
		},
		Sources:  []string{"enhealth-rainwater: appendix B, wetting", "nws-snow: snow below 1 degC, melting above 0 degC", "kuusisto-degree-day: mean of open sites"},
		Cautions: []string{drinkCaution},
		Do:       doRoofHour,
	}
}

func doRoofHour(c *sheet.Calc) {
	mm := func(name string) quantity.Millimetres { return quantity.Millimetres(c.Number(name)) }
	roof := Roof{Area: quantity.SquareMetres(c.Number("roof")), Coefficient: c.Number("coefficient"), Wetting: mm("wetting"),
		Flush: FirstFlush{Depth: mm("flush_depth"), Litres: quantity.Litres(c.Number("flush_litres")), AfterDry: c.Number("after_dry")}}
	snow := Snow{Below: quantity.Celsius(c.Number("snow_below")), Melts: quantity.Celsius(c.Number("melts_above")), Factor: c.Number("melt_factor")}
	sky := SkyIn{Rain: mm("rain"), Temperature: quantity.Celsius(c.Number("temperature"))}
	lying, s := mm("snow"), RoofState{Film: mm("film"), Flushed: quantity.Litres(c.Number("flushed"))}

	down := snow.Step(&lying, sky)
	c.Step("water coming down", "rain that is not snow + min(lying, factor/24 (T - melts))",
		fmt.Sprintf("%g mm at %g degC, %g mm lying", float64(sky.Rain), float64(sky.Temperature), c.Number("snow")), float64(down), "mm")
	out := roof.Step(&s, RoofIn{Down: down, Dry: c.Number("dry")})
	c.Step("wetted", "min(wetting - film, down) area", fmt.Sprintf("wetting %g mm, film %g mm before", float64(roof.Wetting), c.Number("film")), float64(out.Wetted), "L")
	c.Step("missed", "(1 - coefficient) (down area - wetted)", fmt.Sprintf("(1 - %g) x (%g x %g - %g)", roof.Coefficient, float64(down), float64(roof.Area), float64(out.Wetted)), float64(out.Missed), "L")
	c.Step("diverted", "min(room in the first flush, caught)", fmt.Sprintf("%g L of %g L taken after the hour", float64(s.Flushed), float64(roof.Flush.Takes(roof.Area))), float64(out.Diverted), "L")
	c.Step("passed", "caught - diverted", fmt.Sprintf("%g - %g", float64(out.Diverted+out.Passed), float64(out.Diverted)), float64(out.Passed), "L")
	c.Result("down", float64(down), "mm")
	c.Result("wetted", float64(out.Wetted), "L")
	c.Result("missed", float64(out.Missed), "L")
	c.Result("diverted", float64(out.Diverted), "L")
	c.Result("passed", float64(out.Passed), "L")
	c.Result("snow_after", float64(lying), "mm")
	c.Result("film_after", float64(s.Film), "mm")
	c.Result("flushed_after", float64(s.Flushed), "L")
}

func tankHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "tank-hour", Title: "A tank in one hour",
		Inputs: []sheet.Input{
			litres("holds", "40kL", "from the floor to the overflow"),
			litres("dead", "800L", "below the outlet"),
			litres("fire", "2kL", "kept for fire"),
			litres("leak", "3L", "a day"),
			litres("held", "20kL", "before the hour"),
			litres("inflow", "150L", "from roofs, other tanks and the road"),
			litres("wanted", "40L", "to be drawn"),
		},
		Cautions: []string{tankCaution},
		Do:       doTankHour,
	}
}

func doTankHour(c *sheet.Calc) {
	l := func(name string) quantity.Litres { return quantity.Litres(c.Number(name)) }
	tank := Tank{Holds: l("holds"), Dead: l("dead"), Fire: l("fire"), Leak: l("leak"), Overflow: Away}
	s := TankState{l("held")}
	out := tank.Step(&s, TankIn{Inflow: l("inflow"), Wanted: l("wanted")})
	c.Step("spilled", "max(0, held + inflow - holds)", fmt.Sprintf("max(0, %g + %g - %g)", c.Number("held"), c.Number("inflow"), c.Number("holds")), float64(out.Spilled), "L")
	c.Step("leaked", "min(leak/24, held)", fmt.Sprintf("%g/24", c.Number("leak")), float64(out.Leaked), "L")
	c.Step("drawn", "min(wanted, held - dead - fire)", fmt.Sprintf("min(%g, %g + %g - %g - %g - %g - %g)", c.Number("wanted"), c.Number("held"), c.Number("inflow"),
		float64(out.Spilled), float64(out.Leaked), c.Number("dead"), c.Number("fire")), float64(out.Drawn), "L")
	c.Result("spilled", float64(out.Spilled), "L")
	c.Result("leaked", float64(out.Leaked), "L")
	c.Result("drawn", float64(out.Drawn), "L")
	c.Result("short", float64(out.Short), "L")
	c.Result("held_after", float64(s.Held), "L")
	if usable := s.Held - tank.Reserve(); usable < 0 {
		c.Caution(fmt.Sprintf("The fire litres are touched: %g L of them are gone by leak or were never there.", -float64(max(usable, -tank.Fire))))
	}
}

func usesHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "uses-hour", Title: "What the taps give in one hour",
		Inputs: []sheet.Input{
			litres("drinking", "3L", "wanted at the tap"),
			litres("washing", "40L", "wanted at the tap"),
			litres("flushing", "8L", "wanted at the tap"),
			litres("outdoor", "0L", "wanted at the tap"),
			litres("available", "17.2kL", "usable water in the tank"),
			{Name: "drawn_per_litre", Kind: sheet.List, Default: "1.02,1.01,1.01,1.01", Low: sheet.At(1), Meaning: "drawn from the tank for a litre at the tap, in the order drinking, washing, flushing, outdoor"},
			{Name: "pump_energy", Unit: "Wh/L", Default: "0.15Wh/L", Low: sheet.At(0), Meaning: "for a litre drawn; 0 by gravity"},
			{Name: "treatment_energy", Kind: sheet.List, Unit: "Wh/L", Default: "0Wh/L,0Wh/L,0Wh/L,0Wh/L", Low: sheet.At(0), Meaning: "while it flows, for a litre at the tap, same order"},
			{Name: "treatment_standing", Unit: "Wh", Default: "25Wh", Low: sheet.At(0), Meaning: "in the hour, whether water flows or not"},
			{Name: "treatment_electric", Kind: sheet.List, Default: "1,0,0,0", Low: sheet.At(0), High: sheet.At(1), Meaning: "1 where no power means none of this water, same order"},
			{Name: "most", Unit: "L", Low: sheet.At(0), Maybe: true, Meaning: "drawn in the hour at most; left out: no limit"},
			{Name: "limits", Kind: sheet.List, Unit: "L", Maybe: true, Low: sheet.At(0), Meaning: "of stages of treatment, drawn in the hour at most"},
			{Name: "limit_serves", Kind: sheet.List, Maybe: true, Low: sheet.At(0), High: sheet.At(1), Meaning: "for each limit four marks, 1 where it counts, same order"},
			share("pump_power", "1", "share of the pump's power that was served"),
			share("treatment_power", "1", "share of the treatment's power that was served"),
		},
		Cautions: []string{drinkCaution, "A lamp without power disinfects nothing: after a power cut let the tap run and boil what was drawn meanwhile, as the lamp's maker and local health rules say."},
		Do:       doUsesHour,
	}
}

func doUsesHour(c *sheet.Calc) {
	t, err := tapsOf(c)
	if err != nil {
		c.Fail("%w", err)
		return
	}
	var wanted [Kinds]quantity.Litres
	for k := range Kinds {
		wanted[k] = quantity.Litres(c.Number(k.String()))
	}
	var out TapsOut
	t.Plan(quantity.Litres(c.Number("available")), &wanted, &out)
	c.Step("power asked for the pump", "energy drawn", fmt.Sprintf("%g Wh/L x %g L", t.Pump, float64(out.Drawn)), float64(out.Pump), "Wh")
	c.Step("power asked for the treatment", "standing + sum of energy served", fmt.Sprintf("%g Wh + the rest", t.Standing), float64(out.Treatment), "Wh")
	c.Result("pump_asked", float64(out.Pump), "Wh")
	c.Result("treatment_asked", float64(out.Treatment), "Wh")
	got := Power{Pump: c.Number("pump_power"), Treatment: c.Number("treatment_power")}
	if !got.whole() {
		t.Serve(got, &out)
	}
	for k := range Kinds {
		c.Step(k.String()+" served", "wanted - short", fmt.Sprintf("%g - %g", float64(wanted[k]), float64(out.Short[k])), float64(out.Served[k]), "L")
		c.Result(k.String()+"_served", float64(out.Served[k]), "L")
		c.Result(k.String()+"_short", float64(out.Short[k]), "L")
	}
	for why := range Causes {
		c.Result("short_"+why.key(), float64(out.Cause[why]), "L")
	}
	c.Result("drawn", float64(out.Drawn), "L")
	c.Result("backwash", float64(out.Backwash), "L")
	c.Result("pump", float64(out.Pump), "Wh")
	c.Result("treatment", float64(out.Treatment), "Wh")
	c.Result("unused", float64(out.Unused), "Wh")
}

// tapsOf makes taps of the sheet's inputs.
func tapsOf(c *sheet.Calc) (Taps, error) {
	t := Taps{Pump: c.Number("pump_energy"), Standing: c.Number("treatment_standing"), Most: noLimit}
	if c.Given("most") {
		t.Most = c.Number("most")
	}
	drawn, treat, electric := c.Numbers("drawn_per_litre"), c.Numbers("treatment_energy"), c.Numbers("treatment_electric")
	for _, list := range [][]float64{drawn, treat, electric} {
		if len(list) != int(Kinds) {
			return t, fmt.Errorf("a list has %d entries: give %d, for drinking, washing, flushing and outdoor", len(list), int(Kinds))
		}
	}
	for k := range Kinds {
		t.Drawn[k], t.Treat[k], t.Electric[k] = drawn[k], treat[k], electric[k] > 0
	}
	if !c.Given("limits") {
		return t, nil
	}
	limits, serves := c.Numbers("limits"), []float64(nil)
	if c.Given("limit_serves") {
		serves = c.Numbers("limit_serves")
	}
	if len(limits) > MostStages {
		return t, fmt.Errorf("%d limits: the most is %d", len(limits), MostStages)
	}
	if len(serves) != len(limits)*int(Kinds) {
		return t, fmt.Errorf("%d limits have %d marks in limit_serves: give four for each", len(limits), len(serves))
	}
	for i, most := range limits {
		l := Limit{Most: most}
		for k := range Kinds {
			l.Serves[k] = serves[i*int(Kinds)+int(k)] > 0
		}
		t.Limits = append(t.Limits, l)
	}
	return t, nil
}
