package stove

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

func anyStove(t *rapid.T) Stove {
	v := Stove{
		Burns: quantity.Kilograms(rapid.Float64Range(0.2, 8).Draw(t, "burns")), Wood: Wood{Dry: DryWood, Moisture: rapid.Float64Range(0, MostMoisture).Draw(t, "moisture")},
		Efficiency: rapid.Float64Range(0.05, 1).Draw(t, "efficiency"), Radiant: rapid.Float64Range(0, 1).Draw(t, "radiant"), RoomAir: rapid.Bool().Draw(t, "room air"),
		Rule: Rule{Below: quantity.Celsius(rapid.Float64Range(10, 20).Draw(t, "below"))},
	}
	v.Least = v.Burns * quantity.Kilograms(rapid.Float64Range(0, 1).Draw(t, "least"))
	v.Rule.Until = v.Rule.Below + quantity.Celsius(rapid.Float64Range(0, 5).Draw(t, "until"))
	for h := 6; h < 23; h++ {
		v.Rule.Hours[h] = true
	}
	return v
}

func anyHour(t *rapid.T) In {
	return In{Room: quantity.Celsius(rapid.Float64Range(-10, 30).Draw(t, "room")), Outside: quantity.Celsius(rapid.Float64Range(-30, 30).Draw(t, "outside")),
		Home: rapid.Bool().Draw(t, "home"), Hour: rapid.IntRange(0, 23).Draw(t, "hour"), Kelvin: quantity.Watts(rapid.Float64Range(10, 3000).Draw(t, "kelvin")), Carries: 1200}
}

// What wood held went to air, faces and flue; a fire burns between the least and the full; without a fire nothing happens.
func TestStoveLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, s := anyStove(t), State{Lit: rapid.Bool().Draw(t, "lit")}
		if err := v.Faults(); err != nil {
			t.Fatal(err)
		}
		in := anyHour(t)
		var out Out
		v.Step(&s, &in, &out)
		check.Balance(t, float64(out.Fuel), float64(out.Air+out.Faces+out.Flue), "heat of the wood, W")
		check.Balance(t, float64(out.Fuel), float64(out.Wood)*float64(v.Wood.Holds()), "and what the wood held, W")
		check.Balance(t, float64(out.Air+out.Faces), v.Efficiency*float64(out.Fuel), "and what stayed, W")
		if out.Air < 0 || out.Faces < 0 || out.Flue < -1e-9*out.Fuel || out.Wood > v.Burns || s.Lit && out.Wood < v.Least {
			t.Errorf("%+v", out)
		}
		if !s.Lit && out != (Out{}) {
			t.Errorf("without a fire %+v", out)
		}
		if s.Lit && (!in.Home || in.Hour < 6 || in.Hour > 22 || in.Room >= v.Rule.Until && in.Room >= v.Rule.Below) {
			t.Errorf("a fire that nobody keeps, or in a warm room: %+v", in)
		}
		if !v.RoomAir && out.Draught != 0 || v.RoomAir && float64(out.Draught)*float64(in.Room-in.Outside) < 0 {
			t.Errorf("the fire's air takes %g W", float64(out.Draught))
		}
	})
}

// A colder room never gets less wood, wetter wood never more heat a kilogram, and a poorer stove never less wood for the same room.
func TestColderBurnsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, in := anyStove(t), anyHour(t)
		colder, poorer, wetter := in, v, v
		colder.Room -= quantity.Celsius(rapid.Float64Range(0, 10).Draw(t, "colder"))
		poorer.Efficiency *= 0.7
		wetter.Wood.Moisture *= 0.9
		if v.Lays(&colder) < v.Lays(&in) || poorer.Lays(&in) < v.Lays(&in) {
			t.Errorf("laid on %g kg, colder %g, in a poorer stove %g", float64(v.Lays(&in)), float64(v.Lays(&colder)), float64(poorer.Lays(&in)))
		}
		if v.Wood.Holds() > wetter.Wood.Holds() || v.Wood.Draws() > wetter.Wood.Draws() {
			t.Errorf("wetter wood holds %g Wh and draws %g m3, drier %g and %g", float64(v.Wood.Holds()), v.Wood.Draws(), float64(wetter.Wood.Holds()), wetter.Wood.Draws())
		}
	})
}

