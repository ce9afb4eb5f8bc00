package glass_test

import (
	"fmt"

	"suffice/glass"
	"suffice/quantity"
)

// A southern window under an overhang, at noon in December and in June at 40 N.
func ExampleShade() {
	window := glass.Shade{Width: 3, Height: 2, Overhang: glass.Overhang{Depth: 1, Gap: 0.5, Left: 1, Right: 1}}
	for _, declination := range []quantity.Degrees{-23.44, 23.44} {
		altitude, azimuth := glass.SunAt(40, declination, 12)
		fmt.Printf("%.0f deg high: %.0f %% in the sun\n", float64(altitude), 100*window.Sunlit(glass.RayTo(altitude, azimuth, 180)))
	}
	// Output:
	// 27 deg high: 100 % in the sun
	// 73 deg high: 0 % in the sun
}
