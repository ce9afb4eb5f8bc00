// Package canvas is one sheet to draw on and two pens that write it: SVG for pages and
// PDF for paper. What is drawn is kept as a list of shapes, so that a test can measure
// it and both pens show the same.
//
// Lengths are CSS pixels (1/96 inch), x to the right, y downward. Colours are named by
// what they mean (Water, Sun, Short); the page gives them their values for light, dark
// and print by custom properties, and an SVG that stands alone brings its own. No
// meaning hangs on a colour alone: hatches, dashes and words carry it too.
//
// Checked against: the advance widths of the font itself (letters_test.go), the PDF's own
// text read back out of it, and an XML reader fed with random drawings.
//
// Left out: turned and wrapped text, pictures of pixels, gradients, letters beyond Latin in the
// table of widths (they count as wide as an m), kerning (it makes words up to 2 % narrower).
package canvas
