// Package light says what the sky does to a house, hour by hour: how cold the sky is, how warm
// each outside face of a wall or roof would become by itself, what each window lets through
// and takes up, and where in a room the sun lands.
//
// Checked against: the incident and transmitted sun and the temperature of the sky that the
// programs of the standard fabric suite give for Denver, long-wave light measured at four
// stations, the published fixed shares of sun of the suite's room, and an overhang worked by hand.
//
// Left out: light that a house throws on itself (overhangs and fins are black), boards round sloping
// windows, wet or snowed-over faces, hills in the sky's warmth, the way of diffuse light in a room (what a window lets through of sky
// and ground enters evenly, though the ground's goes up and the sky's down), colours of light, blinds and furniture, and how the shutters
// move: the columns are for open windows, and who shuts them multiplies.
package light
