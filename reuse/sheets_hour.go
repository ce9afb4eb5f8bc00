package reuse

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// The sheets of one hour call the functions that the hour calls.

func greySheet() sheet.Sheet {
	s := sheet.Sheet{
		Name: "greywater", Title: "What a day's greywater carries to the bed",
		Inputs: []sheet.Input{
			number("tap_salt", "g/L", "0.05 g/L", 0, 10, "that the tap water brings"),
			number("trap_keeps", "fraction", "0.3", 0, 1, "share of the BOD held back before the bed"),
			{Name: "kitchen_to", Kind: sheet.Text, Default: "sewer", Choices: []string{"sewer", "bed"}, Meaning: "where kitchen and dishwasher go"},
			{Name: "state", Kind: sheet.Text, Default: "usual", Choices: []string{"usual", "ill", "harsh"}, Meaning: "ill: somebody has a catching illness; harsh: bleach, drain cleaner or dye was used"},
		},
		Sources:  []string{"christova-boal-1996: bathroom and laundry, from memory", "eriksson-2002: kitchen, from memory", "fao29: 640 mg/L to the dS/m"},
		Cautions: []string{"Measured strengths differ severalfold between houses: the middle of the range is taken.", greyCaution, stillCaution, childCaution, localCaution},
		Do:       workGrey,
	}
	for i, standard := range [Sources]string{"40 L", "140 L", "0 L", "60 L", "10 L", "40 L"} {
		s.Inputs = append(s.Inputs, number(Source(i).String(), "L", standard, 0, 1e5, "of waste water in the day"))
	}
	return s
}

func workGrey(c *sheet.Calc) {
	g := UsualGrey()
	g.Inlet, g.Trap = 1e9, Trap{Keeps: c.Number("trap_keeps"), Holds: 1e9}
	g.Feeds[Kitchen] = c.Text("kitchen_to") == "bed"
	g.Feeds[Dishwasher] = g.Feeds[Kitchen]
	in := GreyIn{Salt: c.Number("tap_salt"), Ill: c.Text("state") == "ill", Harsh: c.Text("state") == "harsh"}
	for i := range Sources {
		in.Used[i] = quantity.Litres(c.Number(i.String()))
		w := g.Carried(i, in.Used[i], in.Salt)
		c.Step(i.String()+": BOD", "litres x mg/L / 1000", fmt.Sprintf("%g·%g/1000; salt %.4g g, nitrogen %.3g g", float64(in.Used[i]), g.Strength[i].BOD, w.Salt, w.Nitrogen), w.BOD, "g")
	}
	var s GreyState
	var out GreyOut
	g.Step(&s, &in, &out)
	c.Result("fed", float64(out.Fed.Litres), "L")
	c.Result("bod", out.Fed.BOD, "g")
	c.Result("salt", out.Fed.Salt, "g")
	c.Result("nitrogen", out.Fed.Nitrogen, "g")
	c.Result("conductivity", out.Fed.Conductivity(), "dS/m")
	if out.Fed.Litres > 0 {
		tellSodium(c, g.Ions(&in.Used), out.Fed.Conductivity())
	}
	sewer := out.Sewer()
	c.Result("to_sewer", float64(sewer.Litres), "L")
	c.Result("trap_kept", s.Kept, "g")
	if g.Feeds[Kitchen] {
		c.Caution("Kitchen water brings fat and most of the BOD: the bed clogs and smells sooner, and many codes forbid it.")
	}
	if out.Fed.Litres == 0 {
		c.Caution("Nothing goes to the bed: give it clean water before it dries.")
	}
}

// tellSodium says whether the fed water seals the soil.
func tellSodium(c *sheet.Calc, i Ions, conductivity float64) {
	sar := c.Step("sodium adsorption ratio", "Na/√((Ca + Mg)/2), meq/L", fmt.Sprintf("%.3g/√((%.3g + %.3g)/2)", i.Sodium, i.Calcium, i.Magnesium), i.SAR(), "")
	c.Result("sar", sar, "")
	seals := Infiltrates(conductivity, sar)
	c.ResultText("infiltration", seals.String())
	if seals != Unrestricted {
		c.Caution("This water seals soil in time: wash with soap that has little sodium, keep laundry off the bed, or give gypsum and test the soil.")
	}
}

