package section

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/draw/canvas"
	"suffice/examples"
	"suffice/house"
	"suffice/quantity"
)

// TestNoonIsNinetyLessLatitudePlusDeclination holds the way through the sun's position to the plain rule.
func TestNoonIsNinetyLessLatitudePlusDeclination(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude := rapid.Float64Range(-90, 90).Draw(t, "latitude")
		for s, declination := range map[Season]float64{Midsummer: 23.44, Equinox: 0, Midwinter: -23.44} {
			got, want := float64(Noon(quantity.Degrees(latitude), s)), 90-math.Abs(latitude)+declination
			if math.Abs(got-want) > 1e-6 {
				t.Errorf("latitude %g, season %d: %g deg, want %g", latitude, s, got, want)
			}
		}
	})
}

// marked gives the shapes of a row of the table.
func marked(c *canvas.Canvas, row int) []canvas.Shape {
	for i, s := range c.Shapes {
		if s.Kind == canvas.MarkStart && s.Row == row {
			for k := i + 1; k < len(c.Shapes); k++ {
				if c.Shapes[k].Kind == canvas.MarkEnd {
					return c.Shapes[i+1 : k]
				}
			}
		}
	}
	return nil
}

// rowOf finds a thing in the table.
func rowOf(t *testing.T, p canvas.Picture, says string) int {
	t.Helper()
	for i, row := range p.Table.Rows {
		if row[1] == says {
			return i
		}
	}
	t.Fatalf("no row says %q", says)
	return 0
}

func same(a, b, within float64) bool { return math.Abs(a-b) <= within }

// metre reads the scale off the drawing's own bar.
func metre(t *testing.T, c *canvas.Canvas) float64 {
	t.Helper()
	for i, s := range c.Shapes {
		if s.Kind == canvas.Letters && strings.HasSuffix(s.Text, "\u202fm") && c.Shapes[i-1].Kind == canvas.Rectangle && c.Shapes[i-2].Kind == canvas.Rectangle {
			var long float64
			if _, err := fmt.Sscanf(s.Text, "%f", &long); err != nil {
				t.Fatal(err)
			}
			return (c.Shapes[i-1].Points[1].X - c.Shapes[i-2].Points[0].X) / long
		}
	}
	t.Fatal("there is no scale bar")
	return 0
}

// TestLengthsAreToScale measures the demo's drawing with its own scale bar. The room: 38 m2, its east wall 11 m2 at
// 2.7 m; back wall 30 + 10 cm, roof 24 cm; overhang 0.8 m; tanks of 30 and 20 kL.
func TestLengthsAreToScale(t *testing.T) {
	p := demoSection(t)
	for _, width := range [3]float64{320, 360, 1100} {
		c := p.Draw(width)
		px := metre(t, c)
		side := func(says string) (wide, tall float64) {
			b := marked(c, rowOf(t, p, says))[0].Box()
			return (b.Right - b.Left) / px, (b.Bottom - b.Top) / px
		}
		want := func(what string, got, want float64) {
			if !same(got, want, 1e-9) {
				t.Errorf("%v px wide: %s measures %.6f m, want %.6f", width, what, got, want)
			}
		}
		wide, tall := side("back wall")
		want("back wall's thickness", wide, 0.4)
		want("back wall's height", tall, 2.7)
		front, _ := side("front wall")
		roof, thick := side("roof")
		want("roof's thickness", thick, 0.24)
		want("roof's length", roof, 0.4+11/2.7+front+0.8)
		planter, deep := side("planter")
		want("planter's depth", deep, 0.7)
		want("planter's width", planter, 7/(38/(11/2.7)))
		for name, litres := range map[string]float64{"tank (hill)": 30000, "tank (yard)": 20000} {
			wide, tall := side(name)
			want(name+" in kL", math.Pi/4*wide*wide*tall, litres/1000)
		}
		_, pane := side("glass (south glass)")
		want("glass", pane*38/(11/2.7), 10)
	}
}

