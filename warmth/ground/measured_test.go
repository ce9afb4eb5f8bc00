package ground

import (
	"cmp"
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"suffice/soil"
)

var update = flag.Bool("update", false, "write docs/soil-temperatures.md anew")

const (
	page  = "../../docs/soil-temperatures.md"
	snowy = 30 // days with snow that set a station apart
)

// A judged is a station's year beside what was measured, at both depths.
type judged struct {
	station
	trace
	rms, bias           [2]float64
	plainRms, plainBias [2]float64 // of damped air
}

// A guess is what stands for the wind, the soil and the cover that the record does not tell.
type guess struct {
	name  string
	wind  float64 // m/s at 2 m
	earth soil.Earth
	cover Cover
}

func usual() guess { return guess{"as above", worldWind, soil.Loam(), Grass()} }

func (g guess) judge(t *testing.T, stations []station) []judged {
	t.Helper()
	var all []judged
	for _, s := range stations {
		c, err := Prepare(s.place(), g.cover, g.earth, soil.LoamWater())
		if err != nil {
			t.Fatal(err)
		}
		s.wind = g.wind
		j := judged{station: s, trace: s.live(c)}
		water := soil.LoamWater()
		plain := s.damped(g.earth.At((water.FieldCapacity + water.Wilting) / 2).DiffusivityPerDay())
		for k := range depths {
			j.rms[k], j.bias[k] = s.apart(j.trace, k)
			j.plainRms[k], j.plainBias[k] = s.apart(plain, k)
		}
		all = append(all, j)
	}
	return all
}

// guesses tells what the figures would be had another value been taken for what is not known.
func guesses(t *testing.T, stations []station) string {
	t.Helper()
	slow, fast, sandy, bare := usual(), usual(), usual(), usual()
	slow.name, slow.wind = "wind 1 m/s", 1
	fast.name, fast.wind = "wind 3 m/s", 3
	sandy.name, sandy.earth = "sandy soil, 1600 kg/m3, 70 % quartz", soil.Earth{Name: "sand", DryDensity: 1600, Quartz: 0.7, Coarse: true}
	bare.name, bare.cover = "bare ground", Bare()
	text := "\n## What is not known, taken otherwise (medians of 13)\n\n| | 50 cm | 100 cm |\n|---|---|---|\n"
	for _, g := range []guess{slow, fast, sandy, bare} {
		all := g.judge(t, stations)
		a, b := medians(all, 0), medians(all, 1)
		text += fmt.Sprintf("| %s | %s | %s |\n", g.name, cell(a[1], a[0]), cell(b[1], b[0]))
	}
	return text
}

func median(of []float64) float64 {
	of = slices.Sorted(slices.Values(of))
	return (of[(len(of)-1)/2] + of[len(of)/2]) / 2
}

// medians gives the middle station's figures of one depth: rms, bias, and the same of damped air.
func medians(all []judged, k int) (m [4]float64) {
	var of [4][]float64
	for _, j := range all {
		for i, v := range [4]float64{j.rms[k], j.bias[k], j.plainRms[k], j.plainBias[k]} {
			of[i] = append(of[i], v)
		}
	}
	for i := range of {
		m[i] = median(of[i])
	}
	return m
}

