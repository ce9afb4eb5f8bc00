package weather

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/site"
	"suffice/site/sun"
)

// Days are counted as the standard library's calendar counts them.
func TestCalendarAgrees(t *testing.T) {
	begin := time.Date(1, 1, 1, 0, 0, 0, 0, time.UTC)
	for n := 0; n < 3652059; n += 37 {
		want, got := begin.AddDate(0, 0, n), DayOf(n)
		y, m, d := want.Date()
		if int(got.Year) != y || int(got.Month) != int(m) || int(got.Date) != d || int(got.DayOfYear) != want.YearDay() || int(got.Weekday) != int(want.Weekday()) {
			t.Fatalf("day %d: got %+v, want %s", n, got, want.Format("2006-01-02 Mon"))
		}
		if got.Number() != n || !ValidDate(y, int(m), d) {
			t.Fatalf("day %d came back as %d", n, got.Number())
		}
	}
	for _, c := range []struct{ year, days int }{{1900, 365}, {2000, 366}, {2023, 365}, {2024, 366}, {NominalYear, 365}} {
		if DaysIn(c.year) != c.days {
			t.Errorf("%d has %d days, want %d", c.year, DaysIn(c.year), c.days)
		}
	}
	if ValidDate(2023, 2, 29) || ValidDate(2024, 2, 30) || ValidDate(2024, 13, 1) || ValidDate(0, 1, 1) {
		t.Error("a day that is not was taken")
	}
}

// A day's rain keeps its total, falls without a break, and begins where its date says.
func TestStormKeepsTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		total := rapid.Float64Range(0, 600).Draw(t, "total")
		day := rapid.IntRange(0, 900000).Draw(t, "day")
		hours, again := make([]float64, 24), make([]float64, 24)
		storm(hours, total, day)
		storm(again, total, day)
		var sum float64
		first, last, wet := -1, -1, 0
		for h, mm := range hours {
			sum += mm
			if mm > 0 {
				if first < 0 {
					first = h
				}
				last, wet = h, wet+1
			}
			if mm < 0 || total <= 24*stormRate && mm > stormRate+1e-9 {
				t.Fatalf("hour %d of %g mm has %g mm", h, total, mm)
			}
		}
		check.Balance(t, sum, total, "rain of the day")
		if wet > 0 && last-first+1 != wet {
			t.Fatalf("the storm of %g mm has a break: %v", total, hours)
		}
		if !slices.Equal(hours, again) {
			t.Fatalf("the same day rained differently: %v and %v", hours, again)
		}
	})
}

// Storms begin at every hour of the day, about equally often.
func TestStormsFallAtAnyHour(t *testing.T) {
	var begins [24]int
	const days = 24000
	for d := range days {
		var hours [24]float64
		storm(hours[:], 1, d)
		for h, mm := range hours {
			if mm > 0 {
				begins[h]++
			}
		}
	}
	for h, n := range begins {
		if math.Abs(float64(n)-days/24) > 5*math.Sqrt(days/24) { // five deviations of a count
			t.Errorf("%d of %d storms fall in hour %d, want about %d", n, days, h, days/24)
		}
	}
}

// Lowest and highest stay those of the day, no hour passes them, and a stated mean is
// kept wherever two hours at the extremes leave room for it.
func TestWarmthKeepsItsDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		day := func(name string) extremes {
			low := rapid.Float64Range(-40, 30).Draw(t, name)
			high := low + rapid.Float64Range(0.5, 25).Draw(t, name+" range")
			share := rapid.Float64Range(1.0/24, 1-1.0/24).Draw(t, name+" mean")
			return extremes{low, high, low + share*(high-low)}
		}
		length := rapid.Float64Range(shortestDay, 24-shortestDay).Draw(t, "day length")
		noon := rapid.Float64Range(10.5, 14).Draw(t, "noon")
		today := day("today")
		stated := rapid.Bool().Draw(t, "stated")
		if !stated {
			today.mean = math.NaN()
		}
		hours, kept := warmth(day("before"), today, day("after"), sunDay{noon, length}, sunDay{noon, length})
		low, high, sum := slices.Min(hours[:]), slices.Max(hours[:]), 0.0
		for _, T := range hours {
			sum += T / 24
		}
		if low != today.low || high != today.high {
			t.Fatalf("the hours reach from %g to %g, the day from %g to %g", low, high, today.low, today.high)
		}
		if stated && kept && math.Abs(sum-today.mean) > 1e-6*(today.high-today.low) {
			t.Fatalf("the mean is %g, want %g", sum, today.mean)
		}
		clipped := 0
		for _, T := range hours {
			clipped += b2i(T == low || T == high)
		}
		if stated && !kept && clipped == 2 {
			t.Fatalf("the mean %g of a day from %g to %g was given up with only two hours at the extremes", today.mean, low, high)
		}
	})
}

