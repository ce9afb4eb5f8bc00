package reuse

import (
	"testing"

	"suffice/quantity"
)

// A lived is a chain with all that its year needs.
type lived struct {
	grey Grey
	bed  *Bed
	well Well
	s    chainState
	last PlanterDayOut
}

func newYear(t testing.TB) *lived {
	b, err := Prepare(UsualPlanter(5, 1.5))
	if err != nil {
		t.Fatal(err)
	}
	return &lived{grey: UsualGrey(), bed: b, well: UsualWell(), s: chainState{bed: b.Start()}}
}

// year lets it live 365 days.
func (l *lived) year() {
	var g GreyOut
	var p PlanterOut
	var w WellOut
	crop := Crop{Coefficient: 1.05, Roots: 0.4, Depletion: 0.4}
	for day := range 365 {
		for hour := range 24 {
			in := GreyIn{Salt: 0.05}
			if hour == 7 || hour == 19 {
				in.Used[Shower], in.Used[Basin] = 60, 12
			}
			if hour == 10 && day%2 == 0 {
				in.Used[Laundry] = 60
			}
			l.grey.Step(&l.s.grey, &in, &g)
			feed := PlanterIn{Grey: g.Fed, Crop: crop}
			if hour > 6 && hour < 19 {
				feed.Evaporation = 0.35
			}
			l.bed.Step(&l.s.bed, &feed, &p)
			var flush quantity.Litres
			if hour > 5 && hour < 23 && hour%2 == 0 {
				flush = 10
			}
			ask := l.well.Asks(&l.s.well, flush)
			l.well.Step(&l.s.well, &WellIn{Drained: p.Drained, Topped: Water{Litres: ask.TopUp}, Wanted: flush, Power: 1}, &w)
		}
		l.last = l.bed.Day(&l.s.bed, &PlanterDayIn{Water: quantity.Celsius(14 + day%10), Nitrogen: 0.5, Depletion: 0.4, Tolerance: Tolerance{2.5, 9.9, 1.05}})
	}
}

func BenchmarkChainYear(b *testing.B) {
	l := newYear(b)
	b.ReportAllocs()
	for range b.N {
		l.year()
	}
	b.ReportMetric(l.last.Salinity, "dS/m")
}

// A million dependent multiplications, the yardstick that tells machines apart.
func BenchmarkYardstick(b *testing.B) {
	x := 1.0
	for range b.N {
		for range 1_000_000 {
			x *= 1.0000001
		}
	}
	if x == 0 {
		b.Fatal("the product of numbers above 1 is nothing")
	}
}
