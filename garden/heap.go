package garden

const (
	turns     = 1.0 / 90 // share of the heap that a day turns to compost (common practice, no source: three months in the warm season)
	ripeMass  = 0.4      // share of the turned mass that is left (common practice, no source)
	ripeKeeps = 0.7      // share of the nitrogen that stays, of 0.5 to 0.8 that are told (common practice, no source)

	scrapsPerYear  = 79.0 // kg a person and year, wasted in households (unep-2024, from memory)
	scrapsNitrogen = 6.0  // g/kg fresh (common practice, no source)

	wasteHolds = 0.74 // kg a person and day, mean of the world (world-bank-2018, from memory)
	dryShare   = 0.38 // of it: paper, plastic, glass, metal (world-bank-2018, from memory)
	otherShare = 0.18 // of it: what neither rots nor is taken back (world-bank-2018, from memory)
)

// Scraps is what a kitchen throws out in a day.
type Scraps struct{ Kitchen, Nitrogen float64 } // kg, g

// KitchenScraps gives the scraps of so many people in a day.
func KitchenScraps(people float64) Scraps {
	kg := people * scrapsPerYear / daysPerYear
	return Scraps{Kitchen: kg, Nitrogen: kg * scrapsNitrogen}
}

// Rubbish is what leaves the house in a day, kg: by weight, as a household of the world's mean makes it.
type Rubbish struct {
	Recycled float64 // paper, plastic, glass and metal, if somebody takes them
	Leaves   float64 // the rest
}

// HouseRubbish gives the rubbish of so many people, whose scraps go to the heap.
func HouseRubbish(people float64) Rubbish {
	return Rubbish{Recycled: people * wasteHolds * dryShare, Leaves: people * wasteHolds * otherShare}
}

// A Heap is the compost: its state.
type Heap struct {
	Raw      float64 // kg
	Nitrogen float64 // g in it
}

// A HeapIn is what a day brings to the heap: kitchen scraps, bed residues, manure.
type HeapIn struct {
	Mass, Nitrogen float64 // kg, g
}

// A HeapOut is what a day took from it.
type HeapOut struct {
	Ripe, RipeN float64 // kg, g: for the beds
	Gone, ToAir float64 // kg of water and carbon dioxide; g of nitrogen, as ammonia mostly
}

// Day turns a part of the heap. Wetness, warmth and turning with the fork are left out.
//
// Raw before + Mass = after + Ripe + Gone; Nitrogen before + Nitrogen = after + RipeN + ToAir.
func (h *Heap) Day(in *HeapIn, out *HeapOut) {
	h.Raw += in.Mass
	h.Nitrogen += in.Nitrogen
	mass, nitrogen := h.Raw*turns, h.Nitrogen*turns
	out.Ripe, out.RipeN = mass*ripeMass, nitrogen*ripeKeeps
	out.Gone, out.ToAir = mass-out.Ripe, nitrogen-out.RipeN
	h.Raw -= mass
	h.Nitrogen -= nitrogen
}
