package reuse

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// A Gravel is the store at the bottom of a bed.
type Gravel struct {
	Depth        quantity.Metres
	Porosity     float64         // share of it that is water when full; 0.35 to 0.40 for pea gravel
	Conductivity float64         // m/s; 2e-3 in the manual's worked bed
	Standing     quantity.Metres // the level that the outlet keeps; what is above it runs to the well
}

// A Soil lies on the gravel. Shares are volumes of water to volume of soil.
type Soil struct {
	Depth                                   quantity.Metres
	FieldCapacity, WiltingPoint, Saturation float64
	Rise                                    quantity.Millimetres // most that the soil, when dry, sucks out of wet gravel in a day
}

// A Planter is a lined bed.
type Planter struct {
	Name          string
	Length, Width quantity.Metres // along the slope, and across
	Slope         float64         // fall of the liner, m/m
	Gravel        Gravel
	Soil          Soil
	Rate          float64 // 1/d at which BOD decays at 20 degC; ReedRate where nothing is known
}

// UsualPlanter is a bed of the given size with 0.3 m of gravel kept two thirds wet under 0.4 m of loam.
// Field capacity and wilting point are a loam's of fao56 table 19, from memory; loam sucks more than 10 mm/d over
// half a metre by what is remembered of tables of capillary rise, sand and clay less; the rest is common practice, no
// source.
func UsualPlanter(length, width quantity.Metres) Planter {
	return Planter{Length: length, Width: width, Slope: 0.01, Rate: ReedRate,
		Gravel: Gravel{Depth: 0.3, Porosity: 0.38, Conductivity: 2e-3, Standing: 0.2},
		Soil:   Soil{Depth: 0.4, FieldCapacity: 0.25, WiltingPoint: 0.12, Saturation: 0.45, Rise: 15}}
}

// A Bed is a planter with what its hour needs worked out; it does not change while the house lives.
type Bed struct {
	Planter
	area     float64 // m2
	holds    float64 // L in the gravel, full
	standing float64 // L in the gravel at the outlet
	runs     float64 // L/h along the slope, by Darcy
	wilting  float64 // L in the soil
	capacity float64
	full     float64 // L in the soil, saturated
	brim     float64 // L in gravel and soil together beyond which it overflows
	airless  float64 // L of free water beyond which roots lack air
	perTotal float64 // 1/L: one over the water that roots can take
	rise     float64 // L/h out of the gravel into soil at the wilting point
}

// Prepare refuses what cannot be built and works out the rest.
func Prepare(p Planter) (*Bed, error) {
	if err := p.faults(); err != nil {
		return nil, err
	}
	b := &Bed{Planter: p, area: float64(p.Length * p.Width)}
	gravel, soil := 1000*b.area*p.Gravel.Porosity, 1000*b.area*float64(p.Soil.Depth)
	b.holds, b.standing = gravel*float64(p.Gravel.Depth), gravel*float64(p.Gravel.Standing)
	b.runs = 3.6e6 * Darcy(p.Gravel.Conductivity, p.Slope, float64(p.Width*p.Gravel.Depth))
	b.wilting, b.capacity, b.full = soil*p.Soil.WiltingPoint, soil*p.Soil.FieldCapacity, soil*p.Soil.Saturation
	b.perTotal = 1 / (b.capacity - b.wilting)
	b.brim = b.holds + b.full
	b.airless = b.holds + (b.full-b.capacity)/2
	b.rise = b.area * float64(p.Soil.Rise) / 24
	return b, nil
}

func (p *Planter) faults() error {
	var faults []error
	say := func(bad bool, format string, args ...any) {
		if bad {
			faults = append(faults, fmt.Errorf("planter %q: "+format, append([]any{p.Name}, args...)...))
		}
	}
	g, s := p.Gravel, p.Soil
	say(!(p.Length > 0 && p.Width > 0 && p.Length*p.Width <= 1e4), "length %g m, width %g m: both more than 0, at most 10000 m2 together", float64(p.Length), float64(p.Width))
	say(!(p.Slope > 0 && p.Slope <= 0.5), "slope %g: more than 0 and at most 0.5 m/m, 0.01 is usual", p.Slope)
	say(!(g.Depth > 0 && g.Depth <= 3 && g.Porosity > 0 && g.Porosity < 1), "gravel %g m deep with porosity %g: more than 0, at most 3 m, porosity below 1", float64(g.Depth), g.Porosity)
	say(!(g.Standing >= 0 && g.Standing < g.Depth), "water stands %g m in gravel of %g m: from 0 to below its depth", float64(g.Standing), float64(g.Depth))
	say(!(g.Conductivity > 0), "gravel conducts %g m/s: more than 0, 0.002 m/s for coarse gravel with roots", g.Conductivity)
	say(!(s.Depth > 0 && s.Depth <= 3), "soil %g m deep: more than 0, at most 3 m", float64(s.Depth))
	say(!(s.WiltingPoint >= 0 && s.WiltingPoint < s.FieldCapacity && s.FieldCapacity < s.Saturation && s.Saturation < 1),
		"wilting point %g, field capacity %g, saturation %g: each above the one before, below 1", s.WiltingPoint, s.FieldCapacity, s.Saturation)
	say(!(s.Rise >= 0), "rise %g mm/d: 0 or more", float64(s.Rise))
	say(!(p.Rate >= 0), "rate %g 1/d: 0 or more", p.Rate)
	return errors.Join(faults...)
}

// A Crop is what stands in the bed, as plain numbers of the day.
type Crop struct {
	Coefficient float64 // Kc: its evaporation over the reference
	Roots       float64 // m deep; deeper than the soil they drink from the gravel
	Depletion   float64 // p: share of the soil's water taken without stress
}

// PlanterState is what a bed remembers.
type PlanterState struct {
	Gravel     Water   // all free water: more than the gravel holds, it stands up into the soil
	Soil       Water   // what the soil holds against its weight, at most at field capacity
	Left       float64 // share of the BOD left after an hour, by the last Day
	Salted     float64 // Ks by salt, by the last Day
	Airless    int     // hours of this day in which roots lacked air
	Wanted     float64 // L that the crop would have evaporated this day
	Evaporated float64 // L that it did
}

// Start gives a bed with its water at the outlet, soil at field capacity, clean, at 20 degC.
func (b *Bed) Start() PlanterState {
	return PlanterState{Gravel: Water{Litres: quantity.Litres(b.standing)}, Soil: Water{Litres: quantity.Litres(b.capacity)},
		Left: hourly(b.Rate, 20), Salted: 1}
}

// PlanterIn is what an hour brings to a bed.
type PlanterIn struct {
	Grey        Water                // into the gravel
	Poured      Water                // onto the soil by hand
	Rain        quantity.Millimetres // onto the bed; 0 under glass
	Evaporation quantity.Millimetres // of reference grass in the hour, where the bed stands: outdoors, or under glass with its own light, air and wind
	Crop        Crop
}

// PlanterOut is what the bed did.
type PlanterOut struct {
	Wanted     quantity.Litres // evaporation without stress
	Evaporated quantity.Litres // its heat is the room's to give
	Short      quantity.Litres // Wanted and not to be had
	Drained    Water           // to the well
	Overflowed Water           // over the rim, neither treated nor caught
	Decayed    float64         // g of BOD
	Rose, Sank quantity.Litres // from gravel to soil, and back
}
