package water

import (
	"testing"

	"suffice/internal/check"
)

// The look-up takes the next lower temperature, the next higher pH and the next higher chlorine.
func TestChlorineLookedUpAsToldTo(t *testing.T) {
	ct, err := Chlorination{19, 7.2, 1.1}.Giardia()
	if err != nil {
		t.Fatal(err)
	}
	check.That(t, ct, check.Published{Source: "epa-disinfection-2020", At: "table B-1, looked up at 19 degC, pH 7.2, 1.1 mg/L, as a maker's note explains it", Value: "92", Unit: "mg.min/L"})
	for _, c := range []struct {
		water Chlorination
		want  check.Published
	}{
		{Chlorination{0.5, 6, 0.4}, check.Published{Source: "epa-disinfection-2020", At: "table B-1, 0.5 degC, pH 6, 0.4 mg/L", Value: "137", Unit: "mg.min/L"}},
		{Chlorination{0.5, 9, 1.0}, check.Published{Source: "epa-disinfection-2020", At: "table B-1, 0.5 degC, pH 9, 1.0 mg/L", Value: "437", Unit: "mg.min/L"}},
		{Chlorination{5, 7.5, 1.0}, check.Published{Source: "epa-disinfection-2020", At: "table B-1, 5 degC, pH 7.5, 1.0 mg/L", Value: "179", Unit: "mg.min/L"}},
		{Chlorination{10, 8, 0.4}, check.Published{Source: "epa-disinfection-2020", At: "table B-1, 10 degC, pH 8, 0.4 mg/L", Value: "149", Unit: "mg.min/L"}},
		{Chlorination{15, 7.5, 1.2}, check.Published{Source: "epa-disinfection-2020", At: "table B-1, 15 degC, pH 7.5, 1.2 mg/L", Value: "92", Unit: "mg.min/L"}},
		{Chlorination{20, 6.5, 1.0}, check.Published{Source: "epa-disinfection-2020", At: "table B-1, 20 degC, pH 6.5, 1.0 mg/L", Value: "47", Unit: "mg.min/L"}},
		{Chlorination{25, 9, 1.0}, check.Published{Source: "epa-disinfection-2020", At: "table B-1, 25 degC, pH 9, 1.0 mg/L", Value: "78", Unit: "mg.min/L"}},
	} {
		ct, err := c.water.Giardia()
		if err != nil {
			t.Fatal(err)
		}
		check.That(t, ct, c.want)
	}
}

func TestVirusesLookedUp(t *testing.T) {
	for _, c := range []struct {
		water Chlorination
		want  check.Published
	}{
		{Chlorination{0.5, 7, 1}, check.Published{Source: "epa-disinfection-2020", At: "table B-2, 0.5 degC, pH 6 to 9", Value: "12", Unit: "mg.min/L"}},
		{Chlorination{14, 7, 1}, check.Published{Source: "epa-disinfection-2020", At: "table B-2, 10 degC for 14, pH 6 to 9", Value: "6", Unit: "mg.min/L"}},
		{Chlorination{20, 9.5, 1}, check.Published{Source: "epa-disinfection-2020", At: "table B-2, 20 degC, pH 10", Value: "22", Unit: "mg.min/L"}},
	} {
		ct, err := c.water.Virus()
		if err != nil {
			t.Fatal(err)
		}
		check.That(t, ct, c.want)
	}
}

