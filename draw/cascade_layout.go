package draw

import (
	"cmp"
	"math"
	"slices"

	"suffice/draw/canvas"
)

// stop is a place of a cascade that has a row.
type stop struct {
	name    string
	row     int
	amount  float64
	x, wide float64 // px
	arms    []arm   // in the order of their heights
}

// arm is a side arm's free end, where its words stand.
type arm struct {
	band  int
	comes bool    // to the stop, not from it
	x, y  float64 // px, the middle of its end
}

// way is the outline of a band: its left edge and its right edge, from where it begins to where it ends.
type way struct {
	wide        float64 // px
	left, right []canvas.Point
}

// cascade is where everything of a cascade stands.
type cascade struct {
	rows   [][]*stop
	at     map[string]*stop
	bands  []Band
	ways   []way
	lanes  []map[int]float64 // of each row: the left end of each band that passes it by, px
	top    []float64         // of each row: where what falls on it ends, px
	bar    []float64         // the upper end of its bars
	under  []float64         // where what falls from it begins
	scale  float64           // px for one of the unit
	bottom float64
}

func layCascade(d *Cascade, width float64) *cascade {
	l := &cascade{at: map[string]*stop{}, bands: d.Bands, ways: make([]way, len(d.Bands))}
	for r, names := range d.Rows {
		var row []*stop
		for _, name := range names {
			s := &stop{name: name, row: r, amount: max(l.sum(name, true), l.sum(name, false))}
			l.at[name] = s
			row = append(row, s)
		}
		l.rows = append(l.rows, row)
	}
	l.measure(width)
	l.across(d)
	for round := 0; l.right(d) > width && round < mostRounds; round++ {
		l.scale *= 0.9
		l.across(d)
	}
	l.down()
	for _, row := range l.rows {
		for _, s := range row {
			l.fasten(s)
		}
	}
	for i := range l.bands {
		l.lead(i)
	}
	return l
}

// sum adds up what comes to a place, or what goes from it.
func (l *cascade) sum(name string, comes bool) (sum float64) {
	for _, b := range l.bands {
		if comes && b.To == name || !comes && b.From == name {
			sum += b.Amount
		}
	}
	return sum
}

// passes reports whether a band falls past a row.
func (l *cascade) passes(b Band, row int) bool {
	from, to := l.at[b.From], l.at[b.To]
	return from != nil && to != nil && from.row < row && row < to.row
}

// measure finds the scale by the fullest row.
func (l *cascade) measure(width float64) {
	most := 0.0
	for r, row := range l.rows {
		sum := 0.0
		for _, s := range row {
			sum += s.amount
		}
		for _, b := range l.bands {
			if l.passes(b, r) {
				sum += b.Amount
			}
		}
		most = max(most, sum)
	}
	if most > 0 {
		l.scale = min(widest, widestPart*width) / most
	}
}

// mostRounds of making bands thinner until the words have room: bands of a third their thickness are drawn then.
const mostRounds = 10

// right gives how far to the right the words of stops and side arms reach, px.
func (l *cascade) right(d *Cascade) (right float64) {
	for _, row := range l.rows {
		for _, s := range row {
			if len(row) > 1 {
				right = max(right, s.x+l.room(d, s))
				continue
			}
			x := s.x + max(s.wide, 2)
			right = max(right, x+14+canvas.TextWidth(d.Places[s.name].Says, words, false)+canvas.TextWidth(d.Write(s.amount), fine, false))
			for _, comes := range [2]bool{true, false} {
				for _, i := range l.arms(s, comes) {
					right = max(right, x+armWide+10+canvas.TextWidth(d.armSays(i, comes), fine, false)+canvas.TextWidth(d.Write(l.bands[i].Amount), fine, false))
				}
			}
		}
	}
	return right
}

// across gives every row its places from the left: first what passes it by, what goes farthest first, then its stops.
func (l *cascade) across(d *Cascade) {
	l.lanes = nil
	for r, row := range l.rows {
		x, lanes := 0.0, map[int]float64{}
		for _, i := range l.passing(r) {
			lanes[i] = x
			x += l.bands[i].Amount*l.scale + laneApart
		}
		l.lanes = append(l.lanes, lanes)
		for _, s := range row {
			s.x, s.wide = x, s.amount*l.scale
			x += l.room(d, s) + 8
		}
	}
}

// room is the width of a stop that shares its row, with the words over it.
func (l *cascade) room(d *Cascade, s *stop) float64 {
	return max(s.wide, canvas.TextWidth(d.Places[s.name].Says, fine, false), canvas.TextWidth(d.Write(s.amount), fine, false))
}

