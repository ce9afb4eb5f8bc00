package crop

import "suffice/quantity"

// A Tolerance is how a yield answers to salt: untouched up to Threshold, then down by
// Slope for each dS/m of the saturated extract of the soil (maas-1990).
type Tolerance struct {
	Threshold float64 // dS/m
	Slope     float64 // % per dS/m
	From
}

// Relative gives the share of the yield left at a salinity of the soil's saturated extract,
// ECe in dS/m, 0 to 1: Yr = 100 − b (ECe − a) (fao-salt, annex 1). It ends at 0.
func (t Tolerance) Relative(ece float64) float64 {
	return min(1, max(0, 1-t.Slope/100*(ece-t.Threshold)))
}

// RelativeYield gives the same for a crop.
func (c *Crop) RelativeYield(ece float64) float64 { return c.Salt.Relative(ece) }

// SaltStress gives the factor by which salt cuts what a plant gives off, 0 to 1:
// Ks = 1 − b/(100 Ky) (ECe − t) (fao56 eq. 89), meant for water above RAW's depletion.
func (c *Crop) SaltStress(ece float64) float64 {
	return min(1, max(0, 1-c.Salt.Slope/(100*c.Ky.Value)*(ece-c.Salt.Threshold)))
}

// WaterYield gives the share of the yield left when a plant gave off only a share of what it would have,
// both 0 to 1: Ya/Ym = 1 − Ky (1 − ETa/ETm) (fao33). It ends at 0.
func (c *Crop) WaterYield(share float64) float64 {
	return min(1, max(0, 1-c.Ky.Value*(1-share)))
}

// LeachingShare gives the share of the watering that must drain to hold the soil at ece, both waters in dS/m:
// LR = ECw/(5 ECe − ECw) (fao29 eq. 9). Above 1 the water is too salty for that aim.
func LeachingShare(water, ece float64) float64 { return water / (5*ece - water) }

// Reaches gives the depth that a crop's roots use in soil of that depth.
func (c *Crop) Reaches(soil quantity.Metres) quantity.Metres {
	return min(soil, quantity.Metres(c.Roots.High))
}
