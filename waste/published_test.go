package waste

import (
	"math"
	"testing"

	"suffice/internal/check"
)

func capacity(t *testing.T, rule string, h House) float64 {
	t.Helper()
	for _, r := range TankRules() {
		if r.Name == rule {
			v, err := r.Capacity(h)
			if err != nil {
				t.Fatalf("%s of %+v: %v", rule, h, err)
			}
			return v
		}
	}
	t.Fatalf("no rule %s", rule)
	return 0
}

func TestTankSizes(t *testing.T) {
	uk := func(p float64) float64 { return capacity(t, "uk-nhbc-2020", House{People: p}) }
	check.That(t, uk(4), check.Published{Source: "nhbc2020", At: "5.3.9, 4 people", Value: "2720", Unit: "L"})
	check.That(t, uk(5), check.Published{Source: "nhbc2020", At: "5.3.9, 5 people", Value: "2900", Unit: "L"})
	check.That(t, uk(6), check.Published{Source: "nhbc2020", At: "5.3.9, 6 people", Value: "3080", Unit: "L"})
	check.That(t, uk(8), check.Published{Source: "nhbc2020", At: "5.3.9, 8 people", Value: "3440", Unit: "L"})
	check.That(t, uk(10), check.Published{Source: "nhbc2020", At: "5.3.9, 10 people", Value: "3800", Unit: "L"})
	check.That(t, uk(2), check.Published{Source: "nhbc2020", At: "5.3.9, 2 people are sized as the least number of 4", Value: "2720", Unit: "L", Standing: "own"})
	england := func(p float64) float64 { return capacity(t, "england-ad-h2", House{People: p}) }
	check.That(t, england(4), check.Published{Source: "ad-h2", At: "up to 4 users", Value: "2700", Unit: "L", Standing: "remembered"})
	check.That(t, england(5), check.Published{Source: "ad-h2", At: "5 users", Value: "2880", Unit: "L", Standing: "remembered"})
	check.That(t, england(6), check.Published{Source: "ad-h2", At: "6 users", Value: "3060", Unit: "L", Standing: "remembered"})
	check.That(t, SupplyToTank(200), check.Published{Source: "franceys", At: "example 8.4, q of 200 L supplied", Value: "180", Unit: "L"})
	check.That(t, Retention(8, SupplyToTank(200)), check.Published{Source: "franceys", At: "example 8.4, A of 8 people", Value: "1440", Unit: "L"})
	check.That(t, MaraRetention(1440), check.Published{Source: "mara1996", At: "retention for 1,440 L a day", Value: "0.55", Unit: "d", Standing: "remembered"})
	check.That(t, capacity(t, "south-africa-bylaw", House{People: 4, Daily: 800}), check.Published{Source: "za-bylaw", At: "domestic minimum", Value: "7000", Unit: "L"})
	check.That(t, capacity(t, "south-africa-bylaw", House{People: 8, Daily: 1200}), check.Published{Source: "za-bylaw", At: "seven days of 1,200 L", Value: "8400", Unit: "L", Standing: "own"})
}

func TestTankSizesByBedrooms(t *testing.T) {
	county := func(n int) float64 { return capacity(t, "usa-county", House{Bedrooms: n}) / gallon }
	check.That(t, county(3), check.Published{Source: "us-county-septic", At: "3 bedrooms", Value: "1000", Unit: "US-gallon"})
	check.That(t, county(4), check.Published{Source: "us-county-septic", At: "4 bedrooms", Value: "1250", Unit: "US-gallon"})
	check.That(t, county(5), check.Published{Source: "us-county-septic", At: "5 bedrooms", Value: "1500", Unit: "US-gallon"})
	upc := func(n int) float64 { return capacity(t, "usa-upc", House{Bedrooms: n}) }
	check.That(t, upc(2), check.Published{Source: "upc-septic", At: "1-2 bedrooms", Value: "2839", Unit: "L"})
	check.That(t, upc(3), check.Published{Source: "upc-septic", At: "3 bedrooms", Value: "3785", Unit: "L"})
	check.That(t, upc(4), check.Published{Source: "upc-septic", At: "4 bedrooms", Value: "4542", Unit: "L"})
	check.That(t, upc(6), check.Published{Source: "upc-septic", At: "5-6 bedrooms", Value: "5678", Unit: "L"})
	epa := func(n int) float64 { return capacity(t, "usa-epa-2002", House{Bedrooms: n}) / gallon }
	check.That(t, epa(5), check.Published{Source: "epa2002", At: "table after ICC 1995, 5 bedrooms", Value: "1425", Unit: "US-gallon", Standing: "remembered"})
	check.That(t, epa(8), check.Published{Source: "epa2002", At: "table after ICC 1995, 8 bedrooms", Value: "2100", Unit: "US-gallon", Standing: "remembered"})
	if _, err := (TankRules()[3]).Capacity(House{Bedrooms: 6}); err == nil {
		t.Error("the county's table of five rows answered six bedrooms")
	}
}

