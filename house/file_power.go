package house

import "suffice/quantity"

// Power is panels, battery and loads.
type Power struct {
	Arrays      []Array     `key:"arrays" most:"8" says:"panels, one entry for each slope and direction"`
	Controller  *Controller `key:"controller" says:"charge controller between panels and battery"`
	Battery     Battery     `key:"battery" needs:"yes" says:"the bank that carries the house through the night"`
	Inverter    Inverter    `key:"inverter" needs:"yes" says:"makes alternating current from the battery"`
	Loads       []Load      `key:"loads" most:"32" says:"what runs on the power, beside the house's own pumps and lamps"`
	Generator   *Generator  `key:"generator" says:"a small generator as backup"`
	ShouldAbove float64     `key:"should_above" default:"0 %" source:"this program's choice: comfort draws on the battery down to its floor" least:"0 %" most:"100 %" example:"60 %" says:"charge above which loads that should run may draw on the battery"`
	CouldAbove  float64     `key:"could_above" default:"90 %" source:"this program's choice" least:"0 %" most:"100 %" example:"90 %" says:"charge above which loads that could run may draw on the battery"`
}

// An Array is a group of equal panels that face the same way.
type Array struct {
	Name        string           `key:"name" needs:"yes" example:"roof" says:"which group"`
	Peak        quantity.Watts   `key:"peak" needs:"yes" unit:"W" least:"5 W" most:"100 kW" example:"2 kW" says:"of the whole group, at standard test conditions"`
	Slope       quantity.Degrees `key:"slope" needs:"yes" unit:"deg" least:"0 deg" most:"90 deg" example:"40 deg" says:"from level"`
	Azimuth     quantity.Degrees `key:"azimuth" needs:"yes" unit:"deg" least:"0 deg" most:"360 deg" example:"180 deg" says:"where they face, from north, east positive: 180 deg is south"`
	NOCT        quantity.Celsius `key:"noct" default:"45 degC" source:"open racks, common practice, no source" unit:"degC" least:"30 degC" most:"70 degC" example:"45 degC" says:"cell temperature at 800 W/m2, 20 degC, 1 m/s, from the data sheet"`
	Coefficient float64          `key:"power_coefficient" default:"-0.4 %/K" source:"silicon, common practice, no source" unit:"fraction/K" least:"-1 %/K" most:"0 %/K" example:"-0.35 %/K" says:"change of power with cell temperature, from the data sheet"`
	Soiling     float64          `key:"soiling" default:"3 %" source:"common practice, no source" least:"0 %" most:"50 %" example:"3 %" says:"light lost to dirt"`
	Mismatch    float64          `key:"mismatch" default:"1 %" source:"common practice, no source" least:"0 %" most:"30 %" example:"1 %" says:"power lost by unequal panels"`
	Wiring      float64          `key:"wiring" default:"2 %" source:"common practice, no source" least:"0 %" most:"30 %" example:"2 %" says:"power lost in the cables to the controller"`
	Ageing      float64          `key:"ageing" default:"0.5 %/year" source:"silicon, common practice, no source" unit:"fraction/year" least:"0 %/year" most:"5 %/year" example:"0.5 %/year" says:"power lost with each year of age"`
	Age         float64          `key:"age" default:"10 years" source:"the middle of a life of twenty years, this program's choice" unit:"years" least:"0 years" most:"60 years" example:"10 years" says:"the age that they are judged at"`
	Module      *Module          `key:"module" says:"one panel's voltage and how many are in a row, for the check of the voltage in the cold"`
}

// A Module is what the data sheet of one panel says about its voltage, and how many are in a row.
type Module struct {
	OpenVoltage  float64  `key:"open_voltage" needs:"yes" unit:"V" least:"1 V" most:"200 V" example:"41 V" says:"of one panel in open circuit, at standard test conditions"`
	Coefficient  *float64 `key:"voltage_coefficient" unit:"fraction/K" least:"-1 %/K" most:"-0.01 %/K" example:"-0.28 %/K" says:"change of that voltage with temperature; left out, the table of an electrical code"`
	ShortCurrent *float64 `key:"short_current" unit:"A" least:"0.1 A" most:"50 A" example:"11 A" says:"of one panel in short circuit"`
	Series       int      `key:"series" needs:"yes" least:"1" most:"40" example:"2" says:"panels in one string"`
	Parallel     int      `key:"parallel" default:"1" source:"the plainest wiring" least:"1" most:"100" example:"3" says:"strings side by side"`
}

// A Controller stands between panels and battery.
type Controller struct {
	Current      *float64 `key:"current" unit:"A" least:"1 A" most:"2000 A" example:"60 A" says:"largest current into battery and house; left out, it has no limit"`
	LimitVoltage *float64 `key:"limit_voltage" unit:"V" least:"10 V" most:"1500 V" example:"150 V" says:"largest voltage that the panels may bring; left out, it is not checked"`
	Efficiency   float64  `key:"efficiency" default:"97 %" source:"common practice, no source" least:"50 %" most:"100 %" example:"97 %" says:"power out over power in"`
}

