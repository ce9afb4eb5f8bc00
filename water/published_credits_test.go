package water

import (
	"testing"

	"suffice/internal/check"
)

// credited gives what a stage is credited with, least and most.
func credited(t *testing.T, name string) (low, high Credit) {
	t.Helper()
	b, err := BarrierNamed(name)
	if err != nil {
		t.Fatal(err)
	}
	return b.Low, b.High
}

// Every range of the table of large works as transcribed; where it has a dash nothing is compared.
func TestRangesOfLargeBarriers(t *testing.T) {
	low, high := credited(t, "clarification")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, conventional clarification, bacteria, least", Value: "0.2", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, conventional clarification, bacteria, most", Value: "2", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, conventional clarification, viruses, least", Value: "0.1", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, conventional clarification, viruses, most", Value: "3.4", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, conventional clarification, protozoa, least", Value: "1", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, conventional clarification, protozoa, most", Value: "2", Unit: "log10"})
	low, high = credited(t, "granular")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, granular high-rate filtration, bacteria, least", Value: "0.2", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, granular high-rate filtration, bacteria, most", Value: "4.4", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, granular high-rate filtration, viruses, least", Value: "0", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, granular high-rate filtration, viruses, most", Value: "3.5", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, granular high-rate filtration, protozoa, least", Value: "0.4", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, granular high-rate filtration, protozoa, most", Value: "3.3", Unit: "log10"})
	low, high = credited(t, "precoat")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, precoat filtration, bacteria, least", Value: "0.2", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, precoat filtration, bacteria, most", Value: "2.3", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, precoat filtration, viruses, least", Value: "1", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, precoat filtration, viruses, most", Value: "1.7", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, precoat filtration, protozoa, least", Value: "3", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, precoat filtration, protozoa, most", Value: "6.7", Unit: "log10"})
	low, high = credited(t, "slow-sand")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, slow sand filtration, bacteria, least", Value: "2", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, slow sand filtration, bacteria, most", Value: "6", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, slow sand filtration, viruses, least", Value: "0.25", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, slow sand filtration, viruses, most", Value: "4", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, slow sand filtration, protozoa, least", Value: "0.3", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, slow sand filtration, protozoa, most", Value: "5", Unit: "log10"})
	low, high = credited(t, "roughing")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, roughing filter, bacteria, least", Value: "0.2", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, roughing filter, bacteria, most", Value: "2.3", Unit: "log10"})
	low, high = credited(t, "storage")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, storage reservoir, bacteria, least", Value: "0.7", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, storage reservoir, bacteria, most", Value: "2.2", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, storage reservoir, protozoa, least", Value: "1.4", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, storage reservoir, protozoa, most", Value: "2.3", Unit: "log10"})
	low, high = credited(t, "bank")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, bank filtration, bacteria, least", Value: "2", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.7, bank filtration, bacteria, most", Value: "6", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, bank filtration, viruses, least", Value: "2.1", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.7, bank filtration, viruses, most", Value: "8.3", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, bank filtration, protozoa, least", Value: "1", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.7, bank filtration, protozoa, most", Value: "2", Unit: "log10"})
}

