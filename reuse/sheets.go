package reuse

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/sheet"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet {
	return []sheet.Sheet{soilWater(), saltYield(), sodium(), bedArea(), bedCleaning(), greySheet(), drainsHour(), planterHour(), wellHour()}
}

// number declares a numeric input with its limits.
func number(name, unit, standard string, low, high float64, meaning string) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Default: standard, Low: sheet.At(low), High: sheet.At(high), Meaning: meaning}
}

func soilWater() sheet.Sheet {
	return sheet.Sheet{
		Name: "soil-water", Title: "Water that roots can take from the soil",
		Inputs: []sheet.Input{
			number("field_capacity", "fraction", "0.32", 0.01, 0.9, "water that drained soil holds, by volume"),
			number("wilting_point", "fraction", "0.12", 0, 0.8, "water that roots can no longer take, by volume"),
			number("root_depth", "m", "0.8 m", 0.01, 10, "that roots reach"),
			number("depletion_fraction", "fraction", "0.4", 0.05, 0.95, "p: share of the total taken without stress"),
			number("depletion", "mm", "72.8 mm", 0, 10000, "missing from field capacity in the root zone"),
			{Name: "evaporation", Unit: "mm/d", Maybe: true, Low: sheet.At(0), High: sheet.At(30), Meaning: "of the crop, to adjust the depletion fraction of a table; without it the fraction is taken as it is"},
		},
		Sources:  []string{"fao56: eq. 82 to 84, table 22"},
		Cautions: []string{"Soils differ within a bed: where yield depends on it, have the soil measured.", greyCaution},
		Do:       workSoilWater,
	}
}

func workSoilWater(c *sheet.Calc) {
	z := RootZone{c.Number("field_capacity"), c.Number("wilting_point"), c.Number("root_depth"), c.Number("depletion_fraction")}
	d := c.Number("depletion")
	if z.WiltingPoint >= z.FieldCapacity {
		c.Fail("wilting_point %g is not below field_capacity %g: roots would find nothing", z.WiltingPoint, z.FieldCapacity)
		return
	}
	if c.Given("evaporation") {
		e := c.Number("evaporation")
		p := Adjusted(z.Depletion, e)
		c.Step("depletion fraction of the day", "p + 0.04 (5 − ETc), from 0.1 to 0.8", fmt.Sprintf("%g + 0.04·(5 − %g)", z.Depletion, e), p, "")
		z.Depletion = p
	}
	taw := c.Step("total available water", "TAW = 1000 (θFC − θWP) Zr", fmt.Sprintf("1000·(%g − %g)·%g", z.FieldCapacity, z.WiltingPoint, z.Depth), z.Total(), "mm")
	c.Step("readily available water", "RAW = p TAW", fmt.Sprintf("%g·%g", z.Depletion, taw), z.Ready(), "mm")
	ks := c.Step("stress coefficient", "Ks = (TAW − Dr)/((1 − p) TAW), 1 above RAW, 0 below the wilting point", fmt.Sprintf("(%g − %g)/((1 − %g)·%g)", taw, d, z.Depletion, taw), z.Stress(d), "")
	c.Result("taw", taw, "mm")
	c.Result("raw", z.Ready(), "mm")
	c.Result("ks", ks, "")
	c.Result("depletion_fraction", z.Depletion, "fraction")
	if d > taw {
		c.Caution(fmt.Sprintf("A depletion of %g mm is more than the %g mm there are: the soil is drier than the wilting point, from bare drying alone.", d, taw))
	}
}

