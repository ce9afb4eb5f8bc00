package house

import "suffice/quantity"

// A MaterialOf is a material of this house, beside those that the program knows.
type MaterialOf struct {
	Name         string  `key:"name" needs:"yes" example:"clay straw" says:"as the layers call it; a name that the program knows is replaced"`
	Conductivity float64 `key:"conductivity" needs:"yes" unit:"W/mK" least:"0.005 W/mK" most:"500 W/mK" example:"0.12 W/mK" says:"of heat, as damp as it will be"`
	Density      float64 `key:"density" needs:"yes" unit:"kg/m3" least:"0 kg/m3" most:"20000 kg/m3" example:"600 kg/m3" says:"with its pores; 0 kg/m3 stores nothing"`
	Heat         float64 `key:"heat" needs:"yes" unit:"J/kgK" least:"0 J/kgK" most:"5000 J/kgK" example:"1100 J/kgK" says:"specific heat"`
	Source       string  `key:"source" example:"the maker's sheet" says:"where the figures come from"`
}

// A Room is one room.
type Room struct {
	Name         string                 `key:"name" needs:"yes" example:"south room" says:"which room"`
	Area         quantity.SquareMetres  `key:"area" needs:"yes" unit:"m2" least:"1 m2" most:"2000 m2" example:"32 m2" says:"floor"`
	Height       *quantity.Metres       `key:"height" unit:"m" least:"1.5 m" most:"12 m" example:"2.6 m" says:"from floor to ceiling, in the middle"`
	Contents     float64                `key:"contents" default:"10 kJ/m2K" source:"air and furniture, iso52016-1 as remembered" unit:"kJ/m2K" least:"0 kJ/m2K" most:"500 kJ/m2K" example:"10 kJ/m2K" says:"heat that air and furniture take up, for each square metre of floor"`
	Infiltration float64                `key:"infiltration" default:"0.3 /h" source:"a tight house of hand-made walls, common practice, no source" unit:"/h" least:"0 /h" most:"20 /h" example:"0.3 /h" says:"air changes through gaps, with everything shut"`
	LivedIn      bool                   `key:"lived_in" default:"yes" source:"the plainest reading of a room" says:"people stay here: their warmth comes in, and comfort is counted"`
	Walls        []Wall                 `key:"walls" most:"16" says:"walls, roof and floor"`
	Windows      []Window               `key:"windows" most:"16" says:"glass"`
	Openings     []Opening              `key:"openings" most:"8" says:"doors and gaps to other rooms"`
	Vents        *quantity.SquareMetres `key:"vents" unit:"m2" least:"0 m2" most:"50 m2" example:"0.6 m2" says:"opening under the roof, for summer nights"`
	Inlets       *quantity.SquareMetres `key:"inlets" unit:"m2" least:"0 m2" most:"50 m2" example:"0.6 m2" says:"opening low down that feeds the vents; left out, as large as they"`
	Fans         []Fan                  `key:"fans" most:"4" says:"machines that change the air"`
	Heating      []Hold                 `key:"heating" most:"8" says:"a question: what heat would hold the room at this at least"`
	Cooling      []Hold                 `key:"cooling" most:"8" says:"a question: what cooling would hold the room at this at most"`
	Gains        []Gain                 `key:"gains" most:"8" says:"heat from things that no other part of the file describes"`
	Stove        *Stove                 `key:"stove" says:"of wood, where people keep a fire"`
	Section      *Section               `key:"section" says:"the earth behind the back wall and under the floor, computed as a cut through slope and garden; left out, by the walls' depth and the floor's perimeter"`
	Notes        string                 `key:"notes" example:"a bench along the back wall" says:"anything else"`
}

