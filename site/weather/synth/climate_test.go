package synth_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

// monthOfYear sums a daily record's column over all years by month, and counts its wet days.
func monthOfYear(r *weather.Record) (sum, wet [12]float64) {
	for i, v := range r.Of(weather.Rain).Values {
		m := weather.DayOf(r.Start+i).Month - 1
		sum[m] += v
		if v >= weather.DryDay {
			wet[m]++
		}
	}
	return sum, wet
}

// A changed record has the stated rain in every month of the year, the stated temperatures, no
// wet day where there was none, and the light it had.
func TestClimateIsTheStatedOne(t *testing.T) {
	r := open(t, crete, files.Options{})
	before, wetBefore := monthOfYear(r)
	rapid.Check(t, func(t *rapid.T) {
		var c synth.Climate
		for m := range 12 {
			c.Warmer[m] = quantity.Kelvins(rapid.Float64Range(-2, 6).Draw(t, "warmer"))
			c.Rain[m] = rapid.Float64Range(-0.6, 0.4).Draw(t, "rain")
			c.WetDays[m] = rapid.Float64Range(-0.5, 0).Draw(t, "wet days")
		}
		out, err := synth.Change(r, c, rapid.Uint64().Draw(t, "seed"))
		if err != nil {
			t.Fatal(err)
		}
		sum, _ := monthOfYear(out)
		for m := range 12 {
			if want := before[m] * (1 + c.Rain[m]); math.Abs(sum[m]-want) > 1e-9*before[m] {
				t.Errorf("month %d: %.3f mm over all years, want %.3f", m+1, sum[m], want)
			}
		}
		dried := [12]float64{}
		for i, v := range out.Of(weather.Rain).Values {
			was, m := r.Of(weather.Rain).Values[i], weather.DayOf(r.Start+i).Month-1
			if was == 0 && v != 0 {
				t.Fatalf("day %d was dry and has %g mm", i, v)
			}
			if was > 0 && v == 0 {
				dried[m]++
			}
			if T, w := out.Of(weather.TemperatureMax).Values[i], r.Of(weather.TemperatureMax).Values[i]+float64(c.Warmer[m]); T != w {
				t.Fatalf("day %d: %g degC, want %g", i, T, w)
			}
			if out.Of(weather.Global).Values[i] != r.Of(weather.Global).Values[i] {
				t.Fatalf("day %d: the light changed", i)
			}
		}
		for m := range 12 {
			if want := math.Round(-c.WetDays[m] * wetBefore[m]); dried[m] != want {
				t.Errorf("month %d: %g of %g wet days turned dry, want %g", m+1, dried[m], wetBefore[m], want)
			}
		}
	})
}

func TestNoChangeChangesNothing(t *testing.T) {
	r := open(t, crete, files.Options{})
	out, err := synth.Change(r, synth.Climate{}, 1)
	if err != nil || hash(out) != hash(r) {
		t.Errorf("a climate without a difference changed the record (%v)", err)
	}
}

func TestClimateRefused(t *testing.T) {
	r := open(t, crete, files.Options{})
	for says, c := range map[string]synth.Climate{
		"taken away but not invented": synth.Even(0, 0, 0.1),
		"between -10 and 10 K":        synth.Even(40, 0, 0),
		"no wet day is left":          synth.Even(0, -0.5, -1),
	} {
		if _, err := synth.Change(r, c, 1); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("got %v, want an error that says %q", err, says)
		}
	}
}

// Every year laid anew is a year of the record, and years within a run follow each other.
func TestBlocksKeepRuns(t *testing.T) {
	r := open(t, crete, files.Options{})
	sums := make(map[float64]int) // rain of January to February's end, the same in leap years
	of := func(r *weather.Record, year int) float64 {
		from := weather.DayNumber(year, 1, 1) - r.Start
		return sumOf(r.Of(weather.Rain).Values[from : from+59])
	}
	for y := 1984; y <= 2020; y++ {
		sums[of(r, y)] = y
	}
	rapid.Check(t, func(t *rapid.T) {
		block := rapid.IntRange(1, 37).Draw(t, "block")
		out, err := synth.Blocks(r, 2001, 60, block, rapid.Uint64().Draw(t, "seed"))
		if err != nil {
			t.Fatal(err)
		}
		before := 0
		for i := range 60 {
			year, ok := sums[of(out, 2001+i)]
			if !ok {
				t.Fatalf("year %d is none of the record", 2001+i)
			}
			if i%block != 0 && year != before+1 && !(before == 2020 && year == 1984) {
				t.Fatalf("within a run %d follows %d", year, before)
			}
			before = year
		}
	})
	for _, bad := range []int{0, 38} {
		if _, err := synth.Blocks(r, 2001, 10, bad, 1); err == nil {
			t.Errorf("runs of %d years were drawn from 37", bad)
		}
	}
}

func TestBlocksOfHours(t *testing.T) {
	r := open(t, "power_hourly_delhi_28.627N_77.172E_2015-2020_UTC.csv.gz", files.Options{})
	out, err := synth.Blocks(r, 2030, 8, 2, 3)
	if err != nil {
		t.Fatal(err)
	}
	if want := 24 * (weather.DayNumber(2038, 1, 1) - weather.DayNumber(2030, 1, 1)); out.Steps != want || len(out.Series[0].Values) != want {
		t.Errorf("%d rows, %d values, want %d", out.Steps, len(out.Series[0].Values), want)
	}
	if _, _, err := weather.Complete(out, weather.Options{}); err != nil {
		t.Error(err)
	}
}
