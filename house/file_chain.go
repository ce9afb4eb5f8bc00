package house

import "suffice/quantity"

// A Planter is the lined bed that washing water feeds.
type Planter struct {
	Area   quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.2 m2" most:"500 m2" example:"6 m2" says:"planted surface"`
	Width  quantity.Metres       `key:"width" default:"1 m" source:"what one reaches across from both sides" unit:"m" least:"0.2 m" most:"20 m" example:"1 m" says:"across the way of the water"`
	Slope  float64               `key:"slope" default:"1 %" source:"unhabitat-wetlands: the worked bed" least:"0.1 %" most:"10 %" example:"1 %" says:"fall of the liner along the way of the water"`
	Gravel quantity.Metres       `key:"gravel" default:"0.3 m" source:"common practice, no source" unit:"m" least:"0.05 m" most:"2 m" example:"0.3 m" says:"depth of the gravel under the soil, kept two thirds wet"`
	Soil   quantity.Metres       `key:"soil" default:"0.4 m" source:"common practice, no source" unit:"m" least:"0.1 m" most:"2 m" example:"0.4 m" says:"depth of the soil on the gravel"`
	Under  string                `key:"under" default:"glass" source:"the bed of this program's houses" choices:"sky|glass" says:"what is above it"`
	Room   *string               `key:"room" example:"living room" says:"the room that it stands in, whose air it damps where that room is told by layers; left out, air as indoors says"`
	Light  float64               `key:"light" default:"50 %" source:"a metre behind clear upright glass 30 to 60 %, common practice, no source" least:"1 %" most:"100 %" example:"50 %" says:"under glass: share of the light on open level ground that reaches the plants"`
	Damp   float64               `key:"damp" default:"60 %" source:"a lived-in room with plants, common practice, no source" least:"5 %" most:"99 %" example:"60 %" says:"under glass: relative humidity, where no room is computed"`

	FedBy     []string             `key:"fed_by" most:"6" choices:"basin|shower|bath|laundry|dishwasher|kitchen" example:"[basin, shower, laundry]" says:"the drains that feed it, never a toilet's; left out, all but dishwasher and kitchen"`
	Surge     quantity.Litres      `key:"surge" default:"300 L" source:"common practice, no source" unit:"L" least:"1 L" most:"100 kL" example:"300 L" says:"most that the inlet passes in an hour; more goes with the toilet's water"`
	CleanTrap float64              `key:"clean_trap" default:"30 days" source:"common practice, no source" unit:"days" least:"1 days" most:"400 days" example:"30 days" says:"how often people empty the trap for grease, hair and lint"`
	Keeps     float64              `key:"trap_keeps" default:"30 %" source:"unhabitat-wetlands: primary treatment" least:"0 %" most:"100 %" example:"30 %" says:"share of the organic dirt that the trap holds back while there is room in it"`
	Holds     float64              `key:"trap_holds" default:"2 kg" source:"common practice, no source" unit:"g" least:"0 g" most:"100 kg" example:"2 kg" says:"organic dirt, as BOD, until the trap is full and holds back nothing"`
	Ill       []Span               `key:"ill" most:"16" says:"days of a year on which somebody has a catching illness, so that the bed is passed by"`
	Harsh     []Span               `key:"harsh" most:"16" says:"days of a year with bleach, dye or drain cleaner in the water, so that the bed is passed by"`
	Crops     []Planting           `key:"crops" most:"4" says:"vegetables of the year, one after the other"`
	Plants    []string             `key:"plants" most:"16" example:"[banana, mint]" says:"what stands in it all year, where there are no crops"`
	Kc        float64              `key:"kc" default:"1.0" source:"fao56 table 12: evergreen fruit and leafy perennials stand between 0.9 and 1.2" least:"0.1" most:"1.6" example:"1.0" says:"crop coefficient of the plants that stand all year"`
	Roots     *quantity.Metres     `key:"roots" unit:"m" least:"0.05 m" most:"5 m" example:"0.4 m" says:"how deep they reach; deeper than the soil they drink from the gravel; left out, the soil's depth"`
	Depletion float64              `key:"depletion" default:"50 %" source:"the middle of fao56 table 22, from memory" least:"10 %" most:"80 %" example:"50 %" says:"share of the soil's water that they take with ease"`
	Rinse     quantity.Millimetres `key:"rinse" default:"0 mm" source:"nobody pours unless the file says so" unit:"mm" least:"0 mm" most:"300 mm" example:"30 mm" says:"clean water poured on the soil against salt"`
	Every     float64              `key:"rinse_every" default:"30 days" source:"this program's choice" unit:"days" least:"1 days" most:"1000 days" example:"30 days" says:"from one rinse to the next"`
	Raw       bool                 `key:"eaten_raw" default:"yes" source:"the careful reading of a bed of vegetables" says:"whether something in it is eaten raw"`
	Children  bool                 `key:"children" default:"yes" source:"the careful reading of a house" says:"whether children live here or visit"`
	Notes     string               `key:"notes" example:"inside, behind the glass" says:"anything else"`
}

