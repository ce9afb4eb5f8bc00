package draw

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestRoundTicks(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		intervals int
		want      []float64
	}{
		{0, 100, 5, []float64{0, 20, 40, 60, 80, 100}},
		{0, 97, 5, []float64{0, 20, 40, 60, 80, 100}},
		{-3, 12, 4, []float64{-5, 0, 5, 10, 15}},
		{0, 0.31, 4, []float64{0, 0.1, 0.2, 0.3, 0.4}},
		{0, 0, 4, []float64{0, 0.5, 1}},
		{7, 7, 4, []float64{0, 2, 4, 6, 8}},
		{math.NaN(), 3, 4, []float64{0, 0.5, 1}},
		{1200, 100, 3, []float64{0, 500, 1000, 1500}},
	} {
		got := RoundTicks(c.low, c.high, c.intervals).Values()
		if !slices.EqualFunc(got, c.want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Errorf("%v to %v in %d: %v, want %v", c.low, c.high, c.intervals, got, c.want)
		}
	}
}

// TestTicksHoldTheValues asks that whatever is drawn lies between the ends, the steps are 1, 2 or 5 times a power
// of ten, and no finer step would do with so many.
func TestTicksHoldTheValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(-1e9, 1e9).Draw(t, "a"), rapid.Float64Range(-1e9, 1e9).Draw(t, "b")
		n := rapid.IntRange(2, 12).Draw(t, "intervals")
		low, high := min(a, b), max(a, b)
		k := RoundTicks(low, high, n)
		slack := 1e-9 * max(math.Abs(low), math.Abs(high), 1)
		if k.From > low+slack || k.To < high-slack {
			t.Fatalf("%v to %v lies outside %+v", low, high, k)
		}
		if steps := (k.To - k.From) / k.Step; steps > float64(n)+1e-6 {
			t.Fatalf("%v steps, allowed are %d", steps, n)
		}
		head := k.Step / math.Pow(10, math.Floor(math.Log10(k.Step*(1+1e-9))))
		if math.Abs(head-1) > 1e-6 && math.Abs(head-2) > 1e-6 && math.Abs(head-5) > 1e-6 {
			t.Fatalf("a step of %v", k.Step)
		}
	})
}

func TestNumber(t *testing.T) {
	for _, c := range []struct {
		v      float64
		digits int
		want   string
	}{{0, 0, "0"}, {-0.2, 0, "0"}, {1234567.891, 2, "1\u202f234\u202f567.89"}, {-1234, 0, "-1\u202f234"}, {999, 0, "999"}} {
		if got := number(c.v, c.digits); got != c.want {
			t.Errorf("%v: %q, want %q", c.v, got, c.want)
		}
	}
	for v, want := range map[float64]string{0: "0", 0.0123: "0.012", 1: "1.00", 9.996: "10.0", 99.96: "100", 12345: "12\u202f345"} {
		if got := figures(v); got != want {
			t.Errorf("%v: %q, want %q", v, got, want)
		}
	}
	for share, want := range map[float64]string{0: "0", 0.5: "50", 0.9993: "99.9", 0.99996: "99.996", 1: "100"} {
		if got := percent(share); got != want {
			t.Errorf("%v: %q, want %q", share, got, want)
		}
	}
}