// carried declares a store or a flow with its load.
func carried(name, standard, meaning string) []sheet.Input {
	grams := func(what string) sheet.Input {
		return number(name+"_"+what, "g", "0 g", 0, 1e7, what+" in it")
	}
	return []sheet.Input{number(name, "L", standard, 0, 1e6, meaning), grams("salt"), grams("bod"), grams("nitrogen")}
}

// water reads what carried declares.
func water(c *sheet.Calc, name string) Water {
	return Water{quantity.Litres(c.Number(name)), Load{c.Number(name + "_salt"), c.Number(name + "_bod"), c.Number(name + "_nitrogen")}}
}

// tell gives a flow or store as results.
func tell(c *sheet.Calc, name string, w Water) {
	c.Result(name, float64(w.Litres), "L")
	c.Result(name+"_salt", w.Salt, "g")
	c.Result(name+"_bod", w.BOD, "g")
	c.Result(name+"_nitrogen", w.Nitrogen, "g")
}

func planterHour() sheet.Sheet {
	u := UsualPlanter(4, 1.5)
	text := quantity.Text
	s := sheet.Sheet{
		Name: "planter-hour", Title: "A planter bed in one hour",
		Inputs: []sheet.Input{
			number("length", "m", text(float64(u.Length), "m"), 0.01, 1000, "along the slope"),
			number("width", "m", text(float64(u.Width), "m"), 0.01, 100, "across"),
			number("slope", "fraction", text(u.Slope, ""), 1e-4, 0.5, "fall of the liner"),
			number("gravel", "m", text(float64(u.Gravel.Depth), "m"), 0.01, 3, "depth of the gravel"),
			number("porosity", "fraction", text(u.Gravel.Porosity, ""), 0.01, 0.99, "of the gravel"),
			number("gravel_conductivity", "m/s", text(u.Gravel.Conductivity, "m/s"), 1e-6, 1, "of the gravel with roots in it"),
			number("standing", "m", text(float64(u.Gravel.Standing), "m"), 0, 3, "level that the outlet keeps"),
			number("soil", "m", text(float64(u.Soil.Depth), "m"), 0.01, 3, "depth of the soil"),
			number("field_capacity", "fraction", text(u.Soil.FieldCapacity, ""), 0.01, 0.9, "of the soil"),
			number("wilting_point", "fraction", text(u.Soil.WiltingPoint, ""), 0, 0.8, "of the soil"),
			number("saturation", "fraction", text(u.Soil.Saturation, ""), 0.02, 0.98, "of the soil"),
			number("rise", "mm/d", text(float64(u.Soil.Rise), "mm/d"), 0, 100, "most that dry soil sucks up"),
			number("bod_left", "fraction", text(hourly(u.Rate, 20), ""), 0, 1, "share of the BOD left after an hour, by the day's water temperature"),
			number("salt_stress", "fraction", "1", 0, 1, "evaporation that salt allows, by the last day"),
			number("evaporation", "mm", "0.4 mm", 0, 5, "of reference grass in the hour, where the bed stands: under glass with its own light, air and little wind"),
			number("rain", "mm", "0 mm", 0, 500, "onto the bed"),
			number("coefficient", "", "1.1", 0, 3, "Kc of the crop"),
			number("roots", "m", "0.35 m", 0.01, 10, "that they reach; below the soil they drink from the gravel"),
			number("depletion_fraction", "fraction", "0.4", 0.05, 0.95, "p of the crop"),
		},
		Sources:  []string{"fao56: eq. 82 to 84", "reed-1995: decay of BOD", "un-habitat-wetlands: Darcy's flow through the bed"},
		Cautions: []string{greyCaution, rinseCaution, childCaution, localCaution},
		Do:       workPlanterHour,
	}
	for _, more := range [][]sheet.Input{carried("free", "450 L", "free water in the bed before"), carried("held", "500 L", "held by the soil before"),
		carried("grey", "60 L", "greywater that comes"), carried("poured", "0 L", "poured onto the soil")} {
		s.Inputs = append(s.Inputs, more...)
	}
	return s
}

