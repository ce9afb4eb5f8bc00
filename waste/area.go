package waste

import (
	"fmt"
	"math"
)

// A FieldRule is one published way from a percolation test to the floor of a drain trench.
type FieldRule struct {
	Name    string
	Formula string // P people, Q flow, B bedrooms, Vp s/mm, t min per inch
	Source  string
	// Low and High are the flows it is printed for, L a day; 0 where it names none.
	Low, High float64
	// Area gives m2 for a rate in s/mm. The error says why the rule refuses the ground or the house.
	Area func(h House, rate float64, treated bool) (float64, error)
}

const (
	squareFoot = 0.3048 * 0.3048 // m2, exact by definition
	// bedroomFlow is the design flow of newyork75a, US gallons a day (seen with the lengths).
	bedroomFlow = 130.0
)

// FieldRules lists the rules.
func FieldRules() []FieldRule {
	return []FieldRule{
		{"uk-bs6297", "P Vp 0.25, treated 0.20", "bs6297: A = P Vp 0.25, seen; 0.20 for treated effluent, remembered", 0, 0, ukArea},
		{"usa-new-york", "Q/(rate of t)", "newyork75a: 130 US gallons a bedroom; lengths seen, rates remembered", 0, 0, newYorkArea},
		{"usa-south-dakota", "Q sqrt(t)/5, in US gallons and square feet", "southdakota: 74:53:01:31, A = Q sqrt(t)/5 for 750 to 7,500 US gallons a day; seen", 750 * gallon, 7500 * gallon, southDakotaArea},
		{"india-is2470", "Q sqrt(t)/130", "is2470: Q = 130/sqrt(t) L/m2d; seen", 0, 0, indiaArea},
		{"usa-usphs", "B (area of t)", "usphs-septic: square feet a bedroom; seen", 0, 0, perBedroom(60, []step{{1, 70}, {2, 85}, {3, 100}, {4, 115}, {5, 125}, {10, 165}, {15, 190}, {30, 250}, {45, 300}, {60, 330}})},
		{"usa-illinois", "B (area of 6 t)", "illinois905: minutes for the last 6 inches; seen", 0, 0, illinoisArea},
		{"usa-county", "B (area of t)", "us-county-septic: square feet a bedroom; seen", 0, 0, perBedroom(120, countySteps())},
		{"usa-epa-1980", "Q/(rate of t)", "epa1980: trench rates; remembered", 0, 0, byFlow([]step{{5, 1.2}, {15, 0.8}, {30, 0.6}, {60, 0.45}, {120, 0.2}})},
	}
}

// Printed reports whether the rule is printed for the flow of a house; it is true of rules that name no flow.
func (r FieldRule) Printed(h House) bool {
	q, err := h.flow()
	return r.High == 0 || err == nil && q*gallon >= r.Low && q*gallon <= r.High
}

// A step is one row of a printed table: up to so many minutes per inch, this figure.
type step struct{ upTo, figure float64 }

// rounding is the rounding between s/mm and minutes per inch: ground of just 10 min per inch is in the row of 10.
const rounding = 1e-9

// row gives the figure of the first row that reaches t: between rows the slower one counts.
func row(table []step, t float64) (float64, error) {
	for _, s := range table {
		if t <= s.upTo*(1+rounding) {
			return s.figure, nil
		}
	}
	return 0, fmt.Errorf("ends at %g min per inch, this ground has %.3g", table[len(table)-1].upTo, t)
}

func countySteps() []step {
	return []step{{10, 165}, {30, 250}, {45, 300}, {60, 333}, {120, 600}}
}

func perBedroom(most float64, table []step) func(House, float64, bool) (float64, error) {
	return func(h House, rate float64, _ bool) (float64, error) {
		t := MinutesPerInch(rate)
		if h.Bedrooms < 1 {
			return 0, fmt.Errorf("counts bedrooms: give them")
		}
		if t < 1-rounding || t > most*(1+rounding) {
			return 0, fmt.Errorf("serves from 1 to %g min per inch, this ground has %.3g", most, t)
		}
		each, err := row(table, t)
		return each * float64(h.Bedrooms) * squareFoot, err
	}
}

func byFlow(table []step) func(House, float64, bool) (float64, error) {
	return func(h House, rate float64, _ bool) (float64, error) {
		q, err := h.flow()
		if err != nil {
			return 0, err
		}
		t := MinutesPerInch(rate)
		if t < 1-rounding {
			return 0, fmt.Errorf("begins at 1 min per inch, this ground has %.3g", t)
		}
		r, err := row(table, t)
		if err != nil {
			return 0, err
		}
		return q / r * squareFoot, nil
	}
}

// flow gives US gallons a day: measured, or by bedrooms.
func (h House) flow() (float64, error) {
	if h.Daily > 0 {
		return h.Daily / gallon, nil
	}
	if h.Bedrooms < 1 {
		return 0, fmt.Errorf("needs a daily flow or bedrooms")
	}
	return bedroomFlow * float64(h.Bedrooms), nil
}

func ukArea(h House, rate float64, treated bool) (float64, error) {
	if w := Windows()[0]; rate < w.Low || rate > w.High {
		return 0, fmt.Errorf("serves from %g to %g s/mm, this ground has %.3g", w.Low, w.High, rate)
	}
	factor := 0.25
	if treated {
		factor = 0.20
	}
	return h.People * rate * factor, nil
}

// newYorkArea ends at the 30 min per inch of the rows that were seen.
func newYorkArea(h House, rate float64, treated bool) (float64, error) {
	return byFlow([]step{{5, 1.20}, {7, 1.00}, {10, 0.90}, {15, 0.80}, {20, 0.70}, {30, 0.60}})(h, rate, treated)
}

func southDakotaArea(h House, rate float64, _ bool) (float64, error) {
	q, err := h.flow()
	if err != nil {
		return 0, err
	}
	return q * math.Sqrt(MinutesPerInch(rate)) / 5 * squareFoot, nil
}

// IndiaRate gives L/m2d at so many minutes per inch.
func IndiaRate(t float64) float64 { return 130 / math.Sqrt(t) }

// SouthDakotaRate gives the same by the other root: 5/sqrt(t) US gallons on a square foot.
func SouthDakotaRate(t float64) float64 { return 5 / math.Sqrt(t) * gallon / squareFoot }

// indiaArea reads the standard's t as minutes per inch (25 mm in the standard).
func indiaArea(h House, rate float64, _ bool) (float64, error) {
	q, err := h.flow()
	if err != nil {
		return 0, err
	}
	t := MinutesPerInch(rate)
	if t > 60 {
		return 0, fmt.Errorf("serves up to 60 min per inch, this ground has %.3g", t)
	}
	return q * gallon / IndiaRate(t), nil
}

// illinoisArea has its rows by the minutes that the last 6 inches take.
func illinoisArea(h House, rate float64, treated bool) (float64, error) {
	if six := 6 * MinutesPerInch(rate); six < 18*(1-rounding) {
		return 0, fmt.Errorf("begins at 18 min for 6 inches, this ground has %.3g", six)
	}
	table := []step{{60, 200}, {90, 210}, {120, 235}, {150, 265}, {180, 290}, {240, 320}, {300, 350}, {360, 385}}
	for i := range table {
		table[i].upTo /= 6
	}
	return perBedroom(60, table)(h, rate, treated)
}

// TrenchLength gives metres of trench for a floor in m2.
func TrenchLength(area, width float64) float64 { return area / width }
