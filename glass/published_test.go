package glass

import (
	"math"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
)

// clearCover takes up nothing.
var clearCover = Pane{Thickness: 3, Index: GlassIndex, Conductivity: 1}

// suitePane is the pane of the suite's first edition, one of its covers at a time.
var suitePane = Pane{Thickness: 3.175, Index: GlassIndex, Extinction: 19.6, Conductivity: 1.06}

func TestOneFace(t *testing.T) {
	normal, _, _ := faces(1, GlassIndex)
	check.That(t, normal, check.Published{Source: "duffie-beckman", At: "example 5.1.1, one face at 0 deg", Value: "0.0434", Unit: "fraction", Standing: "remembered"})
	across, along, inside := faces(0.5, GlassIndex)
	check.That(t, math.Acos(inside)*180/math.Pi, check.Published{Source: "duffie-beckman", At: "example 5.1.1, refraction at 60 deg", Value: "34.58", Unit: "deg", Standing: "remembered"})
	check.That(t, across, check.Published{Source: "duffie-beckman", At: "example 5.1.1, across at 60 deg", Value: "0.185", Unit: "fraction", Standing: "remembered"})
	check.That(t, along, check.Published{Source: "duffie-beckman", At: "example 5.1.1, along at 60 deg", Value: "0.001", Unit: "fraction", Standing: "remembered"})
	check.That(t, (across+along)/2, check.Published{Source: "duffie-beckman", At: "example 5.1.1, mean at 60 deg", Value: "0.093", Unit: "fraction", Standing: "remembered"})
}

