package report

import (
	"fmt"
	"math"

	"suffice/site/weather"
)

// recordWidth is the width of a record's charts, columns; with the figures before them a line
// has 77.
const recordWidth = 42

// monthly draws how each month runs: rain, light, temperature, as far as the record has them.
func (w *lines) monthly(months []weather.MonthSummary) {
	w.bands("Rain of each month, mm: one year in ten stays below, median, one in ten above", months,
		func(m *weather.MonthSummary) *weather.Band { return m.Rain }, 0, true)
	w.bands("Light on the level, kWh/m2 a day: the same of each month's mean", months,
		func(m *weather.MonthSummary) *weather.Band { return m.Global }, 1, true)
	w.bands("Air, degC: mean of the days' lowest, of their mean, of their highest", months,
		func(m *weather.MonthSummary) *weather.Band { return m.Temperature }, 1, false)
}

// bands draws one chart: dots from low to high, a filled circle at the middle.
func (w *lines) bands(title string, months []weather.MonthSummary, of func(*weather.MonthSummary) *weather.Band, decimals int, fromZero bool) {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range months {
		if b := of(&months[i]); b != nil {
			low, high = min(low, b.Low), max(high, b.High)
		}
	}
	if low > high {
		return
	}
	if fromZero {
		low = 0
	}
	low, high = math.Floor(low), math.Ceil(high)
	if high == low {
		high++
	}
	number := func(v float64) string { return fmt.Sprintf("%.*f", decimals, v) }
	w.line("\n%s", title)
	w.line("  %-10s %6s %6s %6s  %s", "", "low", "middle", "high",
		ticks(number(low), number((low+high)/2), number(high), recordWidth))
	for i := range months {
		b := of(&months[i])
		if b == nil {
			w.line("  %-10s %6s", monthNames[i+1], "no whole month")
			continue
		}
		share := func(v float64) float64 { return (v - low) / (high - low) }
		w.line("  %-10s %6s %6s %6s  %s", monthNames[i+1], number(b.Low), number(b.Middle), number(b.High),
			span(share(b.Low), share(b.Middle), share(b.High), recordWidth))
	}
}

// spells lists runs of days, with a bar beside the longest.
func (w *lines) spells(title string, spells []weather.Spell) {
	if len(spells) == 0 {
		return
	}
	w.line("\n%s", title)
	for _, s := range spells {
		w.line("  %4d days  %s to %s  %s", s.Days, s.First, s.Last, bar(float64(s.Days)/float64(spells[0].Days), recordWidth))
	}
}

// driest lists the runs of months in which least rain fell, beside the mean of such runs.
func (w *lines) driest(runs []weather.DryRun) {
	if len(runs) == 0 {
		return
	}
	w.line("\nDriest runs of whole months: sum, and as a share of the mean of all such runs")
	for _, r := range runs {
		share, text := 0.0, "no rain in any"
		if r.Mean > 0 {
			share = r.Rain / r.Mean
			text = fmt.Sprintf("%3.0f %% of %.0f mm", 100*share, r.Mean)
		}
		w.line("  %3d months %6.0f mm  %s to %s  %-18s %s", r.Months, r.Rain, r.First, r.Last, text, bar(share, 20))
	}
}

// frost tells of frost in a sentence or two.
func (w *lines) frost(f *weather.FrostSummary) {
	if f == nil {
		return
	}
	cold := fmt.Sprintf("the coldest %.1f degC (%s)", f.Coldest, f.ColdestOn)
	if f.DaysPerYear == 0 && f.Earliest == "" {
		w.line("frost: none in the complete years; %s", cold)
		return
	}
	w.line("frost: %.0f days a year below 0 degC; %s", f.DaysPerYear, cold)
	if f.Earliest != "" {
		w.line("  the first about %s, at the earliest %s", monthDay(f.TypicalFirst), f.Earliest)
		w.line("  the last about %s, at the latest %s", monthDay(f.TypicalLast), f.Latest)
		w.line("  winters without frost: %d of %d", f.Without, f.Winters)
	}
}

// monthDay writes 11-05 as 5 November.
func monthDay(text string) string {
	var month, day int
	if n, err := fmt.Sscanf(text, "%d-%d", &month, &day); n != 2 || err != nil || month < 1 || month > 12 {
		return text
	}
	return fmt.Sprintf("%d %s", day, monthNames[month])
}
