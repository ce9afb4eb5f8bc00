package garden

import (
	"math"
	"strings"
	"testing"

	"suffice/crop"
)

// years makes a record whose days swing by a sine over the year, warmest in late July.
func years(n int, mean, amplitude, daily float64) ([]int16, []crop.Swing) {
	var day []int16
	var air []crop.Swing
	for range n {
		for d := 1; d <= 365; d++ {
			m := mean - amplitude*math.Cos(2*math.Pi*float64(d-25)/365)
			day, air = append(day, int16(d)), append(air, crop.Swing{Warmest: m + daily, Coolest: m - daily})
		}
	}
	return day, air
}

func window(t *testing.T, name string, c Climate) Window {
	t.Helper()
	plant, err := crop.Named(name)
	if err != nil {
		t.Fatal(err)
	}
	w, err := c.Window(plant)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func sentence(t *testing.T, w Window, day int, want string) {
	t.Helper()
	if err := w.Check(day); err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("%s on day %d: %v, want a sentence with %q", w.Crop.Name, day, err, want)
	}
}

// In a temperate place the tender wait for May, the hardy do not, and each wrong day has its reason.
func TestWindowsOfATemperatePlace(t *testing.T) {
	day, air := years(4, 11, 10, 6)
	c, err := Room(day, air)
	if err != nil {
		t.Fatal(err)
	}
	tomato, bean, radish := window(t, "tomato", c), window(t, "green bean", c), window(t, "radish", c)
	sentence(t, tomato, 60, "frost")
	sentence(t, tomato, 240, "frost")
	sentence(t, bean, 1, "does not come up")
	sentence(t, bean, 400, "not a day of the year")
	for _, w := range []Window{tomato, bean, radish} {
		spans := w.Spans()
		if len(spans) == 0 {
			t.Errorf("%s has no day in a temperate place", w.Crop.Name)
			continue
		}
		if err := w.Check(spans[0].First); err != nil {
			t.Errorf("%s on the first day of its window: %v", w.Crop.Name, err)
		}
	}
	if a, b := radish.Spans()[0].First, bean.Spans()[0].First; a >= b {
		t.Errorf("radish may go in from day %d and beans from %d: the hardy come first", a, b)
	}
	if a, b := bean.Spans()[0].Last, radish.Spans()[len(radish.Spans())-1].Last; b <= a {
		t.Errorf("radish may go in until day %d and beans until %d: the quick one goes on longer", b, a)
	}
}

// A warm room lets tomatoes go in all year; a hot place has no day for spinach in summer, a cold one none for tomatoes.
func TestWindowsOfExtremes(t *testing.T) {
	day, warm := years(3, 21, 2, 4)
	room, err := Room(day, warm)
	if err != nil {
		t.Fatal(err)
	}
	if w := window(t, "tomato", room); len(w.Spans()) != 1 || w.Spans()[0] != (Span{1, 365}) {
		t.Errorf("tomato in a warm room: %s, want all year", w.Says())
	}
	_, hot := years(3, 27, 7, 6)
	south, err := Room(day, hot)
	if err != nil {
		t.Fatal(err)
	}
	sentence(t, window(t, "spinach", south), 150, "does not come up") // its seed lies in soil of over 30 degC
	_, cold := years(3, 2, 9, 5)
	north, err := Room(day, cold)
	if err != nil {
		t.Fatal(err)
	}
	sentence(t, window(t, "tomato", north), 160, "no day of the year")
}

// A record of half a year tells nothing, and says so; days and air must match.
func TestShortRecords(t *testing.T) {
	day, air := years(1, 11, 10, 6)
	c, err := Room(day[:90], air[:90])
	if err != nil {
		t.Fatal(err)
	}
	sentence(t, window(t, "winter squash", c), 60, "too short")
	if _, err := Room(day, air[1:]); err == nil {
		t.Error("365 days beside 364 of air pass for a room")
	}
}
