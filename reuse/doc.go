// Package reuse gives the second and third use of water: greywater through a lined
// planter bed into the flush well, with the salt, the organic dirt and the nitrogen it
// carries.
//
// Checked against: example 37 of FAO-56 (soil water day by day), its salinity example, the
// salt tolerances of the US Salinity Laboratory, the sodium example of FAO-29 and that of a
// textbook, the worked reed bed of the UN-HABITAT manual with its width and length, and the
// rate of Reed. Litres, salt, BOD and nitrogen balance over any chain of hours.
//
// Left out: the bed is two mixed stores, gravel and soil, so that water leaves it dirtier
// than from a bed that pushes its water along (which the sizing formula takes); moisture and salt
// differ with depth in a real bed, and free water that stands up into the soil does not wash its salt. Salts that lime up, nitrogen lost to the air, phosphorus,
// germs, and decay in the well are not counted. Heat: the caller makes evaporation from the place's
// own light and air, outdoors or under glass, and takes its heat from the room.
package reuse
