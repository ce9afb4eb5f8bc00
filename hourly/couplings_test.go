package hourly

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"suffice/house"
	"suffice/power"
	"suffice/site"
	"suffice/site/sun"
	"suffice/site/weather"
	"suffice/water"
)

var update = flag.Bool("update", false, "write the table of couplings anew")

// A coupling is a link between two budgets: with it cut, the other budget must change by
// the sign and size foretold.
type coupling struct {
	from, to string
	cut      string // what is done to cut it
	foretold string // the change when it is cut, and why that much
	base     string // the house with the link
	change   [2]string
	sky      []dayOf
	measure  func(l *lived) float64 // of the other budget
	expect   func(with *lived) (low, high float64)
	unit     string
}

// dayOf is a made day: clearness, mean air, rain.
type dayOf struct{ clear, air, rain float64 }

func days(n int, d dayOf) []dayOf {
	list := make([]dayOf, n)
	for i := range list {
		list[i] = d
	}
	return list
}

// lived is what came of a house in made weather.
type lived struct {
	run *Run
	acc *Account
}

const plainHouse = `name: Coupled
site: {latitude: 35 deg, longitude: 25 deg, altitude: 100 m, clock: UTC+2}
people:
  residents: 4
  uses:
    - {name: drink, water: drinking, amount: 10 L/person/d}
    - {name: wash, water: washing, amount: 40 L/person/d, hot: 40 degC, savable: yes}
    - {name: flush, water: flushing, amount: 20 L/person/d, savable: no}
  # away
water:
  roofs: [{name: main, area: 100 m2, surface: metal}]
  tanks: [{name: main, holds: 20 kL, dead: 0 L, fire: 0 L, start: 10 kL}]
  supply: {by: pump, head: 20 m, flow: 1.5 m3/h, pipe_length: 30 m, bore: 32 mm, efficiency: 35 %}
  treatment:
    - {name: lamp, uses: drinking, power: 20 W, running: always}
power:
  arrays: [{name: roof, peak: 600 W, slope: 40 deg, azimuth: 180 deg}]
  controller: {current: 60 A}
  battery: {kind: lead-acid, capacity: 200 Ah, voltage: 24 V, floor: 50 %, start: 100 %, where: indoors}
  inverter: {continuous: 2 kW}
  loads:
    - {name: always, power: 120 W, need: must}
    - {name: cook, energy: 600 Wh/d, power: 1.2 kW, hours: 17-19, need: must, gas: 50 %}
hot_water:
  collector: {area: 3 m2, eta0: 0.78, a1: 3.6 W/m2K, a2: 0.015 W/m2K2, slope: 50 deg, azimuth: 180 deg, pump: 25 W}
  store: {holds: 250 L}
  backup: {by: gas, set: 45 degC}
gas: {fuel: propane, bottle: 45 kg, bottles: 2}
rules: {}
wants: {water: {short_days: 0.1 /year}, power: {short_days: 0.1 /year}}
`

// oneRoom is a room of 20 m2 behind 65 m2 of cork: 27 W/K through it and 8 W/K by its leaks.
const oneRoom = `
rooms:
  - name: room
    area: 20 m2
    height: 2.5 m
    infiltration: 0.5 /h
    walls:
      - {name: front, area: 20 m2, faces: air, azimuth: 180 deg, layers: 10 cm cork board, absorptance: 90 %}
      - {name: others, area: 45 m2, faces: air, azimuth: 0 deg, layers: 10 cm cork board}
      - {name: floor, area: 20 m2, faces: nothing, slope: 180 deg, layers: 10 cm concrete}
`

// stoveOfRoom is a stove in it.
const stoveOfRoom = "    stove: {air: outside}\n"

func woodBurned(l *lived) float64 { return float64(l.acc.Rooms[0].Stove.Wood) }

func roomMean(l *lived) float64 { return float64(l.acc.Rooms[0].Mean) }

