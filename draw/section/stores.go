package section

import (
	"math"

	"suffice/draw/canvas"
	"suffice/house"
	"suffice/quantity"
)

// row is the lower row: what stands on the plot where the file does not say.
type row struct {
	next       float64 // m, where the next thing may begin
	tall, deep float64 // m over and under the ground
	tanks      []standing
	septic     *standing
}

// standing is where a vessel of the row stands, m.
type standing struct{ left, wide, tall float64 }

func (s standing) middle() float64 { return s.left + s.wide/2 }

const rowGap = 0.9 // m between things of the row

// place gives where a thing of a width begins.
func (r *row) place(wide float64) float64 {
	x := r.next
	r.next += wide + rowGap
	r.tall = max(r.tall, 1.6)
	return x
}

// stores adds septic tank and tanks.
func (p *plan) stores() {
	if q := p.file.Septic; q != nil {
		p.septic(q)
	}
	if p.file.Water == nil {
		return
	}
	for i := range p.file.Water.Tanks {
		p.tank(i)
	}
}

func (p *plan) tank(i int) {
	k := &p.file.Water.Tanks[i]
	w, tall := Cylinder(k.Holds, tankForm)
	at := standing{p.row.place(float64(w)), float64(w), float64(tall)}
	p.row.tanks = append(p.row.tanks, at)
	p.row.tall = max(p.row.tall, at.tall)
	t := thing{says: p.say.Say("tank", "name", k.Name), told: p.say.Say("tank.told", "holds", whole(float64(k.Holds))), store: true,
		drawn: p.say.Say("tank.drawn"), tag: &[2]float64{at.left + 0.4, at.tall - 0.45}}
	held := quantity.Litres(math.NaN())
	if p.day != nil && i < len(p.day.Tanks) {
		held = p.day.Tanks[i]
		t.day = p.say.Say("tank.day", "held", whole(float64(held)))
	}
	t.draw = func(v view) { drawTank(v, at, k, held) }
	p.add(t)
}

// drawTank draws a tank with its water and, dashed, what is never drawn from it.
func drawTank(v view, at standing, k *house.Tank, held quantity.Litres) {
	v.c.Rect(v.at(at.left, 0), v.at(at.left+at.wide, at.tall), canvas.Style{Fill: canvas.Paper})
	if !math.IsNaN(float64(held)) {
		v.c.Rect(v.at(at.left, 0), v.at(at.left+at.wide, at.tall*float64(held/k.Holds)), canvas.Style{Fill: canvas.Water, Shade: 0.35, Hatch: canvas.Level})
	}
	if kept := float64((k.Dead + k.Fire) / k.Holds); kept > 0 {
		v.c.Line(v.at(at.left, at.tall*kept), v.at(at.left+at.wide, at.tall*kept), canvas.Style{Line: canvas.Water, Width: 1.2, Dash: canvas.Points})
	}
	v.c.Rect(v.at(at.left, 0), v.at(at.left+at.wide, at.tall), canvas.Style{Line: canvas.Text, Width: 1.5, Dash: canvas.Dashed})
}

// trenchDrawn is how much of a drain is drawn, m.
const trenchDrawn = 1.6

func (p *plan) septic(q *house.Septic) {
	wide := math.Sqrt(float64(q.Holds) / 1000 / assumedDepth)
	long := ""
	if q.Trench != nil {
		p.row.place(trenchDrawn - rowGap)
		long = p.say.Say("septic.trench", "long", round(float64(q.Trench.Length)))
	}
	at := standing{p.row.place(wide), wide, 0}
	p.row.septic = &at
	p.row.deep = assumedDepth + 0.3
	p.add(thing{says: p.say.Say("septic"), told: p.told(p.say.Say("septic.told", "holds", whole(float64(q.Holds))), long), store: true,
		drawn: p.say.Say("septic.drawn", "depth", round(assumedDepth)), tag: &[2]float64{at.middle(), -assumedDepth / 2},
		draw: func(v view) {
			v.c.Rect(v.at(at.left, -assumedDepth), v.at(at.left+at.wide, -0.2), untold)
			if q.Trench != nil {
				v.c.Line(v.at(at.left, -assumedTrench), v.at(at.left-trenchDrawn, -assumedTrench-0.1), canvas.Style{Line: canvas.Text, Width: 2, Dash: canvas.Points})
			}
		}})
}