// A Wall is a wall, a roof or a floor.
type Wall struct {
	Name    string                `key:"name" needs:"yes" example:"back wall" says:"which one"`
	Area    quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.1 m2" most:"5000 m2" example:"24 m2" says:"without its windows"`
	Faces   string                `key:"faces" needs:"yes" example:"earth" says:"air, earth, nothing, or the name of another room, whose wall to this one is then not told again"`
	Azimuth *quantity.Degrees     `key:"azimuth" unit:"deg" least:"0 deg" most:"360 deg" example:"180 deg" says:"where its outside looks, from north, east positive"`
	Slope   *quantity.Degrees     `key:"slope" unit:"deg" least:"0 deg" most:"180 deg" example:"30 deg" says:"of its outside from level: 0 deg a flat roof, 90 deg upright, 180 deg a floor; left out, 90 deg where an azimuth is told, else by a name that begins with roof or floor"`
	Build   string                `key:"build" example:"cob on a stone foot" says:"what it is made of, in words, where layers does not say it"`
	Layers  Layers                `key:"layers" example:"30 cm rammed earth, 10 cm cork" says:"from inside to outside; without the layers of all its walls a room is not computed"`

	Absorptance       float64           `key:"absorptance" default:"60 %" source:"middling colours, common practice, no source" least:"0 %" most:"100 %" example:"60 %" says:"of its outside for sunlight"`
	Emissivity        float64           `key:"emissivity" default:"90 %" source:"what is not bare metal, common practice, no source" least:"1 %" most:"100 %" example:"90 %" says:"of its outside for warmth"`
	Smooth            bool              `key:"smooth" default:"no" source:"plaster, wood and stone are rough" says:"its outside is as smooth as glass, so that the wind takes less from it"`
	InsideAbsorptance float64           `key:"inside_absorptance" default:"60 %" source:"middling colours, common practice, no source" least:"0 %" most:"100 %" example:"60 %" says:"of its inside for sunlight"`
	InsideEmissivity  float64           `key:"inside_emissivity" default:"90 %" source:"what is not bare metal, common practice, no source" least:"1 %" most:"100 %" example:"90 %" says:"of its inside for warmth"`
	Depth             *quantity.Metres  `key:"depth" unit:"m" least:"0 m" most:"20 m" example:"1.4 m" says:"where it faces earth: how deep its middle lies; left out, half the room's height for a wall"`
	Perimeter         *quantity.Metres  `key:"perimeter" unit:"m" least:"0 m" most:"2000 m" example:"26 m" says:"of a floor on the earth: how much of its edge is outside; left out, that of a square"`
	Behind            *quantity.Celsius `key:"behind" unit:"degC" least:"-40 degC" most:"60 degC" example:"10 degC" says:"where it faces earth: a temperature that never changes behind its layers, in place of the computed ground"`
}

// A Window is glass in a wall or a roof.
type Window struct {
	Name    string                `key:"name" needs:"yes" example:"south glass" says:"which one"`
	Area    quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.05 m2" most:"1000 m2" example:"9 m2" says:"glass and frame together"`
	Width   *quantity.Metres      `key:"width" unit:"m" least:"0.1 m" most:"200 m" example:"4.5 m" says:"for its shadows; left out, twice as wide as high"`
	Azimuth quantity.Degrees      `key:"azimuth" needs:"yes" unit:"deg" least:"0 deg" most:"360 deg" example:"180 deg" says:"where it looks, from north, east positive"`
	Slope   quantity.Degrees      `key:"slope" default:"90 deg" source:"upright glass" unit:"deg" least:"0 deg" most:"90 deg" example:"90 deg" says:"from level; 90 deg is upright"`
	Left    quantity.Metres       `key:"from_left" default:"0 m" source:"this program's choice" unit:"m" least:"0 m" most:"200 m" example:"0.5 m" says:"from the left end of its wall to its left side, seen from inside, for where the sun lands"`
	Sill    quantity.Metres       `key:"sill" default:"0.8 m" source:"common practice, no source" unit:"m" least:"0 m" most:"10 m" example:"0.2 m" says:"from the floor to its lower edge"`
	Panes   int                   `key:"panes" default:"2" source:"common practice, no source" least:"1" most:"3" example:"2" says:"sheets of glass"`

	Glass       *Glass               `key:"glass" says:"what the panes are, where they are not clear glass of 4 mm"`
	Gap         quantity.Millimetres `key:"gap" default:"16 mm" source:"common practice, no source" unit:"mm" least:"3 mm" most:"100 mm" example:"16 mm" says:"of air between panes"`
	Frame       float64              `key:"frame" default:"0 %" source:"glass alone, unless the file says so" least:"0 %" most:"90 %" example:"20 %" says:"share of the area that is frame"`
	FrameU      float64              `key:"frame_u" default:"1.8 W/m2K" source:"softwood, common practice, no source" unit:"W/m2K" least:"0.3 W/m2K" most:"10 W/m2K" example:"1.8 W/m2K" says:"of the frame"`
	Overhang    *quantity.Metres     `key:"overhang" unit:"m" least:"0 m" most:"10 m" example:"0.8 m" says:"how far a roof stands out above it"`
	Above       quantity.Metres      `key:"overhang_above" default:"0 m" source:"a roof that begins at the glass" unit:"m" least:"0 m" most:"10 m" example:"0.3 m" says:"from the head of the glass up to that roof"`
	BeyondLeft  quantity.Metres      `key:"overhang_left" default:"0 m" source:"a roof as wide as the glass" unit:"m" least:"-100 m" most:"100 m" example:"0.5 m" says:"how far that roof goes on past the left side, seen from inside"`
	BeyondRight quantity.Metres      `key:"overhang_right" default:"0 m" source:"a roof as wide as the glass" unit:"m" least:"-100 m" most:"100 m" example:"0.5 m" says:"how far it goes on past the right side"`
	FinLeft     *quantity.Metres     `key:"fin_left" unit:"m" least:"0 m" most:"10 m" example:"0.5 m" says:"how far a wall or board stands out at its left side, seen from inside"`
	FinRight    *quantity.Metres     `key:"fin_right" unit:"m" least:"0 m" most:"10 m" example:"0.5 m" says:"the same at its right side"`
	Shutters    bool                 `key:"shutters" default:"no" source:"none unless the file says so" says:"closed at night in winter"`
	Adds        float64              `key:"shutter_adds" default:"0.2 m2K/W" source:"wood with the air behind it, common practice, no source" unit:"m2K/W" least:"0 m2K/W" most:"5 m2K/W" example:"0.2 m2K/W" says:"resistance that closed shutters add"`
	CloseBelow  quantity.Celsius     `key:"shutter_below" default:"15 degC" source:"this program's choice" unit:"degC" least:"-40 degC" most:"60 degC" example:"15 degC" says:"air outside below which the shutters are closed after dark"`
}

