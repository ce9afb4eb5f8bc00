package weather

import (
	"math"
	"testing"

	"suffice/internal/check"
	"suffice/site/sun"
)

// Examples 14 and 15 of FAO-56 are printed to two or three figures.
func TestExamplesOfFAO56(t *testing.T) {
	check.That(t, 3.2/windAt10, check.Published{Source: "fao56", At: "ex. 14: 3.2 m/s at 10 m, as wind at 2 m", Value: "2.4", Unit: "m/s", Standing: "remembered"})
	out := sun.Outside{Ra: 40.6}
	light, cut := warmthLight(out, 200, 26.6-14.8, interior)
	check.That(t, light*3.6, check.Published{Source: "fao56", At: "ex. 15: Lyon, July, 26.6 and 14.8 degC, Ra 40.6", Value: "22.3", Unit: "MJ/m2/d", Standing: "remembered"})
	if cut != 0 {
		t.Errorf("%g kWh/m2 were cut below a clear sky's", cut)
	}
	check.That(t, rangeOfLight(out, light, interior), check.Published{Source: "fao56", At: "ex. 15, turned round: the range of temperature", Value: "11.8", Unit: "K", Standing: "remembered"})
	check.That(t, (0.75+2e-5*200)*40.6, check.Published{Source: "fao56", At: "ex. 15: clear sky, eq. 37", Value: "30.6", Unit: "MJ/m2/d", Standing: "own"})
}

// The curve of Parton & Logan for a day of 12 hours: from their three coefficients alone
// follow when the maximum falls and how far dusk has cooled.
func TestCourseOfPartonLogan(t *testing.T) {
	day := sunDay{noon: 12, length: 12}
	e := extremes{low: 10, high: 20, mean: math.NaN()}
	hours, _ := warmth(e, e, e, day, day)
	warmest := 0
	for h, T := range hours {
		if T > hours[warmest] {
			warmest = h
		}
	}
	check.That(t, float64(warmest), check.Published{Source: "parton-logan", At: "a 1.86 h, c -0.17 h: hour of the maximum in a day of 12 h", Value: "13", Unit: "h", Standing: "own"})
	// m = Y - c hours after the minimum, sin(pi m / (Y + 2a)) = sin(pi 12.17 / 15.72)
	check.That(t, sunsetWarmth(e, day), check.Published{Source: "parton-logan", At: "temperature at sunset between 10 and 20 degC", Value: "16.5", Unit: "degC", Standing: "own"})
	// Halfway through the night exp(-1.1) of the fall is left, bent to end at the minimum.
	check.That(t, night(10, 16.5, 6, 12), check.Published{Source: "parton-logan", At: "b 2.20: halfway through the night from 16.5 to 10 degC", Value: "11.6", Unit: "degC", Standing: "own"})
}
