package report

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"suffice/hourly"
	"suffice/stove"
	"suffice/warmth"
)

// TestExpectedWarmth lives the rooms of the demo house and holds docs/expected-warmth.md to what they did. Its ranges were committed
// before the first run and are never moved; every miss needs its explanation.
func TestExpectedWarmth(t *testing.T) {
	const path = "../docs/expected-warmth.md"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	got := warmthFigures(t)
	lines := strings.Split(string(text), "\n")
	seen, missed := 0, 0
	for i, line := range lines {
		cells := strings.Split(line, "|")
		if len(cells) != 9 {
			continue
		}
		key := strings.TrimSpace(cells[1])
		low, err := strconv.ParseFloat(strings.TrimSpace(cells[3]), 64)
		if err != nil {
			continue
		}
		high, _ := strconv.ParseFloat(strings.TrimSpace(cells[4]), 64)
		value, known := got[key]
		if !known {
			t.Errorf("%s: no figure of that name was got", key)
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
	if seen != 15 {
		t.Errorf("%d figures were expected, want the 15 of the page", seen)
	}
	now := strings.Join(lines, "\n")
	if *update {
		if err := os.WriteFile(path, []byte(now), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if now != string(text) {
		t.Errorf("%s is stale: go test ./report -run ExpectedWarmth -update", path)
	}
}

// season adds up a room's air over chosen months.
type season struct{ sum, out, lost, hours, days float64 }

func (s *season) mean() float64 { return s.sum / s.hours }

// warmthFigures gives what the page asks, by its words.
func warmthFigures(t *testing.T) map[string]float64 {
	t.Helper()
	// The house of the expectation had no planter, no stove and no section yet.
	told := lived(t, "../examples/earth-house.yaml").Run
	bare, rooms := *told.House, *told.House.Rooms
	bare.Drains, bare.Garden, bare.Rooms = nil, nil, &rooms
	rooms.Stoves = make([]*stove.Stove, len(rooms.Stoves))
	rooms.Design, _ = rooms.Design.Without(warmth.Section)
	r, err := hourly.Prepare(&bare, told.Weather)
	if err != nil {
		t.Fatal(err)
	}
	var winter, summer, autumn [3]season
	dusk := [3]float64{}
	account, err := r.Account(r.Start())
	if err != nil {
		t.Fatal(err)
	}
	state := r.Start()
	span := hourly.Span{Last: r.Hours(), See: func(i int, row *hourly.Row) {
		month := r.Weather.Days[i/24].Month
		for k := range winter {
			air := float64(row.Rooms.Rooms[k].Mean)
			var s *season
			switch month {
			case 12, 1, 2:
				s = &winter[k]
			case 6, 7, 8:
				s = &summer[k]
			case 10, 11:
				s = &autumn[k]
				if i%24 == 17 {
					dusk[k] = air
				}
				if i%24 == 6 && dusk[k] != 0 {
					s.lost += dusk[k] - air
					s.days++
				}
			default:
				continue
			}
			s.sum += air
			s.out += r.Weather.Temperature[i]
			s.hours++
		}
	}}
	if err := r.Live(&state, &span); err != nil {
		t.Fatal(err)
	}
	years := float64(account.Power.Years)
	got := map[string]float64{}
	for k, room := range account.Rooms {
		got[room.Name+", mean"] = float64(room.Mean)
		got[room.Name+", warmest hour"] = float64(room.Warmest)
		got[room.Name+", coldest hour"] = float64(room.Coldest)
		got[room.Name+", December to February"] = winter[k].mean()
		got[room.Name+", June to August"] = summer[k].mean()
		got[room.Name+", October and November over outside"] = (autumn[k].sum - autumn[k].out) / autumn[k].hours
		got[room.Name+", lost from sunset to dawn, October and November"] = autumn[k].lost / math.Max(1, autumn[k].days)
		got[room.Name+", hours too cold a year"] = room.Comfort.Cold / years
		got[room.Name+", hours too hot a year"] = room.Comfort.Hot / years
	}
	return got
}
