// Package gas is bottled gas: what a kilogram holds, how fast a bottle can give
// it on a cold day, and how the bottles of a house empty and come back.
//
// Checked against: a printed table of the most that a 100 lb propane bottle gives
// at five temperatures and ten fillings (rms 2 %, worst 7 %), a printed chart of
// propane's vapour pressure, the boiling points of propane and butane, and the heat
// in bottles of 9 and 45 kg.
//
// Left out: the cooling of the liquid while much is drawn in a short time (the rate is
// the one that can go on; for minutes a full bottle gives several times as much), the
// pressure the regulator needs above one atmosphere (butane fails some 5 to 10 K above
// its boiling point already, common practice, no source), butane's isomers, sun on the
// bottle, leaks, and pilot flames.
package gas
