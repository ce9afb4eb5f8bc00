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

Written by a test (go test ./site/weather/synth -run Calibrated -update). Here the truth is known: records as long as a gauge's are made by the generator that its
whole record gives, and each is treated as the gauge is in [made-weather-judged.md](made-weather-judged.md): its odd years are fitted, its even years judged. Of each, 19 records are made;
what is judged lies below or above all of them in 2 of 20 cases, if it is one of their kind. So 10 % outside is right, more is an interval too narrow.
The truth is the generator's own kind, so this judges the interval and not whether weather is of that kind.

| truth | records judged | figures | outside, made (redrawn fits) | outside, made of one fit |
|---|---:|---:|---:|---:|
`

const calibratedChances = `
## How many of 20 lie outside where the form is true

The figures of one gauge hang together, so that a binomial distribution does not tell. The gauges do not: the counts of the four above are joined as
independent ones (redrawn fits).

`

// outsideWhereTrue counts the figures that lie outside in so many records of a gauge whose truth is the generator that its whole
// record gives: with redrawn fits, and with one.
func outsideWhereTrue(t *testing.T, at gauge, cases int) (counts [][2]int) {
	r := open(t, at.file, files.Options{})
	truth, err := synth.Fit(r, trusted(at.file))
	if err != nil {
		t.Fatal(err)
	}
	first, years := span(r)
	const others = 19
	made := func(g synth.Generator, seed uint64, use func(int) bool, draw float64) [measures]float64 {
		g.Sky, g.First = nil, first
		return measure(yearsOf(g.Years(years, seed), use), draw)
	}
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
		var outside [2]int
		for k := range below {
			for _, n := range below[k][:figures] {
				outside[k] += ifTrue(n == 0 || n == others)
			}
		}
		counts = append(counts, outside)
	}
	return counts
}

// calibratedRow is a gauge's row of the table.
func calibratedRow(at gauge, counts [][2]int) string {
	var sum [2]int
	for _, c := range counts {
		sum[0], sum[1] = sum[0]+c[0], sum[1]+c[1]
	}
	n := figures * len(counts)
	share := func(k int) float64 { return 100 * float64(k) / float64(n) }
	return fmt.Sprintf("| %s | %d | %d | %d (%.1f %%) | %d (%.1f %%) |\n", at.name, len(counts), n, sum[0], share(sum[0]), sum[1], share(sum[1]))
}

// together gives the chances of so many figures outside over several gauges, which are independent of
// each other while the figures of one are not.
func together(gauges [][][2]int) []float64 {
	all := []float64{1}
	for _, counts := range gauges {
		next := make([]float64, len(all)+figures)
		for have, p := range all {
			for _, c := range counts {
				next[have+c[0]] += p / float64(len(counts))
			}
		}
		all = next
	}
	return all
}

// chancesText says how many figures lie inside where the truth is the form.
func chancesText(p []float64) string {
	text := "| outside | 0 | 1 | 2 | 3 | 4 | 5 | 6 or more |\n|---|---:|---:|---:|---:|---:|---:|---:|\n| of 100 judgements |"
	orMore := "\n" + orMoreRow
	below, most, mean := 0.0, 0, 0.0
	for k, v := range p {
		mean += float64(k) * v
		if k < 6 {
			text += fmt.Sprintf(" %.0f |", 100*v)
			orMore += fmt.Sprintf(" %.0f |", 100*(1-below))
		}
		if below < 0.95 {
			most = k
		}
		below += v
	}
	rest := 1 - sumOf(p[:6])
	text += fmt.Sprintf(" %.0f |", 100*rest) + orMore + fmt.Sprintf(" %.0f |\n\n", 100*rest)
	return text + fmt.Sprintf("In the mean %.1f of 20 lie outside; **in 95 of 100 judgements of a true form %d or more of the 20 lie inside**, and no more can be asked.\n", mean, len(p)-1-most)
}

const orMoreRow = "| so many or more |"

// soManyOrMore gives the chance, of 100, that so many figures of 20 lie outside where the form is true, as
// the page of the calibration has it.
func soManyOrMore(t *testing.T, outside int) string {
	_, row, found := strings.Cut(read(t, calibratedPath), orMoreRow)
	if !found {
		t.Fatalf("%s has no row %q", calibratedPath, orMoreRow)
	}
	return strings.TrimSpace(strings.Split(row, "|")[min(outside, 6)])
}

func ifTrue(b bool) int {
	if b {
		return 1
	}
	return 0
}

// truthCases is how many records of each gauge are judged where the truth is known.
const truthCases = 60

// The page is what the program gives: all of it with -update, its first row otherwise.
func TestCalibrated(t *testing.T) {
	few := calibratedRow(judged[0], outsideWhereTrue(t, judged[0], 4))
	if *update {
		page := calibratedHead + few
		var all [][][2]int
		for _, at := range judged {
			all = append(all, outsideWhereTrue(t, at, truthCases))
			page += calibratedRow(at, all[len(all)-1])
		}
		write(t, calibratedPath, page+calibratedChances+chancesText(together(all)))
		return
	}
	if !strings.Contains(read(t, calibratedPath), few) {
		t.Errorf("%s does not hold what the program gives now (go test ./site/weather/synth -run Calibrated -update): %s", calibratedPath, few)
	}
}
