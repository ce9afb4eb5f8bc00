package cli

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/house"
)

// Any answers make a house file without a fault, whose only warnings are about the answers
// themselves: never about a size or a line that the program wrote.
func TestAnyPlanIsASoundHouse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		text, err := p.text()
		if err != nil {
			t.Fatal(err)
		}
		h, err := composed("house.yaml", text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		for _, w := range h.Warnings {
			answered := strings.HasPrefix(w, "weather.built_in: ") || strings.HasPrefix(w, "site: ") ||
				strings.Contains(w, "legionella") && !p.has("gas") && !p.electricBackup() ||
				strings.Contains(w, "the pump is taken to run") && !p.has("panels")
			if !answered {
				t.Errorf("the house warns of what nobody answered: %s\n%s", w, text)
			}
		}
		if h.Name != p.name || (h.Water != nil) != p.has("tank") || (h.Power != nil) != p.has("panels") || (h.HotWater != nil) != p.has("collector") || (h.Gas != nil) != p.has("gas") {
			t.Errorf("the house %q is not what was answered, %+v\n%s", h.Name, p, text)
		}
		if h.Wants.Water.Stated != strings.Contains(strings.Join(p.budgets, " "), "water") {
			t.Errorf("wants are %+v, budgets %q", h.Wants, p.budgets)
		}
	})
}

func drawPlan(t *rapid.T) plan {
	p := plan{file: "house.yaml", builtIn: "crete", surface: "tiles"}
	p.name = rapid.SampledFrom([]string{"House", "Süd: 2 # x", `it's "so"`, "- 12", "yes"}).Draw(t, "name")
	p.latitude = fmt.Sprintf("%g deg", rapid.Float64Range(-70, 70).Draw(t, "latitude"))
	longitude := rapid.Float64Range(-180, 180).Draw(t, "longitude")
	p.longitude, p.altitude, p.clock = fmt.Sprintf("%g deg", longitude), "-3.5 m", clockAt(longitude)
	p.residents = rapid.IntRange(0, mostHeads).Draw(t, "residents")
	p.dry = rapid.IntRange(0, 400).Draw(t, "dry")
	p.roof = float64(rapid.IntRange(1, 20000).Draw(t, "roof"))
	if rapid.Bool().Draw(t, "own record") {
		p.builtIn, p.record = "", rapid.SampledFrom([]string{"sky.csv", "../a b/it's #1, [x].csv.gz"}).Draw(t, "record")
		p.reading = rapid.SampledFrom([][]string{nil, {"unit.RAIN=mm/day", "clock=2"}}).Draw(t, "reading")
	}
	p.supplies = rapid.SampledFrom([][]string{{"tank"}, {"panels"}, {"tank", "panels"}, {"tank", "panels", "collector"}, {"tank", "collector"},
		{"tank", "collector", "gas"}, {"panels", "gas"}, {"tank", "panels", "collector", "gas"}}).Draw(t, "supplies")
	for supply, budget := range map[string]string{"tank": "water", "panels": "power"} {
		if p.has(supply) {
			p.budgets = append(p.budgets, budget)
		}
	}
	return p
}

// The figures of the rules stand in the file as the comments beside them say.
func TestRulesAreWrittenAsTheySay(t *testing.T) {
	p := plan{file: "h", name: "H", builtIn: "crete", dry: 100, residents: 4, roof: 90, surface: "metal", budgets: []string{"water", "power"},
		place: crete, supplies: []string{"tank", "panels", "collector", "gas"}}
	text, err := p.text()
	if err != nil {
		t.Fatal(err)
	}
	// By hand: 4 x (8+18+8+6+10) = 200 L; 1.5 x 100 days x 200 L = 30 kL. Loads for four: 700 + 300 + 240
	// + 750 + 1200 + 400 = 3590 Wh, inverter 24 x 15 = 360, lamp 480, lifting 0.2 kL 30, collector's pump 125:
	// 4585 Wh. At 35.03 deg 2 h x 0.75: 3057 W; 3.1 kW / 48 V and a quarter more are 80.7 A. Battery 3 x 4585 / 0.9 = 15.3 kWh.
	// Store 4 x 75 = 300 L.
	for path, want := range map[string]string{"water.tanks[0].holds": "30 kL", "power.arrays[0].peak": "3.1 kW", "power.battery.capacity": "16 kWh",
		"power.controller.current": "90 A", "hot_water.store.holds": "300 L", "power.arrays[0].slope": "45 deg", "power.loads[4].energy": "1.2 kWh/d"} {
		if got, there, err := house.ValueAt("h", text, path); got != want || !there || err != nil {
			t.Errorf("%s is %q, %v; by hand %q", path, got, err, want)
		}
	}
}

