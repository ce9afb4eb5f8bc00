package weather

import (
	"fmt"
	"math/rand/v2"
	"slices"
)

// Combine takes the rain of a gauge record and everything else of a sky record. A gauge
// year that the sky record also has gets its own sky. Any other gets the sky of a year
// drawn evenly from the sky record's, by a stream (PCG) that Options.Seed and the gauge
// year begin, so that a year's sky does not depend on which other years there are; a
// typical year is the only one to draw. Such a sky knows nothing of its year's rain.
func Combine(sky, gauge *Record, o Options) (*Hours, Report, error) {
	above := o
	above.From, above.To = 0, 0 // any year may be drawn
	m, err := newMaker(sky, above, true, false)
	if err != nil {
		return nil, Report{}, err
	}
	if len(m.kept) == 0 {
		return nil, Report{}, fmt.Errorf("%s has no complete year of sky (at most %d missing days): use a longer record", sky.File, MissingDaysAllowed)
	}
	below, err := newMaker(gauge, o, false, true)
	if err != nil {
		return nil, Report{}, err
	}
	if gauge.Of(Rain) == nil || len(below.kept) == 0 {
		return nil, Report{}, fmt.Errorf("%s has no complete year of rain (at most %d missing days): use a longer record", gauge.File, MissingDaysAllowed)
	}
	m.make()
	below.make()
	if below.hours.Rain == nil {
		return nil, Report{}, fmt.Errorf("%s: the rain of its complete years has gaps that no other year fills: use another record", gauge.File)
	}
	return join(m, below, o)
}

// join sets the sky of one maker beside the rain of another.
func join(sky, gauge *maker, o Options) (*Hours, Report, error) {
	begin := make(map[int32]int) // first kept day of each sky year
	for i := len(sky.days) - 1; i >= 0; i-- {
		begin[sky.hours.Days[i].Year] = i
	}
	var from []int // for each kept day of the result, the sky's day
	var rain []int // and the gauge's
	var drawn []bool
	var years, matched []int32
	leaps := 0
	for i, day := range gauge.hours.Days {
		has := slices.Contains(sky.kept, day.Year) && !sky.r.Typical
		if !has && !sky.r.Typical && o.OnlyMatched {
			continue
		}
		if day.DayOfYear == 1 {
			years = append(years, day.Year)
			if has {
				matched = append(matched, day.Year)
			}
		}
		year := day.Year
		if !has {
			year = drawYear(sky.kept, o.Seed, day.Year)
		}
		k, missed := sameDate(sky.hours.Days, begin[year], day)
		leaps += b2i(missed)
		from, rain, drawn = append(from, k), append(rain, i), append(drawn, !has)
	}
	if len(from) == 0 {
		return nil, Report{}, fmt.Errorf("%s and %s have no complete year in common: they have %s and %s", sky.r.File, gauge.r.File, yearsText(sky.kept), yearsText(gauge.kept))
	}
	out := gather(sky, gauge, from, rain, drawn)
	out.kept, out.dropped = years, gauge.dropped
	out.sayJoined(sky, gauge, matched, leaps, o)
	report := out.report()
	report.Warnings = append(slices.Clone(sky.r.Warnings), gauge.r.Warnings...)
	return out.hours, report, nil
}

// drawYear draws one of the sky's years for a gauge year.
func drawYear(kept []int32, seed uint64, year int32) int32 {
	return kept[rand.New(rand.NewPCG(seed, uint64(year))).IntN(len(kept))]
}

// sameDate finds the day of the same date in the sky year that begins at a day. A 29
// February that the sky year does not have gets its 28th.
func sameDate(days []Day, begin int, day Day) (at int, missed bool) {
	date := int(day.Date)
	if skyYear := int(days[begin].Year); day.Month == 2 && date > MonthDays(skyYear, 2) {
		date, missed = MonthDays(skyYear, 2), true
	}
	return begin + DayNumber(int(days[begin].Year), int(day.Month), date) - days[begin].Number(), missed
}

// gather copies the days of a sky and of a gauge into new hours.
func gather(sky, gauge *maker, from, rain []int, drawn []bool) *maker {
	out := &maker{r: sky.r, place: sky.place, days: from, hours: &Hours{Place: sky.place, Days: make([]Day, len(rain))}}
	for i, k := range rain {
		out.hours.Days[i] = gauge.hours.Days[k]
	}
	pick := func(c Column, values []float64, origin []Origin, days []int, changed []bool) []float64 {
		if values == nil {
			return nil
		}
		to := out.column(c)
		for i, k := range days {
			copy(to[24*i:24*i+24], values[24*k:24*k+24])
			for h := range 24 {
				out.origin[c][24*i+h] = origin[24*k+h]
				if changed != nil && changed[i] {
					out.origin[c][24*i+h] = Drawn
				}
			}
		}
		return to
	}
	s, h := sky.hours, out.hours
	h.Global = pick(Global, s.Global, sky.origin[Global], from, drawn)
	h.Beam = pick(Beam, s.Beam, sky.origin[Beam], from, drawn)
	h.Diffuse = pick(Diffuse, s.Diffuse, sky.origin[Diffuse], from, drawn)
	h.Temperature = pick(Temperature, s.Temperature, sky.origin[Temperature], from, drawn)
	h.Humidity = pick(Humidity, s.Humidity, sky.origin[Humidity], from, drawn)
	h.Wind = pick(Wind, s.Wind, sky.origin[Wind], from, drawn)
	h.Rain = pick(Rain, gauge.hours.Rain, gauge.origin[Rain], rain, nil)
	return out
}

// sayJoined tells how rain and sky came together.
func (m *maker) sayJoined(sky, gauge *maker, matched []int32, leaps int, o Options) {
	m.say("rain is of %s, everything else of %s", gauge.r.File, sky.r.File)
	switch {
	case sky.r.Typical:
		m.say("each of the %d gauge years has the same typical sky: rain and sky of a year do not belong together, and dull years are not there", len(m.kept))
	case len(matched) < len(m.kept):
		m.say("%d of %d years have their own sky; the others have that of a year drawn by seed %d: there rain and sky do not belong together", len(matched), len(m.kept), o.Seed)
	}
	if leaps > 0 {
		m.say("%d times the 29 February has the sky of the 28th", leaps)
	}
	if a, b := sky.r, gauge.r; a.Placed && b.Placed {
		if d := distance(a.Place, b.Place); d > farAway {
			m.say("the gauge stands %.0f km from the place of the sky", d)
		}
	}
	for _, n := range sky.hours.Notes {
		m.say("sky: %s", n)
	}
	for _, n := range gauge.hours.Notes {
		m.say("rain: %s", n)
	}
}
