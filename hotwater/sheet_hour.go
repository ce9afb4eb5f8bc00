package hotwater

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
)

// frostWords and sourceWords are how a sheet writes the choices.
var (
	frostWords  = []string{NoFrost: "none", DrainBack: "drain-back", Antifreeze: "antifreeze", Recirculate: "recirculate"}
	sourceWords = []string{NoBackup: "none", GasAfter: "gas-after", GasUpper: "gas-upper", ElectricUpper: "electric-upper"}
)

// field ties an input of the hour's sheet to where its number lives.
type field struct {
	name, unit, usual, meaning string
	low, high                  float64
	at                         func(*System, *State, *In) *float64
}

// hourFields lists the numbers of an hour: design, state as it begins, weather and wants.
func hourFields() []field {
	return []field{
		{"area", "m2", "4 m2", "of the collector", 0, 1000, func(y *System, _ *State, _ *In) *float64 { return (*float64)(&y.Collector.Area) }},
		{"a1", "W/m2K", "3.6 W/m2K", "its heat loss, linear", 0, 50, func(y *System, _ *State, _ *In) *float64 { return &y.Collector.A1 }},
		{"a2", "W/m2K2", "0.015 W/m2K2", "its heat loss, square", 0, 1, func(y *System, _ *State, _ *In) *float64 { return &y.Collector.A2 }},
		{"collector_flow", "", "40", "L/h per m2", 0.1, 1000, func(y *System, _ *State, _ *In) *float64 { return &y.Collector.Flow }},
		{"exchanger", "W/K", "0 W/K", "between collector fluid and store; 0 for none", 0, 1e+06, func(y *System, _ *State, _ *In) *float64 { return &y.Collector.Exchanger }},
		{"difference", "K", "6 K", "collector over store at which the pump starts", 0, 50, func(y *System, _ *State, _ *In) *float64 { return (*float64)(&y.Collector.Difference) }},
		{"pump", "W", "25 W", "of the solar loop", 0, 10000, func(y *System, _ *State, _ *In) *float64 { return (*float64)(&y.Collector.Pump) }},
		{"freezes_at", "degC", "-25 degC", "of the antifreeze", -60, 5, func(y *System, _ *State, _ *In) *float64 { return (*float64)(&y.Collector.FreezesAt) }},
		{"holds", "L", "300 L", "of the store", 1, 1e+06, func(y *System, _ *State, _ *In) *float64 { return (*float64)(&y.Store.Holds) }},
		{"standing_loss", "W/K", "2 W/K", "of the store", 0, 1000, func(y *System, _ *State, _ *In) *float64 { return &y.Store.Loss }},
		{"upper_share", "fraction", "0.4", "of the store's volume", 0.01, 0.99, func(y *System, _ *State, _ *In) *float64 { return &y.Store.UpperShare }},
		{"limit", "degC", "90 degC", "of the store", 1, 99, func(y *System, _ *State, _ *In) *float64 { return (*float64)(&y.Store.Limit) }},
		{"set", "degC", "45 degC", "of the backup", 1, 95, func(y *System, _ *State, _ *In) *float64 { return (*float64)(&y.Backup.Set) }},
		{"efficiency", "fraction", "0.85", "of the backup", 0.01, 1.1, func(y *System, _ *State, _ *In) *float64 { return &y.Backup.Efficiency }},
		{"backup_power", "W", "2000 W", "heat into the upper layer", 0, 1e+06, func(y *System, _ *State, _ *In) *float64 { return (*float64)(&y.Backup.Power) }},
		{"upper", "degC", "50 degC", "upper layer as the hour begins", -50, 120, func(_ *System, s *State, _ *In) *float64 { return (*float64)(&s.Upper) }},
		{"lower", "degC", "30 degC", "lower layer as the hour begins", -50, 120, func(_ *System, s *State, _ *In) *float64 { return (*float64)(&s.Lower) }},
		{"absorbed", "W/m2", "500 W/m2", "light absorbed: eta0 times incidence modifier times light", 0, 2000, func(_ *System, _ *State, in *In) *float64 { return &in.Light }},
		{"air", "degC", "15 degC", "outside", -90, 60, func(_ *System, _ *State, in *In) *float64 { return (*float64)(&in.Air) }},
		{"room", "degC", "18 degC", "where the store stands", -90, 60, func(_ *System, _ *State, in *In) *float64 { return (*float64)(&in.Room) }},
		{"cold", "degC", "12 degC", "water coming in", 0, 95, func(_ *System, _ *State, in *In) *float64 { return (*float64)(&in.Cold) }},
		{"litres", "L", "30 L", "drawn at the taps, mixed", 0, 100000, func(_ *System, _ *State, in *In) *float64 { return (*float64)(&in.Litres) }},
		{"tap", "degC", "40 degC", "wanted there", 0, 99, func(_ *System, _ *State, in *In) *float64 { return (*float64)(&in.Tap) }},
		{"pump_share", "fraction", "1", "of the pump's power that was served", 0, 1, func(_ *System, _ *State, in *In) *float64 { return &in.Pump }},
		{"electricity", "Wh", "0 Wh", "served to the element", 0, 1e+07, func(_ *System, _ *State, in *In) *float64 { return (*float64)(&in.Electric) }},
		{"fuel", "Wh", "100000 Wh", "of gas that can be had", 0, 1e+12, func(_ *System, _ *State, in *In) *float64 { return (*float64)(&in.Fuel) }},
	}
}

