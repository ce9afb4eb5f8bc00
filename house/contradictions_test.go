package house

import (
	"strings"
	"testing"
)

// whole is a house with every part that is computed, one line a part, so that a case can
// change one.
const whole = `name: A
site: {latitude: 35 deg, longitude: 24 deg, altitude: 9 m, clock: UTC+2}
weather: {built_in: crete}
people: {residents: 1, uses: [{name: u, water: washing, amount: 9 L/d}]}
water:
  roofs: [{name: r, area: 90 m2, surface: metal}]
  tanks: [{name: main, holds: 9 kL}, {name: back, holds: 5 kL}]
  supply: {by: pump, head: 9 m, flow: 1 m3/h, pipe_length: 9 m, bore: 25 mm, efficiency: 30 %}
  delivery: {load: 4 kL, lead: 2 days, order_below: 1 kL, price: 90 EUR}
power:
  arrays: [{name: p, peak: 1 kW, slope: 40 deg, azimuth: 180 deg}]
  controller: {current: 40 A}
  battery: {kind: lead-acid, capacity: 300 Ah, voltage: 24 V}
  inverter: {continuous: 2 kW}
  loads: [{name: l, power: 90 W}]
  generator: {power: 1 kW, fuel: 0.5 L/kWh, start_below: 55 %, stop_above: 80 %}
hot_water:
  store: {holds: 200 L}
  backup: {by: gas, set: 60 degC}
gas: {fuel: propane, bottle: 9 kg, bottles: 2, price: 30 EUR}
rules: {charge_below: {charge: 60 %, do: [wait]}}
wants: {water: {short_days: 0.1 /year}}
rooms: [{name: a, area: 9 m2, walls: [{name: w, area: 9 m2, faces: air}]}]
septic: {holds: 3 kL}
garden: {beds: [{name: b, area: 9 m2}]}
`

