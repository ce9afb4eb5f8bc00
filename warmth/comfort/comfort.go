// Package comfort says when a room that is neither heated nor cooled by machine is
// comfortable: the adaptive bands, which move with the weather of the last days.
//
// Checked against: the equations of EN 16798-1 and ASHRAE 55 at their limits (from memory of the
// standards), the running mean of a week worked by hand.
//
// Left out: draught, radiant asymmetry, damp and clothing, which the standards treat
// apart; people who are old, ill or very young, for whom the narrow category is meant; and
// the winter rule of EN 16798-1 for heated rooms, whose lower limits do not move.
package comfort

import (
	"fmt"
	"slices"

	"suffice/quantity"
)

// Standard is where a band comes from.
type Standard string

const (
	EN16798  Standard = "en16798"
	ASHRAE55 Standard = "ashrae55"
)

// Category is how strict a band is: I, II, III of EN 16798-1, or 90 and 80 (percent content) of ASHRAE 55.
type Category string

// Categories lists those of a standard, the strictest first.
func (s Standard) Categories() []Category {
	if s == ASHRAE55 {
		return []Category{"90", "80"}
	}
	return []Category{"I", "II", "III"}
}

// A rule is a standard's line: neutral = rise·mean + at, with a band about it, for running means in its range.
type rule struct {
	rise, at  float64
	low, high [3]float64 // K below and above neutral, by category
	from, to  float64    // degC, running means for which the line was fitted
}

// of gives the rule of a standard (en16798-1 annex B, eq. for buildings without mechanical cooling;
// ashrae55 section 5.4). EN 15251, which it replaced, had bands as wide below as above.
func (s Standard) rule() rule {
	if s == ASHRAE55 {
		return rule{rise: 0.31, at: 17.8, low: [3]float64{2.5, 3.5}, high: [3]float64{2.5, 3.5}, from: 10, to: 33.5}
	}
	return rule{rise: 0.33, at: 18.8, low: [3]float64{3, 4, 5}, high: [3]float64{2, 3, 4}, from: 10, to: 30}
}

// Band is what a room's operative temperature should lie in.
type Band struct {
	Neutral, Low, High quantity.Celsius
	// Beyond is how far the running mean lies outside the range for which the standard gives a
	// band, K, below 0 on the cold side: the band is then that of the range's end.
	Beyond quantity.Kelvins
}

// At gives the band for a running mean of the outside.
func At(s Standard, c Category, mean quantity.Celsius) (Band, error) {
	k := slices.Index(s.Categories(), c)
	if s != EN16798 && s != ASHRAE55 || k < 0 {
		return Band{}, fmt.Errorf("comfort: category %q of %q is not known: %s has I, II, III and %s has 90, 80", c, s, EN16798, ASHRAE55)
	}
	r := s.rule()
	held := min(max(float64(mean), r.from), r.to)
	neutral := r.rise*held + r.at
	return Band{
		Neutral: quantity.Celsius(neutral), Low: quantity.Celsius(neutral - r.low[k]), High: quantity.Celsius(neutral + r.high[k]),
		Beyond: quantity.Kelvins(float64(mean) - held),
	}, nil
}

// Fades is the share of yesterday's running mean in today's (en16798-1: 0.8).
const Fades = 0.8

// Next gives today's running mean from yesterday's and yesterday's mean outside (en16798-1:
// Trm = (1 − α) T(−1) + α Trm(−1)).
func Next(running, yesterday quantity.Celsius) quantity.Celsius {
	return (1-Fades)*yesterday + Fades*running
}

// RunningMean gives it from the daily means of the last seven days, yesterday first
// (en16798-1: (T1 + 0.8 T2 + 0.6 T3 + 0.5 T4 + 0.4 T5 + 0.3 T6 + 0.2 T7)/3.8).
func RunningMean(days [7]float64) quantity.Celsius {
	sum := 0.0
	for i, weight := range [7]float64{1, 0.8, 0.6, 0.5, 0.4, 0.3, 0.2} {
		sum += weight * days[i]
	}
	return quantity.Celsius(sum / 3.8)
}
