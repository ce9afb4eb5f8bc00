package people

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site/weather"
)

// year gives the days of 2023, which begins on a Sunday.
func year() []weather.Day {
	lengths := []int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	var days []weather.Day
	for m, n := range lengths {
		for d := range n {
			i := len(days)
			days = append(days, weather.Day{Year: 2023, Month: int8(m + 1), Date: int8(d + 1), DayOfYear: int16(i + 1), Weekday: int8(i % 7)})
		}
	}
	return days
}

func drawUse(t *rapid.T) Use {
	u := Use{
		Name:      "use",
		Drain:     Drain(rapid.IntRange(0, int(Drains)-1).Draw(t, "drain")),
		Kind:      Kind(rapid.IntRange(0, int(Kinds)-1).Draw(t, "kind")),
		PerPerson: quantity.Litres(rapid.Float64Range(0, 100).Draw(t, "per person")),
		PerHouse:  quantity.Litres(rapid.Float64Range(0, 100).Draw(t, "per house")),
		Hot:       rapid.Bool().Draw(t, "hot"),
		Mix:       quantity.Celsius(rapid.Float64Range(20, 60).Draw(t, "mix")),
		WhenEmpty: rapid.Bool().Draw(t, "when empty"),
		Savable:   rapid.Bool().Draw(t, "savable"),
	}
	for i := range u.Hours {
		u.Hours[i] = rapid.Float64Range(0, 3).Draw(t, "hour")
	}
	for i := range u.Days {
		u.Days[i] = rapid.Bool().Draw(t, "day")
	}
	return u
}

func drawHousehold(t *rapid.T) Household {
	h := Household{Residents: float64(rapid.IntRange(0, 6).Draw(t, "residents"))}
	for range rapid.IntRange(0, 5).Draw(t, "uses") {
		h.Uses = append(h.Uses, drawUse(t))
	}
	return h
}

// The hours of a day add up to the amounts of the uses that happen on it.
func TestDayAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawHousehold(t)
		weekday := rapid.IntRange(0, 6).Draw(t, "weekday")
		var want, got float64
		for i := range h.Uses {
			if u := &h.Uses[i]; u.Days.on(weekday) {
				want += float64(u.PerPerson) * h.Residents
				if h.Residents > 0 || u.WhenEmpty {
					want += float64(u.PerHouse)
				}
			}
		}
		for hour := range 24 {
			w := h.Hour(weekday, hour, h.Residents)
			for _, l := range w.Litres {
				got += float64(l)
			}
		}
		if math.Abs(got-want) > 1e-9*max(1, want) {
			t.Fatalf("24 hours give %v L, the uses %v L", got, want)
		}
	})
}

// Saving never wants more, takes exactly the share from savable uses, and twice in a row
// leaves the product of what each leaves.
func TestSavingOnlyTakesAway(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawHousehold(t)
		w := h.Hour(rapid.IntRange(0, 6).Draw(t, "weekday"), rapid.IntRange(0, 23).Draw(t, "hour"), h.Residents)
		a, b := rapid.Float64Range(0, 1).Draw(t, "a"), rapid.Float64Range(0, 1).Draw(t, "b")
		s := w.Save(a)
		twice, once := s.Save(b), w.Save(1-(1-a)*(1-b))
		for k := range Kinds {
			if s.Litres[k] > w.Litres[k] || s.Hot[k] > w.Hot[k] {
				t.Fatalf("%s: saving %v raised %v to %v L", k, a, w.Litres[k], s.Litres[k])
			}
			if s.Litres[k] < -1e-12 {
				t.Fatalf("%s: saving left %v L", k, s.Litres[k])
			}
			saved := float64(w.Litres[k] - s.Litres[k])
			if math.Abs(saved-a*float64(w.Savable[k])) > 1e-9 {
				t.Fatalf("%s: saved %v L of %v savable at %v", k, saved, w.Savable[k], a)
			}
			if math.Abs(float64(twice.Litres[k]-once.Litres[k])) > 1e-9 {
				t.Fatalf("%s: saving %v then %v leaves %v L, at once %v L", k, a, b, twice.Litres[k], once.Litres[k])
			}
		}
	})
}

