package light

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/glass"
	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site"
	"suffice/site/air"
	"suffice/site/sun"
)

// The sky turned upside down: incidence(lat, decl, azimuth) = incidence(-lat, -decl, 180 - azimuth).
func TestIncidenceMirrored(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude := quantity.Degrees(rapid.Float64Range(-90, 90).Draw(t, "latitude"))
		declination := quantity.Degrees(rapid.Float64Range(-23.45, 23.45).Draw(t, "declination"))
		facing := quantity.Degrees(rapid.Float64Range(0, 360).Draw(t, "facing"))
		slope := quantity.Degrees(rapid.Float64Range(0, 180).Draw(t, "slope"))
		clock := rapid.Float64Range(0, 24).Draw(t, "solar time")
		at := func(latitude, declination, facing quantity.Degrees) float64 {
			return float64(sun.NewFace(sun.Plane{Slope: slope, Azimuth: facing}, 0, sun.Isotropic, site.Horizon{}).
				Light(sun.SolarMoment(latitude, declination, clock, 80), sun.Light{Beam: 1}).Incidence)
		}
		north, south := at(latitude, declination, facing), at(-latitude, -declination, 180-facing)
		if d := math.Abs(north - south); d > 1e-9 {
			t.Fatalf("cosine of incidence %.12g, mirrored %.12g", north, south)
		}
	})
}

// A face that takes heat from the air, the sky and the sun and passes none on is exactly as warm as told.
func TestFaceAloneBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Outer{Emissivity: rapid.Float64Range(0, 1).Draw(t, "emissivity")}
		h := hour{
			air: rapid.Float64Range(-40, 45).Draw(t, "air"), loss: rapid.Float64Range(-50, 150).Draw(t, "loss"),
			absorbed: rapid.Float64Range(0, 1000).Draw(t, "absorbed"), convection: rapid.Float64Range(5, 40).Draw(t, "convection"),
		}
		warm, conductance := o.meets(h)
		own := o.Emissivity * (air.SkyLight(quantity.Celsius(warm), 1) - air.SkyLight(quantity.Celsius(h.air), 1))
		if off := h.absorbed - h.loss - h.convection*(warm-h.air) - own; math.Abs(off) > 1e-3*conductance {
			t.Fatalf("%.4g W/m2 left over at %.3f degC", off, warm)
		}
	})
}

// Light is not made: what goes through and what is taken up inside stays under what arrives, boards take away and add
// nothing, and the table's shares of sun lie from 0 to 1.
func TestWindowPassesLessThanArrives(t *testing.T) {
	o := outdoors(t, denver, Options{Albedo: 0.2})
	for _, facing := range []quantity.Degrees{0, 45, 180, 270} {
		open, shut := o.must(t, suiteWindow(facing, twoPanes(), bare)), o.must(t, suiteWindow(facing, twoPanes(), finned))
		for i, l := range o.Light(upright(facing)) {
			through, inside := open.Beam[i]+open.Diffuse[i], open.Taken[i]*open.Inward
			if through < 0 || inside < 0 || through+inside > float64(l.Total())*(1+1e-12) {
				t.Fatalf("hour %d: %g W/m2 through and %g taken up of %g", i, through, inside, float64(l.Total()))
			}
			if shut.Beam[i] > open.Beam[i] || shut.Diffuse[i] > open.Diffuse[i] || shut.Taken[i] > open.Taken[i] {
				t.Fatalf("hour %d: boards let more through than there is without", i)
			}
		}
		for row, share := range shut.Sunlit {
			if !(share >= 0 && share <= 1) {
				t.Fatalf("row %d: %g of the window is sunlit", row, share)
			}
		}
	}
}

// Taken is the panes' own balance: with a room and an outside at rest, the heat that enters is Window.Gain's.
func TestTakenIsInward(t *testing.T) {
	o := outdoors(t, denver, Options{Albedo: 0.2})
	w := suiteWindow(180, twoPanes(), bare)
	w.Pane.Frame = glass.Frame{Share: 0.2, U: 2, Absorptance: 0.5}
	h := o.must(t, w)
	w.Pane.Outside = o.outer(w.Outer, 90, 0, nil, make([]float64, len(h.Outside)))
	curve := w.Pane.Glazing.Curve()
	for i, l := range o.Light(w.Plane) {
		want := float64(l.Sky-l.Round+l.Ground) * w.Pane.WholeGain(curve.Diffuse)
		if direct := float64(l.Beam + l.Round); direct > 0 {
			want += direct * w.Pane.WholeGain(curve.At(l.Incidence))
		}
		check.Balance(t, h.Beam[i]+h.Diffuse[i]+h.Taken[i]*h.Inward, want, "gain of the hour")
	}
}

// All light ends somewhere, from wherever it comes.
func TestLandingSumsToOne(t *testing.T) {
	o := outdoors(t, denver, Options{Albedo: 0.2})
	r := suiteRoom(t)
	for _, shade := range []glass.Shade{bare, hung, finned} {
		l, err := o.Landing(r, suiteWindow(180, twoPanes(), shade), Spot{Side: Front, Along: 0.5, Sill: 0.2})
		if err != nil {
			t.Fatal(err)
		}
		check.Balance(t, l.Diffuse.Sum(), 1, "shares of diffuse light")
		for row := range l.Beam {
			check.Balance(t, l.Beam[row].Sum(), 1, "shares of the beam")
		}
	}
}

