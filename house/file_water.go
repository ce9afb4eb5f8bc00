package house

import "suffice/quantity"

// Water is the way from the roofs to the taps.
type Water struct {
	Roofs         []Roof      `key:"roofs" needs:"yes" most:"8" says:"the roofs that rain is caught from"`
	FirstFlush    *FirstFlush `key:"first_flush" says:"the first rain after a dry time, led away with its dirt, at every roof"`
	Tanks         []Tank      `key:"tanks" needs:"yes" most:"8" says:"where water is kept; the house begins to draw from the first"`
	ChangesItself bool        `key:"changes_itself" default:"yes" source:"this program's choice: tanks are joined by a changeover valve" says:"when the tank in use gives no more, the next one is opened at once; no, where only people change tanks"`
	Supply        *Supply     `key:"supply" says:"how water comes to the taps; left out, it falls freely"`
	Treatment     []Treatment `key:"treatment" most:"8" says:"filters and lamps, in the order in which water passes them"`
	Salt          float64     `key:"salt" default:"0.03 g/L" source:"rain off a roof, from memory: 10 to 50 mg/L, more by the sea" unit:"g/L" least:"0 g/L" most:"5 g/L" example:"0.03 g/L" says:"dissolved salt in the water of the taps, for the planter"`
	Delivery      *Delivery   `key:"delivery" says:"water brought by road"`
}

// A Roof is one catching surface.
type Roof struct {
	Name        string                `key:"name" needs:"yes" example:"main" says:"which roof"`
	Area        quantity.SquareMetres `key:"area" needs:"yes" unit:"m2" least:"1 m2" most:"20000 m2" example:"130 m2" says:"as seen from above, not along the slope"`
	Surface     string                `key:"surface" needs:"yes" choices:"metal|tiles|glazed tiles|fibre cement|thatch|smooth|rough|flat|gravel|green|other" says:"what the rain falls on"`
	Coefficient *float64              `key:"coefficient" least:"0.05" most:"1" example:"0.9" says:"share of the rain beyond wetting that comes to the tank; left out, the usual one of the surface"`
	Wetting     quantity.Millimetres  `key:"wetting" default:"0.4 mm" source:"enhealth-rainwater, appendix B: 2 mm a month, over five wet spells a month (assumed)" unit:"mm" least:"0 mm" most:"20 mm" example:"0.4 mm" says:"rain that wets the dry surface in each wet spell and never runs off"`
	Into        *string               `key:"into" example:"main" says:"the tank it fills; left out, the first"`
}

// A FirstFlush is a chamber that takes the first dirty rain.
type FirstFlush struct {
	Depth    quantity.Millimetres `key:"depth" default:"0.5 mm" source:"common practice, no source" unit:"mm" least:"0 mm" most:"10 mm" example:"0.5 mm" says:"depth over the roof that is led away"`
	Litres   quantity.Litres      `key:"litres" default:"0 L" source:"the depth alone" unit:"L" least:"0 L" most:"2000 L" example:"20 L" says:"led away at every roof beside the depth"`
	AfterDry float64              `key:"after_dry" default:"72 h" source:"common practice, no source" unit:"h" least:"1 h" most:"2000 h" example:"72 h" says:"dry hours after which it stands empty again"`
}

// A Tank keeps water.
type Tank struct {
	Name     string          `key:"name" needs:"yes" example:"main" says:"which tank"`
	Holds    quantity.Litres `key:"holds" needs:"yes" unit:"L" least:"50 L" most:"2000 kL" example:"40 kL" says:"from its floor to its overflow"`
	Dead     quantity.Litres `key:"dead" default:"0 L" source:"nothing is held back unless the file says so" unit:"L" least:"0 L" most:"500 kL" example:"800 L" says:"water below the outlet, with the sludge"`
	Fire     quantity.Litres `key:"fire" default:"0 L" source:"nothing is held back unless the file says so" unit:"L" least:"0 L" most:"500 kL" example:"2 kL" says:"kept for a fire, never drawn by the house"`
	Start    Level           `key:"start" default:"50 %" source:"this program's choice: half full" example:"20 kL" says:"what it holds in the first hour"`
	Leak     quantity.Litres `key:"leak" default:"0 L/d" source:"a sound tank" unit:"L/d" least:"0 L/d" most:"5000 L/d" example:"3 L/d" says:"what it loses while there is any water in it"`
	Overflow string          `key:"overflow" default:"ground" source:"the plainest reading of a tank" example:"garden" says:"where it spills to: the name of another tank, or any word for a place outside"`
}

