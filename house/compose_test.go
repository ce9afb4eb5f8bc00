package house

import (
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"suffice/hotwater"
	"suffice/people"
	"suffice/power"
	"suffice/pump"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/water"
)

// full states every key of the computed parts with a value that no other key has.
const full = `
name: Full
site: {latitude: -33 deg, longitude: 18 deg, altitude: 12 m, clock: UTC+2, earth: rock, horizon: [{azimuth: 90 deg, height: 5 deg}]}
indoors: 17 degC
weather: {record: r.csv, rain: g.dly, coast: yes, years: drawn, reading: [unit.RAIN=mm, time=utc], rain_reading: [latitude=1, longitude=2]}
people:
  residents: 3
  uses:
    - {name: a, water: drinking, amount: 8 L/person/d, hours: 22-2, days: weekends, savable: yes, drains: dishwasher}
    - {name: b, water: outdoor, amount: 45 L/d, hot: 31 degC, when_away: yes, savable: no}
    - {name: c, water: flushing, amount: 7 L/person/d, savable: yes}
  visitors: [{people: 2, from: 12-20, to: 01-04}]
  away: [{from: 8-3, to: 08-24}]
water:
  roofs: [{name: r, area: 130 m2, surface: green, coefficient: 81 %, wetting: 0.7 mm, into: two}]
  first_flush: {depth: 0.6 mm, litres: 11 L, after_dry: 3 days}
  tanks:
    - {name: one, holds: 40 kL, dead: 800 L, fire: 2 kL, start: 21 kL, leak: 3 L/d, overflow: two}
    - {name: two, holds: 10 kL, start: 25 %}
  changes_itself: no
  salt: 0.05 g/L
  supply: {by: gravity}
  treatment:
    - {name: f, loss: 1 %, power: 30 W, running: flow, flow: 0.5 m3/h}
    - {name: u, uses: drinking washing, power: 25 W}
  delivery: {load: 8 kL, lead: 1.5 days, order_below: 3 kL, price: 110 EUR, into: two}
power:
  arrays:
    - {name: p, peak: 2 kW, slope: 41 deg, azimuth: 10 deg, noct: 46 degC, power_coefficient: -0.35 %/K, soiling: 4 %, mismatch: 1.5 %, wiring: 2.5 %,
       ageing: 0.6 %/year, age: 9 years, module: {open_voltage: 40 V, voltage_coefficient: -0.3 %/K, short_current: 10 A, series: 2, parallel: 3}}
  controller: {current: 60 A, limit_voltage: 151 V, efficiency: 96 %}
  battery: {kind: lead-acid, capacity: 600 Ah, voltage: 24 V, floor: 45 %, start: 75 %, where: outdoors}
  inverter: {continuous: 3 kW, starting: 6 kW, idle: 14 W, peak_efficiency: 93 %, full_load_efficiency: 89 %, sleeps: yes}
  loads:
    - {name: l, power: 1.5 kW, energy: 0.8 kWh/d, hours: 9-11, days: monday, need: could, starting: 4 kW, waits: 3 days, drops: yes, gas: 50 %, when_away: no}
  generator: {power: 2.2 kW, fuel: 0.45 L/kWh, no_load: 20 %, charger: 88 %, start_below: 48 %, stop_above: 82 %, least_run: 3 h}
  should_above: 60 %
  could_above: 85 %
hot_water:
  cold_lag: 12 days
  cold_swing: 55 %
  collector: {area: 4 m2, eta0: 0.77, a1: 3.7 W/m2K, a2: 0.016 W/m2K2, k50: 0.93, slope: 52 deg, azimuth: 5 deg, frost: antifreeze, freezes_at: -21 degC,
    flow: 50 L/h, exchanger: 310 W/K, difference: 7 K, pump: 26 W}
  store: {holds: 290 L, loss: 2.1 W/K, upper_share: 42 %, limit: 88 degC, where: outdoors}
  backup: {by: gas, place: inside, set: 61 degC, efficiency: 84 %, power: 6.5 kW}
gas: {fuel: butane, bottle: 13 kg, bottles: 4, lead: 5 days, price: 30 EUR}
rules:
  foresight: yesterday
  dull: {clearness_below: 0.36, until: 0.41}
  when_dull: [swap, wait]
  charge_below: {charge: 62 %, until: 71 %, do: [swap]}
  tank_below: {tank: 25 %, until: 33 %, do: [save], saves: 31 %}
  tank_in_use_below: {tank: 6 %, until: 13 %, do: [change]}
wants: {water: {short_days: 0.2 /year}, power: {short_days: 0.3 /year}, food: {share: 35 %}, waste: {surfacing: no}}
planter: {area: 6 m2, width: 1.5 m, slope: 2 %, gravel: 0.45 m, soil: 0.5 m, under: glass, light: 45 %, damp: 65 %, fed_by: [dishwasher], surge: 210 L,
  clean_trap: 20 days, trap_keeps: 25 %, trap_holds: 1.5 kg, ill: [{from: 01-10, to: 01-17}], harsh: [{from: 03-01, to: 03-02}], plants: [strawberry, broccoli, banana],
  kc: 1.1, roots: 0.6 m, depletion: 40 %, rinse: 25 mm, rinse_every: 21 days, eaten_raw: no, children: no, notes: n}
flush_well: {area: 0.7 m2, depth: 1.2 m, least: 0.15 m, float: 0.3 m, refill: 0.5 m, most_per_hour: 500 L, pump: 90 Wh/kL, stale_after: 5 days}
septic:
  holds: 3.5 kL
  sludge: 55 L/year
  empty_at: 30 %
  bedrooms: 4
  rules_of: england
  setbacks: [{from: tank, to: building, is: 9 m}]
  local_setbacks: [field to well 31 m, tank to building 1.5 m]
  notes: n
  trench: {length: 20 m, width: 0.7 m, gravel: 0.35 m, pores: 38 %, soil: loam-weak, percolation: 10 min, clogs: 800 g/m2, catch: 30 m2, runs_off: 25 %, cover: 55 mm,
    trees: {count: 3, crown: 18 m2, grown_at: 10 years, age: 2 years, kc: 1.05, evergreen: no, leaves_from: 10-01, leaves_to: 05-01, reach: 45 %, distance: 4 m}}
garden:
  beds:
    - {name: g, area: 12 m2, under: glass, light: 55 %, damp: 70 %, soil: clay, depth: 0.3 m, watered_by: can, watered_at: 7, free_nitrogen: 3 g/m2, nitrogen: 50 g/m2, by_hand: no,
       crops: [{crop: lettuce, sown: 03-05}, {crop: radish, sown: 12-30}]}
  water_above: 40 %
  scraps: no
  hens: 6
  goats: 1
  hives: 2
  vegetables: 95 kg/year
  lawn: {area: 40 m2, kc: 0.85, depletion: 50 %, soil: silt loam, depth: 45 cm, watered_by: sprinkler, flow: 700 L/h, watered_at: 4}
  notes: n
`

