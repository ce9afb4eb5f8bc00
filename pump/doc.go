// Package pump lifts water: head through a pipe, power, energy per kilolitre, and
// what gravity alone moves.
//
// Checked against: points of the Moody chart, a textbook's worked example of head and
// power in a steel pipe, Poiseuille's law, two explicit friction formulas within the
// accuracy their authors claim, and tables of water's density and viscosity.
//
// Left out: suction lift and cavitation (a pump above the water must be checked with
// its maker's curve), the pump's own curve (flow and efficiency are given, not found),
// pressure vessels, surges when a valve shuts, air in the pipe, and change of bore.
package pump
