// Package garden lives the beds of food plants: hour by hour their water, day by day
// their growth by warmth, light, water, salt and nitrogen, until the harvest of each
// month stands beside what the household eats. It also says when a crop may be sown,
// what seed may be kept, what chores come with it, and what hens, goats, bees and
// scraps bring to the bed.
//
// Checked against: the drying soil of FAO-56's example 37 lived by the bed's own step, the
// yields of home gardens, and laws: litres, kilograms and grams of nitrogen close, in bed, heap and
// animals; more salt, less water or less light never bears more.
//
// Left out: heat that makes leaf crops bolt and fruit crops drop their flowers (sowing
// windows keep away from it), pests and diseases as numbers (they are chores), nitrogen
// that beans bind, phosphorus and potassium, weeds, bending of the yield by carbon
// dioxide in a closed room, and frost under fleece.
package garden

import (
	"suffice/crop"
	"suffice/quantity"
	"suffice/soil"
)

// MostPlantings is how many plantings a bed can have in a year.
const MostPlantings = 4

// A Planting is a crop put in on the same day each year.
type Planting struct {
	Crop *crop.Crop
	Day  int // of the year, 1 to 365: sown, or set out where the crop is Planted
}

// A Bed is what was built and planned. It does not change while the house lives.
type Bed struct {
	Name      string
	Area      quantity.SquareMetres
	Depth     quantity.Metres // of soil that roots use
	Soil      soil.Water
	Arrives   float64 // share of the watering that reaches the soil, above 0 to 1: 0.9 drip, 0.75 sprinkler (common practice)
	Indoors   bool    // no rain, no insects
	Grass     Grass   // grass stands in it all year; the zero Grass is none
	Plantings []Planting
}

// Grass is a sward that stands all year: fao56 tables 12 and 22, from memory, have 0.95 and 0.40 for turf of cool places,
// 0.85 and 0.50 for turf of warm ones, and roots of 0.5 to 1.0 m. That it grows less when cold is left out.
type Grass struct {
	Kc        float64 // of the reference evapotranspiration
	Depletion float64 // share of the water in reach that it takes with ease, above 0 and below 1
}

// A BedState is what must be remembered of a bed.
type BedState struct {
	Held quantity.Litres // that roots can take: above the wilting point

	Growing  int8    // 1 for the first of Plantings; 0 when bare
	Up       bool    // out of the soil
	Age      int16   // days since sowing
	Sprouted float64 // share of the way to coming up, 0 to 1
	Progress float64 // share of the season's warmth that has passed, 0 to 1
	Grown    float64 // kg that this planting has borne so far
	Standing float64 // kg of it not yet picked

	Organic float64 // g of nitrogen bound in compost and soil, as far as it will be set free
	Mineral float64 // g of nitrogen that roots can take
	Plant   float64 // g of nitrogen in the plants

	coefficient float64 // Kc of the day
	depletion   float64 // p of the day
	wanted      float64 // L, that plants would have given off today
	taken       float64 // L, that they did
}

// A BedIn is what an hour brings.
type BedIn struct {
	Reference quantity.Millimetres // reference evapotranspiration where the bed is; below 0 is dew
	Rain      quantity.Millimetres // 0 under a roof
	Given     quantity.Litres      // from the hose
	Nitrogen  float64              // g in what was given
}

// A BedOut is what an hour did.
type BedOut struct {
	Evaporated quantity.Litres // to the air, through plants and soil
	Drained    quantity.Litres // below the roots
	Sprayed    quantity.Litres // of Given, that never reached the soil
	Leached    float64         // g of nitrogen with Drained
}

// A BedDayIn is what a day was.
type BedDayIn struct {
	Day        int        // of the year, 1 to 366
	Air        crop.Swing // at the plants
	Soil       float64    // degC, mean where the seed lies
	Light      float64    // mol/m2d at the leaves, see crop.DailyLight
	Salt       float64    // dS/m of the soil's saturated extract
	Compost    float64    // g of nitrogen brought as compost or manure
	Pollinated bool       // insects or a hand carried pollen
}

// A BedDayOut is what a day made. The causes are taken in the order of the fields.
type BedDayOut struct {
	Potential      float64 // kg, by warmth alone
	LostToFlowers  float64 // kg, not pollinated
	LostToLight    float64
	LostToWater    float64
	LostToSalt     float64
	LostToNitrogen float64
	Grown          float64 // kg

	Picked    float64 // kg, harvested
	Died      float64 // kg, lost on the plant
	Residue   float64 // kg of leaves and stems cleared
	PickedN   float64 // g of nitrogen in Picked
	ResidueN  float64 // g of nitrogen in what was cleared and in Died
	Freed     float64 // g of nitrogen that went from Organic to Mineral
	Sown      bool
	CameUp    bool
	Event     Event
	EventCrop int8 // the planting that Event is about, 1 for the first; 0 for none
	Missed    int8 // the planting that was due and found the bed still taken, 1 for the first; 0 for none
}

// An Event is what ended a planting.
type Event int8

// The events of a day.
const (
	Nothing  Event = iota
	Finished       // all picked, bed cleared
	Frozen         // frost killed it
	Rotted         // never came up
	GivenUp        // twice its season has passed
)

// String gives the event in words.
func (e Event) String() string {
	return [...]string{"nothing", "finished", "killed by frost", "did not come up", "given up"}[e]
}
