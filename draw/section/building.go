package section

import (
	"math"
	"strings"

	"suffice/draw/canvas"
	"suffice/quantity"
)

// Looks of what the house is built from. What is not told has an outline of dashes and no filling.
var (
	solid  = canvas.Style{Fill: canvas.Text, Shade: 0.62, Line: canvas.Text, Width: 1}
	untold = canvas.Style{Fill: canvas.Paper, Line: canvas.Text, Width: 1.2, Dash: canvas.Dashed}
	ground = canvas.Style{Fill: canvas.Earth, Shade: 0.22, Hatch: canvas.Rising}
)

func built(told bool) canvas.Style {
	if told {
		return solid
	}
	return untold
}

// Places along the section, m from the outside of the back wall; the floor is at height 0.
func (s *shell) inner() float64   { return s.back.m }
func (s *shell) inFront() float64 { return s.back.m + s.depth.m }
func (s *shell) face() float64    { return s.inFront() + s.front.m }
func (s *shell) tip() float64     { return s.face() + s.overhang.m }
func (s *shell) top() float64     { return s.height.m + s.roof.m }

// building adds earth, walls, floor, roof and glass.
func (p *plan) building() {
	s := &p.shell
	if s.room != nil {
		p.wall("back", s.back, [2]float64{0, s.inner()}, s.height.m, [2]float64{-0.45, s.height.m * 0.7})
		if s.backEarth {
			// The earth itself lies under everything else; here it gets its row and its letter.
			p.add(thing{says: p.say.Say("earth"), told: p.say.Say("earth.told"), drawn: p.say.Say("earth.drawn"), tag: &[2]float64{-1.4, s.height.m * 0.3},
				draw: func(v view) {
					v.c.Line(v.at(v.left, s.height.m), v.at(0, s.height.m), canvas.Style{Line: canvas.Earth, Width: 1.5, Dash: canvas.Dashed})
				}})
		}
		p.wall("front", s.front, [2]float64{s.inFront(), s.face()}, s.sill(), [2]float64{s.face() + 0.5, 0.45})
		p.plate("floor", s.floor, p.thickTold(s.floor), "", [2]float64{0, -s.floor.m}, [2]float64{s.face(), 0}, [2]float64{s.inner() + 0.75, -0.5})
	}
	p.roof()
	p.glass()
}

// thickTold writes a thickness that the file tells.
func (p *plan) thickTold(l length) string {
	if !l.told {
		return ""
	}
	return p.say.Say("wall.thick", "thick", round(l.m))
}

func (p *plan) thickDrawn(l length) string {
	if l.told {
		return ""
	}
	return p.say.Say("wall.drawn", "thick", round(l.m))
}

// sill gives how high the front wall reaches: to the pane, else to the roof.
func (s *shell) sill() float64 {
	if s.glass == nil {
		return s.height.m
	}
	return max(0, s.height.m-s.glassTall*math.Sin(float64(s.glass.Slope.Radians())))
}

func (p *plan) wall(key string, thick length, across [2]float64, tall float64, tag [2]float64) {
	s := &p.shell
	drawn := p.thickDrawn(thick)
	if key == "back" {
		drawn = p.told(drawn, p.backDrawn())
	}
	p.add(thing{says: p.say.Say(key), told: p.thickTold(thick), drawn: drawn, tag: &tag,
		draw: func(v view) { v.c.Rect(v.at(across[0], 0), v.at(across[1], tall), built(thick.told && s.height.told)) }})
}

// backDrawn says what of the room's size is not told.
func (p *plan) backDrawn() string {
	s := &p.shell
	deep, high := "", ""
	if !s.depth.told {
		deep = p.say.Say("depth.drawn", "depth", round(s.depth.m))
	}
	if !s.height.told {
		high = p.say.Say("height.drawn", "height", round(s.height.m))
	}
	return p.told(deep, high)
}

func (p *plan) plate(key string, thick length, told, drawn string, low, high, tag [2]float64) {
	p.add(thing{says: p.say.Say(key), told: told, drawn: p.told(p.thickDrawn(thick), drawn), tag: &tag,
		draw: func(v view) { v.c.Rect(v.at(low[0], low[1]), v.at(high[0], high[1]), built(thick.told)) }})
}

// roof adds the roof over the room; the areas are those that rain is caught from.
func (p *plan) roof() {
	s := &p.shell
	told := p.thickTold(s.roof)
	if p.file.Water != nil {
		var list []string
		for _, r := range p.file.Water.Roofs {
			list = append(list, p.say.Say("roof.area", "name", r.Name, "area", whole(float64(r.Area))))
		}
		told = p.told(told, p.say.Say("roof.areas", "list", strings.Join(list, p.say.Say("join"))))
	}
	drawn := p.say.Say("roof.level")
	if s.room == nil {
		drawn = p.told(drawn, p.say.Say("roof.high", "height", round(s.height.m)))
	}
	p.plate("roof", s.roof, told, drawn, [2]float64{0, s.height.m}, [2]float64{s.tip(), s.top()}, [2]float64{-0.5, s.top() + 0.25})
}

// glass adds the pane on the equator's side.
func (p *plan) glass() {
	s := &p.shell
	w := s.glass
	if w == nil {
		return
	}
	over := ""
	if s.overhang.told {
		over = p.say.Say("glass.over", "over", round(s.overhang.m))
	}
	slope := float64(w.Slope.Radians())
	foot := [2]float64{s.face() + s.glassTall*math.Cos(slope), s.height.m - s.glassTall*math.Sin(slope)}
	p.add(thing{says: p.say.Say("glass", "name", w.Name),
		told:  p.told(p.say.Say("glass.told", "area", round(float64(w.Area)), "slope", whole(float64(w.Slope))), over),
		drawn: p.say.Say("glass.drawn", "tall", round(s.glassTall)),
		tag:   &[2]float64{s.face() + 0.5, s.height.m - s.glassTall*0.6},
		draw: func(v view) {
			v.c.Line(v.at(s.face(), s.height.m), v.at(foot[0], foot[1]), canvas.Style{Line: canvas.Paper, Width: 7})
			v.c.Line(v.at(s.face(), s.height.m), v.at(foot[0], foot[1]), canvas.Style{Line: canvas.Glass, Width: 5, Dash: canvas.Dashed})
		}})
}

// shade gives how far down the overhang's shadow lies at noon, m, and the share of the pane that is lit; not
// where there is no upright pane under an overhang, or no sun on it.
func (p *plan) shade(season Season) (drop, lit float64, ok bool) {
	s := &p.shell
	if s.glass == nil || !s.overhang.told || s.glass.Slope != 90 {
		return 0, 0, false
	}
	drop = float64(ShadowDrop(quantity.Metres(s.overhang.m), p.noons[season], p.turned()))
	if math.IsNaN(drop) {
		return 0, 0, false
	}
	return drop, max(0, s.glassTall-drop) / s.glassTall, true
}

// turned gives how far the pane looks away from the equator's side, deg.
func (p *plan) turned() quantity.Degrees {
	if p.shell.glass == nil {
		return 0
	}
	return quantity.Degrees(math.Remainder(float64(p.shell.glass.Azimuth)-p.equator, 360))
}
