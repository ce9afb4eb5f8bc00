package fabric

import (
	"math"
	"testing"

	"suffice/internal/check"
	"suffice/internal/solve"
	"suffice/material"
	"suffice/quantity"
)

func layer(d quantity.Metres, lambda material.Conductivity, rho material.Density, c material.Capacity) Layer {
	return Layer{Name: "layer", Thickness: d, Conductivity: lambda, Density: rho, Capacity: c}
}

// Surface resistances of the suite's films, 8.29 and 29.3 W/m2K.
const filmInside, filmOutside = 1 / 8.29, 1 / 29.3

var (
	lightWall  = Element{Layers: []Layer{layer(.012, .16, 950, 840), layer(.066, .04, 12, 840), layer(.009, .14, 530, 900)}, Inside: filmInside, Outside: filmOutside}
	suiteRoof  = Element{Layers: []Layer{layer(.010, .16, 950, 840), layer(.1118, .04, 12, 840), layer(.019, .14, 530, 900)}, Inside: filmInside, Outside: filmOutside}
	lightFloor = Element{Layers: []Layer{layer(.025, .14, 650, 1200), layer(1.003, .04, 0, 0)}, Inside: filmInside}
	heavyWall  = Element{Layers: []Layer{layer(.1, .51, 1400, 1000), layer(.0615, .04, 10, 1400), layer(.009, .14, 530, 900)}, Inside: filmInside, Outside: filmOutside}
	heavyFloor = Element{Layers: []Layer{layer(.08, 1.13, 1400, 1000), layer(1.007, .04, 0, 0)}, Inside: filmInside}

	// fifteen is the wall of iso13786 that is known with fifteen digits.
	fifteen = Element{Layers: []Layer{layer(.015, .21, 1150, 1100), layer(.096, .13, 500, 1600), layer(.13, .043, 190, 2100), layer(.015, .9, 1800, 1000)}, Inside: InsideLevel, Outside: Outside}

	concreteWall  = Element{Layers: []Layer{layer(.2, 1.8, 2400, 1000)}, Inside: InsideLevel, Outside: Outside}
	insulatedWall = Element{Layers: []Layer{layer(.2, 1.8, 2400, 1000), layer(.1, .04, 30, 1400), layer(.005, 1, 1200, 1500)}, Inside: InsideLevel, Outside: Outside}
)

