package weather

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
)

// drawDays draws a daily record with gaps, of up to so many years.
func drawDays(t *rapid.T, years int) *Record {
	n := rapid.IntRange(1, 366*years).Draw(t, "days")
	seed := rapid.Uint64().Draw(t, "seed")
	gap := rapid.IntRange(2, 400).Draw(t, "a gap in so many days")
	r := &Record{Step: Daily, Time: SolarHours, Start: DayNumber(rapid.IntRange(1990, 2003).Draw(t, "year"), 1, 1) + rapid.IntRange(0, 400).Draw(t, "begin"),
		Steps: n, Placed: true}
	r.Place.Latitude, r.Place.Longitude = 47, 8
	draw := func(k uint64, low, high float64) []float64 {
		v := make([]float64, n)
		for i := range v {
			x := mix(seed + uint64(i)*7 + k<<40)
			v[i] = low + (high-low)*float64(x>>11)/(1<<53)
			if x%uint64(gap) == 0 {
				v[i] = math.NaN()
			}
		}
		return v
	}
	rain := draw(1, -10, 12)
	for i := range rain {
		rain[i] = max(0, rain[i])
	}
	r.Series = []Series{{Column: Rain, Values: rain}, {Column: Global, Values: draw(2, 0, 6)},
		{Column: TemperatureMin, Values: draw(3, -8, 14)}, {Column: TemperatureMax, Values: draw(4, 14, 30)}}
	return r
}

// inComplete gives a day's value if its calendar year is complete, from the calendar alone.
func inComplete(r *Record, s *Series, number int) float64 {
	year := int(DayOf(number).Year)
	missing := 0
	for d := DayNumber(year, 1, 1); d < DayNumber(year+1, 1, 1); d++ {
		if d < r.Start || d >= r.Start+r.Steps {
			return math.NaN()
		}
		missing += b2i(math.IsNaN(s.Values[d-r.Start]))
	}
	if missing > MissingDaysAllowed {
		return math.NaN()
	}
	return s.Values[number-r.Start]
}

// Spells are those that a walk over all days finds, counted another way.
func TestSpellsByWalking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawDays(t, 4)
		s := Summarise(r)
		rain := r.Of(Rain)
		for _, spell := range s.DrySpells {
			number := r.Start + dayFrom(r, spell.First)
			for d := range spell.Days {
				if v := inComplete(r, rain, number+d); !(v < DryDay) {
					t.Fatalf("%+v: %s had %g mm", spell, dateText(number+d), v)
				}
			}
			if dateText(number+spell.Days-1) != spell.Last {
				t.Fatalf("%+v does not end there", spell)
			}
		}
		longest, run := 0, 0
		for n := r.Start; n < r.Start+r.Steps; n++ {
			if v := inComplete(r, rain, n); v < DryDay {
				run++
			} else {
				run = 0
			}
			longest = max(longest, run)
		}
		if got := firstDays(s.DrySpells); got != longest || s.LongestDry != nil && *s.LongestDry != longest {
			t.Fatalf("the longest of %+v, want %d days", s.DrySpells, longest)
		}
		if !slices.IsSortedFunc(s.DrySpells, func(a, b Spell) int { return b.Days - a.Days }) || len(s.DrySpells) > mostSpells {
			t.Fatalf("not the longest first: %+v", s.DrySpells)
		}
	})
}

func firstDays(spells []Spell) int {
	if len(spells) == 0 {
		return 0
	}
	return spells[0].Days
}

// No run of months is drier than the one that is told, and that one has the rain that is told.
func TestDriestByTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawDays(t, 5)
		rain := r.Of(Rain).Values
		told := make(map[int]DryRun)
		for _, run := range r.byDay().driest() {
			told[run.Months] = run
		}
		for _, n := range []int{6, 12, 24} {
			least, first := math.Inf(1), ""
			for year := 1990; year < 2012; year++ {
				for month := 1; month <= 12; month++ {
					from := DayNumber(year, month, 1)
					to := DayNumber(year+(month-1+n)/12, (month-1+n)%12+1, 1)
					if from < r.Start || to > r.Start+r.Steps {
						continue
					}
					sum, missing := 0.0, 0
					for _, v := range rain[from-r.Start : to-r.Start] {
						if math.IsNaN(v) {
							missing++
						} else {
							sum += v
						}
					}
					if missing <= 5*n/12 && sum < least-1e-9 {
						least, first = sum, fmt.Sprintf("%04d-%02d", year, month)
					}
				}
			}
			run, ok := told[n]
			if ok != (first != "") || ok && (math.Abs(run.Rain-least) > 0.0051 || run.First != first) {
				t.Fatalf("%d months: told %+v, found %g mm from %s", n, run, least, first)
			}
		}
	})
}

