package air

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

func anyTemperature(t *rapid.T) quantity.Celsius {
	return quantity.Celsius(rapid.Float64Range(-40, 50).Draw(t, "temperature"))
}

// DewPoint undoes Saturation, and Humidity undoes VapourOfHumidity.
func TestInverses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		temperature, percent := anyTemperature(t), rapid.Float64Range(1, 110).Draw(t, "humidity")
		if back := DewPoint(Saturation(temperature)); math.Abs(float64(back-temperature)) > 1e-9 {
			t.Fatalf("%g came back as %g", float64(temperature), float64(back))
		}
		if back := Humidity(temperature, VapourOfHumidity(temperature, percent)); math.Abs(back-percent) > 1e-9 {
			t.Fatalf("%g %% came back as %g", percent, back)
		}
	})
}

// SaturationSlope is the slope of Saturation.
func TestSlopeIsTheSlope(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		temperature := anyTemperature(t)
		const step = 1e-3
		slope := (Saturation(temperature+step) - Saturation(temperature-step)) / (2 * step)
		// 4098 in the source is 17.27 times 237.3 rounded to the unit: 4098.171.
		if got := SaturationSlope(temperature); math.Abs(got/slope-1) > 5e-5 {
			t.Fatalf("at %g: %g, by differences %g", float64(temperature), got, slope)
		}
	})
}

// A wet bulb as warm as the dry one is saturated air; a colder one is drier.
func TestWetBulb(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dry := anyTemperature(t)
		wet := dry - quantity.Celsius(rapid.Float64Range(0, 5).Draw(t, "depression"))
		vapour := VapourOfWetBulb(dry, wet, 101.3, Ventilated)
		if same := VapourOfWetBulb(dry, dry, 101.3, Ventilated); same != Saturation(dry) || vapour > same {
			t.Fatalf("dry %g wet %g: %g, saturated %g", float64(dry), float64(wet), vapour, Saturation(dry))
		}
	})
}

// Higher is thinner, damper is lighter, and the lapse of the source is that of hydrostatics:
// dp/dz = -g p / (R T) at its temperature, within the exponent's rounding (5.26 for 5.2559).
func TestPressureFollowsTheWeightOfAir(t *testing.T) {
	for z := quantity.Metres(0); z <= 4000; z += 500 {
		lapse := (Pressure(z+1) - Pressure(z-1)) / 2
		temperature := 293 - 0.0065*float64(z)
		want := -9.807 * Pressure(z) / (287 * temperature)
		if math.Abs(lapse/want-1) > 0.002 {
			t.Errorf("at %g m: %g kPa/m, by weight %g", float64(z), lapse, want)
		}
	}
	if Density(20, 100, 2) >= Density(20, 100, 0) || Density(20, 90, 0) >= Density(20, 100, 0) || Density(30, 100, 0) >= Density(20, 100, 0) {
		t.Error("damp, high or warm air is not lighter")
	}
}

// A sky with more cloud sends down more, and an overcast one never more than a black body at
// the air's temperature.
func TestCloudWarmsTheSky(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		temperature := quantity.Celsius(rapid.Float64Range(-20, 35).Draw(t, "temperature"))
		dewPoint := temperature - quantity.Celsius(rapid.Float64Range(0, 20).Draw(t, "below"))
		cloud := rapid.Float64Range(0, 0.99).Draw(t, "cloud")
		a, b := SkyTemperature(temperature, dewPoint, cloud), SkyTemperature(temperature, dewPoint, cloud+0.01)
		if !(b > a || math.Abs(float64(b-temperature)) < 1e-9) || a > temperature+1e-9 {
			t.Fatalf("air %g, dew point %g, cloud %g: %g, then %g", float64(temperature), float64(dewPoint), cloud, float64(a), float64(b))
		}
	})
}

// The clear sky of night sends down more for its dew point than that of noon, by twice the
// amplitude of the source's daily wave.
func TestNightSkyIsWarmer(t *testing.T) {
	if d := BerdahlMartin(5, 0) - BerdahlMartin(5, 12); math.Abs(d-0.026) > 1e-12 {
		t.Errorf("midnight over noon by %g, want 0.026", d)
	}
}

// Overcast over hot and saturated air is a black body, and no more than that.
func TestOvercastIsAtMostBlack(t *testing.T) {
	if got := Clouded(ClarkAllen(33), 1); got != 1 {
		t.Errorf("emissivity %g, want 1", got)
	}
	if got := Clouded(ClarkAllen(0), 1); got >= 1 {
		t.Errorf("emissivity over freezing air is %g", got)
	}
}