func TestSuiteConstructions(t *testing.T) {
	check.That(t, float64(lightWall.SurfaceToSurface()), check.Published{Source: "bestest-1995", At: "light wall, surface to surface", Value: "0.559", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(lightWall.U()), check.Published{Source: "bestest-1995", At: "light wall, air to air", Value: "0.514", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(suiteRoof.SurfaceToSurface()), check.Published{Source: "bestest-1995", At: "roof, surface to surface", Value: "0.334", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(suiteRoof.U()), check.Published{Source: "bestest-1995", At: "roof, air to air", Value: "0.318", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(lightFloor.SurfaceToSurface()), check.Published{Source: "bestest-1995", At: "light floor, surface to surface", Value: "0.040", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(lightFloor.U()), check.Published{Source: "bestest-1995", At: "light floor, air to ground", Value: "0.039", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(heavyWall.SurfaceToSurface()), check.Published{Source: "bestest-1995", At: "heavy wall, surface to surface", Value: "0.556", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(heavyWall.U()), check.Published{Source: "bestest-1995", At: "heavy wall, air to air", Value: "0.512", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(heavyFloor.SurfaceToSurface()), check.Published{Source: "bestest-1995", At: "heavy floor, surface to surface", Value: "0.040", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, float64(heavyFloor.U()), check.Published{Source: "bestest-1995", At: "heavy floor, air to ground", Value: "0.039", Unit: "W/m2K", Standing: "remembered"})
	check.That(t, 63.6*float64(lightWall.U()), check.Published{Source: "bestest-1995", At: "63.6 m2 of light wall", Value: "32.715", Unit: "W/K", Standing: "remembered"})
	check.That(t, 48*float64(suiteRoof.U()), check.Published{Source: "bestest-1995", At: "48 m2 of roof", Value: "15.253", Unit: "W/K", Standing: "remembered",
		Within: 0.006, Why: "the report carries a rounded resistance; the layers as printed give 15.248"})
	check.That(t, 48*float64(lightFloor.U()), check.Published{Source: "bestest-1995", At: "48 m2 of light floor", Value: "1.892", Unit: "W/K", Standing: "remembered"})
}

func TestPlainWalls(t *testing.T) {
	solid := Element{Layers: []Layer{layer(.013, .57, 0, 0), layer(.102, .56, 0, 0), layer(.102, .77, 0, 0), layer(.018, .5, 0, 0)}, Inside: InsideLevel, Outside: Outside}
	check.That(t, float64(solid.U()), check.Published{Source: "solid-wall", At: "rendered brick wall, plastered", Value: "1.85", Unit: "W/m2K",
		Within: 0.01, Why: "the page adds resistances rounded to 0.01 m2K/W; unrounded they give 1.840"})
	filled := Element{Layers: []Layer{layer(.0125, .25, 0, 0), layer(.1, .15, 0, 0), layer(.1, .035, 0, 0), layer(.1, .77, 0, 0)}, Inside: InsideLevel, Outside: Outside}
	check.That(t, float64(filled.U()), check.Published{Source: "iso6946", At: "brick, 100 mm of insulation, block, plasterboard, added by hand", Value: "0.258", Unit: "W/m2K", Standing: "own"})
	earth, err := material.Named("rammed earth")
	if err != nil {
		t.Fatal(err)
	}
	rammed := Element{Layers: []Layer{Of(earth, .3)}, Inside: InsideLevel, Outside: Outside}
	check.That(t, float64(rammed.U()), check.Published{Source: "iso6946", At: "0.30 m of rammed earth, added by hand", Value: "2.26", Unit: "W/m2K", Standing: "own"})
}

// A timber-framed wall, studs over 9.5 % of 140 mm of wool.
func TestBridgedWall(t *testing.T) {
	wool := layer(.14, .042, 0, 0)
	wall := Element{Layers: []Layer{layer(.025, .25, 0, 0), wool, layer(.019, .13, 0, 0), {Name: "cavity", Gap: .09}, layer(.102, .77, 0, 0)}, Inside: InsideLevel, Outside: Outside}
	check.That(t, float64(wall.Resistance()), check.Published{Source: "scottish-6b", At: "6.B.2, path through the wool", Value: "3.971", Unit: "m2K/W",
		Within: 0.001, Why: "the example adds seven resistances rounded to 0.001"})
	wall.Layers[1].Conductivity = .13
	check.That(t, float64(wall.Resistance()), check.Published{Source: "scottish-6b", At: "6.B.2, path through the studs", Value: "1.715", Unit: "m2K/W",
		Within: 0.001, Why: "the example adds seven resistances rounded to 0.001"})
	wool.Bridge = Bridge{Share: .095, Conductivity: .13}
	wall.Layers[1] = wool
	b := wall.Bounds()
	check.That(t, float64(b.Upper), check.Published{Source: "scottish-6b", At: "6.B.2, its two paths put together, unrounded", Value: "3.531", Unit: "m2K/W", Standing: "own"})
	check.That(t, float64(b.Lower), check.Published{Source: "scottish-6b", At: "6.B.2, its layers put together, unrounded", Value: "3.419", Unit: "m2K/W", Standing: "own"})
	check.That(t, float64(wall.U()), check.Published{Source: "scottish-6b", At: "6.B.2, U from the mean of both limits", Value: "0.288", Unit: "W/m2K", Standing: "own"})
	check.That(t, 100*b.Error(), check.Published{Source: "scottish-6b", At: "6.B.2, half the distance of the limits over their mean", Value: "1.6", Unit: "%", Standing: "own"})
}

func TestSwings(t *testing.T) {
	s := fifteen.Swing(24)
	check.That(t, float64(s.Transmittance), check.Published{Source: "iso13786", At: "wall of four layers, periodic transmittance", Value: "0.04397424174344255", Unit: "W/m2K",
		Within: 1e-16, Why: "the last printed digit stands for the rounding of double precision on another machine"})
	check.That(t, float64(s.Steady), check.Published{Source: "iso13786", At: "wall of four layers, U", Value: "0.24877", Unit: "W/m2K", Standing: "twin"})
	check.That(t, s.Decrement, check.Published{Source: "iso13786", At: "wall of four layers, decrement", Value: "0.17677", Unit: "", Standing: "twin"})
	check.That(t, s.Lag, check.Published{Source: "iso13786", At: "wall of four layers, lag", Value: "13.78", Unit: "h", Standing: "twin"})
	check.That(t, s.Wrapped, check.Published{Source: "iso13786", At: "wall of four layers, the lag as a shift within half a day", Value: "10.22", Unit: "h", Standing: "twin"})
	check.That(t, s.InnerStore, check.Published{Source: "iso13786", At: "wall of four layers, kappa 1", Value: "36.21", Unit: "kJ/m2K", Standing: "twin"})
	check.That(t, s.OuterStore, check.Published{Source: "iso13786", At: "wall of four layers, kappa 2", Value: "37.51", Unit: "kJ/m2K", Standing: "twin"})
}

func TestConcreteSwings(t *testing.T) {
	l := concreteWall.Layers[0]
	depth := material.Material{Conductivity: l.Conductivity, Density: l.Density, Capacity: l.Capacity}.PenetrationDepth(86400)
	check.That(t, depth, check.Published{Source: "iso13786", At: "concrete, depth of penetration of a day", Value: "0.1436", Unit: "m", Standing: "twin"})
	s := concreteWall.Swing(24)
	check.That(t, float64(s.Steady), check.Published{Source: "iso13786", At: "200 mm of concrete, U", Value: "3.557", Unit: "W/m2K", Standing: "twin"})
	check.That(t, float64(s.Transmittance), check.Published{Source: "iso13786", At: "200 mm of concrete, periodic transmittance", Value: "1.827", Unit: "W/m2K", Standing: "twin"})
	check.That(t, s.Decrement, check.Published{Source: "iso13786", At: "200 mm of concrete, decrement", Value: "0.5136", Unit: "", Standing: "twin"})
	check.That(t, s.Lag, check.Published{Source: "iso13786", At: "200 mm of concrete, lag", Value: "5.68", Unit: "h", Standing: "twin"})
	check.That(t, float64(s.Inner), check.Published{Source: "iso13786", At: "200 mm of concrete, inner admittance", Value: "5.704", Unit: "W/m2K", Standing: "twin"})
	check.That(t, s.InnerLead, check.Published{Source: "iso13786", At: "200 mm of concrete, lead of the inner admittance", Value: "0.95", Unit: "h", Standing: "twin"})
	check.That(t, float64(s.Outer), check.Published{Source: "iso13786", At: "200 mm of concrete, outer admittance", Value: "11.592", Unit: "W/m2K", Standing: "twin"})
	check.That(t, s.OuterLead, check.Published{Source: "iso13786", At: "200 mm of concrete, lead of the outer admittance", Value: "1.87", Unit: "h", Standing: "twin"})
	check.That(t, s.InnerStore, check.Published{Source: "iso13786", At: "200 mm of concrete, kappa 1", Value: "86.2", Unit: "kJ/m2K", Standing: "twin"})
	check.That(t, s.OuterStore, check.Published{Source: "iso13786", At: "200 mm of concrete, kappa 2", Value: "170.9", Unit: "kJ/m2K", Standing: "twin"})
}

func TestInsulatedConcreteSwings(t *testing.T) {
	s := insulatedWall.Swing(24)
	check.That(t, float64(s.Steady), check.Published{Source: "iso13786", At: "concrete insulated outside, U", Value: "0.3589", Unit: "W/m2K", Standing: "twin"})
	check.That(t, float64(s.Transmittance), check.Published{Source: "iso13786", At: "concrete insulated outside, periodic transmittance", Value: "0.06056", Unit: "W/m2K", Standing: "twin"})
	check.That(t, s.Decrement, check.Published{Source: "iso13786", At: "concrete insulated outside, decrement", Value: "0.1687", Unit: "", Standing: "twin"})
	check.That(t, s.Lag, check.Published{Source: "iso13786", At: "concrete insulated outside, lag", Value: "8.11", Unit: "h", Standing: "twin"})
	check.That(t, s.InnerStore, check.Published{Source: "iso13786", At: "concrete insulated outside, kappa 1", Value: "82.3", Unit: "kJ/m2K", Standing: "twin"})
	check.That(t, s.OuterStore, check.Published{Source: "iso13786", At: "concrete insulated outside, kappa 2", Value: "12.5", Unit: "kJ/m2K", Standing: "twin"})
}

// 100 W/K and 10 MJ/K with 500 W against 0 degC, from 20 degC.
func TestOneStore(t *testing.T) {
	s := Store{Loss: 100, Capacity: 10e6}
	check.That(t, s.TimeConstant(), check.Published{Source: "one-store", At: "C/UA", Value: "27.78", Unit: "h", Standing: "own"})
	check.That(t, float64(s.After(24, 20, s.Settles(500, 0))), check.Published{Source: "one-store", At: "5 + 15 exp(-0.864)", Value: "11.32", Unit: "degC", Standing: "own"})
	check.That(t, math.Exp(-24/s.TimeConstant()), check.Published{Source: "one-store", At: "exp(-0.864)", Value: "0.4215", Unit: "", Standing: "own"})
}

// warmed gives the temperatures of a network's nodes after some seconds, from all at start, with its inner end
// at inner and its outer at start: steps of Crank and Nicolson, the first ones damped by halves of Euler's.
func warmed(n Network, seconds float64, start, inner float64) []float64 {
	const steps = 2000
	s, T := n.System(), make([]float64, len(n.Capacity))
	for i := range T {
		T[i] = start
	}
	for step := range steps {
		theta, parts := 0.5, 1
		if step < 4 {
			theta, parts = 1, 2
		}
		for range parts {
			s.advance(T, seconds/steps/float64(parts), theta, [2]float64{inner, start})
		}
	}
	return T
}

// advance moves T by one step: (C/dt + theta K) T' = (C/dt - (1 - theta) K) T + B u.
func (s System) advance(T []float64, dt, theta float64, ends [2]float64) {
	count := len(T)
	lower, diagonal, upper, right := make([]float64, count), make([]float64, count), make([]float64, count), make([]float64, count)
	for i := range count {
		for j := max(0, i-1); j <= min(count-1, i+1); j++ {
			right[i] -= (1 - theta) * s.Conductance[i][j] * T[j]
		}
		right[i] += s.Capacity[i]/dt*T[i] + s.Ends[i][0]*ends[0] + s.Ends[i][1]*ends[1]
		diagonal[i] = s.Capacity[i]/dt + theta*s.Conductance[i][i]
		if i > 0 {
			lower[i] = theta * s.Conductance[i][i-1]
		}
		if i+1 < count {
			upper[i] = theta * s.Conductance[i][i+1]
		}
	}
	solve.Tridiagonal(lower, diagonal, upper, right)
	copy(T, right)
}

// The network lives through time: frost of -15 degC on soil of 20 degC for sixty days.
func TestFrostReachesTheMain(t *testing.T) {
	const cells, deep = 250, 5.0
	soil := Element{Layers: []Layer{layer(deep, .52, 2050, 1840)}}
	T := warmed(soil.Cut([]int{cells}), 60*86400, 20, -15)
	i := 1
	for T[i] < 0 {
		i++
	}
	depth := deep / cells * (float64(i) - 0.5 - T[i-1]/(T[i]-T[i-1])) // nodes stand amid their cells
	check.That(t, depth, check.Published{Source: "incropera", At: "water main, depth that frost reaches in 60 days", Value: "0.68", Unit: "m"})
}

// A thick wall of 1.5 W/mK and 1e-6 m2/s, warmed for an hour through a film of 10 W/m2K.
func TestFilmWarmsAThickWall(t *testing.T) {
	const cells, deep, film = 205, 0.5, 10.0 // the node 20 stands 50 mm deep
	wall := Element{Layers: []Layer{layer(deep, 1.5, 1500, 1000)}, Inside: 1 / film}
	n := wall.Cut([]int{cells})
	T := warmed(n, 3600, 0, 1)
	check.That(t, 1-n.Link[0]*(1-T[0])/film, check.Published{Source: "carslaw-jaeger", At: "half space behind a film of 10 W/m2K, 1.5 W/mK, 1e-6 m2/s, an hour: surface", Value: "0.3292", Unit: "", Standing: "own"})
	check.That(t, T[20], check.Published{Source: "carslaw-jaeger", At: "the same, 50 mm deep", Value: "0.1493", Unit: "", Standing: "own"})
}
