package gas

import (
	"fmt"
	"math"
	"strings"

	"suffice/quantity"
)

// A Fuel is a liquefied gas as sold in bottles. Heating values come as a supplier's
// table prints them; the trade's spread between fillings is about 1 %.
type Fuel struct {
	Name    string
	Net     float64          // net (lower) heating value, MJ/kg
	Gross   float64          // gross (higher) heating value, MJ/kg
	Density float64          // of the liquid at 20 degC, kg/L
	Boiling quantity.Celsius // where the vapour of a full bottle reaches one atmosphere
	propane float64          // share of the moles in the liquid; the rest is n-butane
}

// Molar masses, kg/kmol, from the standard atomic weights.
const (
	propaneMass = 44.10
	butaneMass  = 58.12
)

// Propane is the gas of cold places [lpg-supplier].
func Propane() Fuel {
	return Fuel{Name: "propane", Net: 46.35, Gross: 50.43, Density: 0.498, Boiling: -42.6, propane: 1}
}

// Butane is n-butane, the gas of indoor bottles in mild places [lpg-supplier].
func Butane() Fuel {
	return Fuel{Name: "butane", Net: 45.74, Gross: 49.62, Density: 0.578, Boiling: -0.5}
}

// Mixed is propane and n-butane in the shares by mass whose net heating value is the
// 46.1 MJ/kg that [lpg-supplier] prints for mixed gas: 59 % propane. What is sold as
// mixed differs by country and season, from 20 to 80 % (common practice, no source).
func Mixed() Fuel {
	p, b := Propane(), Butane()
	const net = 46.1 // MJ/kg [lpg-supplier]
	w := (net - b.Net) / (p.Net - b.Net)
	moles := w / propaneMass / (w/propaneMass + (1-w)/butaneMass)
	return Fuel{
		Name: "mixed", Net: net,
		Gross:   w*p.Gross + (1-w)*b.Gross,
		Density: 1 / (w/p.Density + (1-w)/b.Density), // volumes add
		Boiling: bubblePoint(moles),
		propane: moles,
	}
}

// ByName finds a fuel: propane, butane or mixed.
func ByName(name string) (Fuel, error) {
	for _, f := range []Fuel{Propane(), Butane(), Mixed()} {
		if strings.EqualFold(strings.TrimSpace(name), f.Name) {
			return f, nil
		}
	}
	return Fuel{}, fmt.Errorf("gas: %q is not a known fuel: write propane, butane or mixed", name)
}

// wattHoursPerMegajoule is exact: 1 Wh is 3600 J.
const wattHoursPerMegajoule = 1e6 / 3600

// Energy gives the heat of combustion of a mass, on the net heating value.
func (f Fuel) Energy(m quantity.Kilograms) quantity.WattHours {
	return quantity.WattHours(float64(m) * f.Net * wattHoursPerMegajoule)
}

// Mass gives what must burn for an energy, on the net heating value.
func (f Fuel) Mass(e quantity.WattHours) quantity.Kilograms {
	return quantity.Kilograms(float64(e) / (f.Net * wattHoursPerMegajoule))
}

// MassFor gives what must burn for a heat in an appliance whose efficiency, 0 to 1,
// refers to the net heating value.
func (f Fuel) MassFor(heat quantity.WattHours, efficiency float64) quantity.Kilograms {
	return f.Mass(quantity.WattHours(float64(heat) / efficiency))
}

// Vapour pressures of the pure gases in kPa at t in degC, by Antoine's equation.
// Propane's constants are from memory of a handbook (mmHg, common logarithm), good
// between -110 and 25 degC; n-butane's are [antoine-svna], good between -73 and 19 degC.
func propanePressure(t float64) float64 {
	const mmHg = 0.1333224 // kPa
	return mmHg * math.Pow(10, 6.80398-803.81/(t+246.99))
}

func butanePressure(t float64) float64 { return math.Exp(13.6608 - 2154.70/(t+238.789)) }

// oneAtmosphere is exact, kPa.
const oneAtmosphere = 101.325

// bubblePoint gives the temperature in degC at which a liquid with a share x of
// propane by moles has a vapour of one atmosphere, by Raoult's law.
func bubblePoint(x float64) quantity.Celsius {
	low, high := -60.0, 10.0
	for range 60 { // halves 70 K to below rounding
		mid := (low + high) / 2
		if x*propanePressure(mid)+(1-x)*butanePressure(mid) < oneAtmosphere {
			low = mid
		} else {
			high = mid
		}
	}
	return quantity.Celsius((low + high) / 2)
}
