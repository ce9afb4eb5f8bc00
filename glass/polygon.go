package glass

// mostCorners suffices for a rectangle cut by the edges of three parallelograms, 4 + 3·4, with
// room for corners that rounding doubles.
const mostCorners = 24

type point struct{ x, y float64 }

// A polygon is convex.
type polygon struct {
	at [mostCorners]point
	n  int
}

func rectangle(x0, y0, x1, y1 float64) polygon {
	return polygon{n: 4, at: [mostCorners]point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}}
}

// area is positive where the corners run against the clock.
func (p *polygon) area() float64 {
	var sum float64
	for i := range p.n {
		a, b := p.at[i], p.at[(i+1)%p.n]
		sum += (a.x-p.at[0].x)*(b.y-p.at[0].y) - (b.x-p.at[0].x)*(a.y-p.at[0].y)
	}
	return sum / 2
}

// turned gives the polygon with its corners against the clock.
func (p polygon) turned() polygon {
	if p.area() < 0 {
		for i := range p.n / 2 {
			p.at[i], p.at[p.n-1-i] = p.at[p.n-1-i], p.at[i]
		}
	}
	return p
}

// lit gives the area of p outside all shadows: what lies beyond each edge of the first
// shadow is held against the rest, and what lies within every edge is dark.
func lit(p polygon, shadows []polygon) float64 {
	if p.n < 3 {
		return 0
	}
	if len(shadows) == 0 {
		return p.area()
	}
	shadow, rest := &shadows[0], shadows[1:]
	var sum float64
	for i := range shadow.n {
		inside, outside := p.cut(shadow.at[i], shadow.at[(i+1)%shadow.n])
		sum += lit(outside, rest)
		p = inside
		if p.n < 3 {
			break
		}
	}
	return sum
}

// cut parts a polygon by the line from a to b: left of it is inside.
func (p *polygon) cut(a, b point) (inside, outside polygon) {
	side := func(q point) float64 { return (b.x-a.x)*(q.y-a.y) - (b.y-a.y)*(q.x-a.x) }
	for i := range p.n {
		here, next := p.at[i], p.at[(i+1)%p.n]
		s, t := side(here), side(next)
		if s >= 0 {
			inside.add(here)
		}
		if s <= 0 {
			outside.add(here)
		}
		if s*t < 0 {
			share := s / (s - t)
			crossing := point{here.x + share*(next.x-here.x), here.y + share*(next.y-here.y)}
			inside.add(crossing)
			outside.add(crossing)
		}
	}
	return inside, outside
}

func (p *polygon) add(q point) {
	p.at[p.n] = q
	p.n++
}
