package power

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/sheet"
	"suffice/site/sun"
)

// named gives the sheet of that name.
func named(t *testing.T, name string) *sheet.Sheet {
	t.Helper()
	for _, s := range Sheets() {
		if s.Name == name {
			return &s
		}
	}
	t.Fatalf("no sheet %s", name)
	return nil
}

// worked gives a sheet's results from inputs as a person writes them.
func worked(t *testing.T, name string, args map[string]string) map[string]sheet.Result {
	t.Helper()
	s := named(t, name)
	given, err := s.Read(args)
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.Work(given)
	if err != nil {
		t.Fatal(err)
	}
	results := make(map[string]sheet.Result)
	for _, r := range w.Results {
		results[r.Name] = r
	}
	return results
}

func TestEverySheetAnswersBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil {
			t.Errorf("%s: %v", s.Name, err)
		}
		sourced := len(s.Sources) > 0 || len(s.Cautions) > 0 && strings.Contains(s.Cautions[0], "no source")
		if len(w.Steps) == 0 || len(w.Results) == 0 || !sourced || len(w.Cautions) == 0 {
			t.Errorf("%s: %d steps, %d results, %d sources, %d cautions", s.Name, len(w.Steps), len(w.Results), len(s.Sources), len(w.Cautions))
		}
		for _, step := range w.Steps {
			if math.IsNaN(step.Value) || math.IsInf(step.Value, 0) || step.Formula == "" || step.Numbers == "" {
				t.Errorf("%s: step %+v", s.Name, step)
			}
		}
	}
}

// TestSheetsGiveThePublishedNumbers works the sheets as a person would.
func TestSheetsGiveThePublishedNumbers(t *testing.T) {
	for _, c := range []struct {
		sheet  string
		args   map[string]string
		result string
		print  check.Published
	}{
		{"panel-temperature", map[string]string{"noct": "48degC", "ambient": "40degC", "light": "1000W/m2"}, "temperature", check.Published{Source: "haeberlin-pv", At: "ch. 4, problem 1, worked as a sheet", Value: "75", Unit: "degC"}},
		{"panel-string", map[string]string{"open_circuit_voltage": "49.5V", "coefficient": "-0.28%/K", "coldest": "-5degC", "limit": "1000V"}, "voltage", check.Published{Source: "pv-training", At: "string example, worked as a sheet", Value: "53.66", Unit: "V"}},
		{"panel-string", map[string]string{"open_circuit_voltage": "49.5V", "coefficient": "-0.28%/K", "coldest": "-5degC", "limit": "1000V"}, "most_in_series", check.Published{Source: "pv-training", At: "string example, worked as a sheet", Value: "18", Unit: "panels"}},
		{"battery-days", map[string]string{"daily_energy": "2400Wh/d", "days": "3days", "depth": "50%", "voltage": "24V", "cold_factor": "0.8"}, "capacity", check.Published{Source: "off-grid-guide", At: "2400 Wh a day, 24 V, 3 days, half drawn, cold factor 0.8, worked as a sheet", Value: "750", Unit: "Ah", Standing: "own"}},
		{"battery-capacity", map[string]string{"capacity_limit": "400Ah", "well_share": "0.3", "rate_constant": "0.5/h", "hours": "10h"}, "available", check.Published{Source: "manwell-mcgowan-1993", At: "capacity over 10 h, worked as a sheet", Value: "273.31", Unit: "Ah", Standing: "own"}},
		{"battery-capacity", map[string]string{"capacity_limit": "2Ah", "well_share": "0.625", "rate_constant": "0.6912/h", "current": "0.96A"}, "hours", check.Published{Source: "jongerden-haverkort-2008", At: "0.96 A without a break, 91 min, worked as a sheet", Value: "1.52", Unit: "h"}},
		{"battery-capacity", map[string]string{"capacity_limit": "400Ah", "well_share": "0.3", "rate_constant": "0.5/h", "current": "40A", "hours": "1h"}, "q1", check.Published{Source: "manwell-mcgowan-1993", At: "q1 after 1 h at 40 A, worked as a sheet", Value: "85.966", Unit: "Ah", Standing: "own"}},
		{"battery-air", map[string]string{"cells": "24", "capacity": "400Ah"}, "flow", check.Published{Source: "en62485-2", At: "7.2: 24 cells, 400 Ah, vented, boost, worked as a sheet", Value: "9.6", Unit: "m3/h", Standing: "own"}},
		{"battery-air", map[string]string{"cells": "24", "capacity": "400Ah"}, "opening", check.Published{Source: "en62485-2", At: "7.3: opening for it, worked as a sheet", Value: "269", Unit: "cm2", Standing: "own"}},
		{"cable", map[string]string{"current": "20A", "length": "10m", "area": "10mm2", "voltage": "24V"}, "drop", check.Published{Source: "iec60364-5-52", At: "annex G: 20 A through 2 x 10 m of 10 mm2 copper", Value: "0.9", Unit: "V", Standing: "own"}},
		{"cable", map[string]string{"current": "20A", "length": "10m", "area": "10mm2", "voltage": "24V"}, "share", check.Published{Source: "iec60364-5-52", At: "annex G: of 24 V", Value: "3.75", Unit: "%", Standing: "own"}},
	} {
		check.That(t, worked(t, c.sheet, c.args)[c.result].Value.Number, c.print)
	}
}

