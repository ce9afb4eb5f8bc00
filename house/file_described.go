package house

import "suffice/quantity"

// What stands in this file is described and checked, and reported as "described,
// not computed yet".

// A Room is one room.
type Room struct {
	Name    string                 `key:"name" needs:"yes" example:"south room" says:"which room"`
	Area    quantity.SquareMetres  `key:"area" needs:"yes" unit:"m2" least:"1 m2" most:"2000 m2" example:"32 m2" says:"floor"`
	Height  *quantity.Metres       `key:"height" unit:"m" least:"1.5 m" most:"12 m" example:"2.6 m" says:"from floor to ceiling, in the middle"`
	Walls   []Wall                 `key:"walls" most:"16" says:"walls, roof and floor"`
	Windows []Window               `key:"windows" most:"16" says:"glass"`
	Vents   *quantity.SquareMetres `key:"vents" unit:"m2" least:"0 m2" most:"50 m2" example:"0.6 m2" says:"opening under the roof, for summer nights"`
	Notes   string                 `key:"notes" example:"stove in the corner" says:"anything else"`
}

// A Wall is a wall, a roof or a floor.
type Wall struct {
	Name    string                `key:"name" needs:"yes" example:"back wall" says:"which one"`
	Area    quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.1 m2" most:"5000 m2" example:"24 m2" says:"without its windows"`
	Faces   string                `key:"faces" needs:"yes" example:"earth" says:"air, earth, or the name of another room"`
	Azimuth *quantity.Degrees     `key:"azimuth" unit:"deg" least:"0 deg" most:"360 deg" example:"180 deg" says:"where its outside looks, from north, east positive"`
	Build   string                `key:"build" example:"30 cm rammed earth, 10 cm cork" says:"its layers, in words"`
}

// A Window is glass in a wall or a roof.
type Window struct {
	Name     string                `key:"name" needs:"yes" example:"south glass" says:"which one"`
	Area     quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.05 m2" most:"1000 m2" example:"9 m2" says:"glass and frame together"`
	Azimuth  quantity.Degrees      `key:"azimuth" needs:"yes" unit:"deg" least:"0 deg" most:"360 deg" example:"180 deg" says:"where it looks, from north, east positive"`
	Slope    quantity.Degrees      `key:"slope" default:"90 deg" source:"upright glass" unit:"deg" least:"0 deg" most:"90 deg" example:"90 deg" says:"from level; 90 deg is upright"`
	Panes    int                   `key:"panes" default:"2" source:"common practice, no source" least:"1" most:"4" example:"2" says:"sheets of glass"`
	Overhang *quantity.Metres      `key:"overhang" unit:"m" least:"0 m" most:"10 m" example:"0.8 m" says:"how far a roof stands out above it"`
	Shutters bool                  `key:"shutters" default:"no" source:"none unless the file says so" says:"closed at night in winter"`
}

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
