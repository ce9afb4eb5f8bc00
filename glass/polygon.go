package glass

// mostCorners suffices for a rectangle cut by the edges of three parallelograms, 4 + 3·4, with
// room for corners that rounding doubles.
const mostCorners = 24

type point struct{ x, y float64 }

// A polygon is convex.
type polygon struct {
	n  int
	at [mostCorners]point
}

func (p *polygon) add(q point) {
	p.at[p.n] = q
	p.n++
}

// area is positive where the corners run against the clock.
func (p *polygon) area() float64 {
	if p.n < 3 {
		return 0
	}
	var sum float64
	origin, a := p.at[0], p.at[1]
	for _, b := range p.at[2:p.n] {
		sum += (a.x-origin.x)*(b.y-origin.y) - (b.x-origin.x)*(a.y-origin.y)
		a = b
	}
	return sum / 2
}

// A shadow is a parallelogram with its corners against the clock.
type shadow [4]point

func (s *shadow) turn() {
	if (s[1].x-s[0].x)*(s[3].y-s[0].y) < (s[3].x-s[0].x)*(s[1].y-s[0].y) {
		s[1], s[3] = s[3], s[1]
	}
}

// empty reports whether the light runs along the board.
func (s *shadow) empty() bool {
	return (s[1].x-s[0].x)*(s[3].y-s[0].y) == (s[3].x-s[0].x)*(s[1].y-s[0].y)
}

// misses reports whether all of the shadow lies beyond one side of a rectangle from 0, 0 to w, h.
func (s *shadow) misses(w, h float64) bool {
	return max(s[0].x, s[1].x, s[2].x, s[3].x) <= 0 || min(s[0].x, s[1].x, s[2].x, s[3].x) >= w ||
		max(s[0].y, s[1].y, s[2].y, s[3].y) <= 0 || min(s[0].y, s[1].y, s[2].y, s[3].y) >= h
}

// lit gives the area of p outside all shadows. Of the last shadow, it is the area less what
// lies within. Before it, what lies beyond each edge is held against the rest, and what lies within every
// edge is dark. p is used up.
func lit(p *polygon, shadows []shadow) float64 {
	if p.n < 3 || len(shadows) == 0 {
		return p.area()
	}
	first, rest := &shadows[0], shadows[1:]
	sum := 0.0
	if len(rest) == 0 {
		sum = p.area()
	}
	var pieces [2]polygon
	var beyond polygon
	var outside *polygon // only where another shadow waits for it
	if len(rest) > 0 {
		outside = &beyond
	}
	inside := &pieces[0]
	for i, a := range first {
		if p.n < 3 {
			return sum
		}
		beyond.n = 0
		p.cut(a, first[(i+1)%4], inside, outside)
		if outside != nil {
			sum += lit(outside, rest)
		}
		p, inside = inside, &pieces[(i+1)%2]
	}
	if len(rest) == 0 {
		sum -= p.area()
	}
	return sum
}

// cut parts a polygon by the line from a to b: left of it is inside. outside may be nil.
func (p *polygon) cut(a, b point, inside, outside *polygon) {
	inside.n = 0
	dx, dy := b.x-a.x, b.y-a.y
	here := p.at[p.n-1]
	s := dx*(here.y-a.y) - dy*(here.x-a.x)
	for _, next := range p.at[:p.n] {
		t := dx*(next.y-a.y) - dy*(next.x-a.x)
		if s*t < 0 {
			share := s / (s - t)
			crossing := point{here.x + share*(next.x-here.x), here.y + share*(next.y-here.y)}
			inside.add(crossing)
			if outside != nil {
				outside.add(crossing)
			}
		}
		if t >= 0 {
			inside.add(next)
		}
		if t <= 0 && outside != nil {
			outside.add(next)
		}
		here, s = next, t
	}
}
