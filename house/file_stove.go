package house

import "suffice/quantity"

// A Stove is a wood stove in a room.
type Stove struct {
	Burns      float64          `key:"burns" default:"1.5 kg/h" source:"6 kW of wood at 20 % of water, common practice, no source" unit:"kg/h" least:"0.1 kg/h" most:"20 kg/h" example:"1.5 kg/h" says:"wood at full fire"`
	Least      float64          `key:"least" default:"0.5 kg/h" source:"a third of a usual full fire, common practice, no source" unit:"kg/h" least:"0 kg/h" most:"20 kg/h" example:"0.5 kg/h" says:"wood of the smallest fire that burns clean"`
	Moisture   float64          `key:"moisture" default:"20 %" source:"two years under a roof, wood-fuels" least:"0 %" most:"65 %" example:"20 %" says:"share of the wood's weight that is water"`
	Dry        float64          `key:"dry_wood" default:"5.139 kWh/kg" source:"18.5 MJ/kg, broad-leaved trees, wood-fuels" unit:"kWh/kg" least:"4 kWh/kg" most:"7 kWh/kg" example:"5.28 kWh/kg" says:"what it holds without water; conifers 5.28 kWh/kg"`
	Efficiency float64          `key:"efficiency" default:"70 %" source:"a closed stove, common practice, no source" least:"5 %" most:"100 %" example:"70 %" says:"share of the heat that stays in the room; 10 to 30 % for an open fire"`
	Radiant    float64          `key:"radiant" default:"60 %" source:"common practice, no source" least:"0 %" most:"100 %" example:"60 %" says:"share of that which warms the walls and not the air"`
	Air        string           `key:"air" default:"room" source:"the plainest stove" choices:"room|outside" example:"outside" says:"from where the fire has its air: the room, which then draws in cold air by its gaps, or outside by a pipe of its own"`
	Below      quantity.Celsius `key:"light_below" default:"18 degC" source:"where the band of comfort begins in winter, en16798-1 as remembered" unit:"degC" least:"-40 degC" most:"40 degC" example:"18 degC" says:"air of the room under which it is lit, if somebody is at home"`
	Until      quantity.Celsius `key:"until" default:"20 degC" source:"common practice, no source" unit:"degC" least:"-40 degC" most:"40 degC" example:"20 degC" says:"air of the room at which it is let go out"`
	Hours      Hours            `key:"hours" default:"6-23" source:"nobody lays wood on asleep, common practice, no source" example:"6-23" says:"when wood is laid on"`
}