// TestWaterStandsAsHighAsItsShare holds the water in a tank to what the day left in it.
func TestWaterStandsAsHighAsItsShare(t *testing.T) {
	p := Of(fileOf(t, examples.Demo), &Day{Says: "a day", Tanks: []quantity.Litres{12000, 0}, Charge: 0.5}, sentences(t))
	c := p.Draw(500)
	shapes := marked(c, rowOf(t, p, "tank (hill)"))
	tank, water := shapes[0].Box(), shapes[1].Box()
	if got := (water.Bottom - water.Top) / (tank.Bottom - tank.Top); !same(got, 0.4, 1e-12) {
		t.Errorf("12 of 30 kL stand at %g of the height", got)
	}
	box := marked(c, rowOf(t, p, "battery"))
	whole, half := box[0].Box(), box[1].Box()
	if got := (half.Bottom - half.Top) / (whole.Bottom - whole.Top); !same(got, 0.5, 1e-12) {
		t.Errorf("half a charge stands at %g of the height", got)
	}
}

// TestRaysFallAtNoonsHeight measures the angle of the rays, and where the shadow's edge lies on the pane.
func TestRaysFallAtNoonsHeight(t *testing.T) {
	p := demoSection(t)
	c := p.Draw(760)
	px := metre(t, c)
	for row, noon := range []float64{90 - 35.03 + 23.44, 90 - 35.03, 90 - 35.03 - 23.44} {
		ray := marked(c, row)[0].Points
		for k := range 2 {
			a, b := ray[k], ray[k+1]
			if got := math.Atan2(b.Y-a.Y, a.X-b.X) * 180 / math.Pi; !same(got, noon, 1e-6) {
				t.Errorf("ray %d falls at %g deg, want %g", row, got, noon)
			}
		}
		// 0.8 m of overhang shade 0.8 m times the tangent; the equinox ray must end there on the front.
		if row == 1 {
			drop, want := (ray[2].Y-ray[1].Y)/px, 0.8*math.Tan(noon*math.Pi/180)
			if !same(drop, want, 1e-9) {
				t.Errorf("the shadow's edge lies %g m down, want %g", drop, want)
			}
		}
	}
}

// TestTheEquatorLiesRight mirrors the demo to the south: the drawing of the house must stay, the arrow turn.
func TestTheEquatorLiesRight(t *testing.T) {
	text := string(examples.Demo)
	for _, turn := range [][2]string{{"latitude: 35.03", "latitude: -35.03"}, {"azimuth: 180 deg", "azimuth: 999 deg"}, {"azimuth: 0 deg", "azimuth: 180 deg"}, {"azimuth: 999 deg", "azimuth: 0 deg"}} {
		text = strings.ReplaceAll(text, turn[0], turn[1])
	}
	north, south := Of(fileOf(t, examples.Demo), nil, sentences(t)), Of(fileOf(t, []byte(text)), nil, sentences(t))
	a, b := north.Draw(760), south.Draw(760)
	for row := range north.Table.Rows {
		for k, s := range marked(a, row) {
			for i, point := range s.Points {
				if other := marked(b, row)[k].Points[i]; !same(point.X, other.X, 1e-6) || !same(point.Y, other.Y, 1e-6) {
					t.Errorf("%v lies at %v in the north and at %v in the south", north.Table.Rows[row], point, other)
				}
			}
		}
	}
	if !strings.Contains(south.Summary, "from south to north") {
		t.Errorf("the cut in the south: %s", south.Summary)
	}
}

// TestNothingIsDrawnSolidWithoutBeingTold asks that a thing with an assumed form is dashed, or says nothing of form.
func TestNothingIsDrawnSolidWithoutBeingTold(t *testing.T) {
	text := strings.NewReplacer(", build: \"30 cm stone, 10 cm cork\"", "", ", build: \"timber, 24 cm cork, metal\"", "").Replace(string(examples.Demo))
	p := Of(fileOf(t, []byte(text)), nil, sentences(t))
	c := p.Draw(760)
	for _, says := range []string{"back wall", "roof"} {
		row := rowOf(t, p, says)
		if p.Table.Rows[row][3] == "" || !strings.Contains(p.Summary, says) {
			t.Errorf("%s: assumed, but table %q and summary %q do not say it", says, p.Table.Rows[row], p.Summary)
		}
		if s := marked(c, row)[0]; s.Style.Dash == canvas.Solid {
			t.Errorf("%s is drawn solid", says)
		}
	}
}

