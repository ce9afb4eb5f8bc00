package waste

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

// A year of the trench by days is close to the same year by hours.
func TestTrenchByDays(t *testing.T) {
	worst, worstDays := 0.0, 0
	rapid.Check(t, func(t *rapid.T) {
		names := []string{"sand", "fine-sand", "loam-weak", "loam-strong", "clay-loam-strong", "clay-strong"}
		ground, _ := SoilNamed(rapid.SampledFrom(names).Draw(t, "soil"))
		g := Trench{Length: quantity.Metres(within(t, 5, 60, "length")), Width: 0.6, Gravel: quantity.Metres(within(t, 0.2, 0.6, "gravel")), Pores: 0.35, RunsOff: 0.3,
			Soil: ground, Grass: 1, Grove: UsualGrove(rapid.IntRange(0, 5).Draw(t, "trees"))}
		g.Catch, g.Cover = quantity.SquareMetres(g.Length*1.2), quantity.Litres(float64(g.Length)*1.2*40)
		litres := within(t, 100, 1000, "litres")
		start := TrenchDayIn{Day: 1, Age: within(t, 0, 20, "age")}
		hours, days := g.Start(&start), g.Start(&start)
		hours.Mat = within(t, 0, 1, "mat")
		days.Mat = hours.Mat
		var a, b TrenchOut
		var inflow, byHours, byDays float64
		var nHours, nDays int
		for day := range 365 {
			today := TrenchDayIn{Day: day + 1, Age: start.Age}
			g.Day(&hours, &today)
			g.Day(&days, &today)
			wet := rapid.IntRange(0, 3).Draw(t, "wet") == 0
			rain := within(t, 0, 30, "rain")
			heat := within(t, 0, 8, "reference")
			var sum TrenchIn
			surfaced := false
			for hour := range 24 {
				in := TrenchIn{Hours: 1}
				if hour >= 6 && hour < 23 {
					in.Inflow = quantity.Litres(litres / 17)
				}
				if hour >= 6 && hour < 18 {
					in.Reference = quantity.Millimetres(heat / 12)
				}
				if wet && hour >= 12 && hour < 15 {
					in.Rain = quantity.Millimetres(rain / 3)
				}
				in.Load.BOD = 0.15 * float64(in.Inflow)
				g.Step(&hours, &in, &a)
				byHours += float64(a.Surfaced)
				surfaced = surfaced || a.Surfaced > 0
				sum.Gather(&in)
				inflow += float64(in.Inflow) + float64(in.Rain.On(g.Catch))*0.7
			}
			g.Step(&days, &sum, &b)
			byDays += float64(b.Surfaced)
			if surfaced {
				nHours++
			}
			if b.Surfaced > 0 {
				nDays++
			}
		}
		if d := (byHours - byDays) / inflow; d > worst || -d > worst {
			worst = max(d, -d)
			fmt.Println("litres", d, byHours, byDays, ground.Name, g.Length, litres)
		}
		if d := nHours - nDays; d > worstDays || -d > worstDays {
			worstDays = max(d, -d)
			fmt.Println("days", nHours, nDays, ground.Name, g.Length, litres, byHours, byDays)
		}
	})
}