// A Supply brings water from the tank to the taps.
type Supply struct {
	By         string                `key:"by" needs:"yes" choices:"pump|gravity" says:"what moves the water"`
	Head       *quantity.Metres      `key:"head" unit:"m" least:"0 m" most:"300 m" example:"14 m" says:"by pump: height from water to tap, with the pressure wanted there as metres; by gravity: the fall from tank to tap"`
	Flow       *float64              `key:"flow" unit:"m3/h" least:"0.05 m3/h" most:"50 m3/h" example:"1.8 m3/h" says:"what the pump gives while it runs"`
	PipeLength *quantity.Metres      `key:"pipe_length" unit:"m" least:"0 m" most:"5000 m" example:"35 m" says:"length of the pipe"`
	Bore       *quantity.Millimetres `key:"bore" unit:"mm" least:"5 mm" most:"500 mm" example:"32 mm" says:"inner diameter of the pipe"`
	Roughness  quantity.Millimetres  `key:"roughness" default:"0.0015 mm" source:"moody-chart: drawn plastic or copper" unit:"mm" least:"0 mm" most:"5 mm" example:"0.0015 mm" says:"of the pipe's wall"`
	Fittings   float64               `key:"fittings" default:"4" source:"some bends, a check valve, inlet and outlet, common practice, no source" least:"0" most:"200" example:"4" says:"sum of the loss factors of bends, valves, inlet and outlet"`
	Efficiency *float64              `key:"efficiency" least:"2 %" most:"90 %" example:"35 %" says:"of pump and motor together: water power over electric power"`
}

// A Treatment is one stage of the train from the tank to the taps.
type Treatment struct {
	Name    string         `key:"name" needs:"yes" example:"sediment filter" says:"which stage"`
	Uses    Kinds          `key:"uses" default:"all" source:"a stage in the main pipe" example:"drinking" says:"which water passes it"`
	Loss    float64        `key:"loss" default:"0 %" source:"a cartridge loses nothing" least:"0 %" most:"90 %" example:"1 %" says:"share of the water lost in backwash or reject"`
	Power   quantity.Watts `key:"power" default:"0 W" source:"a cartridge needs no power" unit:"W" least:"0 W" most:"2 kW" example:"25 W" says:"what it takes while running"`
	Running string         `key:"running" default:"always" source:"the careful reading of a lamp" choices:"always|flow" says:"whether it runs all day or only while water flows"`
	Flow    *float64       `key:"flow" unit:"m3/h" least:"0.01 m3/h" most:"50 m3/h" example:"0.5 m3/h" says:"the most that it lets through"`
}

// A Delivery is water brought by road.
type Delivery struct {
	Load       quantity.Litres `key:"load" needs:"yes" unit:"L" least:"50 L" most:"100 kL" example:"8 kL" says:"one load"`
	Lead       float64         `key:"lead" needs:"yes" unit:"h" least:"0 h" most:"120 days" example:"3 days" says:"from order to arrival"`
	OrderBelow quantity.Litres `key:"order_below" needs:"yes" unit:"L" least:"0 L" most:"2000 kL" example:"3 kL" says:"what can still be drawn from all tanks when it is ordered"`
	Price      *Money          `key:"price" example:"110 EUR" says:"of one load"`
	Into       *string         `key:"into" example:"main" says:"the tank it is filled into; left out, the first"`
}
