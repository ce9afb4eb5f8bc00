package power

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
	"suffice/site/sun"
)

// roof is an invented array.
func roof(slope quantity.Degrees) *Array {
	a := &Array{Name: "roof", Peak: 2000, Plane: sun.Plane{Slope: slope, Azimuth: 180}, NOCT: UsualNOCT, Coefficient: UsualCoefficient,
		Soiling: UsualSoiling, Mismatch: UsualMismatch, Wiring: UsualWiring}
	a.Prepare()
	return a
}

// TestAngleShare: one straight on, nothing along the plane or behind, less with every degree,
// and within a hundredth (the largest difference found) of the trade's older
// one-figure curve, 1 - 0.05 (1/cos - 1) [ashrae-93, remembered], up to 60 deg.
func TestAngleShare(t *testing.T) {
	if got := angleShare(1); got != 1 {
		t.Errorf("straight on %g, want 1", got)
	}
	if angleShare(0) != 0 || angleShare(-0.5) != 0 {
		t.Error("light along the plane or from behind counts")
	}
	last := 1.0
	for degrees := 1; degrees < 90; degrees++ {
		cosine := math.Cos(float64(degrees) * math.Pi / 180)
		got := angleShare(cosine)
		if !(got < last && got > 0) {
			t.Errorf("%d deg counts %g, a degree less %g", degrees, got, last)
		}
		last = got
		if older := 1 - 0.05*(1/cosine-1); degrees <= 60 && math.Abs(got-older) > 0.01 {
			t.Errorf("%d deg counts %.3f, by the older curve %.3f", degrees, got, older)
		}
	}
}

// skyShare integrates angleShare over what a slope sees of a uniform sky (above the
// horizon) or of uniform ground (below), weighted by the cosine on the plane.
func skyShare(slope float64, ground bool) float64 {
	const rings, sectors = 400, 400
	sum, all := 0.0, 0.0
	sinSlope, cosSlope := math.Sincos(slope * math.Pi / 180)
	for i := range rings {
		z := (float64(i) + 0.5) / rings // sine of the height, equal areas of the sphere
		if ground {
			z = -z
		}
		flat := math.Sqrt(1 - z*z)
		for j := range sectors {
			along := flat * math.Cos(2*math.Pi*(float64(j)+0.5)/sectors)
			if cosine := z*cosSlope + along*sinSlope; cosine > 0 {
				sum, all = sum+cosine*angleShare(cosine), all+cosine
			}
		}
	}
	return sum / all
}

// TestSkyAngles holds the published effective angles against an integration over the sky with
// our own glass. The bounds are the largest differences found: half a hundredth for light
// from the sky, one and a half for light from the ground.
func TestSkyAngles(t *testing.T) {
	for slope := quantity.Degrees(0); slope <= 90; slope += 15 {
		a := roof(slope)
		if want := skyShare(float64(slope), false); math.Abs(a.sky-want) > 0.005 {
			t.Errorf("sky on %g deg counts %.4f, integrated %.4f", slope, a.sky, want)
		}
		if want := skyShare(float64(slope), true); slope > 0 && math.Abs(a.ground-want) > 0.015 {
			t.Errorf("ground on %g deg counts %.4f, integrated %.4f", slope, a.ground, want)
		}
	}
}

// TestOutputLaws: in proportion to the peak, less in warmer air, never more than the light
// and the cold allow, nothing in the dark.
func TestOutputLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := roof(quantity.Degrees(rapid.Float64Range(0, 90).Draw(t, "slope")))
		l := sun.PlaneLight{Incidence: rapid.Float64Range(0.01, 1).Draw(t, "incidence"), Beam: quantity.Irradiance(rapid.Float64Range(0, 1000).Draw(t, "beam")),
			Sky: quantity.Irradiance(rapid.Float64Range(0.1, 500).Draw(t, "sky")), Ground: quantity.Irradiance(rapid.Float64Range(0, 150).Draw(t, "ground"))}
		air := quantity.Celsius(rapid.Float64Range(-30, 45).Draw(t, "air"))
		w := a.Output(l, air)
		double := *a
		double.Peak *= 2
		double.Prepare()
		if got := double.Output(l, air); math.Abs(float64(got-2*w)) > 1e-9*float64(w) {
			t.Fatalf("twice the panels give %g W, once %g W", got, w)
		}
		if got := a.Output(l, air+1); got >= w {
			t.Fatalf("warmer air gives %g W, cooler %g W", got, w)
		}
		most := 2000 * float64(l.Total()) / 1000 * a.Kept() * (1 + UsualCoefficient*float64(air-25))
		if float64(w) > most {
			t.Fatalf("%g W, though light and air allow %g W at most", w, most)
		}
	})
	if got := roof(40).Output(sun.PlaneLight{Incidence: -0.3}, 10); got != 0 {
		t.Errorf("%g W in the dark", got)
	}
}

