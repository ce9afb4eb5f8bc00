package vent

import (
	"math"

	"suffice/quantity"
)

// Carbon dioxide that an adult breathes out, L/h (astm-d6245: 0.0052 L/s at 1.2 met; asleep in proportion to
// 0.7 met, from memory).
const (
	Sitting = 0.0052 * 3600
	Asleep  = Sitting * 0.7 / 1.2
)

// OutsideCarbon is the carbon dioxide outside, ppm (NOAA's global mean of 2023 was 419, from memory; towns have more).
const OutsideCarbon = 420.0

// Breath is a room with people in it.
type Breath struct {
	Volume  float64 // m3
	Gives   float64 // L/h of carbon dioxide by all people
	Fresh   float64 // m3/h of air from outside
	Outside float64 // ppm
}

// Settles gives the concentration that it comes to, ppm, +Inf without fresh air (balance of a mixed room: C = Co + G/Q).
func (b Breath) Settles() float64 {
	if b.Fresh <= 0 {
		return math.Inf(1)
	}
	return b.Outside + b.Gives*1000/b.Fresh
}

// After gives the concentration, ppm, after some hours from a start.
func (b Breath) After(start, hours float64) float64 {
	if b.Fresh <= 0 {
		return start + b.Gives*1000/b.Volume*hours
	}
	end := b.Settles()
	return end + (start-end)*math.Exp(-b.Fresh/b.Volume*hours)
}

// Until gives the hours from a start to a concentration, ppm, +Inf where it never gets there.
func (b Breath) Until(start, limit float64) float64 {
	if start >= limit {
		return 0
	}
	if b.Fresh <= 0 {
		if b.Gives <= 0 {
			return math.Inf(1)
		}
		return (limit - start) * b.Volume / (b.Gives * 1000)
	}
	end := b.Settles()
	if end <= limit {
		return math.Inf(1)
	}
	return b.Volume / b.Fresh * math.Log((end-start)/(end-limit))
}

// Stands says what in a house makes shut vents dangerous.
type Stands struct {
	OpenGas bool // a gas cooker, or a heater that takes its air from the room
	Stove   bool // wood or other solid fuel
	Fan     bool // draws air out of the house
	Earth   bool // rooms against the ground
}

// Cautions gives the warnings that belong to it. People do not feel carbon dioxide as want of air in time,
// and carbon monoxide not at all.
func Cautions(s Stands) []string {
	warnings := []string{"A tight house needs air by plan: with people in shut rooms damp and carbon dioxide rise within hours. Local rules say how much air each room must have."}
	if s.OpenGas {
		warnings = append(warnings, "Gas burnt in a room needs an opening that cannot be shut and a way out for the fumes. A flame short of air makes carbon monoxide, which kills without smell: have a licensed fitter set it up, keep an alarm, never heat a room with a cooker.")
	}
	if s.Stove {
		warnings = append(warnings, "A stove needs its own air from outside and a sound flue, swept each year. Never shut its damper on embers; keep a carbon monoxide alarm in the room and where people sleep.")
	}
	if s.Fan && (s.OpenGas || s.Stove) {
		warnings = append(warnings, "A fan that draws air out can pull fumes back down a flue. Where both are, a licensed person must test them running together with all vents shut.")
	}
	if s.Earth {
		warnings = append(warnings, "Rooms against the earth can gather radon from the ground: seal joints and pipes, leave a way to draw air from under the floor, and measure for some months with a detector. Local authorities publish maps and limits.")
	}
	return warnings
}

// Changes gives air changes an hour of a volume in m3 by a flow in m3/s.
func Changes(flow float64, volume float64) float64 { return flow * 3600 / volume }

// Carries gives the heat that a flow in m3/s takes out for each kelvin, W/K: at sea level and 20 degC,
// 1.2 kg/m3 and 1005 J/kgK (iso13789: 1200 J/m3K at sea level); times the pressure's share of 101.3 kPa higher up.
func Carries(flow, pressure float64) quantity.Watts {
	return quantity.Watts(flow * 1200 * pressure / 101.3)
}
