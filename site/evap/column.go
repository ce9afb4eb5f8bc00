package evap

import (
	"math"
	"sync"

	"suffice/quantity"
	"suffice/site"
)

// Columns is the weather of whole days, hour by hour, from midnight on the clock of Place.
type Columns struct {
	Place       site.Place
	DayOfYear   []int     // 1 to 366, of each day
	Temperature []float64 // degC
	Humidity    []float64 // percent
	Wind        []float64 // m/s at 10 m; nil takes worldWind at 2 m
	Light       []float64 // W/m2 on the horizontal, means of the hours
}

// stationHeight is that of the wind in Columns.
const stationHeight quantity.Metres = 10

// Column gives the reference evaporation of each hour, mm, by Hourly. A night is as cloudy as the hour that lies from 2 to 3 h
// before the sunset before it (fao56 p. 75); hours before the first such hour take Hourly's own assumption.
func Column(c Columns) []float64 {
	out := make([]float64, len(c.Temperature))
	half := len(c.DayOfYear) / 2
	var both sync.WaitGroup
	both.Go(func() { c.fill(out, 0, half, 0) })
	both.Go(func() {
		if half > 0 { // one day more tells how cloudy the first night is
			var before [24]float64
			c.fill(out, half, len(c.DayOfYear), c.day(before[:], half-1, 0))
			return
		}
		c.fill(out, half, len(c.DayOfYear), 0)
	})
	both.Wait()
	return out
}

func (c *Columns) fill(out []float64, from, to int, cloudiness float64) {
	for d := from; d < to; d++ {
		cloudiness = c.day(out[24*d:24*d+24], d, cloudiness)
	}
}

// day gives the hours of a day, and how cloudy the evening was.
func (c *Columns) day(out []float64, d int, cloudiness float64) float64 {
	for clock := range out {
		i := 24*d + clock
		wind, height := worldWind, quantity.Metres(2)
		if c.Wind != nil {
			wind, height = c.Wind[i], stationHeight
		}
		h := Hourly(Hour{Latitude: c.Place.Latitude, Longitude: c.Place.Longitude, Zone: c.Place.Clock, DayOfYear: c.DayOfYear[d], At: float64(clock) + 0.5,
			Altitude: c.Place.Altitude, Temperature: quantity.Celsius(c.Temperature[i]), Humidity: c.Humidity[i], Wind: wind, WindHeight: height,
			Radiation: c.Light[i] * megajoules, Cloudiness: cloudiness})
		out[clock] = float64(h.ETo)
		if left := hoursToSunset(h); h.Rso > 0 && left >= 2 && left < 3 {
			cloudiness = h.Relative
		}
	}
	return cloudiness
}

// hoursToSunset counts from the middle of the hour; an hour is a 24th of a turn.
func hoursToSunset(h HourOut) float64 {
	return float64(h.Sunset-h.HourAngle) * 24 / (2 * math.Pi)
}
