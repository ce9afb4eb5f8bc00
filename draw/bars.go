package draw

import "suffice/draw/canvas"

// A BarChart compares amounts of one kind, each with its word and its number.
type BarChart struct {
	About
	Bars    []Bar
	Headers [2]string // what is compared, and the amount with its unit
}

// A Bar is one amount, not negative. One that is no number, or past 1e15, has its words and no bar.
type Bar struct {
	Says   string
	Amount float64
	Ink    canvas.Ink
	Hatch  canvas.Hatch
}

// Bars draws level bars, one under the other in the order given.
func Bars(d BarChart) Picture {
	t := canvas.Table{Headers: d.Headers[:]}
	for _, b := range d.Bars {
		t.Rows = append(t.Rows, []string{b.Says, figures(b.Amount)})
	}
	return d.picture(t, func(width float64) *canvas.Canvas { return d.lay(width, t) })
}

const barPitch = 44.0

func (d *BarChart) lay(width float64, t canvas.Table) *canvas.Canvas {
	c := canvas.New(width, barPitch*float64(len(d.Bars))+8)
	most := 0.0
	for _, b := range d.Bars {
		if drawable(b.Amount) {
			most = max(most, b.Amount)
		}
	}
	for i, b := range d.Bars {
		y := barPitch*float64(i) + 16
		c.Mark(i, tell(t, i))
		c.Text(canvas.Point{X: 0, Y: y}, b.Says, canvas.Lettering{})
		c.Text(canvas.Point{X: width, Y: y}, figures(b.Amount)+gap+d.Unit, canvas.Lettering{Anchor: canvas.End})
		c.Rect(canvas.Point{X: 0, Y: y + 6}, canvas.Point{X: width, Y: y + 20}, canvas.Style{Line: canvas.Grid})
		if most > 0 && drawable(b.Amount) {
			c.Rect(canvas.Point{X: 0, Y: y + 6}, canvas.Point{X: width * b.Amount / most, Y: y + 20}, canvas.Style{Fill: b.Ink, Shade: shade(b.Hatch), Hatch: b.Hatch, Line: b.Ink})
		}
		c.End()
	}
	return c
}

// shade makes room for a hatch to be seen.
func shade(h canvas.Hatch) float64 {
	if h == canvas.Plain {
		return 0.85
	}
	return 0.25
}
