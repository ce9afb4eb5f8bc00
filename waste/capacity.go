package waste

import (
	"errors"
	"fmt"
	"math"
)

// A House is what the rules for tanks and fields ask of a house.
type House struct {
	People   float64
	Bedrooms int     // 0 where nobody counted
	Daily    float64 // L a day to the tank; 0 where nobody measured
}

// A TankRule is one published way to size a septic tank.
type TankRule struct {
	Name     string // as sheets write it
	Place    string // where it rules, see Places
	Formula  string // P people, Q flow, B bedrooms
	Source   string // "key: place; standing"
	Capacity func(House) (litres float64, err error)
}

const gallon = 3.785411784 // L in a US gallon, exact by definition

// TankRules lists the rules. They differ by more than twofold: the place decides which one rules.
func TankRules() []TankRule {
	return []TankRule{
		{"uk-nhbc-2020", "", "180 max(4, P) + 2000, at least 2700 L", "nhbc2020: 5.3.9, after BS 6297:1983; seen", func(h House) (float64, error) { return max(2700, 180*max(4, h.People)+2000), nil }},
		{"england-ad-h2", "england", "2700 + 180 max(0, P - 4)", "ad-h2: up to four users, then each; remembered", func(h House) (float64, error) { return 2700 + 180*max(0, h.People-4), nil }},
		{"who-1992", "", "Q + P N F S, N 3, F 1, S 40", "franceys: a day's flow and the sludge of three years above 20 degC; example 8.4 seen, factors remembered", whoCapacity},
		{"usa-county", "usa-county", "row of B", "us-county-septic: bedrooms 1-3, 4, 5; seen", byBedrooms(1000, 1000, 1000, 1250, 1500)},
		{"usa-upc", "usa-upc", "row of B", "upc-septic: bedrooms 1-2, 3, 4, 5-6; seen", byBedrooms(750, 750, 1000, 1200, 1500, 1500)},
		{"usa-epa-2002", "", "row of B", "epa2002: table after ICC 1995, bedrooms 1-8; remembered", byBedrooms(750, 750, 1000, 1200, 1425, 1650, 1875, 2100)},
		{"usa-by-flow", "", "1.5 Q, at least 750 US gallons; above 1,500 1,125 + 0.75 Q", "septic-page: corrected, one and a half days' flow to 1,500 US gallons a day, beyond it 1,125 and three quarters of it; seen", flowCapacity},
		{"south-africa-bylaw", "south-africa", "max(7000, 7 Q)", "za-bylaw: one municipality, 7,000 L and seven days; seen", func(h House) (float64, error) {
			if h.Daily <= 0 {
				return 0, errNoFlow
			}
			return max(7000, 7*h.Daily), nil
		}},
	}
}

// Places lists where a rule of TankRules is law or code. Anywhere else ask the authority.
func Places() []string { return []string{"england", "south-africa", "usa-county", "usa-upc"} }

// Ruling gives the rule of a place, and false where this list knows none.
func Ruling(place string) (TankRule, bool) {
	for _, r := range TankRules() {
		if r.Place != "" && r.Place == place {
			return r, true
		}
	}
	return TankRule{}, false
}

var errNoFlow = errors.New("needs the daily flow: measure it or give one")

// byBedrooms makes a rule from US gallons for one bedroom, two and so on.
func byBedrooms(gallons ...float64) func(House) (float64, error) {
	return func(h House) (float64, error) {
		if h.Bedrooms < 1 || h.Bedrooms > len(gallons) {
			return 0, fmt.Errorf("is printed for 1 to %d bedrooms, not %d", len(gallons), h.Bedrooms)
		}
		return gallon * gallons[h.Bedrooms-1], nil
	}
}

func whoCapacity(h House) (float64, error) {
	if h.Daily <= 0 {
		return 0, errNoFlow
	}
	return Retention(h.People, h.Daily/h.People) + SludgeVolume(h.People, 40, 3, Hot), nil
}

// Retention gives the litres of a day's flow, people times litres each (franceys, A = P q).
func Retention(people, each float64) float64 { return people * each }

// SupplyToTank gives the litres a person sends to the tank of those supplied (franceys, q = 90 % where a
// house has all its drains on the tank).
func SupplyToTank(supply float64) float64 { return 0.9 * supply }

// flowCapacity is a rule in US gallons a day; a page prints its second part without the comma, as 1.125.
func flowCapacity(h House) (float64, error) {
	if h.Daily <= 0 {
		return 0, errNoFlow
	}
	q := h.Daily / gallon
	if q <= 1500 {
		return gallon * max(750, 1.5*q), nil
	}
	return gallon * (1125 + 0.75*q), nil
}

// MaraRetention gives the least days of retention for a daily flow in litres, never below 0.2 (remembered,
// after Mara 1996: 1.5 - 0.3 log10(P q)).
func MaraRetention(daily float64) float64 { return max(0.2, 1.5-0.3*math.Log10(daily)) }
