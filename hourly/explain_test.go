package hourly

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"suffice/house"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/sheet"
	"suffice/site/sun"
	"suffice/waste"
	"suffice/water"
)

// opened reads a house file with its weather.
func opened(t testing.TB, path string) *Run {
	t.Helper()
	f, err := house.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	h, err := house.Compose(f)
	if err != nil {
		t.Fatal(err)
	}
	w, _, _, err := h.Weather.Hours(h.Place)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Prepare(h, w)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// roughly builds a chain in which things go wrong: a planter in the rain, illness, clay, a tank that is hardly emptied.
func roughly(d *house.DrainParts, _ *house.GardenParts) {
	d.Planter.Stands, d.Planter.Plot = house.Stand{Room: -1}, nil
	d.Planter.Plants = reuse.Crop{Coefficient: 1.2, Roots: 0.4, Depletion: 0.3}
	d.Ill = []people.Dates{{From: people.Date{Month: 2, Day: 1}, To: people.Date{Month: 2, Day: 14}}}
	clay, _ := waste.SoilNamed("clay-strong")
	d.Trench.Soil, d.Trench.Length, d.Septic.Most = clay, 8, 0.2
}

// A hundred random hours of three houses, worked as sheets, are the hours that were lived,
// to the last bit; and so are the first hours in which something rare happened.
func TestExplainedHoursAreTheHoursLived(t *testing.T) {
	rare := slices.Concat(rare, rareInChain)
	shown, unmet := map[string]int{}, rare
	for name, c := range map[string]struct {
		r     *Run
		hours int
	}{"crete": {chained(t, four(t, "crete"), nil), 34}, "denver": {chained(t, four(t, "denver"), roughly), 33}, "demo": {opened(t, "../examples/demo.yaml"), 33}} {
		t.Run(name, func(t *testing.T) {
			w, lived, drawn := c.r.witness(len(c.r.Weather.Days)), c.r.Start(), someHours(c.r, c.hours)
			var row Row
			left := slices.Clone(rare)
			for hour := range c.r.Hours() {
				c.r.hour(hour, &lived, &row)
				if !firstOf(&left, &lived, &row) && !drawn[hour] {
					continue
				}
				if err := w.liveTo(hour); err != nil {
					t.Fatal(err)
				}
				worked, err := w.explain()
				if err != nil {
					t.Fatal(err)
				}
				(&lesson{TB: t, w: w, hour: hour, after: &lived, row: &row}).hold(worked)
				for _, k := range worked {
					shown[k.Sheet.Name]++
				}
			}
			unmet = slices.DeleteFunc(slices.Clone(unmet), func(r rarity) bool {
				return !slices.ContainsFunc(left, func(l rarity) bool { return l.says == r.says })
			})
		})
	}
	for name := range truths {
		if shown[name] < 100 {
			t.Errorf("%s was shown %d times: every hour must show every sheet", name, shown[name])
		}
	}
	for _, r := range unmet {
		t.Errorf("no hour in which %s: it was not explained", r.says)
	}
}

// The same in random houses and weather: other backups, limits, frosts, tanks in a row.
func TestAnyHourIsExplained(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := anyRun(t)
		hour := rapid.IntRange(0, r.Hours()-1).Draw(t, "hour")
		lived := r.Start()
		span := Span{Last: hour + 1}
		if err := r.Live(&lived, &span); err != nil {
			t.Fatal(err)
		}
		w := r.witness(len(r.Weather.Days))
		if err := w.liveTo(hour); err != nil {
			t.Fatal(err)
		}
		worked, err := w.explain()
		if err != nil {
			t.Fatal(err)
		}
		(&lesson{TB: t, w: w, hour: hour, after: &lived, row: &span.Row}).hold(worked)
	})
}

