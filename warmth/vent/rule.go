package vent

import (
	"math"

	"suffice/quantity"
)

// Rule is how the people open their vents: not at all up to a warmth inside, wholly from another,
// in between by share, and only while the air outside can help and does no harm.
type Rule struct {
	Begin  quantity.Celsius     // inside, at which they begin to open
	Full   quantity.Celsius     // inside, at which all is open; as Begin for all or nothing
	Cooler quantity.Kelvins     // by which it has to be cooler outside than inside
	Frost  quantity.Celsius     // outside, below which they leave the vents shut
	Storm  float64              // m/s, wind from which they shut them
	Wet    quantity.Millimetres // rain in the hour from which they shut them
}

// UsualRule is what people do who are at home and pay heed (common practice, no source).
func UsualRule() Rule {
	return Rule{Begin: 24, Full: 27, Cooler: 1, Frost: 5, Storm: 12, Wet: 2}
}

// Outdoors is what the people see when they look out.
type Outdoors struct {
	Temperature quantity.Celsius
	Wind        float64              // m/s
	Rain        quantity.Millimetres // in the hour
}

// Open gives the share of the vents' area that stands open, 0 to 1.
func Open(indoor quantity.Celsius, outdoor Outdoors, r Rule) float64 {
	if outdoor.Temperature < r.Frost || outdoor.Wind >= r.Storm || outdoor.Rain >= r.Wet ||
		indoor.Above(outdoor.Temperature) < r.Cooler || indoor < r.Begin {
		return 0
	}
	if indoor >= r.Full {
		return 1
	}
	return float64(indoor-r.Begin) / float64(r.Full-r.Begin)
}

// Leaks are the gaps of a house, as a pressure test tells them.
type Leaks struct {
	Area    float64 // cm2, effective at 4 Pa
	Storeys int     // 1 to 3
	Shelter int     // 1 in the open to 5 among close neighbours
}

// cs and cw are the handbook's coefficients, (L/s)²/(cm⁴ K) and (L/s)²/(cm⁴ (m/s)²) (ashrae-fundamentals ch. 16,
// basic model, from memory).
func (l Leaks) coefficients() (cs, cw float64) {
	storeys, shelter := min(max(l.Storeys, 1), 3)-1, min(max(l.Shelter, 1), 5)-1
	return [3]float64{0.000145, 0.000290, 0.000435}[storeys], [3][5]float64{
		{0.000319, 0.000246, 0.000174, 0.000104, 0.000032},
		{0.000420, 0.000325, 0.000231, 0.000137, 0.000042},
		{0.000494, 0.000382, 0.000271, 0.000161, 0.000049},
	}[storeys][shelter]
}

// Infiltration gives the air that comes through the leaks, m3/s (ashrae-fundamentals ch. 16: Q = (AL/1000)
// √(Cs |ΔT| + Cw U²), after Sherman and Grimsrud). More than three storeys count as three.
func (l Leaks) Infiltration(w Weather) float64 {
	cs, cw := l.coefficients()
	return l.Area / 1000 * math.Sqrt(cs*math.Abs(float64(w.Inside-w.Outside))+cw*w.Wind*w.Wind)
}

// FromFifty gives the mean air changes of a year, 1/h, from those at 50 Pa: a twentieth (common practice,
// traced to Kronvall and Persily, good to a factor of two).
func FromFifty(changes float64) float64 { return changes / 20 }
