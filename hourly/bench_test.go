package hourly

import (
	"errors"
	"math"
	"testing"
	"time"

	"suffice/hotwater"
	"suffice/people"
	"suffice/power"
)

// One year on one core, weather and light prepared: first of water, power and hot water alone, then of the same house whole,
// with its people's rules, gas and generator. The first row is a yardstick for the machine of the hour: a million
// multiplications, each waiting for the one before (three clocks each on some machines and four on others, so 1.0 or 1.3 ms
// at 3 GHz); only ratios to it can be compared between runs.
func BenchmarkYear(b *testing.B) {
	b.Run("yardstick", func(b *testing.B) {
		for b.Loop() {
			if multiply(1, 1_000_000) <= 1 {
				b.Fatal("the yardstick was not worked")
			}
		}
	})
	for _, name := range []string{"crete", "denver"} {
		whole := four(b, name)
		b.Run(name+" alone", func(b *testing.B) { years(b, alone(b, whole)) })
		b.Run(name, func(b *testing.B) { years(b, whole) })
	}
}

// years lives the years of a record one after the other, round and round, and tells the fastest beside the mean: where another
// machine shares the processor's core, a chain of multiplications does not feel it, and code that keeps all of the core busy does.
func years(b *testing.B, r *Run) {
	b.ReportAllocs()
	span := Span{Days: make([]Tally, len(r.Weather.Days))}
	start := r.Start()
	least := math.Inf(1)
	year := 0
	for b.Loop() {
		first := (year % (r.Hours() / 8760)) * 8760
		s := start
		span.First, span.Last = first, first+8760
		begin := time.Now()
		if err := r.Live(&s, &span); err != nil {
			b.Fatal(err)
		}
		least = min(least, float64(time.Since(begin)))
		year++
	}
	b.ReportMetric(least, "ns-least")
}

// alone gives a house that has water, power and solar hot water, and no rules, gas and generator.
func alone(t testing.TB, whole *Run) *Run {
	t.Helper()
	h, heat, supply := *whole.House, *whole.House.HotWater, *whole.House.Power
	system := *heat.System
	h.Rules, h.Gas, h.HotWater, h.Power = people.Rules{}, nil, &heat, &supply
	heat.System, system.Backup, supply.System.Generator = &system, hotwater.Backup{}, power.Generator{}
	if err := errors.Join(system.Prepare(), supply.System.Prepare()); err != nil {
		t.Fatal(err)
	}
	r, err := Prepare(&h, whole.Weather)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// multiply keeps its product in a register: one in memory would wait for the store as well,
// three times as long.
func multiply(product float64, times int) float64 {
	for range times {
		product *= 1.0000001
	}
	return product
}

// TestYearAllocatesNothing: the loop that sizing runs thousands of times.
func TestYearAllocatesNothing(t *testing.T) {
	r := four(t, "crete")
	span := Span{Last: 8760, Days: make([]Tally, len(r.Weather.Days))}
	start := r.Start()
	if n := testing.AllocsPerRun(5, func() {
		s := start
		if err := r.Live(&s, &span); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("a year made %v allocations, want none", n)
	}
}

// BenchmarkChain is a year with drains, planter, well, tank, trench and two beds, beside the same year without them: the
// difference is the chain's own cost.
func BenchmarkChain(b *testing.B) {
	plain := four(b, "crete")
	for name, r := range map[string]*Run{"without": plain, "with": chained(b, plain, nil)} {
		b.Run(name, func(b *testing.B) { years(b, r) })
	}
}
