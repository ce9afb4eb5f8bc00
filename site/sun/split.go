package sun

import (
	"math"

	"suffice/quantity"
)

// A SplitModel says how global light is split into beam and diffuse.
type SplitModel int8

const (
	// BRL is the logistic model of Ridley, Boland & Lauret (2010). It is the default: fitted
	// on both hemispheres and several climates, and it sees the hours before and after.
	BRL SplitModel = iota
	// Erbs is the polynomial of Erbs, Klein & Duffie (1982), fitted on five stations of the USA.
	Erbs
)

// Split is global light divided. For every row Diffuse + Beam*CosZenith = Global, exactly
// to rounding: nothing is lost.
type Split struct {
	Diffuse []float64 // W/m2 on the horizontal, mean of the hour
	Beam    []float64 // W/m2 facing the sun, mean of the hour
	// Moved is the part of Diffuse that the model called beam, W/m2 on the horizontal, where
	// that beam would have passed the limit of what reaches the ground.
	Moved []float64
}

// Split divides a column of global light (W/m2 on the horizontal, mean of the hour, one
// row for each of the track's). A negative or missing (NaN) row passes into Diffuse as it is.
func (t *Track) Split(global []float64, m SplitModel) Split {
	n := len(global)
	s := Split{Diffuse: make([]float64, n), Beam: make([]float64, n), Moved: make([]float64, n)}
	clear := make([]float64, n) // clearness by the hour, 0 while the sun is down
	for i, g := range global {
		if t.Share[i] > 0 {
			clear[i] = max(0, g) / (t.Normal[i] * t.CosZenith[i] * t.Share[i])
		}
	}
	for day := range n / 24 {
		daily := t.dayClearness(day, global)
		for i := 24 * day; i < 24*day+24; i++ {
			if !(global[i] > 0) || t.Share[i] <= 0 {
				s.Diffuse[i] = global[i]
				continue
			}
			fraction := 0.0
			if m == Erbs {
				fraction = ErbsFraction(clear[i])
			} else {
				fraction = BRLFraction(BRLIn{Clearness: clear[i], Daily: daily, Persistence: t.persistence(clear, i),
					SolarTime: t.SolarTime[i], Altitude: quantity.Radians(t.Altitude[i]).Degrees()})
			}
			s.Beam[i], s.Moved[i] = limitBeam(global[i]*(1-fraction), t.At(i))
			s.Diffuse[i] = global[i]*fraction + s.Moved[i]
		}
	}
	return s
}

// dayClearness gives a day's global light over that outside the air, 0 in polar night.
// A missing hour counts on neither side.
func (t *Track) dayClearness(day int, global []float64) float64 {
	var sum, outside float64
	for i := 24 * day; i < 24*day+24; i++ {
		if t.Share[i] > 0 && !math.IsNaN(global[i]) {
			sum += max(0, global[i])
			outside += t.Normal[i] * t.CosZenith[i] * t.Share[i]
		}
	}
	if outside == 0 {
		return 0
	}
	return sum / outside
}

// persistence gives the mean clearness of the hours before and after; at sunrise and
// sunset, or beside a missing hour, the one that there is (ridley-boland-lauret-2010 sec. 2).
func (t *Track) persistence(clear []float64, i int) float64 {
	var sum, count float64
	for _, j := range [2]int{i - 1, i + 1} {
		if j >= 0 && j < len(clear) && t.Share[j] > 0 && !math.IsNaN(clear[j]) {
			sum += clear[j]
			count++
		}
	}
	if count == 0 {
		return clear[i]
	}
	return sum / count
}

// limitBeam turns beam on the horizontal, W/m2, into beam facing the sun, and gives what
// of it is more than ever reaches the ground: the "extremely rare" limit of
// long-dutton-2002, 0.95 Sa mu0^0.2 + 10 W/m2.
func limitBeam(horizontal float64, at Moment) (beam, moved float64) {
	limit := at.Share * (0.95*float64(at.Normal)*math.Pow(at.CosZenith, 0.2) + 10)
	if horizontal <= limit*at.CosZenith {
		return horizontal / at.CosZenith, 0
	}
	return limit, horizontal - limit*at.CosZenith
}

// ErbsFraction gives the diffuse fraction of an hour's global light from its clearness
// (erbs-klein-duffie-1982, eq. for hours).
func ErbsFraction(k float64) float64 {
	switch {
	case k <= 0.22:
		return 1 - 0.09*k
	case k <= 0.80:
		return 0.9511 + k*(-0.1604+k*(4.388+k*(-16.638+k*12.336)))
	}
	return 0.165
}

// BRLIn is what the BRL model looks at.
type BRLIn struct {
	Clearness   float64          // of the hour
	Daily       float64          // clearness of the whole day
	Persistence float64          // mean clearness of the hours before and after
	SolarTime   float64          // h, apparent
	Altitude    quantity.Degrees // of the sun
}

// BRLFraction gives the diffuse fraction of an hour's global light
// (ridley-boland-lauret-2010, the coefficients fitted to seven places together).
func BRLFraction(in BRLIn) float64 {
	return 1 / (1 + math.Exp(-5.38+6.63*in.Clearness+0.006*in.SolarTime-0.007*float64(in.Altitude)+
		1.75*in.Daily+1.31*in.Persistence))
}