// Parts that cannot stand together: old text, new text, what is said about it.
var contradictions = []struct{ old, new, says string }{
	{"clock: UTC+2", "clock: UTC+2, horizon: [{azimuth: 0 deg, height: 9 deg}, {azimuth: 360 deg, height: 3 deg}]",
		"h:2:127: site.horizon[1].azimuth: 360 deg is already the direction of site.horizon[0]: give each direction one height"},
	{"{built_in: crete}", "{built_in: crete, record: a.csv}", `h:3:21: weather.built_in: a record is named as well, "a.csv": keep one of them`},
	{"{built_in: crete}", "{rain: a.dly}", "h:3:10: weather: names no record: write  record: PATH  or  built_in: crete"},
	{"{built_in: crete}", "{built_in: crete, years: drawn}", "h:3:35: weather.years: says how a rain gauge goes with the record, but no gauge is named: write  rain: PATH, or take this key out"},
	{"amount: 9 L/d}", "amount: 9 L/d}, {name: u, water: flushing, amount: 9 L/d}", `h:4:80: people.uses[1].name: "u" is already the name of people.uses[0]: give each its own`},
	{"amount: 9 L/d}", "amount: 9 L/person/d, when_away: yes}", "h:4:90: people.uses[0].when_away: the amount is for each person, and nobody is there then: write the amount for the whole house, such as 45 L/d, or take this key out"},

	{"surface: metal}", "surface: metal, into: mian}", `h:6:56: water.roofs[0].into: there is no tank "mian": the nearest is "main"; known are main, back`},
	{"holds: 9 kL", "holds: 9 kL, dead: 4 kL, fire: 5 kL", "h:7:31: water.tanks[0].holds: 9000 L is no more than dead and fire water together, 9000 L: nothing would be left to draw"},
	{"holds: 9 kL", "holds: 9 kL, start: 10 kL", "h:7:44: water.tanks[0].start: 10000 L is more than the tank holds, 9000 L"},
	{"holds: 9 kL", "holds: 9 kL, overflow: bakc", `h:7:47: water.tanks[0].overflow: "bakc" is no tank, but nearly the name of tank "back": write that, or another word for a place outside`},
	{"holds: 9 kL", "holds: 9 kL, overflow: main", `h:7:47: water.tanks[0].overflow: leads back to tank "main": let the last tank spill to the ground`},
	{"holds: 9 kL}, {name: back, holds: 5 kL", "holds: 9 kL, overflow: back}, {name: back, holds: 5 kL, overflow: main",
		`h:7:47: water.tanks[0].overflow: leads back to tank "main": let the last tank spill to the ground`},
	{"name: back", "name: main", `h:7:45: water.tanks[1].name: "main" is already the name of water.tanks[0]: give each its own`},
	{"roofs: [{name: r, area: 90 m2, surface: metal}]", "roofs: []", "h:6:10: water.roofs: is an empty list: describe at least one, or take water out"},
	{"head: 9 m, flow: 1 m3/h, pipe_length: 9 m,", "", "h:8:11: water.supply.flow: is missing for a supply by pump: write for example  flow: 1.8 m3/h\n" +
		"h:8:11: water.supply.head: is missing for a supply by pump: write for example  head: 14 m\n" +
		"h:8:11: water.supply.pipe_length: is missing for a supply by pump: write for example  pipe_length: 35 m"},
	{"by: pump, head: 9 m, flow: 1 m3/h, pipe_length: 9 m, bore: 25 mm", "by: gravity", "h:8:37: water.supply.efficiency: means nothing where water falls by itself: take it out, or write  by: pump"},
	{"{by: pump, head: 9 m, flow: 1 m3/h, pipe_length: 9 m, bore: 25 mm, efficiency: 30 %}", "{by: gravity}\n  treatment: [{name: t, power: 9 W, running: flow}]",
		"h:9:15: water.treatment[0].flow: is missing: a stage that takes power only while water flows needs it; write for example  flow: 0.5 m3/h"},
	{"order_below: 1 kL", "order_below: 14 kL", "h:9:53: water.delivery.order_below: 14000 L is no less than what full tanks give, 14000 L: water would be ordered all the time"},
	{"order_below: 1 kL", "order_below: 1 kL, into: side", `h:9:65: water.delivery.into: there is no tank "side": the nearest is "main"; known are main, back`},

	{"controller: {current: 40 A}", "", "h:11:3: power.controller: is missing: panels need one; write for example  controller: {current: 60 A, limit_voltage: 150 V}"},
	{"voltage: 24 V}", "voltage: 24 V, start: 40 %}", "h:13:70: power.battery.start: 40 % is below the floor, 50 %: begin with the same or more"},
	{"continuous: 2 kW", "continuous: 2 kW, peak_efficiency: 85 %", "h:14:13: power.inverter.full_load_efficiency: 90 % is above the efficiency at its best load, 85 %: exchange them, or look at the data sheet"},
	{"continuous: 2 kW", "continuous: 2 kW, starting: 1 kW", "h:14:42: power.inverter.starting: 1000 W is less than its continuous power, 2000 W"},
	{"stop_above: 80 %", "stop_above: 50 %", "h:16:76: power.generator.stop_above: 50 % is not above the charge at which it is started, 55 %: it would stop at once"},
	{"power: 90 W", "need: must", "h:15:11: power.loads[0]: says neither power nor energy: write for example  power: 45 W  or  energy: 0.8 kWh/d"},
	{"power: 90 W", "power: 90 W, waits: 1.5 days", "h:15:41: power.loads[0].waits: 1.5 days are no whole days: write for example 3 days"},
	{"power: 90 W", "energy: 1 kWh/d, waits: 2 days", "h:15:45: power.loads[0].waits: the task may wait, so its power while it runs is needed: write for example  power: 1.5 kW"},
	{"power: 90 W", "power: 90 W, drops: yes", "h:15:41: power.loads[0].drops: only a task that may wait can be given up: write for example  waits: 3 days, or take this key out"},
	{"power: 90 W", "power: 90 W, energy: 1 kWh/d, hours: 8-12", "h:15:42: power.loads[0].energy: 1000 Wh/d cannot be used in 4 hours at 90 W: give it more hours or more power"},
	{"power: 90 W", "power: 90 W, starting: 50 W", "h:15:44: power.loads[0].starting: 50 W is less than it takes while it runs, 90 W: a motor takes more at the start"},
	{"power: 90 W}", "power: 90 W}, " + strings.Repeat("{name: t, power: 9 W, waits: 1 days}, ", 1) + waiting(8), "h:15:10: power.loads: 9 of them may wait: the most is 8, so put some together"},

	{"\n  backup: {by: gas, set: 60 degC}", "", "h:18:3: hot_water: nothing heats this store: describe hot_water.collector or hot_water.backup"},
	{"by: gas", "by: electricity", "h:19:11: hot_water.backup.power: is missing for an electric element: write for example  power: 1.5 kW"},
	{"by: gas", "by: gas, place: inside", "h:19:11: hot_water.backup.power: is missing for a burner inside the store: write for example  power: 6 kW"},
	{"by: gas", "by: electricity, power: 1 kW, place: after", "h:19:49: hot_water.backup.place: an electric element stands inside the store: write  place: inside, or take this key out"},
	{"holds: 200 L", "holds: 200 L, limit: 55 degC", "h:19:26: hot_water.backup.set: 60 degC is above the limit of the store, 55 degC: set it lower"},
	{"gas: {fuel: propane, bottle: 9 kg, bottles: 2, price: 30 EUR}", "", "h:19:16: hot_water.backup.by: there is no gas in this file: describe gas, or write  by: electricity"},
	{"price: 30 EUR", "price: 30 USD", "h:20:55: gas.price: is in USD, but water.delivery.price is in EUR: write all prices in one currency"},

	{"{charge_below:", "{dull: {clearness_below: 0.3}, charge_below:", "h:21:15: rules.dull: says what a dull day is, but not what is done on it: write  when_dull: [swap, wait]  in rules"},
	{"{charge_below:", "{when_dull: [wait], charge_below:", "h:21:20: rules.when_dull: says what is done on a dull day, but not what that is: write  dull: {clearness_below: 0.35}  in rules"},
	{"charge: 60 %", "charge: 60 %, until: 50 %", "h:21:45: rules.charge_below.until: 0.5 is below 0.6, where the rule begins: write the same or more"},

	{"wants: {", "wants: {warmth: {hours_outside: 9 h/year}, food: {share: 9 %}, waste: {surfacing: no}, ", ""},
	{"septic: {holds: 3 kL}\n", "", ""},
	{"name: w, area", "name: x, area: 9 m2, faces: earth}, {name: x, area", `h:23:83: rooms[0].walls[1].name: "x" is already the name of rooms[0].walls[0]: give each its own`},
	{"faces: air", "faces: eart", `h:23:68: rooms[0].walls[0].faces: there is no thing to face called "eart": the nearest is "earth"; known are air, earth, nothing, a`},
	{"name: w, area: 9 m2, faces: air}]", "name: w, area: 9 m2, faces: air}], openings: [{to: b, area: 1 m2}]", `h:23:91: rooms[0].openings[0].to: there is no room called "b": the nearest is "a"; known are a`},
	{"name: w, area: 9 m2, faces: air}]", "name: w, area: 9 m2, faces: air}], openings: [{to: a, area: 1 m2}]", `h:23:91: rooms[0].openings[0].to: "a" cannot open to itself: name another room`},
	{"name: w, area: 9 m2, faces: air}]", "name: w, area: 9 m2, faces: air}], stove: {least: 2 kg/h}", `h:23:90: rooms[0].stove.least: 2 kg/h is more than the full fire of 1.5 kg/h: a smallest fire is smaller`},
	{"name: w, area: 9 m2, faces: air}]", "name: w, area: 9 m2, faces: air}], stove: {until: 17 degC}", `h:23:90: rooms[0].stove.until: 17 degC is colder than 18 degC, under which the stove is lit: write the warmer of the two here`},
	{"name: w, area: 9 m2, faces: air}]", "name: w, area: 9 m2, faces: air}], inlets: 1 m2", `h:23:83: rooms[0].inlets: feed no vents: write for example  vents: 1 m2, or take this key out`},
	{"faces: air", "faces: a", `h:23:68: rooms[0].walls[0].faces: a wall of "a" cannot face the same room: write air, earth, nothing or another room`},
}

