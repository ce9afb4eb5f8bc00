package hourly

import (
	"strings"

	"suffice/water"
)

// usedWater gives the plain house planter, flush well, tank and trench. Four people send 160 L a day to the bed and want 80 to flush.
const usedWater = `
planter: {area: 6 m2, width: 2 m, under: glass, light: 80 %, soil: 0.1 m, gravel: 0.05 m, plants: [reed], kc: 1.0, eaten_raw: no}
flush_well: {area: 0.8 m2, pump: 60 Wh/kL}
septic:
  holds: 3 kL
  trench: {length: 20 m, soil: sand}
`

// chainHouse has power at all hours, water by gravity, and the four uses.
var chainHouse = suppliedHouse + usedWater

// suppliedHouse has power and water at all hours, and water by gravity.
var suppliedHouse = strings.NewReplacer("holds: 20 kL, dead: 0 L, fire: 0 L, start: 10 kL", "holds: 60 kL, dead: 0 L, fire: 0 L, start: 30 kL", "peak: 600 W", "peak: 8 kW", "capacity: 200 Ah", "capacity: 3000 Ah", "current: 60 A", "current: 300 A",
	"supply: {by: pump, head: 20 m, flow: 1.5 m3/h, pipe_length: 30 m, bore: 32 mm, efficiency: 35 %}", "supply: {by: gravity}").Replace(plainHouse)

// changed replaces one text by another in the house of used water.
func changed(pairs ...string) string { return strings.NewReplacer(pairs...).Replace(chainHouse) }

// mown gives a house a lawn, and a bed that nobody waters.
const mown = `
garden: {water_above: 0 %, beds: [{name: terrace, area: 5 m2, watered_by: nobody, crops: [{crop: onion, sown: 12-02}]}], lawn: {area: 60 m2}}
`

func endLitres(l *lived) float64 { return float64(l.run.water.Held(&l.acc.End.Water)) }

// vapour gives the water in the air of the first room, g/m3, mean of all hours.
func vapour(l *lived) float64 {
	sum := 0.0
	s := l.run.Start()
	span := Span{Last: l.run.Hours(), See: func(_ int, row *Row) { sum += row.Rooms.Rooms[0].Vapour * 1000 }}
	if err := l.run.Live(&s, &span); err != nil {
		panic(err) // the same hours have been lived before
	}
	return sum / float64(l.run.Hours())
}

// warmthOfSeason gives the degree-days that the planter's crop has had.
func warmthOfSeason(l *lived) float64 {
	plot := l.run.chain.parts.Planter.Plot
	grown := &l.acc.End.Chain.Grown
	return grown.Progress * plot.Growth(grown).Season()
}

func chainTotal(of func(t *ChainTotals) float64) func(l *lived) float64 {
	return func(l *lived) float64 { return of(&l.acc.Totals.Chain) }
}

func surfaced(l *lived) float64 { return float64(l.acc.Totals.Chain.Trench.Surfaced) }

