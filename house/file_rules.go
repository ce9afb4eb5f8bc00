package house

// Rules is what the people do when a store runs low or the sky is dull.
type Rules struct {
	Foresight   string       `key:"foresight" default:"seen" source:"what anybody can know" choices:"seen|yesterday|forecast" says:"how the day's sky is judged: by what was seen of it so far, by the day before, or by a forecast that is never wrong, which favours the rules"`
	Dull        *Dull        `key:"dull" says:"what counts as a dull day"`
	WhenDull    []string     `key:"when_dull" most:"2" choices:"swap|wait" example:"[swap, wait]" says:"done on a dull day: swap does with gas what gas can do, wait puts off tasks that can wait"`
	ChargeBelow *ChargeBelow `key:"charge_below" says:"done while the battery is low"`
	TankBelow   *TankBelow   `key:"tank_below" says:"done while all tanks together are low"`
	InUseBelow  *InUseBelow  `key:"tank_in_use_below" says:"done while the tank that the house draws from is low"`
}

// Dull says what counts as a dull day.
type Dull struct {
	ClearnessBelow float64  `key:"clearness_below" needs:"yes" least:"0.05" most:"0.8" example:"0.35" says:"light of the day over the light above the air; around 0.7 is a clear day"`
	Until          *float64 `key:"until" least:"0.05" most:"0.9" example:"0.4" says:"back to usual at this; left out, at the same figure"`
}

// ChargeBelow is done while the battery is low.
type ChargeBelow struct {
	Charge float64  `key:"charge" needs:"yes" least:"1 %" most:"100 %" example:"60 %" says:"below this charge"`
	Until  *float64 `key:"until" least:"1 %" most:"100 %" example:"70 %" says:"back to usual at this; left out, at the same figure"`
	Do     []string `key:"do" needs:"yes" most:"2" choices:"swap|wait" example:"[swap, wait]" says:"what is done"`
}

// TankBelow is done while the tanks are low.
type TankBelow struct {
	Tank  float64  `key:"tank" needs:"yes" least:"1 %" most:"100 %" example:"25 %" says:"below this share of what can be drawn from full tanks"`
	Until *float64 `key:"until" least:"1 %" most:"100 %" example:"40 %" says:"back to usual at this; left out, at the same figure"`
	Do    []string `key:"do" needs:"yes" most:"1" choices:"save" example:"[save]" says:"what is done"`
	Saves float64  `key:"saves" needs:"yes" least:"1 %" most:"90 %" example:"30 %" says:"share of the savable uses that is saved"`
}

// InUseBelow is done while the tank in use is low.
type InUseBelow struct {
	Tank  float64  `key:"tank" needs:"yes" least:"1 %" most:"100 %" example:"5 %" says:"below this share of what can be drawn from it when full"`
	Until *float64 `key:"until" least:"1 %" most:"100 %" example:"10 %" says:"back to usual at this; left out, at the same figure"`
	Do    []string `key:"do" needs:"yes" most:"1" choices:"change" example:"[change]" says:"change draws from the fullest tank"`
}

// Wants is what each budget must reach.
type Wants struct {
	Water  *ShortDays   `key:"water" says:"every litre wanted, on all but so many days"`
	Power  *ShortDays   `key:"power" says:"every watt-hour of what must run, on all but so many days"`
	Warmth *WantWarmth  `key:"warmth" says:"hours outside the band of comfort of EN 16798-1, category II, in the worst room that people live in"`
	Food   *WantFood    `key:"food" says:"share of the household's vegetables that planter and beds bear, mean of the years"`
	Waste  *WantNoWaste `key:"waste" says:"no sewage comes up on the ground"`
}

// ShortDays is how many days a year a budget may fall short.
type ShortDays struct {
	PerYear float64 `key:"short_days" default:"0.1 /year" source:"one day in ten years, this program's choice" unit:"/year" least:"0 /year" most:"366 /year" example:"0.1 /year" says:"days on which not all was there"`
}

// WantWarmth is hours outside the comfort band.
type WantWarmth struct {
	HoursOutside float64 `key:"hours_outside" needs:"yes" unit:"h/year" least:"0 h/year" most:"8784 h/year" example:"200 h/year" says:"hours too cold or too warm"`
}

// WantFood is a share of the household's vegetables.
type WantFood struct {
	Share float64 `key:"share" needs:"yes" least:"0 %" most:"100 %" example:"40 %" says:"of the vegetables eaten"`
}

// WantNoWaste is that nothing comes to the surface.
type WantNoWaste struct {
	Surfacing bool `key:"surfacing" needs:"yes" example:"no" says:"whether foul water may come to the surface"`
}