// chained is a house with every part of the way of used water, one line a part.
const chained = top + `people: {residents: 2, uses: [{name: s, water: washing, amount: 9 L/d}, {name: t, water: flushing, amount: 9 L/d}]}
planter: {area: 6 m2, fed_by: [shower], crops: [{crop: tomato, sown: 03-15}, {crop: spinach, sown: 10-01}], rinse: 30 mm}
flush_well: {area: 1 m2}
septic: {holds: 3 kL, setbacks: [{from: tank, to: building, is: 8 m}], trench: {length: 9 m, soil: sand, trees: {count: 1, distance: 9 m}}}
garden: {beds: [{name: b, area: 9 m2, crops: [{crop: onion, sown: 11-15}]}, {name: c, area: 2 m2, under: glass}]}
wants: {food: {share: 9 %}, waste: {surfacing: no}}
`

// What cannot stand together on the way of used water and in the beds.
var chainContradictions = []struct{ old, new, says string }{
	{"amount: 9 L/d}, {name: t", "amount: 9 L/d, drains: toilet}, {name: t",
		"h:3:80: people.uses[0].drains: only  water: flushing  goes down the toilet: write  drains: kitchen  for what must not come to a bed"},
	{"flushing, amount: 9 L/d", "flushing, amount: 9 L/d, drains: shower", "h:3:123: people.uses[1].drains: what flushes goes down the toilet and nowhere else: take this key out"},
	{"amount: 9 L/d}, {name: t, water: flushing, amount: 9 L/d}", "amount: 9 L/d}", "h:5:13: flush_well: nobody flushes: describe a use with  water: flushing, or take this key out"},
	{"[shower]", "[shower, laundry]", `h:4:40: planter.fed_by[1]: no use of water runs into the drain "laundry": write  drains: laundry  at the use that does, or take it out of the list`},
	{"[shower]", "[toilet]", `h:4:32: planter.fed_by[0]: "toilet" is not known here: the nearest known is "shower"; it is one of basin, shower, bath, laundry, dishwasher, kitchen`},
	{"rinse: 30 mm", "rinse_every: 9 days", "h:4:122: planter.rinse_every: says how often, but nothing is poured: write for example  rinse: 30 mm, or take this key out"},
	{"rinse: 30 mm", "kc: 0.9, plants: [mint], roots: 0.3 m, depletion: 40 %", strings.Join([]string{
		"h:4:113: planter.kc: " + perennial, "h:4:126: planter.plants: " + perennial, "h:4:141: planter.roots: " + perennial, "h:4:159: planter.depletion: " + perennial}, "\n")},
	{"sown: 10-01}]", "sown: 3-15}]", "h:4:100: planter.crops[1].sown: is the day of planter.crops[0] as well, and a bed holds one crop at a time: write another day, or make two beds"},
	{"{area: 6 m2, fed_by", "{area: 6 m2, room: living, fed_by", "h:4:29: planter.room: there are no rooms in this file: describe rooms, or take this key out"},
	{"{area: 6 m2, fed_by", "{area: 6 m2, under: sky, light: 40 %, damp: 50 %, fed_by", "h:4:42: planter.light: means nothing under the open sky: write  under: glass, or take this key out\n" +
		"h:4:54: planter.damp: means nothing under the open sky: write  under: glass, or take this key out"},
	{"planter: {area: 6 m2, fed_by: [shower], crops: [{crop: tomato, sown: 03-15}, {crop: spinach, sown: 10-01}], rinse: 30 mm}\n", "",
		"h:4:13: flush_well: nothing runs into it: describe planter, or take this key out, so that the toilets flush from the taps"},

	{"{area: 1 m2}", "{least: 0.3 m}", "h:5:13: flush_well.float: 0.25 m lies below least, 0.3 m: the levels rise from least to float, refill and depth"},
	{"{area: 1 m2}", "{float: 0.4 m, depth: 0.3 m}", "h:5:13: flush_well.refill: 0.35 m lies below float, 0.4 m: the levels rise from least to float, refill and depth"},

	{"is: 8 m}", "is: 8 m}, {from: tank, to: building, is: 9 m}", "h:6:88: septic.setbacks[1].to: the distance from tank to building is told in septic.setbacks[0] already: keep the shorter one"},
	{"count: 1,", "count: 1, evergreen: yes, leaves_from: 04-01,", "h:6:153: septic.trench.trees.leaves_from: means nothing for trees that keep their leaves: take it out, or write  evergreen: no"},
	{"count: 1,", "count: 1, leaves_from: 10-01, leaves_to: 05-01,", "h:6:155: septic.trench.trees.leaves_to: lies before the first leaves: trees with leaves over the winter are told as  evergreen: yes"},
	{"count: 1,", "count: 1, leaves_from: 05-01, leaves_to: 07-01,", "h:6:155: septic.trench.trees.leaves_to: 61 days lie between the first leaves and the last, which take 35 to open and as many to fall: write a later day, or  evergreen: yes"},

	{"name: c, area", "name: b, area", `h:7:84: garden.beds[1].name: "b" is already the name of garden.beds[0]: give each its own`},
	{"{name: b, area: 9 m2,", "{name: b, area: 9 m2, by_hand: no,", "h:7:48: garden.beds[0].by_hand: means nothing under the open sky: write  under: glass, or take this key out"},
	{"{name: b, area: 9 m2,", "{name: b, area: 9 m2, watered_by: nobody, watered_at: 5,", "h:7:71: garden.beds[0].watered_at: says when, but nobody waters it: take this key out, or write  watered_by: drip"},
	{"sown: 11-15}]", "sown: 11-15}, {crop: radish, sown: 11-15}]", "h:7:96: garden.beds[0].crops[1].sown: is the day of garden.beds[0].crops[0] as well, and a bed holds one crop at a time: write another day, or make two beds"},
}