// A Span is days that come back every year.
type Span struct {
	From MonthDay `key:"from" needs:"yes" example:"03-01" says:"first day, as month-day"`
	To   MonthDay `key:"to" needs:"yes" example:"03-07" says:"last day, as month-day; it may lie in the next year"`
}

// A Planting is a crop put in on the same day of every year.
type Planting struct {
	Crop string   `key:"crop" needs:"yes" choices:"tomato|sweet pepper|cucumber|zucchini|winter squash|green bean|lettuce|spinach|carrot|radish|onion|potato" says:"what grows"`
	Sown MonthDay `key:"sown" needs:"yes" example:"04-15" says:"the day on which it is sown, or set out where it is planted"`
}

// A FlushWell is the lined pit behind the planter, from which the toilets flush.
type FlushWell struct {
	Area   quantity.SquareMetres `key:"area" default:"0.8 m2" source:"common practice, no source" unit:"m2" least:"0.05 m2" most:"50 m2" example:"0.8 m2" says:"in plan"`
	Depth  quantity.Metres       `key:"depth" default:"1 m" source:"common practice, no source" unit:"m" least:"0.2 m" most:"5 m" example:"1 m" says:"from the floor to the overflow"`
	Least  quantity.Metres       `key:"least" default:"0.10 m" source:"common practice, no source" unit:"m" least:"0 m" most:"4 m" example:"0.1 m" says:"level at which the pump stops"`
	Float  quantity.Metres       `key:"float" default:"0.25 m" source:"common practice, no source" unit:"m" least:"0 m" most:"4 m" example:"0.25 m" says:"level below which water is asked from the tank"`
	Refill quantity.Metres       `key:"refill" default:"0.35 m" source:"common practice, no source" unit:"m" least:"0 m" most:"5 m" example:"0.35 m" says:"level to which it is then filled"`
	Most   quantity.Litres       `key:"most_per_hour" default:"1200 L" source:"common practice, no source" unit:"L" least:"0 L" most:"100 kL" example:"600 L" says:"what the pump gives in an hour; 0 L for no limit"`
	Pump   float64               `key:"pump" default:"60 Wh/kL" source:"7 m of head at a third efficiency, common practice, no source" unit:"Wh/kL" least:"0 Wh/kL" most:"5000 Wh/kL" example:"60 Wh/kL" says:"what the pump takes"`
	Stale  float64               `key:"stale_after" default:"7 days" source:"common practice, no source" unit:"days" least:"0.1 days" most:"400 days" example:"7 days" says:"mean age after which its water is called stale"`
}

