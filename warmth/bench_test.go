package warmth

import (
	"testing"

	"suffice/warmth/light"
)

// BenchmarkYear lives a year of the suite's heavy case; BenchmarkPrepare makes it ready.
func BenchmarkYear(b *testing.B) {
	r := prepared(b, with(func(c *suiteCase) { c.heavy = true }).design(), outdoors(b, light.Options{Albedo: .2}))
	var s State
	var in In
	var out Out
	b.ReportAllocs()
	b.ReportMetric(float64(r.modes), "modes")
	for b.Loop() {
		for h := range 8760 {
			in.Hour = h
			r.Step(&s, &in, &out)
		}
	}
}

func BenchmarkPrepare(b *testing.B) {
	d, sky := with(func(c *suiteCase) { c.heavy = true }).design(), outdoors(b, light.Options{Albedo: .2})
	for b.Loop() {
		if _, err := Prepare(d, sky); err != nil {
			b.Fatal(err)
		}
	}
}