// chainCouplings are the links of used water, waste and food with the other budgets.
func chainCouplings() []coupling {
	fair := dayOf{0.65, 12, 0}
	away := strings.Replace(chainHouse, "# away", "away: [{from: 12-11, to: 01-19}]", 1) // forty days
	home := [2]string{"away: [{from: 12-11, to: 01-19}]", ""}
	inRoom := changed("area: 6 m2, width: 2 m, under: glass, light: 80 %", "area: 1 m2, width: 1 m, under: glass, room: room, light: 80 %") + oneRoom
	elsewhere := [2]string{"room: room, light: 80 %", "light: 80 %"}
	crop := changed("plants: [reed], kc: 1.0", "crops: [{crop: lettuce, sown: 12-05}]")
	cropInRoom := strings.Replace(inRoom, "plants: [reed], kc: 1.0", "crops: [{crop: lettuce, sown: 12-05}]", 1)
	dullPower := strings.Replace(plainHouse, "supply: {by: pump, head: 20 m, flow: 1.5 m3/h, pipe_length: 30 m, bore: 32 mm, efficiency: 35 %}", "supply: {by: gravity}", 1) + usedWater
	return []coupling{
		{
			from: "evaporation of the planter", to: "humidity of the room", cut: "it stands elsewhere",
			foretold: "what it gives off in an hour is in the 25 m3 that leaks change in it", base: inRoom, change: elsewhere,
			sky: days(20, fair), unit: "g/m3 of vapour in the room's air", measure: vapour,
			expect: func(with *lived) (float64, float64) {
				hourly := float64(with.acc.Totals.Chain.Evaporated) / float64(with.run.Hours())
				low, high := about(-hourly*1000/25, 0.02) // of 480 hours the room's air is new after 2: what is in it at the end was not carried out
				return high, low
			},
		},
		{
			from: "evaporation of the planter", to: "warmth of the room", cut: "it stands elsewhere",
			foretold: "its 0.68 kWh for each litre, over the room's 35 W/K, are not missing", base: inRoom, change: elsewhere,
			sky: days(20, fair), unit: "degC of the room's air", measure: roomMean,
			expect: func(with *lived) (float64, float64) {
				watts := latent * float64(with.acc.Totals.Chain.Evaporated) / float64(with.run.Hours())
				return watts / 35 * 0.75, watts / 35 * 1.05 // masses warm up for days, and the hot water store gives less to a warmer room
			},
		},
		{
			from: "weeks away (people)", to: "dry bed", cut: "they stay at home",
			foretold: "a bed that is fed is never dry: every dry day goes", base: away, change: home,
			sky: days(70, fair), unit: "days with dry soil", measure: chainTotal(func(t *ChainTotals) float64 { return float64(t.Dry) }),
			expect: func(with *lived) (float64, float64) { return exactly(-float64(with.acc.Totals.Chain.Dry)) },
		},
		{
			from: "weeks away (people)", to: "stale well", cut: "they stay at home",
			foretold: "stale after seven of the forty days, and then until about 17 days of 146 L have thinned 800 L of such age: some 50 days", base: away, change: home,
			sky: days(70, fair), unit: "hours with a stale well", measure: chainTotal(func(t *ChainTotals) float64 { return float64(t.Stale) }),
			expect: func(*lived) (float64, float64) { return -58 * 24, -46 * 24 },
		},
		{
			from: "weeks away (people)", to: "greywater", cut: "they stay at home",
			foretold: "forty days of 160 L come to the bed", base: away, change: home,
			sky: days(70, fair), unit: "L to the planter", measure: chainTotal(func(t *ChainTotals) float64 { return float64(t.Fed.Litres) }),
			expect: func(*lived) (float64, float64) { return exactly(40 * 160) },
		},
		{
			from: "illness (people)", to: "greywater", cut: "nobody is ill",
			foretold: "nine days of 160 L come to the bed instead of going with the toilet's water", base: changed("eaten_raw: no", "eaten_raw: no, ill: [{from: 12-11, to: 12-19}]"),
			change: [2]string{"ill: [{from: 12-11, to: 12-19}]", "ill: []"}, sky: days(30, fair), unit: "L to the planter",
			measure: chainTotal(func(t *ChainTotals) float64 { return float64(t.Fed.Litres) }),
			expect:  func(*lived) (float64, float64) { return exactly(9 * 160) },
		},
		{
			from: "power cut", to: "toilet that is not flushed", cut: "the cisterns stand below the well and need no pump",
			foretold: "all that was not flushed for want of power is", base: dullPower, change: [2]string{"pump: 60 Wh/kL", "pump: 0 Wh/kL"},
			sky: days(12, dayOf{0.12, 8, 0}), unit: "L wanted for flushing and not had",
			measure: chainTotal(func(t *ChainTotals) float64 { return float64(t.Flush - t.Flushed) }),
			expect:  func(with *lived) (float64, float64) { return exactly(-float64(with.acc.Totals.Chain.FlushNoPower)) },
		},
		{
			from: "flushing", to: "power used", cut: "the cisterns stand below the well and need no pump",
			foretold: "60 Wh for each kilolitre flushed are not used", base: chainHouse, change: [2]string{"pump: 60 Wh/kL", "pump: 0 Wh/kL"},
			sky: days(20, fair), unit: "Wh of alternating current", measure: func(l *lived) float64 { return float64(l.acc.Totals.Power.Delivered) },
			expect: func(with *lived) (float64, float64) { return exactly(-0.06 * float64(with.acc.Totals.Chain.Flushed)) },
		},
		{
			from: "salt in the water", to: "harvest", cut: "rain instead of brackish water",
			foretold: "all that lettuce lost to salt grows: a few weeks of soap do it no harm", base: strings.Replace(crop, "water:\n  roofs", "water:\n  salt: 3 g/L\n  roofs", 1),
			change: [2]string{"salt: 3 g/L", "salt: 0.03 g/L"}, sky: days(80, fair), unit: "g of lettuce, were there nitrogen",
			measure: wellFed,
			expect:  func(with *lived) (float64, float64) { return exactly(lostToSalt(with)) },
		},
		{
			from: "light (glass)", to: "harvest", cut: "hardly any light reaches the bed",
			foretold: "in a sixteenth of the light nothing grows", base: crop, change: [2]string{"light: 80 %", "light: 5 %"}, sky: days(80, fair),
			unit: "g of lettuce, were there nitrogen", measure: wellFed,
			expect: func(with *lived) (float64, float64) { return -wellFed(with), -0.9 * wellFed(with) },
		},
		{
			from: "warmth of the room", to: "growth of the crop", cut: "the load that always runs is not there",
			foretold: "a room colder by 3 to 4 K gives 3 to 4 degree-days less on each of the 30 days since it came up, and it comes up later", base: cropInRoom,
			change: [2]string{"{name: always, power: 120 W, need: must}", "{name: always, power: 1 W, need: must}"}, sky: days(40, dayOf{0.4, 4, 0}),
			unit: "degree-days of lettuce", measure: warmthOfSeason,
			expect: func(*lived) (float64, float64) { return -200, -30 * 3 },
		},
		{
			from: "people", to: "sludge", cut: "one lives there instead of four",
			foretold: "80 L a year for each of three are not there after 60 days", base: chainHouse, change: [2]string{"residents: 4", "residents: 1"},
			sky: days(60, fair), unit: "L of sludge and scum", measure: func(l *lived) float64 { return float64(l.acc.End.Chain.Septic.Sludge + l.acc.End.Chain.Septic.Scum) },
			expect: func(*lived) (float64, float64) { return exactly(-3 * 80 / 365.25 * 60) },
		},
		{
			from: "people", to: "emptied septic tank", cut: "nobody is at home",
			foretold: "a tank of 200 L that is emptied at 6 %, 12 L, fills by 0.88 L a day and keeps a twentieth: every 14 days, four times in seventy, and then never", base: changed("holds: 3 kL", "holds: 200 L\n  empty_at: 6 %"),
			change: [2]string{"  # away", "  away: [{from: 11-01, to: 03-31}]"}, sky: days(70, fair), unit: "times emptied",
			measure: chainTotal(func(t *ChainTotals) float64 { return float64(t.Desludgings) }),
			expect:  func(*lived) (float64, float64) { return exactly(-4) },
		},
		{
			from: "rain on the trench", to: "sewage on the ground", cut: "no rain falls",
			foretold: "the ground takes what the house sends: nothing surfaces", base: changed("length: 20 m, soil: sand", "length: 20 m, catch: 200 m2, soil: loam-strong"), sky: days(20, dayOf{0.4, 12, 40}),
			unit: "L of sewage on the ground", measure: surfaced,
			expect: func(with *lived) (float64, float64) { return exactly(-surfaced(with)) },
		},
		{
			from: "ground that clogs", to: "sewage on the ground", cut: "sand instead of clay",
			foretold: "sand takes what the house sends: nothing surfaces", base: changed("length: 20 m, soil: sand", "length: 10 m, clogs: 300 g/m2, soil: clay-strong"), change: [2]string{"soil: clay-strong", "soil: sand"},
			sky: days(120, fair), unit: "L of sewage on the ground", measure: surfaced,
			expect: func(with *lived) (float64, float64) { return exactly(-surfaced(with)) },
		},
		{
			from: "top-up of the flush well", to: "tank level (water)", cut: "a smaller bed leaves enough for the toilets",
			foretold: "all that was topped up is in the tank, but the 280 L of the first filling", base: changed("area: 6 m2, width: 2 m, under", "area: 150 m2, width: 2 m, under"), change: [2]string{"area: 150 m2, width: 2 m, under", "area: 6 m2, width: 2 m, under"},
			sky: days(30, fair), unit: "L in the tank at the end", measure: endLitres,
			expect: func(with *lived) (float64, float64) {
				return exactly(float64(with.acc.Totals.Chain.Topped.Litres) - 280)
			},
		},
		{
			from: "thirst of the garden", to: "tank level (water)", cut: "nobody waters it",
			foretold: "all that was given is in the tank", base: suppliedHouse + "\ngarden: {water_above: 0 %, beds: [{name: terrace, area: 20 m2, crops: [{crop: onion, sown: 12-02}]}]}\n",
			change: [2]string{"area: 20 m2,", "area: 20 m2, watered_by: nobody,"}, sky: days(60, fair), unit: "L in the tank at the end", measure: endLitres,
			expect: func(with *lived) (float64, float64) { return exactly(float64(with.acc.Totals.Chain.BedGiven)) },
		},
		{
			from: "thirst of the lawn", to: "tank level (water)", cut: "nobody waters it",
			foretold: "all that was given is in the tank", base: suppliedHouse + mown, change: [2]string{"lawn: {area: 60 m2}", "lawn: {area: 60 m2, watered_by: nobody}"},
			sky: days(60, fair), unit: "L in the tank at the end", measure: endLitres,
			expect: func(with *lived) (float64, float64) { return exactly(float64(with.acc.Totals.Chain.LawnGiven)) },
		},
		{
			from: "dry tank (water)", to: "greywater", cut: "the tank starts full",
			foretold: "the washing water that was short comes to the bed", base: changed("start: 30 kL", "start: 1 kL"), change: [2]string{"start: 1 kL", "start: 30 kL"},
			sky: days(20, fair), unit: "L to the planter", measure: chainTotal(func(t *ChainTotals) float64 { return float64(t.Fed.Litres) }),
			expect: func(with *lived) (float64, float64) { return exactly(float64(with.acc.Totals.Short[water.Washing])) },
		},
	}
}

// wellFed gives what the planter's crop grew, and what it lacked nitrogen for, g.
func wellFed(l *lived) float64 {
	sum := l.acc.End.Chain.Grown.Standing
	for i := range l.acc.Food.Years {
		y := &l.acc.Food.Years[i]
		sum += y.Harvest.Total() + y.Lost.Died + y.Lost.ToNitrogen
	}
	return 1000 * sum
}

// lostToSalt gives what salt took of the harvest, g.
func lostToSalt(l *lived) (sum float64) {
	for i := range l.acc.Food.Years {
		sum += 1000 * l.acc.Food.Years[i].Lost.ToSalt
	}
	return sum
}
