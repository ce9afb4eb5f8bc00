package house

import (
	"strings"
	"testing"
)

// top is the least a house file says, on lines 1 and 2.
const top = "name: A\nsite: {latitude: 35 deg, longitude: 24 deg, altitude: 9 m, clock: UTC+2}\n"

// tank is water of one roof and one tank, on line 3.
const tank1 = "water: {roofs: [{name: r, area: 90 m2, surface: metal}], tanks: [{name: main, holds: 9 kL}]}\n"

// bank is power of a battery and an inverter without loads, on lines 3 and 4.
const bank = "power:\n  battery: {kind: lithium, capacity: 5 kWh, voltage: 48 V}\n  inverter: {continuous: 2 kW}\n"

// Every way in which a file can be wrong, and the very sentence.
var wrong = []struct{ about, text, says string }{
	// the file itself
	{"empty", " \n\n", "h:1:1: the file is empty: begin with a line such as  name: Terrace House"},
	{"only comments", "# a\n# b\n", "h:1:1: the file has only comments: begin with a line such as  name: Terrace House"},
	{"only dashes", "---\n", "h:2:1: the file does not say anything about a house: begin with a line such as  name: Terrace House"},
	{"a list", "- a\n", "h:1:1: the file does not say anything about a house: begin with a line such as  name: Terrace House"},
	{"binary", "a: \x00\x01", "h:1:1: the file is not a text file: save the house file as plain text (UTF-8)"},
	{"no UTF-8", "name: \xff\n", "h:1:1: the file is not a text file: save the house file as plain text (UTF-8)"},
	{"UTF-16", "\xff\xfen\x00a\x00", "h:1:1: the file is written in UTF-16: save it as UTF-8"},
	{"large", strings.Repeat("# long\n", 1<<18), "h:1:1: the file is larger than 1024 kB: a house file is a few pages, so this may be another file"},
	{"two documents", top + "---\nname: B\n", "h:3:1: a second document begins here: a house file is one, so take out the line with --- or ... and what follows"},
	{"deep", top + "rooms: " + strings.Repeat("[", 40) + strings.Repeat("]", 40) + "\n",
		"h:3:39: lists and groups stand inside each other more than 32 deep: a house file needs no more than 6"},
	{"itself", top + "rooms: &a [*a]\n", "h:3:12: this part contains itself through an alias: write it out without & and *"},
	{"bomb", bomb(), "h:7:5: the file comes to more than 20000 values, aliases written out: write the house without repeating parts by & and *"},
	{"alias of nothing", top + "rooms: *a\n", "h:3:8: the text cannot be read as YAML: unknown anchor 'a' referenced: put a text that begins with a sign in quotes"},
	{"bracket", top + "rooms: [1, 2\n", "h:4:1: the text cannot be read as YAML: while parsing a flow sequence did not find expected ',' or ']': look at brackets, colons and indents on this line and the one above"},
	{"tab", "name: A\nsite:\n\tlatitude: 35 deg\n", "h:3:1: the text cannot be read as YAML: while scanning for the next token found character that cannot start any token: indent with spaces, never with tabs"},
	{"colons", "name: A: B\n", "h:1:8: the text cannot be read as YAML: mapping values are not allowed in this context: put a text with a colon in quotes"},
	{"percent", "name: %A\n", "h:1:7: the text cannot be read as YAML: while scanning for the next token found character that cannot start any token: put a text that begins with a sign in quotes"},
	{"newer", "format: 2\nnonsense: 1\n", "h:1:1: format: 2 is newer than this program reads: the newest it knows is 1, so get a newer program"},

	// keys
	{"unknown", top + "watr: {}\n", `h:3:1: watr: "watr" is not a key here: the nearest known is "water"`},
	{"comma in a text", top + "septic: {holds: 3 kL, notes: willows, poplars}\n", `h:3:39: septic: "poplars" stands alone between commas: put a text that has a comma in quotes, or write key: value`},
	{"elsewhere", top + "battery: {}\n", `h:3:1: battery: "battery" is not a key here: the nearest known is "water"; battery belongs under power`},
	{"far", top + "bank: {sorted: 1 m2, kind: lithium}\n" + "septic: {holds: 3 kL, willows: yes}\n",
		`h:3:1: bank: "bank" is not a key here: the nearest known is "name"; known here are format, name, site, indoors, weather, people, water, power, hot_water, gas, rules, wants, materials, rooms, planter, flush_well, septic, garden` + "\n" +
			`h:4:23: septic.willows: "willows" is not a key here: the nearest known is "holds"; known here are holds, sludge, empty_at, bedrooms, trench, rules_of, setbacks, local_setbacks, notes`},
	{"twice", top + "name: B\n", "h:3:1: name: stands twice, first on line 1: keep one of them"},
	{"merge", top + "gas: {<<: {fuel: propane}, fuel: propane, bottle: 9 kg, bottles: 1}\n", "h:3:7: gas: the key << takes in another group: write its keys out instead"},
	{"list as key", top + "[a]: 1\n", "h:3:1: a key is a list here: a key is one word"},
	{"missing", "name: A\nsite: {latitude: 35 deg, longitude: 24 deg, altitude: 9 m}\n", "h:2:7: site.clock: is missing: write for example  clock: UTC+2"},
	{"missing group", "name: A\n", "h:1:1: site: is missing: it says where the house stands"},
	{"misspelt is not missing as well", "name: A\nsite: {lattitude: 35 deg, longitude: 24 deg, altitude: 9 m, clock: UTC+2}\n",
		`h:2:8: site.lattitude: "lattitude" is not a key here: the nearest known is "latitude"`},
	{"case", top + "Gas: {fuel: propane, bottle: 9 kg, bottles: 1}\n", `h:3:1: Gas: "Gas" is not a key here: the nearest known is "gas"`},

	// kinds of values
	{"no value", top + "weather:\n", "h:3:9: weather: has no value: write one, or leave the key out"},
	{"null", top + "septic: {holds: ~}\n", "h:3:17: septic.holds: has no value: write one, for example 3 kL, or leave the key out"},
	{"tag", top + "septic: {holds: !!str 3 kL}\n", "h:3:17: septic.holds: has the tag !!str: a house file has no tags, so write the value alone"},
	{"single for group", top + "septic: 3 kL\n", `h:3:9: septic: is the single value "3 kL", but a group of keys is wanted here: holds, sludge, empty_at, bedrooms, trench, rules_of, setbacks, local_setbacks, notes`},
	{"list for group", top + "septic: [1]\n", "h:3:9: septic: is a list, but a group of keys is wanted here: holds, sludge, empty_at, bedrooms, trench, rules_of, setbacks, local_setbacks, notes"},
	{"group for single", top + "septic: {holds: {litres: 3}}\n", "h:3:17: septic.holds: is a group of keys, but one value is wanted here, for example 3 kL"},
	{"group for list", top + "rooms: {name: a, area: 9 m2}\n", "h:3:8: rooms: is a group of keys, but a list is wanted here: begin each entry with a dash, even a single one"},
	{"word for list", top + "rules: {dull: {clearness_below: 0.3}, when_dull: wait}\n", `h:3:50: rules.when_dull: is the single value "wait", but a list is wanted here: put it in brackets, for example [swap, wait]`},
	{"too many", top + "rooms: [" + strings.Repeat("{name: a, area: 9 m2},", 9) + "]\n", "h:3:8: rooms: has 9 entries: the most is 8, so put similar ones together"},
	{"twice in list", top + "rules: {dull: {clearness_below: 0.3}, when_dull: [wait, wait]}\n", "h:3:57: rules.when_dull[1]: wait is in the list twice: write it once"},

	// numbers and units
	{"bare", top + "septic: {holds: 3000}\n", "h:3:17: septic.holds: 3000 has no unit: write it with one, for example 3 kL"},
	{"wrong unit", top + "septic: {holds: 3 kW}\n", "h:3:17: septic.holds: 3 kW is not a quantity in L; here for example 3 kL"},
	{"unknown unit", top + "septic: {holds: 3 kx}\n", `h:3:17: septic.holds: "3 kx": unit "kx" is not known: write for example L, kL, m2, mm, kWh, W, degC, K, h, d, %; here for example 3 kL`},
	{"comma", top + "septic: {holds: \"3,5 kL\"}\n", `h:3:17: septic.holds: "3,5 kL" has a comma: write a decimal point, and no mark between thousands; here for example 3 kL`},
	{"marked digits", top + "septic: {holds: 3_000 L}\n", `h:3:17: septic.holds: "3_000 L" has a mark between its digits: write the digits alone`},
	{"zero first", top + "people: {residents: 012}\n", `h:3:21: people.residents: "012" begins with 0 and could be misread: write the number without it`},
	{"sixteens", top + "people: {residents: 0x4}\n", `h:3:21: people.residents: "0x4" is not a decimal number: write it in tens`},
	{"no number", top + "people: {residents: .nan}\n", `h:3:21: people.residents: ".nan" is not a whole number: write for example 4`},
	{"infinite", top + "septic: {holds: .inf}\n", `h:3:17: septic.holds: ".inf" does not begin with a number: write for example 40 kL; here for example 3 kL`},
	{"half a person", top + "people: {residents: 2.5}\n", `h:3:21: people.residents: "2.5" is not a whole number: write for example 4`},
	{"negative area", top + "rooms: [{name: a, area: -9 m2}]\n", "h:3:25: rooms[0].area: -9 m2 is too small: the least is 1 m2"},
	{"latitude 91", "name: A\nsite: {latitude: 91 deg, longitude: 24 deg, altitude: 9 m, clock: UTC+2}\n", "h:2:18: site.latitude: 91 deg is too large: the most is 90 deg"},
	{"no angle", "name: A\nsite: {latitude: 35N, longitude: 24 deg, altitude: 9 m, clock: UTC+2}\n", "h:2:18: site.latitude: 35 N is not a quantity in deg; here for example 35.03 deg"},
	{"share", strings.Replace(top+tank1, "surface: metal", "surface: metal, coefficient: 120 %", 1), "h:3:69: water.roofs[0].coefficient: 120 % is too large: the most is 1"},
	{"too many people", top + "people: {residents: 101}\n", "h:3:21: people.residents: 101 is too large: the most is 100"},

	// words and texts
	{"choice", top + "gas: {fuel: propan, bottle: 9 kg, bottles: 1}\n", `h:3:13: gas.fuel: "propan" is not known here: the nearest known is "propane"; it is one of propane, butane, mixed`},
	{"yes or no", top + "wants: {waste: {surfacing: never}}\nseptic: {holds: 3 kL}\n", `h:3:28: wants.waste.surfacing: "never" is neither yes nor no: write yes or no`},
	{"empty text", "name: ''\n" + top[8:], "h:1:7: name: is an empty text: write something, or leave the key out"},
	{"long text", "name: " + strings.Repeat("a", 301) + "\n" + top[8:], "h:1:7: name: has 301 letters: the most is 300"},
	{"two lines", "name: |\n  a\n  b\n" + top[8:], "h:1:7: name: runs over more than one line: keep it on one"},

	// clock, hours, days, dates, money
	{"clock", strings.Replace(top, "UTC+2", "EET", 1), `h:2:67: site.clock: "EET" is not a clock: write UTC and the hours ahead of it in standard time, for example UTC+2 or UTC-3:30`},
	{"clock off earth", strings.Replace(top, "UTC+2", "UTC+15", 1), "h:2:67: site.clock: UTC+15 is no clock on earth: they run from UTC-12 to UTC+14"},
	{"hours", top + oneUse("hours: 25-3"), `h:3:79: people.uses[0].hours: "25-3" is not a span of hours: it begins at 0 to 23 and ends at another hour up to 24`},
	{"half hours", top + oneUse("hours: 6:30-9"), `h:3:79: people.uses[0].hours: "6:30-9" is not a span of hours: write whole hours of the clock, for example 6-9 19-22`},
	{"hours overlap", top + oneUse("hours: 6-9 8-10"), `h:3:79: people.uses[0].hours: the hour from 8 is in "6-9 8-10" twice: let the spans not overlap`},
	{"no hours", top + oneUse("hours: ''"), "h:3:79: people.uses[0].hours: names no hours: write for example 6-9 19-22"},
	{"day", top + oneUse("days: mondays"), `h:3:78: people.uses[0].days: "mondays" is not a day: the nearest known is "monday"; write every day, workdays, weekends, or names such as monday thursday`},
	{"amount", top + oneUse("amount: 3 kL"), "h:3:72: people.uses[0].amount: stands twice, first on line 3: keep one of them"},
	{"date with year", top + "people: {residents: 1, away: [{from: 2024-08-03, to: 08-09}]}\n", `h:3:38: people.away[0].from: "2024-08-03" has a year, but these days come back every year: write 08-03`},
	{"day first", top + "people: {residents: 1, away: [{from: 20-12, to: 12-24}]}\n", `h:3:38: people.away[0].from: "20-12" is not a day: the month comes first and is 1 to 12, so that 20 December is 12-20`},
	{"30 February", top + "people: {residents: 1, away: [{from: 02-30, to: 12-24}]}\n", `h:3:38: people.away[0].from: "02-30" is not a day: month 2 has days 1 to 29`},
	{"no date", top + "people: {residents: 1, away: [{from: Easter, to: 12-24}]}\n", `h:3:38: people.away[0].from: "Easter" is not a day: write month-day, so that 20 December is 12-20`},
	{"price", top + "gas: {fuel: propane, bottle: 9 kg, bottles: 1, price: 30}\n", `h:3:55: gas.price: "30" is not a price: write an amount and the three letters of the currency, for example 110 EUR`},
	{"daily amount", strings.Replace(top+oneUse("days: sunday"), "9 L/d", "9 L", 1), "h:3:65: people.uses[0].amount: 9 L is not a quantity in L/d; here for example 30 L/person/d or 45 L/d"},
	{"bare amount", strings.Replace(top+oneUse("days: sunday"), "9 L/d", "9", 1), "h:3:65: people.uses[0].amount: 9 has no unit: write it with one, for example 30 L/person/d or 45 L/d"},
	{"battery size", strings.Replace(top+bank, "5 kWh", "5 kW", 1), "h:4:38: power.battery.capacity: 5 kW is not a quantity in Wh; here for example 600 Ah or 14.4 kWh"},
	{"sludge", top + "septic: {holds: 3 kL, sludge: planing-low}\n", `h:3:31: septic.sludge: "planing-low" is neither a rate such as 60 L/year nor the name of one: the nearest name is "planning-low"; known are planning-low, planning-high, gray-1995-low, gray-1995-high, australia-all-waste, australia-black, australia-grey, who-1992-toilet, who-1992-sullage`},
	{"bare sludge", top + "septic: {holds: 3 kL, sludge: 60}\n", "h:3:31: septic.sludge: 60 has no unit: write it with one, for example 60 L/year"},
	{"much sludge", top + "septic: {holds: 3 kL, sludge: 1 kL/year}\n", "h:3:31: septic.sludge: 1 kL/year is too large: the most is 300 L/year"},
	{"texture", top + "garden: {beds: [{name: b, area: 9 m2, soil: lome}]}\n", `h:3:45: garden.beds[0].soil: "lome" is not known here: the nearest known is "loam"; it is one of sand, loamy sand, sandy loam, loam, silt loam, silty clay loam, silty clay, clay`},
	{"ground", top + "septic: {holds: 3 kL, trench: {length: 9 m, soil: clay-weak}}\n", `h:3:51: septic.trench.soil: "clay-weak" is not known here: the nearest known is "loam-weak"; it is one of sand, fine-sand, sandy-loam-massive, sandy-loam-weak, sandy-loam-strong, fine-sandy-loam-massive, fine-sandy-loam-weak, fine-sandy-loam-strong, loam-massive, loam-weak, loam-strong, silt-loam-weak, silt-loam-strong, clay-loam-weak, clay-loam-strong, clay-strong`},
	{"toilet feeds", top + "planter: {area: 9 m2, fed_by: [kitchen, toilet]}\n", `h:3:41: planter.fed_by[1]: "toilet" is not known here: the nearest known is "shower"; it is one of basin, shower, bath, laundry, dishwasher, kitchen`},
	{"crop", top + "planter: {area: 9 m2, crops: [{crop: tomatoe, sown: 03-15}]}\n", `h:3:38: planter.crops[0].crop: "tomatoe" is not known here: the nearest known is "tomato"; it is one of tomato, sweet pepper, cucumber, zucchini, winter squash, green bean, lettuce, spinach, carrot, radish, onion, potato`},
	{"no sowing day", top + "planter: {area: 9 m2, crops: [{crop: tomato}]}\n", "h:3:31: planter.crops[0].sown: is missing: write for example  sown: 04-15"},
	{"drain", top + oneUse("drains: bathtub"), `h:3:80: people.uses[0].drains: "bathtub" is not known here: the nearest known is "bath"; it is one of basin, shower, bath, laundry, dishwasher, kitchen, toilet, ground`},
	{"kinds", strings.Replace(top+tank1, "holds: 9 kL}]", "holds: 9 kL}], treatment: [{name: f, uses: washin}]", 1),
		`h:3:122: water.treatment[0].uses: "washin" is not a kind of use: the nearest known is "washing"; write all, or some of drinking, washing, flushing, outdoor`},
}

