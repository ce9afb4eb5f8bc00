package fabric

import (
	"math"

	"suffice/quantity"
)

// A Store is a room or a barrel as one temperature: C dT/dt = Q - UA (T - To).
type Store struct {
	Loss     float64 // UA, W/K, more than 0
	Capacity float64 // C, J/K, more than 0
}

// TimeConstant gives the hours after which a difference has fallen to 1/e.
func (s Store) TimeConstant() float64 { return s.Capacity / s.Loss / secondsPerHour }

// Settles gives the temperature that a steady gain keeps up against a steady outside.
func (s Store) Settles(gain quantity.Watts, outside quantity.Celsius) quantity.Celsius {
	return outside + quantity.Celsius(float64(gain)/s.Loss)
}

// After gives the temperature after some hours of steady gain and outside, exactly:
// T = Tend + (start - Tend) exp(-t UA/C).
func (s Store) After(hours float64, start, settles quantity.Celsius) quantity.Celsius {
	return settles + (start-settles)*quantity.Celsius(math.Exp(-hours/s.TimeConstant()))
}
