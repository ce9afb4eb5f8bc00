package draw

import (
	"math"

	"suffice/draw/canvas"
)

// A LineChart is one or several values along time.
type LineChart struct {
	About
	Times    []string // one for each value: the first column of the table
	Marks    []Mark   // the words along the level axis
	Series   []Series
	From, To float64 // the axis holds at least these
	Rule     Rule
	Headers  []string // of the table: time, then each series with its unit
	Told     Mark     // words at one value of the first series, where it has any
	Digits   int
}

// A Mark is a word at the place of one value along the level axis.
type Mark struct {
	At   int
	Says string
}

// A Series is one line. A value that is no number, or past 1e15, is a gap in it.
type Series struct {
	Says   string
	Values []float64
	Ink    canvas.Ink
	Dash   canvas.Dash
}

// Lines draws values along time.
func Lines(d LineChart) Picture {
	t := canvas.Table{Headers: d.Headers}
	for i, time := range d.Times {
		row := []string{time}
		for _, s := range d.Series {
			text := ""
			if v := s.Values[i]; !math.IsNaN(v) {
				text = number(v, d.Digits)
			}
			row = append(row, text)
		}
		t.Rows = append(t.Rows, row)
	}
	return d.picture(t, func(width float64) *canvas.Canvas { return d.lay(width, t) })
}

// mostMarks bounds what one walks through by keyboard; more values than these are read in
// steps, and the table has them all.
const mostMarks = 60

func (d *LineChart) lay(width float64, t canvas.Table) *canvas.Canvas {
	height := math.Round(min(300, 150+0.2*width))
	c := canvas.New(width, height)
	low, high := d.From, d.To
	for _, s := range d.Series {
		for _, v := range s.Values {
			if drawable(v) {
				low, high = min(low, v), max(high, v)
			}
		}
	}
	top := 4.0
	if items := d.key(); len(items) > 0 {
		top = c.Key(items)
	}
	f := newFrame(c, top+26, height-26, RoundTicks(low, high, 5))
	f.axis(d.Unit)
	for _, s := range d.Series {
		c.Polyline(d.points(&f, s), canvas.Style{Line: s.Ink, Width: 2, Dash: s.Dash})
	}
	d.marks(&f, t)
	d.tell(&f)
	d.times(&f)
	d.Rule.draw(&f)
	return c
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

func (d *LineChart) points(f *frame, s Series) []canvas.Point {
	points := make([]canvas.Point, len(s.Values))
	for i, v := range s.Values {
		x, _ := f.column(i, len(d.Times))
		if points[i] = (canvas.Point{X: x, Y: f.at(v)}); !drawable(v) {
			points[i].Y = math.NaN()
		}
	}
	return points
}

func (d *LineChart) marks(f *frame, t canvas.Table) {
	step := (len(d.Times) + mostMarks - 1) / mostMarks
	for i := 0; i < len(d.Times); i += max(step, 1) {
		f.c.Mark(i, tell(t, i))
		for _, s := range d.Series {
			f.c.Circle(d.points(f, s)[i], 2.5, canvas.Style{Fill: canvas.Paper, Line: s.Ink, Width: 1.5})
		}
		f.c.End()
	}
}

// tell writes the words that the summary is about at the top of the field, with a thin line down to their value.
func (d *LineChart) tell(f *frame) {
	if d.Told.Says == "" {
		return
	}
	at := d.points(f, d.Series[0])[d.Told.At]
	half := canvas.TextWidth(d.Told.Says, words, true) / 2
	f.c.Circle(at, 4, canvas.Style{Fill: d.Series[0].Ink})
	x := min(max(at.X, f.left+half), f.right-half)
	f.c.Line(canvas.Point{X: at.X, Y: f.top + 20}, at, canvas.Style{Line: canvas.Text, Dash: canvas.Points})
	f.c.Text(canvas.Point{X: x, Y: f.top + 15}, d.Told.Says, canvas.Lettering{Bold: true, Anchor: canvas.Middle, Halo: true})
}

// times writes the words of the level axis that have room.
func (d *LineChart) times(f *frame) {
	free := math.Inf(-1)
	for _, m := range d.Marks {
		x, _ := f.column(m.At, len(d.Times))
		half := canvas.TextWidth(m.Says, fine, false) / 2
		x = min(max(x, f.left+half), f.c.Width-half)
		if x-half > free {
			f.c.Text(canvas.Point{X: x, Y: f.c.Height - 8}, m.Says, anchored(quiet, canvas.Middle))
			free = x + half + 6
		}
	}
}

// key names the lines where there are several, and the rule.
func (d *LineChart) key() (items []canvas.KeyItem) {
	for _, s := range d.Series {
		if len(d.Series) > 1 {
			items = append(items, canvas.KeyItem{Says: s.Says, Look: canvas.Style{Line: s.Ink, Width: 2, Dash: s.Dash}})
		}
	}
	if d.Rule.Says != "" {
		items = append(items, canvas.KeyItem{Says: d.Rule.Says, Look: ruleLine})
	}
	return items
}