// hair is the share by which rounding may dry soil below its wilting point.
const hair = 1e-12

// planterOf reads the bed of a planter-hour.
func planterOf(c *sheet.Calc) Planter {
	m := func(name string) quantity.Metres { return quantity.Metres(c.Number(name)) }
	return Planter{Name: "of the sheet", Length: m("length"), Width: m("width"), Slope: c.Number("slope"),
		Gravel: Gravel{m("gravel"), c.Number("porosity"), c.Number("gravel_conductivity"), m("standing")},
		Soil:   Soil{m("soil"), c.Number("field_capacity"), c.Number("wilting_point"), c.Number("saturation"), quantity.Millimetres(c.Number("rise"))}}
}

func workPlanterHour(c *sheet.Calc) {
	b, err := Prepare(planterOf(c))
	if err != nil {
		c.Fail("%w", err)
		return
	}
	s := PlanterState{Gravel: water(c, "free"), Soil: water(c, "held"), Left: c.Number("bod_left"), Salted: c.Number("salt_stress")}
	if soil := float64(s.Soil.Litres); soil > b.full || soil < b.wilting*(1-hair) {
		c.Fail("held %g L is not between the wilting point, %.4g L, and saturation, %.4g L", soil, b.wilting, b.full)
		return
	}
	in := PlanterIn{Grey: water(c, "grey"), Poured: water(c, "poured"), Rain: quantity.Millimetres(c.Number("rain")), Evaporation: quantity.Millimetres(c.Number("evaporation")),
		Crop: Crop{c.Number("coefficient"), c.Number("roots"), c.Number("depletion_fraction")}}
	gone := b.depleted(&s)
	c.Step("depletion before, of the total", "(FC − W)/(FC − WP)", fmt.Sprintf("(%.4g − %.4g)/(%.4g − %.4g)", b.capacity, float64(s.Soil.Litres), b.capacity, b.wilting), gone, "")
	c.Step("stress", "Ks = (1 − Dr/TAW)/(1 − p), times salt's", fmt.Sprintf("(1 − %.4g)/(1 − %g)·%g, at most 1", gone, in.Crop.Depletion, s.Salted), stress(gone, in.Crop.Depletion)*s.Salted, "")
	var out PlanterOut
	b.Step(&s, &in, &out)
	c.Step("evaporation wanted", "ETo Kc A", fmt.Sprintf("%g·%g·%g", float64(in.Evaporation), in.Crop.Coefficient, b.area), float64(out.Wanted), "L")
	c.Step("most that runs off", "Kf s (width x depth), by Darcy", fmt.Sprintf("%g·%g·(%g·%g)", b.Gravel.Conductivity, b.Slope, float64(b.Width), float64(b.Gravel.Depth)), b.runs, "L/h")
	c.Result("evaporated", float64(out.Evaporated), "L")
	c.Result("short", float64(out.Short), "L")
	c.Result("rose", float64(out.Rose), "L")
	c.Result("sank", float64(out.Sank), "L")
	c.Result("bod_decayed", out.Decayed, "g")
	tell(c, "drained", out.Drained)
	tell(c, "overflowed", out.Overflowed)
	tell(c, "free_after", s.Gravel)
	tell(c, "held_after", s.Soil)
	if out.Overflowed.Litres > 0 {
		c.Caution("Untreated greywater runs over the rim: widen the bed, clear the gravel, or send the surge to the septic tank.")
	}
}

