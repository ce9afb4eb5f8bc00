package section

import (
	"math"
	"slices"
	"strings"

	"suffice/draw/canvas"
	"suffice/people"
	"suffice/quantity"
)

// Lanes between the two rows in which pipes run, px from the upper row's lower edge.
const (
	rainLane   = 16.0
	supplyLane = 38.0
	usedLane   = 60.0
	lanesTall  = 78.0
)

// pipes adds the ways of the water: from the roof to the tanks, to the taps, and out.
func (p *plan) pipes() {
	if p.file.Water == nil {
		return
	}
	d := p.day
	if d == nil {
		d = &Day{}
	}
	total := quantity.Litres(0)
	for _, served := range d.Served {
		total += served
	}
	p.pipe("rain", d.Rain, p.rain)
	if p.shell.room != nil {
		p.pipe("supply", total, p.supply)
		if p.row.septic != nil {
			p.pipe("used", d.Served[people.Flushing], p.used)
		}
	}
	if d.Overflow > 0 {
		p.pipe("overflow", d.Overflow, p.overflow)
	}
}

// A label is what stands at a pipe: its letter with name and litres, or less where there is no room.
type label []string

// pipe adds one way, labelled with the day's litres.
func (p *plan) pipe(key string, litres quantity.Litres, draw func(v view, says label)) {
	name := p.say.Say("pipe." + key)
	t := thing{says: p.say.Say("pipe", "name", name), drawn: p.say.Say("pipe.drawn"), pipe: true}
	amount := ""
	if p.day != nil {
		t.day = p.say.Say("pipe.day", "litres", whole(float64(litres)))
		amount = " " + t.day
	}
	p.add(t)
	letter := p.letter(len(p.things) - 1)
	says := label{letter + " " + name + amount, letter + amount, strings.TrimPrefix(amount, " "), letter}
	if p.day == nil {
		says = label{says[0], letter}
	}
	p.things[len(p.things)-1].draw = func(v view) { draw(v, says) }
}

var (
	freshPipe = canvas.Style{Line: canvas.Water, Width: 3}
	usedPipe  = canvas.Style{Line: canvas.Earth, Width: 3, Dash: canvas.Dashed}
)

// put writes the longest form that fits between two places over a lane.
func (l label) put(c *canvas.Canvas, a, b, lane float64) {
	for _, text := range l {
		if canvas.TextWidth(text, labelSize, true) <= math.Abs(b-a)-6 || text == l[len(l)-1] {
			c.Text(canvas.Point{X: (a + b) / 2, Y: lane - 5}, text, canvas.Lettering{Size: labelSize, Bold: true, Anchor: canvas.Middle, Halo: true})
			return
		}
	}
}

const labelSize = 11.5

// rain leads from the roof's edge to each tank that a roof leads into.
func (p *plan) rain(v view, says label) {
	s := &p.shell
	down := v.at(s.tip()+0.06, s.height.m)
	lane := v.lanes + rainLane
	stops := []float64{down.X}
	for i, at := range p.row.tanks {
		if !p.fed(i) {
			continue
		}
		top := v.store(at.middle(), at.tall)
		v.c.Polyline([]canvas.Point{down, {X: down.X, Y: lane}, {X: top.X, Y: lane}, top}, freshPipe)
		arrow(v.c, top, 0, 1, canvas.Water)
		stops = append(stops, top.X)
	}
	a, b := widest(stops)
	says.put(v.c, a, b, lane)
}

// widest gives the two neighbours of some places that lie farthest apart.
func widest(stops []float64) (a, b float64) {
	slices.Sort(stops)
	for i := range len(stops) - 1 {
		if stops[i+1]-stops[i] > b-a {
			a, b = stops[i], stops[i+1]
		}
	}
	return a, b
}

// fed reports whether a roof leads into a tank.
func (p *plan) fed(i int) bool {
	for _, r := range p.file.Water.Roofs {
		if r.Into == nil && i == 0 || r.Into != nil && *r.Into == p.file.Water.Tanks[i].Name {
			return true
		}
	}
	return false
}

// supply leads from the first tank to a tap.
func (p *plan) supply(v view, says label) {
	at := p.row.tanks[0]
	from := v.store(at.left, 0.25)
	lane := v.lanes + supplyLane
	tap := v.at(p.tapAt, 1)
	turn := from.X - 0.3*v.scale
	v.c.Polyline([]canvas.Point{from, {X: turn, Y: from.Y}, {X: turn, Y: lane}, {X: tap.X, Y: lane}, tap, {X: tap.X + 7, Y: tap.Y}, {X: tap.X + 7, Y: tap.Y + 5}}, freshPipe)
	arrow(v.c, canvas.Point{X: tap.X, Y: tap.Y + 16}, 0, -1, canvas.Water)
	says.put(v.c, turn, tap.X, lane)
}

// used leads from the floor by the back wall to the septic tank.
func (p *plan) used(v view, says label) {
	from := v.at(p.shell.inner()+0.1, 0)
	to := v.store(p.row.septic.middle(), -0.2)
	lane := v.lanes + usedLane
	v.c.Polyline([]canvas.Point{from, {X: from.X, Y: lane}, {X: to.X, Y: lane}, to}, usedPipe)
	arrow(v.c, to, 0, 1, canvas.Earth)
	says.put(v.c, 0, min(from.X, to.X), lane+20)
}

// overflow leaves the last tank.
func (p *plan) overflow(v view, says label) {
	at := p.row.tanks[len(p.row.tanks)-1]
	from := v.store(at.left+at.wide, at.tall-0.15)
	to := v.store(at.left+at.wide+0.45, 0.1)
	v.c.Polyline([]canvas.Point{from, {X: to.X, Y: from.Y}, to}, freshPipe)
	arrow(v.c, to, 0, 1, canvas.Water)
	says.put(v.c, from.X-20, v.c.Width, from.Y)
}

// arrow draws a head at a point, looking along a direction.
func arrow(c *canvas.Canvas, at canvas.Point, dx, dy float64, ink canvas.Ink) {
	const long, half = 8.0, 4.5
	back := canvas.Point{X: at.X - long*dx, Y: at.Y - long*dy}
	c.Area([]canvas.Point{at, {X: back.X - half*dy, Y: back.Y + half*dx}, {X: back.X + half*dy, Y: back.Y - half*dx}}, canvas.Style{Fill: ink})
}
