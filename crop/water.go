package crop

import (
	"fmt"
	"math"
)

// Stages are the days of a season's four parts.
type Stages struct {
	Initial, Development, Middle, Late float64
	From
}

// Season gives the days of all stages.
func (s Stages) Season() float64 { return s.Initial + s.Development + s.Middle + s.Late }

// Kc are the coefficients of the initial stage, the middle and the season's end, for a
// lowest humidity of 45 % and a wind of 2 m/s. The edition is part of the source.
type Kc struct {
	Initial, Middle, End float64
	From
}

// Air is what Kc is corrected for: means over the stage.
type Air struct {
	Wind    float64 // m/s at 2 m
	LeastRH float64 // %, mean of the days' lowest relative humidity
	Height  float64 // m, of the crop
}

// Limits within which the correction was fitted (fao56 p. 121).
const (
	calmest, windiest  = 1.0, 6.0   // m/s
	driest, dampest    = 20.0, 80.0 // %
	lowest, highest    = 0.1, 10.0  // m
	uncorrectedEnd     = 0.45       // an end coefficient below it belongs to dry plants and stays
	referenceWind      = 2.0        // m/s
	referenceRH        = 45.0       // %
	correctionExponent = 0.3
)

// Faults says which of the air's figures lies outside what the correction was made for.
func (a Air) Faults() []string {
	var says []string
	say := func(what string, v, low, high float64, unit string) {
		if v < low || v > high {
			says = append(says, fmt.Sprintf("%s %g %s is outside %g to %g %s, for which the correction was made", what, v, unit, low, high, unit))
		}
	}
	say("wind", a.Wind, calmest, windiest, "m/s")
	say("lowest humidity", a.LeastRH, driest, dampest, "%")
	say("height", a.Height, lowest, highest, "m")
	return says
}

// shift gives what wind and damp add to a coefficient (fao56 eq. 62 and 65).
func (a Air) shift() float64 {
	u2, RHmin, h := a.Wind, a.LeastRH, a.Height
	return (0.04*(u2-referenceWind) - 0.004*(RHmin-referenceRH)) * math.Pow(h/3, correctionExponent)
}

// In gives the coefficients in other air: the middle one, and the end where it is at
// least 0.45 (fao56 eq. 62, 65). The initial one depends on wetting, not on this.
func (k Kc) In(a Air) Kc {
	d := a.shift()
	k.Middle += d
	if k.End >= uncorrectedEnd {
		k.End += d
	}
	return k
}

// At gives the coefficient at a time of the season in days: level, a line, level, a line
// (fao56 eq. 66). Before the season it is the first value, after it the last.
func (k Kc) At(s Stages, day float64) float64 {
	switch {
	case day <= s.Initial:
		return k.Initial
	case day < s.Initial+s.Development:
		return k.Initial + (day-s.Initial)/s.Development*(k.Middle-k.Initial)
	case day <= s.Initial+s.Development+s.Middle:
		return k.Middle
	case day < s.Season():
		return k.Middle + (day-s.Initial-s.Development-s.Middle)/s.Late*(k.End-k.Middle)
	}
	return k.End
}

// Sum gives the coefficient summed over the season, in days: times a steady reference it is the season's water.
func (k Kc) Sum(s Stages) float64 {
	return k.Initial*s.Initial + (k.Initial+k.Middle)/2*s.Development + k.Middle*s.Middle + (k.Middle+k.End)/2*s.Late
}

// Limits of the depletion share (fao56 table 22, note).
const leastDepletion, mostDepletion = 0.1, 0.8

// DepletionAt gives the share of the water in reach that may go before the plant suffers, when it gives off
// etc mm/d: p + 0.04 (5 − ETc), kept within 0.1 and 0.8 (fao56 table 22, note).
func (c *Crop) DepletionAt(etc float64) float64 {
	return min(mostDepletion, max(leastDepletion, c.Depletion.Value+0.04*(5-etc)))
}

// Stress gives Ks, the share of its water that a plant still takes at a depletion of the water
// in reach, both in mm: (TAW − Dr)/((1 − p) TAW) below RAW (fao56 eq. 84).
func Stress(reach, depletion, p float64) float64 {
	return min(1, max(0, (reach-depletion)/((1-p)*reach)))
}
