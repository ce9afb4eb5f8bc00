package rain

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/sheet"
)

// The standard's formulas are the law of a free outfall times one factor: for half-round and
// square gutters alike, though their constants were fitted apart.
func TestFormulasFollowTheFreeOutfall(t *testing.T) {
	for _, width := range []quantity.Millimetres{75, 100, 125, 150, 200} {
		round, square := Gutter{Width: width}, Gutter{Shape: Rectangular, Width: width, Depth: width}
		a, b := round.Nominal()/round.Outfall(), square.Nominal()/square.Outfall()
		if math.Abs(a/b-1) > 0.01 {
			t.Errorf("%v mm: half-round %.4f of the free outfall, square %.4f, want the same to 1 %%", width, a, b)
		}
		if math.Abs(a-0.80) > 0.01 {
			t.Errorf("%v mm: half-round %.4f of the free outfall, want 0.80 to 0.01", width, a)
		}
	}
}

// Flow under gravity grows with the power 2.5 of the size.
func TestCapacityScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := quantity.Millimetres(rapid.Float64Range(50, 250).Draw(t, "width"))
		depth := quantity.Millimetres(rapid.Float64Range(25, float64(2*width)).Draw(t, "depth"))
		for _, g := range []Gutter{{Width: width}, {Shape: Rectangular, Width: width, Depth: depth}} {
			twice := Gutter{Shape: g.Shape, Width: 2 * g.Width, Depth: 2 * g.Depth}
			if r := twice.Nominal() / g.Nominal(); math.Abs(r-math.Pow(2, 2.5)) > 1e-9 {
				t.Fatalf("twice as large carries %v times as much, want %v", r, math.Pow(2, 2.5))
			}
			if r := twice.Outfall() / g.Outfall(); math.Abs(r-math.Pow(2, 2.5)) > 1e-6 {
				t.Fatalf("twice as large sheds %v times as much, want %v", r, math.Pow(2, 2.5))
			}
		}
	})
}

func TestRunsBeyondTheTableAreRefused(t *testing.T) {
	if _, err := (Gutter{Width: 100, Run: 11}).Capacity(); err == nil {
		t.Error("a run of 220 depths was given a capacity")
	}
	if _, err := (Gutter{Width: 20}).Capacity(); err == nil {
		t.Error("a gutter of 20 mm was given a capacity")
	}
	before := 1.1
	for ratio := 0.0; ratio <= 200; ratio += 5 {
		f, err := RunFactor(ratio)
		if err != nil || f > before {
			t.Errorf("run %v: factor %v after %v, error %v", ratio, f, before, err)
		}
		before = f
	}
}

func drawRain(t *rapid.T, n int) []float64 {
	mm := make([]float64, n)
	for i := range mm {
		if rapid.IntRange(0, 3).Draw(t, "wet") == 0 {
			mm[i] = rapid.Float64Range(0.1, 30).Draw(t, "mm")
		}
	}
	return mm
}

// Dry spells hold every dry day once, have wet days on both sides, and no more with a lower line.
func TestDrySpellsHoldTheDryDays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := drawRain(t, rapid.IntRange(0, 60).Draw(t, "days"))
		below := rapid.Float64Range(0.05, 10).Draw(t, "below")
		var dry, held int
		for _, v := range mm {
			if v < below {
				dry++
			}
		}
		for _, s := range DrySpells(mm, below) {
			held += s.Days
			if s.First > 0 && mm[s.First-1] < below || s.First+s.Days < len(mm) && mm[s.First+s.Days] < below {
				t.Fatalf("spell %+v goes on beside itself", s)
			}
		}
		if dry != held {
			t.Fatalf("%d dry days, %d in spells", dry, held)
		}
		if a, b := Longest(DrySpells(mm, below)), Longest(DrySpells(mm, below/2)); b.Days > a.Days {
			t.Fatalf("longest below %v mm is %d days, below half of it %d", below, a.Days, b.Days)
		}
	})
	spells := DrySpells([]float64{0, 0, math.NaN(), 0, 5, 0}, 1)
	if len(spells) != 3 || spells[0] != (Spell{0, 2}) || spells[1] != (Spell{3, 1}) || spells[2] != (Spell{5, 1}) {
		t.Errorf("around a missing day: %v", spells)
	}
}

// Storms hold all the rain, and a longer gap joins them.
func TestStormsHoldTheRain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := drawRain(t, rapid.IntRange(0, 80).Draw(t, "hours"))
		gap := rapid.IntRange(1, 12).Draw(t, "gap")
		var all, held float64
		for _, v := range mm {
			all += v
		}
		storms := Storms(mm, gap)
		for i, s := range storms {
			held += s.Depth
			if s.Peak > s.Depth || mm[s.First] == 0 || mm[s.First+s.Hours-1] == 0 {
				t.Fatalf("storm %+v begins or ends dry, or its peak is above its sum", s)
			}
			if i > 0 && s.First-(storms[i-1].First+storms[i-1].Hours) < gap {
				t.Fatalf("storms %+v and %+v are closer than %d h", storms[i-1], s, gap)
			}
		}
		check.Balance(t, all, held, "rain in storms")
		if more := Storms(mm, gap+1); len(more) > len(storms) {
			t.Fatalf("a longer gap makes %d storms of %d", len(more), len(storms))
		}
	})
}

func TestSheetsWorkBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil {
			t.Errorf("%s: %v", s.Name, err)
		}
		for _, r := range w.Results {
			if !(r.Value.Number > 0) {
				t.Errorf("%s: %s is %v", s.Name, r.Name, r.Value.Number)
			}
		}
	}
}

func TestGutterSheetSaysWhatOvertops(t *testing.T) {
	s := gutter()
	values, err := s.Read(map[string]string{"width": "75mm", "roof": "40m2", "slope": "45deg"})
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.Work(values)
	if err != nil {
		t.Fatal(err)
	}
	got := results(w)
	if want := 40 * 1.5 * 75 / 3600; math.Abs(got["needed"]-want) > 1e-12 || got["needed"] < got["capacity"] || len(w.Cautions) != len(cautions)+1 {
		t.Errorf("results %v, want %v L/s needed and a caution; cautions %q", got, want, w.Cautions)
	}
	if g := got["largest_effective_area"] / got["largest_roof"]; math.Abs(g-1.5) > 1e-12 {
		t.Errorf("areas differ by %v, want 1.5 at 45 deg", g)
	}
	values["shape"] = sheet.Value{Kind: sheet.Text, Text: "rectangular"}
	if w, err = s.Work(values); err != nil || results(w)["capacity"] <= got["capacity"] {
		t.Errorf("a square gutter carries %v, a half-round one as wide %v (%v)", results(w)["capacity"], got["capacity"], err)
	}
}

func results(w sheet.Worked) map[string]float64 {
	m := map[string]float64{}
	for _, r := range w.Results {
		m[r.Name] = r.Value.Number
	}
	return m
}
