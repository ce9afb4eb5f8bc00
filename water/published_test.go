package water

import (
	"math"
	"slices"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
)

func TestYields(t *testing.T) {
	check.That(t, float64(Yield(200, 750, 24, 0.80)), check.Published{Source: "enhealth-rainwater", At: "appendix B, 200 m2, 750 mm, A 0.80, B 24 mm", Value: "116160", Unit: "L"})
	check.That(t, float64(Yield(5*8, 750, 0, 0.8)), check.Published{Source: "unicef-highland-water", At: "5 x 8 m, 750 mm, 0.8", Value: "24000", Unit: "L"})
	check.That(t, float64(Yield(5*8, 750, 0, 0.8))/365, check.Published{Source: "unicef-highland-water", At: "5 x 8 m, 750 mm, 0.8, a day", Value: "66", Unit: "L"})
	check.That(t, float64(Yield(120, 450, 0, 0.9)), check.Published{Source: "hasse-reservoirs", At: "ch. 2, 120 m2, 450 mm, 90 %; the answer worked out here", Value: "48600", Unit: "L", Standing: "own"})
	const inch, squareFoot, gallon = 25.4, 0.3048 * 0.3048, 3.785411784 // by definition
	check.That(t, float64(Yield(squareFoot, inch, 0, 1))/gallon, check.Published{Source: "texas-rainwater", At: "ch. 4, 1 inch on 1 square foot", Value: "0.62", Unit: "US-gallon", Standing: "remembered"})

	// A web page prints 48,112 L for a roof of 2 x 11 x 4.55 m, 600 mm, 0.8.
	right := float64(Yield(2*11*4.55, 600, 0, 0.8))
	check.That(t, right, check.Published{Source: "roof-page", At: "2 x 11 x 4.55 m, 600 mm, 0.8; the page prints 48,112", Value: "48048", Unit: "L", Standing: "own"})
	if math.Abs(right-48112) < 1 {
		t.Errorf("%v L agrees with the page's slip", right)
	}
}

// An hour of a roof at rest with the year's rain is the year's yield: the same losses.
func TestRoofStepIsTheYield(t *testing.T) {
	r := Roof{Area: 200, Coefficient: 0.80, Wetting: 24}
	var s RoofState
	out := r.Step(&s, RoofIn{Down: 750, Dry: spellGap})
	check.That(t, float64(out.Passed), check.Published{Source: "enhealth-rainwater", At: "appendix B, by the step of the hour", Value: "116160", Unit: "L"})
}

func TestSurfaces(t *testing.T) {
	at := func(name, source string) Surface {
		for _, s := range Surfaces() {
			if s.Name == name && s.Source == source {
				return s
			}
		}
		t.Fatalf("no surface %s of %s", name, source)
		return Surface{}
	}
	check.That(t, at("pitched smooth", "en16941-1").Usual, check.Published{Source: "en16941-1", At: "yield coefficient, pitched smooth", Value: "0.9", Unit: "", Standing: "remembered"})
	check.That(t, at("flat with gravel", "en16941-1").Usual, check.Published{Source: "en16941-1", At: "yield coefficient, flat with gravel", Value: "0.7", Unit: "", Standing: "remembered"})
	check.That(t, at("green intensive", "en16941-1").Usual, check.Published{Source: "en16941-1", At: "yield coefficient, green intensive", Value: "0.3", Unit: "", Standing: "remembered"})
	check.That(t, at("clay or concrete tile", "texas-rainwater").Usual, check.Published{Source: "texas-rainwater", At: "clay and concrete tile lose about 10 %, as quoted", Value: "0.90", Unit: ""})
	check.That(t, at("roof", "india-school-audit").Usual, check.Published{Source: "india-school-audit", At: "roof", Value: "0.85", Unit: ""})
	check.That(t, at("paved", "india-school-audit").Usual, check.Published{Source: "india-school-audit", At: "paved", Value: "0.70", Unit: ""})
	check.That(t, at("unpaved", "india-school-audit").Usual, check.Published{Source: "india-school-audit", At: "unpaved", Value: "0.30", Unit: ""})
	for _, s := range Surfaces() {
		if !(0 <= s.Low && s.Low <= s.Usual && s.Usual <= s.High && s.High <= 1) || s.Source == "" || s.Stands == "" {
			t.Errorf("%+v: not an ordered share with a source", s)
		}
	}
	lesson := at("any roof", "rwh-lesson-demand")
	check.That(t, lesson.Low, check.Published{Source: "rwh-lesson-demand", At: "roofs vary from", Value: "0.5", Unit: ""})
	check.That(t, lesson.High, check.Published{Source: "rwh-lesson-demand", At: "roofs vary to", Value: "0.9", Unit: ""})
	check.That(t, FilterEfficiency, check.Published{Source: "en16941-1", At: "hydraulic filter efficiency when nothing is known, as quoted", Value: "0.9", Unit: ""})
}