// The ranges of other reviews as transcribed.
func TestRangesOfMembranesLightAndReeds(t *testing.T) {
	low, high := credited(t, "wetland")
	check.That(t, low[Bacteria], check.Published{Source: "nrmmc-2006", At: "subsurface wetland, bacteria, least", Value: "0.5", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "nrmmc-2006", At: "subsurface wetland, bacteria, most", Value: "3", Unit: "log10"})
	low, high = credited(t, "uv-20")
	check.That(t, low[Bacteria], check.Published{Source: "hijnen-2006", At: "20 mJ/cm2, bacteria, least", Value: "4.6", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "hijnen-2006", At: "20 mJ/cm2, bacteria, most", Value: "6", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "hijnen-2006", At: "20 mJ/cm2, viruses, least", Value: "2", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "hijnen-2006", At: "20 mJ/cm2, viruses, most", Value: "3.1", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "hijnen-2006", At: "20 mJ/cm2, protozoa, least", Value: "2.4", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "hijnen-2006", At: "20 mJ/cm2, protozoa, most", Value: "3", Unit: "log10"})
	low, high = credited(t, "uv-40")
	check.That(t, low[Bacteria], check.Published{Source: "hijnen-2006", At: "40 mJ/cm2, bacteria, least", Value: "4.6", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "hijnen-2006", At: "40 mJ/cm2, bacteria, most", Value: "6", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "hijnen-2006", At: "40 mJ/cm2, viruses, least", Value: "4.1", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "hijnen-2006", At: "40 mJ/cm2, viruses, most", Value: "5.9", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "hijnen-2006", At: "40 mJ/cm2, protozoa, least", Value: "2.5", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "hijnen-2006", At: "40 mJ/cm2, protozoa, most", Value: "3", Unit: "log10"})
	low, high = credited(t, "microfiltration")
	check.That(t, low[Bacteria], check.Published{Source: "microrisk", At: "table 4.11, microfiltration, bacteria, least", Value: "0", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "microrisk", At: "table 4.11, microfiltration, bacteria, most", Value: "4.3", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "microrisk", At: "table 4.11, microfiltration, viruses, least", Value: "0", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "microrisk", At: "table 4.11, microfiltration, viruses, most", Value: "3.7", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "microrisk", At: "table 4.11, microfiltration, protozoa, least", Value: "2.3", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "microrisk", At: "table 4.11, microfiltration, protozoa, most", Value: "6", Unit: "log10"})
	low, high = credited(t, "ultrafiltration")
	check.That(t, low[Bacteria], check.Published{Source: "microrisk", At: "ultrafiltration, bacteria, least", Value: "5.5", Unit: "log10"})
	check.That(t, high[Bacteria], check.Published{Source: "microrisk", At: "ultrafiltration, bacteria, most", Value: "6", Unit: "log10"})
	check.That(t, low[Viruses], check.Published{Source: "microrisk", At: "ultrafiltration, viruses, least", Value: "2.69", Unit: "log10"})
	check.That(t, high[Viruses], check.Published{Source: "microrisk", At: "ultrafiltration, viruses, most", Value: "5.14", Unit: "log10"})
	check.That(t, low[Protozoa], check.Published{Source: "microrisk", At: "ultrafiltration, protozoa, least", Value: "5.3", Unit: "log10"})
	check.That(t, high[Protozoa], check.Published{Source: "microrisk", At: "ultrafiltration, protozoa, most", Value: "6.5", Unit: "log10"})
}

