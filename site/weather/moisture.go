package weather

import (
	"math"

	"suffice/quantity"
	"suffice/site/air"
)

// humidityOfDew fills a day's humidity, percent, from its dew point and temperatures,
// degC: the vapour stays the same over the day. Hours that would pass 100 are held there
// (dew falls) and counted.
func humidityOfDew(hours, temperature []float64, dew float64) (held int) {
	vapour := air.Saturation(quantity.Celsius(dew))
	for h, T := range temperature {
		hours[h] = air.Humidity(quantity.Celsius(T), vapour)
		if hours[h] > 100 {
			hours[h] = 100
			held++
		}
	}
	return held
}

// humidityOfMean fills a day's humidity so that its mean is the stated one, percent: the
// vapour stays the same over the day but for the hours it saturates, which are counted.
func humidityOfMean(hours, temperature []float64, mean float64) (held int) {
	mean = min(100, mean)
	var inverse [24]float64 // humidity of 1 kPa
	for h, T := range temperature {
		inverse[h] = air.Humidity(quantity.Celsius(T), 1)
	}
	for range 24 {
		sum, n := 0.0, 0
		for h := range inverse {
			if hours[h] != 100 {
				sum, n = sum+inverse[h], n+1
			}
		}
		if n == 0 {
			break
		}
		vapour := (24*mean - 100*float64(24-n)) / sum
		more := 0
		for h := range inverse {
			if hours[h] == 100 {
				continue
			}
			if hours[h] = vapour * inverse[h]; hours[h] >= 100 {
				hours[h] = 100
				more++
			}
		}
		held += more
		if more == 0 {
			break
		}
	}
	return held
}

// windAt10 turns a wind at 2 m into one at 10 m over grass (fao56 eq. 47, turned).
var windAt10 = math.Log(67.8*10-5.42) / 4.87