// All water goes down some drain, saved or not.
func TestDrainsTakeAllWater(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawHousehold(t)
		w := h.Hour(rapid.IntRange(0, 6).Draw(t, "weekday"), rapid.IntRange(0, 23).Draw(t, "hour"), h.Residents)
		for _, w := range []Wants{w, w.Save(rapid.Float64Range(0, 1).Draw(t, "share"))} {
			for k := range Kinds {
				left := w.Litres[k]
				for _, down := range w.Drained[k] {
					left -= down
				}
				if math.Abs(float64(left)) > 1e-12*(1+float64(w.Litres[k])) {
					t.Fatalf("of %g L of %v %g L go down no drain", float64(w.Litres[k]), k, float64(left))
				}
			}
		}
	})
}

// The mean mix temperature carries the same heat as the uses one by one, above any inlet.
func TestMixCarriesTheHeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawHousehold(t)
		weekday, hour := rapid.IntRange(0, 6).Draw(t, "weekday"), rapid.IntRange(0, 23).Draw(t, "hour")
		inlet := rapid.Float64Range(1, 20).Draw(t, "inlet")
		w := h.Hour(weekday, hour, h.Residents)
		var parts float64
		for i := range h.Uses {
			one := Household{Residents: h.Residents, Uses: h.Uses[i : i+1]}
			o := one.Hour(weekday, hour, h.Residents)
			parts += float64(o.HotLitres) * (float64(o.Mix) - inlet)
		}
		for k := range Kinds {
			if o := w.Hot[k]; o > w.Litres[k]+1e-9 {
				t.Fatalf("%s: %v L warm of %v L", k, o, w.Litres[k])
			}
		}
		whole := float64(w.HotLitres) * (float64(w.Mix) - inlet)
		if math.Abs(whole-parts) > 1e-9*max(1, math.Abs(parts)) {
			t.Fatalf("mixed %v L K, one by one %v L K", whole, parts)
		}
		full, half := [Kinds]float64{1, 1, 1, 1}, [Kinds]float64{0.5, 0.5, 0.5, 0.5}
		if l, m := w.HotServed(&full); l != w.HotLitres || m != w.Mix {
			t.Fatalf("all served: %v L at %v, wanted %v L at %v", l, m, w.HotLitres, w.Mix)
		}
		if l, _ := w.HotServed(&half); math.Abs(float64(l-w.HotLitres/2)) > 1e-9 {
			t.Fatalf("half served: %v L of %v L", l, w.HotLitres)
		}
	})
}

// A look-up is the hour worked out, bit for bit, and persons follow the dates.
func TestDiaryIsTheHousehold(t *testing.T) {
	h := Household{Residents: 4,
		Uses: []Use{
			{Name: "drinking", Kind: Drinking, PerPerson: 8, Hours: [24]float64{6: 1, 12: 1, 18: 2}},
			{Name: "laundry", Kind: Washing, PerHouse: 45, Days: Weekdays{6: true}, Hot: true, Mix: 30},
			{Name: "dripper", Kind: Outdoor, PerHouse: 10, WhenEmpty: true},
		},
		Visitors: []Visitors{{People: 2, Dates: Dates{Date{12, 20}, Date{1, 4}}}},
		Away:     []Dates{{Date{8, 3}, Date{8, 24}}},
	}
	days := year()
	d, err := Prepare(&h, days)
	if err != nil {
		t.Fatal(err)
	}
	persons := map[float64]int{}
	for i, day := range days {
		persons[d.Persons(i)]++
		for hour := range 24 {
			if want := h.Hour(int(day.Weekday), hour, h.Persons(day)); *d.At(i, hour) != want {
				t.Fatalf("day %d hour %d: look-up %+v, worked %+v", i, hour, *d.At(i, hour), want)
			}
		}
	}
	// By hand: 3 to 24 August are 22 days; 12 days to New Year and 4 in January.
	if persons[0] != 22 || persons[6] != 16 || persons[4] != 365-22-16 {
		t.Errorf("days by persons: %v, want 22 empty, 16 with visitors, 327 others", persons)
	}
	away := slices.IndexFunc(days, func(d weather.Day) bool { return d.Month == 8 && d.Date == 10 })
	even := quantity.Litres(h.Uses[2].share(12)) * 10
	if w := d.At(away, 12); !d.Empty(away) || w.Litres != [Kinds]quantity.Litres{Outdoor: even} {
		t.Errorf("an empty house wants %v L, want the dripper's %v L alone", w.Litres, 10./24)
	}
}

