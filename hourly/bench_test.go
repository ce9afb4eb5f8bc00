package hourly

import "testing"

// One year of water, power and hot water on one core, weather and light prepared. The first
// row is a yardstick for the machine of the hour: a million multiplications, each waiting
// for the one before (four clocks each on most machines, so 1.3 ms at 3 GHz); only ratios to it can be compared between runs.
func BenchmarkYear(b *testing.B) {
	b.Run("yardstick", func(b *testing.B) {
		for b.Loop() {
			if multiply(1, 1_000_000) <= 1 {
				b.Fatal("the yardstick was not worked")
			}
		}
	})
	for _, name := range []string{"crete", "denver"} {
		r := four(b, name)
		span := Span{Days: make([]Tally, len(r.Weather.Days))}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			start := r.Start()
			year := 0
			for b.Loop() {
				first := (year % (r.Hours() / 8760)) * 8760
				s := start
				span.First, span.Last = first, first+8760
				if err := r.Live(&s, &span); err != nil {
					b.Fatal(err)
				}
				year++
			}
		})
	}
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
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			span := Span{Days: make([]Tally, len(r.Weather.Days))}
			start := r.Start()
			year := 0
			for b.Loop() {
				first := (year % (r.Hours() / 8760)) * 8760
				s := start
				span.First, span.Last = first, first+8760
				if err := r.Live(&s, &span); err != nil {
					b.Fatal(err)
				}
				year++
			}
		})
	}
}
