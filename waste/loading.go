package waste

import "fmt"

// A SoilRate is what one printed table lets a soil take of effluent in a day, for a field that must last.
type SoilRate struct {
	Soil    string  // texture and structure in words
	Table   string  // which table, with its edition
	Septic  float64 // mm/d of septic tank effluent; 0: not to be used
	Treated float64 // mm/d of treated effluent; 0 where the table has none
	Source  string
}

// mmPerGallon turns US gallons on a square foot a day into mm/d: 40.746.
const mmPerGallon = gallon / squareFoot

// SoilRates lists the tables. All figures are remembered; where both stand, they differ by up to half.
func SoilRates() []SoilRate {
	epa := func(soil string, septic, treated float64) SoilRate {
		return SoilRate{soil, "epa-2002", septic * mmPerGallon, treated * mmPerGallon, "epa2002: table 4-3, after Tyler 2001; remembered"}
	}
	anz := func(soil string, septic, treated float64) SoilRate {
		return SoilRate{soil, "as-nzs-1547-2012", septic, treated, "asnzs1547: 2012, table L1, the careful figure; remembered"}
	}
	return []SoilRate{
		epa("sand", 0.8, 1.6), epa("fine-sand", 0.4, 1.0),
		epa("sandy-loam-massive", 0.2, 0.6), epa("sandy-loam-weak", 0.4, 0.7), epa("sandy-loam-strong", 0.6, 1.0),
		epa("fine-sandy-loam-massive", 0.2, 0.5), epa("fine-sandy-loam-weak", 0.2, 0.6), epa("fine-sandy-loam-strong", 0.4, 0.8),
		epa("loam-massive", 0.2, 0.5), epa("loam-weak", 0.4, 0.6), epa("loam-strong", 0.6, 0.8),
		epa("silt-loam-massive", 0, 0.2), epa("silt-loam-weak", 0.4, 0.6), epa("silt-loam-strong", 0.6, 0.8),
		epa("clay-loam-massive", 0, 0), epa("clay-loam-weak", 0.2, 0.3), epa("clay-loam-strong", 0.4, 0.6),
		epa("clay-massive", 0, 0), epa("clay-weak", 0, 0), epa("clay-strong", 0.2, 0.3),
		anz("loam-strong", 15, 50), anz("loam-weak", 10, 30),
		anz("clay-loam-strong", 10, 30), anz("clay-loam-weak", 6, 20), anz("clay-loam-massive", 4, 10), anz("clay-strong", 5, 12),
	}
}

// LoadingArea gives the floor in m2 for L a day by one row.
func LoadingArea(daily float64, r SoilRate, treated bool) (float64, error) {
	rate := r.Septic
	if treated {
		rate = r.Treated
	}
	if rate <= 0 {
		return 0, fmt.Errorf("%s lets %s take none of this effluent", r.Table, r.Soil)
	}
	return daily / rate, nil
}

// A PlumbingSoil is one of the five soils of the Uniform Plumbing Code: square feet of trench for every
// 100 US gallons of tank, and the most gallons a square foot takes in a day (upc-septic, remembered).
type PlumbingSoil struct {
	Soil       string
	Per100     float64 // square feet
	MostPerDay float64 // US gallons on a square foot
}

// PlumbingSoils lists them, fastest first.
func PlumbingSoils() []PlumbingSoil {
	return []PlumbingSoil{{"coarse sand or gravel", 20, 5}, {"fine sand", 25, 4}, {"sandy loam or sandy clay", 40, 2.5},
		{"clay with much sand or gravel", 90, 1.1}, {"clay with little sand or gravel", 120, 0.8}}
}

// SoilNamed gives a Soil of the trench by its careful printed long-term rate (epa-2002), and false for a name
// that the table lacks or lets take nothing. Fresh is thirty times as much for sands, five times for the rest: assumed,
// since a clean soil's rate must be measured on the spot.
func SoilNamed(name string) (Soil, bool) {
	for _, r := range SoilRates() {
		if r.Soil == name && r.Table == "epa-2002" && r.Septic > 0 {
			fresh := 5 * r.Septic
			if name == "sand" || name == "fine-sand" {
				fresh = 30 * r.Septic
			}
			return Soil{Name: name, Fresh: fresh, Long: r.Septic, Clogs: UsualClogs}, true
		}
	}
	return Soil{}, false
}

// Area gives the floor in m2 that goes with a tank of so many litres.
func (p PlumbingSoil) Area(tank float64) float64 {
	return tank / gallon / 100 * p.Per100 * squareFoot
}
