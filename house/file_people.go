package house

import "suffice/quantity"

// People is who lives in the house and what they use.
type People struct {
	Residents int       `key:"residents" needs:"yes" least:"0" most:"100" example:"4" says:"how many live here"`
	Uses      []Use     `key:"uses" most:"32" says:"what water is used for"`
	Visitors  []Visit   `key:"visitors" most:"16" says:"people who come to stay, every year"`
	Away      []Absence `key:"away" most:"16" says:"days on which nobody is at home, every year"`
}

// A Use is one thing that water is used for.
type Use struct {
	Name     string            `key:"name" needs:"yes" example:"shower" says:"what it is"`
	Water    string            `key:"water" needs:"yes" choices:"drinking|washing|flushing|outdoor" says:"drinking, cooking and dishes; shower, basin and laundry; toilets; garden, yard and animals"`
	Drains   *string           `key:"drains" choices:"basin|shower|bath|laundry|dishwasher|kitchen|toilet|ground" example:"laundry" says:"where it goes when used; left out, drinking to the kitchen's drain, washing to the shower's, flushing down the toilet, outdoor into the ground (common practice)"`
	Amount   Amount            `key:"amount" needs:"yes" example:"30 L/person/d" says:"per person and day, or per day for the whole house"`
	Hours    Hours             `key:"hours" default:"0-24" source:"evenly over the day, common practice, no source" example:"6-9 19-22" says:"the hours of the clock in which it is used, evenly"`
	Days     Days              `key:"days" default:"every day" source:"the plainest reading of a use" example:"saturday" says:"every day, workdays, weekends, or names of days"`
	Hot      *quantity.Celsius `key:"hot" unit:"degC" least:"10 degC" most:"65 degC" example:"38 degC" says:"the temperature wanted at the tap; cold water where left out"`
	WhenAway bool              `key:"when_away" default:"no" source:"an empty house uses no water" says:"whether it goes on while nobody is at home"`
	Savable  *bool             `key:"savable" example:"yes" says:"whether it is cut down when people save; left out, all but drinking is"`
}

// A Visit is people who come to stay.
type Visit struct {
	People int      `key:"people" needs:"yes" least:"1" most:"100" example:"2" says:"how many come"`
	From   MonthDay `key:"from" needs:"yes" example:"12-20" says:"first day, as month-day"`
	To     MonthDay `key:"to" needs:"yes" example:"01-04" says:"last day, as month-day; it may lie in the next year"`
}

// An Absence is a time when nobody is at home.
type Absence struct {
	From MonthDay `key:"from" needs:"yes" example:"08-03" says:"first day away, as month-day"`
	To   MonthDay `key:"to" needs:"yes" example:"08-24" says:"last day away, as month-day; it may lie in the next year"`
}
