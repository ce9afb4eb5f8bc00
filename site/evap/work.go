package evap

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/site/air"
	"suffice/site/sun"
)

const (
	albedo         = 0.23     // of the reference lawn (fao56 eq. 38)
	stefanDay      = 4.903e-9 // Stefan-Boltzmann, MJ/(K4 m2 day)
	evaporates     = 0.408    // mm for a MJ/m2, the inverse of 2.45 MJ/kg (fao56 eq. 20)
	worldWind      = 2.0      // m/s, mean of over 2000 stations (fao56 p. 63)
	angstromA      = 0.25     // of light outside, on fully overcast days (fao56 p. 50)
	angstromB      = 0.50
	unknownCloud   = 0.8 // Rs/Rso where there is no sun to tell it (fao56 p. 75, semi-arid nights)
	inlandKRs      = 0.16
	freezingKelvin = 273.16 // as the source adds it
)

// WindAt2 brings wind measured at a height over short grass down to 2 m (fao56 eq. 47).
func WindAt2(wind float64, height quantity.Metres) float64 {
	if height == 0 || height == 2 {
		return wind
	}
	return wind * 4.87 / math.Log(67.8*float64(height)-5.42)
}

// SoilHeatOfMonth gives the heat into the soil in MJ/m2 for each day of a month, from the
// mean temperatures of the months before and after (fao56 eq. 43).
func SoilHeatOfMonth(before, after quantity.Celsius) float64 { return 0.07 * float64(after-before) }

// SoilHeatToMonth is SoilHeatOfMonth where the month after is not known yet: from the
// month before and the month itself (fao56 eq. 44).
func SoilHeatToMonth(before, itself quantity.Celsius) float64 { return 0.14 * float64(itself-before) }

// Faults gives everything about a day that cannot be, or nil.
func (in Day) Faults() error {
	var faults []error
	if in.Warmest < in.Coolest {
		faults = append(faults, fmt.Errorf("highest temperature %g degC is under the lowest, %g degC: they may have been exchanged", float64(in.Warmest), float64(in.Coolest)))
	}
	if in.DampMost != nil && in.DampLeast != nil && *in.DampMost < *in.DampLeast {
		faults = append(faults, fmt.Errorf("highest humidity %g %% is under the lowest, %g %%: they may have been exchanged", *in.DampMost, *in.DampLeast))
	}
	if in.DampLeast != nil && in.DampMost == nil {
		faults = append(faults, errors.New("the lowest humidity says nothing alone: give the highest too"))
	}
	if n := sun.OutsideDay(in.Latitude, in.DayOfYear).DayLength; in.Sunshine != nil && *in.Sunshine > n+0.05 {
		faults = append(faults, fmt.Errorf("%g h of sunshine do not fit a day of %.1f h", *in.Sunshine, n))
	}
	return errors.Join(faults...)
}

