package soil

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// A Texture is a soil by the size of its grains, with the least and the most water it holds.
type Texture struct {
	Name                   string
	FieldCapacity, Wilting [2]float64 // m3/m3
}

// textures is fao56 table 19, from memory. Silt is left out: the middles of its two columns lie
// closer together than its column of available water says.
var textures = [...]Texture{
	{"sand", [2]float64{0.07, 0.17}, [2]float64{0.02, 0.07}},
	{"loamy sand", [2]float64{0.11, 0.19}, [2]float64{0.03, 0.10}},
	{"sandy loam", [2]float64{0.18, 0.28}, [2]float64{0.06, 0.16}},
	{"loam", [2]float64{0.20, 0.30}, [2]float64{0.07, 0.17}},
	{"silt loam", [2]float64{0.22, 0.36}, [2]float64{0.09, 0.21}},
	{"silty clay loam", [2]float64{0.30, 0.37}, [2]float64{0.17, 0.24}},
	{"silty clay", [2]float64{0.30, 0.42}, [2]float64{0.17, 0.29}},
	{"clay", [2]float64{0.32, 0.40}, [2]float64{0.20, 0.24}},
}

// Textures lists the soils, the coarsest first.
func Textures() []Texture { return slices.Clone(textures[:]) }

// Middle gives the water of a soil in the middle of its ranges, to a thousandth.
func (t Texture) Middle() Water {
	middle := func(ends [2]float64) float64 { return math.Round(500*(ends[0]+ends[1])) / 1000 }
	return Water{FieldCapacity: middle(t.FieldCapacity), Wilting: middle(t.Wilting)}
}

// WaterOf gives the water of a soil of that texture, in the middle of its ranges.
func WaterOf(name string) (Water, error) {
	var known []string
	for _, t := range textures {
		if t.Name == name {
			return t.Middle(), nil
		}
		known = append(known, t.Name)
	}
	return Water{}, fmt.Errorf("soil: no texture %q: known are %s", name, strings.Join(known, ", "))
}
