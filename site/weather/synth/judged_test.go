package synth_test

import (
	"flag"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

var update = flag.Bool("update", false, "write the tables of docs/ anew")

const gauges = "../files/testdata/"

// A gauge is a station of the judgement. Its place is that of the data set's station
// list; rain alone does not need it.
type gauge struct {
	name, file string
}

var judged = []gauge{
	{"Houston", "USW00012960_houston-intercontinental-ap.dly.gz"},
	{"Melbourne", "ASN00086071_melbourne-regional-office.dly.gz"},
	{"Los Angeles", "USW00023174_los-angeles-intl-ap.dly.gz"},
	{"New York", "USW00094728_new-york-central-park.dly.gz"},
}

func open(t testing.TB, file string, o files.Options) *weather.Record {
	t.Helper()
	r, err := files.Open(gauges+file, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// useShare is the share of the mean rain of the fitted years that the house uses.
const useShare = 0.5

// A band is the central 90 % of what the generated records give.
type band struct{ low, middle, high float64 }

// A maker gives the generator of a record by its number.
type maker func(number int) *synth.Generator

func bands(make maker, first, span, records int, use func(int) bool, draw float64) (out [measures]band) {
	var all [measures][]float64
	for number := range records {
		g := *make(number)
		g.First, g.Sky = first, nil
		for k, v := range measure(yearsOf(g.Years(span, uint64(number)+1), use), draw) {
			all[k] = append(all[k], v)
		}
	}
	for k, v := range all {
		out[k] = band{quantile(v, 0.05), quantile(v, 0.5), quantile(v, 0.95)}
	}
	return out
}

func (b band) holds(v float64) bool { return v >= b.low && v <= b.high }

// span gives the first and the number of the years from the first complete one to the
// last.
func span(r *weather.Record) (first, n int) {
	rain := r.Of(weather.Rain).Values
	last := 0
	for y := int(weather.DayOf(r.Start).Year); ; y++ {
		from := weather.DayNumber(y, 1, 1) - r.Start
		to := from + weather.DaysIn(y)
		if to > r.Steps {
			return first, last - first + 1
		}
		if from < 0 {
			continue
		}
		missing := 0
		for _, v := range rain[from:to] {
			if math.IsNaN(v) {
				missing++
			}
		}
		if missing <= weather.MissingDaysAllowed {
			if first == 0 {
				first = y
			}
			last = y
		}
	}
}

// refitted gives a maker that fits each record's generator to years drawn with replacement
// from those that are wanted, so that the records also differ by what so few years tell.
func refitted(t testing.TB, r *weather.Record, use func(int) bool) maker {
	only := *r
	only.Series = []weather.Series{{Column: weather.Rain, Values: slices.Clone(r.Of(weather.Rain).Values)}}
	for i := range only.Series[0].Values {
		if !use(int(weather.DayOf(r.Start + i).Year)) {
			only.Series[0].Values[i] = math.NaN()
		}
	}
	n := len(yearsOf(r, use))
	return func(number int) *synth.Generator {
		drawn, err := synth.Blocks(&only, 2001, n, 1, uint64(number))
		if err != nil {
			t.Fatal(err)
		}
		g, err := synth.Fit(drawn, nil)
		if err != nil {
			t.Fatal(err)
		}
		return g
	}
}

// A judgement is one station's table.
type judgement struct {
	gauge
	fitted, years      int
	draw               float64
	real, own          [measures]float64
	full, fixed, plain [measures]band
}

func judge(t testing.TB, at gauge, records int) (j judgement) {
	r := open(t, at.file, files.Options{})
	g, err := synth.Fit(r, odd)
	if err != nil {
		t.Fatal(err)
	}
	rain := *g.Rain
	rain.Between = synth.Between{}
	plain := &synth.Generator{Rain: &rain}
	first, n := span(r)
	j = judgement{gauge: at, fitted: len(yearsOf(r, odd)), years: len(yearsOf(r, even)), draw: useShare * g.Rain.PerYear() / 365.2425}
	j.real, j.own = measure(yearsOf(r, even), j.draw), measure(yearsOf(r, odd), j.draw)
	j.full = bands(refitted(t, r, odd), first, n, records, even, j.draw)
	j.fixed = bands(func(int) *synth.Generator { return g }, first, n, records, even, j.draw)
	j.plain = bands(func(int) *synth.Generator { return plain }, first, n, records, even, j.draw)
	return j
}

func number(v float64) string {
	switch a := math.Abs(v); {
	case math.IsInf(v, 0):
		return "none"
	case a < 2:
		return fmt.Sprintf("%.2f", v)
	case a < 100:
		return fmt.Sprintf("%.1f", v)
	}
	return fmt.Sprintf("%.0f", v)
}

// cell writes a band and, where it does not hold the figure, says so.
func (b band) cell(v float64) string {
	text := number(b.low) + " to " + number(b.high)
	if !b.holds(v) {
		text = "**outside** " + text
	}
	return text
}

func (j judgement) table() string {
	var w strings.Builder
	fmt.Fprintf(&w, "## %s\n\nFitted to %d odd years, judged on %d even ones; the house uses %.2f mm of roof a day.\n\n", j.name, j.fitted, j.years, j.draw)
	fmt.Fprintf(&w, "| figure | odd years (fitted) | even years (judged) | made: 90 %% | made, one fit: 90 %% | plain daily chain: 90 %% |\n|---|---:|---:|---:|---:|---:|\n")
	for k, name := range measureNames {
		fmt.Fprintf(&w, "| %s | %s | %s | %s | %s | %s |\n", name, number(j.own[k]), number(j.real[k]), j.full[k].cell(j.real[k]), j.fixed[k].cell(j.real[k]), j.plain[k].cell(j.real[k]))
	}
	if j.outside(j.full) > 0 {
		w.WriteString("\n" + why[j.name] + "\n")
	}
	return w.String() + "\n"
}

func (j judgement) outside(all [measures]band) (n int) {
	for k := range 5 {
		if !all[k].holds(j.real[k]) {
			n++
		}
	}
	return n
}

const judgedPath = "../../../docs/made-weather-judged.md"

// records is how many records are made for a table.
const records = 200

// The table of docs/ is what the program gives: all of it with -update, the shortest gauge
// otherwise.
func TestJudged(t *testing.T) {
	if !*update {
		written := read(t, judgedPath)
		if table := judge(t, judged[0], records).table(); !strings.Contains(written, table) {
			t.Errorf("%s does not hold what the program gives now (go test ./site/weather/synth -run Judged -update):\n%s", judgedPath, table)
		}
		return
	}
	var tables strings.Builder
	var full, fixed, plain int
	for _, at := range judged {
		j := judge(t, at, records)
		tables.WriteString(j.table())
		full, fixed, plain = full+j.outside(j.full), fixed+j.outside(j.fixed), plain+j.outside(j.plain)
	}
	counts := fmt.Sprintf("Of the 20 figures (without the correlation, which nothing was fitted to), %d lie outside the central 90 %% of the made records, %d where one\nfit serves for all, and %d with the plain daily chain. Two of twenty would by chance alone.\n\n", full, fixed, plain)
	write(t, judgedPath, judgedHead+counts+strings.TrimRight(tables.String(), "\n")+"\n")
}
