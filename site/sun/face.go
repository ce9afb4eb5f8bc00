package sun

import (
	"math"

	"suffice/quantity"
	"suffice/site"
)

func newFace(p Plane, albedo float64, m Model, h site.Horizon) *Face {
	f := &Face{Plane: p, Albedo: albedo, Model: m, seen: 1}
	f.sinSlope, f.cosSlope = math.Sincos(float64(p.Slope.Radians()))
	f.sinAzimuth, f.cosAzimuth = math.Sincos(float64(p.Azimuth.Radians()))
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

// hidden reports whether the skyline stands before the sun.
func (f *Face) hidden(at Moment) bool {
	if f.skyline == nil {
		return false
	}
	d := turn(float64(at.Azimuth), 0) / degree
	i := min(int(d), 359)
	return at.CosZenith < f.skyline[i]+(f.skyline[i+1]-f.skyline[i])*(d-float64(i))
}

// incidence gives the cosine of the angle between the sun and the plane's normal.
func (f *Face) incidence(at Moment) float64 {
	sinZ := math.Sqrt(max(0, 1-at.CosZenith*at.CosZenith))
	sinA, cosA := math.Sincos(float64(at.Azimuth))
	return f.cosSlope*at.CosZenith + f.sinSlope*sinZ*(cosA*f.cosAzimuth+sinA*f.sinAzimuth)
}

func (f *Face) light(at Moment, l Light) PlaneLight {
	out := PlaneLight{Incidence: f.incidence(at)}
	diffuse, beam := float64(l.Diffuse), float64(l.Beam)
	onPlane := max(0, out.Incidence)
	b := f.brightness(at, diffuse, beam)
	dome := diffuse * (1 - b.round*b.taken) * b.widen * (1 + f.cosSlope) / 2
	around := diffuse * b.round * onPlane / b.low
	band := diffuse * b.band * f.sinSlope
	sky := dome*f.seen + band
	direct, lost := beam*onPlane, dome*(1-f.seen)
	if at.CosZenith <= 0 || f.hidden(at) {
		lost += direct + around
		direct, around = 0, 0
	}
	out.Beam, out.Sky, out.Shaded = quantity.Irradiance(direct), quantity.Irradiance(sky+around), quantity.Irradiance(lost)
	out.Ground = quantity.Irradiance(f.Albedo * (diffuse + beam*max(0, at.CosZenith)) * (1 - f.cosSlope) / 2)
	return out
}