func same(t *testing.T, what string, got, want any, ignore ...any) {
	t.Helper()
	if d := cmp.Diff(want, got, cmpopts.IgnoreUnexported(ignore...), cmpopts.EquateApprox(1e-12, 0)); d != "" {
		t.Errorf("%s (- wanted, + composed):\n%s", what, d)
	}
}

func TestEveryValueComesToItsPlace(t *testing.T) {
	h := composed(t, "h", []byte(full))
	same(t, "people", *h.People, people.Household{Residents: 3,
		Uses: []people.Use{
			{Name: "a", Kind: people.Drinking, Drain: people.Dishwasher, PerPerson: 8, Hours: [24]float64{0: 1, 1: 1, 22: 1, 23: 1}, Days: people.Weekdays{0: true, 6: true}, Savable: true},
			{Name: "b", Kind: people.Outdoor, Drain: people.Ground, PerHouse: 45, Hours: Hours(allHours).shares(), Days: people.Weekdays{true, true, true, true, true, true, true}, Hot: true, Mix: 31, WhenEmpty: true},
			{Name: "c", Kind: people.Flushing, Drain: people.Toilet, PerPerson: 7, Hours: Hours(allHours).shares(), Days: people.Weekdays{true, true, true, true, true, true, true}, Savable: true},
		},
		Visitors: []people.Visitors{{People: 2, Dates: people.Dates{From: people.Date{Month: 12, Day: 20}, To: people.Date{Month: 1, Day: 4}}}},
		Away:     []people.Dates{{From: people.Date{Month: 8, Day: 3}, To: people.Date{Month: 8, Day: 24}}}})
	same(t, "rules", h.Rules, people.Rules{
		Dull: people.Line{Below: 0.36, Until: 0.41}, WhenDull: people.Do{Swap: true, Wait: true},
		Charge: people.Line{Below: 0.62, Until: 0.71}, WhenCharge: people.Do{Swap: true},
		Tank: people.Line{Below: 0.25, Until: 0.33}, WhenTank: people.Do{Save: true}, Saves: 0.31,
		Duty: people.Line{Below: 0.06, Until: 0.13}, WhenDuty: people.Do{ChangeTank: true}})
	if h.Foresight != people.Yesterday || h.Indoors != 17 || h.Money != "EUR" || h.Place.Altitude != 12 || h.Horizon.Height(90) != 5 {
		t.Errorf("foresight %v, indoors %v, money %s, altitude %v, horizon in the east %v", h.Foresight, h.Indoors, h.Money, h.Place.Altitude, h.Horizon.Height(90))
	}
	same(t, "wants", h.Wants, WantsOf{Water: Want{true, 0.2}, Power: Want{true, 0.3}, Food: WantOfFood{true, 0.35}, Waste: Want{Stated: true}})
	if h.Gas.Fuel.Name != "butane" || h.Gas.Bottle != 13 || h.Gas.Bottles != 4 || h.Gas.Lead != 5 {
		t.Errorf("gas is %+v", h.Gas)
	}
	if r := &h.Weather; r.Path != "r.csv" || !r.Coast || r.Rain != "g.dly" || r.Matched || r.Reading.Units["RAIN"] != "mm" || *r.Reading.Latitude != -33 || *r.RainReading.Longitude != 2 {
		t.Errorf("weather is %+v", r)
	}
}

