// Package waste follows water from the toilet to the soil: septic tank, drain trench, the
// trees on it, the distances around both.
//
// Checked against: published tank sizes, percolation and drain-area tables and rules, a textbook's
// example, and slips of public pages that must not be repeated (published_test.go); the balance of
// every litre and every gram of salt, BOD and nitrogen, and what more people, a bigger trench and a
// leafless winter may never do (laws_test.go); eight cases said before they were run
// (docs/expected-chain.md).
//
// The well at the end of a planter is a basin for flushing. It is no groundwater well, and no
// distance to a well is asked of it.
//
// The main figures that nobody has published in this form are assumed and say so: how fast a soil
// clogs (Soil.Clogs), which share of their thirst trees take from the gravel (Grove.Reach), how a
// crown widens with age.
//
// Left out: rising groundwater and soil saturated from outside; water that spreads unevenly along the
// trench; recovery of a clogged soil at rest; plants that take less as the cover dries (they drink at
// their full rate until it is dry, then only trees go on, from the gravel); snow; heat and digestion by
// temperature; rain's own salt and nitrogen; loss of nitrogen as gas. Gases are a caution, not a figure.
package waste
