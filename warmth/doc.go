// Package warmth is the rooms of a house: how warm they are from hour to hour, what heat
// they would need to be held at a temperature, and through which walls it goes.
//
// A room is its air, its inner faces, which see each other, and the layers of its walls in nodes (package
// fabric). All of that conducts in proportion to differences of temperature, so that it is worked once
// into modes that decay each at its own pace. The few that show are lived; the others follow at once, so that steady heat stays exact
// and the balance closes. What changes with the hour (vents, shutters, doors, fans, machines
// that hold a temperature) is joined to the modes at the end of each hour, implicitly: however strong a
// draught, nothing swings.
//
// Checked against: 25 cases of the fabric suite of ASHRAE Standard 140-2020 with its weather, loads, peaks and free temperatures, of which 2 of
// 70 figures lie outside the range of its six programs, by 2.3 and 3.9 % of the range's middle; the conductance of
// its first edition's case 600; ISO 13370's year of a slab; the exact cooling of one store. Held by laws: heat and water balances, machines that hold, twins,
// draughts, the yearly start, few modes beside all of them.
//
// Left out: temperatures within a room (its air is mixed); convection inside that follows the hour's difference of temperature (each
// face has one coefficient, which may be why two peaks come out low); what heat by machines does within the hour (in
// steps of ten minutes case 600 took 1 % more, with earlier films); light that falls through a window into another
// room than its own; faces of one plane that do not see each other; moisture held by walls and what settled drying again; the latent heat
// of what settles; wind pressure between rooms; damp on faces that are drawn in a section (they follow the earth); a house's two ends, where a
// section of earth goes on as if it were longer.
package warmth
