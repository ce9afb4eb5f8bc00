package light

import (
	"math"
	"testing"

	"suffice/glass"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/site/weather"
)

// many gives a record of so many years: Denver's typical one over and over, on a running calendar.
func many(t testing.TB, years int) *Outdoors {
	t.Helper()
	one := outdoors(t, denver, Options{Albedo: 0.2}).Hours
	h := &weather.Hours{Place: one.Place}
	first := weather.DayNumber(1988, 1, 1)
	var dates []sun.Date
	for d := first; d < weather.DayNumber(1988+years, 1, 1); d++ {
		day := weather.DayOf(d)
		h.Days = append(h.Days, day)
		dates = append(dates, sun.Date{Year: day.Year, Month: day.Month, Date: day.Date})
		from := 24 * (min(int(day.DayOfYear), 365) - 1)
		for _, c := range []struct {
			to   *[]float64
			from []float64
		}{{&h.Global, one.Global}, {&h.Diffuse, one.Diffuse}, {&h.Beam, one.Beam}, {&h.Temperature, one.Temperature}, {&h.Humidity, one.Humidity}, {&h.Wind, one.Wind}} {
			*c.to = append(*c.to, c.from[from:from+24]...)
		}
	}
	o, err := NewOutdoors(h, sun.NewTrack(h.Place, dates), Options{Albedo: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// BenchmarkYears works 37 years of the sky, then of eight faces and three windows with their landings. The first row is a
// yardstick: a million multiplications, each waiting for the one before; only ratios to it can be compared.
func BenchmarkYears(b *testing.B) {
	b.Run("yardstick", func(b *testing.B) {
		for b.Loop() {
			product := 1.0
			for range 1_000_000 {
				product *= 1.0000001
			}
			if product <= 1 {
				b.Fatal("the yardstick was not worked")
			}
		}
	})
	o, room := many(b, 37), suiteRoom(b)
	b.Run("sky", func(b *testing.B) {
		for b.Loop() {
			if _, err := NewSky(o.Hours, o.Track, BerdahlMartin); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("faces and windows", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			o.Forget()
			for k := range 8 {
				if _, err := o.Face(Face{Plane: sun.Plane{Slope: 90, Azimuth: quantity.Degrees(45 * k)}, Absorptance: 0.6, Outer: Outer{Convection: 12, Emissivity: 0.9}}); err != nil {
					b.Fatal(err)
				}
			}
			for _, s := range []glass.Shade{bare, hung, finned} {
				w := suiteWindow(180, twoPanes(), s)
				o.must(b, w)
				if _, err := o.Landing(room, w, Spot{Side: Front, Along: 0.5, Sill: 0.2}); err != nil {
					b.Fatal(err)
				}
			}
		}
	})
}

// The year's table takes each day's sun from the first year that has the day: what that does to the sun let through a
// window under boards, over four years with a leap year, against every hour's own sun.
func TestTableIsEveryYears(t *testing.T) {
	o := many(t, 4)
	for _, s := range []glass.Shade{hung, finned} {
		w := suiteWindow(225, twoPanes(), s)
		h, curve := o.must(t, w), w.Pane.Glazing.Curve()
		var own, worst float64
		for i, l := range o.Light(w.Plane) {
			if l.Beam+l.Round <= 0 {
				continue
			}
			r := glass.RayTo(quantity.Radians(o.Track.Altitude[i]).Degrees(), quantity.Radians(o.Track.Azimuth[i]).Degrees(), 225)
			lit := w.Shade.Sunlit(r)
			own += lit * curve.At(l.Incidence).Transmitted * float64(l.Beam+l.Round) / 1000
			if l.Incidence > 0.1 && o.Track.Share[i] == 1 { // where the sun grazes the wall or the skyline the table may have it behind
				worst = max(worst, math.Abs(lit-h.Sunlit[o.row(i)]))
			}
		}
		t.Logf("by the table %.3f kWh/m2, by each hour's sun %.3f; at most %.4f of the window apart in an hour, but where the sun grazes", sum(h.Beam), own, worst)
		if d := math.Abs(sum(h.Beam)/own - 1); d > 0.001 || worst > 0.05 {
			t.Errorf("beam let through is %.4f percent off, a sunlit share %.4f", 100*d, worst)
		}
	}
}
