package air

import (
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
)

func TestFAO56(t *testing.T) {
	high := Pressure(1800)
	check.That(t, high, check.Published{Source: "fao56", At: "ex. 2, pressure at 1800 m", Value: "81.8", Unit: "kPa"})
	check.That(t, Psychrometric(high), check.Published{Source: "fao56", At: "ex. 2, psychrometric constant at 1800 m", Value: "0.054", Unit: "kPa/K"})
	check.That(t, Saturation(24.5), check.Published{Source: "fao56", At: "ex. 3, saturation at 24.5 degC", Value: "3.075", Unit: "kPa"})
	check.That(t, Saturation(15), check.Published{Source: "fao56", At: "ex. 3, saturation at 15 degC", Value: "1.705", Unit: "kPa"})
	check.That(t, (Saturation(24.5)+Saturation(15))/2, check.Published{Source: "fao56", At: "ex. 3, mean saturation", Value: "2.39", Unit: "kPa"})
	check.That(t, Pressure(1200), check.Published{Source: "fao56", At: "ex. 4, pressure at 1200 m", Value: "87.9", Unit: "kPa"})
	check.That(t, VapourOfWetBulb(25.6, 19.5, 87.9, Ventilated), check.Published{Source: "fao56", At: "ex. 4, dry bulb 25.6, wet bulb 19.5, 1200 m", Value: "1.91", Unit: "kPa"})
	check.That(t, (VapourOfHumidity(18, 82)+VapourOfHumidity(25, 54))/2, check.Published{Source: "fao56", At: "ex. 5, 18 degC 82 %, 25 degC 54 %", Value: "1.70", Unit: "kPa"})
	check.That(t, SaturationSlope(30.2), check.Published{Source: "fao56", At: "ex. 17, slope at 30.2 degC", Value: "0.246", Unit: "kPa/K"})
	check.That(t, SaturationSlope(38), check.Published{Source: "fao56", At: "ex. 19, slope at 38 degC", Value: "0.358", Unit: "kPa/K"})
}

// The density of dry air at 15 degC and 101.325 kPa is part of the standard atmosphere.
func TestDensity(t *testing.T) {
	check.That(t, Density(15, 101.325, 0), check.Published{Source: "iso2533", At: "sea level, 15 degC, dry", Value: "1.225", Unit: "kg/m3", Standing: "remembered"})
}

// Sky temperature by hand; the overcast sky has 1.154 times the clear one's emissivity.
func TestSkyTemperature(t *testing.T) {
	check.That(t, float64(SkyTemperature(0, 0, 0)), check.Published{Source: "clark-allen", At: "air and dew point at 0 degC, clear", Value: "-15.84", Unit: "degC", Standing: "own"})
	check.That(t, float64(SkyTemperature(20, 10, 1)), check.Published{Source: "clark-allen", At: "air 20, dew point 10 degC, overcast", Value: "15.53", Unit: "degC", Standing: "own"})
}

// Hours of the measured days of site/sun/testdata/surfrad without cloud: mean air temperature
// and humidity at 10 m, and the long-wave light that came down.
func TestMeasuredSky(t *testing.T) {
	for _, c := range []struct {
		temperature  quantity.Celsius
		humidity     float64
		solarTime    float64
		light, rough check.Published
	}{
		{3.82, 52.6, 12.3, check.Published{Source: "surfrad", At: "Penn State, 2017-01-01, 17 to 18 h UTC (by BerdahlMartin)", Value: "230.0", Unit: "W/m2",
			Within: 10, Why: "cloud may have been there unseen, and dew point and sky are tied to about this", Standing: "measured"},
			check.Published{Source: "surfrad", At: "Penn State, 2017-01-01, 17 to 18 h UTC (by ClarkAllen)", Value: "230.0", Unit: "W/m2",
				Within: 34, Why: "the fit was made on nights: by day it is too warm, and this is how far", Standing: "measured"}},
		{-3.33, 39.5, 14.4, check.Published{Source: "surfrad", At: "Alamosa, 2015-12-31, 21 to 22 h UTC (by BerdahlMartin)", Value: "190.9", Unit: "W/m2",
			Within: 10, Why: "cloud may have been there unseen, and dew point and sky are tied to about this", Standing: "measured"},
			check.Published{Source: "surfrad", At: "Alamosa, 2015-12-31, 21 to 22 h UTC (by ClarkAllen)", Value: "190.9", Unit: "W/m2",
				Within: 34, Why: "the fit was made on nights: by day it is too warm, and this is how far", Standing: "measured"}},
		{-30.66, 64.1, 3, check.Published{Source: "surfrad", At: "South Pole, 2021-01-01, 4 to 5 h UTC (by BerdahlMartin)", Value: "116.0", Unit: "W/m2",
			Within: 10, Why: "cloud may have been there unseen, and dew point and sky are tied to about this", Standing: "measured"},
			check.Published{Source: "surfrad", At: "South Pole, 2021-01-01, 4 to 5 h UTC (by ClarkAllen)", Value: "116.0", Unit: "W/m2",
				Within: 34, Why: "the fit was made on nights: by day it is too warm, and this is how far", Standing: "measured"}},
	} {
		dewPoint := DewPoint(VapourOfHumidity(c.temperature, c.humidity))
		check.That(t, SkyLight(c.temperature, BerdahlMartin(dewPoint, c.solarTime)), c.light)
		check.That(t, SkyLight(c.temperature, ClarkAllen(dewPoint)), c.rough)
	}
}
