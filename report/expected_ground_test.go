package report

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"suffice/hourly"
	"suffice/warmth"
	"suffice/warmth/ground"
)

const groundPage = "../docs/expected-ground.md"

// TestExpectedGround lives the demo house told by layers with and without its sections of earth, and holds docs/expected-ground.md to what it did. Its ranges
// were committed before the first run and are never moved; every miss needs its explanation.
func TestExpectedGround(t *testing.T) {
	text, err := os.ReadFile(groundPage)
	if err != nil {
		t.Fatal(err)
	}
	got := groundFigures(t)
	lines := strings.Split(string(text), "\n")
	seen, missed := 0, 0
	for i, line := range lines {
		cells := strings.Split(line, "|")
		if len(cells) != 9 || strings.HasPrefix(line, "|---") || strings.TrimSpace(cells[1]) == "figure" {
			continue
		}
		key := strings.TrimSpace(cells[1])
		low, lowErr := strconv.ParseFloat(strings.TrimSpace(cells[3]), 64)
		high, highErr := strconv.ParseFloat(strings.TrimSpace(cells[4]), 64)
		value, known := got[key]
		if !known || lowErr != nil || highErr != nil {
			t.Errorf("%s: no figure of that name was got, or it has no range", key)
			continue
		}
		seen++
		if value < low || value > high {
			missed++
			if strings.TrimSpace(cells[7]) == "" {
				t.Errorf("%s: got %.5g, expected %g to %g, and the miss is not explained", key, value, low, high)
			}
		}
		cells[6] = " " + figure(value) + " "
		lines[i] = strings.Join(cells, "|")
	}
	t.Logf("%d of %d figures fell outside what was expected", missed, seen)
	if seen != 10 {
		t.Errorf("%d figures were expected, want the 10 of the page", seen)
	}
	now := strings.Join(lines, "\n")
	if *update {
		if err := os.WriteFile(groundPage, []byte(now), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if now != string(text) {
		t.Errorf("%s is stale: go test ./report -run ExpectedGround -update", groundPage)
	}
}

// groundFigures gives what the page asks, by its words.
func groundFigures(t *testing.T) map[string]float64 {
	t.Helper()
	section := lived(t, "../examples/earth-house.yaml").Run
	plain, taken, err := section.Without(warmth.Section)
	if err != nil || taken != 2 {
		t.Fatalf("sections taken from %d rooms, want 2: %v", taken, err)
	}
	got := map[string]float64{}
	s, p := groundLife(t, section), groundLife(t, plain)
	for key, at := range s {
		if base, over := strings.CutSuffix(key, ", over"); over {
			got[base+", section over plain"] = at - p[key]
		} else {
			got[key+", section"], got[key+", plain"] = at, p[key]
		}
	}
	face, err := section.GroundFace(ground.Grass())
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range face {
		got["ground's face under dry grass over the air, mean"] += (v - section.Weather.Temperature[i]) / float64(len(face))
	}
	return got
}

// groundLife gives the figures of one of the two lives; those that end in "over" are told as differences.
func groundLife(t *testing.T, r *hourly.Run) map[string]float64 {
	t.Helper()
	account, err := r.Account(r.Start())
	if err != nil {
		t.Fatal(err)
	}
	var winter, summer season
	state := r.Start()
	span := hourly.Span{Last: r.Hours(), See: func(i int, row *hourly.Row) {
		s := &winter
		switch r.Weather.Days[i/24].Month {
		case 12, 1, 2:
		case 6, 7, 8:
			s = &summer
		default:
			return
		}
		s.sum += float64(row.Rooms.Rooms[0].Mean)
		s.hours++
	}}
	if err := r.Live(&state, &span); err != nil {
		t.Fatal(err)
	}
	years := float64(account.Power.Years)
	living, bedrooms := &account.Rooms[0], &account.Rooms[1]
	earth := 0.0
	for _, h := range living.Heats {
		if h.Way == warmth.ThroughWall && h.Faces == warmth.Earth {
			earth -= float64(h.Out) / 1000 / years
		}
	}
	return map[string]float64{
		"living room, earth": earth, "stove, wood": float64(living.Stove.Wood) / years,
		"living room, mean, over": float64(living.Mean), "bedrooms, mean, over": float64(bedrooms.Mean),
		"living room, December to February, over": winter.mean(), "living room, June to August, over": summer.mean(),
		"living room, warmest hour, over": float64(living.Warmest),
	}
}
