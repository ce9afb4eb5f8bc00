package house

import "suffice/quantity"

// What stands in this file is described and checked, and reported as "described,
// not computed yet".

// A Planter is the bed that cleans used washing water.
type Planter struct {
	Area      quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.2 m2" most:"500 m2" example:"6 m2" says:"planted surface"`
	Depth     *quantity.Metres      `key:"depth" unit:"m" least:"0.2 m" most:"3 m" example:"0.9 m" says:"soil and gravel together"`
	Plants    []string              `key:"plants" most:"16" example:"[banana, mint]" says:"what grows in it"`
	FlushWell *quantity.Litres      `key:"flush_well" unit:"L" least:"5 L" most:"20 kL" example:"200 L" says:"the well behind it, from which the toilet flushes"`
	Notes     string                `key:"notes" example:"inside, behind the glass" says:"anything else"`
}

// A Septic is the tank and the trench behind it.
type Septic struct {
	Holds  quantity.Litres  `key:"holds" needs:"yes" unit:"L" least:"200 L" most:"200 kL" example:"3 kL" says:"below its outlet"`
	Trench *quantity.Metres `key:"trench" unit:"m" least:"0.5 m" most:"1000 m" example:"18 m" says:"length of the drain"`
	Width  *quantity.Metres `key:"width" unit:"m" least:"0.1 m" most:"5 m" example:"0.6 m" says:"width of the drain"`
	Notes  string           `key:"notes" example:"willows along the drain" says:"anything else"`
}

// A Garden is the beds that feed the house.
type Garden struct {
	Beds  []Bed  `key:"beds" needs:"yes" most:"16" says:"the beds"`
	Notes string `key:"notes" example:"hens in the orchard" says:"anything else"`
}

// A Bed is one bed.
type Bed struct {
	Name  string                `key:"name" needs:"yes" example:"terrace bed" says:"which one"`
	Area  quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.1 m2" most:"100000 m2" example:"20 m2" says:"planted surface"`
	Under string                `key:"under" default:"sky" source:"an outdoor bed" choices:"sky|glass" says:"what is above it"`
	Crops []string              `key:"crops" most:"16" example:"[tomato, chard]" says:"what grows in it"`
}