func TestCycleSheet(t *testing.T) {
	r := worked(t, "battery-cycles", map[string]string{"history": "-2,1,-3,5,-1,3,-4,4,-2", "method": "repeating"})
	if got := r["cycles"].ByMethod; len(got) != 4 || got["3"] != 1 || got["4"] != 1 || got["7"] != 1 || got["9"] != 1 {
		t.Errorf("cycles %v, want one each of 3, 4, 7 and 9", got)
	}
	if got := r["equivalent_full_cycles"].Value.Number; math.Abs(got-23.0/9) > 1e-12 {
		t.Errorf("%g full cycles, want 23/9", got)
	}
}

func TestInverterSizeSheet(t *testing.T) {
	r := worked(t, "inverter-size", map[string]string{"loads": "800:3,120W:5,0.06kW", "simultaneous": "50%"})
	if got := r["continuous"].Value.Number; got != 490 {
		t.Errorf("continuous %g W, want half of 980", got)
	}
	if got := r["starting"].Value.Number; got != 490+1600 {
		t.Errorf("starting %g W, want 490 and twice 800 more", got)
	}
}

func TestSheetFaults(t *testing.T) {
	for _, c := range []struct {
		sheet string
		args  map[string]string
	}{
		{"panel-string", map[string]string{"coldest": "-45degC"}},
		{"battery-hour", map[string]string{"available": "100Wh"}},
		{"battery-capacity", map[string]string{"current": "40A", "hours": "50h"}},
		{"cable", map[string]string{"area": "0.05mm2"}},
		{"inverter-hour", map[string]string{"idle": "500W"}},
		{"inverter-size", map[string]string{"loads": "800:x"}},
	} {
		s := named(t, c.sheet)
		given, err := s.Read(c.args)
		if err == nil {
			_, err = s.Work(given)
		}
		if err == nil {
			t.Errorf("%s took %v", c.sheet, c.args)
		}
	}
}

func FuzzReadLoads(f *testing.F) {
	for _, seed := range []string{"800:3,120:5", "0.8kW:3", "60", ":", "1:1:1", "NaN:2", "1e300:2", ","} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		loads, err := readLoads(text)
		if err != nil {
			return
		}
		running, starting := StartingPower(loads)
		if !(running > 0 && starting >= running) || math.IsInf(float64(starting), 0) {
			t.Errorf("%q was read as %v W running, %v W starting", text, running, starting)
		}
	})
}

