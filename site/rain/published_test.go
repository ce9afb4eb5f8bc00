package rain

import (
	"bufio"
	"compress/gzip"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
)

func halfRound(width float64) float64 {
	q, _ := Gutter{Width: quantity.Millimetres(width)}.Capacity()
	return q
}

func TestHalfRoundGutters(t *testing.T) {
	check.That(t, halfRound(75), check.Published{Source: "en12056-3", At: "5.1.2, half-round 75 mm, 0.9 QN", Value: "0.379", Unit: "L/s", Standing: "remembered"})
	check.That(t, halfRound(100), check.Published{Source: "en12056-3", At: "5.1.2, half-round 100 mm, 0.9 QN", Value: "0.778", Unit: "L/s", Standing: "remembered"})
	check.That(t, halfRound(115), check.Published{Source: "en12056-3", At: "5.1.2, half-round 115 mm, 0.9 QN", Value: "1.103", Unit: "L/s", Standing: "remembered"})
	check.That(t, halfRound(125), check.Published{Source: "en12056-3", At: "5.1.2, half-round 125 mm, 0.9 QN", Value: "1.359", Unit: "L/s", Standing: "remembered"})
	check.That(t, halfRound(150), check.Published{Source: "en12056-3", At: "5.1.2, half-round 150 mm, 0.9 QN", Value: "2.143", Unit: "L/s", Standing: "remembered"})
}

func TestTableOfGutters(t *testing.T) {
	check.That(t, halfRound(75), check.Published{Source: "approved-document-h3", At: "table 2, 75 mm", Value: "0.38", Unit: "L/s", Standing: "remembered"})
	check.That(t, halfRound(100), check.Published{Source: "approved-document-h3", At: "table 2, 100 mm", Value: "0.78", Unit: "L/s"})
	check.That(t, halfRound(115), check.Published{Source: "approved-document-h3", At: "table 2, 115 mm", Value: "1.11", Unit: "L/s", Standing: "remembered",
		Within: 0.0111, Why: "the table's flow is its rounded area times 0.021 L/s/m2: 1 %"})
	check.That(t, halfRound(125), check.Published{Source: "approved-document-h3", At: "table 2, 125 mm", Value: "1.37", Unit: "L/s", Standing: "remembered",
		Within: 0.0137, Why: "the table's flow is its rounded area times 0.021 L/s/m2: 1 %"})
	check.That(t, halfRound(150), check.Published{Source: "approved-document-h3", At: "table 2, 150 mm", Value: "2.16", Unit: "L/s", Standing: "remembered",
		Within: 0.0216, Why: "the table's flow is its rounded area times 0.021 L/s/m2: 1 %"})

	rate := Rate(DesignIntensity)
	check.That(t, rate, check.Published{Source: "approved-document-h3", At: "design rate", Value: "0.021", Unit: "L/s/m2"})
	check.That(t, halfRound(75)/rate, check.Published{Source: "approved-document-h3", At: "table 2, 75 mm, largest area", Value: "18", Unit: "m2", Standing: "remembered"})
	check.That(t, halfRound(100)/rate, check.Published{Source: "approved-document-h3", At: "table 2, 100 mm, largest area", Value: "37", Unit: "m2"})
	check.That(t, halfRound(115)/rate, check.Published{Source: "approved-document-h3", At: "table 2, 115 mm, largest area", Value: "53", Unit: "m2", Standing: "remembered"})
	check.That(t, halfRound(125)/rate, check.Published{Source: "approved-document-h3", At: "table 2, 125 mm, largest area", Value: "65", Unit: "m2", Standing: "remembered"})
	check.That(t, halfRound(150)/rate, check.Published{Source: "approved-document-h3", At: "table 2, 150 mm, largest area", Value: "103", Unit: "m2", Standing: "remembered"})
}

func TestDrivenRain(t *testing.T) {
	check.That(t, float64(EffectiveArea(1, 30)), check.Published{Source: "approved-document-h3", At: "table 1, 30 deg", Value: "1.29", Unit: "", Standing: "remembered"})
	check.That(t, float64(EffectiveArea(1, 45)), check.Published{Source: "approved-document-h3", At: "table 1, 45 deg", Value: "1.50", Unit: "", Standing: "remembered"})
	check.That(t, float64(EffectiveArea(1, 60)), check.Published{Source: "approved-document-h3", At: "table 1, 60 deg", Value: "1.87", Unit: "", Standing: "remembered"})
}

