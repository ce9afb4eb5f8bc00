package power

import (
	"suffice/quantity"
	"suffice/sheet"
)

func batteryDays() sheet.Sheet {
	return sheet.Sheet{
		Name: "battery-days", Title: "A battery bank for days without sun",
		Inputs: []sheet.Input{
			number("daily_energy", "Wh/d", "2.4kWh/d", "what the house draws from the bank in a day", 0, 1e6),
			number("days", "days", "3days", "without sun", 0, 60),
			number("depth", "fraction", "50%", "share of the bank that is drawn", 0.01, 1),
			number("voltage", "V", "24V", "of the bank", 1, 1000),
			number("cold_factor", "fraction", "100%", "share of its capacity that the bank keeps at its coldest", 0.01, 1),
		},
		Sources:  []string{"off-grid-guide: Ah = (Wh a day / V) x days / depth / cold factor"},
		Cautions: []string{batteryCaution, "Days without sun are a rule of thumb: a long record says how dull spells really run."},
		Do: func(c *sheet.Calc) {
			daily, days, depth, volts, cold := c.Number("daily_energy"), c.Number("days"), c.Number("depth"), c.Number("voltage"), c.Number("cold_factor")
			wh := float64(BankSize(quantity.WattHours(daily), days, depth, cold))
			kwh := c.Step("energy of the bank", "daily use x days / depth / cold factor", say("%g x %g / %g / %g / 1000", daily, days, depth, cold), wh/1000, "kWh")
			ah := c.Step("capacity", "energy / voltage", say("%g x 1000 / %g", kwh, volts), wh/volts, "Ah")
			c.Result("energy", kwh, "kWh")
			c.Result("capacity", ah, "Ah")
		},
	}
}

func batteryCapacity() sheet.Sheet {
	return sheet.Sheet{
		Name: "battery-capacity", Title: "What a battery gives at a current: two wells",
		Inputs: []sheet.Input{
			number("capacity_limit", "Ah", "400Ah", "drawn ever so slowly (q max)", 1e-3, 1e6),
			number("well_share", "fraction", "30%", "of the available well (c)", 0.01, 0.99),
			number("rate_constant", "/h", "0.5/h", "k; where authors quote a conductance k', k = k' / (c (1 - c))", 1e-4, 1000),
			maybe(number("current", "A", "", "drawn without a break", 1e-6, 1e6)),
			maybe(number("hours", "h", "", "alone: the discharge that lasts so long; with a current: the state after so long", 1e-6, 1e6)),
			fraction("start", "100%", "charge of both wells at the beginning"),
			maybe(number("peukert", "", "", "exponent of Peukert's law, to compare: 1.1 to 1.3 for lead-acid", 1, 2)),
		},
		Sources:  []string{"manwell-mcgowan-1993: equations of the two wells", "peukert-1897: capacity by exponent"},
		Cautions: []string{batteryCaution},
		Do:       doBatteryCapacity,
	}
}

func doBatteryCapacity(c *sheet.Calc) {
	w := Wells{Full: c.Number("capacity_limit"), Share: c.Number("well_share"), Rate: c.Number("rate_constant")}
	start := c.Number("start")
	q := Charge{w.full().Available * start, w.full().Bound * start}
	if q.Sum() == 0 {
		c.Fail("start is 0: an empty battery gives nothing")
		return
	}
	if c.Given("hours") && !c.Given("current") {
		h := c.Number("hours")
		i := c.Step("current that empties the available well in that time", "(q1 e^-kt + q0 c (1 - e^-kt)) k / (1 - e^-kt + c (kt - 1 + e^-kt))",
			say("q1 = %g, q0 = %g, k = %g, c = %g, t = %g", q.Available, q.Sum(), w.Rate, w.Share, h), w.MostOut(q, h), "A")
		capacityResults(c, w, q, i, h, h)
		return
	}
	i := w.Full * start / 10 // a current for the bare sheet: the tenth of what is held
	if c.Given("current") {
		i = c.Number("current")
	}
	lasts := c.Step("hours until the available well is empty", "q1(t) = 0", say("I = %g", i), w.Lasts(q, i), "h")
	at := lasts
	if c.Given("hours") {
		at = c.Number("hours")
		if at > lasts {
			c.Fail("hours is %g: at %g A the battery is empty after %.4g h", at, i, lasts)
			return
		}
	}
	capacityResults(c, w, q, i, lasts, at)
}

