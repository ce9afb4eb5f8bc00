package power

import (
	"slices"
	"testing"

	"suffice/site"
	"suffice/site/sun"
	"suffice/site/weather"
	"suffice/site/weather/files"
)

// TestDaysOfPanels lives 2 kW of panels through 37 recorded years of a sunny place at 35 deg
// north and holds the days against what people of the trade expect of such panels, before
// anything is curtailed and after the controller. The ranges are common practice, no source,
// and stood before the panels were first run; nothing was tuned to them.
func TestDaysOfPanels(t *testing.T) {
	record, err := files.Demo()
	if err != nil {
		t.Fatal(err)
	}
	w, _, err := weather.Complete(record, weather.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var dates []sun.Date
	for _, d := range w.Days {
		dates = append(dates, sun.Date{Year: d.Year, Month: d.Month, Date: d.Date})
	}
	track := sun.NewTrack(w.Place, dates)
	a := roof(40)
	var c Column
	a.Fill(&c, sun.NewFace(a.Plane, 0.2, sun.Perez, site.Horizon{}).Fill(nil, track, w.Diffuse, w.Beam), w.Temperature, w.Rain)

	const clear, mixed, wet = 0, 1, 2
	var kWh [3][]float64
	for d := range w.Days {
		clearness, rain, given := dayOf(w, track, c.Watts, d)
		switch given *= 0.97 / 1000; {
		case clearness > 0.6:
			kWh[clear] = append(kWh[clear], given)
		case clearness > 0.35 && clearness < 0.55:
			kWh[mixed] = append(kWh[mixed], given)
		case clearness < 0.3 && rain >= 10:
			kWh[wet] = append(kWh[wet], given)
		}
	}
	for i, expect := range []struct {
		days      string
		low, high float64
	}{{"clear (clearness above 0.6)", 9, 12}, {"mixed (0.35 to 0.55)", 4, 7}, {"wet (10 mm, clearness below 0.3)", 1, 3.5}} {
		slices.Sort(kWh[i])
		n := len(kWh[i])
		median, inside := kWh[i][n/2], 0
		for _, e := range kWh[i] {
			if e >= expect.low && e <= expect.high {
				inside++
			}
		}
		t.Logf("%s: %d days, median %.1f kWh, %d %% of days within %g to %g kWh, middle nine tenths %.1f to %.1f kWh",
			expect.days, n, median, inside*100/n, expect.low, expect.high, kWh[i][n/20], kWh[i][n-1-n/20])
		if median < expect.low || median > expect.high || inside*2 < n {
			t.Errorf("%s: median %.2f kWh and %d of %d days lie within %g to %g kWh", expect.days, median, inside, n, expect.low, expect.high)
		}
	}
}

// dayOf gives a day's clearness, rain (mm) and direct current (Wh).
func dayOf(w *weather.Hours, track *sun.Track, watts []float64, d int) (clearness, rain, given float64) {
	var global, top float64
	for h := 24 * d; h < 24*(d+1); h++ {
		given, global, rain = given+watts[h], global+w.Global[h], rain+w.Rain[h]
		top += track.Normal[h] * max(0, track.CosZenith[h]) * track.Share[h]
	}
	return global / top, rain, given
}