// What a house does not have gives no sheet.
func TestOnlyWhatIsThereIsExplained(t *testing.T) {
	r := opened(t, "../examples/roof-and-tank.yaml")
	worked, err := r.Explain(1000)
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range worked {
		if !slices.Contains([]string{"wants-hour", "rules-hour", "roof-hour", "tank-hour", "uses-hour"}, k.Sheet.Name) {
			t.Errorf("a house of roof and tank was shown %s", k.Sheet.Name)
		}
	}
	if len(worked) < 4 {
		t.Errorf("%d sheets, want people, roof, tank and taps", len(worked))
	}
	for _, hour := range []int{-1, r.Hours()} {
		if _, err := r.Explain(hour); err == nil {
			t.Errorf("hour %d of %d was explained", hour, r.Hours())
		}
	}
}

// someHours draws hours with a fixed seed.
func someHours(r *Run, n int) map[int]bool {
	dice := rand.New(rand.NewPCG(2003, 8))
	hours := map[int]bool{}
	for len(hours) < n {
		hours[dice.IntN(r.Hours())] = true
	}
	return hours
}

// a rarity is something that happens in few hours.
type rarity struct {
	says    string
	happens func(*State, *Row) bool
}

// rare names what seldom happens and must have been explained in one house at least.
var rare = []rarity{
	{"a roof runs", func(_ *State, row *Row) bool { return row.Income.Caught > 0 }},
	{"first flush diverts", func(_ *State, row *Row) bool { return row.Income.Diverted > 0 }},
	{"a tank spills", func(_ *State, row *Row) bool { return row.Income.Spilled > 0 }},
	{"a truck brings water", func(_ *State, row *Row) bool { return row.Income.Loads > 0 }},
	{"snow lies in the sun", func(s *State, row *Row) bool { return s.Water.Snow > 1 && row.Supply.Panels > 0 }},
	{"the tap is short of water", func(_ *State, row *Row) bool { return row.Taps.Cause[water.TankLow] > 0 }},
	{"the tap is short of power", func(_ *State, row *Row) bool { return row.Taps.Cause[water.PumpPower] > 0 }},
	{"services go short", func(_ *State, row *Row) bool { return row.Power.ServiceShare < 1 }},
	{"loads go short in the sun", func(_ *State, row *Row) bool { return row.Power.Short[power.Must] > 0 && row.Power.Income > 0 }},
	{"the generator runs", func(_ *State, row *Row) bool { return row.Power.Generator > 0 }},
	{"work is put off", func(_ *State, row *Row) bool { return row.Supply.Wants.PutOff > 0 }},
	{"work is made up for", func(_ *State, row *Row) bool { return row.Power.MadeUp > 0 }},
	{"work is due", func(_ *State, row *Row) bool { return row.Power.Due > 0 }},
	{"gas cooks", func(_ *State, row *Row) bool { return row.Cooked > 0 }},
	{"people save", func(_ *State, row *Row) bool { return row.Choice.Save > 0 }},
	{"nobody is at home", func(_ *State, row *Row) bool { return row.Wants.Persons == 0 }},
	{"panels are curtailed", func(_ *State, row *Row) bool { return row.Power.Curtailed > 0 }},
	{"the store refuses the sun", func(_ *State, row *Row) bool { return row.Heat.Refused > 0 }},
	{"gas heats water", func(_ *State, row *Row) bool { return row.Heat.Gas > 0 }},
	{"a bottle is empty", func(_ *State, row *Row) bool { return row.Gas.Emptied > 0 }},
	{"a bottle arrives", func(_ *State, row *Row) bool { return row.Gas.Arrived > 0 }},
	{"what could run gets its power", func(_ *State, row *Row) bool { return row.Power.Met[power.Could] > 0 }},
}

// firstOf takes out of a list what happened in this hour, and reports whether anything did.
func firstOf(left *[]rarity, after *State, row *Row) bool {
	before := len(*left)
	*left = slices.DeleteFunc(*left, func(r rarity) bool { return r.happens(after, row) })
	return len(*left) < before
}

// lesson holds the sheets of one hour against what the hour left behind.
type lesson struct {
	rapid.TB
	w     *witness
	hour  int
	after *State
	row   *Row
	sheet *sheet.Worked
	nth   int // of the sheets of this name in this hour
}

