package waste

import (
	"testing"

	"suffice/internal/check"
)

// loads gives what a table lets a soil take, septic and treated effluent, mm/d.
func loads(t *testing.T, table, soil string) (septic, treated float64) {
	t.Helper()
	for _, r := range SoilRates() {
		if r.Soil == soil && r.Table == table {
			return r.Septic, r.Treated
		}
	}
	t.Fatalf("no %s in %s", soil, table)
	return 0, 0
}

// The cells of EPA's table, septic effluent before treated.
func TestEverySoilOfTheAgency(t *testing.T) {
	epa := func(soil string) (septic, treated float64) {
		septic, treated = loads(t, "epa-2002", soil)
		return septic / mmPerGallon, treated / mmPerGallon
	}
	_, treated := epa("sand")
	var septic float64
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, sand, treated", Value: "1.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("fine-sand")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, fine sand, septic effluent", Value: "0.4", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, fine sand, treated", Value: "1.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("sandy-loam-massive")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, sandy loam, massive, septic effluent", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, sandy loam, massive, treated", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("sandy-loam-weak")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, sandy loam, weak blocky, septic effluent", Value: "0.4", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, sandy loam, weak blocky, treated", Value: "0.7", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("sandy-loam-strong")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, sandy loam, moderate or strong blocky, septic effluent", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, sandy loam, moderate or strong blocky, treated", Value: "1.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("fine-sandy-loam-massive")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, fine sandy loam, massive, septic effluent", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, fine sandy loam, massive, treated", Value: "0.5", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("fine-sandy-loam-weak")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, fine sandy loam, weak blocky, septic effluent", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, fine sandy loam, weak blocky, treated", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("fine-sandy-loam-strong")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, fine sandy loam, moderate or strong blocky, septic effluent", Value: "0.4", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, fine sandy loam, moderate or strong blocky, treated", Value: "0.8", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("loam-massive")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, loam, massive, septic effluent", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, loam, massive, treated", Value: "0.5", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("loam-weak")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, loam, weak blocky, septic effluent", Value: "0.4", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, loam, weak blocky, treated", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("loam-strong")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, loam, moderate or strong blocky, septic effluent", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, loam, moderate or strong blocky, treated", Value: "0.8", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("silt-loam-massive")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, silt loam, massive, septic effluent", Value: "0.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, silt loam, massive, treated", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("silt-loam-weak")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, silt loam, weak blocky, septic effluent", Value: "0.4", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, silt loam, weak blocky, treated", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("silt-loam-strong")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, silt loam, moderate or strong blocky, septic effluent", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, silt loam, moderate or strong blocky, treated", Value: "0.8", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("clay-loam-massive")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, clay loam, massive, septic effluent", Value: "0.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, clay loam, massive, treated", Value: "0.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("clay-loam-weak")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, clay loam, weak blocky, septic effluent", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, clay loam, weak blocky, treated", Value: "0.3", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("clay-loam-strong")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, clay loam, moderate or strong blocky, septic effluent", Value: "0.4", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, clay loam, moderate or strong blocky, treated", Value: "0.6", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("clay-massive")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, clay, massive, septic effluent", Value: "0.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, clay, massive, treated", Value: "0.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, treated = epa("clay-weak")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, clay, weak blocky, septic effluent", Value: "0.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "epa2002", At: "table 4-3, clay, weak blocky, treated", Value: "0.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	septic, _ = epa("clay-strong")
	check.That(t, septic, check.Published{Source: "epa2002", At: "table 4-3, clay, moderate or strong blocky, septic effluent", Value: "0.2", Unit: "US-gallon/feet2/d", Standing: "remembered"})
}