// Daily gives the reference evaporation of a day by the Penman-Monteith equation (fao56 eq. 6).
func Daily(in Day) DayOut {
	sky := sun.OutsideDay(in.Latitude, in.DayOfYear)
	out := DayOut{Mean: float64(in.Warmest+in.Coolest) / 2, SoilHeat: in.SoilHeat,
		Distance: sky.Distance, Declination: sky.Declination, Sunset: sky.Sunset, DayLength: sky.DayLength, Ra: sky.Ra}
	assume := func(format string, args ...any) { out.Assumed = append(out.Assumed, fmt.Sprintf(format, args...)) }

	out.Wind = worldWind
	if in.Wind != nil {
		out.Wind = WindAt2(*in.Wind, in.WindHeight)
	} else {
		assume("wind was not given: %g m/s taken", worldWind)
	}
	out.Pressure = air.Pressure(in.Altitude)
	out.Gamma = air.Psychrometric(out.Pressure)
	out.Slope = air.SaturationSlope(quantity.Celsius(out.Mean))
	out.Es = (air.Saturation(in.Warmest) + air.Saturation(in.Coolest)) / 2 // eq. 12
	out.Ea = in.vapour(out.Es, assume)

	out.Rs = in.radiation(sky, assume)
	out.Rso = sun.ClearShare(in.Altitude) * sky.Ra // eq. 37
	out.Relative = relativeLight(out.Rs, out.Rso, unknownCloud, assume)
	out.Rns = (1 - albedo) * out.Rs // eq. 38
	warm, cool := float64(in.Warmest)+freezingKelvin, float64(in.Coolest)+freezingKelvin
	out.Rnl = stefanDay * (warm*warm*warm*warm + cool*cool*cool*cool) / 2 *
		(0.34 - 0.14*math.Sqrt(out.Ea)) * (1.35*out.Relative - 0.35) // eq. 39
	out.Rn = out.Rns - out.Rnl // eq. 40

	below := out.Slope + out.Gamma*(1+0.34*out.Wind)
	out.ByLight = evaporates * out.Slope * (out.Rn - out.SoilHeat) / below // eq. 6
	out.ByAir = out.Gamma * 900 / (out.Mean + 273) * out.Wind * (out.Es - out.Ea) / below
	out.ETo = quantity.Millimetres(out.ByLight + out.ByAir)
	return out
}

// vapour gives the actual vapour pressure, kPa, from the best that is known of humidity.
func (in Day) vapour(es float64, assume func(string, ...any)) float64 {
	switch {
	case in.Vapour != nil:
		return *in.Vapour
	case in.DewPoint != nil:
		return air.Saturation(*in.DewPoint) // eq. 14
	case in.DampMost != nil && in.DampLeast != nil:
		return (air.VapourOfHumidity(in.Coolest, *in.DampMost) + air.VapourOfHumidity(in.Warmest, *in.DampLeast)) / 2 // eq. 17
	case in.DampMost != nil:
		return air.VapourOfHumidity(in.Coolest, *in.DampMost) // eq. 18
	case in.DampMean != nil:
		return *in.DampMean / 100 * es // eq. 19
	}
	assume("humidity was not given: dew point taken as the lowest temperature, %g degC", float64(in.Coolest))
	return air.Saturation(in.Coolest) // eq. 48
}

// radiation gives the light on the ground, MJ/m2 in the day, from the best that is known.
func (in Day) radiation(sky sun.Outside, assume func(string, ...any)) float64 {
	switch {
	case in.Radiation != nil:
		return *in.Radiation
	case in.Sunshine != nil && sky.DayLength > 0:
		return (angstromA + angstromB**in.Sunshine/sky.DayLength) * sky.Ra // eq. 35
	case in.Sunshine != nil:
		return 0 // polar night
	}
	k := in.KRs
	if k == 0 {
		k = inlandKRs
	}
	assume("light was not given: estimated from the range of temperature with kRs %g", k)
	return k * math.Sqrt(float64(in.Warmest-in.Coolest)) * sky.Ra // eq. 50
}

// relativeLight gives Rs/Rso as the long-wave loss takes it: at most 1 (fao56 below eq. 39).
func relativeLight(rs, rso, dark float64, assume func(string, ...any)) float64 {
	switch {
	case rso <= 0:
		assume("without sun Rs/Rso cannot be told: %g taken", dark)
		return dark
	case rs > rso:
		assume("light is %.3g of a clear sky's: the long-wave loss takes 1", rs/rso)
		return 1
	}
	return rs / rso
}

// Hargreaves gives the reference evaporation of a day from temperatures alone (fao56 eq. 52).
func Hargreaves(in Day) quantity.Millimetres {
	sky := sun.OutsideDay(in.Latitude, in.DayOfYear)
	mean, spread := float64(in.Warmest+in.Coolest)/2, float64(in.Warmest-in.Coolest)
	return quantity.Millimetres(0.0023 * (mean + 17.8) * math.Sqrt(spread) * evaporates * sky.Ra) // eq. 52
}
