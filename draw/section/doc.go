// Package section draws a house cut through from front to back, to scale, as far as its
// house file tells.
//
// Checked against: the lengths in the drawing measured back, noon heights of the sun
// worked by hand, and a handbook's overhang.
//
// Left out: turned rooms, sloping roofs and storeys, since the file does not tell them.
package section
