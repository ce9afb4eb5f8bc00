package synth_test

import (
	"fmt"
	"hash/fnv"
	"math"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"suffice/site"
	"suffice/site/weather"
	"suffice/site/weather/files"
	"suffice/site/weather/synth"
)

func farm(t testing.TB) *synth.Generator {
	t.Helper()
	n, err := synth.ReadNormals("farm.yaml", strings.NewReader(hillFarm))
	if err != nil {
		t.Fatal(err)
	}
	g, err := n.Generator()
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func fitted(t testing.TB) *synth.Generator {
	t.Helper()
	g, err := synth.Fit(open(t, crete, files.Options{}), nil)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// hash gives the bits of a record's columns as one number.
func hash(r *weather.Record) string {
	h := fnv.New64a()
	for _, s := range r.Series {
		for _, v := range s.Values {
			fmt.Fprintf(h, "%s %x\n", s.Column, math.Float64bits(v))
		}
	}
	return fmt.Sprintf("%016x", h.Sum64())
}

// The first days of two streams are written down: a change of how numbers are drawn changes
// everybody's made weather, and is no small thing. Compared to 1e-9, since other processors
// round a sum differently.
func TestStreamIsPinned(t *testing.T) {
	for _, c := range []struct {
		name string
		g    *synth.Generator
		want []float64
	}{
		{"normals", farm(t), pinnedFarm},
		{"fitted", fitted(t), pinnedCrete},
	} {
		var got []float64
		r := c.g.Years(2, 7)
		for _, s := range r.Series {
			for _, day := range []int{0, 40, 500} {
				got = append(got, s.Values[day])
			}
		}
		if len(got) != len(c.want) {
			t.Fatalf("%s: %d values, pinned %d: %#v", c.name, len(got), len(c.want), got)
		}
		for i, v := range got {
			if math.Abs(v-c.want[i]) > 1e-9*max(1, math.Abs(v)) {
				t.Errorf("%s: value %d is %.17g, pinned %.17g", c.name, i, v, c.want[i])
			}
		}
	}
}

func TestSameSeedSameBitsWithAnyWorkers(t *testing.T) {
	g := fitted(t)
	alone := hash(g.Years(20, 3))
	if again := hash(g.Years(20, 4)); again == alone {
		t.Error("another seed gave the same years")
	}
	for _, workers := range []int{1, 2, 7} {
		var wait sync.WaitGroup
		got := make([]string, 14)
		for w := range workers {
			wait.Go(func() {
				for i := w; i < len(got); i += workers {
					got[i] = hash(g.Years(20, 3))
				}
			})
		}
		wait.Wait()
		for i, h := range got {
			if h != alone {
				t.Errorf("%d workers: record %d has bits %s, alone %s", workers, i, h, alone)
			}
		}
	}
}

// A year does not depend on how many years follow it.
func TestMoreYearsBeginAlike(t *testing.T) {
	g := farm(t)
	short, long := g.Years(3, 5), g.Years(9, 5)
	for k, s := range short.Series {
		for i, v := range s.Values {
			if long.Series[k].Values[i] != v {
				t.Fatalf("%s of day %d is %g in three years and %g in nine", s.Column, i, v, long.Series[k].Values[i])
			}
		}
	}
}

func perMonth(days []weather.Day, v []float64, of func(float64) float64) (sums [12][]float64) {
	for i, d := range days {
		m := d.Month - 1
		if d.Date == 1 {
			sums[m] = append(sums[m], 0)
		}
		sums[m][len(sums[m])-1] += of(v[i])
	}
	return sums
}

func daysOf(r *weather.Record) []weather.Day {
	days := make([]weather.Day, r.Steps)
	for i := range days {
		days[i] = weather.DayOf(r.Start + i)
	}
	return days
}

func meanOf(v []float64) float64 { return sumOf(v) / float64(len(v)) }

// Means of many made years are the stated ones within four standard errors, deviation/sqrt(n):
// the index fades within weeks, so that a month hardly knows of the same month a year before. The
// deviation of the years is the stated one within five of its own, 1/sqrt(2n).
func TestNormalsComeBack(t *testing.T) {
	const years = 2000
	g := farm(t)
	r := g.Years(years, 11)
	days, rain := daysOf(r), r.Of(weather.Rain).Values
	mm := perMonth(days, rain, func(v float64) float64 { return v })
	wet := perMonth(days, rain, func(v float64) float64 {
		if v >= 1 {
			return 1
		}
		return 0
	})
	n, _ := synth.ReadNormals("farm.yaml", strings.NewReader(hillFarm))
	moments := g.Rain.Moments()
	for m := range 12 {
		within := 4 * math.Sqrt(moments.RainVary[m]/years)
		if got := meanOf(mm[m]); math.Abs(got-n.Rain[m]) > within {
			t.Errorf("month %d: %.2f mm, the normals say %g +- %.2f", m+1, got, n.Rain[m], within)
		}
		within = 4 * math.Sqrt(moments.WetDaysVary[m]/years)
		if got := meanOf(wet[m]); math.Abs(got-n.WetDays[m]) > within {
			t.Errorf("month %d: %.3f wet days, the normals say %g +- %.3f", m+1, got, n.WetDays[m], within)
		}
	}
	sums := make([]float64, years)
	for m := range mm {
		for y, v := range mm[m] {
			sums[y] += v
		}
	}
	if got := deviation(sums); math.Abs(got-165) > 165*5/math.Sqrt(2*years) {
		t.Errorf("yearly rain deviates by %.1f mm, stated 165", got)
	}
}

// The formulas for variances hold against drawing, for chains as strong as gauges show and somewhat beyond, plain ones and with spells.
func TestMomentsAreThoseOfDrawing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := &synth.Rain{WetDay: 0.3, Between: synth.Between{Chance: rapid.Float64Range(0, 0.6).Draw(t, "chance"),
			Amount: rapid.Float64Range(0, 0.4).Draw(t, "amount"), Memory: rapid.Float64Range(15, 90).Draw(t, "memory")}}
		up := rapid.Float64Range(0.05, 0.4).Draw(t, "after dry")
		stay := rapid.Float64Range(0.3, 0.7).Draw(t, "after wet")
		for m := range r.Months {
			r.Months[m] = synth.RainMonth{AfterDry: up, AfterWet: stay, Amount: 8, Shape: 0.7}
		}
		if rapid.Bool().Draw(t, "spell") {
			r.Spell = drawnSpell(t)
		}
		if rapid.Bool().Draw(t, "storms") {
			for m := range r.Months {
				r.Months[m].Parts = storms
			}
		}
		const years = 300
		rain := (&synth.Generator{Rain: r}).Years(years, rapid.Uint64().Draw(t, "seed"))
		sums := make([]float64, years)
		for i, d := range daysOf(rain) {
			sums[d.Year-2001] += rain.Series[0].Values[i]
		}
		want := r.Moments()
		deviates := math.Sqrt(want.YearVary)
		// 5 standard errors of a deviation, sqrt((k+2)/4n) with the excess kurtosis k of a lognormal distribution, since exp() of
		// the index makes such years; and 4 % for what the formula leaves out: the chain's lag behind a moving index.
		w := 1 + want.YearVary/(r.PerYear()*r.PerYear())
		kurtosis := w*w*w*w + 2*w*w*w + 3*w*w - 6
		if got := deviation(sums); math.Abs(got/deviates-1) > 0.04+5*math.Sqrt((kurtosis+2)/(4*years)) {
			t.Errorf("years deviate by %.1f mm, the formula says %.1f", got, deviates)
		}
		if got := meanOf(sums); math.Abs(got-r.PerYear()) > 0.01*r.PerYear()+5*deviates/math.Sqrt(years) {
			t.Errorf("years have %.1f mm, the chain says %.1f", got, r.PerYear())
		}
	})
}

