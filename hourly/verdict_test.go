package hourly

import (
	"math"
	"testing"

	"suffice/internal/check"
	"suffice/site/weather"
)

// calendar gives so many days from 1 January of a year.
func calendar(year, days int) []weather.Day {
	list := make([]weather.Day, days)
	for i := range list {
		list[i] = weather.DayOf(weather.DayNumber(year, 1, 1) + i)
	}
	return list
}

func TestNoShortYearInThirtySeven(t *testing.T) {
	check.That(t, 100*(&Budget{Years: 37}).Upper95(), check.Published{
		Source: "clopper-pearson-1934", At: "none in n: 1 - 0.05^(1/n), n 37", Value: "7.78", Unit: "%", Standing: "own",
	})
	if got := (&Budget{Years: 5, ShortYears: 5}).Upper95(); got != 1 {
		t.Errorf("all years short: upper bound %v, want 1", got)
	}
}

// The bound u of k short years in n is where seeing k or fewer has a chance of 5 %.
func TestUpperBoundIsWhereFiveRemain(t *testing.T) {
	for _, c := range []struct{ k, n int }{{1, 10}, {3, 37}, {12, 37}, {36, 37}} {
		u := (&Budget{Years: c.n, ShortYears: c.k}).Upper95()
		chance := 0.0
		for j := 0; j <= c.k; j++ {
			ways, _ := math.Lgamma(float64(c.n + 1))
			a, _ := math.Lgamma(float64(j + 1))
			b, _ := math.Lgamma(float64(c.n - j + 1))
			chance += math.Exp(ways - a - b + float64(j)*math.Log(u) + float64(c.n-j)*math.Log(1-u))
		}
		if math.Abs(chance-0.05) > 1e-9 {
			t.Errorf("%d of %d: the chance at the bound %v is %v, want 0.05", c.k, c.n, u, chance)
		}
	}
}

func TestShortDaysAndSpells(t *testing.T) {
	days := calendar(1999, 3*365+1)
	short := map[int]bool{10: true, 364: true, 365: true, 366: true, 800: true}
	b := budgetOf(days, func(int) float64 { return 10 }, func(d int) float64 {
		if short[d] {
			return 9
		}
		return 10 - 1e-10
	})
	if b.Years != 3 || b.ShortDays != 5 || b.ShortYears != 3 || b.Spell != (Spell{364, 3}) {
		t.Errorf("got %+v, want 5 short days in all 3 years and a spell of 3 days over New Year", b)
	}
	if got := b.ShareMet(); math.Abs(got-(10*1096-5)/(10*1096.0)) > 1e-9 {
		t.Errorf("share met %v", got)
	}
}