// Frost is counted as a walk over the days counts it; dates lie within their winters.
func TestFrostByWalking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawDays(t, 4)
		low := r.Of(TemperatureMin)
		f := r.byDay().frost()
		days, years := 0, 0
		for n := r.Start; n < r.Start+r.Steps; n++ {
			v := inComplete(r, low, n)
			days += b2i(v < 0)
			if d := DayOf(n); d.DayOfYear == 1 {
				any := false
				for k := n; k < n+DaysIn(int(d.Year)) && k < r.Start+r.Steps; k++ {
					any = any || !math.IsNaN(inComplete(r, low, k))
				}
				years += b2i(any)
			}
		}
		if (f == nil) != (years == 0) {
			t.Fatalf("%d complete years, %+v", years, f)
		}
		if f != nil && math.Abs(f.DaysPerYear-float64(days)/float64(years)) > 0.051 {
			t.Fatalf("%g frost days a year, want %d in %d", f.DaysPerYear, days, years)
		}
	})
}

// A made winter has its frosts where they were put, on both halves of the earth.
func TestWinterDates(t *testing.T) {
	for begin, c := range map[int]struct {
		first, last, typical string
		winters              int
	}{
		1: {"2002-11-03", "2003-04-20", "11-03", 3}, // coldest in January
		7: {"2002-05-03", "2002-10-20", "05-03", 4}, // coldest in July
	} {
		r := &Record{Step: Daily, Start: DayNumber(2001, 1, 1), Steps: DayNumber(2005, 1, 1) - DayNumber(2001, 1, 1)}
		v := make([]float64, r.Steps)
		for i := range v {
			d := DayOf(r.Start + i)
			v[i] = 10 - 8*math.Cos(2*math.Pi*(float64(d.Month)-float64(begin))/12)
		}
		for _, date := range []string{c.first, c.last} {
			v[dayFrom(r, date)] = -1
		}
		r.Series = []Series{{Column: TemperatureMin, Values: v}}
		f := r.byDay().frost()
		if f.Earliest != c.first || f.Latest != c.last || f.TypicalFirst != c.typical || f.Winters != c.winters || f.Without != c.winters-1 || f.DaysPerYear != 0.5 {
			t.Errorf("coldest in month %d: %+v, want %+v", begin, f, c)
		}
	}
}

// dayFrom gives the row of a date.
func dayFrom(r *Record, date string) int {
	for i := range r.Steps {
		if dateText(r.Start+i) == date {
			return i
		}
	}
	return -1
}

// The number of discordant pairs, and so the score, can be had from all pairs; a rising series
// scores the most, a falling one the least, a level one nothing.
func TestTrendLimits(t *testing.T) {
	years := make([]int, 30)
	up, level := make([]float64, 30), make([]float64, 30)
	for i := range years {
		years[i], up[i] = 1980+i, 3*float64(i)
	}
	if p, slope := trend(years, up); p > 1e-9 || slope != 3 {
		t.Errorf("a straight rise: %g, %g a year", p, slope)
	}
	if p, slope := trend(years, level); p != 1 || slope != 0 {
		t.Errorf("no change: %g, %g a year", p, slope)
	}
	slices.Reverse(up)
	if p, slope := trend(years, up); p > 1e-9 || slope != -3 {
		t.Errorf("a straight fall: %g, %g a year", p, slope)
	}
}

// In records without a trend or jump either is told as seldom as is promised: in 1 of 100, and
// the approximations are known to err on the rare side.
func TestFalseAlarmsAreRare(t *testing.T) {
	trends, jumps := 0, 0
	const records = 4000
	for k := range records {
		years, x := make([]int, 40), make([]float64, 40)
		for i := range x {
			years[i], x[i] = i, float64(mix(uint64(k*1000+i))>>11)
		}
		p, _ := trend(years, x)
		trends += b2i(p < byChance)
		_, p = jump(x)
		jumps += b2i(p < byChance)
	}
	// 40 are expected of 4000; four deviations of a binomial count are 25.
	if trends > 65 || trends < 15 || jumps > 65 {
		t.Errorf("of %d records without either, %d trends and %d jumps were told", records, trends, jumps)
	}
}

