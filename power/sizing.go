package power

import "suffice/quantity"

// BankSize gives the rated energy of a bank that carries a daily use through so many days
// without sun, down to a depth (share drawn) in cells that the cold leaves a share of their
// capacity: use x days / depth / cold factor, common practice.
func BankSize(daily quantity.WattHours, days, depth, cold float64) quantity.WattHours {
	return daily * quantity.WattHours(days/depth/cold)
}

// A Metal is what a cable is made of.
type Metal int8

const (
	Copper Metal = iota
	Aluminium
)

// resistivity of conductors in normal service, warm, in ohm mm2/m [iec60364-5-52, annex G, remembered].
var resistivity = [2]float64{Copper: 0.0225, Aluminium: 0.036}

// Resistivity gives the resistivity of a warm conductor, ohm mm2/m.
func Resistivity(m Metal) float64 { return resistivity[m] }

// CableDrop gives the voltage lost, V, on the way out and back along a direct-current cable: current, A;
// length of the way, m; cross-section of one conductor, mm2.
func CableDrop(current, length, area float64, m Metal) float64 {
	return 2 * length * resistivity[m] / area * current
}