// The careful figure for septic effluent and the figure for treated effluent.
func TestEverySoilOfTheStandard(t *testing.T) {
	septic, treated := loads(t, "as-nzs-1547-2012", "loam-strong")
	check.That(t, septic, check.Published{Source: "asnzs1547", At: "table L1, loam, structured, primary effluent, careful", Value: "15", Unit: "mm/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "asnzs1547", At: "table L1, loam, structured, secondary effluent", Value: "50", Unit: "mm/d", Standing: "remembered"})
	septic, treated = loads(t, "as-nzs-1547-2012", "loam-weak")
	check.That(t, septic, check.Published{Source: "asnzs1547", At: "table L1, loam, weakly structured, primary effluent, careful", Value: "10", Unit: "mm/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "asnzs1547", At: "table L1, loam, weakly structured, secondary effluent", Value: "30", Unit: "mm/d", Standing: "remembered"})
	septic, treated = loads(t, "as-nzs-1547-2012", "clay-loam-strong")
	check.That(t, septic, check.Published{Source: "asnzs1547", At: "table L1, clay loam, structured, primary effluent, careful", Value: "10", Unit: "mm/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "asnzs1547", At: "table L1, clay loam, structured, secondary effluent", Value: "30", Unit: "mm/d", Standing: "remembered"})
	septic, treated = loads(t, "as-nzs-1547-2012", "clay-loam-weak")
	check.That(t, septic, check.Published{Source: "asnzs1547", At: "table L1, clay loam, weakly structured, primary effluent, careful", Value: "6", Unit: "mm/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "asnzs1547", At: "table L1, clay loam, weakly structured, secondary effluent", Value: "20", Unit: "mm/d", Standing: "remembered"})
	septic, treated = loads(t, "as-nzs-1547-2012", "clay-loam-massive")
	check.That(t, septic, check.Published{Source: "asnzs1547", At: "table L1, clay loam, massive, primary effluent, careful", Value: "4", Unit: "mm/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "asnzs1547", At: "table L1, clay loam, massive, secondary effluent", Value: "10", Unit: "mm/d", Standing: "remembered"})
	septic, treated = loads(t, "as-nzs-1547-2012", "clay-strong")
	check.That(t, septic, check.Published{Source: "asnzs1547", At: "table L1, light clay, strongly structured, primary effluent, careful", Value: "5", Unit: "mm/d", Standing: "remembered"})
	check.That(t, treated, check.Published{Source: "asnzs1547", At: "table L1, light clay, strongly structured, secondary effluent", Value: "12", Unit: "mm/d", Standing: "remembered"})
}

func TestFiveSoilsOfThePlumbingCode(t *testing.T) {
	soils := PlumbingSoils()
	check.That(t, soils[0].Area(100*gallon)/squareFoot, check.Published{Source: "upc-septic", At: "coarse sand or gravel, for 100 US gallons of tank", Value: "20", Unit: "feet2", Standing: "remembered"})
	check.That(t, soils[0].MostPerDay, check.Published{Source: "upc-septic", At: "coarse sand or gravel, most a square foot takes", Value: "5.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, soils[1].Area(100*gallon)/squareFoot, check.Published{Source: "upc-septic", At: "fine sand, for 100 US gallons of tank", Value: "25", Unit: "feet2", Standing: "remembered"})
	check.That(t, soils[1].MostPerDay, check.Published{Source: "upc-septic", At: "fine sand, most a square foot takes", Value: "4.0", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, soils[2].Area(100*gallon)/squareFoot, check.Published{Source: "upc-septic", At: "sandy loam or sandy clay, for 100 US gallons of tank", Value: "40", Unit: "feet2", Standing: "remembered"})
	check.That(t, soils[2].MostPerDay, check.Published{Source: "upc-septic", At: "sandy loam or sandy clay, most a square foot takes", Value: "2.5", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, soils[3].Area(100*gallon)/squareFoot, check.Published{Source: "upc-septic", At: "clay with much sand or gravel, for 100 US gallons of tank", Value: "90", Unit: "feet2", Standing: "remembered"})
	check.That(t, soils[3].MostPerDay, check.Published{Source: "upc-septic", At: "clay with much sand or gravel, most a square foot takes", Value: "1.1", Unit: "US-gallon/feet2/d", Standing: "remembered"})
	check.That(t, soils[4].Area(100*gallon)/squareFoot, check.Published{Source: "upc-septic", At: "clay with little sand or gravel, for 100 US gallons of tank", Value: "120", Unit: "feet2", Standing: "remembered"})
	check.That(t, soils[4].MostPerDay, check.Published{Source: "upc-septic", At: "clay with little sand or gravel, most a square foot takes", Value: "0.8", Unit: "US-gallon/feet2/d", Standing: "remembered"})
}