// TestSnow: it hides the panels, goes by sliding on a slope and by melting on the flat, and never leaves 0 to 1.
func TestSnow(t *testing.T) {
	steep, flat := roof(45), roof(0)
	var s SnowState
	if got := steep.Snow(&s, 0, -2, 0.6); got != 0 {
		t.Errorf("0.6 mm hides %g of the panels, want none", got)
	}
	if got := steep.Snow(&s, 0, -2, 0.6); got != 1 {
		t.Errorf("1.2 mm hides %g of the panels, want all", got)
	}
	if got := steep.Snow(&s, 100, -10, 0); got != 1 {
		t.Errorf("in hard frost %g is hidden, want all", got)
	}
	if s.Cover != 1 {
		t.Error("it slid in hard frost")
	}
	hours := func(a *Array, s SnowState) (n int) {
		for ; s.Cover > 0; n++ {
			a.Snow(&s, 500, 2, 0)
		}
		return n
	}
	// 0.197 x sin 45 deg of the row in an hour
	if got := hours(steep, s); got != 8 && got != int(math.Ceil(s.Lying/(2*snowMelts))) {
		t.Errorf("gone from the slope after %d hours", got)
	}
	if got, want := hours(flat, s), int(math.Ceil(s.Lying/(2*snowMelts))); got != want {
		t.Errorf("gone from the flat after %d hours, melting takes %d", got, want)
	}
	rapid.Check(t, func(t *rapid.T) {
		a, s := roof(quantity.Degrees(rapid.Float64Range(0, 90).Draw(t, "slope"))), SnowState{}
		for range 50 {
			dark := a.Snow(&s, quantity.Irradiance(rapid.Float64Range(0, 900).Draw(t, "light")), quantity.Celsius(rapid.Float64Range(-15, 8).Draw(t, "air")),
				quantity.Millimetres(rapid.SampledFrom([]float64{0, 0, 0.4, 3}).Draw(t, "fallen")))
			if dark < 0 || dark > 1 || s.Cover < 0 || s.Cover > 1 || s.Lying < 0 {
				t.Fatalf("dark %g, state %+v", dark, s)
			}
		}
	})
}

// TestColumn: the column is the output hour by hour, what snow kept away is counted, and memory is used again.
func TestColumn(t *testing.T) {
	a := roof(40)
	light := []sun.PlaneLight{{}, {Incidence: 0.8, Beam: 500, Sky: 150, Ground: 10}, {Incidence: 0.9, Beam: 600, Sky: 150, Ground: 10}, {}}
	air, fallen := []float64{-5, -5, -12, -12}, []float64{2, 0, 0, 0}
	var c Column
	a.Fill(&c, light, air, nil)
	for i := range light {
		if want := a.Output(light[i], quantity.Celsius(air[i])); quantity.Watts(c.Watts[i]) != want {
			t.Errorf("hour %d: %g W, want %g", i, c.Watts[i], want)
		}
	}
	bare, first := c.Watts[1]+c.Watts[2], &c.Watts[0]
	a.Fill(&c, light, air, fallen)
	if got := c.Watts[1] + c.Watts[2] + float64(c.SnowLost); math.Abs(got-bare) > 1e-9 || c.SnowHours != 2 || c.Watts[1] != 0 {
		t.Errorf("under snow %v and lost %g Wh in %d hours, without it %g Wh", c.Watts, c.SnowLost, c.SnowHours, bare)
	}
	if &c.Watts[0] != first {
		t.Error("memory was not used again")
	}
}

// TestStringFaults: the sentence names array, voltage, limit and remedy.
func TestStringFaults(t *testing.T) {
	s := String{OpenVoltage: 49.5, Coefficient: -0.0028, Series: 3}
	if err := s.Check("roof", -5, 150); err == nil || err.Error() != "array roof: 3 panels in series make 161.0 V in open circuit at -5 degC, more than the controller's limit of 150 V: wire at most 2 in series" {
		t.Errorf("got %v", err)
	}
	if err := s.Check("roof", -5, 170); err != nil {
		t.Errorf("got %v, want no fault", err)
	}
	s.Coefficient = 0
	if err := s.Check("roof", -45, 170); err == nil {
		t.Error("a frost colder than the code's table was taken")
	}
}
