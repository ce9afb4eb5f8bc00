package draw

import "suffice/draw/canvas"

// A Cascade shows what goes from where to where in a year as a stream that falls from stop to stop, from the
// top to the bottom: bands as thick as their amounts. Stops stand in rows, a band leads to a lower row or to an end
// that is no stop, or comes from a source that is none.
type Cascade struct {
	About
	Rows    [][]string // stops, from the top; in a row from the left
	Bands   []Band
	Places  map[string]Place
	Notes   map[string]string // what happens at a stop, where there is room for it
	Shared  map[string]string // what the stops of a row have in common, by the first of them
	Write   func(amount float64) string
	Headers [3]string // from, to, amount with its unit
}

// Fall draws a cascade.
func Fall(d Cascade) Picture {
	t := canvas.Table{Headers: d.Headers[:]}
	for _, b := range d.Bands {
		t.Rows = append(t.Rows, []string{d.Places[b.From].Says, d.Places[b.To].Says, number(b.Amount, 0)})
	}
	return d.picture(t, d.lay)
}

// Measures of a cascade, px.
const (
	stopTall   = 13.0 // of a stop's bar
	fallTall   = 46.0 // from what is under one row to what is over the next
	armTall    = 18.0 // of a side arm with its words, at least
	armWide    = 20.0 // from the bar's end to a side arm's
	laneApart  = 5.0  // between what passes a row by
	rowHead    = 34.0 // the words over stops that share a row
	widest     = 260.0
	widestPart = 0.42  // of the picture's width, for the widest row
	notesFrom  = 640.0 // width from which there is room for notes
)

func (d *Cascade) lay(width float64) *canvas.Canvas {
	l := layCascade(d, width)
	c := canvas.New(width, l.bottom+4)
	for i, b := range d.Bands {
		from, to := d.Places[b.From], d.Places[b.To]
		c.Mark(i, from.Says+" → "+to.Says+": "+d.Write(b.Amount))
		if l.at[b.From] == nil {
			to = from // what joins the stream keeps its own look
		}
		l.band(c, i, to)
		c.End()
	}
	for r, row := range l.rows {
		for _, s := range row {
			l.stop(c, d, s, len(row) > 1, r)
		}
		if last := row[len(row)-1]; len(row) > 1 {
			l.caption(c, d, row, last.x+l.room(d, last)+12, l.bar[r]+11)
		}
	}
	return c
}

// band draws one band: a fall from stop to stop, or a side arm.
func (l *cascade) band(c *canvas.Canvas, i int, look Place) {
	w := l.ways[i]
	if w.wide < 1 {
		middle := make([]canvas.Point, len(w.left))
		for k := range middle {
			middle[k] = canvas.Point{X: (w.left[k].X + w.right[k].X) / 2, Y: (w.left[k].Y + w.right[k].Y) / 2}
		}
		c.Polyline(middle, canvas.Style{Line: look.Ink, Width: 1, Dash: canvas.Points})
		return
	}
	outline := append([]canvas.Point{}, w.left...)
	for k := len(w.right) - 1; k >= 0; k-- {
		outline = append(outline, w.right[k])
	}
	c.Area(outline, canvas.Style{Fill: look.Ink, Shade: 0.3, Hatch: look.Hatch})
}

// caption tells what the stops of a row have in common, where there is room.
func (l *cascade) caption(c *canvas.Canvas, d *Cascade, row []*stop, x, y float64) {
	says := d.Shared[row[0].name]
	if x+canvas.TextWidth(says, fine, false) <= c.Width {
		c.Text(canvas.Point{X: x, Y: y}, says, canvas.Lettering{Ink: canvas.Quiet, Size: fine, Halo: true})
	}
}

// stop draws a bar with its words, and the words of its side arms.
func (l *cascade) stop(c *canvas.Canvas, d *Cascade, s *stop, shared bool, row int) {
	p, y := d.Places[s.name], l.bar[row]
	c.Rect(canvas.Point{X: s.x, Y: y}, canvas.Point{X: s.x + max(s.wide, 2), Y: y + stopTall}, canvas.Style{Fill: p.Ink})
	small := canvas.Lettering{Ink: canvas.Quiet, Size: fine, Halo: true}
	if shared {
		c.Text(canvas.Point{X: s.x, Y: y - 18}, p.Says, canvas.Lettering{Size: fine, Halo: true})
		c.Text(canvas.Point{X: s.x, Y: y - 5}, d.Write(s.amount), small)
		return
	}
	x := s.x + max(s.wide, 2) + 7
	c.Text(canvas.Point{X: x, Y: y + 11}, p.Says, canvas.Lettering{Halo: true})
	c.Text(canvas.Point{X: x + canvas.TextWidth(p.Says, words, false) + 7, Y: y + 11}, d.Write(s.amount), small)
	if c.Width >= notesFrom {
		x += canvas.TextWidth(p.Says, words, false) + canvas.TextWidth(d.Write(s.amount), fine, false) + 27
		c.Text(canvas.Point{X: x, Y: y + 11}, d.Notes[s.name], small)
	}
	for _, arm := range s.arms {
		b, says := d.Bands[arm.band], d.armSays(arm.band, arm.comes)
		at := canvas.Point{X: arm.x + 4, Y: arm.y + 4}
		c.Text(at, says, canvas.Lettering{Size: fine, Halo: true})
		at.X += canvas.TextWidth(says, fine, false) + 6
		c.Text(at, d.Write(b.Amount), small)
	}
}

// armSays gives the words of a side arm, with the way it flows.
func (d *Cascade) armSays(band int, comes bool) string {
	if comes {
		return "← " + d.Places[d.Bands[band].From].Says
	}
	return "→ " + d.Places[d.Bands[band].To].Says
}
