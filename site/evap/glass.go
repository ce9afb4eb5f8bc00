package evap

import (
	"suffice/quantity"
	"suffice/site/air"
)

// StillWind is the wind in a room or under glass, m/s at 2 m: the least that fao56 p. 63 would calculate with.
const StillWind = 0.5

// A Shelter is a place under a roof, where leaves and walls are about as warm as the air.
type Shelter struct {
	PerLight float64 // mm for each W/m2 of light on the level, in an hour
	ByAir    float64 // mm by dry air, in an hour
}

// Under gives the reference evaporation of an hour in sheltered air: fao56 eq. 53 with StillWind, no net long-wave
// loss (walls as warm as the leaves) and no heat into the soil. Humidity is in percent. Left out: the sill's or pot's own heat.
func Under(altitude quantity.Metres, t quantity.Celsius, humidity float64) Shelter {
	gamma := air.Psychrometric(air.Pressure(altitude))
	slope := air.SaturationSlope(t)
	dry := air.Saturation(t) * (1 - humidity/100)
	below := slope + gamma*(1+0.34*StillWind)
	return Shelter{
		PerLight: evaporates * slope * (1 - albedo) * megajoules / below,
		ByAir:    gamma * 37 / (float64(t) + 273) * StillWind * dry / below,
	}
}

// megajoules is a watt for an hour.
const megajoules = 0.0036

// Gives is the reference evaporation in an hour of so much light on the level, W/m2.
func (s Shelter) Gives(light float64) quantity.Millimetres {
	return quantity.Millimetres(s.PerLight*light + s.ByAir)
}
