package water

import (
	"math"

	"suffice/quantity"
	"suffice/site/air"
)

// Constants of Antoine's equation for water, log10(p) = a - b/(c+t) with p in mmHg and t in degC, 1 to 100 degC; from memory. They
// meet the steam tables from 50 to 101 kPa within 0.1 K.
const (
	antoineA = 8.07131
	antoineB = 1730.63
	antoineC = 233.426

	mmHgPerKilopascal = 760 / 101.325
)

// BoilsAt gives the temperature at which water boils in the usual air pressure of an altitude. Weather moves it by 1 K either way;
// salt and lids, which move it by less, are left out.
func BoilsAt(altitude quantity.Metres) quantity.Celsius { return boilsUnder(air.Pressure(altitude)) }

// boilsUnder is BoilsAt for a pressure in kPa.
func boilsUnder(pressure float64) quantity.Celsius {
	return quantity.Celsius(antoineB/(antoineA-math.Log10(pressure*mmHgPerKilopascal)) - antoineC)
}

// A BoilAdvice is how long an authority tells people to keep water at a rolling boil.
type BoilAdvice struct {
	By      string
	Minutes float64
	Above   quantity.Metres // altitude over which High holds; 0: none is named
	High    float64         // min
}

// For gives the minutes at an altitude.
func (a BoilAdvice) For(altitude quantity.Metres) float64 {
	if a.Above > 0 && altitude > a.Above {
		return a.High
	}
	return a.Minutes
}

// BoilAdvices gives what four authorities say, as [eid-boil-2025] compared them in its table. The World Health Organization asks for no time
// after the rolling boil is reached: heat on the way there has done it.
func BoilAdvices() []BoilAdvice {
	return []BoilAdvice{
		{By: "cdc", Minutes: 1, Above: 1981, High: 3},
		{By: "epa", Minutes: 1, Above: 1524, High: 3},
		{By: "health-canada", Minutes: 1, Above: 2000, High: 2},
		{By: "who"},
	}
}