func TestSimpleSizes(t *testing.T) {
	check.That(t, float64(DrySeason(6, 20, 25)), check.Published{Source: "rwh-lesson-demand", At: "6 people, 20 L/d, 25 d", Value: "3000", Unit: "L"})
	yield, demand := Yield(100, 800, 0, 0.8)*FilterEfficiency, quantity.Litres(4*50*365)
	check.That(t, float64(yield), check.Published{Source: "en16941-1", At: "100 m2, 800 mm, 0.8, filter 0.9", Value: "57600", Unit: "L", Standing: "own"})
	check.That(t, float64(demand), check.Published{Source: "en16941-1", At: "4 people, 50 L/d", Value: "73000", Unit: "L", Standing: "own"})
	check.That(t, float64(Simplified(yield, demand, SimplifiedShare)), check.Published{Source: "en16941-1", At: "5 % of the lesser", Value: "2880", Unit: "L", Standing: "own"})
	check.That(t, float64(Simplified(2*yield, demand, SimplifiedShare)), check.Published{Source: "en16941-1", At: "5 % of the demand", Value: "3650", Unit: "L", Standing: "own"})
	check.That(t, float64(Simplified(yield, demand, GermanShare)), check.Published{Source: "din1989-1", At: "6 % of the lesser", Value: "3456", Unit: "L", Standing: "own"})
}

// example is worked by hand on the published equations.
var example = Vessel{Holds: 6, Start: 1, Demand: 2}

func exampleInflow() []float64 { return []float64{0, 3, 8, 0, 0, 5, 0, 0, 0, 2} }

func TestPublishedRules(t *testing.T) {
	after, before := example.Steps(AfterSpillage, exampleInflow()), example.Steps(BeforeSpillage, exampleInflow())
	for _, c := range []struct {
		what      string
		got, want []float64
	}{
		{"after spillage, yields", after.Yields, []float64{1, 0, 2, 2, 2, 0, 2, 2, 1, 0}},
		{"after spillage, levels", after.Levels, []float64{0, 3, 4, 2, 0, 5, 3, 1, 0, 2}},
		{"before spillage, yields", before.Yields, []float64{1, 2, 2, 2, 2, 2, 2, 2, 1, 2}},
		{"before spillage, levels", before.Levels, []float64{0, 1, 6, 4, 2, 5, 3, 1, 0, 0}},
	} {
		if !slices.Equal(c.got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	yield, spill := after.Total()
	check.That(t, yield, check.Published{Source: "fewkes-butler", At: "after spillage, S 6, V 1, D 2, ten steps: yield", Value: "12", Unit: "", Standing: "own"})
	check.That(t, spill, check.Published{Source: "fewkes-butler", At: "after spillage, S 6, V 1, D 2, ten steps: spill", Value: "5", Unit: "", Standing: "own"})
	yield, spill = before.Total()
	check.That(t, yield, check.Published{Source: "fewkes-butler", At: "before spillage, S 6, V 1, D 2, ten steps: yield", Value: "18", Unit: "", Standing: "own"})
	check.That(t, spill, check.Published{Source: "fewkes-butler", At: "before spillage, S 6, V 1, D 2, ten steps: spill", Value: "1", Unit: "", Standing: "own"})

	// A trade article prints the level after spillage as capped at S - Q instead of S - Y.
	V, Y := 3.0, 2.0
	if asPrinted := min(V+8-Y, example.Holds-8); asPrinted == after.Levels[2] {
		t.Errorf("step 3: the level %v agrees with the misprint %v", after.Levels[2], asPrinted)
	}
}

func TestMassCurve(t *testing.T) {
	inflow := []float64{12, 8, 6, 15, 10}
	capacity, deficits := MassCurve(inflow, 10, 1)
	check.That(t, capacity, check.Published{Source: "sequent-peak", At: "inflow 12, 8, 6, 15, 10, release 10: capacity", Value: "6", Unit: ""})
	if want := []float64{0, 2, 6, 1, 1}; !slices.Equal(deficits, want) {
		t.Errorf("deficits %v, want %v", deficits, want)
	}
}

func TestFirstFlushHalves(t *testing.T) {
	check.That(t, RemainingContamination(1), check.Published{Source: "martinson-first-flush", At: "abstract, 1 mm", Value: "0.50", Unit: ""})
	check.That(t, RemainingContamination(2), check.Published{Source: "martinson-first-flush", At: "abstract, 2 mm", Value: "0.25", Unit: ""})
	check.That(t, RemainingContamination(3), check.Published{Source: "martinson-first-flush", At: "abstract, 3 mm", Value: "0.125", Unit: ""})
	check.That(t, RemainingContamination(5), check.Published{Source: "martinson-first-flush", At: "abstract, 5 mm", Value: "0.031", Unit: ""})
	// 1 to 2 US gallons on 100 square feet.
	const gallons = 3.785411784 / (100 * 0.3048 * 0.3048)
	check.That(t, gallons, check.Published{Source: "texas-rainwater", At: "first flush, least", Value: "0.41", Unit: "mm", Standing: "remembered"})
	check.That(t, float64(FirstFlush{Depth: 2 * gallons}.Takes(1)), check.Published{Source: "texas-rainwater", At: "first flush, most", Value: "0.81", Unit: "mm", Standing: "remembered"})
}
