// Package vent gives the air that a house changes with the outside: through open
// vents by warmth and wind, through its leaks, and what people breathe into it meanwhile.
//
// Checked against: the stack equations of the ASHRAE handbook and of CIBSE AM10 and BS 5925 with
// cases worked by hand, the handbook's equation for a leaky house worked by hand, and the
// 700 ppm over outside that 7.5 L/s a person leave.
//
// Left out: more than two openings at once, gusts (which air a room even where the mean
// wind does nothing), insect screens (they halve an opening and more: give the free area), the
// momentum of entering air, and how the air of a room mixes. Coefficients of wind pressure
// differ by a factor of two between books.
package vent
