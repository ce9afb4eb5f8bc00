// Package draw makes pictures: of how a record was lived, of flows, of ground. Each picture
// carries a title, its unit, a sentence worked out from its figures, and a table of the same data.
//
// Checked against: the tables themselves (every mark is a row), round ticks worked by hand, and flows that
// balance at every node.
//
// Left out: pictures that answer to a pointer (a page may add that), and turned labels.
package draw

import (
	_ "embed"

	"suffice/draw/canvas"
)

// A Picture is a drawing with everything that lets one do without seeing it.
type Picture = canvas.Picture

//go:embed english.json
var english []byte

// English gives the catalogue of what pictures say.
func English() (canvas.Sentences, error) { return canvas.ReadSentences(english) }
