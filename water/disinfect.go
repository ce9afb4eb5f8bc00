package water

import (
	"fmt"
	"math"
)

// A Chlorination is water with free chlorine in it.
type Chlorination struct {
	Temperature float64 // degC
	PH          float64
	Chlorine    float64 // mg/L of free chlorine at the end of the contact
}

// coldest, and what the tables end at.
const (
	coldestTable   = 0.5
	strongestTable = 3.0
	highestPH      = 9.0
)

// above gives the index of the table's entry to be used: the next higher one, or the last where that is too small.
func above(entries []float64, v float64) (index int, ok bool) {
	for i, e := range entries {
		if v <= e+1e-9 { // a hair, so that 1.2 read from text is the 1.2 of the table
			return i, true
		}
	}
	return 0, false
}

// below gives the index of the next lower entry.
func below(entries []float64, v float64) (index int, ok bool) {
	for i := len(entries) - 1; i >= 0; i-- {
		if v >= entries[i]-1e-9 {
			return i, true
		}
	}
	return 0, false
}

// Giardia gives the CT, mg·min/L, for three powers of ten of Giardia by epa-disinfection-2020, table B-1, looked up as
// it asks: next lower temperature, next higher pH, next higher chlorine, never between.
func (w Chlorination) Giardia() (float64, error) {
	t, warm := below(giardiaTemperatures[:], w.Temperature)
	p, alkaline := above(giardiaPH[:], w.PH)
	c, strong := above(giardiaChlorine[:], w.Chlorine)
	if !warm || !alkaline || !strong {
		return 0, fmt.Errorf("%g degC, pH %g, %g mg/L: the table goes from %g degC, to pH %g and to %g mg/L", w.Temperature, w.PH, w.Chlorine, coldestTable, highestPH, strongestTable)
	}
	return giardiaCT[t][c][p], nil
}

// Virus gives the CT, mg·min/L, for four powers of ten of viruses by table B-2: one column for pH 6 to 9, one for 10.
func (w Chlorination) Virus() (float64, error) {
	t, warm := below(giardiaTemperatures[:], w.Temperature)
	if !warm || w.PH < 6 || w.PH > 10 {
		return 0, fmt.Errorf("%g degC, pH %g: the table goes from %g degC and from pH 6 to 10", w.Temperature, w.PH, coldestTable)
	}
	if w.PH <= highestPH {
		return virusCT[t], nil
	}
	return virusAlkalineCT[t], nil
}

// Regression gives the CT, mg·min/L, for powers of ten of Giardia by smith-1995, which lies at or above the table.
func (w Chlorination) Regression(logs float64) float64 {
	T, C, pH := w.Temperature, w.Chlorine, w.PH
	if T < 12.5 {
		return 0.353 * logs * (12.006 + math.Exp(2.46-0.073*T+0.125*C+0.389*pH)) // smith-1995
	}
	return 0.361 * logs * (-2.261 + math.Exp(2.69-0.065*T+0.111*C+0.361*pH))
}

// ClosedForm gives the CT of an older formula, which may lie an eighth below the table: to compare, not to decide by.
func (w Chlorination) ClosedForm(logs float64) float64 {
	return 0.2828 * math.Pow(w.PH, 2.69) * math.Pow(w.Chlorine, 0.15) * math.Pow(0.933, w.Temperature-5) * logs // ct-lesson
}

// Light is a dose of ultraviolet light, mJ/cm2, in the water and not at the lamp.
type Light float64

// Shine gives the dose of mW/cm2 held for seconds.
func Shine(irradiance, seconds float64) Light { return Light(irradiance * seconds) }

// lightSteps are the powers of ten of cfr-141-720, as reprinted in the EPA's table of doses, and the doses that each asks for.
var (
	lightSteps      = [...]float64{0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4}
	lightCrypto     = [...]float64{1.6, 2.5, 3.9, 5.8, 8.5, 12, 15, 22}
	lightGiardia    = [...]float64{1.5, 2.1, 3.0, 5.2, 7.7, 11, 15, 22}
	lightViruses    = [...]float64{39, 58, 79, 100, 121, 143, 163, 186}
	measuredAtDoses = [...]struct {
		dose Light
		name string
	}{{40, "uv-40"}, {20, "uv-20"}}
)

// reached gives the powers of ten of the last step that the dose reaches; between steps nothing is credited.
func (l Light) reached(doses *[len(lightSteps)]float64) float64 {
	if i, ok := below(doses[:], float64(l)); ok {
		return lightSteps[i]
	}
	return 0
}

// Cryptosporidium gives the powers of ten credited by cfr-141-720, up to 4.
func (l Light) Cryptosporidium() float64 { return l.reached(&lightCrypto) }

// Giardia gives the same of Giardia.
func (l Light) Giardia() float64 { return l.reached(&lightGiardia) }

// Viruses gives the same of viruses, after the hardiest known, an adenovirus.
func (l Light) Viruses() float64 { return l.reached(&lightViruses) }

// Measured gives the least that hijnen-2006 found at 20 or 40 mJ/cm2, the higher of those that the dose reaches; false below 20.
func (l Light) Measured() (Barrier, bool) {
	for _, m := range measuredAtDoses {
		if l >= m.dose-1e-9 {
			b, err := BarrierNamed(m.name)
			return b, err == nil
		}
	}
	return Barrier{}, false
}
