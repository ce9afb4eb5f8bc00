package waste

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"suffice/quantity"
)

var update = flag.Bool("update", false, "write what came into docs/expected-chain.md")

// A life is one case of docs/expected-chain.md.
type life struct {
	dry, clay bool
	people    int
}

// got is what twenty years brought.
type got struct {
	first, emptied       float64
	surfacing            float64 // % of days
	trees                float64 // kL a year
	january, july        float64 // mm
	januaryDays, julyDay float64
}

func (l life) name() string {
	climate, soil := "wet", "sand"
	if l.dry {
		climate = "dry"
	}
	if l.clay {
		soil = "clay"
	}
	return fmt.Sprintf("%s, %s, %d people", climate, soil, l.people)
}

// weather gives rain and reference evapotranspiration of a day of the year, as the page says.
func (l life) weather(day int) (rain, reference float64) {
	winter := day <= 90 || day > 273
	season := math.Cos(2 * math.Pi * float64(day-172) / 365)
	if l.dry {
		if winter && day%4 == 0 {
			rain = 5
		}
		return rain, 4 + 3*season
	}
	if winter && day%2 == 0 || !winter && day%4 == 0 {
		rain = 8
	}
	return rain, 2 + 1.7*season
}

const lived = 20 // years

func (l life) live() got {
	k := UsualTank(3000)
	g := Trench{Length: 30, Width: 0.6, Gravel: 0.3, Pores: 0.35, Catch: 18, RunsOff: 0.3, Cover: 720,
		Soil: Soil{Fresh: 1000, Long: 32.6, Clogs: UsualClogs}, Grass: 1, Grove: UsualGrove(3)}
	if l.clay {
		g.Soil.Fresh, g.Soil.Long = 40, 8.1
	}
	tank := k.Start()
	var s TrenchState
	var out got
	for i := range lived * 365 {
		day := i%365 + 1
		l.day(&k, &tank, &g, &s, TrenchDayIn{Day: day, Age: float64(i) / 365}, &out)
		if i >= 10*365 && day <= 31 {
			out.january, out.januaryDays = out.january+1000*float64(g.Stands(&s)), out.januaryDays+1
		}
		if i >= 10*365 && day > 181 && day <= 212 {
			out.july, out.julyDay = out.july+1000*float64(g.Stands(&s)), out.julyDay+1
		}
		emptied := TankDayIn{People: float64(l.people), Desludge: k.DesludgeDay(&tank, float64(l.people), UsualShare) == 0}
		if emptied.Desludge {
			if out.emptied == 0 {
				out.first = float64(i) / 365
			}
			out.emptied++
		}
		var done TankDayOut
		k.Day(&tank, &emptied, &done)
	}
	out.surfacing *= 100.0 / (lived * 365)
	out.trees /= lived * 1000
	out.january, out.july = out.january/out.januaryDays, out.july/out.julyDay
	return out
}

// day lives the hours of a day.
func (l life) day(k *SepticTank, tank *TankState, g *Trench, s *TrenchState, in TrenchDayIn, sum *got) {
	g.Day(s, &in)
	rain, reference := l.weather(in.Day)
	each := float64(l.people) / 24
	var flow TankOut
	var out TrenchOut
	surfaced := false
	for range 24 {
		k.Step(tank, &TankIn{Inflow: quantity.Litres(75 * each), Load: UsualPerPerson().Times(each)}, &flow)
		g.Step(s, &TrenchIn{Hours: 1, Inflow: flow.Outflow, Load: flow.Load, Rain: quantity.Millimetres(rain / 24), Reference: quantity.Millimetres(reference / 24)}, &out)
		surfaced = surfaced || out.Surfaced > 0
		sum.trees += float64(out.Trees)
	}
	if surfaced {
		sum.surfacing++
	}
}

func lives() []life {
	var all []life
	for _, dry := range []bool{true, false} {
		for _, clay := range []bool{false, true} {
			for _, people := range []int{2, 8} {
				all = append(all, life{dry, clay, people})
			}
		}
	}
	return all
}

const page = "../docs/expected-chain.md"