func hourSheet() sheet.Sheet {
	s := sheet.Sheet{
		Name: "hot-water-hour", Title: "One hour of collector, store and backup",
		Inputs: []sheet.Input{
			{Name: "frost", Kind: sheet.Text, Default: "drain-back", Choices: frostWords, Meaning: "how the collector is kept from freezing"},
			{Name: "backup", Kind: sheet.Text, Default: "gas-after", Choices: sourceWords, Meaning: "what makes up for missing sun, and where it heats"},
		},
		Sources:  []string{"iso9806: heat of the collector", "water-heat: 4.186 kJ/kgK and 1 kg/L"},
		Cautions: cautions,
		Do:       workHour,
	}
	for _, f := range hourFields() {
		s.Inputs = append(s.Inputs, sheet.Input{Name: f.name, Unit: f.unit, Default: f.usual, Meaning: f.meaning, Low: sheet.At(f.low), High: sheet.At(f.high)})
	}
	return s
}

// Tell gives the inputs with which the sheet hot-water-hour works an hour again, to the last bit.
func (y *System) Tell(before State, in In) map[string]sheet.Value {
	system := *y
	values := map[string]sheet.Value{
		"frost":  {Kind: sheet.Text, Text: frostWords[y.Collector.Frost]},
		"backup": {Kind: sheet.Text, Text: sourceWords[y.Backup.By]},
	}
	for _, f := range hourFields() {
		values[f.name] = sheet.Value{Kind: sheet.Number, Number: *f.at(&system, &before, &in)}
	}
	return values
}

func indexOf(words []string, word string) int {
	for i, w := range words {
		if w == word {
			return i
		}
	}
	return 0 // the sheet has refused other words
}

func workHour(c *sheet.Calc) {
	y := Usual()
	var s State
	var in In
	for _, f := range hourFields() {
		*f.at(&y, &s, &in) = c.Number(f.name)
	}
	y.Collector.Frost = Frost(indexOf(frostWords, c.Text("frost")))
	y.Backup.By = Source(indexOf(sourceWords, c.Text("backup")))
	if err := y.Prepare(); err != nil {
		c.Fail("%v", err)
		return
	}
	before := s
	var out Out
	y.Step(&s, &in, &out)
	showHour(c, &y, before, &in)
	gained := y.Held(&s, 0) - y.Held(&before, 0)
	c.Step("what came less what went", "solar + gas + element − delivered − loss − frost − gained",
		fmt.Sprintf("%.6g + %.6g + %.6g − %.6g − %.6g − %.6g − %.6g", float64(out.Solar), float64(out.Gas), float64(out.Electric), float64(out.Delivered), float64(out.Loss), float64(out.FrostHeat), float64(gained)),
		float64(out.Solar+out.Gas+out.Electric-out.Delivered-out.Loss-out.FrostHeat-gained), "Wh")
	c.Result("upper", float64(s.Upper), "degC")
	c.Result("lower", float64(s.Lower), "degC")
	hourResults(c, &out)
}

