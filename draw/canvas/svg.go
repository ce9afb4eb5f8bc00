package canvas

import (
	_ "embed"
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
)

// Script lets the arrow keys walk through the marks of every picture of a page.
//
//go:embed script.js
var Script string

// Family is the list of fonts that pictures ask for; widths are those of the first.
const Family = "Liberation Sans, Arial, Helvetica, sans-serif"

// svg is the pen for pages.
type svg struct {
	b                    strings.Builder
	name, title, summary string
	alone                bool
}

func (w *svg) write(c *Canvas) string {
	// One page may show a picture at two widths: its ids must not meet.
	id := escaped(w.name) + "-" + px(c.Width)
	size := fmt.Sprintf(`width="%s" height="%s" viewBox="0 0 %s %s"`, px(c.Width), px(c.Height), px(c.Width), px(c.Height))
	w.f(`<svg xmlns="http://www.w3.org/2000/svg" class="picture" role="group" aria-labelledby="%s-title" aria-describedby="%s-summary" font-family="%s" %s>`,
		id, id, Family, size)
	w.f("\n<title id=\"%s-title\">%s</title>\n<desc id=\"%s-summary\">%s</desc>\n", id, escaped(w.title), id, escaped(w.summary))
	if w.alone {
		w.f("<style>\n%s%s</style>\n<rect class=\"f-paper\" width=\"100%%\" height=\"100%%\" fill=\"#%s\"/>\n", Colours(), Rules(), tones[Paper].Light)
	}
	for _, s := range c.whole() {
		w.shape(&s)
	}
	w.f("</svg>\n")
	return w.b.String()
}

func (w *svg) f(format string, args ...any) { fmt.Fprintf(&w.b, format, args...) }

func (w *svg) shape(s *Shape) {
	switch s.Kind {
	case Polyline:
		w.path(s.Points, false, s.Style)
	case Area:
		w.path(s.Points, true, s.Style)
		w.hatch(s.Points, s.Style)
	case Rectangle:
		a, b := s.Points[0], s.Points[1]
		w.f(`<rect x="%s" y="%s" width="%s" height="%s"%s/>`+"\n", px(a.X), px(a.Y), px(b.X-a.X), px(b.Y-a.Y), look(s.Style))
		w.hatch(corners(a, b), s.Style)
	case Disc:
		at := s.Points[0]
		w.f(`<circle cx="%s" cy="%s" r="%s"%s/>`+"\n", px(at.X), px(at.Y), px(s.Radius), look(s.Style))
	case Letters:
		w.letters(s)
	case MarkStart:
		w.f(`<g role="img" tabindex="0" data-row="%d" aria-label="%s"><title>%s</title>`+"\n", s.Row, escaped(s.Text), escaped(s.Text))
	case MarkEnd:
		w.f("</g>\n")
	case ClipStart:
		a, b := s.Points[0], s.Points[1]
		w.f(`<svg x="%s" y="%s" width="%s" height="%s" viewBox="%s %s %s %s" overflow="hidden">`+"\n",
			px(a.X), px(a.Y), px(b.X-a.X), px(b.Y-a.Y), px(a.X), px(a.Y), px(b.X-a.X), px(b.Y-a.Y))
	case ClipEnd:
		w.f("</svg>\n")
	}
}

func corners(a, b Point) []Point { return []Point{a, {b.X, a.Y}, b, {a.X, b.Y}} }

func (w *svg) path(points []Point, closed bool, s Style) {
	w.b.WriteString(`<path d="`)
	for i, p := range points {
		w.f("%s%s %s", [2]string{"L", "M"}[one(i == 0)], px(p.X), px(p.Y))
	}
	if closed {
		w.b.WriteString("Z")
	}
	w.f(`"%s/>`+"\n", look(s))
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

func (w *svg) hatch(outline []Point, s Style) {
	strokes := Strokes(outline, s.Hatch)
	if len(strokes) == 0 {
		return
	}
	w.b.WriteString(`<path d="`)
	for _, l := range strokes {
		w.f("M%s %sL%s %s", px(l[0].X), px(l[0].Y), px(l[1].X), px(l[1].Y))
	}
	w.f(`"%s/>`+"\n", look(s.hatchStyle()))
}

// hatchStyle gives the look of a hatch's strokes.
func (s Style) hatchStyle() Style {
	ink := s.Line
	if ink == None {
		ink = s.Fill
	}
	return Style{Line: ink, Width: 0.8}
}

func (w *svg) letters(s *Shape) {
	l, at := s.Lettering, s.Points[0]
	more := ""
	if l.Anchor != Start {
		more += fmt.Sprintf(` text-anchor="%s"`, [3]string{"start", "middle", "end"}[l.Anchor])
	}
	if l.Bold {
		more += ` font-weight="bold"`
	}
	class := "f-" + tones[l.Ink].Name
	if l.Halo {
		class += " s-paper"
		more += fmt.Sprintf(` stroke="#%s" stroke-width="3" stroke-linejoin="round" paint-order="stroke"`, tones[Paper].Light)
	}
	w.f(`<text class="%s" x="%s" y="%s" font-size="%s" fill="#%s"%s>%s</text>`+"\n",
		class, px(at.X), px(at.Y), px(l.Size), tones[l.Ink].Light, more, escaped(s.Text))
}

// look gives the attributes of a style, beside the classes that a page colours.
func look(s Style) string {
	var classes []string
	more := ` fill="none"`
	if s.Fill != None {
		classes = append(classes, "f-"+tones[s.Fill].Name)
		more = fmt.Sprintf(` fill="#%s"`, tones[s.Fill].Light)
		if s.Shade > 0 && s.Shade < 1 {
			more += fmt.Sprintf(` fill-opacity="%s"`, px(s.Shade))
		}
	}
	if s.Line != None {
		classes = append(classes, "s-"+tones[s.Line].Name)
		more += fmt.Sprintf(` stroke="#%s" stroke-width="%s" stroke-linejoin="round"`, tones[s.Line].Light, px(s.width()))
		if d := s.Dash.lengths(); d != nil {
			more += fmt.Sprintf(` stroke-dasharray="%s %s"`, px(d[0]), px(d[1]))
		}
	}
	if len(classes) == 0 {
		return more
	}
	return ` class="` + strings.Join(classes, " ") + `"` + more
}

func (s Style) width() float64 {
	if !(s.Width > 0 && s.Width <= farthest) {
		return 1
	}
	return s.Width
}

// px writes a length to a hundredth of a pixel.
func px(v float64) string {
	text := strconv.FormatFloat(v, 'f', 2, 64)
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

// escaped makes any text safe inside SVG; letters that XML does not know become U+FFFD.
func escaped(text string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text)) // a strings.Builder takes everything
	return b.String()
}
