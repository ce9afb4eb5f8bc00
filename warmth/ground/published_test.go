package ground

import (
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/soil"
)

// clay is the ground of the printed tables, which name its conductivity only.
func clay() soil.Ground { return soil.Ground{Name: "clay", Conductivity: 1.5, Capacity: 3e6} }

func floor(area, perimeter, resists float64) Floor {
	return Floor{
		Area: quantity.SquareMetres(area), Perimeter: quantity.Metres(perimeter), Wall: 0.3,
		Ground: clay(), Resists: resists, Inside: InsideDown, Outside: Outside,
	}
}

func TestFloorsOnClay(t *testing.T) {
	for _, c := range []struct {
		resists, ratio float64
		want           check.Published
	}{
		{0, 0.05, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.05", Value: "0.13", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.10, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.10", Value: "0.22", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.15, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.15", Value: "0.30", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.20, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.20", Value: "0.37", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.25, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.25", Value: "0.44", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.30, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.30", Value: "0.49", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.35, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.35", Value: "0.55", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.40, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.40", Value: "0.60", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.45, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.45", Value: "0.65", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.50, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.50", Value: "0.70", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.55, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.55", Value: "0.74", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.60, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.60", Value: "0.78", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.70, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.70", Value: "0.86", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.80, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.80", Value: "0.93", Unit: "W/m2K", Standing: "remembered"}},
		{0, 0.90, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 0.90", Value: "0.99", Unit: "W/m2K", Standing: "remembered"}},
		{0, 1.0, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0 m2K/W, perimeter to area 1.0", Value: "1.05", Unit: "W/m2K", Standing: "remembered"}},
		{0.5, 0.20, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0.5 m2K/W, perimeter to area 0.20", Value: "0.29", Unit: "W/m2K", Standing: "remembered"}},
		{0.5, 0.30, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0.5 m2K/W, perimeter to area 0.30", Value: "0.38", Unit: "W/m2K", Standing: "remembered"}},
		{0.5, 0.40, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0.5 m2K/W, perimeter to area 0.40", Value: "0.44", Unit: "W/m2K", Standing: "remembered"}},
		{0.5, 0.50, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0.5 m2K/W, perimeter to area 0.50", Value: "0.50", Unit: "W/m2K", Standing: "remembered"}},
		{0.5, 0.60, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0.5 m2K/W, perimeter to area 0.60", Value: "0.55", Unit: "W/m2K", Standing: "remembered"}},
		{0.5, 0.80, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0.5 m2K/W, perimeter to area 0.80", Value: "0.62", Unit: "W/m2K", Standing: "remembered"}},
		{0.5, 1.0, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 0.5 m2K/W, perimeter to area 1.0", Value: "0.68", Unit: "W/m2K", Standing: "remembered"}},
		{2.5, 0.30, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 2.5 m2K/W, perimeter to area 0.30", Value: "0.21", Unit: "W/m2K", Standing: "remembered"}},
		{2.5, 0.40, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 2.5 m2K/W, perimeter to area 0.40", Value: "0.23", Unit: "W/m2K", Standing: "remembered"}},
		{2.5, 0.50, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 2.5 m2K/W, perimeter to area 0.50", Value: "0.24", Unit: "W/m2K", Standing: "remembered"}},
		{2.5, 0.60, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 2.5 m2K/W, perimeter to area 0.60", Value: "0.25", Unit: "W/m2K", Standing: "remembered"}},
		{2.5, 0.80, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 2.5 m2K/W, perimeter to area 0.80", Value: "0.27", Unit: "W/m2K", Standing: "remembered"}},
		{2.5, 1.0, check.Published{Source: "cibse-a", At: "table 3.15, clay, floor of 2.5 m2K/W, perimeter to area 1.0", Value: "0.28", Unit: "W/m2K", Standing: "remembered"}},
	} {
		check.That(t, floor(100, 100*c.ratio, c.resists).On(), c.want)
	}
}

func TestWorkedLShapedFloor(t *testing.T) {
	f := floor(10.2*6.7-3.5*2.7, 2*(10.2+6.7), 0)
	check.That(t, f.On(), check.Published{Source: "cibse-a", At: "worked use of the table for an L-shaped clay floor, 10.2 by 6.7 m less 3.5 by 2.7 m", Value: "0.74", Unit: "W/m2K",
		Within: 0.04, Why: "the worked use reads the row 0.55 of the table for a ratio of 0.574, and rows are 0.04 apart"})
}

// The older table was made another way, and does not say from which walls and soil.
func TestOlderFloorTable(t *testing.T) {
	const older = "another method and another wall, compared within the 6 % by which the two tables are known to differ, and half a printed digit"
	for _, c := range []struct {
		long, wide float64
		want       check.Published
	}{
		{60, 60, check.Published{Source: "ihve-1977", At: "floors with four exposed edges, 60 m by 60 m", Value: "0.15", Unit: "W/m2K", Within: 0.0140, Why: older}},
		{60, 15, check.Published{Source: "ihve-1977", At: "floors with four exposed edges, 60 m by 15 m", Value: "0.32", Unit: "W/m2K", Within: 0.0242, Why: older}},
		{30, 30, check.Published{Source: "ihve-1977", At: "floors with four exposed edges, 30 m by 30 m", Value: "0.26", Unit: "W/m2K", Within: 0.0206, Why: older}},
		{30, 15, check.Published{Source: "ihve-1977", At: "floors with four exposed edges, 30 m by 15 m", Value: "0.36", Unit: "W/m2K", Within: 0.0266, Why: older}},
		{30, 7.5, check.Published{Source: "ihve-1977", At: "floors with four exposed edges, 30 m by 7.5 m", Value: "0.55", Unit: "W/m2K", Within: 0.0380, Why: older}},
		{15, 15, check.Published{Source: "ihve-1977", At: "floors with four exposed edges, 15 m by 15 m", Value: "0.45", Unit: "W/m2K", Within: 0.0320, Why: older}},
		{15, 7.5, check.Published{Source: "ihve-1977", At: "floors with four exposed edges, 15 m by 7.5 m", Value: "0.62", Unit: "W/m2K", Within: 0.0422, Why: older}},
		{7.5, 7.5, check.Published{Source: "ihve-1977", At: "floors with four exposed edges, 7.5 m by 7.5 m", Value: "0.76", Unit: "W/m2K", Within: 0.0506, Why: older}},
	} {
		f := floor(c.long*c.wide, 2*(c.long+c.wide), 0)
		check.That(t, f.On(), c.want)
	}
}

// One case for each formula that no table shows, worked by hand from the standard's equations.
func TestFloorsWorkedByHand(t *testing.T) {
	sandy := func(area, perimeter, resists float64) Floor {
		f := floor(area, perimeter, resists)
		f.Ground = soil.Ground{Name: "sand", Conductivity: 2, Capacity: 2e6}
		return f
	}
	check.That(t, sandy(60, 32, 2.5).Breadth(), check.Published{Source: "iso13370", At: "B' of 10 m by 6 m", Value: "3.75", Unit: "m", Standing: "own"})
	check.That(t, sandy(60, 32, 2.5).Thickness(), check.Published{Source: "iso13370", At: "dt, wall 0.3 m, 2 W/mK, floor 2.5 m2K/W", Value: "5.72", Unit: "m", Standing: "own"})
	check.That(t, sandy(60, 32, 2.5).On(), check.Published{Source: "iso13370", At: "well insulated floor, B' 3.75, dt 5.72, 2 W/mK", Value: "0.269", Unit: "W/m2K", Standing: "own"})
	plain := sandy(100, 40, 0)
	check.That(t, plain.On(), check.Published{Source: "iso13370", At: "floor without insulation, B' 5, dt 0.72, 2 W/mK", Value: "0.7615", Unit: "W/m2K", Standing: "own"})
	edge := Edge{Upright: true, Reach: 0.6, Thickness: 0.05, Resistance: 0.05 / 0.035}
	check.That(t, plain.extra(edge), check.Published{Source: "iso13370", At: "d' of 50 mm at 0.035 W/mK", Value: "2.807", Unit: "m", Standing: "own"})
	check.That(t, plain.Gain(edge), check.Published{Source: "iso13370", At: "upright edge insulation, 0.6 m deep, dt 0.72, d' 2.807", Value: "-0.438", Unit: "W/mK", Standing: "own"})
	cellar := plain
	cellar.Resists = 1 // dt = 0.3 + 2(0.17 + 1 + 0.04) = 2.72
	ground, walls := cellar.In(Basement{Depth: 2, Wall: 1.5, Side: 0.13})
	check.That(t, ground, check.Published{Source: "iso13370", At: "basement floor, B' 5, z 2, dt 2.72, 2 W/mK", Value: "0.340", Unit: "W/m2K", Standing: "own"})
	check.That(t, walls, check.Published{Source: "iso13370", At: "basement walls, z 2, dt 2.72, dw 3.34, 2 W/mK", Value: "0.385", Unit: "W/m2K", Standing: "own"})
}

// kusuda is the case of the hand calculation: 10 degC, 12 K, coldest on day 35, 0.05 m2/d.
func kusuda() Undisturbed { return Undisturbed{Mean: 10, Swing: 12, Coldest: 35, Diffusivity: 0.05} }

func TestUndisturbedWorkedByHand(t *testing.T) {
	u := kusuda()
	check.That(t, float64(u.Damping()), check.Published{Source: "kusuda-achenbach", At: "damping depth at 0.05 m2/d", Value: "2.410", Unit: "m", Standing: "own"})
	check.That(t, u.Lag(1), check.Published{Source: "kusuda-achenbach", At: "lag of a metre at 0.05 m2/d", Value: "24.10", Unit: "d", Standing: "own"})
	for _, c := range []struct {
		depth, day float64
		want       check.Published
	}{
		{0, 35, check.Published{Source: "kusuda-achenbach", At: "day 35, surface", Value: "-2.000", Unit: "degC", Standing: "own"}},
		{1, 35, check.Published{Source: "kusuda-achenbach", At: "day 35, 1 m", Value: "2.747", Unit: "degC", Standing: "own"}},
		{2, 35, check.Published{Source: "kusuda-achenbach", At: "day 35, 2 m", Value: "6.467", Unit: "degC", Standing: "own"}},
		{3, 35, check.Published{Source: "kusuda-achenbach", At: "day 35, 3 m", Value: "8.893", Unit: "degC", Standing: "own"}},
		{5, 35, check.Published{Source: "kusuda-achenbach", At: "day 35, 5 m", Value: "10.728", Unit: "degC", Standing: "own"}},
		{0, 217.5, check.Published{Source: "kusuda-achenbach", At: "day 217.5, surface", Value: "22.0", Unit: "degC", Standing: "own"}},
		{1, 217.5, check.Published{Source: "kusuda-achenbach", At: "day 217.5, 1 m", Value: "17.253", Unit: "degC", Standing: "own"}},
		{2, 217.5, check.Published{Source: "kusuda-achenbach", At: "day 217.5, 2 m", Value: "13.533", Unit: "degC", Standing: "own"}},
		{3, 217.5, check.Published{Source: "kusuda-achenbach", At: "day 217.5, 3 m", Value: "11.107", Unit: "degC", Standing: "own"}},
		{5, 217.5, check.Published{Source: "kusuda-achenbach", At: "day 217.5, 5 m", Value: "9.272", Unit: "degC", Standing: "own"}},
	} {
		check.That(t, float64(u.At(quantity.Metres(c.depth), c.day)), c.want)
	}
	for depth, want := range map[float64]check.Published{
		1: {Source: "kusuda-achenbach", At: "swing left at 1 m", Value: "0.6604", Unit: "fraction", Standing: "own"},
		2: {Source: "kusuda-achenbach", At: "swing left at 2 m", Value: "0.4361", Unit: "fraction", Standing: "own"},
		3: {Source: "kusuda-achenbach", At: "swing left at 3 m", Value: "0.2880", Unit: "fraction", Standing: "own"},
	} {
		check.That(t, u.Left(quantity.Metres(depth)), want)
	}
}

// The exact heat of a slab that leaks through a strip of wall: the standard's method is 3.1 % above it.
func TestStandardAgainstExactSlab(t *testing.T) {
	f := Floor{Area: 144, Perimeter: 48, Wall: 0.24, Ground: soil.Ground{Conductivity: 1.9, Capacity: 2e6}}
	check.That(t, 20*144*f.On(), check.Published{Source: "iso13370", At: "12 m by 12 m slab, wall 0.24 m, 1.9 W/mK, 20 K", Value: "2508.9", Unit: "W", Standing: "own"})
	check.That(t, 20*144*f.On(), check.Published{Source: "bestest-ground", At: "case GC10a, exact solution", Value: "2432.6", Unit: "W",
		Within: 85, Why: "the simple method is compared with the exact one: 3.5 %, where the hand calculation gives 3.1 %", Standing: "remembered"})
}
