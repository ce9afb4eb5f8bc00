package gas

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// Tell gives the inputs with which the sheet gas-hour works an hour again, to the last bit.
func (y *Supply) Tell(before SupplyState, in SupplyIn) map[string]sheet.Value {
	values := map[string]sheet.Value{"fuel": {Kind: sheet.Text, Text: y.Fuel.Name}}
	for name, v := range map[string]float64{
		"bottle": float64(y.Bottle), "bottles": float64(y.Bottles), "lead": y.Lead,
		"held": float64(before.Held), "due": float64(before.Due), "want": float64(in.Want), "air": float64(in.Air),
	} {
		values[name] = sheet.Value{Kind: sheet.Number, Number: v}
	}
	return values
}

func gasHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "gas-hour", Title: "Bottled gas in one hour",
		Inputs: []sheet.Input{
			{Name: "fuel", Kind: sheet.Text, Default: "propane", Choices: []string{"propane", "butane", "mixed"}, Meaning: "what is in the bottles"},
			{Name: "bottle", Unit: "kg", Default: "25 kg", Meaning: "gas in a full bottle", Low: sheet.At(0.1), High: sheet.At(mostBottle)},
			{Name: "bottles", Default: "2", Meaning: "on site, emptied one after the other", Low: sheet.At(1), High: sheet.At(mostBottles)},
			{Name: "lead", Unit: "d", Default: "2 d", Meaning: "from a bottle running empty until the delivery", Low: sheet.At(0), High: sheet.At(mostLead)},
			{Name: "held", Unit: "kg", Default: "30 kg", Meaning: "in all bottles before the hour", Low: sheet.At(0), High: sheet.At(mostBottle * mostBottles)},
			{Name: "due", Unit: "h", Default: "0 h", Meaning: "until the delivery comes; 0: none is ordered", Low: sheet.At(0), High: sheet.At(mostLead * 24)},
			{Name: "want", Unit: "Wh", Default: "2000 Wh", Meaning: "of fuel, net heating value", Low: sheet.At(0)},
			{Name: "air", Unit: "degC", Default: "5 degC", Meaning: "where the bottles stand", Low: sheet.At(-90), High: sheet.At(60)},
		},
		Sources: []string{
			"lpg-supplier: heating values, densities, boiling points",
			"lpg-vapour: most that a 100 lb bottle gives by temperature and filling",
		},
		Cautions: cautions,
		Do:       workGasHour,
	}
}

func workGasHour(c *sheet.Calc) {
	y, s, err := supplyOf(c)
	if err != nil {
		c.Fail("%w", err)
		return
	}
	before, air := s, quantity.Celsius(c.Number("air"))
	var out SupplyOut
	y.Step(&s, SupplyIn{Want: quantity.WattHours(c.Number("want")), Air: air}, &out)
	showGasHour(c, y, before, out)
	c.Result("available", float64(y.Available(&before, air)), "Wh")
	c.Result("burned", float64(out.Burned), "kg")
	c.Result("energy", float64(out.Energy), "Wh")
	c.Result("short", float64(out.Short), "Wh")
	c.Result("emptied", float64(out.Emptied), "each")
	c.Result("arrived", float64(out.Arrived), "each")
	c.Result("held_after", float64(s.Held), "kg")
	c.Result("due_after", float64(s.Due), "h")
	c.ResultText("ordered", yes(out.Ordered))
	c.ResultText("too_cold", yes(out.Cold))
	if out.Cold {
		c.Caution(fmt.Sprintf("At %.3g degC the bottle in use gives less vapour than was wanted. Never warm a bottle with a flame or a heater.", float64(air)))
	}
}

// supplyOf makes bottles and what they hold of the sheet's inputs.
func supplyOf(c *sheet.Calc) (*Supply, SupplyState, error) {
	f, err := ByName(c.Text("fuel"))
	if err != nil {
		return nil, SupplyState{}, err
	}
	y := &Supply{Fuel: f, Bottle: quantity.Kilograms(c.Number("bottle")), Bottles: int(c.Number("bottles")), Lead: c.Number("lead")}
	s := SupplyState{Held: quantity.Kilograms(c.Number("held")), Due: int32(c.Number("due"))}
	if float64(y.Bottles) != c.Number("bottles") || float64(s.Due) != c.Number("due") {
		return nil, s, fmt.Errorf("%g bottles, delivery due in %g h: write whole numbers", c.Number("bottles"), c.Number("due"))
	}
	if err := y.Prepare(); err != nil {
		return nil, s, err
	}
	if full := y.Full(); s.Held > full.Held {
		return nil, s, fmt.Errorf("%g kg are held, but full bottles hold %g kg", float64(s.Held), float64(full.Held))
	}
	return y, s, nil
}

// showGasHour writes down the working, by the functions that Step itself calls.
func showGasHour(c *sheet.Calc, y *Supply, before SupplyState, out SupplyOut) {
	p := &y.p
	held := float64(before.Held)
	if before.Due == 1 {
		came := float64(y.Bottles - p.withGas(held))
		c.Step("full bottles exchanged for empty ones, before anything burns", "bottles − those with gas", fmt.Sprintf("%d − %d", y.Bottles, p.withGas(held)), came, "each")
		held += came * p.bottle
	}
	fill := c.Step("filling of the bottle in use", "part of the last bottle that is not empty", fmt.Sprintf("%.5g kg in bottles of %.5g kg", held, p.bottle), p.fill(held), "fraction")
	c.Step("vapour it goes on giving", "k·(0.143 + 0.857·fill)·(t − boiling), not below 0",
		fmt.Sprintf("%.3g kg/hK · (0.143 + 0.857·%.4g) · (%.4g − %.4g) K", p.ratePerKelvin, fill, c.Number("air"), p.boils.at(fill)), p.vapourRate(fill, c.Number("air")), "kg/h")
	c.Step("gas burned", "min(want/H, vapour, held)", fmt.Sprintf("min(%.5g Wh / %.6g Wh/kg, …)", c.Number("want"), p.whPerKg), float64(out.Burned), "kg")
	c.Step("not had", "want − H·burned", fmt.Sprintf("%.5g − %.5g", c.Number("want"), float64(out.Energy)), float64(out.Short), "Wh")
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
