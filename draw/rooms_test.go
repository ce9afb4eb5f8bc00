package draw

import (
	"math"
	"strings"
	"sync"
	"testing"

	"suffice/draw/canvas"
	"suffice/hourly"
	"suffice/house"
	"suffice/report"
	"suffice/site/weather"
)

// roomed is the house with rooms, through the first leap year of its record.
var roomed = sync.OnceValues(func() (*report.Proof, error) {
	f, err := house.Open("../examples/earth-house.yaml")
	if err != nil {
		return nil, err
	}
	h, err := house.Compose(f)
	if err != nil {
		return nil, err
	}
	w, _, _, err := h.Weather.Hours(h.Place)
	if err != nil {
		return nil, err
	}
	const days = 366
	cut := func(column []float64) []float64 { return column[:min(24*days, len(column))] }
	run, err := hourly.Prepare(h, &weather.Hours{Place: w.Place, Days: w.Days[:days], Global: cut(w.Global), Diffuse: cut(w.Diffuse), Beam: cut(w.Beam),
		Temperature: cut(w.Temperature), Humidity: cut(w.Humidity), Wind: cut(w.Wind), Rain: cut(w.Rain)})
	if err != nil {
		return nil, err
	}
	return report.Prove(run)
})

func TestPicturesOfRoomsCanBeRead(t *testing.T) {
	p, err := roomed()
	if err != nil {
		t.Fatal(err)
	}
	say := sentences(t)
	for _, p := range []Picture{MonthsOfRoom(p, 0, say), MonthsOfRoom(p, 1, say), ColdestWeek(p, say), HottestWeek(p, say)} {
		if p.Title == "" || p.Summary == "" || strings.ContainsAny(p.Title+p.Summary+strings.Join(p.Table.Headers, "")+p.Table.Rows[0][0], "[]{}") {
			t.Errorf("%s says %q, %q: a sentence is missing or was not filled", p.Name, p.Title, p.Summary)
		}
		for _, row := range p.Table.Rows {
			if len(row) != len(p.Table.Headers) {
				t.Fatalf("%s: %d cells under %d headers", p.Name, len(row), len(p.Table.Headers))
			}
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

// In the picture of a week the lines and both edges of the band stand at one scale: a value that lies on an edge is drawn on it.
func TestWeekStandsToScale(t *testing.T) {
	d := WeekChart{About: About{Name: "w"}, Digits: 1, Headers: []string{"t", "a", "from", "to", "b"}, Bars: DayRow{Top: 10, Ink: canvas.Sun}}
	d.Series = []Series{{Says: "a", Ink: canvas.Heat}}
	for i := range 8 {
		v := 18 + float64(i%3)
		d.Times, d.Low, d.High = append(d.Times, "t"), append(d.Low, v), append(d.High, v+6)
		d.Series[0].Values, d.Bars.Values = append(d.Series[0].Values, v+6*float64(i%2)), append(d.Bars.Values, float64(i))
	}
	week := Week(d)
	var edge, line []canvas.Point
	for _, s := range week.Draw(600).Shapes {
		switch {
		case s.Kind == canvas.Area && s.Style == bandLook && len(s.Points) == 4*8:
			edge = s.Points
		case s.Kind == canvas.Polyline && s.Style.Line == canvas.Heat && len(s.Points) == 8:
			line = s.Points
		}
	}
	if edge == nil || line == nil {
		t.Fatal("band or line was not drawn")
	}
	for i, at := range line {
		want := edge[len(edge)-1-2*i].Y // the lower edge runs back
		if i%2 == 1 {
			want = edge[2*i].Y
		}
		if math.Abs(at.Y-want) > 1e-9 || at.Drawable() != true {
			t.Errorf("step %d is drawn at %g px, its edge of the band at %g", i, at.Y, want)
		}
	}
}
