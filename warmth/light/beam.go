package light

// beam is how the sun's light moves through a box for each metre away from the window's wall.
type beam struct {
	sideways, down float64 // m per m
	depth          float64 // m, of the room
}

// parts gives the shares of a piece of window whose beam falls on the floor and on the
// wall it leans to, exactly; the rest falls on the wall opposite. from is the piece's distance to that
// wall, sill its height over the floor, m.
//
// A point s from the wall and y over the floor meets the floor after y/down, the wall after s/sideways, the opposite wall after
// depth: whichever is first.
func (b beam) parts(from, sill float64, c *cell) (floor, side float64) {
	piece := figure{n: 4, at: [mostCorners]corner{
		{from, sill}, {from + c.width, sill}, {from + c.width, sill + c.height}, {from, sill + c.height}}}
	area := c.width * c.height
	low := piece.keep(0, 1, -b.down*b.depth) // y <= down depth
	low = low.keep(-b.down, b.sideways, 0)   // y sideways <= s down
	near := piece.keep(1, 0, -b.sideways*b.depth)
	near = near.keep(b.down, -b.sideways, 0)
	return low.area() / area, near.area() / area
}

type corner struct{ s, y float64 }

// mostCorners of a rectangle after two straight cuts.
const mostCorners = 8

// figure is a convex polygon.
type figure struct {
	n  int
	at [mostCorners]corner
}

// keep cuts off what does not satisfy a s + b y + c <= 0.
func (f *figure) keep(a, b, c float64) (out figure) {
	for i := range f.n {
		p, q := f.at[i], f.at[(i+1)%f.n]
		u, v := a*p.s+b*p.y+c, a*q.s+b*q.y+c
		if u <= 0 {
			out.at[out.n] = p
			out.n++
		}
		if (u < 0 && v > 0) || (u > 0 && v < 0) {
			t := u / (u - v)
			out.at[out.n] = corner{p.s + t*(q.s-p.s), p.y + t*(q.y-p.y)}
			out.n++
		}
	}
	return out
}

// area gives a figure's area, whichever way round its corners run.
func (f *figure) area() float64 {
	var double float64
	for i := range f.n {
		p, q := f.at[i], f.at[(i+1)%f.n]
		double += p.s*q.y - q.s*p.y
	}
	return max(double, -double) / 2
}
