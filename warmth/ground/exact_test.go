package ground

import (
	"math"
	"slices"
	"testing"

	"suffice/internal/check"
	"suffice/internal/solve"
	"suffice/quantity"
	"suffice/soil"
)

// A block is a quarter of a half space in three dimensions, faces at its symmetry adiabatic, its far
// sides and foot at the temperature of the undisturbed ground.
type block struct {
	side, deep []float64 // lines outward from the middle of the slab; downward
	conducts   float64
	face       func(x, y float64) float64 // degC of the surface
	far        float64                    // degC
}

// growing gives lines from a place outward whose steps grow.
func growing(from, first, grows, to float64) (lines []float64) {
	for x, step := from, first; x < to; step *= grows {
		x += step
		lines = append(lines, min(x, to))
	}
	return lines
}

// at numbers the cells.
func (b *block) at(i, j, k int) int { return (k*(len(b.side)-1)+j)*(len(b.side)-1) + i }

// neighbours gives the conductances from the middle of cell i of some lines to its lower and upper neighbours
// (the outside behind the last), for a square metre.
func neighbours(lines []float64, conducts float64, i int) (lower, upper float64) {
	d := lines[i+1] - lines[i]
	if i > 0 {
		lower = conducts * 2 / (d + lines[i] - lines[i-1])
	}
	if i+2 < len(lines) {
		return lower, conducts * 2 / (d + lines[i+2] - lines[i+1])
	}
	return lower, conducts * 2 / d
}

// solve gives the heat, W, through that part of the quarter's surface for which counts is true.
func (b *block) solve(t *testing.T, counts func(x, y float64) bool) float64 {
	n, deep := len(b.side)-1, len(b.deep)-1
	size := n * n * deep
	var g [3][]float64 // to the next cell in each direction
	diagonal, right := make([]float64, size), make([]float64, size)
	top := make([]float64, n*n)
	for d := range g {
		g[d] = make([]float64, size)
	}
	for k := range deep {
		for j := range n {
			for i := range n {
				dx, dy, dz := b.side[i+1]-b.side[i], b.side[j+1]-b.side[j], b.deep[k+1]-b.deep[k]
				c := b.at(i, j, k)
				for d, one := range []struct {
					lines []float64
					at    int
					area  float64
				}{{b.side, i, dy * dz}, {b.side, j, dx * dz}, {b.deep, k, dx * dy}} {
					lower, upper := neighbours(one.lines, b.conducts, one.at)
					diagonal[c] += (lower + upper) * one.area
					g[d][c] = upper * one.area
					if one.at+2 == len(one.lines) {
						right[c] += upper * one.area * b.far
						g[d][c] = 0
					}
				}
				if k == 0 {
					x, y := (b.side[i]+b.side[i+1])/2, (b.side[j]+b.side[j+1])/2
					top[c] = b.conducts * 2 / dz * dx * dy
					diagonal[c] += top[c]
					right[c] += top[c] * b.face(x, y)
				}
			}
		}
	}
	stride := [3]int{1, n, n * n}
	multiply := func(dst, x []float64) {
		for c := range x {
			dst[c] = diagonal[c] * x[c]
		}
		for d, s := range stride {
			for c := range size - s {
				dst[c] -= g[d][c] * x[c+s]
				dst[c+s] -= g[d][c] * x[c]
			}
		}
	}
	x := slices.Repeat([]float64{b.far}, size)
	if err := solve.ConjugateGradients(multiply, diagonal, right, x, 1e-8, 2000); err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for j := range n {
		for i := range n {
			if x0, y0 := (b.side[i]+b.side[i+1])/2, (b.side[j]+b.side[j+1])/2; counts(x0, y0) {
				sum += top[b.at(i, j, 0)] * (b.face(x0, y0) - x[b.at(i, j, 0)])
			}
		}
	}
	return sum
}

// A slab of 12 m by 12 m at 30 degC on earth of 1.9 W/mK, whose face outside is at 10 degC and falls
// between over a strip of wall, 0.24 m wide, has an exact solution.
func TestExactSlab(t *testing.T) {
	inner := growing(0, 0.02, 1.35, 6) // outward from the edge
	var side []float64
	for _, x := range inner {
		side = append(side, 6-x)
	}
	slices.Reverse(side)
	side = append(side, 6, 6.03, 6.06, 6.09, 6.12, 6.15, 6.18, 6.21, 6.24)
	side = append(side, growing(6.24, 0.04, 1.45, 100)...)
	b := block{
		side: side, deep: append([]float64{0}, growing(0, 0.012, 1.33, 100)...), conducts: 1.9, far: 10,
		face: func(x, y float64) float64 { return 10 + 20*min(max((6.24-max(x, y))/0.24, 0), 1) },
	}
	got := 4 * b.solve(t, func(x, y float64) bool { return x < 6 && y < 6 })
	t.Logf("%.1f W", got)
	check.That(t, got, check.Published{Source: "bestest-ground", At: "case GC10a, 12 m by 12 m slab, exact solution, by finite volumes in three dimensions", Value: "2432.6", Unit: "W",
		Within: 24.3, Why: "1 %, what the report takes for a numerical solution", Standing: "remembered"})
}

