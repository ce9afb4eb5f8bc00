package draw

import (
	"math"

	"suffice/draw/canvas"
)

// A WeekChart is a few days hour by hour, or in steps of some hours: lines with the band in which they should lie, and below them one
// value as bars.
type WeekChart struct {
	About
	Times     []string // one for each step: the first column of the table
	Days      []Mark   // the word of each day, at its first step
	Series    []Series
	Low, High []float64 // the band
	BandSays  string
	Bars      DayRow
	Headers   []string // of the table: time, each series, both ends of the band, the bars
	Digits    int
}

// Week draws it.
func Week(d WeekChart) Picture {
	t := canvas.Table{Headers: d.Headers}
	for i, time := range d.Times {
		row := []string{time}
		for _, s := range d.Series {
			row = append(row, number(s.Values[i], d.Digits))
		}
		t.Rows = append(t.Rows, append(row, number(d.Low[i], d.Digits), number(d.High[i], d.Digits), number(d.Bars.Values[i], d.Bars.Digits)))
	}
	return d.picture(t, func(width float64) *canvas.Canvas { return d.lay(width, t) })
}

// weekTall is the height of the field of lines, px.
const weekTall = 210.0

func (d *WeekChart) lay(width float64, t canvas.Table) *canvas.Canvas {
	c := canvas.New(width, 0)
	top := c.Key(d.key()) + 26
	low, high := math.Inf(1), math.Inf(-1)
	for i := range d.Times {
		low, high = min(low, d.Low[i]), max(high, d.High[i])
		for _, s := range d.Series {
			if drawable(s.Values[i]) {
				low, high = min(low, s.Values[i]), max(high, s.Values[i])
			}
		}
	}
	most := d.Bars.Top
	for _, v := range d.Bars.Values {
		if drawable(v) {
			most = max(most, v)
		}
	}
	lines := newFrame(c, top, top+weekTall, RoundTicks(low, high, 7))
	bars := newFrame(c, lines.bottom+34, lines.bottom+34+smallTall-40, RoundTicks(0, most, 2))
	c.Height = bars.bottom + 28
	lines.left = max(lines.left, bars.left)
	bars.left = lines.left
	d.band(&lines)
	lines.axis(d.Unit)
	bars.axis(d.Bars.Says)
	d.feet(&lines, &bars)
	for _, s := range d.Series {
		c.Polyline(d.points(&lines, s), canvas.Style{Line: s.Ink, Width: 2, Dash: s.Dash})
	}
	for i := range d.Times {
		c.Mark(i, tell(t, i))
		for _, s := range d.Series {
			c.Circle(d.points(&lines, s)[i], 2, canvas.Style{Fill: s.Ink})
		}
		d.Bars.bar(&bars, i, len(d.Times))
		c.End()
	}
	return c
}

func (d *WeekChart) points(f *frame, s Series) []canvas.Point {
	points := make([]canvas.Point, len(s.Values))
	for i, v := range s.Values {
		x, _ := f.column(i, len(d.Times))
		if points[i] = (canvas.Point{X: x, Y: f.at(v)}); !drawable(v) {
			points[i].Y = math.NaN()
		}
	}
	return points
}

// band lies behind the lines.
func (d *WeekChart) band(f *frame) {
	var upper, lower []canvas.Point
	for i := range d.Times {
		x, w := f.column(i, len(d.Times))
		upper = append(upper, canvas.Point{X: x - w/2, Y: f.at(d.High[i])}, canvas.Point{X: x + w/2, Y: f.at(d.High[i])})
		lower = append(lower, canvas.Point{X: x - w/2, Y: f.at(d.Low[i])}, canvas.Point{X: x + w/2, Y: f.at(d.Low[i])})
	}
	for i := len(lower) - 1; i >= 0; i-- {
		upper = append(upper, lower[i])
	}
	f.c.Area(upper, bandLook)
}

// feet parts the days and writes their words: all of them, or every so many where there is less room.
func (d *WeekChart) feet(lines, bars *frame) {
	every, wide := 1, 0.0
	for _, m := range d.Days {
		wide = max(wide, canvas.TextWidth(m.Says, fine, false)+8)
	}
	if n := len(d.Days); n > 0 {
		every = max(1, int(math.Ceil(wide*float64(n)/(bars.right-bars.left))))
	}
	for i, m := range d.Days {
		x, w := bars.column(m.At, len(d.Times))
		x -= w / 2
		for _, f := range [2]*frame{lines, bars} {
			f.c.Line(canvas.Point{X: x, Y: f.top}, canvas.Point{X: x, Y: f.bottom}, gridLine)
		}
		if i%every == 0 {
			bars.c.Text(canvas.Point{X: x + 2, Y: bars.c.Height - 10}, m.Says, quiet)
		}
	}
}

// key names lines and band.
func (d *WeekChart) key() (items []canvas.KeyItem) {
	for _, s := range d.Series {
		items = append(items, canvas.KeyItem{Says: s.Says, Look: canvas.Style{Line: s.Ink, Width: 2, Dash: s.Dash}})
	}
	return append(items, canvas.KeyItem{Says: d.BandSays, Look: bandLook})
}
