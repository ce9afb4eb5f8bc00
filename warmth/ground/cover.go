package ground

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// Cover is what lies on the ground. Snow comes over it by itself.
type Cover struct {
	Name   string
	Albedo float64         // share of light thrown back
	Skin   float64         // W/m2K between what meets the air and the soil below it
	Leaves float64         // s/m, resistance of leaves or soil to evaporation when wet
	Roots  quantity.Metres // depth from which water evaporates
	Ready  float64         // share of that water that evaporates unhindered
}

// Grass is a short lawn that nobody waters.
//
// Albedo 0.23 and 70 s/m are the reference lawn's (fao56 eq. 3, 5, 38), roots 1 m and share 0.5 the
// middle of fao56 table 22 for grazed pasture and turf, the skin that of short grass (van-den-hurk table 2).
func Grass() Cover {
	return Cover{Name: "grass", Albedo: 0.23, Skin: 10, Leaves: 70, Roots: 1, Ready: 0.5}
}

// Bare is open soil: darker than grass, nothing between it and the air, drying from a shallow
// layer (fao56 p. 144: 0.10 to 0.15 m, of which a third to a half readily; albedo of moist
// soil 0.14 to 0.18 in common tables, from memory; skin van-den-hurk table 2).
func Bare() Cover {
	return Cover{Name: "bare", Albedo: 0.17, Skin: 15, Leaves: 50, Roots: 0.15, Ready: 0.4}
}

func (c Cover) faults() error {
	var faults []error
	within := func(what string, v, low, high float64, unit string) {
		if !(v >= low && v <= high) {
			faults = append(faults, fmt.Errorf("ground: %s of cover %q: %s is outside %s to %s",
				what, c.Name, quantity.Text(v, unit), quantity.Text(low, unit), quantity.Text(high, unit)))
		}
	}
	within("albedo", c.Albedo, 0, 0.9, "")
	within("skin", c.Skin, 0.1, 1000, "W/m2K")
	within("resistance of leaves (s/m)", c.Leaves, 0, 10000, "")
	within("depth of roots", float64(c.Roots), 0.02, 5, "m")
	within("share of ready water", c.Ready, 0, 0.95, "")
	return errors.Join(faults...)
}

// Snow ages as in douville, its conductivity is yen-1981, both from memory.
const (
	newAlbedo, oldAlbedo    = 0.85, 0.50
	newDensity, oldDensity  = 100.0, 300.0 // kg/m3
	coldFade                = 0.008        // of albedo a day without melting
	meltFade                = 0.24         // 1/d: albedo with melting, and density always
	freshens                = 10.0         // mm of new snow that renew the albedo
	patchy                  = 10.0         // mm at which half the ground is white
	iceConducts, iceDensity = 2.22, 917.0  // W/mK, kg/m3
	snowExponent            = 1.88
	allSnow, allRain        = 0.0, 2.0 // degC, air of the day (usace-snow: half of it snow at 1 degC)
)

// snowfall lays the hour's snow, ages what lies, and gives the rain, mm.
func snowfall(s *ColumnState, in ColumnIn) float64 {
	const day = turn / 86400
	fell := float64(in.Rain) * min(max((allRain-float64(in.Air))/(allRain-allSnow), 0), 1)
	if s.Snow > 0 {
		s.Density = oldDensity + (s.Density-oldDensity)*math.Exp(-meltFade*day)
		if in.Air < 0 {
			s.Albedo = max(s.Albedo-coldFade*day, oldAlbedo)
		} else {
			s.Albedo = oldAlbedo + (s.Albedo-oldAlbedo)*math.Exp(-meltFade*day)
		}
	}
	if fell > 0 {
		if s.Snow == 0 {
			s.Albedo = newAlbedo
		}
		s.Albedo = min(s.Albedo+fell/freshens*(newAlbedo-oldAlbedo), newAlbedo)
		s.Density = (s.Density*s.Snow + newDensity*fell) / (s.Snow + fell)
		s.Snow += fell
	}
	return float64(in.Rain) - fell
}

// white gives the share of the ground under snow.
func (s *ColumnState) white() float64 { return s.Snow / (s.Snow + patchy) }

// unhindered gives the share of full evaporation that the soil's water allows (fao56 eq. 84).
func (c *Column) unhindered(s *ColumnState) float64 {
	return min(s.Store/((1-c.Cover.Ready)*c.room()), 1)
}
