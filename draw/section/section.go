package section

import (
	_ "embed"
	"math"
	"strconv"
	"strings"

	"suffice/draw/canvas"
	"suffice/house"
	"suffice/quantity"
)

//go:embed english.json
var english []byte

// English gives the catalogue of what the section says.
func English() (canvas.Sentences, error) { return canvas.ReadSentences(english) }

// A thing is one part of the section: a row of the table and, in the drawing, a mark.
type thing struct {
	says, told, drawn, day string
	draw                   func(v view)
	tag                    *[2]float64 // m, where its letter stands; nil for none
	over                   bool        // its letter stands over that place, not on it
	store                  bool        // it stands in the lower row
	pipe                   bool        // its letter stands at its litres
}

// lettered reports whether a thing has a letter.
func (t *thing) lettered() bool { return t.tag != nil || t.pipe }

// plan is everything that the section shows, before it is laid out.
type plan struct {
	say     canvas.Sentences
	file    *house.File
	day     *Day
	equator float64 // deg, the azimuth of the equator's side
	shell   shell
	things  []thing
	noons   [seasons]quantity.Degrees
	row     row // what stands in the lower row
	tapAt   float64
}

// Of draws the house to scale, cut through from the pole's side (left) to the equator's (right). A day, where
// there is one, fills tanks and battery and writes its litres at the pipes.
func Of(f *house.File, day *Day, say canvas.Sentences) canvas.Picture {
	p := &plan{say: say, file: f, day: day, equator: 180}
	if f.Site.Latitude < 0 {
		p.equator = 0
	}
	p.shell = newShell(f, p.equator)
	for s := range seasons {
		p.noons[s] = Noon(f.Site.Latitude, s)
	}
	p.sun()
	p.building()
	p.onRoof()
	p.inside()
	p.stores()
	p.pipes()
	t := p.table()
	return canvas.Picture{Name: "section", Title: say.Say("title", "house", f.Name), Unit: say.Say("unit"), Summary: p.summary(),
		Table: t, Draw: func(width float64) *canvas.Canvas { return p.lay(width, t) }}
}

func (p *plan) add(t thing) { p.things = append(p.things, t) }

// letter gives a thing its letter, A to Z and then A1 and so on; "" where it has none.
func (p *plan) letter(i int) string {
	if !p.things[i].lettered() {
		return ""
	}
	n := 0
	for _, t := range p.things[:i] {
		if t.lettered() {
			n++
		}
	}
	text := string(rune('A' + n%26))
	if n >= 26 {
		text += strconv.Itoa(n / 26)
	}
	return text
}

func (p *plan) table() canvas.Table {
	t := canvas.Table{Headers: []string{p.say.Say("head.letter"), p.say.Say("head.what"), p.say.Say("head.told"), p.say.Say("head.drawn")}}
	if p.day != nil {
		t.Headers = append(t.Headers, p.say.Say("head.day"))
	}
	for i, x := range p.things {
		row := []string{p.letter(i), x.says, x.told, x.drawn}
		if p.day != nil {
			row = append(row, x.day)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// summary says what is cut, how the sun stands, what is not told and what is not drawn.
func (p *plan) summary() string {
	s := &p.shell
	back, front := "north", "south"
	if p.equator == 0 {
		back, front = front, back
	}
	parts := []string{p.say.Say("summary.roof")}
	if s.room != nil {
		parts[0] = p.say.Say("summary.room", "room", s.room.Name, "back", p.say.Say(back), "front", p.say.Say(front),
			"depth", tenths(s.depth.m), "height", tenths(s.height.m))
	}
	key := "summary.sun"
	if p.noons[Midwinter] <= 0 {
		key = "summary.sun never"
	}
	parts = append(parts, p.say.Say(key, "high", degrees(p.noons[Midsummer]), "low", degrees(p.noons[Midwinter])))
	if _, high, ok := p.shade(Midsummer); ok {
		if _, low, ok := p.shade(Midwinter); ok {
			parts = append(parts, p.say.Say("summary.glass", "high", percent(high), "low", percent(low)))
		}
	}
	if p.day != nil {
		parts = append(parts, p.say.Say("summary.day", "day", p.day.Says))
	}
	return strings.Join(append(parts, p.untold()...), " ")
}

// untold lists what is drawn without being told, and the rooms that are not drawn.
func (p *plan) untold() (parts []string) {
	var dashed, pipes, others []string
	for _, t := range p.things {
		switch {
		case t.pipe:
			pipes = append(pipes[:0], p.say.Say("summary.pipes"))
		case t.drawn != "":
			dashed = append(dashed, t.says)
		}
	}
	for _, r := range p.file.Rooms {
		if p.shell.room == nil || r.Name != p.shell.room.Name {
			others = append(others, r.Name)
		}
	}
	if dashed = append(dashed, pipes...); len(dashed) > 0 {
		parts = append(parts, p.say.Say("summary.dashed", "list", strings.Join(dashed, p.say.Say("join"))))
	}
	if len(others) > 0 {
		parts = append(parts, p.say.Say("summary.others", "list", strings.Join(others, p.say.Say("join"))))
	}
	return parts
}

// told joins what a thing tells.
func (p *plan) told(parts ...string) string {
	var kept []string
	for _, part := range parts {
		if part != "" {
			kept = append(kept, part)
		}
	}
	return strings.Join(kept, p.say.Say("join"))
}

func round(m float64) string { return strconv.FormatFloat(math.Round(m*100)/100, 'f', -1, 64) }

func tenths(m float64) string { return strconv.FormatFloat(m, 'f', 1, 64) }

func whole(v float64) string {
	text := strconv.FormatFloat(math.Abs(v), 'f', 0, 64)
	for i := len(text) - 3; i > 0; i -= 3 {
		text = text[:i] + "\u202f" + text[i:]
	}
	if v < 0 && text != "0" {
		return "-" + text
	}
	return text
}

// degrees writes an angle; one from behind is the height over the other horizon.
func degrees(d quantity.Degrees) string {
	return strconv.FormatFloat(float64(min(d, 180-d)), 'f', 0, 64)
}

func percent(share float64) string { return strconv.FormatFloat(100*share, 'f', 0, 64) }
