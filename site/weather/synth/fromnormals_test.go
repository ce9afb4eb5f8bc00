package synth_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"suffice/site"
	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

const normalsPath = "../../../docs/made-weather-normals.md"

const normalsHead = `# Made rain from monthly normals beside the gauges they were taken from

Written by a test (go test ./site/weather/synth -run FromNormals -update). Of each gauge only the means of its months are given (rain, days of 1 mm or more) and, in the first
table, the deviation of its yearly rain. 100 records as long as the gauge's are made of that; each cell has the recorded figure and the central 90 % of the made ones. The tank is the one that meets the whole
use, half of the mean rain, on 95 % of days. The figures are those of [made-weather-judged.md](made-weather-judged.md), here for whole records: the means and the deviation are the record's own and not foretold.

`

const normalsTail = `
**With the deviation of the years stated, droughts come back; the recorded tank is %.2f to %.2f of the middle made one, with the assumed deviation %.2f to %.2f of it** (both tables: least and most of
the gauges that were not refused). Normals do not tell how heavy rain follows heavy rain, which a record does. The deviation is the figure to ask the weather service for: where it is
assumed, the figures of years and seasons are missed as well. What is assumed was taken from these gauges themselves, so elsewhere it will not be nearer.

Tried, and left: to give every place the mean spells and storms of the nine gauges. Tanks become larger: nearer at Sydney (recorded 1.17 of it), farther at Houston, Melbourne, New York and Denver; in the mean
of the logarithms' distances 0.15 in place of 0.10 (worked once, not by the command above). A refusal, at Death Valley, says that 19 years deviate by less than even a chain of days alone makes of such wet days.
`

const normalsColumns = "| gauge | years | deviation of yearly rain, mm | 5 % of 6-month sums, mm | of 12-month sums | of 24-month sums | tank, mm of roof | recorded tank over the middle made one |\n|---|---:|---|---|---|---|---|---:|\n"

// rainNormals averages years of rain into what somebody without the record might know.
func rainNormals(name string, years [][]float64, deviation float64) *synth.Normals {
	n := &synth.Normals{Place: site.Place{Name: name, Latitude: 35}, Deviation: deviation}
	n.Rain, n.WetDays = new([12]float64), new([12]float64)
	for _, y := range years {
		from := 0
		for m := range 12 {
			to := from + weather.MonthDays(2001, m+1)
			for _, v := range y[from:to] {
				n.Rain[m] += v / float64(len(years))
				n.WetDays[m] += float64(ifTrue(v >= 1)) / float64(len(years))
			}
			from = to
		}
	}
	return n
}

// fromNormals is a gauge's row: its figures and what its normals make; and the recorded tank over the made one, NaN where the normals are refused.
func fromNormals(t *testing.T, at gauge, stated bool) (row string, tank float64) {
	r := open(t, at.file, files.Options{})
	known := trusted(at.file)
	use := func(y int) bool { return known == nil || known(y) }
	first, n := span(r)
	kept := map[int]bool{}
	for y := first; y < first+n; y++ {
		kept[y] = len(yearsOf(r, func(k int) bool { return k == y && use(y) })) > 0
	}
	same := func(y int) bool { return kept[y] }
	years := yearsOf(r, same)
	total := 0.0
	for _, y := range years {
		total += sumOf(y)
	}
	draw := useShare * total / float64(len(years)) / 365
	real := measure(years, draw)
	normals := rainNormals(at.name, years, 0)
	if stated {
		normals.Deviation = real[0]
	}
	g, err := normals.Generator()
	if err != nil {
		return fmt.Sprintf("| %s | %d | refused: %v | | | | | |\n", at.name, len(years), err), math.NaN()
	}
	made := bands(slices.Repeat([]*synth.Generator{g}, 100), first, n, same, draw)
	row = fmt.Sprintf("| %s | %d |", at.name, len(years))
	for k := range figures {
		row += fmt.Sprintf(" %s in %s |", number(real[k]), made[k].cell(real[k]))
	}
	tank = real[4] / made[4].middle
	return row + fmt.Sprintf(" %.2f |\n", tank), tank
}

// The page is what the program gives: all of it with -update, its first rows otherwise.
func TestFromNormals(t *testing.T) {
	page := normalsHead
	var ends []any
	for _, stated := range []bool{true, false} {
		page += map[bool]string{true: "## Deviation of the years stated\n\n", false: "\n## Deviation of the years assumed\n\n"}[stated] + normalsColumns
		gauges := append(slices.Clone(judged), heldOut...)
		if !*update {
			gauges = gauges[:1]
		}
		least, most := math.Inf(1), 0.0
		for _, at := range gauges {
			row, tank := fromNormals(t, at, stated)
			if !math.IsNaN(tank) {
				least, most = min(least, tank), max(most, tank)
			}
			if page += row; !*update && !strings.Contains(read(t, normalsPath), row) {
				t.Errorf("%s does not hold what the program gives now (go test ./site/weather/synth -run FromNormals -update):\n%s", normalsPath, row)
			}
		}
		ends = append(ends, least, most)
	}
	if *update {
		write(t, normalsPath, page+fmt.Sprintf(normalsTail, ends...))
	}
}
