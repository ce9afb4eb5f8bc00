package hourly

import (
	"gonum.org/v1/gonum/stat/distuv"

	"suffice/site/weather"
)

// A Budget is what the years said of one of the house's budgets.
type Budget struct {
	Want       float64 // short days a year that the house file allows
	Wanted     bool    // the file states a want; without one there is no verdict
	Years      int     // whole calendar years lived
	ShortDays  int     // days on which something that must run did not get all it wanted
	ShortYears int     // years with at least one short day
	Spell      Spell   // the longest unbroken run of short days
	Asked, Met float64 // of what must run, in the budget's unit
}

// A Spell is a run of days, counted from the first day of the weather.
type Spell struct {
	First, Days int
}

// ShortDaysPerYear gives the mean over the years lived.
func (b *Budget) ShortDaysPerYear() float64 {
	if b.Years == 0 {
		return 0
	}
	return float64(b.ShortDays) / float64(b.Years)
}

// Suffices reports whether the short days stay at or under the want.
func (b *Budget) Suffices() bool { return b.ShortDaysPerYear() <= b.Want }

// ShareMet gives the part of what must run that did, 0 to 1; 1 where nothing was asked.
func (b *Budget) ShareMet() float64 {
	if b.Asked == 0 {
		return 1
	}
	return b.Met / b.Asked
}

// Upper95 gives the one-sided 95 % upper bound on the share of years with a short
// day, by Clopper and Pearson (1934) [clopper-pearson-1934]: the quantile of the beta
// distribution with k+1 and n-k. Years are taken as independent draws of one
// climate, which droughts of several years are not: the true doubt is larger.
func (b *Budget) Upper95() float64 {
	k, n := b.ShortYears, b.Years
	if k >= n {
		return 1
	}
	return distuv.Beta{Alpha: float64(k) + 1, Beta: float64(n - k)}.Quantile(0.95)
}

// shortDay is the least shortfall that makes a day short, as a share of the day's
// asking: rounding in sums of 24 hours stays far below it.
const shortDay = 1e-9

// budgetOf counts the short days of a run of days.
func budgetOf(days []weather.Day, asked, met func(day int) float64) Budget {
	var b Budget
	year, run := int32(0), 0
	for d := range days {
		if days[d].Year != year || d == 0 {
			year = days[d].Year
			b.Years++
			b.ShortYears += shortIn(days[d:], d, year, asked, met)
		}
		a, m := asked(d), met(d)
		b.Asked += a
		b.Met += m
		if a-m <= shortDay*a {
			run = 0
			continue
		}
		run++
		b.ShortDays++
		if run > b.Spell.Days {
			b.Spell = Spell{First: d - run + 1, Days: run}
		}
	}
	return b
}

// shortIn gives 1 if the year that begins with days has a short day, else 0.
func shortIn(days []weather.Day, first int, year int32, asked, met func(day int) float64) int {
	for i := range days {
		if days[i].Year != year {
			return 0
		}
		if a, m := asked(first+i), met(first+i); a-m > shortDay*a {
			return 1
		}
	}
	return 0
}
