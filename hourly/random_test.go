package hourly

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"suffice/house"
	"suffice/site"
	"suffice/site/sun"
	"suffice/site/weather"
)

// anyHouse writes a house file with random parts and sizes, and reads it.
func anyHouse(t *rapid.T) *house.House {
	var b strings.Builder
	pick := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	word := func(name string, of ...string) string { return rapid.SampledFrom(of).Draw(t, name) }
	has := func(name string) bool { return rapid.Bool().Draw(t, name) }
	fmt.Fprintf(&b, "name: any\nsite: {latitude: %.2f deg, longitude: 20 deg, altitude: 100 m, clock: UTC+1}\n", pick("latitude", -60, 60))
	fmt.Fprintf(&b, `people:
  residents: %d
  uses:
    - {name: a, water: drinking, amount: %.1f L/person/d, hours: 6-9 17-20}
    - {name: b, water: washing, amount: %.1f L/person/d, hot: %.0f degC, hours: 6-22}
    - {name: c, water: flushing, amount: %.1f L/d}
  away: [{from: 01-05, to: 01-09}]
`, rapid.IntRange(1, 8).Draw(t, "residents"), pick("drinks", 0.1, 20), pick("washes", 0.1, 80), pick("hot", 25, 60), pick("flushes", 0.1, 200))
	b.WriteString("water:\n  roofs:\n")
	for i := range rapid.IntRange(1, 3).Draw(t, "roofs") {
		fmt.Fprintf(&b, "    - {name: r%d, area: %.0f m2, surface: %s}\n", i, pick("roof", 5, 300), word("surface", "metal", "tiles", "gravel"))
	}
	b.WriteString("  tanks:\n")
	tanks := rapid.IntRange(1, 3).Draw(t, "tanks")
	for i := range tanks {
		overflow := "garden"
		if i+1 < tanks {
			overflow = fmt.Sprintf("k%d", i+1)
		}
		fmt.Fprintf(&b, "    - {name: k%d, holds: %.0f L, dead: %.0f L, fire: %.0f L, leak: %.1f L/d, overflow: %s}\n",
			i, pick("holds", 500, 20000), pick("dead", 0, 200), pick("fire", 0, 200), pick("leak", 0, 50), overflow)
	}
	if has("pump") {
		fmt.Fprintf(&b, "  supply: {by: pump, head: %.0f m, flow: 1.5 m3/h, pipe_length: 20 m, bore: 25 mm, efficiency: 30 %%}\n", pick("head", 2, 40))
	} else {
		b.WriteString("  supply: {by: gravity}\n")
	}
	fmt.Fprintf(&b, "  treatment:\n    - {name: filter, loss: %.0f %%}\n    - {name: lamp, uses: drinking, power: %.0f W, running: %s, flow: 0.6 m3/h}\n",
		pick("loss", 0, 30), pick("lamp", 1, 60), word("running", "always", "flow"))
	if has("road") {
		fmt.Fprintf(&b, "  delivery: {load: %.0f L, lead: %d days, order_below: 90 L}\n", pick("load", 500, 9000), rapid.IntRange(0, 5).Draw(t, "lead"))
	}
	anyPower(t, &b)
	if has("chain") {
		anyChain(t, &b)
	}
	f, err := house.Read("any.yaml", []byte(b.String()))
	if err != nil {
		t.Fatalf("%v\n%s", err, b.String())
	}
	h, err := house.Compose(f)
	if err != nil {
		t.Fatalf("%v\n%s", err, b.String())
	}
	return h
}