// Formulas beside the table: four worked cells, and over the four tables that were compared the regression never below.
func TestFormulasBesideTheTable(t *testing.T) {
	at := Chlorination{15, 7.5, 1.2}
	check.That(t, at.Regression(3), check.Published{Source: "smith-1995", At: "15 degC, pH 7.5, 1.2 mg/L", Value: "100.6", Unit: "mg.min/L", Standing: "remembered"})
	check.That(t, at.ClosedForm(3), check.Published{Source: "ct-lesson", At: "15 degC, pH 7.5, 1.2 mg/L", Value: "98.4", Unit: "mg.min/L"})
	check.That(t, Chlorination{10, 7, 1}.ClosedForm(3), check.Published{Source: "ct-lesson", At: "10 degC, pH 7, 1.0 mg/L", Value: "112.5", Unit: "mg.min/L"})
	for i, T := range giardiaTemperatures {
		if T == 5 || T == 25 {
			continue
		}
		for j, c := range giardiaChlorine {
			for k, ph := range giardiaPH {
				w, cell := Chlorination{T, ph, c}, giardiaCT[i][j][k]
				if r := w.Regression(3) / cell; r < 0.995 || r > 1.145 {
					t.Errorf("%+v: regression %.3f of the table, said to be 1.00 to 1.14", w, r)
				}
				if r := w.ClosedForm(3) / cell; r < 0.875 || r > 1.085 {
					t.Errorf("%+v: closed form %.3f of the table, said to be 0.88 to 1.08", w, r)
				}
			}
		}
	}
}

func TestBarriersInRow(t *testing.T) {
	var stages []Barrier
	for _, name := range []string{"slow sand filtration", "uv-40"} {
		b, err := BarrierNamed(name)
		if err != nil {
			t.Fatal(err)
		}
		stages = append(stages, b)
	}
	r := InRow(stages)
	check.That(t, r.Low[Bacteria], check.Published{Source: "who-gdwq-4", At: "slow sand and UV at 40 mJ/cm2, least of both added, bacteria", Value: "6.6", Unit: "log10", Standing: "own"})
	check.That(t, r.Low[Viruses], check.Published{Source: "who-gdwq-4", At: "the same, viruses", Value: "4.35", Unit: "log10", Standing: "own"})
	check.That(t, r.Low[Protozoa], check.Published{Source: "who-gdwq-4", At: "the same, protozoa", Value: "2.8", Unit: "log10", Standing: "own"})
	if r.Governing != Protozoa || r.Powerless != stages[0].Low {
		t.Errorf("governed by %s; without power %v, want the sand's %v", r.Governing, r.Powerless, stages[0].Low)
	}
}

func TestLightIsCredited(t *testing.T) {
	l := Shine(10, 4)
	check.That(t, float64(l), check.Published{Source: "cfr-141-720", At: "10 mW/cm2 for 4 s, by definition", Value: "40", Unit: "mJ/cm2", Standing: "own"})
	check.That(t, l.Cryptosporidium(), check.Published{Source: "cfr-141-720", At: "(d), 40 mJ/cm2 is above the 22 of four logs, Cryptosporidium", Value: "4", Unit: "log10"})
	check.That(t, l.Giardia(), check.Published{Source: "cfr-141-720", At: "(d), 40 mJ/cm2, Giardia", Value: "4", Unit: "log10"})
	check.That(t, l.Viruses(), check.Published{Source: "cfr-141-720", At: "(d), 40 mJ/cm2 lies between 39 and 58, viruses", Value: "0.5", Unit: "log10"})
	m, ok := l.Measured()
	if !ok {
		t.Fatal("nothing measured at 40 mJ/cm2")
	}
	check.That(t, m.Low[Viruses], check.Published{Source: "hijnen-2006", At: "40 mJ/cm2, viruses, least", Value: "4.1", Unit: "log10"})
}

func TestHypochlorite(t *testing.T) {
	check.That(t, Dose(1000, 5, 12.5), check.Published{Source: "enhealth-rainwater", At: "shock: 12.5 % hypochlorite for 1000 L at 5 mg/L", Value: "40", Unit: "mL", Standing: "remembered"})
	check.That(t, Dose(1000, 0.5, 12.5), check.Published{Source: "enhealth-rainwater", At: "weekly: 1000 L at 0.5 mg/L", Value: "4", Unit: "mL", Standing: "remembered"})
}
