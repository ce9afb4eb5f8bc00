package canvas

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func wellFormed(text string) error {
	reader := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := reader.Token(); errors.Is(err, io.EOF) {
			return nil
		} else if err != nil {
			return err
		}
	}
}

// scribble draws anything.
func scribble(t *rapid.T) *Canvas {
	c := New(300, 200)
	number := rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 300), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1)}))
	point := func() Point { return Point{number.Draw(t, "x"), number.Draw(t, "y")} }
	for range rapid.IntRange(0, 12).Draw(t, "shapes") {
		s := Style{Fill: Ink(rapid.IntRange(0, int(Inks)-1).Draw(t, "fill")), Line: Ink(rapid.IntRange(0, int(Inks)-1).Draw(t, "line")),
			Hatch: Hatch(rapid.IntRange(0, int(Dotted)).Draw(t, "hatch")), Dash: Dash(rapid.IntRange(0, int(Points)).Draw(t, "dash")), Shade: number.Draw(t, "shade"), Width: number.Draw(t, "wide")}
		switch rapid.IntRange(0, 7).Draw(t, "kind") {
		case 0:
			c.Polyline([]Point{point(), point(), point(), point()}, s)
		case 1:
			c.Area([]Point{point(), point(), point(), point()}, s)
		case 2:
			c.Rect(point(), point(), s)
		case 3:
			c.Circle(point(), number.Draw(t, "radius"), s)
		case 4:
			c.Text(point(), rapid.String().Draw(t, "text"), Lettering{Size: number.Draw(t, "size"), Ink: s.Fill, Halo: rapid.Bool().Draw(t, "halo")})
		case 5:
			c.Mark(rapid.Int().Draw(t, "row"), rapid.String().Draw(t, "says"))
		case 6:
			c.Clip(point(), point())
		case 7:
			c.End()
		}
	}
	return c
}

// TestAnyDrawingIsWellFormed draws anything: an XML reader takes what the pen writes, and no length is NaN or infinite.
func TestAnyDrawingIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := scribble(t)
		p := Picture{Name: "p", Title: rapid.String().Draw(t, "title"), Summary: rapid.String().Draw(t, "summary"), Draw: func(float64) *Canvas { return c }}
		for _, text := range [2]string{p.SVG(300), p.Alone(300)} {
			if err := wellFormed(text); err != nil {
				t.Fatalf("%v in\n%s", err, text)
			}
			for _, odd := range [4]string{`"NaN`, `"+Inf`, `"-Inf`, ` NaN`} {
				if strings.Contains(strings.ReplaceAll(text, escaped(p.Title), ""), "="+odd) {
					t.Fatalf("%s in\n%s", odd, text)
				}
			}
		}
	})
}

func TestTextStaysText(t *testing.T) {
	p := sample()
	text := p.SVG(400)
	for _, want := range []string{`>21 °C, 180 m², Süd → Žižkov</text>`, `<title id="sample-400-title">A pond &amp; its &lt;level&gt;</title>`, `role="img" tabindex="0" data-row="1" aria-label="Tuesday; level 2.5 m"`, `class="f-water s-water" fill="#1f618f" fill-opacity="0.4" stroke="#1f618f"`} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is not in\n%s", want, text)
		}
	}
}

// TestHatchStaysInside hatches a triangle: every stroke lies inside, and all that belong to one direction lie a
// pitch apart.
func TestHatchStaysInside(t *testing.T) {
	triangle := []Point{{10, 10}, {110, 30}, {40, 90}}
	inside := func(p Point) bool {
		for i, a := range triangle {
			b := triangle[(i+1)%3]
			if (b.X-a.X)*(p.Y-a.Y)-(b.Y-a.Y)*(p.X-a.X) < -1e-6 {
				return false
			}
		}
		return true
	}
	for h, least := range map[Hatch]int{Rising: 8, Falling: 8, Level: 15, Upright: 19, Crossed: 16, Dotted: 15} {
		strokes := Strokes(triangle, h)
		if len(strokes) < least {
			t.Errorf("hatch %d has %d strokes, want at least %d", h, len(strokes), least)
		}
		for _, s := range strokes {
			if !inside(s[0]) || !inside(s[1]) {
				t.Errorf("hatch %d: stroke %v leaves the triangle", h, s)
			}
		}
	}
	if Strokes(triangle, Plain) != nil {
		t.Error("a plain filling has strokes")
	}
	for i, s := range Strokes(triangle, Level) {
		if want := hatchPitch * (2 + float64(i)); math.Abs(s[0].Y-want) > 1e-9 && math.Abs(s[0].Y-want-hatchPitch) > 1e-9 {
			t.Errorf("level stroke %d lies at %v", i, s[0].Y)
		}
	}
}

// TestAreaOfHatch adds up: level strokes times their pitch make up the area that they cover, within one pitch's strip.
func TestAreaOfHatch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.Float64Range(20, 300).Draw(t, "w"), rapid.Float64Range(20, 300).Draw(t, "h")
		sum := 0.0
		for _, s := range Strokes([]Point{{0, 0}, {w, 0}, {0, h}}, Level) {
			sum += (s[1].X - s[0].X) * hatchPitch
		}
		if math.Abs(sum-w*h/2) > w*hatchPitch {
			t.Fatalf("strokes cover %v of %v", sum, w*h/2)
		}
	})
}

func TestGapsBreakALine(t *testing.T) {
	c := New(100, 100)
	c.Polyline([]Point{{0, 0}, {1, 1}, {2, math.NaN()}, {3, 3}, {4, 4}, {5, math.Inf(1)}}, Style{Line: Water})
	if len(c.Shapes) != 2 || len(c.Shapes[0].Points) != 2 || len(c.Shapes[1].Points) != 2 {
		t.Errorf("got %v", c.Shapes)
	}
}

// TestInksContrast holds every ink to 3 to 1 against its paper, as drawings need, and words to 4.5 to 1
// (WCAG 2.2, 1.4.11 and 1.4.3). The grid may be fainter: it carries no meaning.
func TestInksContrast(t *testing.T) {
	for i := Text; i < Inks; i++ {
		least := 3.0
		if i == Text || i == Quiet {
			least = 4.5
		}
		if i == Grid || i == Paper {
			continue
		}
		tone, paper := i.Tone(), Paper.Tone()
		for _, pair := range [2][2]string{{tone.Light, paper.Light}, {tone.Dark, paper.Dark}} {
			if got := contrast(t, pair[0], pair[1]); got < least {
				t.Errorf("%s: #%s on #%s stands out %.2f to 1, want %v", tone.Name, pair[0], pair[1], got, least)
			}
		}
	}
}

func contrast(t *testing.T, a, b string) float64 {
	x, y := luminance(t, a), luminance(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	if len(hex) != 6 {
		t.Fatalf("%q is no colour", hex)
	}
	sum := 0.0
	for i, weight := range [3]float64{0.2126, 0.7152, 0.0722} {
		v := 0
		for _, r := range hex[2*i : 2*i+2] {
			v = 16*v + strings.IndexRune("0123456789abcdef", r)
		}
		c := float64(v) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}