// A fire brings a room to the wanted warmth and no farther, where neither the least nor the full fire stands in the way.
func TestFireBringsTheRoomThere(t *testing.T) {
	v := Stove{Burns: 5, Wood: Wood{DryWood, 0.2}, Efficiency: 0.7, Radiant: 0.5, Rule: Rule{Below: 18, Until: 20}}
	v.Rule.Hours[8] = true
	in, s := In{Room: 17, Home: true, Hour: 8, Kelvin: 500, Carries: 1200}, State{}
	var out Out
	v.Step(&s, &in, &out)
	check.Balance(t, float64(out.Air+out.Faces), 3*500, "heat for three kelvin, W")
	in.Room = 19
	if s = (State{Lit: true}); !v.Rule.Keeps(s.Lit, &in) || v.Rule.Keeps(false, &in) {
		t.Error("at 19 degC a fire that burns is kept, and none is lit")
	}
	if got := v.Wood.Draws(); math.Abs(got-10.5) > 0.1 { // 4.96 m3 for dry wood, 0.8 of it dry, 2.65 times as much
		t.Errorf("a kilogram draws %.2f m3 of air, want 10.5", got)
	}
}

func TestStoveRefusesWhatCannotBe(t *testing.T) {
	v := Stove{Burns: -1, Least: 2, Wood: Wood{Dry: 20, Moisture: 0.9}, Efficiency: 70, Radiant: -1, Rule: Rule{Below: 20, Until: 18}}
	err := v.Faults()
	if err == nil {
		t.Fatal("taken")
	}
	for _, part := range []string{"a full fire burns -1 kg", "the smallest fire burns 2 kg", "0.9 of its weight as water", "dry wood holds 20 kWh/kg", "efficiency of 70", "a radiant share of -1", "lit below 20 degC and let go out at 18 degC"} {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("%q is missing in:\n%v", part, err)
		}
	}
}

// The sheet, told any hour of any stove, gives all of it again to the last bit.
func TestStoveHourTellsTheHour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v, in, s := anyStove(t), anyHour(t), State{Lit: rapid.Bool().Draw(t, "lit")}
		before := s
		var out Out
		v.Step(&s, &in, &out)
		h := hourSheet()
		w, err := h.Work(v.Tell(before, &in))
		if err != nil {
			t.Fatal(err)
		}
		want := map[string]float64{"wood": float64(out.Wood), "fuel": float64(out.Fuel), "to_air": float64(out.Air), "to_faces": float64(out.Faces),
			"flue": float64(out.Flue), "air_drawn": out.Drawn, "draught": float64(out.Draught)}
		for _, r := range w.Results {
			if n, number := want[r.Name]; number && math.Float64bits(n) != math.Float64bits(r.Value.Number) || !number && r.Value.Text != yes(s.Lit) {
				t.Errorf("%s: the sheet gives %v %q, the hour %v, lit %v", r.Name, r.Value.Number, r.Value.Text, n, s.Lit)
			}
		}
		if len(w.Results) != len(want)+1 {
			t.Errorf("%d results, want %d", len(w.Results), len(want)+1)
		}
	})
}

func TestSheetsAnswerBare(t *testing.T) {
	for _, s := range Sheets() {
		given, err := s.Read(nil)
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.Work(given)
		if err != nil || len(w.Results) == 0 {
			t.Errorf("%s: %v, %d results", s.Name, err, len(w.Results))
		}
	}
}

func TestStepAllocatesNothing(t *testing.T) {
	v := Stove{Burns: 2, Least: 0.5, Wood: Wood{DryWood, 0.2}, Efficiency: 0.7, Rule: Rule{Below: 18, Until: 20, Hours: [24]bool{8: true}}}
	in, s, out := In{Room: 15, Home: true, Hour: 8, Kelvin: 500, Carries: 1200}, State{}, Out{}
	if n := testing.AllocsPerRun(100, func() { v.Step(&s, &in, &out) }); n != 0 {
		t.Errorf("an hour makes %v allocations, want none", n)
	}
}
