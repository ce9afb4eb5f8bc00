package report

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"suffice/hourly"
	"suffice/house"
	"suffice/water"
)

// panelHouse has 2 kW of panels and asks little, so that what the panels could give is seen.
const panelHouse = `name: Two kilowatts
site: {latitude: 35.03 deg, longitude: 24.83 deg, altitude: 250 m, clock: UTC+2}
weather: {built_in: crete}
people: {residents: 1, uses: [{name: all, water: drinking, amount: 10 L/person/d}]}
power:
  arrays: [{name: roof, peak: 2 kW, slope: %d deg, azimuth: 180 deg}]
  controller: {current: 100 A}
  battery: {kind: lead-acid, capacity: 600 Ah, voltage: 24 V}
  inverter: {continuous: 3 kW}
  loads: [{name: lights, power: 50 W}]
`

func runOf(t *testing.T, text string) *hourly.Run {
	t.Helper()
	f, err := house.Read("made.yaml", []byte(text))
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
	r, err := hourly.Prepare(h, w)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestTwoKilowatts: common practice, no source, nothing tuned. About 2 kW of panels in a
// sunny mid-latitude place give, before anything is curtailed, 9 to 12 kWh on clear days,
// 4 to 7 on mixed ones and 1 to 3.5 on rainy, dark ones. Medians must lie inside.
func TestTwoKilowatts(t *testing.T) {
	var b strings.Builder
	b.WriteString("# Two kilowatts of panels in a sunny place\n\nCommon practice, no source, nothing tuned: what about 2 kW of panels can give in a day, before anything is curtailed.\nCrete, 37 years. Medians must lie in the range that people tell. Made by: go test ./report -run TwoKilowatts -update\n\n| slope | days | people tell, kWh | tenth | median | ninetieth | how many days |\n|---|---|---|---|---|---|---|\n")
	classes := []struct {
		name      string
		low, high float64
		in        func(clear, rain float64) bool
	}{
		{"clearness over 0.6", 9, 12, func(k, r float64) bool { return k > 0.6 }},
		{"clearness 0.35 to 0.55", 4, 7, func(k, r float64) bool { return k >= 0.35 && k <= 0.55 }},
		{"rain of 10 mm or more and clearness under 0.3", 1, 3.5, func(k, r float64) bool { return r >= 10 && k < 0.3 }},
	}
	for _, slope := range []int{30, 40, 50} {
		run := runOf(t, fmt.Sprintf(panelHouse, slope))
		a, err := run.Account(run.Start())
		if err != nil {
			t.Fatal(err)
		}
		clear := clearness(run)
		for _, c := range classes {
			var all []float64
			for d := range a.Days {
				if c.in(clear[d], a.Days[d].Rain) {
					all = append(all, a.Days[d].Panels/1000)
				}
			}
			slices.Sort(all)
			at := func(q float64) float64 { return all[int(q*float64(len(all)-1)+0.5)] }
			if m := at(0.5); m < c.low || m > c.high {
				t.Errorf("slope %d, %s: the median of %d days is %.2f kWh, people tell %g to %g", slope, c.name, len(all), m, c.low, c.high)
			}
			fmt.Fprintf(&b, "| %d deg | %s | %g to %g | %.1f | %.1f | %.1f | %d |\n", slope, c.name, c.low, c.high, at(0.1), at(0.5), at(0.9), len(all))
		}
	}
	keepFile(t, "../docs/two-kilowatts.md", b.String())
}

// dryHouse draws 1 kL a week, evenly, from 40 kL; nothing rains in.
const dryHouse = `name: Dry
site: {latitude: 35.03 deg, longitude: 24.83 deg, altitude: 250 m, clock: UTC+2}
weather: {built_in: crete}
people: {residents: 1, uses: [{name: all, water: washing, amount: 142.857142857142857 L/d, hours: 0-24, when_away: yes, savable: no}]}
water:
  roofs: [{name: none, area: 1 m2, surface: metal, coefficient: 0.05}]
  tanks: [{name: main, holds: 40 kL, start: 40 kL, dead: %g L, fire: %g L, leak: %g L/d, overflow: garden}]
  treatment: [{name: filter, loss: %g %%}]
  supply: {by: gravity}
`

// TestRunsDryToTheHour: a household at 1 kL a week on 40 kL with no rain runs dry after the
// usable volume over draw, leak and what the treatment takes on top.
func TestRunsDryToTheHour(t *testing.T) {
	for _, c := range []struct{ dead, fire, leak, loss float64 }{
		{0, 0, 0, 0}, {800, 2000, 0, 0}, {800, 2000, 3, 0}, {800, 2000, 3, 1}, {1500, 5000, 40, 10},
	} {
		run := runOf(t, fmt.Sprintf(dryHouse, c.dead, c.fire, c.leak, c.loss))
		clear(run.Weather.Rain)
		run, err := hourly.Prepare(run.House, run.Weather)
		if err != nil {
			t.Fatal(err)
		}
		s, dry := run.Start(), -1
		span := hourly.Span{Last: run.Hours(), See: func(i int, row *hourly.Row) {
			if dry < 0 && row.Taps.Short[water.Washing] > 1e-9 {
				dry = i
			}
		}}
		if err := run.Live(&s, &span); err != nil {
			t.Fatal(err)
		}
		hours := (40000 - c.dead - c.fire) / ((1000.0/7/(1-c.loss/100) + c.leak) / 24)
		if want := int(math.Floor(hours * (1 - 1e-12))); dry != want {
			t.Errorf("dead %g, fire %g, leak %g, loss %g %%: dry in hour %d, by division in hour %d (%.3f)", c.dead, c.fire, c.leak, c.loss, dry, want, hours)
		}
	}
}