// A Septic is the tank and the trench behind it.
type Septic struct {
	Holds    quantity.Litres `key:"holds" needs:"yes" unit:"L" least:"200 L" most:"200 kL" example:"3 kL" says:"below its outlet"`
	Sludge   Growth          `key:"sludge" default:"australia-all-waste" source:"australia-sludge: all waste of a house, remembered" example:"60 L/year" says:"growth of sludge and scum by person"`
	EmptyAt  float64         `key:"empty_at" default:"33.3 %" source:"common practice, no source" least:"5 %" most:"75 %" example:"33 %" says:"share of the tank that sludge and scum may fill before it is emptied"`
	Bedrooms int             `key:"bedrooms" default:"0" source:"nobody counted" least:"0" most:"50" example:"3" says:"which some rules count instead of people"`
	Trench   *Trench         `key:"trench" says:"the gravel trench behind the tank; left out, what leaves the tank is taken away"`
	Place    *string         `key:"rules_of" choices:"england|south-africa|usa-county|usa-upc" says:"whose rule of tank size to hold it against"`
	Setbacks []SetbackTo     `key:"setbacks" most:"32" says:"distances as they are"`
	Local    []string        `key:"local_setbacks" most:"64" example:"[field to well 30 m, tank to building 1.5 m]" says:"the least distances of the place; left out, three printed tables"`
	Notes    string          `key:"notes" example:"willows along the drain" says:"anything else"`
}

// A Trench is where the septic tank drains to.
type Trench struct {
	Length  quantity.Metres        `key:"length" needs:"yes" unit:"m" least:"0.5 m" most:"1000 m" example:"18 m" says:"of the trench"`
	Width   quantity.Metres        `key:"width" default:"0.6 m" source:"common practice, no source" unit:"m" least:"0.1 m" most:"5 m" example:"0.6 m" says:"of its floor"`
	Gravel  quantity.Metres        `key:"gravel" default:"0.3 m" source:"common practice, no source" unit:"m" least:"0.05 m" most:"3 m" example:"0.3 m" says:"depth of the gravel"`
	Pores   float64                `key:"pores" default:"35 %" source:"common practice, no source" least:"5 %" most:"95 %" example:"35 %" says:"share of the gravel that water can fill"`
	Soil    string                 `key:"soil" needs:"yes" choices:"sand|fine-sand|sandy-loam-massive|sandy-loam-weak|sandy-loam-strong|fine-sandy-loam-massive|fine-sandy-loam-weak|fine-sandy-loam-strong|loam-massive|loam-weak|loam-strong|silt-loam-weak|silt-loam-strong|clay-loam-weak|clay-loam-strong|clay-strong" says:"texture and structure of the ground around it"`
	Test    *float64               `key:"percolation" unit:"s" least:"10 s" most:"24 h" example:"10 min" says:"time in which water in a soaked test hole falls by 25 mm, for the rules of area"`
	Clogs   float64                `key:"clogs" default:"900 g/m2" source:"two years of effluent of 150 g/m3 at 8 mm a day, assumed" unit:"g/m2" least:"1 g/m2" most:"1000 kg/m2" example:"900 g/m2" says:"organic dirt, as BOD, on the floor after which 63 % of the way from fresh to clogged ground is gone"`
	Catch   *quantity.SquareMetres `key:"catch" unit:"m2" least:"0 m2" most:"10000 m2" example:"25 m2" says:"ground whose rain comes down on it; left out, twice its own surface"`
	RunsOff float64                `key:"runs_off" default:"20 %" source:"mounded grass, common practice, no source" least:"0 %" most:"100 %" example:"20 %" says:"share of that rain that runs away on the surface"`
	Cover   quantity.Millimetres   `key:"cover" default:"60 mm" source:"0.4 m of loam, of which roots take 0.15: fao56 table 19" unit:"mm" least:"0 mm" most:"1000 mm" example:"60 mm" says:"water that the soil above it can hold for plants"`
	Trees   *Trees                 `key:"trees" says:"trees along it"`
}

