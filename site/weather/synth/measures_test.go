package synth_test

import (
	"math"
	"slices"

	"suffice/site/weather"
)

// yearsOf gives the rain of the complete years that are wanted, by days of 365-day years
// (the last day of a leap year is left off), gaps as dry.
func yearsOf(r *weather.Record, use func(int) bool) (years [][]float64) {
	rain := r.Of(weather.Rain).Values
	for y := int(weather.DayOf(r.Start).Year); ; y++ {
		from := weather.DayNumber(y, 1, 1) - r.Start
		to := from + weather.DaysIn(y)
		if to > r.Steps {
			return years
		}
		if from < 0 || !use(y) {
			continue
		}
		days, missing := slices.Clone(rain[from:to]), 0
		for i, v := range days {
			if math.IsNaN(v) {
				days[i] = 0
				missing++
			}
		}
		if missing <= weather.MissingDaysAllowed {
			years = append(years, days[:365])
		}
	}
}

func odd(y int) bool  { return y%2 != 0 }
func even(y int) bool { return y%2 == 0 }

const measures = 6

var measureNames = [measures]string{"deviation of yearly rain, mm", "5 % of 6-month sums, mm", "5 % of 12-month sums, mm", "5 % of 24-month sums, mm",
	"tank for 95 % of days, mm of roof", "correlation of a year with the next kept"}

// measure takes the figures of years laid end to end; draw is the use, mm a day.
func measure(years [][]float64, draw float64) (out [measures]float64) {
	var months, sums []float64
	for _, y := range years {
		sum := 0.0
		for m, from := 0, 0; m < 12; m++ {
			to := from + weather.MonthDays(2001, m+1)
			mm := 0.0
			for _, v := range y[from:to] {
				mm += v
			}
			months = append(months, mm)
			sum += mm
			from = to
		}
		sums = append(sums, sum)
	}
	out[0] = deviation(sums)
	for i, n := range []int{6, 12, 24} {
		out[1+i] = quantile(runs(months, n), 0.05)
	}
	out[4] = tankFor(years, draw, 0.95)
	out[5] = follow(sums)
	return out
}

func deviation(v []float64) float64 {
	mean, sum := 0.0, 0.0
	for _, x := range v {
		mean += x / float64(len(v))
	}
	for _, x := range v {
		sum += (x - mean) * (x - mean)
	}
	return math.Sqrt(sum / float64(len(v)-1))
}

// follow gives the correlation of each value with the one after it.
func follow(v []float64) float64 {
	mean, up, down := 0.0, 0.0, 0.0
	for _, x := range v {
		mean += x / float64(len(v))
	}
	for i, x := range v {
		down += (x - mean) * (x - mean)
		if i > 0 {
			up += (x - mean) * (v[i-1] - mean)
		}
	}
	return up / down
}

func runs(v []float64, n int) (sums []float64) {
	sum := 0.0
	for i, x := range v {
		sum += x
		if i >= n {
			sum -= v[i-n]
		}
		if i >= n-1 {
			sums = append(sums, sum)
		}
	}
	return sums
}

// quantile gives the value below which lies a share, on the straight line between ranks.
func quantile(v []float64, p float64) float64 {
	s := slices.Sorted(slices.Values(v))
	x := p * float64(len(s)-1)
	i := min(int(x), len(s)-2)
	if s[i] == s[i+1] {
		return s[i]
	}
	return s[i] + (x-float64(i))*(s[i+1]-s[i])
}

// tankFor halves the size, mm on the roof, of a tank that begins full and meets the whole
// use on a share of the days; +Inf where none does.
func tankFor(years [][]float64, draw, share float64) float64 {
	met := func(size float64) float64 {
		held, good, days := size, 0, 0
		for _, y := range years {
			for _, rain := range y {
				held += rain
				days++
				if held >= draw {
					held -= draw
					good++
				} else {
					held = 0
				}
				held = min(held, size)
			}
		}
		return float64(good) / float64(days)
	}
	low, high := draw, 20*365*draw
	if met(high) < share {
		return math.Inf(1)
	}
	for high-low > 0.05 {
		if middle := (low + high) / 2; met(middle) < share {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}
