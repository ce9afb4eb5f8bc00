package reuse

// A RootZone is the soil that roots reach, as FAO-56 has it: volumes of water to volume of soil.
type RootZone struct {
	FieldCapacity float64 // what drained soil holds
	WiltingPoint  float64 // what roots can no longer take
	Depth         float64 // m that roots reach
	Depletion     float64 // p: share of the total that is taken without stress
}

// Total gives TAW, the water that roots can take from full, mm.
func (z RootZone) Total() float64 {
	return 1000 * (z.FieldCapacity - z.WiltingPoint) * z.Depth // fao56 eq. 82
}

// Ready gives RAW, the water that they take without stress, mm.
func (z RootZone) Ready() float64 {
	return z.Depletion * z.Total() // fao56 eq. 83
}

// Stress gives Ks, the share of the full evaporation that dry soil allows, 0 to 1, at a depletion of the
// root zone in mm: 1 until the ready water is gone, 0 at the wilting point and beyond.
func (z RootZone) Stress(depletion float64) float64 {
	return stress(depletion/z.Total(), z.Depletion) // fao56 eq. 84
}

// stress is Ks from the depletion as a share of the total, and p.
func stress(depleted, p float64) float64 {
	switch {
	case depleted <= p:
		return 1
	case depleted >= 1:
		return 0
	}
	return (1 - depleted) / (1 - p)
}

// Adjusted gives p for a day's evaporation of the crop other than 5 mm, held to 0.1 to 0.8 as the
// table's note does.
func Adjusted(p, evaporation float64) float64 {
	return min(0.8, max(0.1, p+0.04*(5-evaporation))) // fao56 table 22, note
}
