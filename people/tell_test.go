package people

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The sheet rules-hour, told a decision, comes to the same choice and the same mind.
func TestRulesSheetTellsTheDecision(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := func(name string) float64 {
			if rapid.IntRange(0, 5).Draw(t, name+" unseen") == 0 {
				return math.NaN()
			}
			return rapid.Float64Range(0, 1).Draw(t, name)
		}
		level := func(name string) float64 { return rapid.Float64Range(0, 1).Draw(t, name) }
		does := func(name string) Do {
			b := rapid.SliceOfN(rapid.Bool(), 4, 4).Draw(t, name)
			return Do{b[0], b[1], b[2], b[3]}
		}
		r := Rules{Dull: Line{level("a"), level("b")}, Charge: Line{level("c"), level("d")}, Tank: Line{level("e"), 0}, Duty: Line{level("f"), level("g")},
			WhenDull: does("dull"), WhenCharge: does("charge"), WhenTank: does("tank"), WhenDuty: does("duty"), Saves: level("saves")}
		b := rapid.SliceOfN(rapid.Bool(), 5, 5).Draw(t, "before")
		before := Mind{b[0], b[1], b[2], b[3]}
		signs := Signs{Clearness: share("clearness"), Charge: share("charge"), Tank: share("tank"), Duty: share("duty"), Away: b[4]}
		told, s := r.Tell(before, signs), rulesHour()
		w, err := s.Work(told)
		if err != nil {
			t.Fatal(err)
		}
		mind := before
		c := r.Decide(&mind, &signs)
		want := map[string]string{"swap": yes(c.Swap), "wait": yes(c.Wait), "change_tank": yes(c.ChangeTank),
			"bad_after": marked(signNames[:], mind.Dull, mind.Charge, mind.Tank, mind.Duty)}
		for _, got := range w.Results {
			if got.Name == "save" && got.Value.Number != c.Save || got.Name != "save" && got.Value.Text != want[got.Name] {
				t.Errorf("%s: the sheet says %v %q, the decision %q, save %v", got.Name, got.Value.Number, got.Value.Text, want[got.Name], c.Save)
			}
		}
		if len(w.Results) != 5 {
			t.Errorf("%d results, want 5", len(w.Results))
		}
	})
}

func TestSheetsWorkBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil || len(w.Results) == 0 || len(w.Steps) == 0 || len(w.Cautions) == 0 {
			t.Errorf("%s: %d results, %d steps, %d cautions, %v", s.Name, len(w.Results), len(w.Steps), len(w.Cautions), err)
		}
	}
}

func TestRulesSheetRefuses(t *testing.T) {
	for _, args := range []map[string]string{{"bad_before": "hunger"}, {"unseen": "x"}, {"when_tank": "sing"}} {
		s := rulesHour()
		values, err := s.Read(args)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.Work(values); err == nil {
			t.Errorf("%v was taken", args)
		}
	}
}
