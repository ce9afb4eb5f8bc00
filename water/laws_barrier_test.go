package water

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/sheet"
)

// A barrier more never takes credit away, the order does not matter, and no group has less than the governing one.
func TestBarriersOnlyAdd(t *testing.T) {
	all := Barriers()
	rapid.Check(t, func(t *rapid.T) {
		stages := rapid.SliceOfN(rapid.SampledFrom(all), 1, 5).Draw(t, "stages")
		short, whole := InRow(stages[:len(stages)-1]), InRow(stages)
		turned := InRow(append([]Barrier{stages[len(stages)-1]}, stages[:len(stages)-1]...))
		for p := range Pathogens {
			if whole.Low[p] < short.Low[p] || whole.High[p] < whole.Low[p] || whole.Powerless[p] > whole.Low[p] || whole.Low[p] < whole.Low[whole.Governing] {
				t.Fatalf("%s: %+v", p, whole)
			}
			check.Balance(t, turned.Low[p], whole.Low[p], "turned round, log10")
		}
	})
	for _, b := range all {
		if key, _, found := strings.Cut(b.Stands, ": "); !found || key == "" || !b.High.atLeast(b.Low) {
			t.Errorf("%+v", b)
		}
	}
}

// Colder, more alkaline or stronger water never needs less CT, and what the table does not hold is refused.
func TestChlorineErrsOnTheSideOfMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Chlorination{rapid.Float64Range(0.5, 30).Draw(t, "temperature"), rapid.Float64Range(6, 9).Draw(t, "ph"), rapid.Float64Range(0.1, 3).Draw(t, "chlorine")}
		ct, err := w.Giardia()
		if err != nil {
			t.Fatal(err)
		}
		colder, alkaline, stronger := w, w, w
		colder.Temperature = max(0.5, w.Temperature-3)
		alkaline.PH = min(9, w.PH+0.5)
		stronger.Chlorine = min(3, w.Chlorine+0.3)
		for _, worse := range []Chlorination{colder, alkaline, stronger} {
			if more, err := worse.Giardia(); err != nil || more < ct {
				t.Fatalf("%+v needs %g, %+v needs %g (%v)", w, ct, worse, more, err)
			}
		}
	})
	for _, w := range []Chlorination{{0.2, 7, 1}, {10, 9.2, 1}, {10, 7, 3.1}} {
		if ct, err := w.Giardia(); err == nil {
			t.Errorf("%+v is beyond the table and got %g", w, ct)
		}
	}
	if _, err := (Chlorination{10, 5, 1}).Virus(); err == nil {
		t.Error("viruses below pH 6 are in no table")
	}
}

// More light is never credited with less, and below the first step with nothing.
func TestLightOnlyAdds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Light(rapid.Float64Range(0, 250).Draw(t, "dose"))
		more := l + Light(rapid.Float64Range(0, 50).Draw(t, "more"))
		if more.Viruses() < l.Viruses() || more.Giardia() < l.Giardia() || more.Cryptosporidium() < l.Cryptosporidium() {
			t.Fatalf("%g, more %g", l, more)
		}
	})
	if Light(1.4).Giardia() != 0 || Light(186).Viruses() != 4 {
		t.Error("the ends of the table")
	}
	if _, ok := Light(19).Measured(); ok {
		t.Error("nothing was measured below 20 mJ/cm2")
	}
}

// The nearer end decides over a cartridge; rated for nothing it is not told.
func TestCartridgeEndsByTheNearer(t *testing.T) {
	k := Cartridge{Litres: 6000, Dirt: 100}
	if days, dirt, ok := k.Lasts(60, 1); days != 100 || dirt || !ok {
		t.Errorf("clear water: %g days, dirt %v", days, dirt)
	}
	if days, dirt, ok := k.Lasts(60, 50); !dirt || !ok || days >= 34 || days <= 33 {
		t.Errorf("dirty water: %g days, dirt %v", days, dirt)
	}
	if _, _, ok := (Cartridge{}).Lasts(60, 1); ok {
		t.Error("rated for nothing")
	}
}

// Nothing that is said of drinking water calls it safe, and every one of its sheets asks for a test.
func TestNobodySaysSafe(t *testing.T) {
	for _, s := range barrierSheets() {
		w, err := s.Work(nil)
		if err != nil {
			t.Fatalf("%s: %v", s.Name, err)
		}
		said := s.Title + " " + strings.Join(w.Cautions, " ") + " " + strings.Join(s.Sources, " ")
		for _, in := range s.Inputs {
			said += " " + in.Meaning
		}
		for _, r := range w.Results {
			said += " " + r.Name + " " + r.Value.Text
		}
		if strings.Contains(strings.ToLower(said), "safe") || !strings.Contains(said, "tested") {
			t.Errorf("%s: says safe, or asks for no test", s.Name)
		}
	}
}

// The sheets refuse what no table holds, and warn of what a lamp and chlorine cannot do.
func TestBarrierSheetsRefuseAndWarn(t *testing.T) {
	for name, args := range map[string]map[string]string{
		"log-reduction": {"stages": "slow-sand,prayer"}, "chlorine-contact": {"ph": "9.5"}, "cartridge-life": {"rated": "0L", "dirt_held": "0g"},
	} {
		s := named(t, name)
		values, err := s.Read(args)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.Work(values); err == nil {
			t.Errorf("%s took %v", name, args)
		}
	}
	for _, c := range []struct {
		name, input, text, says string
	}{
		{"log-reduction", "stages", "chlorine", "Cryptosporidium"}, {"log-reduction", "stages", "uv-40", "without power"},
		{"log-reduction", "stages", "ceramic,ceramic", "twice"},
	} {
		s := named(t, c.name)
		w, err := s.Work(map[string]sheet.Value{c.input: {Kind: sheet.Text, Text: c.text}})
		if err != nil || !strings.Contains(strings.Join(w.Cautions, " "), c.says) {
			t.Errorf("%s of %s does not say %q (%v)", c.name, c.text, c.says, err)
		}
	}
	check.That(t, write(t, "chlorine-contact", map[string]string{"temperature": "19degC", "ph": "7.2", "chlorine": "1.1mg/L"})["ct"],
		check.Published{Source: "epa-disinfection-2020", At: "table B-1 at 19 degC, pH 7.2, 1.1 mg/L, by the sheet", Value: "92", Unit: "mg.min/L"})
	check.That(t, write(t, "chlorine-contact", map[string]string{"target": "virus-4log", "temperature": "5degC", "chlorine": "2mg/L"})["minutes"],
		check.Published{Source: "epa-disinfection-2020", At: "table B-2 at 5 degC, 8 mg.min/L with 2 mg/L, by the sheet", Value: "4", Unit: "min", Standing: "own"})
	check.That(t, write(t, "log-reduction", nil)["viruses"], check.Published{Source: "who-gdwq-4", At: "slow sand and UV at 40 mJ/cm2, viruses, by the sheet", Value: "4.35", Unit: "log10", Standing: "own"})
	check.That(t, write(t, "uv-dose", nil)["dose"], check.Published{Source: "cfr-141-720", At: "10 mW/cm2 for 4 s, by the sheet", Value: "40", Unit: "mJ/cm2", Standing: "own"})
	check.That(t, write(t, "chlorine-dose", nil)["hypochlorite"], check.Published{Source: "enhealth-rainwater", At: "shock, by the sheet", Value: "40", Unit: "mL", Standing: "remembered"})
}