// exact makes sheet inputs from numbers already in the sheet's units.
func exact(numbers map[string]float64) map[string]sheet.Value {
	values := make(map[string]sheet.Value)
	for name, v := range numbers {
		values[name] = sheet.Value{Kind: sheet.Number, Number: v}
	}
	return values
}

// same works a sheet and wants results to the last bit.
func same(t *testing.T, name string, given map[string]sheet.Value, want map[string]float64) {
	t.Helper()
	w, err := named(t, name).Work(given)
	if err != nil {
		t.Fatal(err)
	}
	got := make(map[string]float64)
	for _, r := range w.Results {
		got[r.Name] = r.Value.Number
	}
	for result, v := range want {
		if got[result] != v {
			t.Errorf("%s: %s is %.17g, the hour had %.17g", name, result, got[result], v)
		}
	}
}

// TestSheetsExplainTheHour lives a house and works the hour sheets for each hour from what it
// began with: they agree to the last bit.
func TestSheetsExplainTheHour(t *testing.T) {
	y := terrace(t)
	y.Generator = Generator{}
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1, 2))
	s := y.Start()
	for hour := range 400 {
		weekday, bright := hour/24%7, r.Float64()
		in := SystemIn{Panels: quantity.Watts(day[hour%24] * bright), Services: [Services]quantity.WattHours{WaterPump: 300, Treatment: 25},
			Wants: y.Loads.At(weekday, hour%24, true, Choice{}), NewDay: hour%24 == 0, Temperature: quantity.Celsius(30*r.Float64() - 5)}
		before, b := s, &y.Battery
		var out SystemOut
		y.Step(&s, &in, &out)
		given := exact(map[string]float64{"capacity": float64(b.Capacity), "floor": b.Floor, "available": float64(before.Battery.Available), "bound": float64(before.Battery.Bound),
			"offered": float64(out.Charged), "wanted": float64(out.Discharged), "temperature": float64(in.Temperature)})
		given["kind"] = sheet.Value{Kind: sheet.Text, Text: b.Name}
		same(t, "battery-hour", given, map[string]float64{"charge": out.Charge, "charged": float64(out.Charged), "discharged": float64(out.Discharged), "loss": float64(out.BatteryLoss),
			"self_discharge": float64(out.SelfDischarge), "available": float64(s.Battery.Available), "bound": float64(s.Battery.Bound)})
		same(t, "inverter-hour", exact(map[string]float64{"continuous": 3000, "idle": 15, "peak_efficiency": 0.94, "full_load_efficiency": 0.90,
			"supply": float64(out.Drawn), "services": 0, "must": float64(out.Delivered), "should": 0, "could": 0}),
			map[string]float64{"load": float64(out.Delivered), "drawn": float64(out.Drawn), "loss": float64(out.InverterLoss)})
	}
}

// TestSheetExplainsPanels does the same for an array's column.
func TestSheetExplainsPanels(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	a := roof(37)
	for range 100 {
		l := sun.PlaneLight{Incidence: 2*r.Float64() - 1, Sky: quantity.Irradiance(300 * r.Float64()), Ground: quantity.Irradiance(40 * r.Float64())}
		l.Beam = max(0, quantity.Irradiance(900*l.Incidence))
		air := []float64{40*r.Float64() - 10}
		var c Column
		a.Fill(&c, []sun.PlaneLight{l}, air, []float64{0})
		same(t, "panel-hour", exact(map[string]float64{"peak": 2000, "slope": 37, "cosine": l.Incidence, "beam": float64(l.Beam), "sky": float64(l.Sky), "ground": float64(l.Ground),
			"ambient": air[0], "noct": float64(a.NOCT), "coefficient": a.Coefficient, "soiling": a.Soiling, "mismatch": a.Mismatch, "wiring": a.Wiring, "ageing": 0, "age": 0, "snow": 0}),
			map[string]float64{"power": c.Watts[0]})
	}
}
