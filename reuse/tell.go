package reuse

import (
	"suffice/quantity"
	"suffice/sheet"
)

// Tell gives the inputs with which the sheet drains-hour works an hour again, to the last bit.
func (g *Grey) Tell(before GreyState, in *GreyIn) map[string]sheet.Value {
	state := "usual"
	switch {
	case in.Ill:
		state = "ill"
	case in.Harsh:
		state = "harsh"
	}
	values := words(map[string]string{"state": state, "cleaned": yes(in.Cleaned)})
	fill(values, map[string]float64{"tap_salt": in.Salt, "inlet": float64(g.Inlet), "trap_keeps": g.Trap.Keeps, "trap_holds": g.Trap.Holds, "trap_before": before.Kept})
	for s := range Sources {
		name, k := s.String(), &g.Strength[s]
		values[name+"_to"] = sheet.Value{Kind: sheet.Text, Text: [2]string{"sewer", "bed"}[index(g.Feeds[s])]}
		fill(values, map[string]float64{name: float64(in.Used[s]), name + "_salt": k.Salt, name + "_bod": k.BOD, name + "_nitrogen": k.Nitrogen})
	}
	return values
}

// Tell gives the inputs with which the sheet planter-hour works an hour again, to the last bit.
func (b *Bed) Tell(before *PlanterState, in *PlanterIn) map[string]sheet.Value {
	p := &b.Planter
	values := map[string]sheet.Value{}
	fill(values, map[string]float64{
		"length": float64(p.Length), "width": float64(p.Width), "slope": p.Slope, "gravel": float64(p.Gravel.Depth), "porosity": p.Gravel.Porosity,
		"gravel_conductivity": p.Gravel.Conductivity, "standing": float64(p.Gravel.Standing), "soil": float64(p.Soil.Depth),
		"field_capacity": p.Soil.FieldCapacity, "wilting_point": p.Soil.WiltingPoint, "saturation": p.Soil.Saturation, "rise": float64(p.Soil.Rise),
		"bod_left": before.Left, "salt_stress": before.Salted, "evaporation": max(0, float64(in.Evaporation)), "rain": float64(in.Rain),
		"coefficient": in.Crop.Coefficient, "roots": in.Crop.Roots, "depletion_fraction": in.Crop.Depletion,
	})
	carry(values, "free", before.Gravel)
	carry(values, "held", before.Soil)
	carry(values, "grey", in.Grey)
	carry(values, "poured", in.Poured)
	return values
}

// Tell gives the inputs with which the sheet well-hour works an hour again, to the last bit.
func (k *Well) Tell(before *WellState, in *WellIn) map[string]sheet.Value {
	values := map[string]sheet.Value{}
	fill(values, map[string]float64{
		"area": float64(k.Area), "depth": float64(k.Depth), "least": float64(k.Least), "float": float64(k.Float), "refill": float64(k.Refill),
		"pump": float64(k.MostPerHour), "energy": k.PerKilo, "stale_after": k.StaleAfter, "age": before.Age, "wanted": float64(in.Wanted), "power": in.Power,
	})
	carry(values, "held", before.Held)
	carry(values, "drained", in.Drained)
	carry(values, "topped", in.Topped)
	return values
}

// carry gives a store or a flow with its load.
func carry(to map[string]sheet.Value, name string, w Water) {
	fill(to, map[string]float64{name: float64(w.Litres), name + "_salt": w.Salt, name + "_bod": w.BOD, name + "_nitrogen": w.Nitrogen})
}

func fill(to map[string]sheet.Value, numbers map[string]float64) {
	for name, v := range numbers {
		to[name] = sheet.Value{Kind: sheet.Number, Number: v}
	}
}

func words(texts map[string]string) map[string]sheet.Value {
	values := map[string]sheet.Value{}
	for name, word := range texts {
		values[name] = sheet.Value{Kind: sheet.Text, Text: word}
	}
	return values
}

func index(b bool) int {
	if b {
		return 1
	}
	return 0
}