// anyPower adds power, hot water, gas and rules.
func anyPower(t *rapid.T, b *strings.Builder) {
	pick := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	word := func(name string, of ...string) string { return rapid.SampledFrom(of).Draw(t, name) }
	continuous := pick("continuous", 200, 4000)
	fmt.Fprintf(b, `power:
  arrays: [{name: a, peak: %.0f W, slope: %.0f deg, azimuth: %.0f deg}]
  controller: {current: %.0f A}
  battery: {kind: %s, capacity: %.0f Ah, voltage: 24 V, floor: %.0f %%, where: %s}
  inverter: {continuous: %.0f W, idle: %.1f W}
  loads:
    - {name: m, power: %.0f W, need: must}
    - {name: s, power: %.0f W, hours: 8-20, need: should}
    - {name: c, power: %.0f W, hours: 10-16, need: could}
    - {name: w, energy: %.0f Wh/d, power: 800 W, hours: 9-16, need: should, waits: 3 days}
    - {name: g, energy: %.0f Wh/d, power: 1500 W, hours: 6-8 17-19, need: must, gas: 50 %%}
`, pick("peak", 50, 6000), pick("slope", 0, 90), pick("azimuth", 0, 360), pick("current", 10, 200),
		word("kind", "lead-acid", "lithium"), pick("capacity", 20, 1500), pick("floor", 0, 60), word("where", "indoors", "outdoors"),
		continuous, continuous*0.005, pick("must", 5, 300), pick("should", 5, 500), pick("could", 5, 500), pick("waits", 50, 2000), pick("cooks", 50, 1500))
	if rapid.Bool().Draw(t, "generator") {
		b.WriteString("  generator: {power: 1.5 kW, fuel: 0.5 L/kWh, start_below: 55 %, stop_above: 80 %}\n")
	}
	fmt.Fprintf(b, `hot_water:
  collector: {area: %.1f m2, eta0: 0.75, a1: 4 W/m2K, a2: 0.012 W/m2K2, slope: 50 deg, azimuth: 180 deg, frost: %s}
  store: {holds: %.0f L, limit: %.0f degC}
  backup: {by: %s, set: %.0f degC}
gas: {fuel: %s, bottle: %.0f kg, bottles: %d}
rules:
  dull: {clearness_below: 0.4}
  when_dull: [swap, wait]
  charge_below: {charge: 60 %%, do: [swap, wait]}
  tank_below: {tank: 40 %%, do: [save], saves: 30 %%}
`, pick("collector", 0.5, 12), word("frost", "drain-back", "antifreeze"), pick("store", 50, 900), pick("limit", 60, 95),
		word("backup", "gas", "electricity, power: 1.5 kW"), pick("set", 40, 59), word("fuel", "propane", "mixed"), pick("bottle", 5, 45), rapid.IntRange(1, 4).Draw(t, "bottles"))
}

