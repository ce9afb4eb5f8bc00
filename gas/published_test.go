package gas

import (
	"math"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
)

func TestBottleHeat(t *testing.T) {
	kWh := func(kg quantity.Kilograms) float64 { return float64(Propane().Energy(kg)) / 1000 }
	check.That(t, kWh(9), check.Published{Source: "lpg-supplier", At: "net heat in a 9 kg bottle of propane, from 46.35 MJ/kg", Value: "115", Unit: "kWh",
		Within: 1, Why: "115.9 cut to whole kWh, not rounded", Standing: "own"})
	check.That(t, kWh(45), check.Published{Source: "lpg-supplier", At: "net heat in a 45 kg bottle of propane, from 46.35 MJ/kg", Value: "576", Unit: "kWh",
		Within: 4, Why: "576 is 45 kg at the 46.1 MJ/kg of mixed gas; propane has 579", Standing: "own"})
	check.That(t, float64(Mixed().Energy(45))/1000, check.Published{Source: "lpg-supplier", At: "net heat in a 45 kg bottle of mixed gas, from 46.1 MJ/kg", Value: "576", Unit: "kWh", Standing: "own"})
}

func TestPureBoilingPoints(t *testing.T) {
	check.That(t, float64(bubblePoint(0)), check.Published{Source: "antoine-svna", At: "table B.2, n-butane, normal boiling point", Value: "-0.5", Unit: "degC"})
	check.That(t, float64(bubblePoint(1)), check.Published{Source: "lpg-supplier", At: "propane, boiling point", Value: "-42.6", Unit: "degC",
		Within: 0.6, Why: "the supplier's figure is for the commercial gas, which holds some ethane; pure propane boils at -42.1"})
}

// The chart is in psi above the atmosphere and degrees Fahrenheit.
func TestVapourPressureOfPropane(t *testing.T) {
	psig := func(fahrenheit float64) float64 {
		return (propanePressure((fahrenheit-32)/1.8) - oneAtmosphere) / 6.894757
	}
	check.That(t, psig(30), check.Published{Source: "lpg-vapour", At: "propane vapour pressure at 30 degF", Value: "53", Unit: "psi",
		Within: 2, Why: "the chart is for commercial propane; its own text gives 122 psi at 70 degF where the chart has 110"})
	check.That(t, psig(50), check.Published{Source: "lpg-vapour", At: "propane vapour pressure at 50 degF", Value: "78", Unit: "psi",
		Within: 2, Why: "the chart is for commercial propane; its own text gives 122 psi at 70 degF where the chart has 110"})
	check.That(t, psig(70), check.Published{Source: "lpg-vapour", At: "propane vapour pressure at 70 degF", Value: "110", Unit: "psi",
		Within: 2, Why: "the chart is for commercial propane; its own text gives 122 psi at 70 degF where the chart has 110"})
}

// rated gives what a 100 lb bottle gives in Btu/h, as the table counts it.
func rated(pounds, fahrenheit float64) float64 {
	s := Supply{Fuel: Propane(), Bottle: tableBottle, Bottles: 1}
	if err := s.Prepare(); err != nil {
		panic(err)
	}
	const perKg = 21591 / 0.45359237 // Btu/kg, the table's own heat of a pound
	return s.p.vapourRate(pounds/100, (fahrenheit-32)/1.8) * perKg
}

func TestVapourTable(t *testing.T) {
	check.That(t, rated(100, 0), check.Published{Source: "lpg-vapour", At: "100 lb at 0 degF", Value: "113000", Unit: "Btu/h",
		Within: 4520, Why: "fitted to all 50 figures with two numbers: 4 % here"})
	check.That(t, rated(100, 60), check.Published{Source: "lpg-vapour", At: "100 lb at 60 degF", Value: "277000", Unit: "Btu/h",
		Within: 11080, Why: "fitted to all 50 figures with two numbers: 4 % here"})
	check.That(t, rated(50, 20), check.Published{Source: "lpg-vapour", At: "50 lb at 20 degF", Value: "94000", Unit: "Btu/h",
		Within: 3760, Why: "fitted to all 50 figures with two numbers: 4 % here"})
	check.That(t, rated(10, 0), check.Published{Source: "lpg-vapour", At: "10 lb at 0 degF", Value: "28000", Unit: "Btu/h",
		Within: 1960, Why: "fitted to all 50 figures with two numbers: 7 % at the worst"})
}

// The whole table, thousands of Btu/h by pounds held (rows from 100 to 10) and degrees Fahrenheit.
func TestVapourTableAsAWhole(t *testing.T) {
	fahrenheit := []float64{0, 20, 40, 60, 70}
	table := [][]float64{
		{113, 167, 214, 277, 300}, {104, 152, 200, 247, 277}, {94, 137, 180, 214, 236}, {83, 122, 160, 199, 214}, {75, 109, 140, 176, 192},
		{64, 94, 125, 154, 167}, {55, 79, 105, 131, 141}, {45, 66, 85, 107, 118}, {36, 51, 68, 83, 92}, {28, 38, 49, 60, 66},
	}
	var worst, squares float64
	for i, row := range table {
		for j, printed := range row {
			off := rated(100-10*float64(i), fahrenheit[j])/(1000*printed) - 1
			worst, squares = max(worst, math.Abs(off)), squares+off*off
		}
	}
	if rms := math.Sqrt(squares / 50); rms > 0.018 || worst > 0.07 {
		t.Errorf("vapour table: rms %.3f, worst %.3f; the package says 0.017 and 0.07", rms, worst)
	}
}
