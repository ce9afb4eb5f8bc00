// Package site says where a house stands: place, clock, horizon.
package site

import "suffice/quantity"

// A Place is a point on the earth and the clock people there live by.
type Place struct {
	Name      string
	Latitude  quantity.Degrees // north positive, -90 to 90
	Longitude quantity.Degrees // east positive, -180 to 180
	Altitude  quantity.Metres  // above the sea
	Clock     float64          // hours ahead of UTC, standard time all year
}