// perennial is said of each key of plants that stand all year, where there are crops.
const perennial = "tells of plants that stand all year, where crops follow each other: take out this key or crops, or make a bed of the garden for one of them"

func TestContradictionsOfTheChainAreRefused(t *testing.T) {
	for _, c := range chainContradictions {
		if strings.Count(chained, c.old) != 1 {
			t.Errorf("%q stands %d times in the chained house", c.old, strings.Count(chained, c.old))
			continue
		}
		_, err := Read("h", []byte(strings.Replace(chained, c.old, c.new, 1)))
		got := ""
		if err != nil {
			got = err.Error()
		}
		if got != c.says {
			t.Errorf("%q for %q: got\n%s\nwant\n%s", c.new, c.old, got, c.says)
		}
	}
	composed(t, "h", []byte(chained))
}

// waiting makes loads that may wait.
func waiting(n int) string {
	var loads []string
	for i := range n {
		loads = append(loads, "{name: t"+string(rune('a'+i))+", power: 9 W, waits: 1 days}")
	}
	return strings.Join(loads, ", ")
}

func TestContradictionsAreRefused(t *testing.T) {
	for _, c := range contradictions {
		if strings.Count(whole, c.old) != 1 {
			t.Errorf("%q stands %d times in the whole house", c.old, strings.Count(whole, c.old))
			continue
		}
		_, err := Read("h", []byte(strings.Replace(whole, c.old, c.new, 1)))
		got := ""
		if err != nil {
			got = err.Error()
		}
		if got != c.says {
			t.Errorf("%q for %q: got\n%s\nwant\n%s", c.new, c.old, got, c.says)
		}
	}
}

