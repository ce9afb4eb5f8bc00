package synth_test

import (
	"fmt"
	"strings"
	"testing"

	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

const calibratedPath = "../../../docs/made-weather-calibrated.md"

const calibratedHead = `# Made years beside made years that were kept back

Written by a test (go test ./site/weather/synth -run Calibrated -update). Here the truth is known: records of 55 years are made by the generator that Houston's whole
gauge gives, and each is treated as a gauge is in [made-weather-judged.md](made-weather-judged.md): its odd years are fitted, its even years judged. Of each, 19 records are made;
what is judged lies below or above all of them in 2 of 20 cases, if it is one of their kind. So 10 % outside is right, more is an interval too narrow.
The truth is the generator's own kind, so this judges the interval and not whether weather is of that kind.

| records judged | figures | outside, made (redrawn fits) | outside, made of one fit |
|---:|---:|---:|---:|
`

// calibrated counts what lies outside of so many records whose truth is known.
func calibrated(t *testing.T, cases int) string {
	truth, err := synth.Fit(open(t, judged[0].file, files.Options{}), nil)
	if err != nil {
		t.Fatal(err)
	}
	const years, first, others = 55, 1970, 19
	made := func(g synth.Generator, seed uint64, use func(int) bool, draw float64) [measures]float64 {
		g.Sky, g.First = nil, first
		return measure(yearsOf(g.Years(years, seed), use), draw)
	}
	var outside [2]int
	for number := range cases {
		g := synth.Generator{Rain: truth.Rain, First: first}
		r := g.Years(years, uint64(1000+number))
		r.Series = []weather.Series{*r.Of(weather.Rain)}
		one, err := synth.Fit(r, odd)
		if err != nil {
			t.Fatal(err)
		}
		draw := useShare * one.Rain.PerYear() / 365.2425
		real := measure(yearsOf(r, even), draw)
		var below [2][measures]int
		for i, again := range redrawn(t, r, odd, others) {
			for k, of := range []*synth.Generator{again, one} {
				for j, v := range made(*of, uint64(i), even, draw) {
					below[k][j] += ifTrue(v < real[j])
				}
			}
		}
		for k := range below {
			for _, n := range below[k][:figures] {
				outside[k] += ifTrue(n == 0 || n == others)
			}
		}
	}
	n := figures * cases
	return fmt.Sprintf("| %d | %d | %d (%.1f %%) | %d (%.1f %%) |\n", cases, n, outside[0], 100*float64(outside[0])/float64(n), outside[1], 100*float64(outside[1])/float64(n))
}

func ifTrue(b bool) int {
	if b {
		return 1
	}
	return 0
}

// The page is what the program gives: all of it with -update, its first row otherwise.
func TestCalibrated(t *testing.T) {
	few := calibrated(t, 4)
	if *update {
		write(t, calibratedPath, calibratedHead+few+calibrated(t, 60))
		return
	}
	if !strings.Contains(read(t, calibratedPath), few) {
		t.Errorf("%s does not hold what the program gives now (go test ./site/weather/synth -run Calibrated -update): %s", calibratedPath, few)
	}
}
