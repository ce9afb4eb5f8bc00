package synth_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

// skyFigures are figures of a record with light, rain and temperature.
type skyFigures struct {
	light, lightVary   float64 // kWh/m2 a year, and deviation of the years
	warm, warmVary     float64 // degC, and deviation of the years
	rain, rainVary     float64 // mm
	monthVary          float64 // kWh/m2 a day, deviation of a month's light from its month of the year
	five               float64 // kWh of a level 2 kW panel, the 1 % of five days in a row
	dull               float64 // days, longest run below half the mean light, mean of the years
	wetLight, dryLight float64 // kWh/m2 a day
}

func skyFiguresOf(r *weather.Record) (f skyFigures) {
	light, rain := r.Of(weather.Global).Values, r.Of(weather.Rain).Values
	low, high := r.Of(weather.TemperatureMin).Values, r.Of(weather.TemperatureMax).Values
	days := daysOf(r)
	mean := meanOf(light)
	var years [3][]float64
	var dulls, five []float64
	var n [2]float64
	run, longest := 0, 0
	for i, d := range days {
		if d.DayOfYear == 1 {
			for k := range years {
				years[k] = append(years[k], 0)
			}
			if i > 0 {
				dulls = append(dulls, float64(longest))
			}
			longest, run = 0, 0
		}
		y := len(years[0]) - 1
		years[0][y] += light[i]
		years[1][y] += (low[i] + high[i]) / 2 / float64(weather.DaysIn(int(d.Year)))
		years[2][y] += rain[i]
		if run++; light[i] >= mean/2 {
			run = 0
		}
		longest = max(longest, run)
		if i >= 4 {
			five = append(five, panelYield*sumOf(light[i-4:i+1]))
		}
		if rain[i] >= weather.DryDay {
			f.wetLight, n[1] = f.wetLight+light[i], n[1]+1
		} else {
			f.dryLight, n[0] = f.dryLight+light[i], n[0]+1
		}
	}
	f.dryLight, f.wetLight = f.dryLight/n[0], f.wetLight/n[1]
	f.light, f.lightVary = meanOf(years[0]), deviation(years[0])
	f.warm, f.warmVary = meanOf(years[1]), deviation(years[1])
	f.rain, f.rainVary = meanOf(years[2]), deviation(years[2])
	f.five, f.dull = quantile(five, 0.01), meanOf(dulls)
	for m, sums := range perMonth(days, light, func(v float64) float64 { return v }) {
		f.monthVary += math.Pow(deviation(sums)/meanDays(m), 2) / 12
	}
	f.monthVary = math.Sqrt(f.monthVary)
	return f
}

func meanDays(m int) float64 { return float64(weather.MonthDays(2001, m+1)) }

// normalsOf averages a record into the normals that somebody without it might have.
func normalsOf(r *weather.Record) *synth.Normals {
	days := daysOf(r)
	n := &synth.Normals{Place: r.Place}
	take := func(c weather.Column, total bool, of func(float64) float64) *[12]float64 {
		var out [12]float64
		for m, sums := range perMonth(days, r.Of(c).Values, of) {
			out[m] = meanOf(sums)
			if !total {
				out[m] /= map[bool]float64{true: 28.25, false: meanDays(m)}[m == 1]
			}
		}
		return &out
	}
	same := func(v float64) float64 { return v }
	n.Rain = take(weather.Rain, true, same)
	n.WetDays = take(weather.Rain, true, func(v float64) float64 {
		if v >= 1 {
			return 1
		}
		return 0
	})
	for m := range n.Rain { // what falls on days under 1 mm is of no day that counts
		if n.Rain[m] <= n.WetDays[m] {
			n.Rain[m] = 1.5 * n.WetDays[m]
		}
		if n.WetDays[m] == 0 {
			n.Rain[m] = 0
		}
	}
	n.Light = take(weather.Global, false, same)
	n.High, n.Low = take(weather.TemperatureMax, false, same), take(weather.TemperatureMin, false, same)
	n.Deviation = skyFiguresOf(r).rainVary
	return n
}

const madeSkyHead = `# A made sky beside the record it was made from

Written by a test (go test ./site/weather/synth -run MadeSky -update). Records with rain, light and temperature; 300 made years of each, fitted to the days of
the record, and made from its monthly normals alone (rain, wet days, deviation of yearly rain, light, highest and lowest temperatures).
"Five dull days" is what a level 2 kW panel gives in the worst hundredth of five days in a row; "dull run" the longest run of days under half the mean light,
mean of the years.

| record | years of light, kWh/m2 | months' light deviates by, kWh/m2/d | five dull days, kWh | dull run, days | light of wet and dry days, kWh/m2/d | years of rain, mm | years' temperature, degC |
|---|---|---:|---:|---:|---|---|---|
`

const madeSkyTail = `
Fitted to a record, means, months, dull days and rain come back; **years of light differ by two thirds to three quarters of what they do, years of temperature by a third to
a half**, since a made day remembers the days before it and nothing slower but the rain. From normals alone, wet days come out darker than they are and the five dull days
with them, by a seventh at Crete and a quarter at Angoche: panels sized on it are rather too large. A record with light, or a stretched one, is better than either.
`

func (f skyFigures) row(name string) string {
	return fmt.Sprintf("| %s | %.0f +- %.0f | %.2f | %.1f | %.1f | %.2f, %.2f | %.0f +- %.0f | %.1f +- %.2f |\n", name,
		f.light, f.lightVary, f.monthVary, f.five, f.dull, f.wetLight, f.dryLight, f.rain, f.rainVary, f.warm, f.warmVary)
}

func TestMadeSky(t *testing.T) {
	var w strings.Builder
	w.WriteString(madeSkyHead)
	for _, p := range []struct{ name, file string }{
		{"Crete, 37 years", crete},
		{"Angoche, 25 years", "power_daily_angoche-mozambique_16.216S_39.915E_1996-2020_converted.csv.gz"},
	} {
		var o files.Options
		if strings.HasPrefix(p.name, "Angoche") {
			for _, kv := range [][2]string{{"latitude", "-16.2163"}, {"longitude", "39.9145"}, {"altitude", "25"}, {"unit.ALLSKY_SFC_SW_DWN", "MJ/m2/day"}, {"unit.PRECTOTCORR", "mm/day"}} {
				if err := o.Set(kv[0], kv[1]); err != nil {
					t.Fatal(err)
				}
			}
		}
		r := open(t, p.file, o)
		w.WriteString(skyFiguresOf(r).row("**" + p.name + "**"))
		fit, err := synth.Fit(r, nil)
		if err != nil {
			t.Fatal(err)
		}
		w.WriteString(skyFiguresOf(fit.Years(300, 1)).row("fitted"))
		made, err := normalsOf(r).Generator()
		if err != nil {
			t.Fatal(err)
		}
		w.WriteString(skyFiguresOf(made.Years(300, 1)).row("from normals"))
	}
	w.WriteString(madeSkyTail)
	golden(t, "../../../docs/made-sky-errors.md", w.String())
}
