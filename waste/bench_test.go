package waste

import (
	"testing"

	"suffice/quantity"
)

// houseYear lives a year by the hour; it gives the litres that surfaced.
func houseYear(k *SepticTank, tank *TankState, g *Trench, s *TrenchState) quantity.Litres {
	in := TankIn{Inflow: 25, Load: Load{Salt: 5, BOD: 13, Nitrogen: 4}}
	step := TrenchIn{Hours: 1, Rain: 0.1, Reference: 0.15}
	var flow TankOut
	var out TrenchOut
	var solids TankDayOut
	var surfaced quantity.Litres
	for day := range 365 {
		g.Day(s, &TrenchDayIn{Day: day + 1, Age: 8})
		for range 24 {
			k.Step(tank, &in, &flow)
			step.Inflow, step.Load = flow.Outflow, flow.Load
			g.Step(s, &step, &out)
			surfaced += out.Surfaced
		}
		k.Day(tank, &TankDayIn{People: 8}, &solids)
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