// Recorded diffuse light of a day is kept, and no hour has more than its global light.
func TestDiffuseDayKeepsTheTotal(t *testing.T) {
	place := site.Place{Latitude: 40, Longitude: 0}
	track := sun.NewTrack(place, []sun.Date{{Year: 2020, Month: 5, Date: 3}})
	rapid.Check(t, func(t *rapid.T) {
		light := rapid.Float64Range(0.2, 8).Draw(t, "light")
		share := rapid.Float64Range(0.02, 1.2).Draw(t, "diffuse share")
		global := make([]float64, 24)
		for h, s := range track.DayShares(0) {
			global[h] = 1000 * light * s
		}
		hours, over := diffuseDay(global, track.Split(global, sun.BRL).Diffuse, light*share)
		var sum float64
		for h, d := range hours {
			if d < 0 || d > global[h]*(1+1e-9) {
				t.Fatalf("hour %d has %g W/m2 diffuse of %g", h, d, global[h])
			}
			sum += d / 1000
		}
		check.Balance(t, sum+over, light*share, "diffuse light of the day")
	})
}

// A stated mean humidity is kept, and no hour passes 100 percent.
func TestHumidityKeepsItsMean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mean := rapid.Float64Range(3, 100).Draw(t, "mean")
		temperature := rapid.SliceOfN(rapid.Float64Range(-20, 45), 24, 24).Draw(t, "temperature")
		hours := make([]float64, 24)
		humidityOfMean(hours, temperature, mean)
		var sum float64
		for h, rh := range hours {
			if rh < 0 || rh > 100 {
				t.Fatalf("hour %d has %g percent", h, rh)
			}
			sum += rh / 24
		}
		if math.Abs(sum-mean) > 1e-6 {
			t.Fatalf("the mean is %g, want %g", sum, mean)
		}
	})
}

// plain makes a record of whole years with a value in every row.
func plain(step Step, year, years int, columns ...Column) *Record {
	r := &Record{File: "plain", Format: "plain", Step: step, Time: StandardTime, Placed: true, Start: DayNumber(year, 1, 1),
		Place: site.Place{Latitude: 35, Longitude: 30, Altitude: 100, Clock: 2}}
	r.Steps = (DayNumber(year+years, 1, 1) - r.Start) * step.perDay()
	for _, c := range columns {
		s := Series{Column: c, Source: c.String(), Unit: c.Unit(step), Values: make([]float64, r.Steps)}
		for i := range s.Values {
			s.Values[i] = plainValue(c, i/step.perDay(), i%step.perDay())
		}
		r.Series = append(r.Series, s)
	}
	return r
}

func plainValue(c Column, day, hour int) float64 {
	switch c {
	case TemperatureMin:
		return float64(day % 7)
	case TemperatureMax:
		return 12 + float64(day%11)
	case Temperature:
		return 8 + float64(day%5) + float64(hour)/8
	case Global:
		return 2 + float64(day%3)
	case Rain:
		return float64(max(0, day%9-4))
	}
	return 50
}

