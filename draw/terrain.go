package draw

import (
	"math"
	"strings"

	"suffice/draw/canvas"
)

// A Profile is the ground along a line, cut through.
type Profile struct {
	About           // the unit is that of both axes
	Ground   []Spot // from left to right, two at least
	Places   []Spot // things on it, with their words
	Along    []Spot // words along the level axis; none: round ticks
	Headers  [3]string
	Distance string // words under the level axis
	Larger   string // words that say how much larger heights are drawn, with {times}
}

// A Spot is a point of the ground.
type Spot struct {
	Along, Height float64
	Says          string
}

// Terrain draws ground to one scale in both directions, so that a slope is seen as steep as it is, unless it
// would be flatter than a fifth of the width: then heights are drawn larger and the drawing says by how much.
func Terrain(d Profile) Picture {
	t := canvas.Table{Headers: d.Headers[:]}
	for _, s := range append(d.Ground[:len(d.Ground):len(d.Ground)], d.Places...) {
		t.Rows = append(t.Rows, []string{s.Says, figures(s.Along), figures(s.Height)})
	}
	return d.picture(t, func(width float64) *canvas.Canvas { return d.lay(width, t) })
}

// Stretch gives how much larger heights are drawn than lengths.
func (d *Profile) Stretch() float64 {
	low, high := d.reach()
	length := d.Ground[len(d.Ground)-1].Along - d.Ground[0].Along
	stretch := 1.0
	for stretch < 100 && (high-low)*stretch < length/5 {
		stretch *= 2
	}
	return stretch
}

func (d *Profile) reach() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, s := range append(d.Ground[:len(d.Ground):len(d.Ground)], d.Places...) {
		low, high = min(low, s.Height), max(high, s.Height)
	}
	return low, high
}

func (d *Profile) lay(width float64, t canvas.Table) *canvas.Canvas {
	low, high := d.reach()
	y := RoundTicks(low, high, 5)
	first, last := d.Ground[0].Along, d.Ground[len(d.Ground)-1].Along
	f := newFrame(canvas.New(width, 0), 34, 0, y)
	scale := (f.right - f.left) / (last - first)
	f.bottom = f.top + (y.To-y.From)*scale*d.Stretch()
	f.c.Height = f.bottom + 42
	f.axis(d.Unit)
	at := func(s Spot) canvas.Point { return canvas.Point{X: f.left + (s.Along-first)*scale, Y: f.at(s.Height)} }
	outline := []canvas.Point{{X: f.left, Y: f.bottom}}
	for _, s := range d.Ground {
		outline = append(outline, at(s))
	}
	outline = append(outline, canvas.Point{X: f.right, Y: f.bottom})
	f.c.Area(outline, canvas.Style{Fill: canvas.Earth, Shade: 0.2, Hatch: canvas.Rising})
	f.c.Polyline(outline[1:len(outline)-1], canvas.Style{Line: canvas.Earth, Width: 2})
	d.spots(&f, t, at)
	for _, w := range d.along(first, last) {
		half := canvas.TextWidth(w.Says, fine, false) / 2
		x := min(max(at(w).X, f.left+half), width-half)
		f.c.Text(canvas.Point{X: x, Y: f.bottom + 16}, w.Says, anchored(quiet, canvas.Middle))
	}
	says := d.Distance
	if k := d.Stretch(); k != 1 {
		says += "; " + strings.ReplaceAll(d.Larger, "{times}", number(k, 0))
	}
	for _, line := range canvas.Wrap(says, width-f.left, fine, false) {
		f.c.Text(canvas.Point{X: f.left, Y: f.c.Height - 8}, line, quiet)
		f.c.Height += 16
	}
	return f.c
}

// along gives the words of the level axis.
func (d *Profile) along(first, last float64) []Spot {
	if len(d.Along) > 0 {
		return d.Along
	}
	var list []Spot
	ticks := RoundTicks(first, last, 5)
	for _, v := range ticks.Values() {
		if v >= first && v <= last {
			list = append(list, Spot{Along: v, Says: ticks.Text(v)})
		}
	}
	return list
}

func (d *Profile) spots(f *frame, t canvas.Table, at func(Spot) canvas.Point) {
	for i, s := range append(d.Ground[:len(d.Ground):len(d.Ground)], d.Places...) {
		f.c.Mark(i, tell(t, i))
		p := at(s)
		f.c.Circle(p, 3, canvas.Style{Fill: canvas.Paper, Line: canvas.Earth, Width: 1.5})
		if i >= len(d.Ground) {
			f.c.Text(canvas.Point{X: p.X, Y: p.Y - 8}, s.Says, canvas.Lettering{Size: fine, Anchor: canvas.Middle, Halo: true})
		}
		f.c.End()
	}
}
