package report

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"suffice/hourly"
	"suffice/house"
	"suffice/site/sun"
)

var update = flag.Bool("update", false, "write what was got beside what was expected")

// TestExpected lives the four houses of docs/expected.md and holds the page to what they
// did. The expected ranges were committed before the first run and are never moved; every
// miss needs its explanation.
func TestExpected(t *testing.T) {
	const path = "../docs/expected.md"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]float64{}
	for _, name := range []string{"crete", "denver", "angoche", "phoenix"} {
		figures(t, name, got)
	}
	lines := strings.Split(string(text), "\n")
	seen, missed := 0, 0
	for i, line := range lines {
		cells := strings.Split(line, "|")
		if len(cells) != 10 || !strings.Contains(cells[1], ".") {
			continue
		}
		key := strings.TrimSpace(cells[1])
		value, known := got[key]
		if !known {
			t.Errorf("%s: no figure of that name was got", key)
			continue
		}
		seen++
		low, _ := strconv.ParseFloat(strings.TrimSpace(cells[4]), 64)
		high, _ := strconv.ParseFloat(strings.TrimSpace(cells[5]), 64)
		explained := strings.TrimSpace(cells[8])
		if inside := value >= low && value <= high; !inside {
			missed++
			if explained == "" {
				t.Errorf("%s: got %.5g, expected %g to %g, and the miss is not explained", key, value, low, high)
			}
		}
		cells[7] = " " + figure(value) + " "
		lines[i] = strings.Join(cells, "|")
	}
	t.Logf("%d of %d figures fell outside what was expected", missed, seen)
	if seen != 91 {
		t.Errorf("%d figures were expected, want the 91 of the page", seen)
	}
	fresh := strings.Join(lines, "\n")
	if *update {
		if err := os.WriteFile(path, []byte(fresh), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if fresh != string(text) {
		t.Errorf("%s is stale: go test ./report -run Expected -update writes what is got now", path)
	}
}

func figure(v float64) string {
	switch {
	case v == 0:
		return "0"
	case math.Abs(v) >= 1000:
		return fmt.Sprintf("%.0f", v)
	case math.Abs(v) >= 100:
		return fmt.Sprintf("%.1f", v)
	}
	return strconv.FormatFloat(v, 'g', 3, 64)
}

// extremes are what no account keeps.
type extremes struct {
	tankLowest, coldLowest, coldHighest float64
	generatorHours                      float64
	month                               [13]float64 // sums of what the tanks hold
	hours                               [13]float64
}

// figures lives one house and puts its figures into the map.
func figures(t *testing.T, name string, got map[string]float64) {
	p := lived(t, "../examples/four/"+name+".yaml")
	put := func(key string, v float64) { got[name+"."+key] = v }
	waterFigures(p, put)
	powerFigures(p, put)
	heatFigures(p, put)
	extremeFigures(t, p, put)
}

// lived proves a house.
func lived(t *testing.T, path string) *Proof {
	t.Helper()
	f, err := house.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	h, err := house.Compose(f)
	if err != nil {
		t.Fatal(err)
	}
	w, done, source, err := h.Weather.Hours(h.Place)
	if err != nil {
		t.Fatal(err)
	}
	run, err := hourly.Prepare(h, w)
	if err != nil {
		t.Fatal(err)
	}
	p, err := Prove(run)
	if err != nil {
		t.Fatal(err)
	}
	p.Weather = Sky{Source: source, Report: done}
	return p
}

func waterFigures(p *Proof, put func(string, float64)) {
	t, years := &p.Stated.Totals, float64(p.Years())
	drawn := float64(t.Backwash)
	for _, served := range t.Served {
		drawn += float64(served)
	}
	put("roof_yield_l_per_year", float64(t.Income.Caught)/years)
	put("water_drawn_l_per_year", drawn/years)
	put("spill_l_per_year", float64(t.Income.Spilled)/years)
	put("deliveries_per_year", float64(t.Income.Loads)/years)
	put("water_short_days_per_year", p.Stated.Water.ShortDaysPerYear())
	put("water_suffices", yes(p.Stated.Water.Suffices()))
	put("water_share_met_percent", 100*p.Stated.Water.ShareMet())
}

func powerFigures(p *Proof, put func(string, float64)) {
	e, years := &p.Stated.Totals.Power, float64(p.Years())
	put("panel_kwh_per_year", float64(e.Income)/1000/years)
	put("load_kwh_per_year", float64(e.Delivered)/1000/years)
	put("curtailed_share_percent", 100*float64(e.Curtailed/e.Income))
	put("battery_out_kwh_per_year", float64(e.Discharged)/1000/years)
	put("power_short_days_per_year", p.Stated.Power.ShortDaysPerYear())
	put("power_suffices", yes(p.Stated.Power.Suffices()))
	var sum, days [3]float64
	for d, k := range clearness(p.Run) {
		class := 0
		if k < 0.35 {
			class = 2
		} else if k < 0.60 {
			class = 1
		}
		sum[class] += p.Stated.Days[d].Panels / 1000
		days[class]++
	}
	for class, key := range []string{"clear", "mixed", "dull"} {
		put("panel_kwh_"+key+"_day", sum[class]/days[class])
	}
}

// clearness gives the light of each day over that outside the atmosphere.
func clearness(r *hourly.Run) []float64 {
	var dates []sun.Date
	for _, d := range r.Weather.Days {
		dates = append(dates, sun.Date{Year: d.Year, Month: d.Month, Date: d.Date})
	}
	track := sun.NewTrack(r.House.Place, dates)
	list := make([]float64, len(dates))
	for d := range list {
		ground, top := 0.0, 0.0
		for k := 24 * d; k < 24*d+24; k++ {
			ground += r.Weather.Global[k]
			top += track.Normal[k] * max(0, track.CosZenith[k]) * track.Share[k]
		}
		list[d] = ground / top
	}
	return list
}

func heatFigures(p *Proof, put func(string, float64)) {
	j := p.hotWaterJSON()
	put("hot_water_kwh_per_year", j.DeliveredKWh)
	put("solar_share_percent", 100*j.SolarShare)
	put("gas_kg_per_year", float64(p.Stated.Totals.Gas)/float64(p.Years()))
	put("gas_episodes_per_year", j.EpisodesPerYear)
}

func extremeFigures(t *testing.T, p *Proof, put func(string, float64)) {
	x := extremes{tankLowest: math.Inf(1), coldLowest: math.Inf(1), coldHighest: math.Inf(-1)}
	s := p.Run.Start()
	span := hourly.Span{Last: p.Run.Hours(), See: func(i int, row *hourly.Row) {
		held := float64(p.Run.House.Water.Held(&s.Water))
		x.tankLowest = min(x.tankLowest, held)
		m := p.Run.Weather.Days[i/24].Month
		x.month[m] += held
		x.hours[m]++
		x.coldLowest = min(x.coldLowest, float64(row.HeatIn.Cold))
		x.coldHighest = max(x.coldHighest, float64(row.HeatIn.Cold))
		x.generatorHours += yes(row.Power.Generator > 0)
	}}
	if err := p.Run.Live(&s, &span); err != nil {
		t.Fatal(err)
	}
	lowest := 1
	for m := 2; m <= 12; m++ {
		if x.month[m]/x.hours[m] < x.month[lowest]/x.hours[lowest] {
			lowest = m
		}
	}
	put("tank_lowest_month", float64(lowest))
	put("tank_lowest_month_l", x.month[lowest]/x.hours[lowest])
	put("tank_lowest_l", x.tankLowest)
	put("cold_inlet_lowest_c", x.coldLowest)
	put("cold_inlet_highest_c", x.coldHighest)
	put("generator_h_per_year", x.generatorHours/float64(p.Years()))
}
