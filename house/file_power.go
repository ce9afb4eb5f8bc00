package house

import "suffice/quantity"

// Power is panels, battery and loads.
type Power struct {
	Arrays     []Array     `key:"arrays" most:"8" says:"panels, one group for each slope and direction"`
	Controller *Controller `key:"controller" says:"charge controller between panels and battery"`
	Battery    *Battery    `key:"battery" says:"the battery"`
	Inverter   *Inverter   `key:"inverter" says:"makes alternating current from the battery"`
	Loads      []Load      `key:"loads" most:"32" says:"what runs on the power"`
	Generator  *Generator  `key:"generator" says:"a small generator as backup"`
}

// An Array is a group of equal panels that face the same way.
type Array struct {
	Name        string           `key:"name" needs:"yes" example:"roof" says:"which group"`
	Peak        quantity.Watts   `key:"peak" needs:"yes" unit:"W" least:"5 W" most:"100 kW" example:"2 kW" says:"of the whole group, at standard test conditions"`
	Slope       quantity.Degrees `key:"slope" needs:"yes" unit:"deg" least:"0 deg" most:"90 deg" example:"40 deg" says:"from level"`
	Azimuth     quantity.Degrees `key:"azimuth" needs:"yes" unit:"deg" least:"0 deg" most:"360 deg" example:"180 deg" says:"where they face, from north, east positive: 180 deg is south"`
	NOCT        quantity.Celsius `key:"noct" default:"45 degC" source:"common practice, no source" unit:"degC" least:"30 degC" most:"70 degC" example:"45 degC" says:"cell temperature at 800 W/m2, 20 degC, 1 m/s, from the data sheet"`
	Coefficient float64          `key:"power_coefficient" default:"-0.4 %/K" source:"common practice for silicon, no source" unit:"%/K" least:"-1 %/K" most:"0 %/K" example:"-0.35 %/K" says:"change of power with cell temperature, from the data sheet"`
	Soiling     float64          `key:"soiling" default:"3 %" source:"common practice, no source" least:"0 %" most:"50 %" example:"3 %" says:"light lost to dust"`
	Wiring      float64          `key:"wiring" default:"2 %" source:"common practice, no source" least:"0 %" most:"30 %" example:"2 %" says:"lost in cables and by unequal panels"`
	Module      *Module          `key:"module" says:"one panel's voltages, for the check of the string"`
}

// A Module is what the data sheet of one panel says about its voltage.
type Module struct {
	OpenVoltage float64 `key:"open_voltage" needs:"yes" unit:"V" least:"1 V" most:"200 V" example:"41 V" says:"open circuit, at standard test conditions"`
	Coefficient float64 `key:"voltage_coefficient" needs:"yes" unit:"%/K" least:"-1 %/K" most:"0 %/K" example:"-0.28 %/K" says:"change of the open-circuit voltage with temperature"`
	Series      int     `key:"series" needs:"yes" least:"1" most:"40" example:"2" says:"panels in one string"`
}

// A Controller stands between panels and battery.
type Controller struct {
	Current      float64 `key:"current" needs:"yes" unit:"A" least:"1 A" most:"1000 A" example:"60 A" says:"largest charging current"`
	LimitVoltage float64 `key:"limit_voltage" unit:"V" least:"10 V" most:"1500 V" example:"150 V" says:"largest voltage that the panels may bring"`
	Efficiency   float64 `key:"efficiency" default:"97 %" source:"common practice, no source" least:"50 %" most:"100 %" example:"97 %" says:"power out over power in"`
}

// A Battery is the whole bank.
type Battery struct {
	Kind     string  `key:"kind" needs:"yes" choices:"lead-acid|lithium" says:"which chemistry"`
	Capacity float64 `key:"capacity" needs:"yes" unit:"Ah" least:"1 Ah" most:"20000 Ah" example:"600 Ah" says:"of the bank at its voltage, in ten hours"`
	Voltage  float64 `key:"voltage" needs:"yes" unit:"V" least:"6 V" most:"800 V" example:"24 V" says:"of the bank"`
	Floor    float64 `key:"floor" default:"50 %" source:"common practice, no source" least:"0 %" most:"95 %" example:"50 %" says:"charge at which it is cut off"`
	Start    float64 `key:"start" default:"80 %" source:"this program's choice; the verdict is given for another start too" least:"0 %" most:"100 %" example:"80 %" says:"charge on the first hour"`
	Where    string  `key:"where" default:"indoors" source:"common practice, no source" choices:"indoors|outdoors" says:"where it stands, for its temperature"`
}

