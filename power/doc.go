// Package power lives a house's electricity hour by hour: light on panels becomes direct
// current, a charge controller brings it to a bus that the battery holds up, and an
// inverter makes the alternating current that the house asks for in order of need. A
// small generator may help the bus.
//
// Checked against: nominal-temperature, string-voltage and loss examples of handbooks and
// codes (panels); the published lifetimes of the two-well battery, 91 and 203 minutes, and
// its closed form against a fine integration; the cycle tables of ASTM E1049 (rainflow);
// the hydrogen formula of the battery-room standard against Faraday's law; a copper
// resistance table (cables). Laws in laws_test.go: energy, floor, charge, cold.
//
// Panels: light lost at grazing angles, cell temperature, dirt, snow, wiring, age.
// Battery: the kinetic two-well model of Manwell & McGowan (1993) in watt-hours.
//
// Left out: wind on the panels (the nominal temperature is for 1 m/s, so windy sites are
// underrated by one to three per cent); the drop of panel efficiency in weak light (two to four per cent below
// 200 W/m2, so dull days come out a little too good); unequal light inside one array; the bus voltage, which
// moves with charge and current (limits in amperes are taken at a fixed voltage); the slow
// loss of capacity with age (ageing says when to replace, the bank keeps its capacity until
// then, so try a design also with 80 % of it); the generator past the inverter (its power
// goes through a charger and the inverter, which overstates its fuel by what those lose);
// peaks inside the hour (loads are means of the hour; starting is checked at the design).
package power
