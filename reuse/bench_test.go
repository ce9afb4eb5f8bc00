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

// year lets it live 365 days of a family at home: something runs in two hours of three. What an hour brings is written
// where the last hour's stood.
func (l *lived) year() {
	var used GreyIn
	var g GreyOut
	var p PlanterOut
	var w WellOut
	used.Salt = 0.05
	feed := PlanterIn{Crop: Crop{Coefficient: 1.05, Roots: 0.4, Depletion: 0.4}}
	fill := WellIn{Power: 1}
	close := PlanterDayIn{Nitrogen: 0.5, Depletion: 0.4, Tolerance: Tolerance{2.5, 9.9, 1.05}}
	for day := range 365 {
		for hour := range 24 {
			used.Used[Basin], used.Used[Shower], used.Used[Laundry], used.Used[Kitchen] = 0, 0, 0, 0
			feed.Evaporation, fill.Wanted = 0, 0
			if hour > 5 && hour < 23 {
				used.Used[Basin], fill.Wanted = 4, 5
			}
			if hour == 7 || hour == 13 || hour == 19 {
				used.Used[Shower], used.Used[Kitchen] = 40, 10
			}
			if hour == 10 && day%2 == 0 {
				used.Used[Laundry] = 60
			}
			if hour > 6 && hour < 19 {
				feed.Evaporation = 0.35
			}
			l.grey.Step(&l.s.grey, &used, &g)
			feed.Grey = g.Fed
			l.bed.Step(&l.s.bed, &feed, &p)
			fill.Drained = p.Drained
			fill.Topped.Litres = l.well.Asks(&l.s.well, fill.Wanted).TopUp
			l.well.Step(&l.s.well, &fill, &w)
		}
		close.Water = quantity.Celsius(14 + day%10)
		l.last = l.bed.Day(&l.s.bed, &close)
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