// Trees stand on the trench.
type Trees struct {
	Count     int                   `key:"count" needs:"yes" least:"1" most:"200" example:"2" says:"how many"`
	Crown     quantity.SquareMetres `key:"crown" default:"20 m2" source:"common practice, no source" unit:"m2" least:"0.1 m2" most:"400 m2" example:"20 m2" says:"of one grown tree, from above"`
	Grown     float64               `key:"grown_at" default:"12 years" source:"common practice, no source" unit:"years" least:"1 years" most:"100 years" example:"12 years" says:"age at which the crown has that size"`
	Age       float64               `key:"age" default:"0 years" source:"planted with the house" unit:"years" least:"0 years" most:"200 years" example:"3 years" says:"on the first day"`
	Kc        float64               `key:"kc" default:"1.10" source:"fao56 table 12: walnut in mid season" least:"0.1" most:"1.6" example:"1.1" says:"crop coefficient in full leaf"`
	Evergreen bool                  `key:"evergreen" default:"no" source:"the trees of common practice drop their leaves" says:"keeps its leaves in winter"`
	From      *MonthDay             `key:"leaves_from" example:"04-15" says:"the first leaves; left out, a pecan's, half a year later south of the equator"`
	To        *MonthDay             `key:"leaves_to" example:"11-06" says:"the last leaves; left out, a pecan's, half a year later south of the equator"`
	Reach     float64               `key:"reach" default:"50 %" source:"assumed" least:"0 %" most:"100 %" example:"50 %" says:"share of the thirst which the soil above does not still that roots may take from the gravel"`
	Distance  quantity.Metres       `key:"distance" default:"0 m" source:"on the trench" unit:"m" least:"0 m" most:"100 m" example:"2 m" says:"from the trench"`
}

// A SetbackTo is a distance as built.
type SetbackTo struct {
	From string          `key:"from" needs:"yes" choices:"tank|field" says:"what of the works"`
	To   string          `key:"to" needs:"yes" example:"well" says:"well, stream, building, boundary, trees, water table and the like"`
	Is   quantity.Metres `key:"is" needs:"yes" unit:"m" least:"0 m" most:"10000 m" example:"25 m" says:"how far"`
}

// A Garden is the beds that feed the house, animals and scraps.
type Garden struct {
	Beds       []Bed   `key:"beds" needs:"yes" most:"8" says:"the beds"`
	WaterAbove float64 `key:"water_above" default:"30 %" source:"this program's choice: the house drinks first" least:"0 %" most:"100 %" example:"30 %" says:"usable share of the tanks from which beds are watered"`
	Scraps     bool    `key:"scraps" default:"yes" source:"common practice, no source" says:"kitchen scraps, residues and manure ripen on a heap for the beds"`
	Hens       int     `key:"hens" default:"0" source:"none unless the file says so" least:"0" most:"500" example:"5" says:"layers"`
	Goats      int     `key:"goats" default:"0" source:"none unless the file says so" least:"0" most:"100" example:"2" says:"milked does"`
	Hives      int     `key:"hives" default:"0" source:"none unless the file says so" least:"0" most:"100" example:"2" says:"of bees"`
	Wants      float64 `key:"vegetables" default:"87.6 kg/year" source:"who-diet-2003: three of five portions of 80 g a day" unit:"kg/year" least:"1 kg/year" most:"1000 kg/year" example:"90 kg/year" says:"that a person eats"`
	Lawn       *Lawn   `key:"lawn" says:"grass that people water"`
	Notes      string  `key:"notes" example:"hens in the orchard" says:"anything else"`
}

