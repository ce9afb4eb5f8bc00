// Package examples holds the house files that come with the program.
//
// Checked against: nothing outside; the houses and their people are invented, their
// sizes are plain reasoning written beside them, and a test of package house reads
// and composes every file.
//
// Left out: the four houses of the folder four, which belong to docs/expected.md.
package examples

import _ "embed"

// Demo is the demo house: water, power, hot water and gas for a family of four, with
// rooms, planter, septic tank and garden described.
//
//go:embed demo.yaml
var Demo []byte

// RoofAndTank is the least house: one roof, one tank, and people who draw from it.
//
//go:embed roof-and-tank.yaml
var RoofAndTank []byte

// Southern is a house of the southern hemisphere: its panels look north. It names records
// that stand in the repository, beside the file.
//
//go:embed southern.yaml
var Southern []byte
