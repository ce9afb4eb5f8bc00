package power

import (
	"testing"

	"suffice/quantity"
)

// terrace is an invented house with one of everything.
func terrace(t testing.TB) *System {
	t.Helper()
	loads, err := Prepare([]Load{
		{Name: "refrigerator", Power: 45, Starting: 400, WhenAway: true},
		{Name: "lights", Power: 60, Hours: hours(18, 23)},
		{Name: "computers", Power: 180, Hours: hours(8, 17), Days: workdays},
		{Name: "saw", Need: Should, Power: 1500, Energy: 800, Hours: hours(9, 16), Days: workdays, Waits: 3},
		{Name: "kettle", Power: 1200, Energy: 900, Hours: hours(6, 8), Gas: 0.5},
		{Name: "laundry", Need: Could, Power: 900, Energy: 600, Hours: hours(10, 15), Waits: 2, Drops: true},
	})
	if err != nil {
		t.Fatal(err)
	}
	y := &System{
		Controller: Controller{Current: 60, Efficiency: 0.97},
		Battery:    Battery{Chemistry: LeadAcid(), Capacity: 600 * 24, Voltage: 24, Floor: 0.5, Start: 0.8},
		Inverter:   Inverter{Continuous: 3000, Starting: 6000, Idle: 15, PeakEfficiency: 0.94, FullLoadEfficiency: 0.90},
		Generator:  Generator{Power: 2000, Fuel: 0.45, NoLoad: NoLoadFuel, Charger: UsualCharger, StartBelow: 0.52, StopAbove: 0.7, LeastRun: 2},
		Loads:      loads,
		CouldAbove: UsualCouldAbove,
	}
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	return y
}

var workdays = [7]bool{false, true, true, true, true, true, false}

// hours marks the hours of the clock from one to another.
func hours(from, to int) (h [24]float64) {
	for i := from; i < to; i++ {
		h[i] = 1
	}
	return h
}

// day is a day's direct current from 2 kW of panels, W.
var day = [24]float64{6: 80, 300, 650, 1000, 1300, 1500, 1550, 1500, 1300, 1000, 650, 300, 80}

// BenchmarkStep lives the house through bright and dull days; Waits lets tasks wait on dull ones.
func BenchmarkStep(b *testing.B) {
	b.Run("plain", func(b *testing.B) { benchmark(b, false) })
	b.Run("waits", func(b *testing.B) { benchmark(b, true) })
}

func benchmark(b *testing.B, waits bool) {
	y := terrace(b)
	if !waits {
		y.Generator = Generator{}
		if err := y.Prepare(); err != nil {
			b.Fatal(err)
		}
	}
	var ins [24 * 6]SystemIn
	for i := range ins {
		bright := i/24%3 != 0
		ins[i] = SystemIn{Temperature: 18, Services: [Services]quantity.WattHours{WaterPump: 60, Treatment: 25}, NewDay: i%24 == 0}
		ins[i].Panels = quantity.Watts(day[i%24])
		if !bright {
			ins[i].Panels /= 4
		}
		ins[i].Wants = y.Loads.At(i/24, i%24, true, Choice{Wait: waits && !bright, Swap: !bright})
	}
	s := y.Start()
	b.ReportAllocs()
	var met float64
	var out SystemOut
	i := 0
	for b.Loop() {
		y.Step(&s, &ins[i], &out)
		met += float64(out.Delivered)
		if i++; i == len(ins) {
			i = 0
		}
	}
}