// passing lists the bands that pass a row by, from the left.
func (l *cascade) passing(row int) (list []int) {
	for i, b := range l.bands {
		if l.passes(b, row) {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int {
		return cmp.Or(cmp.Compare(l.at[l.bands[b].To].row, l.at[l.bands[a].To].row), cmp.Compare(l.at[l.bands[a].From].row, l.at[l.bands[b].From].row))
	})
	return list
}

// arms lists the side arms of a stop: what comes from no stop, or goes to none.
func (l *cascade) arms(s *stop, comes bool) (list []int) {
	for i, b := range l.bands {
		if comes && b.To == s.name && l.at[b.From] == nil || !comes && b.From == s.name && l.at[b.To] == nil {
			list = append(list, i)
		}
	}
	return list
}

// tall is the room of a side arm.
func (l *cascade) tall(band int) float64 { return max(armTall, l.bands[band].Amount*l.scale+4) }

// down gives every row its heights.
func (l *cascade) down() {
	y := 2.0
	for r, row := range l.rows {
		if r > 0 {
			y += fallTall
		}
		l.top = append(l.top, y)
		if len(row) > 1 {
			y += rowHead
		}
		for _, s := range row {
			for _, i := range l.arms(s, true) {
				y += l.tall(i)
			}
		}
		l.bar = append(l.bar, y)
		y += stopTall
		for _, s := range row {
			if arms := l.arms(s, false); len(arms) > 0 {
				y += 5
				for _, i := range arms {
					y += l.tall(i)
				}
			}
		}
		l.under = append(l.under, y)
	}
	l.bottom = y + 6
}

// fasten stacks the bands at both sides of a stop's bar, from the left, and gives its side arms their ends.
func (l *cascade) fasten(s *stop) {
	for _, comes := range [2]bool{true, false} {
		x := s.x
		for _, i := range l.through(s, comes) {
			w := l.bands[i].Amount * l.scale
			w0 := &l.ways[i]
			w0.wide = w
			edge := canvas.Point{X: x, Y: l.bar[s.row]}
			if !comes {
				edge.Y += stopTall
			}
			if comes {
				w0.left, w0.right = append(w0.left, edge), append(w0.right, canvas.Point{X: x + w, Y: edge.Y})
			} else {
				w0.left, w0.right = append([]canvas.Point{edge}, w0.left...), append([]canvas.Point{{X: x + w, Y: edge.Y}}, w0.right...)
			}
			x += w
		}
		l.reach(s, comes)
	}
}

// through lists what falls on a stop or from it, from the left: what goes past other rows, what does not, side arms.
func (l *cascade) through(s *stop, comes bool) (list []int) {
	other := func(i int) *stop {
		if comes {
			return l.at[l.bands[i].From]
		}
		return l.at[l.bands[i].To]
	}
	for i, b := range l.bands {
		if (comes && b.To == s.name || !comes && b.From == s.name) && other(i) != nil {
			list = append(list, i)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int {
		x, y := other(a), other(b)
		return cmp.Or(cmp.Compare(math.Abs(float64(y.row-s.row)), math.Abs(float64(x.row-s.row))), cmp.Compare(x.x, y.x))
	})
	return append(list, l.arms(s, comes)...)
}

// reach leads the side arms of one side of a stop out to the right, those at the right end next to the bar.
func (l *cascade) reach(s *stop, comes bool) {
	arms := l.arms(s, comes)
	bar := l.bar[s.row]
	y, sign := bar+stopTall+5, 1.0
	if comes {
		y, sign = bar, -1
	}
	end := s.x + max(s.wide, 2) + armWide
	for k := len(arms) - 1; k >= 0; k-- {
		i := arms[k]
		w := &l.ways[i]
		middle := y + sign*l.tall(i)/2
		near, far := middle-sign*w.wide/2, middle+sign*w.wide/2
		from := w.left[0]
		outer := quarter(from, canvas.Point{X: min(end, from.X+w.wide+12), Y: far})
		inner := quarter(w.right[0], canvas.Point{X: min(end, from.X+w.wide+12), Y: near})
		w.left, w.right = append(outer, canvas.Point{X: end, Y: far}), append(inner, canvas.Point{X: end, Y: near})
		s.arms = append(s.arms, arm{i, comes, end, middle})
		y += sign * l.tall(i)
	}
}

// quarter gives the points of a quarter of an ellipse that leaves upright and arrives level.
func quarter(from, to canvas.Point) []canvas.Point {
	const parts = 8
	points := make([]canvas.Point, parts+1)
	for k := range points {
		sin, cos := math.Sincos(math.Pi / 2 * float64(k) / parts)
		points[k] = canvas.Point{X: to.X + (from.X-to.X)*cos, Y: from.Y + (to.Y-from.Y)*sin}
	}
	return points
}

// lead draws the edges of a band between two stops, past all rows between them.
func (l *cascade) lead(i int) {
	from, to := l.at[l.bands[i].From], l.at[l.bands[i].To]
	if from == nil || to == nil {
		return
	}
	w := &l.ways[i]
	x, end := w.left[0].X, w.left[1].X
	left := []canvas.Point{w.left[0]}
	for r := from.row; r < to.row; r++ {
		next := end
		if r+1 < to.row {
			next = l.lanes[r+1][i]
		}
		left = append(left, falls(canvas.Point{X: x, Y: l.under[r]}, canvas.Point{X: next, Y: l.top[r+1]})...)
		x = next
	}
	w.left = append(left, w.left[1])
	w.right = make([]canvas.Point, len(w.left))
	for k, p := range w.left {
		w.right[k] = canvas.Point{X: p.X + w.wide, Y: p.Y}
	}
}

// falls gives the points of a curve that leaves and arrives upright, as sweep does for level ones.
func falls(from, to canvas.Point) []canvas.Point {
	const parts = 16
	points := make([]canvas.Point, parts+1)
	for i := range points {
		u := float64(i) / parts
		points[i] = canvas.Point{X: from.X + (to.X-from.X)*u*u*(3-2*u), Y: from.Y + u*(to.Y-from.Y)}
	}
	return points
}