// hold takes every result of every sheet: each must have a truth and equal it.
func (l *lesson) hold(worked []sheet.Worked) {
	l.Helper()
	seen := map[string]int{}
	sums := map[string]float64{}
	for i := range worked {
		l.sheet, l.nth = &worked[i], seen[worked[i].Sheet.Name]
		seen[l.sheet.Sheet.Name]++
		l.finite()
		for _, result := range l.sheet.Results {
			l.one(result, sums)
		}
	}
	for name, truth := range summed {
		if sum, ok := sums[name]; ok {
			l.same("the sum of "+name, sum, truth(l))
		}
	}
}

// finite holds that everything shown is a number: nothing else can be written as JSON.
func (l *lesson) finite() {
	l.Helper()
	number := func(what string, v float64) {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			l.Errorf("hour %d: %s: %s is %v", l.hour, l.sheet.Sheet.Name, what, v)
		}
	}
	for name, v := range l.sheet.Inputs {
		number(name, v.Number)
		for _, n := range v.List {
			number(name, n)
		}
	}
	for _, step := range l.sheet.Steps {
		number(step.Says, step.Value)
	}
}

// one holds one result.
func (l *lesson) one(result sheet.Result, sums map[string]float64) {
	l.Helper()
	name := l.sheet.Sheet.Name + "." + result.Name
	if _, ok := summed[name]; ok {
		sums[name] += result.Value.Number
		return
	}
	if said, ok := words[name]; ok {
		if want := said(l); result.Value.Text != want {
			l.Errorf("hour %d: %s says %q, the hour %q", l.hour, name, result.Value.Text, want)
		}
		return
	}
	if result.Value.Kind == sheet.List {
		for i, v := range result.Value.List {
			l.same(name, v, l.after.Power.Tasks.Held[i/(power.MostWait+1)][i%(power.MostWait+1)])
		}
		return
	}
	truth := truths[l.sheet.Sheet.Name][result.Name]
	if truth == nil {
		l.Fatalf("nothing is known that %s could be held against", name)
	}
	l.same(name, result.Value.Number, truth(l))
}

func (l *lesson) same(what string, got, want float64) {
	l.Helper()
	if math.Float64bits(got) != math.Float64bits(want) {
		l.Errorf("hour %d: %s is %.17g, the hour had %.17g", l.hour, what, got, want)
	}
}

func (l *lesson) beam() *sun.PlaneLight {
	if l.sheet.Sheet.Name == "light-hour" && l.nth == 0 || l.sheet.Sheet.Name == "collector-hour" {
		return &l.w.plate.light[l.hour]
	}
	if l.sheet.Sheet.Name == "light-hour" {
		return &l.w.arrays[l.nth-1].light[l.hour]
	}
	return &l.w.arrays[l.nth].light[l.hour]
}

func (l *lesson) array() *power.Array { return &l.w.r.House.Power.Arrays[l.nth] }

func (l *lesson) air() quantity.Celsius {
	return quantity.Celsius(l.w.r.Weather.Temperature[l.hour])
}

// tank gives the place of the tank that a sheet is about: they are told as they spill.
func (l *lesson) tank() int {
	tanks := l.w.r.House.WaterDesign.Tanks
	return slices.IndexFunc(tanks, func(k water.Tank) bool { return l.sheet.Sheet.Title == "A tank in one hour: "+k.Name })
}

// a truth is what the hour left behind for a result of a sheet.
type truth func(*lesson) float64

