package weather

import (
	"math"
	"slices"
)

// A Band is how a month runs from year to year.
type Band struct {
	Low    float64 `json:"low"`
	Middle float64 `json:"middle"`
	High   float64 `json:"high"`
	Months int     `json:"months"` // that it rests on
}

// A MonthSummary tells of one month of the calendar. Only months of which no day is missing
// count.
type MonthSummary struct {
	Month       int   `json:"month"`
	Rain        *Band `json:"rain_mm"`          // sum of the month: one year in ten below, median, one year in ten above
	Global      *Band `json:"global_kwh_m2_d"`  // light on the level, mean of the month: the same
	Temperature *Band `json:"temperature_degc"` // mean of the days' lowest, of their mean, of their highest
}

// byMonth tells of the twelve months.
func (d *daily) byMonth() []MonthSummary {
	rain, light := d.months(d.rain), d.months(d.light)
	low, middle, high := d.months(d.low), d.months(d.mean), d.months(d.high)
	all := make([]MonthSummary, 12)
	for m := range all {
		all[m] = MonthSummary{Month: m + 1,
			Rain:   spread(monthly(rain, m+1, func(x monthOf) float64 { return x.sum })),
			Global: spread(monthly(light, m+1, meanOf))}
		if air := monthly(middle, m+1, meanOf); len(air) > 0 {
			b := &Band{Middle: round(mean(air), 2), Months: len(air)}
			b.Low, b.High = b.Middle, b.Middle
			if v := monthly(low, m+1, meanOf); len(v) > 0 {
				b.Low = round(mean(v), 2)
			}
			if v := monthly(high, m+1, meanOf); len(v) > 0 {
				b.High = round(mean(v), 2)
			}
			all[m].Temperature = b
		}
	}
	return all
}

func meanOf(m monthOf) float64 { return m.sum / float64(m.days) }

// monthly gives a figure of every whole month of that name.
func monthly(months []monthOf, month int, of func(monthOf) float64) []float64 {
	var all []float64
	for _, m := range months {
		if m.month == month && m.missing == 0 {
			if v := of(m); !math.IsNaN(v) {
				all = append(all, v)
			}
		}
	}
	return all
}

// spread gives the tenth, the middle and the ninetieth of a hundred.
func spread(v []float64) *Band {
	if len(v) == 0 {
		return nil
	}
	slices.Sort(v)
	return &Band{round(quantile(v, 0.1), 3), round(quantile(v, 0.5), 3), round(quantile(v, 0.9), 3), len(v)}
}