// What is filled is counted: the origins of every column sum to its hours, and what is
// recorded stays as it is.
func TestFillsAreCounted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]Step{Hourly, Daily}).Draw(t, "step")
		columns := []Column{Rain, TemperatureMin, TemperatureMax}
		if step == Hourly {
			columns = []Column{Rain, Wind} // no temperature: no sky is made, which takes its time
		}
		r := plain(step, 2003, 3, columns...)
		holes := 0
		for k := range r.Series {
			for range rapid.IntRange(0, 4).Draw(t, "gaps") {
				at := rapid.IntRange(0, r.Steps-1).Draw(t, "at")
				long := rapid.IntRange(1, 4*step.perDay()).Draw(t, "long")
				for i := at; i < min(r.Steps, at+long); i++ {
					r.Series[k].Values[i] = math.NaN()
					holes++
				}
			}
		}
		h, report, err := Complete(r, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, tally := range report.Tallies {
			sum := 0
			for _, n := range tally.Hours {
				sum += n
			}
			if sum != 24*len(h.Days) {
				t.Fatalf("%s: origins sum to %d of %d hours", tally.Column, sum, 24*len(h.Days))
			}
		}
		if n := len(report.Years); n+len(report.Dropped) != 3 && n+len(report.Dropped) != 0 {
			t.Fatalf("kept %v, dropped %v of three years", report.Years, report.Dropped)
		}
		for _, column := range [][]float64{h.Rain, h.Temperature, h.Humidity, h.Wind} {
			if len(column) != 0 && len(column) != 24*len(h.Days) || slices.ContainsFunc(column, math.IsNaN) {
				t.Fatalf("a column of %d days has %d hours, or a gap", len(h.Days), len(column))
			}
		}
		if h.Rain == nil || (h.Temperature == nil) == (step == Daily) {
			t.Fatalf("a column that the record has was left out: %q", h.Notes)
		}
		if step == Hourly {
			keepsRecorded(t, r.Of(Rain), h, report, Rain, h.Rain)
		}
	})
}

// keepsRecorded holds the hours of a record against those made from it.
func keepsRecorded(t *rapid.T, s *Series, h *Hours, report Report, c Column, got []float64) {
	start := DayNumber(2003, 1, 1)
	missing := 0
	for i := range got {
		v := s.Values[(h.Days[i/24].Number()-start)*24+i%24]
		if math.IsNaN(v) {
			missing++
		} else if got[i] != v {
			t.Fatalf("%s hour %d is %g, recorded %g", c, i, got[i], v)
		}
	}
	if n := tallyOf(report, c).Hours[AsRecorded]; n != len(got)-missing {
		t.Fatalf("%s: %d hours count as recorded, %d are", c, n, len(got)-missing)
	}
}

func tallyOf(r Report, c Column) Tally {
	for _, t := range r.Tallies {
		if t.Column == c {
			return t
		}
	}
	return Tally{}
}