// The statistic summed as it is defined, over all pairs on both sides of every place.
func TestJumpByItsDefinition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.SliceOfN(rapid.Float64Range(0, 9), 10, 40).Draw(t, "x")
		for i := range x {
			x[i] = math.Floor(x[i])
		}
		K := 0
		for place := 1; place < len(x); place++ {
			U := 0
			for _, a := range x[:place] {
				for _, b := range x[place:] {
					U += sign(a - b)
				}
			}
			K = max(K, U, -U)
		}
		n := float64(len(x))
		want := min(1, 2*math.Exp(-6*float64(K*K)/(n*n*n+n*n)))
		if _, p := jump(x); math.Abs(p-want) > 1e-12 {
			t.Fatalf("probability %g, want %g", p, want)
		}
	})
}

// nile is the yearly flow of the Nile at Aswan, 1871 to 1970, 1e8 m3 (cobb-1978).
var nile = [100]float64{1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958, 1140,
	1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020, 1050, 969,
	831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040, 759,
	781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890,
	744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740}

// The flow of the Nile falls from 1899 on, the textbook case of a jump.
func TestNile(t *testing.T) {
	check.That(t, mean(nile[:]), check.Published{Source: "cobb-1978", At: "mean flow 1871-1970, which shows that the numbers are the right ones", Value: "919.35", Unit: "1e8 m3", Standing: "remembered"})
	at, p := jump(nile[:])
	check.That(t, float64(1871+at), check.Published{Source: "cobb-1978", At: "first year of the lower flow", Value: "1899", Unit: "year", Standing: "remembered"})
	if p > 1e-6 {
		t.Errorf("by chance with %g", p)
	}
}

// Months rest on whole months alone, and their quantiles are those of sorted sums.
func TestMonthsByCounting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawDays(t, 4)
		rain := r.Of(Rain).Values
		for _, m := range r.byDay().byMonth() {
			var sums []float64
			for year := 1990; year < 2012; year++ {
				from := DayNumber(year, m.Month, 1)
				to := from + MonthDays(year, m.Month)
				if from < r.Start || to > r.Start+r.Steps {
					continue
				}
				if sum, missing := total(rain[from-r.Start : to-r.Start]); missing == 0 {
					sums = append(sums, sum)
				}
			}
			if (m.Rain == nil) != (len(sums) == 0) {
				t.Fatalf("month %d: %+v of %d whole ones", m.Month, m.Rain, len(sums))
			}
			if m.Rain == nil {
				continue
			}
			slices.Sort(sums)
			middle := (sums[(len(sums)-1)/2] + sums[len(sums)/2]) / 2
			if m.Rain.Months != len(sums) || math.Abs(m.Rain.Middle-middle) > 0.00051 || m.Rain.Low < round(sums[0], 3)-1e-9 || m.Rain.High > round(sums[len(sums)-1], 3)+1e-9 {
				t.Fatalf("month %d: %+v of %v", m.Month, m.Rain, sums)
			}
		}
	})
}

// Hours give the days that they make up, also where a record begins in the middle of one.
func TestHoursMakeDays(t *testing.T) {
	r := &Record{Step: Hourly, Start: DayNumber(2020, 2, 28), StartHour: 10, Steps: 14 + 24*3 + 5}
	r.Series = []Series{{Column: Rain, Values: make([]float64, r.Steps)}, {Column: Temperature, Values: make([]float64, r.Steps)}}
	for i := range r.Steps {
		r.Series[0].Values[i], r.Series[1].Values[i] = float64(i), float64(i)
	}
	for i := 40; i < 44; i++ { // four hours of the second whole day
		r.Series[0].Values[i] = math.NaN()
	}
	d := r.byDay()
	if dateText(d.first) != "2020-02-29" || len(d.rain) != 3 || d.rain[0] != 24*14+276 || !math.IsNaN(d.rain[1]) || d.low[1] != 38 || d.high[1] != 61 || d.mean[1] != 49.5 {
		t.Errorf("%+v", d)
	}
}
