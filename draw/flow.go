package draw

import (
	"strings"

	"suffice/draw/canvas"
)

// A FlowChart shows what goes from where to where in a year, as bands as thick as their
// amounts, from left to right. Bands must not lead in circles.
type FlowChart struct {
	About
	Bands   []Band
	Places  map[string]Place
	Write   func(amount float64) string // with its unit
	Headers [3]string                   // from, to, amount with its unit
}

// A Place is where bands come from or lead to.
type Place struct {
	Says  string
	Ink   canvas.Ink // of the bands that lead to it, and of itself
	Hatch canvas.Hatch
}

// Flow draws bands from sources to uses. Bands are ordered so that few cross.
func Flow(d FlowChart) Picture {
	t := canvas.Table{Headers: d.Headers[:]}
	for _, b := range d.Bands {
		t.Rows = append(t.Rows, []string{d.Places[b.From].Says, d.Places[b.To].Says, number(b.Amount, 0)})
	}
	return d.picture(t, d.lay)
}

// Measures of a flow picture, px.
const (
	barWide  = 9.0   // of a place
	bandTall = 190.0 // of all bands of the fullest column together
	overTall = 36.0  // the words over a place
	sideTall = 36.0  // the words beside a place at the right edge
	sideWide = 136.0
	narrow   = 500.0 // under this width words are smaller
)

// beside gives the room for the words at the right edge, and their size.
func beside(width float64) (room, size float64) {
	if width < narrow {
		return 112, fine
	}
	return sideWide, words
}

func (d *FlowChart) lay(width float64) *canvas.Canvas {
	l := layFlow(d.Bands)
	bottom := l.stand(spacing{top: 2, height: bandTall,
		above: func(n *node, last bool) float64 {
			if n.name == "" || last {
				return 6
			}
			return overTall
		},
		least: func(n *node, last bool) float64 {
			if last {
				return sideTall - 6
			}
			return 0
		}})
	c := canvas.New(width, bottom+12)
	room, _ := beside(width)
	step := (width - room - barWide) / float64(max(len(l.columns)-1, 1))
	for i := range d.Bands {
		d.band(c, l, i, step)
	}
	for k, column := range l.columns {
		for _, n := range column {
			if n.name != "" {
				d.place(c, n, float64(k)*step, step, k == len(l.columns)-1)
			}
		}
	}
	return c
}

// band draws one flow, over all columns that it passes.
func (d *FlowChart) band(c *canvas.Canvas, l *flowLayout, band int, step float64) {
	b := d.Bands[band]
	to := d.Places[b.To]
	c.Mark(band, d.Places[b.From].Says+" → "+to.Says+": "+d.Write(b.Amount))
	for _, s := range l.strands {
		if s.band != band {
			continue
		}
		from := canvas.Point{X: float64(s.from.column)*step + barWide, Y: s.y0}
		if s.from.name == "" {
			from.X -= barWide
		}
		end := canvas.Point{X: float64(s.to.column) * step, Y: s.y1}
		thick := s.amount * l.scale
		if thick < 1 {
			c.Polyline(sweep(from, end, 0), canvas.Style{Line: to.Ink, Width: 1, Dash: canvas.Points})
			continue
		}
		upper, lower := sweep(from, end, -thick/2), sweep(from, end, thick/2)
		for i := len(lower) - 1; i >= 0; i-- {
			upper = append(upper, lower[i])
		}
		c.Area(upper, canvas.Style{Fill: to.Ink, Shade: 0.3, Hatch: to.Hatch})
	}
	c.End()
}

// sweep gives the points of a curve that leaves and arrives level: y = y0 + (y1-y0) u2 (3 - 2u), the
// cubic with level ends.
func sweep(from, to canvas.Point, shift float64) []canvas.Point {
	const parts = 20
	points := make([]canvas.Point, parts+1)
	for i := range points {
		u := float64(i) / parts
		points[i] = canvas.Point{X: from.X + u*(to.X-from.X), Y: from.Y + (to.Y-from.Y)*u*u*(3-2*u) + shift}
	}
	return points
}

// place draws a bar with its words: over it, or beside it at the right edge.
func (d *FlowChart) place(c *canvas.Canvas, n *node, x, step float64, last bool) {
	p := d.Places[n.name]
	c.Rect(canvas.Point{X: x, Y: n.y}, canvas.Point{X: x + barWide, Y: n.y + max(n.tall, 1)}, canvas.Style{Fill: p.Ink})
	_, size := beside(c.Width)
	name, amount := canvas.Lettering{Size: size, Halo: true}, canvas.Lettering{Ink: canvas.Quiet, Size: fine, Halo: true}
	if last {
		y := n.y + max(n.tall/2, 8)
		c.Text(canvas.Point{X: x + barWide + 6, Y: y}, p.Says, name)
		c.Text(canvas.Point{X: x + barWide + 6, Y: y + 14}, d.Write(n.amount()), amount)
		return
	}
	// A narrow column has no room for the unit, which the words at the edge have.
	says := d.Write(n.amount())
	if canvas.TextWidth(says, fine, false) > step-2 {
		says = says[:strings.LastIndex(says, gap)]
	}
	c.Text(canvas.Point{X: x, Y: n.y - 19}, p.Says, name)
	c.Text(canvas.Point{X: x, Y: n.y - 5}, says, amount)
}