// madeWeather makes days of a given clearness in December.
func madeWeather(at site.Place, list []dayOf) *weather.Hours {
	w := &weather.Hours{Place: at}
	var dates []sun.Date
	for i := range list {
		d := weather.DayOf(weather.DayNumber(2001, 12, 1) + i)
		w.Days = append(w.Days, d)
		dates = append(dates, sun.Date{Year: d.Year, Month: d.Month, Date: d.Date})
	}
	track := sun.NewTrack(at, dates)
	for i, d := range list {
		for h := range 24 {
			k := 24*i + h
			w.Global = append(w.Global, d.clear*track.Normal[k]*max(0, track.CosZenith[k])*track.Share[k])
			w.Temperature = append(w.Temperature, d.air)
			w.Rain = append(w.Rain, d.rain/24)
			w.Humidity = append(w.Humidity, 60)
		}
	}
	split := track.Split(w.Global, sun.BRL)
	w.Diffuse, w.Beam = split.Diffuse, split.Beam
	return w
}

func liveIn(t testing.TB, text string, sky []dayOf) *lived {
	t.Helper()
	f, err := house.Read("coupled.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	h, err := house.Compose(f)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Prepare(h, madeWeather(h.Place, sky))
	if err != nil {
		t.Fatal(err)
	}
	a, err := r.Account(r.Start())
	if err != nil {
		t.Fatal(err)
	}
	return &lived{r, a}
}

func sumOf[T ~float64](list []T) float64 {
	sum := 0.0
	for _, v := range list {
		sum += float64(v)
	}
	return sum
}

func shortWater(l *lived) float64 { return sumOf(l.acc.Totals.Short[:]) }

func about(v, share float64) (float64, float64) { return v * (1 - share), v * (1 + share) }

// exactly allows rounding of sums over all hours.
func exactly(v float64) (float64, float64) {
	slack := 1e-6 * max(1, math.Abs(v))
	return v - slack, v + slack
}

// strongHouse is the plain one with power enough for all.
func strongHouse() string {
	return strings.NewReplacer("peak: 600 W", "peak: 8 kW", "capacity: 200 Ah", "capacity: 3000 Ah", "current: 60 A", "current: 300 A").Replace(plainHouse)
}

func couplings() []coupling {
	dull, bright := dayOf{0.12, 8, 0}, dayOf{0.65, 12, 0}
	gravity := [2]string{"supply: {by: pump, head: 20 m, flow: 1.5 m3/h, pipe_length: 30 m, bore: 32 mm, efficiency: 35 %}", "supply: {by: gravity}"}
	noLamp := strings.Replace(plainHouse, "power: 20 W, running: always", "power: 0 W", 1)
	strong := strongHouse()
	return []coupling{
		{
			from: "dull days (power)", to: "dry tap (water)", cut: "water comes by gravity instead of a pump",
			foretold: "what was short for want of power at the pump comes: all of it",
			base:     noLamp, change: gravity, sky: days(12, dull), unit: "L short",
			measure: shortWater,
			expect: func(with *lived) (float64, float64) {
				return exactly(-float64(with.acc.Totals.Cause[water.PumpPower]))
			},
		},
		{
			from: "power cut", to: "drinking water", cut: "a filter instead of the lamp",
			foretold: "the drinking water that the dark lamp kept back comes, and washing water does not change",
			base:     strings.Replace(plainHouse, gravity[0], gravity[1], 1), change: [2]string{"power: 20 W, running: always", "power: 0 W"},
			sky: days(12, dull), unit: "L of drinking water short",
			measure: func(l *lived) float64 {
				if other := l.acc.Totals.Short[water.Washing]; other != 0 {
					return math.NaN()
				}
				return float64(l.acc.Totals.Short[water.Drinking])
			},
			expect: func(with *lived) (float64, float64) {
				return exactly(-float64(with.acc.Totals.Cause[water.TreatmentPower]))
			},
		},
		{
			from: "days away (people)", to: "tank level (water)", cut: "they stay at home",
			foretold: "six days of 280 L are drawn",
			base:     strings.Replace(strong, "# away", "away: [{from: 12-04, to: 12-09}]", 1), change: [2]string{"away: [{from: 12-04, to: 12-09}]", ""},
			sky: days(15, bright), unit: "L in the tank at the end",
			measure: func(l *lived) float64 { return float64(l.run.water.Held(&l.acc.End.Water)) },
			expect:  func(*lived) (float64, float64) { return exactly(-6 * 280) },
		},
		{
			from: "fire litres (safety)", to: "litres short (water)", cut: "nothing is kept for fire",
			foretold: "the 3000 L kept back are drawn before the tank is dry",
			base:     strings.Replace(strong, "fire: 0 L", "fire: 3000 L", 1), change: [2]string{"fire: 3000 L", "fire: 0 L"},
			sky: days(50, bright), unit: "L short",
			measure: shortWater,
			expect:  func(*lived) (float64, float64) { return exactly(-3000) },
		},
		{
			from: "dull days, by the people's rule", to: "gas", cut: "nobody swaps to gas",
			foretold: "the gas of all cooking on dull days, 600 Wh at 50 %, is not burned: twelve days of 1.2 kWh",
			base:     strings.Replace(plainHouse, "rules: {}", "rules: {dull: {clearness_below: 0.35}, when_dull: [swap]}", 1),
			change:   [2]string{"when_dull: [swap]", "when_dull: [wait]"}, sky: days(12, dull), unit: "Wh of gas for cooking",
			measure: func(l *lived) float64 { return float64(l.acc.Totals.Cooked) },
			expect:  func(*lived) (float64, float64) { return exactly(-12 * 1200) },
		},
		{
			from: "dull days, by the people's rule", to: "power short", cut: "nobody swaps to gas",
			foretold: "cooking asks the battery again: of its 7.2 kWh a part is short, at least half",
			base:     strings.Replace(plainHouse, "rules: {}", "rules: {dull: {clearness_below: 0.35}, when_dull: [swap]}", 1),
			change:   [2]string{"when_dull: [swap]", "when_dull: [wait]"}, sky: days(12, dull), unit: "Wh short of what must run",
			measure: func(l *lived) float64 {
				return float64(l.acc.Totals.Power.Short[power.Must] + l.acc.Totals.Power.ServiceShort)
			},
			expect: func(*lived) (float64, float64) { return 3600, 7200 },
		},
		{
			from: "cold (weather)", to: "power short", cut: "the battery stands indoors",
			foretold: "the share of the capacity that the cold locked is had once: its cold factor tells how much",
			base:     strings.Replace(plainHouse, "where: indoors", "where: outdoors", 1), change: [2]string{"where: outdoors", "where: indoors"},
			sky: days(12, dayOf{0.12, -10, 0}), unit: "Wh short of what must run",
			measure: func(l *lived) float64 {
				return float64(l.acc.Totals.Power.Short[power.Must] + l.acc.Totals.Power.ServiceShort)
			},
			expect: func(with *lived) (float64, float64) {
				b := &with.run.power.Battery
				locked := (b.ColdFactor(with.run.House.Indoors) - b.ColdFactor(-10)) * float64(b.Capacity) * (1 - b.Floor)
				low, high := about(-locked, 0.25) // what the inverter and the lamp's idle hours take of it differs
				return high, low
			},
		},
		{
			from: "no power for the solar pump", to: "gas for hot water", cut: "the collector circulates by its own warmth",
			foretold: "the sun it stood in is had: gas falls by at least half",
			base:     strings.NewReplacer("peak: 600 W", "peak: 20 W", "start: 100 %", "start: 50 %", gravity[0], gravity[1]).Replace(plainHouse), change: [2]string{"pump: 25 W", "pump: 0 W"},
			sky: days(15, bright), unit: "Wh of gas heat",
			measure: func(l *lived) float64 { return float64(l.acc.Totals.Heat.Gas) },
			expect: func(with *lived) (float64, float64) {
				gas := float64(with.acc.Totals.Heat.Gas)
				return -gas, -gas / 2
			},
		},
		{
			from: "dry tank (water)", to: "gas for hot water", cut: "the tank starts full",
			foretold: "the 160 L a day of warm water are drawn again and heated by gas under a dull sky: about the heat from the cold inlet to 40 degC of what was short",
			base:     strings.Replace(strong, "start: 10 kL", "start: 1 kL", 1), change: [2]string{"start: 1 kL", "start: 20 kL"},
			sky: days(20, dayOf{0.3, 8, 0}), unit: "Wh of gas heat and sun used at the taps",
			measure: func(l *lived) float64 { return float64(l.acc.Totals.Heat.Delivered) },
			expect: func(with *lived) (float64, float64) {
				litres := float64(with.acc.Totals.Short[water.Washing])
				return about(litres*(40-float64(with.run.sky[0].cold))*4.186/3.6, 0.01) // the inlet moves by less than that in steady air
			},
		},
		{
			from: "low tank, by the people's rule", to: "litres drawn (water)", cut: "nobody saves",
			foretold: "the 30 % of 160 L saved on washing are drawn on each of 20 days: 960 L",
			base:     strings.Replace(strong, "rules: {}", "rules: {tank_below: {tank: 90 %, do: [save], saves: 30 %}}", 1),
			change:   [2]string{"rules: {tank_below: {tank: 90 %, do: [save], saves: 30 %}}", "rules: {}"},
			sky:      days(20, bright), unit: "L drawn",
			measure: func(l *lived) float64 { return sumOf(l.acc.Totals.Served[:]) },
			expect:  func(*lived) (float64, float64) { return exactly(20 * 0.3 * 160) },
		},
		{
			from: "water drawn", to: "power used", cut: "water comes by gravity",
			foretold: "the pump's watt-hours per kilolitre for every litre drawn are not used",
			base:     strong, change: gravity, sky: days(10, bright), unit: "Wh of alternating current",
			measure: func(l *lived) float64 {
				return float64(l.acc.Totals.Power.Delivered)
			},
			expect: func(with *lived) (float64, float64) {
				drawn := sumOf(with.acc.Totals.Served[:])
				return exactly(-drawn / 1000 * with.run.House.WaterDesign.Supply.WattHoursPerKilolitre)
			},
		},
		{
			from: "loads (power)", to: "warmth of the room", cut: "the load that always runs is not there",
			foretold: "120 W and what the inverter loses for them, over the room's 35 W/K: 3 to 4 K colder",
			base:     strong + oneRoom, change: [2]string{"{name: always, power: 120 W, need: must}", "{name: always, power: 1 W, need: must}"},
			sky: days(20, dayOf{0.4, 8, 0}), unit: "degC of the room's air", measure: roomMean,
			expect: func(*lived) (float64, float64) { return -4.2, -3.2 },
		},
		{
			from: "weeks away (people)", to: "warmth of the room", cut: "nobody is at home",
			foretold: "four times 75 W are missing: 300 W over 35 W/K, 8.5 K colder, of which the hot water store, from which nobody draws, gives some back",
			base:     strong + oneRoom, change: [2]string{"  # away", "  away: [{from: 11-01, to: 12-31}]"},
			sky: days(20, dayOf{0.4, 8, 0}), unit: "degC of the room's air", measure: roomMean,
			expect: func(*lived) (float64, float64) { return -8.6, -7 },
		},
		{
			from: "sun on the glass (warmth)", to: "loss of the hot water store", cut: "no light falls",
			foretold: "a colder room takes more from the store: 2 W/K for every kelvin of room, less what the store itself cools",
			base:     strong + oneRoom, change: [2]string{"faces: air, azimuth: 180 deg, layers: 10 cm cork board, absorptance: 90 %", "faces: air, azimuth: 180 deg, layers: 10 cm cork board, absorptance: 0 %"},
			sky: days(20, dayOf{0.7, 8, 0}), unit: "Wh lost by the store",
			measure: func(l *lived) float64 { return float64(l.acc.Totals.Heat.Loss) },
			expect:  func(*lived) (float64, float64) { return 1, 20 * 24 * 2 * 6 },
		},
		{
			from: "weeks away (people)", to: "wood in the stove", cut: "nobody is at home",
			foretold: "nobody leaves a fire alone: not a kilogram is burned",
			base:     strong + oneRoom + stoveOfRoom, change: [2]string{"  # away", "  away: [{from: 11-01, to: 12-31}]"},
			sky: days(20, dayOf{0.4, -5, 0}), unit: "kg of wood", measure: woodBurned,
			expect: func(with *lived) (float64, float64) { return exactly(-woodBurned(with)) },
		},
		{
			from: "loads (power)", to: "wood in the stove", cut: "the load that always runs is not there",
			foretold: "wood makes up for 120 W and what the inverter loses for them through 480 h, 64 kWh at 70 % of 4 kWh a kilogram: 23 kg, give or take a seventh for nights without a fire",
			base:     strong + oneRoom + stoveOfRoom, change: [2]string{"{name: always, power: 120 W, need: must}", "{name: always, power: 1 W, need: must}"},
			sky: days(20, dayOf{0.4, -5, 0}), unit: "kg of wood", measure: woodBurned,
			expect: func(*lived) (float64, float64) { return 20, 26 },
		},
		{
			from: "rain of the hour", to: "dry tap (water)", cut: "no rain falls",
			foretold: "what the roof caught is short, once the tank is dry",
			base:     strings.Replace(strong, "start: 10 kL", "start: 0 kL", 1), change: [2]string{},
			sky: days(30, dayOf{0.65, 12, 1}), unit: "L short",
			measure: shortWater,
			expect:  func(with *lived) (float64, float64) { return exactly(float64(with.acc.Totals.Income.Caught)) },
		},
	}
}

// Each link is cut once; the other budget must change as foretold.
func TestCouplings(t *testing.T) {
	table := "| from | to | cut by | foretold | with the link | without | change |\n|---|---|---|---|---|---|---|\n"
	for _, c := range append(couplings(), chainCouplings()...) {
		with := liveIn(t, c.base, c.sky)
		text, sky := c.base, c.sky
		if c.change == [2]string{} {
			sky = days(len(c.sky), dayOf{c.sky[0].clear, c.sky[0].air, 0})
		} else if text = strings.Replace(c.base, c.change[0], c.change[1], 1); text == c.base {
			t.Errorf("%s to %s: the link was not cut", c.from, c.to)
		}
		without := liveIn(t, text, sky)
		before, after := c.measure(with), c.measure(without)
		low, high := c.expect(with)
		if change := after - before; !(change >= low && change <= high) || change == 0 {
			t.Errorf("%s to %s: cutting the link changed %.6g to %.6g %s, by %.6g; foretold %.6g to %.6g", c.from, c.to, before, after, c.unit, change, low, high)
		}
		table += fmt.Sprintf("| %s | %s | %s | %s | %.0f %s | %.0f | %+.0f |\n", c.from, c.to, c.cut, c.foretold, before, c.unit, after, after-before)
	}
	keep(t, "../docs/checks/couplings.md", "# Couplings\n\nA cause in one budget, its effect in another: each link is cut once in a house made for it, and the other\nbudget must change as foretold (hourly/couplings_test.go).\n\n"+table)
}

// keep holds a file to what it should say, or writes it with -update.
func keep(t *testing.T, path, text string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	old, err := os.ReadFile(path)
	if err != nil || string(old) != text {
		t.Errorf("%s is stale: go test ./hourly -update writes it anew, then read what changed (%v)", path, err)
	}
}