func hourResults(c *sheet.Calc, out *Out) {
	for _, r := range []struct {
		name string
		wh   quantity.WattHours
	}{{"solar", out.Solar}, {"gas", out.Gas}, {"electric", out.Electric}, {"delivered", out.Delivered}, {"loss", out.Loss},
		{"frost_heat", out.FrostHeat}, {"short", out.Short}, {"refused", out.Refused}, {"fuel_burned", out.Fuel},
		{"electricity_used", out.ElectricUsed}, {"pump_used", out.PumpUsed}} {
		c.Result(r.name, float64(r.wh), "Wh")
	}
	c.Result("hot", float64(out.Hot), "L")
	c.Result("stagnant", out.Stagnant, "h")
	c.Result("unpumped", out.Unpumped, "h")
	c.Result("frost_hours", out.Frost, "h")
	c.Result("under_50", out.Under50, "h")
	c.Result("under_60", out.Under60, "h")
}

// showHour writes down the working, by the functions the hour itself calls.
func showHour(c *sheet.Calc, y *System, s State, in *In) {
	p := &y.p
	lower := float64(s.Lower)
	if p.area > 0 {
		need := lost(p.a1, p.a2, lower-float64(in.Air)+p.difference)
		c.Step("light that the pump waits for", "a1·x + a2·x², x = lower − air + difference",
			fmt.Sprintf("x = %.5g − %.5g + %.5g K; %.5g W/m² are absorbed", lower, float64(in.Air), p.difference, in.Light), need, "W/m2")
	}
	if p.runs(lower, in) {
		sun, slope := p.sunlit(lower, p.served(in), in)
		c.Step("solar heat at 0 degC", "sun, with the square of a2 as its tangent", fmt.Sprintf("%.5g m² · %.5g W/m²", p.area, in.Light), sun, "W")
		c.Step("less for each degree of the lower layer", "slope = A·u/(1 + A·u·rise)", fmt.Sprintf("rise %.5g K/W", p.rise), slope, "W/K")
	}
	switch p.course(&s, in) {
	case resting:
		c.Step("share of the excess over the room that is left", "exp(−U/C)", fmt.Sprintf("exp(−%.5g/%.5g)", p.lossUpper+p.lossLower, p.whole), p.rest.end, "fraction")
		return
	case sunned:
		trial, out := s, Out{}
		if p.sunny(&trial, in, &out) {
			c.Step("the sun alone", "lower layer under sun − slope·T", fmt.Sprintf("from %.5g degC", lower), float64(trial.Lower), "degC")
			return
		}
	case busied:
	}
	showBusy(c, y, s, in)
}

// showBusy writes down an hour of draws, backup or mixing.
func showBusy(c *sheet.Calc, y *System, s State, in *In) {
	p := &y.p
	var w work
	y.limits(&w, &s, in)
	p.solve(&w)
	c.Step("heat wanted at the taps", "c·L·(tap − cold)", fmt.Sprintf("%.5g Wh/LK · %.5g L · (%.5g − %.5g) K", quantity.WaterHeat, float64(in.Litres), float64(in.Tap), float64(in.Cold)), w.want, "Wh")
	c.Step("water drawn through the store", "flow/c", fmt.Sprintf("%.5g W/K / %.5g", w.flow, quantity.WaterHeat), w.flow/quantity.WaterHeat, "L")
	c.Step("lower layer, mean", "C·dT/dt = sun − slope·T + flow·(cold − T) − U·(T − room)", fmt.Sprintf("from %.5g to %.5g degC", w.lower0, w.lower.end), w.lower.mean, "degC")
	c.Step("upper layer, mean", "C·dT/dt = flow·(lower − T) − U·(T − room) + backup", fmt.Sprintf("from %.5g to %.5g degC", w.upper0, w.upper.end), w.upper.mean, "degC")
	if p.intoUpper {
		c.Step("backup into the upper layer", "to end at the set temperature", fmt.Sprintf("set %.5g degC, at most %.5g Wh", p.set, w.most), w.heat, "Wh")
	}
	c.Step("heat carried out of the store", "flow·(upper mean − cold) + correction", fmt.Sprintf("%.5g·(%.5g − %.5g) + %.5g", w.flow, w.upper.mean, w.cold, w.sink), w.flow*(w.upper.mean-w.cold)+w.sink, "Wh")
	if w.lower.end > w.upper.end {
		c.Step("the hotter lower layer mixes into the upper", "(C1·T1 + C2·T2)/C", fmt.Sprintf("(%.5g·%.5g + %.5g·%.5g)/%.5g", p.lower, w.lower.end, p.upper, w.upper.end, p.whole),
			(p.lower*w.lower.end+p.upper*w.upper.end)*p.perWhole, "degC")
	}
}
