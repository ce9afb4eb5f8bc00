package house

import (
	"fmt"
	"slices"
	"strings"

	"suffice/quantity"
)

// check looks for parts that contradict each other. It leaves alone what was not read
// soundly, so that one mistake makes one fault.
func (r *reader) check(f *File) {
	r.checkSite(&f.Site)
	if f.Weather != nil {
		r.checkWeather(f.Weather)
	}
	if f.People != nil {
		r.checkPeople(f.People)
	}
	if f.Water != nil {
		r.checkWater(f.Water)
	}
	if f.Power != nil {
		r.checkPower(f)
	}
	if f.HotWater != nil {
		r.checkHotWater(f)
	}
	if f.Rules != nil {
		r.checkRules(f)
	}
	if f.Wants != nil {
		r.checkWants(f)
	}
	r.checkRooms(f.Rooms)
	unique(r, "materials", f.Materials, func(m *MaterialOf) string { return m.Name })
	r.checkChain(f)
	r.checkMoney(f)
}

// given reports whether the file itself states a key.
func (r *reader) given(path string) bool { _, ok := r.marks[path]; return ok }

// unique refuses a second entry of the same name.
func unique[T any](r *reader, list string, items []T, name func(*T) string) {
	first := make(map[string]int)
	for i := range items {
		where := fmt.Sprintf("%s[%d].name", list, i)
		word := name(&items[i])
		if !r.sound(where) || word == "" {
			continue
		}
		if j, twice := first[word]; twice {
			r.fault(where, "%q is already the name of %s[%d]: give each its own", word, list, j)
			continue
		}
		first[word] = i
	}
}

// oneOf refuses a name that is not among the known ones, and gives its index.
func (r *reader) oneOf(where, name, what string, known []string) int {
	if !r.sound(where) {
		return -1
	}
	i := slices.Index(known, name)
	if i < 0 {
		r.fault(where, "there is no %s %q: the nearest is %q; known are %s", what, short(name), nearest(name, known), strings.Join(known, ", "))
	}
	return i
}

func (r *reader) checkSite(s *Site) {
	seen := make(map[quantity.Degrees]int)
	for i, p := range s.Horizon {
		where := fmt.Sprintf("site.horizon[%d].azimuth", i)
		azimuth := p.Azimuth
		if azimuth == 360 {
			azimuth = 0
		}
		j, twice := seen[azimuth]
		if twice && r.sound(where) {
			r.fault(where, "%s is already the direction of site.horizon[%d]: give each direction one height", quantity.Text(float64(p.Azimuth), "deg"), j)
		}
		seen[azimuth] = i
	}
}

func (r *reader) checkWeather(w *Weather) {
	switch {
	case w.Record != "" && w.BuiltIn != "":
		r.fault("weather.built_in", "a record is named as well, %q: keep one of them", short(w.Record))
	case w.Record == "" && w.BuiltIn == "" && r.sound("weather.record", "weather.built_in"):
		r.fault("weather", "names no record: write  record: PATH  or  built_in: crete")
	}
	if w.Rain == "" && r.given("weather.years") && r.sound("weather.rain", "weather.years") {
		r.fault("weather.years", "says how a rain gauge goes with the record, but no gauge is named: write  rain: PATH, or take this key out")
	}
}

func (r *reader) checkPeople(p *People) {
	unique(r, "people.uses", p.Uses, func(u *Use) string { return u.Name })
	r.checkDrains(p)
	for i, u := range p.Uses {
		where := fmt.Sprintf("people.uses[%d]", i)
		if u.WhenAway && u.Amount.PerPerson && r.sound(where+".amount", where+".when_away") {
			r.fault(where+".when_away", "the amount is for each person, and nobody is there then: write the amount for the whole house, such as 45 L/d, or take this key out")
		}
	}
}

func (r *reader) checkRules(f *File) {
	rules := f.Rules
	if d := rules.Dull; d != nil {
		r.checkUntil("rules.dull", "clearness_below", d.ClearnessBelow, d.Until)
		if len(rules.WhenDull) == 0 && r.sound("rules.when_dull") {
			r.fault("rules.dull", "says what a dull day is, but not what is done on it: write  when_dull: [swap, wait]  in rules")
		}
	} else if len(rules.WhenDull) > 0 && r.sound("rules.dull") {
		r.fault("rules.when_dull", "says what is done on a dull day, but not what that is: write  dull: {clearness_below: 0.35}  in rules")
	}
	if c := rules.ChargeBelow; c != nil {
		r.checkUntil("rules.charge_below", "charge", c.Charge, c.Until)
		if f.Power == nil && r.sound("power") {
			r.fault("rules.charge_below", "there is no battery in this file: describe power.battery, or take this rule out")
		}
	}
	if t := rules.TankBelow; t != nil {
		r.checkUntil("rules.tank_below", "tank", t.Tank, t.Until)
	}
	if t := rules.InUseBelow; t != nil {
		r.checkUntil("rules.tank_in_use_below", "tank", t.Tank, t.Until)
	}
	if f.Water == nil && r.sound("water") {
		for _, path := range []string{"rules.tank_below", "rules.tank_in_use_below"} {
			if r.given(path) {
				r.fault(path, "there is no tank in this file: describe water, or take this rule out")
			}
		}
	}
}

func (r *reader) checkUntil(rule, key string, below float64, until *float64) {
	if until != nil && *until < below && r.sound(rule+"."+key, rule+".until") {
		r.fault(rule+".until", "%g is below %g, where the rule begins: write the same or more", *until, below)
	}
}

func (r *reader) checkWants(f *File) {
	for _, w := range []struct {
		budget, part  string
		wanted, there bool
	}{
		{"water", "water", f.Wants.Water != nil, f.Water != nil},
		{"power", "power", f.Wants.Power != nil, f.Power != nil},
		{"warmth", "rooms", f.Wants.Warmth != nil, len(f.Rooms) > 0},
		{"food", "garden", f.Wants.Food != nil, f.Garden != nil || f.Planter != nil && len(f.Planter.Crops) > 0},
		{"waste", "septic", f.Wants.Waste != nil, f.Septic != nil},
	} {
		if w.wanted && !w.there && r.sound(w.part) {
			r.fault("wants."+w.budget, "nothing in this file can reach it: describe %s, or take this want out", w.part)
		}
	}
}

// checkMoney refuses a second currency: sums of two are no sums.
func (r *reader) checkMoney(f *File) {
	first, where := "", ""
	see := func(path string, m *Money) {
		switch {
		case m == nil || !r.sound(path) || !r.given(path):
		case first == "":
			first, where = m.Currency, path
		case m.Currency != first:
			r.fault(path, "is in %s, but %s is in %s: write all prices in one currency", m.Currency, where, first)
		}
	}
	if f.Water != nil && f.Water.Delivery != nil {
		see("water.delivery.price", f.Water.Delivery.Price)
	}
	if f.Gas != nil {
		see("gas.price", f.Gas.Price)
	}
}
