// Package site says where a house stands: place, clock, horizon.
//
// Checked against: the limits of the coordinates themselves; laws_test.go holds the
// horizon to its own points and to the turn of the circle.
//
// Left out: summer time (a Clock is standard time all year), and the earth's flattening:
// latitude is the geodetic one that maps print, and the sun needs no other.
package site

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// A Place is a point on the earth and the clock people there live by.
type Place struct {
	Name      string
	Latitude  quantity.Degrees // north positive, -90 to 90
	Longitude quantity.Degrees // east positive, -180 to 180
	Altitude  quantity.Metres  // above the sea, -430 (the Dead Sea's shore) to 6000
	Clock     float64          // hours ahead of UTC, standard time all year, -12 to 14
}

// Faults gives everything that cannot be true of a place, or nil.
func (p Place) Faults() error {
	return errors.Join(
		outside("latitude", float64(p.Latitude), -90, 90, "deg", "north counts positive, south negative"),
		outside("longitude", float64(p.Longitude), -180, 180, "deg", "east counts positive, west negative"),
		outside("altitude", float64(p.Altitude), -430, 6000, "m", "it is the height above the sea"),
		outside("clock", p.Clock, -12, 14, "h", "it is the hours ahead of UTC in standard time"),
	)
}

// Doubts gives what may be true of a place but is rarely meant, as sentences for a
// person. A record kept in UTC far from Greenwich rightly raises the one about the clock.
func (p Place) Doubts() []string {
	var doubts []string
	// The widest civil clock is China's: 73 E lives by +8, 3.1 hours from its sun.
	if d := p.Clock - float64(p.Longitude)/15; math.Abs(d) > 3.5 {
		doubts = append(doubts, fmt.Sprintf("at longitude %g a clock of %+g h has the sun highest near %s: look at the signs (west is negative)",
			float64(p.Longitude), p.Clock, hoursText(12+d)))
	}
	if p.Latitude == 0 && p.Longitude == 0 {
		doubts = append(doubts, "latitude 0, longitude 0 lies in the sea off Africa: were they left out")
	}
	return doubts
}

// outside says what is wrong with a value that is not between its limits.
func outside(what string, value, low, high float64, unit, remedy string) error {
	if value >= low && value <= high {
		return nil
	}
	return fmt.Errorf("%s %s is not possible: it lies between %s and %s; %s",
		what, quantity.Text(value, unit), quantity.Text(low, unit), quantity.Text(high, unit), remedy)
}

func hoursText(h float64) string {
	minutes := int(math.Round(math.Mod(h+48, 24) * 60))
	return fmt.Sprintf("%02d:%02d", minutes/60%24, minutes%60)
}
