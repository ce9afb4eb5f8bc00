package sun

import (
	"math"

	"suffice/quantity"
	"suffice/site"
)

// NewFace makes a plane ready under a skyline.
func NewFace(p Plane, albedo float64, m Model, h site.Horizon) *Face {
	f := &Face{Plane: p, Albedo: albedo, Model: m, seen: 1}
	f.sinSlope, f.cosSlope = math.Sincos(float64(p.Slope.Radians()))
	f.sinAzimuth, f.cosAzimuth = math.Sincos(float64(p.Azimuth.Radians()))
	half := math.Sqrt((1 - f.cosSlope) / 2)
	f.leant = half * half * half
	if h.Flat() {
		return f
	}
	f.skyline = make([]float64, 361)
	for a := range f.skyline {
		f.skyline[a] = math.Sin(float64(h.Height(quantity.Degrees(a)).Radians()))
	}
	if whole := f.skyAbove(nil); whole > 0 {
		f.seen = f.skyAbove(f.skyline) / whole
	}
	return f
}

// skyAbove gives the sky above a skyline as the plane sees it: the integral of the cosine
// of incidence over solid angle, pi for a level plane under a flat skyline.
func (f *Face) skyAbove(skyline []float64) float64 {
	var sum float64
	for a := range 360 {
		low := 0.0
		if skyline != nil {
			low = math.Asin((skyline[a] + skyline[a+1]) / 2)
		}
		across := f.sinSlope * math.Cos((float64(a)+0.5)*degree-float64(f.Plane.Azimuth.Radians()))
		high := math.Pi / 2
		// The plane sees altitudes where cosSlope sin a + across cos a is positive.
		if edge := math.Atan2(-across, f.cosSlope); f.cosSlope >= 0 {
			low = max(low, edge)
		} else {
			high = min(high, math.Atan2(across, -f.cosSlope))
		}
		if high > low {
			at := func(x float64) float64 {
				s := math.Sin(x)
				return f.cosSlope*s*s/2 + across*(x/2+math.Sin(2*x)/4)
			}
			sum += (at(high) - at(low)) * degree
		}
	}
	return sum
}

// look is the sun as a face sees it for one hour or instant.
type look struct {
	ray
	altitude, azimuth float64 // rad
	outside           float64 // W/m2 outside the air, facing the sun, mean of the hour; 0 in the night
}

// lookOf makes a look from a moment.
func lookOf(at Moment) look {
	flat := math.Sqrt(max(0, 1-at.CosZenith*at.CosZenith))
	azimuth := directionOf(float64(at.Azimuth))
	return look{
		ray:      ray{at.CosZenith, flat * azimuth.cos, flat * azimuth.sin},
		altitude: math.Asin(max(-1, min(1, at.CosZenith))), azimuth: float64(at.Azimuth),
		outside: float64(at.Normal) * at.Share,
	}
}