// anyChain adds drains, planter, well, tank, trench and beds, or some of them.
func anyChain(t *rapid.T, b *strings.Builder) {
	pick := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	word := func(name string, of ...string) string { return rapid.SampledFrom(of).Draw(t, name) }
	planter := rapid.Bool().Draw(t, "planter")
	if planter {
		fmt.Fprintf(b, "planter: {area: %.2f m2, width: %.2f m, gravel: %.2f m, soil: %.2f m, under: %s, surge: %.0f L, trap_keeps: %.0f %%, trap_holds: %.0f g, clean_trap: %d days, rinse: %.0f mm, rinse_every: %d days, %s, %s}\n",
			pick("bed", 0.3, 40), pick("width", 0.3, 3), pick("gravel", 0.05, 0.6), pick("soil", 0.1, 0.6), word("under", "sky", "glass", "glass, light: 90 %, damp: 30 %"), pick("surge", 1, 300),
			pick("keeps", 0, 100), pick("trap", 0, 3000), rapid.IntRange(1, 40).Draw(t, "clean"), pick("rinse", 1, 60), rapid.IntRange(1, 30).Draw(t, "every"),
			word("grows", "plants: [reed], kc: 1.2, roots: 0.9 m", "plants: [mint], kc: 0.8", "crops: [{crop: lettuce, sown: 01-10}, {crop: tomato, sown: 06-01}]"),
			word("ill", "fed_by: [shower, kitchen]", "ill: [{from: 01-10, to: 02-10}]", "harsh: [{from: 05-01, to: 05-30}]"))
	}
	if planter && rapid.Bool().Draw(t, "well") {
		fmt.Fprintf(b, "flush_well: {area: %.2f m2, pump: %.0f Wh/kL, most_per_hour: %.0f L}\n", pick("well", 0.1, 2), pick("lifts", 0, 900), pick("gives", 0, 100))
	}
	if rapid.Bool().Draw(t, "septic") {
		fmt.Fprintf(b, "septic:\n  holds: %.0f L\n  empty_at: %.0f %%\n", pick("septic holds", 200, 5000), pick("empty", 5, 75))
		if rapid.Bool().Draw(t, "trench") {
			fmt.Fprintf(b, "  trench: {length: %.1f m, soil: %s, catch: %.0f m2, cover: %.0f mm%s}\n", pick("trench length", 1, 60), word("ground", "sand", "loam-weak", "clay-strong"), pick("catch", 0, 200), pick("cover", 0, 120),
				word("trees", "", ", trees: {count: 3, age: 9 years}", ", trees: {count: 1, evergreen: yes, reach: 90 %}"))
		}
	}
	if rapid.Bool().Draw(t, "garden") {
		fmt.Fprintf(b, "garden: {water_above: %.0f %%, hens: 4, beds: [{name: open, area: %.1f m2, watered_by: %s, crops: [{crop: onion, sown: 01-08}]}, {name: glazed, area: %.1f m2, under: glass, crops: [{crop: spinach, sown: 02-01}]}]}\n",
			pick("above", 0, 90), pick("open", 0.5, 200), word("watered", "drip", "can", "nobody"), pick("glazed", 0.5, 30))
	}
}

// anyWeather makes hours with frost and heat, storms and drought, whole and broken skies.
func anyWeather(t *rapid.T, at site.Place) *weather.Hours {
	n := rapid.IntRange(20, 60).Draw(t, "days")
	first := weather.DayNumber(2001, 1, 1) + rapid.IntRange(0, 364).Draw(t, "first")
	w := &weather.Hours{Place: at}
	var days []sun.Date
	for i := range n {
		d := weather.DayOf(first + i)
		w.Days = append(w.Days, d)
		days = append(days, sun.Date{Year: d.Year, Month: d.Month, Date: d.Date})
	}
	track := sun.NewTrack(at, days)
	base := rapid.Float64Range(-15, 30).Draw(t, "base")
	for i := range n {
		clear := rapid.Float64Range(0.02, 0.8).Draw(t, "clear")
		rain := rapid.SampledFrom([]float64{0, 0, 0, 0.2, 3, 40, 200}).Draw(t, "rain")
		warm := base + rapid.Float64Range(-10, 10).Draw(t, "warm")
		damp := rapid.Float64Range(15, 100).Draw(t, "humidity")
		for h := range 24 {
			k := 24*i + h
			w.Global = append(w.Global, clear*track.Normal[k]*max(0, track.CosZenith[k])*track.Share[k])
			w.Temperature = append(w.Temperature, warm+6*clear*float64(12-abs(h-14))/12)
			fall := 0.0
			if h >= 4 && h < 9 {
				fall = rain / 5
			}
			w.Rain = append(w.Rain, fall)
			w.Humidity = append(w.Humidity, damp)
		}
	}
	split := track.Split(w.Global, sun.BRL)
	w.Diffuse, w.Beam = split.Diffuse, split.Beam
	return w
}

func abs(n int) int { return max(n, -n) }

// anyRun prepares a random house in random weather.
func anyRun(t *rapid.T) *Run {
	h := anyHouse(t)
	r, err := Prepare(h, anyWeather(t, h.Place))
	if err != nil {
		t.Fatal(err)
	}
	return r
}
