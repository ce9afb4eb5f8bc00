package house

import (
	"fmt"
	"path/filepath"
	"strings"

	"suffice/gas"
	"suffice/people"
	"suffice/site"
	"suffice/site/weather/files"
)

// Compose builds the parts that a file describes. The error is a Faults: what the parts
// themselves refuse, each at the place in the file that it comes from.
func Compose(f *File) (*House, error) {
	r := &reader{file: f.path, marks: f.marks, broken: make(map[string]bool)}
	h := &House{Name: f.Name, Place: place(f), Indoors: f.Indoors, Described: described(f)}
	h.Horizon = r.horizon(f.Site.Horizon)
	r.refuse("site", h.Place.Faults())
	h.Weather = r.record(f, &h.Place)
	h.Money = currency(f)
	if f.People != nil {
		h.People = household(f.People)
		r.refuse("people", h.People.Check())
	}
	if f.Water != nil {
		h.WaterDesign, h.Water = r.water(f.Water)
	}
	if f.Power != nil {
		h.Power = r.power(f.Power)
		if c := f.Site.Coldest; c != nil {
			r.cold(h.Power, *c)
		}
	}
	if f.HotWater != nil {
		h.HotWater = r.hotWater(f.HotWater)
	}
	if f.Gas != nil {
		h.Gas = r.gas(f.Gas)
	}
	h.Rooms = r.rooms(f)
	h.Drains = r.drains(f)
	h.Garden = r.garden(f)
	if f.Rules != nil {
		h.Rules, h.Foresight = rules(f.Rules)
		r.refuse("rules", h.Rules.Check())
	}
	h.Wants = wants(f.Wants)
	if err := r.faults.told(); err != nil {
		return nil, err
	}
	h.Warnings = warnings(f, h)
	return h, nil
}

// refuse takes in what a part says against its design, each line as a fault of its own.
func (r *reader) refuse(where string, err error) {
	if err == nil {
		return
	}
	for line := range strings.Lines(err.Error()) {
		r.fault(where, "%s", strings.TrimPrefix(strings.TrimSpace(line), where+": "))
	}
}

func place(f *File) site.Place {
	return site.Place{Name: f.Name, Latitude: f.Site.Latitude, Longitude: f.Site.Longitude, Altitude: f.Site.Altitude, Clock: float64(f.Site.Clock)}
}

func (r *reader) horizon(points []HorizonPoint) site.Horizon {
	all := make([]site.HorizonPoint, len(points))
	for i, p := range points {
		all[i] = site.HorizonPoint(p)
	}
	horizon, err := site.NewHorizon(all...)
	r.refuse("site.horizon", err)
	return horizon
}

// record says which weather to open, with paths from where the program runs.
func (r *reader) record(f *File, at *site.Place) Record {
	w := f.Weather
	if w == nil {
		return Record{Sun: f.Power != nil || f.HotWater != nil}
	}
	beside := func(path string) string {
		if path == "" || filepath.IsAbs(path) {
			return path
		}
		return filepath.Join(filepath.Dir(f.path), path)
	}
	return Record{Path: beside(w.Record), BuiltIn: w.BuiltIn, Rain: beside(w.Rain), Sun: f.Power != nil || f.HotWater != nil, Coast: w.Coast, Matched: or(w.Years, "") != "drawn",
		Reading: r.reading("weather.reading", w.Reading, at), RainReading: r.reading("weather.rain_reading", w.RainReading, at)}
}

// reading says what a file does not say itself. Its place is the house's where neither it
// nor the person names another.
func (r *reader) reading(where string, options []string, at *site.Place) files.Options {
	var o files.Options
	for i, option := range options {
		item := fmt.Sprintf("%s[%d]", where, i)
		key, value, found := strings.Cut(option, "=")
		if !found {
			r.fault(item, "%q is no option: write name=value, for example unit.RAIN=mm", short(option))
			continue
		}
		r.refuse(item, o.Set(strings.TrimSpace(key), strings.TrimSpace(value)))
	}
	if o.Latitude == nil && o.Longitude == nil {
		o.Latitude, o.Longitude = &at.Latitude, &at.Longitude
		if o.Altitude == nil {
			o.Altitude = &at.Altitude
		}
	}
	return o
}

