package reuse

import "math"

// A Tolerance says how salt in the soil lowers a crop's yield, after Maas and Hoffman: full until
// Threshold, then down by Slope for every dS/m. The zero Tolerance feels nothing.
type Tolerance struct {
	Threshold float64 // dS/m of the soil's saturation extract
	Slope     float64 // % of yield for each dS/m beyond
	Response  float64 // Ky: yield lost for evaporation lost; 0 where it is not known, and taken as 1
}

// Yield gives the relative yield, %, at a salinity of the saturation extract, dS/m. A line that
// would go below nothing stands for a crop that dies: 0.
func (t Tolerance) Yield(salinity float64) float64 {
	if salinity <= t.Threshold {
		return 100
	}
	return max(0, 100-t.Slope*(salinity-t.Threshold)) // fao29, after Maas and Grattan
}

// Stress gives Ks by salt, the share of the full evaporation that it allows, 0 to 1.
func (t Tolerance) Stress(salinity float64) float64 {
	if salinity <= t.Threshold {
		return 1
	}
	return max(0, 1-t.Slope*(salinity-t.Threshold)/(100*t.response())) // fao56 eq. 88
}

// response is Ky, 1 where it is not known.
func (t Tolerance) response() float64 {
	if t.Response == 0 {
		return 1
	}
	return t.Response
}

// Leaching gives the share of the water that must pass the roots so that the soil's salinity
// stays at soil dS/m, for water of so many dS/m. Water as salty as five times the soil's cannot
// hold it: false.
func Leaching(water, soil float64) (share float64, can bool) {
	if water >= 5*soil {
		return 1, false
	}
	share = water / (5*soil - water) // fao29 eq. 9
	return min(1, share), share < 1
}

// Ions are what decides over sodium, meq/L.
type Ions struct{ Sodium, Calcium, Magnesium float64 }

// SAR gives the sodium adsorption ratio. Water with sodium and neither calcium nor magnesium has
// no bound: +Inf.
func (i Ions) SAR() float64 {
	if i.Sodium == 0 {
		return 0
	}
	return i.Sodium / math.Sqrt((i.Calcium+i.Magnesium)/2) // fao29 eq. 1
}

// An Infiltration is how water of a conductivity and SAR harms the soil's taking it up.
type Infiltration int

// The degrees of FAO-29, table 1.
const (
	Unrestricted Infiltration = iota
	Moderate
	Severe
)

// String says the degree.
func (i Infiltration) String() string {
	return [...]string{"no restriction", "slight to moderate restriction", "severe restriction"}[i]
}

// infiltration is fao29 table 1: up to this SAR, none above the first dS/m, severe below the second.
var infiltration = [...]struct{ sar, none, severe float64 }{
	{3, 0.7, 0.2}, {6, 1.2, 0.3}, {12, 1.9, 0.5}, {20, 2.9, 1.3}, {40, 5.0, 2.9},
}

// Infiltrates gives how far water of so many dS/m and such a SAR seals the soil. Beyond a SAR of 40 the
// table ends; there it is severe.
func Infiltrates(conductivity, sar float64) Infiltration {
	for _, row := range infiltration {
		if sar > row.sar {
			continue
		}
		switch {
		case conductivity > row.none:
			return Unrestricted
		case conductivity >= row.severe:
			return Moderate
		}
		return Severe
	}
	return Severe
}

// Salinity gives the degree of FAO-29, table 1, for a water's salt alone.
func Salinity(conductivity float64) Infiltration {
	switch {
	case conductivity < 0.7:
		return Unrestricted
	case conductivity <= 3:
		return Moderate
	}
	return Severe
}
