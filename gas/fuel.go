// Package gas is bottled gas: what a kilogram holds, how fast a bottle can give
// it on a cold day, and how the bottles of a house empty and come back.
package gas

import "suffice/quantity"

// A Fuel is a liquefied gas as sold in bottles.
type Fuel struct {
	Name    string
	Net     float64          // net (lower) heating value, MJ/kg
	Gross   float64          // gross (higher) heating value, MJ/kg
	Density float64          // of the liquid at 20 degC, kg/L
	Boiling quantity.Celsius // where its vapour reaches one atmosphere
	propane float64          // mole share of propane in the liquid, the rest n-butane
}

// ByName finds a fuel: propane, butane or mixed.
func ByName(name string) (Fuel, error) { return Fuel{}, nil }

// Energy gives the heat of combustion of a mass, on the net heating value.
func (f Fuel) Energy(m quantity.Kilograms) quantity.WattHours { return 0 }

// Mass gives what must burn for an energy, on the net heating value.
func (f Fuel) Mass(e quantity.WattHours) quantity.Kilograms { return 0 }