func saltYield() sheet.Sheet {
	return sheet.Sheet{
		Name: "salt-yield", Title: "What salt in the soil leaves of a yield",
		Inputs: []sheet.Input{
			{Name: "crop", Kind: sheet.Text, Default: "tomato", Choices: Tolerant(), Meaning: "of the table of tolerances"},
			number("salinity", "dS/m", "3 dS/m", 0, 100, "of the soil's saturation extract, in the root zone"),
			{Name: "threshold", Unit: "dS/m", Maybe: true, Low: sheet.At(0), High: sheet.At(50), Meaning: "up to which the yield is full, instead of the table's"},
			{Name: "slope", Unit: "%m/dS", Maybe: true, Low: sheet.At(0), High: sheet.At(100), Meaning: "yield lost for each dS/m beyond, instead of the table's"},
			{Name: "water", Unit: "dS/m", Maybe: true, Low: sheet.At(0), High: sheet.At(50), Meaning: "conductivity of the water given, for the share that must drain"},
		},
		Sources:  []string{"maas-1990: table of herbaceous crops", "fao56: eq. 88", "fao33: yield response, from memory", "fao29: eq. 9 and table 1"},
		Cautions: []string{"The tolerances were measured on plants that emerged in less salt: seedlings bear less, and gypsum soils 2 dS/m more.", greyCaution},
		Do:       workSaltYield,
	}
}

func workSaltYield(c *sheet.Calc) {
	k, _ := ToleranceOf(c.Text("crop"))
	if c.Given("threshold") {
		k.Threshold = c.Number("threshold")
	}
	if c.Given("slope") {
		k.Slope = c.Number("slope")
	}
	e := c.Number("salinity")
	y := c.Step("relative yield", "Yr = 100 − b (ECe − a), 100 below a", fmt.Sprintf("100 − %g·(%g − %g)", k.Slope, e, k.Threshold), k.Yield(e), "%")
	ks := c.Step("evaporation that salt allows", "Ks = 1 − b (ECe − a)/(100 Ky)", fmt.Sprintf("1 − %g·(%g − %g)/(100·%g)", k.Slope, e, k.Threshold, k.response()), k.Stress(e), "")
	c.Result("relative_yield", y, "%")
	c.Result("ks", ks, "")
	c.Result("threshold", k.Threshold, "dS/m")
	if y == 0 {
		c.Caution("The line reaches nothing before this salinity: the crop dies.")
	}
	if !c.Given("water") {
		return
	}
	w := c.Number("water")
	share, can := Leaching(w, e)
	c.Step("share that must drain", "LR = ECw/(5 ECe − ECw)", fmt.Sprintf("%g/(5·%g − %g)", w, e, w), share, "fraction")
	c.Result("leaching", share, "fraction")
	c.ResultText("water_salinity", Salinity(w).String())
	if !can {
		c.Caution("No drainage holds the soil at this salinity with water so salty.")
	}
}

func sodium() sheet.Sheet {
	return sheet.Sheet{
		Name: "sodium", Title: "Sodium adsorption ratio of a water",
		Inputs: []sheet.Input{
			number("sodium", "meq/L", "7.73 meq/L", 0, 1000, "23.0 mg/L are 1 meq/L"),
			number("calcium", "meq/L", "2.32 meq/L", 0, 1000, "20.0 mg/L are 1 meq/L"),
			number("magnesium", "meq/L", "1.44 meq/L", 0, 1000, "12.2 mg/L are 1 meq/L"),
			{Name: "conductivity", Unit: "dS/m", Maybe: true, Low: sheet.At(0), High: sheet.At(100), Meaning: "of the water, for how far it seals the soil"},
		},
		Sources:  []string{"fao29: eq. 1, table 1"},
		Cautions: []string{"Soap powder for washing brings most of a house's sodium: liquid or potassium soaps bring less.", "Soil that sodium has sealed takes no water and mends slowly: test the soil yearly."},
		Do: func(c *sheet.Calc) {
			i := Ions{c.Number("sodium"), c.Number("calcium"), c.Number("magnesium")}
			sar := i.SAR()
			if math.IsInf(sar, 1) {
				c.Fail("calcium and magnesium are 0: with %g meq/L of sodium the ratio has no bound", i.Sodium)
				return
			}
			c.Step("ratio", "Na/√((Ca + Mg)/2)", fmt.Sprintf("%g/√((%g + %g)/2)", i.Sodium, i.Calcium, i.Magnesium), sar, "")
			c.Result("sar", sar, "")
			if c.Given("conductivity") {
				c.ResultText("infiltration", Infiltrates(c.Number("conductivity"), sar).String())
			}
		},
	}
}

// methods of bed-area.
var areaMethods = []string{"first-order", "k-c-star", "per-person"}

