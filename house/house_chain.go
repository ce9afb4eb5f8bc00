package house

import (
	"suffice/garden"
	"suffice/people"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// DrainParts is the way of used water, prepared: drains, planter, flush well, septic tank, drain trench. Parts that
// are nil are passed by; what leaves the last of them is the sewer's.
type DrainParts struct {
	Grey    reuse.Grey // feeds nothing where there is no planter
	Ill     []people.Dates
	Harsh   []people.Dates // bleach, dye or the like in the washing water
	Planter *PlanterParts
	Well    *reuse.Well
	Toilet  waste.Load // what a person's toilet sends down in a day
	Rain    float64    // g/L of salt in the water of the taps
	Septic  *waste.SepticTank
	Empty   float64 // share of the septic tank that sludge and scum may take up before it is emptied
	Trench  *waste.Trench
	Age     float64         // years of the trees on the trench on the first day
	Told    waste.House     // what rules for tank and field ask of the house
	Seeps   float64         // s/mm of a percolation test, 0 for none
	Spacing []waste.Setback // what the file tells of distances
	Rules   []waste.Setback // the distances to keep; empty: the built-in tables
}

// PlanterParts is the bed that washing water feeds.
type PlanterParts struct {
	Name    string
	Bed     *reuse.Bed
	Stands  Stand
	Plot    *garden.Plot         // vegetables by season; nil where only perennial plants stand
	Plants  reuse.Crop           // the perennial plants, where Plot is nil
	Feels   reuse.Tolerance      // of perennial plants
	Names   []string             // of what grows in it
	Rinse   quantity.Millimetres // of clean water poured on the soil against salt, 0 for never
	Every   int                  // days from one rinse to the next
	Bedding reuse.Bedding
}

// A Stand is where a bed is.
type Stand struct {
	Indoors bool    // under glass: no rain, its own air
	Room    int     // index of the computed room that it stands in; -1: the air is House.Indoors
	Light   float64 // share of the light outdoors on the level that reaches the plants
	Damp    float64 // percent of humidity where no room is computed
}

// GardenParts is the beds that feed the house, small stock and scraps.
type GardenParts struct {
	Beds    []GardenBed
	Stock   garden.Stock
	Scraps  bool // the kitchen's scraps, residues of the beds and manure ripen on a heap for the beds
	Kitchen garden.Kitchen
	Above   float64 // usable share of the tanks at and above which beds are watered; 0: always
}

// A GardenBed is a bed and how it is watered.
type GardenBed struct {
	Plot    garden.Plot
	Stands  Stand
	Watered bool
	Clock   int             // hour of the day at which people look whether it is dry
	Organic float64         // g of nitrogen bound in the soil on the first day
	Mineral float64         // g that roots can take
	Hand    bool            // flowers are pollinated by hand where insects do not come
	Lawn    bool            // it is grass, and gets no compost
	Flow    quantity.Litres // the most that its sprinkler gives in an hour; 0: all at once
}
