package house

import (
	"slices"

	"suffice/quantity"
)

// Newest is the newest format of the house file that this program reads.
const Newest = 1

// Limits of the file itself, so that reading one always ends soon.
const (
	maxBytes = 1 << 20 // of the file
	maxDepth = 32      // of lists and groups inside each other
	maxNodes = 20000   // values, counting what stands behind an alias each time
)

// A File is the house as its people wrote it: every value in the unit of its
// type or of its unit tag, defaults put in, nothing derived. The tags are the one
// description of the house file. They say, for every key,
//
//	key      the word in the file
//	needs    "yes" where the group cannot do without it
//	unit     what the number is kept in; the person may write any unit of the same kind
//	least    the smallest value allowed, with its unit; a count of items for a list
//	most     the largest value allowed, with its unit; a count of items for a list
//	default  what holds when the key is left out, as a person would write it
//	source   where the default comes from
//	example  how to write it
//	choices  the words allowed, with | between them
//	says     what it means
//
// A key with neither needs nor default may be left out, and what it describes then does not exist.
type File struct {
	Format   int              `key:"format" least:"1" default:"1" source:"the newest format of the house file" says:"the format of this file, so that later programs can still read it"`
	Name     string           `key:"name" needs:"yes" example:"Terrace House" says:"what the house is called"`
	Site     Site             `key:"site" needs:"yes" says:"where the house stands"`
	Indoors  quantity.Celsius `key:"indoors" default:"20 degC" source:"this program's choice, where rooms are not computed" unit:"degC" least:"0 degC" most:"40 degC" example:"18 degC" says:"temperature around the battery and the store that stand indoors"`
	Weather  *Weather         `key:"weather" says:"the record of past weather that the house is led through"`
	People   *People          `key:"people" says:"who lives in the house, when they are at home, and what they use"`
	Water    *Water           `key:"water" says:"from the roof to the tap"`
	Power    *Power           `key:"power" says:"panels, battery, and what runs on them"`
	HotWater *HotWater        `key:"hot_water" says:"solar collector, store and backup"`
	Gas      *Gas             `key:"gas" says:"bottled gas"`
	Rules    *Rules           `key:"rules" says:"what the people do when a store runs low or the sky is dull"`
	Wants    *Wants           `key:"wants" says:"what each budget must reach; without a want there is no verdict on it"`

	Materials []MaterialOf `key:"materials" most:"64" says:"materials of this house, for the layers of its walls"`
	Rooms     []Room       `key:"rooms" most:"8" says:"the rooms"`
	Planter   *Planter     `key:"planter" says:"the lined bed that washing water feeds"`
	FlushWell *FlushWell   `key:"flush_well" says:"the lined pit behind the planter, from which the toilets flush; no groundwater well"`
	Septic    *Septic      `key:"septic" says:"where toilets and what passes the planter drain to"`
	Garden    *Garden      `key:"garden" says:"the beds that feed the house"`

	path     string // where the file was read
	defaults []Default
	marks    map[string]mark
}

// Defaults lists the values that hold because the file leaves their keys out.
func Defaults(f *File) []Default { return slices.Clone(f.defaults) }

// A Site is the file's place on the earth.
type Site struct {
	Latitude  quantity.Degrees  `key:"latitude" needs:"yes" unit:"deg" least:"-90 deg" most:"90 deg" example:"35.03 deg" says:"north positive, south negative"`
	Longitude quantity.Degrees  `key:"longitude" needs:"yes" unit:"deg" least:"-180 deg" most:"180 deg" example:"24.83 deg" says:"east positive, west negative"`
	Altitude  quantity.Metres   `key:"altitude" needs:"yes" unit:"m" least:"-430 m" most:"6000 m" example:"250 m" says:"height above the sea"`
	Clock     Clock             `key:"clock" needs:"yes" example:"UTC+2" says:"standard time all year, without summer time"`
	Earth     *string           `key:"earth" choices:"clay or silt|sand or gravel|rock|dry clay|wet clay|dry sand|moist sand|wet sand" says:"what the house stands on, for the warmth behind walls and under floors; left out, sand or gravel"`
	Coldest   *quantity.Celsius `key:"coldest" unit:"degC" least:"-70 degC" most:"30 degC" example:"-4 degC" says:"the coldest air ever, for the voltage of panels; a record tells it as well"`
	Horizon   []HorizonPoint    `key:"horizon" most:"36" says:"hills, trees and houses that hide the sun, as points of a line around the site"`
}

// A HorizonPoint is one corner of the line around the site below which the sun is hidden.
type HorizonPoint struct {
	Azimuth quantity.Degrees `key:"azimuth" needs:"yes" unit:"deg" least:"0 deg" most:"360 deg" example:"120 deg" says:"from north, east positive: 90 deg is east, 180 deg south"`
	Height  quantity.Degrees `key:"height" needs:"yes" unit:"deg" least:"0 deg" most:"89 deg" example:"6 deg" says:"how far above level the obstacle reaches"`
}

// A Weather names the record; the paths are relative to the house file.
type Weather struct {
	Record      string   `key:"record" example:"hourly-weather.csv.gz" says:"path of a weather record, beside the house file"`
	BuiltIn     string   `key:"built_in" choices:"crete" says:"a record that comes with the program: crete is daily, for 35.03 N 24.83 E"`
	Rain        string   `key:"rain" example:"gauge.dly.gz" says:"path of a longer or nearer rain gauge, put in the place of the record's rain"`
	Reading     []string `key:"reading" most:"16" example:"[unit.RAIN=mm, time=utc]" says:"what the record does not say itself: latitude, longitude, altitude, clock, time, unit.COLUMN or column.COLUMN, each as name=value; its place is the house's where it names none"`
	RainReading []string `key:"rain_reading" most:"16" example:"[unit.RAIN=mm]" says:"the same for the rain gauge"`
	Coast       bool     `key:"coast" default:"no" source:"inland" says:"the place lies by the sea: light estimated from temperatures is then taken with 0.19 instead of 0.16 (FAO-56 eq. 50)"`
	Years       *string  `key:"years" choices:"matched|drawn" says:"how gauge and record go together: on the days both have, or days of the record drawn for each day of the gauge; left out, matched"`
}
