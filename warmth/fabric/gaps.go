package fabric

import (
	"fmt"

	"suffice/material"
	"suffice/quantity"
)

// A Direction is the way the heat flows.
type Direction int

// The directions of iso6946. Level serves within 30 deg of it.
const (
	Level Direction = iota
	Up
	Down
)

// stillAir is the resistance of an air layer that nothing ventilates, between matt surfaces
// (emissivity 0.9) [iso6946 table of air layers, remembered]: mm, then m2K/W level, up, down.
var stillAir = [...][4]float64{
	{0, 0, 0, 0}, {5, .11, .11, .11}, {7, .13, .13, .13}, {10, .15, .15, .15}, {15, .17, .16, .17},
	{25, .18, .16, .19}, {50, .18, .16, .21}, {100, .18, .16, .22}, {300, .18, .16, .23},
}

// AirLayer gives an air layer that nothing ventilates, up to 300 mm thick: straight between the
// rows of the table (iso6946).
func AirLayer(thickness quantity.Millimetres, heat Direction) (Layer, error) {
	mm, last := float64(thickness), stillAir[len(stillAir)-1][0]
	if !(mm > 0 && mm <= last) {
		return Layer{}, fmt.Errorf("an air layer of %g mm is not in the table: more than 0, at most %g mm; a wider one is a room", mm, last)
	}
	i := 1
	for stillAir[i][0] < mm {
		i++
	}
	a, b := stillAir[i-1], stillAir[i]
	column := 1 + int(heat)
	return Layer{Name: "air", Gap: material.Resistance(a[column] + (b[column]-a[column])*(mm-a[0])/(b[0]-a[0]))}, nil
}

// Even gives the element with each bridged layer made even: its heat stored is mixed by area, and
// its conductivity is such that the whole resistance is the one of iso6946, the mean of both
// limits. Swings and networks are those of the even element.
func (e Element) Even() Element {
	var bridged float64
	for _, l := range e.Layers {
		if l.Bridge.Share > 0 {
			bridged += float64(l.Resistance())
		}
	}
	if bridged == 0 {
		return e
	}
	b := e.Bounds()
	stretch := 1 + float64(b.Mean()-b.Lower)/bridged
	even := Element{Inside: e.Inside, Outside: e.Outside, Layers: make([]Layer, len(e.Layers))}
	for i, l := range e.Layers {
		even.Layers[i] = l
		if l.Bridge.Share > 0 {
			even.Layers[i] = l.even(stretch)
		}
	}
	return even
}

// even mixes the bridge into the layer and stretches its resistance.
func (l Layer) even(stretch float64) Layer {
	f := l.Bridge.Share
	mixed := Layer{Name: l.Name, Thickness: l.Thickness, Conductivity: material.Conductivity(l.mixed() / stretch)}
	mixed.Density = material.Density((1-f)*float64(l.Density) + f*float64(l.Bridge.Density))
	if held := l.Areal(); held > 0 {
		mixed.Capacity = material.Capacity(held / (float64(l.Thickness) * float64(mixed.Density)))
	}
	return mixed
}
