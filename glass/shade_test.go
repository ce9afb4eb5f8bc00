package glass

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

func metres(t *rapid.T, what string, low, high float64) quantity.Metres {
	// Round numbers too, where edges fall on edges.
	if rapid.Bool().Draw(t, what+" round") {
		return quantity.Metres(math.Round(4*rapid.Float64Range(low, high).Draw(t, what)) / 4)
	}
	return quantity.Metres(rapid.Float64Range(low, high).Draw(t, what))
}

func anyFin(t *rapid.T) Fin {
	return Fin{Depth: metres(t, "fin", 0, 2), Gap: metres(t, "fin gap", 0, 1), Above: metres(t, "above", 0, 1), Below: metres(t, "below", 0, 1)}
}

func anyShade(t *rapid.T) Shade {
	return Shade{Width: metres(t, "width", 0.5, 5), Height: metres(t, "height", 0.5, 3),
		Overhang: Overhang{Depth: metres(t, "overhang", 0, 2), Gap: metres(t, "gap", 0, 1), Left: metres(t, "left", -0.2, 2), Right: metres(t, "right", -0.2, 2)},
		Left:     anyFin(t), Right: anyFin(t)}
}

func anyRay(t *rapid.T) Ray {
	if rapid.IntRange(0, 3).Draw(t, "plain") == 0 { // through corners
		r := Ray{Right: rapid.SampledFrom([]float64{-1, -0.5, 0, 0.5, 1}).Draw(t, "right"), Up: rapid.SampledFrom([]float64{0, 0.5, 1}).Draw(t, "up"), Out: 1}
		n := math.Sqrt(r.Right*r.Right + r.Up*r.Up + r.Out*r.Out)
		return Ray{r.Right / n, r.Up / n, r.Out / n}
	}
	return RayTo(quantity.Degrees(rapid.Float64Range(-89, 89).Draw(t, "altitude")), quantity.Degrees(rapid.Float64Range(95, 265).Draw(t, "azimuth")), 180)
}

func (s Shade) mirrored() Shade {
	s.Left, s.Right = s.Right, s.Left
	s.Overhang.Left, s.Overhang.Right = s.Overhang.Right, s.Overhang.Left
	return s
}

// The mirror image of a window under the mirror image of the sun is lit alike.
func TestLeftIsRightMirrored(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, r := anyShade(t), anyRay(t)
		mirror := s.mirrored()
		a, b := s.Sunlit(r), mirror.Sunlit(Ray{-r.Right, r.Up, r.Out})
		if math.Abs(a-b) > 1e-9 {
			t.Errorf("%g, mirrored %g", a, b)
		}
	})
}

// The order of the boards does not matter, more board never means more sun, and the share is a share.
func TestMoreBoardMoreShade(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, r := anyShade(t), anyRay(t)
		lit := s.Sunlit(r)
		if lit < -1e-12 || lit > 1+1e-12 {
			t.Errorf("%g is no share", lit)
		}
		deeper := s
		deeper.Overhang.Depth += 0.3
		deeper.Left.Depth += 0.2
		deeper.Right.Above += 0.4
		if more := deeper.Sunlit(r); more > lit+1e-9 {
			t.Errorf("%g lit, with larger boards %g", lit, more)
		}
		without := s
		without.Overhang, without.Left, without.Right = Overhang{}, Fin{}, Fin{}
		if open := without.Sunlit(r); open != 1 {
			t.Errorf("an open window is lit to %g", open)
		}
	})
}

// Against a grid of points, each followed along the ray to see whether it meets a board.
func TestSunlitAgainstPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, r := anyShade(t), anyRay(t)
		const n = 60
		var seen int
		for i := range n {
			for k := range n {
				x, y := float64(s.Width)*(float64(i)+0.5)/n, float64(s.Height)*(float64(k)+0.5)/n
				if !s.meets(x, y, r) {
					seen++
				}
			}
		}
		// An edge crosses at most about 2n of the n² cells, and there are at most six edges in the window.
		if got, points := s.Sunlit(r), float64(seen)/(n*n); math.Abs(got-points) > 6.0/n {
			t.Errorf("%g by polygons, %g by points; %+v %+v", got, points, s, r)
		}
	})
}

