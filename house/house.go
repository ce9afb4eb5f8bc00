// Package house is the design on paper: it reads and checks the house file and
// composes the parts that are built from it.
//
// A house file is one YAML document that a person can read aloud. Units are
// written, never assumed. Read tells all faults at once, each with its line, its
// column, the value, the limit and the remedy.
//
// Checked against: nothing outside, since it computes nothing; messages_test.go holds
// every refusal to its sentence, laws_test.go the reader to mistyped keys and any bytes.
//
// Left out: physics. What a part does with its figures is the part's own matter.
package house

import (
	"suffice/gas"
	"suffice/hotwater"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/site"
	"suffice/site/weather/files"
	"suffice/water"
)

// A House is what is built, ready for the hour. Parts that the file leaves out are nil.
type House struct {
	Name        string
	Place       site.Place
	Horizon     site.Horizon
	Weather     Record
	People      *people.Household
	WaterDesign *water.Design // what Water was made from
	Water       *water.Works
	Power       *PowerParts
	HotWater    *HotWaterParts
	Gas         *gas.Supply
	Rooms       *RoomParts
	Drains      *DrainParts
	Garden      *GardenParts
	Indoors     quantity.Celsius // around what stands indoors, where rooms are not computed
	Rules       people.Rules
	Foresight   people.Foresight
	Wants       WantsOf
	Money       string   // ISO 4217 code of all prices, "" where there are none
	Described   []string // what the file describes and nothing computes yet
	Warnings    []string // what may be meant but is rarely right, as sentences for a person
}

// PowerParts is panels, battery and loads, all prepared.
type PowerParts struct {
	Arrays          []power.Array
	System          power.System
	Loads           []power.Load // what System.Loads was made from
	LimitVoltage    float64      // V that the controller allows the panels, 0 for not checked
	BatteryOutdoors bool         // its cells have the temperature of the air, not of Indoors
}

// HotWaterParts is collector, store and backup, prepared.
type HotWaterParts struct {
	System   *hotwater.System
	Inlet    hotwater.Inlet // of the cold water; its Mean is that of the weather
	Outdoors bool           // the store stands in the air, not in Indoors
}

// A Record says which weather the house is led through. Nothing is opened here.
type Record struct {
	Path        string        // of the record, "" for none or a built-in one
	BuiltIn     string        // name of a built-in record, "" for none
	Rain        string        // path of a rain gauge to put in the place of the record's rain, "" for none
	Sun         bool          // the house has panels or hot water, so the record's light must be that of its place
	Coast       bool          // light estimated from temperature is taken as by the sea
	Matched     bool          // only days that gauge and record both have; else a sky is drawn for the gauge's others
	Reading     files.Options // what the record does not say itself
	RainReading files.Options // what the gauge does not say itself
}

// A Want is what one budget must reach.
type Want struct {
	Stated    bool
	ShortDays float64 // allowed in a year
}

// WantsOf is the wants of the budgets that are computed.
type WantsOf struct {
	Water, Power Want
	Warmth       WantOfWarmth
	Food         WantOfFood
	Waste        Want // no sewage on the ground: no short days
}

// A WantOfFood is the share of the household's vegetables that the beds are to bear.
type WantOfFood struct {
	Stated bool
	Share  float64
}

// A WantOfWarmth is the hours a year that a room may lie outside its band of comfort.
type WantOfWarmth struct {
	Stated       bool
	HoursOutside float64
}
