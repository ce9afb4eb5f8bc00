package power

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

// anyBattery draws a bank of any sensible constants.
func anyBattery(t *rapid.T) Battery {
	b := Battery{Chemistry: rapid.SampledFrom([]Chemistry{LeadAcid(), Lithium()}).Draw(t, "chemistry")}
	b.WellShare = rapid.Float64Range(0.05, 0.95).Draw(t, "well share")
	b.WellRate = rapid.Float64Range(0.05, 5).Draw(t, "well rate")
	b.Efficiency = rapid.Float64Range(0.5, 1).Draw(t, "battery efficiency")
	b.SelfDischarge = rapid.Float64Range(0, 0.3).Draw(t, "self-discharge")
	b.Cold = rapid.Float64Range(0, 0.03).Draw(t, "cold")
	b.ChargeRate = rapid.Float64Range(0.05, 2).Draw(t, "charge rate")
	b.DischargeRate = rapid.Float64Range(0.05, 2).Draw(t, "discharge rate")
	b.Capacity = quantity.WattHours(rapid.Float64Range(200, 50000).Draw(t, "capacity"))
	b.Voltage = 24
	b.Floor = rapid.Float64Range(0, 0.9).Draw(t, "floor")
	b.Start = rapid.Float64Range(b.Floor, 1).Draw(t, "start")
	return b
}

// anyLoads draws up to five loads of every kind.
func anyLoads(t *rapid.T) []Load {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Load {
		l := Load{
			Name:     "load",
			Need:     Need(rapid.IntRange(0, 2).Draw(t, "need")),
			Power:    quantity.Watts(rapid.Float64Range(10, 2000).Draw(t, "power")),
			Hours:    hours(rapid.IntRange(0, 11).Draw(t, "from"), rapid.IntRange(12, 24).Draw(t, "to")),
			WhenAway: rapid.Bool().Draw(t, "when away"),
			Drops:    rapid.Bool().Draw(t, "drops"),
			Waits:    rapid.IntRange(0, 3).Draw(t, "waits"),
		}
		if rapid.Bool().Draw(t, "has energy") {
			l.Energy = l.Power.For(1) / 3
		}
		if rapid.Bool().Draw(t, "has gas") {
			l.Gas = rapid.Float64Range(0.2, 1).Draw(t, "gas")
		}
		if rapid.Bool().Draw(t, "workdays only") {
			l.Days = workdays
		}
		return l
	}), 0, 5).Draw(t, "loads")
}

// anySystem draws a supply of any sensible constants.
func anySystem(t *rapid.T) *System {
	schedule, err := Prepare(anyLoads(t))
	if err != nil {
		t.Fatal(err)
	}
	y := &System{
		Controller: Controller{Current: rapid.SampledFrom([]float64{0, 5, 60}).Draw(t, "current"), Efficiency: rapid.Float64Range(0.8, 1).Draw(t, "controller efficiency")},
		Battery:    anyBattery(t),
		Inverter: Inverter{Continuous: quantity.Watts(rapid.Float64Range(300, 5000).Draw(t, "continuous")), Idle: quantity.Watts(rapid.Float64Range(0, 3).Draw(t, "idle")),
			PeakEfficiency: rapid.Float64Range(0.85, 0.95).Draw(t, "peak"), FullLoadEfficiency: rapid.Float64Range(0.8, 0.85).Draw(t, "full load"), Sleeps: rapid.Bool().Draw(t, "sleeps")},
		Loads:       schedule,
		ShouldAbove: rapid.SampledFrom([]float64{0, 0.3, 0.8}).Draw(t, "should above"),
		CouldAbove:  rapid.SampledFrom([]float64{0, 0.5, 0.9}).Draw(t, "could above"),
	}
	if rapid.Bool().Draw(t, "has generator") {
		y.Generator = Generator{Power: quantity.Watts(rapid.Float64Range(200, 3000).Draw(t, "generator")), Fuel: 0.5, NoLoad: NoLoadFuel,
			Charger: rapid.Float64Range(0.7, 1).Draw(t, "charger"), StartBelow: rapid.Float64Range(0, 0.5).Draw(t, "start below"), StopAbove: rapid.Float64Range(0.51, 1).Draw(t, "stop above"), LeastRun: 2}
	}
	if err := y.Prepare(); err != nil {
		t.Skip(err) // an idle power that does not fit the efficiencies
	}
	return y
}

