package draw

import (
	"math"
	"slices"
)

// A Band is one flow from a place to another, not negative.
type Band struct {
	From, To string
	Amount   float64
}

// node is a place of a flow picture, or a bend of a band that passes a column by.
type node struct {
	name    string // "" for a bend
	column  int
	in, out []*strand
	y, tall float64 // px, the upper end
}

// strand is a band between neighbouring columns.
type strand struct {
	band     int // of the picture
	from, to *node
	amount   float64
	y0, y1   float64 // px, its middle at both ends
}

func (n *node) amount() float64 {
	in, out := 0.0, 0.0
	for _, s := range n.in {
		in += s.amount
	}
	for _, s := range n.out {
		out += s.amount
	}
	return max(in, out)
}

// flowLayout is where everything of a flow picture stands.
type flowLayout struct {
	columns [][]*node
	strands []*strand
	scale   float64 // px for one of the unit
}

// layFlow sets places into columns: a source as far left as it may be, what leads nowhere at the
// right edge, everything else behind all that feeds it. Bands must not lead in circles.
func layFlow(bands []Band) *flowLayout {
	l := &flowLayout{}
	nodes := map[string]*node{}
	var order []*node
	at := func(name string) *node {
		if nodes[name] == nil {
			nodes[name] = &node{name: name}
			order = append(order, nodes[name])
		}
		return nodes[name]
	}
	leads := map[*node]bool{}
	for _, b := range bands {
		leads[at(b.From)] = true
		at(b.To)
	}
	last := 0
	for range order { // as many rounds as the longest way can have steps
		for _, b := range bands {
			to := at(b.To)
			to.column = min(max(to.column, at(b.From).column+1), len(order))
			last = max(last, to.column)
		}
	}
	l.columns = make([][]*node, last+1)
	for _, n := range order {
		if !leads[n] {
			n.column = last
		}
		l.columns[n.column] = append(l.columns[n.column], n)
	}
	for i, b := range bands {
		l.lead(i, at(b.From), at(b.To), b.Amount)
	}
	l.untangle()
	return l
}

// lead puts in one band, with a bend in each column that it passes by.
func (l *flowLayout) lead(band int, from, to *node, amount float64) {
	for from.column+1 < to.column {
		bend := &node{column: from.column + 1}
		l.columns[bend.column] = append(l.columns[bend.column], bend)
		l.join(band, from, bend, amount)
		from = bend
	}
	l.join(band, from, to, amount)
}

func (l *flowLayout) join(band int, from, to *node, amount float64) {
	s := &strand{band: band, from: from, to: to, amount: amount}
	from.out = append(from.out, s)
	to.in = append(to.in, s)
	l.strands = append(l.strands, s)
}

// rounds of putting each column in the order of its neighbours' middles: more change nothing in
// pictures of a house's size.
const rounds = 12

// untangle orders the columns so that few bands cross: first by the middles of neighbours, then by
// changing places of two while that takes crossings away.
func (l *flowLayout) untangle() {
	for k := range rounds {
		for c := range l.columns {
			if k%2 == 0 {
				l.sortBy(c, func(n *node) float64 { return l.middle(n.in, true) })
			} else {
				c = len(l.columns) - 1 - c
				l.sortBy(c, func(n *node) float64 { return l.middle(n.out, false) })
			}
		}
	}
	for better := true; better; {
		better = false
		for _, column := range l.columns {
			for i := 0; i+1 < len(column); i++ {
				before := l.crossings()
				column[i], column[i+1] = column[i+1], column[i]
				if l.crossings() < before {
					better = true
				} else {
					column[i], column[i+1] = column[i+1], column[i]
				}
			}
		}
	}
	l.sortStrands()
}

func (l *flowLayout) sortBy(column int, key func(*node) float64) {
	nodes := l.columns[column]
	keys := make(map[*node]float64, len(nodes))
	for i, n := range nodes {
		keys[n] = key(n)
		if math.IsNaN(keys[n]) {
			keys[n] = float64(i)
		}
	}
	slices.SortStableFunc(nodes, func(a, b *node) int { return compare(keys[a], keys[b]) })
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// middle gives the mean place of a node's neighbours, weighted by the bands; no number where
// it has none.
func (l *flowLayout) middle(strands []*strand, in bool) float64 {
	sum, weight := 0.0, 0.0
	for _, s := range strands {
		other := s.to
		if in {
			other = s.from
		}
		sum += s.amount * float64(l.place(other))
		weight += s.amount
	}
	return sum / weight
}

func (l *flowLayout) place(n *node) int { return slices.Index(l.columns[n.column], n) }

// crossings counts pairs of bands that cross.
func (l *flowLayout) crossings() (count int) {
	for i, a := range l.strands {
		for _, b := range l.strands[:i] {
			if a.from.column == b.from.column && (l.place(a.from)-l.place(b.from))*(l.place(a.to)-l.place(b.to)) < 0 {
				count++
			}
		}
	}
	return count
}

// sortStrands orders the bands at each place like the places that they lead to or come from.
func (l *flowLayout) sortStrands() {
	for _, column := range l.columns {
		for _, n := range column {
			slices.SortStableFunc(n.out, func(a, b *strand) int { return l.place(a.to) - l.place(b.to) })
			slices.SortStableFunc(n.in, func(a, b *strand) int { return l.place(a.from) - l.place(b.from) })
		}
	}
}
