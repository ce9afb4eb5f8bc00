package draw

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/hourly"
	"suffice/house"
	"suffice/people"
	"suffice/report"
	"suffice/reuse"
)

// TestWayOfWaterBalances asks that what comes to a stop goes on, but for what it can hold, spread over the years.
func TestWayOfWaterBalances(t *testing.T) {
	p, err := demo()
	if err != nil {
		t.Fatal(err)
	}
	w, d := wayOf(p), p.Run.House.Drains
	tanks := float64(p.Run.House.WaterDesign.Tanks[0].Holds + p.Run.House.WaterDesign.Tanks[1].Holds)
	bed := float64(d.Planter.Bed.Area()) * 1000 // L in a metre of soil and gravel, were it all water
	holds := map[string]float64{"cloud": 0, "tanks": tanks, "planter": bed, "well": 2000, "toilet": 0, "septic": float64(d.Septic.Holds),
		"trench": 1000 * float64(d.Trench.Length*d.Trench.Width*d.Trench.Gravel) * 2, "kitchen": 0, "basin": 0, "shower": 0, "laundry": 0}
	stops := 0
	for _, row := range w.rows() {
		for _, name := range row {
			within, known := holds[name]
			in, out := w.out("", name), w.out(name, "")
			if name == "cloud" {
				in = float64(p.Stated.Totals.Income.Fell) / w.years
			}
			if allowed := within/w.years + 1e-6*out; !known || in == 0 || math.Abs(in-out) > allowed {
				t.Errorf("%s: %g in, %g out, allowed are %g between them", name, in, out, allowed)
			}
			stops++
		}
	}
	if stops != len(holds) {
		t.Errorf("%d stops, want %d", stops, len(holds))
	}
}

// TestFallsAreAsThickAsTheirAmounts draws random cascades: bands keep their thickness all the way, end on their bars, fall only
// downwards, and stops of a row stand apart.
func TestFallsAreAsThickAsTheirAmounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Cascade{Places: map[string]Place{}, Write: litres}
		rows := rapid.IntRange(2, 7).Draw(t, "rows")
		for r := range rows {
			var row []string
			for s := range rapid.IntRange(1, 3).Draw(t, "stops") {
				row = append(row, fmt.Sprint(r, ".", s))
			}
			d.Rows = append(d.Rows, row)
		}
		pick := func(r int) string { return rapid.SampledFrom(d.Rows[r]).Draw(t, "stop") }
		for i := range rapid.IntRange(1, 16).Draw(t, "bands") {
			from := rapid.IntRange(0, rows-2).Draw(t, "from")
			b := Band{pick(from), pick(rapid.IntRange(from+1, rows-1).Draw(t, "to")), rapid.Float64Range(0, 1e6).Draw(t, "amount") + 1}
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				b.To = fmt.Sprint("end ", i)
			case 1:
				b.From = fmt.Sprint("source ", i)
			}
			d.Bands = append(d.Bands, b)
		}
		l := layCascade(&d, rapid.Float64Range(320, 900).Draw(t, "width"))
		for i, b := range d.Bands {
			onBars(t, l, i, b)
		}
		for r, row := range l.rows {
			for k, s := range row {
				if k > 0 && s.x < row[k-1].x+row[k-1].wide {
					t.Fatalf("row %d: stop %d runs into the one before", r, k)
				}
			}
		}
	})
}

func onBars(t *rapid.T, l *cascade, i int, b Band) {
	w := l.ways[i]
	if math.Abs(w.wide-b.Amount*l.scale) > 1e-9 || len(w.left) != len(w.right) {
		t.Fatalf("%v: %g px wide, want %g; %d points left, %d right", b, w.wide, b.Amount*l.scale, len(w.left), len(w.right))
	}
	for _, name := range [2]string{b.From, b.To} {
		s := l.at[name]
		if s == nil {
			continue
		}
		at := 0
		if name == b.To && l.at[b.From] != nil {
			at = len(w.left) - 1
		}
		if x := w.left[at].X; x < s.x-1e-6 || w.right[at].X > s.x+s.wide+1e-6 || math.Abs(w.right[at].X-x-w.wide) > 1e-6 {
			t.Fatalf("%v meets %s at %v to %v, its bar lies at %v to %v", b, name, x, w.right[at].X, s.x, s.x+s.wide)
		}
	}
	if l.at[b.From] == nil || l.at[b.To] == nil {
		return
	}
	for k := range w.left {
		if k > 0 && w.left[k].Y < w.left[k-1].Y-1e-9 {
			t.Fatalf("%v flows up, from %v to %v", b, w.left[k-1], w.left[k])
		}
	}
}

// TestWayWithEverything draws a house in which water goes every way there is, from the phone to the desk.
func TestWayWithEverything(t *testing.T) {
	p, err := demo()
	if err != nil {
		t.Fatal(err)
	}
	say := sentences(t)
	every := *p.Stated
	c := &every.Totals.Chain
	for s := range c.Used {
		c.Used[s] += 4e5
	}
	every.Totals.Income.Delivered += 1e5
	c.Diverted.Litres, c.Surged.Litres, c.Rim.Litres, c.Rain, c.Topped.Litres, c.Trench.Surfaced = 1e5, 1e4, 1e5, 1e5, 3e5, 2e5
	full := report.Proof{Run: p.Run, Stated: &every, Full: p.Full, HalfFull: p.HalfFull, Weather: p.Weather}
	parts := *p.Run.House.Drains
	told := *p.Run.House
	bare := told
	bare.Drains = nil
	sewer := parts
	sewer.Planter, sewer.Well, sewer.Septic, sewer.Trench = nil, nil, nil, nil
	for name, h := range map[string]*house.House{"whole": &told, "no drains": &bare, "a sewer": withDrains(told, &sewer)} {
		full.Run = &hourly.Run{House: h, Weather: p.Run.Weather}
		w := wayOf(&full)
		if len(w.rows()) < 2 {
			t.Errorf("%s: %d rows", name, len(w.rows()))
		}
		pic := WayOfWater(&full, say)
		for _, width := range [4]int{320, 332, 732, 1200} {
			drawn := pic.Lay(width)
			for _, fault := range drawn.Crowded() {
				t.Errorf("%s at %d px: %s", name, width, fault)
			}
			marksAreRows(t, &pic, drawn)
		}
	}
}

func withDrains(h house.House, d *house.DrainParts) *house.House {
	h.Drains = d
	return &h
}

// TestEveryDrainHasItsPlace asks that every drain and every use of the tanks' water is drawn.
func TestEveryDrainHasItsPlace(t *testing.T) {
	for s := range reuse.Sources {
		if _, there := wayLooks[waySources[s]]; !there {
			t.Errorf("%s has no look", waySources[s])
		}
		if len(waySources[s]) == 0 || waySources[s][:3] != s.String()[:3] {
			t.Errorf("drain %s is drawn as %s", s, waySources[s])
		}
	}
	say := sentences(t)
	for name := range wayLooks {
		if says := say.Say("way." + name); len(says) < 3 || says[0] == '[' {
			t.Errorf("%s is not named: %q", name, says)
		}
	}
	p, err := demo()
	if err != nil {
		t.Fatal(err)
	}
	served := 0.0
	for k, litres := range p.Stated.Totals.Served {
		if people.Kind(k) != people.Flushing {
			served += float64(litres)
		}
	}
	served += float64(p.Stated.Totals.Chain.Topped.Litres)
	if got, want := wayOf(p).taps(), served/float64(p.Years()); math.Abs(got-want) > 1e-6*want {
		t.Errorf("%g L a year are drawn as used, the taps gave %g", got, want)
	}
}
