// Package sun says where the sun stands and how much of its light falls on a plane.
//
// Checked against: the worked example of the Solar Position Algorithm report (position
// within 0.01 deg, rise and set within 30 s), almanac times, two independent programs'
// tables (testdata/twin), the tables and examples of FAO-56 chapter 3, handbook examples
// of light on a slope, the 2017 hourly standard's rows, and four measured days.
//
// Left out: the shape of the ground, light that obstacles on the skyline throw back,
// refraction inside a Track (a Track is geometry of the sun's centre: the hour in which
// the sun rises differs by three to four minutes from the almanac), the earth's shadow
// in an eclipse, and every effect on a panel or a pane (angle losses, dirt).
//
// Azimuths count from north, east positive. Times of hours are standard time.
package sun
