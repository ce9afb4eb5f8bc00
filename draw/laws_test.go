package draw

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
)

// wellFormed reads a text as XML.
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

func TestDemoPicturesCanBeRead(t *testing.T) {
	for _, p := range demoPictures(t) {
		if p.Title == "" || p.Summary == "" || len(p.Table.Rows) == 0 {
			t.Errorf("%s lacks title, summary or table", p.Name)
		}
		if strings.ContainsAny(p.Title+p.Summary+strings.Join(p.Table.Headers, ""), "[]{}") {
			t.Errorf("%s says %q: a sentence is missing or was not filled", p.Name, p.Summary)
		}
		for _, width := range [4]int{320, 332, 732, 1200} {
			c := p.Lay(width)
			for _, fault := range c.Crowded() {
				t.Errorf("%s at %d px: %s", p.Name, width, fault)
			}
			marksAreRows(t, &p, c)
			if err := wellFormed(p.SVG(width)); err != nil {
				t.Errorf("%s: %v", p.Name, err)
			}
		}
	}
}

// marksAreRows holds the marks to the table: each row once, in order, and what is read aloud holds the
// row's figures.
func marksAreRows(t *testing.T, p *Picture, c *canvas.Canvas) {
	t.Helper()
	marks := 0
	for _, s := range c.Shapes {
		if s.Kind != canvas.MarkStart {
			continue
		}
		if s.Row != marks {
			t.Errorf("%s: mark %d shows row %d", p.Name, marks, s.Row)
		}
		if first := p.Table.Rows[s.Row][0]; !strings.HasPrefix(s.Text, first) {
			t.Errorf("%s: row %d is %q, the mark says %q", p.Name, s.Row, first, s.Text)
		}
		marks++
	}
	if marks != len(p.Table.Rows) {
		t.Errorf("%s: %d marks for %d rows", p.Name, marks, len(p.Table.Rows))
	}
}

// TestMonthsDrawTheirFigures measures the chart: the middle of a month lies at its value between two ticks.
func TestMonthsDrawTheirFigures(t *testing.T) {
	d := MonthChart{About: About{Name: "m"}, To: 100, Ink: canvas.Water}
	for m := range 12 {
		d.Least[m], d.Low[m], d.Middle[m], d.High[m] = float64(m), float64(10+m), float64(30+2*m), float64(60+3*m)
	}
	months := Months(d)
	c := months.Draw(600)
	y := func(v float64) float64 { // by the lowest and highest line of the grid
		var lines []float64
		for _, s := range c.Shapes {
			if s.Kind == canvas.Polyline && (s.Style.Line == canvas.Grid || s.Style.Line == canvas.Quiet) {
				lines = append(lines, s.Points[0].Y)
			}
		}
		return lines[0] + (lines[len(lines)-1]-lines[0])*v/100
	}
	month := -1
	for _, s := range c.Shapes {
		switch {
		case s.Kind == canvas.MarkStart:
			month = s.Row
		case s.Kind == canvas.MarkEnd:
			month = -1
		case month < 0:
		case s.Kind == canvas.Rectangle:
			near(t, "high", s.Points[0].Y, y(d.High[month]))
			near(t, "low", s.Points[1].Y, y(d.Low[month]))
		case s.Style.Width == 4:
			near(t, "middle", s.Points[0].Y, y(d.Middle[month]))
		}
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s lies at %v, want %v", what, got, want)
	}
}

// TestAnyDataIsWellFormed draws charts of any numbers and words.
func TestAnyDataIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringN(0, 6, -1)
		value := rapid.OneOf(rapid.Float64(), rapid.Just(math.NaN()), rapid.Just(math.Inf(1)), rapid.Just(0.0))
		about := About{Name: "n", Title: word.Draw(t, "title"), Unit: word.Draw(t, "unit"), Summary: word.Draw(t, "summary")}
		n := rapid.IntRange(1, 25).Draw(t, "values")
		lines := LineChart{About: about, Headers: []string{"t", word.Draw(t, "series")}, Series: []Series{{Says: word.Draw(t, "name"), Ink: canvas.Water}}}
		days := DayChart{About: about, Headers: []string{"d", "v"}, Rows: []DayRow{{Says: word.Draw(t, "row"), Top: 1, Ink: canvas.Sun}}}
		bars := BarChart{About: about, Headers: [2]string{"a", "b"}}
		for i := range n {
			v := value.Draw(t, "value")
			lines.Times, days.Dates, days.Short = append(lines.Times, about.Unit), append(days.Dates, "d"), append(days.Short, fmt.Sprint(i))
			lines.Series[0].Values, days.Rows[0].Values = append(lines.Series[0].Values, v), append(days.Rows[0].Values, math.Abs(v))
			bars.Bars = append(bars.Bars, Bar{Says: about.Title, Amount: math.Abs(v)})
		}
		for _, p := range []Picture{Lines(lines), Days(days), Bars(bars)} {
			if err := wellFormed(p.Alone(rapid.IntRange(0, 2000).Draw(t, "width"))); err != nil {
				t.Fatalf("%s: %v", p.Title, err)
			}
		}
	})
}

// TestTerrainIsToScale measures a slope of one in two.
func TestTerrainIsToScale(t *testing.T) {
	d := Profile{About: About{Name: "hill", Unit: "m"}, Ground: []Spot{{0, 0, "foot"}, {40, 20, "top"}, {60, 20, "end"}}, Places: []Spot{{40, 20, "tank"}}}
	hill := Terrain(d)
	for _, s := range hill.Draw(500).Shapes {
		if s.Kind == canvas.Polyline && s.Style.Line == canvas.Earth {
			run, rise := s.Points[1].X-s.Points[0].X, s.Points[0].Y-s.Points[1].Y
			near(t, "slope", rise/run, 0.5*d.Stretch())
		}
	}
	if d.Stretch() != 1 {
		t.Errorf("stretched %v times, need none", d.Stretch())
	}
	flat := Profile{Ground: []Spot{{0, 0, ""}, {100, 5, ""}}}
	if flat.Stretch() != 4 {
		t.Errorf("5 m on 100 m are stretched %v times, want 4 to reach a fifth", flat.Stretch())
	}
}
