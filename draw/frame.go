package draw

import (
	"strings"

	"suffice/draw/canvas"
)

// About is what every picture says of itself.
type About struct {
	Name    string // one word, for ids and file names
	Title   string
	Unit    string
	Summary string
}

func (a About) picture(t canvas.Table, lay func(width float64) *canvas.Canvas) Picture {
	return Picture{Name: a.Name, Title: a.Title, Unit: a.Unit, Summary: a.Summary, Table: t, Draw: lay}
}

// Letter sizes, px.
const (
	words = 13.0
	fine  = 11.5
)

var (
	quiet    = canvas.Lettering{Ink: canvas.Quiet, Size: fine}
	gridLine = canvas.Style{Line: canvas.Grid, Width: 1}
	axisLine = canvas.Style{Line: canvas.Quiet, Width: 1}
)

// anchored gives the lettering hung at another point.
func anchored(l canvas.Lettering, at canvas.Anchor) canvas.Lettering {
	l.Anchor = at
	return l
}

// tell reads a row of a table aloud: its first cell, then each header with its cell.
func tell(t canvas.Table, row int) string {
	cells := t.Rows[row]
	parts := []string{cells[0]}
	for i := 1; i < len(cells); i++ {
		if cells[i] != "" {
			parts = append(parts, t.Headers[i]+" "+cells[i])
		}
	}
	return strings.Join(parts, "; ")
}

// A frame is the field between two axes.
type frame struct {
	c                        *canvas.Canvas
	left, right, top, bottom float64
	y                        Ticks
}

// newFrame lays out the field of a chart with an upright axis of round ticks. The unit stands
// above the axis.
func newFrame(c *canvas.Canvas, top, bottom float64, y Ticks) frame {
	wide := 0.0
	for _, v := range y.Values() {
		wide = max(wide, canvas.TextWidth(y.Text(v), fine, false))
	}
	return frame{c: c, left: wide + 10, right: c.Width - 6, top: top, bottom: bottom, y: y}
}

// at gives the height of a value.
func (f *frame) at(v float64) float64 {
	return f.bottom - (v-f.y.From)/(f.y.To-f.y.From)*(f.bottom-f.top)
}

// axis draws ticks, their lines, and the unit.
func (f *frame) axis(unit string) {
	for _, v := range f.y.Values() {
		y := f.at(v)
		line := gridLine
		if v == f.y.From {
			line = axisLine
		}
		f.c.Line(canvas.Point{X: f.left, Y: y}, canvas.Point{X: f.right, Y: y}, line)
		f.c.Text(canvas.Point{X: f.left - 5, Y: y + 4}, f.y.Text(v), anchored(quiet, canvas.End))
	}
	f.c.Text(canvas.Point{X: 0, Y: f.top - 12}, unit, quiet)
}

// column gives the middle and the width of one of n columns.
func (f *frame) column(i, n int) (middle, width float64) {
	width = (f.right - f.left) / float64(n)
	return f.left + (float64(i)+0.5)*width, width
}
