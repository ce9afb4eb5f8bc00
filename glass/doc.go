// Package glass says how much light panes of glass let through, throw back and take up, what
// of that becomes heat inside, how much heat a window loses, and how much of a window the sun and
// the sky reach past an overhang and fins.
//
// Checked against: handbook tables of plain covers by angle, the worked example of one pane,
// the published optics and heat of the standard fabric suite's windows, tabled windows of two
// and three panes, and view factors of rectangles in closed form.
//
// Left out: thin films by their layers (a coating is three coefficients, and its angles are those of bare glass: At
// says how), colours of light (one index, one extinction: the whole of sunlight), dirt (multiply), polarisation of the
// sky, blinds and curtains between the panes, boards around sloping windows, and light that an overhang's
// underside throws on.
package glass