func TestThickness(t *testing.T) {
	for words, want := range map[string]float64{"30 cm stone, 10 cm cork": 0.4, "timber, 24 cm cork, metal": 0.24, "0.5 m earth, 12.5 mm board": 0.5125, "straw": 0, "": 0} {
		got, told := Thickness(words)
		if !same(float64(got), want, 1e-12) || told != (want > 0) {
			t.Errorf("%q: %g m, told %v, want %g", words, got, told, want)
		}
	}
}

// TestLettersDoNotMeet holds all words of the demo apart, and inside the drawing.
func TestLettersDoNotMeet(t *testing.T) {
	for _, text := range [][]byte{examples.Demo, examples.Southern, examples.RoofAndTank} {
		p := Of(fileOf(t, text), nil, sentences(t))
		if string(text) == string(examples.Demo) {
			p = demoSection(t)
		}
		for _, width := range [4]float64{300, 332, 732, 1200} {
			for _, fault := range p.Draw(width).Crowded() {
				t.Errorf("%s at %v px: %s", p.Title, width, fault)
			}
		}
	}
}

// TestEveryThingIsARow holds that the marks are the rows of the table, each once.
func TestEveryThingIsARow(t *testing.T) {
	p := demoSection(t)
	rows := 0
	for _, s := range p.Draw(760).Shapes {
		if s.Kind == canvas.MarkStart {
			if s.Row != rows {
				t.Errorf("mark %d shows row %d", rows, s.Row)
			}
			rows++
		}
	}
	if rows != len(p.Table.Rows) {
		t.Errorf("%d marks for %d rows", rows, len(p.Table.Rows))
	}
}

// TestAnyRoomCanBeDrawn draws rooms of any size at any place.
func TestAnyRoomCanBeDrawn(t *testing.T) {
	say := sentences(t)
	rapid.Check(t, func(t *rapid.T) {
		draw := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		text := fmt.Sprintf(`name: %q
site: {latitude: %.3f deg, longitude: 0 deg, altitude: 0 m, clock: UTC}
water:
  roofs: [{name: r, area: %.3f m2, surface: metal}]
  tanks: [{name: t, holds: %.3f L}]
rooms:
  - {name: %q, area: %.3f m2, walls: [{name: w, area: %.3f m2, faces: earth, azimuth: %.3f deg}], windows: [{name: g, area: %.3f m2, azimuth: %.3f deg, slope: %.3f deg, overhang: %.3f m}]}
`, rapid.StringMatching(`[<&"'a-z]{1,8}`).Draw(t, "name"), draw(-90, 90, "latitude"), draw(1, 2000, "roof"), draw(50, 2e6, "tank"),
			rapid.StringMatching(`[<&a-z]{1,8}`).Draw(t, "room"), draw(1, 2000, "area"), draw(0.1, 5000, "wall"), draw(0, 360, "facing"), draw(0.05, 1000, "glass"),
			draw(0, 360, "azimuth"), draw(0, 90, "slope"), draw(0, 10, "overhang"))
		f, err := house.Read("made.yaml", []byte(text))
		if err != nil {
			t.Fatalf("%v in\n%s", err, text)
		}
		p := Of(f, nil, say)
		for _, s := range p.Draw(360).Shapes {
			for _, point := range s.Points {
				if !point.Drawable() {
					t.Fatalf("%v of %v", point, s)
				}
			}
		}
		reader := xml.NewDecoder(strings.NewReader(p.SVG(360)))
		for {
			if _, err := reader.Token(); errors.Is(err, io.EOF) {
				return
			} else if err != nil {
				t.Fatalf("no XML: %v", err)
			}
		}
	})
}
