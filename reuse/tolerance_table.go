package reuse

import (
	"slices"

	"suffice/crop"
)

// tabled is maas-1990, as the US Salinity Laboratory tabulates it, of crops that package crop does not grow:
// threshold dS/m, slope % per dS/m; seen. Response is Ky of fao33, from memory; 0 where none is remembered.
var tabled = []struct {
	name string
	Tolerance
}{
	{"broccoli", Tolerance{2.8, 9.2, 0}}, {"cabbage", Tolerance{1.8, 9.7, 0.95}}, {"cherry tomato", Tolerance{1.7, 9.1, 1.05}},
	{"turnip", Tolerance{0.9, 9, 0}}, {"strawberry", Tolerance{1, 33, 0}},
}

// short is what maas-1990 calls crops that package crop names more closely.
var short = []struct{ name, crop string }{{"bean", "green bean"}, {"pepper", "sweet pepper"}, {"squash", "winter squash"}}

// ToleranceOf gives a crop's tolerance of salt; false where no table knows it.
func ToleranceOf(name string) (Tolerance, bool) {
	for _, t := range tabled {
		if t.name == name {
			return t.Tolerance, true
		}
	}
	for _, s := range short {
		if s.name == name {
			name = s.crop
		}
	}
	c, err := crop.Named(name)
	if err != nil {
		return Tolerance{}, false
	}
	return Tolerance{c.Salt.Threshold, c.Salt.Slope, c.Ky.Value}, true
}

// Tolerant names the crops that ToleranceOf knows.
func Tolerant() []string {
	names := crop.Names()
	for _, t := range tabled {
		names = append(names, t.name)
	}
	for _, s := range short {
		names = append(names, s.name)
	}
	slices.Sort(names)
	return names
}
