package power

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

// TestScheduleAddsUp: whatever is chosen, each hour's wants are what would have been wanted, less
// what gas does and what is put off; and a week is the loads' own days.
func TestScheduleAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loads := anyLoads(t)
		s, err := Prepare(loads)
		if err != nil {
			t.Fatal(err)
		}
		var week, want quantity.WattHours
		for weekday := range 7 {
			for hour := range 24 {
				plain := s.At(weekday, hour, true, Choice{})
				all := plain.Now[Must] + plain.Now[Should] + plain.Now[Could]
				week += all
				for _, c := range []Choice{{Swap: true}, {Wait: true}, {Swap: true, Wait: true}} {
					w := s.At(weekday, hour, true, c)
					balance(t, "chosen", w.Now[Must]+w.Now[Should]+w.Now[Could]+w.Swapped+w.PutOff, all)
					if w.Gas < w.Swapped-rounding {
						t.Fatalf("gas of %g Wh does the work of %g Wh", w.Gas, w.Swapped)
					}
				}
				if away := s.At(weekday, hour, false, Choice{}); away.Now[Must] > plain.Now[Must]+rounding {
					t.Fatalf("an empty house wants %g Wh, a full one %g Wh", away.Now[Must], plain.Now[Must])
				}
			}
		}
		for _, l := range loads {
			days := quantity.WattHours(7)
			if l.Days != [7]bool{} {
				days = 5
			}
			if l.Energy > 0 {
				want += days * l.Energy
				continue
			}
			for _, share := range l.Hours {
				want += days * l.Power.For(share)
			}
		}
		balance(t, "week", week, want)
	})
}

// live lets a system live a day with the same sun each hour from 8 to 16 and gives the sums.
func live(y *System, s *SystemState, weekday int, sun quantity.Watts, c Choice) (sum SystemOut) {
	for hour := range 24 {
		in := SystemIn{Temperature: 20, Wants: y.Loads.At(weekday, hour, true, c), NewDay: hour == 0}
		if hour >= 8 && hour < 16 {
			in.Panels = sun
		}
		var out SystemOut
		y.Step(s, &in, &out)
		sum.MadeUp += out.MadeUp
		sum.Due += out.Due
		sum.HotWater += out.HotWater
		sum.Generator += out.Generator
		for n := range Needs {
			sum.Met[n] += out.Met[n]
			sum.Short[n] += out.Short[n]
			sum.GivenUp[n] += out.GivenUp[n]
		}
	}
	return sum
}

// waiter is a supply whose one load may wait for two days.
func waiter(t *testing.T, drops bool) *System {
	y := terrace(t)
	schedule, err := Prepare([]Load{{Name: "laundry", Need: Should, Power: 900, Energy: 900, Hours: hours(9, 15), Waits: 2, Drops: drops}})
	if err != nil {
		t.Fatal(err)
	}
	y.Loads, y.Generator = schedule, Generator{}
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	return y
}

func near(t *testing.T, what string, got quantity.WattHours, want float64) {
	t.Helper()
	if math.Abs(float64(got)-want) > rounding*max(1, want) {
		t.Errorf("%s is %g Wh, want %g", what, got, want)
	}
}

// TestTaskWaitsForSun: put off on a dull day, made up for on the next bright one beside that day's own.
func TestTaskWaitsForSun(t *testing.T) {
	y := waiter(t, false)
	s := y.Start()
	dull := live(y, &s, 1, 100, Choice{Wait: true})
	near(t, "met on the dull day", dull.Met[Should]+dull.MadeUp+dull.Due, 0)
	near(t, "short on the dull day", dull.Short[Should], 0)
	near(t, "waiting", s.Tasks.Waiting(), 900)
	bright := live(y, &s, 2, 1500, Choice{})
	near(t, "met on the bright day", bright.Met[Should], 900)
	near(t, "made up", bright.MadeUp, 900)
	near(t, "waiting afterwards", s.Tasks.Waiting(), 0)
	if s.Tasks != (TaskState{}) {
		t.Errorf("something is left: %+v", s.Tasks)
	}
}

