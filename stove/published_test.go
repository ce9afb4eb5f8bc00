package stove

import (
	"testing"

	"suffice/internal/check"
)

// holds gives the heating value of wood, kWh/kg.
func holds(dry, moisture float64) float64 {
	return float64(Wood{Dry: dry, Moisture: moisture}.Holds()) / 1000
}

// The manual's beech, by the heating value that is taken where nothing is known.
func TestBeechByMoisture(t *testing.T) {
	check.That(t, holds(DryWood, 0.2), check.Published{Source: "stove-manual", At: "heating power of beech at 20 % moisture", Value: "4.0", Unit: "kWh/kg"})
	check.That(t, holds(DryWood, 0.3), check.Published{Source: "stove-manual", At: "heating power of beech at 30 % moisture", Value: "3.4", Unit: "kWh/kg"})
	check.That(t, holds(DryWood, 0.4), check.Published{Source: "stove-manual", At: "heating power of beech at 40 % moisture", Value: "2.8", Unit: "kWh/kg"})
}

// The table's wood without water holds 19 GJ/t.
func TestWoodByMoisture(t *testing.T) {
	const why = "the steps of the table for 5 % are 0.97 to 1.17 apart, by the formula 1.07 each"
	gj := func(moisture float64) float64 { return 3.6 * holds(19/3.6, moisture) }
	check.That(t, gj(0.15), check.Published{Source: "wood-moisture-table", At: "15 % of water", Value: "15.79", Unit: "GJ/t", Within: 0.1, Why: why})
	check.That(t, gj(0.20), check.Published{Source: "wood-moisture-table", At: "20 % of water", Value: "14.72", Unit: "GJ/t", Within: 0.1, Why: why})
	check.That(t, gj(0.25), check.Published{Source: "wood-moisture-table", At: "25 % of water", Value: "13.72", Unit: "GJ/t", Within: 0.1, Why: why})
	check.That(t, gj(0.30), check.Published{Source: "wood-moisture-table", At: "30 % of water", Value: "12.58", Unit: "GJ/t", Within: 0.1, Why: why})
	check.That(t, gj(0.40), check.Published{Source: "wood-moisture-table", At: "40 % of water", Value: "10.44", Unit: "GJ/t", Within: 0.1, Why: why})
	check.That(t, gj(0.50), check.Published{Source: "wood-moisture-table", At: "50 % of water", Value: "8.20", Unit: "GJ/t", Within: 0.1, Why: why})
	check.That(t, gj(0.60), check.Published{Source: "wood-moisture-table", At: "60 % of water", Value: "6.16", Unit: "GJ/t", Within: 0.1, Why: why})
}

// Each species' column for 30 % follows from that for 15 %.
func TestSpeciesDriedAndWet(t *testing.T) {
	const why = "both columns are rounded to 0.01: half of it, and 0.7/0.85 of half of it"
	for _, c := range []struct {
		at15 float64 // kWh/kg, as printed
		want check.Published
	}{
		{4.40, check.Published{Source: "boiler-manual", At: "fir, 30 % of water from the column for 15 %", Value: "3.51", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.49, check.Published{Source: "boiler-manual", At: "spruce, 30 % of water from the column for 15 %", Value: "3.58", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.43, check.Published{Source: "boiler-manual", At: "Douglas fir, 30 % of water from the column for 15 %", Value: "3.53", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.32, check.Published{Source: "boiler-manual", At: "pine, 30 % of water from the column for 15 %", Value: "3.44", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.27, check.Published{Source: "boiler-manual", At: "larch, 30 % of water from the column for 15 %", Value: "3.39", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{3.99, check.Published{Source: "boiler-manual", At: "poplar, 30 % of water from the column for 15 %", Value: "3.16", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{3.76, check.Published{Source: "boiler-manual", At: "willow, 30 % of water from the column for 15 %", Value: "2.97", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.06, check.Published{Source: "boiler-manual", At: "alder, 30 % of water from the column for 15 %", Value: "3.23", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.04, check.Published{Source: "boiler-manual", At: "maple, 30 % of water from the column for 15 %", Value: "3.21", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.01, check.Published{Source: "boiler-manual", At: "birch, 30 % of water from the column for 15 %", Value: "3.18", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.10, check.Published{Source: "boiler-manual", At: "ash and oak, 30 % of water from the column for 15 %", Value: "3.25", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.13, check.Published{Source: "boiler-manual", At: "beech, 30 % of water from the column for 15 %", Value: "3.28", Unit: "kWh/kg", Within: 0.0092, Why: why}},
		{4.11, check.Published{Source: "boiler-manual", At: "robinia, 30 % of water from the column for 15 %", Value: "3.27", Unit: "kWh/kg", Within: 0.0092, Why: why}},
	} {
		dry := (c.at15 + evaporation*0.15) / 0.85
		check.That(t, holds(dry, 0.3), c.want)
	}
}
