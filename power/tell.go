package power

import (
	"errors"
	"fmt"
	"strings"

	"suffice/quantity"
	"suffice/sheet"
)

// anHour is all that Step is called with.
type anHour struct {
	system System
	state  SystemState
	in     SystemIn
	wants  Wants
}

// hourNumber ties an input of the sheet power-hour to where its number lives.
type hourNumber struct {
	name, unit, usual, meaning string
	at                         func(*anHour) *float64
}

// hourNumbers lists the numbers of an hour: design, state as it begins, income and wants.
func hourNumbers() []hourNumber {
	return []hourNumber{
		{"panels", "W", "900W", "direct current of all arrays at the controller", func(h *anHour) *float64 { return (*float64)(&h.in.Panels) }},
		{"controller_current", "A", "100A", "into bus and battery at most; 0: no limit", func(h *anHour) *float64 { return &h.system.Controller.Current }},
		{"controller_efficiency", "fraction", "96%", "power out over power in", func(h *anHour) *float64 { return &h.system.Controller.Efficiency }},
		{"capacity", "Wh", "14.4kWh", "of the battery, rated", func(h *anHour) *float64 { return (*float64)(&h.system.Battery.Capacity) }},
		{"voltage", "V", "24V", "of the battery, nominal", func(h *anHour) *float64 { return &h.system.Battery.Voltage }},
		{"floor", "fraction", "50%", "reading of charge below which nothing is drawn", func(h *anHour) *float64 { return &h.system.Battery.Floor }},
		{"well_share", "fraction", "0.51", "of the available well", func(h *anHour) *float64 { return &h.system.Battery.WellShare }},
		{"well_rate", "/h", "0.47/h", "of the two wells", func(h *anHour) *float64 { return &h.system.Battery.WellRate }},
		{"rated_hours", "", "10", "in which the rated capacity comes out", func(h *anHour) *float64 { return &h.system.Battery.RatedHours }},
		{"battery_efficiency", "fraction", "75%", "energy out over energy in", func(h *anHour) *float64 { return &h.system.Battery.Efficiency }},
		{"self_discharge", "fraction", "4%", "of the charge, in 30 days", func(h *anHour) *float64 { return &h.system.Battery.SelfDischarge }},
		{"cold", "/K", "0.011/K", "share of the capacity that a kelvin of cold locks", func(h *anHour) *float64 { return &h.system.Battery.Cold }},
		{"warm", "degC", "25degC", "at and above it nothing is locked", func(h *anHour) *float64 { return (*float64)(&h.system.Battery.Warm) }},
		{"charge_above", "degC", "-20degC", "below it nothing is charged", func(h *anHour) *float64 { return (*float64)(&h.system.Battery.ChargeAbove) }},
		{"charge_rate", "/h", "0.2/h", "largest charging power over rated capacity", func(h *anHour) *float64 { return &h.system.Battery.ChargeRate }},
		{"discharge_rate", "/h", "1/h", "largest power out over rated capacity", func(h *anHour) *float64 { return &h.system.Battery.DischargeRate }},
		{"charge_voltage", "fraction", "1.15", "voltage while charging over nominal", func(h *anHour) *float64 { return &h.system.Battery.ChargeVoltage }},
		{"temperature", "degC", "18degC", "of the battery's cells", func(h *anHour) *float64 { return (*float64)(&h.in.Temperature) }},
		{"available", "Wh", "6kWh", "in the available well before the hour", func(h *anHour) *float64 { return (*float64)(&h.state.Battery.Available) }},
		{"bound", "Wh", "5.8kWh", "in the bound well before the hour", func(h *anHour) *float64 { return (*float64)(&h.state.Battery.Bound) }},
		{"continuous", "W", "3kW", "of the inverter, largest power without end", func(h *anHour) *float64 { return (*float64)(&h.system.Inverter.Continuous) }},
		{"idle", "W", "15W", "drawn by the inverter with no load", func(h *anHour) *float64 { return (*float64)(&h.system.Inverter.Idle) }},
		{"peak_efficiency", "fraction", "94%", "of the inverter at its best load", func(h *anHour) *float64 { return &h.system.Inverter.PeakEfficiency }},
		{"full_load_efficiency", "fraction", "90%", "of the inverter at its continuous power", func(h *anHour) *float64 { return &h.system.Inverter.FullLoadEfficiency }},
		{"should_above", "fraction", "0", "reading of charge from which what should run may draw on the battery", func(h *anHour) *float64 { return &h.system.ShouldAbove }},
		{"could_above", "fraction", "90%", "the same for what could run", func(h *anHour) *float64 { return &h.system.CouldAbove }},
		{"water_pump", "Wh", "60Wh", "wanted by the water pump", func(h *anHour) *float64 { return (*float64)(&h.in.Services[WaterPump]) }},
		{"treatment", "Wh", "25Wh", "wanted by the water treatment", func(h *anHour) *float64 { return (*float64)(&h.in.Services[Treatment]) }},
		{"hot_pump", "Wh", "0Wh", "wanted by the pump of the hot water", func(h *anHour) *float64 { return (*float64)(&h.in.Services[HotPump]) }},
		{"flush_pump", "Wh", "0Wh", "wanted by the pump of the flush well", func(h *anHour) *float64 { return (*float64)(&h.in.Services[FlushPump]) }},
		{"must", "Wh", "300Wh", "wanted by what must run", func(h *anHour) *float64 { return (*float64)(&h.wants.Now[Must]) }},
		{"should", "Wh", "200Wh", "wanted by what should run", func(h *anHour) *float64 { return (*float64)(&h.wants.Now[Should]) }},
		{"could", "Wh", "25Wh", "wanted by what could run", func(h *anHour) *float64 { return (*float64)(&h.wants.Now[Could]) }},
		{"element", "Wh", "0Wh", "that an electric element in the hot water could use", func(h *anHour) *float64 { return (*float64)(&h.in.HotWater) }},
		{"generator", "W", "0W", "power of the generator; 0: there is none", func(h *anHour) *float64 { return (*float64)(&h.system.Generator.Power) }},
		{"generator_fuel", "L/kWh", "0.45L/kWh", "at full load", func(h *anHour) *float64 { return &h.system.Generator.Fuel }},
		{"generator_no_load", "fraction", "25%", "of full-load fuel burned with no load", func(h *anHour) *float64 { return &h.system.Generator.NoLoad }},
		{"generator_charger", "fraction", "90%", "efficiency of its charger", func(h *anHour) *float64 { return &h.system.Generator.Charger }},
		{"start_below", "fraction", "55%", "reading of charge that starts the generator", func(h *anHour) *float64 { return &h.system.Generator.StartBelow }},
		{"stop_above", "fraction", "80%", "reading of charge that stops it", func(h *anHour) *float64 { return &h.system.Generator.StopAbove }},
		{"least_run", "h", "2h", "that it runs at least", func(h *anHour) *float64 { return &h.system.Generator.LeastRun }},
		{"run_hours", "h", "0h", "since it was started", func(h *anHour) *float64 { return &h.state.Generator.Hours }},
	}
}

