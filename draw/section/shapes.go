package section

import (
	"math"
	"regexp"
	"strconv"

	"suffice/house"
	"suffice/quantity"
)

var layer = regexp.MustCompile(`([0-9]+(?:\.[0-9]+)?) ?(cm|mm|m)\b`)

// Thickness adds the layers that a wall's words tell, such as "30 cm stone, 10 cm cork"; no layer
// told gives false.
func Thickness(build string) (quantity.Metres, bool) {
	sum := 0.0
	for _, found := range layer.FindAllStringSubmatch(build, -1) {
		v, _ := strconv.ParseFloat(found[1], 64) // the expression lets only numbers through
		sum += v * map[string]float64{"cm": 0.01, "mm": 0.001, "m": 1}[found[2]]
	}
	return quantity.Metres(sum), sum > 0
}

// thickness adds a wall's layers, or those of its words.
func thickness(w *house.Wall) (sum quantity.Metres, told bool) {
	for _, l := range w.Layers {
		sum += l.Thickness
	}
	if sum > 0 {
		return sum, true
	}
	return Thickness(w.Build)
}

// The files do not tell the form of a vessel. A tank is drawn as an upright cylinder twice as wide as high, so that a
// roof stands above its inlet; a store of hot water as one twice as high as wide.
const (
	tankForm  = 0.5
	storeForm = 2.0
)

// Cylinder gives width and height of an upright cylinder of a volume, with the height so many times the width.
func Cylinder(volume quantity.Litres, form float64) (width, height quantity.Metres) {
	w := math.Cbrt(float64(volume) / 1000 * 4 / (math.Pi * form))
	return quantity.Metres(w), quantity.Metres(w * form)
}