// Table 7.8 as remembered. Where it prints a most with a plus, the figure without it.
func TestRangesInTheHousehold(t *testing.T) {
	low, high := credited(t, "boiling")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, boiling, bacteria, least", Value: "6", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, boiling, bacteria, most", Value: "9", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, boiling, viruses, least", Value: "6", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, boiling, viruses, most", Value: "9", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, boiling, protozoa, least", Value: "6", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, boiling, protozoa, most", Value: "9", Unit: "log10", Standing: "remembered"})
	low, high = credited(t, "chlorine")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, free chlorine, bacteria, least", Value: "3", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, free chlorine, bacteria, most", Value: "6", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, free chlorine, viruses, least", Value: "3", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, free chlorine, viruses, most", Value: "6", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, free chlorine, protozoa, least", Value: "3", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, free chlorine, protozoa, most", Value: "5", Unit: "log10", Standing: "remembered"})
	low, high = credited(t, "ceramic")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, ceramic, bacteria, least", Value: "2", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, ceramic, bacteria, most", Value: "6", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, ceramic, viruses, least", Value: "1", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, ceramic, viruses, most", Value: "4", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, ceramic, protozoa, least", Value: "4", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, ceramic, protozoa, most", Value: "6", Unit: "log10", Standing: "remembered"})
	low, high = credited(t, "household-sand")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, household slow sand, bacteria, least", Value: "1", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, household slow sand, bacteria, most", Value: "3", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, household slow sand, viruses, least", Value: "0.5", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, household slow sand, viruses, most", Value: "2", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, household slow sand, protozoa, least", Value: "2", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, household slow sand, protozoa, most", Value: "4", Unit: "log10", Standing: "remembered"})
	low, high = credited(t, "solar")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, solar, bacteria, least", Value: "3", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, solar, bacteria, most", Value: "5", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, solar, viruses, least", Value: "2", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, solar, viruses, most", Value: "4", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, solar, protozoa, least", Value: "2", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, solar, protozoa, most", Value: "4", Unit: "log10", Standing: "remembered"})
	low, high = credited(t, "household-uv")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, ultraviolet, bacteria, least", Value: "3", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, ultraviolet, bacteria, most", Value: "5", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, ultraviolet, viruses, least", Value: "2", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, ultraviolet, viruses, most", Value: "5", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, ultraviolet, protozoa, least", Value: "3", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, ultraviolet, protozoa, most", Value: "5", Unit: "log10", Standing: "remembered"})
	low, high = credited(t, "fabric")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, fabric, bacteria, least", Value: "1", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, fabric, bacteria, most", Value: "2", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, fabric, viruses, least", Value: "0", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, fabric, viruses, most", Value: "0", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, fabric, protozoa, least", Value: "0", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, fabric, protozoa, most", Value: "1", Unit: "log10", Standing: "remembered"})
	low, high = credited(t, "settling")
	check.That(t, low[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, settling, bacteria, least", Value: "0", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Bacteria], check.Published{Source: "who-gdwq-4", At: "table 7.8, settling, bacteria, most", Value: "0.5", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, settling, viruses, least", Value: "0", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Viruses], check.Published{Source: "who-gdwq-4", At: "table 7.8, settling, viruses, most", Value: "0.5", Unit: "log10", Standing: "remembered"})
	check.That(t, low[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, settling, protozoa, least", Value: "0", Unit: "log10", Standing: "remembered"})
	check.That(t, high[Protozoa], check.Published{Source: "who-gdwq-4", At: "table 7.8, settling, protozoa, most", Value: "1", Unit: "log10", Standing: "remembered"})
}

// The targets of a household's treatment, and that a hair less in any one group misses them.
func TestTargetsOfHouseholdTreatment(t *testing.T) {
	check.That(t, highlyProtective[Bacteria], check.Published{Source: "who-household-2011", At: "highly protective, bacteria", Value: "4", Unit: "log10", Standing: "remembered"})
	check.That(t, highlyProtective[Viruses], check.Published{Source: "who-household-2011", At: "highly protective, viruses", Value: "5", Unit: "log10", Standing: "remembered"})
	check.That(t, highlyProtective[Protozoa], check.Published{Source: "who-household-2011", At: "highly protective, protozoa", Value: "4", Unit: "log10", Standing: "remembered"})
	check.That(t, protective[Bacteria], check.Published{Source: "who-household-2011", At: "protective, bacteria", Value: "2", Unit: "log10", Standing: "remembered"})
	check.That(t, protective[Viruses], check.Published{Source: "who-household-2011", At: "protective, viruses", Value: "3", Unit: "log10", Standing: "remembered"})
	check.That(t, protective[Protozoa], check.Published{Source: "who-household-2011", At: "protective, protozoa", Value: "2", Unit: "log10", Standing: "remembered"})
	for p := range Pathogens {
		for _, c := range []struct {
			class     Credit
			at, below string
		}{
			{highlyProtective, "credits of the highly protective class", "credits of the protective class"},
			{protective, "credits of the protective class", "below the protective class"},
		} {
			if got := c.class.Reaches(); got != c.at {
				t.Errorf("%v: %q, want %q", c.class, got, c.at)
			}
			c.class[p] -= 0.01
			if got := c.class.Reaches(); got != c.below {
				t.Errorf("%v: %q, want %q", c.class, got, c.below)
			}
		}
	}
}

func TestNoColiformInAGlass(t *testing.T) {
	for _, l := range Guidelines() {
		if l.Name == "ecoli" {
			check.That(t, l.Most, check.Published{Source: "who-gdwq-4", At: "table 7.10, E. coli in any 100 mL", Value: "0", Unit: "/100mL", Standing: "remembered"})
			return
		}
	}
	t.Error("E. coli is not among what a test of water is held against")
}