// capacityResults says what a current gives while it lasts, and the wells at a time.
func capacityResults(c *sheet.Calc, w Wells, q Charge, current, lasts, at float64) {
	available := c.Step("charge given", "I t", say("%.6g x %.6g", current, lasts), current*lasts, "Ah")
	end := w.After(q, current, at)
	c.Step("available well", "q1 e^-kt + (q0 k c - I)(1 - e^-kt)/k - I c (kt - 1 + e^-kt)/k", say("after %.6g h", at), end.Available, "Ah")
	c.Step("bound well", "q0 - I t - q1(t)", say("%g - %.6g x %.6g - %.6g", q.Sum(), current, at, end.Available), end.Bound, "Ah")
	c.Result("available", available, "Ah")
	c.Result("hours", lasts, "h")
	c.Result("q1", end.Available, "Ah")
	c.Result("q2", end.Bound, "Ah")
	c.Result("current", current, "A")
	c.Result("most_current_next_hour", w.MostOut(end, 1), "A")
	if c.Given("peukert") {
		n := c.Number("peukert")
		ten := w.Capacity(10)
		c.ResultByMethod("by_method", map[string]float64{"two-wells": available, "peukert": Peukert(ten, 10, n, current)}, "Ah")
	}
}

func batteryCycles() sheet.Sheet {
	return sheet.Sheet{
		Name: "battery-cycles", Title: "Cycles in a history of charge: rainflow",
		Inputs: []sheet.Input{
			{Name: "history", Kind: sheet.List, Default: "-2,1,-3,5,-1,3,-4,4,-2", Meaning: "values one after another; charge as 0 to 1 or in percent"},
			{Name: "method", Kind: sheet.Text, Default: "standard", Choices: []string{"standard", "repeating"}, Meaning: "standard counts the history as it stands, repeating as one that comes again without end"},
			maybe(number("whole", "", "", "the swing that makes one full cycle; without it the history's own range", 1e-9, 1e9)),
		},
		Sources:  []string{"astm-e1049: 5.4.4 (standard), 5.4.5 (repeating)"},
		Cautions: []string{"Cycle counts age a battery on paper: heat, standing empty and missing top-ups age it faster."},
		Do:       doBatteryCycles,
	}
}

func doBatteryCycles(c *sheet.Calc) {
	history := c.Numbers("history")
	count := Rainflow
	if c.Text("method") == "repeating" {
		count = RainflowRepeating
	}
	cycles := count(history)
	low, high := history[0], history[0]
	for _, v := range history {
		low, high = min(low, v), max(high, v)
	}
	whole := high - low
	if c.Given("whole") {
		whole = c.Number("whole")
	}
	by := make(map[string]float64)
	var ranges, counts []float64
	for _, cycle := range cycles {
		by[quantity.Text(cycle.Range, "")] = cycle.Count
		ranges, counts = append(ranges, cycle.Range), append(counts, cycle.Count)
		c.Step("swings of "+quantity.Text(cycle.Range, ""), "counted", say("range %g", cycle.Range), cycle.Count, "")
	}
	full := 0.0
	if whole > 0 {
		full = FullCycles(cycles, whole)
	}
	c.Step("equivalent full cycles", "sum of range x count / whole swing", say("whole swing %g", whole), full, "")
	c.ResultByMethod("cycles", by, "")
	c.ResultList("ranges", ranges, "")
	c.ResultList("counts", counts, "")
	c.Result("equivalent_full_cycles", full, "")
}

func batteryAir() sheet.Sheet {
	return sheet.Sheet{
		Name: "battery-air", Title: "Air for a battery room",
		Inputs: []sheet.Input{
			number("cells", "", "12", "in series; several strings count together", 1, 10000),
			number("capacity", "Ah", "600Ah", "of one cell", 0.1, 1e5),
			{Name: "kind", Kind: sheet.Text, Default: "vented", Choices: []string{"vented", "sealed"}, Meaning: "lead-acid cells with liquid, or valve-regulated"},
			{Name: "charge", Kind: sheet.Text, Default: "boost", Choices: []string{"float", "boost"}, Meaning: "how hard it is charged at worst"},
		},
		Sources:  []string{"en62485-2: 7.2 air, 7.3 openings; gassing currents remembered", "faraday-law: hydrogen of one ampere-hour"},
		Cautions: []string{hydrogenCaution, batteryCaution, "Lithium packs need no air for hydrogen, but their maker's rules for fire and gas."},
		Do: func(c *sheet.Calc) {
			cells, capacity, kind, regime := c.Number("cells"), c.Number("capacity"), Vented, Float
			if c.Text("kind") == "sealed" {
				kind = Sealed
			}
			if c.Text("charge") == "boost" {
				regime = Boost
			}
			gas := Gassing(kind, regime)
			c.Step("current that makes gas", "table", c.Text("kind")+", "+c.Text("charge"), gas, "mA/Ah")
			flow := RoomAir(int(cells), capacity, kind, regime)
			c.Step("air", "0.05 n I C / 1000", say("0.05 x %g x %g x %g / 1000", cells, gas, capacity), flow, "m3/h")
			opening := c.Step("opening, in and out each", "28 Q", say("28 x %.4g", flow), Opening(flow), "cm2")
			hydrogen := c.Step("hydrogen at worst", "n I C / 1000 x L/Ah at 25 degC", say("%g x %g x %g / 1000 x %.3f", cells, gas, capacity, HydrogenPerAh(25)), cells*gas*capacity/1000*HydrogenPerAh(25), "L/h")
			c.Result("flow", flow, "m3/h")
			c.Result("opening", opening, "cm2")
			c.Result("hydrogen", hydrogen, "L/h")
		},
	}
}

func batteryHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "battery-hour", Title: "What a battery takes in and gives in an hour",
		Inputs: []sheet.Input{
			{Name: "kind", Kind: sheet.Text, Default: "lead-acid", Choices: []string{"lead-acid", "lithium"}, Meaning: "chemistry"},
			number("capacity", "Wh", "14.4kWh", "rated, in ten hours", 1, 1e8),
			number("floor", "fraction", "50%", "reading of charge below which nothing is drawn", 0, 0.99),
			fraction("charge", "80%", "reading at the beginning of a rested bank"),
			maybe(number("available", "Wh", "", "in the available well at the beginning, instead of charge", 0, 1e8)),
			maybe(number("bound", "Wh", "", "in the bound well at the beginning, instead of charge", 0, 1e8)),
			number("offered", "Wh", "0Wh", "to the terminals", 0, 1e8),
			number("wanted", "Wh", "900Wh", "of the terminals", 0, 1e8),
			number("temperature", "degC", "15degC", "of the cells", -60, 60),
		},
		Sources:  []string{"manwell-mcgowan-1993: the two wells over one hour", "ieee485: cold (remembered); the other constants are from memory, see the chemistry's list"},
		Cautions: []string{batteryCaution},
		Do:       doBatteryHour,
	}
}

func doBatteryHour(c *sheet.Calc) {
	kind, _ := ChemistryNamed(c.Text("kind"))
	b := Battery{Chemistry: kind, Capacity: quantity.WattHours(c.Number("capacity")), Voltage: 1, Floor: c.Number("floor"), Start: 1}
	if err := b.Prepare(); err != nil {
		c.Fail("%v", err)
		return
	}
	if c.Given("available") != c.Given("bound") {
		c.Fail("one well is given: give both, available and bound, or neither and the charge")
		return
	}
	s := b.At(c.Number("charge"))
	if c.Given("available") {
		s = BatteryState{quantity.WattHours(c.Number("available")), quantity.WattHours(c.Number("bound"))}
	}
	cells := quantity.Celsius(c.Number("temperature"))
	before := s
	h, faded := b.fade(&s)
	c.Step("self-discharge", "share an hour x charge above zero", say("%.3g x (%.8g - %.8g)", b.fades, s.Available+s.Bound, b.zero), faded, "Wh")
	rest := c.Step("available well after a rest of the hour", "q1 e^-k + c (1 - e^-k) q0", say("%.8g x %.5f + %.5f x %.8g", s.Available, b.hour.stays, b.hour.spreads, h.sum), h.rest, "Wh")
	c.Step("largest draw by the wells", "rest / ((1 - e^-k + c (k - 1 + e^-k)) / k)", say("%.8g / %.5f", rest, b.hour.takes), h.rest*b.perTake, "Wh")
	c.Step("largest draw down to the floor, raised by cold", "q0 - (full - cold factor x (1 - floor) x rated)",
		say("%.8g - (%.8g - %.4f x (1 - %g) x %g)", h.sum, b.full, b.ColdFactor(cells), b.Floor, b.Capacity), h.sum-b.stop(cells), "Wh")
	c.Step("can give", "the least of these and of the rate, not below 0", say("rate %g", b.mostOut), b.deliverable(h, cells), "Wh")
	c.Step("can take in", "the least of (c qmax - rest) / factor and the rate, over efficiency", say("(%.8g - %.8g) / %.5f and %g, / %g", b.hour.level, h.rest, b.hour.takes, b.mostIn, b.Efficiency), b.acceptable(h, cells), "Wh")
	s = before
	out := b.Step(&s, BatteryIn{Offered: quantity.WattHours(c.Number("offered")), Wanted: quantity.WattHours(c.Number("wanted")), Temperature: cells})
	c.Step("charge at the end", "(q0 - drawn + taken in x efficiency - zero) / rated", say("(%.8g - %g + %g x %g - %.8g) / %g", h.sum, out.Discharged, out.Charged, b.Efficiency, b.zero, b.Capacity), out.Charge, "fraction")
	for _, r := range []struct {
		name  string
		value quantity.WattHours
	}{{"charged", out.Charged}, {"discharged", out.Discharged}, {"loss", out.Loss}, {"self_discharge", out.SelfDischarge},
		{"refused", out.Refused}, {"short", out.Short}, {"available", s.Available}, {"bound", s.Bound}} {
		c.Result(r.name, float64(r.value), "Wh")
	}
	c.Result("charge", out.Charge, "fraction")
}