// A gap takes the way its length says: a straight line, the neighbour, another year.
func TestGapsGoByLength(t *testing.T) {
	origins := func(step Step, long int) Tally {
		r := plain(step, 2003, 3, Rain, Temperature)
		s := r.Of(Temperature)
		for i := range long {
			s.Values[400*step.perDay()+i] = math.NaN()
		}
		_, report, err := Complete(r, Options{})
		if err != nil {
			t.Fatal(err)
		}
		return tallyOf(report, Temperature)
	}
	for _, c := range []struct {
		step Step
		long int
		want Origin
	}{{Hourly, 1, Interpolated}, {Hourly, 3, Interpolated}, {Hourly, 4, FromNeighbour}, {Hourly, 24, FromNeighbour}, {Hourly, 25, FromOtherYear}, {Hourly, 96, FromOtherYear}} {
		if tally := origins(c.step, c.long); tally.Hours[c.want] != c.long {
			t.Errorf("a gap of %d %s rows: %v, want %d %s", c.long, c.step, tally.Hours, c.long, c.want)
		}
	}
	r := plain(Daily, 2003, 3, Rain)
	rain := r.Of(Rain)
	rain.Values[400], rain.Values[500], rain.Values[501] = math.NaN(), math.NaN(), math.NaN()
	h, report, err := Complete(r, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if n := tallyOf(report, Rain).Hours; n[FromNeighbour] != 24 || n[FromOtherYear] != 48 {
		t.Errorf("a day and two days missing: %v, want 24 hours from the neighbour and 48 from another year", n)
	}
	var filled, day, year float64
	for k := range 24 {
		filled += h.Rain[24*400+k]
		day += h.Rain[24*399+k]
		year += h.Rain[24*500+k]
	}
	check.Balance(t, filled, day, "rain of a missing day, copied from the day before")
	check.Balance(t, year, rain.Values[500-366], "rain of two missing days, from the same date of the earlier year")
}

// With more than five missing days a year is left out; with five it is kept.
func TestFiveDaysMayBeMissing(t *testing.T) {
	for missing, want := range map[int]int{0: 3, 5: 3, 6: 2} {
		r := plain(Daily, 2003, 3, Rain)
		for i := range missing {
			r.Series[0].Values[365+40*i] = math.NaN() // in 2004
		}
		h, report, err := Complete(r, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if len(report.Years) != want || slices.Contains(report.Dropped, 2004) != (want == 2) {
			t.Errorf("%d days missing: kept %v, dropped %v", missing, report.Years, report.Dropped)
		}
		if s := Summarise(r); s.Rain.CompleteYears != want {
			t.Errorf("%d days missing: the summary counts %d years", missing, s.Rain.CompleteYears)
		}
		if days := len(h.Days); days != 365*want+b2i(want == 3) {
			t.Errorf("%d days missing: %d days kept", missing, days)
		}
	}
}

// Moving a record by whole hours moves every value and loses none but of partial days.
func TestClockShiftMovesHours(t *testing.T) {
	r := plain(Hourly, 2003, 2, Rain, Temperature)
	r.Time, r.Place.Clock = UTC, 0
	for i := range r.Series[1].Values {
		r.Series[1].Values[i] = float64(i % 40)
	}
	for _, clock := range []float64{2, -9, 5.5, 0} {
		house := r.Place
		house.Clock = clock
		h, _, err := Complete(r, Options{Place: &house})
		if err != nil {
			t.Fatal(err)
		}
		shift := int(math.Round(clock))
		if h.Place.Clock != float64(shift) {
			t.Errorf("clock %g: the hours keep %g, want %d", clock, h.Place.Clock, shift)
		}
		for i := 48; i < len(h.Temperature)-48; i += 31 {
			if got, want := h.Temperature[i], float64((i-shift)%40); got != want {
				t.Fatalf("clock %g: hour %d is %g, want the record's %g", clock, i, got, want)
			}
		}
		if said := slices.ContainsFunc(h.Notes, func(n string) bool { return bytes.Contains([]byte(n), []byte("hours are moved")) }); said != (shift != 0) {
			t.Errorf("clock %g: the move is said: %v: %q", clock, said, h.Notes)
		}
	}
}

// A typical year is a ring: whatever the clock, it has 365 days and every hour once.
func TestTypicalYearIsARing(t *testing.T) {
	r := plain(Hourly, NominalYear, 1, Temperature)
	r.Typical = true
	for i := range r.Series[0].Values {
		r.Series[0].Values[i] = float64(i)/200 - 10
	}
	house := r.Place
	house.Clock = -5
	h, report, err := Complete(r, Options{Place: &house})
	if err != nil {
		t.Fatal(err)
	}
	if len(h.Days) != 365 || tallyOf(report, Temperature).Hours[AsRecorded] != 8760 {
		t.Fatalf("%d days, origins %v", len(h.Days), report.Tallies)
	}
	if h.Temperature[0] != 7.0/200-10 || h.Temperature[8759] != 6.0/200-10 {
		t.Errorf("the ring begins with %g and ends with %g", h.Temperature[0], h.Temperature[8759])
	}
}

// The stream that draws sky years is pinned: it is the same in every version.
func TestDrawnYearsArePinned(t *testing.T) {
	kept := []int32{1984, 1985, 1986, 1987, 1988}
	var got []int32
	for year := int32(1950); year < 1962; year++ {
		got = append(got, drawYear(kept, 7, year))
	}
	want := []int32{1987, 1987, 1986, 1985, 1987, 1987, 1986, 1988, 1984, 1988, 1984, 1988}
	if !slices.Equal(got, want) {
		t.Errorf("drew %v, want %v", got, want)
	}
}

// Rain and sky of matched years keep their dates; a drawn sky is one whole year of the
// sky record; the same seed gives the same hours.
func TestCombineKeepsDates(t *testing.T) {
	sky := plain(Daily, 2003, 3, Global, TemperatureMin, TemperatureMax, Rain)
	gauge := plain(Daily, 2001, 5, Rain)
	for i := range gauge.Series[0].Values {
		gauge.Series[0].Values[i] = float64(i % 17)
	}
	h, report, err := Combine(sky, gauge, Options{Seed: 3})
	if err != nil {
		t.Fatal(err)
	}
	alone, _, err := Complete(sky, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(h.Days) != 1826 || len(report.Years) != 5 {
		t.Fatalf("%d days, years %v", len(h.Days), report.Years)
	}
	matched := 24 * (DayNumber(2003, 1, 1) - DayNumber(2001, 1, 1))
	if !slices.Equal(h.Global[matched:], alone.Global) || !slices.Equal(h.Temperature[matched:], alone.Temperature) {
		t.Error("years that both records have did not get their own sky")
	}
	for i := range h.Days {
		var rain float64
		for k := range 24 {
			rain += h.Rain[24*i+k]
		}
		check.Balance(t, rain, float64(i%17), "rain of a day of the gauge")
	}
	if n := tallyOf(report, Global).Hours[Drawn]; n != 24*730 {
		t.Errorf("%d hours of sky count as drawn, want two years", n)
	}
	again, _, err := Combine(sky, gauge, Options{Seed: 3})
	if err != nil || !slices.Equal(h.Global, again.Global) {
		t.Error("the same seed drew another sky")
	}
	only, report, err := Combine(sky, gauge, Options{OnlyMatched: true})
	if err != nil || len(only.Days) != 1096 || len(report.Years) != 3 {
		t.Errorf("only matched years: %d days, years %v, %v", len(only.Days), report.Years, err)
	}
}

// What cannot be is dropped and warned of; a column full of it is refused.
func TestImpossibleValuesAreDropped(t *testing.T) {
	for _, c := range []struct {
		column Column
		bad    float64
	}{{Rain, -0.1}, {Rain, 2500}, {Global, 15}, {Global, -1}, {TemperatureMin, 71}, {Humidity, 130}} {
		r := plain(Daily, 2003, 1, Rain, Global, TemperatureMin, TemperatureMax, Humidity)
		s := r.Of(c.column)
		s.Values[50] = c.bad
		if err := Check(r); err != nil {
			t.Fatal(err)
		}
		if !math.IsNaN(s.Values[50]) || s.Marks[50] != Impossible || len(r.Warnings) != 1 {
			t.Errorf("%s of %g stayed %g, marked %s: %q", c.column, c.bad, s.Values[50], s.MarkAt(50), r.Warnings)
		}
		for i := range s.Values {
			s.Values[i] = c.bad
		}
		if err := Check(r); err == nil {
			t.Errorf("a column of %s all %g was taken", c.column, c.bad)
		}
	}
	r := plain(Daily, 2003, 1, TemperatureMin, TemperatureMax)
	r.Series[0].Values[9] = 40
	if err := Check(r); err != nil || !math.IsNaN(r.Series[0].Values[9]) || !math.IsNaN(r.Series[1].Values[9]) || len(r.Warnings) != 1 {
		t.Errorf("a lowest above the highest: %v, %q", err, r.Warnings)
	}
}

// A year of missing codes is warned of.
func TestEmptyYearIsWarnedOf(t *testing.T) {
	r := plain(Daily, 2003, 3, Rain, Wind)
	for i := range 366 {
		r.Of(Wind).Values[365+i] = math.NaN()
	}
	if err := Check(r); err != nil || len(r.Warnings) != 1 || r.Warnings[0] != "wind (wind) has no value in all of 2004" {
		t.Errorf("%v %q", err, r.Warnings)
	}
}

// The counts of a report are written with their names.
func TestTallyIsWrittenByName(t *testing.T) {
	text, err := json.Marshal(Tally{Column: Rain, Hours: [Origins]int{FromDay: 24, FromNeighbour: 48}})
	if want := `{"column":"rain","from_day":24,"from_neighbour":48}`; err != nil || string(text) != want {
		t.Errorf("got %s, %v, want %s", text, err, want)
	}
}
