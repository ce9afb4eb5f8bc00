package vent

import (
	"math"

	"suffice/quantity"
)

const gravity = 9.81 // m/s2

// Discharge coefficients of a plain opening with sharp edges.
const (
	Sharp    = 0.61 // cibse-am10, bs5925
	Handbook = 0.65 // ashrae-fundamentals ch. 16, for flow one way without mixing
)

// Opening is a hole to the outside.
type Opening struct {
	Area      quantity.SquareMetres // free
	Height    quantity.Metres       // of its middle
	Tall      quantity.Metres       // from its lower to its upper edge
	Discharge float64               // 0 to 1; see Sharp
	Pressure  float64               // wind pressure coefficient: about 0.6 facing the wind, -0.3 away from it
}

// Weather is what drives air through openings.
type Weather struct {
	Inside, Outside quantity.Celsius
	Wind            float64 // m/s at the height of the building, see Local
}

// warmer gives (Ti − To)/T̄, with T̄ the mean of both in kelvin.
func (w Weather) warmer() float64 {
	return float64(w.Inside-w.Outside) / ((w.Inside.Kelvin() + w.Outside.Kelvin()) / 2)
}

// Stack gives the flow through an opening that lies so far from the neutral level, m3/s, with the
// room the warmer (ashrae-fundamentals ch. 16: Q = CD A √(2 g ΔH (Ti − To)/Ti)). Below 0 it is cooler inside: the flow turns round.
func Stack(o Opening, above quantity.Metres, w Weather) float64 {
	x := 2 * gravity * float64(above) * float64(w.Inside-w.Outside) / w.Inside.Kelvin()
	return o.effective() * signedRoot(x)
}

func (o Opening) effective() float64 { return o.Discharge * float64(o.Area) }

func signedRoot(x float64) float64 { return math.Copysign(math.Sqrt(math.Abs(x)), x) }

// Pair is what two openings of a room do.
type Pair struct {
	Flow float64 // m3/s, in by the first and out by the second; below 0 the other way
	// Neutral is the height at which still air outside has the room's pressure. Level says whether there is
	// one: with both equally warm, none is.
	Neutral quantity.Metres
	Level   bool
}

// Through gives the flow through two openings of one room by warmth and wind together
// (cibse-am10, bs5925: openings in series, Ae = (1/A1² + 1/A2²)^−½, the pressures added; air as heavy in as out).
func Through(first, second Opening, w Weather) Pair {
	rise := float64(second.Height - first.Height)
	// Δp/ρ between outside and outside, once through the room: warmth and wind, m2/s2.
	drive := gravity*rise*w.warmer() + 0.5*w.Wind*w.Wind*(first.Pressure-second.Pressure)
	a, b := first.effective(), second.effective()
	if a == 0 || b == 0 {
		return Pair{}
	}
	ae := 1 / math.Sqrt(1/(a*a)+1/(b*b))
	p := Pair{Flow: ae * signedRoot(2*drive)}
	if warm := w.warmer(); warm != 0 {
		left := 0.5*w.Wind*w.Wind*first.Pressure - drive*ae*ae/(a*a) // (pi − po)/ρ at the first opening
		p.Neutral, p.Level = first.Height-quantity.Metres(left/(gravity*warm)), true
	}
	return p
}

// Alone gives the exchange through the only opening of a room, m3/s, in and out each: by warmth
// Q = CD (A/3) √(g h ΔT/T̄), by wind Q = 0.025 A U, the larger of both (bs5925 table of single-sided ventilation).
func Alone(o Opening, w Weather) float64 {
	warmth := o.effective() / 3 * math.Sqrt(gravity*float64(o.Tall)*math.Abs(w.warmer()))
	return max(warmth, 0.025*float64(o.Area)*w.Wind)
}

// Terrain is what the wind has blown over.
type Terrain string

const (
	Country    Terrain = "open country"
	Windbreaks Terrain = "country with windbreaks"
	Town       Terrain = "town"
	City       Terrain = "city"
)

// Local brings the wind of open country at 10 m down or up to a height in a terrain (bs5925, cibse-am10:
// U = Um K z^a, from memory).
func Local(wind float64, height quantity.Metres, t Terrain) float64 {
	K, a := 0.68, 0.17
	switch t {
	case Windbreaks:
		K, a = 0.52, 0.20
	case Town:
		K, a = 0.35, 0.25
	case City:
		K, a = 0.21, 0.33
	}
	return wind * K * math.Pow(float64(height), a)
}
