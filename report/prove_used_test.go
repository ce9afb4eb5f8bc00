package report

import (
	"bytes"
	"math"
	"strings"
	"testing"
)

// The arithmetic of four uses lets a house of four on about 1000 L a week use a litre 2.0 to 3.3 times: once at the tap, 0.6 to 0.85 times by the planter
// (what is not drunk, cooked with or flushed), 0.25 to 0.45 times to flush, and 0.15 times, what few trees drink, to once, all that reaches them.
// The demo is such a house.
func TestUsesOfTheDemo(t *testing.T) {
	p := lived(t, "../examples/demo.yaml")
	used := p.usedWaterJSON()
	if used == nil || used.Beds == nil {
		t.Fatal("the demo tells no used water")
	}
	if used.LitresPerWeek < 800 || used.LitresPerWeek > 1200 {
		t.Errorf("its taps give %.0f L a week: the arithmetic is for about 1000", used.LitresPerWeek)
	}
	if used.Uses < 2 || used.Uses > 3.3 {
		t.Errorf("a litre is used %.2f times, want 2.0 to 3.3", used.Uses)
	}
	if parts := 1 + used.ByPlanter + used.ToFlush + used.ByTrees; parts != used.Uses {
		t.Errorf("a litre is used %g times, and its parts are %g", used.Uses, parts)
	}
	years, sum := float64(p.Years()), 0.0
	for _, litres := range used.BedLitres {
		sum += litres
	}
	if whole := float64(p.Stated.Totals.Chain.Evaporated) / years; math.Abs(sum-whole) > 1e-9*whole {
		t.Errorf("the planter gives off %g L a year, by its months %g", whole, sum)
	}
	if used.LargestHottest == nil || *used.LargestHottest < 7 || used.TopUpLitres[used.HottestMonth-1] > 1 {
		t.Errorf("the planter of 7 m2 is topped up with %g L in month %d: its greywater should keep more than that", used.TopUpLitres[used.HottestMonth-1], used.HottestMonth)
	}
	if used.Beds.Had < 0.99 {
		t.Errorf("its plants had %.3f of the water they wanted: such a bed stays green all year", used.Beds.Had)
	}
	var text bytes.Buffer
	if err := p.Text(&text); err != nil {
		t.Fatal(err)
	}
	for _, says := range []string{"The taps give", "once at the tap", "times by the trees", "the hottest month", "topped up", "The longest way has 4 uses"} {
		if !strings.Contains(strings.Join(strings.Fields(text.String()), " "), says) {
			t.Errorf("the proof does not say %q", says)
		}
	}
}
