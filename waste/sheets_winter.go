package waste

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

func wetWinter() sheet.Sheet {
	return sheet.Sheet{
		Name: "wet-winter", Title: "A drain trench through a leafless wet spell",
		Inputs: append(built(),
			sheet.Input{Name: "rain", Kind: sheet.List, Unit: "mm", Default: "8mm,0mm,12mm,0mm,25mm,3mm,0mm,15mm,0mm,6mm,30mm,0mm,4mm,10mm", Low: sheet.At(0), High: sheet.At(2000), Meaning: "of each day; take the wettest spell without leaves from the record"},
			sheet.Input{Name: "inflow", Unit: "L/d", Default: "300L/d", Low: sheet.At(0), High: sheet.At(1e6), Meaning: "of effluent"},
			sheet.Input{Name: "reference", Unit: "mm/d", Default: "0.5mm/d", Low: sheet.At(0), High: sheet.At(20), Meaning: "FAO-56 reference evapotranspiration in that season"}),
		Sources: []string{"epa2002: table 4-3, long-term rates; remembered", "fao56: the reference evapotranspiration"}, Cautions: cautions(),
		Do: func(c *sheet.Calc) {
			t := trenchOf(c)
			in := WinterIn{Inflow: quantity.Litres(c.Number("inflow")), Reference: quantity.Millimetres(c.Number("reference"))}
			for _, mm := range c.Numbers("rain") {
				in.Rain = append(in.Rain, quantity.Millimetres(mm))
			}
			out := t.Winter(&in)
			most := t.Soil.Long * (float64(t.Bottom()) + 2*float64((t.Length+t.Width)*t.Gravel))
			c.Step("the full trench takes", "long (bottom + sides)", fmt.Sprintf("%g mm/d x (%.4g m2 + 2 x (%g + %g) x %g m2)", t.Soil.Long, float64(t.Bottom()), float64(t.Length), float64(t.Width), float64(t.Gravel)), most, "L/d")
			c.Step("surfaced", "the spell lived by days after the same spell, no leaves, ground clogged", fmt.Sprintf("%d days, %g L/d", len(in.Rain), float64(in.Inflow)), float64(out.Surfaced), "L")
			c.Result("surfaced", float64(out.Surfaced), "L")
			c.Result("days", float64(out.Days), "days")
			c.Result("highest", 1000*float64(out.Highest), "mm")
			if out.Days > 0 {
				c.Caution(fmt.Sprintf("Sewage surfaces on %d of %d days: a longer trench, less water, or other ground is needed.", out.Days, len(in.Rain)))
			}
		},
	}
}