// Every figure stands beside what was expected, every miss is explained under its case's name, and every sign holds.
func TestExpected(t *testing.T) {
	came := map[life]got{}
	figures := map[string]string{}
	for _, l := range lives() {
		g := l.live()
		came[l] = g
		for name, v := range map[string]float64{"first desludging": g.first, "desludgings": g.emptied, "surfacing days": g.surfacing, "trees": g.trees, "stands in January": g.january, "stands in July": g.july} {
			figures[l.name()+" | "+name] = strconv.FormatFloat(v, 'f', 2, 64)
		}
	}
	text, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	fresh := fill(t, string(text), figures, signs(came))
	if *update {
		if err := os.WriteFile(page, []byte(fresh), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if fresh != string(text) {
		t.Errorf("%s is stale: run go test ./waste -run Expected -update", page)
	}
	figured, missed := 0, 0
	for line := range strings.SplitSeq(fresh, "\n") {
		cells := strings.Split(line, "|")
		if len(cells) != 6 || figures[strings.TrimSpace(cells[1])+" | "+strings.TrimSpace(cells[2])] == "" {
			continue
		}
		figured++
		if !strings.Contains(cells[4], "miss") {
			continue
		}
		missed++
		if explained := "- **" + strings.TrimSpace(cells[1]) + ", " + strings.TrimSpace(cells[2]) + ".**"; !strings.Contains(fresh, explained) {
			t.Errorf("a miss is not explained: write %q", explained)
		}
	}
	if figured != len(figures) {
		t.Errorf("%d figures stand on the page, want %d", figured, len(figures))
	}
	t.Logf("%d of %d missed", missed, figured)
}

// fill writes what came into the tables.
func fill(t *testing.T, text string, figures map[string]string, held []string) string {
	lines := strings.Split(text, "\n")
	sign := 0
	for i, line := range lines {
		cells := strings.Split(line, "|")
		if len(cells) == 6 {
			if v, ok := figures[strings.TrimSpace(cells[1])+" | "+strings.TrimSpace(cells[2])]; ok {
				lines[i] = "|" + cells[1] + "|" + cells[2] + "|" + cells[3] + "| " + v + judge(t, v, cells[3]) + " |"
			}
		}
		if len(cells) == 5 && sign < len(held) && strings.HasPrefix(strings.TrimSpace(cells[1]), signNames()[sign]) {
			lines[i] = "|" + cells[1] + "|" + cells[2] + "| " + held[sign] + " |"
			sign++
		}
	}
	if sign != len(held) {
		t.Errorf("%d signs stand on the page, want %d", sign, len(held))
	}
	return strings.Join(lines, "\n")
}

// judge says "miss" of a figure outside its range.
func judge(t *testing.T, value, expected string) string {
	low, high, found := strings.Cut(strings.TrimSpace(expected), " to ")
	a, err := strconv.ParseFloat(low, 64)
	b, err2 := strconv.ParseFloat(high, 64)
	v, err3 := strconv.ParseFloat(value, 64)
	if !found || err != nil || err2 != nil || err3 != nil {
		t.Fatalf("range %q or figure %q is not readable", expected, value)
	}
	if v < a || v > b {
		return ", miss"
	}
	return ""
}

func signNames() []string {
	return []string{"more people, earlier", "more people, never", "clay, never", "wet climate, never", "dry climate, trees", "January stands"}
}

// signs says of each sign whether it held in every pair of cases that differ in nothing else.
func signs(came map[life]got) []string {
	fails := make([][]string, len(signNames()))
	note := func(sign int, ok bool, l life) {
		if !ok {
			fails[sign] = append(fails[sign], l.name())
		}
	}
	for _, l := range lives() {
		few, sand, dry := l, l, l
		few.people, sand.clay, dry.dry = 2, false, true
		g := came[l]
		if l.people == 8 {
			note(0, math.Abs(4*g.first-came[few].first) < 0.02*came[few].first, l)
			note(1, g.surfacing >= came[few].surfacing, l)
		}
		if l.clay {
			note(2, g.surfacing >= came[sand].surfacing, l)
		}
		if !l.dry {
			note(3, g.surfacing >= came[dry].surfacing, l)
			note(4, g.trees < came[dry].trees, l)
		}
		note(5, g.january >= g.july, l)
	}
	var out []string
	for _, f := range fails {
		if len(f) == 0 {
			out = append(out, "held")
		} else {
			out = append(out, "failed: "+strings.Join(f, "; "))
		}
	}
	return out
}
