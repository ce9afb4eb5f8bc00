package draw

import (
	"testing"

	"pgregory.net/rapid"

	"suffice/draw/canvas"
)

// A column is as tall as its amount, its parts stand on each other, and the axis holds them all.
func TestColumnsAreAsTallAsTheirAmounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := ColumnChart{About: About{Name: "c", Unit: "kg"}, Headers: []string{"month", "a", "b"}, Parts: []ColumnPart{{Says: "a", Ink: canvas.Plant}, {Says: "b", Ink: canvas.Sun, Hatch: canvas.Rising}}}
		for m := range 12 {
			d.Names[m], d.Short[m] = "m", "m"
			for p := range d.Parts {
				d.Parts[p].Values[m] = rapid.SampledFrom([]float64{0, 1, 2.5, 40, 900}).Draw(t, "value")
			}
		}
		if rapid.Bool().Draw(t, "ruled") {
			d.Rule = Rule{"want", rapid.Float64Range(0, 2000).Draw(t, "at")}
		}
		chart := Columns(d)
		c := chart.Draw(rapid.Float64Range(320, 900).Draw(t, "width"))
		if faults := c.Crowded(); len(faults) > 0 {
			t.Fatal(faults)
		}
		month, foot := -1, 0.0
		tall, ground := [12]float64{}, 0.0
		for _, s := range c.Shapes {
			switch {
			case s.Kind == canvas.MarkStart:
				month, foot = s.Row, 0
			case s.Kind == canvas.MarkEnd:
				month = -1
			case month >= 0 && s.Kind == canvas.Rectangle:
				if tall[month] > 0 && foot-s.Points[1].Y > 1e-9 {
					t.Fatalf("month %d: a part stands at %v, the one below ends at %v", month, s.Points[1].Y, foot)
				}
				foot = s.Points[0].Y
				tall[month] += s.Points[1].Y - s.Points[0].Y
				ground = max(ground, s.Points[1].Y)
				if s.Points[0].Y < 0 {
					t.Fatalf("month %d leaves the picture at %v", month, s.Points[0].Y)
				}
			}
		}
		scale := 0.0
		for m := range 12 {
			sum := d.Parts[0].Values[m] + d.Parts[1].Values[m]
			if sum == 0 {
				continue
			}
			if scale == 0 {
				scale = tall[m] / sum
			}
			if off := tall[m] - scale*sum; off > 1e-6 || off < -1e-6 {
				t.Fatalf("month %d of %v is %v px tall, want %v", m, sum, tall[m], scale*sum)
			}
		}
	})
}
