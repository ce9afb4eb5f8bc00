package section

import (
	"math"

	"suffice/draw/canvas"
	"suffice/quantity"
)

// onRoof adds panels and collector, side by side from the back.
func (p *plan) onRoof() {
	x := 0.15
	if p.file.Power != nil {
		for _, a := range p.file.Power.Arrays {
			x = p.leaning(x, assumedPanel, a.Slope, a.Azimuth, canvas.Sun, thing{says: p.say.Say("panels", "name", a.Name),
				told:  p.say.Say("panels.told", "watts", whole(float64(a.Peak)), "slope", whole(float64(a.Slope))),
				drawn: p.say.Say("panels.drawn", "long", round(assumedPanel))})
		}
	}
	if h := p.file.HotWater; h != nil && h.Collector != nil {
		c := h.Collector
		p.leaning(x, assumedFlat, c.Slope, c.Azimuth, canvas.Heat, thing{says: p.say.Say("collector"),
			told:  p.say.Say("collector.told", "area", round(float64(c.Area)), "slope", whole(float64(c.Slope))),
			drawn: p.say.Say("collector.drawn", "long", round(assumedFlat))})
	}
}

// leaning adds a flat thing that leans on the roof, and gives where the next may stand. Seen from
// the side a plane that looks past the section leans less: its slope's tangent shrinks by the cosine.
func (p *plan) leaning(x, long float64, slope, azimuth quantity.Degrees, ink canvas.Ink, t thing) float64 {
	s := &p.shell
	turn := math.Cos((float64(azimuth) - p.equator) * math.Pi / 180)
	angle := math.Atan2(math.Sin(float64(slope.Radians()))*turn, math.Cos(float64(slope.Radians())))
	wide, tall := long*math.Cos(angle), long*math.Sin(angle)
	left, right := s.top()+max(0, tall), s.top()+max(0, -tall)
	t.tag = &[2]float64{x + wide*0.62, s.top() + math.Abs(tall)*0.6 + 0.1}
	t.over = true
	t.draw = func(v view) {
		v.c.Line(v.at(x, left), v.at(x+wide, right), canvas.Style{Line: ink, Width: 4, Dash: canvas.Dashed})
		high := [2]float64{x, left}
		if tall < 0 {
			high = [2]float64{x + wide, right}
		}
		v.c.Line(v.at(high[0], high[1]), v.at(high[0], s.top()), canvas.Style{Line: canvas.Quiet, Width: 1})
	}
	p.add(t)
	return x + wide + 0.25
}

// inside adds battery, hot water store and planter, as far as the room has space; the rest goes to the
// lower row.
func (p *plan) inside() {
	s := &p.shell
	x, end := s.inner()+0.2, s.inFront()-0.9
	if q := p.file.Planter; q != nil {
		wide := float64(q.Area) / s.along
		end -= wide
		p.planter(s.inFront()-wide, wide)
	}
	put := func(outdoors bool, wide float64, add func(x float64, store bool)) {
		if outdoors || s.room == nil || x+wide > end {
			add(p.row.place(wide), true)
			return
		}
		add(x, false)
		x += wide + 0.35
	}
	if w := p.file.Power; w != nil {
		put(w.Battery.Where == "outdoors", assumedBox, p.battery)
	}
	if h := p.file.HotWater; h != nil {
		wide, _ := Cylinder(h.Store.Holds, storeForm)
		put(h.Store.Where == "outdoors", float64(wide), p.hotStore)
	}
	p.tapAt = min(x+0.25, s.inFront()-0.2)
}

func (p *plan) battery(x float64, store bool) {
	b := p.file.Power.Battery
	holds := float64(b.Capacity.WattHours)
	if holds == 0 {
		holds = b.Capacity.AmpereHours * b.Voltage
	}
	t := thing{says: p.say.Say("battery"), told: p.say.Say("battery.told", "holds", round(holds/1000)), store: store,
		drawn: p.say.Say("battery.drawn", "side", round(assumedBox)), tag: &[2]float64{x + assumedBox/2, assumedBox}, over: true}
	if p.day != nil {
		t.day = p.say.Say("battery.day", "charge", percent(p.day.Charge))
	}
	t.draw = func(v view) {
		v.c.Rect(v.at(x, 0), v.at(x+assumedBox, assumedBox), untold)
		if p.day != nil {
			v.c.Rect(v.at(x, 0), v.at(x+assumedBox, assumedBox*p.day.Charge), canvas.Style{Fill: canvas.Power, Shade: 0.4, Hatch: canvas.Upright})
		}
	}
	p.add(t)
}

func (p *plan) hotStore(x float64, store bool) {
	h := p.file.HotWater
	w, tall := Cylinder(h.Store.Holds, storeForm)
	p.add(thing{says: p.say.Say("store"), told: p.say.Say("store.told", "holds", whole(float64(h.Store.Holds))), store: store,
		drawn: p.say.Say("store.drawn"), tag: &[2]float64{x + float64(w)/2, float64(tall)}, over: true,
		draw: func(v view) {
			v.c.Rect(v.at(x, 0), v.at(x+float64(w), float64(tall)), canvas.Style{Fill: canvas.Heat, Shade: 0.25, Line: canvas.Text, Width: 1.2, Dash: canvas.Dashed})
		}})
}

func (p *plan) planter(x, wide float64) {
	q := p.file.Planter
	deep := length{float64(q.Gravel + q.Soil), true}
	told, drawn := p.say.Say("planter.deep", "depth", round(deep.m)), p.say.Say("planter.drawn", "wide", round(wide))
	p.add(thing{says: p.say.Say("planter"), told: p.told(p.say.Say("planter.told", "area", round(float64(q.Area))), told), drawn: drawn,
		tag: &[2]float64{x + wide/2, -deep.m - 0.3}, draw: func(v view) {
			v.c.Rect(v.at(x, -deep.m), v.at(x+wide, 0), canvas.Style{Fill: canvas.Plant, Shade: 0.3, Hatch: canvas.Dotted, Line: canvas.Text, Width: 1.2, Dash: canvas.Dashed})
			for _, at := range [3]float64{0.2, 0.5, 0.8} {
				stem := x + wide*at
				for _, lean := range [3]float64{-0.12, 0, 0.12} {
					v.c.Line(v.at(stem, 0), v.at(stem+lean, 0.45-lean*lean*6), canvas.Style{Line: canvas.Plant, Width: 1.5})
				}
			}
		}})
}
