package house

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"suffice/power"
	"suffice/quantity"
)

// A warner gathers what may be meant but is rarely right.
type warner struct{ all []string }

func (w *warner) warn(where, format string, args ...any) {
	w.all = append(w.all, where+": "+fmt.Sprintf(format, args...))
}

// warnings looks over a sound file and its parts once more.
func warnings(f *File, h *House) []string {
	var w warner
	for _, doubt := range h.Place.Doubts() {
		w.warn("site", "%s", doubt)
	}
	w.weather(f)
	w.people(f)
	if f.Water != nil {
		w.water(f)
	}
	if f.Power != nil {
		w.power(f, h)
	}
	if f.HotWater != nil {
		w.hotWater(f)
	}
	if f.Rules != nil {
		w.rules(f)
	}
	w.stoves(f, h)
	w.chain(f, h)
	return w.all
}

// builtIns is where the built-in records are from.
var builtIns = map[string]struct{ latitude, longitude quantity.Degrees }{"crete": {35.03, 24.83}}

func (w *warner) weather(f *File) {
	if f.Weather == nil {
		w.warn("weather", "the file names no record: one must be given before the house can be led through any weather")
		return
	}
	if from, ok := builtIns[f.Weather.BuiltIn]; ok {
		if math.Abs(float64(f.Site.Latitude-from.latitude)) > 1 || math.Abs(float64(f.Site.Longitude-from.longitude)) > 1 {
			w.warn("weather.built_in", "the record %s is for latitude %g deg, longitude %g deg, and the house does not stand there: name a record of the place",
				f.Weather.BuiltIn, float64(from.latitude), float64(from.longitude))
		}
	}
}

func (w *warner) people(f *File) {
	p := f.People
	if p == nil {
		w.warn("people", "the file names no people: nobody draws water or is at home")
		return
	}
	if f.Water != nil && len(p.Uses) == 0 {
		w.warn("people.uses", "nobody uses any water: the tanks only fill")
	}
	for i, u := range p.Uses {
		if u.Hot != nil && f.HotWater == nil {
			w.warn(fmt.Sprintf("people.uses[%d].hot", i), "%s is wanted warm, but the file has no hot_water: it is drawn cold", u.Name)
		}
	}
}

func (w *warner) water(f *File) {
	filled := make([]bool, len(f.Water.Tanks))
	for i := range f.Water.Roofs {
		filled[f.Water.tankAt(f.Water.Roofs[i].Into)] = true
	}
	if d := f.Water.Delivery; d != nil {
		into := &f.Water.Tanks[f.Water.tankAt(d.Into)]
		filled[f.Water.tankAt(d.Into)] = true
		if d.Load > into.Holds-into.Dead-into.Fire {
			w.warn("water.delivery.load", "a load of %s does not fit into tank %s: some of it is always spilled", litres(d.Load), into.Name)
		}
	}
	for i := range f.Water.Tanks {
		if to := slices.Index(f.Water.tankNames(), f.Water.Tanks[i].Overflow); to >= 0 {
			filled[to] = true
		}
	}
	for i, ok := range filled {
		if !ok {
			w.warn(fmt.Sprintf("water.tanks[%d]", i), "nothing fills tank %s: no roof, no overflow, no delivery", f.Water.Tanks[i].Name)
		}
	}
	if s := f.Water.Supply; s != nil && s.By == "pump" && f.Power == nil {
		w.warn("water.supply", "the file has no power: the pump is taken to run whenever it is wanted")
	}
}

func (w *warner) power(f *File, h *House) {
	if len(f.Power.Arrays) == 0 && f.Power.Generator == nil {
		w.warn("power", "nothing charges the battery: no arrays, no generator")
	}
	for i, a := range f.Power.Arrays {
		w.facing(fmt.Sprintf("power.arrays[%d].azimuth", i), f.Site.Latitude, a.Slope, a.Azimuth)
	}
	w.inverter(f.Power, h.Power)
	if g := f.Power.Generator; g != nil && g.StartBelow <= *f.Power.Battery.Floor {
		w.warn("power.generator.start_below", "%s is no more than the floor of the battery, %s: the generator starts only when something already goes without",
			share(g.StartBelow), share(*f.Power.Battery.Floor))
	}
}

// inverter holds the busiest hour of the week against what the inverter can carry and start.
func (w *warner) inverter(p *Power, built *PowerParts) {
	v := &built.System.Inverter
	running, when := busiest(p, built, func(loads []power.Load) quantity.Watts { running, _ := power.StartingPower(loads); return running })
	if running > v.Continuous {
		w.warn("power.inverter.continuous", "%s may run at once %s, and it carries %s: what is needed least goes without; spread the hours or choose a larger one",
			watts(running), when, watts(v.Continuous))
	}
	starting, when := busiest(p, built, func(loads []power.Load) quantity.Watts { _, starting := power.StartingPower(loads); return starting })
	if v.Starting > 0 && starting > v.Starting {
		w.warn("power.inverter.starting", "%s are wanted for a moment when the heaviest motor starts last %s, and it gives %s: spread the hours, choose a larger one, or a motor that starts softly",
			watts(starting), when, watts(v.Starting))
	}
}