// A Battery is the whole bank.
type Battery struct {
	Kind     string   `key:"kind" needs:"yes" choices:"lead-acid|lithium" says:"which chemistry"`
	Capacity Capacity `key:"capacity" needs:"yes" example:"600 Ah" says:"of the bank, drawn in ten hours"`
	Voltage  float64  `key:"voltage" needs:"yes" unit:"V" least:"6 V" most:"800 V" example:"24 V" says:"of the bank"`
	Floor    *float64 `key:"floor" least:"0 %" most:"95 %" example:"50 %" says:"charge at which it is cut off; left out, the usual one of its kind"`
	Start    float64  `key:"start" default:"80 %" source:"this program's choice" least:"0 %" most:"100 %" example:"80 %" says:"charge in the first hour"`
	Where    string   `key:"where" default:"indoors" source:"this program's choice" choices:"indoors|outdoors" says:"where it stands, for its temperature"`
}

// An Inverter makes alternating current.
type Inverter struct {
	Continuous quantity.Watts  `key:"continuous" needs:"yes" unit:"W" least:"10 W" most:"100 kW" example:"3 kW" says:"largest power without end"`
	Starting   *quantity.Watts `key:"starting" unit:"W" least:"10 W" most:"300 kW" example:"6 kW" says:"largest power for some seconds; left out, starting is not checked"`
	Idle       quantity.Watts  `key:"idle" default:"15 W" source:"common practice, no source" unit:"W" least:"0 W" most:"1 kW" example:"15 W" says:"what it takes while nothing runs"`
	Peak       float64         `key:"peak_efficiency" default:"94 %" source:"common practice, no source" least:"40 %" most:"99.5 %" example:"94 %" says:"at its best load"`
	FullLoad   float64         `key:"full_load_efficiency" default:"90 %" source:"common practice, no source" least:"40 %" most:"99.5 %" example:"90 %" says:"at its continuous power"`
	Sleeps     bool            `key:"sleeps" default:"no" source:"the careful reading" says:"whether it takes nothing in an hour in which nothing runs"`
}

// A Load is one thing that runs on power.
type Load struct {
	Name     string              `key:"name" needs:"yes" example:"refrigerator" says:"what it is"`
	Power    *quantity.Watts     `key:"power" unit:"W" least:"0.1 W" most:"50 kW" example:"45 W" says:"while it runs; with no energy it runs through all its hours"`
	Energy   *quantity.WattHours `key:"energy" unit:"Wh/d" least:"0.1 Wh/d" most:"500 kWh/d" example:"0.8 kWh/d" says:"on each of its days, spread over its hours"`
	Hours    Hours               `key:"hours" default:"0-24" source:"the plainest reading of a load" example:"18-23" says:"the hours of the clock in which it runs"`
	Days     Days                `key:"days" default:"every day" source:"the plainest reading of a load" example:"workdays" says:"the days of the week on which it runs"`
	Need     string              `key:"need" default:"must" source:"nothing is cut off unless the file says so" choices:"must|should|could" says:"who gets power first; a must that goes without makes a short day"`
	Starting *quantity.Watts     `key:"starting" unit:"W" least:"0.1 W" most:"100 kW" example:"400 W" says:"at the moment of starting, where a motor takes more"`
	Waits    float64             `key:"waits" default:"0 days" source:"nothing waits unless the file says so" unit:"days" least:"0 days" most:"14 days" example:"3 days" says:"whole days that the task may wait for a better sky"`
	Drops    bool                `key:"drops" default:"no" source:"the careful reading" says:"given up after waiting, and counted as short; else it runs on its last day"`
	Gas      float64             `key:"gas" default:"0 %" source:"nothing is done with gas unless the file says so" least:"0 %" most:"100 %" example:"50 %" says:"efficiency at which gas can do it instead; 0 % where it cannot"`
	WhenAway bool                `key:"when_away" default:"yes" source:"the careful reading: it runs on" says:"whether it runs while nobody is at home"`
}

// A Generator is a small generator as backup.
type Generator struct {
	Power      quantity.Watts `key:"power" needs:"yes" unit:"W" least:"100 W" most:"100 kW" example:"2 kW" says:"what it gives at most"`
	Fuel       float64        `key:"fuel" needs:"yes" unit:"L/kWh" least:"0.1 L/kWh" most:"3 L/kWh" example:"0.45 L/kWh" says:"what it burns at full load"`
	NoLoad     *float64       `key:"no_load" least:"0 %" most:"90 %" example:"25 %" says:"share of that fuel burned with no load; left out, the usual one"`
	Charger    float64        `key:"charger" default:"90 %" source:"common practice, no source" least:"30 %" most:"100 %" example:"90 %" says:"efficiency of the charger behind it"`
	StartBelow float64        `key:"start_below" needs:"yes" least:"1 %" most:"99 %" example:"55 %" says:"charge of the battery below which it is started"`
	StopAbove  float64        `key:"stop_above" needs:"yes" least:"2 %" most:"100 %" example:"80 %" says:"charge at which it is stopped"`
	LeastRun   float64        `key:"least_run" default:"2 h" source:"this program's choice" unit:"h" least:"1 h" most:"24 h" example:"2 h" says:"it runs at least so long"`
}