func bedArea() sheet.Sheet {
	return sheet.Sheet{
		Name: "bed-area", Title: "Area of a bed to clean greywater",
		Inputs: []sheet.Input{
			number("flow", "m3/d", "400 L/d", 1e-6, 1e5, "through the bed"),
			number("inflow_bod", "mg/L", "150 mg/L", 0.1, 1e5, "at the inlet"),
			number("outflow_bod", "mg/L", "20 mg/L", 0.1, 1e5, "wanted at the outlet"),
			number("rate", "m/d", "0.15 m/d", 1e-4, 10, "K of the first-order method at 20 degC: 0.15 for a bed flowed through lengthwise, 0.20 from above down"),
			{Name: "method", Kind: sheet.Text, Default: "first-order", Choices: areaMethods, Meaning: "whose answer is the result; the others stand beside it"},
			number("temperature", "degC", "20 degC", 0.1, 45, "of the water, in the coldest month it must work in; the first-order rate follows it"),
			{Name: "people", Maybe: true, Low: sheet.At(0), High: sheet.At(1e6), Meaning: "for the rule of thumb; without it as many as have so much BOD in their sewage"},
			number("k", "m/year", "180 m/year", 0.1, 1e4, "of the k-C* method"),
			number("gravel_conductivity", "m/s", "0.002 m/s", 1e-6, 1, "of the gravel with roots in it"),
			number("slope", "fraction", "0.01", 1e-4, 0.5, "fall of the liner"),
			number("depth", "m", "0.4 m", 0.05, 3, "of water"),
		},
		Sources: []string{"un-habitat-wetlands: worked case", "reed-1995: rate by temperature", "kadlec-knight: k and C* for BOD", "sandec-compendium: 5 to 10 m2 a person"},
		Cautions: []string{"The formula's bed is often several times smaller than the rule of thumb's: build towards the larger, and sample what leaves.",
			greyCaution, stillCaution, childCaution, localCaution},
		Do: workBedArea,
	}
}

func workBedArea(c *sheet.Calc) {
	f := Flow{c.Number("flow"), c.Number("inflow_bod"), c.Number("outflow_bod")}
	if f.Out >= f.In {
		c.Fail("outflow_bod %g mg/L is not below inflow_bod %g mg/L: there is nothing to clean", f.Out, f.In)
		return
	}
	k20, k := c.Number("rate"), c.Number("k")
	rate := c.Step("rate at this temperature", "K = K20·1.06^(T − 20)", fmt.Sprintf("%g·1.06^(%g − 20)", k20, c.Number("temperature")), RateAt(k20, quantity.Celsius(c.Number("temperature"))), "m/d")
	first := f.FirstOrder(rate)
	c.Step("area, first order", "A = Q (ln Ci − ln Ce)/K", fmt.Sprintf("%g·(ln %g − ln %g)/%.4g", f.PerDay, f.In, f.Out, rate), float64(first), "m2")
	by := map[string]float64{"first-order": float64(first)}
	if area, can := f.KCStar(k); can {
		c.Step("area, k-C*", "A = 365 Q/k·ln((Ci − C*)/(Ce − C*)), C* = 3.5 + 0.053 Ci", fmt.Sprintf("365·%g/%g·ln((%g − %.4g)/(%g − %.4g))", f.PerDay, k, f.In, f.Background(), f.Out, f.Background()), float64(area), "m2")
		by["k-c-star"] = float64(area)
	} else {
		c.Caution(fmt.Sprintf("The k-C* method has no answer: no bed cleans below its background of %.3g mg/L.", f.Background()))
	}
	people := f.People()
	if c.Given("people") {
		people = c.Number("people")
	}
	least, most := PerPerson(people)
	c.Step("area, rule of thumb", "5 m2 to 10 m2 a person", fmt.Sprintf("%g to %g times %.4g", thumbLeast, thumbMost, people), float64(least), "m2")
	by["per-person"], by["per-person-most"] = float64(least), float64(most)
	area, ok := by[c.Text("method")]
	if !ok {
		c.Fail("outflow_bod %g mg/L cannot be had by k-c-star, whose least is %.3g mg/L: ask for more, or name another method", f.Out, f.Background())
		return
	}
	c.Result("area", area, "m2")
	c.ResultByMethod("by_method", by, "m2")
	section := Section(f.PerDay/86400, c.Number("gravel_conductivity"), c.Number("slope"))
	c.Step("cross-section the flow needs", "Ac = Q/(Kf s)", fmt.Sprintf("%g/86400/(%g·%g)", f.PerDay, c.Number("gravel_conductivity"), c.Number("slope")), section, "m2")
	width := section / c.Number("depth")
	c.Result("least_width", width, "m")
	c.Result("length_at_least_width", area/width, "m")
	c.Result("people", people, "")
}

