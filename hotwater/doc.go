// Package hotwater is the solar collector, the store of two layers and the backup
// that carries on when the sun does not.
//
// Checked against: the efficiency formula of ISO 9806; a fine-step Runge-Kutta
// integration of the same two layers (twin); the monthly X-Y correlation of Klein,
// Beckman and Duffie (1976), whose worked example is reproduced first; heats and
// standing losses worked by hand; measured incidence modifiers' formula; the storage and
// outlet temperatures of HSG274 part 2.
//
// One hour is solved in closed form: light, draw, room and cold water are constant
// within it, each layer is fully mixed, and the layers are solved one after the other
// because water only moves from the lower to the upper. The exponential of each layer is
// replaced by 1/(1+x+x2/2+x3/6+x4/24), which is positive and falling for any step, and
// whose mean over the hour is used for every flow: so energy balances to rounding.
//
// Left out: light that changes within the hour (the pump runs the whole hour or not at
// all); heat passing from the upper layer to the lower at rest (1 to 2 W/K for 300 L,
// as much as a good insulation loses; common practice, no source); the thermostat's dead
// band; the heater's least flow; pipes of the solar loop and of the house (5 to 20 % of
// the solar heat; put them into the collector's a1 and the store's loss); wind on the
// collector; modifiers of tubes that differ along and across; the fluid's own properties.
package hotwater
