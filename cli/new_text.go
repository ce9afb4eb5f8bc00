package cli

import (
	"fmt"
	"strings"

	"suffice/house"
)

// Lines is text in the making: one line a call.
type lines struct{ strings.Builder }

func (l *lines) say(format string, args ...any) { fmt.Fprintf(l, format+"\n", args...) }

// text writes the house file. What people typed goes in by house.Splice, which knows how to
// quote it.
func (p *plan) text() ([]byte, error) {
	var l lines
	p.top(&l)
	p.people(&l)
	if p.has("tank") {
		p.water(&l)
	}
	if p.has("panels") {
		p.power(&l)
	}
	if p.has("collector") {
		p.hotWater(&l)
	}
	if p.has("gas") {
		l.say("\n# Two bottles, so that one is full when the other runs empty. Gas can poison, choke and explode: a")
		l.say("# licensed person fits it, and rooms where it burns need air from outside.\ngas: {fuel: propane, bottle: 11 kg, bottles: 2, lead: 2 days}")
	}
	p.rules(&l)
	p.wants(&l)
	return p.typed([]byte(l.String()))
}

// siteAlone is the least file that names place and weather.
func (p *plan) siteAlone() ([]byte, error) {
	var l lines
	p.top(&l)
	return p.typed([]byte(l.String()))
}

// typed puts what people typed into the places that top keeps for it.
func (p *plan) typed(text []byte) ([]byte, error) {
	changes := []house.Change{{Path: "site.latitude", Value: p.latitude}, {Path: "site.longitude", Value: p.longitude}, {Path: "site.altitude", Value: p.altitude}, {Path: "site.clock", Value: p.clock}}
	if p.name != "" {
		changes = append(changes, house.Change{Path: "name", Value: p.name})
	}
	if p.record != "" {
		changes = append(changes, house.Change{Path: "weather.record", Value: p.record})
	}
	for i, said := range p.reading {
		changes = append(changes, house.Change{Path: fmt.Sprintf("weather.reading[%d]", i), Value: said})
	}
	text, _, err := house.Splice(p.file, text, changes...)
	return text, err
}

func (p *plan) top(l *lines) {
	l.say("# Written by suffice new. The sizes are rules of thumb, each named where it is used; they are common")
	l.say("# practice without a source, a first guess and no design. suffice prove says what they are worth.")
	l.say("# Drinking water, gas, batteries and wiring hurt people when they are wrong: local codes and licensed")
	l.say("# people decide. suffice schema lists every key there is, with its meaning.")
	l.say("format: 1\nname: House\n")
	l.say("site:\n  latitude: 0 deg # north positive\n  longitude: 0 deg # east positive\n  altitude: 0 m\n  clock: UTC # standard time all year\n")
	switch {
	case p.builtIn != "":
		l.say("weather: {built_in: %s} # daily, 1984 to 2020, from a reanalysis; its rain is no gauge", p.builtIn)
	case len(p.reading) > 0:
		l.say("weather:\n  record: FILE # beside this file\n  reading: [%s] # what the record does not say itself", strings.Join(numbered(len(p.reading)), ", "))
	default:
		l.say("weather:\n  record: FILE # beside this file")
	}
}

// numbered keeps places in a list for what is typed.
func numbered(n int) []string {
	all := make([]string, n)
	for i := range all {
		all[i] = fmt.Sprintf("x%d", i)
	}
	return all
}

func (p *plan) people(l *lines) {
	l.say("\npeople:\n  residents: %d", p.residents)
	if !p.has("tank") {
		return
	}
	l.say("  # A careful house: %g L a head and day, %s in all.", headLitres(), inUnit(p.draw(), "L"))
	l.say("  uses:")
	for _, u := range thumbUses {
		hot := ""
		if u.hot != "" && p.has("collector") {
			hot = ", hot: " + u.hot
		}
		l.say("    - {name: %s, water: %s, amount: %g L/person/d, hours: %s%s}", u.name, u.water, u.litres, u.hours, hot)
	}
}

