package fabric

import (
	"math"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/material"
	"suffice/sheet"
)

func worked(t *testing.T, name string, args map[string]string) sheet.Worked {
	t.Helper()
	for _, s := range Sheets() {
		if s.Name != name {
			continue
		}
		given, err := s.Read(args)
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.Work(given)
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	t.Fatalf("no sheet %q", name)
	return sheet.Worked{}
}

func result(t *testing.T, w sheet.Worked, name string) float64 {
	t.Helper()
	for _, r := range w.Results {
		if r.Name == name {
			return r.Value.Number
		}
	}
	t.Fatalf("%s has no result %q", w.Sheet.Name, name)
	return 0
}

func TestSheetsAnswerBare(t *testing.T) {
	for _, s := range Sheets() {
		w := worked(t, s.Name, nil)
		if len(w.Steps) == 0 || len(w.Results) == 0 {
			t.Errorf("%s: %d steps, %d results", s.Name, len(w.Steps), len(w.Results))
		}
		for _, r := range w.Results {
			if math.IsNaN(r.Value.Number) || math.IsInf(r.Value.Number, 0) {
				t.Errorf("%s: %s is %g", s.Name, r.Name, r.Value.Number)
			}
		}
	}
}

func TestSheetsGivePublishedNumbers(t *testing.T) {
	u := worked(t, "u-value", map[string]string{"layers": "plasterboard:12mm:0.16W/mK, fibreglass:66mm:0.04W/mK, siding:0.009:0.14", "inside": "0.12063m2K/W", "outside": "0.03413m2K/W"})
	check.That(t, result(t, u, "u"), check.Published{Source: "bestest-1995", At: "light wall, by the sheet", Value: "0.514", Unit: "W/m2K", Standing: "remembered"})
	p := worked(t, "periodic-wall", map[string]string{"layers": "a:.015:.21:1150:1100,b:96mm:.13:500:1600,c:.13:.043W/mK:190:2.1kJ/kgK,d:.015:.9:1800kg/m3:1000"})
	check.That(t, result(t, p, "periodic_transmittance"), check.Published{Source: "iso13786", At: "wall of four layers, by the sheet", Value: "0.04397424174344255", Unit: "W/m2K",
		Within: 1e-16, Why: "the last printed digit stands for the rounding of double precision on another machine"})
	s := worked(t, "heat-store", nil)
	check.That(t, result(t, s, "temperature"), check.Published{Source: "one-store", At: "5 + 15 exp(-0.864), by the sheet", Value: "11.32", Unit: "degC", Standing: "own"})
}

// A bridge may be written either way round; a known material needs no numbers.
func TestLayersAreRead(t *testing.T) {
	one := worked(t, "u-value", map[string]string{"layers": "straw bale:350mm", "bridged": "straw bale:10%:0.13W/mK"})
	other := worked(t, "u-value", map[string]string{"layers": "Straw-bale:0.35:0.063", "bridged": "0.1:0.13:straw-bale"})
	if a, b := result(t, one, "u"), result(t, other, "u"); a != b {
		t.Errorf("looked up %g, given %g W/m2K", a, b)
	}
	gap := worked(t, "u-value", map[string]string{"layers": "gap:0.18m2K/W"})
	check.Balance(t, result(t, gap, "resistance"), 0.35, "an air gap between its surfaces")
	air := worked(t, "u-value", map[string]string{"layers": "a:10cm:1,Air:25mm"})
	check.That(t, result(t, air, "resistance")-0.27, check.Published{Source: "iso6946", At: "table of air layers, 25 mm, level", Value: "0.18", Unit: "m2K/W", Standing: "remembered"})
	for text, says := range map[string]string{
		"air:2m": "2000 mm", "strwa bale:300mm": `"straw bale"`, "brick:100:0.77": "write 100mm", "brick": "a layer is", "brick:1m:0.5:1:2:3": "a layer is",
		"brick:10cm:abc": "abc", "brick:10kg:0.77": "kg", "": "a layer is",
	} {
		if _, err := ReadLayers(text, false, material.Library{}); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v does not say %q", text, err, says)
		}
	}
	layers := []Layer{layer(.1, 1, 1, 1)}
	for text, says := range map[string]string{"x:10%:0.13": `no layer is called "x"`, "layer:0.1": "a bridge is", "layer:z:0.1": "z"} {
		if err := ReadBridges(text, layers); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v does not say %q", text, err, says)
		}
	}
}

func FuzzReadLayers(f *testing.F) {
	for _, seed := range []string{"straw bale:350mm", "a:0.1:1:2:3,b:0.18m2K/W", "brick:100:0.77", ":::,", "cork board:1e400"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, mass := range []bool{false, true} {
			layers, err := ReadLayers(text, mass, material.Library{})
			e := Element{Layers: layers}
			if err != nil || e.Faults() != nil {
				continue
			}
			if r := float64(e.Resistance()); !(r > 0) || math.IsInf(r, 0) {
				t.Errorf("%q: read as %+v with a resistance of %g", text, layers, r)
			}
		}
	})
}
