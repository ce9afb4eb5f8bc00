// Package warmth is the rooms of a house: how warm they are from hour to hour, what heat
// they would need to be held at a temperature, and through which walls it goes.
//
// A room is its air, its inner faces, which see each other, and the layers of its walls in nodes (package
// fabric). All of that conducts in proportion to differences of temperature, so that it is worked once
// into modes that decay each at its own pace. What changes with the hour (vents, shutters, doors, fans, machines
// that hold a temperature) is joined to the modes at the end of each hour, implicitly: however strong a
// draught, nothing swings.
//
// Left out: temperatures within a room (its air is mixed), coefficients of convection that follow the
// difference of temperature, light that falls through a window into another room than its own, and
// moisture in the walls.
package warmth