// A rule or a want for a part that is not there is refused.
func TestPartsNeedEachOther(t *testing.T) {
	const text = top + `rules: {charge_below: {charge: 60 %, do: [wait]}, tank_below: {tank: 9 %, do: [save], saves: 9 %}}
wants: {water: {}, power: {}, warmth: {hours_outside: 9 h/year}, food: {share: 9 %}, waste: {surfacing: no}}
`
	const want = `h:3:23: rules.charge_below: there is no battery in this file: describe power.battery, or take this rule out
h:3:63: rules.tank_below: there is no tank in this file: describe water, or take this rule out
h:4:16: wants.water: nothing in this file can reach it: describe water, or take this want out
h:4:27: wants.power: nothing in this file can reach it: describe power, or take this want out
h:4:39: wants.warmth: nothing in this file can reach it: describe rooms, or take this want out
h:4:72: wants.food: nothing in this file can reach it: describe garden, or take this want out
h:4:93: wants.waste: nothing in this file can reach it: describe septic, or take this want out`
	_, err := Read("h", []byte(text))
	if err == nil || err.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", err, want)
	}
}

func TestAllFaultsComeAtOnceInTheOrderOfTheLines(t *testing.T) {
	text := strings.NewReplacer("area: 90 m2", "area: -90 m2", "bottles: 2", "bottels: 2", "holds: 5 kL", "holds: 5", "kind: lead-acid", "kind: lead").Replace(whole)
	_, err := Read("h", []byte(text))
	var lines []string
	for _, f := range err.(Faults) {
		lines = append(lines, f.Where)
	}
	want := "water.roofs[0].area water.tanks[1].holds power.battery.kind gas.bottels"
	if got := strings.Join(lines, " "); got != want {
		t.Errorf("got faults at\n%s\nwant\n%s\nfrom\n%v", got, want, err)
	}
}

