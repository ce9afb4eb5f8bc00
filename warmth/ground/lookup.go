package ground

import "math"

// At gives the temperature at a place of the section: in a cell its middle's, on a line between
// cells what both sides agree on there. A place outside the section, or in nothing, has none (NaN).
func (f Field) At(x, y float64) float64 {
	s := f.of.Section
	columns, rows := around(s.X, x), around(s.Y, y)
	sum, weight := 0.0, 0.0
	for _, j := range rows {
		for _, i := range columns {
			t, g := f.beside(i, j, len(columns) > 1, len(rows) > 1)
			if math.IsInf(g, 1) {
				return t
			}
			sum += g * t
			weight += g
		}
	}
	return sum / weight
}

// beside gives a cell's temperature and its weight at a point of its edge: the conductance to there,
// 0 for nothing.
func (f Field) beside(i, j int, onX, onY bool) (t, g float64) {
	s := f.of.Section
	cell := j*(len(s.X)-1) + i
	what := s.cells[cell]
	if what == 0 {
		return 0, 0
	}
	if what < 0 {
		return f.Airs[-what-1], 1 / s.half(what, 0)
	}
	t = f.Nodes[f.of.node[cell]]
	switch dx, dy := s.X[i+1]-s.X[i], s.Y[j+1]-s.Y[j]; {
	case onX && onY:
		return t, 1 / s.half(what, math.Hypot(dx, dy))
	case onX:
		return t, 1 / s.half(what, dx)
	default:
		return t, 1 / s.half(what, dy)
	}
}

// around gives the cells between whose lines a place lies: one, or two where it lies on a line.
func around(lines []float64, at float64) []int {
	const close = 1e-9 // m
	var cells []int
	for i := range len(lines) - 1 {
		if at > lines[i]-close && at < lines[i+1]+close {
			cells = append(cells, i)
		}
	}
	return cells
}
