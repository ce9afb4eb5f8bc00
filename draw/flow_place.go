package draw

// spacing is the room that the places of a picture need, px.
type spacing struct {
	top    float64                          // where the first may begin
	height float64                          // of bands in the fullest column
	above  func(n *node, last bool) float64 // free room over a place, for its words
	least  func(n *node, last bool) float64 // room that a place takes at least, for words beside it
}

// stand gives every place its height and every band its two ends, and gives the height of it all.
func (l *flowLayout) stand(s spacing) (bottom float64) {
	most := 0.0
	for _, column := range l.columns {
		sum := 0.0
		for _, n := range column {
			sum += n.amount()
		}
		most = max(most, sum)
	}
	if most > 0 {
		l.scale = s.height / most
	}
	for c, column := range l.columns {
		last := c == len(l.columns)-1
		y := s.top
		for _, n := range column {
			n.tall = n.amount() * l.scale
			y += s.above(n, last)
			if wish := l.wish(n); wish > y {
				y = wish
			}
			n.y = y
			y += max(n.tall, s.least(n, last))
		}
		bottom = max(bottom, y)
	}
	l.fasten()
	return bottom
}

// wish gives the upper end at which a place would lie level with what feeds it; the first column
// has no wish.
func (l *flowLayout) wish(n *node) float64 {
	if len(n.in) == 0 {
		return 0
	}
	first := n.in[0]
	y := first.from.y
	for _, s := range first.from.out {
		if s == first {
			break
		}
		y += s.amount * l.scale
	}
	return y
}

// fasten stacks the bands at both ends of each place.
func (l *flowLayout) fasten() {
	for _, column := range l.columns {
		for _, n := range column {
			y := n.y
			for _, s := range n.out {
				s.y0 = y + s.amount*l.scale/2
				y += s.amount * l.scale
			}
			y = n.y
			for _, s := range n.in {
				s.y1 = y + s.amount*l.scale/2
				y += s.amount * l.scale
			}
		}
	}
}
