package synth

import (
	"math"
	"slices"

	"suffice/site/weather"
)

// Redrawn fits a generator to as many complete years of a record as it has, drawn from them
// with replacement by seed (the bootstrap of efron-tibshirani, ch. 6: years stand for
// independent draws). Records made with several seeds then differ by chance and by
// what so few years tell of chances, amounts and the deviation between years; those of one fit
// differ by chance alone, as if its parameters were known. use picks the years that count; nil
// takes all.
//
// Left out: what the years that were recorded do not hold at all, and whatever makes
// years depend on each other.
func Redrawn(r *weather.Record, use func(year int) bool, seed uint64) (*Generator, error) {
	kept := r
	if use != nil {
		kept = without(r, use)
	}
	from, err := wholeYears(kept)
	if err != nil {
		return nil, err
	}
	drawn, err := Blocks(kept, defaultFirst, len(from), 1, seed)
	if err != nil {
		return nil, err
	}
	g, err := Fit(drawn, nil)
	if err != nil {
		return nil, err
	}
	g.say("what is imitated is %d years drawn with replacement from the %d complete ones by seed %d: another seed imitates others, which shows how little so many years tell", len(from), len(from), seed)
	return g, nil
}

// without gives a record that misses every day of the years that do not count.
func without(r *weather.Record, use func(year int) bool) *weather.Record {
	out := *r
	out.Series = slices.Clone(r.Series)
	per := perDay(r)
	for k := range out.Series {
		out.Series[k].Values = slices.Clone(out.Series[k].Values)
		for i := range out.Series[k].Values {
			if !use(int(weather.DayOf(r.Start + (r.StartHour+i)/per).Year)) {
				out.Series[k].Values[i] = math.NaN()
			}
		}
	}
	return &out
}