func TestMadeDaysCanBe(t *testing.T) {
	for _, g := range []*synth.Generator{farm(t), fitted(t)} {
		r := g.Years(60, 2)
		if err := weather.Check(r); err != nil || len(r.Warnings) > 0 {
			t.Errorf("made years are doubted: %v %q", err, r.Warnings)
		}
		low, high, light := r.Of(weather.TemperatureMin).Values, r.Of(weather.TemperatureMax).Values, r.Of(weather.Global).Values
		for i, d := range daysOf(r) {
			if low[i] > high[i] {
				t.Fatalf("%v: lowest %g above highest %g", d, low[i], high[i])
			}
			if out := outside(r.Place, d); !(light[i] >= 0 && light[i] < out) {
				t.Fatalf("%v: %g kWh/m2 of %g outside the air", d, light[i], out)
			}
		}
		h, _, err := g.Hours(3, 2)
		if err != nil {
			t.Fatal(err)
		}
		for i, T := range h.Temperature {
			if T < low[i/24]-1e-9 || T > high[i/24]+1e-9 {
				t.Fatalf("hour %d: %g degC outside %g to %g", i, T, low[i/24], high[i/24])
			}
		}
	}
}

func BenchmarkHundredYearsOfHours(b *testing.B) {
	g := fitted(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := g.Hours(100, 1); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHundredYearsOfDays(b *testing.B) {
	g := fitted(b)
	b.ReportAllocs()
	for b.Loop() {
		g.Years(100, 1)
	}
}

func outside(p site.Place, d weather.Day) float64 { return synth.OutsideOf(p)[d.DayOfYear] }

// Columns in their order, days 0, 40 and 500 of seed 7.
var pinnedFarm = []float64{0, 0, 0, 2.8413020923633483, 3.781289178260989, 7.943194592678404, -1.6722208939019838, 8.725450812706828, 5.292116944991192, 8.846945975233325, 19.771849780292403, 19.583400618988435, -0.38704125237234166, 9.778207621555943, 3.5601136923881223}
var pinnedCrete = []float64{7.579546050136308, 6.183017860493753, 0, 1.4880305548478696, 2.5042564680082857, 7.5724508391523075, 5.425382821853937, 10.110222404107807, 13.496471899713882, 7.889883026576246, 13.645546855463936, 20.01558295188257}

// Fits to redrawn years differ as a sample's deviation does, and are in their mean those of the
// record; the same seed gives the same one.
func TestRedrawnFitsDifferAsSamplesDo(t *testing.T) {
	const years, fits = 60, 60
	r := farm(t).Years(years, 3)
	r.Series = []weather.Series{*r.Of(weather.Rain)}
	of := func(use func(int) bool, seed uint64) *synth.Rain {
		g, err := synth.Redrawn(r, use, seed)
		if err != nil {
			t.Fatal(err)
		}
		return g.Rain
	}
	deviations, means := make([]float64, fits), make([]float64, fits)
	for i := range fits {
		drawn := of(nil, uint64(i))
		deviations[i], means[i] = math.Sqrt(drawn.Moments().YearVary), drawn.PerYear()
	}
	sums := make([]float64, years)
	for i, d := range daysOf(r) {
		sums[d.Year-2001] += r.Series[0].Values[i]
	}
	// Each within four of its own standard errors: of the mean of fits, s/sqrt(n fits), and of
	// the scatter of fits, 1/sqrt(2 fits); the deviation's scatter is s/sqrt(2n) for Gaussian years.
	s := deviation(sums)
	if got, within := meanOf(means), 4*s/math.Sqrt(years*fits); math.Abs(got-meanOf(sums)) > within {
		t.Errorf("redrawn fits have %.1f mm a year in their mean, the record %.1f +- %.1f", got, meanOf(sums), within)
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"means", deviation(means), s / math.Sqrt(years)},
		{"deviations", deviation(deviations), s / math.Sqrt(2*years)},
	} {
		if within := 4 / math.Sqrt(2*fits); math.Abs(c.got/c.want-1) > within {
			t.Errorf("%s of redrawn fits scatter by %.2f mm, samples of %d years by %.2f +- %.0f %%", c.what, c.got, years, c.want, 100*within)
		}
	}
	if *of(nil, 5) != *of(nil, 5) {
		t.Error("the same seed gave another fit")
	}
	if early := of(func(y int) bool { return y < 2031 }, 1); *early == *of(nil, 1) {
		t.Error("years that do not count were drawn")
	}
}
