package evap

import (
	"testing"

	"suffice/internal/check"
)

func at[T any](v T) *T { return &v }

func TestWindAndSoilHeat(t *testing.T) {
	check.That(t, WindAt2(3.2, 10), check.Published{Source: "fao56", At: "ex. 14, 3.2 m/s at 10 m", Value: "2.4", Unit: "m/s"})
	check.That(t, SoilHeatOfMonth(14.1, 18.8), check.Published{Source: "fao56", At: "ex. 13, 14.1 to 18.8 degC over two months", Value: "0.33", Unit: "MJ/m2 d"})
	check.That(t, evaporates*SoilHeatOfMonth(14.1, 18.8), check.Published{Source: "fao56", At: "ex. 13, as evaporation", Value: "0.13", Unit: "mm/d"})
}

func TestLightFromSunshine(t *testing.T) {
	rio := Day{Latitude: -(22 + 54.0/60), DayOfYear: 135, Warmest: 25.1, Coolest: 19.1, Vapour: at(2.1), Sunshine: at(7.1)}
	out := Daily(rio)
	check.That(t, out.Ra, check.Published{Source: "fao56", At: "ex. 10, Ra", Value: "25.1", Unit: "MJ/m2 d"})
	check.That(t, out.DayLength, check.Published{Source: "fao56", At: "ex. 10, N", Value: "10.9", Unit: "h"})
	check.That(t, out.Rs, check.Published{Source: "fao56", At: "ex. 10, Rs", Value: "14.5", Unit: "MJ/m2 d"})
	check.That(t, out.Rso, check.Published{Source: "fao56", At: "ex. 11, Rso", Value: "18.8", Unit: "MJ/m2 d"})
	rio.Radiation = at(14.5)
	check.That(t, Daily(rio).Rnl, check.Published{Source: "fao56", At: "ex. 11, Rnl", Value: "3.5", Unit: "MJ/m2 d"})
}

// July at 45 deg 43' N.
func TestLightFromTemperature(t *testing.T) {
	out := Daily(Day{Latitude: 45 + 43.0/60, DayOfYear: 196, Warmest: 26.6, Coolest: 14.8, KRs: 0.16})
	check.That(t, out.Ra, check.Published{Source: "fao56", At: "ex. 15, 45 deg 43' N in July, Ra", Value: "40.6", Unit: "MJ/m2 d"})
	check.That(t, out.Rs, check.Published{Source: "fao56", At: "ex. 15, Rs from 26.6 and 14.8 degC, kRs 0.16", Value: "22.3", Unit: "MJ/m2 d"})
}

// The same place with temperatures alone, by both ways the source offers.
func TestTemperaturesAlone(t *testing.T) {
	in := Day{Latitude: 45 + 43.0/60, DayOfYear: 196, Altitude: 200, Warmest: 26.6, Coolest: 14.8}
	out := Daily(in)
	check.That(t, out.Ea, check.Published{Source: "fao56", At: "ex. 20, ea from the lowest temperature", Value: "1.68", Unit: "kPa", Standing: "remembered"})
	check.That(t, float64(out.ETo), check.Published{Source: "fao56", At: "ex. 20, ETo with estimated light, damp and wind", Value: "4.56", Unit: "mm/d", Standing: "remembered"})
	check.That(t, float64(Hargreaves(in)), check.Published{Source: "fao56", At: "ex. 20, by eq. 52", Value: "5.0", Unit: "mm/d", Standing: "remembered"})
}

