package section

import (
	"math"

	"suffice/draw/canvas"
	"suffice/glass"
)

var seasonWords = [seasons]string{"midsummer", "equinox", "midwinter"}

// rayLook tells the noons apart by their dashes.
func rayLook(s Season) canvas.Style {
	return canvas.Style{Line: canvas.Sun, Width: 1.8, Dash: [seasons]canvas.Dash{canvas.Solid, canvas.Dashed, canvas.Points}[s]}
}

// sun adds the rays of the noons.
func (p *plan) sun() {
	for season := range seasons {
		noon := p.noons[season]
		t := thing{says: p.say.Say("ray." + seasonWords[season]), draw: func(view) {}}
		switch {
		case noon <= 0:
			t.told = p.say.Say("ray.never")
			p.add(t)
			continue
		case noon > 90:
			t.told = p.told(p.say.Say("ray.height", "height", degrees(noon)), p.say.Say("ray.pole"))
		default:
			t.told = p.say.Say("ray.height", "height", degrees(noon))
		}
		if drop, lit, ok := p.shade(season); ok {
			t.told = p.told(t.told, p.say.Say("ray.shade", "drop", round(drop), "lit", percent(lit)))
		}
		t.draw = func(v view) { v.c.Polyline(p.ray(v, season), rayLook(season)) }
		p.add(t)
	}
}

// profile gives the angle at which a noon's ray is seen in the section, rad: that of the sun's height where
// the pane looks straight to the equator's side.
func (p *plan) profile(season Season) float64 {
	return float64(glass.RayTo(p.noons[season], p.turned(), 0).Profile().Radians())
}

// ray gives a ray from the sky over the tip of the overhang to where it strikes.
func (p *plan) ray(v view, season Season) []canvas.Point {
	s, angle := &p.shell, p.profile(season)
	sin, cos := math.Sincos(angle)
	far := (v.sky - s.top()) / sin
	if cos > 0 {
		far = min(far, (v.right-s.tip())/cos)
	} else if cos < 0 {
		far = min(far, (s.tip()-v.left)/-cos)
	}
	points := []canvas.Point{v.at(s.tip()+far*cos, s.top()+far*sin), v.at(s.tip(), s.top())}
	if s.glass == nil || s.glass.Slope != 90 || cos <= 1e-9 {
		return points
	}
	x, y := p.strike(sin, cos)
	// The ray leaves the roof's lower edge, where the shadow is measured.
	points[1] = v.at(s.tip(), s.height.m)
	points[0] = v.at(s.tip()+far*cos, s.height.m+far*sin)
	return append(points, v.at(x, y))
}

// strike gives where the ray past the overhang's lower edge ends: the floor or the back wall where it
// passes the pane, else the front.
func (p *plan) strike(sin, cos float64) (x, y float64) {
	s := &p.shell
	drop := s.overhang.m * sin / cos
	if drop >= s.glassTall {
		if drop <= s.height.m {
			return s.face(), s.height.m - drop
		}
		return s.tip() - s.height.m*cos/sin, 0
	}
	x, y = s.tip()-s.height.m*cos/sin, 0
	if x < s.inner() {
		return s.inner(), s.height.m - (s.tip()-s.inner())*sin/cos
	}
	return x, y
}
