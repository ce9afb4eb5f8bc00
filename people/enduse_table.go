package people

// An EndUse is one line of a published table of what water is used for.
type EndUse struct {
	Name   string
	Amount float64 // in the unit of its table, a day
}

// An EndUses is a published table of what water is used for, with the unit as printed.
type EndUses struct {
	Source string // key in SOURCES.md
	At     string
	Unit   string // of each amount: gallons are US gallons
	Stands string // how the figures are known
	Uses   []EndUse
}

// Tables gives the published tables this package carries, for filling in a house file.
// American figures are for mains without scarcity: a house on rain draws far less.
func Tables() []EndUses {
	return []EndUses{
		{"residential-end-uses-2016", "household, indoor", "US-gallon/d", "seen as quoted", []EndUse{
			{"toilet", 33}, {"shower", 27}, {"faucet", 27}, {"washer", 22},
			{"leaks", 18}, {"bath", 4}, {"dishwasher", 2}, {"other", 4}}},
		{"residential-end-uses-2016", "per person, indoor", "US-gallon/person/d", "remembered; the sum is reproduced", []EndUse{
			{"toilet", 14.2}, {"shower", 11.1}, {"faucet", 11.1}, {"washer", 9.6},
			{"leaks", 7.9}, {"other", 2.5}, {"bath", 1.5}, {"dishwasher", 0.7}}},
		{"residential-end-uses-1999", "per person, indoor", "US-gallon/person/d", "total, toilet, leaks and bath seen; the rest remembered, the sum is reproduced", []EndUse{
			{"toilet", 18.5}, {"washer", 15.0}, {"shower", 11.6}, {"faucet", 10.9},
			{"leaks", 9.5}, {"bath", 1.2}, {"dishwasher", 1.0}, {"other", 1.6}}},
		{"gleick-basic-need", "basic requirement", "L/person/d", "remembered; the sum is reproduced", []EndUse{
			{"drinking", 5}, {"sanitation", 20}, {"bathing", 15}, {"food preparation", 10}}},
	}
}

// Sum gives the total of a table in its unit.
func (t *EndUses) Sum() float64 {
	var s float64
	for _, u := range t.Uses {
		s += u.Amount
	}
	return s
}

// Share gives the part of the total that the named uses make.
func (t *EndUses) Share(names ...string) float64 {
	var part float64
	for _, u := range t.Uses {
		for _, n := range names {
			if u.Name == n {
				part += u.Amount
			}
		}
	}
	return part / t.Sum()
}