// long is a section through half of a long building 8 m wide, slab with 2 m2K/W on sand or gravel.
func long(t *testing.T) (n *Network, room, outside int, standard Floor) {
	t.Helper()
	const width, wall, conducts = 8.0, 0.3, 2.0
	x := Lines([]float64{-60, -wall, 0, width / 2}, 0.03, 1.3, 4)
	y := append(Lines([]float64{-60, 0}, 0.03, 1.3, 4), 0.1)
	s := section(t, x, y)
	s.Fill(Rect{-60, width, -60, 0}, Material{"earth", conducts, 2e6})
	outside = s.Open(Rect{-60, -wall, 0, 1}, Air{"outside", Outside})
	room = s.Open(Rect{0, width, 0, 1}, Air{"room", 2 + InsideDown})
	return network(t, s), room, outside, Floor{Area: quantity.SquareMetres(width), Perimeter: 2, Wall: wall,
		Ground: soil.Ground{Conductivity: conducts, Capacity: 2e6}, Resists: 2, Inside: InsideDown, Outside: Outside}
}

// A section through a long building knows no ends: the standard's method for a breadth that is the width of the
// strip lies near it.
func TestSectionOfALongFloor(t *testing.T) {
	n, room, outside, standard := long(t)
	airs := make([]float64, 2)
	airs[room], airs[outside] = 1, 0
	got, want := 2*steady(t, n, airs...).Flows[room], float64(standard.Area)*standard.On()
	t.Logf("section %.4f W/mK, ISO 13370 %.4f W/mK", got, want)
	// The formula is a fit: where an exact solution exists it is 3.1 % off.
	if off := got/want - 1; off < -0.05 || off > 0.05 {
		t.Errorf("section %.4f W/mK, ISO 13370 %.4f W/mK: %.1f %% apart, want 5 at most", got, want, 100*off)
	}
}

// swing lets one air swing through the years by 1 K, the other at 0, and gives the swing of the room's flow, W, and the
// months by which it follows that air.
func swing(t *testing.T, n *Network, of, room int) (size, months float64) {
	t.Helper()
	const parts, years = 48, 8
	s, err := n.Steps(365*86400/parts, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	nodes, flows := make([]float64, n.Nodes()), make([]float64, 2)
	airs := func(k int) []float64 {
		a := make([]float64, 2)
		a[of] = math.Cos(2 * math.Pi * float64(k) / parts)
		return a
	}
	var c, i float64
	for k := range years * parts {
		s.Step(nodes, airs(k), airs(k+1), flows)
		if x := 2 * math.Pi * (float64(k) + 0.5) / parts; k >= (years-1)*parts {
			c += 2 * flows[room] * math.Cos(x) / parts
			i += 2 * flows[room] * math.Sin(x) / parts
		}
	}
	return 2 * math.Hypot(c, i), math.Atan2(i, c) / (2 * math.Pi) * 12
}

// The standard's answers to the swing of a year, remembered and not seen, beside the section's.
func TestYearlySwingOfALongFloor(t *testing.T) {
	n, room, outside, standard := long(t)
	y := standard.YearlyOn()
	in, ahead := swing(t, n, room, room)
	out, behind := swing(t, n, outside, room)
	behind += 6 // warmth outside lessens the room's flow
	for _, c := range []struct {
		what            string
		section, formal float64
		within          float64
	}{
		// The standard's swings are fits of one term to a two-dimensional problem: bounds that tell a fit
		// from a slip of memory, such as the other logarithm or the diameter for the radius.
		{"swing inside, W/mK", in, y.Inside, 0.1 * y.Inside},
		{"swing outside, W/mK", out, y.Outside, 0.2 * y.Outside},
		{"months ahead of the room", -ahead, y.Ahead, 0.3},
		{"months behind the outside", behind, y.Behind, 0.3},
	} {
		t.Logf("%s: section %.3f, ISO 13370 %.3f", c.what, c.section, c.formal)
		if math.Abs(c.section-c.formal) > c.within {
			t.Errorf("%s: section %.3f, ISO 13370 %.3f, want them within %.2f", c.what, c.section, c.formal, c.within)
		}
	}
}
