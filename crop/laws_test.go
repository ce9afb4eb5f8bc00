package crop

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
)

func some(t *rapid.T) Crop { return rapid.SampledFrom(All()).Draw(t, "crop") }

func TestYieldFallsWithSaltAndThirstAndDark(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := some(t)
		a, b := rapid.Float64Range(0, 20).Draw(t, "less"), rapid.Float64Range(0, 20).Draw(t, "more")
		low, high := min(a, b), max(a, b)
		if c.RelativeYield(high) > c.RelativeYield(low) {
			t.Errorf("%s bears %g at %g dS/m and %g at %g", c.Name, c.RelativeYield(high), high, c.RelativeYield(low), low)
		}
		if c.WaterYield(high/20) < c.WaterYield(low/20) {
			t.Errorf("%s bears %g with %g of its water and %g with %g", c.Name, c.WaterYield(high/20), high/20, c.WaterYield(low/20), low/20)
		}
		if c.LightYield(2*high) < c.LightYield(2*low) {
			t.Errorf("%s bears %g in %g mol and %g in %g", c.Name, c.LightYield(2*high), 2*high, c.LightYield(2*low), 2*low)
		}
		if Stress(100, high*5, 0.4) > Stress(100, low*5, 0.4) {
			t.Errorf("soil drier by %g mm gives more", high-low)
		}
	})
}

// The curve is one line without jumps, and its sum by days is the season's.
func TestCurveSums(t *testing.T) {
	for _, c := range All() {
		sum := 0.0
		for d := range int(c.Stages.Season()) {
			sum += c.Kc.At(c.Stages, float64(d)+0.5)
		}
		check.Balance(t, sum, c.Kc.Sum(c.Stages), c.Name+": the curve's days beside its sum")
	}
	rapid.Check(t, func(t *rapid.T) {
		c := some(t)
		d := rapid.Float64Range(-10, 250).Draw(t, "day")
		if a, b := c.Kc.At(c.Stages, d), c.Kc.At(c.Stages, d+1e-6); math.Abs(a-b) > 1e-6 {
			t.Errorf("%s: Kc jumps from %g to %g at day %g", c.Name, a, b, d)
		}
	})
}

// Warmth is never below zero, grows with the day, and the second method never gives less than the first.
func TestDegreeDaysGrow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-20, 30).Draw(t, "tmin")
		high := low + rapid.Float64Range(0, 20).Draw(t, "swing")
		day, warmer := Swing{high, low}, Swing{high + 1, low + 1}
		for _, m := range []Method{Average, Cut} {
			if got, more := DegreeDays(m, day, 10, 100), DegreeDays(m, warmer, 10, 100); got < 0 || more < got {
				t.Errorf("method %d: %g K d, and %g a degree warmer", m, got, more)
			}
		}
		if a, b := DegreeDays(Average, day, 10, 100), DegreeDays(Cut, day, 10, 100); b < a-1e-12 {
			t.Errorf("cut gives %g, average %g: nights held to the base can only add", b, a)
		}
	})
}

// Between two printed temperatures share and days lie between the printed figures.
func TestGerminationBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := some(t)
		if c.Sprouts == nil {
			return
		}
		soil := rapid.Float64Range(0, 39.99).Draw(t, "soil")
		i := int(soil / 5)
		a, b, got := c.Sprouts.Share[i], c.Sprouts.Share[i+1], c.Sprouts.ShareAt(soil)
		if got < min(a, b)-1e-9 || got > max(a, b)+1e-9 {
			t.Errorf("%s at %g degC: %g %%, printed %g and %g either side", c.Name, soil, got, a, b)
		}
		if days, ok := c.Sprouts.DaysAt(soil); ok && i < 8 && c.Sprouts.Days[i+1] > 0 {
			if x, y := c.Sprouts.Days[i], c.Sprouts.Days[i+1]; days < min(x, y)-1e-9 || days > max(x, y)+1e-9 {
				t.Errorf("%s at %g degC: %g days, printed %g and %g either side", c.Name, soil, days, x, y)
			}
		}
	})
}

// Every figure of a row is in order and says where it is from.
func TestRowsAreWhole(t *testing.T) {
	for _, c := range All() {
		a := c.Air
		if !(a.Base.Value < a.BestLow && a.Least < a.BestLow && a.BestLow < a.BestHigh && a.BestHigh < a.Most && a.BestHigh < a.Upper.Value) {
			t.Errorf("%s: temperatures out of order: base %g, least %.1f, best %.1f to %.1f, most %.1f, upper %g", c.Name, a.Base.Value, a.Least, a.BestLow, a.BestHigh, a.Most, a.Upper.Value)
		}
		if !(c.Yield.Low < c.Usual.Value && c.Usual.Value < c.Yield.High) {
			t.Errorf("%s: %g kg/m2 is not between %g and %g", c.Name, c.Usual.Value, c.Yield.Low, c.Yield.High)
		}
		for what, f := range map[string]From{"stages": c.Stages.From, "kc": c.Kc.From, "roots": c.Roots.From, "depletion": c.Depletion.From, "salt": c.Salt.From,
			"ky": c.Ky.From, "air": a.From, "light": c.Light.From, "maturity": c.Maturity.From, "energy": c.Energy.From, "yield": c.Usual.From, "seed": c.Seed.From} {
			if (f.Source == "") != (f.Standing == Practice) {
				t.Errorf("%s, %s: source %q stands as %s", c.Name, what, f.Source, f.Standing)
			}
		}
		if (c.Seed.Insects || c.Seed.Biennial) && c.Seed.True {
			t.Errorf("%s: is said to come true and to need insects or a second year", c.Name)
		}
	}
}

// Peppers bought as hybrids do not come true; tomato and spinach can be kept, spinach apart from its kin.
func TestWhichSeedToKeep(t *testing.T) {
	for name, starts := range map[string]string{"tomato": "yes", "sweet pepper": "yes", "spinach": "only", "zucchini": "only"} {
		if says := named(t, name).BreedsTrue(); says[:len(starts)] != starts {
			t.Errorf("%s: %q, want it to begin with %q", name, says, starts)
		}
	}
	if !named(t, "sweet pepper").Seed.Hybrids || named(t, "tomato").Seed.Hybrids {
		t.Error("bought peppers are mostly hybrids, tomatoes are not")
	}
}