// More people never want less.
func TestMorePeopleNeverWantLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawHousehold(t)
		weekday, hour := rapid.IntRange(0, 6).Draw(t, "weekday"), rapid.IntRange(0, 23).Draw(t, "hour")
		few, more := h.Hour(weekday, hour, h.Residents), h.Hour(weekday, hour, h.Residents+1)
		for k := range Kinds {
			if more.Litres[k] < few.Litres[k] {
				t.Fatalf("%s: one more person wants %v L instead of %v", k, more.Litres[k], few.Litres[k])
			}
		}
	})
}

func TestDatesOverNewYear(t *testing.T) {
	wrap := Dates{Date{12, 20}, Date{1, 4}}
	for _, c := range []struct {
		month, date int8
		in          bool
	}{{12, 19, false}, {12, 20, true}, {12, 31, true}, {1, 1, true}, {1, 4, true}, {1, 5, false}, {6, 1, false}} {
		if got := wrap.Include(weather.Day{Month: c.month, Date: c.date}); got != c.in {
			t.Errorf("%02d-%02d in 12-20 to 01-04: %v, want %v", c.month, c.date, got, c.in)
		}
	}
}

// A look-up allocates nothing.
func TestLookUpAllocatesNothing(t *testing.T) {
	h := Household{Residents: 2, Uses: []Use{{PerPerson: 8}}}
	d, err := Prepare(&h, year())
	if err != nil {
		t.Fatal(err)
	}
	var all quantity.Litres
	if n := testing.AllocsPerRun(10, func() { all += d.At(17, 3).Litres[Drinking] }); n != 0 {
		t.Errorf("a look-up made %v allocations", n)
	}
}

func TestFaultsComeTogether(t *testing.T) {
	h := Household{Residents: -1, Uses: []Use{{Name: "tea", Kind: 9, Drain: 11, PerPerson: -3}, {Name: "bath", Hot: true, Mix: 90}},
		Visitors: []Visitors{{People: 2, Dates: Dates{Date{2, 30}, Date{3, 1}}}}, Away: make([]Dates, MostDates+1)}
	_, err := Prepare(&h, nil)
	if err == nil {
		t.Fatal("a faulty household was taken")
	}
	for _, want := range []string{"people.residents", `"tea"`, "kind 9", "drain 11", `"bath"`, "90 degC", "02-30", "the most is 16"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("the faults do not speak of %s:\n%v", want, err)
		}
	}
}

func TestSheetWorksBareAndAgain(t *testing.T) {
	s := wantsHour()
	if _, err := s.Work(nil); err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		h := drawHousehold(t)
		weekday, hour := rapid.IntRange(0, 6).Draw(t, "weekday"), rapid.IntRange(0, 23).Draw(t, "hour")
		save := rapid.Float64Range(0, 1).Draw(t, "save")
		w := h.Hour(weekday, hour, h.Residents)
		w = w.Save(save)
		told, err := s.Work(h.Tell(weekday, hour, h.Residents, save))
		if err != nil {
			t.Fatal(err)
		}
		got := map[string]float64{}
		for _, r := range told.Results {
			got[r.Name] = r.Value.Number
		}
		for k := range Kinds {
			if got[k.String()] != float64(w.Litres[k]) {
				t.Fatalf("%s: the sheet gives %v, the hour %v", k, got[k.String()], w.Litres[k])
			}
		}
		if got["hot"] != float64(w.HotLitres) || got["mix"] != float64(w.Mix) {
			t.Fatalf("warm: the sheet gives %v L at %v, the hour %v L at %v", got["hot"], got["mix"], w.HotLitres, w.Mix)
		}
	})
	if _, err := s.Work(map[string]sheet.Value{"kind": {Kind: sheet.Text, Text: "tea"}}); err == nil {
		t.Error("an unknown kind was taken")
	}
}

func BenchmarkLookUp(b *testing.B) {
	h := Household{Residents: 2, Uses: []Use{{PerPerson: 8}, {Kind: Washing, PerPerson: 30, Hot: true, Mix: 38}}}
	d, err := Prepare(&h, year())
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	var all quantity.Litres
	i := 0
	for b.Loop() {
		w := d.At(i/24, i%24)
		all += w.Litres[Drinking] + w.HotLitres
		if i++; i == 365*24 {
			i = 0
		}
	}
}