// Thirteen measured years: one set of coefficients for all, none moved to fit them. The page says the same.
func TestSoilTemperaturesMeasured(t *testing.T) {
	stations := readStations(t)
	all := usual().judge(t, stations)
	if len(all) != 13 {
		t.Fatalf("%d stations, want 13", len(all))
	}
	for k, depth := range depths {
		m := medians(all, k)
		if !(m[0] <= 2) || !(math.Abs(m[1]) <= 1) {
			t.Errorf("at %v m: median rms %.2f K, want at most 2; median bias %+.2f K, want at most 1", depth, m[0], m[1])
		}
		if !(m[0] < m[2]) || !(math.Abs(m[1]) < math.Abs(m[3])) {
			t.Errorf("at %v m: rms %.2f K, bias %+.2f K are no better than damped air's %.2f and %+.2f", depth, m[0], m[1], m[2], m[3])
		}
	}
	text := soilPage(all) + guesses(t, stations) + closing(all)
	if *update {
		if err := os.WriteFile(page, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	held, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	if string(held) != text {
		t.Error("docs/soil-temperatures.md is stale: go test ./warmth/ground -run Measured -update")
	}
}

func soilPage(all []judged) string {
	var plain, snow []judged
	for _, j := range all {
		if j.snowy >= snowy {
			snow = append(snow, j)
		} else {
			plain = append(plain, j)
		}
	}
	var b strings.Builder
	b.WriteString(`# How warm the ground is, beside what was measured

Written by a test of warmth/ground (go test ./warmth/ground -update). Thirteen stations of the U.S. Climate Reference Network, daily
values of 2020 at 50 and 100 cm. The column of ground under grass gets the station's air, light, damp and rain, and nothing else of the
place but latitude and altitude: the same loam, the same grass, the same figures everywhere, none of them moved to come nearer.
Wind was not recorded and stands at the 2 m/s that FAO-56 takes for the world. The year is lived until it repeats itself.

Beside it "damped air": the first harmonic of the air's own year, led downward through the same loam. Each cell: bias, root mean
square of computed less measured, K, over the days that have a measurement.

`)
	head := "| station | north, east | snow days | air, soil at 50 cm, degC | 50 cm | 100 cm | damped air, 50 cm | damped air, 100 cm |\n|---|---|---|---|---|---|---|---|\n"
	for _, group := range []struct {
		title string
		of    []judged
	}{{"Little or no snow", plain}, {fmt.Sprintf("Snow on at least %d days", snowy), snow}} {
		fmt.Fprintf(&b, "## %s\n\n%s", group.title, head)
		for _, j := range group.of {
			b.WriteString(j.row())
		}
		b.WriteString(medianRow("median", group.of) + "\n")
	}
	b.WriteString("## All\n\n" + head + medianRow("median of 13", all))
	return b.String()
}

func cell(bias, rms float64) string { return fmt.Sprintf("%+.1f, %.1f", bias, rms) }

func (j judged) row() string {
	var airMean, soilMean, n float64
	for _, d := range j.days {
		airMean += d.mean / float64(len(j.days))
		if !math.IsNaN(d.soil[0]) {
			soilMean += d.soil[0]
			n++
		}
	}
	return fmt.Sprintf("| %s | %.2f, %.2f | %d | %.1f, %.1f | %s | %s | %s | %s |\n", j.wban, j.latitude, j.longitude, j.snowy, airMean, soilMean/n,
		cell(j.bias[0], j.rms[0]), cell(j.bias[1], j.rms[1]), cell(j.plainBias[0], j.plainRms[0]), cell(j.plainBias[1], j.plainRms[1]))
}

func medianRow(name string, of []judged) string {
	a, b := medians(of, 0), medians(of, 1)
	return fmt.Sprintf("| %s | | | | %s | %s | %s | %s |\n", name, cell(a[1], a[0]), cell(b[1], b[0]), cell(a[3], a[2]), cell(b[3], b[2]))
}

// closing says where the column is farthest off, how it came about, and what is left out.
func closing(all []judged) string {
	worst := slices.MaxFunc(all, func(a, b judged) int { return cmp.Compare(a.rms[1], b.rms[1]) })
	filled := 0
	for _, j := range all {
		filled += j.filled
	}
	return fmt.Sprintf(`
The worst station at 100 cm is %s (%s). Where the soil is dry and stony, the measured swing at 100 cm is larger than dry loam lets
through; where grass is sparse, the ground is darker or lighter than a lawn. A house file that names its ground and its wind does better.

No figure was fitted, but one choice of form was made after a look at these stations: with daily means and air that does not
rise from hot ground, the dry places came out 2 to 3 K too warm. Hours, and buoyancy as weather services count it, took most of that away.

%d missing values of weather were taken from the day before. Left out: wind, cover and soil of each station; warmth carried by rain
that seeps in; snow that blows away; slopes.
`, worst.wban, cell(worst.bias[1], worst.rms[1]), filled)
}