// asked runs the verb on piped lines.
func asked(t *testing.T, v newVerb, lines string) (said string, err error) {
	t.Helper()
	var out bytes.Buffer
	s := quiet()
	s.In, s.Err = strings.NewReader(lines), &out
	err = v.Run(t.Context(), s)
	return out.String(), err
}

// A wrong answer from a pipe ends the questions with a sentence, and no file is left.
func TestPipedAnswersAreHeldToTheirLimits(t *testing.T) {
	for _, c := range []struct{ lines, says string }{
		{"", "Where: latitude, north positive, or crete for the built-in weather: there is no answer: type one, or give --latitude"},
		{"H\n91\n", "91 deg is too large: the most is 90 deg"},
		{"H\nnorth\n", `"north" does not begin with a number`},
		{"H\n47\n-122\n", "Height above the sea: there is no answer"},
		{"H\n47\n-122\n50\nUTC-8\nabsent.csv\n", "absent.csv: no such file"},
		{"H\n47\n-122\n50\nUTC-8\n.\n", ". is not a file"},
		{"H\ncrete\ncrete\n1.5\n", `"1.5" is not a whole number`},
		{"H\ncrete\ncrete\n25\n", "25 is too many for these rules of thumb"},
		{"H\ncrete\ncrete\n2\nwindmill\n", `"windmill" is not one of tank, panels, collector, gas`},
		{"H\ncrete\ncrete\n2\ngas\n", "with neither tank nor panels there is nothing to prove"},
		{"H\ncrete\ncrete\n2\ntank\n90 ft2\n", "90 ft2"},
		{"H\ncrete\ncrete\n2\ntank\n90\ntin\n", `"tin" is not known here: the nearest known is "tiles"`},
		{"H\ncrete\ncrete\n2\ntank\n90\ntiles\npower\n", `"power" is not one of water`},
	} {
		path := filepath.Join(t.TempDir(), "house.yaml")
		_, err := asked(t, newVerb{File: path}, c.lines)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %v, want %q", c.lines, err, c.says)
		}
		if _, err := os.Stat(path); err == nil {
			t.Errorf("%q: a file was written", c.lines)
		}
	}
}

// At a terminal a wrong answer is asked again, with the reason.
func TestTypedAnswersAreAskedAgain(t *testing.T) {
	var out bytes.Buffer
	s := quiet()
	s.Err, s.Typed = &out, true
	a := asker{ctx: t.Context(), s: s, in: bufio.NewReader(strings.NewReader("91\n\n-33.9 deg\n"))}
	got := a.ask(nil, question{flag: "latitude", asks: "Latitude", unit: "deg", key: "site.latitude"})
	if got != "-33.9 deg" || a.err != nil {
		t.Errorf("got %q, %v", got, a.err)
	}
	for _, says := range []string{"91 deg is too large: the most is 90 deg", "this has no usual answer: type one"} {
		if !strings.Contains(out.String(), says) {
			t.Errorf("%q was not said:\n%s", says, out.String())
		}
	}
}

// Who breaks off while a question waits gets out, and no file is left.
func TestQuestionsCanBeBrokenOff(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.yaml")
	waits, _ := io.Pipe() // nobody ever types
	s := quiet()
	s.In, s.Typed = waits, true
	ctx, stop := context.WithCancel(t.Context())
	stop()
	v := newVerb{File: path}
	if err := v.Run(ctx, s); err == nil || !strings.Contains(err.Error(), "broken off: nothing was written") {
		t.Errorf("broken off: %v", err)
	}
	if _, err := os.Stat(path); err == nil {
		t.Error("a file was written")
	}
}

func TestNothingIsReplaced(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.yaml")
	if err := os.WriteFile(path, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := asked(t, newVerb{File: path, Usual: true}, ""); err == nil || !strings.Contains(err.Error(), "is there already and is never replaced") {
		t.Errorf("over a file: %v", err)
	}
	if text, err := os.ReadFile(path); err != nil || string(text) != "mine" {
		t.Errorf("the file is now %q, %v", text, err)
	}
}

func TestRecordsAreNamedFromTheHouseFile(t *testing.T) {
	dir := t.TempDir()
	for _, c := range [][3]string{
		{filepath.Join(dir, "house.yaml"), filepath.Join(dir, "sky.csv"), "sky.csv"},
		{filepath.Join(dir, "a", "house.yaml"), filepath.Join(dir, "b", "sky.csv"), "../b/sky.csv"},
	} {
		if got := besideFile(c[0], c[1]); got != c[2] {
			t.Errorf("%s from %s is %q, want %q", c[1], c[0], got, c[2])
		}
	}
}
