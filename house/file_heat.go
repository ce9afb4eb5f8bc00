package house

import "suffice/quantity"

// HotWater is collector, store and backup.
type HotWater struct {
	Collector *Collector `key:"collector" says:"solar collector"`
	Store     HeatStore  `key:"store" needs:"yes" says:"the hot water store"`
	Backup    *Backup    `key:"backup" says:"what heats when the sun does not"`
}

// A Collector is a solar collector by the figures of its test.
type Collector struct {
	Area    quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.2 m2" most:"200 m2" example:"4 m2" says:"the area that its test refers to"`
	Eta0    float64               `key:"eta0" needs:"yes" least:"0.2" most:"0.95" example:"0.78" says:"efficiency without heat loss"`
	A1      float64               `key:"a1" needs:"yes" unit:"W/m2K" least:"0.1 W/m2K" most:"30 W/m2K" example:"3.6 W/m2K" says:"heat loss, linear part"`
	A2      float64               `key:"a2" needs:"yes" unit:"W/m2K2" least:"0 W/m2K2" most:"1 W/m2K2" example:"0.015 W/m2K2" says:"heat loss, part that grows with the square"`
	Slope   quantity.Degrees      `key:"slope" needs:"yes" unit:"deg" least:"0 deg" most:"90 deg" example:"50 deg" says:"from level"`
	Azimuth quantity.Degrees      `key:"azimuth" needs:"yes" unit:"deg" least:"0 deg" most:"360 deg" example:"180 deg" says:"where it faces, from north, east positive"`
	Frost   string                `key:"frost" default:"drain-back" source:"this program's choice" choices:"drain-back|antifreeze|none" says:"what keeps it from freezing"`
	Pump    quantity.Watts        `key:"pump" default:"25 W" source:"common practice, no source" unit:"W" least:"0 W" most:"1 kW" example:"25 W" says:"its circulating pump; 0 W where water circulates by its own warmth"`
}

// A HeatStore keeps hot water.
type HeatStore struct {
	Holds      quantity.Litres  `key:"holds" needs:"yes" unit:"L" least:"10 L" most:"20 kL" example:"300 L" says:"the water in it"`
	Loss       float64          `key:"loss" default:"2 W/K" source:"common practice for 300 L, no source" unit:"W/K" least:"0.1 W/K" most:"50 W/K" example:"2.0 W/K" says:"heat loss through its insulation"`
	UpperShare float64          `key:"upper_share" default:"40 %" source:"common practice, no source" least:"10 %" most:"90 %" example:"40 %" says:"the upper part, which the backup heats"`
	Limit      quantity.Celsius `key:"limit" default:"90 degC" source:"common practice, no source" unit:"degC" least:"50 degC" most:"99 degC" example:"90 degC" says:"the collector stops here"`
}

// A Backup heats when the sun does not.
type Backup struct {
	By         string           `key:"by" needs:"yes" choices:"gas|electricity" says:"what heats"`
	Set        quantity.Celsius `key:"set" default:"45 degC" source:"this program's choice; mind the caution on legionella" unit:"degC" least:"30 degC" most:"80 degC" example:"45 degC" says:"temperature that it keeps"`
	Efficiency float64          `key:"efficiency" default:"85 %" source:"common practice, no source" least:"30 %" most:"100 %" example:"85 %" says:"heat into the water over energy used"`
	Power      *quantity.Watts  `key:"power" unit:"W" least:"50 W" most:"30 kW" example:"1.5 kW" says:"of an electric element"`
}

// Gas is bottled gas.
type Gas struct {
	Fuel    string             `key:"fuel" needs:"yes" choices:"propane|butane|mixed" says:"what is in the bottles"`
	Bottle  quantity.Kilograms `key:"bottle" needs:"yes" unit:"kg" least:"0.2 kg" most:"1000 kg" example:"45 kg" says:"gas in one full bottle"`
	Bottles int                `key:"bottles" needs:"yes" least:"1" most:"50" example:"2" says:"how many stand at the house"`
	Lead    float64            `key:"lead" default:"2 days" source:"this program's choice" unit:"days" least:"0 days" most:"120 days" example:"2 days" says:"from order to arrival of a full bottle"`
	Price   *Money             `key:"price" example:"120 EUR" says:"of one filling"`
}
