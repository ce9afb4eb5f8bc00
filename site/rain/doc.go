// Package rain tells what a record of rain means for a roof: wet and dry spells, storms,
// and what gutters and downpipes carry in the storm they are built for.
//
// Checked against: the gutter and downpipe formulas of EN 12056-3 and the table of Approved
// Document H3 that follows from them, and yearly sums and longest dry runs counted apart
// from a record (published_test.go). The capacity of gutters of other shapes rests on the
// law of a free outfall, which gives the standard's own formulas back to 1 % (laws_test.go).
//
// Left out: intensity-duration-frequency curves (take the design intensity from the local
// weather service: hourly sums hide the minutes that overtop a gutter), gutters laid to a
// fall, corners near the outlet (suppliers take 15 % off), valley and parapet gutters, siphonic drainage.
package rain
