package waste

import (
	"testing"

	"suffice/internal/check"
)

// Rows of TestTankSizesByBedrooms that it leaves out.
func TestTanksOfEveryBedroom(t *testing.T) {
	by := func(rule string, n int) float64 { return capacity(t, rule, House{Bedrooms: n}) }
	check.That(t, by("usa-county", 1)/gallon, check.Published{Source: "us-county-septic", At: "1 of 1-3 bedrooms", Value: "1000", Unit: "US-gallon"})
	check.That(t, by("usa-county", 2)/gallon, check.Published{Source: "us-county-septic", At: "2 of 1-3 bedrooms", Value: "1000", Unit: "US-gallon"})
	check.That(t, by("usa-upc", 1), check.Published{Source: "upc-septic", At: "1 of 1-2 bedrooms", Value: "2839", Unit: "L"})
	check.That(t, by("usa-upc", 5), check.Published{Source: "upc-septic", At: "5 of 5-6 bedrooms", Value: "5678", Unit: "L"})
	check.That(t, by("usa-epa-2002", 1)/gallon, check.Published{Source: "epa2002", At: "table after ICC 1995, 1 bedrooms", Value: "750", Unit: "US-gallon", Standing: "remembered"})
	check.That(t, by("usa-epa-2002", 2)/gallon, check.Published{Source: "epa2002", At: "table after ICC 1995, 2 bedrooms", Value: "750", Unit: "US-gallon", Standing: "remembered"})
	check.That(t, by("usa-epa-2002", 3)/gallon, check.Published{Source: "epa2002", At: "table after ICC 1995, 3 bedrooms", Value: "1000", Unit: "US-gallon", Standing: "remembered"})
	check.That(t, by("usa-epa-2002", 4)/gallon, check.Published{Source: "epa2002", At: "table after ICC 1995, 4 bedrooms", Value: "1200", Unit: "US-gallon", Standing: "remembered"})
	check.That(t, by("usa-epa-2002", 6)/gallon, check.Published{Source: "epa2002", At: "table after ICC 1995, 6 bedrooms", Value: "1650", Unit: "US-gallon", Standing: "remembered"})
	check.That(t, by("usa-epa-2002", 7)/gallon, check.Published{Source: "epa2002", At: "table after ICC 1995, 7 bedrooms", Value: "1875", Unit: "US-gallon", Standing: "remembered"})
}

// The factors for years and warmth as remembered, and the two rates that they go with.
func TestEverySludgeFactor(t *testing.T) {
	check.That(t, SludgeFactor(1, Hot), check.Published{Source: "franceys", At: "F above 20 degC all year, years 1", Value: "1.3", Unit: "", Standing: "remembered"})
	check.That(t, SludgeFactor(2, Hot), check.Published{Source: "franceys", At: "F above 20 degC all year, years 2", Value: "1.0", Unit: "", Standing: "remembered"})
	check.That(t, SludgeFactor(1, Mild), check.Published{Source: "franceys", At: "F above 10 degC all year, years 1", Value: "1.5", Unit: "", Standing: "remembered"})
	check.That(t, SludgeFactor(2, Mild), check.Published{Source: "franceys", At: "F above 10 degC all year, years 2", Value: "1.15", Unit: "", Standing: "remembered"})
	check.That(t, SludgeFactor(1, Cold), check.Published{Source: "franceys", At: "F below 10 degC in winter, years 1", Value: "2.5", Unit: "", Standing: "remembered"})
	check.That(t, SludgeFactor(2, Cold), check.Published{Source: "franceys", At: "F below 10 degC in winter, years 2", Value: "1.5", Unit: "", Standing: "remembered"})
	check.That(t, SludgeFactor(3, Cold), check.Published{Source: "franceys", At: "F below 10 degC in winter, years 3", Value: "1.27", Unit: "", Standing: "remembered"})
	check.That(t, SludgeFactor(5, Cold), check.Published{Source: "franceys", At: "F below 10 degC in winter, years 5", Value: "1.06", Unit: "", Standing: "remembered"})
	check.That(t, SludgeFactor(6, Cold), check.Published{Source: "franceys", At: "F below 10 degC in winter, years 6", Value: "1.0", Unit: "", Standing: "remembered"})
	for _, r := range SludgeRates() {
		switch r.Name {
		case "who-1992-toilet":
			check.That(t, r.Rate, check.Published{Source: "franceys", At: "S of toilets only", Value: "25", Unit: "L/person/year", Standing: "remembered"})
		case "who-1992-sullage":
			check.That(t, r.Rate, check.Published{Source: "franceys", At: "S with sullage", Value: "40", Unit: "L/person/year", Standing: "remembered"})
		}
	}
}

