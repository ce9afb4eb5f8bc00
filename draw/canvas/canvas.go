package canvas

import "math"

// A Point is a place on the canvas, px.
type Point struct{ X, Y float64 }

// farthest is how far from the corner a place can lie, px: 260 m of paper. What lies farther is a fault of
// whoever draws, and no file should grow from it.
const farthest = 1e6

// Drawable reports whether the point is a place that can be drawn: two numbers within a million px.
func (p Point) Drawable() bool {
	return math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest
}

// A Style says how a shape looks. The zero Style shows nothing.
type Style struct {
	Fill  Ink
	Shade float64 // share of the fill's colour, 0 to 1; 0 means all of it
	Hatch Hatch   // drawn in Line's ink, or in Fill's where Line is None
	Line  Ink
	Width float64 // of the line, px; 0, and what is no width, means 1
	Dash  Dash
}

// An Anchor says which part of a text stands at its place.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// A Lettering says how a text looks.
type Lettering struct {
	Ink    Ink     // None means Text
	Size   float64 // px; 0, and what is no size, means 13
	Bold   bool
	Anchor Anchor
	Halo   bool // a rim of paper around the letters, over lines and bands
}

// A Kind tells the shapes apart.
type Kind uint8

// The kinds of shapes.
const (
	Polyline Kind = iota
	Area          // closed
	Rectangle
	Disc
	Letters
	MarkStart // what follows, to MarkEnd, is one datum
	MarkEnd
	ClipStart // what follows, to ClipEnd, shows only inside the rectangle
	ClipEnd
)

// A Shape is one thing drawn.
type Shape struct {
	Kind      Kind
	Points    []Point // of a Rectangle and a clip: two corners; of a Disc: its centre; of Letters: the anchor on the base line
	Radius    float64 // of a Disc
	Style     Style
	Text      string // of Letters; of a MarkStart what is read aloud
	Lettering Lettering
	Row       int // of a MarkStart: the row of the table that it shows, from 0
}

// A Canvas is what was drawn, in order.
type Canvas struct {
	Width, Height float64
	Shapes        []Shape
	open          []Kind
}

// New gives an empty canvas.
func New(width, height float64) *Canvas { return &Canvas{Width: width, Height: height} }

func (c *Canvas) add(s Shape) { c.Shapes = append(c.Shapes, s) }

// Line draws a straight line.
func (c *Canvas) Line(from, to Point, s Style) { c.Polyline([]Point{from, to}, s) }

// Polyline draws a line through points. A point that cannot be drawn is a gap in it.
func (c *Canvas) Polyline(points []Point, s Style) {
	s.Fill, s.Hatch = None, Plain
	start := 0
	for i := range len(points) + 1 {
		if i < len(points) && points[i].Drawable() {
			continue
		}
		if i > start {
			c.add(Shape{Kind: Polyline, Points: points[start:i], Style: s})
		}
		start = i + 1
	}
}

// Area fills a closed outline. Points that cannot be drawn are passed over.
func (c *Canvas) Area(points []Point, s Style) {
	var kept []Point
	for _, p := range points {
		if p.Drawable() {
			kept = append(kept, p)
		}
	}
	if len(kept) > 0 {
		c.add(Shape{Kind: Area, Points: kept, Style: s})
	}
}

// Rect draws a rectangle from one corner to the other.
func (c *Canvas) Rect(a, b Point, s Style) {
	if a.Drawable() && b.Drawable() {
		c.add(Shape{Kind: Rectangle, Points: ordered(a, b), Style: s})
	}
}

func ordered(a, b Point) []Point {
	return []Point{{min(a.X, b.X), min(a.Y, b.Y)}, {max(a.X, b.X), max(a.Y, b.Y)}}
}

// Circle draws a circle.
func (c *Canvas) Circle(at Point, radius float64, s Style) {
	if at.Drawable() && radius > 0 && radius <= farthest {
		c.add(Shape{Kind: Disc, Points: []Point{at}, Radius: radius, Style: s})
	}
}

// Text writes a text whose base line goes through the place.
func (c *Canvas) Text(at Point, text string, l Lettering) {
	if l.Ink == None {
		l.Ink = Text
	}
	if !(l.Size > 0 && l.Size <= farthest) {
		l.Size = 13
	}
	if at.Drawable() && text != "" {
		c.add(Shape{Kind: Letters, Points: []Point{at}, Text: text, Lettering: l})
	}
}

// Mark opens one datum: what is drawn until End can be reached by keyboard and is read
// aloud as says; row is its row in the picture's table, from 0.
func (c *Canvas) Mark(row int, says string) {
	c.add(Shape{Kind: MarkStart, Row: row, Text: says})
	c.open = append(c.open, MarkEnd)
}

// Clip opens a window: what is drawn until End shows only between the two corners. A corner that cannot be
// drawn makes a window without width.
func (c *Canvas) Clip(a, b Point) {
	if !a.Drawable() || !b.Drawable() {
		a, b = Point{}, Point{}
	}
	c.add(Shape{Kind: ClipStart, Points: ordered(a, b)})
	c.open = append(c.open, ClipEnd)
}

// End closes the last Mark or Clip that is open.
func (c *Canvas) End() {
	if n := len(c.open); n > 0 {
		c.add(Shape{Kind: c.open[n-1]})
		c.open = c.open[:n-1]
	}
}

// whole gives the shapes with everything closed.
func (c *Canvas) whole() []Shape {
	list := c.Shapes[:len(c.Shapes):len(c.Shapes)]
	for i := len(c.open) - 1; i >= 0; i-- {
		list = append(list, Shape{Kind: c.open[i]})
	}
	return list
}

// A Box is a rectangle around something.
type Box struct{ Left, Top, Right, Bottom float64 }

// Overlaps reports whether two boxes share more than a touch.
func (b Box) Overlaps(o Box) bool {
	return b.Left < o.Right && o.Left < b.Right && b.Top < o.Bottom && o.Top < b.Bottom
}

// Box gives the rectangle around a shape's letters, or around its points.
func (s *Shape) Box() Box {
	if s.Kind == Letters {
		return s.lettersBox()
	}
	b := Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range s.Points {
		b.Left, b.Right = min(b.Left, p.X-s.Radius), max(b.Right, p.X+s.Radius)
		b.Top, b.Bottom = min(b.Top, p.Y-s.Radius), max(b.Bottom, p.Y+s.Radius)
	}
	return b
}

func (s *Shape) lettersBox() Box {
	l, at := s.Lettering, s.Points[0]
	wide := TextWidth(s.Text, l.Size, l.Bold)
	left := at.X - wide*[3]float64{0, 0.5, 1}[l.Anchor]
	return Box{left, at.Y - 0.74*l.Size, left + wide, at.Y + 0.21*l.Size}
}