func bedCleaning() sheet.Sheet {
	return sheet.Sheet{
		Name: "bed-cleaning", Title: "What a bed takes out of greywater, by formula and by rule of thumb",
		Inputs: []sheet.Input{
			number("length", "m", "5 m", 0.01, 1000, "along the slope"),
			number("width", "m", "1.5 m", 0.01, 100, "across"),
			number("standing", "m", "0.2 m", 0.01, 3, "depth of the water that the outlet keeps"),
			number("porosity", "fraction", "0.38", 0.01, 0.99, "of the gravel"),
			number("rate", "/d", "1.104 /d", 0, 20, "at which BOD decays at 20 degC"),
			number("temperature", "degC", "15 degC", 0.1, 45, "of the water"),
			number("flow", "m3/d", "240 L/d", 1e-6, 1e4, "steady, through the bed"),
			number("inflow_bod", "mg/L", "150 mg/L", 0.1, 1e5, "at the inlet"),
		},
		Sources:  []string{"reed-1995: rate by temperature, first order", "sandec-compendium: 5 to 10 m2 a person"},
		Cautions: []string{"Formula and rule of thumb disagree severalfold for weak water: count on the worse, and sample what leaves.", greyCaution, stillCaution, localCaution},
		Do:       workBedCleaning,
	}
}

func workBedCleaning(c *sheet.Calc) {
	p := UsualPlanter(quantity.Metres(c.Number("length")), quantity.Metres(c.Number("width")))
	p.Gravel.Standing, p.Gravel.Porosity, p.Rate = quantity.Metres(c.Number("standing")), c.Number("porosity"), c.Number("rate")
	p.Gravel.Depth = p.Gravel.Standing + 0.1
	b, err := Prepare(p)
	if err != nil {
		c.Fail("%w", err)
		return
	}
	f, water := Flow{PerDay: c.Number("flow"), In: c.Number("inflow_bod")}, quantity.Celsius(c.Number("temperature"))
	cleans := b.Cleans(f, water)
	c.Step("stay", "t = area x depth x porosity/Q", fmt.Sprintf("%g·%g·%g/%g", b.area, float64(p.Gravel.Standing), p.Gravel.Porosity, f.PerDay), cleans.Days, "d")
	k := c.Step("rate", "k = k20·1.06^(T − 20)", fmt.Sprintf("%g·1.06^(%g − 20)", p.Rate, float64(water)), RateAt(p.Rate, water), "/d")
	c.Step("share taken, water pushed along", "1 − e^(−k t)", fmt.Sprintf("1 − e^(−%.4g·%.4g)", k, cleans.Days), cleans.Pushed, "fraction")
	c.Step("share taken, water mixed", "k t/(1 + k t)", fmt.Sprintf("%.4g·%.4g/(1 + %.4g·%.4g)", k, cleans.Days, k, cleans.Days), cleans.Mixed, "fraction")
	c.Step("bed over the least of the rule of thumb", "area/(5 m2 x people)", fmt.Sprintf("%g/(%g·%.4g)", b.area, thumbLeast, f.People()), cleans.Thumb, "fraction")
	c.Result("days", cleans.Days, "d")
	c.ResultByMethod("taken", map[string]float64{"pushed": cleans.Pushed, "mixed": cleans.Mixed}, "fraction")
	c.Result("outflow_bod", f.In*(1-cleans.Mixed), "mg/L")
	c.Result("of_rule_of_thumb", cleans.Thumb, "fraction")
	if cleans.Thumb < 1 {
		c.Caution(fmt.Sprintf("By the rule of thumb the bed is too small: it wants at least %.3g m2 for this much dirt.", thumbLeast*f.People()))
	}
}