// truths names for every number of every sheet the field of row, state or column that it must equal.
var truths = map[string]map[string]truth{
	"wants-hour": {
		"drinking": func(l *lesson) float64 { return float64(l.row.Asks.Litres[people.Drinking]) },
		"washing":  func(l *lesson) float64 { return float64(l.row.Asks.Litres[people.Washing]) },
		"flushing": func(l *lesson) float64 { return float64(l.row.Asks.Litres[people.Flushing]) },
		"outdoor":  func(l *lesson) float64 { return float64(l.row.Asks.Litres[people.Outdoor]) },
		"hot":      func(l *lesson) float64 { return float64(l.row.Asks.HotLitres) },
		"mix":      func(l *lesson) float64 { return float64(l.row.Asks.Mix) },
	},
	"rules-hour": {"save": func(l *lesson) float64 { return l.row.Choice.Save }},
	"roof-hour": {
		"down": func(l *lesson) float64 {
			lying := l.w.state.Water.Snow
			return float64(l.w.r.House.WaterDesign.Snow.Step(&lying, water.SkyIn{Rain: quantity.Millimetres(l.w.r.Weather.Rain[l.hour]), Temperature: l.air()}))
		},
		"snow_after":    func(l *lesson) float64 { return float64(l.after.Water.Snow) },
		"film_after":    func(l *lesson) float64 { return float64(l.after.Water.Roofs[l.nth].Film) },
		"flushed_after": func(l *lesson) float64 { return float64(l.after.Water.Roofs[l.nth].Flushed) },
	},
	"tank-hour": {
		"spilled": func(l *lesson) float64 { // what another tank takes up is in its inflow
			if l.w.r.House.WaterDesign.Tanks[l.tank()].Overflow == water.Away {
				return float64(l.row.Income.Spilled)
			}
			return l.sheet.Results[0].Value.Number
		},
		"short":      nothing,
		"held_after": func(l *lesson) float64 { return float64(l.after.Water.Tanks[l.tank()].Held) },
	},
	"uses-hour": {
		"pump_asked":            func(l *lesson) float64 { return float64(l.row.Supply.Services[power.WaterPump]) },
		"treatment_asked":       func(l *lesson) float64 { return float64(l.row.Supply.Services[power.Treatment]) },
		"drinking_served":       func(l *lesson) float64 { return float64(l.row.Taps.Served[water.Drinking]) },
		"washing_served":        func(l *lesson) float64 { return float64(l.row.Taps.Served[water.Washing]) },
		"flushing_served":       func(l *lesson) float64 { return float64(l.row.Taps.Served[water.Flushing]) },
		"outdoor_served":        func(l *lesson) float64 { return float64(l.row.Taps.Served[water.Outdoor]) },
		"drinking_short":        func(l *lesson) float64 { return float64(l.row.Taps.Short[water.Drinking]) },
		"washing_short":         func(l *lesson) float64 { return float64(l.row.Taps.Short[water.Washing]) },
		"flushing_short":        func(l *lesson) float64 { return float64(l.row.Taps.Short[water.Flushing]) },
		"outdoor_short":         func(l *lesson) float64 { return float64(l.row.Taps.Short[water.Outdoor]) },
		"short_tank_low":        func(l *lesson) float64 { return float64(l.row.Taps.Cause[water.TankLow]) },
		"short_supply_flow":     func(l *lesson) float64 { return float64(l.row.Taps.Cause[water.SupplyFlow]) },
		"short_treatment_flow":  func(l *lesson) float64 { return float64(l.row.Taps.Cause[water.TreatmentFlow]) },
		"short_pump_power":      func(l *lesson) float64 { return float64(l.row.Taps.Cause[water.PumpPower]) },
		"short_treatment_power": func(l *lesson) float64 { return float64(l.row.Taps.Cause[water.TreatmentPower]) },
		"drawn":                 func(l *lesson) float64 { return float64(l.row.Taps.Drawn) },
		"backwash":              func(l *lesson) float64 { return float64(l.row.Taps.Backwash) },
		"pump":                  func(l *lesson) float64 { return float64(l.row.Taps.Pump) },
		"treatment":             func(l *lesson) float64 { return float64(l.row.Taps.Treatment) },
		"unused":                func(l *lesson) float64 { return float64(l.row.Taps.Unused) },
	},
	"light-hour": {
		"share":         func(l *lesson) float64 { return l.w.track.Share[l.hour] },
		"cos_zenith":    func(l *lesson) float64 { return l.w.track.CosZenith[l.hour] },
		"sun_altitude":  func(l *lesson) float64 { return l.w.track.Altitude[l.hour] / (math.Pi / 180) },
		"sun_azimuth":   func(l *lesson) float64 { return l.w.track.Azimuth[l.hour] / (math.Pi / 180) },
		"cos_incidence": func(l *lesson) float64 { return l.beam().Incidence },
		"beam":          func(l *lesson) float64 { return float64(l.beam().Beam) },
		"sky":           func(l *lesson) float64 { return float64(l.beam().Sky) },
		"ground":        func(l *lesson) float64 { return float64(l.beam().Ground) },
		"shaded":        func(l *lesson) float64 { return float64(l.beam().Shaded) },
		"total":         func(l *lesson) float64 { return float64(l.beam().Total()) },
	},
	"collector-hour": {"absorbed": func(l *lesson) float64 { return l.row.HeatIn.Light }},
	"inlet-hour": {
		"cold": func(l *lesson) float64 { return float64(l.row.HeatIn.Cold) },
		"running": func(l *lesson) float64 {
			ground := l.w.ground
			l.w.inlet.Step(&ground, l.air())
			return float64(ground.Running)
		},
	},
	"panel-hour": {
		"snow_lost": func(l *lesson) float64 {
			lying := l.w.arrays[l.nth].snow
			return float64(l.array().Output(*l.beam(), l.air())) * l.w.dark(&lying, l.nth, l.hour)
		},
		"cell_temperature": func(l *lesson) float64 { return float64(l.array().CellTemperature(l.air(), l.beam().Total())) },
		"absorbed":         func(l *lesson) float64 { return float64(l.array().Absorbed(*l.beam())) },
	},
	"loads-hour": {
		"must":    func(l *lesson) float64 { return float64(l.row.Supply.Wants.Now[power.Must]) },
		"should":  func(l *lesson) float64 { return float64(l.row.Supply.Wants.Now[power.Should]) },
		"could":   func(l *lesson) float64 { return float64(l.row.Supply.Wants.Now[power.Could]) },
		"gas":     func(l *lesson) float64 { return float64(l.row.Cooked) },
		"swapped": func(l *lesson) float64 { return float64(l.row.Supply.Wants.Swapped) },
		"put_off": func(l *lesson) float64 { return float64(l.row.Supply.Wants.PutOff) },
	},
	"power-hour": {
		"income":          func(l *lesson) float64 { return float64(l.row.Power.Income) },
		"curtailed":       func(l *lesson) float64 { return float64(l.row.Power.Curtailed) },
		"controller_loss": func(l *lesson) float64 { return float64(l.row.Power.ControllerLoss) },
		"generator":       func(l *lesson) float64 { return float64(l.row.Power.Generator) },
		"generator_fuel":  func(l *lesson) float64 { return float64(l.row.Power.Fuel) },
		"charger_loss":    func(l *lesson) float64 { return float64(l.row.Power.ChargerLoss) },
		"charged":         func(l *lesson) float64 { return float64(l.row.Power.Charged) },
		"discharged":      func(l *lesson) float64 { return float64(l.row.Power.Discharged) },
		"battery_loss":    func(l *lesson) float64 { return float64(l.row.Power.BatteryLoss) },
		"self_discharge":  func(l *lesson) float64 { return float64(l.row.Power.SelfDischarge) },
		"drawn":           func(l *lesson) float64 { return float64(l.row.Power.Drawn) },
		"inverter_loss":   func(l *lesson) float64 { return float64(l.row.Power.InverterLoss) },
		"delivered":       func(l *lesson) float64 { return float64(l.row.Power.Delivered) },
		"service_short":   func(l *lesson) float64 { return float64(l.row.Power.ServiceShort) },
		"service_share":   func(l *lesson) float64 { return l.row.Power.ServiceShare },
		"must_met":        func(l *lesson) float64 { return float64(l.row.Power.Met[power.Must]) },
		"must_short":      func(l *lesson) float64 { return float64(l.row.Power.Short[power.Must]) },
		"must_given_up":   func(l *lesson) float64 { return float64(l.row.Power.GivenUp[power.Must]) },
		"should_met":      func(l *lesson) float64 { return float64(l.row.Power.Met[power.Should]) },
		"should_short":    func(l *lesson) float64 { return float64(l.row.Power.Short[power.Should]) },
		"should_given_up": func(l *lesson) float64 { return float64(l.row.Power.GivenUp[power.Should]) },
		"could_met":       func(l *lesson) float64 { return float64(l.row.Power.Met[power.Could]) },
		"could_short":     func(l *lesson) float64 { return float64(l.row.Power.Short[power.Could]) },
		"could_given_up":  func(l *lesson) float64 { return float64(l.row.Power.GivenUp[power.Could]) },
		"element":         func(l *lesson) float64 { return float64(l.row.Power.HotWater) },
		"made_up":         func(l *lesson) float64 { return float64(l.row.Power.MadeUp) },
		"due":             func(l *lesson) float64 { return float64(l.row.Power.Due) },
		"over_limit":      func(l *lesson) float64 { return float64(l.row.Power.OverLimit) },
		"charge":          func(l *lesson) float64 { return l.row.Power.Charge },
		"available":       func(l *lesson) float64 { return float64(l.after.Power.Battery.Available) },
		"bound":           func(l *lesson) float64 { return float64(l.after.Power.Battery.Bound) },
		"waiting":         func(l *lesson) float64 { return float64(l.after.Power.Tasks.Waiting()) },
		"run_hours":       func(l *lesson) float64 { return l.after.Power.Generator.Hours },
	},
	"battery-hour": {
		"charged":        func(l *lesson) float64 { return float64(l.row.Power.Charged) },
		"discharged":     func(l *lesson) float64 { return float64(l.row.Power.Discharged) },
		"loss":           func(l *lesson) float64 { return float64(l.row.Power.BatteryLoss) },
		"self_discharge": func(l *lesson) float64 { return float64(l.row.Power.SelfDischarge) },
		"refused":        nothing, // it was offered what it took in
		"short":          nothing,
		"available":      func(l *lesson) float64 { return float64(l.after.Power.Battery.Available) },
		"bound":          func(l *lesson) float64 { return float64(l.after.Power.Battery.Bound) },
		"charge":         func(l *lesson) float64 { return l.row.Power.Charge },
	},
	"inverter-hour": {
		"load":     func(l *lesson) float64 { return float64(l.row.Power.Delivered) },
		"drawn":    func(l *lesson) float64 { return float64(l.row.Power.Drawn) },
		"loss":     func(l *lesson) float64 { return float64(l.row.Power.InverterLoss) },
		"services": nothing, // all loads together stand as what must run
		"must":     func(l *lesson) float64 { return float64(l.row.Power.Delivered) },
		"should":   nothing,
		"could":    nothing,
		"short":    func(l *lesson) float64 { return l.sheet.Inputs["must"].Number - float64(l.row.Power.Delivered) },
	},
	"hot-water-hour": {
		"upper":            func(l *lesson) float64 { return float64(l.after.Hot.Upper) },
		"lower":            func(l *lesson) float64 { return float64(l.after.Hot.Lower) },
		"solar":            func(l *lesson) float64 { return float64(l.row.Heat.Solar) },
		"gas":              func(l *lesson) float64 { return float64(l.row.Heat.Gas) },
		"electric":         func(l *lesson) float64 { return float64(l.row.Heat.Electric) },
		"delivered":        func(l *lesson) float64 { return float64(l.row.Heat.Delivered) },
		"loss":             func(l *lesson) float64 { return float64(l.row.Heat.Loss) },
		"frost_heat":       func(l *lesson) float64 { return float64(l.row.Heat.FrostHeat) },
		"short":            func(l *lesson) float64 { return float64(l.row.Heat.Short) },
		"refused":          func(l *lesson) float64 { return float64(l.row.Heat.Refused) },
		"fuel_burned":      func(l *lesson) float64 { return float64(l.row.Heat.Fuel) },
		"electricity_used": func(l *lesson) float64 { return float64(l.row.Heat.ElectricUsed) },
		"pump_used":        func(l *lesson) float64 { return float64(l.row.Heat.PumpUsed) },
		"hot":              func(l *lesson) float64 { return float64(l.row.Heat.Hot) },
		"stagnant":         func(l *lesson) float64 { return l.row.Heat.Stagnant },
		"unpumped":         func(l *lesson) float64 { return l.row.Heat.Unpumped },
		"frost_hours":      func(l *lesson) float64 { return l.row.Heat.Frost },
		"under_50":         func(l *lesson) float64 { return l.row.Heat.Under50 },
		"under_60":         func(l *lesson) float64 { return l.row.Heat.Under60 },
	},
	"gas-hour": {
		"available":  func(l *lesson) float64 { return float64(l.w.r.gas.Available(&l.w.state.Gas, l.air())) },
		"burned":     func(l *lesson) float64 { return float64(l.row.Gas.Burned) },
		"energy":     func(l *lesson) float64 { return float64(l.row.Gas.Energy) },
		"short":      func(l *lesson) float64 { return float64(l.row.Gas.Short) },
		"emptied":    func(l *lesson) float64 { return float64(l.row.Gas.Emptied) },
		"arrived":    func(l *lesson) float64 { return float64(l.row.Gas.Arrived) },
		"held_after": func(l *lesson) float64 { return float64(l.after.Gas.Held) },
		"due_after":  func(l *lesson) float64 { return float64(l.after.Gas.Due) },
	},
	"drains-hour":  drainsTruths(),
	"planter-hour": planterTruths(),
	"well-hour":    wellTruths(),
	"septic-hour":  septicTruths(),
	"trees-hour":   treesTruths(),
	"trench-hour":  trenchTruths(),
	"bed-hour":     bedTruths(),
}

