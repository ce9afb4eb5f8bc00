package water

import (
	"testing"

	"suffice/quantity"
)

// all marks every kind.
var all = [Kinds]bool{true, true, true, true}

// house is one roof, one tank, a pump, a filter and a lamp.
func house() Design {
	return Design{
		Snow: UsualSnow(),
		Roofs: []Roof{{Name: "main", Area: 130, Coefficient: 0.9, Wetting: UsualWetting,
			Flush: FirstFlush{Depth: 0.5, AfterDry: 72}}},
		Tanks:  []Tank{{Name: "main", Holds: 40000, Dead: 800, Fire: 2000, Leak: 3, Start: 20000, Overflow: Away}},
		Supply: Supply{WattHoursPerKilolitre: 150, MostPerHour: 1800},
		Treatment: []Stage{
			{Name: "sediment filter", Serves: all, Loss: 0.01},
			{Name: "lamp", Serves: [Kinds]bool{Drinking: true}, Standing: 25},
		},
		Delivery: Delivery{Load: 8000, Lead: 72, OrderBelow: 500, Price: 110},
	}
}

func BenchmarkDryHour(b *testing.B) { benchmarkHour(b, SkyIn{Temperature: 20}) }
func BenchmarkWetHour(b *testing.B) { benchmarkHour(b, SkyIn{Rain: 0.1, Temperature: 20}) }

func benchmarkHour(b *testing.B, sky SkyIn) {
	w, err := Prepare(house())
	if err != nil {
		b.Fatal(err)
	}
	s := w.Start()
	wants := [Kinds]quantity.Litres{0.4, 1.2, 0.8, 0}
	var income IncomeOut
	var taps TapsOut
	b.ReportAllocs()
	for range b.N { // b.Loop would keep every variable in memory, which the hour does not
		w.Income(&s, sky, &income)
		w.Want(&s, &wants, false, &taps)
		w.Share(&s, Power{1, 1}, &taps)
	}
}