// The views of each side sum to 1 and are mutual.
func TestViewsOfBox(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge := func(what string) quantity.Metres {
			return quantity.Metres(rapid.Float64Range(0.5, 20).Draw(t, what))
		}
		b := Box{Width: edge("width"), Depth: edge("depth"), Height: edge("height")}
		areas, views := b.areas(), b.views()
		for j := range views {
			var all float64
			for k := range views[j] {
				all += views[j][k]
				check.Balance(t, areas[j]*views[j][k], areas[k]*views[k][j], "views both ways")
				if views[j][k] < 0 {
					t.Fatalf("view from %v to %v is %g", Side(j), Side(k), views[j][k])
				}
			}
			check.Balance(t, all, 1, "views of a side")
		}
	})
}

// The beam's first fall, exact by areas, is that of many rays.
func TestBeamFallsAsRaysDo(t *testing.T) {
	r := suiteRoom(t)
	rapid.Check(t, func(t *rapid.T) {
		side := Front + Side(rapid.IntRange(0, 3).Draw(t, "side"))
		width, depth := r.across(side)
		at := Spot{Side: side, Along: quantity.Metres(rapid.Float64Range(0, width-2).Draw(t, "along")), Sill: 0.2}
		w := suiteWindow(180, twoPanes(), glass.Shade{Width: 2, Height: 2})
		ray := glass.RayTo(quantity.Degrees(rapid.Float64Range(2, 88).Draw(t, "altitude")), quantity.Degrees(rapid.Float64Range(100, 260).Draw(t, "azimuth")), 180)
		got := r.First(w, at, ray)
		var want [Sides]float64
		const n = 100
		for i := range n {
			for k := range n {
				x, y := float64(at.Along)+2*(float64(i)+0.5)/n, 0.2+2*(float64(k)+0.5)/n
				down, across, on := y*ray.Out/ray.Up, math.Inf(1), around(side, 3)
				if ray.Right > 0 {
					across = x * ray.Out / ray.Right
				} else if ray.Right < 0 {
					across, on = (x-width)*ray.Out/ray.Right, around(side, 1)
				}
				switch {
				case down <= min(across, depth):
					on = Floor
				case depth <= across:
					on = around(side, 2)
				}
				want[on] += 1.0 / n / n
			}
		}
		for j := range want {
			if d := math.Abs(got[j] - want[j]); d > 2.0/n {
				t.Fatalf("%v: %.4f of the beam, by rays %.4f", Side(j), got[j], want[j])
			}
		}
	})
}

// A sky is colder without cloud, and never warmer than the air.
func TestSkyUnderCloud(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dew := quantity.Celsius(rapid.Float64Range(-40, 28).Draw(t, "dew point"))
		clock := rapid.Float64Range(0, 24).Draw(t, "solar time")
		for _, m := range []SkyModel{BerdahlMartin, ClarkAllen} {
			last := 0.0
			for _, light := range []float64{1.1, 1, 0.8, 0.5, 0.2, 0} {
				e := m.Emissivity(dew, clock, m.Cloud(light))
				if !(e >= last && e <= 1) {
					t.Fatalf("%v: emissivity %.4f at %.2f of a clear day's light, %.4f with more", m, e, light, last)
				}
				last = e
			}
		}
	})
}

// In a still night a level face that trades only radiation comes to the sky's own temperature; one that looks at the
// ground stays as warm as the air; an upright one lies between, and nearer the air where the sky by the skyline is warmer.
func TestFaceSeesItsSky(t *testing.T) {
	o := outdoors(t, denver, Options{})
	at := func(slope quantity.Degrees, even bool) []float64 {
		h, err := o.Face(Face{Plane: sun.Plane{Slope: slope, Azimuth: 90}, Outer: Outer{Convection: 0.1, Emissivity: 1, Even: even}})
		if err != nil {
			t.Fatal(err)
		}
		return h.Equivalent
	}
	level, down, upright, even := at(0, false), at(180, false), at(90, false), at(90, true)
	for i, outside := range o.Hours.Temperature {
		sky := o.Sky.Temperature[i]
		// 0.1 W/m2K of the air beside about 4 of the sky moves the face by a fortieth of the way, and cold nights have less of the sky
		if d := level[i] - sky; !(d >= -1e-9 && d <= (outside-sky)/20) {
			t.Fatalf("hour %d: a level face comes to %.3f degC under a sky of %.3f, air %.3f", i, level[i], sky, outside)
		}
		if math.Abs(down[i]-outside) > 1e-6 {
			t.Fatalf("hour %d: a face that looks down comes to %.6f degC, air %.6f", i, down[i], outside)
		}
		if !(level[i] <= even[i] && even[i] <= upright[i] && upright[i] <= outside) {
			t.Fatalf("hour %d: level %.3f, upright under an even sky %.3f, upright %.3f, air %.3f degC", i, level[i], even[i], upright[i], outside)
		}
	}
}