func TestLongRuns(t *testing.T) {
	at := func(ratio float64) float64 {
		f, err := RunFactor(ratio)
		if err != nil {
			t.Error(err)
		}
		return f
	}
	check.That(t, at(50), check.Published{Source: "en12056-3", At: "length factor, L/depth 50, as quoted by a supplier", Value: "1.00", Unit: ""})
	check.That(t, at(100), check.Published{Source: "en12056-3", At: "length factor, L/depth 100, as quoted by a supplier", Value: "0.93", Unit: ""})
	check.That(t, at(150), check.Published{Source: "en12056-3", At: "length factor, L/depth 150, as quoted by a supplier", Value: "0.86", Unit: ""})
	check.That(t, at(200), check.Published{Source: "en12056-3", At: "length factor, L/depth 200, as quoted by a supplier", Value: "0.80", Unit: ""})
}

func TestDownpipes(t *testing.T) {
	check.That(t, Downpipe(100, 0.33), check.Published{Source: "wyly-eaton-sheet", At: "100 mm, filling 0.33, roughness 0.25 mm", Value: "10.7114130067", Unit: "L/s"})
	check.That(t, Downpipe(100, 0.33), check.Published{Source: "en12056-3", At: "table of downpipes, 100 mm, filling 0.33", Value: "10.7", Unit: "L/s", Standing: "remembered"})
	check.That(t, Downpipe(50, 0.33), check.Published{Source: "en12056-3", At: "table of downpipes, 50 mm, filling 0.33", Value: "1.7", Unit: "L/s", Standing: "remembered"})
	check.That(t, Downpipe(75, 0.33), check.Published{Source: "en12056-3", At: "table of downpipes, 75 mm, filling 0.33", Value: "5.0", Unit: "L/s", Standing: "remembered"})
	check.That(t, Downpipe(150, 0.33), check.Published{Source: "en12056-3", At: "table of downpipes, 150 mm, filling 0.33", Value: "31.6", Unit: "L/s", Standing: "remembered"})
	check.That(t, Downpipe(100, 0.20), check.Published{Source: "en12056-3", At: "table of downpipes, 100 mm, filling 0.20", Value: "4.6", Unit: "L/s", Standing: "remembered"})
}

// record gives the daily rain of a file of testdata and the year of each day.
func record(t *testing.T, name string) (years []int, mm []float64) {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	for lines := bufio.NewScanner(z); lines.Scan(); {
		fields := strings.Split(lines.Text(), ",")
		year, err := strconv.Atoi(fields[0])
		if err != nil {
			continue // header
		}
		v, err := strconv.ParseFloat(fields[3], 64)
		if err != nil || v < 0 {
			t.Fatalf("%s: %q", name, lines.Text())
		}
		years, mm = append(years, year), append(mm, v)
	}
	return years, mm
}

const (
	crete   = "power_daily_crete_35.031N_24.834E_1984-2020_LST.csv.gz"
	angoche = "power_daily_angoche-mozambique_16.216S_39.915E_1996-2020_converted.csv.gz"
)

func TestRecords(t *testing.T) {
	years, mm := record(t, crete)
	sums := map[int]float64{}
	for i, v := range mm {
		sums[years[i]] += v
	}
	var mean float64
	for _, s := range sums {
		mean += s / float64(len(sums))
	}
	check.That(t, float64(len(sums)), check.Published{Source: "nasa-power", At: "Crete cell, years, counted apart", Value: "37", Unit: "", Standing: "twin"})
	check.That(t, mean, check.Published{Source: "nasa-power", At: "Crete cell, mean yearly rain, counted apart", Value: "494", Unit: "mm", Standing: "twin"})
	check.That(t, sums[1990], check.Published{Source: "nasa-power", At: "Crete cell, rain of 1990, counted apart", Value: "288", Unit: "mm", Standing: "twin"})
	check.That(t, sums[2003], check.Published{Source: "nasa-power", At: "Crete cell, rain of 2003, counted apart", Value: "726", Unit: "mm", Standing: "twin"})

	longest := Longest(DrySpells(mm, 1))
	check.That(t, float64(longest.Days), check.Published{Source: "nasa-power", At: "Crete cell, longest run below 1 mm/d, counted apart", Value: "172", Unit: "d", Standing: "twin"})
	if once := ReachedOnceIn(DrySpells(mm, 1), 37, 37); once != float64(longest.Days) {
		t.Errorf("the spell reached once in the record has %v days, the longest %d", once, longest.Days)
	}
	_, mm = record(t, angoche)
	check.That(t, float64(Longest(DrySpells(mm, 1)).Days), check.Published{Source: "nasa-power", At: "Angoche cell, longest run below 1 mm/d, counted apart", Value: "100", Unit: "d", Standing: "twin"})
	if r := ReachedOnceIn(nil, 5, 10); !math.IsNaN(r) {
		t.Errorf("five years say %v days for once in ten years, want not a number", r)
	}
}