func TestClearCovers(t *testing.T) {
	through := func(count int, incidence quantity.Degrees) float64 {
		return Alike(count, clearCover).At(incidence).Transmitted
	}
	check.That(t, through(1, 0), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, one clear cover, 0 deg", Value: "0.917", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(1, 30), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, one clear cover, 30 deg", Value: "0.915", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(1, 45), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, one clear cover, 45 deg", Value: "0.901", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(1, 60), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, one clear cover, 60 deg", Value: "0.842", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(1, 70), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, one clear cover, 70 deg", Value: "0.724", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(1, 80), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, one clear cover, 80 deg", Value: "0.455", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(2, 0), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, two clear covers, 0 deg", Value: "0.847", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(2, 30), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, two clear covers, 30 deg", Value: "0.844", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(2, 45), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, two clear covers, 45 deg", Value: "0.830", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(2, 60), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, two clear covers, 60 deg", Value: "0.759", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(2, 70), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, two clear covers, 70 deg", Value: "0.605", Unit: "fraction", Standing: "remembered"})
	check.That(t, through(2, 80), check.Published{Source: "duffie-beckman", At: "figure 5.1.3, two clear covers, 80 deg", Value: "0.310", Unit: "fraction", Standing: "remembered"})
}

// One pane of 2.3 mm at 60 deg.
func TestOnePane(t *testing.T) {
	o := Alike(1, Pane{Thickness: 2.3, Index: GlassIndex, Extinction: 32, Conductivity: 1}).At(60)
	check.That(t, o.Transmitted, check.Published{Source: "duffie-beckman", At: "example 5.3.1, transmitted", Value: "0.768", Unit: "fraction", Standing: "remembered"})
	check.That(t, o.Reflected, check.Published{Source: "duffie-beckman", At: "example 5.3.1, reflected", Value: "0.147", Unit: "fraction", Standing: "remembered"})
	check.That(t, o.Taken(), check.Published{Source: "duffie-beckman", At: "example 5.3.1, absorbed", Value: "0.085", Unit: "fraction", Standing: "remembered"})
}

func TestSuitePane(t *testing.T) {
	through := func(count int, incidence quantity.Degrees) float64 {
		return Alike(count, suitePane).At(incidence).Transmitted
	}
	check.That(t, through(1, 0), check.Published{Source: "bestest-1995", At: "one pane, 0 deg", Value: "0.86156", Unit: "fraction", Standing: "remembered",
		Within: 0.0003, Why: "the report multiplies what a clear pane lets through by exp(-KL): 0.93968 x 0.91688; followed back and forth through the pane it is 0.0002 less"})
	check.That(t, through(2, 0), check.Published{Source: "bestest-1995", At: "two panes, 0 deg", Value: "0.74745", Unit: "fraction", Standing: "remembered",
		Within: 0.001, Why: "the report takes its one pane's 0.86156 and a clear pane's reflectance, 0.0831; followed exactly it is 0.0009 less"})
	check.That(t, through(2, 10), check.Published{Source: "bestest-1995", At: "two panes, 10 deg", Value: "0.746", Unit: "fraction", Standing: "twin"})
	check.That(t, through(2, 20), check.Published{Source: "bestest-1995", At: "two panes, 20 deg", Value: "0.744", Unit: "fraction", Standing: "twin"})
	check.That(t, through(2, 30), check.Published{Source: "bestest-1995", At: "two panes, 30 deg", Value: "0.739", Unit: "fraction", Standing: "twin"})
	check.That(t, through(2, 40), check.Published{Source: "bestest-1995", At: "two panes, 40 deg", Value: "0.728", Unit: "fraction", Standing: "twin"})
	check.That(t, through(2, 50), check.Published{Source: "bestest-1995", At: "two panes, 50 deg", Value: "0.705", Unit: "fraction", Standing: "twin"})
	check.That(t, through(2, 60), check.Published{Source: "bestest-1995", At: "two panes, 60 deg", Value: "0.647", Unit: "fraction", Standing: "twin"})
	check.That(t, through(2, 70), check.Published{Source: "bestest-1995", At: "two panes, 70 deg", Value: "0.507", Unit: "fraction", Standing: "twin"})
	check.That(t, through(2, 80), check.Published{Source: "bestest-1995", At: "two panes, 80 deg", Value: "0.242", Unit: "fraction", Standing: "twin"})
}

// The suite's window of 1995, heat and light together.
func TestSuiteWindow(t *testing.T) {
	w := Window{Glazing: Alike(2, suitePane), Inside: 8.29, Outside: 21}
	w.Gaps[0] = 6.297
	check.That(t, float64(w.CentreU()), check.Published{Source: "bestest-1995", At: "two panes, U", Value: "3.0", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, 12*float64(w.CentreU()), check.Published{Source: "bestest-1995", At: "12 m2 of window", Value: "36.0", Unit: "W/K", Standing: "remembered"})
	check.That(t, w.Gain(w.Glazing.At(0)), check.Published{Source: "bestest-1995", At: "two panes, solar heat gain at 0 deg", Value: "0.789", Unit: "fraction", Standing: "remembered"})
}

// The suite's window of 2020: each pane by its coefficients.
func TestSecondSuiteWindow(t *testing.T) {
	pane := Pane{Thickness: 3.048, Index: GlassIndex, Conductivity: 1, Coating: Coating{Transmitted: .834, Front: .075, Back: .075}}
	check.That(t, Alike(2, pane).At(0).Transmitted, check.Published{Source: "std140-2020", At: "two panes of tau 0.834, rho 0.075: 0.834²/(1 - 0.075²)", Value: "0.6995", Unit: "fraction", Standing: "own"})
}

// Two and three panes in air, U amid the glass.
func TestTabledWindows(t *testing.T) {
	u := func(width quantity.Millimetres, count int) float64 {
		w := Window{Glazing: Alike(count, Pane{Thickness: 4, Index: GlassIndex, Extinction: 20, Conductivity: 1}), Inside: FilmInside, Outside: FilmOutside}
		for i := range count - 1 {
			w.Gaps[i] = Gap{Width: width, Mean: 10, Difference: quantity.Kelvins(15 / float64(count-1)), Emissivities: [2]float64{BareEmissivity, BareEmissivity}}.Conductance()
		}
		return float64(w.CentreU())
	}
	check.That(t, u(6, 2), check.Published{Source: "iso10077-1", At: "table C.2, 4-6-4 air", Value: "3.3", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, u(8, 2), check.Published{Source: "iso10077-1", At: "table C.2, 4-8-4 air", Value: "3.1", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, u(12, 2), check.Published{Source: "iso10077-1", At: "table C.2, 4-12-4 air", Value: "2.8", Unit: "W/m2K", Standing: "remembered",
		Within: 0.06, Why: "2.851 lies on the edge between 2.8 and 2.9, and declarations by en673 print 2.9"})
	check.That(t, u(16, 2), check.Published{Source: "iso10077-1", At: "table C.2, 4-16-4 air", Value: "2.7", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, u(6, 3), check.Published{Source: "iso10077-1", At: "table C.2, 4-6-4-6-4 air", Value: "2.3", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, u(8, 3), check.Published{Source: "iso10077-1", At: "table C.2, 4-8-4-8-4 air", Value: "2.1", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, u(12, 3), check.Published{Source: "iso10077-1", At: "table C.2, 4-12-4-12-4 air", Value: "1.9", Unit: "W/m2K", Standing: "remembered"})
}

func tangent(d quantity.Degrees) float64 { return math.Tan(float64(d.Radians())) }

func TestOverhangShadows(t *testing.T) {
	check.That(t, 1.2/tangent(60), check.Published{Source: "overhang-page", At: "window of 1.2 m, shadow angle 60 deg, depth", Value: "0.69", Unit: "m"})
	p := RayTo(50, 210, 180).Profile()
	check.That(t, float64(p), check.Published{Source: "duffie-beckman", At: "profile angle, altitude 50 deg, 30 deg beside", Value: "53.99", Unit: "deg", Standing: "own"})
	check.That(t, 0.9*tangent(p), check.Published{Source: "duffie-beckman", At: "shadow of 0.9 m there", Value: "1.239", Unit: "m", Standing: "own"})
	noon := func(declination quantity.Degrees) float64 {
		altitude, azimuth := SunAt(40, declination, 12)
		return tangent(RayTo(altitude, azimuth, 180).Profile())
	}
	check.That(t, noon(23.44), check.Published{Source: "duffie-beckman", At: "40 N, noon in June, shadow of a metre", Value: "3.363", Unit: "m", Standing: "own"})
	check.That(t, noon(0), check.Published{Source: "duffie-beckman", At: "40 N, noon at the equinox, shadow of a metre", Value: "1.192", Unit: "m", Standing: "own"})
	check.That(t, noon(-23.44), check.Published{Source: "duffie-beckman", At: "40 N, noon in December, shadow of a metre", Value: "0.500", Unit: "m", Standing: "own"})
}

// The window of the window-depth page in sun at its shadow angle is just shaded whole.
func TestShadowReachesTheSill(t *testing.T) {
	s := Shade{Width: 3, Height: 1.2, Overhang: Overhang{Depth: 0.6928, Left: 9, Right: 9}}
	check.That(t, 1-s.Sunlit(RayTo(60, 180, 180)), check.Published{Source: "overhang-page", At: "window of 1.2 m, shadow angle 60 deg, 0.69 m deep: shaded", Value: "1.00", Unit: "fraction"})
}

// The suite's case 610: a metre of overhang along the whole front, half a metre over the windows.
func TestSuiteOverhang(t *testing.T) {
	s := Shade{Width: 3, Height: 2, Overhang: Overhang{Depth: 1, Gap: 0.5, Left: 0.5, Right: 4.5}}
	none, whole := quantity.Radians(math.Atan(0.5)).Degrees(), quantity.Radians(math.Atan(2.5)).Degrees()
	check.That(t, float64(none), check.Published{Source: "bestest-1995", At: "case 610, profile angle up to which nothing is shaded", Value: "26.57", Unit: "deg", Standing: "own"})
	check.That(t, float64(whole), check.Published{Source: "bestest-1995", At: "case 610, profile angle from which all is shaded", Value: "68.2", Unit: "deg", Standing: "own"})
	check.That(t, s.Sunlit(RayTo(26.56, 180, 180)), check.Published{Source: "bestest-1995", At: "case 610, sunlit at noon, 26.56 deg", Value: "1.000000", Unit: "fraction", Standing: "own"})
	check.That(t, s.Sunlit(RayTo(68.2, 180, 180)), check.Published{Source: "bestest-1995", At: "case 610, sunlit at noon, 68.2 deg", Value: "0.000000", Unit: "fraction", Standing: "own"})
	check.That(t, s.Sunlit(RayTo(45, 180, 180)), check.Published{Source: "bestest-1995", At: "case 610, sunlit at noon, 45 deg: (2.5 - 1)/2", Value: "0.750000", Unit: "fraction", Standing: "own"})
}

// An overhang as wide and as deep as the window is high, right at its head: two faces of a cube.
func TestViewOfACubesFace(t *testing.T) {
	v := (&Shade{Width: 1, Height: 1, Overhang: Overhang{Depth: 1}}).Views()
	check.That(t, v.Hidden, check.Published{Source: "howell-factors", At: "C-14, adjoining faces of a cube", Value: "0.20004", Unit: "fraction", Standing: "remembered",
		Within: 0.0005, Why: "what the sum over directions promises"})
}