var allHours = func() (h [24]bool) {
	for i := range h {
		h[i] = true
	}
	return h
}()

func TestEveryValueOfWaterComesToItsPlace(t *testing.T) {
	h := composed(t, "h", []byte(full))
	all := [water.Kinds]bool{true, true, true, true}
	same(t, "water", *h.WaterDesign, water.Design{
		Roofs: []water.Roof{{Name: "r", Area: 130, Coefficient: 0.81, Wetting: 0.7, Flush: water.FirstFlush{Depth: 0.6, Litres: 11, AfterDry: 72}, Into: 1}},
		Snow:  water.UsualSnow(),
		Tanks: []water.Tank{
			{Name: "one", Holds: 40000, Dead: 800, Fire: 2000, Leak: 3, Start: 21000, Overflow: 1},
			{Name: "two", Holds: 10000, Start: 2500, Overflow: water.Away},
		},
		Treatment: []water.Stage{
			{Name: "f", Serves: all, Loss: 0.01, WattHoursPerKilolitre: 60, MostPerHour: 500}, // 30 W at 0.5 m3/h
			{Name: "u", Serves: [water.Kinds]bool{true, true}, Standing: 25},
		},
		Delivery: water.Delivery{Load: 8000, Lead: 36, OrderBelow: 3000, Price: 110, Into: 1},
	})
}