// oneUse is a household of one with one use, on line 3.
func oneUse(more string) string {
	return "people: {residents: 1, uses: [{name: u, water: washing, amount: 9 L/d, " + more + "}]}\n"
}

// bomb doubles a part behind aliases until nobody could write it out.
func bomb() string {
	text := top + "rooms: [&a [x, x, x, x, x, x, x, x, x, x],\n"
	for c := 'b'; c < 'k'; c++ {
		text += "&" + string(c) + " [" + strings.TrimSuffix(strings.Repeat("*"+string(c-1)+", ", 10), ", ") + "],\n"
	}
	return text + "]\n"
}

func TestEveryRefusalHasItsSentence(t *testing.T) {
	for _, c := range wrong {
		_, err := Read("h", []byte(c.text))
		if err == nil {
			t.Errorf("%s: was read without a fault, want\n%s", c.about, c.says)
			continue
		}
		if got := err.Error(); got != c.says {
			t.Errorf("%s: got\n%s\nwant\n%s", c.about, got, c.says)
		}
	}
}

// A fault points at the beginning of a word, a list or a group, counted in characters.
func TestFaultsPointAtWords(t *testing.T) {
	for _, c := range wrong {
		_, err := Read("h", []byte(strings.Replace(c.text, "name: A", "name: Ä☀", 1)))
		for _, f := range err.(Faults) {
			if f.Where == "" {
				continue // about the file, or about marks that do not fit together
			}
			line := []rune(strings.Split(c.text, "\n")[f.Line-1])
			if f.Column > len(line) && strings.HasSuffix(string(line), ":") && f.Column == len(line)+1 {
				continue // the value that should stand behind the colon
			}
			if f.Column > len(line) || strings.ContainsRune(" ,:", line[f.Column-1]) || f.Column > 1 && !strings.ContainsRune(" [{", line[f.Column-2]) {
				t.Errorf("%s: line %d, column %d is no beginning of %q", c.about, f.Line, f.Column, string(line))
			}
		}
	}
}
