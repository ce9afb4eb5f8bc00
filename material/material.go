// Package material says how well the stuff of a house conducts and stores heat, and
// holds the table of materials.
//
// Checked against: the table itself is other people's numbers, each row with its source
// and how it is known; the depth to which a year's warmth goes into ground is held
// against a printed table.
//
// Left out: ageing of insulation, and conductivity that depends on temperature (about
// 0.4 % per kelvin for mineral wool, iso10456; rooms differ by few kelvin). Moisture is a
// note and, where a coefficient is known, the correction of Wetted.
package material

import (
	"errors"
	"fmt"
	"math"
)

// Conductivity of heat, W/mK. It belongs to a material; Transmittance belongs to a wall.
type Conductivity float64

// Resistance to heat of one square metre, m2K/W.
type Resistance float64

// Transmittance is the heat through one square metre for one kelvin, W/m2K: a U-value, or
// the coefficient of a surface.
type Transmittance float64

// Density is the mass of a cubic metre with its pores, kg/m3.
type Density float64

// Capacity is the specific heat of a kilogram, J/kgK.
type Capacity float64

// Standing says how a row of the table is known.
type Standing string

// The three standings of a row.
const (
	Seen       Standing = "seen"       // the printed number was read
	Remembered Standing = "remembered" // from memory of the source named
	Assumed    Standing = "assumed"    // common practice, no source, or taken over from another row
)

// A Material is what a layer is made of.
type Material struct {
	Name         string
	Conductivity Conductivity // of the state that Note or the source names; else dry enough for use indoors
	Density      Density
	Capacity     Capacity

	// Least and Most are the ends of the published span of conductivity; both 0 where none is known.
	Least, Most Conductivity
	// Wetting is the coefficient f of moisture by volume (iso10456 table 4), for Wetted; 0 where none is known.
	Wetting float64

	Kind     string // earth, masonry, timber ...
	Source   string // "key: place", the key standing in SOURCES.md
	Standing Standing
	Note     string // moisture, or what else the numbers do not say
}

// Limits of what a solid, liquid or still gas can be; wide enough for a diamond and for a vacuum panel.
const (
	mostConductivity = 2500  // W/mK
	mostDensity      = 25000 // kg/m3
	mostCapacity     = 15000 // J/kgK, hydrogen 14300
)

// Faults lists what is wrong with a material, all at once. No mass at all is allowed: it
// then stores nothing.
func (m Material) Faults() error {
	var faults []error
	fault := func(wrong bool, format string, args ...any) {
		if wrong {
			faults = append(faults, fmt.Errorf("material %q: "+format, append([]any{m.Name}, args...)...))
		}
	}
	fault(key(m.Name) == "", "it has no name: give it one")
	fault(!(m.Conductivity > 0 && m.Conductivity <= mostConductivity), "a conductivity of %g W/mK is out of range: more than 0, at most %d W/mK", float64(m.Conductivity), mostConductivity)
	fault(!(m.Density >= 0 && m.Density <= mostDensity), "a density of %g kg/m3 is out of range: 0 to %d kg/m3", float64(m.Density), mostDensity)
	fault(!(m.Capacity >= 0 && m.Capacity <= mostCapacity), "a specific heat of %g J/kgK is out of range: 0 to %d J/kgK", float64(m.Capacity), mostCapacity)
	return errors.Join(faults...)
}

// PerVolume gives the heat that a cubic metre stores for one kelvin, J/m3K.
func (m Material) PerVolume() float64 { return float64(m.Density) * float64(m.Capacity) }

// Diffusivity gives how fast warmth spreads in the material, m2/s; infinite without mass.
func (m Material) Diffusivity() float64 { return float64(m.Conductivity) / m.PerVolume() }

// PenetrationDepth gives the depth, m, at which a swing of the surface with a period in
// seconds has fallen to 1/e (iso13370, iso13786). It is infinite without mass.
func (m Material) PenetrationDepth(period float64) float64 {
	return math.Sqrt(period * m.Diffusivity() / math.Pi) // delta = sqrt(T lambda/(pi rho c))
}

// Wetted gives the conductivity at another moisture, as volume of water per volume, for a
// change of so much (iso10456 eq. 4: the factor is exp(f (psi2 - psi1))). ok is false where
// the material's coefficient is not known; the conductivity is then unchanged.
func (m Material) Wetted(change float64) (c Conductivity, ok bool) {
	if m.Wetting == 0 {
		return m.Conductivity, false
	}
	return m.Conductivity * Conductivity(math.Exp(m.Wetting*change)), true
}