// anyHour draws what an hour brings.
func anyHour(t *rapid.T, y *System, hour int) SystemIn {
	c := Choice{Swap: rapid.Bool().Draw(t, "swap"), Wait: rapid.Bool().Draw(t, "wait")}
	return SystemIn{
		Panels:      quantity.Watts(rapid.SampledFrom([]float64{0, 0, 1}).Draw(t, "sun") * rapid.Float64Range(0, 6000).Draw(t, "panels")),
		Services:    [Services]quantity.WattHours{quantity.WattHours(rapid.SampledFrom([]float64{0, 0, 400}).Draw(t, "pump")), quantity.WattHours(rapid.SampledFrom([]float64{0, 25}).Draw(t, "lamp")), 0},
		HotWater:    quantity.WattHours(rapid.SampledFrom([]float64{0, 0, 1500}).Draw(t, "element")),
		Wants:       y.Loads.At(hour/24%7, hour%24, rapid.Bool().Draw(t, "home"), c),
		NewDay:      hour%24 == 0,
		Temperature: quantity.Celsius(rapid.Float64Range(-30, 45).Draw(t, "cells")),
	}
}

// TestEnergyIsConserved holds the sentences at SystemOut, hour by hour, with every want
// either met or short, and the work that waits accounted for.
func TestEnergyIsConserved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := anySystem(t)
		s := y.Start()
		for hour := range rapid.IntRange(1, 96).Draw(t, "hours") {
			in := anyHour(t, y, hour)
			before := s
			var out SystemOut
			y.Step(&s, &in, &out)
			holdEnergy(t, before, s, &out)
			holdWants(t, &in, before, s, &out)
			holdLimits(t, y, before, s, &out)
		}
	})
}

func holdEnergy(t *rapid.T, before, after SystemState, out *SystemOut) {
	balance(t, "bus and inverter",
		out.Income+out.Generator+out.Discharged,
		out.Delivered+out.ControllerLoss+out.ChargerLoss+out.InverterLoss+out.Curtailed+out.Charged)
	balance(t, "battery",
		before.Battery.Available+before.Battery.Bound+out.Charged,
		after.Battery.Available+after.Battery.Bound+out.Discharged+out.BatteryLoss+out.SelfDischarge)
	balance(t, "inverter", out.Drawn, out.Delivered+out.InverterLoss)
}

func holdWants(t *rapid.T, in *SystemIn, before, after SystemState, out *SystemOut) {
	services := in.Services[WaterPump] + in.Services[Treatment] + in.Services[HotPump] + in.Services[FlushPump]
	balance(t, "delivered", out.Delivered, services-out.ServiceShort+out.Met[Must]+out.Met[Should]+out.Met[Could]+out.HotWater+out.MadeUp)
	balance(t, "services", services*quantity.WattHours(out.ServiceShare), services-out.ServiceShort)
	due := [Needs]quantity.WattHours{Must: out.Due}
	for n := range Needs {
		balance(t, n.String(), out.Met[n]+out.Short[n], in.Wants.Now[n]+due[n]+out.GivenUp[n])
	}
	balance(t, "waiting", before.Tasks.Waiting()+in.Wants.PutOff,
		after.Tasks.Waiting()+out.MadeUp+out.Due+out.GivenUp[Must]+out.GivenUp[Should]+out.GivenUp[Could])
}

// rounding is what sums of some dozens of watt-hours may be off by.
const rounding = 1e-9

func holdLimits(t *rapid.T, y *System, before, after SystemState, out *SystemOut) {
	for name, v := range map[string]quantity.WattHours{
		"charged": out.Charged, "discharged": out.Discharged, "curtailed": out.Curtailed, "generator": out.Generator, "controller loss": out.ControllerLoss,
		"inverter loss": out.InverterLoss, "battery loss": out.BatteryLoss, "charger loss": out.ChargerLoss, "self-discharge": out.SelfDischarge,
		"must met": out.Met[Must], "must short": out.Short[Must], "should short": out.Short[Should], "could short": out.Short[Could],
		"element": out.HotWater, "made up": out.MadeUp, "available well": after.Battery.Available, "bound well": after.Battery.Bound,
	} {
		if v < -rounding {
			t.Fatalf("%s is %g Wh, below zero", name, v)
		}
	}
	if out.Charged > 0 && out.Discharged > 0 {
		t.Fatalf("charged %g and discharged %g Wh in one hour", out.Charged, out.Discharged)
	}
	if float64(out.Delivered) > float64(y.Inverter.Continuous)+rounding {
		t.Fatalf("the inverter carried %g W, its limit is %g W", out.Delivered, y.Inverter.Continuous)
	}
	if float64(out.Income-out.Curtailed) > y.most+rounding {
		t.Fatalf("the controller took %g W, its limit is %g W", out.Income-out.Curtailed, y.most)
	}
	b := &y.Battery
	if out.Charge < -1e-12 || out.Charge > 1+1e-12 || math.Abs(out.Charge-b.Charge(&after.Battery)) > 1e-12 {
		t.Fatalf("charge %g, wells %+v: outside what a battery holds", out.Charge, after.Battery)
	}
	if faded := b.Charge(&before.Battery) - float64(out.SelfDischarge)*b.perWh; out.Discharged > 0 && out.Charge < min(faded, b.Floor)-1e-12 {
		t.Fatalf("drawn from a charge of %g to %g, below the floor of %g", faded, out.Charge, b.Floor)
	}
}

