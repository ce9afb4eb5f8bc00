package reuse

// tolerances is maas-1990 as the US Salinity Laboratory tabulates it: threshold dS/m, slope % per dS/m; seen.
// Response is Ky of fao33, from memory; 0 where none is remembered.
var tolerances = []struct {
	crop string
	Tolerance
}{
	{"bean", Tolerance{1.0, 19, 1.15}}, {"broccoli", Tolerance{2.8, 9.2, 0}}, {"cabbage", Tolerance{1.8, 9.7, 0.95}},
	{"carrot", Tolerance{1.0, 14, 0}}, {"cucumber", Tolerance{2.5, 13, 0}}, {"lettuce", Tolerance{1.3, 13, 0}},
	{"onion", Tolerance{1.2, 16, 0}}, {"pepper", Tolerance{1.5, 14, 1.10}}, {"potato", Tolerance{1.7, 12, 1.10}},
	{"radish", Tolerance{1.2, 13, 0}}, {"spinach", Tolerance{2.0, 7.6, 0}}, {"squash", Tolerance{3.2, 16, 0}},
	{"zucchini", Tolerance{4.7, 9.4, 0}}, {"tomato", Tolerance{2.5, 9.9, 1.05}}, {"cherry-tomato", Tolerance{1.7, 9.1, 1.05}},
	{"turnip", Tolerance{0.9, 9, 0}}, {"strawberry", Tolerance{1, 33, 0}},
}

// ToleranceOf gives a crop's tolerance of salt; false where the table does not know it.
func ToleranceOf(crop string) (Tolerance, bool) {
	for _, t := range tolerances {
		if t.crop == crop {
			return t.Tolerance, true
		}
	}
	return Tolerance{}, false
}

// Tolerant names the crops that ToleranceOf knows.
func Tolerant() []string {
	names := make([]string, len(tolerances))
	for i, t := range tolerances {
		names[i] = t.crop
	}
	return names
}
