package evap

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/site/air"
	"suffice/site/sun"
)

const stefanHour = stefanDay / 24 // MJ/(K4 m2 hour); the source rounds it to 2.043e-10

// Hourly gives the reference evaporation of an hour (fao56 eq. 53). It may be slightly
// negative on a clear night: dew.
func Hourly(in Hour) HourOut {
	sky := sun.OutsideHour(in.Latitude, in.Longitude, in.Zone, in.DayOfYear, in.At)
	t := float64(in.Temperature)
	out := HourOut{Wind: WindAt2(in.Wind, in.WindHeight), Pressure: air.Pressure(in.Altitude),
		Slope: air.SaturationSlope(in.Temperature), Es: air.Saturation(in.Temperature),
		Distance: sky.Distance, Declination: sky.Declination, SeasonShift: sky.SeasonShift,
		HourAngle: sky.HourAngle, Sunset: sky.Sunset, Ra: sky.Ra}
	assume := func(format string, args ...any) { out.Assumed = append(out.Assumed, fmt.Sprintf(format, args...)) }
	out.Gamma = air.Psychrometric(out.Pressure)
	out.Ea = air.VapourOfHumidity(in.Temperature, in.Humidity) // eq. 54

	out.Rso = sun.ClearShare(in.Altitude) * sky.Ra // eq. 37
	switch {
	case out.Rso <= 0 && in.Cloudiness > 0:
		out.Relative = in.Cloudiness
	default:
		out.Relative = relativeLight(in.Radiation, out.Rso, unknownCloud, assume)
	}
	kelvin := t + freezingKelvin
	out.Rns = (1 - albedo) * in.Radiation
	out.Rnl = stefanHour * kelvin * kelvin * kelvin * kelvin * (0.34 - 0.14*math.Sqrt(out.Ea)) * (1.35*out.Relative - 0.35) // eq. 39
	out.Rn = out.Rns - out.Rnl
	out.SoilHeat = 0.1 * out.Rn // eq. 45, day
	if sky.Ra <= 0 {
		out.SoilHeat = 0.5 * out.Rn // eq. 46, night
	}
	below := out.Slope + out.Gamma*(1+0.34*out.Wind)
	out.ByLight = evaporates * out.Slope * (out.Rn - out.SoilHeat) / below // eq. 53
	out.ByAir = out.Gamma * 37 / (t + 273) * out.Wind * (out.Es - out.Ea) / below
	out.ETo = quantity.Millimetres(out.ByLight + out.ByAir)
	return out
}
