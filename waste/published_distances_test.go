package waste

import (
	"testing"

	"suffice/internal/check"
)

// distance gives a row of a place's list, m.
func distance(t *testing.T, table, from, to string) float64 {
	t.Helper()
	rows, err := tableNamed(table)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		if r.From == from && r.To == to {
			return r.Least
		}
	}
	t.Fatalf("no %s to %s in %s", from, to, table)
	return 0
}

// Rows that TestDistances leaves out.
func TestDistancesOfTheCounty(t *testing.T) {
	check.That(t, distance(t, "usa-county", "tank", "well")/foot, check.Published{Source: "us-county-septic", At: "table I, tank to private well", Value: "50", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "tank", "public well")/foot, check.Published{Source: "us-county-septic", At: "table I, tank to public well", Value: "300", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "field", "public well")/foot, check.Published{Source: "us-county-septic", At: "table I, field to public well", Value: "300", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "tank", "stream")/foot, check.Published{Source: "us-county-septic", At: "table I, tank to stream or lake", Value: "50", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "field", "stream")/foot, check.Published{Source: "us-county-septic", At: "table I, field to stream or lake", Value: "50", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "tank", "ditch")/foot, check.Published{Source: "us-county-septic", At: "table I, tank to stream or open ditch that is not classified", Value: "25", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "field", "ditch")/foot, check.Published{Source: "us-county-septic", At: "table I, field to stream or open ditch that is not classified", Value: "25", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "tank", "boundary")/foot, check.Published{Source: "us-county-septic", At: "table I, tank to property line", Value: "10", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "field", "boundary")/foot, check.Published{Source: "us-county-septic", At: "table I, field to property line", Value: "10", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "field", "building")/foot, check.Published{Source: "us-county-septic", At: "table I, field to building", Value: "15", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "tank", "basement")/foot, check.Published{Source: "us-county-septic", At: "table I, tank to basement", Value: "15", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "tank", "water pipe")/foot, check.Published{Source: "us-county-septic", At: "table I, tank to water pipe under pressure", Value: "10", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "field", "water pipe")/foot, check.Published{Source: "us-county-septic", At: "table I, field to water pipe under pressure", Value: "10", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "tank", "suction pipe")/foot, check.Published{Source: "us-county-septic", At: "table I, tank to suction water pipe", Value: "50", Unit: "feet"})
	check.That(t, distance(t, "usa-county", "field", "suction pipe")/foot, check.Published{Source: "us-county-septic", At: "table I, field to suction water pipe", Value: "100", Unit: "feet"})
}

func TestDistancesOfOtherPlaces(t *testing.T) {
	check.That(t, distance(t, "england", "field", "stream"), check.Published{Source: "ad-h2", At: "field to watercourse, as quoted", Value: "10", Unit: "m"})
	check.That(t, distance(t, "england", "field", "building"), check.Published{Source: "ad-h2", At: "field to building, as quoted", Value: "15", Unit: "m"})
	check.That(t, distance(t, "india", "field", "well"), check.Published{Source: "is2470", At: "summary, water source", Value: "18", Unit: "m"})
	check.That(t, distance(t, "india", "field", "building"), check.Published{Source: "is2470", At: "summary, building", Value: "5", Unit: "m"})
	check.That(t, distance(t, "india", "field", "water table"), check.Published{Source: "is2470", At: "summary, water table", Value: "1.5", Unit: "m"})
}