// A Glass is what all panes of a window are.
type Glass struct {
	Thickness    quantity.Millimetres `key:"thickness" default:"4 mm" source:"common practice, no source" unit:"mm" least:"0.1 mm" most:"50 mm" example:"4 mm" says:"of one pane"`
	Index        float64              `key:"index" default:"1.526" source:"glass, duffie-beckman, remembered" least:"1.1" most:"2.5" example:"1.526" says:"refractive index"`
	Extinction   float64              `key:"extinction" default:"20 /m" source:"usual clear glass, duffie-beckman, remembered" unit:"/m" least:"0 /m" most:"500 /m" example:"20 /m" says:"4 /m for low-iron glass, 32 /m for greenish"`
	Conductivity float64              `key:"conductivity" default:"1 W/mK" source:"glass, iso10456, remembered" unit:"W/mK" least:"0.05 W/mK" most:"10 W/mK" example:"1 W/mK" says:"of heat"`
	Emissivity   float64              `key:"emissivity" default:"84 %" source:"bare glass, en673, remembered" least:"1 %" most:"100 %" example:"5 %" says:"of the best coated face towards a gap: 84 % where none is coated"`
	Transmitted  *float64             `key:"transmitted" least:"1 %" most:"99 %" example:"45 %" says:"of sunlight straight through one coated pane; left out, computed as bare glass"`
	Reflected    *float64             `key:"reflected" least:"0 %" most:"99 %" example:"36 %" says:"of sunlight thrown back outward by the coated pane"`
	ReflectedIn  *float64             `key:"reflected_inside" least:"0 %" most:"99 %" example:"40 %" says:"the same inward; left out, as outward"`
	Coated       int                  `key:"coated" default:"1" source:"this program's choice" least:"1" most:"3" example:"2" says:"which pane is coated, from outside"`
}

// An Opening is a door or a gap between two rooms.
type Opening struct {
	To    string                `key:"to" needs:"yes" example:"bedrooms" says:"the other room"`
	Area  quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0 m2" most:"50 m2" example:"1.8 m2" says:"free area while open"`
	Tall  quantity.Metres       `key:"tall" default:"2 m" source:"a door, common practice, no source" unit:"m" least:"0.1 m" most:"12 m" example:"2 m" says:"from its lower to its upper edge"`
	Hours Hours                 `key:"hours" default:"7-22" source:"doors stand open by day, common practice, no source" example:"7-22" says:"when it stands open"`
}

// A Fan changes the air by the clock.
type Fan struct {
	Flow  float64 `key:"flow" needs:"yes" unit:"m3/h" least:"0 m3/h" most:"100000 m3/h" example:"60 m3/h" says:"of air from outside"`
	Hours Hours   `key:"hours" default:"0-24" source:"the plainest reading of a fan" example:"18-7" says:"when it runs"`
}

// A Hold is a temperature at which a machine without limit would hold a room's air.
type Hold struct {
	At    quantity.Celsius `key:"at" needs:"yes" unit:"degC" least:"-40 degC" most:"60 degC" example:"20 degC" says:"of the air"`
	Hours Hours            `key:"hours" default:"0-24" source:"the plainest reading of a question" example:"7-23" says:"when it is held there"`
}

// A Gain is heat that no other part tells.
type Gain struct {
	Name    string         `key:"name" needs:"yes" example:"baking oven" says:"what it is"`
	Power   quantity.Watts `key:"power" needs:"yes" unit:"W" least:"0 W" most:"100 kW" example:"200 W" says:"of heat"`
	Radiant float64        `key:"radiant" default:"50 %" source:"common practice, no source" least:"0 %" most:"100 %" example:"60 %" says:"share that warms the walls and not the air"`
	Hours   Hours          `key:"hours" default:"0-24" source:"the plainest reading of a gain" example:"9-12" says:"when it comes"`
}
