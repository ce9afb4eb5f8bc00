package canvas

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"time"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"codeberg.org/go-pdf/fpdf"
)

// point is one px in the points of a PDF: 72 to the inch against 96.
const point = 0.75

// A Document is what stands in a PDF beside its pictures.
type Document struct {
	Title    string
	Language string    // as BCP 47 writes it; "" means en
	At       time.Time // the date that the file carries; the zero time means 1 January 2000
	plain    bool      // not packed, so that a test can read it
}

// WritePDF writes pictures on A4 paper, each on a page of its own with title, sentence and table.
// The same pictures and date give the same bytes.
func (d Document) WritePDF(out io.Writer, pictures ...Picture) error {
	f := d.file()
	for _, p := range pictures {
		d.page(f, &p)
	}
	if f.Err() {
		return fmt.Errorf("the PDF cannot be made: %w", f.Error())
	}
	var b bytes.Buffer // fpdf writes in pieces; a page is whole or not there
	if err := f.Output(&b); err != nil {
		return fmt.Errorf("the PDF cannot be made: %w", err)
	}
	_, err := b.WriteTo(out)
	return err
}

func (d Document) file() *fpdf.Fpdf {
	f := fpdf.New("P", "pt", "A4", "")
	at := d.At
	if at.IsZero() {
		at = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	f.SetCreationDate(at)
	f.SetModificationDate(at)
	f.SetCatalogSort(true)
	f.SetCompression(!d.plain)
	f.SetTitle(d.Title, true)
	f.SetLang(map[bool]string{true: "en", false: d.Language}[d.Language == ""])
	f.SetAutoPageBreak(false, 0)
	f.AddUTF8FontFromBytes("sans", "", liberationsansregular.TTF)
	f.AddUTF8FontFromBytes("sans", "B", liberationsansbold.TTF)
	return f
}

// margin of a page, pt, and the width between margins, px.
const (
	margin    = 48.0
	pageWide  = 595.28
	pageTall  = 841.89
	fieldWide = (pageWide - 2*margin) / point
)

func (d Document) page(f *fpdf.Fpdf, p *Picture) {
	f.AddPage()
	c := headed(p.Draw(fieldWide), p.Title, p.Summary)
	scale := min(point, (pageTall-2*margin)/c.Height)
	ink := pdf{f: f, scale: scale, left: margin - 14*scale, top: margin - 14*scale}
	ink.draw(c)
	ink.table(p.Table, ink.top+scale*c.Height)
}

// pdf is the pen for paper.
type pdf struct {
	f                *fpdf.Fpdf
	scale, left, top float64
}

func (w *pdf) draw(c *Canvas) {
	for _, s := range c.whole() {
		w.shape(&s)
	}
}

func (w *pdf) at(p Point) fpdf.PointType {
	return fpdf.PointType{X: w.left + p.X*w.scale, Y: w.top + p.Y*w.scale}
}

func (w *pdf) points(list []Point) []fpdf.PointType {
	moved := make([]fpdf.PointType, len(list))
	for i, p := range list {
		moved[i] = w.at(p)
	}
	return moved
}

func (w *pdf) shape(s *Shape) {
	switch s.Kind {
	case Polyline:
		if w.stroke(s.Style) {
			w.open(s.Points)
		}
	case Area:
		w.area(s.Points, s.Style)
	case Rectangle:
		w.area(corners(s.Points[0], s.Points[1]), s.Style)
	case Disc:
		at := w.at(s.Points[0])
		w.painted(s.Style, func(way string) { w.f.Circle(at.X, at.Y, s.Radius*w.scale, way) })
	case Letters:
		w.letters(s)
	case ClipStart:
		a, b := w.at(s.Points[0]), w.at(s.Points[1])
		w.f.ClipRect(a.X, a.Y, b.X-a.X, b.Y-a.Y, false)
	case ClipEnd:
		w.f.ClipEnd()
	}
}

func (w *pdf) open(points []Point) {
	first := w.at(points[0])
	w.f.MoveTo(first.X, first.Y)
	for _, p := range points[1:] {
		next := w.at(p)
		w.f.LineTo(next.X, next.Y)
	}
	w.f.DrawPath("D")
}

func (w *pdf) area(points []Point, s Style) {
	outline := w.points(points)
	w.painted(s, func(way string) { w.f.Polygon(outline, way) })
	if strokes := Strokes(points, s.Hatch); len(strokes) > 0 && w.stroke(s.hatchStyle()) {
		for _, l := range strokes {
			w.open(l[:])
		}
	}
}

// painted fills, then draws the outline.
func (w *pdf) painted(s Style, do func(way string)) {
	if s.Fill != None {
		w.f.SetFillColor(parts(s.Fill))
		pale := s.Shade > 0 && s.Shade < 1
		if pale {
			w.f.SetAlpha(s.Shade, "Normal")
		}
		do("F")
		if pale {
			w.f.SetAlpha(1, "Normal")
		}
	}
	if w.stroke(s) {
		do("D")
	}
}

// stroke makes lines ready, and reports whether there are any.
func (w *pdf) stroke(s Style) bool {
	if s.Line == None {
		return false
	}
	w.f.SetDrawColor(parts(s.Line))
	w.f.SetLineWidth(s.width() * w.scale)
	dash := s.Dash.lengths()
	scaled := make([]float64, len(dash))
	for i, l := range dash {
		scaled[i] = l * w.scale
	}
	w.f.SetDashPattern(scaled, 0)
	return true
}

func (w *pdf) letters(s *Shape) {
	l, at := s.Lettering, w.at(s.Points[0])
	style := ""
	if l.Bold {
		style = "B"
	}
	w.f.SetFont("sans", style, l.Size*w.scale)
	at.X -= w.f.GetStringWidth(s.Text) * [3]float64{0, 0.5, 1}[l.Anchor]
	if l.Halo {
		w.stroke(Style{Line: Paper, Width: 3})
		w.f.SetTextRenderingMode(1)
		w.f.Text(at.X, at.Y, s.Text)
		w.f.SetTextRenderingMode(0)
	}
	w.f.SetTextColor(parts(l.Ink))
	w.f.Text(at.X, at.Y, s.Text)
}

// parts gives an ink's red, green and blue on paper, where what everything lies on is white.
func parts(i Ink) (r, g, b int) {
	if i == Paper {
		return 255, 255, 255
	}
	v, _ := strconv.ParseUint(tones[i].Light, 16, 32) // the table of inks holds six hex digits
	return int(v >> 16), int(v >> 8 & 255), int(v & 255)
}
