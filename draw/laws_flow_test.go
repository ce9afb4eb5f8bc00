package draw

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/draw/canvas"
)

func TestFlowUntangles(t *testing.T) {
	// Put down so that a to y and b to x cross unless one column is turned.
	l := layFlow([]Band{{"a", "y", 3}, {"b", "x", 2}, {"a", "z", 1}, {"b", "z", 4}})
	if got := l.crossings(); got != 0 {
		t.Errorf("%d crossings, none is needed", got)
	}
	// Each of two leads to each of two: one crossing cannot be helped.
	l = layFlow([]Band{{"a", "x", 1}, {"a", "y", 1}, {"b", "x", 1}, {"b", "y", 1}})
	if got := l.crossings(); got != 1 {
		t.Errorf("%d crossings, want 1", got)
	}
}

func TestDemoFlowsDoNotCross(t *testing.T) {
	p, err := demo()
	if err != nil {
		t.Fatal(err)
	}
	for name, bands := range map[string][]Band{"water": waterBands(p), "power": powerBands(p), "heat": heatBands(p)} {
		if got := layFlow(bands).crossings(); got != 0 {
			t.Errorf("%s: %d crossings", name, got)
		}
	}
}

// TestFlowsBalance asks that what comes into a place goes out of it, but for what stores gained over the years.
func TestFlowsBalance(t *testing.T) {
	p, err := demo()
	if err != nil {
		t.Fatal(err)
	}
	tanks := float64(p.Run.House.WaterDesign.Tanks[0].Holds + p.Run.House.WaterDesign.Tanks[1].Holds)
	years := float64(p.Years())
	for _, c := range []struct {
		place  string
		bands  []Band
		within float64 // what the store could gain in all years, by the year
	}{
		{"tanks", waterBands(p), tanks / years},
		{"gathered", powerBands(p), 1e-9}, {"battery", powerBands(p), 14.4 / years}, {"house", powerBands(p), 1e-6},
		{"hot water", heatBands(p), 300 * 4.19 * 80 / 3600 / years},
	} {
		in, out := out(c.bands, "", c.place), out(c.bands, c.place, "")
		if in == 0 || math.Abs(in-out) > c.within {
			t.Errorf("%s: %g in, %g out, allowed are %g between them", c.place, in, out, c.within)
		}
	}
}

// TestBandsAreAsThickAsTheirAmounts draws random flows: bands keep their thickness, places stand apart, ends
// touch their places.
func TestBandsAreAsThickAsTheirAmounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var bands []Band
		for i := range rapid.IntRange(1, 14).Draw(t, "bands") {
			from := rapid.IntRange(0, 5).Draw(t, "from")
			to := rapid.IntRange(from+1, 8).Draw(t, "to")
			bands = append(bands, Band{fmt.Sprint(from), fmt.Sprint(to), rapid.Float64Range(0, 1e6).Draw(t, "amount") + float64(i)})
		}
		l := layFlow(bands)
		l.stand(spacing{height: 200, above: func(*node, bool) float64 { return 7 }, least: func(*node, bool) float64 { return 3 }})
		for c, column := range l.columns {
			for i, n := range column {
				if i > 0 && n.y < column[i-1].y+column[i-1].tall+7-1e-9 {
					t.Fatalf("column %d: place %d at %v runs into the one before", c, i, n.y)
				}
				for _, s := range n.out {
					if s.from.column+1 != s.to.column {
						t.Fatalf("a band leads from column %d to %d", s.from.column, s.to.column)
					}
					if half := s.amount * l.scale / 2; s.y0-half < n.y-1e-6 || s.y0+half > n.y+n.tall+1e-6 {
						t.Fatalf("a band leaves its place: %v of %v px at %v to %v", s.y0, 2*half, n.y, n.y+n.tall)
					}
				}
			}
		}
	})
}

func TestDrawnBandIsAsThickAsItsAmount(t *testing.T) {
	d := FlowChart{About: About{Name: "f"}, Bands: []Band{{"a", "b", 30}, {"a", "c", 10}}, Write: litres,
		Places: map[string]Place{"a": {Says: "a", Ink: canvas.Water}, "b": {Says: "b", Ink: canvas.Water}, "c": {Says: "c", Ink: canvas.Water}}}
	flow := Flow(d)
	var thick []float64
	for _, s := range flow.Draw(600).Shapes {
		if s.Kind == canvas.Area {
			thick = append(thick, s.Points[len(s.Points)-1].Y-s.Points[0].Y)
		}
	}
	if len(thick) != 2 || math.Abs(thick[0]/thick[1]-3) > 1e-9 || math.Abs(thick[0]+thick[1]-bandTall) > 1e-9 {
		t.Errorf("bands of 30 and 10 are %v px thick, together %v", thick, bandTall)
	}
}