func household(p *People) *people.Household {
	h := &people.Household{Residents: float64(p.Residents)}
	for i := range p.Uses {
		h.Uses = append(h.Uses, use(&p.Uses[i]))
	}
	for _, v := range p.Visitors {
		h.Visitors = append(h.Visitors, people.Visitors{People: float64(v.People), Dates: people.Dates{From: date(v.From), To: date(v.To)}})
	}
	for _, a := range p.Away {
		h.Away = append(h.Away, people.Dates{From: date(a.From), To: date(a.To)})
	}
	return h
}

func date(d MonthDay) people.Date { return people.Date{Month: int8(d.Month), Day: int8(d.Day)} }

func use(u *Use) people.Use {
	built := people.Use{Name: u.Name, Kind: kind(u.Water), Drain: drain(u), Hours: u.Hours.shares(), Days: people.Weekdays(u.Days), WhenEmpty: u.WhenAway, Savable: *u.Savable}
	if u.Amount.PerPerson {
		built.PerPerson = u.Amount.Litres
	} else {
		built.PerHouse = u.Amount.Litres
	}
	if u.Hot != nil {
		built.Hot, built.Mix = true, *u.Hot
	}
	return built
}

// drain gives where a use's water goes.
func drain(u *Use) people.Drain {
	if u.Drains == nil {
		return kind(u.Water).UsualDrain()
	}
	for d := range people.Drains {
		if d.String() == *u.Drains {
			return d
		}
	}
	panic(fmt.Sprintf("house: %q passed as a drain", *u.Drains))
}

func kind(name string) people.Kind {
	for k := range people.Kinds {
		if k.String() == name {
			return k
		}
	}
	panic(fmt.Sprintf("house: %q passed as a kind of use", name))
}

// shares gives each hour the same weight.
func (h Hours) shares() (shares [24]float64) {
	for i, on := range h {
		if on {
			shares[i] = 1
		}
	}
	return shares
}

func (r *reader) gas(g *Gas) *gas.Supply {
	fuel, err := gas.ByName(g.Fuel)
	r.refuse("gas.fuel", err)
	supply := &gas.Supply{Fuel: fuel, Bottle: g.Bottle, Bottles: g.Bottles, Lead: g.Lead}
	r.refuse("gas", supply.Prepare())
	return supply
}

func rules(f *Rules) (people.Rules, people.Foresight) {
	var r people.Rules
	if f.Dull != nil {
		r.Dull, r.WhenDull = line(f.Dull.ClearnessBelow, f.Dull.Until), do(f.WhenDull)
	}
	if c := f.ChargeBelow; c != nil {
		r.Charge, r.WhenCharge = line(c.Charge, c.Until), do(c.Do)
	}
	if t := f.TankBelow; t != nil {
		r.Tank, r.WhenTank, r.Saves = line(t.Tank, t.Until), do(t.Do), t.Saves
	}
	if t := f.InUseBelow; t != nil {
		r.Duty, r.WhenDuty = line(t.Tank, t.Until), do(t.Do)
	}
	return r, map[string]people.Foresight{"seen": people.Seen, "yesterday": people.Yesterday, "forecast": people.Forecast}[f.Foresight]
}

func line(below float64, until *float64) people.Line {
	l := people.Line{Below: below, Until: below}
	if until != nil {
		l.Until = *until
	}
	return l
}

func do(words []string) (d people.Do) {
	for _, w := range words {
		switch w {
		case "swap":
			d.Swap = true
		case "wait":
			d.Wait = true
		case "save":
			d.Save = true
		case "change":
			d.ChangeTank = true
		}
	}
	return d
}

func wants(w *Wants) (all WantsOf) {
	if w == nil {
		return all
	}
	if w.Water != nil {
		all.Water = Want{true, w.Water.PerYear}
	}
	if w.Power != nil {
		all.Power = Want{true, w.Power.PerYear}
	}
	if w.Warmth != nil {
		all.Warmth = WantOfWarmth{true, w.Warmth.HoursOutside}
	}
	if w.Food != nil {
		all.Food = WantOfFood{true, w.Food.Share}
	}
	if w.Waste != nil {
		all.Waste = Want{Stated: !w.Waste.Surfacing}
	}
	return all
}

// currency gives the one currency of all prices, or "".
func currency(f *File) string {
	if f.Water != nil && f.Water.Delivery != nil && f.Water.Delivery.Price != nil {
		return f.Water.Delivery.Price.Currency
	}
	if f.Gas != nil && f.Gas.Price != nil {
		return f.Gas.Price.Currency
	}
	return ""
}
