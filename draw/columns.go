package draw

import (
	"math"

	"suffice/draw/canvas"
)

// A ColumnChart is amounts of each month of a mean year, stacked where they have parts.
type ColumnChart struct {
	About
	Names   [12]string // of the months
	Short   [12]string // the same in three letters
	Parts   []ColumnPart
	Rule    Rule     // a line across, where it has a name
	Headers []string // month, then each part with its unit
}

// A ColumnPart is one part of all columns, from the foot up. No value is negative.
type ColumnPart struct {
	Says   string
	Values [12]float64
	Ink    canvas.Ink
	Hatch  canvas.Hatch
}

// Columns draws the months of a mean year.
func Columns(d ColumnChart) Picture {
	t := canvas.Table{Headers: d.Headers}
	for m := range 12 {
		row := []string{d.Names[m]}
		for _, p := range d.Parts {
			row = append(row, figures(p.Values[m]))
		}
		t.Rows = append(t.Rows, row)
	}
	return d.picture(t, func(width float64) *canvas.Canvas { return d.lay(width, t) })
}

// most gives the highest of the columns and the rule.
func (d *ColumnChart) most() float64 {
	most := d.Rule.At
	for m := range 12 {
		sum := 0.0
		for _, p := range d.Parts {
			sum += p.Values[m]
		}
		most = max(most, sum)
	}
	if !(most > 0) {
		return 1 // an empty chart has an axis too
	}
	return most
}

func (d *ColumnChart) lay(width float64, t canvas.Table) *canvas.Canvas {
	height := math.Round(min(300, 170+0.2*width))
	c := canvas.New(width, height)
	top := c.Key(d.key())
	f := newFrame(c, top+26, height-26, RoundTicks(0, d.most(), 5))
	f.axis(d.Unit)
	for m := range 12 {
		x, w := f.column(m, 12)
		c.Mark(m, tell(t, m))
		foot := 0.0
		for _, p := range d.Parts {
			if p.Values[m] > 0 {
				c.Rect(canvas.Point{X: x - 0.38*w, Y: f.at(foot)}, canvas.Point{X: x + 0.38*w, Y: f.at(foot + p.Values[m])}, p.look())
				foot += p.Values[m]
			}
		}
		if foot == 0 { // the month can still be pointed at and stepped to
			c.Line(canvas.Point{X: x - 0.38*w, Y: f.at(0)}, canvas.Point{X: x + 0.38*w, Y: f.at(0)}, axisLine)
		}
		c.End()
		c.Text(canvas.Point{X: x, Y: height - 8}, d.Short[m], anchored(quiet, canvas.Middle))
	}
	d.Rule.draw(&f)
	return c
}

func (p *ColumnPart) look() canvas.Style {
	return canvas.Style{Fill: p.Ink, Shade: shade(p.Hatch), Hatch: p.Hatch, Line: p.Ink, Width: 1}
}

// key explains the parts by themselves; a single one is told by the title.
func (d *ColumnChart) key() (items []canvas.KeyItem) {
	if len(d.Parts) > 1 {
		for i := range d.Parts {
			items = append(items, canvas.KeyItem{Says: d.Parts[i].Says, Look: d.Parts[i].look()})
		}
	}
	if d.Rule.Says != "" {
		items = append(items, canvas.KeyItem{Says: d.Rule.Says, Look: ruleLine})
	}
	return items
}
