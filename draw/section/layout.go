package section

import (
	"strings"

	"suffice/draw/canvas"
)

// view is where the drawing's metres stand on the canvas.
type view struct {
	c                   *canvas.Canvas
	x, y, scale         float64 // px of the house's origin, px for a metre
	left, right, sky    float64 // m, the limits of the upper row
	lanes, storeX, base float64 // px: top of the lanes, left end and ground of the lower row
}

// at gives the place of a point of the house, m.
func (v view) at(x, y float64) canvas.Point {
	return canvas.Point{X: v.x + x*v.scale, Y: v.y - y*v.scale}
}

// store gives the place of a point of the lower row, m.
func (v view) store(x, y float64) canvas.Point {
	return canvas.Point{X: v.storeX + x*v.scale, Y: v.base - y*v.scale}
}

// Room around the house, m.
const (
	behind   = 2.6
	ahead    = 3.6
	above    = 2.6
	under    = 1.3
	largest  = 46.0 // px for a metre
	lettered = 12.0 // px, size of letters
)

// Scale gives how many px a metre takes at a width.
func (p *plan) scale(width float64) float64 {
	scale := min(largest, width/(behind+p.shell.tip()+ahead))
	if p.row.next > 0 {
		scale = min(scale, width/(p.row.next+0.4))
	}
	return scale
}

func (p *plan) lay(width float64, t canvas.Table) *canvas.Canvas {
	c := canvas.New(width, 0)
	v := view{c: c, scale: p.scale(width)}
	top := c.Key(p.key()) + 10
	v.left, v.right, v.sky = -behind, min(p.shell.tip()+ahead, -behind+width/v.scale), p.shell.top()+above
	v.x = behind * v.scale
	v.y = top + v.sky*v.scale
	bottom := v.y + p.under()*v.scale
	p.ground(v, bottom)
	if p.row.next > 0 {
		v.lanes = bottom
		v.base = bottom + lanesTall + p.row.tall*v.scale
		v.storeX = 0.2 * v.scale
		bottom = p.lowerGround(v)
	}
	p.north(v, top)
	p.each(v, t)
	bottom = scaleBar(v, bottom+22)
	if p.row.next > 0 {
		for _, line := range canvas.Wrap(p.say.Say("stores"), width, 11.5, false) {
			bottom += 18
			c.Text(canvas.Point{X: 0, Y: bottom}, line, canvas.Lettering{Ink: canvas.Quiet, Size: 11.5})
		}
	}
	c.Height = p.legend(c, bottom+26)
	return c
}

// under gives how much earth is shown, m.
func (p *plan) under() float64 {
	if q := p.file.Planter; q != nil {
		return max(under, float64(q.Gravel+q.Soil)+0.6)
	}
	return under
}

func (p *plan) key() (items []canvas.KeyItem) {
	for s := range seasons {
		if p.noons[s] > 0 {
			items = append(items, canvas.KeyItem{Says: p.say.Say("key."+seasonWords[s], "height", degrees(p.noons[s])), Look: rayLook(s)})
		}
	}
	return items
}

// ground draws the earth of the upper row; behind a wall that faces earth up to the roof.
func (p *plan) ground(v view, bottom float64) {
	s := &p.shell
	level := 0.0
	if s.backEarth {
		level = s.height.m
	}
	left, right, deep := v.left, (v.c.Width-v.x)/v.scale, (v.y-bottom)/v.scale
	outline := []canvas.Point{v.at(left, deep), v.at(left, level), v.at(0, level), v.at(0, -s.floor.m), v.at(s.face(), -s.floor.m), v.at(s.face(), 0), v.at(right, 0), v.at(right, deep)}
	v.c.Area(outline, ground)
	if !s.backEarth {
		v.c.Polyline(outline[1:3], canvas.Style{Line: canvas.Earth, Width: 1.5})
	}
	if s.room == nil {
		for _, post := range [2]float64{0.1, s.face() - 0.1} {
			v.c.Line(v.at(post, 0), v.at(post, s.height.m), canvas.Style{Line: canvas.Text, Width: 1.2, Dash: canvas.Dashed})
		}
	}
	v.c.Line(outline[5], outline[6], canvas.Style{Line: canvas.Earth, Width: 1.5})
}

func (p *plan) lowerGround(v view) (bottom float64) {
	deep := max(p.row.deep, 0.5)
	a, b := canvas.Point{X: 0, Y: v.base}, canvas.Point{X: v.c.Width, Y: v.base + deep*v.scale}
	v.c.Rect(a, b, ground)
	v.c.Line(a, canvas.Point{X: b.X, Y: a.Y}, canvas.Style{Line: canvas.Earth, Width: 1.5})
	return b.Y
}