// What only the built part can tell is refused when the parts are composed.
func TestPartsRefuseTheirDesign(t *testing.T) {
	for _, c := range []struct{ old, new, says string }{
		{"azimuth: 180 deg}", "azimuth: 180 deg, module: {open_voltage: 41 V, voltage_coefficient: -0.3 %/K, series: 4}}",
			"h:11:135: power.arrays[0].module.series: array p: 4 panels in series make 180.2 V in open circuit at -8 degC, more than the controller's limit of 150 V: wire at most 3 in series"},
		{"continuous: 2 kW", "continuous: 2 kW, idle: 200 W",
			"h:11:3: power: inverter: idle power of 200 W, 0.94 at best and 0.9 at full load do not belong to one machine: idle power alone would make the best load worse; give a smaller idle power or a smaller peak efficiency"},
		{"bore: 25 mm", "bore: 25 mm, roughness: 4 mm", "h:8:11: water.supply: pump: a roughness of 4 mm is out of range: 0 to a twentieth of the bore"},
		{"{built_in: crete}", "{record: a.csv, reading: [colour=red, unit]}", `h:3:36: weather.reading[0]: "colour" is no option of a weather file: there are latitude, longitude, altitude, clock, time, name, station, unit.COLUMN and column.COLUMN` + "\n" +
			`h:3:48: weather.reading[1]: "unit" is no option: write name=value, for example unit.RAIN=mm`},
		{"septic: {holds: 3 kL}", "septic: {holds: 3 kL, local_setbacks: [field to well 30 m, well 9 m, tank to moon 1e9 m]}",
			`h:24:60: septic.local_setbacks[1]: setback "well 9 m" does not begin with "tank to" or "field to": write for example field to well 30 m` + "\n" +
				`h:24:70: septic.local_setbacks[2]: setback "tank to moon 1e9 m": 1e+09 m is outside 0 to 10000 m`},
	} {
		text := strings.NewReplacer("altitude: 9 m", "altitude: 9 m, coldest: -8 degC", "current: 40 A", "current: 40 A, limit_voltage: 150 V").Replace(strings.Replace(whole, c.old, c.new, 1))
		f, err := Read("h", []byte(text))
		if err != nil {
			t.Errorf("%q: %v", c.new, err)
			continue
		}
		if _, err := Compose(f); err == nil || err.Error() != c.says {
			t.Errorf("%q for %q: got\n%v\nwant\n%s", c.new, c.old, err, c.says)
		}
	}
}

// What other readers would turn into numbers, dates and truths is text where text is wanted.
func TestTextStaysText(t *testing.T) {
	for _, name := range []string{"no", "2024-01-01", "012", "1_000", "0x10", "~ a", "12:30", "'null'", "null."} {
		f, err := Read("h", []byte("name: "+name+"\n"+top[8:]))
		if want := strings.Trim(name, "'"); err != nil || f.Name != want {
			t.Errorf("name %s was read as %+v, %v", name, f, err)
		}
	}
}