// Bangkok in April, from monthly means.
func TestBangkok(t *testing.T) {
	out := Daily(Day{Latitude: 13 + 44.0/60, DayOfYear: 105, Altitude: 2, Warmest: 34.8, Coolest: 25.6, Vapour: at(2.85),
		Wind: at(2.0), Sunshine: at(8.5), SoilHeat: SoilHeatToMonth(29.2, 30.2)})
	check.That(t, out.Slope, check.Published{Source: "fao56", At: "ex. 17, slope", Value: "0.246", Unit: "kPa/K"})
	check.That(t, out.Pressure, check.Published{Source: "fao56", At: "ex. 17, pressure", Value: "101.3", Unit: "kPa"})
	check.That(t, out.Gamma, check.Published{Source: "fao56", At: "ex. 17, psychrometric constant", Value: "0.0674", Unit: "kPa/K",
		Within: 0.0001, Why: "the source multiplies its pressure of 101.3 kPa, rounded up from 101.28"})
	check.That(t, out.Es, check.Published{Source: "fao56", At: "ex. 17, es", Value: "4.42", Unit: "kPa"})
	check.That(t, out.Ra, check.Published{Source: "fao56", At: "ex. 17, Ra", Value: "38.06", Unit: "MJ/m2 d"})
	check.That(t, out.DayLength, check.Published{Source: "fao56", At: "ex. 17, N", Value: "12.31", Unit: "h"})
	check.That(t, out.Rs, check.Published{Source: "fao56", At: "ex. 17, Rs", Value: "22.65", Unit: "MJ/m2 d"})
	check.That(t, out.Rso, check.Published{Source: "fao56", At: "ex. 17, Rso", Value: "28.54", Unit: "MJ/m2 d"})
	check.That(t, out.Rns, check.Published{Source: "fao56", At: "ex. 17, Rns", Value: "17.44", Unit: "MJ/m2 d"})
	check.That(t, out.Rnl, check.Published{Source: "fao56", At: "ex. 17, Rnl", Value: "3.11", Unit: "MJ/m2 d"})
	check.That(t, out.Rn, check.Published{Source: "fao56", At: "ex. 17, Rn", Value: "14.33", Unit: "MJ/m2 d"})
	check.That(t, out.SoilHeat, check.Published{Source: "fao56", At: "ex. 17, G", Value: "0.14", Unit: "MJ/m2 d"})
	check.That(t, out.ByLight, check.Published{Source: "fao56", At: "ex. 17, part by light", Value: "3.97", Unit: "mm/d"})
	check.That(t, out.ByAir, check.Published{Source: "fao56", At: "ex. 17, part by air", Value: "1.75", Unit: "mm/d"})
	check.That(t, float64(out.ETo), check.Published{Source: "fao56", At: "ex. 17, ETo", Value: "5.72", Unit: "mm/d"})
}

// Uccle on 6 July.
func TestUccle(t *testing.T) {
	out := Daily(Day{Latitude: 50.8, DayOfYear: 187, Altitude: 100, Warmest: 21.5, Coolest: 12.3, DampMost: at(84.0), DampLeast: at(63.0),
		Wind: at(10 / 3.6), WindHeight: 10, Sunshine: at(9.25)})
	check.That(t, out.Wind, check.Published{Source: "fao56", At: "ex. 18, wind at 2 m", Value: "2.078", Unit: "m/s"})
	check.That(t, out.Slope, check.Published{Source: "fao56", At: "ex. 18, slope", Value: "0.122", Unit: "kPa/K"})
	check.That(t, out.Pressure, check.Published{Source: "fao56", At: "ex. 18, pressure", Value: "100.1", Unit: "kPa"})
	check.That(t, out.Gamma, check.Published{Source: "fao56", At: "ex. 18, psychrometric constant", Value: "0.0666", Unit: "kPa/K"})
	check.That(t, out.Es, check.Published{Source: "fao56", At: "ex. 18, es", Value: "1.997", Unit: "kPa"})
	check.That(t, out.Ea, check.Published{Source: "fao56", At: "ex. 18, ea", Value: "1.409", Unit: "kPa"})
	check.That(t, out.Ra, check.Published{Source: "fao56", At: "ex. 18, Ra", Value: "41.09", Unit: "MJ/m2 d"})
	check.That(t, out.DayLength, check.Published{Source: "fao56", At: "ex. 18, N", Value: "16.1", Unit: "h"})
	check.That(t, out.Rs, check.Published{Source: "fao56", At: "ex. 18, Rs", Value: "22.07", Unit: "MJ/m2 d"})
	check.That(t, out.Rso, check.Published{Source: "fao56", At: "ex. 18, Rso", Value: "30.90", Unit: "MJ/m2 d"})
	check.That(t, out.Rns, check.Published{Source: "fao56", At: "ex. 18, Rns", Value: "17.0", Unit: "MJ/m2 d"})
	check.That(t, out.Rnl, check.Published{Source: "fao56", At: "ex. 18, Rnl", Value: "3.71", Unit: "MJ/m2 d"})
	check.That(t, out.Rn, check.Published{Source: "fao56", At: "ex. 18, Rn", Value: "13.28", Unit: "MJ/m2 d"})
	check.That(t, float64(out.ETo), check.Published{Source: "fao56", At: "ex. 18, ETo", Value: "3.88", Unit: "mm/d"})
}

