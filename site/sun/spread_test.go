package sun

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
	"suffice/site"
)

// plainly gives the light on a plane of one moment by the formulas in their order, nothing worked beforehand: the
// twin of what is spread once for all faces.
func plainly(f *Face, at look, diffuse, beam float64) PlaneLight {
	out := PlaneLight{Incidence: -1}
	if at.outside > 0 {
		azimuth := float64(f.Plane.Azimuth.Radians())
		out.Incidence = f.cosSlope*at.up + f.sinSlope*(at.north*math.Cos(azimuth)+at.east*math.Sin(azimuth))
	} else if diffuse == 0 && beam == 0 {
		return out
	}
	b := f.Model.brightness(&at, diffuse, beam)
	onPlane := max(0, out.Incidence)
	dome := diffuse * (1 - b.round*b.taken) * (1 + b.bow*math.Pow(math.Sin(float64(f.Plane.Slope.Radians())/2), 3)) * (1 + f.cosSlope) / 2
	around := diffuse * b.round * onPlane / b.low
	direct, lost := beam*onPlane, dome*(1-f.seen)
	behind := false
	if f.skyline != nil {
		d := at.azimuth / degree
		i := min(int(d), 359)
		behind = at.up < f.skyline[i]+(f.skyline[i+1]-f.skyline[i])*(d-float64(i))
	}
	if at.up <= 0 || behind {
		lost += direct + around
		direct, around = 0, 0
	}
	sky := dome*f.seen + around + diffuse*b.band*f.sinSlope
	if diffuse > 0 {
		sky = max(0, sky)
	}
	out.Beam, out.Sky, out.Shaded = quantity.Irradiance(direct), quantity.Irradiance(sky), quantity.Irradiance(lost)
	out.Round = quantity.Irradiance(min(around, sky))
	out.Ground = quantity.Irradiance(f.Albedo * (diffuse + beam*max(0, at.up)) * (1 - f.cosSlope) / 2)
	return out
}

// Light that is spread once and laid on any face is the plain formula's of every hour, to 1e-12 of the light there is;
// by Fill and Under alike. One hour in ten is told less than no diffuse light, as records do.
func TestSpreadIsThePlainFormula(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPlace(t)
		days := every(2000, 2000)[:366]
		first := rapid.IntRange(0, 330).Draw(t, "day")
		track := NewTrack(p, days[first:first+20])
		diffuse, beam := make([]float64, track.Hours()), make([]float64, track.Hours())
		part := rapid.SliceOfN(rapid.Float64Range(-0.05, 0.5), 7, 7).Draw(t, "parts of the light outside")
		for i := range diffuse {
			outside := track.Normal[i] * track.Share[i]
			diffuse[i] = outside * max(0, track.CosZenith[i]) * part[i%7]
			beam[i] = outside * max(0, part[(i+3)%7])
		}
		var h site.Horizon
		if rapid.Bool().Draw(t, "hill") {
			var err error
			if h, err = site.NewHorizon(site.HorizonPoint{Azimuth: 40, Height: 5}, site.HorizonPoint{Azimuth: 200, Height: 25}); err != nil {
				t.Fatal(err)
			}
		}
		f := NewFace(Plane{quantity.Degrees(rapid.Float64Range(0, 180).Draw(t, "slope")), quantity.Degrees(rapid.Float64Range(0, 360).Draw(t, "azimuth"))},
			0.2, rapid.SampledFrom(append(allModels, Perez52010)).Draw(t, "model"), h)
		lights := f.Fill(nil, track, diffuse, beam)
		for i, got := range lights {
			at := look{ray{track.CosZenith[i], track.north[i], track.east[i]}, track.Altitude[i], track.Azimuth[i], track.Normal[i] * track.Share[i]}
			want := plainly(f, at, diffuse[i], beam[i])
			there := math.Abs(diffuse[i])*12 + beam[i] // round the sun the diffuse light is divided by cos 85 at the least
			same := func(what string, a, b quantity.Irradiance) {
				if !(math.Abs(float64(a-b)) <= 1e-12*there) {
					t.Fatalf("hour %d: %s %.17g, plainly %.17g, of %g W/m2", i, what, float64(a), float64(b), there)
				}
			}
			same("beam", got.Beam, want.Beam)
			same("sky", got.Sky, want.Sky)
			same("round", got.Round, want.Round)
			same("ground", got.Ground, want.Ground)
			same("shaded", got.Shaded, want.Shaded)
			if math.Abs(got.Incidence-want.Incidence) > 1e-15*4 {
				t.Fatalf("hour %d: incidence %.17g, plainly %.17g", i, got.Incidence, want.Incidence)
			}
		}
	})
}