// A Bed is one bed.
type Bed struct {
	Name    string                `key:"name" needs:"yes" example:"terrace bed" says:"which one"`
	Area    quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"0.1 m2" most:"100000 m2" example:"20 m2" says:"planted surface"`
	Under   string                `key:"under" default:"sky" source:"an outdoor bed" choices:"sky|glass" says:"what is above it"`
	Room    *string               `key:"room" example:"living room" says:"the room that it stands in, whose air it damps where that room is told by layers; left out, air as indoors says"`
	Light   float64               `key:"light" default:"50 %" source:"a metre behind clear upright glass 30 to 60 %, common practice, no source" least:"1 %" most:"100 %" example:"50 %" says:"under glass: share of the light on open level ground that reaches the plants"`
	Damp    float64               `key:"damp" default:"60 %" source:"a lived-in room with plants, common practice, no source" least:"5 %" most:"99 %" example:"60 %" says:"under glass: relative humidity, where no room is computed"`
	Soil    string                `key:"soil" default:"loam" source:"a tended garden's, common practice, no source" choices:"sand|loamy sand|sandy loam|loam|silt loam|silty clay loam|silty clay|clay" says:"its texture, for the water that it can hold for plants"`
	Depth   quantity.Metres       `key:"depth" default:"0.4 m" source:"common practice, no source" unit:"m" least:"0.1 m" most:"2 m" example:"0.4 m" says:"of soil that roots use"`
	By      string                `key:"watered_by" default:"drip" source:"the thriftiest way" choices:"drip|can|sprinkler|nobody" says:"how water comes to it: 90, 85 and 75 % of it reach the soil (common practice, no source)"`
	Hour    int                   `key:"watered_at" default:"6" source:"early in the day, common practice" least:"0" most:"23" example:"6" says:"hour of the day at which people look whether it is dry"`
	Crops   []Planting            `key:"crops" most:"4" says:"one after the other through the year"`
	Mineral float64               `key:"free_nitrogen" default:"0 g/m2" source:"a bed of the first spring, this program's choice" unit:"g/m2" least:"0 g/m2" most:"100 g/m2" example:"5 g/m2" says:"that roots can take on the first day, as a soil test tells; 10 kg/ha is 1 g/m2"`
	Compost float64               `key:"nitrogen" default:"90 g/m2" source:"4 cm of compost at 700 kg/m3 with 3 g/kg that are set free over the years, common practice, no source" unit:"g/m2" least:"0 g/m2" most:"1000 g/m2" example:"90 g/m2" says:"bound in its soil and compost on the first day"`
	Hand    bool                  `key:"by_hand" default:"yes" source:"common practice under glass" says:"flowers under glass are pollinated by hand"`
}

// A Lawn is grass that people water.
type Lawn struct {
	Area  quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"1 m2" most:"100000 m2" example:"60 m2" says:"of grass"`
	Kc    float64               `key:"kc" default:"0.95" source:"fao56 table 12: cool season turf, from memory; 0.85 for grass of warm places" least:"0.1" most:"1.6" example:"0.95" says:"crop coefficient"`
	Easy  float64               `key:"depletion" default:"40 %" source:"fao56 table 22: cool season turf, from memory; 50 % for grass of warm places" least:"10 %" most:"90 %" example:"40 %" says:"share of the soil's water that it takes with ease, and that may be gone before people water"`
	Soil  string                `key:"soil" default:"loam" source:"a tended garden's, common practice, no source" choices:"sand|loamy sand|sandy loam|loam|silt loam|silty clay loam|silty clay|clay" says:"its texture, for the water that it can hold for plants"`
	Depth quantity.Metres       `key:"depth" default:"0.5 m" source:"fao56 table 22: roots of turf 0.5 to 1.0 m, from memory" unit:"m" least:"0.05 m" most:"2 m" example:"0.5 m" says:"of soil that its roots use"`
	By    string                `key:"watered_by" default:"sprinkler" source:"the usual way of grass" choices:"sprinkler|drip|nobody" says:"how water comes to it: 75 and 90 % of it reach the soil (common practice, no source)"`
	Flow  float64               `key:"flow" default:"1000 L/h" source:"a sprinkled lawn can draw a kilolitre an hour, common practice, no source" unit:"L/h" least:"1 L/h" most:"100000 L/h" example:"1000 L/h" says:"that its sprinkler draws; it runs as many hours as it must"`
	Hour  int                   `key:"watered_at" default:"5" source:"before the sun is up, common practice" least:"0" most:"23" example:"5" says:"hour of the day at which people look whether it is dry, and begin"`
}
