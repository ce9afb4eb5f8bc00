package canvas

import (
	"math"
	"slices"
)

// hatchPitch is the distance between a hatch's lines, px.
const hatchPitch = 5.0

// mostStrokes bounds the lines of one hatch, so that a huge area does not make a huge file.
const mostStrokes = 2000

// Strokes gives the lines of a hatch inside an outline, by the even-odd rule. All
// outlines share one set of lines, so that neighbours' hatches join. The pitch widens where
// an outline would need more than 2000 lines.
func Strokes(outline []Point, h Hatch) [][2]Point {
	switch h {
	case Rising:
		return hatched(outline, -math.Pi/4)
	case Falling:
		return hatched(outline, math.Pi/4)
	case Level:
		return hatched(outline, 0)
	case Upright:
		return hatched(outline, math.Pi/2)
	case Crossed:
		return append(hatched(outline, math.Pi/4), hatched(outline, -math.Pi/4)...)
	case Dotted:
		return broken(hatched(outline, 0))
	}
	return nil
}

// hatched gives the parts inside an outline of parallel lines at an angle, radians from level.
func hatched(outline []Point, angle float64) (strokes [][2]Point) {
	sin, cos := math.Sincos(angle)
	turned := make([]Point, len(outline))
	low, high := math.Inf(1), math.Inf(-1)
	for i, p := range outline {
		turned[i] = Point{cos*p.X + sin*p.Y, cos*p.Y - sin*p.X}
		low, high = min(low, turned[i].Y), max(high, turned[i].Y)
	}
	pitch := hatchPitch
	for high-low > mostStrokes*pitch {
		pitch *= 2
	}
	for k := math.Ceil(low / pitch); k*pitch < high; k++ {
		y := k * pitch
		xs := crossings(turned, y)
		for i := 0; i+1 < len(xs); i += 2 {
			strokes = append(strokes, [2]Point{{cos*xs[i] - sin*y, sin*xs[i] + cos*y}, {cos*xs[i+1] - sin*y, sin*xs[i+1] + cos*y}})
		}
	}
	return strokes
}

// crossings gives where an outline crosses a level line, from left to right.
func crossings(outline []Point, y float64) []float64 {
	var xs []float64
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y <= y) != (b.Y <= y) {
			xs = append(xs, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
		}
	}
	slices.Sort(xs)
	return xs
}

// broken turns level strokes into dashes of 3 px every 8 px, every second row moved by half.
func broken(strokes [][2]Point) (dashes [][2]Point) {
	for _, s := range strokes {
		shift := 4 * math.Mod(math.Abs(math.Round(s[0].Y/hatchPitch)), 2)
		for x := 8*math.Floor(s[0].X/8) + shift; x < s[1].X && len(dashes) < mostStrokes*10; x += 8 {
			if from, to := max(x, s[0].X), min(x+3, s[1].X); to > from {
				dashes = append(dashes, [2]Point{{from, s[0].Y}, {to, s[0].Y}})
			}
		}
	}
	return dashes
}
