package water

import (
	"strings"
	"testing"

	"suffice/sheet"
)

// A reading at its guideline is within, anything beyond is not, and tells what to do.
func TestReadingsBesideGuidelines(t *testing.T) {
	names := map[string]bool{}
	for _, g := range Guidelines() {
		if names[g.Name] || g.Source == "" || g.High == "" || (g.Least > 0) != (g.Low != "") || g.Least > g.Most {
			t.Errorf("%s is told twice, or lacks source or what to do: %+v", g.Name, g)
		}
		names[g.Name] = true
		for _, at := range []float64{g.Least, g.Most} {
			if f := g.Find(at); f.Beyond() {
				t.Errorf("%s", f.Says())
			}
		}
		over := g.Find(g.Most*1.01 + 0.001)
		if !over.Over || over.Share <= 1 || !strings.Contains(over.Says(), g.High) {
			t.Errorf("%+v", over)
		}
		if g.Least > 0 {
			if under := g.Find(g.Least * .99); !under.Under || under.Over || !strings.Contains(under.Says(), g.Low) {
				t.Errorf("%+v", under)
			}
		}
	}
}

// A reading beyond that can make ill asks for other water; one of taste does not; what was not measured is named and not taken for nought.
func TestWaterTestSheet(t *testing.T) {
	work := func(told map[string]string) sheet.Worked {
		t.Helper()
		s := waterTest()
		given, err := s.Read(told)
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.Work(given)
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	text := func(w sheet.Worked, name string) string {
		for _, r := range w.Results {
			if r.Name == name {
				return r.Value.Text
			}
		}
		t.Fatalf("no result %q", name)
		return ""
	}
	const other = "drink and cook with other water"
	fine := work(map[string]string{"sodium": "199 mg/L"})
	if text(fine, "which") != "none" || text(fine, "can_make_ill") != "none" || !strings.Contains(text(fine, "not_measured"), "lead") || strings.Contains(strings.Join(fine.Cautions, "\n"), other) {
		t.Errorf("%+v %q", fine.Results, fine.Cautions)
	}
	foul := work(map[string]string{"ecoli": "2", "lead": "0.02 mg/L", "zinc": "4 mg/L", "ph": "5.9"})
	if text(foul, "which") != "E. coli in 100 mL, pH, lead, zinc" || text(foul, "can_make_ill") != "E. coli in 100 mL, lead" || !strings.Contains(strings.Join(foul.Cautions, "\n"), other) {
		t.Errorf("%+v", foul.Results)
	}
	taste := work(map[string]string{"sodium": "300 mg/L"})
	if text(taste, "which") != "sodium" || strings.Contains(strings.Join(taste.Cautions, "\n"), other) {
		t.Errorf("%+v %q", taste.Results, taste.Cautions)
	}
	thin := work(map[string]string{"chlorine": "0.1 mg/L"})
	if text(thin, "which") != "free chlorine" || text(thin, "can_make_ill") != "none" {
		t.Errorf("%+v", thin.Results)
	}
}