func balance(t *rapid.T, what string, left, right quantity.WattHours) {
	t.Helper()
	if d := math.Abs(float64(left - right)); !(d <= rounding*max(1, math.Abs(float64(left)), math.Abs(float64(right)))) {
		t.Fatalf("%s: %.12g Wh on one side, %.12g Wh on the other (off by %.3g)", what, left, right, d)
	}
}

// TestMorePanelsNeverDarker: with must loads alone, no idle power, no generator and wells
// that level out within the hour, more panels never make an hour worse served.
//
// It is not true without those conditions. Slow wells: a richer house draws hard and stands
// above its floor with an empty available well, where a poorer one that was cut off at its floor
// has more at hand for one hour. Idle power: a supply a hair above it switches the inverter on and
// spends what a poorer house keeps. Charges that let should and could run: a richer house
// uses its battery for comfort that a poorer one cannot have, and meets a dark week with
// less. A generator: a poorer house starts it and so has more than a richer one.
func TestMorePanelsNeverDarker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		y := anySystem(t)
		y.Generator, y.ShouldAbove, y.CouldAbove = Generator{}, 0, 0
		y.Inverter.Idle, y.Battery.WellRate = 0, 1000
		if err := y.Prepare(); err != nil {
			t.Skip(err)
		}
		more := rapid.Float64Range(1, 3).Draw(t, "more")
		poor, rich := y.Start(), y.Start()
		for hour := range rapid.IntRange(1, 72).Draw(t, "hours") {
			in := anyHour(t, y, hour)
			in.HotWater = 0
			in.Wants = &Wants{Now: [Needs]quantity.WattHours{quantity.WattHours(rapid.Float64Range(0, 1500).Draw(t, "must"))}}
			var a, b SystemOut
			y.Step(&poor, &in, &a)
			in.Panels *= quantity.Watts(more)
			y.Step(&rich, &in, &b)
			if b.Met[Must] < a.Met[Must]-rounding || b.ServiceShort > a.ServiceShort+rounding || b.Charge < a.Charge-1e-12 {
				t.Fatalf("hour %d: %g times the panels met %g Wh (charge %g), the fewer %g Wh (charge %g)", hour, more, b.Met[Must], b.Charge, a.Met[Must], a.Charge)
			}
		}
	})
}

// TestInverterCurve: the three figures that a data sheet gives come out again, and Most undoes Draw.
func TestInverterCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Inverter{Continuous: 3000, Idle: quantity.Watts(rapid.Float64Range(0.1, 30).Draw(t, "idle")),
			PeakEfficiency: rapid.Float64Range(0.88, 0.97).Draw(t, "peak"), FullLoadEfficiency: rapid.Float64Range(0.8, 0.88).Draw(t, "full")}
		if err := v.Prepare(); err != nil {
			t.Skip(err)
		}
		if got := v.Efficiency(3000); math.Abs(got-v.FullLoadEfficiency) > 1e-12 {
			t.Fatalf("full load at %g, want %g", got, v.FullLoadEfficiency)
		}
		best := math.Sqrt(float64(v.Idle) / v.square)
		if got := v.Efficiency(quantity.Watts(best)); best > 3000*(1+1e-12) || math.Abs(got-v.PeakEfficiency) > 1e-12 {
			t.Fatalf("best at %g W with %g, want %g", best, got, v.PeakEfficiency)
		}
		load := rapid.Float64Range(0, 3000).Draw(t, "load")
		if got := v.Most(v.Draw(load)); math.Abs(got-load) > 1e-8 {
			t.Fatalf("the draw of %g W carries %g W", load, got)
		}
		if v.Efficiency(quantity.Watts(load)) > v.PeakEfficiency+1e-12 {
			t.Fatalf("at %g W better than its best", load)
		}
	})
}

// TestStepAllocatesNothing keeps the hour free of garbage.
func TestStepAllocatesNothing(t *testing.T) {
	y := terrace(t)
	s := y.Start()
	in := SystemIn{Temperature: 18, Wants: y.Loads.At(1, 10, true, Choice{Wait: true}), NewDay: true, Panels: 300}
	var out SystemOut
	if n := testing.AllocsPerRun(50, func() { y.Step(&s, &in, &out) }); n != 0 {
		t.Errorf("an hour made %v allocations, want none", n)
	}
}
