// Package rain tells what a record of rain means for a roof: wet and dry spells, the
// storm a gutter is built for, and what gutters and downpipes carry.
//
// Checked against: see published_test.go.
//
// Left out: intensity-duration-frequency curves (take the design intensity from the local
// weather service), valley and parapet gutters, siphonic drainage.
package rain
