package material_test

import (
	"fmt"

	"suffice/material"
)

func ExampleNamed() {
	m, _ := material.Named("Straw-bale")
	fmt.Printf("%s: %g W/mK, %s\n", m.Name, float64(m.Conductivity), m.Source)
	_, err := material.Named("strawbail")
	fmt.Println(err)
	// Output:
	// straw bale: 0.063 W/mK, straw-review: in use, 70 to 150 kg/m3
	// no material is called "strawbail": the nearest name is "straw bale"; or give conductivity, density and specific heat of your own
}
