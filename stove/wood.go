package stove

import "suffice/quantity"

// Wood is what is burned.
type Wood struct {
	Dry      float64 // kWh/kg, net heating value without any water
	Moisture float64 // share of its weight that is water, 0 to MostMoisture; a year or two under a roof: 0.15 to 0.2
}

// MostMoisture is that of a tree just felled; above it hardly any heat is left.
const MostMoisture = 0.65

// DryWood is the net heating value of wood without water, 18.5 MJ/kg in kWh/kg (wood-fuels: 18.5 to 19 MJ/kg for all species; the lower
// end is that of broad-leaved trees, conifers have 2 % more).
const DryWood = 18.5 / 3.6

// evaporation of water at 25 degC, kWh/kg (wood-fuels: 2.44 MJ/kg).
const evaporation = 2.44 / 3.6

// Holds gives the net heating value of a kilogram as it is laid on (wood-fuels: NCV = NCV0 (1 − M) − 2.44 M, MJ/kg).
func (w Wood) Holds() quantity.WattHours {
	M := w.Moisture
	return quantity.WattHours(1000 * (w.Dry*(1-M) - evaporation*M))
}

// Air that a kilogram of dry wood needs, kg: oxygen for carbon, hydrogen and what it has itself (shares of iso17225-1, from memory), over the share by weight of
// oxygen in air.
const (
	carbon, hydrogen, oxygen = 0.50, 0.06, 0.43
	oxygenNeed               = carbon*32/12.011 + hydrogen*15.999/2.016 - oxygen
	oxygenOfAir              = 0.2314
)

// excess is by how much a stove draws more air than burning needs: 13 % of oxygen is left in the flue gas, to which en13240 refers
// (from memory); well fired stoves have 8 to 12, open fires 17 and more.
const excess = 20.9 / (20.9 - 13)

// airWeighs is the density of room air, kg/m3.
const airWeighs = 1.2

// Draws gives the air that the fire takes with a kilogram, m3.
func (w Wood) Draws() float64 {
	return (1 - w.Moisture) * oxygenNeed / oxygenOfAir / airWeighs * excess
}
