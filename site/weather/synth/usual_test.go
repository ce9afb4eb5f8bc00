package synth_test

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

// trusted gives the years of a gauge whose zeros are not presumed (files/testdata).
func trusted(path string) func(int) bool {
	if strings.Contains(path, "death-valley") {
		return func(y int) bool { return y >= 2006 }
	}
	return nil
}

// What normals fall back on is what the stations give, to the digits written.
func TestUsualFiguresAreTheStations(t *testing.T) {
	now, power := synth.UsualNow()
	paths, err := filepath.Glob(gauges + "*.dly.gz")
	if err != nil || len(paths) != 9 {
		t.Fatal(paths, err)
	}
	var all []synth.Usual
	var mean synth.Usual
	for _, path := range paths {
		u, err := synth.UsualGauge(open(t, filepath.Base(path), files.Options{}), trusted(path))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, u)
		mean.WetAmount += u.WetAmount / 9
		mean.Between.Chance += u.Between.Chance / 9
		mean.Between.Amount += u.Between.Amount / 9
		mean.Between.Memory += u.Between.Memory / 9
		t.Logf("%s: %.2f mm a wet day, yearly %.0f mm +- %.2f, index %.3f", filepath.Base(path), u.WetAmount, u.Mean, u.Vary, u.Between)
	}
	vary, fall, worst := lineThrough(all)
	for _, c := range []struct {
		what             string
		constant, within float64
		got              float64
	}{
		{"rain of a wet day", now.WetAmount, 0.05, mean.WetAmount},
		{"deviation at 500 mm", now.Vary, 0.005, vary},
		{"its fall", power, 0.005, fall},
		{"chance", now.Between.Chance, 0.005, mean.Between.Chance},
		{"amount", now.Between.Amount, 0.005, mean.Between.Amount},
		{"memory", now.Between.Memory, 0.5, mean.Between.Memory},
	} {
		if math.Abs(c.got-c.constant) > c.within {
			t.Errorf("%s: the constant is %g, the stations give %.4f", c.what, c.constant, c.got)
		}
	}
	if worst > 1.5 {
		t.Errorf("a gauge deviates %.2f times as much as assumed: the notes say up to half", worst)
	}
	t.Logf("worst of the assumed deviations: %.2f times", worst)
}

// lineThrough fits vary = a (mean/500)^-b by least squares of the logarithms, and gives
// the largest factor by which a gauge is off.
func lineThrough(all []synth.Usual) (a, b, worst float64) {
	var n, x, y, xx, xy float64
	for _, u := range all {
		p, q := math.Log(u.Mean/500), math.Log(u.Vary)
		n, x, y, xx, xy = n+1, x+p, y+q, xx+p*p, xy+p*q
	}
	slope := (n*xy - x*y) / (n*xx - x*x)
	a, b = math.Exp((y-slope*x)/n), -slope
	for _, u := range all {
		f := u.Vary / (a * math.Pow(u.Mean/500, -b))
		worst = max(worst, f, 1/f)
	}
	return a, b, worst
}

func TestUsualSkyIsTheStations(t *testing.T) {
	now, _ := synth.UsualNow()
	var mean synth.Usual
	stations := uscrn(t)
	if len(stations) != 13 {
		t.Fatal(len(stations))
	}
	for _, r := range stations {
		u, err := synth.UsualSky(r)
		if err != nil {
			t.Fatal(err)
		}
		mean.Warmth += u.Warmth / 13
		mean.WetCooler += u.WetCooler / 13
		mean.Dulled += u.Dulled / 13
		mean.Narrowed += u.Narrowed / 13
		mean.SpanVary += u.SpanVary / 13
		for a := range 3 {
			for b := range 3 {
				mean.Today[a][b] += u.Today[a][b] / 13
				mean.Before[a][b] += u.Before[a][b] / 13
			}
		}
		t.Logf("%s: warmth %.2f, wet cooler %.2f, dulled %.2f, narrowed %.2f, range varies %.2f", r.File, u.Warmth, u.WetCooler, u.Dulled, u.Narrowed, u.SpanVary)
	}
	near := func(what string, constant, within, got float64) {
		if math.Abs(got-constant) > within {
			t.Errorf("%s: the constant is %g, the stations give %.4f", what, constant, got)
		}
	}
	near("warmth", now.Warmth, 0.05, mean.Warmth)
	near("wet days cooler", now.WetCooler, 0.05, mean.WetCooler)
	near("dulled", now.Dulled, 0.005, mean.Dulled)
	near("narrowed", now.Narrowed, 0.005, mean.Narrowed)
	near("range varies", now.SpanVary, 0.005, mean.SpanVary)
	for a := range 3 {
		for b := range 3 {
			near("today", now.Today[a][b], 0.005, mean.Today[a][b])
			near("before", now.Before[a][b], 0.005, mean.Before[a][b])
		}
	}
}
