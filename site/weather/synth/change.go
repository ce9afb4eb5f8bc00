package synth

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"suffice/quantity"
	"suffice/site/weather"
)

// A Climate says how another climate differs from a record's, by month, January first.
// The zero value changes nothing.
type Climate struct {
	Warmer  [12]quantity.Kelvins // added to every temperature, dew point included
	Rain    [12]float64          // change of the month's mean rain, -1 (none left) to 2: -0.1 is a tenth less
	WetDays [12]float64          // change of the number of wet days, -1 to 0
}

// Even gives a climate that changes all months alike.
func Even(warmer quantity.Kelvins, rain, wetDays float64) (c Climate) {
	for m := range 12 {
		c.Warmer[m], c.Rain[m], c.WetDays[m] = warmer, rain, wetDays
	}
	return c
}

// The bounds of what Change is asked for: the warmest scenario of ipcc-ar6-wg1 (SSP5-8.5) ends at 4.4 K
// of the world, land and high latitudes more.
const mostWarmer, mostRain = 10, 2

// Faults gives everything in a climate that cannot be meant; what is alike in all months is said once.
func (c *Climate) Faults() error {
	if *c == Even(c.Warmer[0], c.Rain[0], c.WetDays[0]) {
		return c.faultsOf("every month", 0)
	}
	var faults []error
	for m := range 12 {
		faults = append(faults, c.faultsOf(fmt.Sprintf("month %d", m+1), m))
	}
	return errors.Join(faults...)
}

func (c *Climate) faultsOf(when string, m int) error {
	var faults []error
	if w := float64(c.Warmer[m]); !(math.Abs(w) <= mostWarmer) {
		faults = append(faults, fmt.Errorf("%s: a change of %g K is not between -%d and %d K", when, w, mostWarmer, mostWarmer))
	}
	if !(c.Rain[m] >= -1 && c.Rain[m] <= mostRain) {
		faults = append(faults, fmt.Errorf("%s: a change of rain by %+.0f %% is not between -100 and %d %%", when, 100*c.Rain[m], 100*mostRain))
	}
	if !(c.WetDays[m] >= -1 && c.WetDays[m] <= 0) {
		faults = append(faults, fmt.Errorf("%s: a change of wet days by %+.0f %% is not between -100 and 0 %%: rain days can be taken away but not invented, so state more rain as amounts", when, 100*c.WetDays[m]))
	}
	if c.WetDays[m] == -1 && c.Rain[m] > -1 {
		faults = append(faults, fmt.Errorf("%s: no wet day is left for %.0f %% of the rain", when, 100+100*c.Rain[m]))
	}
	return errors.Join(faults...)
}

// Change gives a record in another climate, stated by its differences: temperatures rise, wet
// days drawn by the seed and the date turn dry, and what the others bring is scaled so that
// each month of the year has, over all its years, the stated change. Droughts
// keep their place in time. Light, wind and the humidity's share stay as they are: a
// day that lost its rain keeps its clouds.
func Change(r *weather.Record, c Climate, seed uint64) (*weather.Record, error) {
	if err := c.Faults(); err != nil {
		return nil, err
	}
	out := *r
	out.Format += ", changed"
	out.Series = make([]weather.Series, len(r.Series))
	out.Notes = append([]string{"a changed climate, no record: " + c.text()}, r.Notes...)
	out.Warnings = slices.Clone(r.Warnings)
	for i, s := range r.Series {
		s.Values = slices.Clone(s.Values)
		switch s.Column {
		case weather.Temperature, weather.TemperatureMin, weather.TemperatureMax, weather.DewPoint, weather.WetBulb:
			for k := range s.Values {
				s.Values[k] += float64(c.Warmer[monthOf(r, k)])
			}
		case weather.Rain:
			if err := c.changeRain(r, s.Values, seed); err != nil {
				return nil, fmt.Errorf("%s: %w", r.File, err)
			}
		}
		out.Series[i] = s
	}
	return &out, nil
}

// monthOf gives the month, from 0, of a row.
func monthOf(r *weather.Record, row int) int { return int(dayOf(r, row).Month) - 1 }

func dayOf(r *weather.Record, row int) weather.Day {
	return weather.DayOf(r.Start + (r.StartHour+row)/perDay(r))
}

// changeRain dries days and scales the rest.
func (c *Climate) changeRain(r *weather.Record, rain []float64, seed uint64) error {
	days := rainDays(r, rain)
	var before, after [12]float64
	for _, d := range days {
		before[d.month] += d.sum
	}
	for m := range 12 {
		for _, d := range chosen(days, m, -c.WetDays[m], seed) {
			for k := d.from; k < d.to; k++ {
				if rain[k] > 0 { // a missing hour stays missing
					rain[k] = 0
				}
			}
		}
	}
	for _, d := range rainDays(r, rain) {
		after[d.month] += d.sum
	}
	for k, v := range rain {
		m := monthOf(r, k)
		if before[m] > 0 && after[m] == 0 && c.Rain[m] > -1 {
			return fmt.Errorf("month %d: every one of its few wet days turned dry: change its amounts alone", m+1)
		}
		if after[m] > 0 {
			rain[k] = v * (before[m] * (1 + c.Rain[m]) / after[m])
		}
	}
	return nil
}

// A rainDay is a day of a record with some rain.
type rainDay struct {
	from, to, month, number int
	sum                     float64
}

// rainDays gathers the days with rain on the record's own clock.
func rainDays(r *weather.Record, rain []float64) (days []rainDay) {
	per := perDay(r)
	for k := 0; k < len(rain); {
		hour := (r.StartHour + k) % per
		to := min(k+per-hour, len(rain))
		d := rainDay{from: k, to: to, month: monthOf(r, k), number: dayOf(r, k).Number()}
		for _, v := range rain[k:to] {
			if v > 0 {
				d.sum += v
			}
		}
		if d.sum > 0 {
			days = append(days, d)
		}
		k = to
	}
	return days
}

// chosen draws a share of a month's wet days (those of weather.DryDay or more), rounded
// to whole days over the record: those with the lowest numbers of their date's stream.
func chosen(days []rainDay, month int, share float64, seed uint64) []rainDay {
	type ticket struct {
		day    rainDay
		number uint64
	}
	var all []ticket
	for _, d := range days {
		if d.month == month && d.sum >= weather.DryDay {
			all = append(all, ticket{d, stream(seed, streamChange, d.number).Uint64()})
		}
	}
	slices.SortFunc(all, func(a, b ticket) int {
		if a.number != b.number {
			return int(count(a.number > b.number))*2 - 1
		}
		return a.day.number - b.day.number
	})
	out := make([]rainDay, 0, len(all))
	for _, t := range all[:int(math.Round(share*float64(len(all))))] {
		out = append(out, t.day)
	}
	return out
}

// text says the change for a note.
func (c *Climate) text() string {
	var warm, rain, wet float64
	for m, days := range meanDays {
		warm += float64(c.Warmer[m]) * days / 365.2425
		rain += c.Rain[m] / 12
		wet += c.WetDays[m] / 12
	}
	even := ""
	if *c != Even(c.Warmer[0], c.Rain[0], c.WetDays[0]) {
		even = ", by month"
	}
	return fmt.Sprintf("temperature %+.1f K (dew point too), rain of the months %+.0f %%, wet days %+.0f %% in their mean%s; light, wind and relative humidity are left as they were",
		warm, 100*rain, 100*wet, even)
}
