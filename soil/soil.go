// Package soil gives what the ground does with warmth: how well it leads it, how
// much it holds, how far a yearly or daily swing reaches, by kind and by wetness.
//
// Checked against: the penetration depths that go with ISO 13370's three kinds of
// ground, the ranges of EN 17522 after VDI 4640-1, and the conductivities of pure
// sand and pure clay at four wetnesses in Farouki (1982).
//
// Left out: heat carried by moving water and by vapour, and layers. Ground water
// that flows takes more heat than any of these figures says; vapour moves some
// warmth in dry, hot earth. Peat, salt and clay that cracks are not here either.
package soil

import (
	"fmt"
	"math"
	"strings"

	"suffice/quantity"
)

// Year is one year in the seconds that ISO 13370 counts, 3.15e7.
const Year = 3.15e7

// Ground is earth of one kind at one wetness.
type Ground struct {
	Name         string
	Conductivity float64 // W/mK
	Capacity     float64 // J/m3K: density times specific heat, with the water in it
	Source       string  // "key: place"
}

// Diffusivity gives how fast temperature evens out, m2/s: λ/(ρc).
func (g Ground) Diffusivity() float64 { return g.Conductivity / g.Capacity }

// DiffusivityPerDay gives the same in m2/d, as formulas with days want it.
func (g Ground) DiffusivityPerDay() float64 { return g.Diffusivity() * 86400 }

// Penetration gives the depth at which a swing of that period, in seconds, has
// fallen to 1/e (iso13370: δ = √(τ λ/(π ρc)), printed there with Year for τ).
func (g Ground) Penetration(period float64) quantity.Metres {
	return quantity.Metres(math.Sqrt(period * g.Diffusivity() / math.Pi))
}

// Kinds lists the grounds that sources name, the three of ISO 13370 first. Where
// the ground is not known, that standard takes sand or gravel.
func Kinds() []Ground {
	const iso, vdi = "iso13370: table 7", "en17522: table after VDI 4640-1"
	return []Ground{
		{"clay or silt", 1.5, 3.0e6, iso},
		{"sand or gravel", 2.0, 2.0e6, iso},
		{"rock", 3.5, 2.0e6, iso},
		{"dry clay", 0.5, 1.55e6, vdi},
		{"wet clay", 1.8, 2.4e6, vdi},
		{"dry sand", 0.4, 1.45e6, vdi},
		{"moist sand", 1.4, 1.9e6, vdi},
		{"wet sand", 2.4, 2.5e6, vdi},
	}
}

// Named gives the ground of Kinds with that name.
func Named(name string) (Ground, error) {
	var names []string
	for _, g := range Kinds() {
		if g.Name == strings.TrimSpace(name) {
			return g, nil
		}
		names = append(names, g.Name)
	}
	return Ground{}, fmt.Errorf("ground %q is not known: it is one of %s", name, strings.Join(names, ", "))
}