// meets reports whether the ray from a point of the window hits a board.
func (s Shade) meets(x, y float64, r Ray) bool {
	w, h := float64(s.Width), float64(s.Height)
	if o := s.Overhang; r.Up > 0 && o.Depth > 0 {
		way := (h + float64(o.Gap) - y) / r.Up
		if z, at := way*r.Out, x+way*r.Right; z <= float64(o.Depth) && at >= -float64(o.Left) && at <= w+float64(o.Right) {
			return true
		}
	}
	for _, side := range []struct {
		f  Fin
		at float64
	}{{s.Left, -float64(s.Left.Gap)}, {s.Right, w + float64(s.Right.Gap)}} {
		way := (side.at - x) / r.Right
		if !(way > 0) || side.f.Depth == 0 {
			continue
		}
		if z, up := way*r.Out, y+way*r.Up; z <= float64(side.f.Depth) && up >= -float64(side.f.Below) && up <= h+float64(side.f.Above) {
			return true
		}
	}
	return false
}

// closed gives the view factor from a rectangle to another at right angles that shares the edge of length
// one with it; h and w are how far the first and the second reach from it [howell-factors C-14].
func closed(h, w float64) float64 {
	h2, w2 := h*h, w*w
	log := math.Log((1+w2)*(1+h2)/(1+w2+h2)) + h2*math.Log(h2*(1+h2+w2)/((1+h2)*(h2+w2))) + w2*math.Log(w2*(1+w2+h2)/((1+w2)*(w2+h2)))
	return (h*math.Atan(1/h) + w*math.Atan(1/w) - math.Hypot(h, w)*math.Atan(1/math.Hypot(h, w)) + log/4) / (math.Pi * h)
}

// An overhang as wide as the window hides what the closed form says, with a gap by the algebra of view factors;
// a long one what crossed strings say.
func TestViewsAgainstClosedForm(t *testing.T) {
	const promised = 0.0005
	for _, c := range []struct{ width, height, depth, gap float64 }{{1, 1, 1, 0}, {3, 2, 1, 0.5}, {3, 2, 1, 0}, {1, 2, 0.6, 0.3}, {8, 2, 1, 0.5}, {0.5, 1.5, 1.5, 0.1}} {
		v := (&Shade{Width: quantity.Metres(c.width), Height: quantity.Metres(c.height), Overhang: Overhang{Depth: quantity.Metres(c.depth), Gap: quantity.Metres(c.gap)}}).Views()
		both := (c.height + c.gap) * closed((c.height+c.gap)/c.width, c.depth/c.width)
		if c.gap > 0 {
			both -= c.gap * closed(c.gap/c.width, c.depth/c.width)
		}
		want := both / c.height
		t.Logf("%+v: hidden %.5f, closed form %.5f", c, v.Hidden, want)
		if math.Abs(v.Hidden-want) > promised || math.Abs(v.Ground-0.5) > 1e-9 {
			t.Errorf("%+v: %+v, closed form hides %g and leaves all of the ground", c, v, want)
		}
		// Crossed strings: an endless board hides (height + depth - slant)/2 over the height, with gaps by difference.
		long := (&Shade{Width: 1, Height: quantity.Metres(c.height), Overhang: Overhang{Depth: quantity.Metres(c.depth), Gap: quantity.Metres(c.gap), Left: 100, Right: 100}}).Views()
		strings := (c.height + c.gap + math.Hypot(c.gap, c.depth) - c.gap - math.Hypot(c.height+c.gap, c.depth)) / (2 * c.height)
		if math.Abs(long.Hidden-strings) > promised {
			t.Errorf("%+v, endless: hidden %g, crossed strings %g", c, long.Hidden, strings)
		}
	}
}