func nothing(*lesson) float64 { return 0 }

// summed names the numbers of which the row keeps the sum over roofs, tanks or arrays alone.
var summed = map[string]truth{
	"roof-hour.wetted":   func(l *lesson) float64 { return float64(l.row.Income.Wetted) },
	"roof-hour.missed":   func(l *lesson) float64 { return float64(l.row.Income.Missed) },
	"roof-hour.diverted": func(l *lesson) float64 { return float64(l.row.Income.Diverted) },
	"roof-hour.passed":   func(l *lesson) float64 { return float64(l.row.Income.Caught) },
	"tank-hour.leaked":   func(l *lesson) float64 { return float64(l.row.Income.Leaked) },
	"tank-hour.drawn":    func(l *lesson) float64 { return float64(l.row.Taps.Drawn) },
	"panel-hour.power":   func(l *lesson) float64 { return float64(l.row.Supply.Panels) },
}

// words names the same for results in words.
var words = map[string]func(*lesson) string{
	"rules-hour.swap":        func(l *lesson) string { return yes(l.row.Choice.Swap || l.w.swapRefused()) },
	"rules-hour.wait":        func(l *lesson) string { return yes(l.row.Choice.Wait) },
	"rules-hour.change_tank": func(l *lesson) string { return yes(l.row.Choice.ChangeTank) },
	"rules-hour.bad_after": func(l *lesson) string {
		m, bad := l.after.Mind, ""
		for _, sign := range []struct {
			name string
			bad  bool
		}{{"clearness", m.Dull}, {"charge", m.Charge}, {"tank", m.Tank}, {"duty", m.Duty}} {
			if sign.bad {
				bad += "," + sign.name
			}
		}
		if bad == "" {
			return "none"
		}
		return bad[1:]
	},
	"power-hour.running": func(l *lesson) string { return yes(l.after.Power.Generator.Running) },
	"gas-hour.ordered":   func(l *lesson) string { return yes(l.row.Gas.Ordered) },
	"gas-hour.too_cold":  func(l *lesson) string { return yes(l.row.Gas.Cold) },
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}
