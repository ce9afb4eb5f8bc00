package gas

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/sheet"
)

// cautions of burning bottled gas.
var cautions = []string{
	"A flame that burns badly or a flue that draws badly makes carbon monoxide, which has no smell and kills: have appliances and flues checked every year, keep ventilation openings free, and fit an alarm.",
	"Bottled gas is heavier than air and lies in cellars, drains and hollows: keep bottles upright, outdoors or in a ventilated place, away from drains, openings and flames.",
	"If you smell gas: no flame, no switch, close the bottle, open doors, leave.",
	"Appliances, pipes and regulators are for a licensed gas fitter; the local code decides where bottles may stand and how many.",
}

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{gasSheet(), gasHour()} }

func gasSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "gas", Title: "Gas for a heat, in kilograms and bottles",
		Inputs: []sheet.Input{
			{Name: "energy", Unit: "kWh", Default: "10 kWh", Meaning: "heat wanted", Low: sheet.At(0), High: sheet.At(1e6)},
			{Name: "efficiency", Unit: "fraction", Default: "85 %", Meaning: "of the appliance, on the net heating value (common practice, no source: 80 to 90 %)", Low: sheet.At(0.01), High: sheet.At(1.1)},
			{Name: "fuel", Kind: sheet.Text, Default: "propane", Choices: []string{"propane", "butane", "mixed"}, Meaning: "what is in the bottle"},
			{Name: "bottle", Unit: "kg", Default: "45 kg", Meaning: "gas in a full bottle", Low: sheet.At(0.1), High: sheet.At(mostBottle)},
			{Name: "air", Unit: "degC", Default: "5 degC", Meaning: "where the bottle stands, for what it can give", Low: sheet.At(-60), High: sheet.At(60)},
		},
		Sources: []string{
			"lpg-supplier: heating values, densities, boiling points",
			"lpg-vapour: most that a 100 lb bottle gives by temperature and filling",
		},
		Cautions: cautions,
		Do:       workGas,
	}
}

func workGas(c *sheet.Calc) {
	f, err := ByName(c.Text("fuel"))
	if err != nil {
		c.Fail("%v", err)
		return
	}
	energy, efficiency, bottle := c.Number("energy"), c.Number("efficiency"), c.Number("bottle")
	mass := float64(f.MassFor(quantity.WattHours(energy*1000), efficiency))
	c.Step("energy of the fuel", "E = Q/η", fmt.Sprintf("%.4g kWh / %.4g", energy, efficiency), energy/efficiency, "kWh")
	c.Step("gas burned", "m = E/H, net", fmt.Sprintf("%.4g kWh · 3.6 MJ/kWh / %.4g MJ/kg", energy/efficiency, f.Net), mass, "kg")
	bottles := c.Step("bottles", "n = m/bottle", fmt.Sprintf("%.4g kg / %.4g kg", mass, bottle), mass/bottle, "each")
	c.Result("mass", mass, "kg")
	c.Result("bottles", bottles, "each")
	c.Result("whole_bottles", math.Ceil(bottles), "each")
	c.Result("heating_value", f.Net, "MJ/kg")
	c.Result("gross_heating_value", f.Gross, "MJ/kg")
	c.Result("boiling", float64(f.Boiling), "degC")
	workVapour(c, f, bottle)
}

// workVapour says what the bottle can give at the air's temperature, full and a quarter full.
func workVapour(c *sheet.Calc, f Fuel, bottle float64) {
	p := prepared{ratePerKelvin: likeTheTable(quantity.Kilograms(bottle)), boils: boilingByFill(f)}
	air := c.Number("air")
	full, quarter := p.vapourRate(1, air), p.vapourRate(0.25, air)
	c.Step("most that a full bottle goes on giving", "k·(bottle/45.36)^(2/3)·(t − boiling)",
		fmt.Sprintf("%.3g kg/hK · (%.3g − %.3g) K", p.ratePerKelvin, air, p.boils.at(1)), full, "kg/h")
	c.Step("a quarter full", "k·(0.143 + 0.857·fill)·(t − boiling)",
		fmt.Sprintf("%.3g kg/hK · %.3g · (%.3g − %.3g) K", p.ratePerKelvin, emptyShare+(1-emptyShare)*0.25, air, p.boils.at(0.25)), quarter, "kg/h")
	c.Result("vapour_full", full, "kg/h")
	c.Result("vapour_quarter", quarter, "kg/h")
	if quarter == 0 {
		c.Caution(fmt.Sprintf("At %.3g degC a %s bottle that is a quarter full gives no gas: its liquid boils at %.3g degC.", air, f.Name, p.boils.at(0.25)))
	}
}
