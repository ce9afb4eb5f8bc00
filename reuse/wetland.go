package reuse

import (
	"math"

	"suffice/quantity"
)

// ReedRate is 1/d at which BOD decays in a gravel bed at 20 degC (reed-1995, from memory, med-high).
const ReedRate = 1.104

// reedGrowth is the natural logarithm of 1.06, by which the rate grows for every kelvin (reed-1995).
const reedGrowth = 0.05826890812397576

// RateAt gives a rate of 20 degC at another temperature of the water.
func RateAt(rate float64, water quantity.Celsius) float64 {
	return rate * math.Exp(reedGrowth*(float64(water)-20)) // reed-1995: k = k20 1.06^(T-20)
}

// hourly gives the share of BOD left after an hour.
func hourly(rate float64, water quantity.Celsius) float64 {
	return math.Exp(-RateAt(rate, water) / 24)
}

// A Flow is a steady flow to be cleaned.
type Flow struct {
	PerDay  float64 // m3/d
	In, Out float64 // mg/L of BOD, at inlet and outlet
}

// FirstOrder gives the area, m2, of a bed through which the flow is pushed along, for an areal rate in m/d.
func (f Flow) FirstOrder(rate float64) quantity.SquareMetres {
	return quantity.SquareMetres(f.PerDay * (math.Log(f.In) - math.Log(f.Out)) / rate) // un-habitat-wetlands: A = Q (ln Ci - ln Ce)/K
}

// Background gives C*, the mg/L below which plants and soil themselves keep the water.
func (f Flow) Background() float64 { return 3.5 + 0.053*f.In } // kadlec-knight

// KCStar gives the area, m2, by the method that lets BOD fall no further than Background, for a rate in m/year. An outlet
// at or below it cannot be had from any area: false.
func (f Flow) KCStar(rate float64) (area quantity.SquareMetres, can bool) {
	c := f.Background()
	if f.Out <= c {
		return 0, false
	}
	return quantity.SquareMetres(1e4 * 0.0365 * f.PerDay / rate * math.Log((f.In-c)/(f.Out-c))), true // kadlec-knight: ha
}

// personLoad is g of BOD a person and day, the manual's figure for sewage.
const personLoad = 40.0

// thumbLeast and thumbMost are m2 of bed for a person (sandec-compendium: 5 to 10).
const thumbLeast, thumbMost = 5.0, 10.0

// People gives how many people's sewage carries as much BOD as the flow.
func (f Flow) People() float64 { return f.PerDay * f.In / personLoad }

// PerPerson gives the least and the most area by the rule of thumb, m2.
func PerPerson(people float64) (least, most quantity.SquareMetres) {
	return quantity.SquareMetres(people * thumbLeast), quantity.SquareMetres(people * thumbMost)
}

// Darcy gives the flow, m3/s, that runs through gravel of so many m/s and such a cross-section down a slope.
func Darcy(conductivity, slope, section float64) float64 { return conductivity * slope * section }

// Section gives the cross-section, m2, that gravel needs to let m3/s run down a slope.
func Section(flow, conductivity, slope float64) float64 { return flow / (conductivity * slope) }

// A Cleaning is what a bed takes out of a steady flow, by formula and by rule of thumb, both as shares
// of the BOD. They disagree severalfold for weak water; the bed lies between.
type Cleaning struct {
	Days   float64 // that the water stays
	Pushed float64 // first order, water pushed along: 1 - exp(-k t)
	Mixed  float64 // first order, water mixed, as the hour takes it: k t/(1 + k t)
	Thumb  float64 // bed over the area that the least rule of thumb asks for; 1 and more: it is big enough
}

// Cleans gives what the bed takes out of a steady flow of more than 0 m3/d at a water temperature.
func (b *Bed) Cleans(f Flow, water quantity.Celsius) Cleaning {
	days := b.standing / (1000 * f.PerDay)
	kt := RateAt(b.Rate, water) * days
	least, _ := PerPerson(f.People())
	return Cleaning{Days: days, Pushed: 1 - math.Exp(-kt), Mixed: kt / (1 + kt), Thumb: b.area / float64(least)}
}