// An Inverter makes alternating current.
type Inverter struct {
	Continuous quantity.Watts `key:"continuous" needs:"yes" unit:"W" least:"10 W" most:"100 kW" example:"3 kW" says:"largest power without end"`
	Starting   quantity.Watts `key:"starting" unit:"W" least:"10 W" most:"300 kW" example:"6 kW" says:"largest power for some seconds"`
	Idle       quantity.Watts `key:"idle" default:"15 W" source:"common practice, no source" unit:"W" least:"0 W" most:"1 kW" example:"15 W" says:"what it takes while nothing runs"`
	Peak       float64        `key:"peak_efficiency" default:"94 %" source:"common practice, no source" least:"40 %" most:"99.9 %" example:"94 %" says:"at its best load"`
	FullLoad   float64        `key:"full_load_efficiency" default:"90 %" source:"common practice, no source" least:"40 %" most:"99.9 %" example:"90 %" says:"at its continuous power"`
}

// A Load is one thing that runs on power.
type Load struct {
	Name     string              `key:"name" needs:"yes" example:"refrigerator" says:"what it is"`
	Power    *quantity.Watts     `key:"power" unit:"W" least:"0.1 W" most:"50 kW" example:"45 W" says:"while it runs; alone, it runs through all its hours"`
	Energy   *quantity.WattHours `key:"energy" unit:"Wh/d" least:"0.1 Wh/d" most:"500 kWh/d" example:"0.8 kWh/d" says:"on a day on which it runs; spread over its hours"`
	Hours    Hours               `key:"hours" default:"0-24" source:"the plainest reading of a load" example:"18-23" says:"the hours of the clock in which it runs"`
	Days     Days                `key:"days" default:"every day" source:"the plainest reading of a load" example:"workdays" says:"every day, workdays, weekends, or names of days"`
	Need     string              `key:"need" default:"must" source:"nothing is cut off unless the file says so" choices:"must|should|could" says:"who gets power first; what must run makes the short days"`
	Starting quantity.Watts      `key:"starting" default:"0 W" source:"no motor" unit:"W" least:"0 W" most:"100 kW" example:"400 W" says:"power at the moment of starting, where a motor needs more"`
	Waits    float64             `key:"waits" default:"0 days" source:"nothing waits unless the file says so" unit:"days" least:"0 days" most:"30 days" example:"3 days" says:"how long the task may wait for a better sky"`
	Gas      float64             `key:"gas" default:"0 %" source:"nothing is done with gas unless the file says so" least:"0 %" most:"100 %" example:"50 %" says:"gas can do it instead, at this efficiency"`
	WhenAway bool                `key:"when_away" default:"yes" source:"the careful reading: it runs on" says:"whether it runs while nobody is at home"`
}

// A Generator is a small generator as backup.
type Generator struct {
	Power      quantity.Watts `key:"power" needs:"yes" unit:"W" least:"100 W" most:"100 kW" example:"2 kW" says:"what it gives"`
	Fuel       float64        `key:"fuel" needs:"yes" unit:"L/kWh" least:"0.1 L/kWh" most:"3 L/kWh" example:"0.45 L/kWh" says:"what it burns"`
	StartBelow float64        `key:"start_below" default:"25 %" source:"this program's choice" least:"0 %" most:"99 %" example:"25 %" says:"charge of the battery below which it is started"`
	StopAbove  float64        `key:"stop_above" default:"60 %" source:"this program's choice" least:"1 %" most:"100 %" example:"60 %" says:"charge at which it is stopped"`
	LeastRun   float64        `key:"least_run" default:"2 h" source:"this program's choice" unit:"h" least:"1 h" most:"24 h" example:"2 h" says:"it runs at least so long"`
}