func TestEveryValueOfPowerComesToItsPlace(t *testing.T) {
	h := composed(t, "h", []byte(full))
	p := h.Power
	same(t, "arrays", p.Arrays, []power.Array{{Name: "p", Peak: 2000, Plane: sun.Plane{Slope: 41, Azimuth: 10}, NOCT: 46, Coefficient: -0.0035,
		Soiling: 0.04, Mismatch: 0.015, Wiring: 0.025, Ageing: 0.006, Age: 9,
		String: power.String{OpenVoltage: 40, Coefficient: -0.003, ShortCurrent: 10, Series: 2, Parallel: 3}}}, power.Array{})
	same(t, "controller", p.System.Controller, power.Controller{Current: 60, Efficiency: 0.96}, power.Controller{})
	same(t, "battery", p.System.Battery, power.Battery{Chemistry: power.LeadAcid(), Capacity: 14400, Voltage: 24, Floor: 0.45, Start: 0.75}, power.Battery{})
	same(t, "inverter", p.System.Inverter, power.Inverter{Continuous: 3000, Starting: 6000, Idle: 14, PeakEfficiency: 0.93, FullLoadEfficiency: 0.89, Sleeps: true}, power.Inverter{})
	same(t, "loads", p.Loads, []power.Load{{Name: "l", Need: power.Could, Power: 1500, Energy: 800, Hours: [24]float64{9: 1, 10: 1}, Days: [7]bool{1: true},
		Starting: 4000, Waits: 3, Drops: true, Gas: 0.5}}, power.Load{})
	same(t, "generator", p.System.Generator, power.Generator{Power: 2200, Fuel: 0.45, NoLoad: 0.2, Charger: 0.88, StartBelow: 0.48, StopAbove: 0.82, LeastRun: 3}, power.Generator{})
	if p.LimitVoltage != 151 || !p.BatteryOutdoors || p.System.ShouldAbove != 0.6 || p.System.CouldAbove != 0.85 {
		t.Errorf("limit %g V, outdoors %t, should above %g, could above %g", p.LimitVoltage, p.BatteryOutdoors, p.System.ShouldAbove, p.System.CouldAbove)
	}
}

func TestEveryValueOfHotWaterComesToItsPlace(t *testing.T) {
	h := composed(t, "h", []byte(full))
	y := h.HotWater.System
	same(t, "collector", y.Collector, hotwater.Collector{Area: 4, Eta0: 0.77, A1: 3.7, A2: 0.016, K50: 0.93, Slope: 52, Azimuth: 5, Flow: 50, Exchanger: 310,
		Difference: 7, Pump: 26, Frost: hotwater.Antifreeze, FreezesAt: -21}, hotwater.Collector{})
	same(t, "store", y.Store, hotwater.Store{Holds: 290, Loss: 2.1, UpperShare: 0.42, Limit: 88}, hotwater.Store{})
	same(t, "backup", y.Backup, hotwater.Backup{By: hotwater.GasUpper, Set: 61, Efficiency: 0.84, Power: 6500}, hotwater.Backup{})
	if n := h.HotWater.Inlet; !h.HotWater.Outdoors || n.Days != 12 || n.Swing != 0.55 {
		t.Errorf("outdoors %t, cold water follows in %g days by %g", h.HotWater.Outdoors, n.Days, n.Swing)
	}
}

func TestPumpIsAskedForItsEnergy(t *testing.T) {
	h := composed(t, "h", []byte(whole))
	lift := pump.Lift{Static: 9, Pipe: pump.Pipe{Length: 9, Bore: 25, Roughness: 0.0015, Fittings: 4}, Flow: 1, Efficiency: 0.3, Water: tapWater}
	same(t, "supply", h.WaterDesign.Supply, water.Supply{WattHoursPerKilolitre: float64(lift.EnergyPerKilolitre()), MostPerHour: 1000})
	h = composed(t, "h", []byte(strings.Replace(full, "{by: gravity}", "{by: gravity, head: 6 m, pipe_length: 40 m, bore: 25 mm}", 1)))
	pipe := pump.Pipe{Length: 40, Bore: 25, Roughness: 0.0015, Fittings: 4}
	same(t, "gravity", h.WaterDesign.Supply, water.Supply{MostPerHour: quantity.Litres(1000 * pipe.GravityFlow(6, tapWater))})
}

// The tests above are worth little for keys that they leave out.
func TestFullStatesEveryComputedKey(t *testing.T) {
	f, err := Read("h", []byte(full))
	if err != nil {
		t.Fatal(err)
	}
	stated := make(map[string]bool)
	for path := range f.marks {
		stated[general(path)] = true
	}
	elsewhere := regexp.MustCompile(`^(format|site.coldest|weather.built_in|water.supply\..*|rooms.*|materials.*|planter.(room|crops.*)|garden.beds\[\].room|wants.warmth.*)$`)
	for _, k := range Keys() {
		if !stated[k.Path] && !elsewhere.MatchString(k.Path) {
			t.Errorf("%s is not in the full house", k.Path)
		}
	}
}