// Slips of public pages: what they print must not come out.
func TestSlipsOfPages(t *testing.T) {
	right := capacity(t, "usa-by-flow", House{Daily: 675 * gallon}) / gallon
	check.That(t, right, check.Published{Source: "septic-page", At: "675 US gallons a day; the page prints 507", Value: "1012", Unit: "US-gallon", Within: 1, Why: "1.5 x 675 is 1012.5, cut to a whole number", Standing: "own"})
	if math.Abs(right-507) < 100 {
		t.Errorf("%v US gallons is the page's slip", right)
	}
	check.That(t, capacity(t, "usa-by-flow", House{Daily: 2000 * gallon})/gallon, check.Published{Source: "septic-page", At: "2,000 US gallons a day, 1,125 + 0.75 Q", Value: "2625", Unit: "US-gallon", Standing: "own"})
	right = Retention(150, 120)
	check.That(t, right, check.Published{Source: "septic-page", At: "150 people at 120 L; the page prints 1,800", Value: "18000", Unit: "L", Standing: "own"})
	if right == 1800 {
		t.Errorf("%v L is the page's slip", right)
	}
	cubic := (Retention(75, 120) + SludgeVolume(75, 30, 1, Hot)/SludgeFactor(1, Hot)) / 1000
	check.That(t, cubic, check.Published{Source: "septic-page", At: "9,000 L of a day and 2,250 L of sludge; the page prints 12", Value: "11.25", Unit: "m3", Standing: "own"})
	if math.Abs(cubic-12) < 0.1 {
		t.Errorf("%v m3 is the page's slip", cubic)
	}
}

func TestSludge(t *testing.T) {
	rate := func(name string) float64 {
		for _, r := range SludgeRates() {
			if r.Name == name {
				return r.Rate
			}
		}
		t.Fatalf("no rate %s", name)
		return 0
	}
	check.That(t, rate("gray-1995-low"), check.Published{Source: "gray1995", At: "abstract, 0.178 L a day after 60 months, a year", Value: "64.9", Unit: "L/person/year", Within: 0.2, Why: "the day's figure is printed to 0.001 L, 0.2 L a year either way"})
	check.That(t, rate("gray-1995-high"), check.Published{Source: "gray1995", At: "abstract, 0.254 L a day over the first 6 months, a year", Value: "92.7", Unit: "L/person/year", Within: 0.2, Why: "the day's figure is printed to 0.001 L, 0.2 L a year either way"})
	check.That(t, rate("australia-black"), check.Published{Source: "australia-sludge", At: "toilets only", Value: "50", Unit: "L/person/year", Standing: "remembered"})
	check.That(t, rate("planning-high")/1000, check.Published{Source: "sludge-planning", At: "upper end", Value: "0.08", Unit: "m3/person/year", Standing: "remembered"})
	check.That(t, SludgeFactor(4, Cold), check.Published{Source: "franceys", At: "below 10 degC, 4 years", Value: "1.15", Unit: "", Standing: "remembered"})
	check.That(t, SludgeVolume(8, 40, 2, Mild), check.Published{Source: "franceys", At: "B of 8 people, 2 years, above 10 degC, with sullage", Value: "736", Unit: "L", Standing: "own"})
}

func TestPercolation(t *testing.T) {
	check.That(t, PercolationRate(2700, 150), check.Published{Source: "bs6297", At: "2,700 s for 150 mm", Value: "18", Unit: "s/mm"})
	check.That(t, MinutesPerInch(18), check.Published{Source: "bs6297", At: "18 s/mm in the American unit", Value: "7.62", Unit: "min/inch", Standing: "own"})
	check.That(t, 1/MinutesPerInch(1), check.Published{Source: "bs6297", At: "1 min/inch in s/mm, by definition", Value: "2.3622", Unit: "s/mm", Standing: "own"})
	for rate, want := range map[float64]string{11.9: "n", 12: "d", 14.9: "d", 15: "y", 100: "y", 100.1: "n"} {
		if got := Usable(rate); got[:1] != want {
			t.Errorf("%g s/mm: %q, want %s", rate, got, want)
		}
	}
}
