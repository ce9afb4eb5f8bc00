package waste

import (
	"testing"

	"suffice/quantity"
)

// houseYear lives a year by the hour, with water from six to eleven, sun by day and rain in some hours of every
// fourth day; it gives the litres that surfaced.
func houseYear(k *SepticTank, tank *TankState, g *Trench, s *TrenchState) quantity.Litres {
	var in TankIn
	step := TrenchIn{Hours: 1}
	var flow TankOut
	var out TrenchOut
	var solids TankDayOut
	var surfaced quantity.Litres
	for day := range 365 {
		g.Day(s, &TrenchDayIn{Day: day + 1, Age: 8})
		for hour := range 24 {
			in.Inflow, in.Load.Salt, in.Load.BOD, in.Load.Nitrogen = 0, 0, 0, 0
			step.Rain, step.Reference = 0, 0
			if hour > 5 && hour < 23 {
				in.Inflow, in.Load.Salt, in.Load.BOD, in.Load.Nitrogen = 35, 7, 18, 5.6
			}
			if hour > 6 && hour < 19 {
				step.Reference = 0.3
			}
			if day%4 == 0 && hour < 6 {
				step.Rain = 1.5
			}
			k.Step(tank, &in, &flow)
			step.Inflow, step.Load.Salt, step.Load.BOD, step.Load.Nitrogen = flow.Outflow, flow.Load.Salt, flow.Load.BOD, flow.Load.Nitrogen
			g.Step(s, &step, &out)
			surfaced += out.Surfaced
		}
		k.Day(tank, &TankDayIn{People: 4}, &solids)
	}
	return surfaced
}

func works() (SepticTank, TankState, Trench, TrenchState) {
	k := UsualTank(3000)
	clay, _ := SoilNamed("clay-strong")
	return k, k.Start(), Trench{Length: 30, Width: 0.6, Gravel: 0.3, Pores: 0.35, Catch: 18, RunsOff: 0.3, Cover: 720, Soil: clay, Grass: 1, Grove: UsualGrove(3)}, TrenchState{}
}

func TestYearAllocatesNothing(t *testing.T) {
	k, tank, g, s := works()
	if n := testing.AllocsPerRun(2, func() { houseYear(&k, &tank, &g, &s) }); n != 0 {
		t.Errorf("%g allocations in a year, want none", n)
	}
}

func BenchmarkHouseYear(b *testing.B) {
	k, tank, g, s := works()
	b.ReportAllocs()
	for range b.N {
		houseYear(&k, &tank, &g, &s)
	}
}

// BenchmarkYardstick is a million multiplications, each waiting for the last: what a house-year is held against on any machine.
func BenchmarkYardstick(b *testing.B) {
	x := 1.0
	for range b.N {
		for range 1000000 {
			x *= 1.0000001
		}
		if x > 1e300 {
			x = 1
		}
	}
	if x == 0 {
		b.Fatal("lost")
	}
}