// north draws the arrow: to the left where the equator lies south.
func (p *plan) north(v view, top float64) {
	y := top + 10
	from, to, says := canvas.Point{X: 58, Y: y}, canvas.Point{X: 20, Y: y}, p.say.Say("north")
	if p.equator == 0 {
		from, to = to, from
	}
	v.c.Line(from, to, canvas.Style{Line: canvas.Text, Width: 1.5})
	dx := 1.0
	if to.X < from.X {
		dx = -1
	}
	arrow(v.c, canvas.Point{X: to.X + 4*dx, Y: y}, dx, 0, canvas.Text)
	v.c.Text(canvas.Point{X: 39, Y: y + 17}, says, canvas.Lettering{Size: 11.5, Anchor: canvas.Middle})
}

// each draws all things as marks, then their letters over them.
func (p *plan) each(v view, t canvas.Table) {
	for i, x := range p.things {
		v.c.Mark(i, strings.Join(notEmpty(t.Rows[i][1:]), "; "))
		x.draw(p.seen(v, x))
		v.c.End()
	}
	for i, x := range p.things {
		if x.tag != nil {
			at := p.seen(v, x).at(x.tag[0], x.tag[1])
			at.Y += [2]float64{4, -5}[one(x.over)]
			v.c.Text(at, p.letter(i), canvas.Lettering{Size: lettered, Bold: true, Anchor: canvas.Middle, Halo: true})
		}
	}
}

// seen gives the view in which a thing is drawn: a thing of the lower row stands on its ground.
func (p *plan) seen(v view, t thing) view {
	if t.store {
		v.x, v.y = v.storeX, v.base
	}
	return v
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

func notEmpty(cells []string) (kept []string) {
	for _, cell := range cells {
		if cell != "" {
			kept = append(kept, cell)
		}
	}
	return kept
}

// scaleBar draws one, two or five metres, whichever fits a third of the width.
func scaleBar(v view, y float64) (bottom float64) {
	long := 1.0
	for _, m := range [3]float64{2, 5, 10} {
		if m*v.scale <= v.c.Width/3 {
			long = m
		}
	}
	for i := range 2 {
		style := canvas.Style{Fill: canvas.Text, Line: canvas.Text}
		if i == 1 {
			style.Fill = canvas.Paper
		}
		half := long / 2 * v.scale
		v.c.Rect(canvas.Point{X: 1 + float64(i)*half, Y: y}, canvas.Point{X: 1 + float64(i+1)*half, Y: y + 6}, style)
	}
	v.c.Text(canvas.Point{X: long*v.scale + 8, Y: y + 7}, round(long)+"\u202fm", canvas.Lettering{Size: 11.5})
	return y + 6
}

// Measures of the legend, px.
const (
	legendSize    = 11.5
	legendLeading = 16.0
	legendIndent  = 26.0
	twoColumns    = 600.0 // from this width on
)

// legend says what the letters stand for, and in quieter words what was drawn without being told.
func (p *plan) legend(c *canvas.Canvas, top float64) (bottom float64) {
	columns, count := 1, 0
	if c.Width >= twoColumns {
		columns = 2
	}
	for i := range p.things {
		count += one(p.things[i].lettered())
	}
	wide, y, told := c.Width/float64(columns), top, 0
	x := 0.0
	for i := range p.things {
		if !p.things[i].lettered() {
			continue
		}
		if told == (count+1)/columns && columns == 2 {
			x, y = wide, top
		}
		y = p.entry(c, i, canvas.Point{X: x, Y: y}, wide-16*float64(columns-1))
		bottom = max(bottom, y)
		told++
	}
	return bottom
}

// entry writes one thing of the legend and gives where the next begins.
func (p *plan) entry(c *canvas.Canvas, i int, at canvas.Point, wide float64) (bottom float64) {
	x := &p.things[i]
	put := func(text string, ink canvas.Ink) {
		for _, line := range canvas.Wrap(text, wide-legendIndent, legendSize, false) {
			c.Text(canvas.Point{X: at.X + legendIndent, Y: at.Y}, line, canvas.Lettering{Size: legendSize, Ink: ink})
			at.Y += legendLeading
		}
	}
	c.Text(at, p.letter(i), canvas.Lettering{Size: lettered, Bold: true})
	says := x.says
	if more := p.told(x.told, x.day); more != "" {
		says += ": " + more
	}
	put(says, canvas.Text)
	if x.drawn != "" && !x.pipe {
		put(p.say.Say("legend.drawn", "drawn", x.drawn), canvas.Quiet)
	}
	return at.Y
}
