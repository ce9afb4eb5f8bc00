package synth

import (
	"fmt"
	"math"
	"slices"

	"suffice/site/weather"
)

// Blocks lays years of a record end to end in a new order: runs of so many years that followed
// each other (kunsch-1989), so that droughts of up to that length keep their days, sky and
// rain together. Runs begin at any complete year and go round from the last to the first;
// each is drawn by the stream of seed and its number. The made years count on from first.
// A 29 February that a year lacks gets its 28th.
func Blocks(r *weather.Record, first, years, block int, seed uint64) (*weather.Record, error) {
	if r.Typical {
		return nil, fmt.Errorf("%s is one typical year: it has no droughts to keep", r.File)
	}
	from, err := wholeYears(r)
	if err != nil {
		return nil, err
	}
	if block < 1 || block > len(from) {
		return nil, fmt.Errorf("runs of %d years cannot be drawn from %d complete years of %s: take 1 to %d", block, len(from), r.File, len(from))
	}
	if years < 1 || years > MostYears {
		return nil, fmt.Errorf("%d years cannot be made: take 1 to %d", years, MostYears)
	}
	chosen := make([]int, years)
	for i := range chosen {
		if i%block == 0 {
			chosen[i] = stream(seed, streamBlocks, i/block).IntN(len(from))
			continue
		}
		chosen[i] = (chosen[i-1] + 1) % len(from)
	}
	for i, k := range chosen {
		chosen[i] = from[k]
	}
	out := relaid(r, first, chosen)
	out.Format += ", laid anew"
	out.Notes = append([]string{fmt.Sprintf("%d years laid anew from %d complete years in runs of %d, drawn by seed %d: no such order has been; where a run ends, a year follows that never followed", years, len(from), block, seed)}, r.Notes...)
	return out, nil
}

// MostYears bounds what is made at once: 5000 years of days are 15 MB a column.
const MostYears = 5000

// wholeYears gives the years of a record of which no column misses more than 5 days.
func wholeYears(r *weather.Record) (years []int, err error) {
	per := perDay(r)
	first, last := int(weather.DayOf(r.Start).Year), int(weather.DayOf(r.Start+(r.StartHour+r.Steps)/per).Year)
	for y := first; y <= last; y++ {
		from := rowOf(r, y)
		to := from + per*weather.DaysIn(y)
		if from < 0 || to > r.Steps {
			continue
		}
		whole := !slices.ContainsFunc(r.Series, func(s weather.Series) bool {
			missing := 0
			for _, v := range s.Values[from:to] {
				missing += int(count(math.IsNaN(v)))
			}
			return missing > weather.MissingDaysAllowed*per && needed(r, s.Column)
		})
		if whole {
			years = append(years, y)
		}
	}
	if len(years) == 0 {
		return nil, fmt.Errorf("%s has no complete year (at most %d missing days)", r.File, weather.MissingDaysAllowed)
	}
	return years, nil
}

// needed tells whether a year without the column is incomplete, as weather.Complete has it.
func needed(r *weather.Record, c weather.Column) bool {
	switch c {
	case weather.Rain, weather.Global:
		return true
	case weather.TemperatureMin, weather.TemperatureMax:
		return r.Step == weather.Daily
	case weather.Temperature:
		return r.Step == weather.Hourly || r.Of(weather.TemperatureMin) == nil || r.Of(weather.TemperatureMax) == nil
	}
	return false
}

func perDay(r *weather.Record) int {
	if r.Step == weather.Hourly {
		return 24
	}
	return 1
}

// rowOf gives the row at which a year begins.
func rowOf(r *weather.Record, year int) int {
	return (weather.DayNumber(year, 1, 1)-r.Start)*perDay(r) - r.StartHour
}

// relaid copies whole years of a record, in the order given, onto the years from first.
func relaid(r *weather.Record, first int, years []int) *weather.Record {
	out := *r
	per := perDay(r)
	out.Start, out.StartHour = weather.DayNumber(first, 1, 1), 0
	out.Steps = (weather.DayNumber(first+len(years), 1, 1) - out.Start) * per
	out.Series = make([]weather.Series, len(r.Series))
	out.Warnings = slices.Clone(r.Warnings)
	for i, s := range r.Series {
		values := make([]float64, 0, out.Steps)
		var marks []weather.Mark
		for k, year := range years {
			from := rowOf(r, year)
			for day := range weather.DaysIn(first + k) {
				at := from + sourceDay(first+k, year, day)*per
				values = append(values, s.Values[at:at+per]...)
				if s.Marks != nil {
					marks = append(marks, s.Marks[at:at+per]...)
				}
			}
		}
		out.Series[i] = weather.Series{Column: s.Column, Source: s.Source, Unit: s.Unit, Values: values, Marks: marks}
	}
	return &out
}

// sourceDay gives the day of a source year, from 0, that has the date of a day of a made year.
func sourceDay(made, source, day int) int {
	const feb29 = 59
	switch {
	case weather.Leap(made) == weather.Leap(source) || day < feb29:
		return day
	case weather.Leap(made):
		return day - 1 // 29 February takes the 28th
	}
	return day + 1
}