// Both boards and fins against the sum over small areas of window and board: cos cos/(pi r²). A fin is one board, so
// nothing stands before it.
func TestViewsAgainstAreas(t *testing.T) {
	for _, f := range []Fin{{Depth: 1, Gap: 0.2, Above: 0.5, Below: 0.2}, {Depth: 0.5, Gap: 0.1, Above: 0.1}, {Depth: 2, Gap: 0.4, Below: -0.5}} {
		s := Shade{Width: 1.5, Height: 2, Left: f}
		v := s.Views()
		sky, ground := finByAreas(s)
		t.Logf("%+v: sky %.5f by directions, %.5f by areas; ground %.5f, %.5f", f, v.Sky, 0.5-sky, v.Ground, 0.5-ground)
		if math.Abs(v.Sky-(0.5-sky)) > 0.0007 || math.Abs(v.Ground-(0.5-ground)) > 0.0007 {
			t.Errorf("%+v: %+v, areas hide %g of sky and %g of ground", f, v, sky, ground)
		}
		check.Balance(t, v.Sky+v.Ground+v.Hidden, 1, "views")
	}
}

// finByAreas gives what the left fin hides above and below the horizon, to about 0.0002.
func finByAreas(s Shade) (sky, ground float64) {
	const n = 40
	f := s.Left
	tall := float64(s.Height + f.Above + f.Below)
	for i := range n {
		x := float64(s.Width)*(float64(i)+0.5)/n + float64(f.Gap) // from the fin
		for k := range n {
			y := float64(s.Height) * (float64(k) + 0.5) / n
			for j := range n {
				z := float64(f.Depth) * (float64(j) + 0.5) / n
				for l := range n {
					dy := -float64(f.Below) + tall*(float64(l)+0.5)/n - y
					r2 := x*x + dy*dy + z*z
					part := z * x / (math.Pi * r2 * r2) * (float64(f.Depth) / n) * (tall / n) / (n * n) // cos = z/r at the window, x/r at the fin
					if dy > 0 {
						sky += part
					} else {
						ground += part
					}
				}
			}
		}
	}
	return sky, ground
}

// A southern window at noon sees its sun as a northern one does, mirrored.
func TestSunOfBothHalves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude, declination := quantity.Degrees(rapid.Float64Range(-89, 89).Draw(t, "latitude")), quantity.Degrees(rapid.Float64Range(-23.44, 23.44).Draw(t, "declination"))
		hours := rapid.Float64Range(0, 24).Draw(t, "hours")
		h1, a1 := SunAt(latitude, declination, hours)
		h2, a2 := SunAt(-latitude, -declination, hours)
		r1, r2 := RayTo(h1, a1, 180), RayTo(h2, a2, 0)
		if math.Abs(float64(h1-h2)) > 1e-9 || math.Abs(r1.Out-r2.Out) > 1e-9 || math.Abs(r1.Right+r2.Right) > 1e-9 {
			t.Errorf("north %g, %g deg %+v, south %g, %g deg %+v", float64(h1), float64(a1), r1, float64(h2), float64(a2), r2)
		}
	})
}

// The hour asks both for every window: neither may allocate.
func TestNothingIsAllocated(t *testing.T) {
	s := Shade{Width: 3, Height: 2, Overhang: Overhang{Depth: 1, Gap: 0.1, Left: 0.5, Right: 0.5}, Left: Fin{Depth: 1}, Right: Fin{Depth: 1}}
	r, c := RayTo(40, 200, 180), Alike(2, suitePane).Curve()
	var sum float64
	if n := testing.AllocsPerRun(100, func() { sum += s.Sunlit(r) + c.At(r.Out).Transmitted }); n != 0 || sum == 0 {
		t.Errorf("%v allocations, want none; sum %g", n, sum)
	}
}

func BenchmarkSunlit(b *testing.B) {
	s := Shade{Width: 3, Height: 2, Overhang: Overhang{Depth: 1, Gap: 0.5, Left: 0.5, Right: 0.5}, Left: Fin{Depth: 1}, Right: Fin{Depth: 1}}
	r := RayTo(40, 200, 180)
	b.ReportAllocs()
	for b.Loop() {
		s.Sunlit(r)
	}
}

func BenchmarkCurve(b *testing.B) {
	c := Alike(2, suitePane).Curve()
	b.ReportAllocs()
	for b.Loop() {
		c.At(0.43)
	}
}