// Ground just as slow as a printed row gets the row's own area.
func TestEveryAreaByBedroom(t *testing.T) {
	each := func(rule string, minutes float64) float64 {
		return field(t, rule, House{Bedrooms: 1}, minutes*perInch) / squareFoot
	}
	check.That(t, each("usa-usphs", 1), check.Published{Source: "usphs-septic", At: "1 min/inch", Value: "70", Unit: "feet2/bedroom"})
	check.That(t, each("usa-usphs", 2), check.Published{Source: "usphs-septic", At: "2 min/inch", Value: "85", Unit: "feet2/bedroom"})
	check.That(t, each("usa-usphs", 3), check.Published{Source: "usphs-septic", At: "3 min/inch", Value: "100", Unit: "feet2/bedroom"})
	check.That(t, each("usa-usphs", 4), check.Published{Source: "usphs-septic", At: "4 min/inch", Value: "115", Unit: "feet2/bedroom"})
	check.That(t, each("usa-usphs", 5), check.Published{Source: "usphs-septic", At: "5 min/inch", Value: "125", Unit: "feet2/bedroom"})
	check.That(t, each("usa-usphs", 10), check.Published{Source: "usphs-septic", At: "10 min/inch", Value: "165", Unit: "feet2/bedroom"})
	check.That(t, each("usa-usphs", 15), check.Published{Source: "usphs-septic", At: "15 min/inch", Value: "190", Unit: "feet2/bedroom"})
	check.That(t, each("usa-usphs", 30), check.Published{Source: "usphs-septic", At: "30 min/inch", Value: "250", Unit: "feet2/bedroom"})
	check.That(t, each("usa-usphs", 45), check.Published{Source: "usphs-septic", At: "45 min/inch", Value: "300", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 1), check.Published{Source: "us-county-septic", At: "1 of 1-10 min/inch", Value: "165", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 11), check.Published{Source: "us-county-septic", At: "11 of 11-30 min/inch", Value: "250", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 30), check.Published{Source: "us-county-septic", At: "30 of 11-30 min/inch", Value: "250", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 31), check.Published{Source: "us-county-septic", At: "31 of 31-45 min/inch", Value: "300", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 46), check.Published{Source: "us-county-septic", At: "46 of 46-60 min/inch", Value: "333", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 60), check.Published{Source: "us-county-septic", At: "60 of 46-60 min/inch", Value: "333", Unit: "feet2/bedroom"})
	check.That(t, each("usa-county", 61), check.Published{Source: "us-county-septic", At: "61 of 61-120 min/inch", Value: "600", Unit: "feet2/bedroom"})
}

// The code's second column is what works and institutions may load a square foot with. Times the first it is 200 US gallons a bedroom
// in every row, so each column tells of slips in the other.
func TestIllinoisLoads(t *testing.T) {
	load := func(minutes float64) float64 {
		return 200 / (field(t, "usa-illinois", House{Bedrooms: 1}, minutes/6*perInch) / squareFoot)
	}
	check.That(t, load(18), check.Published{Source: "illinois905", At: "18 min for 6 inches, load at 200 US gallons a bedroom", Value: "1.0", Unit: "US-gallon/feet2/d"})
	check.That(t, load(60), check.Published{Source: "illinois905", At: "60 min for 6 inches, load at 200 US gallons a bedroom", Value: "1.0", Unit: "US-gallon/feet2/d"})
	check.That(t, load(90), check.Published{Source: "illinois905", At: "90 min for 6 inches, load at 200 US gallons a bedroom", Value: "0.95", Unit: "US-gallon/feet2/d"})
	check.That(t, load(120), check.Published{Source: "illinois905", At: "120 min for 6 inches, load at 200 US gallons a bedroom", Value: "0.85", Unit: "US-gallon/feet2/d"})
	check.That(t, load(150), check.Published{Source: "illinois905", At: "150 min for 6 inches, load at 200 US gallons a bedroom", Value: "0.75", Unit: "US-gallon/feet2/d"})
	check.That(t, load(180), check.Published{Source: "illinois905", At: "180 min for 6 inches, load at 200 US gallons a bedroom", Value: "0.69", Unit: "US-gallon/feet2/d"})
	check.That(t, load(240), check.Published{Source: "illinois905", At: "240 min for 6 inches, load at 200 US gallons a bedroom", Value: "0.62", Unit: "US-gallon/feet2/d"})
	check.That(t, load(300), check.Published{Source: "illinois905", At: "300 min for 6 inches, load at 200 US gallons a bedroom", Value: "0.57", Unit: "US-gallon/feet2/d"})
	check.That(t, load(360), check.Published{Source: "illinois905", At: "360 min for 6 inches, load at 200 US gallons a bedroom", Value: "0.52", Unit: "US-gallon/feet2/d"})
}

func TestTrenchRatesOf1980(t *testing.T) {
	load := func(minutes float64) float64 {
		return 100 / (field(t, "usa-epa-1980", House{Daily: 100 * gallon}, minutes*perInch) / squareFoot)
	}
	check.That(t, load(1), check.Published{Source: "epa1980", At: "1-5 min/inch, at 1", Value: "1.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(5), check.Published{Source: "epa1980", At: "1-5 min/inch, at 5", Value: "1.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(6), check.Published{Source: "epa1980", At: "6-15 min/inch, at 6", Value: "0.8", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(15), check.Published{Source: "epa1980", At: "6-15 min/inch, at 15", Value: "0.8", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(16), check.Published{Source: "epa1980", At: "16-30 min/inch, at 16", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(30), check.Published{Source: "epa1980", At: "16-30 min/inch, at 30", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(31), check.Published{Source: "epa1980", At: "31-60 min/inch, at 31", Value: "0.45", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(60), check.Published{Source: "epa1980", At: "31-60 min/inch, at 60", Value: "0.45", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(61), check.Published{Source: "epa1980", At: "61-120 min/inch, at 61", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, load(120), check.Published{Source: "epa1980", At: "61-120 min/inch, at 120", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
}