// TestTaskHasOneMachine: in no hour does a task draw more than its machine's power, with its own
// work, what is made up for from ample sun, and what is on its last day.
func TestTaskHasOneMachine(t *testing.T) {
	y := waiter(t, false)
	for name, held := range map[string][MostWait + 1]float64{"made up": {1: 5000}, "due": {2: 5000}, "both": {1: 5000, 2: 100}} {
		for _, c := range []Choice{{}, {Wait: true}} {
			s := y.Start()
			s.Tasks.Held[0] = held
			s.Tasks.mark(0)
			in := SystemIn{Panels: 2800, Temperature: 20, Wants: y.Loads.At(1, 10, true, c)}
			var out SystemOut
			y.Step(&s, &in, &out)
			own := float64(in.Wants.Now[Should])
			near(t, "own work", out.Met[Should], own)
			if drawn := float64(out.Met[Should] + out.MadeUp + out.Due); drawn > 900+rounding || name == "due" && drawn < 900-rounding || name == "made up" && !c.Wait && drawn < 900-rounding {
				t.Errorf("%s, %+v: its machine of 900 W drew %g Wh in an hour", name, c, drawn)
			}
		}
	}
}

// TestTaskMustRunOnItsLastDay: after two dull days it runs as a must, from the battery.
func TestTaskMustRunOnItsLastDay(t *testing.T) {
	y := waiter(t, false)
	s := y.Start()
	live(y, &s, 1, 0, Choice{Wait: true})
	second := live(y, &s, 2, 0, Choice{Wait: true})
	near(t, "due after one day", second.Due, 0)
	third := live(y, &s, 3, 0, Choice{Wait: true})
	near(t, "due after two days", third.Due, 900)
	near(t, "met as a must", third.Met[Must], 900)
	near(t, "waiting", s.Tasks.Waiting(), 1800)
}

// TestTaskIsGivenUp: the other kind is given up when its time has passed, and counted short once.
func TestTaskIsGivenUp(t *testing.T) {
	y := waiter(t, true)
	s := y.Start()
	for day := 1; day <= 3; day++ {
		out := live(y, &s, day, 0, Choice{Wait: true})
		near(t, "given up too early", out.GivenUp[Should], 0)
	}
	out := live(y, &s, 4, 0, Choice{Wait: true})
	near(t, "given up", out.GivenUp[Should], 900)
	near(t, "counted short", out.Short[Should], 900)
}

// TestLimitCutsByNeed: the inverter's limit takes from could first, then should, then must.
func TestLimitCutsByNeed(t *testing.T) {
	y := terrace(t)
	y.CouldAbove = 0
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	s := y.Start()
	in := SystemIn{Panels: 2000, Temperature: 20, Wants: &Wants{Now: [Needs]quantity.WattHours{1600, 900, 800}}, Services: [Services]quantity.WattHours{WaterPump: 500}}
	var out SystemOut
	y.Step(&s, &in, &out)
	if want := [Needs]quantity.WattHours{1600, 900, 0}; out.Met != want {
		t.Errorf("met %v, want %v", out.Met, want)
	}
	near(t, "over the limit", out.OverLimit, 800)
	near(t, "delivered", out.Delivered, 3000)
}

// TestCouldGetsWhatIsOver: below its charge, what could run gets what the battery cannot take, and no more.
func TestCouldGetsWhatIsOver(t *testing.T) {
	y := terrace(t)
	y.Generator = Generator{}
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	wants := &Wants{Now: [Needs]quantity.WattHours{Could: 700}}
	for _, c := range []struct {
		charge     float64
		sun        quantity.Watts
		could, hot float64
	}{
		{0.6, 500, 0, 0},     // the battery takes it all
		{0.6, 6000, 700, -1}, // the battery takes its largest current, the rest is over
		{0.95, 0, 700, 800},  // full enough to draw on
		{0.85, 0, 0, 0},      // not full enough
	} {
		s := SystemState{Battery: y.Battery.At(c.charge)}
		in := SystemIn{Panels: c.sun, Temperature: 20, Wants: wants, HotWater: 800}
		y.most = math.Inf(1) // the controller does not limit here
		var out SystemOut
		y.Step(&s, &in, &out)
		near(t, "could", out.Met[Could], c.could)
		if c.hot >= 0 {
			near(t, "element", out.HotWater, c.hot)
		} else if !(out.HotWater > 0) || out.Discharged != 0 {
			t.Errorf("element got %g Wh with %g Wh from the battery", out.HotWater, out.Discharged)
		}
	}
}

