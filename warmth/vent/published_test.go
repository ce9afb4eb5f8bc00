package vent

import (
	"testing"

	"suffice/internal/check"
)

func TestStackWorkedByHand(t *testing.T) {
	const kelvin = 273.15
	check.That(t, Stack(Opening{Area: 1, Discharge: Handbook}, 3, Weather{Inside: 298 - kelvin, Outside: 293 - kelvin}), check.Published{
		Source: "ashrae-fundamentals", At: "ch. 16, stack flow, 1 m2, Cd 0.65, 3 m, 298 K over 293 K", Value: "0.646", Unit: "m3/s", Standing: "own"})
	w := Weather{Inside: 25, Outside: 18}
	low, high := Opening{Area: 1, Discharge: Sharp}, Opening{Area: 1, Discharge: Sharp, Height: 4}
	check.That(t, Through(low, high, w).Flow, check.Published{
		Source: "cibse-am10", At: "two openings in series of 1 m2, Cd 0.61, 4 m, 25 over 18 degC", Value: "0.589", Unit: "m3/s", Standing: "own"})
	high.Area = 2
	check.That(t, Through(low, high, w).Flow, check.Published{
		Source: "cibse-am10", At: "two openings in series of 1 and 2 m2, Cd 0.61, 4 m, 25 over 18 degC", Value: "0.745", Unit: "m3/s", Standing: "own"})
}

func TestLeakyHouseWorkedByHand(t *testing.T) {
	l := Leaks{Area: 500, Storeys: 2, Shelter: 3}
	flow := l.Infiltration(Weather{Inside: 20, Outside: -19, Wind: 6.7})
	check.That(t, flow, check.Published{Source: "ashrae-fundamentals", At: "ch. 16, basic model, two storeys, 500 cm2, shelter 3, 39 K, 6.7 m/s", Value: "0.0736", Unit: "m3/s", Standing: "own"})
	check.That(t, Changes(flow, 340), check.Published{Source: "ashrae-fundamentals", At: "ch. 16, basic model, the same in 340 m3", Value: "0.78", Unit: "/h", Standing: "own"})
}

func TestCarbonOfAPerson(t *testing.T) {
	b := Breath{Volume: 50, Gives: Sitting, Fresh: 7.5 * 3.6, Outside: OutsideCarbon}
	check.That(t, b.Settles()-OutsideCarbon, check.Published{Source: "astm-d6245", At: "steady difference at 7.5 L/s a person, about 700 ppm", Value: "700", Unit: "ppm",
		Within: 15, Why: "the source rounds: 0.31 L/min gives 689, 0.0052 L/s gives 693", Standing: "remembered"})
}

func TestWindOverTown(t *testing.T) {
	check.That(t, Local(5, 10, Country), check.Published{Source: "bs5925", At: "open flat country, 10 m, 5 m/s: 5·0.68·10^0.17", Value: "5.03", Unit: "m/s", Standing: "own"})
	check.That(t, Local(5, 10, City), check.Published{Source: "bs5925", At: "city, 10 m, 5 m/s: 5·0.21·10^0.33", Value: "2.24", Unit: "m/s", Standing: "own"})
}
