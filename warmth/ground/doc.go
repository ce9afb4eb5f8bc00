// Package ground gives the heat between a house and the earth: floors and basements by
// ISO 13370, undisturbed ground by depth and day, a column of ground that lives
// through a weather record under grass, bare soil or snow, and sections of earth
// and building by finite volumes, whole or as few modes.
//
// Checked against: the table for floors on clay of CIBSE Guide A; cases 1 and 2 of
// ISO 10211; erf and erfc in a half space; the exact heat of a 12 m slab; a worked case of
// Kusuda and Achenbach's equation; and soil temperatures at 50 and 100 cm that 13
// stations measured through a year (docs/soil-temperatures.md).
//
// Left out: moving ground water, which the standard corrects by a factor of up to some
// 1.7 for a fast stream close below the floor; warmth that rain carries into the soil; snow that is
// blown away; the third dimension of sections, so that corners of a house lose more than
// a section says. The periodic coefficients are from memory and no
// printed example was seen; the section of a long floor gives 7 % more for the swing inside
// and 16 % less for the swing outside.
package ground
