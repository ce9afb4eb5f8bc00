package power

import (
	"math"
	"math/rand/v2"
	"testing"

	"suffice/quantity"
	"suffice/sheet"
)

// outcome works a sheet and gives its numbers and words by name.
func outcome(t *testing.T, s sheet.Sheet, told map[string]sheet.Value) map[string]sheet.Value {
	t.Helper()
	w, err := s.Work(told)
	if err != nil {
		t.Fatalf("%s: %v", s.Name, err)
	}
	got := make(map[string]sheet.Value)
	for _, r := range w.Results {
		got[r.Name] = r.Value
	}
	return got
}

// toTheBit holds a result to the last bit.
func toTheBit(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Float64bits(got) != math.Float64bits(want) {
		t.Errorf("%s: the sheet gives %v, the hour %v", what, got, want)
	}
}

// anyStart is a house with one thing changed, and what its hours are like.
var anyStart = map[string]func(*System){
	"as it stands":        func(*System) {},
	"without a generator": func(y *System) { y.Generator = Generator{} },
	"lithium":             func(y *System) { y.Battery.Chemistry = Lithium() },
	"small inverter":      func(y *System) { y.Inverter.Continuous, y.Inverter.Sleeps = 300, true; y.Inverter.Idle = 2 },
	"little battery":      func(y *System) { y.Battery.Capacity, y.Generator = 2400, Generator{} },
}

// The sheets loads-hour and power-hour, told any hour, give all of it again to the last bit.
func TestPowerHourTellsTheHour(t *testing.T) {
	loads := terraceLoads()
	for name, change := range anyStart {
		t.Run(name, func(t *testing.T) {
			y := terrace(t)
			y.Loads = schedule(t, loads)
			change(y)
			if err := y.Prepare(); err != nil {
				t.Fatal(err)
			}
			r := rand.New(rand.NewPCG(1, 2))
			s := y.Start()
			for hour := range 600 {
				bright := r.Float64()
				choice := Choice{Swap: r.IntN(3) == 0, Wait: bright < 0.3}
				weekday, home := hour/24%7, r.IntN(8) > 0
				in := SystemIn{Panels: quantity.Watts(2 * day[hour%24] * bright), Services: [Services]quantity.WattHours{WaterPump: quantity.WattHours(300 * r.Float64()), Treatment: 25},
					HotWater: quantity.WattHours(500 * r.Float64()), Wants: y.Loads.At(weekday, hour%24, home, choice), NewDay: hour%24 == 0, Temperature: quantity.Celsius(45*r.Float64() - 25)}
				before := s
				var out SystemOut
				y.Step(&s, &in, &out)
				retell(t, y, before, in, out, s)
				wants := outcome(t, loadsHour(), TellLoads(loads, weekday, hour%24, home, choice))
				for n := range Needs {
					toTheBit(t, n.String(), wants[n.String()].Number, float64(in.Wants.Now[n]))
				}
				toTheBit(t, "gas", wants["gas"].Number, float64(in.Wants.Gas))
				toTheBit(t, "put off", wants["put_off"].Number, float64(in.Wants.PutOff))
			}
		})
	}
}

func retell(t *testing.T, y *System, before SystemState, in SystemIn, out SystemOut, after SystemState) {
	t.Helper()
	got := outcome(t, powerHour(), y.Tell(before, in))
	for _, r := range outNumbers(&out) {
		toTheBit(t, r.name, got[r.name].Number, float64(r.value))
	}
	toTheBit(t, "fuel", got["generator_fuel"].Number, float64(out.Fuel))
	toTheBit(t, "service share", got["service_share"].Number, out.ServiceShare)
	toTheBit(t, "charge", got["charge"].Number, out.Charge)
	toTheBit(t, "available", got["available"].Number, float64(after.Battery.Available))
	toTheBit(t, "bound", got["bound"].Number, float64(after.Battery.Bound))
	toTheBit(t, "run hours", got["run_hours"].Number, after.Generator.Hours)
	if got["running"].Text != yes(after.Generator.Running) {
		t.Errorf("running: the sheet says %s", got["running"].Text)
	}
	bank := outcome(t, batteryHour(), y.Battery.Tell(before.Battery, BatteryIn{out.Charged, out.Discharged, in.Temperature}))
	toTheBit(t, "battery: available", bank["available"].Number, float64(after.Battery.Available))
	toTheBit(t, "battery: bound", bank["bound"].Number, float64(after.Battery.Bound))
	carries := outcome(t, inverterHour(), y.Inverter.Tell(&out))
	toTheBit(t, "inverter: load", carries["load"].Number, float64(out.Delivered))
	toTheBit(t, "inverter: drawn", carries["drawn"].Number, float64(out.Drawn))
	for i, v := range got["task_held"].List {
		toTheBit(t, "held by a task", v, after.Tasks.Held[i/(MostWait+1)][i%(MostWait+1)])
	}
}

func TestTellingRefuses(t *testing.T) {
	for _, c := range []struct {
		sheet string
		args  map[string]string
	}{
		{"power-hour", map[string]string{"task_need": "must"}},
		{"power-hour", map[string]string{"idle": "2kW"}},
		{"loads-hour", map[string]string{"energy": "1Wh"}},
		{"loads-hour", map[string]string{"need": "must,must,always"}},
	} {
		s := named(t, c.sheet)
		given, err := s.Read(c.args)
		if err != nil {
			t.Fatal(err)
		}
		if _, err = s.Work(given); err == nil {
			t.Errorf("%s took %v", c.sheet, c.args)
		}
	}
}

func schedule(t *testing.T, loads []Load) *Schedule {
	t.Helper()
	s, err := Prepare(loads)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func terraceLoads() []Load {
	return []Load{
		{Name: "refrigerator", Power: 45, Starting: 400, WhenAway: true},
		{Name: "lights", Power: 60, Hours: hours(18, 23)},
		{Name: "computers", Power: 180, Hours: hours(8, 17), Days: workdays},
		{Name: "saw", Need: Should, Power: 1500, Energy: 800, Hours: hours(9, 16), Days: workdays, Waits: 3},
		{Name: "kettle", Power: 1200, Energy: 900, Hours: hours(6, 8), Gas: 0.5},
		{Name: "laundry", Need: Could, Power: 900, Energy: 600, Hours: hours(10, 15), Waits: 2, Drops: true},
	}
}
