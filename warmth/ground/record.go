package ground

import (
	"errors"

	"suffice/quantity"
	"suffice/site/air"
	"suffice/site/evap"
	"suffice/site/sun"
	"suffice/site/weather"
)

// worldWind stands for a wind that no record tells, m/s at 2 m (fao56 p. 63: mean of over 2000 stations).
const worldWind = 2.0

// Needs says what a record lacks for the column, or nil. Without wind the world's mean stands, without
// rain the ground is dry and never white.
func Needs(h *weather.Hours) error {
	var faults []error
	for _, c := range []struct {
		what   string
		column []float64
	}{{"air temperature", h.Temperature}, {"light", h.Global}, {"humidity", h.Humidity}} {
		if c.column == nil {
			faults = append(faults, errors.New("ground: the weather record has no "+c.what+", and without it the ground's temperature cannot be computed: choose another record, or state the ground's mean and swing"))
		}
	}
	return errors.Join(faults...)
}

// Clear gives a day's light as a share of a clear day's, from 0.3 overcast to 1; in polar night, which
// does not tell, the 0.8 that fao56 takes for nights (p. 75).
func Clear(h *weather.Hours, day int) float64 {
	outside := sun.OutsideDay(h.Place.Latitude, int(h.Days[day].DayOfYear)).Ra // MJ/m2
	if outside < 0.1 {
		return 0.8
	}
	light := 0.0
	for _, g := range h.Global[24*day : 24*day+24] {
		light += g * 3600e-6
	}
	return min(max(light/(sun.ClearShare(h.Place.Altitude)*outside), 0.3), 1)
}

// Over gives the column's weather in an hour of a record that has what it Needs, with the day's Clear.
func Over(h *weather.Hours, hour int, clear float64) ColumnIn {
	t := quantity.Celsius(h.Temperature[hour])
	in := ColumnIn{Air: t, Light: quantity.Irradiance(h.Global[hour]), Vapour: air.VapourOfHumidity(t, h.Humidity[hour]), Wind: worldWind}
	in.Sky = SkyLight(t, in.Vapour, clear)
	if h.Wind != nil {
		in.Wind = evap.WindAt2(h.Wind[hour], 10)
	}
	if h.Rain != nil {
		in.Rain = quantity.Millimetres(h.Rain[hour])
	}
	return in
}
