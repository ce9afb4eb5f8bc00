package hourly

import (
	"math"
	"os"
	"strings"
	"testing"

	"suffice/house"
	"suffice/internal/check"
	"suffice/site/weather"
	"suffice/warmth"
	"suffice/warmth/comfort"
)

// roomed lives the house with rooms through so many days of its record, its file changed by pairs of old and new text.
func roomed(t testing.TB, days int, change ...string) *Run {
	t.Helper()
	text, err := os.ReadFile("../examples/earth-house.yaml")
	if err != nil {
		t.Fatal(err)
	}
	f, err := house.Read("earth-house.yaml", []byte(strings.NewReplacer(change...).Replace(string(text))))
	if err != nil {
		t.Fatal(err)
	}
	h, err := house.Compose(f)
	if err != nil {
		t.Fatal(err)
	}
	w, _, _, err := h.Weather.Hours(h.Place)
	if err != nil {
		t.Fatal(err)
	}
	r, err := Prepare(h, short(w, days))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// short gives the first days of a record.
func short(w *weather.Hours, days int) *weather.Hours {
	cut := func(column []float64) []float64 { return column[:min(24*days, len(column))] }
	return &weather.Hours{Place: w.Place, Days: w.Days[:days], Global: cut(w.Global), Diffuse: cut(w.Diffuse), Beam: cut(w.Beam),
		Temperature: cut(w.Temperature), Humidity: cut(w.Humidity), Wind: cut(w.Wind), Rain: cut(w.Rain), Notes: w.Notes}
}

// What is told of rooms by seasons, days and weeks is what the rows say, counted here a second time.
func TestRoomsAreCountedAsTheyLived(t *testing.T) {
	const days = 400
	r := roomed(t, days)
	a, err := r.Account(r.Start())
	if err != nil {
		t.Fatal(err)
	}
	felt := make([][warmth.MostRooms]float64, 24*days)
	wet := make([]float64, len(a.Rooms))
	state := r.Start()
	span := Span{Last: r.Hours(), See: func(i int, row *Row) {
		for k := range a.Rooms {
			felt[i][k] = float64(row.Rooms.Rooms[k].Operative)
			wet[k] += float64(row.Rooms.Rooms[k].Condensed)
		}
	}}
	if err := r.Live(&state, &span); err != nil {
		t.Fatal(err)
	}
	for k := range a.Rooms {
		y := &a.Rooms[k]
		var all comfort.Count
		for _, s := range y.Seasons {
			all = all.Plus(s)
		}
		check.Balance(t, all.ColdDegree+all.HotDegree, y.Comfort.ColdDegree+y.Comfort.HotDegree, "degree-hours of all seasons")
		if all.Hours != 24*days || all.Cold != y.Comfort.Cold || all.Hot != y.Comfort.Hot {
			t.Errorf("%s: %+v in seasons, %+v in all", y.Name, all, y.Comfort)
		}
		check.Balance(t, float64(y.Air.Condensed), wet[k], "kg condensed")
		for d, was := range y.Days {
			low, high, sum := math.Inf(1), math.Inf(-1), 0.0
			for h := 24 * d; h < 24*d+24; h++ {
				low, high, sum = min(low, felt[h][k]), max(high, felt[h][k]), sum+felt[h][k]
			}
			if was != (RoomDay{float32(low), float32(sum / 24), float32(high)}) {
				t.Fatalf("%s, day %d: %+v, want %v, %v, %v", y.Name, d, was, low, sum/24, high)
			}
		}
	}
	moved := 0.0
	for k := range a.Rooms {
		for _, h := range a.Rooms[k].Heats {
			moved += math.Abs(float64(h.Out)) / 1000
		}
		moved += math.Abs(float64(a.Rooms[k].Vented)) / 1000
	}
	if left := math.Abs(a.Residuals.RoomsKilowatt); moved == 0 || left > 1e-9*moved {
		t.Errorf("%g kWh of %g kWh that moved through the rooms are not explained", left, moved)
	}
	holdWeek(t, "coldest", &a.Coldest, felt, 1)
	holdWeek(t, "hottest", &a.Hottest, felt, -1)
}

// holdWeek looks for the worst week in the two rooms that are lived in.
func holdWeek(t *testing.T, what string, w *Week, felt [][warmth.MostRooms]float64, sign float64) {
	t.Helper()
	least, first, room := math.Inf(1), 0, 0
	for d := 0; 24*d+WeekHours <= len(felt); d++ {
		for k := range 2 {
			sum := 0.0
			for h := 24 * d; h < 24*d+WeekHours; h++ {
				sum += felt[h][k]
			}
			if mean := sign * sum / WeekHours; mean < least {
				least, first, room = mean, d, k
			}
		}
	}
	// Days are kept in seven digits: 1e-5 degC is more than a week's mean can lose by it.
	if !w.Found || w.First != first || w.Room != room || math.Abs(float64(w.Mean)-sign*least) > 1e-5 {
		t.Errorf("%s week: day %d of room %d at %v degC, want day %d of room %d at %v", what, w.First, w.Room, float64(w.Mean), first, room, sign*least)
	}
	for h := range WeekHours {
		for k := range 3 {
			if w.Felt[h][k] != float32(felt[24*first+h][k]) {
				t.Fatalf("%s week, hour %d, room %d: %v degC, lived %v", what, h, k, w.Felt[h][k], felt[24*first+h][k])
			}
		}
	}
}

// A room whose day is that outside, a third as large and five hours later, is damped three times and late by five hours.
func TestRhythmIsDampedAndLate(t *testing.T) {
	var h Rhythm
	for clock := range 24 {
		x := 2 * math.Pi * float64(clock) / 24
		h.Outside[clock] = 15 + 6*math.Cos(x-2.5) + 1.5*math.Cos(2*x)
		h.Inside[clock] = 20 + 2*math.Cos(x-2.5-5*2*math.Pi/24)
	}
	times, later := h.Damped()
	check.Balance(t, times, 3, "damped")
	check.Balance(t, later, 5, "hours late")
	h.Inside, h.Outside = h.Outside, h.Inside
	times, later = h.Damped()
	check.Balance(t, times, 1.0/3, "damped the other way round")
	check.Balance(t, later, -5, "hours late the other way round")
}

// Seasons turn round south of the equator.
func TestSeasonsTurnRound(t *testing.T) {
	north, south := roomed(t, 400), &Run{House: new(house.House)}
	south.Weather, south.House.Place.Latitude = north.Weather, -35
	for day, want := range map[int]Season{0: Winter, 59: Winter, 60: Spring, 152: Summer, 244: Autumn, 335: Winter} {
		if n, s := north.Season(day), south.Season(day); n != want || s != (want+2)%Season(Seasons) {
			t.Errorf("day %d is in %s in the north and %s in the south, want %s", day, n, s, want)
		}
	}
}

// A house without a measure lives in the same weather; one that never had it is not lived.
func TestRunWithoutMeasures(t *testing.T) {
	r := roomed(t, 366)
	before := r.House.Rooms.Design.Rooms[0].Windows[0].Shade
	a, err := r.Account(r.Start())
	if err != nil {
		t.Fatal(err)
	}
	for m := range warmth.Measure(warmth.Measures) {
		run, taken, err := r.Without(m)
		if err != nil || run == nil || taken == 0 || run.Weather != r.Weather {
			t.Fatalf("%s: %v, taken from %d parts", m, err, taken)
		}
		if m == warmth.Insulation || m == warmth.Shutters || m == warmth.EarthBehind {
			b, err := run.Account(run.Start())
			if err != nil {
				t.Fatal(err)
			}
			if with, without := a.Rooms[0].Comfort.ColdDegree, b.Rooms[0].Comfort.ColdDegree; without <= with {
				t.Errorf("over a year the living room without %s lacks %g K h, with it %g: want more", m, without, with)
			}
		}
	}
	if r.House.Rooms.Design.Rooms[0].Windows[0].Shade != before {
		t.Error("the house itself was changed")
	}
	bare := roomed(t, 10, ", shutters: yes", "")
	if run, taken, err := bare.Without(warmth.Shutters); run != nil || taken != 0 || err != nil {
		t.Errorf("a house without shutters had them taken from %d windows (%v)", taken, err)
	}
	if _, _, err := opened(t, "../examples/roof-and-tank.yaml").Without(warmth.Mass); err == nil {
		t.Error("a house without rooms lost its mass")
	}
}

// An explained hour tells the rooms as the row has them.
func TestRoomsAreExplained(t *testing.T) {
	r := roomed(t, 366)
	for _, hour := range []int{0, 24*20 + 7, 24*200 + 23, 24*230 + 15} {
		worked, err := r.Explain(hour)
		if err != nil {
			t.Fatal(err)
		}
		s := r.Start()
		span := Span{Last: hour + 1}
		if err := r.Live(&s, &span); err != nil {
			t.Fatal(err)
		}
		shown := map[string]int{}
		for _, w := range worked {
			room := shown[w.Sheet.Name]
			shown[w.Sheet.Name]++
			for _, got := range w.Results {
				switch w.Sheet.Name + "." + got.Name {
				case "room-hour.operative":
					if want := float64(span.Row.Rooms.Rooms[room].Operative); got.Value.Number != want {
						t.Errorf("hour %d, room %d feels like %v by its sheet, %v in the hour", hour, room, got.Value.Number, want)
					}
				case "vents-hour.flow":
					if want := span.Row.Rooms.Rooms[room].Flow; got.Value.Number != want {
						t.Errorf("hour %d, room %d has %v m3/s by its sheet, %v in the hour", hour, room, got.Value.Number, want)
					}
				case "air-hour.air_after", "damp-hour.carbon_after":
					for k := range r.in.names {
						want := float64(s.Rooms.Air[k])
						if got.Name == "carbon_after" {
							want = s.Rooms.Carbon[k]
						}
						if got.Value.List[k] != want {
							t.Errorf("hour %d, room %d: %s is %v, the hour ends with %v", hour, k, got.Name, got.Value.List[k], want)
						}
					}
				}
			}
		}
		if shown["room-hour"] != 3 || shown["vents-hour"] != 2 || shown["air-hour"] != 1 || shown["damp-hour"] != 1 {
			t.Errorf("hour %d shows %v, want three rooms, two with vents", hour, shown)
		}
	}
}
