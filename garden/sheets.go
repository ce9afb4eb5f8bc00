package garden

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/soil"
)

// Sheets gives the sheets of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{bedHour()} }

// Tell gives the inputs with which the sheet bed-hour works an hour again, to the last bit.
func (p *Plot) Tell(before *BedState, in *BedIn) map[string]sheet.Value {
	b := p.Bed
	values := map[string]sheet.Value{}
	for name, v := range map[string]float64{
		"area": float64(b.Area), "depth": float64(b.Depth), "field_capacity": b.Soil.FieldCapacity, "wilting_point": b.Soil.Wilting, "arrives": b.Arrives,
		"coefficient": before.coefficient, "depletion_fraction": before.depletion, "held": float64(before.Held), "mineral": before.Mineral,
		"reference": float64(in.Reference), "rain": float64(in.Rain), "given": float64(in.Given), "nitrogen": in.Nitrogen,
	} {
		values[name] = sheet.Value{Kind: sheet.Number, Number: v}
	}
	return values
}

func bedHour() sheet.Sheet {
	number := func(name, unit, standard string, low, high float64, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: unit, Default: standard, Low: sheet.At(low), High: sheet.At(high), Meaning: meaning}
	}
	return sheet.Sheet{
		Name: "bed-hour", Title: "A garden bed in one hour",
		Inputs: []sheet.Input{
			number("area", "m2", "20 m2", 0.01, 1e5, "planted surface"),
			number("depth", "m", "0.4 m", 0.01, 5, "of soil that roots use"),
			number("field_capacity", "fraction", "0.25", 0.01, 0.9, "of the soil"),
			number("wilting_point", "fraction", "0.12", 0, 0.8, "of the soil"),
			number("arrives", "fraction", "0.9", 0.01, 1, "share of the watering that reaches the soil"),
			number("coefficient", "", "1.05", 0, 3, "Kc of what stands in it today"),
			number("depletion_fraction", "fraction", "0.4", 0.05, 0.95, "share of the water in reach that it takes with ease"),
			number("held", "L", "700 L", 0, 1e7, "above the wilting point before"),
			number("mineral", "g", "200 g", 0, 1e7, "nitrogen that roots can take, before"),
			number("reference", "mm", "0.5 mm", -5, 5, "reference evapotranspiration where the bed is; below 0 is dew"),
			number("rain", "mm", "0 mm", 0, 500, "onto the bed"),
			number("given", "L", "0 L", 0, 1e6, "from the hose"),
			number("nitrogen", "g", "0 g", 0, 1e6, "in what was given"),
		},
		Sources:  []string{"fao56: eq. 82 and 84"},
		Cautions: []string{"Greywater touches no leaf, stem or root that is eaten raw, and water from a toilet never goes to a bed with food. Local code decides on both; hoses on drinking water need a backflow preventer."},
		Do:       workBedHour,
	}
}

func workBedHour(c *sheet.Calc) {
	bed := &Bed{Name: "of the sheet", Area: quantity.SquareMetres(c.Number("area")), Depth: quantity.Metres(c.Number("depth")),
		Soil: soil.Water{FieldCapacity: c.Number("field_capacity"), Wilting: c.Number("wilting_point")}, Arrives: c.Number("arrives")}
	p, err := bed.Prepare()
	if err != nil {
		c.Fail("%w", err)
		return
	}
	s := BedState{Held: quantity.Litres(c.Number("held")), Mineral: c.Number("mineral"), coefficient: c.Number("coefficient"), depletion: c.Number("depletion_fraction")}
	if float64(s.Held) > p.full*(1+1e-12) {
		c.Fail("held %g L is more than the %.5g L that the soil keeps for roots: give less, or a deeper soil", float64(s.Held), p.full)
		return
	}
	before := s
	in := BedIn{Reference: quantity.Millimetres(c.Number("reference")), Rain: quantity.Millimetres(c.Number("rain")), Given: quantity.Litres(c.Number("given")), Nitrogen: c.Number("nitrogen")}
	var out BedOut
	p.Step(&s, &in, &out)
	c.Step("room for water in reach of roots", "(FC − WP) depth area", fmt.Sprintf("(%g − %g)·%g·%g·1000", bed.Soil.FieldCapacity, bed.Soil.Wilting, float64(bed.Depth), float64(bed.Area)), p.full, "L")
	c.Step("stress", "Ks = held/((1 − p) TAW), at most 1", fmt.Sprintf("%.5g/((1 − %g)·%.5g)", float64(before.Held), before.depletion, p.full), p.stress(float64(before.Held), before.depletion), "")
	c.Step("evaporation", "Ks Kc ETo area", fmt.Sprintf("Ks·%g·%.5g·%g", before.coefficient, float64(in.Reference), float64(bed.Area)), float64(out.Evaporated), "L")
	c.Step("asked for before", "what brings it back to field capacity, once what is taken with ease is gone", fmt.Sprintf("(%.5g − %.5g)/%g", p.full, float64(before.Held), bed.Arrives), float64(p.Want(&before)), "L")
	c.Result("evaporated", float64(out.Evaporated), "L")
	c.Result("drained", float64(out.Drained), "L")
	c.Result("sprayed", float64(out.Sprayed), "L")
	c.Result("leached", out.Leached, "g")
	c.Result("wanted", float64(p.Want(&before)), "L")
	c.Result("held_after", float64(s.Held), "L")
	c.Result("mineral_after", s.Mineral, "g")
}
