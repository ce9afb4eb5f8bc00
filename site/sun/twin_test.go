package sun

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
	"time"

	"suffice/quantity"
	"suffice/site"
)

// rows reads a table of testdata/twin without its heading.
func rows(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("testdata/twin/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[1:]
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// apart gives the angle between two directions, deg, from altitudes and azimuths in deg.
func apart(altitude1, azimuth1, altitude2, azimuth2 float64) float64 {
	across := math.Sin((altitude1 - altitude2) / 2 * degree)
	along := math.Sin((azimuth1 - azimuth2) / 2 * degree)
	return 2 * math.Asin(math.Sqrt(across*across+math.Cos(altitude1*degree)*math.Cos(altitude2*degree)*along*along)) / degree
}

// Two foreign libraries place the sun where Look does: the precise one within the 0.01 deg
// that the series promises, the rough one within the 0.40 deg by which the two disagree
// (it has no nutation and a perihelion that stands still; the worst rows are those of 1988).
func TestTwinPositions(t *testing.T) {
	var first, second float64
	for _, row := range rows(t, "positions.csv") {
		at, err := time.Parse(time.RFC3339, row[0])
		if err != nil {
			t.Fatal(err)
		}
		p := Look(site.Place{Latitude: quantity.Degrees(number(t, row[1])), Longitude: quantity.Degrees(number(t, row[2]))}, at, Sight{101.3, 10})
		ours, azimuth := float64(p.True), float64(p.Azimuth)
		first = max(first, apart(ours, azimuth, number(t, row[3]), number(t, row[4])))
		second = max(second, apart(ours, azimuth, number(t, row[5]), number(t, row[6])))
	}
	t.Logf("farthest apart: from the precise library %.4f deg, from the rough one %.3f deg", first, second)
	if first > 0.01 {
		t.Errorf("%.4f deg from the precise library, want 0.01 at most", first)
	}
	if second > 0.41 {
		t.Errorf("%.3f deg from the rough library, want 0.41 at most", second)
	}
}

// Rise and set agree with the precise library within 30 s, polar days and nights included.
func TestTwinRises(t *testing.T) {
	var worst float64
	for _, row := range rows(t, "rises.csv") {
		date, err := time.Parse(time.DateOnly, row[0])
		if err != nil {
			t.Fatal(err)
		}
		latitude, longitude := number(t, row[1]), number(t, row[2])
		p := site.Place{Latitude: quantity.Degrees(latitude), Longitude: quantity.Degrees(longitude), Clock: math.Round(longitude / 15)}
		d := DaylightOf(p, Date{int32(date.Year()), int8(date.Month()), int8(date.Day())})
		if (row[3] == "") != d.Rise.IsZero() {
			t.Errorf("%s at %g: rise %q there, %v here", row[0], latitude, row[3], d.Rise)
			continue
		}
		for i, ours := range []time.Time{d.Rise, d.Set} {
			if row[3+i] == "" {
				continue
			}
			theirs, err := time.Parse(time.RFC3339, row[3+i])
			if err != nil {
				t.Fatal(err)
			}
			worst = max(worst, math.Abs(ours.Sub(theirs).Seconds()))
		}
	}
	t.Logf("farthest apart: %.1f s", worst)
	if worst > 30 {
		t.Errorf("%.1f s apart, want 30 at most", worst)
	}
}
