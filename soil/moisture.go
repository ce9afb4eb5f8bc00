package soil

import (
	"math"

	"suffice/quantity"
)

// Figures of the parts that earth is made of.
const (
	grainDensity = 2700.0 // kg/m3, of the mineral grains (johansen; 2600 to 2750 occur)

	quartzConducts = 7.7 // W/mK, at 20 degC (johansen)
	otherConducts  = 2.0 // W/mK, other minerals (johansen; 3.0 in coarse earth with little quartz)
	poorConducts   = 3.0 // W/mK, the same where quartz is at most a fifth and the earth coarse (johansen)
	waterConducts  = 0.57
	iceConducts    = 2.2

	mineralHolds = 1.92e6 // J/m3K of grains (de-vries)
	waterHolds   = 4.18e6 // J/m3K (de-vries)
	iceHolds     = 1.88e6 // J/m3K at 0 degC (de-vries)

	// Fusion is the heat that a cubic metre of liquid water gives off when it freezes, J/m3:
	// 333.5 kJ/kg at 1000 kg/m3 (handbook value, from memory).
	Fusion = 333.5e6
)

// Earth is a mineral soil, apart from its water.
type Earth struct {
	Name       string
	DryDensity float64 // kg/m3, 1000 to 2000
	Quartz     float64 // share of the grains that is quartz, 0 to 1
	Coarse     bool    // sand and gravel; otherwise silt, loam and clay
}

// Loam is the soil to take where nothing is known: half sand, half finer, as in many
// gardens. Density and quartz are the middle of what soil surveys show (common practice, no source).
func Loam() Earth { return Earth{Name: "loam", DryDensity: 1450, Quartz: 0.45} }

// Pores gives the share of the volume that is not grains.
func (e Earth) Pores() float64 { return 1 - e.DryDensity/grainDensity }

// At gives the soil with so much water, m3 in a m3 of soil, none of it frozen
// (johansen as printed in farouki-1981). Water above the pores counts as pores full.
func (e Earth) At(water float64) Ground { return e.mixed(water, waterConducts, false) }

// Frozen gives the soil when all of that water is ice. The water is counted as
// liquid, before it froze; its 9 % growth is left out.
func (e Earth) Frozen(water float64) Ground { return e.mixed(water, iceConducts, true) }

func (e Earth) mixed(water, fluid float64, frozen bool) Ground {
	n := e.Pores()
	Sr := min(max(water/n, 0), 1)
	dry, full := e.dry(), e.grains(1-n)*math.Pow(fluid, n)
	holds := waterHolds
	name := e.Name
	if frozen {
		holds, name = iceHolds, name+", frozen"
	}
	return Ground{
		Name:         name,
		Conductivity: dry + kersten(Sr, e.Coarse, frozen)*(full-dry), // johansen: λ = (λsat − λdry) Ke + λdry
		Capacity:     (1-n)*mineralHolds + Sr*n*holds,                // de-vries: C = Σ xi Ci
		Source:       "johansen: as printed in Farouki (1981), ch. 7; de-vries: capacity",
	}
}

// grains gives the conductivity of the solid raised to its share of the volume.
func (e Earth) grains(share float64) float64 {
	others := otherConducts
	if e.Coarse && e.Quartz <= 0.2 {
		others = poorConducts
	}
	solid := math.Pow(quartzConducts, e.Quartz) * math.Pow(others, 1-e.Quartz)
	return math.Pow(solid, share)
}

// dry gives the conductivity without water, W/mK, good to a fifth (johansen, natural soils).
func (e Earth) dry() float64 {
	density := e.DryDensity
	return (0.135*density + 64.7) / (grainDensity - 0.947*density)
}

// kersten gives how far from dry to full the conductivity stands at a saturation Sr
// (johansen). The source's logarithms end at Sr 0.05 and 0.1, where they are still above or at
// zero; below, the straight line to the origin is ours.
func kersten(Sr float64, coarse, frozen bool) float64 {
	switch {
	case frozen:
		return Sr
	case coarse && Sr > 0.05:
		return 0.7*math.Log10(Sr) + 1
	case coarse:
		return Sr / 0.05 * (0.7*math.Log10(0.05) + 1)
	case Sr > 0.1:
		return math.Log10(Sr) + 1
	}
	return 0
}

// A Water says how much water a soil holds against its weight and against roots, m3/m3.
type Water struct {
	FieldCapacity float64 // left some days after rain
	Wilting       float64 // below it plants take none
}

// LoamWater gives the middle of the ranges for loam (fao56 table 19: 0.20 to 0.30 and 0.07 to 0.17).
func LoamWater() Water { return Water{FieldCapacity: 0.25, Wilting: 0.12} }

// Held gives the depth of water that a layer can give to roots.
func (w Water) Held(layer quantity.Metres) quantity.Millimetres {
	return quantity.Millimetres((w.FieldCapacity - w.Wilting) * float64(layer) * 1000) // fao56 eq. 82
}
