package house

import "suffice/quantity"

// HotWater is collector, store and backup.
type HotWater struct {
	Collector *Collector `key:"collector" says:"solar collector"`
	Store     HeatStore  `key:"store" needs:"yes" says:"the hot water store"`
	Backup    *Backup    `key:"backup" says:"what heats when the sun does not"`
	ColdLag   float64    `key:"cold_lag" default:"30 days" source:"common practice, no source; it lags the year by 27 days, as the reference cold water of EN 12976-2 does" unit:"days" least:"0.1 days" most:"365 days" example:"30 days" says:"how slowly the cold water follows the air: days for an open tank, a month for a buried one"`
	ColdSwing float64    `key:"cold_swing" default:"80 %" source:"mains water of EN 12976-2, from memory; 30 % for ground water" least:"0 %" most:"100 %" example:"80 %" says:"share of the air's slow swing about its mean that reaches the cold tap"`
}

// A Collector is a solar collector by the figures of its test.
type Collector struct {
	Area       quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.2 m2" most:"200 m2" example:"4 m2" says:"the area that its test refers to"`
	Eta0       float64               `key:"eta0" needs:"yes" least:"0.2" most:"0.95" example:"0.78" says:"efficiency without heat loss, from its test"`
	A1         float64               `key:"a1" needs:"yes" unit:"W/m2K" least:"0.1 W/m2K" most:"30 W/m2K" example:"3.6 W/m2K" says:"heat loss, the part in proportion, from its test"`
	A2         float64               `key:"a2" needs:"yes" unit:"W/m2K2" least:"0 W/m2K2" most:"1 W/m2K2" example:"0.015 W/m2K2" says:"heat loss, the part with the square, from its test"`
	K50        *float64              `key:"k50" least:"0.3" most:"1" example:"0.95" says:"share of the light at 50 deg that counts against straight light, from its test; left out, a usual one"`
	Slope      quantity.Degrees      `key:"slope" needs:"yes" unit:"deg" least:"0 deg" most:"90 deg" example:"50 deg" says:"from level"`
	Azimuth    quantity.Degrees      `key:"azimuth" needs:"yes" unit:"deg" least:"0 deg" most:"360 deg" example:"180 deg" says:"where it faces, from north, east positive: 180 deg is south"`
	Frost      string                `key:"frost" default:"drain-back" source:"this program's choice" choices:"drain-back|antifreeze|recirculate|none" says:"what keeps it from freezing"`
	FreezesAt  *quantity.Celsius     `key:"freezes_at" unit:"degC" least:"-60 degC" most:"0 degC" example:"-20 degC" says:"of the antifreeze; left out, a usual one"`
	Flow       *float64              `key:"flow" unit:"L/h" least:"1 L/h" most:"300 L/h" example:"50 L/h" says:"through each square metre while its pump runs; left out, a usual one"`
	Exchanger  *float64              `key:"exchanger" unit:"W/K" least:"0 W/K" most:"20000 W/K" example:"300 W/K" says:"heat exchanger between collector and store, 0 W/K for none; left out, a usual one"`
	Difference *quantity.Kelvins     `key:"difference" unit:"K" least:"0.5 K" most:"30 K" example:"6 K" says:"collector over store at which the pump starts; left out, a usual one"`
	Pump       *quantity.Watts       `key:"pump" unit:"W" least:"0 W" most:"1 kW" example:"25 W" says:"its pump; 0 W where water rises by its own warmth; left out, a usual one"`
}

// A HeatStore keeps hot water.
type HeatStore struct {
	Holds      quantity.Litres   `key:"holds" needs:"yes" unit:"L" least:"10 L" most:"20 kL" example:"300 L" says:"the water in it"`
	Loss       *float64          `key:"loss" unit:"W/K" least:"0.1 W/K" most:"50 W/K" example:"2.0 W/K" says:"heat loss through its insulation; left out, a usual one"`
	UpperShare *float64          `key:"upper_share" least:"10 %" most:"90 %" example:"40 %" says:"the upper part, which the backup keeps warm; left out, a usual one"`
	Limit      *quantity.Celsius `key:"limit" unit:"degC" least:"50 degC" most:"99 degC" example:"90 degC" says:"the collector stops here; left out, a usual one"`
	Where      string            `key:"where" default:"indoors" source:"this program's choice" choices:"indoors|outdoors" says:"where it stands, for its heat loss"`
}

// A Backup heats when the sun does not.
type Backup struct {
	By         string           `key:"by" needs:"yes" choices:"gas|electricity" says:"what heats"`
	Place      *string          `key:"place" choices:"after|inside" says:"after the store in the pipe, lighting when water runs, or inside, keeping the upper part warm; left out, gas heats after it, electricity inside"`
	Set        quantity.Celsius `key:"set" needs:"yes" unit:"degC" least:"30 degC" most:"80 degC" example:"50 degC" says:"the temperature it heats to"`
	Efficiency *float64         `key:"efficiency" least:"30 %" most:"100 %" example:"85 %" says:"heat into the water over energy used; left out, 85 % by gas and 100 % by electricity"`
	Power      *quantity.Watts  `key:"power" unit:"W" least:"50 W" most:"60 kW" example:"1.5 kW" says:"of the element or burner inside the store"`
}

// Gas is bottled gas.
type Gas struct {
	Fuel    string             `key:"fuel" needs:"yes" choices:"propane|butane|mixed" says:"what is in the bottles"`
	Bottle  quantity.Kilograms `key:"bottle" needs:"yes" unit:"kg" least:"0.2 kg" most:"1000 kg" example:"45 kg" says:"gas in one full bottle"`
	Bottles int                `key:"bottles" needs:"yes" least:"1" most:"100" example:"2" says:"how many stand at the house"`
	Lead    float64            `key:"lead" default:"2 days" source:"this program's choice" unit:"days" least:"0 days" most:"365 days" example:"2 days" says:"from a bottle running empty until full ones stand there"`
	Price   *Money             `key:"price" example:"120 EUR" says:"of one filling"`
}
