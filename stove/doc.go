// Package stove is a wood stove: what a kilogram of wood holds by its moisture, when
// people light it and how much they lay on, what of it warms the room, what goes up
// the flue, and what the air costs that the fire draws.
//
// Checked against: heating values of logs of 15 species at 15 and 30 % of water, and of wood at
// seven moistures from 15 to 60 %, printed by others; the values for 20, 30 and 40 % of a stove's manual.
//
// Left out: the hours before iron and stone are warm and after the fire is out (an hour's
// wood gives its heat in that hour, where a stove of a ton of brick spreads it over half a day); the
// draught of the cold flue; kindling; smoke that wet wood makes beside heat; air drawn by the fire
// neither dries the room nor makes it fresher here, though it does both; how much wood is in the shed.
package stove
