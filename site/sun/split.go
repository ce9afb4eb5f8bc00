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

// String gives the model's word.
func (m SplitModel) String() string { return [...]string{"brl", "erbs"}[m] }

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
// row for each of the track's). A negative or missing (NaN) row, and the light of hours in
// which the sun stays down, passes into Diffuse as it is.
func (t *Track) Split(global []float64, m SplitModel) Split {
	n := len(global)
	s := Split{Diffuse: make([]float64, n), Beam: make([]float64, n), Moved: make([]float64, n)}
	kt := t.clearness(global)
	pressure := relativePressure(t.Place.Altitude)
	daily := 0.0
	for i, g := range global {
		if i%24 == 0 {
			daily = t.dayClearness(i/24, global)
		}
		if !(g > 0) || t.Share[i] <= 0 {
			s.Diffuse[i] = g
			continue
		}
		var fraction float64
		if m == Erbs {
			fraction = ErbsFraction(kt[i])
		} else {
			fraction = BRLFraction(BRLIn{Clearness: kt[i], Daily: daily, Persistence: t.persistence(kt, i),
				SolarTime: t.SolarTime[i], Altitude: quantity.Radians(t.Altitude[i]).Degrees()})
		}
		limit := t.Normal[i] * t.Share[i] * clearest(t.CosZenith[i], t.Altitude[i], pressure)
		beam := g * (1 - fraction) / t.CosZenith[i]
		s.Beam[i] = min(beam, limit)
		s.Moved[i] = (beam - s.Beam[i]) * t.CosZenith[i]
		s.Diffuse[i] = g - s.Beam[i]*t.CosZenith[i]
	}
	return s
}

// clearness gives each hour's global light over that outside the air, 0 while the sun is
// down. The models see 1 where a record says more: the air adds no light to an hour.
func (t *Track) clearness(global []float64) []float64 {
	kt := make([]float64, len(global))
	for i, g := range global {
		if t.Share[i] > 0 {
			kt[i] = min(1, max(0, g)/(t.Normal[i]*t.CosZenith[i]*t.Share[i]))
		}
	}
	return kt
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
// sunset, or beside a missing hour, the one that there is (ridley-boland-lauret sec. 2).
func (t *Track) persistence(kt []float64, i int) float64 {
	var sum, count float64
	for _, j := range [2]int{i - 1, i + 1} {
		if j >= 0 && j < len(kt) && t.Share[j] > 0 && !math.IsNaN(kt[j]) {
			sum += kt[j]
			count++
		}
	}
	if count == 0 {
		return kt[i]
	}
	return sum / count
}

// clearest gives the part of the light outside that comes through the clearest air as beam:
// Linke turbidity 2, "very clean cold air" (rigollier-bauer-wald sec. 3, optical depth of
// kasten-optical-depth). The air of the polar plateau passes it by 2 percent.
func clearest(cosZenith, altitude, pressure float64) float64 {
	const turbidity = 2
	m := airMass(cosZenith, altitude) * pressure
	depth := 1 / (10.4 + 0.718*m)
	if m <= 20 {
		depth = 1 / (6.6296 + m*(1.7513+m*(-0.1202+m*(0.0065-m*0.00013))))
	}
	return math.Exp(-0.8662 * turbidity * m * depth)
}

// relativePressure gives the air pressure at an altitude over that at sea level, by a scale
// height of 8434.5 m (rigollier-bauer-wald eq. 6).
func relativePressure(altitude quantity.Metres) float64 { return math.Exp(-float64(altitude) / 8434.5) }

// ErbsFraction gives the diffuse fraction of an hour's global light from its clearness
// (erbs-klein-duffie, eq. for hours).
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
// (ridley-boland-lauret, the coefficients fitted to seven places together).
func BRLFraction(in BRLIn) float64 {
	return 1 / (1 + math.Exp(-5.38+6.63*in.Clearness+0.006*in.SolarTime-0.007*float64(in.Altitude)+
		1.75*in.Daily+1.31*in.Persistence))
}
