package people

import (
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site/weather"
)

func table(t *testing.T, source, at string) EndUses {
	t.Helper()
	for _, e := range Tables() {
		if e.Source == source && e.At == at {
			return e
		}
	}
	t.Fatalf("no table %s %s", source, at)
	return EndUses{}
}

func TestTablesAddUp(t *testing.T) {
	household := table(t, "residential-end-uses-2016", "household, indoor")
	check.That(t, household.Sum(), check.Published{Source: "residential-end-uses-2016", At: "household end uses, sum of the printed parts", Value: "138", Unit: "US-gallon/d",
		Within: 1, Why: "the printed parts are rounded and sum to 137"})
	perPerson := table(t, "residential-end-uses-2016", "per person, indoor")
	check.That(t, perPerson.Sum(), check.Published{Source: "residential-end-uses-2016", At: "per person, sum", Value: "58.6", Unit: "US-gallon/person/d", Standing: "remembered"})
	check.That(t, perPerson.Sum()*3.785411784, check.Published{Source: "residential-end-uses-2016", At: "per person, in litres", Value: "222", Unit: "L/person/d", Standing: "remembered"})
	older := table(t, "residential-end-uses-1999", "per person, indoor")
	check.That(t, older.Sum(), check.Published{Source: "residential-end-uses-1999", At: "per person, sum", Value: "69.3", Unit: "US-gallon/person/d"})
	basic := table(t, "gleick-basic-need", "basic requirement")
	check.That(t, basic.Sum(), check.Published{Source: "gleick-basic-need", At: "basic water requirement", Value: "50", Unit: "L/person/d", Standing: "remembered"})
}

func TestShareOfTheDay(t *testing.T) {
	h := table(t, "residential-end-uses-2016", "household, indoor")
	check.That(t, h.Share("toilet"), check.Published{Source: "residential-end-uses-2016", At: "toilet share", Value: "0.24", Unit: "fraction"})
	check.That(t, h.Share("shower"), check.Published{Source: "residential-end-uses-2016", At: "shower share", Value: "0.20", Unit: "fraction"})
	check.That(t, h.Share("washer"), check.Published{Source: "residential-end-uses-2016", At: "washer share", Value: "0.16", Unit: "fraction"})
	check.That(t, h.Share("leaks"), check.Published{Source: "residential-end-uses-2016", At: "leak share", Value: "0.13", Unit: "fraction"})
	check.That(t, h.Share("bath"), check.Published{Source: "residential-end-uses-2016", At: "bath share", Value: "0.03", Unit: "fraction"})
	check.That(t, h.Share("shower", "bath", "faucet", "washer"), check.Published{Source: "residential-end-uses-2016", At: "greywater with faucets, 80 of 138", Value: "0.58", Unit: "fraction", Standing: "own",
		Within: 0.01, Why: "the printed parts sum to 137 and the printed total is 138"})
	check.That(t, h.Share("shower", "bath", "washer"), check.Published{Source: "residential-end-uses-2016", At: "greywater without faucets", Value: "0.38", Unit: "fraction", Standing: "own",
		Within: 0.01, Why: "the printed parts sum to 137 and the printed total is 138"})
}

// month gives 30 days in a row.
func month() []weather.Day {
	days := make([]weather.Day, 30)
	for i := range days {
		days[i] = weather.Day{Year: 2021, Month: 6, Date: int8(i + 1), DayOfYear: int16(152 + i), Weekday: int8((2 + i) % 7)}
	}
	return days
}

// The household's hours add up to the published monthly amounts.
func TestMonthOfHours(t *testing.T) {
	free := Household{Residents: 8, Uses: []Use{{Name: "all", PerPerson: 25, Hours: [24]float64{6: 1, 7: 2, 18: 3}}}}
	check.That(t, total(t, &free, month()), check.Published{Source: "za-free-basic-water", At: "free basic water, 25 L/person/d, 8 people, 30 days", Value: "6000", Unit: "L"})

	basic := Household{Residents: 1}
	for _, u := range table(t, "gleick-basic-need", "basic requirement").Uses {
		basic.Uses = append(basic.Uses, Use{Name: u.Name, PerPerson: quantity.Litres(u.Amount)})
	}
	check.That(t, total(t, &basic, month())/30, check.Published{Source: "gleick-basic-need", At: "basic water requirement, as hours of a household", Value: "50", Unit: "L/person/d", Standing: "remembered"})
}

func total(t *testing.T, h *Household, days []weather.Day) float64 {
	t.Helper()
	d, err := Prepare(h, days)
	if err != nil {
		t.Fatal(err)
	}
	var all float64
	for day := range days {
		for hour := range 24 {
			for _, l := range d.At(day, hour).Litres {
				all += float64(l)
			}
		}
	}
	return all
}
