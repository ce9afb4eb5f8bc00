package garden

import "suffice/quantity"

// SprinklerFlow is what a sprinkled lawn can draw, L/h: a kilolitre (common practice, no source). A house on its
// own tank has no lawn to sprinkle, or no water left to drink.
const SprinklerFlow = 1000.0

// Ground is what is watered outside, beyond the beds.
type Ground struct {
	Area    quantity.SquareMetres
	Kc      float64 // 0.95 for cool, 0.85 for warm turf (fao56 table 12, from memory)
	Arrives float64 // share of the watering that reaches the soil, above 0 to 1
}

// Thirst gives the litres that would replace what a spell took, after the rain that fell in it, and the
// rain that was more than it could use.
func (g Ground) Thirst(reference, rain quantity.Millimetres) (given, unused quantity.Litres) {
	missing := (quantity.Millimetres(g.Kc)*reference - rain).On(g.Area)
	if missing < 0 {
		return 0, -missing
	}
	return missing / quantity.Litres(g.Arrives), 0
}

// SprinklerHours gives how long a sprinkler runs for that, at its flow in L/h.
func SprinklerHours(given quantity.Litres, flow float64) float64 { return float64(given) / flow }
