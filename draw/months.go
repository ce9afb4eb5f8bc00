package draw

import (
	"math"

	"suffice/draw/canvas"
)

// A MonthChart is how a store or a flow stands through the year: for every month the middle
// of all its days and the span that holds eight days of ten. It is how this program shows a year.
type MonthChart struct {
	About
	Names             [12]string // of the months
	Short             [12]string // the same in three letters
	Low, Middle, High [12]float64
	Least             [12]float64 // of all days
	From, To          float64     // the axis holds at least these
	Ink               canvas.Ink
	Rule              Rule      // a line across, where it has a name
	Headers           [5]string // month, tenth, middle, ninetieth, least
	Digits            int       // of the table
	Key               [3]string // words for the middle, the span and the lowest
	Beyond            *Beyond   // nil for none
}

// Beyond is what a chart of months may show beside: the highest of all, and a band in which the values should lie.
type Beyond struct {
	Most     [12]float64
	Band     [2][12]float64 // from, to
	Headers  [3]string      // highest, and both ends of the band
	BandSays string
}

// A Rule is a value that a line marks, with its name.
type Rule struct {
	Says string
	At   float64
}

// Months draws a year.
func Months(d MonthChart) Picture {
	t := canvas.Table{Headers: d.Headers[:]}
	if b := d.Beyond; b != nil {
		t.Headers = append(t.Headers, b.Headers[:]...)
	}
	for m := range 12 {
		row := []string{d.Names[m], number(d.Low[m], d.Digits), number(d.Middle[m], d.Digits), number(d.High[m], d.Digits), number(d.Least[m], d.Digits)}
		if b := d.Beyond; b != nil {
			row = append(row, number(b.Most[m], d.Digits), number(b.Band[0][m], d.Digits), number(b.Band[1][m], d.Digits))
		}
		t.Rows = append(t.Rows, row)
	}
	return d.picture(t, func(width float64) *canvas.Canvas { return d.lay(width, t) })
}

func (d *MonthChart) lay(width float64, t canvas.Table) *canvas.Canvas {
	height := math.Round(min(320, 180+0.2*width))
	c := canvas.New(width, height)
	low, high := d.From, d.To
	for m := range 12 {
		low, high = min(low, d.Least[m]), max(high, d.High[m])
		if b := d.Beyond; b != nil {
			low, high = min(low, b.Band[0][m]), max(high, b.Most[m], b.Band[1][m])
		}
	}
	top := c.Key(d.key())
	f := newFrame(c, top+26, height-26, RoundTicks(low, high, 5))
	f.axis(d.Unit)
	if d.Beyond != nil {
		d.Beyond.band(&f)
	}
	for m := range 12 {
		x, w := f.column(m, 12)
		c.Mark(m, tell(t, m))
		d.month(&f, m, x, w)
		c.End()
		c.Text(canvas.Point{X: x, Y: height - 8}, d.Short[m], anchored(quiet, canvas.Middle))
	}
	d.Rule.draw(&f)
	return c
}

// month draws one month: the span as a hatched block, the middle as a bar through it, the least
// day as a short foot.
func (d *MonthChart) month(f *frame, m int, x, w float64) {
	at := func(dx, v float64) canvas.Point { return canvas.Point{X: x + dx*w, Y: f.at(v)} }
	f.c.Line(at(0, d.Least[m]), at(0, d.Low[m]), canvas.Style{Line: d.Ink, Width: 1, Dash: canvas.Points})
	f.c.Line(at(-0.16, d.Least[m]), at(0.16, d.Least[m]), canvas.Style{Line: d.Ink, Width: 1.5})
	if b := d.Beyond; b != nil {
		f.c.Line(at(0, b.Most[m]), at(0, d.High[m]), canvas.Style{Line: d.Ink, Width: 1, Dash: canvas.Points})
		f.c.Line(at(-0.16, b.Most[m]), at(0.16, b.Most[m]), canvas.Style{Line: d.Ink, Width: 1.5})
	}
	f.c.Rect(at(-0.5, d.Low[m]), at(0.5, d.High[m]), canvas.Style{Fill: d.Ink, Shade: 0.24})
	f.c.Line(at(-0.5, d.Middle[m]), at(0.5, d.Middle[m]), canvas.Style{Line: d.Ink, Width: 4})
}

// key explains the marks by themselves.
func (d *MonthChart) key() []canvas.KeyItem {
	items := []canvas.KeyItem{
		{Says: d.Key[0], Look: canvas.Style{Line: d.Ink, Width: 4}},
		{Says: d.Key[1], Look: canvas.Style{Fill: d.Ink, Shade: 0.24}},
		{Says: d.Key[2], Look: canvas.Style{Line: d.Ink, Width: 1, Dash: canvas.Points}},
	}
	if b := d.Beyond; b != nil {
		items = append(items, canvas.KeyItem{Says: b.BandSays, Look: bandLook})
	}
	if d.Rule.Says != "" {
		items = append(items, canvas.KeyItem{Says: d.Rule.Says, Look: ruleLine})
	}
	return items
}

// bandLook is that of the band in which values should lie.
var bandLook = canvas.Style{Fill: canvas.Plant, Shade: 0.2, Line: canvas.Plant, Width: 1}

// band lies behind the months.
func (b *Beyond) band(f *frame) {
	var outline []canvas.Point
	for m := range 12 {
		x, w := f.column(m, 12)
		outline = append(outline, canvas.Point{X: x - w/2, Y: f.at(b.Band[1][m])}, canvas.Point{X: x + w/2, Y: f.at(b.Band[1][m])})
	}
	for m := 11; m >= 0; m-- {
		x, w := f.column(m, 12)
		outline = append(outline, canvas.Point{X: x + w/2, Y: f.at(b.Band[0][m])}, canvas.Point{X: x - w/2, Y: f.at(b.Band[0][m])})
	}
	f.c.Area(outline, bandLook)
}

var ruleLine = canvas.Style{Line: canvas.Text, Width: 1.2, Dash: canvas.Dashed}

func (r Rule) draw(f *frame) {
	if r.Says != "" {
		f.c.Line(canvas.Point{X: f.left, Y: f.at(r.At)}, canvas.Point{X: f.right, Y: f.at(r.At)}, ruleLine)
	}
}
