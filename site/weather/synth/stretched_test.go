package synth_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

const crete = "power_daily_crete_35.031N_24.834E_1984-2020_LST.csv.gz"

// halved gives a record whose light is missing in the years that are not wanted, as if
// its sky were half as long.
func halved(r *weather.Record, use func(int) bool) *weather.Record {
	out := *r
	out.Series = slices.Clone(r.Series)
	for k := range out.Series {
		if out.Series[k].Column == weather.Rain {
			continue
		}
		out.Series[k].Values = slices.Clone(out.Series[k].Values)
		for i := range out.Series[k].Values {
			if !use(int(weather.DayOf(r.Start + i).Year)) {
				out.Series[k].Values[i] = math.NaN()
			}
		}
	}
	return &out
}

// wholeYearsDrawn gives every year that lacks its sky the light of one that has it, as
// weather.Combine does.
func wholeYearsDrawn(r *weather.Record, use func(int) bool, seed int) []float64 {
	v := r.Of(weather.Global).Values
	out := slices.Clone(v)
	var have []int
	first, last := int(weather.DayOf(r.Start).Year), int(weather.DayOf(r.Start+r.Steps-1).Year)
	for y := first; y <= last; y++ {
		if use(y) {
			have = append(have, y)
		}
	}
	for i := range out {
		if d := weather.DayOf(r.Start + i); !use(int(d.Year)) {
			y := have[(int(d.Year)*7+seed*5)%len(have)]
			out[i] = v[weather.DayNumber(y, int(d.Month), min(int(d.Date), weather.MonthDays(y, int(d.Month))))-r.Start]
		}
	}
	return out
}

// panelYield is the kWh a day of a level 2 kW panel with a quarter lost, of light in kWh/m2.
const panelYield = 2 * 0.75

// A skyError is a made light beside the true one, in the years that were made.
type skyError struct {
	days, months, years apart
	dull, dullTrue      float64 // longest run of days below half the mean yield, days
	five, fiveTrue      float64 // kWh, the 1 % of five days in a row
	wetMade, wetTrue    float64 // kWh/m2, light of days with 1 mm or more
}

func compare(r *weather.Record, made []float64, use func(int) bool) (e skyError) {
	real, rain := r.Of(weather.Global).Values, r.Of(weather.Rain).Values
	mean, n := 0.0, 0.0
	for _, v := range real {
		mean, n = mean+v, n+1
	}
	mean /= n
	var month, year, monthTrue, yearTrue float64
	var wet float64
	var runMade, runTrue, longMade, longTrue int
	var fiveMade, fiveTrue []float64
	for i := range real {
		d := weather.DayOf(r.Start + i)
		if use(int(d.Year)) {
			continue
		}
		e.days.add(made[i], real[i])
		month, monthTrue, year, yearTrue = month+made[i], monthTrue+real[i], year+made[i], yearTrue+real[i]
		if int(d.Date) == weather.MonthDays(int(d.Year), int(d.Month)) {
			e.months.add(month, monthTrue)
			month, monthTrue = 0, 0
			if d.Month == 12 {
				e.years.add(year, yearTrue)
				year, yearTrue = 0, 0
			}
		}
		runMade, runTrue = run(runMade, made[i] < mean/2), run(runTrue, real[i] < mean/2)
		longMade, longTrue = max(longMade, runMade), max(longTrue, runTrue)
		if d.DayOfYear >= 5 {
			fiveMade = append(fiveMade, panelYield*sumOf(made[i-4:i+1]))
			fiveTrue = append(fiveTrue, panelYield*sumOf(real[i-4:i+1]))
		}
		if rain[i] >= weather.DryDay {
			e.wetMade, e.wetTrue, wet = e.wetMade+made[i], e.wetTrue+real[i], wet+1
		}
	}
	e.dull, e.dullTrue = float64(longMade), float64(longTrue)
	e.five, e.fiveTrue = quantile(fiveMade, 0.01), quantile(fiveTrue, 0.01)
	e.wetMade, e.wetTrue = e.wetMade/wet, e.wetTrue/wet
	return e
}

func run(length int, on bool) int {
	if on {
		return length + 1
	}
	return 0
}

func sumOf(v []float64) (s float64) {
	for _, x := range v {
		s += x
	}
	return s
}

func (e skyError) row(name string) string {
	return fmt.Sprintf("| %s | %+.1f %% | %.1f %% | %.1f %% | %.0f %% | %.0f d (true %.0f) | %.1f kWh (true %.1f) | %.2f (true %.2f) |\n", name,
		e.years.bias(), e.years.rms(), e.months.rms(), e.days.rms(), e.dull, e.dullTrue, e.five, e.fiveTrue, e.wetMade, e.wetTrue)
}