func (p *plan) water(l *lines) {
	l.say("\nwater:\n  roofs: [{name: roof, area: %s, surface: %s}]", inUnit(p.roof, "m2"), p.surface)
	l.say("  # The first rain after dry days washes the roof: half a millimetre is led away.")
	l.say("  first_flush: {depth: 0.5 mm, after_dry: 72 h}")
	if p.dry == 0 {
		l.say("  # The record has no complete year of rain to tell the longest run of dry days, so %d days are taken.", dryUnsaid)
	} else {
		l.say("  # The longest run of days under 1 mm in the record is %d days. The season around it brings little, so", p.dry)
		l.say("  # half as much again, and at least %d days, are to be carried: %g days.", dryLeast, p.carried())
	}
	l.say("  # Tank = days x draw = %g x %s, rounded up to whole kilolitres.", p.carried(), inUnit(p.draw(), "L"))
	l.say("  tanks: [{name: tank, holds: %g kL}]", p.tank()/1000)
	if p.has("panels") {
		l.say("  # A small pump: 12 m are the height to the tap and the pressure wanted there.")
		l.say("  supply: {by: pump, head: 12 m, flow: 1.5 m3/h, pipe_length: 20 m, bore: 28 mm, efficiency: 30 %%}")
	} else {
		l.say("  supply: {by: gravity} # without power the water has to fall to the taps")
	}
	l.say("  # Rain from a roof is not for drinking as it is: a licensed person says what treatment it takes, and it must be tested.")
	if p.has("panels") {
		l.say("  treatment: [{name: sediment filter, uses: all}, {name: ultraviolet lamp, uses: drinking, power: %g W, running: always}]", lampPower)
	} else {
		l.say("  treatment: [{name: sediment filter, uses: all}]")
	}
}

func (p *plan) power(l *lines) {
	sun := winterSun(number(p.latitude))
	l.say("\npower:\n  # A day wants %s: the loads below, what water and heat take, and the inverter's own %g W. In the darkest",
		inUnit(p.wanted(), "Wh"), inverterIdle)
	l.say("  # month panels that lean towards the sun see perhaps %g h of full sun a day (by latitude, from memory), of which", sun)
	l.say("  # %g %% arrives at the socket: panels = %s / (%g h x %g).", 100*arrives, inUnit(p.wanted(), "Wh"), sun, arrives)
	l.say("  arrays: [{name: panels, peak: %g kW, slope: %g deg, azimuth: %g deg}]", p.panels()/1000, p.lean(), p.faces())
	l.say("  # Current = panels / %g V, and a quarter more.", bankVoltage)
	l.say("  controller: {current: %g A}", upTo(1.25*p.panels()/bankVoltage, 10))
	l.say("  # Battery = %g dark days x %s / %g that may be used.", darkDays, inUnit(p.wanted(), "Wh"), lithiumUsed)
	l.say("  battery: {kind: lithium, capacity: %g kWh, voltage: %g V}", p.battery()/1000, bankVoltage)
	l.say("  # At most %s may run in one hour; motors take more for a moment, so it starts twice its power.", inUnit(p.together(), "W"))
	l.say("  inverter: {continuous: %g kW, starting: %g kW, idle: %g W}", p.inverter()/1000, 2*p.inverter()/1000, inverterIdle)
	l.say("  loads:")
	for _, load := range p.loads() {
		l.say("    - {name: %s, energy: %g kWh/d, power: %g W, hours: %d-%d, %s}", load.name, p.energy(load)/1000, p.running(load), load.from, load.to, load.more)
	}
}

func (p *plan) hotWater(l *lines) {
	l.say("\nhot_water:\n  # One square metre of collector and 75 L of store a head; the collector leans for winter.")
	pump := collectorPump
	if !p.has("panels") {
		pump = 0
		l.say("  # Without power the water rises by its own warmth: the store stands above the collector.")
	}
	l.say("  collector: {area: %g m2, eta0: 0.78, a1: 3.6 W/m2K, a2: 0.015 W/m2K2, slope: %g deg, azimuth: %g deg, pump: %g W}",
		p.collector(), p.lean(), p.faces(), pump)
	l.say("  store: {holds: %g L}", p.store())
	switch {
	case p.has("gas"):
		l.say("  # 60 degC against legionella; taps then need a mixer against scalding.\n  backup: {by: gas, set: 60 degC}")
	case p.electricBackup():
		l.say("  # 60 degC against legionella; taps then need a mixer against scalding. The element is a large load in winter.")
		l.say("  backup: {by: electricity, set: 60 degC, power: %g kW}", elementPower/1000)
	}
}

// rules is what the people do; only what can have an effect is written.
func (p *plan) rules(l *lines) {
	var all lines
	if p.has("panels") {
		dull := "wait"
		if p.has("gas") {
			dull = "swap, wait"
		}
		all.say("  dull: {clearness_below: 0.35}\n  when_dull: [%s]\n  charge_below: {charge: 40 %%, do: [%s]}", dull, dull)
	}
	if p.has("tank") {
		all.say("  tank_below: {tank: 30 %%, do: [save], saves: 30 %%}")
	}
	if all.Len() > 0 {
		l.say("\nrules: # what the people do: put off washing, cook with gas, save water\n%s", strings.TrimRight(all.String(), "\n"))
	}
}

func (p *plan) wants(l *lines) {
	l.say("\n# A short day is one on which something that must run did not: one in ten years is allowed.\nwants:")
	for _, budget := range p.budgets {
		l.say("  %s: {short_days: 0.1 /year}", budget)
	}
}