// TestGeneratorRuns: it starts on low charge, runs at least its time, fills what sun leaves, stops on enough.
func TestGeneratorRuns(t *testing.T) {
	y := terrace(t)
	s := SystemState{Battery: y.Battery.At(0.515)}
	in := SystemIn{Temperature: 25, Wants: new(Wants)}
	var out SystemOut
	ran, highest := 0, 0.0
	for range 48 {
		y.Step(&s, &in, &out)
		if s.Generator.Running {
			ran++
			highest = max(highest, out.Charge)
			if want := float64(y.Generator.Burned(out.Generator.Over(1))); float64(out.Fuel) != want {
				t.Fatalf("burned %g L, want %g", out.Fuel, want)
			}
		} else if out.Generator != 0 || out.Fuel != 0 {
			t.Fatalf("it stands still and gives %g Wh for %g L", out.Generator, out.Fuel)
		}
	}
	if ran < 2 || highest < y.Generator.StopAbove || s.Generator.Running {
		t.Errorf("it ran %d h up to a charge of %g, running %v", ran, highest, s.Generator.Running)
	}
	if full := y.Generator.Burned(y.Generator.Power); math.Abs(full-0.9) > 1e-12 {
		t.Errorf("an hour at full load burns %g L, want 2 kWh x 0.45 L/kWh", full)
	}
	if none := y.Generator.Burned(0); math.Abs(none-0.9*NoLoadFuel) > 1e-12 {
		t.Errorf("an hour with no load burns %g L", none)
	}
	empty := SystemState{Battery: y.Battery.At(0.53)} // above its start, but the hour's must is more than the floor leaves
	in.Wants = &Wants{Now: [Needs]quantity.WattHours{Must: 2500}}
	y.Step(&empty, &in, &out)
	if !empty.Generator.Running {
		t.Error("it did not start for what must run")
	}
}

// TestFaultsSpeak: sentences with place, value and remedy, all at once.
func TestFaultsSpeak(t *testing.T) {
	_, err := Prepare([]Load{
		{Name: "lamp"},
		{Name: "saw", Power: 100, Energy: 800, Hours: hours(9, 11)},
		{Name: "laundry", Energy: 500, Waits: 20},
	})
	for _, want := range []string{
		"load lamp: power is 0 W and energy 0 Wh a day: give one of them, above 0",
		"load saw: its 800 Wh a day cannot be used in its hours at 100 W: give it more hours or more power",
		"load laundry: it waits 20 days: the most is 14",
		"load laundry: it may wait, so its power while it runs is needed",
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want a fault saying %q", err, want)
		}
	}
	y := System{Controller: Controller{Efficiency: 1.2}, Inverter: Inverter{Continuous: 3000, Idle: 300, PeakEfficiency: 0.94, FullLoadEfficiency: 0.9}}
	err = y.Prepare()
	for _, want := range []string{"controller: efficiency is 1.2", "battery: capacity is 0 Wh", "inverter: idle power of 300 W"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want a fault saying %q", err, want)
		}
	}
	v := Inverter{Continuous: 1500, Starting: 2000}
	err = v.CheckLoads([]Load{{Name: "pump", Power: 800, Starting: 2400}, {Name: "kettle", Power: 1200, Energy: 600}})
	for _, want := range []string{"all loads at once take 2000 W, more than its continuous 1500 W", "with the largest start take 3600 W, more than its starting 2000 W"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want a fault saying %q", err, want)
		}
	}
}
