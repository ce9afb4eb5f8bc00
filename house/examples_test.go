package house

import (
	"path/filepath"
	"strings"
	"testing"

	"suffice/examples"
)

// Every example file is read and composed.
func TestExamplesCompose(t *testing.T) {
	paths, err := filepath.Glob("../examples/*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	four, err := filepath.Glob("../examples/four/*.yaml")
	if err != nil || len(paths) < 3 {
		t.Fatalf("%d example files, %v", len(paths), err)
	}
	for _, path := range append(paths, four...) {
		f, err := Open(path)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		if _, err := Compose(f); err != nil {
			t.Errorf("%v", err)
		}
	}
}

func composed(t testing.TB, name string, text []byte) *House {
	t.Helper()
	f, err := Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	h, err := Compose(f)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func TestDemoHasEveryPart(t *testing.T) {
	h := composed(t, "demo.yaml", examples.Demo)
	if h.Drains == nil || h.Drains.Planter == nil || h.Drains.Well == nil || h.Drains.Trench == nil || h.Garden == nil || len(h.Garden.Beds) != 2 {
		t.Errorf("the demo lacks a part of the way of used water, or a bed: %+v %+v", h.Drains, h.Garden)
	}
	if h.People == nil || h.Water == nil || h.Power == nil || h.HotWater == nil || h.Gas == nil {
		t.Errorf("the demo lacks a part: %+v", h)
	}
	said := strings.Join(h.Described, "\n")
	for _, part := range []string{"rooms", "wants.warmth"} {
		if !strings.Contains(said, part) {
			t.Errorf("%s is not said to be described only:\n%s", part, said)
		}
	}
	if n := len(h.WaterDesign.Tanks); n != 2 || h.WaterDesign.Tanks[0].Overflow != 1 || h.WaterDesign.Roofs[1].Into != 1 {
		t.Errorf("%d tanks, the first spills to %d, the second roof fills %d", n, h.WaterDesign.Tanks[0].Overflow, h.WaterDesign.Roofs[1].Into)
	}
	if h.Weather.BuiltIn != "crete" || h.Weather.Path != "" {
		t.Errorf("the demo's weather is %+v", h.Weather)
	}
}

// A house of a roof and a tank has no power, no hot water, no gas and no rules.
func TestLeftOutPartsDoNotExist(t *testing.T) {
	h := composed(t, "roof-and-tank.yaml", examples.RoofAndTank)
	if h.Power != nil || h.HotWater != nil || h.Gas != nil || len(h.Described) != 0 {
		t.Errorf("parts came from nowhere: %+v", h)
	}
	if h.WaterDesign.Supply.WattHoursPerKilolitre != 0 || h.WaterDesign.Tanks[0].Start != 10000 {
		t.Errorf("water fell with %g Wh/kL from %g L; want 0 and half of 20 kL", h.WaterDesign.Supply.WattHoursPerKilolitre, float64(h.WaterDesign.Tanks[0].Start))
	}
	if h.Wants.Power.Stated || !h.Wants.Water.Stated {
		t.Errorf("wants %+v, only water's is in the file", h.Wants)
	}
}

// Paths of records are beside the house file, wherever the program runs.
func TestRecordsAreBesideTheFile(t *testing.T) {
	h := composed(t, filepath.Join("some", "where", "southern.yaml"), examples.Southern)
	want := filepath.Join("some", "site", "weather", "files", "testdata", "ASN00066062_sydney-observatory-hill.dly.gz")
	if h.Weather.Path != want || h.Weather.Rain != "" {
		t.Errorf("the record is at %s, its gauge at %q; want %s and no gauge beside it", h.Weather.Path, h.Weather.Rain, want)
	}
	if p := h.Weather.Reading.Latitude; p == nil || *p != -33.9 {
		t.Errorf("a record without a place is read at %v, want the house's latitude", p)
	}
}

func TestWarnings(t *testing.T) {
	for _, c := range []struct{ old, new, says string }{
		{"weather: {built_in: crete}\n", "", "weather: the file names no record: one must be given before the house can be led through any weather"},
		{"latitude: 35 deg", "latitude: 45 deg", "weather.built_in: the record crete is for latitude 35.03 deg, longitude 24.83 deg, and the house does not stand there: name a record of the place"},
		{"longitude: 24 deg", "longitude: -24 deg", "site: at longitude -24 a clock of +2 h has the sun highest near 15:36: look at the signs (west is negative)"},
		{"people: {residents: 1, uses: [{name: u, water: washing, amount: 9 L/d}]}\n", "", "people: the file names no people: nobody draws water or is at home"},
		{", uses: [{name: u, water: washing, amount: 9 L/d}]", "", "people.uses: nobody uses any water: the tanks only fill"},
		{"roofs: [{name: r", "roofs: [{name: r, into: back", "water.delivery.load: a load of 9500 L does not fit into tank main: some of it is always spilled"},
		{"by: pump, head: 9 m, flow: 1 m3/h, pipe_length: 9 m, bore: 25 mm, efficiency: 30 %", "by: gravity", "water.tanks[1]: nothing fills tank back: no roof, no overflow, no delivery"},
		{"azimuth: 180 deg", "azimuth: 0 deg", "power.arrays[0].azimuth: 0 deg looks away from the sun at noon, which stands at 180 deg there: is it counted from north, east positive"},
		{"power: 90 W", "power: 3 kW", "power.inverter.continuous: 3000 W may run at once on a sunday from 0 to 1, and it carries 2000 W"},
		{"{continuous: 2 kW}\n  loads: [{name: l, power: 90 W}]", "{continuous: 2 kW, starting: 3 kW}\n  loads: [{name: l, power: 1 kW, hours: 7-9}, {name: k, power: 1 kW, starting: 2.5 kW, hours: 8-9, days: friday}]",
			"power.inverter.starting: 3500 W are wanted for a moment when the heaviest motor starts last on a friday from 8 to 9, and it gives 3000 W"},
		{"start_below: 55 %", "start_below: 45 %", "power.generator.start_below: 45 % is no more than the floor of the battery, 50 %: the generator starts only when something already goes without"},
		{"set: 60 degC", "set: 59 degC", "hot_water: stored water that stays below 60 degC can grow legionella"},
		{"do: [wait]", "do: [swap]", "rules: swap does nothing: no load says that gas can do it"},
		{"do: [wait]", "do: [wait]", "rules: wait does nothing: no load says that it can"},
		{"charge_below: {charge: 60 %, do: [wait]}", "tank_below: {tank: 9 %, do: [save], saves: 9 %}", "rules.tank_below: save does nothing: no use of water is savable"},
	} {
		text := strings.Replace(whole, c.old, c.new, 1)
		if text == whole && c.old != c.new {
			t.Errorf("%q does not stand in the whole house", c.old)
		}
		text = strings.NewReplacer("load: 4 kL", "load: 9.5 kL", "water: washing", "water: drinking").Replace(text)
		h := composed(t, "h", []byte(text))
		if said := strings.Join(h.Warnings, "\n"); !strings.Contains(said, c.says) {
			t.Errorf("%q for %q: got warnings\n%s\nwant among them\n%s", c.new, c.old, said, c.says)
		}
	}
}