// busiest gives the largest figure of the loads that may run in one hour of the week, and
// when that first is.
func busiest(p *Power, built *PowerParts, figure func([]power.Load) quantity.Watts) (most quantity.Watts, when string) {
	var together []power.Load
	for day := range weekdays {
		for hour := range 24 {
			together = together[:0]
			for i := range p.Loads {
				if p.Loads[i].Days[day] && p.Loads[i].Hours[hour] {
					together = append(together, built.Loads[i])
				}
			}
			if v := figure(together); v > most {
				most, when = v, fmt.Sprintf("on a %s from %d to %d", weekdays[day], hour, hour+1)
			}
		}
	}
	return most, when
}

// tropic is the latitude, deg, under which the noon sun stands on either side of the house.
const tropic = 23.44

// facing doubts a slope that looks away from the noon sun: away from the equator.
func (w *warner) facing(where string, latitude, slope, azimuth quantity.Degrees) {
	equator := quantity.Degrees(180)
	if latitude < 0 {
		equator = 0
	}
	off := math.Abs(math.Remainder(float64(azimuth-equator), 360))
	if slope >= 15 && math.Abs(float64(latitude)) > tropic && off > 90 {
		w.warn(where, "%g deg looks away from the sun at noon, which stands at %g deg there: is it counted from north, east positive", float64(azimuth), float64(equator))
	}
}

func (w *warner) hotWater(f *File) {
	h := f.HotWater
	if c := h.Collector; c != nil {
		w.facing("hot_water.collector.azimuth", f.Site.Latitude, c.Slope, c.Azimuth)
		if *c.Pump > 0 && f.Power == nil {
			w.warn("hot_water.collector.pump", "the file has no power: the pump is taken to run whenever it is wanted")
		}
		if tropics := math.Abs(float64(f.Site.Latitude)) < tropic; c.Frost == "none" && !(tropics && f.Site.Altitude < 1500) {
			w.warn("hot_water.collector.frost", "nothing keeps the collector from freezing: one cold clear night bursts it, even where the air stays a little above 0 degC")
		}
	}
	if b := h.Backup; b != nil && b.By == "electricity" && f.Power == nil {
		w.warn("hot_water.backup", "the file has no power: the element is taken to run whenever it is wanted")
	}
	if b := h.Backup; b == nil || b.Set < legionella {
		w.warn("hot_water", "stored water that stays below %g degC can grow legionella: local code and a licensed person decide how it is kept hot or flushed, and how taps are kept from scalding",
			float64(legionella))
	}
}

// legionella is the temperature at which hot water is to be stored [hsg274-2].
const legionella quantity.Celsius = 60

func (w *warner) rules(f *File) {
	does := func(word string) bool {
		r := f.Rules
		return slices.Contains(r.WhenDull, word) || r.ChargeBelow != nil && slices.Contains(r.ChargeBelow.Do, word)
	}
	var loads []Load
	if f.Power != nil {
		loads = f.Power.Loads
	}
	if does("swap") && !slices.ContainsFunc(loads, func(l Load) bool { return l.Gas > 0 }) {
		w.warn("rules", "swap does nothing: no load says that gas can do it, as  gas: 50 %%  does")
	}
	if does("wait") && !slices.ContainsFunc(loads, func(l Load) bool { return l.Waits > 0 }) {
		w.warn("rules", "wait does nothing: no load says that it can, as  waits: 3 days  does")
	}
	if f.Rules.TankBelow != nil && (f.People == nil || !slices.ContainsFunc(f.People.Uses, func(u Use) bool { return *u.Savable })) {
		w.warn("rules.tank_below", "save does nothing: no use of water is savable")
	}
	if f.Rules.InUseBelow != nil && len(f.Water.Tanks) == 1 {
		w.warn("rules.tank_in_use_below", "change does nothing: there is only one tank")
	}
}

// described lists what the file describes and nothing computes yet.
func described(f *File) []string {
	var all []string
	say := func(format string, args ...any) {
		all = append(all, fmt.Sprintf(format, args...))
	}
	if len(f.Rooms) > 0 && !layered(f.Rooms) {
		var names []string
		for _, room := range f.Rooms {
			names = append(names, room.Name)
		}
		say("rooms (%s)", strings.Join(names, ", "))
	}
	if w := f.Wants; w != nil {
		for name, stated := range map[string]bool{"warmth": w.Warmth != nil && !layered(f.Rooms)} {
			if stated {
				say("wants.%s", name)
			}
		}
	}
	slices.Sort(all)
	return all
}
