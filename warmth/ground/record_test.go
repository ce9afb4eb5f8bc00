package ground

import (
	"math"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site"
	"suffice/site/air"
	"suffice/site/sun"
	"suffice/site/weather"
)

// A record's hour becomes the column's: wind comes down to 2 m, a day as bright as a clear one counts as clear, and
// what the record lacks is said.
func TestRecordDrivesTheColumn(t *testing.T) {
	h := &weather.Hours{Place: site.Place{Latitude: 40}, Days: []weather.Day{{DayOfYear: 172}}}
	if err := Needs(h); err == nil || strings.Count(err.Error(), "no ") != 3 {
		t.Errorf("an empty record: %v", err)
	}
	outside := sun.OutsideDay(40, 172).Ra
	for range 24 {
		h.Temperature, h.Humidity = append(h.Temperature, 20), append(h.Humidity, 60)
		h.Global = append(h.Global, 0.5*sun.ClearShare(0)*outside/24/3600e-6)
		h.Wind, h.Rain = append(h.Wind, 4), append(h.Rain, 1.5)
	}
	if err := Needs(h); err != nil {
		t.Error(err)
	}
	check.Balance(t, Clear(h, 0), 0.5, "half a clear day's light")
	in := Over(h, 3, 0.5)
	check.Balance(t, in.Wind, 4*4.87/math.Log(67.8*10-5.42), "wind at 2 m (fao56 eq. 47)")
	check.Balance(t, in.Vapour, 0.6*air.Saturation(20), "vapour")
	if in.Air != 20 || in.Rain != 1.5 || in.Sky <= 0 || float64(in.Sky) >= air.SkyLight(20, 1) {
		t.Errorf("%+v", in)
	}
	h.Wind, h.Rain = nil, nil
	if in := Over(h, 3, 0.5); in.Wind != worldWind || in.Rain != 0 {
		t.Errorf("without wind and rain %+v", in)
	}
	h.Place.Latitude, h.Days[0].DayOfYear = -80, 172
	if got := Clear(h, 0); got != 0.8 {
		t.Errorf("in polar night %g", got)
	}
}

// Under a face that swings as a cosine, the column's layers swing as the equation of conduction has it.
func TestColumnConductsAsTheCosine(t *testing.T) {
	c := column(t, Grass())
	s := c.Start(12)
	wet := c.soil(&s)
	u := Undisturbed{Mean: 12, Swing: 10, Coldest: 20, Diffusivity: wet.thawed / wet.holds * 86400}
	for i := range s.Temperature {
		s.Temperature[i] = float64(u.At(quantity.Metres(c.depth[i]), 0))
	}
	worst := 0.0
	for h := range 2 * 8760 {
		day := float64(h+1) / 24
		p := c.pull(&s, wet)
		next := p.after(p.flow(c.first(&s, wet), float64(u.At(0, day))))
		c.settle(&s, &next, wet)
		for _, depth := range []quantity.Metres{0.1, 0.5, 1, 2, 4} {
			worst = max(worst, math.Abs(float64(c.At(&s, depth)-u.At(depth, day))))
		}
	}
	t.Logf("at most %.3f K apart", worst)
	// At 4 m layers are 0.8 m thick and the swing is 1.7 K: their width errs by (0.8 m/δ)²/12 of it, and a straight line between
	// middles by (0.8 m/δ)²/8, with δ = 2.3 m 0.04 K in all; nearer the surface less.
	if worst > 0.04 {
		t.Errorf("column and cosine are %.3f K apart", worst)
	}
}

func BenchmarkColumnStep(b *testing.B) {
	c := column(b, Grass())
	s, h := c.Start(8), 0
	b.ReportAllocs()
	for b.Loop() {
		c.Step(&s, season(h, 0.05))
		h++
	}
}