// hourMark ties a yes or no to where it lives.
type hourMark struct {
	name, meaning string
	at            func(*anHour) *bool
}

func hourMarks() []hourMark {
	return []hourMark{
		{"sleeps", "the inverter draws nothing where nothing is wanted", func(h *anHour) *bool { return &h.system.Inverter.Sleeps }},
		{"running", "the generator runs as the hour begins", func(h *anHour) *bool { return &h.state.Generator.Running }},
		{"new_day", "the first hour of a day: what waits is a day older", func(h *anHour) *bool { return &h.in.NewDay }},
	}
}

// Tell gives the inputs with which the sheet power-hour works an hour again, to the last bit.
func (y *System) Tell(before SystemState, in SystemIn) map[string]sheet.Value {
	h := anHour{system: *y, state: before, in: in, wants: *in.Wants}
	values := make(map[string]sheet.Value)
	for _, f := range hourNumbers() {
		values[f.name] = sheet.Value{Kind: sheet.Number, Number: *f.at(&h)}
	}
	for _, f := range hourMarks() {
		values[f.name] = sheet.Value{Kind: sheet.Text, Text: yes(*f.at(&h))}
	}
	if y.Loads == nil || len(y.Loads.tasks) == 0 {
		return values
	}
	var needs, drops, putOff, mayRun, mustRun []string
	var days, most, now, held []float64
	for k, t := range y.Loads.tasks {
		needs, drops = append(needs, t.need.String()), append(drops, yes(t.drops))
		days, most, now = append(days, float64(t.days)), append(most, t.power), append(now, t.hours[in.Wants.hour])
		putOff, mayRun, mustRun = append(putOff, yes(in.Wants.putOff>>k&1 == 1)), append(mayRun, yes(in.Wants.mayRun>>k&1 == 1)), append(mustRun, yes(in.Wants.mustRun>>k&1 == 1))
		held = append(held, before.Tasks.Held[k][:]...)
	}
	for name, list := range map[string][]string{"task_need": needs, "task_drops": drops, "task_put_off": putOff, "task_may_run": mayRun, "task_must_run": mustRun} {
		values[name] = sheet.Value{Kind: sheet.Text, Text: strings.Join(list, ",")}
	}
	for name, list := range map[string][]float64{"task_days": days, "task_power": most, "task_now": now, "task_held": held} {
		values[name] = sheet.Value{Kind: sheet.List, List: list}
	}
	return values
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func powerHour() sheet.Sheet {
	s := sheet.Sheet{
		Name: "power-hour", Title: "Who gets the power of one hour",
		Sources: []string{"manwell-mcgowan-1993: the two wells over one hour", "schmidt-sauer-1996: loss of the inverter (the form remembered)",
			"skarstein-uhlen-1989: fuel of a small generator (remembered)"},
		Cautions: []string{electricCaution, batteryCaution},
		Do:       doPowerHour,
	}
	for _, f := range hourNumbers() {
		in := sheet.Input{Name: f.name, Unit: f.unit, Default: f.usual, Meaning: f.meaning}
		if f.unit != "degC" {
			in.Low = sheet.At(0)
		}
		s.Inputs = append(s.Inputs, in)
	}
	for _, f := range hourMarks() {
		s.Inputs = append(s.Inputs, sheet.Input{Name: f.name, Kind: sheet.Text, Default: "no", Choices: []string{"yes", "no"}, Meaning: f.meaning})
	}
	words := func(name, meaning string) sheet.Input {
		return sheet.Input{Name: name, Kind: sheet.Text, Maybe: true, Meaning: meaning}
	}
	list := func(name, unit, meaning string) sheet.Input {
		return sheet.Input{Name: name, Kind: sheet.List, Unit: unit, Low: sheet.At(0), Maybe: true, Meaning: meaning}
	}
	s.Inputs = append(s.Inputs,
		words("task_need", "for each task that may wait: must, should or could; left out: there is none"),
		list("task_days", "", "that each may wait"),
		words("task_drops", "for each yes or no: it is given up after waiting"),
		list("task_power", "W", "of each at most"),
		list("task_now", "Wh", "that each uses in this clock hour of its days"),
		words("task_put_off", "for each yes or no: it is put off in this hour"),
		words("task_may_run", "for each yes or no: what waits may be made up for from sun"),
		words("task_must_run", "for each yes or no: what waits must run on its last day"),
		list("task_held", "Wh", fmt.Sprintf("for each, what waits since 0 to %d days", MostWait)))
	return s
}

func doPowerHour(c *sheet.Calc) {
	h, err := readHour(c)
	if err == nil {
		err = h.system.Prepare()
	}
	if err != nil {
		c.Fail("%w", err)
		return
	}
	before := h.state
	var out SystemOut
	h.system.Step(&h.state, &h.in, &out)
	showPower(c, h, before, &out)
	powerResults(c, h, &out)
}

// readHour makes an hour of the sheet's inputs.
func readHour(c *sheet.Calc) (*anHour, error) {
	h := new(anHour)
	for _, f := range hourNumbers() {
		*f.at(h) = c.Number(f.name)
	}
	for _, f := range hourMarks() {
		*f.at(h) = c.Text(f.name) == "yes"
	}
	h.system.Battery.Start = 1
	h.system.Loads = new(Schedule)
	h.in.Wants = &h.wants
	if !c.Given("task_need") {
		return h, nil
	}
	return h, h.readTasks(c)
}

// readTasks makes tasks and what waits of the sheet's lists.
func (h *anHour) readTasks(c *sheet.Calc) error {
	needs := strings.Split(c.Text("task_need"), ",")
	n := len(needs)
	if n > MostWaiting {
		return fmt.Errorf("%d tasks can wait: the most is %d", n, MostWaiting)
	}
	var faults []error
	marks := func(name string) []string {
		list := strings.Split(c.Text(name), ",")
		if !c.Given(name) || len(list) != n {
			faults = append(faults, fmt.Errorf("%s: give yes or no for each of %d tasks", name, n))
			return make([]string, n)
		}
		return list
	}
	list := func(name string, each int) []float64 {
		if l := c.Numbers(name); c.Given(name) && len(l) == n*each {
			return l
		}
		faults = append(faults, fmt.Errorf("%s: give %d numbers for each of %d tasks", name, each, n))
		return make([]float64, n*each)
	}
	drops, putOff, mayRun, mustRun := marks("task_drops"), marks("task_put_off"), marks("task_may_run"), marks("task_must_run")
	days, most, now, held := list("task_days", 1), list("task_power", 1), list("task_now", 1), list("task_held", MostWait+1)
	for k := range n {
		t := task{days: int(days[k]), drops: drops[k] == "yes", power: most[k], hours: [24]float64{now[k]}}
		if t.days < 0 || t.days > MostWait {
			faults = append(faults, fmt.Errorf("task_days: a task waits at most %d days", MostWait))
			t.days = 0
		}
		if !t.need.named(needs[k]) {
			faults = append(faults, fmt.Errorf("task_need: %q is not known: it is must, should or could", needs[k]))
		}
		h.system.Loads.tasks = append(h.system.Loads.tasks, t)
		h.wants.putOff |= uint8(bit(putOff[k] == "yes")) << k
		h.wants.mayRun |= uint8(bit(mayRun[k] == "yes")) << k
		h.wants.mustRun |= uint8(bit(mustRun[k] == "yes")) << k
		copy(h.state.Tasks.Held[k][:], held[k*(MostWait+1):])
		h.state.Tasks.mark(k)
	}
	return errors.Join(faults...)
}

// named sets the need of that name and reports whether there is one.
func (n *Need) named(name string) bool {
	for k := range Needs {
		if k.String() == strings.TrimSpace(name) {
			*n = k
			return true
		}
	}
	return false
}

// showPower writes down the working, by the functions that Step itself calls.
func showPower(c *sheet.Calc, h *anHour, before SystemState, out *SystemOut) {
	y, in, b := &h.system, &h.in, &h.system.Battery
	bank := before.Battery
	wells, faded := b.fade(&bank)
	services := float64(in.Services[WaterPump] + in.Services[Treatment] + in.Services[HotPump] + in.Services[FlushPump])
	c.Step("self-discharge", "share an hour x charge above zero", say("%.3g x (%.6g - %.6g)", b.fades, float64(bank.Available+bank.Bound), b.zero), faded, "Wh")
	c.Step("sun on the bus", "min(panels, most) x efficiency, before anything is curtailed", say("min(%.6g, %.6g) x %.4g", in.Panels, y.most, y.Controller.Efficiency), min(float64(in.Panels), y.most)*y.Controller.Efficiency, "W")
	kept := y.keptOut(in, wells.sum)
	c.Step("not let in at this charge", "could and element below could_above, should below should_above", say("charge reads %.4g, should from %.4g, could from %.4g", (wells.sum-b.zero)*b.perWh, y.ShouldAbove, y.CouldAbove), kept, "Wh")
	asked := services + (float64(in.Wants.Now[Must]) + float64(out.Due)) + (float64(in.Wants.Now[Should]+(in.Wants.Now[Could]+in.HotWater)) - kept)
	c.Step("asked of the inverter", "services + must + due + should + could + element - not let in",
		say("%.6g + %.6g + %.6g + %.6g + %.6g + %.6g - %.6g", services, in.Wants.Now[Must], out.Due, in.Wants.Now[Should], in.Wants.Now[Could], in.HotWater, kept), asked, "Wh")
	c.Step("the battery can give", "wells, floor and rate, the least", say("%.6g Wh held, cells at %.4g degC", wells.sum, in.Temperature), b.deliverable(wells, in.Temperature), "Wh")
	c.Step("the battery can take in", "wells, rate and cold, the least", say("%.6g Wh held, cells at %.4g degC", wells.sum, in.Temperature), b.acceptable(wells, in.Temperature), "Wh")
	c.Step("drawn by the inverter", "idle + (1 + v) P + r P2 / continuous; what there is where that is less",
		say("%.4g + %.6g x %.6g + %.4g x %.6g^2", y.Inverter.Idle, y.Inverter.straight, out.Delivered, y.Inverter.square, out.Delivered), float64(out.Drawn), "Wh")
	c.Step("short of what must run", "wanted - had, tasks given up included", say("services %.6g, loads %.6g", out.ServiceShort, out.Short[Must]), float64(out.ServiceShort+out.Short[Must]), "Wh")
	c.Step("curtailed", "what neither loads nor battery took, at the panels", say("%.6g - %.6g", out.Income, out.Income-out.Curtailed), float64(out.Curtailed), "Wh")
	in1, out1 := out.Income+out.Generator+out.Discharged, out.Delivered+out.ControllerLoss+out.ChargerLoss+out.InverterLoss+out.Curtailed+out.Charged
	c.Step("what came less what went", "income + generator + discharged - delivered - losses - curtailed - charged", say("%.6g - %.6g", in1, out1), float64(in1-out1), "Wh")
}

// outNumber ties a result to where SystemOut keeps it.
type outNumber struct {
	name  string
	value quantity.WattHours
}

// outNumbers lists the watt-hours of an hour.
func outNumbers(out *SystemOut) []outNumber {
	list := []outNumber{
		{"income", out.Income}, {"curtailed", out.Curtailed}, {"controller_loss", out.ControllerLoss},
		{"generator", out.Generator}, {"charger_loss", out.ChargerLoss},
		{"charged", out.Charged}, {"discharged", out.Discharged}, {"battery_loss", out.BatteryLoss}, {"self_discharge", out.SelfDischarge},
		{"drawn", out.Drawn}, {"inverter_loss", out.InverterLoss}, {"delivered", out.Delivered}, {"service_short", out.ServiceShort},
	}
	for n := range Needs {
		list = append(list, outNumber{n.String() + "_met", out.Met[n]}, outNumber{n.String() + "_short", out.Short[n]}, outNumber{n.String() + "_given_up", out.GivenUp[n]})
	}
	return append(list, outNumber{"element", out.HotWater}, outNumber{"made_up", out.MadeUp}, outNumber{"due", out.Due}, outNumber{"over_limit", out.OverLimit})
}

func powerResults(c *sheet.Calc, h *anHour, out *SystemOut) {
	for _, r := range outNumbers(out) {
		c.Result(r.name, float64(r.value), "Wh")
	}
	c.Result("generator_fuel", float64(out.Fuel), "L")
	c.Result("service_share", out.ServiceShare, "fraction")
	c.Result("charge", out.Charge, "fraction")
	c.Result("available", float64(h.state.Battery.Available), "Wh")
	c.Result("bound", float64(h.state.Battery.Bound), "Wh")
	c.Result("waiting", float64(h.state.Tasks.Waiting()), "Wh")
	c.ResultText("running", yes(h.state.Generator.Running))
	c.Result("run_hours", h.state.Generator.Hours, "h")
	if n := len(h.system.Loads.tasks); n > 0 {
		var held []float64
		for k := range n {
			held = append(held, h.state.Tasks.Held[k][:]...)
		}
		c.ResultList("task_held", held, "Wh")
	}
}
