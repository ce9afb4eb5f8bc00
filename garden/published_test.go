package garden

import (
	"math"
	"testing"

	"suffice/crop"
	"suffice/internal/check"
	"suffice/soil"
)

// Tomato in soil that dries for ten days, Ks from each day's beginning; the bed's own step, a day long.
func TestDryingSoil(t *testing.T) {
	c, err := crop.Named("tomato")
	if err != nil {
		t.Fatal(err)
	}
	p, err := (&Bed{Area: 1, Depth: 0.8, Soil: soil.Water{FieldCapacity: 0.32, Wilting: 0.12}, Arrives: 1, Plantings: []Planting{{c, 1}}}).Prepare()
	if err != nil {
		t.Fatal(err)
	}
	check.That(t, float64(p.Full), check.Published{Source: "fao56", At: "ex. 37, TAW of a square metre", Value: "160", Unit: "mm", Standing: "remembered"})
	s := p.Start(0, 0)
	s.Held, s.coefficient, s.depletion = p.Full-55, 1.2, c.Depletion.Value
	dries := func() float64 {
		var out BedOut
		p.Step(&s, &BedIn{Reference: 5}, &out)
		return float64(p.Full - s.Held)
	}
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 1", Value: "61", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 2", Value: "67", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 3", Value: "72.8", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 4", Value: "78.3", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 5", Value: "83.4", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 6", Value: "88.2", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 7", Value: "92.6", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 8", Value: "96.9", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 9", Value: "100.8", Unit: "mm", Standing: "remembered"})
	check.That(t, dries(), check.Published{Source: "fao56", At: "ex. 37, depletion after day 10", Value: "104.5", Unit: "mm", Standing: "remembered"})
}

// The hour's short form of the stress is the source's.
func TestStressIsTheSources(t *testing.T) {
	p := lush(t, "tomato", 101)
	for held := 0.0; held <= p.full; held += p.full / 64 {
		if a, b := p.stress(held, 0.4), crop.Stress(p.full, p.full-held, 0.4); math.Abs(a-b) > 1e-12 {
			t.Errorf("at %g of %g L: %g here, %g by eq. 84", held, p.full, a, b)
		}
	}
}

// The table's usual yields, over all crops, beside what gardens are said to bear.
func TestMixedGarden(t *testing.T) {
	sum := 0.0
	for _, c := range crop.All() {
		sum += c.Usual.Value
	}
	mean := sum / float64(len(crop.All()))
	check.That(t, mean, check.Published{Source: "rutgers-2012", At: "mixed small-scale vegetables, 0.5 lb/ft2", Value: "2.44", Unit: "kg/m2",
		Within: 0.49, Why: "a second source, ohio-garden, prints 0.6 lb/ft2 for home gardens, 2.93 kg/m2: the distance of the two"})
	check.That(t, mean, check.Published{Source: "ohio-garden", At: "home garden well kept, 0.6 lb/ft2", Value: "2.93", Unit: "kg/m2",
		Within: 0.49, Why: "rutgers-2012 prints 0.5 lb/ft2, 2.44 kg/m2: the distance of the two"})
}

// A litre a square metre and millimetre: a lawn of a coefficient of 1 gives off what is printed, and one that is sprinkled as
// soon as it is dry asks for as much again, and for what is blown away on top of it.
func TestLawn(t *testing.T) {
	lawn := Bed{Name: "lawn", Area: 200, Depth: 0.3, Soil: soil.LoamWater(), Arrives: 0.8, Grass: Grass{Kc: 1, Depletion: 0.01}}
	p, err := lawn.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	s, out := p.Start(0, 0), BedOut{}
	p.Step(&s, &BedIn{Reference: 5}, &out)
	printed := check.Published{Source: "fao56", At: "ch. 1, 5 mm on 200 m2", Value: "1000", Unit: "L", Standing: "own"}
	check.That(t, float64(out.Evaporated), printed)
	check.That(t, float64(p.Want(&s))*lawn.Arrives, printed)
	p.Step(&s, &BedIn{Rain: 12}, &out)
	if math.Abs(float64(out.Drained)-1400) > 1e-9 || p.Want(&s) != 0 {
		t.Errorf("12 mm of rain on 5 mm missing: %g L drained and %g wanted, want 1400 and 0", float64(out.Drained), float64(p.Want(&s)))
	}
}

// World means of rubbish, and the sums they make.
func TestRubbish(t *testing.T) {
	r := HouseRubbish(1)
	check.That(t, r.Recycled/wasteHolds+r.Leaves/wasteHolds, check.Published{Source: "world-bank-2018", At: "what is neither food nor green, of 100 %", Value: "0.56", Standing: "remembered"})
	check.That(t, KitchenScraps(1).Kitchen*daysPerYear, check.Published{Source: "unep-2024", At: "households, a person and year", Value: "79", Unit: "kg", Standing: "remembered"})
}

// Three of five portions of 80 g.
func TestVegetablesWanted(t *testing.T) {
	check.That(t, UsualKitchen(1).Wants, check.Published{Source: "who-diet-2003", At: "400 g of fruit and vegetables a day, three fifths, a year of 365.25 d", Value: "87.66", Unit: "kg", Standing: "own"})
}