func wellHour() sheet.Sheet {
	u := UsualWell()
	text := quantity.Text
	s := sheet.Sheet{
		Name: "well-hour", Title: "The flush well in one hour",
		Inputs: []sheet.Input{
			number("area", "m2", text(float64(u.Area), "m2"), 0.01, 100, "in plan"),
			number("depth", "m", text(float64(u.Depth), "m"), 0.1, 5, "from floor to overflow"),
			number("least", "m", text(float64(u.Least), "m"), 0, 5, "level at which the float stops the pump"),
			number("float", "m", text(float64(u.Float), "m"), 0, 5, "level below which water is asked from the tank"),
			number("refill", "m", text(float64(u.Refill), "m"), 0, 5, "level to which it is filled then"),
			number("pump", "L", text(float64(u.MostPerHour), "L"), 0, 1e6, "most that the pump gives in an hour; 0: no limit"),
			number("energy", "Wh/kL", text(u.PerKilo, "Wh/kL"), 0, 1e5, "that the pump takes"),
			number("stale_after", "d", text(u.StaleAfter, "d"), 0.1, 1000, "mean age from which the water is called stale"),
			number("age", "h", "60 h", 0, 1e6, "mean age before"),
			number("wanted", "L", "12 L", 0, 1e5, "for flushing"),
			number("power", "fraction", "1", 0, 1, "share of the pump's power that was served"),
		},
		Sources:  []string{"epa-water-age: mean age of a mixed store; sizes and the age called stale are common practice, no source"},
		Cautions: []string{stillCaution, childCaution, localCaution, "The pump of a wet pit needs a residual-current device and an electrician."},
		Do:       workWellHour,
	}
	for _, more := range [][]sheet.Input{carried("held", "300 L", "in the well before"), carried("drained", "20 L", "from the bed"), carried("topped", "0 L", "from the tank")} {
		s.Inputs = append(s.Inputs, more...)
	}
	return s
}

func workWellHour(c *sheet.Calc) {
	m := func(name string) quantity.Metres { return quantity.Metres(c.Number(name)) }
	k := Well{quantity.SquareMetres(c.Number("area")), m("depth"), m("least"), m("float"), m("refill"), quantity.Litres(c.Number("pump")), c.Number("energy"), c.Number("stale_after")}
	if err := k.Faults(); err != nil {
		c.Fail("%w", err)
		return
	}
	s := WellState{Held: water(c, "held"), Age: c.Number("age")}
	in := WellIn{Drained: water(c, "drained"), Topped: water(c, "topped"), Wanted: quantity.Litres(c.Number("wanted")), Power: c.Number("power")}
	ask, old := k.Asks(&s, in.Wanted), s
	var out WellOut
	k.Step(&s, &in, &out)
	c.Step("level before", "litres/(1000 area)", fmt.Sprintf("%g/(1000·%g)", float64(old.Held.Litres), float64(k.Area)), float64(k.Level(&old)), "m")
	c.Step("mean age after", "(age + 1) held/(held + new)", fmt.Sprintf("(%g + 1)·%g/(%g + %g)", old.Age, float64(old.Held.Litres), float64(old.Held.Litres), float64(in.Drained.Litres+in.Topped.Litres)), s.Age, "h")
	c.Result("level", float64(k.Level(&s)), "m")
	c.Result("top_up_asked", float64(ask.TopUp), "L")
	c.Result("pump_asked", float64(ask.Pump), "Wh")
	tell(c, "flushed", out.Flushed)
	tell(c, "overflowed", out.Overflowed)
	tell(c, "held_after", s.Held)
	c.Result("short", float64(out.Short), "L")
	c.Result("no_power", float64(out.NoPower), "L")
	c.Result("pump_used", float64(out.Pump), "Wh")
	c.Result("age_after", s.Age, "h")
	if out.Stale {
		c.Caution(fmt.Sprintf("The water is %.3g days old on average, more than %g: it smells and breeds germs. Pump it out before it splashes in a cistern.", s.Age/24, k.StaleAfter))
	}
}