const stretchedHead = `# A short sky stretched over a long gauge, where both are known

Written by a test (go test ./site/weather/synth -run Stretched -update).

## Crete, 37 years

The light of every other year is hidden and made anew from the other years: by days that are alike, and, beside it, by drawing whole
years as is done without stretching. Rain and temperature stay known. The dull spell is the longest run of days on which a level 2 kW panel
gives under half of its mean; the five days are the worst hundredth of five days in a row; the last column is the light of days with
1 mm of rain or more, kWh/m2.

| sky of the hidden years | all years | single years, rms | single months, rms | single days, rms | longest dull spell | five dull days | wet days |
|---|---:|---:|---:|---:|---|---|---|
`

const stretchedMiddle = `
Days that are alike bring the dull days to the rain: wet days have the light of wet days, where whole drawn years have them far too bright, and
single months and years come out nearer. **The dullest five days still come out some percent too bright**, and the longest dull spell of a half
of the record says little: it is one event. A battery sized on a stretched sky wants that margin.

## Three typical years beside the gauges of their own months

Every second day of a typical year is hidden and made from the other days of that one year, with rain and temperatures of
the gauge on the true dates of its months (rms of hidden days; a day drawn from the season alone beside it). The light of typical years is mostly modelled.

| place | hidden days | their light in all | single days, rms | by season alone |
|---|---:|---:|---:|---:|
`

func TestStretched(t *testing.T) {
	var w strings.Builder
	w.WriteString(stretchedHead)
	r := open(t, crete, files.Options{})
	for _, half := range []struct {
		name string
		use  func(int) bool
	}{{"odd years hidden", even}, {"even years hidden", odd}} {
		sky := halved(r, half.use)
		made, told, err := synth.Stretch(sky, r, 1)
		if err != nil {
			t.Fatal(err)
		}
		if !told.Wet || !told.Warm || told.Own == 0 {
			t.Errorf("%+v", told)
		}
		w.WriteString(compare(r, made.Of(weather.Global).Values, half.use).row("days alike, " + half.name))
		w.WriteString(compare(r, wholeYearsDrawn(r, half.use, 1), half.use).row("whole years, " + half.name))
	}
	w.WriteString(stretchedMiddle)
	for _, p := range []struct{ name, tmy, dly string }{
		{"Denver", gauges + "725650TYA_denver-intl-ap.csv.gz", "USW00023062_denver-central-park.dly.gz"},
		{"Houston", "testdata/722430TYA_houston.csv.gz", "USW00012960_houston-intercontinental-ap.dly.gz"},
		{"Phoenix", gauges + "722780TYA_phoenix.csv.gz", "USW00023183_phoenix-ap.dly.gz"},
	} {
		typicalRow(t, &w, p.name, p.tmy, p.dly)
	}
	golden(t, "../../../docs/stretched-errors.md", w.String())
}

// typicalRow hides every second day of a typical year.
func typicalRow(t *testing.T, w *strings.Builder, name, tmy, dly string) {
	sky, err := files.Open(tmy, files.Options{})
	if err != nil {
		t.Fatal(err)
	}
	gauge := open(t, dly, files.Options{})
	beside := onNominal(gauge, sky)
	light := typicalLight(sky)
	hidden := *sky
	hidden.Typical, hidden.Series = false, slices.Clone(sky.Series)
	for k := range hidden.Series {
		hidden.Series[k].Values = slices.Clone(hidden.Series[k].Values)
		for i := range hidden.Series[k].Values {
			if i/24%2 == 1 {
				hidden.Series[k].Values[i] = math.NaN()
			}
		}
	}
	errs := [2]apart{}
	for i, g := range []*weather.Record{beside, dryAndMild(beside)} {
		made, _, err := synth.Stretch(&hidden, g, 1)
		if err != nil {
			t.Fatal(err)
		}
		days := typicalLight(made)
		for d := 1; d < 365; d += 2 {
			errs[i].add(days[d], light[d])
		}
	}
	fmt.Fprintf(w, "| %s | %.0f | %+.1f %% | %.0f %% | %.0f %% |\n", name, errs[0].n, errs[0].bias(), errs[0].rms(), errs[1].rms())
}

// onNominal lays a gauge's days on the typical year whose months it stood under.
func onNominal(gauge, sky *weather.Record) *weather.Record {
	out := *gauge
	out.Start, out.Steps = weather.DayNumber(weather.NominalYear, 1, 1), 365
	out.Series = nil
	for _, s := range gauge.Series {
		v := make([]float64, 365)
		for i := range v {
			d := weather.DayOf(out.Start + i)
			v[i] = s.Values[weather.DayNumber(int(sky.MonthFrom[d.Month-1]), int(d.Month), int(d.Date))-gauge.Start]
		}
		out.Series = append(out.Series, weather.Series{Column: s.Column, Source: s.Source, Unit: s.Unit, Values: v})
	}
	return &out
}

// dryAndMild takes from a gauge all that tells days apart.
func dryAndMild(r *weather.Record) *weather.Record {
	out := *r
	out.Series = []weather.Series{{Column: weather.Rain, Values: slices.Repeat([]float64{math.NaN()}, r.Steps)}}
	return &out
}