func yes(b bool) string { return [2]string{"no", "yes"}[index(b)] }

func drainsHour() sheet.Sheet {
	s := sheet.Sheet{
		Name: "drains-hour", Title: "The drains of the taps in one hour",
		Inputs: []sheet.Input{
			number("tap_salt", "g/L", "0.05 g/L", 0, 10, "that the tap water brings"),
			number("inlet", "L", "300 L", 0, 1e6, "most that passes the trap in an hour"),
			number("trap_keeps", "fraction", "0.3", 0, 1, "share of the BOD held back while there is room"),
			number("trap_holds", "g", "2000 g", 0, 1e6, "BOD until the trap is full"),
			number("trap_before", "g", "500 g", 0, 1e6, "BOD in the trap before"),
			{Name: "state", Kind: sheet.Text, Default: "usual", Choices: []string{"usual", "ill", "harsh"}, Meaning: "ill: somebody has a catching illness; harsh: bleach, drain cleaner or dye was used"},
			{Name: "cleaned", Kind: sheet.Text, Default: "no", Choices: []string{"no", "yes"}, Meaning: "the trap is emptied at the beginning of the hour"},
		},
		Sources:  []string{"christova-boal-1996: bathroom and laundry, from memory", "eriksson-2002: kitchen, from memory"},
		Cautions: []string{greyCaution, stillCaution, childCaution, localCaution},
		Do:       workDrains,
	}
	usual := UsualGrey()
	for i, standard := range [Sources]string{"4 L", "30 L", "0 L", "20 L", "0 L", "5 L"} {
		name, k := Source(i).String(), usual.Strength[i]
		s.Inputs = append(s.Inputs, number(name, "L", standard, 0, 1e5, "of waste water in the hour"),
			sheet.Input{Name: name + "_to", Kind: sheet.Text, Default: [2]string{"sewer", "bed"}[index(usual.Feeds[i])], Choices: []string{"bed", "sewer"}, Meaning: "where it goes"},
			number(name+"_salt", "mg/L", quantity.Text(k.Salt, "mg/L"), 0, 1e5, "beyond that of the tap"),
			number(name+"_bod", "mg/L", quantity.Text(k.BOD, "mg/L"), 0, 1e5, "that it carries"),
			number(name+"_nitrogen", "mg/L", quantity.Text(k.Nitrogen, "mg/L"), 0, 1e5, "that it carries"))
	}
	return s
}

func workDrains(c *sheet.Calc) {
	g := Grey{Inlet: quantity.Litres(c.Number("inlet")), Trap: Trap{Keeps: c.Number("trap_keeps"), Holds: c.Number("trap_holds")}}
	in := GreyIn{Salt: c.Number("tap_salt"), Ill: c.Text("state") == "ill", Harsh: c.Text("state") == "harsh", Cleaned: c.Text("cleaned") == "yes"}
	for s := range Sources {
		name := s.String()
		g.Feeds[s] = c.Text(name+"_to") == "bed"
		g.Strength[s] = Strength{Salt: c.Number(name + "_salt"), BOD: c.Number(name + "_bod"), Nitrogen: c.Number(name + "_nitrogen")}
		in.Used[s] = quantity.Litres(c.Number(name))
	}
	state := GreyState{Kept: c.Number("trap_before")}
	var out GreyOut
	g.Step(&state, &in, &out)
	c.Step("to the bed", "what feeds it, up to the inlet, unless illness or harsh chemicals turn it away", quantity.Text(float64(g.Inlet), "L")+" pass the inlet at most", float64(out.Fed.Litres), "L")
	c.Step("kept by the trap", "share of the BOD, while there is room", quantity.Text(g.Trap.Keeps, "")+" of it", state.Kept, "g")
	tell(c, "fed", out.Fed)
	tell(c, "apart", out.Apart)
	tell(c, "diverted", out.Diverted)
	tell(c, "surged", out.Surged)
	c.Result("emptied", out.Emptied, "g")
	c.Result("trap_after", state.Kept, "g")
}