// ndiaye is the station of example 19 on 1 October.
var ndiaye = Hour{Latitude: 16 + 13.0/60, Longitude: -(16 + 15.0/60), Zone: -1, DayOfYear: 274, Altitude: 8}

func TestHourOfTheDay(t *testing.T) {
	in := ndiaye
	in.At, in.Temperature, in.Humidity, in.Wind, in.Radiation = 14.5, 38, 52, 3.3, 2.450
	out := Hourly(in)
	check.That(t, out.Es, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, es", Value: "6.625", Unit: "kPa", Standing: "remembered"})
	check.That(t, out.Ea, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, ea", Value: "3.445", Unit: "kPa", Standing: "remembered"})
	check.That(t, out.Slope, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, slope", Value: "0.358", Unit: "kPa/K", Standing: "remembered"})
	check.That(t, out.Gamma, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, psychrometric constant", Value: "0.0673", Unit: "kPa/K", Standing: "remembered"})
	check.That(t, out.SeasonShift, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, Sc", Value: "0.1889", Unit: "h", Standing: "remembered"})
	check.That(t, float64(out.HourAngle), check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, hour angle", Value: "0.682", Unit: "rad", Standing: "remembered"})
	check.That(t, out.Ra, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, Ra", Value: "3.543", Unit: "MJ/m2 h", Standing: "remembered"})
	check.That(t, out.Rso, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, Rso", Value: "2.658", Unit: "MJ/m2 h", Standing: "remembered"})
	check.That(t, out.Relative, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, Rs/Rso", Value: "0.922", Standing: "remembered"})
	check.That(t, out.Rnl, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, Rnl", Value: "0.137", Unit: "MJ/m2 h", Standing: "remembered"})
	check.That(t, out.Rn, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, Rn", Value: "1.749", Unit: "MJ/m2 h", Standing: "remembered"})
	check.That(t, out.SoilHeat, check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, G", Value: "0.175", Unit: "MJ/m2 h", Standing: "remembered"})
	check.That(t, float64(out.ETo), check.Published{Source: "fao56", At: "ex. 19, 14 to 15 h, ETo", Value: "0.63", Unit: "mm/h", Standing: "remembered"})
}

func TestHourOfTheNight(t *testing.T) {
	in := ndiaye
	in.At, in.Temperature, in.Humidity, in.Wind, in.Cloudiness = 2.5, 28, 90, 1.9, 0.8
	out := Hourly(in)
	check.That(t, out.Ra, check.Published{Source: "fao56", At: "ex. 19, 2 to 3 h, Ra", Value: "0", Unit: "MJ/m2 h", Within: 1e-12, Why: "the sun is down", Standing: "remembered"})
	check.That(t, out.Rn, check.Published{Source: "fao56", At: "ex. 19, 2 to 3 h, Rn", Value: "-0.100", Unit: "MJ/m2 h", Standing: "remembered"})
	check.That(t, out.SoilHeat, check.Published{Source: "fao56", At: "ex. 19, 2 to 3 h, G", Value: "-0.050", Unit: "MJ/m2 h", Standing: "remembered"})
	check.That(t, float64(out.ETo), check.Published{Source: "fao56", At: "ex. 19, 2 to 3 h, ETo", Value: "0.00", Unit: "mm/h", Standing: "remembered"})
}

// Saturation of the mean temperature is a known mistake: it would make Uccle's day 3.75 mm.
func TestMeanOfSaturationIsNotSaturationOfMean(t *testing.T) {
	out := Daily(Day{Latitude: 50.8, DayOfYear: 187, Altitude: 100, Warmest: 21.5, Coolest: 12.3, Vapour: at(1.409), Wind: at(2.078), Radiation: at(22.07)})
	mean := Daily(Day{Latitude: 50.8, DayOfYear: 187, Altitude: 100, Warmest: 16.9, Coolest: 16.9, Vapour: at(1.409), Wind: at(2.078), Radiation: at(22.07)})
	check.That(t, float64(mean.ETo), check.Published{Source: "fao56", At: "ex. 18 with the mistake of averaging temperatures first", Value: "3.75", Unit: "mm/d",
		Within: 0.01, Why: "the long-wave loss takes both temperatures, which the mistake as printed does not touch", Standing: "own"})
	if out.ETo <= mean.ETo {
		t.Errorf("%g mm from both temperatures, %g mm from their mean", float64(out.ETo), float64(mean.ETo))
	}
}
