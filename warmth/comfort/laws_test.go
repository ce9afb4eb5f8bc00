package comfort

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

// A warmer week never lowers a band, a stricter category never widens it, and outside the standard's range
// the band stands still and says so.
func TestBandsMoveWithTheWeather(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom([]Standard{EN16798, ASHRAE55}).Draw(t, "standard")
		mean := rapid.Float64Range(-20, 45).Draw(t, "mean")
		var outer Band
		for i, c := range s.Categories() {
			b, err := At(s, c, quantity.Celsius(mean))
			warmer, err2 := At(s, c, quantity.Celsius(mean+2))
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			if warmer.Low < b.Low || warmer.High < b.High || !(b.Low < b.Neutral && b.Neutral < b.High) {
				t.Errorf("%s %s at %g: %+v, 2 K warmer %+v", s, c, mean, b, warmer)
			}
			r := s.rule()
			if inside := mean >= r.from && mean <= r.to; inside != (b.Beyond == 0) {
				t.Errorf("%s at %g: beyond %g", s, mean, float64(b.Beyond))
			}
			if i > 0 && (b.Low >= outer.Low || b.High <= outer.High) {
				t.Errorf("%s: %s is no wider than the category before", s, c)
			}
			outer = b
		}
	})
}

// A steady week has its own mean, both ways of reckoning; a single day moves it by a fifth.
func TestRunningMeanIsAMean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var days [7]float64
		low, high := math.Inf(1), math.Inf(-1)
		for i := range days {
			days[i] = rapid.Float64Range(-30, 40).Draw(t, "day")
			low, high = min(low, days[i]), max(high, days[i])
		}
		if got := float64(RunningMean(days)); got < low-1e-9 || got > high+1e-9 {
			t.Errorf("running mean %g of %v", got, days)
		}
		check.Balance(t, float64(Next(10, 15)), 11, "a day 5 K warmer")
		same := rapid.Float64Range(-30, 40).Draw(t, "same")
		check.Balance(t, float64(RunningMean([7]float64{same, same, same, same, same, same, same})), same, "a steady week")
		check.Balance(t, float64(Next(quantity.Celsius(same), quantity.Celsius(same))), same, "a steady day")
	})
}

// Every hour is cold, hot or neither, and two halves counted apart are the whole.
func TestCountsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Band{Neutral: 24, Low: 20, High: 27}
		var whole, first, second Count
		inside := 0.0
		for i := range 50 {
			operative := quantity.Celsius(rapid.Float64Range(10, 35).Draw(t, "operative"))
			half := &first
			if i >= 25 {
				half = &second
			}
			half.Add(b, operative, 1)
			whole.Add(b, operative, 1)
			if operative >= b.Low && operative <= b.High {
				inside++
			}
		}
		sum := first.Plus(second)
		check.Balance(t, sum.ColdDegree, whole.ColdDegree, "degree-hours cold")
		check.Balance(t, sum.HotDegree, whole.HotDegree, "degree-hours hot")
		if sum.Cold != whole.Cold || sum.Hot != whole.Hot || sum.Coldest != whole.Coldest || sum.Hottest != whole.Hottest || sum.Hours != whole.Hours {
			t.Errorf("%+v in halves, %+v as a whole", sum, whole)
		}
		check.Balance(t, whole.Cold+whole.Hot+inside, whole.Hours, "hours")
		check.Balance(t, whole.Outside()*50, 50-inside, "share outside")
		if float64(whole.Hottest)*whole.Hot < whole.HotDegree || float64(whole.Coldest)*whole.Cold < whole.ColdDegree {
			t.Errorf("the worst hour is no worse than the mean: %+v", whole)
		}
	})
	if (Count{}).Outside() != 0 {
		t.Error("no hours, and a share outside")
	}
}

func TestUnknownCategoryIsRefused(t *testing.T) {
	for _, c := range []struct {
		s Standard
		c Category
	}{{EN16798, "80"}, {ASHRAE55, "I"}, {"other", "I"}} {
		if _, err := At(c.s, c.c, 20); err == nil {
			t.Errorf("%s of %s was taken", c.c, c.s)
		}
	}
}

// What a person feels lies between air and walls.
func TestOperativeLiesBetween(t *testing.T) {
	check.Balance(t, float64(Operative(20, 16)), 18, "operative")
}
