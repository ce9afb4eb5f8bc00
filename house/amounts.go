package house

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"suffice/quantity"
	"suffice/waste"
)

// Money is an amount in a currency, by its ISO 4217 code.
type Money struct {
	Amount   float64
	Currency string
}

func (m *Money) form() string { return "an amount and the code of the currency: 110 EUR" }

var moneyForm = regexp.MustCompile(`^([0-9]+(?:\.[0-9]+)?) ?([A-Z]{3})$`)

func (m *Money) read(text string) string {
	parts := moneyForm.FindStringSubmatch(text)
	if parts == nil {
		return fmt.Sprintf("%q is not a price: write an amount and the three letters of the currency, for example 110 EUR", short(text))
	}
	amount, err := strconv.ParseFloat(parts[1], 64)
	if err != nil || amount > 1e9 {
		return fmt.Sprintf("%s is too large for a price: the most is 1000000000", short(text))
	}
	m.Amount, m.Currency = amount, parts[2]
	return ""
}

// An Amount is a daily use of water.
type Amount struct {
	Litres    quantity.Litres // a day, of one person or of the whole house
	PerPerson bool
}

func (a *Amount) form() string { return "30 L/person/d, or 45 L/d for the whole house" }

// mostDaily is more than any house uses for one thing, and keeps sums finite.
const mostDaily = 100000 // L

func (a *Amount) read(text string) string {
	if says := unitless(text, "30 L/person/d or 45 L/d"); says != "" {
		return says
	}
	v, err := quantity.ReadIn(text, "L/d")
	if err != nil {
		person, each := quantity.ReadIn(text, "L/person/d")
		if each != nil {
			return fmt.Sprintf("%s; here for example 30 L/person/d or 45 L/d", err)
		}
		v, a.PerPerson = person, true
	}
	a.Litres = quantity.Litres(v)
	return between(text, v, 0, mostDaily, "0 L/d", "100 kL/d")
}

// A Level is what a store holds: in litres, or as a share of what it can hold.
type Level struct {
	Litres quantity.Litres // where Share is not a number
	Share  float64         // 0 to 1, or not a number where Litres is given
}

func (l *Level) form() string { return "20 kL, or 50 % of what it holds" }

func (l *Level) read(text string) string {
	if says := unitless(text, "20 kL or 50 %"); says != "" {
		return says
	}
	if share, err := quantity.ReadIn(text, ""); err == nil {
		l.Share = share
		return between(text, share, 0, 1, "0 %", "100 %")
	}
	v, err := quantity.ReadIn(text, "L")
	if err != nil {
		return fmt.Sprintf("%s; here for example 20 kL or 50 %%", err)
	}
	l.Litres, l.Share = quantity.Litres(v), math.NaN()
	return between(text, v, 0, mostLevel, "0 L", "2000 kL")
}

// mostLevel is the largest tank.
const mostLevel = 2e6 // L

// A Capacity is what a battery holds, in ampere-hours or in watt-hours.
type Capacity struct {
	AmpereHours float64            // 0 where WattHours is given
	WattHours   quantity.WattHours // 0 where AmpereHours is given
}

func (c *Capacity) form() string { return "600 Ah, or 14.4 kWh" }

// mostStored is more than any house's battery.
const mostStored = 10e6 // Wh, or Ah

func (c *Capacity) read(text string) string {
	if says := unitless(text, "600 Ah or 14.4 kWh"); says != "" {
		return says
	}
	v, err := quantity.ReadIn(text, "Wh")
	if err == nil {
		c.WattHours = quantity.WattHours(v)
	} else {
		ampere, other := quantity.ReadIn(text, "Ah")
		if other != nil {
			return fmt.Sprintf("%s; here for example 600 Ah or 14.4 kWh", err)
		}
		v, c.AmpereHours = ampere, ampere
	}
	return between(text, v, 1, mostStored, "1 Ah or 1 Wh", "10 MWh")
}

// in gives the energy at a nominal voltage.
func (c Capacity) in(volts float64) quantity.WattHours {
	return c.WattHours + quantity.WattHours(c.AmpereHours*volts)
}

// A Growth is how much sludge and scum a person adds in a year.
type Growth float64 // L

func (g *Growth) form() string {
	return "60 L/year, or the name of a published rate: " + strings.Join(rateNames(), ", ")
}

// rateNames gives the names of package waste's rates in their order.
func rateNames() []string {
	var names []string
	for _, r := range waste.SludgeRates() {
		names = append(names, r.Name)
	}
	return names
}

func (g *Growth) read(text string) string {
	if at := slices.Index(rateNames(), text); at >= 0 {
		*g = Growth(waste.SludgeRates()[at].Rate)
		return ""
	}
	if says := unitless(text, "60 L/year"); says != "" {
		return says
	}
	v, err := quantity.ReadIn(text, "L/year")
	if err != nil {
		return fmt.Sprintf("%q is neither a rate such as 60 L/year nor the name of one: the nearest name is %q; known are %s", short(text), nearest(text, rateNames()), strings.Join(rateNames(), ", "))
	}
	*g = Growth(v)
	return between(text, v, leastGrowth, mostGrowth, "5 L/year", "300 L/year")
}

// leastGrowth and mostGrowth lie well outside all published rates, 25 to 110.
const leastGrowth, mostGrowth = 5, 300 // L

// unitless refuses numbers that can be misread, and those without a unit.
func unitless(text, example string) string {
	if says := trap(text); says != "" {
		return says
	}
	if plainNumber.MatchString(text) {
		return fmt.Sprintf("%s has no unit: write it with one, for example %s", short(text), example)
	}
	return ""
}

// between says which limit a value passes, or "".
func between(text string, v, least, most float64, leastText, mostText string) string {
	switch {
	case v < least:
		return fmt.Sprintf("%s is too small: the least is %s", short(text), leastText)
	case v > most:
		return fmt.Sprintf("%s is too large: the most is %s", short(text), mostText)
	}
	return ""
}
